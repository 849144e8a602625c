"""What would stop publishing, found before it begins: the folder of a room comes in, findings go out; nothing is drawn.

Publishing itself asks the same functions, so that ``check`` and ``publish`` agree. Named sizes must all be sewn; one
between them that cannot be is left out.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import product
from pathlib import Path
from pkgutil import resolve_name

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.class_work import ClassSheet, class_sheet
from generator.calculation.worksheet.sheet import RoomContext, load_room_context, refuse_unsewable, worked_sheet
from generator.definitions.between import sizes_between
from generator.definitions.class_plan import ClassPlan, load_class
from generator.definitions.faults import meant
from generator.definitions.nodes import Group
from generator.definitions.project import Project, load_project
from generator.definitions.room import Room
from generator.definitions.text_file import read_text_file
from generator.definitions.theme import Theme, load_theme
from generator.definitions.yaml_text import read_yaml, shown_path
from generator.drawing.style import style_of
from generator.errors import FaultyFileError, Finding, Place, TuckwrightError
from generator.lengths import Edition
from generator.publishing.editions import kept_editions
from generator.publishing.inputs import read_inputs, theme_folder
from generator.publishing.jobs import LeftOut, Order
from generator.publishing.room_files import (
    class_files,
    edition_files,
    page_files,
    passed_over,
    project_files,
    stop_on_taken_names,
)
from generator.publishing.stale import stop_on_foreign_files
from generator.rendering.letters import letter_findings, room_letters
from generator.rendering.styles import SHEET_STYLES, paper_style


def findings_of_room(folder: Path, room: Room) -> tuple[Finding, ...]:
    """Return what is wrong with everything that belongs to no single project or class, and files that are not read."""
    looks: list[Callable[[], object]] = [
        lambda: read_inputs(folder, ""),
        lambda: stop_on_taken_names(folder),
        lambda: stop_on_foreign_files(folder, Order(folder).site),
        lambda: opened_theme(folder, room),
        lambda: refuse_stray_guides(room, page_files(folder)),
        *(lambda path=path: read_page(path, folder) for path in page_files(folder).values()),
        *(lambda name=name: kept_editions(folder, name) for name in edition_files(folder)),
    ]
    return (*passed_over(folder), *(finding for look in looks for finding in _findings(look)))


def _findings(look: Callable[[], object]) -> tuple[Finding, ...]:
    try:
        look()
    except FaultyFileError as fault:
        return fault.findings
    except TuckwrightError as fault:
        return (Finding("error", str(fault)),)
    return ()


def opened_theme(folder: Path, room: Room) -> Theme:
    """Return the theme of a room, its style, templates and style sheets looked at; raise what is wrong with any."""
    theme = load_theme(theme_folder(folder, room.theme))
    style_of(theme)
    if theme.of_room:
        resolve_name("generator.rendering.environment:read_templates")(theme)
        read_style_sheet = resolve_name("generator.rendering.pdf:read_style_sheet")
        for paper, sheet in product(room.papers, SHEET_STYLES):
            read_style_sheet(paper_style(theme, paper, sheet))
    stop_on_letters(folder, room, theme)
    return theme


def stop_on_letters(folder: Path, room: Room, theme: Theme) -> None:
    """Refuse letters without a font in what a room and its theme put on every sheet."""
    path = folder / "site" / "site.yaml"
    found = room_letters(room, theme, path, shown_path(path, folder))
    if theme.of_room:
        found += resolve_name("generator.rendering.theme_letters:theme_letters")(theme)
    if found:
        raise FaultyFileError(found)


def read_page(path: Path, folder: Path) -> str:
    """Return the text of a page of words; raise what is wrong with it."""
    return read_text_file(path, shown_path(path, folder))


def refuse_stray_guides(room: Room, pages: Collection[str]) -> None:
    """Refuse a list of guides that names a page which is not there."""
    faults = [
        Finding("error", f"there is no page '{name}' in site/pages{meant(name, pages)}", group.place)
        for group in room.guides
        for name in group.pages
        if name not in pages
    ]
    if faults:
        raise FaultyFileError(faults)


def findings_of_project(path: Path, room: Room, folder: Path, theme: Theme | None = None) -> tuple[Finding, ...]:
    """Return every finding of a project file: of the file itself, and of each size in each edition."""
    try:
        project = load_project(path, room, folder)
        shared = load_room_context(room, folder)
    except FaultyFileError as fault:
        return fault.findings
    found = [finding for _, findings in worked_sizes(project, shared, folder, theme) for finding in findings]
    named = tuple(dict.fromkeys((*project.findings, *found)))
    return (*named, *worked_between(project, shared, folder, theme).findings_beside(named))


def findings_of_classes(folder: Path, shared: RoomContext, theme: Theme | None) -> Iterator[Finding]:
    """Give what is wrong with the classes of a room; what they warn of is told with the class itself."""
    for name in class_files(folder):
        yield from _findings(lambda name=name: worked_class(name, folder, shared, theme))  # type: ignore[misc]


def worked_class(name: str, folder: Path, shared: RoomContext, theme: Theme | None) -> ClassSheet:
    """Return a class worked out.

    Raises
    ------
    FaultyFileError
        With the faults of its file or of its project, or with letters that no font of the theme has.
    """
    path, known = class_files(folder)[name], project_files(folder)
    shown = shown_path(path, folder)
    wanted = load_class(path, root=folder).project
    if wanted not in known:
        tree = read_yaml(path, shown, folder)
        written = tree.get("project") if isinstance(tree, Group) else None
        told = f"there is no project '{wanted}'{meant(wanted, known)}"
        raise FaultyFileError([Finding("error", told, written.place if written else Place(shown))])
    project = load_project(known[wanted], shared.room, folder)
    plan = load_class(path, project, folder)
    letters = letter_findings(_said(plan), theme, {shown: path}) if theme else []
    if letters:
        raise FaultyFileError(letters)
    return class_sheet(plan, project, shared)


def _said(plan: ClassPlan) -> tuple[str, ...]:
    """What a class says in its own words."""
    students = tuple(student for seat in plan.places for student in seat.student)
    return (plan.title, plan.note.text if plan.note else "", *plan.bring, *students)


@dataclass(frozen=True, slots=True)
class BetweenSizes:
    """The sizes between the named ones of a project: those that can be sewn, and those that are left out.

    ``findings`` are those of what can be sewn, ``reasons`` why the others cannot.
    """

    worksheets: tuple[Worksheet, ...]
    left_out: tuple[LeftOut, ...]
    findings: tuple[Finding, ...]
    reasons: tuple[Finding, ...]

    def findings_beside(self, named: Iterable[Finding]) -> Iterator[Finding]:
        """Give what is found in these sizes and in no named one; what differs in a number only is told once."""
        yield from self.reasons
        known = {_alike(finding) for finding in named}
        for finding in self.findings:
            if _alike(finding) not in known:
                known.add(_alike(finding))
                yield finding


def _alike(finding: Finding) -> tuple[object, ...]:
    return finding.level, finding.place, finding.piece, re.sub(r"[\d/. ]+", " ", finding.text)


def worked_sizes(
    project: Project, shared: RoomContext, folder: Path, theme: Theme | None
) -> Iterator[tuple[Worksheet | None, tuple[Finding, ...]]]:
    """Give every size in every edition, worked, with its findings; None where it cannot be worked or set in a theme."""
    sources = text_sources(project, folder)
    for name in project.editions:
        for size in project.sizes:
            yield judged(project, size, shared.room.edition(name), shared, theme, sources)


def text_sources(project: Project, folder: Path) -> dict[str, Path]:
    """Return the files that the words of a project come from, by how they are shown."""
    shared = (path for name in ("techniques", "body") for path in sorted((folder / "site" / name).glob("*.yaml")))
    of_room = (*shared, folder / "site" / "site.yaml")
    return {shown_path(path, folder): path for path in (project.path, *of_room) if path.exists()}


def judged(
    project: Project, size: str, edition: Edition, shared: RoomContext, theme: Theme | None, sources: Mapping[str, Path]
) -> tuple[Worksheet | None, tuple[Finding, ...]]:
    """Return one size worked, with its findings; None where it cannot be worked, be sewn or be set in a theme."""
    try:
        worksheet = worked_sheet(project, size, edition, shared)
        refuse_unsewable(worksheet)
    except FaultyFileError as fault:
        return None, fault.findings
    # The name of the file stands on no sheet.
    letters = letter_findings(replace(worksheet, project=""), theme, sources) if theme else []
    return None if letters else worksheet, (*worksheet.findings, *letters)


def worked_between(project: Project, shared: RoomContext, folder: Path, theme: Theme | None) -> BetweenSizes:
    """Return the sizes between the named ones, worked as ``sheet --with`` works them."""
    worksheets, left_out, found = list[Worksheet](), list[LeftOut](), list[Finding]()
    why = list[Finding]()
    sources = text_sources(project, folder)
    for name in project.editions:
        edition = shared.room.edition(name)
        for size, own in sizes_between(project.between, project.sizes, edition):
            listed = replace(project, sizes={**project.sizes, size: own})
            worksheet, findings = judged(listed, size, edition, shared, theme, sources)
            if worksheet is None:
                reasons = [finding for finding in findings if finding.level == "error"]
                left_out.append(LeftOut(size, name, reasons[0].text))
                why += [_left_out(reason, size, name) for reason in reasons]
            else:
                worksheets.append(worksheet)
                found += [finding for finding in findings if finding.level != "note"]
    return BetweenSizes(tuple(worksheets), tuple(left_out), tuple(found), tuple(dict.fromkeys(why)))


def _left_out(reason: Finding, size: str, edition: str) -> Finding:
    told = f"left out of the sizes between: {reason.text}"
    return replace(reason, level="warning", text=told, size=size, edition=edition)

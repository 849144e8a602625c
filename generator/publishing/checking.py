"""What would stop publishing, found before it begins: the folder of a room comes in, findings go out; nothing is drawn.

Publishing itself asks the same functions, so that ``check`` and ``publish`` agree.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from itertools import product
from pathlib import Path
from pkgutil import resolve_name

from generator.calculation.worksheet.class_work import ClassSheet, class_sheet
from generator.calculation.worksheet.sheet import RoomContext, load_room_context
from generator.definitions.class_plan import ClassPlan, load_class
from generator.definitions.faults import meant
from generator.definitions.nodes import Group
from generator.definitions.project import load_project
from generator.definitions.room import Room
from generator.definitions.text_file import read_text_file
from generator.definitions.theme import Theme, load_theme
from generator.definitions.yaml_text import read_yaml, shown_path
from generator.drawing.style import style_of
from generator.errors import FaultyFileError, Finding, Place, TuckwrightError
from generator.publishing.editions import kept_editions
from generator.publishing.inputs import read_inputs, theme_folder
from generator.publishing.jobs import Order
from generator.publishing.judging import worked_between, worked_sizes
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

"""What there is to make: worked projects and what a run knows come in, jobs go out, each with the key of what it says.

``PAGES`` is the table of the pages of the room. A new page is a line here, its maker in ``make/`` and its template.
"""

from __future__ import annotations

import json
from collections import defaultdict
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any, TypeVar

from generator.errors import PublishError
from generator.publishing.inputs import Inputs
from generator.publishing.jobs import Job, ProjectTold, SheetLinks, Stamp, WorkedProject, WorkedSize
from generator.publishing.manifest import DAMAGED, Entry, page_entry, pictures_entry, size_entry, to_plain
from generator.publishing.room_files import (
    GLOSSARY,
    class_files,
    page_files,
    page_title,
    project_file,
    project_of_class,
)
from generator.publishing.write import key_of
from generator.rendering.cards import ClassCard, PageLink, ThingPictures

_MAKE = "generator.publishing.make"
ROOM_ENTRY = "sheets of the room"
_Told = TypeVar("_Told")


@dataclass(frozen=True, slots=True)
class Known:
    """What a run knows so far: the room's folder, the keys of its inputs, its projects, and the entries made or kept.

    ``pending`` are the new texts of kept editions that this run will write.
    """

    room: Path
    inputs: Inputs
    projects: Sequence[str]
    entries: Mapping[str, Entry]
    pending: Mapping[str, str]

    def told(self, kind: type[_Told], entry: str) -> _Told:
        """Return what an entry tells.

        Raises
        ------
        PublishError
            If it tells nothing of a kind: then it was taken over from a manifest that somebody has changed.
        """
        found = self.entries.get(entry)
        if found is None or not isinstance(found.told, kind):
            raise PublishError(DAMAGED)
        return found.told

    @property
    def pages_of_projects(self) -> tuple[ProjectTold, ...]:
        """What the pages of all projects tell."""
        return tuple(self.told(ProjectTold, page_entry(project)) for project in self.projects)

    @property
    def classes(self) -> tuple[ClassCard, ...]:
        """What the pages of classes tell."""
        return tuple(entry.told for entry in self.entries.values() if isinstance(entry.told, ClassCard))

    @property
    def pages(self) -> tuple[str, ...]:
        """The paths of all pages in the site."""
        return tuple(sorted(file for entry in self.entries.values() for file in entry.files if file.endswith(".html")))


@dataclass(frozen=True, slots=True)
class Told:
    """What the maker of a page is told, and what the key of the page is made of: the same, or what it ``says``."""

    arguments: tuple[Any, ...] = ()
    says: tuple[Any, ...] | None = None


@dataclass(frozen=True, slots=True)
class Page:
    """A page of the room, or one for each file of a sort: what makes it, and what is told to it by its name.

    ``quick`` pages need no drawing; ``shared`` ones also write the files that other pages only link to. With
    ``whole_room`` it stays as it was where only some projects are published.
    """

    made_by: str
    told: Callable[[Known], Mapping[str, Told]]
    quick: bool = True
    shared: bool = False
    whole_room: bool = False

    def jobs(self, known: Known) -> Iterator[Job]:
        """Give the jobs that make the page."""
        base = known.inputs.common if self.shared else known.inputs.inside
        for name, told in self.told(known).items():
            says = told.arguments if told.says is None else told.says
            key = key_of(base, *(json.dumps(to_plain(one), sort_keys=True, ensure_ascii=False) for one in says))
            yield Job(name, name, f"{_MAKE}.{self.made_by}", told.arguments, key, quick=self.quick)


def _reference(known: Known) -> Mapping[str, Told]:
    used: defaultdict[str, list[PageLink]] = defaultdict(list)
    for told in known.pages_of_projects:
        for plan in told.plans:
            used[plan].append(PageLink(told.card.title, told.card.page))
    return {"reference": Told((dict(used), GLOSSARY in known.inputs.pages))}


def _words(known: Known) -> Mapping[str, Told]:
    return {f"page: {name}": Told((name,), says=(known.inputs.pages[name],)) for name in page_files(known.room)}


def titles_of_pages(room: Path) -> dict[str, str]:
    """Return the titles of the room's pages of words by their names."""
    return {name: page_title(path) for name, path in page_files(room).items()}


def _class_pages(known: Known) -> Mapping[str, Told]:
    return {
        f"class: {name}": Told((name,), says=(known.inputs.classes[name], _read_by_class(path, known.inputs)))
        for name, path in class_files(known.room).items()
    }


def _read_by_class(path: Path, inputs: Inputs) -> Mapping[str, str]:
    """The keys of the projects that a class may be of; where its project cannot be told at once, that is any."""
    project = project_of_class(path)
    return {project: inputs.projects[project]} if project in inputs.projects else inputs.projects


def _corrections(known: Known) -> Mapping[str, Told]:
    kept = known.inputs.editions
    told = {one.card.project: one for one in known.pages_of_projects if one.card.project in kept}
    titles = {project: one.card.title for project, one in told.items()}
    labels = {project: {sheet.size: sheet.label for sheet in one.sheets} for project, one in told.items()}
    drafts = {project: one.against.numbers for project, one in told.items() if one.against.numbers}
    about = {project: one.against.about for project, one in told.items() if one.against.about}
    texts = {project: known.pending.get(project, "") for project in kept}
    return {"corrections": Told((titles, labels, drafts, about, texts), says=(kept, titles, labels, drafts, about))}


def _newest(known: Known) -> Mapping[str, Told]:
    return {"newest": Told((tuple(sheet for one in known.pages_of_projects for sheet in one.sheets),))}


def _search(known: Known) -> Mapping[str, Told]:
    told = known.pages_of_projects
    cards = tuple(one.card for one in told)
    # Only what a sheet is called is looked for, so that a new number makes no new index.
    sheets = tuple(replace(sheet, mark="", numbers="") for one in told for sheet in one.sheets)
    arguments = (cards, sheets, titles_of_pages(known.room), known.classes)
    return {"search": Told(arguments, says=(*arguments, known.inputs.pages.get(GLOSSARY, "")))}


def _home(known: Known) -> Mapping[str, Told]:
    cards = tuple(told.card for told in known.pages_of_projects)
    sheets, own_robots = known.told(SheetLinks, ROOM_ENTRY).sheets, known.inputs.own_robots
    return {"site": Told((cards, sheets, known.pages, known.classes, own_robots))}


def _share(known: Known) -> Mapping[str, Told]:
    """The picture of the room for those who share its pages: one thing of each kind."""
    kinds = {one.card.kind: one.card for one in reversed(known.pages_of_projects) if one.card.picture is not None}
    shown = [card.picture.address for card in reversed(kinds.values()) if card.picture is not None]
    files = {name: state.key for entry in known.entries.values() for name, state in entry.files.items()}
    return {"share": Told((tuple(shown),), says=tuple(files[name] for name in shown))} if shown else {}


def _as_is(known: Known) -> Mapping[str, Told]:
    return {"as is": Told(says=(known.inputs.as_is,))} if known.inputs.as_is else {}


# The pages of a row are made side by side; they know what the rows above have made.
PAGES: tuple[tuple[Page, ...], ...] = (
    (
        Page("pictures:make_reference", _reference, quick=False),
        Page("pages:make_words", _words),
        Page("pages:make_guides", lambda known: {"guides": Told((titles_of_pages(known.room),))}),
        Page("pages:make_class", _class_pages, whole_room=True),
        Page("pictures:make_share", _share, quick=False),
    ),
    (
        Page("pages:make_classes", lambda known: {"classes": Told((known.classes,))}),
        Page("pages:make_corrections", _corrections),
        Page("pages:make_newest", _newest),
        Page("pages:make_search", _search),
    ),
    (Page("pages:make_home", _home, shared=True),),
    (Page("pages:copy_as_is", _as_is),),
)


def project_job(room: Path, project: str, mark: str = "", day: str = "") -> Job:
    """Return the job that works a project; with a mark, its numbers are to be kept under it."""
    arguments = (project_file(room, project), mark, day)
    return Job(f"{project}/numbers", project, f"{_MAKE}.numbers:work_project", arguments)


def size_jobs(project: str, worked: WorkedProject) -> Iterator[Job]:
    """Give the jobs that draw the sizes of a project, and write their pages, handouts and marking strips."""
    for one in worked.sizes:
        yield Job(
            size_entry(project, one.size, one.edition),
            f"{project}, size {one.size}, {one.edition}",
            f"{_MAKE}.sheets:make_size",
            (one,),
            one.key,
            # The more a worksheet holds, the longer it takes.
            weight=len(one.worksheet),
            quick=False,
        )


def between_jobs(project: str, worked: WorkedProject) -> Iterator[Job]:
    """Give the jobs that write the pages of the sizes between the named ones, one an edition."""
    for edition in dict.fromkeys(one.edition for one in worked.between):
        sizes = tuple(one for one in worked.between if one.edition == edition)
        yield Job(
            f"{project}/between {edition}",
            f"{project}, sizes between, {edition}",
            f"{_MAKE}.sheets:make_between",
            (sizes,),
            key_of(*(one.key for one in sizes)),
        )


def pictures_job(project: str, worked: WorkedProject, tool: str) -> Job:
    """Return the job that renders the finished thing; its key is made of what pictures show and nothing else."""
    leading, label = worked.sizes[0], f"{project}, pictures of the finished thing"
    key, made_by = key_of(tool, leading.pictures), f"{_MAKE}.pictures:make_pictures"
    return Job(pictures_entry(project), label, made_by, (leading.worksheet,), key, quick=False)


def further_job(project: str, worked: WorkedProject) -> Job:
    """Return the job that writes the sheets about all sizes of a project."""
    packed = _packed(worked.sizes)
    return Job(
        further_entry(project),
        f"{project}, sheets about all sizes",
        f"{_MAKE}.sheets:make_further",
        (packed, worked.against.stamp),
        key_of(*(one.wordless for one in worked.sizes), worked.against.stamp.mark, worked.against.stamp.standing),
        weight=sum(map(len, packed)),
        quick=False,
    )


def further_entry(project: str) -> str:
    """Return the name of the entry of the sheets about all sizes of a project."""
    return f"{project}/further"


def room_job(sizes: Mapping[str, Sequence[WorkedSize]], stamp: Stamp, key: str) -> Job:
    """Return the job that writes the sheets of the whole room."""
    editions: defaultdict[str, defaultdict[str, list[bytes]]] = defaultdict(lambda: defaultdict(list))
    for project, worked in sizes.items():
        for one in worked:
            editions[one.edition][project].append(one.worksheet)
    weight = sum(len(one.worksheet) for worked in sizes.values() for one in worked)
    arguments = (tuple(map(dict, editions.values())), stamp)
    return Job(ROOM_ENTRY, ROOM_ENTRY, f"{_MAKE}.sheets:make_room", arguments, key, weight, quick=False)


def page_job(project: str, worked: WorkedProject, known: Known) -> Job:
    """Return the job that writes the page of a project, which shows the finished thing."""
    pictures = known.told(ThingPictures, pictures_entry(project))
    sheets = known.told(SheetLinks, further_entry(project)).sheets
    return Job(
        page_entry(project),
        f"{project}, overview",
        f"{_MAKE}.pages:make_overview",
        (worked, pictures, sheets),
        key_of_page(worked),
    )


def key_of_page(worked: WorkedProject) -> str:
    """Return the key of what the page of a project says: all its sizes, and how they stand to kept editions."""
    between = "".join(one.key for one in worked.between)
    return key_of(
        _all_sizes(worked),
        between,
        repr(worked.left_out),
        json.dumps(to_plain(worked.against), sort_keys=True, ensure_ascii=False),
    )


def _all_sizes(worked: WorkedProject) -> str:
    return key_of(*(one.key for one in worked.sizes))


def _packed(sizes: Sequence[WorkedSize]) -> tuple[bytes, ...]:
    return tuple(one.worksheet for one in sizes)

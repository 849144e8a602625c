"""A sheet that is not about one size: its kind and a project, or none, come in; the sheet is written as a PDF."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from pkgutil import resolve_name
from typing import TypedDict

import click

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import RoomContext, load_room_context, worked_sheet
from generator.commands.output_file import chosen_paper, write_whole
from generator.commands.room_folder import project_files, room_folder
from generator.commands.working import edition_of, the_room
from generator.definitions.faults import meant
from generator.definitions.nodes import fold
from generator.definitions.project import Project, load_project
from generator.definitions.vocabulary import SHEETS_BESIDE, SHEETS_OF_ROOM
from generator.errors import PublishError
from generator.publishing.inputs import theme_folder

HANDOUT = "handout"
WHOLE_ROOM = f"the whole room: --kind {', '.join(repr(kind) for kind in SHEETS_OF_ROOM)}"
_ALL_EDITIONS = ("sign up form", "care sheet")


class SheetOptions(TypedDict):
    """What may be said about a sheet, each as it was typed."""

    kind: str
    own: tuple[str, ...]
    edition: str | None
    paper: str | None
    theme: str | None
    sewn: tuple[str, ...]
    cloth: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Opened:
    """The room with the projects that a sheet is about."""

    folder: Path
    shared: RoomContext
    projects: tuple[Project, ...]


def read_kind(context: click.Context, parameter: click.Parameter, value: str) -> str:
    """Return a kind of sheet that was typed, with hyphens or without."""
    known = (HANDOUT, *SHEETS_BESIDE)
    typed = fold(value).casefold()
    if typed not in known:
        raise click.BadParameter(f"'{value}' is no kind of sheet{meant(typed, known)}")
    return typed


def further_sheet(project: str | None, output: Path, how: SheetOptions) -> str:
    """Write a sheet of a whole project, or of the whole room, and return what it is."""
    kind = how["kind"]
    of_room = kind in SHEETS_OF_ROOM
    if how["own"] or how["sewn"] or how["cloth"]:
        whole = "the whole room" if of_room else "all sizes of a project"
        raise click.UsageError(f"the {kind} is about {whole}; leave out --with, --sewn and --cloth")
    if of_room != (project is None):
        told = "is of the whole room; name no project" if of_room else "is of one project; name it"
        raise click.UsageError(f"the {kind} {told}")
    opened = _opened(project)
    worksheets, editions = _worksheets(kind, opened, how["edition"])
    room = opened.shared.room
    paper = chosen_paper(room.papers, how["paper"])
    theme = theme_folder(opened.folder, how["theme"] or room.theme)
    single = resolve_name("generator.publishing.printing")
    stamp = single.stamp_of_sheets(opened.projects, opened.shared, opened.folder)
    write_whole(output, single.one_sheet(kind, worksheets, room, theme, paper, stamp))
    about = f", {opened.projects[0].title}" if project else ""
    return f"{kind}{about}, {' and '.join(editions)} edition{'s' if len(editions) > 1 else ''}, on {paper}"


def _opened(project: str | None) -> _Opened:
    folder = room_folder()
    room = the_room(folder)
    files = project_files(folder, (project,) if project else ())
    projects = tuple(load_project(file, room, folder) for file in files)
    return _Opened(folder, load_room_context(room, folder), projects)


def _worksheets(
    kind: str, opened: _Opened, wanted: str | None
) -> tuple[Mapping[str, Sequence[Worksheet]], tuple[str, ...]]:
    """Return what a sheet is made from, by project, and its editions: one, but for sheets that tell all of them."""
    room, first = opened.shared.room, opened.projects[0]
    if len(opened.projects) == 1 and wanted:
        edition_of(first, wanted, room)
    editions = (wanted,) if wanted else first.editions if kind in _ALL_EDITIONS else (first.editions[0],)
    worked = {
        project.name: [
            worked_sheet(project, size, room.edition(edition), opened.shared)
            for edition in editions
            if edition in project.editions
            for size in project.sizes
        ]
        for project in opened.projects
    }
    found = {name: sheets for name, sheets in worked.items() if sheets}
    if not found:
        raise PublishError(f"no project has a {wanted} edition")
    return found, editions

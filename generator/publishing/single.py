"""One sheet on its own, outside of any site: worksheets come in, the bytes of a PDF go out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import RoomContext, refuse_unsewable, worked_sheet
from generator.definitions.project import Project
from generator.definitions.room import Room
from generator.definitions.theme import load_theme
from generator.errors import PublishError
from generator.publishing.editions import against_editions, kept_editions
from generator.publishing.jobs import Stamp
from generator.publishing.memory import bounded
from generator.publishing.room import room_setting, stamped
from generator.rendering.handout.sheet import render_handout
from generator.rendering.sheet_kinds import SHEETS, SheetOrder, project_orders, room_orders, size_orders


def one_sheet(
    kind: str, projects: Mapping[str, Sequence[Worksheet]], room: Room, theme_folder: Path, paper: str, stamp: Stamp
) -> bytes:
    """Return one sheet on one paper; the stamp tells what it says of its edition.

    Parameters
    ----------
    kind : str
        Its name as in the room's file, or ``handout``.
    projects : mapping of str to sequence of Worksheet
        What it is about: one size of a project, all its sizes, or those of all projects.
    room, theme_folder, paper, stamp
        How it is set: ``Letter`` or ``A4``.

    Returns
    -------
    bytes
        A tagged PDF.

    Raises
    ------
    FaultyFileError
        With the faults of the theme, or of a recipe that cannot be sewn.
    PublishError
        If a letter, a font or a picture is missing, or if there is nothing that a sheet of this kind could tell.
    """
    for worksheets in projects.values():
        for worksheet in worksheets:
            refuse_unsewable(worksheet)
    setting = stamped(room_setting(room, load_theme(theme_folder)), stamp)
    with bounded():
        if kind not in SHEETS:
            [[worksheet]] = projects.values()
            return render_handout(worksheet, setting, paper)
        order = next(_orders(kind, projects), None)
        if order is None:
            raise PublishError(f"there is no {kind} here: {SHEETS[kind].where_none}")
        return order.render(setting, paper)


def _orders(kind: str, projects: Mapping[str, Sequence[Worksheet]]) -> Iterator[SheetOrder]:
    if SHEETS[kind].needs == "room":
        return room_orders(projects, (kind,))
    [worksheets] = projects.values()
    return size_orders(worksheets[0], (kind,)) if SHEETS[kind].needs == "size" else project_orders(worksheets, (kind,))


def stamp_of_sheet(project: Project, shared: RoomContext, folder: Path, *, own: bool) -> Stamp:
    """Return what a sheet of a project says of its edition.

    A size of the file bears the mark where all numbers of the project are those kept under it, as on the site. A size
    of one's ``own``, or one worked for cloth or a panel at hand, only says after which mark it was made.
    """
    kept = kept_editions(folder, project.name)
    if own or not kept:
        return Stamp(kept[-1].mark if kept else "", "own" if own else "draft")
    editions = [shared.room.edition(name) for name in project.editions]
    worksheets = [worked_sheet(project, size, one, shared) for one in editions for size in project.sizes]
    return against_editions(folder, worksheets)[0].stamp


def stamp_of_sheets(projects: Sequence[Project], shared: RoomContext, folder: Path) -> Stamp:
    """Return what a sheet about several projects says of its edition: nothing where they differ, as on the site."""
    stamps = {stamp_of_sheet(project, shared, folder, own=False) for project in projects}
    return stamps.pop() if len(stamps) == 1 else Stamp()

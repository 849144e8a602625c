"""One sheet on its own, outside of any site: a worksheet comes in, the bytes of a PDF go out."""

from __future__ import annotations

from pathlib import Path

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import RoomContext, refuse_unsewable, worked_sheet
from generator.definitions.project import Project
from generator.definitions.room import Room
from generator.definitions.theme import load_theme
from generator.publishing.editions import against_editions, kept_editions
from generator.publishing.jobs import Stamp
from generator.publishing.memory import bounded
from generator.publishing.room import room_setting, stamped
from generator.rendering.handout.sheet import render_handout


def one_handout(worksheet: Worksheet, room: Room, theme_folder: Path, paper: str, stamp: Stamp) -> bytes:
    """Return the handout of a worksheet on one paper; the stamp tells what it says of its edition.

    Raises
    ------
    FaultyFileError
        With the faults of the theme, or of a recipe that cannot be sewn.
    PublishError
        If a letter, a font or a picture is missing.
    """
    refuse_unsewable(worksheet)
    theme = load_theme(theme_folder)
    with bounded():
        return render_handout(worksheet, stamped(room_setting(room, theme), stamp), paper)


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

"""The least that publishing can take: a room comes in, how long bare drawing and setting take goes out [s].

Everything is loaded and the worksheets are worked before the clock starts; nothing is written.
"""

from __future__ import annotations

import time
from pathlib import Path

from generator.calculation.worksheet.sheet import worked_sheet
from generator.definitions.project import load_project
from generator.publishing.inputs import read_inputs
from generator.publishing.jobs import workshop_of
from generator.publishing.opened import open_room
from generator.publishing.sheets import drawn, handouts, strips
from generator.publishing.surroundings import prepare_surroundings


def floor(folder: Path) -> float:
    """Return how long it takes to draw and set every sheet of a room, one after the other."""
    prepare_surroundings(folder)
    room = open_room(workshop_of(folder, "", read_inputs(folder, "")))
    worksheets = [
        worked_sheet(project, size, room.shelf.room.edition(edition), room.shelf)
        for path in sorted((folder / "projects").glob("*.yaml"))
        for project in [load_project(path, room.shelf.room, folder)]
        for edition in project.editions
        for size in project.sizes
    ]
    handouts(worksheets[0], drawn(worksheets[0], room.style), room.setting)
    start = time.perf_counter()
    for worksheet in worksheets:
        pictures = drawn(worksheet, room.style)
        handouts(worksheet, pictures, room.setting)
        strips(worksheet, pictures, room.setting)
    return time.perf_counter() - start

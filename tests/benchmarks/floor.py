"""The least that publishing can take: a room comes in, what bare drawing and setting takes goes out [s].

Everything is loaded and the worksheets are worked before the clock starts; nothing is written.
"""

from __future__ import annotations

import gc
import sys
import tempfile
import time
from collections.abc import Iterable, Mapping
from pathlib import Path

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import worked_sheet
from generator.definitions.project import load_project
from generator.publishing.inputs import read_inputs
from generator.publishing.jobs import RoomVersion, ThingPictures
from generator.publishing.make.numbers import work_project
from generator.publishing.make.pictures import make_pictures, make_reference
from generator.publishing.make.sheets import drawn, handouts
from generator.publishing.room import OpenRoom, open_room
from generator.publishing.worker import THINGS_BETWEEN_COLLECTIONS
from generator.publishing.write import Output
from generator.rendering.handout.pictures import Drawer
from generator.rendering.sheet_kinds import SheetOrder, project_orders, room_orders, size_orders

# What the pictures of one thing may take [s].
LONGEST = 1.0


def floor(folder: Path) -> float:
    """Return how long a processor works to draw and set every sheet of a room, one after the other [s]."""
    room = opened(folder)
    projects = {path.stem: worked(path, room) for path in sorted((folder / "projects").glob("*.yaml"))}
    set_size(next(iter(projects.values()))[0], room)
    gc.collect()
    gc.freeze()
    gc.set_threshold(THINGS_BETWEEN_COLLECTIONS)
    start = time.process_time()
    _make(projects, room)
    return time.process_time() - start


def make_everything(folder: Path) -> None:
    """Draw and set every sheet of a room, one after the other, and throw them away."""
    room = opened(folder)
    _make({path.stem: worked(path, room) for path in sorted((folder / "projects").glob("*.yaml"))}, room)


def _make(projects: Mapping[str, list[Worksheet]], room: OpenRoom) -> None:
    for worksheets in projects.values():
        for worksheet in worksheets:
            set_size(worksheet, room)
        set_orders(project_orders(worksheets, room.setting.sheets), room)
    set_orders(room_orders(projects, room.setting.sheets), room)


def pictures(folder: Path) -> float:
    """Return how long a processor works at the pictures of all finished things and plans of a room [s]."""
    room, spent = opened(folder), 0.0
    with tempfile.TemporaryDirectory() as aside:
        output = Output(Path(aside))
        for project in sorted((folder / "projects").glob("*.yaml")):
            leading = work_project(room, output, project).sizes[0]
            start = time.process_time()
            told: ThingPictures = make_pictures(room, output, leading.worksheet)
            took = time.process_time() - start
            spent += took
            if told.thing and took > LONGEST:
                sys.stderr.write(f"the pictures of {project.stem} take {took:.2f} s; goal <= {LONGEST:.0f} s\n")
        start = time.process_time()
        make_reference(room, output, {}, glossary=False)
        return spent + time.process_time() - start


def opened(folder: Path) -> OpenRoom:
    inputs = read_inputs(folder, "")
    return open_room(RoomVersion(folder, "", inputs.tool, inputs.common))


def worked(path: Path, room: OpenRoom) -> list[Worksheet]:
    project = load_project(path, room.shared.room, room.folder)
    return [
        worked_sheet(project, size, room.shared.room.edition(edition), room.shared)
        for edition in project.editions
        for size in project.sizes
    ]


def set_size(worksheet: Worksheet, room: OpenRoom) -> None:
    drawer = Drawer(worksheet, room.style)
    drawn(drawer)
    handouts(worksheet, room.setting, drawer)
    set_orders(size_orders(worksheet, room.setting.sheets), room)


def set_orders(orders: Iterable[SheetOrder], room: OpenRoom) -> None:
    for order in orders:
        for paper in room.setting.papers:
            order.render(room.setting, paper)

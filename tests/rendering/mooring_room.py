"""A small room in real files, worked out for tests of sheets: a project in three sizes and two editions, a class."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.class_work import ClassSheet, class_sheet
from generator.calculation.worksheet.sheet import RoomContext, load_room_context, worked_sheet
from generator.definitions.class_plan import load_class
from generator.definitions.project import Project, load_project
from generator.definitions.room import load_room

FOLDER = Path(__file__).parent / "mooring-room"


@cache
def opened() -> tuple[Project, RoomContext]:
    room = load_room(FOLDER / "site" / "site.yaml", FOLDER)
    return load_project(FOLDER / "projects" / "mooring.yaml", room, FOLDER), load_room_context(room, FOLDER)


@cache
def worksheets(edition: str = "") -> tuple[Worksheet, ...]:
    """Every size in an edition, small first; in all editions where none is named."""
    project, shared = opened()
    return tuple(
        worked_sheet(project, size, shared.room.edition(name), shared)
        for name in project.editions
        if edition in ("", name)
        for size in project.sizes
    )


@cache
def two_mornings() -> ClassSheet:
    project, shared = opened()
    return class_sheet(load_class(FOLDER / "site" / "classes" / "two-mornings.yaml", project, FOLDER), project, shared)

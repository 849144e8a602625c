"""A small room in real files, worked out for tests of sheets: a project in three sizes and two editions, a class."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.class_work import ClassSheet, class_sheet
from generator.definitions.class_plan import load_class
from tests.room import OpenedRoom, opened_room

FOLDER = Path(__file__).parent / "mooring-room"


@cache
def mooring() -> OpenedRoom:
    return opened_room(FOLDER)


@cache
def every_worksheet() -> tuple[Worksheet, ...]:
    return mooring().worksheets("mooring")


@cache
def worksheets(edition: str = "") -> tuple[Worksheet, ...]:
    """Every size in an edition, small first; in all editions where none is named."""
    return tuple(sheet for sheet in every_worksheet() if edition in ("", sheet.edition.name))


@cache
def two_mornings() -> ClassSheet:
    project, plan = mooring().project("mooring"), FOLDER / "site" / "classes" / "two-mornings.yaml"
    return class_sheet(load_class(plan, project, FOLDER), project, mooring().shared)

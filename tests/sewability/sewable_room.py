"""The room's projects worked out in every size and edition, once for all tests of this folder."""

from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest

from generator.calculation.worked import Panel
from generator.calculation.worked_project import SheetStep, Worksheet
from generator.calculation.worksheet.sheet import load_room_context, worked_sheet
from generator.definitions.project import load_project
from generator.definitions.room import load_room

ROOT = Path(__file__).parents[2]
FILES = sorted((ROOT / "projects").glob("*.yaml"))
ROOM = load_room(ROOT / "site" / "site.yaml", root=ROOT)
SHELF = load_room_context(ROOM, ROOT)
# Standard steps that cut cloth and put nothing together.
CUTTING = ("cut", "cut later")


@cache
def sheets_of(path: Path) -> tuple[Worksheet, ...]:
    project = load_project(path, ROOM, ROOT)
    return tuple(
        worked_sheet(project, size, ROOM.edition(edition), SHELF)
        for edition in project.editions
        for size in project.sizes
    )


def panels(sheet: Worksheet) -> list[tuple[str, Panel]]:
    return list(sheet.panels.items())


def named(sheet: Worksheet, step: SheetStep) -> str:
    return f"{sheet.size}, {sheet.edition.name}: step {step.number} '{step.title}'"


def every_sheet(test: Callable[..., None]) -> Callable[..., None]:
    """Run a test with each project's file; the test walks through its sizes and editions."""
    return pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)(test)

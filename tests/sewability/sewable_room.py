"""The room's projects worked out in every size and edition, once for all tests of this folder."""

from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest

from generator.calculation.worked import Panel
from generator.calculation.worked_project import SheetStep, Worksheet
from tests.room import ROOT, demo_room

FILES = sorted((ROOT / "projects").glob("*.yaml"))
SHARED = demo_room().shared
ROOM = SHARED.room
# Standard steps that cut cloth and put nothing together.
CUTTING = ("cut", "cut later")


@cache
def sheets_of(path: Path) -> tuple[Worksheet, ...]:
    return demo_room().worksheets(path.stem)


def panels(sheet: Worksheet) -> list[tuple[str, Panel]]:
    return list(sheet.panels.items())


def named(sheet: Worksheet, step: SheetStep) -> str:
    return f"{sheet.size}, {sheet.edition.name}: step {step.number} '{step.title}'"


def every_sheet(test: Callable[..., None]) -> Callable[..., None]:
    """Run a test with each project's file; the test walks through its sizes and editions."""
    return pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)(test)

"""Every cloth of every project beside a general solver: no layout of the promised cuts is shorter than what is told."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from cloth_by_other_routes import random_items
from layouts_by_solver import is_shortest

from generator.calculation.cutting.layout import cutting_layout
from generator.calculation.laid import CutItem
from tests.room import ROOT, demo_room

PROJECTS = sorted((ROOT / "projects").glob("*.yaml"))


@pytest.mark.parametrize("path", PROJECTS, ids=lambda path: path.stem)
def test_no_layout_of_a_project_is_beaten(path: Path) -> None:
    for sheet in demo_room().worksheets(path.stem):
        for cloth, use in sheet.cloths.items():
            assert use.layout.proven != "open"
            told = (sheet.size, sheet.edition.name, cloth)
            apart = use.layout.apart_costs > 0
            assert is_shortest(use.items, use.layout.width, use.layout.possible, apart=apart), told


def test_the_solver_finds_what_is_shorter() -> None:
    # Two of 20 x 9 lie side by side on 44 in; a layout of 18 in is beaten.
    twice = [CutItem("front", "Front", Fraction(20), Fraction(9), 2)]
    assert is_shortest(twice, Fraction(44), Fraction(9))
    assert not is_shortest(twice, Fraction(44), Fraction(18))


@pytest.mark.parametrize("seed", range(8))
def test_no_layout_of_eight_random_pieces_is_beaten(seed: int) -> None:
    items = random_items(seed, 8, (4, 24), turnable=[True, False])
    assert is_shortest(items, Fraction(44), cutting_layout(items, Fraction(44)).possible)

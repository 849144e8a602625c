"""Edges across the tucks: what holds them and how the outer tucks lie."""

from __future__ import annotations

import pytest
from row_panels import signed

from generator.calculation.turning.held import edge_tucks_lie, held_turns
from generator.calculation.turning.plans import drawn_plan, turn_plan
from generator.calculation.worked import End

ROW = signed("><.")


@pytest.mark.parametrize("kind", ["seam", "hem", "bound", "turnover"])
def test_an_edge_that_is_sewn_across_is_a_row_like_the_next_one(kind: str) -> None:
    assert held_turns("as the next row", End(kind), ROW) == ROW


@pytest.mark.parametrize("kind", ["fold", "selvage", "raw"])
def test_an_edge_that_nothing_is_sewn_across_leaves_the_tucks_free(kind: str) -> None:
    assert held_turns("as the next row", End(kind), ROW) == ()


def test_a_wish_lays_every_tuck_whatever_the_edge() -> None:
    assert held_turns("left", End("raw"), ROW) == signed("<<<")
    assert held_turns("right", End("seam"), ROW) == signed(">>>")
    assert held_turns("free", End("seam"), ROW) == ()


@pytest.mark.parametrize(
    ("holds", "lies"),
    [
        (("as the next row", "as the next row"), ("in", "out")),
        (("left", "as the next row"), ("out", "out")),
        (("free", "left"), ("out", "out")),
        (("right", "right"), ("in", "out")),
    ],
)
def test_an_edge_can_turn_a_tuck_outward_that_no_row_does(holds: tuple[str, str], lies: tuple[str, str]) -> None:
    assert edge_tucks_lie(turn_plan("one way"), 6, holds) == lies


def test_upright_lone_tucks_are_still_laid_out_by_a_seam() -> None:
    plan = turn_plan("linked cells", lone="upright")
    assert edge_tucks_lie(plan, 4, ("free", "free")) == ("in", "in")
    assert edge_tucks_lie(plan, 4, ("left", "free")) == ("out", "in")


def test_an_edge_can_turn_the_first_tuck_inward_or_the_last_outward() -> None:
    # Every row lays them left, so the first lies out and the last in; an edge to the right turns the last one out.
    assert edge_tucks_lie(drawn_plan("<"), 5, ("free", "free")) == ("out", "in")
    assert edge_tucks_lie(drawn_plan("<"), 5, ("right", "free")) == ("out", "out")

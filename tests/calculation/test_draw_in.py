"""Draw-in: worked values, and a second route that walks along the fold in space."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from math import cos, dist, pi, sin, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some
from row_panels import signed

from generator.calculation.turning.draw_in import (
    comfortable_spacing,
    least_draw_in,
    planning_draw_in,
    ruled_for,
    swing,
)
from generator.calculation.worked import Turn
from generator.errors import CalculationError

SWINGS = some.sampled_from((Fraction(1, 2), Fraction(1)))
DEPTHS = some.integers(1, 64).map(lambda steps: Fraction(steps, 32))
DEPTHS_APART = some.integers(16, 60).map(lambda quarters: Fraction(quarters, 4))


def place_on_fold(depth: float, angle: float, down: float) -> tuple[float, float, float]:
    """Where the fold is: beside its foot, above the panel, down the panel; the angle counts from lying left."""
    return -depth * cos(angle), depth * sin(angle), down


def walked(depth: float, swung: float, finished: float, steps: int) -> float:
    """Length of a fold that swings evenly over an interval of a finished length, measured step by step."""
    places = [place_on_fold(depth, swung * step / steps, finished * step / steps) for step in range(steps + 1)]
    return sum(dist(before, after) for before, after in pairwise(places))


@pytest.mark.parametrize(("times_depth", "least", "most"), [(6, "5.7", "14.8"), (8, "3.2", "8.0"), (12, "1.4", "3.5")])
def test_the_range_is_known_for_three_spacings(times_depth: int, least: str, most: str) -> None:
    # 1 - sqrt(1 - (2/k)^2) and 1 - sqrt(1 - (pi/k)^2), in per cent, for rows k depths apart.
    depth = Fraction(1, 2)
    spacing = times_depth * depth
    assert f"{float(least_draw_in(spacing, depth, Fraction(1)) / spacing) * 100:.1f}" == least
    assert f"{float(planning_draw_in(spacing, depth, Fraction(1)) / spacing) * 100:.1f}" == most


def test_five_rows_three_inches_apart_lose_four_intervals_of_0_444() -> None:
    # 3 - sqrt(9 - (pi/2)^2) = 3 - sqrt(6.53260) = 3 - 2.55590 = 0.44410 (0.444 to three places); 17 + 4 x 0.444 = 18.78
    drawn_in = planning_draw_in(Fraction(3), Fraction(1, 2), Fraction(1))
    assert f"{float(drawn_in):.3f}" == "0.444"
    assert f"{float(17 + 4 * drawn_in):.2f}" == "18.78"


@pytest.mark.parametrize(
    ("before", "after", "half_turns"),
    [
        ("<", ">", 1),
        (">", "<", 1),
        ("<", ".", Fraction(1, 2)),
        (".", ">", Fraction(1, 2)),
        ("<", "<", 0),
        (".", ".", 0),
    ],
)
def test_a_tuck_swings_by_half_turns(before: str, after: str, half_turns: Fraction) -> None:
    assert swing(*signed(before), *signed(after)) == half_turns


def test_every_swing_is_the_same_both_ways() -> None:
    assert all(swing(one, other) == swing(other, one) for one in Turn for other in Turn)


@settings(deadline=None)
@given(DEPTHS, DEPTHS_APART, SWINGS)
def test_walking_along_an_evenly_swinging_fold_gives_the_ruled_spacing(
    depth: Fraction, depths_apart: Fraction, half_turns: Fraction
) -> None:
    spacing = depth * depths_apart
    finished = spacing - planning_draw_in(spacing, depth, half_turns)
    length = walked(float(depth), pi * float(half_turns), float(finished), steps=400)
    assert length == pytest.approx(float(spacing), rel=1e-4)


@given(DEPTHS, DEPTHS_APART, SWINGS)
def test_the_straight_way_between_two_ends_of_a_fold_gives_the_ruled_spacing(
    depth: Fraction, depths_apart: Fraction, half_turns: Fraction
) -> None:
    spacing = depth * depths_apart
    finished = float(spacing - least_draw_in(spacing, depth, half_turns))
    start = place_on_fold(float(depth), 0.0, 0.0)
    end = place_on_fold(float(depth), pi * float(half_turns), finished)
    assert dist(start, end) == pytest.approx(float(spacing), rel=1e-6)


@given(DEPTHS, DEPTHS_APART, SWINGS)
def test_bounds_are_rounded_outward_by_a_trifle(depth: Fraction, depths_apart: Fraction, half_turns: Fraction) -> None:
    spacing = depth * depths_apart
    # Exact squares instead of roots: what is left of S must not be too short for the chord, nor too long for the arc.
    left_at_least = spacing - least_draw_in(spacing, depth, half_turns)
    left_at_most = spacing - planning_draw_in(spacing, depth, half_turns)
    chord, arc = 4 * depth**2 * half_turns, (Fraction(355, 113) * half_turns * depth) ** 2
    assert left_at_least**2 + chord >= spacing**2
    assert left_at_most**2 + (Fraction(103993, 33102) * half_turns * depth) ** 2 <= spacing**2
    assert left_at_most**2 + arc >= spacing**2 - Fraction(1, 10**5)


@given(DEPTHS, DEPTHS_APART, SWINGS)
def test_what_is_ruled_for_a_finished_spacing_finishes_there(
    depth: Fraction, depths_apart: Fraction, half_turns: Fraction
) -> None:
    finished = depth * depths_apart
    ruled = ruled_for(finished, depth, half_turns)
    assert abs(ruled - planning_draw_in(ruled, depth, half_turns) - finished) < Fraction(1, 10**6)


@given(DEPTHS, DEPTHS_APART, SWINGS)
def test_the_least_draw_in_is_less_than_the_planning_value(
    depth: Fraction, depths_apart: Fraction, half_turns: Fraction
) -> None:
    spacing = depth * depths_apart
    assert 0 < least_draw_in(spacing, depth, half_turns) < planning_draw_in(spacing, depth, half_turns) < spacing


def test_a_tuck_that_lies_alike_costs_nothing_however_close_the_rows() -> None:
    for cost in (least_draw_in, planning_draw_in):
        assert cost(Fraction(1, 16), Fraction(2), Fraction(0)) == 0
    assert ruled_for(Fraction(7, 3), Fraction(2), Fraction(0)) == Fraction(7, 3)


def test_from_standing_a_tuck_may_have_rows_half_as_far_apart() -> None:
    depth = Fraction(3, 8)
    whole, half = (comfortable_spacing(depth, part) for part in (Fraction(1), Fraction(1, 2)))
    assert (whole, half) == (Fraction(9, 4), Fraction(9, 8))
    # At either spacing an even swing costs the same share, 1 - sqrt(1 - (pi/6)^2) = 0.148.
    shares = {
        f"{float(planning_draw_in(s, depth, w) / s):.4f}" for s, w in ((whole, Fraction(1)), (half, Fraction(1, 2)))
    }
    assert shares == {f"{1 - sqrt(1 - (pi / 6) ** 2):.4f}"}


def test_rows_that_the_straight_way_cannot_bridge_are_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        least_draw_in(Fraction(31, 32), Fraction(1, 2), Fraction(1))
    assert str(refusal.value) == ("the rows are closer together than a tuck can swing; rule them further apart")


def test_rows_that_an_even_swing_cannot_bridge_are_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        planning_draw_in(Fraction(3, 2), Fraction(1, 2), Fraction(1))
    assert str(refusal.value) == ("the rows are closer together than a tuck can swing evenly; rule them further apart")


def test_rows_two_depths_apart_can_just_be_bridged_and_nothing_is_left() -> None:
    assert least_draw_in(Fraction(1), Fraction(1, 2), Fraction(1)) == 1

"""Bias strips: cut from shapes again, and every smaller piece of cloth tried."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely.affinity import rotate
from shapely.geometry import LineString, Polygon, box

from generator.calculation.pieces.bias import (
    area_bound,
    bias_square,
    bias_strips,
    cloth_for_bias,
    continuous_bias_length,
)
from generator.errors import CalculationError

QUARTER = Fraction(1, 4)
SIDES = st.integers(40, 240).map(lambda quarters: Fraction(quarters, 4))
WIDTHS = st.sampled_from([Fraction(1), Fraction(5, 4), Fraction(3, 2), Fraction(2), Fraction(3)])
JOINS = st.sampled_from([Fraction(0), QUARTER, Fraction(1, 2)])


def half_square(side: float, join: float) -> Polygon:
    """Half a square, less the seams on its two straight edges, with its long bias edge on the x axis."""
    half = Polygon([(0, 0), (side, 0), (side, side)])
    return rotate(half.intersection(box(-1, join, side - join, side + 1)), -45, origin=(0, 0))


@given(SIDES, WIDTHS, JOINS)
def test_every_round_of_a_continuous_strip_crosses_both_halves_of_the_square(
    side: Fraction, width: Fraction, join: Fraction
) -> None:
    half = half_square(float(side), float(join))
    # From the bias edge of one half to that of the other, sewn together with their edges level.
    apart = float(side - 2 * join) / math.sqrt(2)
    rounds = int(apart / float(width))
    assume(rounds > 0)
    # A line halfway up one half runs on halfway up the other.
    line = LineString([(-500, -apart / 2), (500, -apart / 2)])
    once_round = 2 * line.intersection(half).length
    assert float(continuous_bias_length(side, width, join)) == pytest.approx(rounds * once_round, rel=1e-6, abs=1e-6)


@given(SIDES, WIDTHS, JOINS)
def test_no_strip_is_longer_than_its_area_allows(side: Fraction, width: Fraction, join: Fraction) -> None:
    assert continuous_bias_length(side, width, join) <= area_bound(side, side, width)
    assert bias_strips(side, 2 * side, width, join).length <= area_bound(side, 2 * side, width)


@given(st.integers(10, 900).map(Fraction), WIDTHS, JOINS)
def test_the_square_is_the_smallest_that_gives_the_strip(length: Fraction, width: Fraction, join: Fraction) -> None:
    side = bias_square(length, width, join, Fraction(1))
    assert continuous_bias_length(side, width, join) >= length
    assert all(continuous_bias_length(Fraction(smaller), width, join) < length for smaller in range(1, math.ceil(side)))


@given(SIDES, SIDES, WIDTHS)
def test_full_strips_lie_wholly_on_the_cloth(across: Fraction, along: Fraction, width: Fraction) -> None:
    shorter, longer = sorted((float(across), float(along)))
    cloth = box(0, 0, longer, shorter)
    step = float(width) * math.sqrt(2)
    full = 0
    for place in range(int(longer / step) + 1):
        left = place * step
        strip = Polygon([(left, 0), (left + step, 0), (left + step + shorter, shorter), (left + shorter, shorter)])
        full += strip.intersection(cloth).area > strip.area - 1e-9
    found = bias_strips(across, along, width, QUARTER)
    assert found.number == full
    assert float(found.each) == pytest.approx(math.hypot(shorter, shorter))


@given(st.integers(20, 600).map(Fraction), WIDTHS, st.sampled_from([Fraction(20), Fraction(44), Fraction(54)]))
def test_no_shorter_cloth_gives_the_strip(length: Fraction, width: Fraction, cloth_width: Fraction) -> None:
    cloth = cloth_for_bias(length, width, cloth_width, join=QUARTER, step=Fraction(1))
    found = bias_strips(cloth_width, cloth, width, QUARTER)
    assert found.length >= length
    assert found.each >= 12 - Fraction(1, 10**6)
    shorter = [bias_strips(cloth_width, Fraction(inches), width, QUARTER) for inches in range(1, int(cloth))]
    assert all(strips.length < length or strips.each < 12 for strips in shorter)


def test_cloth_too_narrow_for_strips_worth_joining_is_refused() -> None:
    # 8 in wide cloth gives strips of 8 x 1.414 = 11.3 in
    with pytest.raises(CalculationError) as refusal:
        cloth_for_bias(Fraction(90), Fraction(2), Fraction(8), join=QUARTER, step=Fraction(1))
    assert str(refusal.value) == ("the cloth is too narrow for bias strips that are worth joining; use wider cloth")


def test_joins_of_cut_strips_take_their_slanting_width() -> None:
    # 7 strips of 10 x 1.41421 = 14.1421, six joins of 2 x 1/4 x 1.41421 = 0.70711: 98.9949 - 4.2426
    strips = bias_strips(Fraction(10), Fraction(30), Fraction(2), QUARTER)
    assert float(strips.length) == pytest.approx(98.9949 - 4.2426, abs=1e-3)


def test_a_square_too_small_for_one_round_gives_nothing() -> None:
    assert continuous_bias_length(Fraction(2), Fraction(2), QUARTER) == 0


def test_joins_wider_than_the_square_give_nothing() -> None:
    assert continuous_bias_length(Fraction(4), Fraction(1), Fraction(2)) == 0


def test_cloth_that_a_join_would_use_up_is_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        bias_strips(Fraction(1), Fraction(30), Fraction(2), Fraction(1, 2))
    assert str(refusal.value) == "the cloth is too narrow: a join would take the whole strip; use wider cloth"


def test_a_strip_of_no_width_is_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        continuous_bias_length(Fraction(20), Fraction(0), QUARTER)
    assert str(refusal.value) == "the width of a bias strip must be more than nothing, not 0"

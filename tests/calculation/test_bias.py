"""Bias strips: cut from shapes again, and every smaller square tried."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely.affinity import rotate
from shapely.geometry import LineString, Polygon, box

from generator.calculation.pieces.bias import (
    bias_square,
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
    assert continuous_bias_length(side, width, join) <= side * side / width


@given(st.integers(10, 900).map(Fraction), WIDTHS, JOINS)
def test_the_square_is_the_smallest_that_gives_the_strip(length: Fraction, width: Fraction, join: Fraction) -> None:
    side = bias_square(length, width, join, Fraction(1))
    assert continuous_bias_length(side, width, join) >= length
    assert all(continuous_bias_length(Fraction(smaller), width, join) < length for smaller in range(1, math.ceil(side)))


def test_a_square_too_small_for_one_round_gives_nothing() -> None:
    assert continuous_bias_length(Fraction(2), Fraction(2), QUARTER) == 0


def test_joins_wider_than_the_square_give_nothing() -> None:
    assert continuous_bias_length(Fraction(4), Fraction(1), Fraction(2)) == 0


def test_a_strip_of_no_width_is_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        continuous_bias_length(Fraction(20), Fraction(0), QUARTER)
    assert str(refusal.value) == "the width of a bias strip must be more than nothing, not 0"


def test_a_square_that_gives_exactly_the_length_is_large_enough() -> None:
    exactly = continuous_bias_length(Fraction(24), Fraction(2), QUARTER)
    assert bias_square(exactly, Fraction(2), QUARTER, Fraction(1)) == 24
    assert bias_square(exactly + Fraction(1, 1000), Fraction(2), QUARTER, Fraction(1)) == 25

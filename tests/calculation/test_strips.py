"""Strips sewn end to end: counted one by one, and sewn and unfolded as shapes."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely.affinity import affine_transform
from shapely.geometry import Polygon, box

from generator.calculation.pieces.strips import (
    joined_length,
    lost_in_diagonal_join,
    lost_in_straight_join,
    strips_needed,
)
from generator.errors import CalculationError

LENGTHS = st.fractions(min_value=Fraction(1, 2), max_value=60, max_denominator=16)


@given(
    st.fractions(min_value=Fraction(1, 16), max_value=2_000, max_denominator=16),
    LENGTHS,
    st.fractions(min_value=0, max_value=4, max_denominator=16),
)
def test_the_number_is_the_first_that_is_long_enough(length: Fraction, each: Fraction, lost: Fraction) -> None:
    assume(each - lost >= 1)
    number = 1
    sewn = each
    while sewn < length:
        sewn += each - lost
        number += 1
    assert strips_needed(length, each, lost) == number
    assert joined_length(number, each, lost) == sewn


@given(st.floats(1, 60), st.floats(1, 60), st.floats(0.25, 1))
def test_a_diagonal_join_unfolds_to_one_strip_that_lost_its_width(first: float, second: float, width: float) -> None:
    # The first strip comes in from the left, the second leaves upward over its end; the seam runs from corner to
    # corner of the square where they cross, and unfolding is a reflection in the seam.
    corner = first - width
    side_kept = Polygon([(corner - 200, -200), (corner + 200, 200), (corner - 200, 200)])
    lower = box(0, 0, first, width).intersection(side_kept)
    upper = box(corner, 0, first, second).intersection(side_kept)
    unfolded = affine_transform(upper, [0, 1, 1, 0, corner, -corner])
    joined = lower.union(unfolded)
    straight = box(0, 0, first + second - float(lost_in_diagonal_join(Fraction(width))), width)
    assert joined.symmetric_difference(straight).area < 1e-6


def test_a_straight_join_takes_an_allowance_of_both_strips() -> None:
    assert lost_in_straight_join(Fraction(3, 8)) == Fraction(3, 4)


def test_one_strip_has_no_join() -> None:
    assert joined_length(1, Fraction(10), Fraction(1)) == 10


def test_strips_that_vanish_in_their_joins_are_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        strips_needed(Fraction(100), Fraction(1), Fraction(1))
    assert str(refusal.value) == ("the strips are shorter than what their joins take; cut longer or narrower strips")

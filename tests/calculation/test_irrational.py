"""Pi and roots: worked out again by series, and squared back."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculation.irrational import PI_ABOVE, PI_BELOW, root_above, root_below
from generator.errors import CalculationError

SQUARES = st.fractions(min_value=0, max_value=10_000, max_denominator=1_000)


def arctangent_bounds(tangent: Fraction, terms: int = 40) -> tuple[Fraction, Fraction]:
    """An alternating series of shrinking terms lies between any two neighbouring partial sums."""
    sums = [Fraction(0)]
    for place in range(terms):
        sums.append(sums[-1] + (-1) ** place * tangent ** (2 * place + 1) / (2 * place + 1))
    return min(sums[-2:]), max(sums[-2:])


def test_pi_lies_between_its_bounds_by_the_angles_of_one_fifth_and_one_239th() -> None:
    fifth, small = arctangent_bounds(Fraction(1, 5)), arctangent_bounds(Fraction(1, 239))
    assert 16 * fifth[0] - 4 * small[1] > PI_BELOW
    assert 16 * fifth[1] - 4 * small[0] < PI_ABOVE


def test_pi_lies_between_its_bounds_by_the_angles_of_one_seventh_and_three_79ths() -> None:
    seventh, other = arctangent_bounds(Fraction(1, 7)), arctangent_bounds(Fraction(3, 79))
    assert 20 * seventh[0] + 8 * other[0] > PI_BELOW
    assert 20 * seventh[1] + 8 * other[1] < PI_ABOVE


@given(SQUARES)
def test_a_root_squared_encloses_its_number(square: Fraction) -> None:
    below, above = root_below(square), root_above(square)
    assert below**2 <= square <= above**2
    assert above - below <= Fraction(1, 10**9)


@given(SQUARES)
def test_a_root_that_is_a_fraction_is_exact(root: Fraction) -> None:
    assert root_below(root**2) == root_above(root**2) == root


def test_the_root_of_a_negative_number_is_refused() -> None:
    with pytest.raises(CalculationError, match=r"^a number less than nothing has no square root$"):
        root_above(Fraction(-1))


def test_the_bounds_of_pi_leave_no_room_for_a_millionth_of_a_millionth() -> None:
    assert 0 < PI_ABOVE - PI_BELOW <= Fraction(1, 10**14)

"""Buttons on an edge: worked by hand, and stepped off again from the first to the last."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculation.pieces.buttons import (
    button_line,
    button_positions,
    buttonhole,
    crowded_buttons,
    even_inset,
    hole_span,
)
from generator.errors import CalculationError
from generator.lengths import CENTIMETRE, INCH, METRIC, MILLIMETRE

EDGES = st.fractions(min_value=10, max_value=100, max_denominator=16)
INSETS = st.fractions(min_value=0, max_value=4, max_denominator=16)


@given(EDGES, st.integers(2, 20), INSETS)
def test_stepping_from_the_first_button_comes_to_the_last(edge: Fraction, number: int, inset: Fraction) -> None:
    places = button_positions(edge, number, inset)
    assert len(places) == number
    assert places[0] == inset
    assert places[-1] == edge - inset
    assert len({after - before for before, after in pairwise(places)}) == 1


@given(EDGES, st.integers(1, 20))
def test_an_even_inset_leaves_half_an_interval_at_both_ends(edge: Fraction, number: int) -> None:
    inset = even_inset(edge, number)
    places = button_positions(edge, number, inset)
    assert places[0] == inset
    assert all(after - before == 2 * inset for before, after in pairwise(places))


def test_one_button_sits_in_the_middle_wherever_the_inset_is() -> None:
    assert button_positions(Fraction(9), 1, Fraction(40)) == (Fraction(9, 2),)


def test_a_metric_buttonhole_square_to_the_edge() -> None:
    # button 22 by 3 mm: centre 11 + 12 = 23 mm from the edge; hole from 23 - 3 = 20 to 20 + 25 = 45 mm
    assert button_line(22 * MILLIMETRE, METRIC) == 23 * MILLIMETRE
    assert hole_span(22 * MILLIMETRE, 3 * MILLIMETRE, "square", METRIC) == (20 * MILLIMETRE, 45 * MILLIMETRE)


@given(
    st.fractions(min_value=Fraction(1, 4), max_value=2, max_denominator=16),
    st.fractions(min_value=0, max_value=Fraction(1, 2), max_denominator=16),
)
def test_a_hole_is_as_long_as_its_button_needs_and_holds_the_centre(diameter: Fraction, thickness: Fraction) -> None:
    begins, ends = hole_span(diameter, thickness, "square", INCH)
    assert ends - begins == buttonhole(diameter, thickness)
    assert begins < button_line(diameter, INCH) < ends


def test_buttons_that_touch_are_told_with_the_remedy() -> None:
    places = button_positions(20 * CENTIMETRE, 11, Fraction(0))
    assert crowded_buttons(places, 22 * MILLIMETRE, METRIC) == (
        "buttons of 2.2 cm stand 2 cm apart and touch; use fewer or smaller ones"
    )
    assert crowded_buttons(places, 18 * MILLIMETRE, METRIC) == ""
    assert crowded_buttons((Fraction(4),), Fraction(1), INCH) == ""


@pytest.mark.parametrize(
    ("work", "message"),
    [
        (lambda: button_positions(Fraction(9), 0, Fraction(1)), "a closure has at least one button"),
        (lambda: even_inset(Fraction(9), 0), "a closure has at least one button"),
        (
            lambda: button_positions(Fraction(9), 2, Fraction(9, 2)),
            "the first and the last button cross: they are set in by half the edge; set them in by less",
        ),
        (
            lambda: button_positions(Fraction(9), 2, Fraction(-1)),
            "the distance of the buttons from the ends cannot be less than nothing, it is -1",
        ),
        (lambda: buttonhole(Fraction(0), Fraction(1, 8)), "the diameter of a button must be more than nothing, not 0"),
    ],
)
def test_buttons_that_cannot_be_placed_are_refused(work: Callable[[], object], message: str) -> None:
    with pytest.raises(CalculationError) as refusal:
        work()
    assert str(refusal.value) == message


def test_the_closest_pair_of_buttons_decides() -> None:
    assert crowded_buttons((Fraction(0), Fraction(1), Fraction(5)), Fraction(1), INCH) == (
        "buttons of 1 in stand 1 in apart and touch; use fewer or smaller ones"
    )
    assert crowded_buttons((Fraction(0), Fraction(1), Fraction(5)), Fraction(7, 8), INCH) == ""


def test_two_buttons_may_be_half_an_inch_apart() -> None:
    assert button_positions(Fraction(10), 2, Fraction(19, 4)) == (Fraction(19, 4), Fraction(21, 4))

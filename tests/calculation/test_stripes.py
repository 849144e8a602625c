"""Stripes as the grid of tucks: worked by hand, and looked up thread by thread."""

from __future__ import annotations

from fractions import Fraction
from itertools import groupby

import pytest
from hypothesis import given
from hypothesis import strategies as draw

from generator.calculation.cutting.stripes import (
    Stripe,
    TuckColours,
    colours_between,
    off_the_repeat,
    spacing_on_repeat,
    tuck_colours,
)
from generator.errors import CalculationError

TICKING = [Stripe("navy", Fraction(3, 4)), Stripe("white", Fraction(1, 4)), Stripe("sand", Fraction(1, 2))]


@pytest.mark.parametrize(
    ("wish", "repeat", "spacing"),
    [("7/4", "1/2", "2"), ("13/8", "1/2", "3/2"), ("1/4", "3/2", "3/2"), ("3", "3/2", "3"), ("11/8", "3/4", "3/2")],
)
def test_the_spacing_is_the_multiple_of_the_repeat_nearest_to_the_wish(wish: str, repeat: str, spacing: str) -> None:
    assert spacing_on_repeat(Fraction(wish), Fraction(repeat)) == Fraction(spacing)


def test_a_repeat_of_nothing_is_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        spacing_on_repeat(Fraction(1), Fraction(0))
    assert str(refusal.value) == (
        "the repeat of the stripes must be more than 0; measure from a stripe to the next like it"
    )


def test_a_fold_in_the_middle_of_the_white_shows_white_along_the_edge() -> None:
    # Navy 0 to 3/4, white to 1, sand to 1 1/2. Fold at 7/8, take-up 3/4: from 1/2 to 1 1/4; the next tuck begins at 2,
    # which is 1/2 in the navy of the next repeat.
    assert tuck_colours(TICKING, Fraction(7, 8), Fraction(3, 4), Fraction(3, 2)) == TuckColours(
        fold=("white",), left=("navy", "white"), right=("white", "sand"), space=("sand", "navy")
    )


def test_a_fold_on_the_line_between_two_stripes_shows_both() -> None:
    assert tuck_colours(TICKING, Fraction(3, 4), Fraction(1, 2), Fraction(3, 2)) == TuckColours(
        fold=("navy", "white"), left=("navy",), right=("white",), space=("sand", "navy")
    )


@given(number=draw.integers(1, 9))
def test_every_tuck_on_the_repeat_looks_the_same(number: int) -> None:
    first = tuck_colours(TICKING, Fraction(5, 8), Fraction(1, 2), Fraction(3))
    assert tuck_colours(TICKING, Fraction(5, 8) + number * 3, Fraction(1, 2), Fraction(3)) == first


@given(start=draw.integers(-60, 60), threads=draw.integers(1, 60))
def test_the_colours_of_a_stretch_are_those_of_its_threads(start: int, threads: int) -> None:
    # Sixteen threads to the inch: 12 navy, 4 white, 8 sand.
    weave = ["navy"] * 12 + ["white"] * 4 + ["sand"] * 8
    seen = [weave[thread % 24] for thread in range(start, start + threads)]
    stretch = colours_between(TICKING, Fraction(start, 16), Fraction(start + threads, 16))
    assert stretch == tuple(colour for colour, _ in groupby(seen))


def test_plain_cloth_has_one_colour_everywhere() -> None:
    assert colours_between([Stripe("ecru", Fraction(1))], Fraction(-1), Fraction(7)) == ("ecru",)


@pytest.mark.parametrize("stripes", [[], [Stripe("navy", Fraction(0))]])
def test_stripes_without_width_are_refused(stripes: list[Stripe]) -> None:
    with pytest.raises(CalculationError) as refusal:
        colours_between(stripes, Fraction(0), Fraction(1))
    assert str(refusal.value) == "colours are looked up on stripes that are wider than 0, from left to right"


def test_tucks_that_leave_no_cloth_between_them_are_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        tuck_colours(TICKING, Fraction(1), Fraction(3, 2), Fraction(3, 2))
    assert str(refusal.value) == (
        "the spacing must be more than the cloth in a tuck, or nothing is left between the tucks"
    )


def test_a_spacing_over_hundreds_of_repeats_is_refused_at_once() -> None:
    # 751 in over a repeat of 1 1/2 in are more than 500 of them; 750 are just 500.
    with pytest.raises(CalculationError) as refusal:
        tuck_colours(TICKING, Fraction(7, 8), Fraction(3, 4), Fraction(751))
    assert str(refusal.value) == (
        "from fold to fold lie more than 500 repeats of the stripes; are both in the right units?"
    )
    assert tuck_colours(TICKING, Fraction(7, 8), Fraction(3, 4), Fraction(750)).fold == ("white",)


def test_where_a_repeat_ends_its_last_colour_meets_its_first() -> None:
    ticking = [Stripe("navy", Fraction(1)), Stripe("white", Fraction(1, 2))]
    assert colours_between(ticking, Fraction(3, 2), Fraction(3, 2)) == ("white", "navy")


def test_folds_are_measured_from_the_first_of_them_wherever_it_lies() -> None:
    # A third of a repeat from the edge, then whole repeats and once a quarter more.
    marks = [Fraction(1, 3), Fraction(4, 3), Fraction(10, 3)]
    assert off_the_repeat(marks, Fraction(1)) == 0
    assert off_the_repeat([*marks, Fraction(55, 12)], Fraction(1)) == Fraction(1, 4)

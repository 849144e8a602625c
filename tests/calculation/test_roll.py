"""Rolls and their ends: worked by hand, and measured on drawn circles."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Point

from generator.calculation.pieces.roll import (
    circumference,
    circumference_bounds,
    round_end_remedy,
    worked_gathered_end,
)
from generator.errors import CalculationError
from generator.lengths import CENTIMETRE, INCH, METRIC, MILLIMETRE

EIGHTH = Fraction(1, 8)
DIAMETERS = st.integers(8, 800).map(lambda eighths: Fraction(eighths, 8))


@given(DIAMETERS)
def test_a_drawn_circle_is_as_long_as_its_bounds(diameter: Fraction) -> None:
    # A polygon inside the circle is shorter than the circle, by less than 1 part in 100,000 at 1,024 corners.
    drawn = Point(0, 0).buffer(float(diameter) / 2, quad_segs=256).exterior.length
    less, more = circumference_bounds(diameter)
    assert less < more
    assert drawn == pytest.approx(float(less), rel=1e-5)
    assert drawn < float(more)


@given(DIAMETERS)
def test_a_circumference_is_the_nearest_mark(diameter: Fraction) -> None:
    around = circumference(diameter, EIGHTH)
    assert (around / EIGHTH).denominator == 1
    assert abs(around - circumference_bounds(diameter)[0]) <= EIGHTH / 2 + Fraction(1, 10**9)


def test_a_metric_girth_is_worked_to_half_centimetres() -> None:
    # 18 cm x 3.14159 = 56.55 cm
    assert circumference(18 * CENTIMETRE, METRIC.cut_step) == 565 * MILLIMETRE


def test_a_gathered_end_reaches_from_the_rim_to_the_middle() -> None:
    # 16 + 2 x 1/2 round; 2 1/2 + 1/2 + 1/4 deep
    cut = worked_gathered_end(Fraction(16), Fraction(5, 2), Fraction(1, 2), Fraction(1, 4))
    assert cut == (17, Fraction(13, 4))


def test_where_a_tube_is_too_short_or_too_long_for_its_end_both_remedies_are_told() -> None:
    # 3.14159 x 9 = 28.27, to 1/8 in 28 1/4; 25 / 3.14159 = 7.958, to 1/16 in 7 15/16; 30 / 3.14159 = 9.549, 9 9/16
    told = "an end 9 in across is 28 1/4 in round: make what goes round it as long, or the end {} across"
    assert round_end_remedy(Fraction(25), Fraction(9), INCH) == told.format("7 15/16 in")
    assert round_end_remedy(Fraction(30), Fraction(9), INCH) == told.format("9 9/16 in")


def test_a_circle_of_no_size_is_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        circumference(Fraction(0), EIGHTH)
    assert str(refusal.value) == "the diameter must be more than nothing, not 0"

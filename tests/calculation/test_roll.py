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
    diameter_of,
    girth_fits,
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


@given(DIAMETERS)
def test_the_diameter_comes_back_from_the_girth(diameter: Fraction) -> None:
    assert diameter_of(circumference(diameter, EIGHTH), EIGHTH) == diameter


def test_a_metric_girth_is_worked_to_half_centimetres() -> None:
    # 18 cm x 3.14159 = 56.55 cm
    assert circumference(18 * CENTIMETRE, METRIC.cut_step) == 565 * MILLIMETRE


def test_a_gathered_end_reaches_from_the_rim_to_the_middle() -> None:
    # 16 + 2 x 1/2 round; 2 1/2 + 1/2 + 1/4 deep
    cut = worked_gathered_end(Fraction(16), Fraction(5, 2), Fraction(1, 2), Fraction(1, 4))
    assert cut == (17, Fraction(13, 4))


@given(DIAMETERS, st.sampled_from([Fraction(0), Fraction(1, 4), Fraction(1, 2)]))
def test_a_panel_cut_to_the_nearest_mark_always_fits(diameter: Fraction, seam: Fraction) -> None:
    cut = circumference(diameter, EIGHTH) + 2 * seam
    assert abs(girth_fits(cut, seam, diameter, INCH)) <= EIGHTH / 2 + Fraction(1, 10**9)


@pytest.mark.parametrize(
    ("cut", "seam", "diameter", "message"),
    [
        (
            65 * CENTIMETRE,
            CENTIMETRE,
            23 * CENTIMETRE,
            # pi x 23 + 2 = 74.26; (65 - 2) / pi = 20.05
            "a panel cut 65 cm with seams of 1 cm does not go round an end 23 cm across: it needs 74.3 cm; "
            "cut the panel 74.3 cm or make the end 20.1 cm across",
        ),
        (
            80 * CENTIMETRE,
            CENTIMETRE,
            23 * CENTIMETRE,
            # (80 - 2) / pi = 24.83
            "a panel cut 80 cm with seams of 1 cm does not go round an end 23 cm across: it needs 74.3 cm; "
            "cut the panel 74.3 cm or make the end 24.8 cm across",
        ),
        (
            CENTIMETRE,
            CENTIMETRE,
            23 * CENTIMETRE,
            "a panel cut 1 cm with seams of 1 cm does not go round an end 23 cm across: it needs 74.3 cm; "
            "cut the panel 74.3 cm",
        ),
    ],
)
def test_a_panel_that_does_not_go_round_is_refused(
    cut: Fraction, seam: Fraction, diameter: Fraction, message: str
) -> None:
    with pytest.raises(CalculationError) as refusal:
        girth_fits(cut, seam, diameter, METRIC)
    assert str(refusal.value) == message


def test_a_circle_of_no_size_is_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        circumference(Fraction(0), EIGHTH)
    assert str(refusal.value) == "the diameter must be more than nothing, not 0"

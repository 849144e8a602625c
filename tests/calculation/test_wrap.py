"""Wraps with a lap, worked by hand."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from generator.calculation.pieces.wrap import Lap, lap_faults, least_lap, least_upper_margin
from generator.lengths import CENTIMETRE, INCH, METRIC, MILLIMETRE

LAP = Lap(Fraction(2), Fraction(7, 8), Fraction(1, 8))


@given(
    st.fractions(min_value=Fraction(1, 4), max_value=2, max_denominator=16),
    st.fractions(min_value=0, max_value=Fraction(1, 2), max_denominator=16),
    st.fractions(min_value=0, max_value=1, max_denominator=16),
)
def test_the_upper_margin_follows_the_written_rule(diameter: Fraction, thickness: Fraction, out: Fraction) -> None:
    square = Lap(Fraction(4), diameter, thickness, turned_out=out)
    along = Lap(Fraction(4), diameter, thickness, "along", turned_out=out)
    assert least_upper_margin(square, INCH) == diameter * 3 / 2 + thickness + Fraction(3, 8) + out
    assert least_upper_margin(along, INCH) == diameter / 2 + Fraction(1, 2) + out


def test_a_metric_lap_has_metric_room() -> None:
    # 22 mm button, 3 mm thick: lap 22 + 12 = 34; margin 33 + 3 + 9 = 45 mm
    lap = Lap(5 * CENTIMETRE, 22 * MILLIMETRE, 3 * MILLIMETRE)
    assert least_lap(lap.diameter, METRIC) == 34 * MILLIMETRE
    assert least_upper_margin(lap, METRIC) == 45 * MILLIMETRE


def test_a_lap_with_room_has_no_fault() -> None:
    assert lap_faults(LAP, Fraction(29, 16), Fraction(2), INCH) == ()


def test_every_fault_of_a_lap_is_told_at_once() -> None:
    # least lap 7/8 + 1/2 = 1 3/8; least margin 21/16 + 2/16 + 6/16 = 1 13/16
    narrow = Lap(Fraction(1), Fraction(7, 8), Fraction(1, 8))
    assert lap_faults(narrow, Fraction(3, 2), Fraction(3, 4), INCH) == (
        "a lap of 1 in is too narrow for buttons of 7/8 in; make it 1 3/8 in or more",
        "the margin with the buttonholes is 1 1/2 in and a hole would run into the first tuck;"
        " make that margin 1 13/16 in or more",
        "the margin under the lap is 3/4 in and the lap 1 in: a tuck lies under the buttons; make that margin 1 in",
    )


def test_a_tuck_turned_out_over_the_lap_needs_its_depth_more() -> None:
    lap = Lap(Fraction(2), Fraction(7, 8), Fraction(1, 8), turned_out=Fraction(3, 8))
    assert lap_faults(lap, Fraction(2), Fraction(2), INCH) == (
        "the margin with the buttonholes is 2 in and a hole would run into the first tuck;"
        " make that margin 2 3/16 in or more",
    )


def test_a_lap_just_wide_enough_has_no_fault() -> None:
    # 7/8 + 1/2 = 1 3/8.
    just = Lap(Fraction(11, 8), Fraction(7, 8), Fraction(1, 8))
    assert lap_faults(just, Fraction(29, 16), Fraction(11, 8), INCH) == ()

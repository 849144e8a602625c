"""How long an opening is left: worked by hand, and always long enough for a hand and short enough for its side."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculation.pieces.openings import turning_opening
from generator.errors import CalculationError
from generator.lengths import INCH, METRIC, read_length

SIDES = st.fractions(min_value=Fraction(1, 2), max_value=80, max_denominator=16)


@pytest.mark.parametrize(
    ("across", "along", "opening"),
    [
        # Half of 10 is 5.
        ("10 in", "11 in", "5 in"),
        # Half of 4 is 2, less than fingers need; 4 less 3/4 at both corners leaves 2 1/2.
        ("4 in", "4 in", "2 1/2 in"),
        # Half of 16 is 8; 6 in are easily turned through.
        ("16 in", "72 in", "6 in"),
        # A side of 2 in has no room for that: half of it.
        ("2 in", "2 in", "1 in"),
    ],
)
def test_an_opening_by_hand(across: str, along: str, opening: str) -> None:
    assert turning_opening(read_length(across), read_length(along), INCH) == read_length(opening)


def test_a_metric_opening_lies_on_whole_centimetres() -> None:
    # Half of 27 cm is 13.5, to the nearest centimetre 14 (a half goes up); 10 cm less 2 at both corners are 6.
    wide, small = read_length("27 cm"), read_length("10 cm")
    assert turning_opening(wide, wide, METRIC) in (read_length("13 cm"), read_length("14 cm"))
    assert turning_opening(small, small, METRIC) == read_length("6 cm")


@given(SIDES, SIDES)
def test_an_opening_fits_into_the_longer_side_either_way_round(across: Fraction, along: Fraction) -> None:
    for edition in (INCH, METRIC):
        opening = turning_opening(across, along, edition)
        assert 0 < opening < max(across, along)
        assert opening == turning_opening(along, across, edition)


def test_work_of_no_size_is_refused() -> None:
    with pytest.raises(CalculationError, match="the width of the work must be more than nothing, not 0"):
        turning_opening(Fraction(0), Fraction(1), INCH)

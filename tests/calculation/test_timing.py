"""Times: worked by hand, and added up by the calendar's own arithmetic."""

from __future__ import annotations

from datetime import timedelta
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculation.making.timing import operation_minutes, printed_minutes
from generator.errors import CalculationError

RATES = {"cut a piece": Fraction(240), "mark a fold": Fraction(30), "stitch": Fraction(10)}


@given(st.dictionaries(st.sampled_from(sorted(RATES)), st.integers(0, 200)), st.integers(1, 4))
def test_minutes_add_up_like_spans_of_time(counts: dict[str, int], pace: int) -> None:
    span = sum((timedelta(seconds=int(RATES[name])) * count for name, count in counts.items()), timedelta())
    minutes = operation_minutes({name: Fraction(count) for name, count in counts.items()}, RATES, Fraction(pace))
    assert minutes == Fraction(int((span * pace).total_seconds()), 60)


@given(st.fractions(min_value=Fraction(1, 60), max_value=1_000, max_denominator=60))
def test_a_printed_time_is_the_nearest_five_minutes_and_never_nothing(minutes: Fraction) -> None:
    printed = printed_minutes(minutes)
    assert printed % 5 == 0
    assert printed >= 5
    assert abs(printed - minutes) <= Fraction(5, 2) or (printed == 5 and minutes < 5)


def test_no_work_takes_no_time() -> None:
    assert operation_minutes({}, RATES) == 0
    assert printed_minutes(Fraction(0)) == 0


def test_work_without_a_rate_is_refused_with_the_rates_there_are() -> None:
    with pytest.raises(CalculationError) as refusal:
        operation_minutes({"starch": Fraction(1)}, RATES)
    assert str(refusal.value) == (
        "there is no rate for 'starch'; the room has rates for: cut a piece, mark a fold, stitch"
    )


def test_a_negative_amount_of_work_is_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        operation_minutes({"stitch": Fraction(-1)}, RATES)
    assert str(refusal.value) == "the amount of 'stitch' cannot be less than nothing, it is -1"

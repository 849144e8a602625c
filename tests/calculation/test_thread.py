"""Thread: counted stitch by stitch, and in other units."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculation.making.thread import LEAST_RATIO, spools, stitching_thread, thread_ratio, thread_with_waste
from generator.errors import CalculationError
from generator.lengths import METRE, YARD

STACKS = st.fractions(min_value=0, max_value=1, max_denominator=100)


@given(STACKS, st.integers(4, 20), st.integers(1, 60))
def test_the_ratio_is_what_the_stitches_of_a_seam_take(stack: Fraction, per_inch: int, inches: int) -> None:
    taken = Fraction(0)
    for _ in range(per_inch * inches):
        needle = Fraction(1, per_inch) + stack  # along the top, then half through at each of its two holes
        bobbin = Fraction(1, per_inch) + stack  # the same below
        taken += needle + bobbin
    assert thread_ratio(stack, Fraction(per_inch)) == max(LEAST_RATIO, taken / inches)


@given(
    st.fractions(min_value=0, max_value=50_000, max_denominator=8),
    st.fractions(min_value=100, max_value=9_000, max_denominator=8),
    st.fractions(min_value=0, max_value=1, max_denominator=20),
)
def test_spools_are_enough_and_not_one_too_many(length: Fraction, spool: Fraction, waste: Fraction) -> None:
    number = spools(length, spool, waste)
    used = thread_with_waste(length, waste)
    assert number * spool >= used
    assert number == 0 or (number - 1) * spool < used


def test_thread_is_the_same_in_metres() -> None:
    # 40 m of stitching at 2.5 is 100 m, with a fifth 120 m, on spools of 100 m: 2
    length = stitching_thread(40 * METRE)
    units = pint.UnitRegistry(non_int_type=Fraction)
    assert units.Quantity(length, "inch").to("metre").magnitude == 100
    assert spools(length, 100 * METRE, Fraction(1, 5)) == 2


def test_a_spool_of_110_yards_lasts_for_36_yards_and_a_bit() -> None:
    # 110 / (2.5 x 1.2) = 36.67 yd of stitching
    assert spools(stitching_thread(Fraction(3666, 100) * YARD), 110 * YARD, Fraction(1, 5)) == 1
    assert spools(stitching_thread(Fraction(3667, 100) * YARD), 110 * YARD, Fraction(1, 5)) == 2


def test_nothing_sewn_needs_no_spool() -> None:
    assert spools(Fraction(0), 110 * YARD, Fraction(1, 5)) == 0


@pytest.mark.parametrize(
    ("work", "message"),
    [
        (
            lambda: thread_ratio(Fraction(1, 100), Fraction(0)),
            "the number of stitches must be more than nothing, not 0",
        ),
        (
            lambda: thread_ratio(Fraction(-1), Fraction(10)),
            "the thickness of the cloth cannot be less than nothing, it is -1",
        ),
        (
            lambda: spools(Fraction(1), Fraction(0), Fraction(0)),
            "the length of a spool must be more than nothing, not 0",
        ),
        (
            lambda: spools(Fraction(1), Fraction(1), Fraction(-1)),
            "the waste of thread cannot be less than nothing, it is -1",
        ),
    ],
)
def test_impossible_thread_is_refused(work: Callable[[], object], message: str) -> None:
    with pytest.raises(CalculationError) as refusal:
        work()
    assert str(refusal.value) == message

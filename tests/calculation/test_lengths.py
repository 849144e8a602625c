"""Lengths: written and read again, and rounded beside the decimal arithmetic of the standard library."""

from __future__ import annotations

from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_UP, Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.lengths import (
    CENTIMETRE,
    INCH,
    METRIC,
    MILLIMETRE,
    Edition,
    coarsest_grid,
    on_step,
    read_length,
    round_down,
    round_nearest,
    round_up,
    say_length,
    write_length,
)

LENGTHS = st.fractions(min_value=0, max_value=9_999, max_denominator=9_999)
SIXTEENTHS = st.integers(0, 16 * 200).map(lambda number: Fraction(number, 16))
STEPS = st.sampled_from([Fraction(1, 32), Fraction(1, 16), Fraction(1, 8), Fraction(1, 4), Fraction(1)])


@given(LENGTHS)
def test_a_length_written_in_inches_is_read_again(length: Fraction) -> None:
    assert read_length(write_length(length, INCH, unit=True)) == length
    assert read_length(write_length(length, INCH), "in") == length


@given(st.integers(0, 9_999_999))
def test_a_metric_length_written_in_centimetres_is_read_again(ten_thousandths: int) -> None:
    length = Fraction(ten_thousandths, 10_000) * CENTIMETRE
    assert read_length(write_length(length, METRIC, unit=True)) == length


@given(LENGTHS)
def test_a_length_below_nothing_is_written_as_its_opposite_with_a_sign(length: Fraction) -> None:
    for edition in (INCH, METRIC):
        sign = "-" if length else ""
        assert write_length(-length, edition) == sign + write_length(length, edition)


@given(st.integers(-99_999, 99_999), st.sampled_from(["0.1", "0.25", "0.5", "1", "2.5"]))
def test_rounding_is_that_of_decimal_arithmetic(thousandths: int, step: str) -> None:
    # The library knows no steps, but it rounds the number of steps, and halves away from zero: upward above it.
    length, steps = Fraction(thousandths, 1000), Decimal(thousandths) / 1000 / Decimal(step)

    def by(how: str) -> Fraction:
        return Fraction(steps.quantize(Decimal(1), rounding=how)) * Fraction(step)

    assert round_down(length, Fraction(step)) == by(ROUND_FLOOR)
    assert round_up(length, Fraction(step)) == by(ROUND_CEILING)
    if length >= 0:
        assert round_nearest(length, Fraction(step)) == by(ROUND_HALF_UP)


@given(LENGTHS, STEPS)
def test_a_rounded_length_lies_on_its_step_and_less_than_a_step_away(length: Fraction, step: Fraction) -> None:
    down, up, nearest = (rounding(length, step) for rounding in (round_down, round_up, round_nearest))
    assert all(on_step(rounded, step) for rounded in (down, up, nearest))
    assert down <= length <= up < down + 2 * step
    assert abs(nearest - length) <= step / 2
    assert (down == up) == on_step(length, step)


@given(st.lists(SIXTEENTHS, min_size=1, max_size=6))
def test_the_coarsest_grid_is_the_greatest_power_of_two_in_all_sixteenths(marks: list[Fraction]) -> None:
    # Counted in sixteenths: 16 make an inch, 8 a half, 4 a quarter, 2 an eighth. 0 is divisible by all of them.
    sixteenths = [int(mark * 16) for mark in marks]
    place = next(place for place, size in enumerate((16, 8, 4, 2, 1)) if all(mark % size == 0 for mark in sixteenths))
    assert coarsest_grid(tuple(marks), INCH) == place


def test_a_length_off_every_division_has_no_grid() -> None:
    assert coarsest_grid((Fraction(1), Fraction(1, 3)), INCH) is None


@pytest.mark.parametrize("edition", [INCH, METRIC], ids=["inch", "metric"])
@given(length=LENGTHS)
def test_a_length_is_said_to_half_a_mark_and_as_it_is_where_the_ruler_shows_it(
    edition: Edition, length: Fraction
) -> None:
    said = read_length(say_length(length, edition))
    assert abs(said - length) <= edition.mark / 2
    mark = round_nearest(length, edition.mark)
    assert read_length(say_length(mark, edition)) == mark


def test_small_metric_lengths_are_said_in_millimetres() -> None:
    assert [say_length(size * MILLIMETRE, METRIC) for size in (Fraction(2, 5), 1, 9, 10, 15)] == [
        "0 cm",
        "1 mm",
        "9 mm",
        "1 cm",
        "1.5 cm",
    ]


@pytest.mark.parametrize("work", [lambda: read_length(1.5), lambda: write_length(1.5, INCH)], ids=["read", "written"])  # type: ignore[arg-type]
def test_a_float_is_never_a_length(work) -> None:
    with pytest.raises(TypeError, match="float"):
        work()

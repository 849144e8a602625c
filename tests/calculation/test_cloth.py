"""Shrinkage and the shop's steps, worked by hand and washed again."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as draw

from generator.calculation.cutting.cloth import Buying, buy_text, length_to_buy, washed_width
from generator.errors import CalculationError
from generator.lengths import CENTIMETRE, INCH, METRE, METRIC, YARD

EIGHTH = YARD / 8


def test_forty_five_inches_that_lose_a_fiftieth_leave_less_than_forty_four_and_an_eighth() -> None:
    # 45 x 0.98 = 44.1
    assert washed_width(Fraction(45), Fraction(2, 100)) == Fraction(441, 10)


def test_cloth_that_does_not_shrink_keeps_its_width() -> None:
    assert washed_width(Fraction(44), Fraction(0)) == 44


def test_the_length_to_buy_is_divided_not_multiplied() -> None:
    # 50 in at 10 %: 50 / 0.9 = 55 5/9, so 58 1/2 in (13 eighths of a yard). 50 x 1.1 = 55 would give 58 1/2 too, but at
    # 49 in: 49 / 0.9 = 54 4/9 -> 58 1/2, while 49 x 1.1 = 53.9 -> 54 would leave 48.6 in.
    assert length_to_buy(Fraction(50), Fraction(1, 10), EIGHTH) == Fraction(117, 2)
    assert length_to_buy(Fraction(49), Fraction(1, 10), EIGHTH) == Fraction(117, 2)


def test_metric_cloth_is_bought_by_tenths_of_a_metre() -> None:
    # 1.17 m / 0.97 = 1.206 m, up to 1.3 m.
    assert length_to_buy(117 * CENTIMETRE, Fraction(3, 100), METRE / 10) == Fraction(13, 10) * METRE


def test_a_shop_may_have_another_step() -> None:
    # 47 1/4 in are 1.3125 yd: by quarters 1 1/2 yd, by eighths 1 3/8.
    assert length_to_buy(Fraction(189, 4), Fraction(0), YARD / 4) == Fraction(54)
    assert length_to_buy(Fraction(189, 4), Fraction(0), EIGHTH) == Fraction(99, 2)


@given(
    sixteenths=draw.integers(1, 5_000),
    eighths=draw.integers(0, 20),
    shrinkage=draw.fractions(0, Fraction(1, 3), max_denominator=200),
)
def test_what_is_bought_is_enough_after_washing_and_straightening_and_one_step_less_is_not(
    sixteenths: int, eighths: int, shrinkage: Fraction
) -> None:
    length, kept = Fraction(sixteenths, 16), Fraction(eighths, 8)
    for edition in (INCH, METRIC):
        buying = Buying(edition.buy_step, shrinkage, kept)
        bought = buying.bought(length)
        assert bought - bought * shrinkage >= length + kept
        assert bought - bought * shrinkage - kept == buying.enough(bought)
        assert buying.enough(bought - edition.buy_step) < length


@pytest.mark.parametrize("shrinkage", [Fraction(1), Fraction(3, 2)])
def test_cloth_that_loses_all_of_itself_is_refused(shrinkage: Fraction) -> None:
    with pytest.raises(CalculationError, match="cannot be; give what washing takes, 0 % to 99 %"):
        length_to_buy(Fraction(10), shrinkage, EIGHTH)


def test_cloth_that_grows_is_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        washed_width(Fraction(44), Fraction(-1, 50))
    assert str(refusal.value) == "a shrinkage of -2 % cannot be; give what washing takes, 0 % to 99 %"


@pytest.mark.parametrize(
    ("eighths", "text"), [(11, "1 3/8 yd"), (8, "1 yd"), (1, "1/8 yd"), (12, "1 1/2 yd"), (0, "0 yd")]
)
def test_yards_are_written_as_the_shop_says_them(eighths: int, text: str) -> None:
    assert buy_text(eighths * YARD / 8, INCH) == text


@pytest.mark.parametrize(("tenths", "text"), [(13, "1.3 m"), (10, "1 m"), (1, "0.1 m")])
def test_metres_are_written_as_decimals(tenths: int, text: str) -> None:
    assert buy_text(tenths * METRE / 10, METRIC) == text

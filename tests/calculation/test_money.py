"""Money: read, worked by hand, and worked again in decimals."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculation.making.money import Currency, Money, priced, read_money, total
from generator.errors import CalculationError

POUND = Currency("£", before=True, space=False, places=2)


@pytest.mark.parametrize(
    ("text", "places", "minor", "written"),
    [
        ("£4.50", 2, 450, "£4.50"),
        ("£ 4.5", 2, 450, "£ 4.50"),
        ("4.50 kr", 2, 450, "4.50 kr"),
        ("Fr. 3", 2, 300, "Fr. 3.00"),
        ("12€", 2, 1200, "12.00€"),
        ("¥120", 0, 120, "¥120"),
        ("1.25 د.ت", 3, 1250, "1.250 د.ت"),
        ("  £0.05 ", 2, 5, "£0.05"),
    ],
)
def test_a_price_keeps_its_mark_where_it_stood(text: str, places: int, minor: int, written: str) -> None:
    money = read_money(text, places)
    assert (money.minor, str(money)) == (minor, written)


@pytest.mark.parametrize("text", ["4.50", "£4,50", "£.50", "£-4", "£4.50 kr", "four pounds", "", "£4.50.1", "£4.5e3"])
def test_a_text_that_is_no_price_is_refused(text: str) -> None:
    with pytest.raises(CalculationError) as refusal:
        read_money(text)
    assert str(refusal.value) == (
        f"'{text}' is not a price; write a number and one mark, for example '£4.50' or '4.50 kr'"
    )


def test_a_price_finer_than_the_money_is_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        read_money("¥1.5", 0)
    assert str(refusal.value) == "'¥1.5' is finer than the room's money, which has 0 decimals"


@given(st.integers(0, 10**9 - 1), st.sampled_from([0, 2, 3]))
def test_money_that_is_written_is_read_again(minor: int, places: int) -> None:
    money = Money(minor, Currency("kr", before=False, space=True, places=places))
    assert read_money(str(money), places) == money


def test_a_debt_is_written_with_its_sign_first() -> None:
    assert str(Money(-450, POUND)) == "-£4.50"
    assert str(Money(-5, Currency("kr", before=False, space=True, places=2))) == "-0.05 kr"


@given(st.integers(0, 100_000), st.integers(0, 10_000))
def test_a_cost_is_what_decimals_round_half_up_give(pence: int, eighths: int) -> None:
    exact = Decimal(pence) * Decimal(eighths) / Decimal(8)
    assert priced(Money(pence, POUND), Fraction(eighths, 8)).minor == int(exact.quantize(Decimal(1), ROUND_HALF_UP))


def test_a_bill_adds_up_from_its_printed_lines() -> None:
    # 1 3/8 x 8.50 = 11.6875, 11.69; 3 x 0.33 = 0.99; together 12.68
    lines = [priced(Money(850, POUND), Fraction(11, 8)), priced(Money(33, POUND), Fraction(3))]
    assert [str(line) for line in lines] == ["£11.69", "£0.99"]
    assert str(total(lines)) == "£12.68"


def test_a_negative_amount_is_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        priced(Money(850, POUND), Fraction(-1))
    assert str(refusal.value) == "the amount cannot be less than nothing, it is -1"


def test_two_currencies_are_not_added() -> None:
    with pytest.raises(CalculationError) as refusal:
        total([read_money("£1"), read_money("1 kr")])
    assert str(refusal.value) == "prices in kr and £ cannot be added; give all prices in one currency"


def test_two_readings_of_one_currency_are_not_added() -> None:
    with pytest.raises(CalculationError) as refusal:
        total([read_money("£1", 2), read_money("£1", 0)])
    assert str(refusal.value) == "prices with different numbers of decimals cannot be added; read them all alike"

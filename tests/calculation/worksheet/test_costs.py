"""What a sheet costs, worked by hand from a short price list."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, WRAP, put, sheet, warnings

from generator.calculation.worksheet.costs import Purchase, bill
from generator.definitions.room_file import Price
from generator.errors import FaultyFileError

PRICES = "prices:\n  face: £12 a yard\n  thread: £2.40 each\n  square cushion pad: £6.50\n"
YARD, FOOT = Fraction(36), Fraction(12)


def test_a_sheet_costs_its_cloth_thread_and_supplies(tmp_path: Path) -> None:
    # The medium cushion needs 35 1/4 in of cloth and 1 in to straighten it, so it buys 1 1/8 yd (13.50), a spool (2.40)
    # and a pad (6.50): 22.40.
    found = sheet(tmp_path, CUSHION, "medium", site=PRICES)
    told = "£22.40: face (1 1/8 yd) £13.50, thread (1 spool) £2.40, square cushion pad, 16 in each way (1) £6.50"
    assert found.cost == told


def test_cloth_in_metres_is_priced_by_the_yard_exactly(tmp_path: Path) -> None:
    # An interval of 7.5 with tucks of 1 loses 7.5 - sqrt(56.25 - pi^2) = 0.690; five rows: 40 + 3 + 4 x 0.690 = 45.76,
    # cut 46.  Front 79 by 46; halves (40 + 10) / 2 + 1.5 + 5 = 31.5 by 43.  On 112 a half fits beside the front, 110.5;
    # strips of 46 and 43 are 89 cm, both halves one below the other beside the front are 86.  With 2.5 to straighten
    # 88.5: 0.9 m.  0.9 / 0.9144 x 12 = 11.811.
    found = sheet(tmp_path, CUSHION, "medium", "metric", site="prices:\n  face: £12 a yard\n")
    assert found.cost.startswith("£11.81: face (0.9 m) £11.81; without thread")


def test_a_room_without_prices_says_nothing_of_cost(tmp_path: Path) -> None:
    assert sheet(tmp_path, CUSHION, "medium").cost == ""


def test_what_has_no_price_is_named(tmp_path: Path) -> None:
    found = sheet(tmp_path, CUSHION, "medium", site="prices:\n  thread: 2.40 each\n")
    assert found.cost == "2.40: thread (1 spool) 2.40; without face, square cushion pad"


def test_closures_are_priced_by_their_kind_in_the_singular_too(tmp_path: Path) -> None:
    # Three buttons at 0.35.
    found = sheet(tmp_path, WRAP, "neck", site="prices:\n  button: £0.35 each\n")
    assert found.cost == "£1.05: buttons (3) £1.05; without face, thread"


def test_a_supply_of_a_length_is_priced_by_length_and_keeps_its_number(tmp_path: Path) -> None:
    # 2 of 18 in are a yard: 1.20.
    text = put(
        CUSHION, ("Square cushion pad, {{ side }} each way", "Cord\n    quantity: 2\n    length: 18 in or 45 cm")
    )
    found = sheet(tmp_path, text, "medium", site="prices:\n  cord: £1.20 a yard\n")
    [line] = found.supplies
    assert (line.amount, line.number, line.length) == ("2 of 18 in", 2, 18)
    assert found.cost == "£1.20: cord (2 of 18 in) £1.20; without face, thread"


@pytest.mark.parametrize(
    ("prices", "says"),
    [
        ("face: £12", "prices in site.yaml: the price of 'face' names no length; write for example 14.80 a yard"),
        (
            "square cushion pad: £2 a foot",
            "prices in site.yaml: the price of 'square cushion pad' is for a length, but 'Square cushion pad, 16 in "
            "each way' is counted; write it each",
        ),
        (
            "face: £12 a yard\n  thread: 2.40 kr each",
            "prices in site.yaml: prices in kr and £ cannot be added; give all prices in one currency",
        ),
    ],
)
def test_prices_that_cannot_be_used_are_a_warning(tmp_path: Path, prices: str, says: str) -> None:
    found = sheet(tmp_path, CUSHION, "medium", site=f"prices:\n  {prices}\n")
    assert warnings(found) == [f"warning: {says} (size medium, inch)"]
    assert found.cost == ""


def test_a_line_is_rounded_once_and_the_lines_add_up() -> None:
    # 1/3 yd at 1.00 is 0.333 and so 0.33; three of them 0.99, not 1.00.
    things = [Purchase("cord", "12 in", Fraction(1), FOOT)] * 3
    found = bill(things, {"cord": Price("£1.00", YARD)})
    assert [str(line.cost) for line in found.lines] == ["£0.33"] * 3
    assert str(found.whole) == "£0.99"


def test_a_price_belongs_to_the_thing_of_that_name_and_to_no_other() -> None:
    # A button to cover is another thing than a button; what follows the comma only describes it.
    buttons = [Purchase("Buttons to cover, 22 mm", "2", Fraction(2)), Purchase("Button, shell", "1", Fraction(1))]
    found = bill(buttons, {"button": Price("1.00")})
    assert ([line.item for line in found.lines], found.unpriced) == (["Button, shell"], ("Buttons to cover",))
    found = bill(buttons, {"buttons": Price("1.00"), "button to cover": Price("3.00")})
    assert [str(line.cost) for line in found.lines] == ["6.00", "1.00"]


@pytest.mark.parametrize(
    ("currency", "told"),
    [("£", "£2.40: thread (1 spool) £2.40"), ("kr", "2.40 kr: thread (1 spool) 2.40 kr")],
)
def test_the_money_of_the_room_is_told_with_each_cost(tmp_path: Path, currency: str, told: str) -> None:
    site = f"currency: {currency}\nprices:\n  thread: 2.40 each\n"
    assert sheet(tmp_path, CUSHION, "medium", site=site).cost.startswith(told)


def test_a_mark_of_money_has_no_number(tmp_path: Path) -> None:
    with pytest.raises(FaultyFileError, match="'2 kr' is no mark of money; write a sign or a short word"):
        sheet(tmp_path, CUSHION, "medium", site="currency: 2 kr\n")


def test_a_price_of_three_decimals_gives_all_of_them_three() -> None:
    prices = {"cord": Price("0.125"), "pad": Price("2")}
    found = bill([Purchase("cord", "3", Fraction(3)), Purchase("pad", "1", Fraction(1))], prices)
    assert [str(line.cost) for line in found.lines] == ["0.375", "2.000"]
    assert str(found.whole) == "2.375"


def test_cloth_is_found_by_its_own_name_only() -> None:
    prices = {"face": Price("1.00", YARD)}
    assert bill([Purchase("face cover", "1 yd", Fraction(1), YARD, cloth=True)], prices).unpriced == ("face cover",)

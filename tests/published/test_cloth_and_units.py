"""Units, paper and cloth as it is bought, beside standards and books; the source stands beside each check."""

from __future__ import annotations

from fractions import Fraction
from math import ceil, floor

import pytest
from hypothesis import given
from hypothesis import strategies as draw

from generator.calculation.cloth import buy_text, length_to_buy
from generator.calculation.layout import cutting_layout
from generator.calculation.worked import CutItem
from generator.lengths import INCH, METRIC, MILLIMETRE, YARD, read_length, write_length
from generator.rendering.styles import PAPERS


def test_a_yard_is_9144_ten_thousandths_of_a_metre() -> None:
    # L. V. Judson, Addendum to NBS Circular 572; Federal Register notice 59-5442
    assert read_length("1 yd") == read_length("0.9144 m")
    assert write_length(YARD, METRIC) == "91.44"


def test_an_inch_is_exactly_25_4_millimetres() -> None:
    # L. V. Judson, Addendum to NBS Circular 572; Federal Register notice 59-5442
    assert read_length("1 in") == read_length("25.4 mm") == Fraction(254, 10) * MILLIMETRE


@pytest.mark.parametrize(("inches", "bought"), [("36", "1 yd"), ("36 1/16", "1 1/8 yd"), ("41", "1 1/4 yd")])
def test_cloth_is_bought_by_the_eighth_of_a_yard(inches: str, bought: str) -> None:
    # K. F. Ball & M. E. West, Household Arithmetic, Lippincott 1920, p. 100: by 1/8 or 1/4 yd. An eighth is 4 1/2 in.
    assert buy_text(length_to_buy(read_length(inches, "in"), Fraction(0), INCH), INCH) == bought


@pytest.mark.parametrize(("inches", "bought"), [("36", "1 yd"), ("36 1/16", "1 1/4 yd"), ("46", "1 1/2 yd")])
def test_cloth_is_bought_by_the_quarter_of_a_yard(inches: str, bought: str) -> None:
    # The same page. A quarter is 9 in.
    assert buy_text(length_to_buy(read_length(inches, "in"), Fraction(0), INCH, YARD / 4), INCH) == bought


@given(across=draw.integers(1, 176), along=draw.integers(1, 200), number=draw.integers(1, 200))
def test_pieces_across_the_width_are_rounded_down_and_rows_up(across: int, along: int, number: int) -> None:
    # Arithmetic: in quarters of an inch on 44 in of cloth, and never less than the area alone would say.
    item = CutItem("mat", "Mat", Fraction(across, 4), Fraction(along, 4), number)
    layout = cutting_layout([item], Fraction(44))
    rows = ceil(Fraction(number, floor(Fraction(176, across))))
    assert layout.length == rows * Fraction(along, 4)
    assert layout.length >= number * item.across * item.along / 44


def test_area_alone_would_buy_too_little() -> None:
    # Arithmetic: three mats of 24 x 10 on 44 in: area 720/44 = 16 4/11 in, but each needs a row of its own, 30 in.
    layout = cutting_layout([CutItem("mat", "Mat", Fraction(24), Fraction(10), 3)], Fraction(44))
    assert layout.length == 30


def test_a4_is_210_by_297_millimetres() -> None:
    # ISO 216:2007; sides of 150 to 600 mm within 2 mm (tolerance from secondary sources)
    width, height = PAPERS["A4"]
    assert abs(width * 25.4 - 210) < 0.01
    assert abs(height * 25.4 - 297) < 0.01
    # Sixteen sheets of A4 make A0, one square metre; the sides are as 1 to the root of 2. Both within the tolerance.
    assert 208 * 295 < 1_000_000 / 16 < 212 * 299
    assert (295 / 212) ** 2 < 2 < (299 / 208) ** 2


def test_us_letter_is_8_1_2_by_11_inches() -> None:
    # ANSI/ASME Y14.1 size A (from memory)
    assert PAPERS["Letter"] == (8.5, 11.0)

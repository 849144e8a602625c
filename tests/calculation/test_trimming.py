"""Trimming to length after the rows: what is left and what falls off, by hand."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from row_panels import SEAM, even_tucks

from generator.calculation.turning.plans import turn_plan
from generator.calculation.turning.rows import RowWish, choose_rows
from generator.calculation.turning.trimming import Trimming, trim_words, trimming
from generator.lengths import INCH, METRIC, MILLIMETRE

WISH = RowWish(
    finished_along=Fraction(16),
    ends=(SEAM, SEAM),
    plan=turn_plan("ripples"),
    spacing=Fraction(3),
    first=(Fraction(2), Fraction(3)),
)
TUCKS = even_tucks(12, Fraction(1, 2), Fraction(1))


def test_the_same_is_trimmed_at_both_ends() -> None:
    # Extra 1 7/8, draw-in 5/8 to 1 13/16: 1/32 to 5/8 falls off at either end of 18 7/8, and 17 are left. A ruler of
    # sixteenths shows no 1/32: at least nothing falls off.
    assert trimming(choose_rows(WISH, TUCKS, INCH), Fraction(17), INCH) == Trimming(
        Fraction(17), Fraction(0), Fraction(5, 8)
    )
    # Extra 7/16, draw-in 0 to 3/16: 1/8 to 7/32, which is told as 1/4.
    rows = replace(choose_rows(WISH, TUCKS, INCH), extra=Fraction(7, 16), draw_in_least=Fraction(0))
    rows = replace(rows, draw_in_most=Fraction(3, 16))
    assert trimming(rows, Fraction(17), INCH) == Trimming(Fraction(17), Fraction(1, 8), Fraction(1, 4))


def test_a_panel_that_does_not_draw_in_is_not_trimmed() -> None:
    wish = replace(WISH, plan=turn_plan("one way"))
    trimmed = trimming(choose_rows(wish, TUCKS, INCH), Fraction(17), INCH)
    assert trimmed == Trimming(Fraction(17), Fraction(0), Fraction(0))
    assert trim_words(trimmed, INCH) == ""


def test_trimming_is_told_in_one_sentence() -> None:
    assert trim_words(Trimming(430 * MILLIMETRE, Fraction(0), 8 * MILLIMETRE), METRIC) == (
        "Trim the panel to 43 cm, the same at the top and at the bottom: up to 8 mm at either end."
    )


def test_a_range_is_told_in_one_unit() -> None:
    assert trim_words(Trimming(430 * MILLIMETRE, 4 * MILLIMETRE, 12 * MILLIMETRE), METRIC) == (
        "Trim the panel to 43 cm, the same at the top and at the bottom: between 0.4 and 1.2 cm at either end."
    )


def test_where_nothing_is_in_doubt_one_length_is_told() -> None:
    assert trim_words(Trimming(Fraction(17), Fraction(1, 16), Fraction(1, 16)), INCH) == (
        "Trim the panel to 17 in, the same at the top and at the bottom: 1/16 in at either end."
    )

"""What no number of tucks can meet: every refusal with its whole message."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from tuck_panels import inches, seam, wish_of

from generator.calculation.count_rule import CountRule
from generator.calculation.panel.choice import TuckWish, choose_tucks
from generator.calculation.worked import End
from generator.errors import CalculationError
from generator.lengths import CENTIMETRE, INCH, METRIC, Edition

USUAL = ("3/4", "1 1/2")


def turned(first: str, last: str) -> object:
    return lambda _count: (first, last)


REFUSALS: list[tuple[str, TuckWish]] = [
    (
        # p 3/4: 14 leave 12 - 9 3/4 = 2 1/4, 16 leave 3/4. Sizes: 9 3/4 + 1 3/4 = 11 1/2, 11 1/4 + 1 1/2 = 12 3/4.
        "no number of tucks fits 12 in: nearest are 14 tucks with margins of 1 1/8 in and 16 tucks with margins of 3/8 "
        "in; the margins may be 3/4 in to 7/8 in, and an even number is wanted. Finished sizes that would fit: 11 1/2 "
        "in (14 tucks) and 12 3/4 in (16 tucks)",
        wish_of("12", "3/8", "1 1/2", ("3/4", "7/8"), facing=True, rule=CountRule(2)),
    ),
    (
        # 6 gaps of 1 1/2 leave 10 - 9 = 1, less than one more gap. 9 + 2 x 2 = 13.
        "7 tucks do not fit 10 in: nearest is 7 tucks with margins of 1/2 in; the margins may be 2 in to 3 in. "
        "Finished size that would fit: 13 in (7 tucks)",
        wish_of("10", "3/8", "2 1/4", ("2", "3"), rule=CountRule(exactly=7)),
    ),
    (
        # 9 tucks: 12 - 8 x 3/4 = 6, 3 each side.
        "9 tucks do not fit 12 in: nearest is 9 tucks with margins of 3 in; the margins may be 3/4 in to 1 1/2 in. "
        "Finished size that would fit: 9 in (9 tucks)",
        wish_of("12", "3/8", "1 1/2", USUAL, rule=CountRule(exactly=9)),
    ),
    (
        # One tuck needs 3/4 + 3/4 = 1 1/2.
        "no number of tucks fits 1 in: nearest is 1 tuck with margins of 1/2 in; the margins may be 3/4 in to 7/8 in. "
        "Finished size that would fit: 1 1/2 in (1 tuck)",
        wish_of("1", "3/8", "1 1/2", ("3/4", "7/8")),
    ),
    (
        # 10 1/2 in 8 gaps: 1 5/16 + 3/4 = 2 1/16. Window 1 3/8 to 1 5/8 (1/8 is less than a tenth, 3/20: 1.35 to 1.65).
        "9 tucks do not fit 12 in: nearest is 9 tucks 2 1/16 in apart with margins of 3/4 in; the spacing may be "
        "1 3/8 in to 1 5/8 in",
        wish_of("12", "3/8", "1 1/2", ("3/4", "3/4"), gives="spacing", rule=CountRule(exactly=9)),
    ),
    (
        # Margins 3/4 and 1 at least: 10 1/4 in 8 gaps, 1 9/32 + 3/4 = 2 1/32, on the ruler 2 1/16.
        "9 tucks do not fit 12 in: nearest is 9 tucks 2 1/16 in apart with margins of 7/8 in; the spacing may be "
        "1 3/8 in to 1 5/8 in",
        replace(
            wish_of("12", "3/8", "1 1/2", ("3/4", "2"), gives="spacing", rule=CountRule(exactly=9)),
            left_margin=(inches("3/4"), inches("7/8")),
            right_margin=(inches("1"), inches("1 1/8")),
        ),
    ),
    (
        # 1/2 in between the margins: 2 tucks 1/2 + 3/4 apart, one tuck leaves 2 in where 1 1/2 is all it may.
        "no number of tucks fits 2 in: nearest is 2 tucks 1 1/4 in apart with margins of 3/4 in; the spacing may be "
        "1 3/8 in to 1 5/8 in",
        wish_of("2", "3/8", "1 1/2", ("3/4", "3/4"), gives="spacing"),
    ),
    (
        # Round 5 in: 4 tucks 5/4 + 3/4 = 2 apart, 8 tucks 5/8 + 3/4 = 1 3/8: too near for facing folds.
        "no number of tucks fits 5 in: nearest are 4 tucks 2 in apart and 8 tucks 1 3/8 in apart; the spacing may be "
        "1 3/8 in to 1 5/8 in and at least 1 1/2 in where folds face each other, and a multiple of 4 is wanted",
        wish_of("5", "3/8", "1 1/2", USUAL, ring=True, facing=True, rule=CountRule(4)),
    ),
    (
        "tucks 3/8 in deep take up 3/4 in each, so a spacing of 3/4 in leaves nothing between them; space them more "
        "than 3/4 in apart",
        wish_of("12", "3/8", "3/4", USUAL),
    ),
    (
        "tucks 1/2 in deep that face each other need at least as much from stitching to stitching, here it is 1/4 in; "
        "space them at least 1 1/2 in apart",
        wish_of("12", "1/2", "1 1/4", USUAL, facing=True),
    ),
    (
        "a depth of 1/3 in lies between two marks of the room's ruler, whose finest is 1/16 in; choose 5/16 in or "
        "3/8 in, or give the ruler finer marks in site.yaml",
        wish_of("12", "1/3", "1 1/2", USUAL),
    ),
    (
        "a depth of 1/50 in lies between two marks of the room's ruler, whose finest is 1/16 in; choose 1/16 in, or "
        "give the ruler finer marks in site.yaml",
        wish_of("12", "1/50", "1 1/2", USUAL),
    ),
    ("the depth must be more than nothing, not 0", wish_of("12", "0", "1 1/2", USUAL)),
    ("the spacing must be more than nothing, not 0", wish_of("12", "3/8", "0", USUAL)),
    ("the finished size must be more than nothing, not 0", wish_of("0", "3/8", "1 1/2", USUAL)),
    (
        "the left margin may be 3/8 in at most, but a tuck 3/8 in deep turned outward needs 1/2 in; allow a wider "
        "margin, or turn the edge tuck inward",
        wish_of("12", "3/8", "1 1/2", ("1/8", "3/8"), lies=turned("out", "in")),
    ),
    (
        "the right margin may be 1/4 in at most, but a tuck 3/8 in deep beside which the presser foot runs needs 3/8 "
        "in; allow a wider margin",
        replace(wish_of("12", "3/8", "1 1/2", USUAL), right_margin=(inches("1/8"), inches("1/4"))),
    ),
    (
        "the left margin runs downwards; give the smaller length first",
        wish_of("12", "3/8", "1 1/2", ("1 1/2", "3/4")),
    ),
    (
        # (20000 - 3) / (3/4) = 26662.67, so 26663 tucks.
        "20000 in would take about 26663 tucks; more than 500 are not worked out in one panel. Are finished size "
        "and spacing in the right units?",
        wish_of("20000", "3/8", "1 1/2", USUAL),
    ),
    (
        "a panel closed to a ring is closed by a seam; give its left and right edge a seam",
        replace(wish_of("12", "3/8", "1 1/2", USUAL, ring=True), ends=(seam(), End("caught hem"))),
    ),
    (
        "the sample says that a tuck takes up no cloth; measure it again",
        wish_of("12", "3/8", "1 1/2", USUAL, take_up=Fraction(0)),
    ),
    (
        "a caught hem needs a tuck to hold it; write 'hem' or 'seam' for a plain panel",
        replace(wish_of("12", "3/8", "1 1/2", USUAL, rule=CountRule(exactly=0)), ends=(seam(), End("caught hem"))),
    ),
]


@pytest.mark.parametrize(("text", "wish"), REFUSALS)
def test_a_wish_that_cannot_be_met_is_refused_with_the_reason(text: str, wish: TuckWish) -> None:
    with pytest.raises(CalculationError) as refusal:
        choose_tucks(wish, INCH)
    assert str(refusal.value) == text


def test_a_refusal_in_the_metric_edition_is_told_in_centimetres() -> None:
    # p 2 cm: 15 tucks leave 30 - 28 = 2 cm, 1 each; 14 leave 4 cm, 2 each; only 1.4 to 1.6 is allowed.
    bounds = (14 * CENTIMETRE / 10, 16 * CENTIMETRE / 10)
    ends = (End("seam", CENTIMETRE), End("seam", CENTIMETRE))
    wish = TuckWish(30 * CENTIMETRE, CENTIMETRE, 4 * CENTIMETRE, ends, bounds, bounds, rule=CountRule(exactly=14))
    assert refused(wish, METRIC) == (
        "14 tucks do not fit 30 cm: nearest is 14 tucks with margins of 2 cm; the margins may be 1.4 cm to 1.6 cm. "
        "Finished size that would fit: 29.2 cm (14 tucks)"
    )


def test_different_margins_are_told_apart() -> None:
    wish = replace(
        wish_of("12", "3/8", "1 1/2", ("1", "1"), rule=CountRule(exactly=10)), right_margin=(inches("2"), inches("3"))
    )
    # 12 - 9 x 3/4 = 5 1/4; the left one stays 1, the right one would be 4 1/4. 6 3/4 + 1 + 3 = 10 3/4.
    assert refused(wish, INCH) == (
        "10 tucks do not fit 12 in: nearest is 10 tucks with margins of 1 in and 4 1/4 in; the left margin may be 1 "
        "in, the right one 2 in to 3 in. Finished size that would fit: 10 3/4 in (10 tucks)"
    )


def test_a_panel_has_five_hundred_tucks_at_most() -> None:
    # 499 x 3/4 + 2 x 1 1/2 = 377 1/4 in; one tuck more is 3/4 in more.
    tucks = choose_tucks(wish_of("377 1/4", "3/8", "1 1/2", ("1 1/2", "1 1/2")), INCH)
    assert (tucks.count, tucks.cut) == (500, inches("377 1/4") + 500 * inches("3/4") + 2 * inches("1/2"))
    assert refused(wish_of("378", "3/8", "1 1/2", ("1 1/2", "1 1/2")), INCH) == (
        "378 in would take about 501 tucks; more than 500 are not worked out in one panel. Are finished size and "
        "spacing in the right units?"
    )


def refused(wish: TuckWish, edition: Edition) -> str:
    with pytest.raises(CalculationError) as refusal:
        choose_tucks(wish, edition)
    return str(refusal.value)

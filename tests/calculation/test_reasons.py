"""Why a plan stands where it stands: every part of the sentence, by hand."""

from __future__ import annotations

import pytest
from tuck_panels import even_panel, wish_of

from generator.calculation.panel.marks import rounded
from generator.calculation.panel.reasons import choice_reasons
from generator.calculation.worked import End, TuckSet
from generator.lengths import INCH

RAW = (End("raw"), End("raw"))
WISH = wish_of("9", "1/4", "1", ("1", "2"))
EQUAL = "an even number of marks in the pitch would make the margins equal"


def panel(count: int, pitch: str, left: str, right: str) -> TuckSet:
    return rounded(even_panel(count, "1/4", pitch, RAW, (left, right)), INCH)


def test_two_tucks_have_a_spacing_margins_and_something_that_shows() -> None:
    # m 9/16 + 1/2 = 1 1/16; 9/16 - 1/4 = 5/16 shows. F 1 1/8 + 9/16 + 1 3/16 = 2 7/8 in, 46 marks; 9 marks a pitch.
    assert choice_reasons(panel(2, "9/16", "1 1/8", "1 3/16"), WISH, INCH) == (
        "every mark on a 1/16 in division",
        "spacing 1/16 in more than asked for",
        "margins of 1 1/8 in and 1 3/16 in",
        EQUAL,
        "5/16 in shows between tucks",
    )


@pytest.mark.parametrize(
    ("count", "pitch", "left", "right"),
    [
        (2, "1/2", "1 1/8", "1 3/16"),  # 8 marks a pitch; F 45 marks
        (3, "9/16", "1 1/8", "1 3/16"),  # 9 marks a pitch; F 37 + 18 = 55 marks
        (3, "9/16", "1", "1 1/8"),  # 9 marks a pitch, F 34 + 18 = 52 marks, but the margins are two marks apart
        (1, "1", "1 1/8", "1 3/16"),  # no pitch
    ],
)
def test_margins_that_another_pitch_would_not_make_equal_are_only_named(
    count: int, pitch: str, left: str, right: str
) -> None:
    reasons = choice_reasons(panel(count, pitch, left, right), WISH, INCH)
    assert f"margins of {left} in and {right} in" in reasons
    assert EQUAL not in reasons


def test_uneven_spacings_are_told_from_the_narrowest_to_the_widest() -> None:
    # Pitch 0.95, d 1/4: marks at 1.25, 2.7 and 4.15, on the ruler 1 1/4, 2 11/16 and 4 1/8; 1 7/16 each. A fourth at
    # 5.6 falls on 5 5/8, 1 1/2 on.
    reasons = choice_reasons(panel(4, "0.95", "1", "1"), WISH, INCH)
    assert "spacing uneven, 1 7/16 to 1 1/2 in" in reasons
    # What shows is told of the narrowest pitch, 1 7/16 - 1/2: 15/16 - 1/4.
    assert reasons[-1] == "11/16 in shows between tucks"


@pytest.mark.parametrize(
    ("pitch", "said"),
    [
        ("1/2", "facing folds just meet"),
        ("3/4", "facing folds leave a gap of 1/4 in"),
        ("3/8", "facing folds overlap by 1/8 in"),
    ],
)
def test_facing_folds_meet_leave_a_gap_or_overlap(pitch: str, said: str) -> None:
    # Two depths are 1/2.
    wish = wish_of("9", "1/4", "1", ("1", "2"), facing=True)
    assert choice_reasons(panel(2, pitch, "1", "1"), wish, INCH)[-1] == said


def test_meeting_tucks_show_nothing_between_them() -> None:
    assert choice_reasons(panel(2, "1/4", "1", "1"), WISH, INCH)[-1] == "margins of 1 in"


def test_one_tuck_has_neither_spacing_nor_surface() -> None:
    wish = wish_of("9", "1/4", "1", ("1", "2"), facing=True)
    assert choice_reasons(panel(1, "1", "1", "1"), wish, INCH) == (
        "every mark on a 1/4 in division",
        "margins of 1 in",
    )


def test_another_depth_is_told() -> None:
    wish = wish_of("9", "5/16", "3/4", ("1", "2"))
    assert "depth 1/16 in less than asked for" in choice_reasons(panel(2, "1/4", "1", "1"), wish, INCH)

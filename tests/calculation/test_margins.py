"""The room beside the tucks: what is dealt out, what is kept, and where the first mark falls."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tuck_panels import inches, seam, wish_of

from generator.calculation.panel.margins import (
    dealt_margins,
    least_margins,
    margin_ranges,
    margins_keep,
    settled_margin,
)
from generator.calculation.panel.wish import lie, spacing_window, spacings_near, steps_between
from generator.calculation.panel_ends import first_mark
from generator.calculation.worked import End
from generator.lengths import CENTIMETRE, INCH, METRIC, MILLIMETRE, on_step

WISH = wish_of("12", "3/8", "1 1/2", ("1/2", "2"))


def test_each_edge_tuck_needs_room_for_the_way_it_lies() -> None:
    # Out beside a seam 3/8 + 1/8, in 3/8 of foot room.
    wish = replace(WISH, lies=lambda _count: ("out", "in"))
    assert least_margins(wish, 5, (inches("3/8"), inches("3/8")), INCH) == (inches("1/2"), inches("3/8"))


def test_the_range_asked_for_begins_where_it_can_be_sewn() -> None:
    assert margin_ranges(WISH, (inches("3/4"), inches("3/8"))) == (
        (inches("3/4"), inches("2")),
        (inches("1/2"), inches("2")),
    )


def test_equal_ranges_share_equally_though_one_edge_needs_more() -> None:
    # 3 in for both, least 1 1/4 and 3/8: 1 1/2 each keeps both.
    assert dealt_margins(inches("3"), WISH, (inches("1 1/4"), inches("3/8")), inches("3/4"), INCH) == (
        inches("1 1/2"),
        inches("1 1/2"),
    )


def test_an_edge_that_needs_more_than_half_gets_it() -> None:
    # 3 in for both, the left needs 1 3/4, so 1 1/4 is left for the right.
    assert dealt_margins(inches("3"), WISH, (inches("1 3/4"), inches("3/8")), inches("3/4"), INCH) == (
        inches("1 3/4"),
        inches("1 1/4"),
    )


@pytest.mark.parametrize("total", ["3/4", "4 1/8"])
def test_too_little_or_too_much_room_has_no_margins(total: str) -> None:
    # Ranges of 1/2 to 2 need 1 to 4 together.
    assert dealt_margins(inches(total), WISH, (inches("3/8"), inches("3/8")), inches("3/4"), INCH) is None


def test_the_first_mark_is_moved_to_the_nearest_division() -> None:
    # 2 1/32 over two: 1 1/64; 1/2 + 1 1/64 + 3/8 = 1 57/64, nearest sixteenth 1 7/8 (1 56/64): the left one is 1.
    left, right = dealt_margins(inches("2 1/32"), WISH, (inches("3/8"), inches("3/8")), inches("3/4"), INCH) or (0, 0)
    assert (left, right) == (inches("1"), inches("1 1/32"))


@given(st.integers(1, 500), st.sampled_from([seam(), End("caught hem"), End("raw")]), st.integers(1, 400))
def test_a_settled_margin_is_the_least_that_puts_its_mark_on_the_ruler(least: int, end: End, take_up: int) -> None:
    low, hidden = Fraction(least, 160), Fraction(take_up, 320)
    step = INCH.mark * 2 if end.kind == "caught hem" else INCH.mark
    margin = settled_margin(low, end, hidden, INCH)
    assert low <= margin < low + INCH.mark
    assert on_step(first_mark(end, margin, hidden), step)


def test_what_can_be_sewn_is_kept_exactly_and_the_range_within_a_mark() -> None:
    least = (inches("1/2"), inches("1/2"))
    assert margins_keep((inches("1/2"), inches("2 1/32")), WISH, least, INCH)
    assert not margins_keep((inches("1/2"), inches("2 1/16")), WISH, least, INCH)
    assert not margins_keep((inches("15/32"), inches("2")), WISH, least, INCH)


def test_the_window_of_a_spacing_is_a_tenth_or_an_eighth_of_an_inch() -> None:
    assert spacing_window(inches("1"), INCH) == (inches("7/8"), inches("1 1/8"))
    assert spacing_window(inches("2"), INCH) == (inches("1 4/5"), inches("2 1/5"))
    assert spacing_window(2 * CENTIMETRE, METRIC) == (17 * MILLIMETRE, 23 * MILLIMETRE)
    assert spacing_window(4 * CENTIMETRE, METRIC) == (36 * MILLIMETRE, 44 * MILLIMETRE)


def test_neighbouring_spacings_come_nearest_first_and_the_wish_before_all() -> None:
    third = inches("1 1/3")
    near = spacings_near(third, INCH)
    # Window 1.2 to 1.4667: sixteenths 20 to 23; 1 1/3 lies at 21.33.
    assert near == (third, *(Fraction(sixteenths, 16) for sixteenths in (21, 22, 20, 23)))


def test_each_edge_has_its_own_finish_and_its_own_depth() -> None:
    # Out beside a seam 3/8 + 1/8; out beside a binding of 3/8: 1/4 + 3/8.
    wish = replace(WISH, ends=(seam(), End("bound", inches("3/8"))), lies=lambda _count: ("out", "out"))
    assert least_margins(wish, 5, (inches("3/8"), inches("1/4")), INCH) == (inches("1/2"), inches("5/8"))


def test_the_mark_on_the_ruler_is_told_from_the_left_edge() -> None:
    # Left seam 1/2: 1/2 + 1 1/2 + 3/8 lies on the ruler whatever the right seam is.
    wish = replace(WISH, ends=(seam("1/2"), End("seam", Fraction(53, 100))))
    least = (inches("3/8"), inches("3/8"))
    assert dealt_margins(inches("3"), wish, least, inches("3/4"), INCH) == (inches("1 1/2"), inches("1 1/2"))


def test_a_great_spacing_has_sixty_four_neighbours_on_either_side() -> None:
    # A tenth of 50 in would be 5 in, 80 sixteenths.
    assert len(spacings_near(inches("50"), INCH)) == 1 + 2 * 64


def test_a_range_of_one_length_is_one_step() -> None:
    assert steps_between(inches("1"), inches("1"), inches("1/8")) == (inches("1"),)
    assert steps_between(inches("1 1/16"), inches("1 1/8"), inches("1/4")) == ()
    assert steps_between(Fraction(0), inches("1/4"), inches("1/8")) == (inches("1/8"), inches("1/4"))


def test_an_edge_tuck_lies_out_in_or_upright() -> None:
    assert [lie(word) for word in ("out", "in", "upright", "either")] == ["out", "in", "upright", "upright"]


def test_a_range_is_kept_at_its_lower_end_too_where_less_could_be_sewn() -> None:
    narrow = replace(WISH, left_margin=(inches("1"), inches("2")), right_margin=(inches("1"), inches("2")))
    least = (inches("1/4"), inches("1/4"))
    assert margins_keep((inches("31/32"), inches("1")), narrow, least, INCH)
    assert not margins_keep((inches("3/4"), inches("1")), narrow, least, INCH)

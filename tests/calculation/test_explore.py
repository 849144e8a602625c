"""Exploring: what fits a finished size, and the largest panel from a piece of cloth."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from ply_by_ply import worked_forwards
from tuck_panels import inches, wish_of

from generator.calculation.count_rule import CountRule
from generator.calculation.panel.choice import Choice
from generator.calculation.panel.explore import plans_for_cloth, plans_for_size
from generator.calculation.panel.from_cloth import most_tucks, panel_from_cloth
from generator.calculation.worked import End
from generator.errors import CalculationError
from generator.lengths import CENTIMETRE, INCH, METRIC, MILLIMETRE

RANGE = ("1/2", "1 1/2")
NOTHING = Fraction(0)


def cheapest(choices: tuple[Choice, ...], spacing: str) -> Fraction:
    return min(choice.cost for choice in choices if choice.tucks.spacings[0] == inches(spacing))


def test_the_list_goes_beyond_the_window_and_tells_what_it_costs() -> None:
    # F 18, d 3/8, wish 1 3/4. m 1 3/4: n 17, e 1, f_1 1 7/8, grid 1/8: 3. m 2: n 14, e 7/8, f_1 1 3/4, 1/4: 2 + 2.
    # m 2 1/2: n 10, e 1 1/8, f_1 2, 1/2: 1 + 6.
    choices = plans_for_size(wish_of("18", "3/8", "1 3/4", RANGE), INCH, 200)
    assert [cheapest(choices, spacing) for spacing in ("1 3/4", "2", "2 1/2")] == [3, 4, 7]
    assert [choice.cost for choice in choices] == sorted(choice.cost for choice in choices)


def test_no_plan_turns_blind_unless_that_was_asked_for() -> None:
    seen = plans_for_size(wish_of("18", "3/8", "1 3/4", RANGE), INCH, 200)
    assert min(choice.tucks.spacings[0] for choice in seen) >= inches("1 1/8")
    blind = plans_for_size(wish_of("18", "3/8", "1", RANGE), INCH, 200)
    assert min(choice.tucks.spacings[0] for choice in blind) == 1


@pytest.mark.parametrize(("depth", "spacing"), [("0", "1 3/4"), ("3/8", "0"), ("0", "0")])
def test_depth_and_spacing_may_be_left_open(depth: str, spacing: str) -> None:
    wish = wish_of("18", depth, spacing, RANGE)
    for choices in (plans_for_size(wish, INCH, 30), plans_for_cloth(inches("44"), wish, INCH, 30)):
        assert len({(choice.tucks.depths[0], choice.tucks.wish) for choice in choices}) > 2
        for choice in choices:
            assert choice.tucks.spacings[0] >= 3 * choice.tucks.depths[0]
            assert depth == "0" or choice.tucks.depths[0] == inches(depth)
            assert worked_forwards(choice.tucks)[0] == choice.tucks.finished


def test_a_metric_size_is_explored_in_centimetres() -> None:
    bounds = (CENTIMETRE, 3 * CENTIMETRE)
    wish = replace(wish_of("1", "0", "0", RANGE), finished=30 * CENTIMETRE, left_margin=bounds, right_margin=bounds)
    wish = replace(wish, ends=(End("seam", CENTIMETRE),) * 2)
    choices = plans_for_size(wish, METRIC, 20)
    assert len(choices) == 20
    assert {choice.tucks.finished for choice in choices} == {30 * CENTIMETRE}


def test_a_piece_of_cloth_holds_seventeen_tucks_and_the_rest_goes_to_the_margins() -> None:
    # 44 in, seams 1/2, e 3/4, d 3/8: (44 - 2 x 1 5/8) / 1 1/2 = 27.17, so 28 tucks. 44 - 27 x 1 1/2 - 2 x 7/8 = 1 3/4:
    # margins 7/8. F = 44 - 1 - 28 x 3/4 = 22.
    wish = wish_of("1", "3/8", "1 1/2", ("3/4", "1 1/2"))
    assert most_tucks(inches("44"), wish, INCH) == 28
    best = plans_for_cloth(inches("44"), wish, INCH)[0].tucks
    assert (best.count, best.left_margin, best.finished, best.cut) == (28, inches("7/8"), 22, 44)
    assert best.asked == best.finished


def test_plans_with_fewer_tucks_than_the_cloth_holds_come_last() -> None:
    # 28 tucks leave 1 3/4, 27 leave 3 1/4, 26 leave 4 3/4: margins up to 1 7/8 let 27 in.
    wish = wish_of("1", "3/8", "1 1/2", ("3/4", "1 7/8"))
    assert [choice.tucks.count for choice in plans_for_cloth(inches("44"), wish, INCH)] == [28, 27]


def test_a_caught_hem_takes_its_margin_twice() -> None:
    # 41 in, d 1/4, m 1, e 1 to 2: f_1 = 2 (e + 1/4). (41 - 2 x 2 1/2) / 1 + 1 = 37 tucks, nothing left: F 20.
    caught = (End("caught hem"), End("caught hem"))
    wish = replace(wish_of("1", "1/4", "1", ("1", "2")), ends=caught)
    best = plans_for_cloth(inches("41"), wish, INCH)[0].tucks
    assert (best.count, best.finished, best.left_margin, best.cut) == (37, 20, 1, 41)
    wider = panel_from_cloth(inches("41 1/2"), 37, wish, INCH)
    assert wider is not None
    assert (wider.left_margin, wider.right_margin, wider.cut) == (inches("1 1/8"), inches("1 1/8"), inches("41 1/2"))


def test_the_rule_of_a_plan_holds_on_a_piece_of_cloth() -> None:
    wish = wish_of("1", "3/8", "1 1/2", ("3/4", "3"), rule=CountRule(4))
    assert {choice.tucks.count % 4 for choice in plans_for_cloth(inches("42"), wish, INCH)} == {0}


def test_a_ring_from_a_piece_of_cloth_leaves_the_rest() -> None:
    # (44 - 1) / 1 1/2 = 28.67: 28 tucks, round 28 x 3/4 = 21, cut 21 + 21 + 1 = 43.
    wish = wish_of("1", "3/8", "1 1/2", ("3/4", "3"), ring=True, rule=CountRule(2))
    best = plans_for_cloth(inches("44"), wish, INCH)[0].tucks
    assert (best.count, best.finished, best.cut, best.ring) == (28, 21, 43, True)


@settings(max_examples=80, deadline=None)
@given(
    st.integers(200, 1200),
    st.integers(1, 8),
    st.integers(1, 24),
    st.sampled_from(["seam", "caught hem", "raw"]),
    st.sampled_from(["seam", "caught hem", "raw"]),
)
def test_a_panel_never_needs_more_than_its_cloth(cloth: int, depth: int, more: int, left: str, right: str) -> None:
    width, deep = Fraction(cloth, 16), Fraction(depth, 8)
    ends = tuple(End(kind, Fraction(1, 2) if kind == "seam" else NOTHING) for kind in (left, right))
    wish = replace(wish_of("1", "1", "1", ("1/2", "6")), depth=deep, spacing=2 * deep + Fraction(more, 8), ends=ends)
    try:
        choices = plans_for_cloth(width, wish, INCH, 5)
    except CalculationError:
        return
    for choice in choices:
        tucks = choice.tucks
        assert width - INCH.mark <= tucks.cut <= width
        assert worked_forwards(tucks) == (tucks.finished, tucks.stitching)
        assert min(tucks.left_margin, tucks.right_margin) >= inches("1/2")


def test_a_wide_size_with_everything_open_is_explored() -> None:
    wish = wish_of("400", "0", "0", RANGE)
    assert plans_for_size(wish, INCH)
    assert plans_for_cloth(inches("400"), wish, INCH)


@pytest.mark.parametrize(
    ("text", "explored"),
    [
        (
            "no tucks that can be marked on a ruler fit a finished size of 1/2 in; allow wider margins, or leave depth "
            "and spacing open",
            lambda: plans_for_size(wish_of("1/2", "0", "0", RANGE), INCH),
        ),
        (
            "no tucks that can be marked on a ruler fit a piece of cloth 2 in wide; allow wider margins, or leave "
            "depth and spacing open",
            lambda: plans_for_cloth(inches("2"), wish_of("1", "3/8", "1 1/2", RANGE), INCH),
        ),
        (
            "the piece of cloth must be more than nothing",
            lambda: plans_for_cloth(NOTHING, wish_of("1", "3/8", "1 1/2", RANGE), INCH),
        ),
        (
            # 20000 - 2 x 1 3/8 over 1 1/2, and one: 13332.5 down, 13332.
            "20000 in would take about 26663 tucks; more than 500 are not worked out in one panel. Are finished "
            "size and spacing in the right units?",
            lambda: plans_for_cloth(inches("20000"), wish_of("1", "3/8", "1 1/2", RANGE), INCH),
        ),
    ],
)
def test_what_cannot_be_explored_is_refused(text: str, explored: object) -> None:
    with pytest.raises(CalculationError) as refusal:
        explored()  # type: ignore[operator]
    assert str(refusal.value) == text


def test_the_usual_depths_are_tried_where_the_depth_is_left_open() -> None:
    inch = plans_for_size(wish_of("18", "0", "0", RANGE), INCH, 10_000)
    assert {str(choice.tucks.depths[0]) for choice in inch} == {"1/8", "1/4", "3/8", "1/2", "3/4", "1"}
    bounds = (CENTIMETRE, 4 * CENTIMETRE)
    wish = replace(wish_of("1", "0", "0", RANGE), finished=50 * CENTIMETRE, left_margin=bounds, right_margin=bounds)
    metric = plans_for_size(replace(wish, ends=(End("seam", CENTIMETRE),) * 2), METRIC, 10_000)
    assert {choice.tucks.depths[0] / MILLIMETRE for choice in metric} == {3, 6, 10, 12, 20, 25}


def test_open_spacings_run_from_meeting_tucks_to_six_depths() -> None:
    # d 3/8: tucks meet at 1 1/8; six depths are 2 1/4. Facing folds meet at 4 depths, 1 1/2.
    plans = plans_for_size(wish_of("18", "3/8", "0", RANGE), INCH, 10_000)
    spacings = [choice.tucks.wish for choice in plans]
    assert (min(spacings), max(spacings)) == (inches("1 1/4"), inches("2 1/4"))
    facing = plans_for_size(wish_of("18", "3/8", "0", RANGE, facing=True), INCH, 10_000)
    assert min(choice.tucks.wish for choice in facing) == inches("1 1/2")


def test_a_spacing_asked_for_is_explored_from_half_of_it_to_half_as_much_again() -> None:
    # d 1/8, m 2: 1 to 3 in, three plans of each spacing at most.
    plans = plans_for_size(wish_of("18", "1/8", "2", ("1/2", "3")), INCH, 10_000)
    spacings = [choice.tucks.spacings[0] for choice in plans]
    assert (min(spacings), max(spacings)) == (inches("1"), inches("3"))
    assert max(spacings.count(spacing) for spacing in spacings) == 3


def test_a_dozen_plans_are_shown_where_more_would_fit() -> None:
    wish = wish_of("18", "0", "0", RANGE)
    assert len(plans_for_size(wish, INCH)) == len(plans_for_cloth(inches("44"), wish, INCH)) == 12


def test_an_inch_of_cloth_holds_one_small_tuck() -> None:
    # 3/8 + 1/4 + 3/8 = 1.
    wish = replace(wish_of("1", "1/8", "1/2", ("3/8", "1")), ends=(End("raw"), End("raw")))
    best = plans_for_cloth(inches("1"), wish, INCH)[0].tucks
    assert (best.count, best.finished, best.cut, best.wish) == (1, inches("3/4"), 1, inches("1/2"))


def test_a_ring_takes_the_most_tucks_that_its_rule_allows() -> None:
    # (44 - 1) / 1 1/2 = 28.67; the greatest multiple of three is 27: 27 x 3/4 = 20 1/4 round.
    wish = wish_of("1", "3/8", "1 1/2", ("3/4", "3"), ring=True, rule=CountRule(3))
    best = plans_for_cloth(inches("44"), wish, INCH)[0].tucks
    assert (best.count, best.finished) == (27, inches("20 1/4"))


def test_a_size_that_nothing_fits_is_refused_with_what_would_fit() -> None:
    # p 3/4 between margins of 3/4: 14 tucks need 9 3/4 + 1 1/2 = 11 1/4, 13 need 10 1/2.
    wish = wish_of("11", "3/8", "1 1/2", ("3/4", "3/4"), rule=CountRule(exactly=13), gives="spacing")
    wish = replace(wish, finished=inches("5"))
    with pytest.raises(CalculationError, match=r"^13 tucks do not fit 5 in: nearest is 13 tucks "):
        plans_for_size(wish, INCH)


def test_facing_folds_may_just_meet_on_a_piece_of_cloth() -> None:
    # p 3/4 = 2 d: as many tucks as of any others, 28 on 44 in.
    wish = wish_of("1", "3/8", "1 1/2", ("3/4", "1 1/2"), facing=True)
    assert plans_for_cloth(inches("44"), wish, INCH)[0].tucks.count == 28


def test_different_ranges_share_the_rest_of_the_cloth_in_their_measure() -> None:
    # Two tucks, least 3/4 and 1 1/2: 1/2 + 3/4 + 3/8 + 1 1/2 + 3/8 + 1 1/2 + 1/2 = 5 1/2. 7/8 more is half of the play
    # of 1/4 and 1 1/2: margins 7/8 and 2 1/4.
    wish = replace(wish_of("1", "3/8", "1 1/2", ("3/4", "1")), right_margin=(inches("1 1/2"), inches("3")))
    panel = panel_from_cloth(inches("6 3/8"), 2, wish, INCH)
    assert panel is not None
    assert (panel.left_margin, panel.right_margin, panel.cut) == (inches("7/8"), inches("2 1/4"), inches("6 3/8"))


def test_fixed_margins_off_the_ruler_may_each_be_a_mark_wider() -> None:
    # e 0.76: 2 x (1/2 + 0.76 + 3/8) + 1 1/2 = 4.77; on 4 7/8 in 0.105 is over. The first mark moves from 1.635 to
    # 1 11/16, so both margins are 13/16, less than a mark more than 0.76.
    wish = wish_of("1", "3/8", "1 1/2", ("0.76", "0.76"))
    panel = panel_from_cloth(inches("4 7/8"), 2, wish, INCH)
    assert panel is not None
    assert (panel.left_margin, panel.right_margin) == (inches("13/16"), inches("13/16"))
    assert panel_from_cloth(inches("5"), 2, wish, INCH) is None


def test_half_of_a_spacing_that_is_no_whole_number_is_still_its_half() -> None:
    # d 1/8, m 1 1/2: from 3/4, not from 3/8 where the tucks would meet.
    plans = plans_for_size(wish_of("18", "1/8", "1 1/2", ("1/2", "3")), INCH, 10_000)
    assert min(choice.tucks.spacings[0] for choice in plans) == inches("3/4")


@pytest.mark.parametrize(
    ("cloth", "fits"), [("29 7/32", False), ("29 1/4", True), ("29 9/32", True), ("29 5/16", False)]
)
def test_cloth_is_used_up_to_less_than_a_mark(cloth: str, fits: bool) -> None:
    # 18 tucks 1 1/2 apart with margins of just 1: 17 x 1 1/2 + 2 x (1/2 + 1 + 3/8) = 29 1/4. A mark is 1/16.
    found = panel_from_cloth(inches(cloth), 18, wish_of("1", "3/8", "1 1/2", ("1", "1")), INCH)
    assert (found is not None) is fits

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
from generator.lengths import CENTIMETRE, INCH, METRIC

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
            "20000 in would take about 26663 tucks; more than 2000 are not worked out. Are finished size and spacing "
            "in the right units?",
            lambda: plans_for_cloth(inches("20000"), wish_of("1", "3/8", "1 1/2", RANGE), INCH),
        ),
    ],
)
def test_what_cannot_be_explored_is_refused(text: str, explored: object) -> None:
    with pytest.raises(CalculationError) as refusal:
        explored()  # type: ignore[operator]
    assert str(refusal.value) == text

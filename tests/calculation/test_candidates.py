"""The plans that are tried: none that fits is left out, none costs less than was promised of it."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tuck_panels import inches, seam, wish_of

from generator.calculation.count_rule import CountRule
from generator.calculation.panel.candidates import candidates, least_pitch
from generator.calculation.panel.choice import choice_cost, choose_tucks, ranked_choices
from generator.calculation.panel.marks import laid_out, rounded
from generator.calculation.panel.wish import TuckWish, spacing_window
from generator.calculation.panel_ends import first_mark
from generator.calculation.worked import End
from generator.lengths import INCH


def counts_tried(wish: TuckWish) -> list[int]:
    return sorted(plan.count for plan in candidates(wish, (wish.spacing,), INCH))


def test_of_very_many_counts_the_sixty_nearest_the_middle_are_tried() -> None:
    # p 1, F 100, margins 1 to 49: 2 to 98 beside the tucks, so 3 to 99 tucks; in the middle 50 beside 51 tucks.
    # Thirty below 51, itself and twenty-nine above: 21 to 80.
    assert counts_tried(wish_of("100", "1/4", "1 1/2", ("1", "49"))) == list(range(21, 81))


def test_margins_wider_than_the_panel_let_the_fewest_tucks_be_tried() -> None:
    # p 1, F 100, margins 1 to 1000: 1 to 99 tucks; the middle of the range lies far below one tuck.
    assert counts_tried(wish_of("100", "1/4", "1 1/2", ("1", "1000"))) == list(range(1, 61))


def test_every_count_between_the_widest_and_the_narrowest_margins_is_tried() -> None:
    # p 3/4, F 12, margins 3/4 to 1 1/2: 12 - 3 = 12 x 3/4 and 12 - 1 1/2 = 14 x 3/4, both ends of the range exactly.
    assert counts_tried(wish_of("12", "3/8", "1 1/2", ("3/4", "1 1/2"))) == [13, 14, 15]
    # Multiples of three only, and one number only.
    assert counts_tried(wish_of("12", "3/8", "1 1/2", ("3/4", "1 1/2"), rule=CountRule(3))) == [15]
    assert counts_tried(wish_of("12", "3/8", "1 1/2", ("3/4", "1 1/2"), rule=CountRule(exactly=13))) == [13]
    assert counts_tried(wish_of("12", "3/8", "1 1/2", ("3/4", "1 1/2"), rule=CountRule(exactly=16))) == []


def test_a_single_tuck_is_one_plan_whatever_the_spacing() -> None:
    # One tuck has no spacing, so other spacings are no other plans; two tucks have: 1/8 either way in sixteenths.
    single = ranked_choices(wish_of("5", "3/8", "1 1/2", ("2", "3"), rule=CountRule(exactly=1)), INCH, 30)
    assert [choice.tucks.count for choice in single] == [1]
    two = ranked_choices(wish_of("5", "3/8", "1", ("1", "3"), rule=CountRule(exactly=2)), INCH, 30)
    assert {choice.tucks.spacings[0] for choice in two} == {inches("1") + Fraction(step, 16) for step in range(-2, 3)}


@pytest.mark.parametrize(("finished", "spacing"), [("2 5/8", "1 1/8"), ("2 3/8", "7/8")])
def test_a_spacing_at_either_end_of_its_window_still_fits(finished: str, spacing: str) -> None:
    # Margins 1: p 5/8 or 3/8, m = p + 1/2, an eighth from the inch that was asked for.
    wish = wish_of(finished, "1/4", "1", ("1", "1"), gives="spacing", rule=CountRule(exactly=2))
    assert choose_tucks(wish, INCH).spacings == (inches(spacing),)


def test_a_spacing_that_gives_is_found_between_wide_tucks_as_well() -> None:
    # F 22, margins 1: ten pitches of 2 in are eleven tucks 2 1/2 in apart.
    tucks = choose_tucks(wish_of("22", "1/4", "2 1/2", ("1", "1"), gives="spacing"), INCH)
    assert (tucks.count, set(tucks.spacings)) == (11, {inches("2 1/2")})


def test_the_least_margins_count_however_wide_the_others_may_be() -> None:
    # F 13: 11 1/2 between margins of 3/4 is fifteen pitches of 23/30, as if the margins could not be 5 in.
    assert choose_tucks(wish_of("13", "3/8", "1 1/2", ("3/4", "5"), gives="spacing"), INCH).count == 16


def test_a_single_tuck_keeps_the_room_that_it_alone_needs() -> None:
    # Turned out beside a seam 3/8 + 1/8, more than the 3/8 that 3/4 in leaves on either side.
    def alone_out(count: int) -> tuple[str, str]:
        return ("out", "out") if count == 1 else ("upright", "upright")

    wish = wish_of("3/4", "3/8", "1 1/2", ("3/8", "1/2"), gives="spacing", rule=CountRule(exactly=1))
    assert counts_tried(wish) == [1]
    assert counts_tried(replace(wish, lies=alone_out)) == []


def test_no_single_tuck_is_tried_where_pairs_are_wanted() -> None:
    # F 5, margins 2 to 3: one tuck would stand between 2 1/2 and 2 1/2, but the number must be even.
    wish = wish_of("5", "3/8", "1 1/2", ("2", "3"), gives="spacing", rule=CountRule(2))
    assert all(plan.count % 2 == 0 for plan in candidates(wish, (wish.spacing,), INCH))
    alone = replace(wish, rule=CountRule())
    assert 1 in counts_tried(alone)


def test_a_depth_that_gives_is_tried_deeper_and_shallower() -> None:
    # F 12, n 9, m 1 3/4, margins 1: p 1 1/4, so d 1/4 where 3/16 was asked, a sixteenth deeper.
    wish = wish_of("12", "3/16", "1 3/4", ("1", "1"), gives="depth", rule=CountRule(exactly=9))
    assert set(choose_tucks(wish, INCH).depths) == {inches("1/4")}
    # One mark of the ruler either way: three depths, with margins wide enough for all.
    # F 20: at 1/8 eight pitches of 1 1/2 leave 4 either side, at 1/4 eight of 1 1/4 leave 5.
    bounds = (inches("1/2"), inches("5"))
    wide = replace(wish, finished=inches("20"), left_margin=bounds, right_margin=bounds)
    depths = {plan.depth for plan in candidates(wide, (wide.spacing,), INCH)}
    assert depths == {inches(depth) for depth in ("1/8", "3/16", "1/4")}


def test_a_deep_tuck_may_give_a_tenth_of_its_depth() -> None:
    # d 2: a tenth is 1/5, down to 1 13/16 and up to 2 3/16 in whole sixteenths: 2 +- 3/16.
    wish = wish_of("40", "2", "6", ("3", "9"), gives="depth")
    depths = [plan.depth for plan in candidates(wish, (wish.spacing,), INCH)]
    assert (min(depths), max(depths)) == (inches("1 13/16"), inches("2 3/16"))


def test_facing_pairs_keep_the_pitch_that_they_were_asked_for() -> None:
    # d 1/4: a spacing of 3/4 (p 1/4) overlaps and may do so down to the depth; 1 (p 1/2) just meets and stays so.
    overlapping, meeting = (wish_of("12", "1/4", spacing, ("1", "2"), facing=True) for spacing in ("3/4", "1"))
    assert least_pitch(overlapping, inches("1/4")) == inches("1/4")
    assert least_pitch(meeting, inches("1/4")) == inches("1/2")
    # With no pitch at all nothing overlaps, so folds must come to meet.
    assert least_pitch(wish_of("12", "1/4", "1/2", ("1", "2"), facing=True), inches("1/4")) == inches("1/2")
    assert set(choose_tucks(meeting, INCH).pitches) == {inches("1/2")}
    assert least_pitch(replace(meeting, facing=False), inches("1/4")) == 0


def test_a_ring_has_one_tuck_more_for_a_closer_spacing() -> None:
    # 21 in round, m 1 1/2 within 3/20, so 1.35 to 1.65; d 3/8: p 0.6 to 0.9, so 24 (p 7/8) to 35 tucks (p 0.6).
    wish = wish_of("21", "3/8", "1 1/2", ("0", "0"), ring=True)
    assert counts_tried(wish) == list(range(24, 36))


def test_tucks_of_a_ring_that_face_each_other_meet_at_most() -> None:
    # As above, but p at least 3/4: 21 / 28 = 3/4.
    assert counts_tried(wish_of("21", "3/8", "1 1/2", ("0", "0"), ring=True, facing=True)) == list(range(24, 29))


@st.composite
def uneven_wishes(draw: st.DrawFn) -> TuckWish:
    """Draw wishes with different ends and ranges left and right."""
    ends = tuple(draw(st.sampled_from([seam("1/2"), seam("17/32"), End("raw"), End("caught hem")])) for _ in range(2))
    eighths = [Fraction(draw(st.integers(4, 16)), 8) for _ in range(4)]
    depth = Fraction(draw(st.integers(2, 8)), 16)
    return TuckWish(
        Fraction(draw(st.integers(40, 100)), 8),
        depth,
        2 * depth + Fraction(draw(st.integers(1, 20)), 24),
        (ends[0], ends[1]),
        (min(eighths[:2]), max(eighths[:2])),
        (min(eighths[2:]), max(eighths[2:])),
        gives=draw(st.sampled_from(["margin", "spacing", "depth"])),
    )


@settings(max_examples=50)
@given(uneven_wishes())
def test_no_plan_costs_less_than_was_promised_of_it(wish: TuckWish) -> None:
    for plan in candidates(wish, (wish.spacing,), INCH)[::5]:
        take_up = wish.take_up_at(plan.depth)
        pitches = (plan.spacing - take_up,) * (plan.count - 1)
        exact = laid_out((plan.depth,) * plan.count, (take_up,) * plan.count, pitches, wish.ends, plan.margins)
        on_ruler = replace(rounded(exact, INCH), wish=wish.spacing)
        # 2 marks over the whole row may be won back by rounding the first and the last mark.
        drift = Fraction(1, 16) / max(plan.count - 1, 1) / INCH.wish_step
        cost = choice_cost(on_ruler, INCH) + 2 * abs(plan.depth - wish.depth) / INCH.wish_step
        assert plan.least[0] <= cost + drift
        assert plan.least[1:] == (
            (abs(plan.spacing - wish.spacing) if plan.count > 1 else 0) + 2 * abs(plan.depth - wish.depth),
            sum(
                abs(margin - sum(bounds) / 2)
                for margin, bounds in zip(plan.margins, (wish.left_margin, wish.right_margin), strict=True)
            ),
            plan.count,
        )


def test_every_plan_that_spreads_its_tucks_keeps_the_window_and_puts_its_first_mark_on_the_ruler() -> None:
    # A seam of 17/32 puts the mark off the ruler with a margin that suits one of 1/2.
    ends = (seam("17/32"), seam("1/2"))
    wish = replace(wish_of("16", "3/8", "1 1/2", ("3/4", "1 1/2"), gives="spacing"), ends=ends)
    plans = candidates(wish, (wish.spacing,), INCH)
    least, most = spacing_window(wish.spacing, INCH)
    assert {least <= plan.spacing <= most for plan in plans if plan.count > 1} == {True}
    marks = [first_mark(ends[0], plan.margins[0], 2 * wish.depth) for plan in plans]
    assert [mark for mark in marks if mark % INCH.mark] == []


def test_folds_that_face_each_other_never_overlap_whatever_depth_is_tried() -> None:
    wish = wish_of("16", "3/8", "1 1/2", ("3/4", "1 1/2"), gives="depth", facing=True)
    plans = candidates(wish, (wish.spacing,), INCH)
    assert plans
    assert [plan.depth for plan in plans if plan.spacing - 2 * plan.depth < 2 * plan.depth] == []


@pytest.mark.parametrize(("spacing", "cost"), [("1 1/2", 3), ("1 5/8", 4)])
def test_a_plan_is_put_in_its_place_by_its_grid_and_by_what_it_changes(spacing: str, cost: int) -> None:
    # f_1 1/2 + 3/4 + 3/8 = 1 5/8, so both lie on eighths: 3. An eighth more than was asked for is one step: 1.
    (plan,) = candidates(wish_of("12", "3/8", "1 1/2", ("3/4", "3/4")), (inches(spacing),), INCH)
    assert plan.least[0] == cost

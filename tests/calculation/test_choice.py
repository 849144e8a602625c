"""Choosing the number of tucks: costs and choices worked by hand."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from ply_by_ply import worked_forwards
from tuck_panels import even_panel, inches, seam, wish_of

from generator.calculation.count_rule import CountRule
from generator.calculation.panel.choice import TuckWish, choice_cost, choose_tucks, ranked_choices
from generator.calculation.panel.marks import rounded
from generator.calculation.worked import End
from generator.lengths import CENTIMETRE, INCH, METRIC, MILLIMETRE

COSTS = [
    # n, pitch, margin: F 18 each; f_1 = 1/2 + e + 3/8. Wish 1 3/4.
    (17, "1", "1", 3),  # m 1 3/4 as asked; f_1 1 7/8, grid 1/8: 3 + 0.
    (14, "1 1/4", "7/8", 4),  # m 2; f_1 1 3/4, grid 1/4: 2 + (1/4) / (1/8) = 4.
    (10, "1 3/4", "1 1/8", 7),  # m 2 1/2; f_1 2, grid 1/2: 1 + (3/4) / (1/8) = 7.
]


@pytest.mark.parametrize(("count", "pitch", "margin", "cost"), COSTS)
def test_a_plan_costs_its_grid_and_its_distance_from_the_wish(count: int, pitch: str, margin: str, cost: int) -> None:
    tucks = rounded(even_panel(count, "3/8", pitch, (seam(), seam()), (margin, margin)), INCH)
    assert tucks.finished == 18
    assert choice_cost(replace(tucks, wish=inches("1 3/4")), INCH) == cost


def test_a_metric_plan_is_told_from_its_wish_in_steps_of_three_millimetres() -> None:
    # Marks every 4.3 cm from 5.5 cm on: grid 1 mm is place 3, (4.3 - 4) / 0.3 = 1.
    depth, pitch, margin = CENTIMETRE, 23 * MILLIMETRE, 3 * CENTIMETRE
    from_inches = even_panel(3, "3/8", "1", (End("raw"), End("raw")), ("2", "2"))
    tucks = rounded(
        replace(
            from_inches,
            marks=tuple(55 * MILLIMETRE + k * 43 * MILLIMETRE for k in range(3)),
            depths=(depth,) * 3,
            take_ups=(2 * depth,) * 3,
            cut=20 * CENTIMETRE,
            finished=2 * pitch + 2 * margin,
        ),
        METRIC,
    )
    assert choice_cost(replace(tucks, wish=4 * CENTIMETRE), METRIC) == 4


def test_the_worked_panel_is_the_only_one_between_fixed_margins() -> None:
    # (13 1/2 - 2 x 3/4) / (3/4) + 1 = 17.
    tucks = choose_tucks(wish_of("13 1/2", "3/8", "1 1/2", ("3/4", "3/4")), INCH)
    assert (tucks.count, tucks.cut, tucks.left_margin, tucks.right_margin) == (
        17,
        inches("27 1/4"),
        inches("3/4"),
        inches("3/4"),
    )


def test_of_three_counts_that_fit_the_one_on_half_inches_is_taken() -> None:
    # F 12, p 3/4: n 13 leaves 1 1/2 each (f_1 2 3/8), 14 leaves 1 1/8 (f_1 2), 15 leaves 3/4 (f_1 1 5/8).
    choices = ranked_choices(wish_of("12", "3/8", "1 1/2", ("3/4", "1 1/2")), INCH)
    as_asked = [choice for choice in choices if choice.tucks.spacings[0] == inches("1 1/2")]
    assert [(choice.tucks.count, choice.cost) for choice in as_asked] == [(14, 1), (13, 3), (15, 3)]
    assert as_asked[0].reasons[:3] == ("every mark on a 1/2 in division", "spacing as asked for", "margins of 1 1/8 in")


def test_the_spacing_stays_as_asked_for_while_any_count_fits() -> None:
    # m 1 1/2 fits only at a cost of 3 (n 17); other spacings would be cheaper by grid, none is taken.
    wish = wish_of("13 1/2", "3/8", "1 1/2", ("3/4", "3/4"))
    assert choose_tucks(wish, INCH).spacings[0] == wish.spacing


def test_a_neighbouring_spacing_is_taken_when_no_count_fits() -> None:
    # F 20, even, margins 3/4 to 7/8: p 3/4 leaves 1 1/4 (24) or 1/2 (26) each. m 1 5/8, p 7/8: 22 leave
    # (20 - 21 x 7/8) / 2 = 13/16 each.
    wish = wish_of("20", "3/8", "1 1/2", ("3/4", "7/8"), facing=True, rule=CountRule(2))
    tucks = choose_tucks(wish, INCH)
    assert (tucks.count, tucks.spacings[0], tucks.left_margin) == (22, inches("1 5/8"), inches("13/16"))


def test_a_facing_panel_never_comes_to_overlap() -> None:
    # p >= 2 d = 3/4, so no spacing under 1 1/2.
    choices = ranked_choices(wish_of("18", "3/8", "1 1/2", ("1/2", "2"), facing=True), INCH, 30)
    assert choices
    assert all(min(choice.tucks.pitches) >= inches("3/4") for choice in choices)


def test_overlapping_pairs_that_are_asked_for_are_kept() -> None:
    # m 1 1/4, d 3/8: p 1/2 lies between d and 2 d.
    tucks = choose_tucks(wish_of("12", "3/8", "1 1/4", ("1/2", "2"), facing=True), INCH)
    assert set(tucks.pitches) == {inches("1/2")}


def test_margins_give_unequal_ranges_the_same_share() -> None:
    # F 12, n 10, p 3/4: 5 1/4 for ranges of 2 to 3 and 1 to 3: 2 1/4 over the least of 3, three quarters of it to ...
    # shares: 2 + 2 1/4 x 1/3 = 2 3/4 left, 2 1/2 right.
    wish = replace(
        wish_of("12", "3/8", "1 1/2", ("2", "3"), rule=CountRule(exactly=10)), right_margin=(inches("1"), inches("3"))
    )
    tucks = choose_tucks(wish, INCH)
    assert (tucks.left_margin, tucks.right_margin) == (inches("2 3/4"), inches("2 1/2"))


def test_margins_that_fall_between_marks_differ_by_one() -> None:
    # F 30 cm, d 1, m 2.5: p 5 mm. n 53: 30 - 26 = 4 cm, 2 each. n 54: 35 mm, 17.5 each: 18 and 17.
    wish = TuckWish(
        30 * CENTIMETRE,
        CENTIMETRE,
        25 * MILLIMETRE,
        (End("seam", 15 * MILLIMETRE),) * 2,
        (CENTIMETRE, 2 * CENTIMETRE),
        (CENTIMETRE, 2 * CENTIMETRE),
        rule=CountRule(exactly=54),
    )
    tucks = choose_tucks(wish, METRIC)
    assert {tucks.left_margin, tucks.right_margin} == {17 * MILLIMETRE, 18 * MILLIMETRE}
    assert tucks.finished == 30 * CENTIMETRE


def test_spacing_gives_between_the_least_margins() -> None:
    # F 13, margins 3/4: 11 1/2 in 15 pitches of 23/30 in, 16 tucks; 1 31/60 in apart before rounding.
    tucks = choose_tucks(wish_of("13", "3/8", "1 1/2", ("3/4", "1"), gives="spacing"), INCH)
    assert (tucks.count, tucks.left_margin, tucks.right_margin, tucks.finished) == (
        16,
        inches("3/4"),
        inches("3/4"),
        13,
    )
    assert set(tucks.spacings) == {inches("1 1/2"), inches("1 9/16")}


def test_depth_gives_in_steps_that_can_be_sewn() -> None:
    # F 12, n 9, m 1 3/4, margins fixed at 1: p = 10/8 = 1 1/4, so d = (1 3/4 - 1 1/4) / 2 = 1/4 where 5/16 was asked.
    wish = wish_of("12", "5/16", "1 3/4", ("1", "1"), gives="depth", rule=CountRule(exactly=9))
    tucks = choose_tucks(wish, INCH)
    assert (set(tucks.depths), set(tucks.pitches)) == ({inches("1/4")}, {inches("1 1/4")})


def test_a_depth_that_fits_is_kept_where_depth_may_give() -> None:
    tucks = choose_tucks(wish_of("12", "3/8", "1 1/2", ("3/4", "1 1/2"), gives="depth"), INCH)
    assert set(tucks.depths) == {inches("3/8")}


def test_a_sample_carries_its_difference_to_another_depth() -> None:
    # u 47/64 at 3/8 is 1/64 less than 3/4; at 1/4 it is 1/2 - 1/64 = 31/64.
    wish = wish_of("12", "3/8", "1 1/2", ("1", "1"), take_up=Fraction(47, 64))
    assert wish.take_up_at(inches("1/4")) == Fraction(31, 64)


def test_exactly_no_tucks_is_a_plain_panel() -> None:
    tucks = choose_tucks(wish_of("12", "3/8", "1 1/2", ("1", "1"), rule=CountRule(exactly=0)), INCH)
    assert (tucks.count, tucks.finished, tucks.cut) == (0, 12, 13)


def test_one_tuck_stands_between_its_margins() -> None:
    tucks = choose_tucks(wish_of("5", "3/8", "1 1/2", ("2", "3"), rule=CountRule(exactly=1)), INCH)
    assert (tucks.count, tucks.left_margin, tucks.right_margin) == (1, inches("2 1/2"), inches("2 1/2"))


@pytest.mark.parametrize("gives", ["margin", "spacing", "depth"])
def test_hundreds_of_tucks_are_chosen(gives: str) -> None:
    wish = wish_of("371", "3/8", "1 1/2", ("3/4", "1 1/2"), gives=gives)
    tucks = choose_tucks(wish, INCH)
    assert tucks.count in range(485, 501)
    assert worked_forwards(tucks) == (371, tucks.stitching)


def test_a_depth_that_fits_is_kept_though_another_would_be_found_on_the_ruler_faster() -> None:
    # Margins 1 1/8, m 1 1/2: d 5/16 (p 7/8) fits 7 tucks, f_1 1 15/16 on the finest grid: 4. d 3/8 (p 3/4) fits 8,
    # f_1 2 on half inches: 1, and 2 x 1/16 over 1/8 for the depth: 2.
    wish = wish_of("7 1/2", "5/16", "1 1/2", ("1 1/8", "1 1/8"), gives="depth")
    listed = [(set(c.tucks.depths), c.tucks.count, c.cost) for c in ranked_choices(wish, INCH)]
    assert listed[:2] == [({inches("3/8")}, 8, 2), ({inches("5/16")}, 7, 4)]
    kept = choose_tucks(wish, INCH)
    assert (set(kept.depths), kept.count) == ({inches("5/16")}, 7)


def test_where_depth_gives_the_spacing_never_does() -> None:
    wish = wish_of("7 1/2", "5/16", "1 1/2", ("3/4", "1 1/2"), gives="depth")
    assert {choice.tucks.spacings[0] for choice in ranked_choices(wish, INCH, 40)} == {inches("1 1/2")}


def test_of_plans_that_cost_the_same_the_one_nearer_the_wish_comes_first() -> None:
    # Margins 3/4, d 1/4: f_1 1 1/2. m 1 1/8 (p 5/8): 15/4 over 5/8 is 6 gaps; eighths, 3 + 0. m 1 1/4 (p 3/4): 5 gaps;
    # quarters, 2 + 1.
    choices = ranked_choices(wish_of("5 1/4", "1/4", "1 1/8", ("3/4", "3/4")), INCH)
    assert [(choice.tucks.spacings[0], choice.cost) for choice in choices] == [
        (inches("1 1/8"), 3),
        (inches("1 1/4"), 3),
    ]


def test_spacings_equally_far_from_the_wish_are_both_listed() -> None:
    # n 5, m 1 1/2 +- 1/16: margins of 2 -+ 1/8, the same grid, the same distance.
    choices = ranked_choices(wish_of("7", "3/8", "1 1/2", ("1", "3"), rule=CountRule(exactly=5)), INCH, 30)
    off = {choice.tucks.spacings[0]: choice.cost for choice in choices}
    assert off[inches("1 7/16")] == off[inches("1 9/16")] == Fraction(9, 2)


def test_a_dozen_plans_are_listed_where_more_would_fit() -> None:
    wish = wish_of("12", "1/4", "1", ("1/2", "3"))
    assert len(ranked_choices(wish, INCH, 20)) == 20
    assert len(ranked_choices(wish, INCH)) == 12


def test_two_tucks_cost_their_distance_from_the_wish_and_one_tuck_none() -> None:
    # Marks at 1 1/2 and 2 1/2 (grid 1/2: 1), an eighth more than asked for: 1 + 1. Alone at 1 1/2: 1.
    two = rounded(even_panel(2, "1/4", "1/2", (End("raw"), End("raw")), ("1 1/4", "1")), INCH)
    one = rounded(even_panel(1, "1/4", "1/2", (End("raw"), End("raw")), ("1 1/4", "1")), INCH)
    assert choice_cost(replace(two, wish=inches("7/8")), INCH) == 2
    assert choice_cost(replace(one, wish=inches("7/8")), INCH) == 1


def test_a_set_remembers_the_size_and_the_spacing_that_were_asked_for() -> None:
    # 13 1/64 in is on no ruler.
    tucks = choose_tucks(wish_of("13 1/64", "3/8", "1 1/2", ("3/4", "1 1/2")), INCH)
    assert (tucks.asked, tucks.wish) == (inches("13 1/64"), inches("1 1/2"))
    assert tucks.finished != tucks.asked
    plain = choose_tucks(wish_of("12", "3/8", "1 1/2", ("1", "1"), rule=CountRule(exactly=0)), INCH)
    assert (plain.wish, plain.asked) == (inches("1 1/2"), 12)


def test_facing_folds_that_just_meet_are_kept() -> None:
    # p = 2 d = 3/4; 12 - 2 x 3/4 = 14 gaps.
    tucks = choose_tucks(wish_of("12", "3/8", "1 1/2", ("3/4", "3/4"), facing=True), INCH)
    assert (tucks.count, set(tucks.pitches)) == (15, {inches("3/4")})


def test_rounding_never_brings_a_pitch_to_nothing() -> None:
    # A pitch of 1/64 would come to 0 or 1/16 on the ruler, so only spacings on the ruler are left.
    choices = ranked_choices(wish_of("3", "1/4", "33/64", ("1/2", "2")), INCH, 30)
    assert choices
    assert all(min(choice.tucks.pitches, default=Fraction(1)) > 0 for choice in choices)


def test_a_ring_of_one_tuck_is_one_pitch_round() -> None:
    # 1 in round, m 1 1/2, d 1/4: p 1.
    wish = wish_of("1", "1/4", "1 1/2", ("0", "0"), ring=True, rule=CountRule(exactly=1))
    tucks = choose_tucks(wish, INCH)
    assert (tucks.count, tucks.left_margin + tucks.right_margin, tucks.cut) == (1, 1, inches("2 1/2"))


def test_facing_folds_meet_across_the_closing_of_a_ring_as_well() -> None:
    # A sample: 0.52 in each. Two tucks on 1.04 in round are 1.04 apart, on the ruler 1 1/16: p 0.5425. The cut of 3.08
    # becomes 3 1/16, so 1.0225 in round, and 0.48 is left across the closing, less than twice 1/4.
    wish = wish_of("1.04", "1/4", "1.04", ("0", "0"), ring=True, facing=True, take_up=Fraction(13, 25))
    assert ranked_choices(wish, INCH, 30) == ()
    assert ranked_choices(replace(wish, facing=False), INCH, 30) != ()


def test_of_plans_with_marks_on_the_same_grid_the_one_nearest_the_middle_of_its_margins_is_taken() -> None:
    # Pitch 3/4: 10, 14 and 18 tucks leave 9 1/4, 6 1/4 and 3 1/4, so their first marks lie at 5 1/2, 4 and 2 1/2, on
    # halves like all after them. The middle of 3/4 to 5 is 2 7/8: 3 1/8 is nearest.
    tucks = choose_tucks(wish_of("16", "3/8", "1 1/2", ("3/4", "5")), INCH)
    assert (tucks.count, tucks.left_margin) == (14, inches("3 1/8"))


def test_a_panel_without_tucks_is_all_margin() -> None:
    tucks = choose_tucks(wish_of("15", "3/8", "1 1/2", ("3/4", "1 1/2"), rule=CountRule(exactly=0)), INCH)
    assert (tucks.count, tucks.left_margin, tucks.right_margin) == (0, inches("7 1/2"), inches("7 1/2"))

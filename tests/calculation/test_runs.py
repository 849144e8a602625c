"""Unequal tucks: graduated, mirrored and open runs by hand, and what cannot be."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from ply_by_ply import worked_forwards
from tuck_panels import inches, wish_of

from generator.calculation.count_rule import CountRule
from generator.calculation.panel.run_steps import RunWish, graduated_depths
from generator.calculation.panel.runs import work_runs
from generator.calculation.panel.wish import TuckWish
from generator.calculation.worked import End
from generator.errors import CalculationError
from generator.lengths import INCH, METRIC, MILLIMETRE, read_length

TWO = Fraction(2)


def run(depths: str, pitch: str, number: int | None = None, after: str | None = None) -> RunWish:
    return RunWish(
        tuple(inches(depth) for depth in depths.split(" to ")),
        inches(pitch),
        None if after is None else inches(after),
        number,
    )


def board(finished: str, margin: tuple[str, str] = ("1 1/2", "3")) -> TuckWish:
    wish = wish_of(finished, "0", "0", margin)
    return replace(wish, ends=(End("turnover", inches("3")), End("turnover", inches("3"))))


GROWING = (run("1/2", "2"), run("1/2 to 1", "2", 5))


@pytest.mark.parametrize(("finished", "open_number", "margin"), [("36", 3, "3"), ("54", 8, "2"), ("60", 9, "3")])
def test_a_mirrored_board_takes_its_open_run_from_the_width(finished: str, open_number: int, margin: str) -> None:
    # 2 (k + 5) tucks have 2 k + 9 gaps of 2. F 36: k 3 leaves 36 - 30 = 6. F 54: k 7 leaves 8, too much; k 8 leaves 4.
    # F 60: k 9 leaves 60 - 54 = 6.
    tucks = work_runs(GROWING, board(finished), INCH, mirror=True)
    assert tucks.count == 2 * (open_number + 5)
    assert (tucks.left_margin, tucks.right_margin) == (inches(margin), inches(margin))
    assert tucks.depths == tuple(reversed(tucks.depths))
    assert tucks.depths[: open_number + 5] == (
        *(inches("1/2"),) * open_number,
        *map(inches, ("1/2", "5/8", "3/4", "7/8", "1")),
    )
    assert set(tucks.pitches) == {TWO}
    assert tucks.finished == inches(finished)


def test_folds_of_unequal_neighbours_lie_depth_pitch_depth_apart() -> None:
    # 1/2 and 1 in deep, pitch 2: 3 1/2; then 1 and 1/2 with 1 in between the runs: 2 1/2.
    runs = (run("1/2 to 1", "2", 2, after="1"), run("1/2", "2", 1))
    tucks = work_runs(runs, board("6", ("1", "2")), INCH)
    assert tucks.spacings == (inches("3 1/2"), inches("2 1/2"))
    assert tucks.wish == 0
    assert worked_forwards(tucks) == (tucks.finished, tucks.stitching)


def test_the_middle_pitch_may_differ() -> None:
    # 2 + 1 + 3 + 1 + 2 = 9 with margins of 2.
    tucks = work_runs((run("1/2", "1", 2),), board("9", ("2", "2")), INCH, mirror=True, middle_pitch=inches("3"))
    assert tucks.pitches == (inches("1"), inches("3"), inches("1"))


def test_of_two_open_numbers_the_one_on_the_coarser_grid_is_taken() -> None:
    # F 12, p 1, d 1/2, turnover 3: k 9 leaves 4 (f_1 3 + 2 + 1/2), k 10 leaves 3 (f_1 5). Grid 1/2 and 1.
    tucks = work_runs((run("1/2", "1"),), board("12", ("1 1/2", "2")), INCH)
    assert (tucks.count, tucks.grid) == (10, 1)


def test_the_rule_of_the_plan_holds_for_the_whole_panel() -> None:
    wish = replace(board("12", ("1", "3")), rule=CountRule(4))
    assert work_runs((run("1/2", "1"),), wish, INCH).count == 8


def test_graduated_metric_depths_have_steps_of_half_millimetres() -> None:
    # 12 to 24 mm in five: 3 mm each.
    depths = graduated_depths((12 * MILLIMETRE, 24 * MILLIMETRE), 5, METRIC)
    assert depths == tuple(length * MILLIMETRE for length in (12, 15, 18, 21, 24))


def test_a_graduation_may_fall() -> None:
    assert graduated_depths((inches("1"), inches("1/2")), 3, INCH) == (inches("1"), inches("3/4"), inches("1/2"))


def test_a_sample_adds_its_difference_to_every_depth() -> None:
    # Measured 63/64 at 1/2: 1/64 less. Depths 1/2 and 1: 63/64 and 127/64.
    wish = replace(board("5", ("1", "2")), depth=inches("1/2"), take_up=Fraction(63, 64))
    tucks = work_runs((run("1/2 to 1", "2", 2),), wish, INCH)
    assert tucks.take_ups == (Fraction(63, 64), Fraction(127, 64))
    assert tucks.depths == (inches("1/2"), inches("1"))


REFUSALS = [
    (
        # 1/2 in 3 steps is 1/6; 5 tucks make steps of 1/8.
        "4 tucks from 1/2 in to 1 in would have depths between two marks of the room's ruler; 5 tucks go up in steps "
        "of 1/8 in",
        (run("1/2 to 1", "2", 4),),
        board("12"),
    ),
    ("the depths of a run must be whole steps of 1/16 in, more than nothing", (run("1/3", "2", 4),), board("12")),
    (
        "a graduation needs at least two tucks; give the run a number of 2 or more",
        (run("1/2 to 1", "2", 1),),
        board("12"),
    ),
    (
        # 16 leaves 16 - 5 (k - 1): 11, 6, 1. The middle of 2 and 4 is 3: 1 and 6 are nearest.
        "no number of tucks fits 16 in: 3 tucks leave 6 in and 4 tucks leave 1 in for both margins together, which may "
        "be 2 in to 4 in",
        (run("1/2", "5"),),
        board("16", ("1", "2")),
    ),
    (
        "finished size, pitches and numbers of tucks must be more than nothing",
        (run("1/2", "0", 3),),
        board("12"),
    ),
    ("a run has one depth, or a first and a last one", (RunWish((), TWO, None, 2),), board("12")),
    (
        "only one run may leave its number open; give the others a number",
        (run("1/2", "2"), run("1/2", "2")),
        board("12"),
    ),
    (
        "a graduated run needs its number of tucks; only a run of one depth may be open",
        (run("1/2 to 1", "2"),),
        board("12"),
    ),
    (
        "finished size, pitches and numbers of tucks must be more than nothing",
        (run("1/2", "2", 0),),
        board("12"),
    ),
    ("the runs are wider than 12 in; take fewer tucks or smaller pitches", (run("1/2", "2", 9),), board("12")),
    (
        # 3 tucks leave 12 - 4 = 8.
        "no number of tucks fits 12 in: 3 tucks leave 8 in for both margins together, which may be 3 in to 6 in",
        (run("1/2", "2", 3),),
        board("12"),
    ),
    (
        # 4 tucks leave 6, 5 leave 4; allowed 4 1/2 to 5 1/2.
        "no number of tucks fits 12 in: 4 tucks leave 6 in and 5 tucks leave 4 in for both margins together, which may "
        "be 4 1/2 in to 5 1/2 in",
        (run("1/2", "2"),),
        board("12", ("2 1/4", "2 3/4")),
    ),
    (
        # 1 tuck leaves all 12 in, 2 tucks leave 2.
        "no number of tucks fits 12 in: 1 tuck leaves 12 in and 2 tucks leave 2 in for both margins together, which "
        "may be 4 in to 6 in",
        (run("1/2", "10"),),
        board("12", ("2", "3")),
    ),
    (
        "the runs come to 4 tucks, but an odd number is wanted",
        (run("1/2", "1", 3), run("1", "1", 1)),
        replace(board("12"), rule=CountRule(2, 1)),
    ),
    (
        "the runs come to 501 tucks or more; more than 500 are not worked out in one panel. Are finished size and "
        "pitch in the right units?",
        (run("1/2", "1", 501),),
        board("506"),
    ),
    (
        # 506 less 2 x 3 for the margins leaves 500 pitches for 501 tucks, and one less is tried.
        "the runs come to 501 tucks or more; more than 500 are not worked out in one panel. Are finished size and "
        "pitch in the right units?",
        (run("1/2", "1"),),
        board("507"),
    ),
    (
        "tucks 1 and 2 face each other 1/2 in from stitching to stitching, but one is 1 in deep; make the pitch at "
        "least as much",
        (run("1 to 1/2", "1/2", 2),),
        replace(board("6"), facing=True),
    ),
]


@pytest.mark.parametrize(("text", "runs", "wish"), REFUSALS)
def test_runs_that_cannot_be_sewn_are_refused(text: str, runs: tuple[RunWish, ...], wish: TuckWish) -> None:
    with pytest.raises(CalculationError) as refusal:
        work_runs(runs, wish, INCH)
    assert str(refusal.value) == text


def test_five_hundred_unequal_tucks_are_worked() -> None:
    # 499 pitches of 1 in leave 3 in for each margin.
    tucks = work_runs((run("1/2", "1", 499), run("1", "1", 1)), board("505", ("3", "3")), INCH)
    assert (tucks.count, tucks.finished) == (500, inches("505"))


def test_a_metric_board_comes_out_in_centimetres() -> None:
    # F 90 cm, pitch 5: k 3 has 15 gaps, leaves 90 - 75 = 15, 7.5 each, too much; k 4 has 17, leaves 5, 2.5 each.
    bounds = (read_length("2.5 cm"), read_length("6 cm"))
    ends = (End("turnover", read_length("8 cm")),) * 2
    wish = TuckWish(read_length("90 cm"), Fraction(0), Fraction(0), ends, bounds, bounds)
    five = read_length("5 cm")
    runs = (RunWish((12 * MILLIMETRE,), five), RunWish((12 * MILLIMETRE, 24 * MILLIMETRE), five, None, 5))
    tucks = work_runs(runs, wish, METRIC, mirror=True)
    assert (tucks.count, tucks.left_margin, tucks.finished) == (18, read_length("2.5 cm"), read_length("90 cm"))


def test_of_margins_equally_far_from_the_middle_the_fewer_tucks_are_taken() -> None:
    # F 12, p 1, turnover 3, d 1/2: k 8 leaves 5 (f_1 6), k 10 leaves 3 (f_1 5), both on whole inches and 1 from 4; k 9
    # (f_1 5 1/2), 11 and 7 lie on half inches.
    assert work_runs((run("1/2", "1"),), board("12", ("1", "3")), INCH).count == 8


@pytest.mark.parametrize(("rule", "count"), [(CountRule(3), 9), (CountRule(exactly=11), 11), (CountRule(exactly=7), 7)])
def test_a_number_that_the_plan_asks_for_is_taken_from_all_that_fit(rule: CountRule, count: int) -> None:
    # 7 to 11 tucks leave 6 to 2 in for margins of 1 to 3.
    assert work_runs((run("1/2", "1"),), replace(board("12", ("1", "3")), rule=rule), INCH).count == count


def test_an_open_run_may_come_down_to_one_tuck() -> None:
    # 3 in for both margins of 1 to 2; a second tuck leaves 2 in: 1 each. f_1 3 + 1 1/2 + 1/2 = 5, or 4 1/2.
    tucks = work_runs((run("1/2", "1"),), board("3", ("1", "2")), INCH)
    assert (tucks.count, tucks.left_margin) == (1, inches("1 1/2"))


def test_the_nearest_number_that_graduates_may_be_smaller() -> None:
    # A quarter in 5 steps is 1/20; 4 steps of 1/16 are 5 tucks, 6 steps would be 1/24.
    with pytest.raises(CalculationError) as refusal:
        graduated_depths((inches("1/2"), inches("3/4")), 6, INCH)
    assert str(refusal.value) == (
        "6 tucks from 1/2 in to 3/4 in would have depths between two marks of the room's ruler; 5 tucks go up in steps "
        "of 1/16 in"
    )


def test_a_little_that_is_left_for_the_margins_is_told() -> None:
    with pytest.raises(CalculationError) as refusal:
        work_runs((run("1/2", "2", 2),), board("2 1/2"), INCH)
    assert str(refusal.value) == (
        "no number of tucks fits 2 1/2 in: 2 tucks leave 1/2 in for both margins together, which may be 3 in to 6 in"
    )

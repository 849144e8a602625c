"""Errors at the machine: check points, corrections dealt out, and what cannot be won back."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from ply_by_ply import worked_forwards
from tuck_panels import even_panel, inches, seam

from generator.calculation.panel.correction_words import allowed_change, spare_allowance
from generator.calculation.panel.marks import rounded
from generator.calculation.panel.tolerance import check_points, corrections, dealt_steps, random_error, systematic_error
from generator.calculation.worked import CheckPoint, Correction, End, TuckSet
from generator.errors import CalculationError
from generator.lengths import INCH, METRIC, MILLIMETRE

CAUGHT = End("caught hem")


def panel(count: int, left: End | None = None, right: End | None = None) -> TuckSet:
    ends = (left or seam(), right or seam())
    return rounded(even_panel(count, "3/8", "3/4", ends, ("3/4", "3/4")), INCH)


def test_after_six_tucks_the_next_mark_lies_where_the_worked_panel_says() -> None:
    # Mark 7 at 1 5/8 + 6 x 1 1/2 = 10 5/8, less 6 x 3/4: 6 1/8. Root of 6 is 2 and a bit: two marks, 1/8.
    # 11 tucks left, 2 x 11 x 1/16 = 1 3/8.
    point = check_points(panel(17), INCH)[0]
    assert point == CheckPoint(6, "the cut edge", "fold mark 7", 7, inches("6 1/8"), inches("1/8"), inches("1 3/8"))


def test_after_the_last_tuck_the_whole_width_is_measured() -> None:
    # 27 1/4 - 17 x 3/4 = 14 1/2: finished 13 1/2 and two seams. Root of 17: four marks.
    point = check_points(panel(17), INCH)[-1]
    assert point == CheckPoint(17, "the cut edge", "the far cut edge", 0, inches("14 1/2"), inches("1/4"), Fraction(0))


def test_a_caught_hem_is_measured_from_its_fold() -> None:
    # f_1 = 2 x (3/4 + 3/8) = 2 1/4, mark 7 at 11 1/4, less 4 1/2 and the hem of 1 1/8: 5 5/8. Whole: 13 1/2.
    points = check_points(panel(17, CAUGHT, CAUGHT), INCH)
    assert (points[0].start, points[0].end, points[0].expect) == ("the hem fold", "fold mark 7", inches("5 5/8"))
    assert (points[-1].end, points[-1].expect) == ("the far hem fold", inches("13 1/2"))


@pytest.mark.parametrize(
    ("count", "after"),
    [
        (0, []),
        (1, [1]),
        (3, [3]),
        (5, [2, 5]),
        (7, [3, 7]),
        (8, [6, 8]),
        (17, [6, 12, 17]),
        (40, [6, 12, 18, 24, 30, 36, 40]),
        (200, [18, 36, 54, 72, 90, 108, 126, 144, 162, 180, 198, 200]),
    ],
)
def test_check_points_are_neither_too_many_nor_too_late(count: int, after: list[int]) -> None:
    points = check_points(panel(count), INCH)
    assert [point.after for point in points] == after


@settings(max_examples=60, deadline=None)
@given(st.integers(1, 300), st.integers(1, 20), st.sampled_from([seam(), CAUGHT, End("raw")]))
def test_a_check_point_is_what_the_panel_folded_so_far_measures(count: int, every: int, left: End) -> None:
    # The second route: fold only the tucks sewn so far and end the cloth at the next mark.
    tucks = panel(count, left)
    points = check_points(tucks, INCH, every)
    assert len(points) <= 14
    for point in points[:-1]:
        sewn = replace(
            tucks,
            marks=tucks.marks[: point.after],
            take_ups=tucks.take_ups[: point.after],
            right=End("raw"),
            cut=tucks.marks[point.mark - 1],
        )
        edge = 0 if left.kind == "caught hem" else tucks.left_allowance
        assert point.expect == worked_forwards(sewn)[0] + edge
        assert point.within >= INCH.mark


@settings(max_examples=60, deadline=None)
@given(st.integers(2, 60), st.sampled_from([6, 3, 9]))
def test_a_correction_brings_the_panel_back_to_its_size(count: int, every: int) -> None:
    # A panel off by D whose tucks left are changed as told: twice the sum of the changes is D.
    tucks = panel(count)
    for point in check_points(tucks, INCH, every):
        for correction in corrections(tucks, point, INCH):
            if not correction.steps:
                continue
            assert 2 * sum(number * change for number, change in correction.steps) == correction.off
            assert sum(number for number, _ in correction.steps) <= count - point.after
            assert all(abs(change) <= inches("1/16") for _, change in correction.steps)


def test_corrections_run_from_narrow_to_wide() -> None:
    offs = [correction.off for correction in corrections(panel(17), check_points(panel(17), INCH)[0], INCH)]
    assert offs == [-inches(off) for off in ("1/16", "1/8", "1/4", "1/2")] + [
        inches(off) for off in ("1/16", "1/8", "1/4", "1/2")
    ]


def test_six_steps_over_four_tucks_are_two_and_two_and_one_and_one() -> None:
    # D 3/8: N = 3/8 / (2 x 1/32) = 6; 6 = 4 x 1 + 2.
    step = -inches("1/32")
    assert dealt_steps(6, 4, step) == ((2, -inches("1/16")), (2, step))


def words(tucks: TuckSet, after: int, off: str) -> Correction:
    point = next(point for point in check_points(tucks, INCH, 3) if point.after == after)
    wanted = -inches(off[1:]) if off.startswith("-") else inches(off)
    return next(correction for correction in corrections(tucks, point, INCH) if correction.off == wanted)


@pytest.mark.parametrize(
    ("after", "off", "text"),
    [
        (12, "-1/16", "Stitch tuck 13 shallower by 1/32 in."),
        (12, "-1/2", "Stitch tucks 13 to 15 shallower by 1/16 in and tucks 16 and 17 shallower by 1/32 in."),
        (12, "1/4", "Stitch tucks 13 to 16 deeper by 1/32 in."),
        (
            15,
            "-1/2",
            "1/2 in is more than the 2 tucks left can absorb (1/4 in). Unpick 4 tucks and stitch them again, "
            "shallower by 1/4 in together. Or leave one tuck out: that gives back 3/4 in. Or take 1/2 in from the "
            "allowances. Or cut the other pieces to the panel as sewn.",
        ),
        (
            15,
            "1/2",
            "1/2 in is more than the 2 tucks left can absorb (1/4 in). Unpick 4 tucks and stitch them again, deeper "
            "by 1/4 in together. Or trim 1/2 in off. Or cut the other pieces to the panel as sewn.",
        ),
        (15, "-1/4", "Stitch tucks 16 and 17 shallower by 1/16 in."),
        (17, "-1/4", "That is usual; ease it in when the panel is sewn to its neighbour."),
        (
            17,
            "-1/2",
            "Unpick 4 tucks and stitch them again, shallower by 1/4 in together. Or unpick one tuck: that gives back "
            "3/4 in. Or take 1/2 in from the allowances. Or cut the other pieces to the panel as sewn.",
        ),
    ],
)
def test_a_correction_says_which_tucks_and_by_how_much(after: int, off: str, text: str) -> None:
    assert words(panel(17), after, off).text == text


def test_only_a_far_caught_hem_gives_back_half_of_what_its_mark_is_moved() -> None:
    tucks = panel(17, CAUGHT, CAUGHT)
    assert (
        "Or move the last fold mark 1 in towards the far edge: the hem there grows narrower by 1/2 in."
        in words(tucks, 15, "-1/2").text
    )
    assert "move the last" not in words(panel(17), 15, "-1/2").text
    moved = replace(tucks, marks=(*tucks.marks[:-1], tucks.marks[-1] + 1))
    assert worked_forwards(moved)[0] == tucks.finished + inches("1/2")


def test_moving_a_mark_elsewhere_wins_nothing() -> None:
    tucks = panel(17)
    moved = replace(tucks, marks=(*tucks.marks[:-1], tucks.marks[-1] + inches("1/4")))
    assert worked_forwards(moved)[0] == tucks.finished


def test_shallow_tucks_are_changed_less() -> None:
    changes = [str(allowed_change(inches(depth), INCH)) for depth in ("1/16", "1/8", "1/4", "3/8", "1", "2")]
    assert changes == ["0", "1/32", "1/16", "1/16", "1/8", "1/4"]
    assert allowed_change(3 * MILLIMETRE, METRIC) == MILLIMETRE / 2


def test_a_stitch_line_too_deep_by_a_thirty_second_costs_an_inch_in_sixteen_tucks() -> None:
    # 2 x 16 x 1/32 = 1 where all err alike, 2 x 4 x 1/32 = 1/4 where each errs by itself.
    assert systematic_error(16, inches("1/32")) == 1
    assert random_error(16, inches("1/32")) == inches("1/4")


@given(st.integers(0, 5000))
def test_the_random_error_is_rounded_up_and_hardly(count: int) -> None:
    root = random_error(count, Fraction(1, 2))
    assert root**2 >= count > (root - Fraction(1, 10**6)) ** 2 - Fraction(1, 10**5)


def test_check_points_every_no_tucks_are_refused() -> None:
    with pytest.raises(CalculationError, match=r"^the number of tucks between check points must be 1 or more, not 0$"):
        check_points(panel(3), INCH, 0)


def test_corrections_need_a_tuck_that_is_left() -> None:
    with pytest.raises(CalculationError, match=r"^the number of tucks left must be 1 or more, not 0$"):
        dealt_steps(3, 0, inches("1/32"))


AFTER_ALL = "Or cut the other pieces to the panel as sewn."


@pytest.mark.parametrize(
    ("count", "off", "text"),
    [
        # Each may be changed by 1/16: 1/8 off is 1/16 of depth, one tuck; 1/2 is 1/4, four; of three tucks all are.
        (
            1,
            "-1/8",
            "Unpick one tuck and stitch it again, shallower by 1/16 in. Or unpick one tuck: that gives back 3/4",
        ),
        (4, "-1/2", "Unpick 4 tucks and stitch them again, shallower by 1/4 in together. Or unpick one tuck: that"),
        (3, "-1/2", "Unpick the tucks and stitch them again, all a little shallower. Or unpick one tuck: that gives"),
        (3, "1/2", "Unpick the tucks and stitch them again, all a little deeper. Or trim 1/2 in off. " + AFTER_ALL),
    ],
)
def test_no_more_tucks_are_stitched_again_than_there_are(count: int, off: str, text: str) -> None:
    assert words(panel(count), count, off).text.startswith(text)


def test_tucks_too_shallow_to_change_are_all_stitched_again() -> None:
    # A quarter of 1/16 is less than 1/32, so no tuck may be changed at all.
    shallow = rounded(even_panel(2, "1/16", "3/4", (seam(), seam()), ("3/4", "3/4")), INCH)
    assert words(shallow, 2, "1/2").text == (
        f"Unpick the tucks and stitch them again, all a little deeper. Or trim 1/2 in off. {AFTER_ALL}"
    )


def test_a_panel_too_wide_is_never_told_to_move_a_mark() -> None:
    assert "move the last" not in words(panel(17, CAUGHT, CAUGHT), 15, "1/2").text


@pytest.mark.parametrize(
    ("left", "right", "told"),
    [
        # Each seam of 1/2 in can give 1/4 in and hold; a hem of 1/4 and 1 in can give 1 in; the others nothing.
        (seam(), seam(), True),
        (seam(), End("seam", inches("7/16")), False),
        (seam(), End("raw"), False),
        (End("hem", inches("1/4"), inches("1")), End("bound", inches("3/8")), True),
        (End("bound", inches("3/8")), End("bound", inches("3/8")), False),
        (End("hem", inches("1/4"), inches("1")), CAUGHT, True),
        (CAUGHT, seam(), False),
        (CAUGHT, CAUGHT, False),
    ],
)
def test_allowances_give_no_more_than_leaves_a_seam(left: End, right: End, *, told: bool) -> None:
    assert ("from the allowances" in words(panel(17, left, right), 17, "-1/2").text) is told


def test_a_seam_of_a_centimetre_and_a_half_gives_nine_millimetres() -> None:
    ends = (End("seam", 15 * MILLIMETRE), End("seam", 4 * MILLIMETRE))
    assert spare_allowance(rounded(even_panel(3, "3/8", "3/4", ends, ("3/4", "3/4")), METRIC), METRIC) == 9 * MILLIMETRE


@pytest.mark.parametrize(
    ("left", "right", "ends", "whole"),
    [
        (CAUGHT, seam(), ("the hem fold", "the far cut edge"), "14"),  # 13 1/2 and one seam
        (seam(), CAUGHT, ("the cut edge", "the far hem fold"), "14"),
    ],
)
def test_each_edge_is_measured_from_what_is_there(left: End, right: End, ends: tuple[str, str], whole: str) -> None:
    point = check_points(panel(17, left, right), INCH)[-1]
    assert (point.start, point.end, point.expect) == (*ends, inches(whole))

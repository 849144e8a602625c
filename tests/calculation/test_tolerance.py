"""Errors at the machine: check points, corrections dealt out, and what cannot be won back."""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from ply_by_ply import worked_forwards
from tuck_panels import even_panel, inches, seam

from generator.calculation.panel.leeway import allowed_change, leeway_of, spare_allowance
from generator.calculation.panel.marks import laid_out, rounded
from generator.calculation.panel.stitching_errors import random_error, systematic_error
from generator.calculation.panel.tolerance import ALONG, check_points, corrections, dealt_steps
from generator.calculation.worked import End, TuckSet
from generator.calculation.worked_checks import CheckPoint, Correction, Leeway, Others
from generator.errors import CalculationError
from generator.lengths import INCH, METRIC, MILLIMETRE, say_length

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
            changed = [tuck for numbers, _ in correction.steps for tuck in numbers]
            assert 2 * sum(len(numbers) * change for numbers, change in correction.steps) == correction.off
            assert len(set(changed)) == len(changed)
            assert min(changed) > point.after
            assert all(abs(change) == inches("1/16") for _, change in correction.steps)


def test_corrections_run_from_narrow_to_wide() -> None:
    offs = [correction.off for correction in corrections(panel(17), check_points(panel(17), INCH)[0], INCH)]
    assert offs == [-inches(off) for off in ("1/8", "1/4", "1/2")] + [inches(off) for off in ("1/8", "1/4", "1/2")]


def test_six_steps_over_four_tucks_are_two_and_two_and_one_and_one() -> None:
    # D 3/4: N = 3/4 / (2 x 1/16) = 6; 6 = 4 x 1 + 2.
    assert dealt_steps(6, (2, 2, 2, 2)) == (2, 2, 1, 1)


@given(st.lists(st.integers(0, 4), min_size=1, max_size=12), st.data())
def test_steps_are_dealt_out_whole_and_no_tuck_takes_more_than_it_may(most: list[int], data: st.DataObject) -> None:
    steps = data.draw(st.integers(0, sum(most)))
    shares = dealt_steps(steps, most)
    assert sum(shares) == steps
    assert all(0 <= share <= bound for share, bound in zip(shares, most, strict=True))
    # As even as can be: who has less than another could not take more, or comes later and has one less.
    for place, share in enumerate(shares):
        for other, larger in enumerate(shares):
            assert larger <= share or share == most[place] or (larger == share + 1 and other < place)


def words(tucks: TuckSet, after: int, off: str, leeway: Leeway | None = None) -> Correction:
    point = next(point for point in check_points(tucks, INCH, 3, leeway) if point.after == after)
    wanted = -inches(off[1:]) if off.startswith("-") else inches(off)
    return next(correction for correction in corrections(tucks, point, INCH, leeway) if correction.off == wanted)


@pytest.mark.parametrize(
    ("after", "off", "text"),
    [
        # Of 17 tucks 5 are left, 1/16 each at most: 5/8. 1/8 off is one sixteenth of depth, 1/4 two, 1/2 four.
        (12, "-1/8", "Stitch tuck 13 shallower by 1/16 in."),
        (12, "1/4", "Stitch tucks 13 and 14 deeper by 1/16 in."),
        (12, "-1/2", "Stitch tucks 13 to 16 shallower by 1/16 in."),
        # Two left take 1/4; the other 1/4 is two sixteenths in two of those sewn. One fewer gives 3/4, which is nearer.
        (
            15,
            "-1/2",
            "1/2 in is more than the 2 tucks left can absorb (1/4 in). Leave one tuck out: that gives back 3/4 in. Or "
            "take 1/2 in from the allowances. Or stitch those left shallower by 1/16 in each; unpick 2 of those sewn "
            "and stitch them again, shallower by 1/16 in each.",
        ),
        # Margins of 3/4, of which 3/8 + 1/8 are needed: 1/4 at either side.
        (
            15,
            "1/2",
            "1/2 in is more than the 2 tucks left can absorb (1/4 in). Trim 1/4 in off at the left and at the right "
            "when all tucks are sewn. Or stitch those left deeper by 1/16 in each; stitch 2 of those sewn once more, "
            "deeper by 1/16 in each, and take the old lines out.",
        ),
        (15, "-1/4", "Stitch tucks 16 and 17 shallower by 1/16 in."),
        (17, "-1/4", "That is usual; ease it in when the panel is sewn to its neighbour."),
        (
            17,
            "-1/2",
            "Unpick one tuck: that gives back 3/4 in. Or take 1/2 in from the allowances. Or unpick 4 tucks and stitch "
            "them again, shallower by 1/16 in each.",
        ),
    ],
)
def test_a_correction_says_which_tucks_and_by_how_much(after: int, off: str, text: str) -> None:
    assert words(panel(17), after, off).text == text


def test_only_a_far_caught_hem_gives_back_half_of_what_its_mark_is_moved() -> None:
    tucks = panel(17, CAUGHT, CAUGHT)
    # The hem is 3/4 + 3/8 = 1 1/8 deep; 3/8 of it hold the tuck and 1/8 is play: 5/8 may go.
    assert leeway_of(tucks, INCH).hem == inches("5/8")
    assert (
        "Or move the last fold mark 1 in towards the far edge: the hem there grows narrower by 1/2 in."
        in words(tucks, 15, "-1/2").text
    )
    assert "move the last" not in words(panel(17), 15, "-1/2").text
    moved = replace(tucks, marks=(*tucks.marks[:-1], tucks.marks[-1] + 1))
    assert worked_forwards(moved)[0] == tucks.finished + inches("1/2")


def test_a_far_hem_that_would_not_hold_is_not_made_narrower() -> None:
    # Margin 3/16: the hem is 9/16 deep, 1/16 of it may go, and 1/4 is asked for.
    tight = rounded(even_panel(17, "3/8", "3/4", (CAUGHT, CAUGHT), ("3/16", "3/16")), INCH)
    assert leeway_of(tight, INCH).hem == inches("1/16")
    assert "move the last" not in words(tight, 15, "-1/2").text


def test_moving_a_mark_elsewhere_wins_nothing() -> None:
    tucks = panel(17)
    moved = replace(tucks, marks=(*tucks.marks[:-1], tucks.marks[-1] + inches("1/4")))
    assert worked_forwards(moved)[0] == tucks.finished


def test_shallow_tucks_are_changed_less() -> None:
    changes = [str(allowed_change(inches(depth), INCH)) for depth in ("1/16", "1/8", "1/4", "3/8", "1", "2")]
    assert changes == ["0", "0", "1/16", "1/16", "1/8", "1/4"]
    # A quarter of 3 mm is less than a millimetre; an eighth of 12 mm is one and a half, of which one can be measured.
    assert [allowed_change(depth * MILLIMETRE, METRIC) / MILLIMETRE for depth in (3, 4, 12, 16)] == [0, 1, 1, 2]


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


def test_more_steps_than_the_tucks_can_take_are_refused() -> None:
    with pytest.raises(CalculationError, match=r"^the tucks left can take 2 steps, not 3$"):
        dealt_steps(3, (1, 0, 1))


@pytest.mark.parametrize(
    ("count", "after", "off", "text"),
    [
        # Each may be changed by 1/16: 1/8 off is 1/16 of depth, one tuck; 1/2 is 1/4, four.
        (1, 1, "-1/8", "from the allowances. Or unpick one tuck and stitch it again, shallower by 1/16 in."),
        (4, 4, "-1/2", "from the allowances. Or unpick 4 tucks and stitch them again, shallower by 1/16 in each."),
        # Three tucks win back 3/8 at most: no more is promised.
        (3, 3, "-1/2", "Unpick one tuck: that gives back 3/4 in. Or take 1/2 in from the allowances."),
        (3, 3, "1/2", "Trim 1/4 in off at the left and at the right."),
        # Two of four are sewn. Those left take 1/4, those sewn the other 1/4: two are unpicked, and never four.
        (
            4,
            2,
            "-1/2",
            "Or stitch those left shallower by 1/16 in each; unpick 2 of those sewn and stitch them again, shallower "
            "by 1/16 in each.",
        ),
    ],
)
def test_no_more_tucks_are_stitched_again_than_are_sewn(count: int, after: int, off: str, text: str) -> None:
    assert words(panel(count), after, off).text.endswith(text)


@settings(max_examples=40, deadline=None)
@given(st.integers(1, 40), st.sampled_from([2, 3, 6]))
def test_what_is_unpicked_is_sewn(count: int, every: int) -> None:
    tucks = panel(count)
    for point in check_points(tucks, INCH, every):
        for correction in corrections(tucks, point, INCH):
            told = re.findall(r"(\d+|one) (?:tucks?|of those sewn) (?:and stitch|once more)", correction.text)
            assert all((1 if number == "one" else int(number)) <= point.after for number in told)


def test_tucks_too_shallow_to_change_are_not_changed() -> None:
    # A quarter of 1/8 is less than 1/16, so no tuck may be changed; margins of 3/4 give 1/2 each.
    shallow = rounded(even_panel(9, "1/8", "3/4", (seam(), seam()), ("3/4", "3/4")), INCH)
    first, _ = check_points(shallow, INCH)
    assert (first.after, first.within, first.absorb) == (6, inches("1/8"), 0)
    assert words(shallow, 6, "1/2").text == (
        "The 3 tucks left cannot be changed without it being seen. "
        "Trim 1/4 in off at the left and at the right when all tucks are sewn."
    )
    # Leaving one out gives 1/4, which is no nearer to 1/8 than before.
    assert words(shallow, 6, "-1/8").text.endswith("being seen. Take 1/8 in from the allowances.")


@pytest.mark.parametrize(
    ("others", "narrow", "wide"),
    [
        ("wait", "Or cut the other pieces to the panel as sewn.", "Or cut the other pieces to the panel as sewn."),
        ("cut", "Or trim what will be sewn to it by 1/2 in.", "when all tucks are sewn."),
        ("none", "Or take 1/2 in from the allowances.", "when all tucks are sewn."),
    ],
)
def test_other_pieces_are_cut_to_the_panel_only_where_they_wait(others: Others, narrow: str, wide: str) -> None:
    tucks = panel(17)
    leeway = leeway_of(tucks, INCH, others=others)
    assert words(tucks, 15, "-1/2", leeway).text.partition(" Or stitch")[0].endswith(narrow)
    assert words(tucks, 15, "1/2", leeway).text.partition(" Or stitch")[0].endswith(wide)


def test_a_tuck_that_covers_a_join_is_not_changed() -> None:
    # Tucks 13, 14, 16 and 17 give 1/16 each: 1/2 in all; 15 covers a join.
    tucks = panel(17)
    leeway = leeway_of(tucks, INCH, joined=(4, 15))
    point = check_points(tucks, INCH, 6, leeway)[1]
    assert (point.after, point.absorb) == (12, inches("1/2"))
    assert words(tucks, 12, "-1/2", leeway).text == "Stitch tucks 13, 14, 16 and 17 shallower by 1/16 in."
    assert "Leave tucks 4 and 15 as sewn: a join lies there." in words(tucks, 17, "-1/2", leeway).text
    assert words(tucks, 15, "-1/4", leeway).text == "Stitch tucks 16 and 17 shallower by 1/16 in."


def test_no_tuck_is_left_out_where_that_would_change_the_turns_of_the_others() -> None:
    tucks = panel(17)
    assert "leave one tuck out" not in words(tucks, 15, "-1/2", leeway_of(tucks, INCH, leaves_out=False)).text


def test_of_unequal_tucks_the_one_is_left_out_that_gives_best() -> None:
    # Depths 1/4, 3/8 and 1/2 in turn: of tucks 5 and 6, 6 gives 1 in and 5 gives 3/4; 1/2 is wanted. 3/4 is nearer.
    depths = [inches(depth) for depth in ("1/4", "3/8", "1/2", "1/4", "3/8", "1/2")]
    tucks = rounded(
        laid_out(depths, [2 * depth for depth in depths], [inches("1")] * 5, (seam(), seam()), (inches("1"),) * 2), INCH
    )
    point = CheckPoint(4, "", "", 5, inches("1"), inches("1/16"), Fraction(0))
    assert "Leave tuck 5 out: that gives back 3/4 in." in next(
        one.text for one in corrections(tucks, point, INCH) if one.off == -inches("1/2")
    )


@pytest.mark.parametrize(
    ("margins", "text"),
    [
        # Needed beside a seam: 3/8 + 1/8. 1/4 can go at either side, or 1/2 at the right alone, or nothing.
        (("3/4", "3/4"), "Trim 1/4 in off at the left and at the right."),
        (("1/2", "1"), "Trim 1/2 in off at the right."),
        (("1/2", "1/2"), "Stitch 4 tucks once more, deeper by 1/16 in each, and take the old lines out."),
    ],
)
def test_no_more_is_trimmed_than_leaves_the_edge_tucks_their_room(margins: tuple[str, str], text: str) -> None:
    tucks = rounded(even_panel(17, "3/8", "3/4", (seam(), seam()), margins), INCH)
    assert words(tucks, 17, "1/2").text.startswith(text)


def test_a_ring_is_taken_in_at_its_closing_as_far_as_its_folds_leave_room() -> None:
    # Pitch 2 at the closing, folds of 3/8 turned to it from both sides, 1/8 of play: 1 1/8 may be taken in.
    ring = replace(rounded(even_panel(8, "3/8", "2", (seam(), seam()), ("1", "1")), INCH), ring=True)
    assert leeway_of(ring, INCH).trims == (0, inches("1 1/8"))
    assert leeway_of(ring, INCH, lies=("in", "out")).trims == (0, inches("1 1/2"))
    assert words(ring, 8, "1/2").text.startswith("Make the closing seam wider: 1/2 in more, both sides together.")


def test_cross_tucks_are_measured_from_the_top_edge() -> None:
    first, _, whole = check_points(panel(17), INCH, words=ALONG)
    assert (first.start, first.end) == ("the top cut edge", "cross mark 7")
    assert whole.end == "the bottom cut edge"


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


def test_a_hem_that_a_rod_runs_through_gives_nothing() -> None:
    # A casing of 1/2 and 1 1/2 in keeps all of it; a hem of 1 and 1 in can be turned until 1/4 in is left.
    ends = (End("hem", inches("1/2"), inches("3/2"), way="casing"), End("hem", inches("1"), inches("1")))
    both = rounded(even_panel(3, "3/8", "3/4", ends, ("3/4", "3/4")), INCH)
    assert spare_allowance(both, INCH) == inches("7/4")


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


def test_the_guide_tells_the_same_limit_as_the_tables() -> None:
    guide = (Path(__file__).resolve().parents[2] / "site" / "pages" / "when-a-row-goes-wrong.md").read_text("utf-8")
    least, metric = (
        say_length(allowed_change(inches("3/8"), INCH), INCH),
        say_length(allowed_change(9 * MILLIMETRE, METRIC), METRIC),
    )
    assert f"by more than people would see: {least} or {metric}, of deep tucks an eighth of the depth" in guide
    assert allowed_change(inches("2"), INCH) == inches("2") / 8

"""Check points: bars as long as the measures, ticks where the tucks lie, and how far off is fine."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from panels import panel_of, piece_of, tuck_set_of, worksheet_of

from generator.calculation.worked import End, Panel
from generator.calculation.worked_checks import NO_CHECKS, CheckPoint
from generator.drawing.check_points import (
    check_point_words,
    draw_check_points,
    plan_check_points,
    sketch_check_points,
    stitched_places,
)
from generator.drawing.style import SMALLEST_TEXT, Style, read_style
from generator.lengths import INCH, METRIC

PLAIN = Style()
LARGE = read_style({"small": 12, "text": 14, "strong": 16})


def ladders_of(panel: Panel, edition):
    return plan_check_points(panel.across, panel.checks.points, edition)


def sketched(panel: Panel, edition, style):
    return sketch_check_points(panel.across, panel.checks.points, edition, style, "ladder")


def test_the_longest_measure_fills_the_width():
    # After tuck 17 of the panel of 27 1/4 in: 14 1/2 in, within 1/8 in, on 6.2 in of paper.
    (ladder,) = ladders_of(panel_of(17), INCH)
    assert ladder.length == Fraction(117, 8)
    assert ladder.scale == Fraction(31, 5) / Fraction(117, 8)
    assert [bar.point.expect for bar in ladder.bars] == [Fraction(49, 8), Fraction(85, 8), Fraction(29, 2)]


def test_a_ruler_has_numbers_at_least_two_fifths_of_an_inch_apart():
    # 0.424 in of paper an inch: every inch; 92 in of cloth on 6.2 in of paper: every 10 in.
    assert ladders_of(panel_of(17), INCH)[0].step == 1
    assert ladders_of(panel_of(120), INCH)[0].step == 10
    assert ladders_of(panel_of(120), METRIC)[0].step == Fraction(2000, 254)


def test_the_tucks_stitched_so_far_lie_a_margin_and_a_seam_from_the_cut_edge():
    # Margin 3/4, seam 1/2, pitch 3/4: stitching at 1 1/4, 2 ...
    panel = panel_of(17)
    places = stitched_places(panel.across, panel.checks.points[0], panel.checks.points)
    assert places == tuple(Fraction(5, 4) + Fraction(3, 4) * step for step in range(6))


def test_from_a_hem_fold_the_tucks_lie_a_margin_away():
    # Caught hem, margin 3/4, depth 3/8: after tuck 2 the third fold mark is 3/4 + 2 x 3/4 + 3/8 from the hem fold.
    tucks = tuck_set_of(6, ends=(End("caught hem"), End("caught hem")))
    point = CheckPoint(2, "the hem fold", "fold mark 3", 3, Fraction(21, 8), Fraction(1, 8), Fraction(0))
    assert stitched_places(tucks, point, (point,)) == (Fraction(3, 4), Fraction(3, 2))


def test_without_a_measure_to_a_fold_mark_no_tucks_are_shown():
    panel = panel_of(1)
    assert stitched_places(panel.across, panel.checks.points[0], panel.checks.points) == ()


def test_a_check_point_is_told_in_words():
    assert check_point_words(panel_of(17).checks.points[0], INCH) == (
        "from the cut edge to fold mark 7: 6 1/8 in, within 1/8 in is fine"
    )


@pytest.mark.parametrize("style", [PLAIN, LARGE], ids=["plain", "large print"])
@pytest.mark.parametrize("count", [1, 2, 7, 17, 40, 120, 200])
def test_no_words_cross_and_none_are_too_small(count, style):
    for canvas in sketched(panel_of(count), INCH, style):
        assert canvas.crossings() == ()
        assert min(label.size for label in canvas.labels) >= SMALLEST_TEXT
        assert canvas.height <= 12


@settings(max_examples=15, deadline=None)
@given(count=st.integers(1, 150), depth=st.integers(1, 30), room=st.integers(1, 60))
def test_no_words_cross_on_any_ladder(count, depth, room):
    depth = Fraction(depth, 16)
    for edition in (INCH, METRIC):
        for canvas in sketched(panel_of(count, depth, 2 * depth + Fraction(room, 16)), edition, PLAIN):
            assert canvas.crossings() == ()


def test_many_check_points_take_several_pictures():
    ladders = ladders_of(panel_of(200), INCH)
    # After every sixth tuck up to 198, and after the last: 34.
    assert [len(ladder.bars) for ladder in ladders] == [20, 14]
    assert len({ladder.scale for ladder in ladders}) == 1
    pictures = draw_check_points(worksheet_of(piece_of(panel_of(200))), "front", PLAIN)
    assert [picture.key for picture in pictures] == ["check points front", "check points front 2"]
    assert pictures[0].text.count("\n") == 33


def test_a_panel_without_check_points_has_no_ladder():
    panel = replace(panel_of(3), checks=NO_CHECKS)
    assert draw_check_points(worksheet_of(piece_of(panel)), "front", PLAIN) == ()
    assert ladders_of(Panel(tuck_set_of(3)), INCH) == ()


def test_the_same_ladder_gives_the_same_bytes():
    worksheet = worksheet_of(piece_of(panel_of(17)))
    assert draw_check_points(worksheet, "front", PLAIN) == draw_check_points(worksheet, "front", PLAIN)

"""The flat cloth: every mark in its place, readable however long the panel is."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from panels import joined, panel_of, piece_of, tuck_set_of, worksheet_of

from generator.calculation.worked import End, Panel
from generator.drawing.flat_cloth import draw_cross_folds, draw_flat_cloth, sketch_flat_cloth, turned_panel
from generator.drawing.flat_cloth_plan import WIDTH, mark_label, part_cuts, plan_flat_cloth
from generator.drawing.style import SMALLEST_TEXT, read_style
from generator.lengths import INCH, METRIC, say_length

PLAIN = read_style({})
LARGE = read_style({"small": 12, "text": 14, "strong": 16})
COUNTS = (1, 2, 7, 17, 40, 120, 200)


def test_a_panel_that_fits_is_one_part_at_one_scale():
    # 9 tucks of 3/8 in every 1 1/2 in: cut 15 1/4 in. Marks at 1 5/8 + 1 1/2 (i - 1).
    panel = panel_of(9)
    plan = plan_flat_cloth(piece_of(panel, along=Fraction(7)), panel, INCH, PLAIN)
    assert len(plan.parts) == 1
    assert plan.to_scale
    assert (plan.parts[0].start, plan.parts[0].end) == (0, Fraction(61, 4))
    assert [mark.at for mark in plan.parts[0].marks] == [Fraction(13, 8) + Fraction(3, 2) * step for step in range(9)]
    assert [mark.x for mark in plan.parts[0].marks] == [
        plan.left + (Fraction(13, 8) + Fraction(3, 2) * step) * plan.scale for step in range(9)
    ]
    assert plan.width == WIDTH
    assert plan.scale * Fraction(61, 4) == WIDTH - plan.left - plan.right


def test_a_small_panel_is_not_drawn_larger_than_it_is():
    panel = panel_of(1)
    assert plan_flat_cloth(piece_of(panel), panel, INCH, PLAIN).scale == 1


def test_parts_break_midway_between_two_marks():
    # Marks at 2, 4, 6, 8, 10 in three parts: two marks each, broken at 5 and 9.
    marks = tuple(Fraction(place) for place in (2, 4, 6, 8, 10))
    assert part_cuts(marks, Fraction(12), 3) == ((0, 5), (5, 9), (9, 12))
    assert part_cuts((), Fraction(12), 1) == ((0, 12),)


@pytest.mark.parametrize("count", COUNTS)
def test_the_parts_of_a_long_panel_hold_every_mark_once_at_one_scale(count):
    panel = panel_of(count)
    plan = plan_flat_cloth(piece_of(panel), panel, INCH, PLAIN)
    assert [mark.tuck for part in plan.parts for mark in part.marks] == list(range(1, count + 1))
    assert plan.parts[0].start == 0
    assert plan.parts[-1].end == panel.across.cut
    for before, after in zip(plan.parts, plan.parts[1:], strict=False):
        assert before.end == after.start
    assert all((part.end - part.start) * plan.scale <= WIDTH - plan.left - plan.right for part in plan.parts)


def test_the_first_and_the_last_mark_are_called_out():
    assert mark_label(1, 17, Fraction(13, 8), INCH) == "first 1 5/8"
    assert mark_label(2, 17, Fraction(25, 8), INCH) == "3 1/8"
    assert mark_label(17, 17, Fraction(205, 8), INCH) == "last 25 5/8"
    assert mark_label(1, 1, Fraction(13, 8), INCH) == "only fold 1 5/8"


@pytest.mark.parametrize("style", [PLAIN, LARGE], ids=["plain", "large print"])
@pytest.mark.parametrize("count", COUNTS)
def test_no_words_cross_and_none_are_too_small(count, style):
    panel = panel_of(count)
    for canvas in sketch_flat_cloth(piece_of(panel), panel, INCH, style):
        assert canvas.crossings() == ()
        assert min(label.size for label in canvas.labels) >= max(SMALLEST_TEXT, style.small)
        assert canvas.width <= 7
        assert canvas.height <= 9


@settings(max_examples=40, deadline=None)
@given(
    count=st.integers(1, 150),
    depth=st.integers(2, 16),
    space=st.integers(0, 24),
    rows=st.integers(0, 12),
    along=st.integers(4, 60),
)
def test_no_words_cross_on_any_panel(count, depth, space, rows, along):
    depth = Fraction(depth, 16)
    panel = panel_of(count, depth, 2 * depth + Fraction(space + 1, 16), rows)
    for canvas in sketch_flat_cloth(piece_of(panel, along=Fraction(max(along, 3 * rows + 3))), panel, INCH, PLAIN):
        assert canvas.crossings() == ()


def test_a_join_and_the_grain_stand_clear_of_each_other():
    panel = joined(panel_of(17), 9)
    (canvas,) = sketch_flat_cloth(piece_of(panel), panel, INCH, PLAIN)
    # The join at the left foot of tuck 9: 13 5/8 less 3/8.
    assert "join 13 1/4" in [label.words for label in canvas.labels]
    assert canvas.crossings() == ()


def test_grain_across_is_drawn_across():
    panel = panel_of(7)
    piece = replace(piece_of(panel), grain="across")
    (canvas,) = sketch_flat_cloth(piece, panel, INCH, PLAIN)
    (grain,) = [label for label in canvas.labels if label.words == "grain"]
    assert not grain.turned
    assert canvas.crossings() == ()


def test_the_edges_end_where_the_allowances_end():
    # Seams of 1/2 in: dotted lines 1/2 in inside the cut edge at the scale of the drawing.
    panel = panel_of(7)
    piece = piece_of(panel)
    plan = plan_flat_cloth(piece, panel, INCH, PLAIN)
    (canvas,) = sketch_flat_cloth(piece, panel, INCH, PLAIN)
    upright = {round(start[0], 6) for start, end in canvas.segments if start[0] == end[0]}
    for at in (Fraction(1, 2), panel.across.cut - Fraction(1, 2)):
        assert round(float(plan.left + at * plan.scale), 6) in upright


def test_metric_measures_are_written_as_centimetres():
    tucks = tuck_set_of(3)
    tucks = replace(tucks, marks=tuple(place * Fraction(50, 127) for place in (4, 8, 12)))
    panel = Panel(tucks)
    (canvas,) = sketch_flat_cloth(piece_of(panel), panel, METRIC, PLAIN)
    words = [label.words for label in canvas.labels]
    # 50/127 in is 1 cm: marks at 4, 8 and 12 cm.
    assert {"first 4", "8", "last 12", "Centimetres from the left cut edge"} <= set(words)


def test_the_picture_tells_its_marks_in_words():
    panel = panel_of(3)
    (picture,) = draw_flat_cloth(worksheet_of(piece_of(panel)), "front", PLAIN)
    # Cut 1/2 + 3/4 + 2 x 3/4 + 3/4 + 1/2 + 3 x 3/4 = 6 1/4; marks 1 5/8, 3 1/8, 4 5/8.
    assert picture.alt == (
        "The front lying flat, 6 1/4 by 16 in, with 3 fold marks, the first 1 5/8 in and the last 4 5/8 in "
        "from the left cut edge."
    )
    assert picture.text == "Fold marks from the left cut edge: 1 5/8, 3 1/8, 4 5/8."
    assert "dash-dot lines the tack rows" in picture.caption


def test_a_panel_over_several_pages_has_a_key_for_each():
    pictures = draw_flat_cloth(worksheet_of(piece_of(panel_of(150))), "front", PLAIN)
    assert [picture.key for picture in pictures] == ["flat cloth front", "flat cloth front 2", "flat cloth front 3"]
    assert [bool(picture.text) for picture in pictures] == [True, False, False]


def test_the_edges_that_bear_the_marks_are_told_by_where_they_are_and_how_long():
    """Five tucks of 1/4 in every 1 1/4 in with seams are cut 8 in wide and lie 30 in long: the marks stand on 8 in."""
    panel = replace(
        panel_of(5, Fraction(1, 4), Fraction(5, 4), 0), cross=tuck_set_of(4, Fraction(1, 4), Fraction(5, 4))
    )
    worksheet = worksheet_of(piece_of(panel, along=Fraction(29)))
    (flat,), (crossed,) = (draw(worksheet, "front", PLAIN) for draw in (draw_flat_cloth, draw_cross_folds))
    assert flat.caption.startswith(
        f"Mark every fold on the top and the bottom edge, {say_length(panel.across.cut, INCH)} each, "
        "always measuring from the left cut edge."
    )
    # The second set is marked where the first has been sewn, up and down the sides.
    assert crossed.caption.startswith(
        f"Mark every fold on the left and the right edge, {say_length(panel.cross.cut, INCH)} each, "
        "always measuring from the top cut edge."
    )


def test_cross_tucks_are_marked_on_the_panel_as_sewn():
    # 5 tucks of 1/4 in every 1 1/4 in with seams: cut 1 + 1 1/2 + 4 x 3/4 + 5 x 1/2 = 8, sewn 5 1/2 in.
    panel = replace(
        panel_of(5, Fraction(1, 4), Fraction(5, 4), 0), cross=tuck_set_of(4, Fraction(1, 4), Fraction(5, 4))
    )
    piece = piece_of(panel)
    turned, crossed = turned_panel(piece, panel, panel.cross)
    assert (turned.cut_across, turned.cut_along, turned.grain) == (panel.cross.cut, Fraction(11, 2), "across")
    assert crossed.across is panel.cross
    worksheet = worksheet_of(piece)
    assert [picture.key for picture in draw_flat_cloth(worksheet, "front", PLAIN)] == ["flat cloth front"]
    (picture,) = draw_cross_folds(worksheet, "front", PLAIN)
    assert picture.key == "cross folds front"
    assert picture.text.startswith("Fold marks from the top cut edge: ")


def test_a_panel_without_cross_tucks_is_not_turned():
    assert draw_cross_folds(worksheet_of(piece_of(panel_of(5))), "front", PLAIN) == ()


def test_words_stay_words_and_bytes_stay_the_same():
    worksheet = worksheet_of(piece_of(panel_of(17)))
    first, again = (draw_flat_cloth(worksheet, "front", PLAIN)[0].svg for _ in range(2))
    assert first == again
    # A fraction is built of three runs.
    assert ">first 1</text>" in first
    assert ">⁄</text>" in first


def test_a_caught_hem_is_drawn_at_its_own_depth():
    # Margin 3/4, depth 3/8: the hem is 1 1/8 in deep.
    tucks = tuck_set_of(4, ends=(End("caught hem"), End("caught hem")))
    panel = Panel(tucks)
    plan = plan_flat_cloth(piece_of(panel), panel, INCH, PLAIN)
    (canvas,) = sketch_flat_cloth(piece_of(panel), panel, INCH, PLAIN)
    fold = round(float(plan.left + Fraction(9, 8) * plan.scale), 6)
    assert fold in {round(start[0], 6) for start, end in canvas.segments if start[0] == end[0]}

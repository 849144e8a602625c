"""Sections: what lies on what, in true proportion."""

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from panels import LINKED, panel_of, piece_of, row_set_of, tuck_set_of, worksheet_of

from generator.calculation.worked import End, Panel, Turn
from generator.drawing.catalogue import figure_keys
from generator.drawing.cloth_edge import LIFT, hem_path, standing_path, turned_path
from generator.drawing.section import (
    crosses_otherwise,
    draw_cross_tuck_section,
    draw_hem_section,
    draw_pair_section,
    draw_section,
    draw_tuck_section,
    sketch_hem,
    sketch_pairs,
    sketch_tuck,
)
from generator.drawing.section_plan import pair_of, pair_words, plan_pairs, rounded
from generator.drawing.style import SMALLEST_TEXT, read_style
from generator.lengths import INCH

PLAIN = read_style({})
LARGE = read_style({"small": 12, "text": 14, "strong": 16})
LEFT, RIGHT, UPRIGHT = Turn.LEFT, Turn.RIGHT, Turn.UPRIGHT
CAUGHT = End("caught hem")


def panel_with(cell: tuple[tuple[Turn, ...], ...], depth: Fraction, spacing: Fraction, count: int = 8) -> Panel:
    tucks = tuck_set_of(count, depth, spacing)
    return Panel(tucks, rows=row_set_of(count, len(cell), cell))


def test_a_facing_pair_just_meets_where_the_pitch_is_twice_the_depth():
    # Depth 3/8, spacing 1 1/2: pitch 3/4, less 3/8 twice is nothing.
    pair = pair_of(tuck_set_of(2), 1, (RIGHT, LEFT), right_last=True)
    assert (pair.pitch, pair.space, pair.folds) == (Fraction(3, 4), 0, (Fraction(3, 8), Fraction(3, 8)))
    assert pair_words(pair, INCH) == ("Facing pair", "the folds meet")


def test_a_facing_pair_leaves_a_gap_or_overlaps():
    # Depth 1/4: spacing 1 1/4 gives pitch 3/4 and a gap of 1/4; spacing 7/8 gives pitch 3/8, an overlap of 1/8.
    gap = pair_of(tuck_set_of(2, Fraction(1, 4), Fraction(5, 4)), 1, (RIGHT, LEFT), right_last=True)
    over = pair_of(tuck_set_of(2, Fraction(1, 4), Fraction(7, 8)), 1, (RIGHT, LEFT), right_last=True)
    assert (gap.space, over.space) == (Fraction(1, 4), Fraction(-1, 8))
    assert pair_words(gap, INCH)[1] == "a gap of 1/4 in"
    assert pair_words(over, INCH)[1] == "folds overlap by 1/8 in"


def test_the_tuck_turned_last_lies_on_top():
    tucks = tuck_set_of(2, Fraction(1, 4), Fraction(7, 8))
    assert pair_of(tucks, 1, (RIGHT, LEFT), right_last=True).top == 2
    assert pair_of(tucks, 1, (RIGHT, LEFT), right_last=False).top == 1


@pytest.mark.parametrize(
    ("spacing", "space", "words"),
    [
        (Fraction(3, 2), Fraction(3, 8), ("Turned one way", "3/8 in shows")),
        (Fraction(9, 8), Fraction(0), ("Meeting tucks", "each fold reaches the next stitching")),
        (Fraction(1), Fraction(-1, 8), ("Blind tucks", "each covers the next stitching by 1/8 in")),
    ],
)
def test_tucks_turned_one_way_are_spaced_meeting_or_blind(spacing, space, words):
    # Depth 3/8: the visible space is spacing - 3/4 - 3/8.
    pair = pair_of(tuck_set_of(2, Fraction(3, 8), spacing), 1, (RIGHT, RIGHT), right_last=False)
    assert pair.space == space
    assert pair_words(pair, INCH) == words
    assert pair.top == 1


def test_turned_left_the_right_tuck_covers_the_left_one():
    pair = pair_of(tuck_set_of(2, Fraction(3, 8), Fraction(1)), 1, (LEFT, LEFT), right_last=False)
    assert (pair.space, pair.top, pair.folds) == (Fraction(-1, 8), 2, (Fraction(-3, 8), Fraction(-1, 8)))


def test_back_to_back_the_whole_pitch_shows():
    pair = pair_of(tuck_set_of(2), 1, (LEFT, RIGHT), right_last=True)
    assert (pair.space, pair_words(pair, INCH)) == (Fraction(3, 4), ("Back to back", "3/4 in shows"))


def test_the_rows_tell_which_pairs_are_drawn():
    assert [pair.turns for pair in plan_pairs(panel_of(17))] == [(RIGHT, LEFT), (LEFT, RIGHT)]
    ripples = panel_with(((RIGHT,), (LEFT,)), Fraction(3, 8), Fraction(3, 2))
    assert [pair.turns for pair in plan_pairs(ripples)] == [(RIGHT, RIGHT)]
    assert plan_pairs(panel_with(((UPRIGHT,),), Fraction(3, 8), Fraction(3, 2))) == ()
    assert plan_pairs(panel_of(1)) == ()
    assert [pair.turns for pair in plan_pairs(panel_of(5, rows=0))] == [(RIGHT, RIGHT)]


def test_a_rounded_line_keeps_its_ends_and_cuts_its_corners():
    smooth = rounded(((0, 0), (1, 0), (1, 1)), 0.25)
    assert (smooth[0], smooth[-1]) == ((0, 0), (1, 1))
    assert smooth[1] == (0.75, 0)
    assert (1, 0) not in smooth
    assert max(x for x, _ in smooth) <= 1


def length(points):
    return sum(abs(b[0] - a[0]) + abs(b[1] - a[1]) for a, b in pairwise(points))


def test_a_standing_tuck_is_as_tall_as_it_is_deep():
    path = standing_path(2, 1, 0.5, 0.75)
    heights = [y for _, y in path]
    # The stitching lies one ply over the base, the fold a depth above it.
    assert max(heights) - min(heights) == pytest.approx(0.5 + 0.05)
    assert (path[0][0], path[-1][0]) == (1.25, 2.75)


def test_a_turned_tuck_lies_a_depth_to_its_side_and_hides_twice_that():
    right = turned_path(((2.0, 0.5, False),), (1.0, 4.0), 1.0)
    left = turned_path(((2.0, -0.5, False),), (1.0, 4.0), 1.0)
    assert max(x for x, y in right if y < 1) == 2.5
    assert min(x for x, y in left if y < 1) == 1.5
    # Flat length 3 + 2 x 1/2, and the plies' height up and down: two lifts up, one between, one down again.
    assert length(right) == pytest.approx(3 + 1 + 4 * LIFT)
    assert length(left) == pytest.approx(3 + 1 + 4 * LIFT)


def test_a_raised_tuck_lies_over_a_flat_one():
    flat = turned_path(((2.0, 0.5, False),), (1.0, 4.0), 1.0)
    raised = turned_path(((2.0, 0.5, True),), (1.0, 4.0), 1.0)
    assert max(y for _, y in raised if y < 1) < min(y for _, y in flat)


def test_a_caught_hem_has_its_raw_edge_inside_the_tuck():
    path = hem_path(1.0, 2.0, 0.75, 0.5)
    (edge_x, edge_y), foot, upper = path[0], 1.75, 2.0 - LIFT
    assert foot < edge_x < foot + 2 * LIFT
    assert upper - 0.5 < edge_y < upper
    assert min(x for x, _ in path) == 1.0


@pytest.mark.parametrize("style", [PLAIN, LARGE], ids=["plain", "large print"])
@pytest.mark.parametrize("depth", [Fraction(1, 16), Fraction(1, 4), Fraction(3, 8), Fraction(1), Fraction(5, 2)])
def test_no_words_cross_in_a_section(depth, style):
    tucks = tuck_set_of(8, depth, 4 * depth, ends=(CAUGHT, CAUGHT))
    panel = Panel(tucks, rows=row_set_of(8, 2, LINKED))
    for canvas in (
        sketch_tuck(tucks, INCH, style, "tuck"),
        sketch_hem(tucks.left_allowance, depth, INCH, style, "hem"),
        sketch_pairs(panel, INCH, style, "pairs"),
    ):
        assert canvas.crossings() == ()
        assert min(label.size for label in canvas.labels) >= SMALLEST_TEXT
        assert canvas.width <= 7


@settings(max_examples=60, deadline=None)
@given(
    depth=st.integers(1, 40),
    room=st.integers(0, 60),
    cell=st.lists(st.lists(st.sampled_from(list(Turn)), min_size=3, max_size=3), min_size=1, max_size=3),
)
def test_no_words_cross_in_any_pairs(depth, room, cell):
    depth = Fraction(depth, 16)
    panel = panel_with(tuple(tuple(row) for row in cell), depth, 3 * depth + Fraction(room, 16))
    if plan_pairs(panel):
        assert sketch_pairs(panel, INCH, PLAIN, "pairs").crossings() == ()


def test_the_section_of_a_panel_holds_only_what_it_has():
    plain = worksheet_of(piece_of(panel_of(7)))
    assert [picture.key for picture in draw_section(plain, "front", PLAIN)] == [
        "tuck section front",
        "pair section front",
    ]
    caught = worksheet_of(piece_of(Panel(tuck_set_of(1, ends=(CAUGHT, CAUGHT)))))
    assert [picture.key for picture in draw_section(caught, "front", PLAIN)] == [
        "tuck section front",
        "hem section front",
    ]
    none = worksheet_of(piece_of(Panel(tuck_set_of(0))))
    assert draw_section(none, "front", PLAIN) == ()


def test_the_pictures_tell_their_numbers_in_words():
    # Margin 3/4 and depth 3/8: hem 1 1/8 deep, first crease 2 1/4 from the raw edge.
    panel = Panel(tuck_set_of(4, ends=(CAUGHT, CAUGHT)), rows=row_set_of(4))
    worksheet = worksheet_of(piece_of(panel))
    (tuck,) = draw_tuck_section(worksheet, "front", PLAIN)
    (hem,) = draw_hem_section(worksheet, "front", PLAIN)
    (pair,) = draw_pair_section(worksheet, "front", PLAIN)
    assert tuck.alt.endswith("stitched 3/8 in from the fold, so that 3/4 in of cloth is hidden.")
    assert "the first crease 2 1/4 in from the raw edge; the raw edge folded to it, 1 1/8 in deep" in hem.alt
    assert pair.alt.endswith("facing pair, the folds meet; back to back, 3/4 in shows.")


def test_the_same_section_gives_the_same_bytes():
    worksheet = worksheet_of(piece_of(panel_of(7)))
    first, again = ([picture.svg for picture in draw_section(worksheet, "front", PLAIN)] for _ in range(2))
    assert first == again
    assert all("</text>" in svg for svg in first)


@pytest.mark.parametrize(("depth", "told"), [(Fraction(1, 4), ""), (Fraction(3, 8), "stitched 3/8 in from the fold")])
def test_a_cross_tuck_has_its_own_section_where_it_is_not_as_deep(depth, told):
    # The tucks of the panel are 1/4 in deep.
    panel = Panel(tuck_set_of(5, Fraction(1, 4), Fraction(5, 4)), cross=tuck_set_of(4, depth, Fraction(3, 2)))
    worksheet = worksheet_of(piece_of(panel))
    pictures = draw_cross_tuck_section(worksheet, "front", PLAIN)
    assert bool(pictures) == crosses_otherwise(panel) == bool(told)
    assert all(told in picture.alt and picture.key == "cross tuck section front" for picture in pictures)
    assert ("cross tuck section front" in figure_keys(worksheet)) == bool(told)

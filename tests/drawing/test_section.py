"""Sections: what lies on what, in true proportion."""

from fractions import Fraction
from itertools import pairwise

import pytest
from panels import tuck_set_of

from generator.calculation.worked import Turn
from generator.drawing.cloth_edge import LIFT, hem_path, standing_path, turned_path
from generator.drawing.section_plan import pair_of, pair_words, rounded
from generator.lengths import INCH

LEFT, RIGHT = Turn.LEFT, Turn.RIGHT


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
    path = hem_path(1.0, 2.0, 0.75, 0.5, 0.6)
    (edge_x, edge_y), foot, upper = path[0], 1.75, 2.0 - LIFT
    assert foot < edge_x < foot + 2 * LIFT
    assert upper - 0.5 < edge_y < upper
    assert min(x for x, _ in path) == 1.0

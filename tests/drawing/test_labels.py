"""Words are measured as the font has them and never stand over each other."""

from itertools import combinations, pairwise

import pytest
from fontTools.ttLib import TTFont
from hypothesis import given
from hypothesis import strategies as st
from matplotlib.font_manager import FontProperties, findfont

from generator.drawing.labels import Box, Label, crossings, levels, spread, text_height, text_lines, text_width

SIZES = st.lists(st.floats(0.05, 1), min_size=1, max_size=30)


@pytest.mark.parametrize("bold", [False, True])
def test_a_width_is_the_sum_of_the_fonts_advances(bold):
    words = "last 25 5/8, “tuck” × 3"
    font = TTFont(findfont(FontProperties(family="DejaVu Sans", weight="bold" if bold else "normal")))
    advances = sum(font["hmtx"][font.getBestCmap()[ord(letter)]][0] for letter in words)
    assert text_width(words, 7, bold=bold) == pytest.approx(advances / font["head"].unitsPerEm * 7 / 72)


def test_a_line_of_type_is_as_high_as_its_size():
    assert text_height(9) == pytest.approx(9 / 72)


def test_a_label_stands_where_it_is_held():
    width = text_width("row", 8)
    for hold, left in (("left", 2.0), ("centre", 2 - width / 2), ("right", 2 - width)):
        box = Label("row", 2, 1, 8, hold=hold).box
        assert (box.left, box.right) == pytest.approx((left, left + width))
        assert box.top < 1 < box.bottom


def test_a_turned_label_reads_upwards_from_its_lower_end():
    box = Label("row", 2, 1, 8, hold="left", turned=True).box
    assert (box.top, box.bottom) == pytest.approx((1 - text_width("row", 8), 1))
    assert box.left < 2 < box.right


@pytest.mark.parametrize(
    ("segment", "cut"),
    [
        (((0, 0.5), (3, 0.5)), True),
        (((0, -0.5), (3, 1.5)), True),
        (((0, 0), (3, 3)), False),
        (((1.2, 0.2), (1.4, 0.3)), True),
        (((0, 1), (3, 1)), False),
        (((0.9, 0), (0.9, 3)), False),
        (((0, 0.5), (1, 0.5)), False),
        (((2, 3), (4, 1)), False),
    ],
)
def test_a_line_cuts_a_box_only_where_it_runs_through_its_inside(segment, cut):
    assert Box(1, 0, 2, 1).is_cut_by(segment) is cut


def test_boxes_that_touch_do_not_overlap():
    assert not Box(0, 0, 1, 1).overlaps(Box(1, 0, 2, 1))
    assert Box(0, 0, 1, 1).overlaps(Box(0.9, 0.9, 2, 2))


def test_a_label_with_a_backing_may_lie_over_a_line():
    line = ((0, 1), (4, 1))
    assert crossings((Label("cut", 2, 1, 8),), (line,)) == ("a line runs through 'cut'",)
    assert crossings((Label("cut", 2, 1, 8, backing="#ffffff"),), (line,)) == ()


def test_labels_far_apart_stay_on_the_lowest_level():
    assert levels((0, 2, 4), (1, 1, 1), 0.1) == (0, 0, 0)


@given(st.lists(st.floats(0.01, 1), min_size=1, max_size=40), st.floats(0.05, 0.9))
def test_labels_on_levels_and_their_leaders_stand_clear(steps, width):
    anchors = [sum(steps[: place + 1]) for place in range(len(steps))]
    found = levels(anchors, [width] * len(anchors), 0.02)
    close = [after - before for before, after in pairwise(anchors)]
    assert found is not None or min(close) < width / 2 + 0.02
    for (anchor, level), (other, other_level) in combinations(zip(anchors, found or (), strict=False), 2):
        assert other - anchor >= (width if level == other_level else width / 2)


@given(st.lists(st.floats(0, 20), min_size=1, max_size=20), SIZES)
def test_spread_labels_keep_their_order_and_do_not_overlap(wanted, sizes):
    number = min(len(wanted), len(sizes))
    wanted, sizes = sorted(wanted[:number]), sizes[:number]
    places = spread(wanted, sizes, 0, 20)
    assert places is not None
    assert places[0] - sizes[0] / 2 >= -1e-9
    assert places[-1] + sizes[-1] / 2 <= 20 + 1e-9
    for place in range(number - 1):
        assert places[place + 1] - places[place] >= (sizes[place] + sizes[place + 1]) / 2 - 1e-9


def test_labels_with_room_stand_where_they_are_wanted():
    assert spread((1, 3, 5), (1, 1, 1), 0, 6) == (1, 3, 5)


def test_labels_without_room_are_refused():
    assert spread((1, 2), (3, 3), 0, 5) is None


def test_words_are_broken_into_lines_that_fit():
    width = text_width("two words", 8)
    assert text_lines("two words more", 8, width) == ("two words", "more")
    assert text_lines("unbreakable", 8, 0.1) == ("unbreakable",)

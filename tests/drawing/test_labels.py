"""Words are measured as the font has them and never stand over each other."""

from itertools import combinations, pairwise

import pytest
from fontTools.ttLib import TTFont
from hypothesis import given
from hypothesis import strategies as st

from generator.drawing.built_words import capital_middle, set_words
from generator.drawing.labels import Box, Label, crossings, levels, spread, text_height, text_lines, text_width
from generator.drawing.style import Style, on_screen
from generator.drawing.typeface import TYPEFACE

SIZES = st.lists(st.floats(0.05, 1), min_size=1, max_size=30)


@pytest.mark.parametrize("bold", [False, True])
def test_a_width_is_the_sum_of_the_fonts_advances(bold):
    words = "last 25 in, “tuck” × 3"
    font = TTFont((TYPEFACE.bold if bold else TYPEFACE.regular)[0])
    advances = sum(font["hmtx"][font.getBestCmap()[ord(letter)]][0] for letter in words)
    assert text_width(words, 7, bold=bold) == pytest.approx(advances / font["head"].unitsPerEm * 7 / 72)


def test_a_fraction_is_built_small_close_to_its_whole_number():
    def wide(letters, *, bold=False):
        return text_width(letters, 72, bold=bold)

    whole, numerator, slash, denominator, unit = set_words("10 9/16 in", TYPEFACE, bold=False).runs
    assert [run.words for run in (whole, numerator, slash, denominator, unit)] == [
        "10",
        "9",
        "\u2044",
        "16",
        " in",
    ]
    assert (numerator.scale, numerator.bold, denominator.scale, slash.scale) == (0.74, True, 0.74, 1.15)
    assert numerator.rise > 0 > denominator.rise
    assert numerator.start == pytest.approx(wide("10") + 0.15)
    # The digits are half bold, the slash is not: 0.15 em after the whole number, and no space.
    small = 0.74 * (wide("9", bold=True) + wide("16", bold=True))
    assert wide("10 9/16") == pytest.approx(wide("10") + 0.15 + small + 1.15 * wide("\u2044"))


def test_on_a_screen_no_digit_of_a_fraction_is_smaller_than_the_letters_beside_it():
    font = on_screen(Style()).font
    whole, numerator, slash, denominator = set_words("10 9/16", font, bold=False).runs
    assert [run.words for run in (whole, numerator, slash, denominator)] == ["10", "9", "/", "16"]
    assert {run.scale for run in (whole, numerator, slash, denominator)} == {1.0}
    # What was a space keeps the fraction apart from its whole number, as wide as a space at least.
    assert numerator.start - text_width("10", 72) >= text_width(" ", 72)
    assert numerator.rise > 0 > denominator.rise


@pytest.mark.parametrize("words", ["1/2/3", "and/or", "2031-03", "3.5/8", "a 12/"])
def test_what_is_no_fraction_stays_as_it_is_written(words):
    assert [run.words for run in set_words(words, TYPEFACE, bold=True).runs] == [words]


def test_a_fraction_after_words_keeps_its_space():
    assert [run.words for run in set_words("within 1/4", TYPEFACE, bold=False).runs] == ["within ", "1", "⁄", "4"]


def test_the_middle_of_a_capital_is_that_of_the_font():
    font = TTFont(TYPEFACE.regular[0])
    highest = font["glyf"][font.getBestCmap()[ord("H")]].yMax
    assert capital_middle(TYPEFACE) == pytest.approx(highest / font["head"].unitsPerEm / 2)


def test_a_line_of_type_holds_its_letters_and_a_raised_numerator():
    # 0.8 em above the line and 0.22 below; a numerator of 0.74 em stands 0.28 em up, its digits 0.69 em of that high.
    assert text_height(9) == pytest.approx(1.02 * 9 / 72)
    assert 0.28 + 0.74 * 0.69 < 0.8


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


def test_a_whole_number_is_never_parted_from_its_fraction():
    wide = text_width("across at 36", 8)
    assert text_lines("across at 36 3/8, 2a 12 1/2", 8, wide) == ("across at", "36 3/8, 2a", "12 1/2")

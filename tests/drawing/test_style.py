"""A theme's values become a style, or every fault is told at once."""

import pytest

from generator.definitions.contrast import contrast
from generator.drawing.style import SMALLEST_TEXT, Style, read_style
from generator.errors import FaultyFileError, Place

PLACES = {"": Place("theme.yaml"), "smal": Place("theme.yaml", 7, 3)}


def test_without_values_the_style_is_the_plain_one():
    assert read_style({}) == Style()


def test_a_theme_may_replace_sizes_colours_and_dashes():
    style = read_style({"small": "12", "accent": "#003366", "tack_dashes": "4, 2"})
    assert (style.small, style.accent, style.tack_dashes) == (12.0, "#003366", (4.0, 2.0))


def test_all_faults_are_told_at_once():
    with pytest.raises(FaultyFileError) as refused:
        read_style({"smal": 9, "ink": "black", "line": "thick", "fold_dashes": "3"}, places=PLACES)
    assert str(refused.value).splitlines() == [
        "theme.yaml:7:3: diagrams have no 'smal'; did you mean 'small'?",
        "theme.yaml:1:1: ink: 'black' is no colour; write it like #1c1c1c",
        "theme.yaml:1:1: line: 'thick' is no number of points",
        "theme.yaml:1:1: fold_dashes: dashes come in pairs of dash and gap, found 1 lengths",
    ]


def test_a_size_of_nothing_is_refused():
    with pytest.raises(FaultyFileError, match="line: 0 is not between 0 and 72 points"):
        read_style({"line": 0})


def test_text_under_nine_points_is_refused():
    with pytest.raises(FaultyFileError, match="small: 7 pt is too small to read; take at least 9"):
        read_style({"small": 7})


def test_lines_that_a_copier_loses_are_refused():
    with pytest.raises(FaultyFileError, match=r"thin: 0\.5 pt is lost in a copy; take at least 0\.85"):
        read_style({"thin": "0.5"})


def test_pale_words_are_refused():
    with pytest.raises(FaultyFileError, match="accent stands out from paper only"):
        read_style({"accent": "#999999"})


def test_the_plain_style_can_be_read():
    style = Style()
    assert min(style.small, style.text, style.strong) >= SMALLEST_TEXT
    for ink in (style.ink, style.accent):
        assert contrast(ink, style.cloth) >= 4.5


def test_every_sort_of_line_differs_by_more_than_colour():
    style = Style()
    pens = (style.cut, style.fold, style.stitch, style.tack, style.join, style.finish, style.outline, style.measure)
    assert len({(pen.width, pen.dashes) for pen in pens}) == len(pens)

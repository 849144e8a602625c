"""The turn map: every turn in its place, told in arrows and in words."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from panels import LINKED, panel_of, piece_of, row_set_of, worksheet_of

from generator.calculation.worked import Turn
from generator.drawing.style import SMALLEST_TEXT, Style, read_style
from generator.drawing.turn_map import draw_turn_map, map_in_words, sketch_turn_map
from generator.drawing.turn_map_plan import MAP_WIDTH, PAGE_ROWS, map_rows, plan_turn_map

PLAIN = Style()
LARGE = read_style({"small": 12, "text": 14, "strong": 16})
LEFT, RIGHT = Turn.LEFT, Turn.RIGHT
COUNTS = (1, 2, 7, 17, 40, 120, 200)


def test_a_map_that_fits_is_one_block():
    ((block,),) = plan_turn_map(row_set_of(17, 5), 17)
    assert block.tucks == tuple(range(1, 18))
    assert [row.number for row in block.rows if row] == [1, 2, 3, 4, 5]
    # 5 1/2 in for 17 tucks is more than 3/10 in each.
    assert block.cell == Fraction(3, 10)


def test_edges_that_hold_the_tucks_are_lines_of_the_map():
    rows = replace(row_set_of(3, 2), top=(RIGHT, LEFT, RIGHT), bottom=(LEFT, LEFT, LEFT))
    lines = map_rows(rows)
    assert [(line.label, line.start) for line in lines] == [
        ("top", None),
        ("1", "right"),
        ("2", "right"),
        ("bottom", None),
    ]
    assert lines[0].turns == (RIGHT, LEFT, RIGHT)


@pytest.mark.parametrize(("count", "rows"), [(120, 4), (200, 60), (12, 70), (37, 31)])
def test_a_large_map_is_shown_in_short_and_then_whole(count, rows):
    (short,), *pages = plan_turn_map(row_set_of(count, rows), count)
    shown = [tuck for tuck in short.tucks if tuck is not None]
    assert (shown[0], shown[-1]) == (1, count)
    numbers = [row.number for row in short.rows if row is not None]
    assert (numbers[0], numbers[-1]) == (1, rows)
    cells = [
        (row.number, tuck) for page in pages for block in page for row in block.rows for tuck in block.tucks if row
    ]
    assert sorted(cells) == [(row, tuck) for row in range(1, rows + 1) for tuck in range(1, count + 1)]
    for page in pages:
        assert sum(len(block.rows) + 3 for block in page) <= PAGE_ROWS + 8
        assert all(block.cell * len(block.tucks) <= MAP_WIDTH for block in page)


def test_the_repeat_is_framed_where_it_is_whole():
    rows = row_set_of(12, 6, ((RIGHT, RIGHT, LEFT), (LEFT, RIGHT, RIGHT)))
    ((block,),) = plan_turn_map(rows, 12)
    assert block.repeat_corner(rows) == (3, 2)
    ((small,),) = plan_turn_map(row_set_of(2, 6, rows.repeat), 2)
    assert small.repeat_corner(rows) is None
    below = replace(block, rows=block.rows[1:])
    assert below.repeat_corner(rows) is None


@pytest.mark.parametrize("style", [PLAIN, LARGE], ids=["plain", "large print"])
@pytest.mark.parametrize("count", COUNTS)
def test_no_words_cross_and_none_are_too_small(count, style):
    for canvas in sketch_turn_map(row_set_of(count, 33), count, style, "map"):
        assert canvas.crossings() == ()
        assert min(label.size for label in canvas.labels) >= SMALLEST_TEXT
        assert canvas.width <= 7.3
        assert canvas.height <= 9.5


@settings(max_examples=15, deadline=None)
@given(
    count=st.integers(1, 100),
    rows=st.integers(1, 50),
    cell=st.lists(st.lists(st.sampled_from(list(Turn)), min_size=5, max_size=5), min_size=1, max_size=4),
    start=st.sampled_from(["left", "right"]),
)
def test_no_words_cross_on_any_map(count, rows, cell, start):
    row_set = row_set_of(count, rows, tuple(tuple(row) for row in cell), start=start)
    for canvas in sketch_turn_map(row_set, count, PLAIN, "map"):
        assert canvas.crossings() == ()


def test_the_rows_are_told_in_the_order_of_sewing():
    # From the right end a tuck turned left lies on the side not yet sewn: toward.
    rows = row_set_of(4, 2, ((RIGHT, RIGHT, LEFT, LEFT), (LEFT, LEFT, RIGHT, RIGHT)), start="right")
    assert map_in_words(rows) == "Row 1, from the right: 2 toward, 2 away.\nRow 2, from the right: 2 away, 2 toward."


def filled(canvas):
    """The filled triangles of turned tucks, as the x of their three corners less the x of the first."""
    return [
        [round(x - outline[0][0], 3) for x, _ in outline]
        for layer in canvas._layers
        if layer.fill == canvas.style.ink
        for outline in layer.outlines
        if len(outline) == 3
    ]


def test_a_right_turn_is_a_filled_arrow_and_a_left_turn_an_open_one():
    # One tuck a map: the only other filled triangle is the head of the arrow at the start of the row.
    (right,) = sketch_turn_map(row_set_of(1, 1, ((RIGHT,),)), 1, PLAIN, "right")
    (left,) = sketch_turn_map(row_set_of(1, 1, ((LEFT,),)), 1, PLAIN, "left")
    assert len(filled(right)) == len(filled(left)) + 1
    pointing_right = [corners for corners in filled(right) if corners[0] == corners[2] == 0 < corners[1]]
    assert len(pointing_right) == 1
    open_sides = [end[0] - start[0] for start, end in left.segments if start[1] != end[1] and start[0] != end[0]]
    assert len(open_sides) == 2
    assert open_sides[0] < 0 < open_sides[1]


@pytest.mark.parametrize("start", ["left", "right"])
def test_a_row_begins_at_its_dot(start):
    (canvas,) = sketch_turn_map(row_set_of(5, 1, start=start), 5, PLAIN, "map")
    (dot,) = [outline for layer in canvas._layers for outline in layer.outlines if layer.fill and len(outline) > 10]
    middle = sum(x for x, _ in dot) / len(dot)
    assert (middle < canvas.width / 2) is (start == "left")


def test_the_pictures_of_a_large_map_follow_each_other():
    worksheet = worksheet_of(piece_of(panel_of(120)))
    pictures = draw_turn_map(worksheet, "front", PLAIN)
    assert [picture.key for picture in pictures] == ["turn map front", "turn map front 2"]
    assert pictures[0].caption.startswith("The map in short; the whole map follows.")
    assert pictures[0].text.count("\n") == 3
    assert pictures[1].alt == "The whole turn map, part 1 of 1."


def test_a_panel_without_rows_has_no_map():
    assert draw_turn_map(worksheet_of(piece_of(panel_of(7, rows=0))), "front", PLAIN) == ()


def test_the_same_map_gives_the_same_bytes():
    worksheet = worksheet_of(piece_of(panel_of(17)))
    assert draw_turn_map(worksheet, "front", PLAIN) == draw_turn_map(worksheet, "front", PLAIN)


def test_the_plan_of_the_trial_panels_starts_each_row_the_other_way():
    rows = row_set_of(6, 2, LINKED).rows
    assert rows[0].turns[0] is not rows[1].turns[0]

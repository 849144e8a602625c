"""The turn picture: letters as the tucks are met, cells large enough to read, nothing that crosses."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from panels import LINKED, panel_of, piece_of, row_set_of, worksheet_of

from generator.calculation.worked import Turn
from generator.drawing.catalogue import draw_sized, heights
from generator.drawing.quarter_turn import sketch_quarter_turn, starts
from generator.drawing.repeat_section import repeat_pairs
from generator.drawing.sizes import MILLIMETRES, DrawnSize
from generator.drawing.style import Style, read_style
from generator.drawing.turn_picture import heights_of_turns, sketch_turns
from generator.drawing.turn_picture_plan import LEAST_CELL, bands, rows_named, turn_columns
from tests.room import ROOT, demo_room

LEFT, RIGHT, UP = Turn.LEFT, Turn.RIGHT, Turn.UPRIGHT
PLAIN = Style()
LARGE = read_style({"small": 16, "text": 17, "strong": 20})
PROJECTS = sorted(path.stem for path in (ROOT / "projects").glob("*.yaml"))


def met(turns, start):
    """T, A and U told a second way: walked from the starting end, a fold that points on the way is toward."""
    ahead = 1 if start == "left" else -1
    walk = turns if start == "left" else list(reversed(turns))
    sides = {RIGHT: 1, LEFT: -1, UP: 0}
    return ["U" if not sides[turn] else "T" if sides[turn] == ahead else "A" for turn in walk]


@pytest.mark.parametrize("name", PROJECTS)
def test_the_letters_are_the_turns_of_every_row_in_the_order_in_which_they_are_met(name):
    for worksheet in demo_room().worksheets(name):
        for panel in worksheet.panels.values():
            if panel.rows is None:
                continue
            found = {number: column for column in turn_columns(panel.rows) for number in column.rows}
            for row in panel.rows.rows:
                column = found.pop(row.number)
                assert list(column.letters) == met(row.turns, row.start)
                assert column.start == row.start
                # The tuck numbered k is the one whose turn the letter tells.
                assert [row.turns[tuck - 1] for tuck in column.tucks] == (
                    list(row.turns) if row.start == "left" else list(reversed(row.turns))
                )
            assert found == {}


def labels_of(canvas):
    return [label.words for label in canvas.labels]


def drawn_letters(canvas):
    """The letters of all columns in the order in which they are drawn, which must be that in which they are read."""
    letters = [label for label in canvas.labels if label.words in ("T", "A", "U")]
    for before, after in pairwise(letters):
        # Down a strip, on to the right along a line or to the next strip, or to the next column.
        assert after.y > before.y - 0.08 or after.x > before.x, (before, after)
    return [label.words for label in letters]


def test_the_cells_are_drawn_from_the_needle_down_in_the_order_met():
    # Right, left, left from the right end: met left, left, right, so toward, toward, away.
    rows = row_set_of(3, 1, ((RIGHT, LEFT, LEFT),), start="right")
    canvas = sketch_turns(rows, PLAIN, DrawnSize(93, 70), "turns")
    cells = sorted((label.y, label.words) for label in canvas.labels if label.words in ("T", "A", "U"))
    assert [words for _, words in cells] == ["T", "T", "A"]
    assert cells[0][0] > next(label.y for label in canvas.labels if label.words == "tuck")


def test_the_numbers_at_the_right_are_told_as_tucks_in_columns_of_two_strips():
    # Two columns of twenty letters in 9 pt on 77 mm: each in two strips, with a number at both sides of its letters.
    rows = demo_room().worksheet("quay-cushion", "medium", "inch").panels["front"].rows
    canvas = sketch_turns(rows, read_style({"small": 9, "text": 10, "strong": 12}), DrawnSize(77, 150), "turns")
    assert labels_of(canvas).count("tuck") == 2


def test_rows_that_differ_in_start_or_in_turns_have_a_column_each():
    rows = row_set_of(6, 5, LINKED).rows
    columns = turn_columns(row_set_of(6, 5, LINKED))
    assert [(column.rows, column.start) for column in columns] == [((1, 3, 5), "right"), ((2, 4), "right")]
    assert columns[0].letters == tuple(met(rows[0].turns, "right"))


def test_numbers_count_the_tucks_met_with_the_number_of_the_tuck_beside():
    canvas = sketch_turns(row_set_of(12, 2, LINKED), PLAIN, DrawnSize(93, 150), "turns")
    told = labels_of(canvas)
    # Begun at the right: the first one met is tuck 12, the fifth is tuck 8, the tenth tuck 3, the last tuck 1.
    for number in ("1", "5", "10", "12", "8", "3"):
        assert told.count(number) >= 2, number


def test_a_row_that_is_all_toward_is_one_cell():
    canvas = sketch_turns(row_set_of(26, 4, ((LEFT,),)), PLAIN, DrawnSize(93, 60), "turns")
    assert labels_of(canvas).count("T") == 1
    assert "all 26 toward" in labels_of(canvas)


def test_every_row_has_a_box_to_tick():
    (band,) = bands(turn_columns(row_set_of(8, 23, LINKED)), PLAIN, 3.66, 6.0)
    assert [len(column.rows) for column in band.columns] == [12, 11]
    canvas = sketch_turns(row_set_of(8, 23, LINKED), PLAIN, DrawnSize(93, 150), "turns")
    assert {str(number) for number in range(1, 24)} <= set(labels_of(canvas))


@pytest.mark.parametrize("count", [2, 7, 20, 28, 40, 60])
def test_no_tuck_is_left_out_and_no_cell_is_too_low(count):
    rows = row_set_of(count, 6, LINKED)
    worksheet = worksheet_of(piece_of(panel_of(count, rows=6)))
    found = heights_of_turns(worksheet, "front", PLAIN, 93)
    for height in (found.least, found.natural, found.greatest):
        canvas = sketch_turns(rows, PLAIN, DrawnSize(93, height), "turns")
        assert "…" not in labels_of(canvas)
        assert sum(words in ("T", "A") for words in labels_of(canvas)) == 2 * count
        cells = sorted((round(label.x, 3), label.y) for label in canvas.labels if label.words in ("T", "A"))
        apart = [after[1] - before[1] for before, after in pairwise(cells) if before[0] == after[0]]
        # Letters of neighbouring cells lie a cell apart, but for the fold that moves T up by a millimetre.
        assert min(apart, default=1) > LEAST_CELL - 1.5 / MILLIMETRES
        assert canvas.crossings() == ()


@pytest.mark.parametrize("count", [5, 28, 60])
def test_no_line_leaves_the_paper(count):
    canvas = sketch_turns(row_set_of(count, 6, LINKED), PLAIN, DrawnSize(93, 130), "turns")
    across = [x for segment in canvas.segments for x, _ in segment]
    assert min(across) >= 0
    assert max(across) <= canvas.width


@pytest.mark.parametrize(("count", "width", "look"), [(120, 77, PLAIN), (300, 77, PLAIN), (60, 178, LARGE)])
def test_of_very_many_tucks_none_is_left_out(count, width, look):
    rows = row_set_of(count, 8, ((LEFT, RIGHT, RIGHT), (RIGHT, LEFT, UP), (RIGHT, UP, RIGHT), (LEFT, LEFT, RIGHT)))
    panel = panel_of(count, rows=1)
    worksheet = worksheet_of(piece_of(type(panel)(panel.across, rows=rows)))
    found = heights_of_turns(worksheet, "front", look, width)
    canvas = sketch_turns(rows, look, DrawnSize(width, found.least), "turns")
    assert drawn_letters(canvas) == [letter for row in rows.rows[:4] for letter in met(row.turns, row.start)]
    # Four rows differ; each line tells the numbers of its first and its last letter.
    assert labels_of(canvas).count(str(count)) == 4
    assert labels_of(canvas).count("Row 1, start at the right, tuck 1") == 0
    assert max(label.y for label in canvas.labels) < canvas.height
    assert min(label.size for label in canvas.labels) >= look.small
    assert canvas.crossings() == ()


@pytest.mark.parametrize("name", PROJECTS)
def test_the_letters_drawn_are_the_turns_whatever_the_room_that_there_is(name):
    for worksheet in demo_room().worksheets(name):
        for panel, rows in [(panel, worked.rows) for panel, worked in worksheet.panels.items() if worked.rows]:
            if not any(turn is not UP for row in rows.rows for turn in row.turns):
                continue
            columns = turn_columns(rows)
            told = [letter for column in columns for letter in (column.letters[:1] if column.alike else column.letters)]
            for look, width in ((PLAIN, 77.0), (PLAIN, 178.0), (LARGE, 178.0)):
                found = heights_of_turns(worksheet, panel, look, width)
                for height in (found.least, found.natural, found.greatest):
                    canvas = sketch_turns(rows, look, DrawnSize(width, height), "turns")
                    assert drawn_letters(canvas) == told, (worksheet.size, width, height)


@settings(max_examples=25, deadline=None)
@given(
    count=st.integers(1, 70),
    rows=st.integers(1, 24),
    cell=st.lists(st.lists(st.sampled_from(list(Turn)), min_size=4, max_size=4), min_size=1, max_size=6),
    start=st.sampled_from(["left", "right"]),
    look=st.sampled_from([(PLAIN, 93.0), (PLAIN, 190.0), (LARGE, 180.0)]),
)
def test_no_words_cross_in_any_turn_picture(count, rows, cell, start, look):
    row_set = row_set_of(count, rows, tuple(tuple(row) for row in cell), start=start)
    style, width = look
    panel = panel_of(count, rows=1)
    worksheet = worksheet_of(piece_of(type(panel)(panel.across, rows=row_set)))
    found = heights_of_turns(worksheet, "front", style, width)
    for height in (found.least, found.natural, found.greatest):
        canvas = sketch_turns(row_set, style, DrawnSize(width, height), "turns")
        assert canvas.crossings() == ()
        assert min(label.size for label in canvas.labels) >= style.small


def test_rows_are_named_by_what_is_shortest():
    assert rows_named((4,)) == "Row 4"
    assert rows_named((1, 2)) == "Rows 1 and 2"
    assert rows_named((1, 2, 3)) == "Rows 1 to 3"
    assert rows_named((2, 4, 6)) == "Rows 2, 4, 6"
    assert rows_named((1, 3, 5, 7, 9)) == "Odd rows, 1 to 9"


def test_the_end_where_a_row_begins_lies_at_the_needle():
    """Begun at the left: the panel goes round to the right, so its left end is away and its top edge at the right."""
    for start in ("left", "right"):
        rows = row_set_of(5, 4, start=start)
        assert list(starts(rows)) == [start]
        canvas = sketch_quarter_turn(rows, PLAIN, DrawnSize(93, 40), "turn")
        other = "right" if start == "left" else "left"
        assert f"Rows 1 to 4: top edge at your {other} hand" in labels_of(canvas)
        (lying, turned) = [label for label in canvas.labels if label.words == "top edge"]
        machine = next(label for label in canvas.labels if label.words == "at the machine")
        assert not lying.turned
        assert turned.turned
        assert (turned.x < machine.x) is (start == "right")
        assert canvas.crossings() == ()


def test_one_repeat_has_every_sort_of_pair_of_the_row():
    panel = panel_of(9, rows=2)
    row = row_set_of(9, 1, ((RIGHT, RIGHT, LEFT, LEFT),)).rows[0]
    pairs = repeat_pairs(panel, row)
    assert [pair.turns for pair in pairs] == [(RIGHT, RIGHT), (RIGHT, LEFT), (LEFT, LEFT), (LEFT, RIGHT)]


def test_the_section_has_the_letters_of_the_turn_picture():
    # Linked cells begun at the right: from the left right, left, right; met from the right a right turn is away.
    worksheet = worksheet_of(piece_of(panel_of(7)))
    picture = draw_sized(
        worksheet, "repeat front", PLAIN, DrawnSize(93, heights(worksheet, "repeat front", PLAIN, 93).natural)
    )
    assert "A, T, A" in picture.alt
    assert picture.svg.count(">A</text>") == 2

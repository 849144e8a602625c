"""Pictures of marking, creasing, stitching, checking, ruling and trimming: what they tell is what the worksheet has."""

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import pytest
from panels import LINKED, SEAM, panel_of, piece_of, row_set_of, tuck_set_of, worksheet_of

from generator.calculation.worked import End, Panel, Turn
from generator.drawing.canvas import canvas_of
from generator.drawing.catalogue import draw_sized, heights, sized_keys
from generator.drawing.check_picture import sketch_check
from generator.drawing.fold_guide import numbers_shown, sketch_fold_marks
from generator.drawing.hem_picture import caught_side, sketch_hem
from generator.drawing.ruled_rows import sketch_ruled_rows
from generator.drawing.sizes import DrawnSize
from generator.drawing.stitching import sketch_stitching
from generator.drawing.style import Style
from generator.drawing.trimming import sketch_trimming
from generator.drawing.turning_picture import told_turns
from generator.lengths import INCH

PLAIN = Style()


def canvas(height: float):
    return canvas_of(DrawnSize(93, height), PLAIN, "trial")


def labels_of(drawn):
    return [label.words for label in drawn.labels]


def test_marks_stand_where_they_are_on_the_cloth_and_bear_only_their_numbers():
    # 9 tucks: cut 15 1/4 in, marks at 1 5/8 + 1 1/2 (i - 1).
    tucks = tuck_set_of(9)
    drawn = canvas(32)
    sketch_fold_marks(drawn, tucks, ("left", "16"), INCH)
    numbers = {
        label.words: label.x for label in drawn.labels if label.words.isdigit() and label.bold and not label.turned
    }
    assert set(numbers) == {"1", "5", "9"}
    # As shares of the way from mark 1 to mark 9, mark 5 lies in the middle.
    assert numbers["5"] == pytest.approx((numbers["1"] + numbers["9"]) / 2)
    assert {"15 1/4 in", "16", "left cut edge", "ruler or tape", "always from here"} <= set(labels_of(drawn))
    assert not any("1 5/8" in words for words in labels_of(drawn))


@pytest.mark.parametrize("count", [1, 2, 4, 12, 28, 90])
def test_the_first_and_the_last_mark_are_numbered_and_no_numbers_touch(count):
    places = [1 + 3 * place / count for place in range(count)]
    shown = sorted(numbers_shown(places, 0.2, (0, 5)))
    assert shown[0] == 1
    assert shown[-1] == count or (count == 2 and shown == [1])
    apart = [places[after - 1] - places[before - 1] for before, after in pairwise(shown)]
    assert min(apart, default=1) >= 0.2


def test_what_is_measured_at_a_check_point_is_told_with_its_ends_and_where():
    panel = panel_of(17)
    point = panel.checks.points[0]
    drawn = canvas(28)
    sketch_check(drawn, panel.across, point, ("at the top edge", "at the bottom edge"))
    told = labels_of(drawn)
    assert f"mark {point.mark}" in told
    assert point.start.removeprefix("the ") in told
    assert "once at the top edge, once at the bottom edge" in told
    assert {str(number) for number in range(1, point.after + 1)} <= set(told)


def test_every_row_has_its_distance_its_box_and_its_dot():
    panel = Panel(tuck_set_of(8), rows=row_set_of(8, 5, LINKED, start="left"))
    drawn = canvas(70)
    sketch_ruled_rows(drawn, panel, 18.0, INCH)
    told = labels_of(drawn)
    # Rows at 2, 5, 8, 11 and 14 in, as row_set_of rules them.
    for number, words in enumerate(("2", "5", "8", "11", "14"), 1):
        assert f"row {number}" in told
        assert words in told
    dots = [outline for layer in drawn._layers for outline in layer.outlines if layer.fill and len(outline) > 10]
    assert len(dots) == 5
    middles = [sum(x for x, _ in dot) / len(dot) for dot in dots]
    assert max(middles) < drawn.width / 2
    squares = [s for s in drawn.segments if s[0][1] == s[1][1] and abs(s[1][0] - s[0][0]) == pytest.approx(3.4 / 25.4)]
    assert len(squares) == 2 * 5


def test_rows_stand_where_they_are_down_the_panel():
    panel = Panel(tuck_set_of(8), rows=row_set_of(8, 3, LINKED))
    drawn = canvas(80)
    sketch_ruled_rows(drawn, panel, 16.0, INCH)
    levels = {label.words: label.y for label in drawn.labels if label.words.startswith("row ")}
    # 2, 5 and 8 in of 16: evenly apart.
    assert levels["row 2"] - levels["row 1"] == pytest.approx(levels["row 3"] - levels["row 2"])


def test_the_guide_stands_a_depth_from_the_needle_and_stitchings_a_pitch_apart():
    drawn = canvas(34)
    sketch_stitching(drawn, tuck_set_of(5, Fraction(3, 8), Fraction(3, 2)), INCH)
    # Spacing 1 1/2 less a take-up of 3/4.
    assert labels_of(drawn).count("3/8 in") == 2
    assert labels_of(drawn).count("3/4 in") == 1


def test_the_turn_is_shown_for_each_letter_that_the_rows_have():
    only_toward = row_set_of(4, 2, ((Turn.LEFT,),), start="right")
    assert [letter for letter, _ in told_turns(only_toward)] == ["T"]
    # All right, begun at the right, is all away: nothing to meet.
    ((letter, words),) = told_turns(row_set_of(4, 2, ((Turn.RIGHT,),), start="right"))
    assert letter == "A"
    assert "fold of T" not in words
    # Linked cells begun at the right: the tucks of a facing pair are met T first, then A against it.
    meeting = dict(told_turns(row_set_of(4, 2, LINKED)))
    assert "Lay A against it" in meeting["A"]
    assert told_turns(row_set_of(4, 2, ((Turn.UPRIGHT,),))) == ()


def test_a_caught_hem_tells_its_crease_its_fold_and_its_margin():
    # Margin 3/4 and depth 3/8: hem 1 1/8 deep, first crease 2 1/4 from the raw edge.
    lengths = (Fraction(9, 8), Fraction(3, 8), Fraction(3, 4))
    drawn = canvas(42)
    sketch_hem(drawn, lengths, INCH)
    assert {"2 1/4 in", "1 1/8 in", "3/4 in", "3/8 in"} <= set(labels_of(drawn))
    assert drawn.crossings() == ()
    caught = Panel(tuck_set_of(5, ends=(SEAM, End("caught hem"))))
    assert caught_side(caught) == "right"
    assert caught_side(Panel(tuck_set_of(5))) == ""


def test_unequal_tucks_are_told_as_those_of_tuck_1():
    tucks = tuck_set_of(3)
    uneven = replace(tucks, depths=(Fraction(1, 4), Fraction(1, 2), Fraction(1, 4)))
    drawn = canvas(34)
    sketch_stitching(drawn, uneven, INCH)
    assert {"At the machine: tuck 1", "Stitched: tucks 1 and 2", "1/4 in"} <= set(labels_of(drawn))


def test_a_panel_is_trimmed_to_its_length_and_basted_only_where_an_edge_holds_its_tucks():
    rows = replace(row_set_of(4, 2), top=(Turn.LEFT,) * 4, extra=Fraction(1))
    piece = piece_of(Panel(tuck_set_of(4), rows=rows))
    worksheet = worksheet_of(replace(piece, measures={"sewn along": Fraction(15)}))
    key = "trimming front"
    assert key in sized_keys(worksheet)
    alt = draw_sized(worksheet, key, PLAIN, DrawnSize(93, heights(worksheet, key, PLAIN, 93).natural)).alt
    assert "so that 15 in are left" in alt
    assert "basted flat at the top." in alt
    drawn = canvas(34)
    sketch_trimming(drawn, Panel(tuck_set_of(4), rows=rows), "15 in")
    assert labels_of(drawn).count("baste the tucks") == 1
    assert labels_of(drawn).count("cut") == 2

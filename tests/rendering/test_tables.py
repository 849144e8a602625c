from __future__ import annotations

import dataclasses
from fractions import Fraction

from cushion_sheet import cushion, tucks
from test_typeset import read_aloud

from generator.calculation.drawn_up import DrawnUp
from generator.calculation.laid import LaidStack, LaidStrip
from generator.calculation.making_up.laid import LaidOut
from generator.calculation.worked_piece import Made, Part, Piece, Round
from generator.calculation.worked_project import NewCut, Thickness
from generator.lengths import INCH, METRIC
from generator.rendering.comparison import compared
from generator.rendering.handout.tables import later_rows
from generator.rendering.tables import (
    cut_list,
    drawn_up,
    finished_size,
    in_parts,
    key_numbers,
    mark_rows,
    piece_size,
    two_way,
)


def test_a_size_names_its_unit_once() -> None:
    assert two_way(Fraction(109, 4), Fraction(31, 2), INCH) == "27 1/4 × 15 1/2 in"
    assert two_way(Fraction(100, 254), Fraction(50, 254), METRIC) == "1 × 0.5 cm"


def test_equal_pieces_are_counted_together() -> None:
    lines = cut_list(cushion().cloths["face"], INCH)
    told = [(line.number, line.label, read_aloud(str(line.size))) for line in lines]
    assert told == [(1, "Front", "27 1/4 × 16 1/4 in"), (2, "Envelope back", "12 1/2 × 15 1/2 in")]


def test_a_turned_piece_is_told_as_it_is_cut_by_itself() -> None:
    cloth = cushion().cloths["face"]
    front = cloth.layout.placed[0]
    turned = dataclasses.replace(front, across=front.along, along=front.across, turned=True)
    strip = LaidStrip(
        Fraction(0), turned.along, (LaidStack(Fraction(0), turned.across, later=False, placed=(turned,)),)
    )
    lines = cut_list(dataclasses.replace(cloth, layout=dataclasses.replace(cloth.layout, strips=(strip,))), INCH)
    assert read_aloud(str(lines[0].size)) == "27 1/4 × 16 1/4 in"


def test_marks_are_dealt_out_in_rows_with_their_numbers() -> None:
    # Marks at 1 5/8, 3 1/8, 4 5/8, 6 1/8, 7 5/8: the first is 1/2 + 3/4 + 3/8, the others 1 1/2 apart.
    rows = mark_rows(tucks(INCH, 5), INCH, 2)
    told = [[(mark.number, read_aloud(str(mark.place))) for mark in row] for row in rows]
    assert told == [[(1, "1 5/8"), (2, "3 1/8")], [(3, "4 5/8"), (4, "6 1/8")], [(5, "7 5/8")]]


def test_key_numbers_are_those_of_the_panel() -> None:
    told = {label: read_aloud(str(value)) for label, value in key_numbers(cushion().panels["front"], INCH)}
    # 17 tucks of 3/8 in hide 17 x 3/4 = 12 3/4 in.
    assert told["Tucks"] == "17"
    assert told["Cloth hidden by all tucks"] == "12 3/4 in"
    assert told["Pitch, stitching to stitching"] == "3/4 in"
    assert told["Cut longer for draw-in"] == "3/4 in"
    assert told["Draw-in to expect"] == "1/2 to 1 1/8 in"


def test_the_thickest_place_is_told_with_where_it_lies() -> None:
    thickest = Thickness(7, "at the top: front 3 + back 4")
    told = dict(key_numbers(cushion().panels["front"], INCH, thickest))
    assert told["Layers at the thickest"] == "7, at the top: front 3 + back 4"


def test_marks_of_unequal_tucks_are_told_with_their_depths() -> None:
    uneven = dataclasses.replace(tucks(INCH, 2), depths=(Fraction(1, 4), Fraction(1, 2)))
    ((first, second),) = mark_rows(uneven, INCH, 8)
    assert [read_aloud(str(mark.depth)) for mark in (first, second)] == ["1/4 in", "1/2 in"]
    assert mark_rows(tucks(INCH, 1), INCH, 8)[0][0].depth == ""


def test_many_depths_are_told_as_a_range() -> None:
    panel = cushion(count=3).panels["front"]
    uneven = dataclasses.replace(panel.across, depths=(Fraction(1, 4), Fraction(1, 2), Fraction(1, 4)))
    told = dict(key_numbers(dataclasses.replace(panel, across=uneven), INCH))
    assert read_aloud(str(told["Depth, stitching to fold"])) == "1/4 to 1/2 in"


def test_two_runs_of_depths_are_told_one_by_one() -> None:
    panel = cushion(count=3).panels["front"]
    uneven = dataclasses.replace(panel.across, depths=(Fraction(1, 4), Fraction(1, 4), Fraction(1, 2)))
    told = dict(key_numbers(dataclasses.replace(panel, across=uneven), INCH))
    assert read_aloud(str(told["Depth, stitching to fold"])) == "2 × 1/4 in, 1 × 1/2 in"


def test_a_panel_of_one_tuck_has_no_spacing() -> None:
    told = dict(key_numbers(cushion(count=1).panels["front"], INCH))
    assert "Spacing, mark to mark" not in told


def test_a_circle_has_one_measure_and_a_bought_piece_none() -> None:
    six = Fraction(6)
    circle = Piece("end", "End", "circle", "face", 2, "either", (Part(Round(), *[six] * 4),), six, six)
    assert read_aloud(str(piece_size(circle, INCH, cut=True))) == "6 in across the circle"
    assert piece_size(dataclasses.replace(circle, parts=()), INCH, cut=True) == ""


def test_unlike_parts_of_a_piece_are_each_told_in_the_table() -> None:
    back = cushion().pieces["back"]
    (half,) = back.parts
    alike = dataclasses.replace(back, parts=(half, half))
    wider = dataclasses.replace(half, cut_across=half.cut_across + 1)
    unlike = dataclasses.replace(back, parts=(half, wider))
    told = [read_aloud(str(piece_size(piece, INCH, cut=True))) + in_parts(piece) for piece in (back, alike, unlike)]
    one, other = "12 1/2 × 15 1/2 in", "13 1/2 × 15 1/2 in"
    assert told == [one, f"{one} each, in 2 parts", f"{one} and {other}"]


def test_sizes_side_by_side_leave_a_gap_where_one_lacks_a_piece() -> None:
    whole = cushion()
    without = dataclasses.replace(whole, pieces={"front": whole.pieces["front"]})
    rows = dict(compared([whole, without]).rows)
    assert [read_aloud(str(cell)) for cell in rows["Envelope back, cut"]] == ["12 1/2 × 15 1/2 in", ""]


def test_a_strip_tells_to_what_length_it_is_drawn_up() -> None:
    edge = Fraction(36)
    frill = Piece(
        "frill", "frill", "gathered strip", "face", 1, "along", (), edge, edge, made=Made(DrawnUp("top", edge))
    )
    assert read_aloud(str(drawn_up(frill, INCH))) == "gathered to 36 in"
    pleated = dataclasses.replace(frill, made=Made(DrawnUp("top", edge, ((Fraction(1), Fraction(4)),))))
    assert read_aloud(str(drawn_up(pleated, INCH))) == "pleated to 36 in"
    assert drawn_up(dataclasses.replace(frill, made=Made(DrawnUp("top", Fraction(0)))), INCH) == ""
    assert drawn_up(dataclasses.replace(frill, made=Made()), INCH) == ""


def test_the_size_of_the_thing_is_told_in_its_words() -> None:
    # 16 pitches of 3/4 and margins of 3/4 are 13 1/2; 14 1/2 along.
    assert finished_size([cushion()]) == "13 1/2 × 14 1/2 in"
    assert finished_size([cushion(), cushion(METRIC)]).startswith("13 1/2 × 14 1/2 in or ")
    for laid, told in (
        (LaidOut((), Fraction(14), Fraction(14), Fraction(2)), "14 × 14 × 2 in"),
        (LaidOut((), Fraction(18), Fraction(8), round="across"), "18 in round, 8 in long"),
        (LaidOut((), Fraction(18), Fraction(8), round="along"), "8 in round, 18 in long"),
        (LaidOut((), Fraction(16), Fraction(12), number=4), "4, each 16 × 12 in"),
    ):
        assert finished_size([dataclasses.replace(cushion(), laid_out=laid)]) == told


def test_a_side_that_no_measure_moves_stands_beside_the_one_that_is() -> None:
    # A back of 8 by 12 for a front of 7: its length is as planned. A lining that follows on both sides has two rows.
    front, length = (("front, across", Fraction(7)),), (("front, along", Fraction(9)),)
    cuts = (
        NewCut("back", "", 1, "across", Fraction(8), front, "mine + 1"),
        NewCut("back", "", 1, "along", Fraction(25, 2), (), ""),
        NewCut("lining", "", 2, "across", Fraction(8), front, "mine + 1"),
        NewCut("lining", "", 2, "along", Fraction(10), length, "mine + 1"),
    )
    rows = later_rows(cuts, INCH)
    assert [(row.cut, read_aloud(str(row.planned))) for row in rows] == [
        ("back, across (12 1/2 along)", "8"),
        ("2 × lining, across", "8"),
        ("2 × lining, along", "10"),
    ]
    # What follows nothing at all is cut as planned, side by side.
    alone = later_rows((dataclasses.replace(cuts[1], side="across"), cuts[1]), INCH)
    assert [(row.cut, row.follows, str(row.words)) for row in alone] == [
        ("back, across", "", "as planned"),
        ("back, along", "", "as planned"),
    ]

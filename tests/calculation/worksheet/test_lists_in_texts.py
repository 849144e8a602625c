"""The lists and names that technique texts put in: made values come in, each line is compared with one by hand."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, WRAP, inches, sheet

from generator.calculation.drawn_up import DrawnUp
from generator.calculation.laid import CutItem
from generator.calculation.worked import BreadthJoin, End, Panel
from generator.calculation.worked_piece import EdgeWork, Lengths, Made, Part, Piece, Straight
from generator.calculation.worked_project import ClosureWork, MeetingWork, Worksheet
from generator.calculation.worksheet import lists
from generator.lengths import INCH

QUARTER, HALF = Fraction(1, 4), Fraction(1, 2)


@pytest.fixture(name="panel")
def panel_of_the_cushion(tmp_path: Path) -> Panel:
    """20 tucks 3/8 deep every 1 1/2, the first at 1 3/4; six rows 3 apart, the first at 1 5/8."""
    found = sheet(tmp_path, CUSHION, "medium").pieces["front"].panel
    assert found is not None
    return found


def strip(**changes: object) -> Piece:
    zero = Fraction(0)
    parts = (Part(Straight(), Fraction(70), zero, zero, zero),)
    plain = Piece("band", "waist band", "strip", "face", 1, "along", parts, zero, zero)
    return replace(plain, **changes)  # type: ignore[arg-type]


LABELS = {"wrap": "bolster wrap", "frill": "long frill", "lid": "round lid"}
PIECES = {name: strip(name=name, label=label) for name, label in LABELS.items()}


def edge(name: str, kind: str, first: Fraction = HALF, second: Fraction = HALF) -> EdgeWork:
    return EdgeWork(name, Fraction(16), End(kind, first, second), Fraction(1))  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("depths", "says"),
    [
        ("1/2", ["- Tuck 1: 1/2 in deep"]),
        ("1/2, 1/2, 1/2", ["- Tucks 1 to 3: 1/2 in deep"]),
        (
            "1/4, 1/4, 1/2, 3/8, 3/8",
            ["- Tucks 1 to 2: 1/4 in deep", "- Tuck 3: 1/2 in deep", "- Tucks 4 to 5: 3/8 in deep"],
        ),
        ("1/4, 3/8, 3/8, 1/4", ["- Tuck 1: 1/4 in deep", "- Tucks 2 to 3: 3/8 in deep", "- Tuck 4: 1/4 in deep"]),
    ],
)
def test_neighbours_of_one_depth_are_told_together(panel: Panel, depths: str, says: list[str]) -> None:
    deep = tuple(inches(depths))
    # As many marks as depths: the number of tucks is counted from them.
    tucks = replace(panel.across, depths=deep, marks=panel.across.marks[: len(deep)])
    assert lists.depth_list(tucks, INCH).split("\n") == says


@pytest.mark.parametrize(
    ("each", "says"),
    [
        # Twice 3/8 is 3/4; three tucks.
        ("3/4", "The 3 tucks take up just twice their depth."),
        # Three times 13/16 - 3/4 = 1/16.
        ("13/16", "On it the 3 tucks take up 3/16 in more than twice their depth."),
        ("5/8", "On it the 3 tucks take up 3/8 in less than twice their depth."),
    ],
)
def test_a_sample_is_told_as_more_or_less_than_twice_the_depth(panel: Panel, each: str, says: str) -> None:
    three = replace(
        panel.across,
        depths=tuple(inches("3/8, 3/8, 3/8")),
        take_ups=tuple(inches(each) * 3),
        marks=panel.across.marks[:3],
    )
    assert lists.sample_words(three, INCH) == says


def test_marks_and_rows_are_told_in_one_running_line(panel: Panel) -> None:
    # Marks at 1 3/4 and every 1 1/2; rows at 1 5/8 and every 3.
    three = replace(panel.across, marks=panel.across.marks[:3])
    assert lists.mark_list(three, INCH) == "Marks (in, from the cut edge): 1: 1 3/4 · 2: 3 1/4 · 3: 4 3/4"
    assert lists.ruled_list(panel, INCH) == (
        "Rows (in, from the top cut edge): row 1: 1 5/8 · row 2: 4 5/8 · row 3: 7 5/8 · row 4: 10 5/8 · "
        "row 5: 13 5/8 · row 6: 16 5/8"
    )


def test_a_panel_without_rows_lists_none(panel: Panel) -> None:
    flat = replace(panel, rows=None)
    assert (lists.row_list(flat), lists.ruled_list(flat, INCH)) == ("", "Rows (in, from the top cut edge): ")


def test_every_row_is_told_with_the_end_it_starts_at(panel: Panel) -> None:
    told = lists.row_list(panel).split("\n")
    # The file starts at the right and does not go back and forth, so all six begin there.
    assert [line.split(":")[0] for line in told] == [
        f"- **Row {number}**, start at the right" for number in range(1, 7)
    ]


def test_breadths_are_told_with_every_seam_below_them(panel: Panel) -> None:
    joins = (
        BreadthJoin(8, "left", Fraction(13), 6, 6, hidden=True, text="It lies under tuck 9."),
        BreadthJoin(14, "right", Fraction(22), 0, 6, hidden=False, text="It can be seen."),
    )
    joined = replace(panel, breadths=tuple(inches("13 1/2, 10, 11")), joins=joins, join_allowance=HALF)
    assert lists.join_list(joined, INCH).split("\n") == [
        "- Breadths, from the left: 13 1/2 in, 10 in, 11 in. Sew them with 1/2 in seams.",
        "- Seam 13 in from the left cut edge. It lies under tuck 9.",
        "- Seam 22 in from the left cut edge. It can be seen.",
    ]


def test_what_is_cut_is_told_with_its_cloth() -> None:
    items = [CutItem("wrap", "wrap", Fraction(16), Fraction(38), 2), CutItem("lid", "lid", HALF, QUARTER, 1)]
    assert lists.cut_list(items, {"wrap": "silk", "lid": "felt"}.__getitem__, INCH).split("\n") == [
        "- wrap: cut 2, 16 in across the cloth by 38 in along it, from the silk",
        "- lid: cut 1, 1/2 in across the cloth by 1/4 in along it, from the felt",
    ]


@pytest.mark.parametrize(
    ("run", "says"),
    [
        ("wrap.all", "all edges of the bolster wrap"),
        ("frill.edge", "the long edge of the long frill"),
        ("lid.rim", "the rim of the round lid"),
        ("wrap.top and lid.rim", "the top edge of the bolster wrap, then the rim of the round lid"),
    ],
)
def test_edges_are_named_as_a_person_says_them(run: str, says: str) -> None:
    assert lists.edge_words(run, PIECES) == says


def test_edges_that_meet_are_told_with_what_is_eased_in() -> None:
    # A note ends the line; where the lengths read alike one is told.
    alike = MeetingWork("wrap.top", "lid.rim", Fraction(16), Fraction(16), Fraction(0), "Start at the notch.")
    apart = MeetingWork("wrap.left", "frill.edge", Fraction(14), Fraction(29, 2), HALF)
    assert lists.meeting_list([alike, apart], PIECES, INCH).split("\n") == [
        "- the top edge of the bolster wrap, to the rim of the round lid: 16 in between the seam lines. "
        "Start at the notch.",
        "- the left edge of the bolster wrap, to the long edge of the long frill: 14 in and 14 1/2 in between the seam "
        "lines; ease the longer in",
    ]


def test_hems_alike_are_told_together_and_other_edges_not_at_all() -> None:
    three = {
        "left": edge("left", "hem"),
        "right": edge("right", "hem"),
        "top": edge("top", "seam"),
        "bottom": edge("bottom", "hem", QUARTER, Fraction(1)),
    }
    apron, bag = (
        strip(name="apron", label="apron", edges=three),
        strip(name="bag", label="bag", edges={"top": edge("top", "hem")}),
    )
    sides = {"apron": ["left", "right", "bottom", "top"], "bag": ["top"]}
    assert lists.hem_list([apron, bag], INCH, sides).split("\n") == [
        "- apron, left and right: turn 1/2 in, and 1/2 in again",
        "- apron, bottom: turn 1/4 in, then 1 in",
        "- bag, top: turn 1/2 in, and 1/2 in again",
    ]
    # Only those that the step makes.
    assert lists.hem_list([apron, bag], INCH, {"apron": ["right"]}) == "- apron, right: turn 1/2 in, and 1/2 in again"
    unhemmed = strip(edges={"top": edge("top", "seam")})
    assert lists.hem_list([unhemmed], INCH, {"band": ["top"]}) == "- These pieces have no hems of their own."
    assert lists.hem_turns(apron, "bottom", INCH) == "turn 1/4 in, then 1 in"
    assert lists.hem_turns(apron, "top", INCH) == "no hem at the top"
    assert lists.hem_turns(strip(), "left", INCH) == "no hem at the left"


def test_a_strip_is_told_as_one_length_several_or_a_square() -> None:
    several = strip(lengths=Lengths(2, Fraction(71, 2), Fraction(2), HALF, slanting=False))
    assert lists.length_words(strip(), INCH) == ""
    assert lists.length_words(several, INCH) == (
        "The waist band is cut in 2 lengths of 35 1/2 in. Join them end to end, right sides together, with seams of "
        "1/2 in, and press the seams open. It should then be 70 in long."
    )
    assert lists.length_words(
        strip(lengths=Lengths(2, Fraction(71, 2), Fraction(2), QUARTER, slanting=True)), INCH
    ) == (
        "The waist band is cut in 2 lengths of 35 1/2 in. Join them with slanting seams, which make no lump at the "
        "edge: lay two ends across each other at a right angle, right sides together, and sew from corner to corner of "
        "the square in which they cross, so that they open to one straight strip. Trim each seam to 1/4 in and press "
        "it open. It should then be 70 in long."
    )
    assert lists.length_words(strip(grain="bias", square=Fraction(18)), INCH) == (
        "The strip is cut on the bias, from a square of 18 in each way."
    )


@pytest.mark.parametrize(
    ("finish", "says"),
    [
        ("seam", "Folds (in, from the left cut edge): 1: 3 on 2 · 2: 6 on 5"),
        # Once the 1 in that turns in is hemmed, everything lies 1 in nearer to the edge.
        ("hem", "Folds (in, from the left hemmed edge): 1: 2 on 1 · 2: 5 on 4"),
        ("turnover", "Folds (in, from the left hemmed edge): 1: 2 on 1 · 2: 5 on 4"),
    ],
)
def test_folds_are_measured_from_the_edge_that_is_there(finish: str, says: str) -> None:
    folds = ((Fraction(3), Fraction(2)), (Fraction(6), Fraction(5)))
    pleated = strip(edges={"left": edge("left", finish)}, made=Made(DrawnUp("top", Fraction(4), folds)))
    assert lists.pleat_list(pleated, INCH) == says


def closure(kind: str, number: int, diameter: Fraction = Fraction(7, 8), text: str = "") -> ClosureWork:
    places = tuple(Fraction(2 + 5 * one) for one in range(number))
    zero = Fraction(0)
    return ClosureWork(kind, number, "wrap.left", "wrap.right", zero, diameter, zero, places, Fraction(1), zero, text)


def test_buttonholes_are_told_of_buttons_alone() -> None:
    both = [closure("buttons", 3, text="Space them evenly."), closure("snaps", 2)]
    assert lists.closure_list(both, PIECES, INCH, holes=True) == (
        "- 3 on the left edge of the bolster wrap: each 1 in long, at 2, 7, 12 in along the finished edge. "
        "Space them evenly."
    )
    assert lists.closure_list(both, PIECES, INCH, holes=False).split("\n") == [
        "- 3 on the right edge of the bolster wrap: at 2, 7, 12 in along the finished edge. Space them evenly.",
        "- 2 snaps on the right edge of the bolster wrap: at 2, 7 in along the finished edge.",
    ]


@pytest.fixture(name="wrap_sheet")
def sheet_of_the_wrap(tmp_path: Path) -> Worksheet:
    return sheet(tmp_path, WRAP, "neck")


def test_what_closes_is_bought_first_and_ties_are_not(wrap_sheet: Worksheet) -> None:
    many = (closure("buttons", 3), closure("ties", 2), closure("snaps", 1, Fraction(0)), closure("buttons", 0))
    sewn = replace(wrap_sheet, closures=many, supplies=(wrap_sheet.notions[0],))
    # Seven eighths across; one is told in the singular; none are not told; the supplies stand last.
    assert [(line.item, line.amount, line.number, line.length) for line in sewn.notions] == [
        ("buttons, 7/8 in across", "3", 3, 0),
        ("snap", "1", 1, 0),
        ("buttons, 7/8 in across", "3", 3, 0),
    ]


def test_the_panels_of_a_sheet_are_its_tucked_pieces(tmp_path: Path) -> None:
    cushion = sheet(tmp_path, CUSHION, "medium")
    assert dict(cushion.panels) == {"front": cushion.pieces["front"].panel}

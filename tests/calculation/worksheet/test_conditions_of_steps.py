"""What a part of a step asks before it is told, answered for the front of a cushion and a wrap; and its buttons."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, WRAP, inches, put, scope_of, sheet, warnings

from generator.calculation.worked import End, Panel, RowSet, Turn
from generator.calculation.worked_piece import Piece
from generator.calculation.worksheet.conditions import CONDITIONS, holds

OF_CLOTHS = {"one way", "one way now", "one way later", "shrinkage", "sheer", "stripes"}
OF_RULER = {"even facing", "turned under"}
OF_MEETINGS = {"corners", "round", "straight", "crosses tucks", "along tucks"}
OF_PROJECT = {"others wait", "pair", "by bulk", "under the arm", "wide margin"}
OF_FRONT = {
    "rows",
    "seam",
    "equal",
    "evenly spaced",
    "facing",
    "draw in",
    "several tucks",
    "held",
    "toward",
    "away",
    "end allowances",
}
OF_WRAP = {
    "rows",
    "seam",
    "equal",
    "evenly spaced",
    "draw in",
    "several tucks",
    "held",
    "caught hem",
    "caught hem left",
}
OF_WRAP |= {"caught hem right", "back and forth", "toward", "end allowances"}


@pytest.fixture(name="front")
def front_of_the_cushion(tmp_path: Path) -> Piece:
    return sheet(tmp_path, CUSHION, "medium").pieces["front"]


@pytest.fixture(name="wrap")
def wrap_of_the_bolster(tmp_path: Path) -> Piece:
    return sheet(tmp_path, WRAP, "neck").pieces["wrap"]


def answered(*pieces: Piece) -> set[str]:
    """Every condition that holds, but for those that ask the project, its cloths, or the ruler of the room."""
    asked = CONDITIONS.keys() - OF_CLOTHS - OF_RULER - OF_MEETINGS - OF_PROJECT
    return {condition for condition in asked if holds(condition, pieces, None)}  # type: ignore[arg-type]


def changed(piece: Piece, **panel: object) -> Piece:
    assert isinstance(piece.panel, Panel)
    return replace(piece, panel=replace(piece.panel, **panel))


def rows_of(piece: Piece) -> RowSet:
    assert piece.panel is not None
    assert piece.panel.rows is not None
    return piece.panel.rows


def test_a_front_of_linked_cells_and_a_wrap_of_ripples_answer_what_they_are(front: Piece, wrap: Piece) -> None:
    # Linked cells face each other and begin every row at the right; ripples lie one way, sewn back and forth.
    assert answered(front) == OF_FRONT
    assert answered(wrap) == OF_WRAP
    # One of several pieces is enough.
    assert answered(front, wrap) == OF_FRONT | OF_WRAP
    assert answered() == set()


def test_not_turns_a_condition_round(front: Piece) -> None:
    assert holds("not caught hem", [front], None)  # type: ignore[arg-type]
    assert not holds("not rows", [front], None)  # type: ignore[arg-type]


def test_either_caught_hem_is_told_by_its_side(wrap: Piece) -> None:
    assert wrap.panel is not None
    seam = End("seam", inches("1/2")[0])
    left, right = (changed(wrap, across=replace(wrap.panel.across, **{side: seam})) for side in ("right", "left"))
    assert answered(left) & {"caught hem", "caught hem left", "caught hem right"} == {"caught hem", "caught hem left"}
    assert answered(right) & {"caught hem", "caught hem left", "caught hem right"} == {"caught hem", "caught hem right"}


def test_a_panel_without_rows_is_asked_of_its_tucks_only(front: Piece) -> None:
    assert answered(changed(front, rows=None)) == {"seam", "equal", "evenly spaced", "several tucks", "end allowances"}


def test_upright_tucks_are_told_at_the_edges_and_within(front: Piece) -> None:
    rows = rows_of(front)
    within = (rows.rows[0].turns[0], Turn.UPRIGHT, *rows.rows[0].turns[2:])
    at_edge = (*rows.rows[0].turns[:-1], Turn.UPRIGHT)
    told = {}
    for name, turns in (("within", within), ("edge", at_edge)):
        first = replace(rows.rows[0], turns=turns)
        told[name] = answered(changed(front, rows=replace(rows, rows=(first, *rows.rows[1:]))))
    assert told["within"] - OF_FRONT == {"upright"}
    assert told["edge"] - OF_FRONT == {"upright", "upright edges"}


def test_what_else_a_panel_may_be_is_asked_of_it(front: Piece) -> None:
    assert front.panel is not None
    across, rows = front.panel.across, rows_of(front)
    one = replace(across, depths=across.depths[:1], take_ups=across.take_ups[:1], marks=across.marks[:1])
    deeper = replace(across, depths=(across.depths[0] * 2, *across.depths[1:]))
    assert answered(changed(front, across=one)) == OF_FRONT - {"several tucks"} | {"one tuck"}
    assert answered(changed(front, across=deeper)) == OF_FRONT - {"equal"} | {"unequal"}
    assert answered(changed(front, across=replace(across, ring=True))) == OF_FRONT | {"ring"}
    assert answered(changed(front, cross=across)) == OF_FRONT | {"cross tucks"}
    assert answered(changed(front, sampled=True)) == OF_FRONT | {"sample"}
    assert answered(changed(front, rows=replace(rows, extra=rows.extra * 0))) == OF_FRONT - {"draw in"}
    assert answered(changed(front, rows=replace(rows, extra=rows.extra / 2))) == OF_FRONT
    assert answered(changed(front, rows=replace(rows, top=()))) == OF_FRONT
    assert answered(changed(front, rows=replace(rows, top=(), bottom=()))) == OF_FRONT - {"held"}
    assert answered(replace(front, after_panel=True)) == OF_FRONT | {"cut after the panel"}
    hem = {side: replace(edge, end=End("hem", edge.end.first)) for side, edge in front.edges.items()}
    assert answered(replace(front, edges=hem)) == OF_FRONT - {"seam"} | {"hem"}


@pytest.mark.parametrize(
    ("plan", "told"),
    [
        # Ripples turn tuck 1 to the left in every second row, over the holes: 2 3/16 is 1 13/16 and its depth.
        ("ripples", True),
        # All to the right: tuck 1 lies away from the edge with the holes, and 2 in is more than 1 13/16.
        ("one way", False),
    ],
)
def test_a_tuck_that_turns_over_the_buttonholes_needs_its_depth_more(plan: str, told: bool, tmp_path: Path) -> None:
    text = put(WRAP, ("left margin: 2 1/4 in or 6 cm", "left margin: 2 in or 6 cm"), ("plan: ripples", f"plan: {plan}"))
    found = warnings(sheet(tmp_path, text, "neck"))
    assert any("make that margin 2 3/16 in or more" in text for text in found) is told


@pytest.mark.parametrize(
    ("edge", "drawing", "told"),
    [
        # Of 19 tucks the last is drawn like the first: to the right it turns over the holes at the right edge.
        ("right", "> . <", True),
        # It turns away from them; its neighbour, which turns toward them, does not reach them.
        ("right", "< . >", False),
        # At the left edge it is the first that counts, and a turn to the left.
        ("left", "< > .", True),
        ("left", "> < .", False),
    ],
)
def test_only_the_tuck_beside_them_turns_over_buttonholes(edge: str, drawing: str, told: bool, tmp_path: Path) -> None:
    other = "left" if edge == "right" else "right"
    text = put(
        WRAP,
        ("left margin: 2 1/4 in or 6 cm", f"number: 19\n      {other} margin: 2 in to 4 in or 5 cm to 9 cm"),
        ("right margin: 2 in to 3 in", f"{edge} margin: 2 in to 2 1/8 in"),
        ("    on: wrap.left\n    onto: wrap.right", f"    on: wrap.{edge}\n    onto: wrap.{other}"),
        ("plan: ripples", f'drawn plan: "{drawing}"'),
        ("back and forth: yes", "back and forth: no"),
    )
    found = sheet(tmp_path, text, "neck")
    assert found.pieces["wrap"].panel is not None
    assert found.pieces["wrap"].panel.across.count == 19
    assert any("make that margin 2 3/16 in or more" in text for text in warnings(found)) is told


def test_a_closure_that_is_said_to_lap_by_nothing_laps_by_nothing(tmp_path: Path) -> None:
    (closure,) = sheet(tmp_path, put(WRAP, ("    overlap: 2 in or 5 cm\n", "")), "neck").closures
    assert (closure.overlap, closure.text) == (
        0,
        "The middle of each button lies 15/16 in from the edge of the upper lap.",
    )


def test_the_words_of_a_closure_tell_the_middle_of_its_buttons_and_its_lap(tmp_path: Path) -> None:
    # 7/16 and 1/2 from the edge.
    (closure,) = sheet(tmp_path, WRAP, "neck").closures
    assert closure.text == (
        "The middle of each button lies 15/16 in from the edge of the upper lap. The edges lap by 2 in."
    )
    assert (closure.overlap, closure.buttonhole) == (2, 1)


@pytest.mark.parametrize(
    ("line", "conditions"),
    [
        ("shrinkage: 5 %", {"shrinkage"}),
        ("one way: yes", {"one way", "one way now"}),
        ("repeat: 1 in or 2.5 cm", {"stripes"}),
        ("weight: sheer", {"sheer"}),
    ],
)
def test_what_is_asked_of_the_cloth_holds_where_the_file_says_so(
    tmp_path: Path, line: str, conditions: set[str]
) -> None:
    def asked(text: str) -> set[str]:
        scope = scope_of(tmp_path, text)
        return {one for one in OF_CLOTHS if holds(one, [scope.piece("front")], scope)}

    assert asked(CUSHION) == set()
    assert asked(put(CUSHION, ("label: cotton", f"label: cotton\n    {line}"))) == conditions

"""A tuck at the edge without a partner turns out where the margin has room for it, else it is left upright."""

from __future__ import annotations

from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, faults, put, sheet, warnings

from generator.calculation.worked import Turn

# 21 tucks 3/4 in apart take 15 in, so a side of 15 3/4 in leaves margins of 3/8 in. A tuck 3/8 in deep turned out
# beside a seam needs 1/2 in, one that stands needs the 3/8 in of the presser foot.
NARROW = put(
    CUSHION,
    ("side: 16 in or 40 cm", "side: 15 3/4 in or 40 cm"),
    ("margin: 3/4 in to 1 1/2 in", "margin: 3/8 in to 7/16 in"),
)
SAYS = (
    "the margins leave no room to turn the lone tucks at the edges outward, so they are left upright; for that the "
    "margins need 1/2 in, or write 'lone edge tucks: upright' to keep it so"
)


def edges(folder: Path, text: str, size: str = "medium") -> tuple[list[str], list[str]]:
    """How the first and the last tuck lie, row by row, and the warnings."""
    found = sheet(folder, text, size)
    panel = found.pieces["front"].panel
    assert panel is not None
    assert panel.rows is not None
    told = [row.turns[0].value + row.turns[-1].value for row in panel.rows.rows]
    return told, warnings(found)


def with_word(text: str, word: str) -> str:
    return put(text, ("      start: right\n", f"      start: right\n      lone edge tucks: {word}\n"))


def test_without_room_lone_tucks_stand_and_the_sheet_says_so(tmp_path: Path) -> None:
    # Linked cells, 21 tucks: in the first row tuck 21 has no partner, in the second tuck 1.
    turns, told = edges(tmp_path, NARROW)
    assert turns[:2] == [Turn.RIGHT.value + Turn.UPRIGHT.value, Turn.UPRIGHT.value + Turn.LEFT.value]
    assert [text for text in told if SAYS in text] == told


def test_with_room_lone_tucks_turn_out_and_nothing_is_said(tmp_path: Path) -> None:
    # 20 tucks on 16 in have margins of 7/8 in: in the second row tuck 1 lies to the left and tuck 20 to the right.
    turns, told = edges(tmp_path, CUSHION)
    assert turns[:2] == ["><", "<>"]
    assert told == []


def test_a_file_that_says_upright_is_not_told_so(tmp_path: Path) -> None:
    turns, told = edges(tmp_path, with_word(NARROW, "upright"))
    assert turns[:2] == [">.", ".<"]
    assert told == []


def test_a_file_that_says_out_is_refused_where_there_is_no_room(tmp_path: Path) -> None:
    assert any(
        "the left margin may be 7/16 in at most, but a tuck 3/8 in deep turned outward needs 1/2 in" in text
        for text in faults(tmp_path, with_word(NARROW, "out"), "medium")
    )


@pytest.mark.parametrize(("word", "turns"), [("in", ["><", "><"]), ("out", ["><", "<>"]), ("upright", ["><", ".."])])
def test_the_word_in_the_file_is_obeyed_where_there_is_room(tmp_path: Path, word: str, turns: list[str]) -> None:
    # With twenty tucks both edge tucks are lone in every second row.
    assert edges(tmp_path, with_word(CUSHION, word))[0][:2] == turns


def test_plans_without_facing_pairs_turn_their_edge_tucks_as_drawn(tmp_path: Path) -> None:
    # Ripples lay every tuck to the right, so the last one lies out in the first row and needs its room.
    ripples = put(NARROW, ("plan: linked cells", "plan: ripples"))
    assert any("deep turned outward needs 1/2 in" in text for text in faults(tmp_path, ripples, "medium"))

"""Strips from the bias of a square and piping on a worksheet: the square, the joins and the measures by hand."""

from __future__ import annotations

from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, inches, put, sheet

from generator.calculation.worked_piece import Lengths, Piece
from generator.lengths import read_length

BINDING = "kind: binding\nlength: 100 in or 250 cm\nwidth: 1/2 in or 1.2 cm\n"
PIPING = "kind: piping\nlength: 100 in or 250 cm\ncord: 1/4 in or 6 mm\n"


def strip(folder: Path, keys: str, edition: str = "inch") -> Piece:
    lines = "".join(f"    {key}\n" for key in keys.strip().split("\n"))
    text = put(CUSHION, ("edges that meet:", f"  extra:\n{lines}edges that meet:"))
    return sheet(folder, text, "medium", edition).pieces["extra"]


@pytest.mark.parametrize(
    ("keys", "across", "along", "square"),
    [
        # Every square is cut 3/4 larger, to have something to spare when it is ruled.
        # 101 by 2 1/8, joins of 1/4: five rounds need s = Q - 1/2 to hold 5 x 2 1/8 x 1.41421 = 15.026, and are then
        # 106; four rounds would be 85 at most before the fifth. Q = 15.526, up to 1/8: 15 5/8, and 3/4.
        (BINDING + "grain: bias", "101", "2 1/8", "16 3/8"),
        # 101 by 2: five rounds of 1.41421 s are 101 at s = 14.284; 14.284 / 2.828 holds five. The joins of 1/2 are told
        # by the file: Q = 14.284 + 1 = 15.284, up to 15 3/8, and 3/4.
        ("kind: bias strip\nlength: 101 in\nwidth: 2 in\njoin allowance: 1/2 in", "101", "2", "16 1/8"),
        # Round the cord 0.785 and two seams of 1/2: 1.785, up to 1/16: 1 13/16. Five rounds again: 14.284 / 2.563.
        # Q = 14.784, up to 14 7/8, and 3/4.
        (PIPING + "grain: bias", "101", "1 13/16", "15 5/8"),
    ],
)
def test_a_bias_strip_is_cut_from_a_square(tmp_path: Path, keys: str, across: str, along: str, square: str) -> None:
    piece = strip(tmp_path, keys.replace(": 101 in\nwidth: 2 in", ": 101 in or 250 cm\nwidth: 2 in or 5 cm"))
    assert (piece.cut_across, piece.cut_along) == tuple(inches(f"{across}, {along}"))
    assert (piece.square, piece.measures["square"]) == tuple(inches(square) * 2)
    assert piece.lengths is None
    assert piece.measures["edge"] == piece.edges["edge"].finished == piece.finished_across


def test_a_metric_square_is_joined_with_six_millimetres(tmp_path: Path) -> None:
    # 250 + 2 x 1.5 = 253 by 4.8 + 0.3. Five rounds need s to hold 5 x 5.1 x 1.41421 = 36.06; they are 255 then.
    # Q = 36.06 + 2 x 0.6 = 37.26, up to a whole number of 3 mm: 37.5 cm, and 2 cm to spare.
    piece = strip(tmp_path, BINDING + "grain: bias", "metric")
    assert piece.measures["square"] == read_length("39.5 cm")


def test_piping_along_the_grain_is_joined_with_slanting_seams(tmp_path: Path) -> None:
    # 101 of strip 1 13/16 wide on 44: three lengths lose 2 x 1 13/16: 104 5/8 / 3 = 34 7/8.
    piece = strip(tmp_path, PIPING + "grain: along")
    assert piece.lengths == Lengths(3, *inches("34 7/8, 1 13/16, 1/4"), slanting=True)
    assert [piece.measures[name] for name in ("length", "cord", "width", "edge")] == inches("100, 1/4, 1 13/16, 100")


@pytest.mark.parametrize(("length", "number"), [("43", 1), ("43 1/16", 2)])
def test_a_strip_just_as_long_as_the_cloth_is_wide_is_one(tmp_path: Path, length: str, number: int) -> None:
    # 43 and two ends of 1/2 are the 44 of the cloth.
    (cut,) = strip(tmp_path, f"kind: strip\nlength: {length} in\nwidth: 2 in\nedges:\n  all: seam").cuts
    assert cut.number == number


def test_a_pleated_strip_is_as_long_at_its_top_as_its_edge(tmp_path: Path) -> None:
    # Four knife pleats of 1/2 take up 4 x 1 of 24.
    pleats = "kind: pleated strip\nedge: 20 in\nstyle: knife\npleats: 4\npleat depth: 1/2 in\ndrop: 3 in\n"
    piece = strip(tmp_path, f"{pleats}edges:\n  all: seam")
    lengths = {name: edge.finished for name, edge in piece.edges.items()}
    assert lengths == {"top": 20, "bottom": 24, "left": 3, "right": 3, "edge": 20}
    told = ("edge", "drop", "pleats", "pleat depth", "section", "length")
    assert [piece.measures[name] for name in told] == inches("20, 3, 4, 1/2, 5, 24")

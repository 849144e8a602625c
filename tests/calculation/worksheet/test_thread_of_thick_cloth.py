"""Thick cloth takes more thread: max(2.5, 2 + 2 T S) for each line of stitching, T the stack under the needle."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

from rooms_on_disk import CUSHION, put, sheet


def test_rows_count_their_layers_and_all_other_lines_three(tmp_path: Path) -> None:
    # Cloth 1/20 in, 10 stitches to the inch: a row over L layers takes 2 + 2 (L / 20) 10 = 2 + L times its length,
    # three layers take 2 + 3 = 5.  Front: rows of 16 in, 20 tucks over the cut length; back: each of its two parts has
    # a hem of 17 in at the opening, 34 in.  The seam round both is 64 in at 2 1/2 and as long a zigzag over its
    # raw edges at 5 1/2.  A fifth is added for waste.
    found = sheet(tmp_path, put(CUSHION, ("label: cotton", "label: cotton\n    thickness: 1/20 in")), "medium")
    rows, along = found.pieces["front"].panel.rows, found.pieces["front"].cut_along
    lines = len(rows.rows) * 16 * (2 + rows.layers) + 20 * along * 5 + 34 * 5 + 64 * (Fraction(5, 2) + Fraction(11, 2))
    assert found.thread.length == lines * Fraction(6, 5)


def test_cloth_of_unknown_thickness_takes_two_and_a_half_times_the_line(tmp_path: Path) -> None:
    found = sheet(tmp_path, CUSHION, "medium")
    rows, along = found.pieces["front"].panel.rows, found.pieces["front"].cut_along
    lines = len(rows.rows) * 16 + 20 * along + 34 + 64
    zigzag = 64 * Fraction(11, 2)
    assert found.thread.length == (lines * Fraction(5, 2) + zigzag) * Fraction(6, 5)

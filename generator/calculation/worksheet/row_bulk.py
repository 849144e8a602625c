"""Rows with much cloth under the arm of the machine: a panel comes in, the numbers of such rows go out, and words.

Begun at the right end, a row has all that lies below it under the arm; begun at the left end, all that lies above it.
"""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.worked import Row, TuckSet
from generator.calculation.worked_piece import Piece
from generator.lengths import Edition, read_length
from generator.listed import listed

# What lies flat under the arm of a household machine. Common practice, no source.
FLAT = {"inch": read_length("8 in"), "metric": read_length("20 cm")}
# From where on a margin is wide. Common practice, no source.
_WIDE = {"inch": read_length("4 in"), "metric": read_length("10 cm")}


def wide_margins(tucks: TuckSet, edition: Edition) -> tuple[bool, bool]:
    """Return whether so much lies plain at the left and at the right that rows over all of it would only spoil it."""
    wide = _WIDE[edition.name]
    return (not tucks.ring and tucks.left_margin >= wide, not tucks.ring and tucks.right_margin >= wide)


def bulky_rows(piece: Piece, edition: Edition) -> tuple[Row, ...]:
    """Return the rows of a panel that begin where more than half of it, and more than lies flat, is under the arm."""
    rows = piece.panel.rows.rows if piece.panel and piece.panel.rows else ()
    return tuple(row for row in rows if _under(row, piece.cut_along) > max(FLAT[edition.name], piece.cut_along / 2))


def _under(row: Row, length: Fraction) -> Fraction:
    return length - row.ruled if row.start == "right" else row.ruled


def bulk_words(piece: Piece, edition: Edition) -> str:
    """Return which rows those are: 'Row 1', 'Rows 1 to 3', 'Rows 1, 4 and 6'; empty where there are none."""
    numbers = [row.number for row in bulky_rows(piece, edition)]
    if not numbers:
        return ""
    first, last = numbers[0], numbers[-1]
    if len(numbers) == 1:
        return f"Row {first}"
    if numbers == [*range(first, last + 1)]:
        return f"Rows {first} {'to' if len(numbers) > 2 else 'and'} {last}"
    return f"Rows {listed([*map(str, numbers)])}"


def row_runs(piece: Piece) -> str:
    """Return where rows begin, in runs from the top: 'Row 1 begins at the left, rows 2 to 4 begin at the right'."""
    rows = piece.panel.rows.rows if piece.panel and piece.panel.rows else ()
    runs: list[list[Row]] = []
    for row in rows:
        if not runs or runs[-1][-1].start != row.start:
            runs.append([])
        runs[-1].append(row)
    told = (
        f"row {run[0].number} begins at the {run[0].start}"
        if len(run) == 1
        else f"rows {run[0].number} to {run[-1].number} begin at the {run[0].start}"
        for run in runs
    )
    words = ", ".join(told)
    return words[:1].upper() + words[1:]

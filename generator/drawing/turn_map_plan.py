"""Which tucks and rows of a turn map stand where; a panel's rows come in, blocks that fit a page go out.

A map that is too large for one page is shown in short first, both ends of the tucks and of the rows round a gap, and
then whole, block by block.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.worked import Hand, RowSet, Turn

LEAST_CELL, MOST_CELL = Fraction(3, 20), Fraction(3, 10)
ROW_HEIGHT = Fraction(1, 5)
MAP_WIDTH = Fraction(11, 2)
PAGE_ROWS = 30
SHORT_ROWS = 8
GAP = None


@dataclass(frozen=True, slots=True)
class MapRow:
    """One line of the map: a tack row with the end where it begins, or an edge that holds the tucks (no start)."""

    label: str
    turns: tuple[Turn, ...]
    start: Hand | None
    number: int


@dataclass(frozen=True, slots=True)
class MapBlock:
    """A part of the map: the numbers of its tucks and its rows, in order; ``None`` stands for a gap."""

    tucks: tuple[int | None, ...]
    rows: tuple[MapRow | None, ...]

    @property
    def cell(self) -> Fraction:
        """The width of one tuck on paper [in]."""
        return max(LEAST_CELL, min(MOST_CELL, MAP_WIDTH / max(1, len(self.tucks))))

    def repeat_corner(self, rows: RowSet) -> tuple[int, int] | None:
        """Return how many columns and rows the first repeat takes in the block, or None where it is not whole."""
        height, width = len(rows.repeat), len(rows.repeat[0]) if rows.repeat else 0
        starts = [place for place, row in enumerate(self.rows) if row is not None and row.number == 1]
        if not starts or not width or self.tucks[:width] != tuple(range(1, width + 1)):
            return None
        shown = [row.number if row is not None else 0 for row in self.rows[starts[0] : starts[0] + height]]
        return (width, height) if shown == list(range(1, height + 1)) else None


def map_rows(rows: RowSet) -> tuple[MapRow, ...]:
    """Return every line of the map from the top: the top edge if it holds the tucks, the rows, the bottom edge."""
    lines = [MapRow(str(row.number), row.turns, row.start, row.number) for row in rows.rows]
    top = [MapRow("top", rows.top, None, 0)] if rows.top else []
    bottom = [MapRow("bottom", rows.bottom, None, 0)] if rows.bottom else []
    return (*top, *lines, *bottom)


def plan_turn_map(rows: RowSet, count: int) -> tuple[tuple[MapBlock, ...], ...]:
    """Return the blocks of each picture: one block if the map fits, else the map in short and then all of it."""
    lines = map_rows(rows)
    columns = math.floor(MAP_WIDTH / LEAST_CELL)
    if count <= columns and len(lines) <= PAGE_ROWS:
        return ((MapBlock(tuple(range(1, count + 1)), lines),),)
    short = MapBlock(_both_ends(count, columns), _ends_of_rows(lines))
    blocks = [
        MapBlock(tucks, lines[first : first + PAGE_ROWS])
        for first in range(0, len(lines), PAGE_ROWS)
        for tucks in _even_parts(count, columns)
    ]
    return ((short,), *_pages(blocks))


def _both_ends(count: int, columns: int) -> tuple[int | None, ...]:
    if count <= columns:
        return tuple(range(1, count + 1))
    right = (columns - 1) // 2
    left = columns - 1 - right
    return (*range(1, left + 1), GAP, *range(count - right + 1, count + 1))


def _ends_of_rows(lines: tuple[MapRow, ...]) -> tuple[MapRow | None, ...]:
    if len(lines) <= 2 * SHORT_ROWS + 1:
        return lines
    return (*lines[:SHORT_ROWS], GAP, *lines[-SHORT_ROWS:])


def _even_parts(count: int, most: int) -> tuple[tuple[int, ...], ...]:
    each = math.ceil(Fraction(count, math.ceil(Fraction(count, most))))
    return tuple(tuple(range(first, min(first + each, count + 1))) for first in range(1, count + 1, each))


def _pages(blocks: list[MapBlock]) -> tuple[tuple[MapBlock, ...], ...]:
    """Return the blocks dealt out to pages; a block counts its rows and three more for its head."""
    pages: list[list[MapBlock]] = [[]]
    filled = 0
    for block in blocks:
        taken = len(block.rows) + 3
        if filled + taken > PAGE_ROWS + 8 and pages[-1]:
            pages.append([])
            filled = 0
        pages[-1].append(block)
        filled += taken
    return tuple(tuple(page) for page in pages)

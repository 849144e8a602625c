"""The turn picture in thought: rows come in, columns of letters in the order in which tucks are met go out.

All lengths are inches on paper.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from generator.calculation.turning.turns import AWAY, TOWARD, UPRIGHT, row_in_groups
from generator.calculation.worked import Hand, RowSet, Turn
from generator.drawing.labels import text_height, text_lines, text_width
from generator.drawing.sizes import MILLIMETRES
from generator.drawing.style import Style

LETTERS = {TOWARD: "T", AWAY: "A", UPRIGHT: "U"}
LEAST_CELL, BEST_CELL, MOST_CELL = 4.5 / MILLIMETRES, 6 / MILLIMETRES, 9 / MILLIMETRES
NEEDLE, BOX = 9 / MILLIMETRES, 3.4 / MILLIMETRES
MOST_CELLS_HIGH, BEST_CELLS_HIGH = 170 / MILLIMETRES, 125 / MILLIMETRES
BETWEEN = 3 / MILLIMETRES
_NARROWEST = 2.9  # widths of its longest number that a strip takes at least: its numbers on both sides and its letters
_LEAST_COLUMN = 8  # capitals that a column takes at least, for the words at its head
EVERY = 5


@dataclass(frozen=True, slots=True)
class TurnColumn:
    """Rows that are begun at one end and turned alike.

    ``letters`` are T, A or U in the order in which the tucks are met, ``tucks`` their numbers.
    """

    rows: tuple[int, ...]
    start: Hand
    letters: tuple[str, ...]
    tucks: tuple[int, ...]
    told: str

    @property
    def alike(self) -> bool:
        """Whether all letters are the same, so that one cell tells the row."""
        return len(set(self.letters)) == 1


def turn_columns(rows: RowSet) -> tuple[TurnColumn, ...]:
    """Return a column for each different start and turns, in the order of the rows.

    Examples
    --------
    Turned right and begun at the left, a tuck is laid toward the sewer.

    >>> from fractions import Fraction as F
    >>> from generator.calculation.worked import Row
    >>> row = Row(1, F(2), F(2), F(2), "left", (Turn.RIGHT, Turn.LEFT), ("toward", "away"))
    >>> rows = RowSet("pairs", ((),), (row,), F(3), F(2), (), (), F(0), F(0), F(0), 5)
    >>> [(column.rows, column.letters, column.tucks) for column in turn_columns(rows)]
    [((1,), ('T', 'A'), (1, 2))]
    """
    found: dict[tuple[Hand, tuple[Turn, ...]], list[int]] = {}
    for row in rows.rows:
        found.setdefault((row.start, row.turns), []).append(row.number)
    words = {(row.start, row.turns): row.words for row in rows.rows}
    return tuple(
        TurnColumn(
            rows=tuple(numbers),
            start=start,
            letters=tuple(LETTERS[word] for word in words[start, turns]),
            tucks=tuple(range(1, len(turns) + 1) if start == "left" else range(len(turns), 0, -1)),
            told=row_in_groups(words[start, turns]),
        )
        for (start, turns), numbers in found.items()
    )


@dataclass(frozen=True, slots=True)
class ColumnHead:
    """The words above a column in lines, those below it, and how many tick boxes stand on a line."""

    title: tuple[str, ...]
    lines: tuple[str, ...]
    told: tuple[str, ...]
    ends: tuple[str, ...]
    boxes: int
    height: float


@dataclass(frozen=True, slots=True)
class TurnBand:
    """Columns side by side, each with its strips: places among the tucks met."""

    columns: tuple[TurnColumn, ...]
    heads: tuple[ColumnHead, ...]
    strips: int

    @property
    def head(self) -> float:
        """The height of the highest head."""
        return max(head.height for head in self.heads)

    @property
    def ends(self) -> int:
        """How many lines the words below the columns take."""
        return max(len(head.ends) for head in self.heads)

    @property
    def cells(self) -> int:
        """How many cells stand one below the other in the longest strip."""
        return math.ceil(_longest(self.columns) / self.strips)

    def places(self, column: TurnColumn) -> tuple[range, ...]:
        """Return the places of each strip of a column."""
        if column.alike:
            return (range(1),)
        count = len(column.letters)
        return tuple(range(first, min(first + self.cells, count)) for first in range(0, count, self.cells))


def _longest(columns: Sequence[TurnColumn]) -> int:
    """Return how many cells the longest column has."""
    return max(1 if column.alike else len(column.letters) for column in columns)


def bands(columns: Sequence[TurnColumn], style: Style, width: float, cells_high: float) -> tuple[TurnBand, ...]:
    """Return the columns in bands, with the fewest strips whose cells fit a height, or as many as the width holds.

    ``cells_high`` is the height that the cells of all bands may take together [in].
    """
    least = _LEAST_COLUMN * text_width("A", style.text, bold=True, font=style.font)
    beside = max(1, min(len(columns), int((width + BETWEEN) / (least + BETWEEN))))
    number = math.ceil(len(columns) / beside)
    beside = math.ceil(len(columns) / number)
    longest = _longest(columns)
    narrow = _NARROWEST * numbers_width(longest, style)
    column_width = (width - BETWEEN * (beside - 1)) / beside
    most_strips = max(1, int(column_width / narrow))
    most = int(cells_high / number / least_cell(style) + 1e-6)
    strips = next((count for count in range(1, most_strips + 1) if math.ceil(longest / count) <= most), most_strips)
    heads = [column_head(column, style, column_width) for column in columns]
    return tuple(
        TurnBand(tuple(columns[first : first + beside]), tuple(heads[first : first + beside]), strips)
        for first in range(0, len(columns), beside)
    )


def numbers_width(count: int, style: Style) -> float:
    """Return the room beside a strip for the numbers of so many tucks [in]."""
    return text_width("0" * max(2, len(str(count))), style.small, bold=True, font=style.font)


def least_cell(style: Style) -> float:
    """Return the least height of a cell: its letter is never smaller than the style's small words."""
    return max(LEAST_CELL, 1.3 * text_height(style.small))


def column_head(column: TurnColumn, style: Style, width: float) -> ColumnHead:
    """Return the words above a column that is so wide [in]."""
    title = text_lines(rows_named(column.rows), style.strong, width, bold=True, font=style.font)
    lines = text_lines(f"start at the {column.start}", style.small, width, font=style.font)
    told = text_lines(column.told, style.small, width, bold=True, font=style.font)
    end = "left" if column.start == "right" else "right"
    ends = text_lines(f"ends at the {end}", style.small, width, font=style.font)
    box = BOX + 1.4 * text_width("00", style.small, font=style.font)
    boxes = max(1, min(len(column.rows), int(width / box)))
    ticks = math.ceil(len(column.rows) / boxes) * 1.25 * max(BOX, text_height(style.small))
    words = 1.1 * (len(title) * text_height(style.strong) + (len(lines) + len(told)) * text_height(style.small))
    return ColumnHead(title, lines, told, ends, boxes, words + ticks + 0.04)


def rows_named(rows: Sequence[int]) -> str:
    """Return the name of some rows: 'Row 4', 'Rows 1 to 6', 'Rows 1, 3, 5', 'Odd rows' where there are many."""
    if len(rows) == 1:
        return f"Row {rows[0]}"
    first, last = rows[0], rows[-1]
    if list(rows) == list(range(first, last + 1)):
        return f"Rows {first} {'to' if len(rows) > 2 else 'and'} {last}"
    if len(rows) > 4 and list(rows) == list(range(first, last + 1, 2)):
        return f"{'Odd' if first % 2 else 'Even'} rows, {first} to {last}"
    return f"Rows {', '.join(map(str, rows))}"

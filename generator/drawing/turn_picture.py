"""The turn picture: a panel's rows come in, every turn as the sewer sees it goes out, with boxes to tick.

Needle and foot stand at the top and the cloth feeds upward, so that the tuck met first is the topmost cell. A flap laid
toward her has its fold at the bottom, one laid away from her at the top: folds that face each other touch.
"""

from __future__ import annotations

from collections.abc import Sequence

from generator.calculation.worked import RowSet
from generator.calculation.worked_project import Worksheet
from generator.drawing.built_words import capital_middle
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.labels import POINTS, text_height, text_lines, text_width
from generator.drawing.needle import draw_needle
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style
from generator.drawing.turn_lines import draw_lines, height_of_lines, lined
from generator.drawing.turn_picture_plan import (
    BEST_CELL,
    BEST_CELLS_HIGH,
    BETWEEN,
    BOX,
    EVERY,
    MOST_CELL,
    MOST_CELLS_HIGH,
    NEEDLE,
    ColumnHead,
    TurnBand,
    TurnColumn,
    bands,
    least_cell,
    numbers_width,
    turn_columns,
)

_GAP, _FOLD = 0.9 / MILLIMETRES, 1 / MILLIMETRES
_WIDE, _RIM = 18 / MILLIMETRES, 0.03
_MOST_LETTER = 16.0
_LETTER = 0.66
_HIGHEST = 200 / MILLIMETRES
_SEAT = "you sit here"
_OTHER = "On the other of the pair begin each row at its other end, with the same words."


def heights_of_turns(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the turn picture of a panel can be."""
    columns = turn_columns(_rows(worksheet, name))
    inches = width / MILLIMETRES
    seat = _seat_height(_other(worksheet, name, style, inches), style)
    if in_lines(columns, style, inches):
        high = height_of_lines(lined(columns, style, inches), style, inches) + seat
        return Heights.of_inches(high, high, high)
    tight = bands(columns, style, inches, MOST_CELLS_HIGH)
    roomy = bands(columns, style, inches, BEST_CELLS_HIGH)
    closest = bands(columns, style, inches, 0.0)
    cell = max(BEST_CELL, least_cell(style))
    return Heights.of_inches(
        seat + _height(closest, style, least_cell(style)),
        seat
        + _height(
            roomy, style, cell if sum(band.cells for band in roomy) * cell <= BEST_CELLS_HIGH else least_cell(style)
        ),
        seat + max(_height(tight, style, least_cell(style)), _height(roomy, style, max(MOST_CELL, least_cell(style)))),
    )


def in_lines(columns: Sequence[TurnColumn], style: Style, width: float) -> bool:
    """Return whether cells below each other would be higher than a page: then letters stand in lines, none left out."""
    return _height(bands(columns, style, width, 0.0), style, least_cell(style)) > _HIGHEST


def _height(found: Sequence[TurnBand], style: Style, cell: float) -> float:
    return sum(_fixed(band, style) + band.cells * cell for band in found)


def _other(worksheet: Worksheet, name: str, style: Style, width: float) -> Sequence[str]:
    """What is told below of the second of a pair, in lines; nothing of a piece that is no pair."""
    return text_lines(_OTHER, style.small, width, font=style.font) if worksheet.pieces[name].pair else ()


def _seat_height(other: Sequence[str], style: Style) -> float:
    """Return what the words below the cells need."""
    return 1.2 * text_height(style.text) + 1.15 * len(other) * text_height(style.small)


def _fixed(band: TurnBand, style: Style) -> float:
    """Return what a band needs beside its cells: its head, the needle, the words below, a little air."""
    return band.head + NEEDLE + (0.3 + 1.1 * band.ends) * text_height(style.small) + 0.06


def draw_turns(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return the turn picture of a panel with rows."""
    rows = _rows(worksheet, name)
    told = "; ".join(
        f"rows {', '.join(map(str, column.rows))}, begun at the {column.start}: {column.told}"
        for column in turn_columns(rows)
    )
    alt = f"Every turn as you see it at the machine, the tuck that is met first at the top. {told.capitalize()}."
    caption = "T: lay the tuck toward you. A: lay it away from you. The needle is at the top; you sit below."
    other = _other(worksheet, name, style, size.inches[0])
    alt += f" {_OTHER}" if other else ""
    return sketch_turns(rows, style, size, f"turns {name}", other).picture(alt, caption, _rows_in_words(rows))


def _rows_in_words(rows: RowSet) -> str:
    return "\n".join(
        f"{'Row' if len(column.rows) == 1 else 'Rows'} {', '.join(map(str, column.rows))}, "
        f"from the {column.start}: {column.told}."
        for column in turn_columns(rows)
    )


def _rows(worksheet: Worksheet, name: str) -> RowSet:
    rows = worksheet.panels[name].rows
    assert rows is not None
    return rows


def sketch_turns(rows: RowSet, style: Style, size: DrawnSize, key: str, other: Sequence[str] = ()) -> Canvas:
    """Return the canvas of the turn picture; ``other`` are the lines about the second of a pair."""
    canvas = canvas_of(size, style, key)
    columns = turn_columns(rows)
    if in_lines(columns, style, canvas.width):
        top = draw_lines(canvas, lined(columns, style, canvas.width))
    else:
        top = _draw_cells(canvas, columns, canvas.height - _seat_height(other, style))
    canvas.text(_SEAT, canvas.width / 2, top + 0.5 * text_height(style.text), size=style.text, bold=True)
    for line, words in enumerate(other):
        y = top + 1.2 * text_height(style.text) + (0.5 + 1.15 * line) * text_height(style.small)
        canvas.text(words, canvas.width / 2, y)
    return canvas


def _draw_cells(canvas: Canvas, columns: Sequence[TurnColumn], high: float) -> float:
    """Draw the columns as cells in a height, and return where they end [in]."""
    style = canvas.style
    heads = bands(columns, style, canvas.width, 0.0)
    free = high - sum(_fixed(band, style) for band in heads)
    found = bands(columns, style, canvas.width, free)
    cell = min(max(MOST_CELL, least_cell(style)), free / sum(band.cells for band in found))
    top = 0.0
    for band in found:
        _draw_band(canvas, band, top, cell)
        top += _fixed(band, style) + band.cells * cell
    return top


def _draw_band(canvas: Canvas, band: TurnBand, top: float, cell: float) -> None:
    style = canvas.style
    width = (canvas.width - BETWEEN * (len(band.columns) - 1)) / len(band.columns)
    beside = numbers_width(max(len(column.letters) for column in band.columns), style) + 0.06
    numbered = width / band.strips >= 2 * beside + 0.25
    for place, (column, head) in enumerate(zip(band.columns, band.heads, strict=True)):
        left = place * (width + BETWEEN)
        _draw_head(canvas, column, head, (left + width / 2, top + band.head - head.height))
        strips = band.places(column)
        each = width / max(len(strips), 1)
        for number, places in enumerate(strips):
            inner = (left + number * each + beside, left + (number + 1) * each - (beside if numbered else _RIM + 0.015))
            strip = _Strip(canvas, column, inner, top + band.head + NEEDLE, cell)
            strip.draw(places, at_needle=0.0 if number else beside, tucks=numbered)
        y = top + band.head + NEEDLE + max(len(places) for places in strips) * cell + 0.04
        for line, words in enumerate(head.ends):
            canvas.text(words, left + width / 2, y + (0.7 + 1.1 * line) * text_height(style.small))


def _draw_head(canvas: Canvas, column: TurnColumn, head: ColumnHead, at: tuple[float, float]) -> None:
    """Write which rows these are, where they begin, what they are in words, with a box for each row."""
    style = canvas.style
    middle, y = at
    for lines, size, bold in (
        (head.title, style.strong, True),
        (head.lines, style.small, False),
        (head.told, style.small, True),
    ):
        for line in lines:
            y += 1.1 * text_height(size)
            canvas.text(line, middle, y - 0.55 * text_height(size), size=size, bold=bold)
    number = 1.4 * text_width("00", style.small, font=style.font)
    high = 1.25 * max(BOX, text_height(style.small))
    for first in range(0, len(column.rows), head.boxes):
        shown = column.rows[first : first + head.boxes]
        left = middle - (BOX + number) * len(shown) / 2
        for row in shown:
            canvas.rectangle((left, y + (high - BOX) / 2), (left + BOX, y + (high + BOX) / 2), pen=style.outline)
            canvas.text(str(row), left + BOX + 0.03, y + high / 2, hold="left")
            left += BOX + number
        y += high


class _Strip:
    """One run of cells on a canvas, from the first that is met downwards."""

    def __init__(self, canvas: Canvas, column: TurnColumn, ends: tuple[float, float], top: float, cell: float) -> None:
        self.canvas, self.column = canvas, column
        self.style = canvas.style
        self.left, self.right = ends
        self.top, self.cell = top, cell
        self.gap, self.fold = min(0.13 * cell, _GAP), min(0.2 * cell, _FOLD)

    def draw(self, places: Sequence[int], *, at_needle: float, tucks: bool) -> None:
        """Draw the cells of some places among the tucks met, with their numbers.

        The strip that begins ``at_needle`` has so much room at its left [in], others none.
        """
        canvas, bottom = self.canvas, self.top + self.cell * len(places)
        rim = _RIM
        canvas.rectangle((self.left - rim, self.top - rim), (self.right + rim, bottom + rim), pen=self.style.outline)
        if at_needle:
            draw_needle(canvas, ((self.left + self.right) / 2, self.top - rim), NEEDLE - 0.06)
            self._counted(self.top - rim - 0.6 * text_height(self.style.small), at_needle, tucks=tucks)
        elif text_width("go on", self.style.small, font=self.style.font) <= self.right - self.left:
            canvas.text("go on", (self.left + self.right) / 2, self.top - rim - 0.7 * text_height(self.style.small))
        for number, place in enumerate(places):
            y = self.top + self.cell * number
            self._cell(self.column.letters[place], y)
            self._numbers(place, y, tucks=tucks)

    def _counted(self, y: float, beside: float, *, tucks: bool) -> None:
        """Write what the numbers count, where there is room beside the needle."""
        style = self.style
        if self.column.alike or not tucks:
            return
        room = (self.right - self.left - NEEDLE) / 2
        met, tuck = (text_width(words, style.small, font=style.font) for words in ("met", "tuck"))
        if met <= beside + room:
            self.canvas.text("met", self.left + min(room, met / 2 - 0.05), y, hold="right")
        begins = self.right - min(room, tuck / 2 - 0.05)
        if tuck <= min(2 * beside + room, self.canvas.width - begins - 0.02):
            self.canvas.text("tuck", begins, y, hold="left")

    def _cell(self, letter: str, y: float) -> None:
        """Draw one flap with its stitching, its fold and its letter."""
        canvas, style, gap = self.canvas, self.style, self.gap
        toward = letter == "T"
        low, high = (y + gap, y + self.cell - 0.01) if toward else (y, y + self.cell - gap)
        colour = style.paper if letter == "A" else style.ink
        if letter == "U":
            low, high = y, y + self.cell
            levels = ((low + high) / 2 - 0.02, (low + high) / 2 + 0.02)
            canvas.lines([((self.left, level), (self.right, level)) for level in levels], style.outline)
        else:
            fold = (high - self.fold, high) if toward else (low, low + self.fold)
            canvas.rectangle((self.left, low), (self.right, high), fill=style.ink if letter == "A" else style.paper)
            canvas.rectangle((self.left, fold[0]), (self.right, fold[1]), fill=style.ink)
            canvas.lines([((x, low), (x, high)) for x in (self.left, self.right)], style.outline)
            seam = y + gap / 2 if toward else y + self.cell - gap / 2
            canvas.line(((self.left, seam), (self.right, seam)), style.stitch)
        wide = self.right - self.left >= _WIDE and letter != "U"
        # The letter of T stands above its fold.
        clear = high - low - (self.fold if toward else 0.0)
        middle = low + clear / 2
        size = self._letter_size(high - low, clear)
        x = self.left + (self.right - self.left) * (0.36 if wide else 0.5)
        backing = style.paper if letter == "U" else ""
        canvas.text(letter, x, middle, size=size, bold=True, colour=colour, backing=backing)
        if wide:
            self._arrow(middle, colour, down=toward)

    def _letter_size(self, high: float, clear: float) -> float:
        """Return how large the letter of a flap is [pt]; its height and the part clear of the fold are inches."""
        style = self.style
        capital = min(_LETTER * high, 0.84 * clear) * POINTS
        wanted = min(capital / (2 * capital_middle(style.font)), 0.94 * self.cell * POINTS)
        return min(max(_MOST_LETTER, 1.3 * style.small), max(style.small, wanted))

    def _arrow(self, middle: float, colour: str, *, down: bool) -> None:
        reach = 0.28 * (self.cell - self.gap) * (1 if down else -1)
        x = self.left + (self.right - self.left) * 0.68
        size = min(0.09, 0.35 * self.cell)
        self.canvas.rectangle((x - 0.009, middle - reach), (x + 0.009, middle), fill=colour)
        self.canvas.heads([((x, middle - reach), (x, middle + reach))], size, colour)

    def _numbers(self, place: int, y: float, *, tucks: bool) -> None:
        """Write how many tucks have been met, and which this one is, at the first, at every fifth and at the last."""
        canvas, count, last = self.canvas, place + 1, len(self.column.letters)
        if self.column.alike:
            canvas.text(str(last), self.left - 0.05, y + self.cell / 2, hold="right", bold=True)
            return
        if count % EVERY == 0 and count != last:
            canvas.line(((self.left - 0.2, y + self.cell), (self.left - 0.03, y + self.cell)), self.style.outline)
        if count in (1, last) or count % EVERY == 0:
            middle = y + self.cell / 2
            canvas.text(str(count), self.left - 0.05, middle, hold="right", bold=count % EVERY == 0)
            if tucks:
                canvas.text(str(self.column.tucks[place]), self.right + 0.05, middle, hold="left")

"""Turns in lines of letters, where cells below each other would be higher than a page: columns come in, lines go out.

Each line is read from its left end, in the order in which the tucks are met; letters stand in fives.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from generator.drawing.canvas import Canvas
from generator.drawing.labels import text_height, text_lines, text_width
from generator.drawing.sizes import MILLIMETRES
from generator.drawing.style import Style
from generator.drawing.turn_picture_plan import BOX, EVERY, TurnColumn, numbers_width, rows_named

READ_SO = "Read each line from the left, as you sew."
_GAP, _BELOW, _APART = 0.8 / MILLIMETRES, 0.5 / MILLIMETRES, 2.4 / MILLIMETRES


@dataclass(frozen=True, slots=True)
class LinedColumn:
    """The words above the lines of a column, how many letters a line holds, and how high all is [in]."""

    column: TurnColumn
    title: tuple[str, ...]
    each: int
    height: float

    @property
    def lines(self) -> tuple[range, ...]:
        """The places of each line among the tucks met; one letter tells a row that is all alike."""
        if self.column.alike:
            return (range(1),)
        count = len(self.column.letters)
        return tuple(range(first, min(first + self.each, count)) for first in range(0, count, self.each))


def lined(columns: Sequence[TurnColumn], style: Style, width: float) -> tuple[LinedColumn, ...]:
    """Return the columns as they stand below each other at a width [in]."""
    beside = numbers_width(max(len(column.letters) for column in columns), style) + 0.08
    fives = int((width - 2 * beside + _GAP) / (EVERY * _letter(style) + _GAP))
    return tuple(_lined(column, style, width, EVERY * max(1, fives)) for column in columns)


def height_of_lines(columns: Sequence[LinedColumn], style: Style, width: float) -> float:
    """Return how high the columns are with what is said above them [in]."""
    return 1.15 * text_height(style.small) * len(_said(style, width)) + sum(column.height for column in columns)


def _said(style: Style, width: float) -> tuple[str, ...]:
    return text_lines(READ_SO, style.small, width, font=style.font)


def _letter(style: Style) -> float:
    """Return how wide the box of a letter is; it is a fifth higher."""
    return 1.06 * text_height(style.text)


def _line(style: Style) -> float:
    return 1.2 * _letter(style) + 0.02


def _lined(column: TurnColumn, style: Style, width: float, each: int) -> LinedColumn:
    words = f"{rows_named(column.rows)}, start at the {column.start}, tuck {column.tucks[0]}"
    title = text_lines(words, style.text, width, bold=True, font=style.font)
    boxes = 0.0 if _boxes_beside(title, column, style, width) else _box_lines(column, style, width) * _box(style)
    count = 1 if column.alike else math.ceil(len(column.letters) / each)
    words_high = 1.15 * len(title) * text_height(style.text) + _BELOW
    return LinedColumn(column, title, each, words_high + boxes + count * _line(style) + _APART)


def _box(style: Style) -> float:
    """Return how high a line of tick boxes is."""
    return 1.2 * max(BOX, text_height(style.small))


def _box_width(style: Style) -> float:
    """Return how wide a tick box is with the number of its row."""
    return BOX + 1.4 * text_width("00", style.small, font=style.font)


def _boxes(style: Style, width: float) -> int:
    """Return how many tick boxes stand on a line."""
    return max(1, int(width / _box_width(style)))


def _box_lines(column: TurnColumn, style: Style, width: float) -> int:
    return math.ceil(len(column.rows) / _boxes(style, width))


def _boxes_beside(title: Sequence[str], column: TurnColumn, style: Style, width: float) -> bool:
    """Return whether the boxes have room at the right of the title."""
    taken = text_width(title[-1], style.text, bold=True, font=style.font) + 0.15
    return len(title) == 1 and taken + len(column.rows) * _box_width(style) <= width


def draw_lines(canvas: Canvas, columns: Sequence[LinedColumn]) -> float:
    """Draw all columns from the top of a canvas, and return where they end [in]."""
    style, y = canvas.style, 0.0
    for words in _said(style, canvas.width):
        canvas.text(words, 0, y + 0.6 * text_height(style.small), hold="left")
        y += 1.15 * text_height(style.small)
    for column in columns:
        _draw_column(canvas, column, y)
        y += column.height
    return y


def _draw_column(canvas: Canvas, lined_up: LinedColumn, y: float) -> None:
    style, column = canvas.style, lined_up.column
    if _boxes_beside(lined_up.title, column, style, canvas.width):
        _draw_boxes(canvas, column.rows, canvas.width - len(column.rows) * _box_width(style), y)
    for words in lined_up.title:
        canvas.text(words, 0, y + 0.6 * text_height(style.text), hold="left", size=style.text, bold=True)
        y += 1.15 * text_height(style.text)
    y += _BELOW
    if not _boxes_beside(lined_up.title, column, style, canvas.width):
        each = _boxes(style, canvas.width)
        for first in range(0, len(column.rows), each):
            _draw_boxes(canvas, column.rows[first : first + each], 0.0, y)
            y += _box(style)
    for places in lined_up.lines:
        _draw_line(canvas, column, places, y)
        y += _line(style)


def _draw_boxes(canvas: Canvas, rows: Sequence[int], left: float, y: float) -> None:
    """Draw a tick box for each of some rows, side by side."""
    middle = y + _box(canvas.style) / 2
    for row in rows:
        canvas.rectangle((left, middle - BOX / 2), (left + BOX, middle + BOX / 2), pen=canvas.style.outline)
        canvas.text(str(row), left + BOX + 0.03, middle, hold="left")
        left += _box_width(canvas.style)


def _draw_line(canvas: Canvas, column: TurnColumn, places: range, y: float) -> None:
    """Draw the letters of some tucks, with the numbers of the first and the last among those that are met."""
    style, wide = canvas.style, _letter(canvas.style)
    high = 1.2 * wide
    beside = numbers_width(len(column.letters), style) + 0.08
    x, middle = beside, y + high / 2
    first, last = (1, len(column.letters)) if column.alike else (places[0] + 1, places[-1] + 1)
    canvas.text(str(first), beside - 0.05, middle, hold="right")
    for number, place in enumerate(places):
        x += _GAP if number and number % EVERY == 0 else 0.0
        letter = column.letters[place]
        away = letter == "A"
        if letter != "U":
            fill = style.ink if away else style.paper
            canvas.rectangle((x + 0.01, y), (x + wide - 0.01, y + high), fill=fill, pen=style.outline)
        canvas.text(letter, x + wide / 2, middle, size=style.text, bold=True, colour=style.paper if away else style.ink)
        x += wide
    if last != first:
        canvas.text(f"to {last}" if column.alike else str(last), x + 0.05, middle, hold="left")

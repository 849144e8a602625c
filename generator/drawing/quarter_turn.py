"""The quarter turn: where rows begin comes in, how the panel goes from the table to the machine goes out.

A row begun at the right end is sewn with the top edge at the sewer's left hand, one begun at the left end with the top
edge at her right hand: the end where it begins lies at the needle.
"""

from __future__ import annotations

from collections.abc import Sequence

from generator.calculation.worked import Hand, RowSet
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.labels import text_height, text_lines, text_width
from generator.drawing.needle import draw_needle
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style
from generator.drawing.turn_picture_plan import rows_named

_LEAST, _BEST, _MOST = (side / MILLIMETRES for side in (14.0, 22.0, 30.0))
_MOST_ROWS = 6
_PLACES = ("on the table", "at the machine")
_OTHER: dict[Hand, Hand] = {"left": "right", "right": "left"}


def starts(rows: RowSet) -> dict[Hand, tuple[int, ...]]:
    """Return the numbers of the rows that begin at each end, the end of row 1 first."""
    found: dict[Hand, list[int]] = {}
    for row in rows.rows:
        found.setdefault(row.start, []).append(row.number)
    return {start: tuple(numbers) for start, numbers in found.items()}


def heights_of_quarter_turn(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the picture can be: a line of panels for each end at which rows begin."""
    rows = worksheet.panels[name].rows
    assert rows is not None
    fixed = [_head(words, style) + _beside(style) for words in _told(rows, style, width / MILLIMETRES)]
    room = _widest(style, width / MILLIMETRES)
    return Heights.of_inches(*(sum(fixed) + min(side, room) * len(fixed) for side in (_LEAST, _BEST, _MOST)))


def _widest(style: Style, width: float) -> float:
    """Return how wide a panel can be: two, the arrow between them and room for turned words beside the second."""
    return (width - _arrow_room(style) - 3 * text_height(style.small)) / 2


def _arrow_room(style: Style) -> float:
    return text_width("a quarter", style.small, font=style.font) + 0.2


def _told(rows: RowSet, style: Style, width: float) -> list[tuple[str, ...]]:
    """Return the words above each line of panels."""
    return [
        text_lines(
            f"{rows_named(numbers)}: top edge at your {_OTHER[start]} hand",
            style.small,
            width * 0.92,
            font=style.font,
        )
        for start, numbers in starts(rows).items()
    ]


def _head(words: Sequence[str], style: Style) -> float:
    return 1.1 * text_height(style.small) * len(words) + 0.04


def _beside(style: Style) -> float:
    """Return the room for words above and below a panel."""
    return 2.9 * text_height(style.small) + 0.1


def draw_quarter_turn(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return how the panel is turned a quarter to be sewn, once for each end at which rows begin."""
    rows = worksheet.panels[name].rows
    assert rows is not None
    told = "; ".join(
        f"a row that starts at the {start} is sewn with the top edge at your {_OTHER[start]} hand"
        for start in starts(rows)
    )
    alt = f"The panel on the table and, turned a quarter, at the machine: {told}."
    return sketch_quarter_turn(rows, style, size, f"quarter turn {name}").picture(alt, "")


def sketch_quarter_turn(rows: RowSet, style: Style, size: DrawnSize, key: str) -> Canvas:
    """Return the canvas of the quarter turns."""
    canvas = canvas_of(size, style, key)
    told = _told(rows, style, canvas.width)
    heads = [_head(words, style) for words in told]
    side = (canvas.height - sum(heads) - len(told) * _beside(style)) / len(told)
    room = min(side, _widest(style, canvas.width))
    line, top = text_height(style.small), 0.0
    for words, (start, numbers), head in zip(told, starts(rows).items(), heads, strict=True):
        for place, part in enumerate(words):
            canvas.text(part, 0, top + (0.55 + 1.1 * place) * line, hold="left", bold=True)
        corner = top + head + 1.45 * line
        shown = _shown(len(rows.rows), numbers[0])
        # The words below are wider than a small panel.
        table, machine = (
            max(room, text_width(words, style.small, bold=True, font=style.font)) / 2 for words in _PLACES
        )
        left, right = 0.03 + table, canvas.width - max(1.5 * line, machine - room / 2 + 0.03) - room / 2
        _on_the_table(canvas, (left, corner), room, shown, start)
        _turn_arrow(canvas, (left + room / 2 + 0.1, right - room / 2 - 1.5 * line), corner + room / 2)
        _at_the_machine(canvas, (right, corner), room, shown, start)
        top += head + _beside(style) + side
    return canvas


def _shown(count: int, row: int) -> tuple[int, int]:
    """Return how many rows are drawn and which of them is the one that begins, counted from 0."""
    drawn = min(count, _MOST_ROWS)
    return drawn, min(drawn - 1, (row - 1) * drawn // count)


def _turn_arrow(canvas: Canvas, ends: tuple[float, float], y: float) -> None:
    line, middle = text_height(canvas.style.small), sum(ends) / 2
    canvas.arrow((ends[0], y), (ends[1], y), canvas.style.cut, size=0.11)
    canvas.text("a quarter", middle, y - 0.8 * line)
    canvas.text("turn", middle, y + 0.8 * line)


def _on_the_table(canvas: Canvas, at: tuple[float, float], side: float, shown: tuple[int, int], start: Hand) -> None:
    """Draw the panel as it lies on the table, its top edge away from the sewer."""
    style, line = canvas.style, text_height(canvas.style.small)
    left, top = at[0] - side / 2, at[1]
    _panel(canvas, (left, top), side)
    canvas.rectangle((left, top), (left + side, top + 0.05), fill=style.ink)
    canvas.text("top edge", at[0], top - 0.7 * line)
    begins, ends = (left + 0.06, left + side - 0.1) if start == "left" else (left + side - 0.06, left + 0.1)
    for row in range(shown[0]):
        y = top + side * (row + 1) / (shown[0] + 1)
        canvas.line(((begins, y), (ends, y)), style.cut if row == shown[1] else style.stitch)
        if row == shown[1]:
            canvas.dots([(begins, y)], 0.05)
            middle, reach = at[0], side * (0.2 if ends > begins else -0.2)
            below = y + side / (shown[0] + 1) / 2
            canvas.arrow((middle - reach, below), (middle + reach, below), style.outline)
    canvas.text(_PLACES[0], at[0], top + side + 0.06 + 0.7 * line, bold=True)


def _at_the_machine(canvas: Canvas, at: tuple[float, float], side: float, shown: tuple[int, int], start: Hand) -> None:
    """Draw the panel as it is sewn: turned so that the end where the row begins lies at the needle."""
    style, line = canvas.style, text_height(canvas.style.small)
    left, top = at[0] - side / 2, at[1]
    _panel(canvas, (left, top), side)
    to_right = 1 if start == "right" else -1
    edge = left if start == "right" else left + side
    canvas.rectangle((edge, top), (edge + 0.05 * to_right, top + side), fill=style.ink)
    if text_width("top edge", style.small, font=style.font) <= side:
        canvas.text("top edge", edge - to_right * 0.8 * line, top + side / 2, turned=True)
    for row in range(shown[0]):
        x = edge + to_right * side * (row + 1) / (shown[0] + 1)
        canvas.line(((x, top + 0.06), (x, top + side - 0.1)), style.cut if row == shown[1] else style.stitch)
        if row == shown[1]:
            canvas.dots([(x, top + 0.06)], 0.05)
            beside = x + to_right * side / (shown[0] + 1) / 2
            canvas.arrow((beside, top + side * 0.3), (beside, top + side * 0.7), style.outline)
            draw_needle(canvas, (x, top - 0.03), 1.3 * line)
            words = text_width("needle", style.small, font=style.font)
            away = 0.55 * line + 0.04 + words / 2
            canvas.text("needle", x + (away if x + away + words / 2 < canvas.width else -away), top - 0.8 * line)
    canvas.text(_PLACES[1], at[0], top + side + 0.06 + 0.7 * line, bold=True)


def _panel(canvas: Canvas, corner: tuple[float, float], side: float) -> None:
    left, top = corner
    canvas.rectangle(corner, (left + side, top + side), fill=canvas.style.paper, pen=canvas.style.outline)

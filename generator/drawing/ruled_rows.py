"""Where rows are ruled: a panel with standing tucks comes in, its rows with their distances and boxes go out.

Rows stand where they are down the panel; each begins at its dot.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from generator.calculation.worked import Panel, Row
from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.row_bulk import wide_margins
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.labels import spread, text_height, text_width
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Pen, Style
from generator.lengths import Edition, write_length

_BOX = 3.4 / MILLIMETRES
_BEST, _MOST = 60 / MILLIMETRES, 95 / MILLIMETRES
_DOWN = "down from the top"
_MOST_TUCKS = 40
_HIGHEST, _EVERY = 190 / MILLIMETRES, 5


def heights_of_ruled_rows(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the picture of the rows can be: at least a line for each row."""
    rows = worksheet.panels[name].rows
    assert rows is not None
    line = text_height(style.strong)
    words = text_width(_DOWN, style.small, font=style.font) + 0.3
    least = max(1.2 * line * (len(told_rows(rows.rows, style)) + 1), words) + _above(style)
    return Heights.of_inches(least, _BEST, _MOST)


def told_rows(rows: Sequence[Row], style: Style) -> tuple[Row, ...]:
    """Return the rows that are told in the picture: all, or the first, each fifth and the last where a page is too low.

    All distances stand in a table then.
    """
    if 1.2 * text_height(style.strong) * (len(rows) + 1) <= _HIGHEST:
        return tuple(rows)
    return tuple(row for row in rows if row.number in (1, len(rows)) or row.number % _EVERY == 0)


def _above(style: Style) -> float:
    return 1.4 * text_height(style.small)


def draw_ruled_rows(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return where the rows of a panel are ruled."""
    panel, piece, edition = worksheet.panels[name], worksheet.pieces[name], worksheet.edition
    assert panel.rows is not None
    canvas = canvas_of(size, style, f"ruled rows {name}")
    sketch_ruled_rows(canvas, panel, float(piece.cut_along), edition)
    told = "; ".join(
        f"row {row.number} at {write_length(row.ruled, edition, unit=True)}, begins at the {row.start}"
        for row in panel.rows.rows
    )
    return canvas.picture(f"Rows ruled across the standing tucks, measured from the top cut edge: {told}.", "")


def sketch_ruled_rows(canvas: Canvas, panel: Panel, along: float, edition: Edition) -> None:
    """Draw the panel with its rows; ``along`` is how long it is cut along its tucks [in]."""
    assert panel.rows is not None
    style, line = canvas.style, text_height(canvas.style.small)
    rows = told_rows(panel.rows.rows, style)
    # Where only some rows are told, all distances stand in a table beside the picture, and so do their boxes.
    some = len(rows) < len(panel.rows.rows)
    told = ["" if some else write_length(row.ruled, edition) for row in rows]
    names = max(text_width(f"row {row.number}", style.small, font=style.font) for row in rows)
    measures = max(text_width(words, style.strong, bold=True, font=style.font) for words in told)
    left = names + 0.12 + measures + 0.25
    right = canvas.width - 2.2 * line - _BOX - 0.15
    top, bottom = _above(style), canvas.height - 0.03
    canvas.text("top cut edge", (left + right) / 2, 0.6 * line)
    _draw_panel(canvas, panel, (left, right), (top, bottom))
    ends = _row_ends(panel, (left, right), edition)
    levels = [top + float(row.ruled) / along * (bottom - top) for row in rows]
    others = [top + float(row.ruled) / along * (bottom - top) for row in panel.rows.rows if row not in rows]
    canvas.lines([((ends[0], y), (ends[1], y)) for y in others], ruled_line(style))
    high = 1.15 * text_height(style.strong)
    places = spread(levels, [high] * len(rows), top - high / 2, bottom) or levels
    for row, y, place, words in zip(rows, levels, places, told, strict=True):
        canvas.line(((ends[0], y), (ends[1], y)), ruled_line(style))
        canvas.dots([(ends[0] if row.start == "left" else ends[1], y)], 0.05)
        canvas.text(f"row {row.number}", 0, place, hold="left")
        if words:
            canvas.text(words, left - 0.25, place, hold="right", bold=True, size=style.strong)
        canvas.line(((left - 0.2, place), (left - 0.07, y), (left - 0.02, y)), style.measure)
        if not some:
            canvas.line(((right + 0.02, y), (right + 0.07, y), (right + 0.13, place)), style.measure)
            box = ((right + 0.15, place - _BOX / 2), (right + 0.15 + _BOX, place + _BOX / 2))
            canvas.rectangle(*box, pen=style.outline)
    _draw_direction(canvas, canvas.width - 0.8 * line, (top, bottom))


def ruled_line(style: Style) -> Pen:
    """Return how a row is drawn over tucks: so heavy that a copy of a copy keeps it among their lines."""
    return Pen(style.ink, style.heavy, style.tack_dashes)


def _draw_panel(canvas: Canvas, panel: Panel, ends: tuple[float, float], levels: tuple[float, float]) -> None:
    """Draw the panel with its tucks standing: a pair of lines for each, or fewer where they would run together."""
    style = canvas.style
    (left, right), (top, bottom) = ends, levels
    canvas.rectangle((left, top), (right, bottom), fill=style.paper, pen=style.outline)
    places = _feet(panel, ends)
    step = -(-len(places) // _MOST_TUCKS)
    close = min([after - before for before, after in pairwise(places)], default=1.0) * step
    half = min(0.018, close / 4)
    lines = [x + side for x in places[::step] for side in (-half, half)]
    canvas.lines([((x, top), (x, bottom)) for x in lines], style.measure)
    canvas.rectangle((left, top), (right, top + 0.05), fill=style.ink)


def _feet(panel: Panel, ends: tuple[float, float]) -> list[float]:
    """Return where the tucks stand on paper, on a panel whose tucks are sewn."""
    tucks = panel.across
    scale = (ends[1] - ends[0]) / float(tucks.sewn)
    return [ends[0] + float(foot) * scale for foot in tucks.feet]


def _row_ends(panel: Panel, ends: tuple[float, float], edition: Edition) -> tuple[float, float]:
    """Return where rows begin and end on paper: at the edges, or a little beyond the tucks beside a wide margin."""
    tucks, feet, beyond = panel.across, _feet(panel, ends), 0.06
    flaps = [float(depth) * (ends[1] - ends[0]) / float(tucks.sewn) for depth in (tucks.depths[0], tucks.depths[-1])]
    wide = wide_margins(tucks, edition)
    return (
        max(ends[0], feet[0] - flaps[0] - beyond) if wide[0] else ends[0],
        min(ends[1], feet[-1] + flaps[1] + beyond) if wide[1] else ends[1],
    )


def _draw_direction(canvas: Canvas, x: float, levels: tuple[float, float]) -> None:
    style = canvas.style
    canvas.arrow((x, levels[0]), (x, levels[1]), style.outline, size=0.1)
    canvas.text(_DOWN, x, sum(levels) / 2, turned=True, backing=style.paper)

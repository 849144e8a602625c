"""How a panel is trimmed to length: its length comes in, the panel with both ends to be cut off goes out."""

from __future__ import annotations

from generator.calculation.worked import Panel
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.labels import Point, text_height, text_width
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style
from generator.lengths import say_length

_LEAST, _BEST, _MOST = (high / MILLIMETRES for high in (24.0, 30.0, 42.0))
_FOLDS = 8


def heights_of_trimming(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the picture of the trimming can be."""
    least = max(_LEAST, 8.5 * text_height(style.small))
    return Heights.of_inches(least, _BEST, _MOST)


def draw_trimming(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return where a panel is trimmed after its rows are sewn."""
    panel, piece, edition = worksheet.panels[name], worksheet.pieces[name], worksheet.edition
    canvas = canvas_of(size, style, f"trimming {name}")
    length = say_length(piece.measures["sewn along"], edition)
    sketch_trimming(canvas, panel, length)
    alt = f"The turned panel: as much is cut off at its top as at its bottom, so that {length} are left."
    if _held(panel):
        alt += f" Inside the new cut the tucks are basted flat at the {' and the '.join(_held(panel))}."
    return canvas.picture(alt, "")


def _held(panel: Panel) -> list[str]:
    """Return the edges that hold the tucks."""
    rows = panel.rows
    return [side for side, turns in (("top", rows.top), ("bottom", rows.bottom)) if turns] if rows else []


def sketch_trimming(canvas: Canvas, panel: Panel, length: str) -> None:
    """Draw the panel with what is cut off hatched, and basting where the edges hold the tucks."""
    style, line = canvas.style, text_height(canvas.style.small)
    words = text_width("baste the tucks", style.small, font=style.font)
    left = text_width(length, style.strong, bold=True, font=style.font) + 0.3
    right = canvas.width - words - 0.2
    top, bottom = 0.03, canvas.height - 0.03
    strip = max(0.16, (bottom - top) * 0.12)
    cuts = (top + strip, bottom - strip)
    canvas.rectangle((left, top), (right, bottom), fill=style.paper, pen=style.outline)
    for start, end in ((top, cuts[0]), (cuts[1], bottom)):
        canvas.hatched(((left, start), (right, start), (right, end), (left, end)), style.outline)
    canvas.lines(_folds((left, right), cuts), style.outline)
    held = _held(panel)
    for side, cut, away in (("top", cuts[0], 1), ("bottom", cuts[1], -1)):
        canvas.line(((left - 0.12, cut), (right + 0.12, cut)), style.cut)
        canvas.text("cut", right + 0.17, cut - away * 0.1 * line, hold="left", bold=True)
        if side in held:
            y = cut + away * 0.09
            canvas.line(((left, y), (right, y)), style.stitch)
            canvas.text("baste the tucks", right + 0.17, cut + away * 1.1 * line, hold="left")
    x = left - 0.22
    canvas.arrow((x, cuts[0]), (x, cuts[1]), style.outline, both=True)
    canvas.text(length, left - 0.28, sum(cuts) / 2, hold="right", bold=True, size=style.strong)


def _folds(ends: tuple[float, float], levels: tuple[float, float]) -> list[list[Point]]:
    """Return folds that swing from side to side down the panel."""
    (left, right), (top, bottom) = ends, levels
    step, rows = (right - left) / (_FOLDS + 1), 4
    high = (bottom - top) / rows
    return [
        [
            (left + step * number + (step * 0.3 if (row + number) % 2 else -step * 0.3), top + high * row)
            for row in range(rows + 1)
        ]
        for number in range(1, _FOLDS + 1)
    ]

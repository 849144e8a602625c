"""How rows are ruled over standing tucks: once with all of them laid to the left, once more laid to the right."""

from __future__ import annotations

from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.labels import text_height, text_lines
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style
from generator.drawing.turning_picture import capsule

_LEAST, _BEST, _MOST = (high / MILLIMETRES for high in (13.0, 20.0, 30.0))
_STAGES = ((-1, "1. All to the left: draw."), (1, "2. All to the right: again."))
_BETWEEN = 0.2
_TUCKS = 5


def _lines(style: Style, width: float) -> list[tuple[str, ...]]:
    each = (width - _BETWEEN) / 2 - 0.04
    return [text_lines(words, style.small, each, bold=True, font=style.font) for _, words in _STAGES]


def heights_of_ruling(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the picture of the ruling can be."""
    words = 1.1 * text_height(style.small) * max(map(len, _lines(style, width / MILLIMETRES))) + 0.08
    return Heights.of_inches(_LEAST + words, _BEST + words, _MOST + words)


def draw_ruling(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return how a row is drawn over the tucks of a panel, both ways."""
    canvas = canvas_of(size, style, f"ruling {name}")
    sketch_ruling(canvas)
    alt = (
        "A row is drawn along a ruler twice: with all tucks laid to the left, then with all laid to the right, so that "
        "the line is seen whichever way a tuck lies."
    )
    return canvas.picture(alt, "")


def sketch_ruling(canvas: Canvas) -> None:
    """Draw both stages side by side."""
    style, line = canvas.style, text_height(canvas.style.small)
    told = _lines(style, canvas.width)
    head = 1.1 * line * max(map(len, told)) + 0.06
    wide = (canvas.width - _BETWEEN) / 2
    for place, ((way, _), words) in enumerate(zip(_STAGES, told, strict=True)):
        left = place * (wide + _BETWEEN) + 0.01
        for number, part in enumerate(words):
            canvas.text(part, left, (0.55 + 1.1 * number) * line, hold="left", bold=True)
        _stage(canvas, (left, head), (left + wide - 0.02, canvas.height - 0.02), way)


def _stage(canvas: Canvas, corner: tuple[float, float], opposite: tuple[float, float], way: int) -> None:
    """Draw tucks laid one way, a line over them, the ruler below the line and the pen on it."""
    style, line = canvas.style, text_height(canvas.style.small)
    (left, top), (right, bottom) = corner, opposite
    canvas.rectangle(corner, opposite, fill=style.paper, pen=style.outline)
    step = (right - left) / (_TUCKS + 1)
    row = top + (bottom - top) * 0.38
    for number in range(1, _TUCKS + 1):
        foot = left + step * number
        fold = foot + way * step * 0.6
        canvas.rectangle((min(foot, fold), top), (max(foot, fold), bottom), fill=style.paper)
        canvas.line(((foot, top), (foot, bottom)), style.stitch)
        canvas.line(((fold, top), (fold, bottom)), style.cut)
    ends = (left + 0.05, right - 0.32)
    canvas.line(((ends[0], row), (ends[1], row)), style.tack)
    ruler = (row + 0.03, row + 0.03 + max(0.16, 1.3 * line))
    canvas.rectangle((left + 0.03, ruler[0]), (right - 0.03, ruler[1]), fill=style.paper, pen=style.outline)
    canvas.text("ruler", (left + right) / 2, sum(ruler) / 2, backing=style.paper)
    tip, slant = (ends[1], row), min(0.24, row - top - 0.06)
    neck = (tip[0] + slant * 0.4, tip[1] - slant * 0.4)
    canvas.area([tip, (neck[0] - 0.035, neck[1] - 0.02), (neck[0] + 0.02, neck[1] + 0.035)], style.ink)
    canvas.area(capsule(neck, (tip[0] + slant, tip[1] - slant), 0.045), style.paper, style.outline)

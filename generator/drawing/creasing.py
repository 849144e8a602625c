"""How folds are creased: three folds of a panel, one stitched, one creased, one marked, go out as a picture."""

from __future__ import annotations

from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.labels import Point, text_height, text_width
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style

_LEAST, _BEST, _MOST = (high / MILLIMETRES for high in (18.0, 24.0, 34.0))
_TO_MARK = "top mark to bottom mark"
_WORDS = ("stitched", "creased", "marked")


def heights_of_creasing(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the picture of folds that stand like pages can be."""
    words = 2.7 * text_height(style.small)
    return Heights.of_inches(_LEAST + words, _BEST + words, _MOST + words)


def draw_creasing(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return three folds of a panel from above, seen aslant: one stitched, one creased, one only marked."""
    canvas = canvas_of(size, style, f"creasing {name}")
    sketch_creasing(canvas)
    alt = (
        "Three folds of the panel seen aslant: a stitched tuck stands like a page, a creased fold stands too, and a "
        "dashed line runs from the mark at the top edge to the same mark at the bottom edge, where the next is folded."
    )
    return canvas.picture(alt, "")


def sketch_creasing(canvas: Canvas) -> None:
    """Draw cloth that lies aslant, its near edge at the bottom of the picture."""
    style, line = canvas.style, text_height(canvas.style.small)
    base, far = canvas.height - 1.45 * line, 1.4 * line + 0.55 * (canvas.height - 2.7 * line)
    lean = min(0.75, canvas.width * 0.2)
    left, right = 0.05, canvas.width - lean - 0.05
    feet = [left + (right - left) * share for share in (0.2, 0.5, 0.8)]
    tall = far - 1.4 * line
    canvas.area([(left, base), (right, base), (right + lean, far), (left + lean, far)], style.paper, style.outline)
    marked = ((feet[2], base), (feet[2] + lean, far))
    canvas.line(marked, style.fold)
    _ends(canvas, marked)
    for foot, stitched in ((feet[1], False), (feet[0], True)):
        _page(canvas, ((foot, base), (foot + lean, far)), tall, stitched=stitched)
    for foot, words in zip(feet, _WORDS, strict=True):
        canvas.text(words, foot, base + 0.75 * line)
    x = min(feet[2] + lean * 0.4, canvas.width - text_width(_TO_MARK, style.small, font=style.font) / 2)
    canvas.text(_TO_MARK, x, 0.65 * line)
    canvas.line(
        ((feet[2] + lean * 0.4, 1.25 * line), (feet[2] + lean * 0.55, base + (far - base) * 0.55 - 0.04)), style.measure
    )


def _ends(canvas: Canvas, fold: tuple[Point, Point]) -> None:
    """Draw the marks at both ends of a fold."""
    canvas.dots(fold, 0.035)


def _page(canvas: Canvas, foot: tuple[Point, Point], tall: float, *, stitched: bool) -> None:
    """Draw a fold that stands on its foot, and its stitching."""
    style = canvas.style
    (near_x, near_y), (far_x, far_y) = foot
    gap = 0.05
    for side in (gap, 0.0):
        ply = [
            (near_x + side, near_y),
            (far_x + side, far_y),
            (far_x + gap / 2, far_y - tall),
            (near_x + gap / 2, near_y - tall),
        ]
        canvas.area(ply, style.paper, style.outline)
    canvas.line(((near_x + gap / 2, near_y - tall), (far_x + gap / 2, far_y - tall)), style.cut)
    if stitched:
        up = 0.07
        canvas.line(((near_x, near_y - up), (far_x, far_y - up)), style.stitch)

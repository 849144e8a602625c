"""A caught hem in three stages, seen from its end: an allowance and a depth come in, a picture goes out."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.worked import Panel
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.cloth_edge import LIFT, draw_ply, hem_path
from generator.drawing.labels import text_height
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style
from generator.lengths import Edition, say_length

_LEAST, _BEST, _MOST = (high / MILLIMETRES for high in (9.0, 13.0, 20.0))
_TITLES = ("1. Crease", "2. Fold in", "3. Stitch")


def caught_side(panel: Panel) -> str:
    """Return which edge is a caught hem, the left one where both are; empty where none is."""
    tucks = panel.across
    if not tucks.count:
        return ""
    return next((side for side, end in (("left", tucks.left), ("right", tucks.right)) if end.kind == "caught hem"), "")


def heights_of_hem_section(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the picture of a caught hem can be."""
    words = 6.1 * text_height(style.small)
    return Heights.of_inches(_LEAST + words, _BEST + words, _MOST + words)


def draw_hem_section(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return the three stages of a panel's caught hem."""
    panel, edition = worksheet.panels[name], worksheet.edition
    tucks, side = panel.across, caught_side(panel)
    allowance = tucks.left_allowance if side == "left" else tucks.right_allowance
    depth = tucks.depths[0 if side == "left" else -1]
    margin = tucks.left_margin if side == "left" else tucks.right_margin
    canvas = canvas_of(size, style, f"hem section {name}")
    sketch_hem(canvas, (allowance, depth, margin), edition)
    crease, deep, sewn = (say_length(length, edition) for length in (2 * allowance, allowance, depth))
    alt = (
        f"A caught hem in three stages, seen from the bottom end: the first crease {crease} from the raw edge; the raw "
        f"edge folded to it, {deep} deep; the crease folded again and stitched {sewn} from the fold, through the hem."
    )
    return canvas.picture(alt, "The stitching of the tuck holds the hem: three plies lie in that tuck.")


def sketch_hem(canvas: Canvas, lengths: tuple[Fraction, Fraction, Fraction], edition: Edition) -> None:
    """Draw a caught hem at the left edge; ``lengths`` are its allowance, the tuck's depth and the margin [in]."""
    allowance, depth, margin = lengths
    style, line = canvas.style, text_height(canvas.style.small)
    cell = canvas.width / 3
    for place, title in enumerate(_TITLES):
        canvas.text(title, cell * place + 0.02, 0.6 * line, hold="left", bold=True)
    base, y = canvas.height - 2.6 * line, canvas.height - 1.6 * line
    room = base - 2.7 * line
    scale = min(1.0, (cell - 0.45) / float(2 * allowance), (room - 2 * LIFT) / float(depth))
    # A wide hem leaves its tuck too small to see, so that is drawn taller than it is.
    hem, tall = float(allowance) * scale, max(float(depth) * scale, min(0.4, room - 2 * LIFT))
    lefts = [cell * place + 0.08 for place in range(3)]
    draw_ply(canvas, ((lefts[0], base), (lefts[0] + 2 * hem + 0.2, base)))
    _mark(canvas, lefts[0] + 2 * hem, base, "crease")
    canvas.text("raw", lefts[0] - 0.06, base - 0.9 * line, hold="left")
    _measure(canvas, (lefts[0], lefts[0] + 2 * hem), y, say_length(2 * allowance, edition))
    start = lefts[1] + hem
    draw_ply(canvas, ((start, base), (lefts[1], base), (lefts[1], base - LIFT), (start + 0.3, base - LIFT)))
    _mark(canvas, start, base - LIFT / 2, "crease")
    _measure(canvas, (lefts[1], start), y, say_length(allowance, edition))
    foot = float(margin) * scale
    reach = min(0.6, canvas.width - lefts[2] - foot - 2 * LIFT - 0.03)
    draw_ply(canvas, hem_path(lefts[2], base, foot, tall, reach))
    canvas.line(
        ((lefts[2] + foot - 0.12, base - LIFT - 0.03), (lefts[2] + foot + 0.24, base - LIFT - 0.03)), style.stitch
    )
    _measure(canvas, (lefts[2], lefts[2] + foot), y, say_length(margin, edition))
    x = lefts[2] + foot + 2 * LIFT + 0.1
    canvas.arrow((x, base - LIFT), (x, base - LIFT - tall), style.measure, both=True, size=min(0.07, tall / 3))
    canvas.text(
        say_length(depth, edition), x + 0.05, base - LIFT - tall / 2 - 0.3 * line, hold="left", backing=style.paper
    )


def _mark(canvas: Canvas, x: float, y: float, words: str) -> None:
    line = text_height(canvas.style.small)
    canvas.line(((x, y - 0.12), (x, y + 0.1)), canvas.style.outline)
    canvas.text(words, x, y - 0.14 - 0.6 * line)


def _measure(canvas: Canvas, ends: tuple[float, float], y: float, words: str) -> None:
    """Draw a measure with its words below, inside the paper."""
    line = text_height(canvas.style.small)
    canvas.arrow((ends[0], y), (ends[1], y), canvas.style.measure, both=True, size=min(0.07, (ends[1] - ends[0]) / 3))
    canvas.text(words, ends[0], y + 0.85 * line, hold="left", bold=True)

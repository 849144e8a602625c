"""A strip on the bias pieced from a rectangle: the rectangle and its lines, and the join of two strips."""

from __future__ import annotations

from generator.drawing.assemblies.marks import note, span
from generator.drawing.assemblies.stage_canvas import Stage, StageCanvas, Subject
from generator.lengths import say_length

_LONG, _SHORT = 1.9, 0.75
_APART = 0.3
_LEFT, _TOP = 0.35, 0.35


def pieced_bias_stages(subject: Subject) -> tuple[Stage, ...]:
    """Return the rectangle with the fold of its short side and the lines beside it, and two strips at their join."""
    pieced = subject.piece.pieced
    long = say_length(pieced.long, subject.worksheet.edition) if pieced is not None else ""
    return (
        Stage("Fold, rule and cut", 2.6, 1.75, lambda canvas: _rectangle(canvas, long, subject.cut_wide)),
        Stage("Join on the thread", 1.9, 1.75, _joined),
    )


def _rectangle(canvas: StageCanvas, long: str, wide: str) -> None:
    """Draw lines at the slant of the fold, the fold itself from the corner."""
    style = canvas.style
    right, bottom = _LEFT + _LONG, _TOP + _SHORT
    canvas.rectangle((_LEFT, _TOP), (right, bottom), fill=style.cloth, pen=style.outline)
    for place in range(-1, 7):
        foot = _LEFT + _SHORT + place * _APART
        start = (max(_LEFT, foot - _SHORT), bottom - min(_SHORT, foot - _LEFT))
        end = (min(foot, right), bottom - max(0.0, foot - right))
        canvas.line((start, end), style.outline if place == 0 else style.fold)
    note(canvas, "fold", (_LEFT + 0.15, _TOP - 0.2), (_LEFT + 0.12, _TOP + 0.12))
    note(canvas, f"{wide} apart", (_LEFT + 1.0, _TOP - 0.2), (_LEFT + 0.95, _TOP + 0.35))
    span(canvas, long, (_LEFT, bottom + 0.25), (right, bottom + 0.25))


def _joined(canvas: StageCanvas) -> None:
    """Draw two strips right sides together at a corner: their edges cross where the seam begins and ends."""
    style, wide, reach, seam = canvas.style, 0.4, 0.75, 0.1
    left, level = 0.75, 0.55
    for side, fill in ((-1, style.shade), (1, style.cloth)):
        # The points stand out by the seam; the strip below goes to the right, the one above to the left.
        corner, far = left + side * seam, -side * reach
        ends = [(corner, level), (corner + wide, level)]
        canvas.area([*ends, (ends[1][0] + far, level + reach), (ends[0][0] + far, level + reach)], fill, style.outline)
    canvas.line(((left - 0.05, level + seam), (left + wide + 0.05, level + seam)), style.join)
    note(canvas, "seam from corner to corner", (0.15, 0.2), (left + wide / 2, level + seam))

"""A strip gathered onto an edge: marked in quarters, then drawn up."""

from __future__ import annotations

from generator.drawing.assemblies.marks import note, pleated_lines, span, wave
from generator.drawing.assemblies.stage_canvas import Stage, StageCanvas, Subject


def frill_stages(subject: Subject) -> tuple[Stage, ...]:
    """Return the strip flat with its threads and quarter marks, and drawn up on the edge."""
    return (
        Stage("Mark the quarters", 2.8, 1.05, lambda canvas: _flat(canvas, subject.said("length"))),
        Stage("Draw up to the edge", 2.8, 1.1, lambda canvas: _drawn_up(canvas, subject.said("edge"))),
    )


def _quarters(left: float, right: float) -> list[float]:
    return [left + (right - left) * place / 4 for place in range(1, 4)]


def _flat(canvas: StageCanvas, length: str) -> None:
    style, left, right, top, bottom = canvas.style, 0.15, 2.65, 0.36, 0.74
    canvas.rectangle((left, top), (right, bottom), fill=style.cloth, pen=style.outline)
    canvas.lines([((left - 0.1, y), (right + 0.1, y)) for y in (top + 0.08, top + 0.16)], style.stitch)
    quarters = _quarters(left, right)
    canvas.lines([((x, top - 0.08), (x, top + 0.08)) for x in quarters], style.cut)
    note(canvas, "quarter", (quarters[0], top - 0.28), (quarters[0], top - 0.08), hold="centre")
    note(canvas, "two threads", (2.2, top - 0.28), (2.5, top + 0.08), hold="right")
    if length:
        span(canvas, length, (left, bottom + 0.2), (right, bottom + 0.2))


def _drawn_up(canvas: StageCanvas, edge: str) -> None:
    style, left, right, top, seam, bottom = canvas.style, 0.15, 1.85, 0.04, 0.36, 0.74
    canvas.rectangle((left, top), (right, seam), fill=style.cloth, pen=style.outline)
    lower = wave(left - 0.1, right + 0.1, bottom, waves=11, high=0.05)
    canvas.area([(left, seam), (right, seam), *reversed(lower)], style.cloth)
    canvas.lines([lower, [(left, seam), lower[0]], [(right, seam), lower[-1]]], style.outline)
    canvas.lines(pleated_lines(((left, seam), (right, seam)), bottom - seam, number=32), style.measure)
    canvas.line(((left, seam), (right, seam)), style.stitch)
    canvas.lines([((x, seam - 0.1), (x, seam + 0.1)) for x in _quarters(left, right)], style.cut)
    canvas.text("edge", (left + right) / 2, (top + seam) / 2 - 0.05, backing=style.cloth)
    note(canvas, "quarters meet", (right + 0.15, seam - 0.3), (_quarters(left, right)[2], seam - 0.1))
    if edge:
        span(canvas, edge, (left, bottom + 0.24), (right, bottom + 0.24))

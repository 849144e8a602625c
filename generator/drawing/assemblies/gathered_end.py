"""The end of a roll, gathered to its middle: seen from the side before it is drawn up, and from the end after."""

from __future__ import annotations

import math

from generator.drawing.assemblies.marks import button, note, span
from generator.drawing.assemblies.stage_canvas import Stage, StageCanvas, Subject

FOLDS = 28
SHARES = (0.95, 0.7, 0.85, 0.6)


def gathered_end_stages(subject: Subject) -> tuple[Stage, ...]:
    """Return the strip sewn to the tube, and the strip drawn up."""
    return (
        Stage("Sewn to the tube", 2.9, 1.7, lambda canvas: _sewn(canvas, subject.said("radius"))),
        Stage("Drawn up", 2.5, 1.8, _drawn_up),
    )


def _sewn(canvas: StageCanvas, radius: str) -> None:
    style, top, bottom = canvas.style, 0.05, 1.15
    canvas.rectangle((0.1, top), (1.4, bottom), fill=style.cloth, pen=style.outline)
    canvas.rectangle((1.4, top), (2.1, bottom), fill=style.cloth, pen=style.outline)
    canvas.line(((1.4, top), (1.4, bottom)), style.stitch)
    canvas.lines([((x, top), (x, bottom)) for x in (1.98, 2.03)], style.stitch)
    canvas.line(((2.03, bottom), (2.1, bottom + 0.15), (2.24, bottom + 0.2)), style.outline)
    canvas.text("tube", 0.75, 0.6, backing=style.cloth)
    canvas.text("end", 1.69, 0.6, backing=style.cloth)
    note(canvas, "thread", (2.35, 0.75), (2.03, 0.75))
    note(canvas, "seam", (0.9, 1.35), (1.4, bottom), hold="right")
    if radius:
        span(canvas, radius, (1.4, 1.55), (2.1, 1.55))


def _drawn_up(canvas: StageCanvas) -> None:
    style, centre, radius = canvas.style, (0.85, 0.78), 0.72
    canvas.circle(centre, radius, fill=style.cloth, pen=style.outline)
    folds = []
    for place in range(FOLDS):
        angle = math.tau * (place + 0.5) / FOLDS
        reach = (0.16, radius * SHARES[place % 4])
        folds.append([(centre[0] + far * math.cos(angle), centre[1] + far * math.sin(angle)) for far in reach])
    canvas.lines(folds, style.measure)
    button(canvas, centre, 0.14)
    note(canvas, "covered button", (1.55, 0.1), (centre[0] + 0.08, centre[1] - 0.08))
    note(canvas, "gathers, even all round", (1.05, 1.65), (centre[0] + 0.3, centre[1] + 0.5))

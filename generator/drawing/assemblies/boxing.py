"""A band between two faces of a cushion: the box seen from a corner."""

from __future__ import annotations

from generator.drawing.assemblies.marks import note, span
from generator.drawing.assemblies.stage_canvas import Stage, StageCanvas, Subject
from generator.drawing.labels import Point

DEPTH = 0.5
LEFT, FRONT, RIGHT, BACK = (0.4, 0.45), (1.25, 0.75), (2.1, 0.35), (1.25, 0.05)


def boxing_stages(subject: Subject) -> tuple[Stage, ...]:
    """Return the upper face and the boxing round it, with a seam at a back corner and the clip at another."""
    return (Stage("", 2.8, 1.85, lambda canvas: _box(canvas, subject.said("depth"))),)


def _box(canvas: StageCanvas, depth: str) -> None:
    style = canvas.style
    canvas.area([LEFT, FRONT, RIGHT, BACK], style.cloth, style.outline)
    for start, end in ((LEFT, FRONT), (FRONT, RIGHT)):
        canvas.area([start, end, _below(end), _below(start)], style.cloth, style.outline)
    for lift in (0.05, DEPTH - 0.05):
        canvas.line([_below(point, lift) for point in (LEFT, FRONT, RIGHT)], style.stitch)
    seam = _between(LEFT, FRONT, 0.06)
    canvas.line((seam, _below(seam)), style.join)
    canvas.text("face", 1.25, 0.4, backing=style.cloth)
    note(canvas, "boxing", (2.25, 0.85), _below(_between(FRONT, RIGHT, 0.75), 0.25))
    note(canvas, "a seam, at the back", (0.05, 1.5), _below(seam, 0.35))
    note(canvas, "clip the boxing at the corner", (0.8, 1.75), _below(FRONT, 0.05))
    if depth:
        span(canvas, depth, (0.2, LEFT[1]), (0.2, LEFT[1] + DEPTH))


def _below(point: Point, drop: float = DEPTH) -> Point:
    return point[0], point[1] + drop


def _between(start: Point, end: Point, share: float) -> Point:
    return start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share

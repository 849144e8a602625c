"""Binding round a corner: three stages, seen from above with the right side of the work up."""

from __future__ import annotations

from generator.drawing.assemblies.marks import note
from generator.drawing.assemblies.stage_canvas import Stage, StageCanvas, Subject
from generator.drawing.labels import Point

WIDTH = 0.17  # how wide the binding shows, on paper [in]
STRIP = 3 * WIDTH  # one of its folds is open while it is sewn on
CORNER: Point = (1.2, 0.5)
LEFT, FOOT = 0.1, 1.1
TURN: Point = (CORNER[0] - WIDTH, CORNER[1] + WIDTH)


def binding_corner_stages(subject: Subject) -> tuple[Stage, ...]:
    """Return the stitching stopped before the corner, the strip folded up, and folded down along the next edge."""
    width = subject.said("width")
    return (
        Stage("Stop before the corner", 1.85, 1.37, lambda canvas: _stopped(canvas, width)),
        Stage("Fold it straight up", 1.6, 1.37, _folded_up),
        Stage("Fold it down and go on", 1.85, 1.37, _folded_down),
    )


def _work(canvas: StageCanvas) -> None:
    """Draw the corner of the work, cut away at the left and below."""
    style, (right, top) = canvas.style, CORNER
    canvas.rectangle((LEFT, top), (right, FOOT), fill=style.cloth)
    canvas.lines([((LEFT, top), (right, top)), ((right, top), (right, FOOT))], style.cut)


def _along_the_top(canvas: StageCanvas, right: float) -> None:
    """Draw the strip, wrong side up, on the upper edge; its free edge is a fold."""
    style, top = canvas.style, CORNER[1]
    canvas.rectangle((LEFT, top), (right, top + STRIP), fill=style.shade)
    canvas.lines([((LEFT, top), (right, top)), ((right, top), (right, top + STRIP))], style.outline)
    canvas.line(((LEFT, top + STRIP), (right, top + STRIP)), style.fold)


def _stitched(canvas: StageCanvas) -> None:
    canvas.line(((LEFT, TURN[1]), TURN), canvas.style.stitch)


def _stopped(canvas: StageCanvas, width: str) -> None:
    _work(canvas)
    _along_the_top(canvas, 1.75)
    _stitched(canvas)
    canvas.lines([((x, CORNER[1] - 0.05), (x, CORNER[1] - 0.27)) for x in (TURN[0], CORNER[0])], canvas.style.measure)
    canvas.arrow((TURN[0] - 0.25, CORNER[1] - 0.17), (TURN[0], CORNER[1] - 0.17), canvas.style.measure)
    canvas.arrow((CORNER[0] + 0.25, CORNER[1] - 0.17), (CORNER[0], CORNER[1] - 0.17), canvas.style.measure)
    if width:
        canvas.text(width, (TURN[0] + CORNER[0]) / 2, CORNER[1] - 0.38)
    note(canvas, "binding, wrong side up", (LEFT, FOOT + 0.18), (0.4, CORNER[1] + 0.38))


def _folded_up(canvas: StageCanvas) -> None:
    style, (right, top), high = canvas.style, CORNER, 0.05
    _work(canvas)
    inner = right - STRIP
    canvas.area([(LEFT, top), (right, top), (inner, top + STRIP), (LEFT, top + STRIP)], style.shade)
    canvas.area([(right, high), (right, top), (inner, top + STRIP), (inner, high)], style.cloth)
    canvas.lines(
        [((LEFT, top), (inner, top)), ((right, high), (right, top)), ((inner, high), (right, high))], style.outline
    )
    canvas.lines([((LEFT, top + STRIP), (inner, top + STRIP)), ((inner, high), (inner, top + STRIP))], style.fold)
    canvas.line(((right, top), (inner, top + STRIP)), style.outline)
    canvas.line(((LEFT, TURN[1]), (inner, TURN[1])), style.stitch)
    note(canvas, "slanting fold", (0.3, FOOT + 0.18), (right - 0.3, top + 0.3))


def _folded_down(canvas: StageCanvas) -> None:
    style, (right, top) = canvas.style, CORNER
    _work(canvas)
    _along_the_top(canvas, right)
    inner = right - STRIP
    canvas.area([(inner, top), (right, top), (right, FOOT), (inner, FOOT)], style.shade)
    canvas.line(((inner, top), (right, top)), style.cut)
    canvas.lines([((right, top), (right, FOOT))], style.outline)
    canvas.line(((inner, top), (inner, FOOT)), style.fold)
    canvas.line(((LEFT, TURN[1]), (inner, TURN[1])), style.stitch)
    canvas.line(((TURN[0], top), (TURN[0], FOOT)), style.stitch)
    note(canvas, "fold, level with the edge", (0.1, 0.15), (right - 0.12, top))

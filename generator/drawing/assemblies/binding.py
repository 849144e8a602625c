"""Binding an edge: three stages, each seen from the end of the edge."""

from __future__ import annotations

from generator.drawing.assemblies.marks import note
from generator.drawing.assemblies.stage_canvas import Stage, StageCanvas, Subject
from generator.drawing.cloth_edge import draw_ply

BASE = 0.5
EDGE = 1.2


def binding_stages(subject: Subject) -> tuple[Stage, ...]:
    """Return the binding sewn on in its first fold, turned over the edge, and sewn down."""
    return (
        Stage("Sew in the first fold", 1.75, 1.15, _sewn),
        Stage("Turn over the edge", 1.65, 1.15, _turned),
        Stage("Sew down", 1.6, 1.15, lambda canvas: _down(canvas, subject.said("width"))),
    )


def _sewn(canvas: StageCanvas) -> None:
    """Draw the binding flat on the work, raw edges level."""
    edge = 1.6
    draw_ply(canvas, ((0.1, BASE), (edge, BASE)))
    draw_ply(canvas, ((edge, BASE - 0.09), (0.4, BASE - 0.09)))
    canvas.line(((edge - 0.35, BASE - 0.25), (edge - 0.35, BASE + 0.15)), canvas.style.stitch)
    note(canvas, "binding, wrong side up", (0.1, 0.12), (0.75, BASE - 0.1))
    note(canvas, "right side of the work", (0.1, BASE + 0.45), (0.25, BASE - 0.02))


def _turned(canvas: StageCanvas) -> None:
    """Draw the binding folded up at its seam and over the edge."""
    draw_ply(canvas, ((0.1, BASE), (EDGE, BASE)))
    over = (
        (EDGE, BASE - 0.09),
        (EDGE - 0.35, BASE - 0.09),
        (EDGE - 0.35, BASE - 0.18),
        (EDGE + 0.12, BASE - 0.18),
        (EDGE + 0.3, BASE + 0.2),
        (EDGE + 0.15, BASE + 0.4),
    )
    draw_ply(canvas, over)
    canvas.line(((EDGE - 0.28, BASE - 0.13), (EDGE - 0.28, BASE + 0.08)), canvas.style.stitch)


def _down(canvas: StageCanvas, width: str) -> None:
    """Draw the binding round the edge, its other edge turned in and sewn down."""
    draw_ply(canvas, ((0.1, BASE), (EDGE, BASE)))
    round_the_edge = (
        (EDGE, BASE - 0.09),
        (EDGE - 0.35, BASE - 0.09),
        (EDGE - 0.35, BASE - 0.18),
        (EDGE + 0.12, BASE - 0.18),
        (EDGE + 0.12, BASE + 0.18),
        (EDGE - 0.38, BASE + 0.18),
        (EDGE - 0.38, BASE + 0.09),
        (EDGE - 0.05, BASE + 0.09),
    )
    draw_ply(canvas, round_the_edge)
    canvas.line(((EDGE - 0.28, BASE - 0.13), (EDGE - 0.28, BASE + 0.28)), canvas.style.stitch)
    if width:
        canvas.arrow((EDGE - 0.38, BASE + 0.42), (EDGE + 0.15, BASE + 0.42), canvas.style.measure, both=True)
        canvas.text(f"{width} shows", EDGE - 0.1, BASE + 0.56)

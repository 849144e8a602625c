"""The foot and the needle of the machine: a place on a canvas comes in, both are drawn above it."""

from __future__ import annotations

from generator.drawing.canvas import Canvas


def draw_needle(canvas: Canvas, at: tuple[float, float], high: float) -> None:
    """Draw the foot and the needle above a place, as they are seen from where the sewer sits."""
    x, bottom = at
    wide = high * 0.42
    style = canvas.style
    shank = ((x - wide * 0.5, bottom - high), (x + wide * 0.5, bottom - high * 0.6))
    canvas.rectangle(*shank, fill=style.paper, pen=style.outline)
    toes = [
        (x - wide, bottom - high * 0.6),
        (x + wide, bottom - high * 0.6),
        (x + wide, bottom),
        (x + wide * 0.35, bottom),
    ]
    toes += [(x + wide * 0.35, bottom - high * 0.3), (x - wide * 0.35, bottom - high * 0.3)]
    toes += [(x - wide * 0.35, bottom), (x - wide, bottom)]
    canvas.area(toes, style.paper, style.outline)
    canvas.dots([(x, bottom - high * 0.12)], high * 0.08)

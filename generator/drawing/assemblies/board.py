"""A panel stretched over a padded board: seen from its end, and from the back with the order of fastening."""

from __future__ import annotations

from generator.drawing.assemblies.marks import note, wave
from generator.drawing.assemblies.stage_canvas import Stage, StageCanvas, Subject
from generator.drawing.cloth_edge import draw_ply


def board_stages(subject: Subject) -> tuple[Stage, ...]:
    """Return board, wadding and panel from the end, and the back: middles first, then outwards, corners last."""
    return (
        Stage("From the end", 2.3, 1.5, _end),
        Stage("From the back: fasten in this order", 2.9, 1.5, _back),
    )


def _end(canvas: StageCanvas) -> None:
    style, left, right, top, bottom = canvas.style, 0.3, 1.95, 0.65, 0.95
    puffed = wave(left - 0.02, right + 0.02, top - 0.13, waves=7, high=0.02)
    canvas.area([(left - 0.02, top), *puffed, (right + 0.02, top)], style.paper, style.measure)
    canvas.rectangle((left, top), (right, bottom), fill=style.shade, pen=style.outline)
    canvas.text("board", (left + right) / 2, (top + bottom) / 2, backing=style.shade)
    over = (
        (left + 0.4, bottom + 0.06),
        (left - 0.08, bottom + 0.06),
        (left - 0.08, top - 0.22),
        (right + 0.08, top - 0.22),
        (right + 0.08, bottom + 0.06),
        (right - 0.4, bottom + 0.06),
    )
    draw_ply(canvas, over, radius=0.12)
    canvas.lines([((x, bottom + 0.12), (x, bottom - 0.08)) for x in (left + 0.25, right - 0.25)], style.cut)
    note(canvas, "panel", (0.35, 0.12), (0.6, top - 0.22))
    note(canvas, "wadding", (1.15, 0.12), (1.4, top - 0.06))
    note(canvas, "fastened at the back", (0.75, bottom + 0.4), (left + 0.25, bottom + 0.1))


def _back(canvas: StageCanvas) -> None:
    """Draw the back with numbered fastenings: the four middles, then outwards in turn."""
    style, left, right, top, bottom = canvas.style, 0.1, 2.7, 0.05, 1.35
    canvas.rectangle((left, top), (right, bottom), fill=style.cloth, pen=style.outline)
    canvas.rectangle((left + 0.35, top + 0.3), (right - 0.35, bottom - 0.3), fill=style.shade, pen=style.finish)
    middle, centre = (left + right) / 2, (top + bottom) / 2
    upper, lower, near, far = top + 0.15, bottom - 0.15, left + 0.17, right - 0.17
    for number, place in enumerate(((middle, upper), (middle, lower), (near, centre), (far, centre)), 1):
        canvas.text(str(number), *place, bold=True)
    for side in (-1, 1):
        for y in (upper, lower):
            canvas.arrow((middle + side * 0.2, y), (middle + side * 0.85, y), style.outline)
        for x in (near, far):
            canvas.arrow((x, centre + side * 0.14), (x, centre + side * 0.4), style.outline)
    canvas.text("corners last", middle, centre, backing=style.shade)

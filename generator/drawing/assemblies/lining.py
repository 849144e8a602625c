"""Two layers sewn right sides together and turned: a lining with an opening in a side, or a bag open at its top."""

from __future__ import annotations

from generator.drawing.assemblies.marks import note
from generator.drawing.assemblies.stage_canvas import Stage, StageCanvas, Subject
from generator.drawing.labels import Point

LEFT, RIGHT, TOP, BOTTOM = 0.1, 2.1, 0.05, 1.15
SEAM = 0.09
OPENING = (0.8, 1.4)
CORNER = 0.42


def lining_stages(subject: Subject) -> tuple[Stage, ...]:
    """Return the lining on the work, sewn round but for an opening, and its corner trimmed."""
    return (
        Stage("Sew round, leave an opening", 2.4, 1.65, _sewn_round),
        Stage("Trim the corners and turn", 2.6, 1.65, lambda canvas: _turning(canvas, "through the opening")),
    )


def bag_stages(subject: Subject) -> tuple[Stage, ...]:
    """Return two pieces sewn together at sides and bottom, and their corner trimmed."""
    return (
        Stage("Sew sides and bottom", 2.4, 1.65, _sewn_below),
        Stage("Trim the corners and turn", 2.6, 1.65, lambda canvas: _turning(canvas, "through the open top")),
    )


def _sewn_round(canvas: StageCanvas) -> None:
    _layers(canvas, "lining, wrong side up")
    near, upper, far, lower = LEFT + SEAM, TOP + SEAM, RIGHT - SEAM, BOTTOM - SEAM
    seam = [(OPENING[0], lower), (near, lower), (near, upper), (far, upper), (far, lower), (OPENING[1], lower)]
    canvas.line(seam, canvas.style.stitch)
    canvas.lines([((x, BOTTOM - 0.15), (x, BOTTOM)) for x in OPENING], canvas.style.outline)
    note(canvas, "opening", (sum(OPENING) / 2, BOTTOM + 0.35), (sum(OPENING) / 2, BOTTOM - 0.05), hold="centre")


def _sewn_below(canvas: StageCanvas) -> None:
    _layers(canvas, "back, wrong side up")
    near, far, lower = LEFT + SEAM, RIGHT - SEAM, BOTTOM - SEAM
    seam: list[Point] = [(near, TOP), (near, lower), (far, lower), (far, TOP)]
    canvas.line(seam, canvas.style.stitch)
    note(canvas, "turn square at the corner", (1.1, BOTTOM + 0.35), (far, lower), hold="centre")


def _layers(canvas: StageCanvas, upper: str) -> None:
    style, middle = canvas.style, (LEFT + RIGHT) / 2
    canvas.rectangle((LEFT + 0.05, TOP + 0.05), (RIGHT + 0.05, BOTTOM + 0.05), fill=style.cloth, pen=style.outline)
    canvas.rectangle((LEFT, TOP), (RIGHT, BOTTOM), fill=style.shade, pen=style.outline)
    canvas.text(upper, middle, 0.5, backing=style.shade)
    canvas.text("right sides together", middle, 0.7, backing=style.shade)


def _turning(canvas: StageCanvas, words: str) -> None:
    """Draw the trimmed corner large, and tell where the work is turned."""
    style, left, top, right, bottom = canvas.style, 0.1, 0.05, 1.4, 1.1
    shape = [(left, top), (right, top), (right, bottom - CORNER), (right - CORNER, bottom), (left, bottom)]
    canvas.area(shape, style.shade)
    canvas.lines([((right, top), (right, bottom - CORNER)), ((right - CORNER, bottom), (left, bottom))], style.cut)
    canvas.line(((right, bottom - CORNER), (right - CORNER, bottom)), style.fold)
    canvas.line([(right - 0.28, top), (right - 0.28, bottom - 0.28), (left, bottom - 0.28)], style.stitch)
    note(canvas, "cut off the corner,", (right + 0.12, 0.6), (right - CORNER / 2, bottom - CORNER / 2))
    canvas.text("not the stitches", right + 0.12, 0.75, hold="left")
    canvas.text(f"then turn {words}", left, bottom + 0.35, hold="left")

"""One long strip on the bias: the square and its cut, the halves joined and ruled, the tube moved along by a strip."""

from __future__ import annotations

from generator.drawing.assemblies.marks import note, span
from generator.drawing.assemblies.stage_canvas import Stage, StageCanvas, Subject
from generator.drawing.labels import Point

SIDE = 0.85  # the square on paper [in]
STRIPS = 4
LEFT = 0.35


def bias_stages(subject: Subject) -> tuple[Stage, ...]:
    """Return the square cut corner to corner, its halves joined at A, and the ends joined at B, moved by one strip."""
    square, wide = subject.said("square"), subject.cut_wide
    return (
        Stage("Cut corner to corner", 1.75, 2.05, lambda canvas: _square(canvas, square)),
        Stage("Join A to A and rule", 1.8, 2.05, lambda canvas: _ruled(canvas, wide)),
        Stage("Join B to B, moved by one", 2.0, 2.05, _tube),
    )


def _square(canvas: StageCanvas, side: str) -> None:
    style, top = canvas.style, 0.4
    right, bottom = LEFT + SIDE, top + SIDE
    canvas.rectangle((LEFT, top), (right, bottom), fill=style.cloth, pen=style.outline)
    canvas.line(((LEFT, bottom), (right, top)), style.cut)
    middle, level = LEFT + SIDE / 2, top + SIDE / 2
    for words, x, y in (
        ("A", middle, top + 0.13),
        ("A", middle, bottom - 0.13),
        ("B", LEFT + 0.12, level),
        ("B", right - 0.12, level),
    ):
        canvas.text(words, x, y, bold=True)
    if side:
        span(canvas, side, (LEFT, bottom + 0.25), (right, bottom + 0.25))


def _corners() -> tuple[Point, Point, Point, Point]:
    """The joined halves: two slanting edges on the bias, two upright ends B."""
    top, right = 0.1, LEFT + SIDE
    return (LEFT, top + SIDE), (right, top), (right, top + SIDE), (LEFT, top + 2 * SIDE)


def _places(start: Point, end: Point) -> list[Point]:
    """Where the ruled lines meet an upright end, with its corners."""
    return [(start[0], start[1] + (end[1] - start[1]) * place / STRIPS) for place in range(STRIPS + 1)]


def _ruled(canvas: StageCanvas, wide: str) -> None:
    style = canvas.style
    near, far, low_far, low_near = _corners()
    canvas.area([near, far, low_far, low_near], style.cloth, style.outline)
    canvas.line((near, low_far), style.join)
    left, right = _places(near, low_near), _places(far, low_far)
    canvas.lines(zip(left[1:-1], right[1:-1], strict=True), style.fold)
    canvas.text("B", near[0] - 0.13, (near[1] + low_near[1]) / 2, bold=True)
    canvas.text("B", far[0] + 0.13, (far[1] + low_far[1]) / 2, bold=True)
    note(canvas, "seam A", (LEFT - 0.25, 0.3), (LEFT + 0.2, near[1]))
    if wide:
        note(canvas, f"lines {wide} apart", (LEFT + 0.35, 1.92), (LEFT + 0.45, left[3][1] - 0.45))


def _tube(canvas: StageCanvas) -> None:
    """Draw the two ends B side by side, one of them lower by a strip, with the lines running over the seam."""
    style, middle, top, reach = canvas.style, 0.95, 0.5, 0.5
    step = SIDE / STRIPS
    left = [(middle, top + place * step) for place in range(STRIPS + 1)]
    right = [(middle, top + (place + 1) * step) for place in range(STRIPS + 1)]
    over = [(x - reach, y + reach) for x, y in left]
    beyond = [(x + reach, y - reach) for x, y in right]
    canvas.area([left[0], left[-1], over[-1], over[0]], style.cloth)
    canvas.area([right[0], right[-1], beyond[-1], beyond[0]], style.cloth)
    for ends, far in ((left, over), (right, beyond)):
        for place, pair in enumerate(zip(ends, far, strict=True)):
            canvas.line(pair, style.outline if place in (0, STRIPS) else style.fold)
    canvas.lines([(left[0], right[0]), (left[-1], right[-1])], style.outline)
    canvas.line((right[0], left[-1]), style.join)
    for x in (middle - 0.14, middle + 0.14):
        canvas.text("B", x, top + step * 2.5, bold=True, backing=style.cloth)
    note(canvas, "begin to cut here", (0.1, 0.15), (middle - 0.03, top + step * 0.6))

"""The outline of a part of a piece: the part and its plan come in, its lines are drawn and its edges are placed.

Every outline is drawn here and nowhere else; a new one is one case in each of these functions.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from typing import assert_never

from generator.calculation.worked_piece import EdgeWork, Part, Round, Shaped, Straight
from generator.drawing.canvas import Canvas
from generator.drawing.labels import Point
from generator.drawing.piece_plan import PiecePlan
from generator.lengths import Edition, say_length

Run = tuple[float, float]
_SIDES = Straight.sides


def told_at(part: Part) -> Mapping[str, EdgeWork]:
    """Return at which side of the drawing the finish of each edge is written."""
    match part.outline:
        case Straight():
            return {side: part.edges[side] for side in part.outline.sides if side in part.edges}
        case Round():
            return dict(zip(("top",), part.edges.values(), strict=False))
        case Shaped():
            # What lies at no side of the drawing is told inside it, beside its line.
            places = {"rim": "bottom" if "top" in part.edges else "top"} if "rim" in part.edges else {}
            return {places.get(name, name): part.edges[name] for name in part.edges if name in _SIDES or name in places}
        case _:
            assert_never(part.outline)


def size_of(part: Part, edition: Edition) -> str:
    """Return the cut size of a part in words."""
    across, along = (say_length(length, edition) for length in (part.cut_across, part.cut_along))
    return f"a circle {across} through" if part.outline.one_measure else f"{across} across by {along} along"


def finished_size_of(part: Part, edition: Edition) -> str:
    """Return the finished size of a part in words."""
    across, along = (say_length(length, edition) for length in (part.finished_across, part.finished_along))
    return f"{across} through" if part.outline.one_measure else f"{across} by {along}"


def draw_outline(canvas: Canvas, part: Part, plan: PiecePlan, corner: Point) -> None:
    """Draw where a part is cut, its finished edges and the folds of its hems; ``corner`` is its upper left one."""
    match part.outline:
        case Straight():
            _rectangle(canvas, plan, corner)
        case Round():
            _circle(canvas, plan, corner)
        case Shaped():
            _shape(canvas, part.outline, plan, corner)
        case _:
            assert_never(part.outline)


def _shape(canvas: Canvas, outline: Shaped, plan: PiecePlan, corner: Point) -> None:
    scale = float(plan.across.scale)
    left, top = (float(min(spot[way] for spot in outline.cut)) for way in (0, 1))

    def placed(spots: Sequence[tuple[Fraction, Fraction]]) -> list[Point]:
        return [(corner[0] + (float(x) - left) * scale, corner[1] + (float(y) - top) * scale) for x, y in spots]

    canvas.area(placed(outline.cut), canvas.style.cloth, canvas.style.cut)
    for line in outline.lines:
        canvas.line(placed(line.spots), canvas.style.finish)


def _circle(canvas: Canvas, plan: PiecePlan, corner: Point) -> None:
    radius = float(plan.across.paper) / 2
    centre = (corner[0] + radius, corner[1] + radius)
    canvas.circle(centre, radius, fill=canvas.style.cloth, pen=canvas.style.cut)
    for inset in plan.finished.values():
        canvas.circle(centre, radius - float(inset * plan.across.scale), pen=canvas.style.finish)


def _rectangle(canvas: Canvas, plan: PiecePlan, corner: Point) -> None:
    (x, y), (wide, high) = corner, plan.paper
    canvas.rectangle((x, y), (x + wide, y + high), fill=canvas.style.cloth, pen=canvas.style.cut)
    for lines, pen in ((plan.finished, canvas.style.finish), (plan.turns, canvas.style.fold)):
        for side, inset in lines.items():
            canvas.line(_along(side, float(inset * plan.across.scale), corner, (wide, high)), pen)
    if plan.across.broken:
        _break(canvas, (x + wide / 2, y), (0, high))
    if plan.along.broken:
        _break(canvas, (x, y + high / 2), (wide, 0))


def _along(side: str, inset: float, corner: Point, size: Run) -> tuple[Point, Point]:
    """Return the line along one side, ``inset`` from the cut edge."""
    (x, y), (wide, high) = corner, size
    if side in ("left", "right"):
        at = x + inset if side == "left" else x + wide - inset
        return (at, y), (at, y + high)
    at = y + inset if side == "top" else y + high - inset
    return (x, at), (x + wide, at)


def _break(canvas: Canvas, start: Point, run: Run) -> None:
    """Tear the piece apart along ``run`` from ``start``: its middle is left out."""
    steps, half = 6, 0.07
    torn = []
    for side in (-1, 1):
        line = []
        for step in range(steps + 1):
            wave = side * half + (0.03 if step % 2 else -0.03)
            beside = (wave, 0.0) if run[1] else (0.0, wave)
            past = -0.03 if step == 0 else 0.03 if step == steps else 0.0
            line.append(
                (
                    start[0] + run[0] * step / steps + beside[0] + (past if run[0] else 0),
                    start[1] + run[1] * step / steps + beside[1] + (past if run[1] else 0),
                )
            )
        torn.append(line)
    canvas.area([*torn[0], *reversed(torn[1])], canvas.style.paper)
    canvas.lines(torn, canvas.style.measure)

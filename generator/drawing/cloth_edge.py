"""Cloth seen from its edge: places on paper come in, the line of its plies goes out, drawn as a thick ply.

Paper inches with y downwards. Plies lie one and a half thicknesses apart, so that each is seen.
"""

from __future__ import annotations

from collections.abc import Sequence

from generator.drawing.canvas import Canvas
from generator.drawing.labels import POINTS, Point
from generator.drawing.section_plan import rounded
from generator.drawing.style import Pen

PLY = 0.05
LIFT = PLY * 1.5
Flap = tuple[float, float, int]


def draw_ply(canvas: Canvas, points: Sequence[Point], *, radius: float = LIFT / 2) -> None:
    """Draw a ply of cloth along a line, with rounded folds."""
    smooth = rounded(points, radius)
    style = canvas.style
    width = PLY * POINTS
    canvas.line(smooth, Pen(style.ink, width))
    canvas.line(smooth, Pen(style.cloth, width - 2 * style.thin))


def standing_path(foot: float, base: float, tall: float, reach: float) -> tuple[Point, ...]:
    """Return the line of a tuck that stands upright on its foot."""
    half = LIFT / 2
    top = base - PLY - tall
    return (
        (foot - reach, base),
        (foot - half, base),
        (foot - half, top),
        (foot + half, top),
        (foot + half, base),
        (foot + reach, base),
    )


def hem_path(left: float, base: float, margin: float, tall: float, reach: float) -> tuple[Point, ...]:
    """Return the line of a caught hem: from the raw edge inside the standing tuck round the hem's fold and over.

    ``reach`` is how far the cloth goes on beyond the tuck.
    """
    foot, upper = left + margin, base - LIFT
    top = upper - tall
    return (
        (foot + LIFT, top + LIFT),
        (foot + LIFT, base),
        (left, base),
        (left, upper),
        (foot, upper),
        (foot, top),
        (foot + 2 * LIFT, top),
        (foot + 2 * LIFT, base),
        (foot + 2 * LIFT + reach, base),
    )


def turned_path(flaps: Sequence[Flap], reach: tuple[float, float], base: float) -> tuple[Point, ...]:
    """Return the line of cloth with turned tucks.

    A flap is its foot, how far its fold lies to the right (less than nothing: to the left), and over how many of its
    neighbours it lies. The cloth from the left goes into the ply that lies farther from where the tuck is turned.
    """
    points: list[Point] = [(reach[0], base)]
    for foot, fold, raised in flaps:
        lower = base - LIFT * (1 + 2 * raised)
        upper = lower - LIFT
        first, second = (upper, lower) if fold > 0 else (lower, upper)
        points += [
            (foot, base),
            (foot, first),
            (foot + fold, first),
            (foot + fold, second),
            (foot, second),
            (foot, base),
        ]
    return (*points, (reach[1], base))

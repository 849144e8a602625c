"""The form that a thing takes in use: a place on it laid out flat comes in, its place in the drawing goes out.

Both in inches on cloth, x to the right and y down; what cannot be seen has no place. A new form is one function and
one line in ``form_of``; a thing without a rule is shown flat, as it hangs.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Literal

from generator.calculation.making_up.items import is_filled
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import Worksheet
from generator.drawing.labels import Box, Point

DRAWN_IN = 0.05  # of its size: how far the middles of a filled cover's sides come in
SLANT, FLAT = 0.4, 0.5  # how far what recedes moves aside, and how much it is shortened
SPREAD = 0.25  # how far a frill at the end of a roll spreads, in parts of its drop
ROUND_ENOUGH = 0.01  # of its radius: how far a place of a round's rim may lie beside it
HANGING = 0.2  # of a runner's length: what hangs over the edge of its table
Name = Literal["flat", "pillow", "box", "drum", "roll", "tube", "hung", "over an edge"]


@dataclass(frozen=True, slots=True)
class Form:
    """A form by its name, the flat thing that it is made from, and where each place of it is drawn."""

    name: Name
    flat: Box
    place: Callable[[Point], Point | None]
    sizes: tuple[float, ...] = field(default_factory=tuple)

    def seen(self, point: Point) -> Point:
        """Return where a place is drawn that is known to be seen."""
        found = self.place(point)
        if found is None:
            raise ValueError(f"{point} cannot be seen on a {self.name}")
        return found


def is_round(piece: Piece) -> bool:
    """Return whether a piece is round when it is finished."""
    if any(part.outline.one_measure for part in piece.parts):
        return True
    shape, radius = piece.shape, float(piece.finished_across) / 2
    spots = [spot for line in shape.lines for spot in line.spots] if shape is not None else []
    away = [math.hypot(float(x) - radius, float(y) - radius) for x, y in spots]
    return bool(away) and max(abs(one - radius) for one in away) < ROUND_ENOUGH * radius


def form_of(worksheet: Worksheet, *, back: bool = False) -> Form:
    """Return the form of a finished thing, seen from the front or the back."""
    laid, filled = worksheet.laid_out, is_filled(worksheet.thing)
    flat = Box(
        float(min(one.left for one in laid.pieces)),
        float(min(one.top for one in laid.pieces)),
        float(max(one.right for one in laid.pieces)),
        float(max(one.bottom for one in laid.pieces)),
    )
    piece = worksheet.pieces[laid.seen[0].piece]
    rounded = piece.shape is not None or is_round(piece)
    if laid.depth and not rounded:
        return _box(flat, float(laid.depth))
    if laid.depth and is_round(piece):
        return _drum(flat, float(laid.depth))
    first = laid.seen[0]
    front = Box(*(float(side) for side in (first.left, first.top, first.right, first.bottom)))
    if laid.round:
        girth = float(laid.across if laid.round == "across" else laid.along)
        return _roll(flat, front, girth, back=back) if filled else _tube(flat, girth)
    if filled and not rounded:
        return _pillow(flat, front)
    if worksheet.kind == "runner":
        return _over_an_edge(flat)
    return Form("hung" if worksheet.kind == "curtain" else "flat", flat, lambda point: point)


def _pillow(flat: Box, front: Box) -> Form:
    """Sides that come in between the corners, as a filled cover's do."""
    middle = ((front.left + front.right) / 2, (front.top + front.bottom) / 2)
    half = ((front.right - front.left) / 2, (front.bottom - front.top) / 2)

    def place(point: Point) -> Point:
        u, v = ((value - centre) / reach for value, centre, reach in zip(point, middle, half, strict=True))
        x = middle[0] + u * half[0] * (1 - DRAWN_IN * (1 - v * v))
        return x, middle[1] + v * half[1] * (1 - DRAWN_IN * (1 - u * u))

    return Form("pillow", flat, place)


def _box(flat: Box, depth: float) -> Form:
    """The face as it lies before you, receding, with its sides below it."""
    return Form("box", flat, lambda point: _receding(point[0] - flat.left, flat.bottom - point[1]), (depth,))


def _drum(flat: Box, depth: float) -> Form:
    """A round face seen from above and before, with its side below it."""
    return Form("drum", flat, lambda point: (point[0] - flat.left, (point[1] - flat.top) * FLAT), (depth,))


def _receding(x: float, away: float) -> Point:
    return x + away * SLANT, -away * FLAT


def _roll(flat: Box, front: Box, girth: float, *, back: bool) -> Form:
    """A roll lying down: its length from left to right, the half of its way round that is seen from top to bottom.

    At the back the edge at the left of the flat thing lies over the other one; what stands beyond an end spreads.
    """
    radius = girth / math.tau
    middle = front.left + (0.0 if back else girth / 2)

    def place(point: Point) -> Point | None:
        way = point[0] - middle
        if back and way > girth:
            return None
        angle = (way - girth if back and way > girth / 2 else way) / radius
        beyond = max(front.top - point[1], point[1] - front.bottom, 0.0)
        spread = radius * (1 + SPREAD * beyond / radius)
        return (point[1], -spread * math.sin(angle)) if abs(angle) <= math.pi / 2 + 1e-6 else None

    return Form("roll", flat, place, (radius, middle, girth))


def _tube(flat: Box, girth: float) -> Form:
    """A ring standing, seen a little from above."""
    radius, middle = girth / math.tau, flat.left + girth / 2

    def place(point: Point) -> Point | None:
        angle = (point[0] - middle) / radius
        bend = radius * FLAT * 0.5 * math.cos(angle)
        return (radius * math.sin(angle), point[1] + bend) if abs(angle) <= math.pi / 2 + 1e-6 else None

    return Form("tube", flat, place, (radius, middle, girth))


def _over_an_edge(flat: Box) -> Form:
    """A runner whose near end hangs over the edge of a table, and whose length recedes."""
    wide, high = flat.right - flat.left, flat.bottom - flat.top
    along = max(wide, high)
    drop = along * HANGING

    def place(point: Point) -> Point:
        aside, near = (
            (point[0] - flat.left, flat.bottom - point[1])
            if high >= wide
            else (
                point[1] - flat.top,
                point[0] - flat.left,
            )
        )
        return (aside, drop - near) if near <= drop else _receding(aside, near - drop)

    return Form("over an edge", flat, place, (min(wide, high), along - drop, drop))

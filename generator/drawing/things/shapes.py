"""What is drawn of a finished thing, from the back of it to the front: outlines and lines in inches go out.

Places are those of the form, x to the right and y down, before they are put on paper.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from generator.calculation.making_up.laid import CLOCKWISE, Lying, opposite
from generator.calculation.worked_piece import Piece, Shaped
from generator.calculation.worked_project import Worksheet
from generator.drawing.labels import Box, Point
from generator.drawing.things.forms import Form, is_round
from generator.drawing.tucked import SHARES, shown_parts

STEPS = 24  # points along an edge, which a form may bend
WAVES = 22  # along the longest free edge of a frill
BORDER = 0.02  # of the size of a thing: how wide a binding is drawn


@dataclass(frozen=True, slots=True)
class Shape:
    """One part of the drawing: what it covers, its edges, its fine lines, and where its piece lies, if it is one.

    ``stitched`` are the inner folds of hems, ``hidden`` edges under others. ``buttons`` are told by their middle and
    their radius. ``cloth`` names what a band is cut from.
    """

    covers: tuple[Point, ...] = ()
    edges: tuple[tuple[Point, ...], ...] = ()
    lines: tuple[tuple[Point, ...], ...] = ()
    stitched: tuple[tuple[Point, ...], ...] = ()
    hidden: tuple[tuple[Point, ...], ...] = ()
    buttons: tuple[tuple[Point, float], ...] = ()
    lying: Lying | None = None
    form: Form | None = None
    cloth: str = ""


def box_of(lying: Lying) -> Box:
    """Return the rectangle that a piece covers."""
    return Box(*(float(side) for side in (lying.left, lying.top, lying.right, lying.bottom)))


def piece_shape(worksheet: Worksheet, lying: Lying, form: Form) -> Shape:
    """Return a piece as it lies in the thing, bent by its form."""
    piece, box = worksheet.pieces[lying.piece], box_of(lying)
    if piece.shape is not None:
        return _shaped(piece.shape, lying, form)
    sides = {side: _quarter(box, side) if is_round(piece) else _side(box, side) for side in CLOCKWISE}
    lines: list[list[Point]] = []
    if piece.made.drawn_up is not None:
        sewn = lying.lies_at("top")
        lines += _gathers(piece, sides[sewn], sides[opposite(sewn)], box)
        if piece.made.gathered:
            sides[opposite(sewn)] = _wavy(sides[opposite(sewn)], box)
    lines += _bound(piece, lying, box)
    whole = [point for side in CLOCKWISE for point in sides[side]]
    covers = [form.place(point) for point in whole]
    return Shape(
        covers=tuple(point for point in covers if point is not None) if None not in covers else (),
        edges=tuple(tuple(part) for side in CLOCKWISE for part in shown_parts(sides[side], form.place)),
        lines=tuple(tuple(part) for line in lines for part in shown_parts(line, form.place)),
        stitched=tuple(tuple(part) for line in _hems(piece, lying, box) for part in shown_parts(line, form.place)),
        lying=lying,
        form=form,
    )


def _shaped(shape: Shaped, lying: Lying, form: Form) -> Shape:
    """A piece with an outline of its own: its finished edges, bent by the form."""
    in_thing = in_the_thing(lying)
    sides = [[in_thing((float(x), float(y))) for x, y in line.spots] for line in shape.lines]
    sides = [between(side[0], side[1]) if len(side) == 2 else side for side in sides]
    covers = [form.place(point) for side in sides for point in side]
    return Shape(
        covers=tuple(point for point in covers if point is not None) if None not in covers else (),
        edges=tuple(tuple(part) for side in sides for part in shown_parts(side, form.place)),
        lying=lying,
        form=form,
    )


def _side(box: Box, side: str) -> list[Point]:
    """The points along a side, clockwise."""
    corners = {
        "top": ((box.left, box.top), (box.right, box.top)),
        "right": ((box.right, box.top), (box.right, box.bottom)),
        "bottom": ((box.right, box.bottom), (box.left, box.bottom)),
        "left": ((box.left, box.bottom), (box.left, box.top)),
    }
    return between(*corners[side])


def _quarter(box: Box, side: str) -> list[Point]:
    """The quarter of a round that lies at a side, clockwise."""
    middle = ((box.left + box.right) / 2, (box.top + box.bottom) / 2)
    start = -135 + 90 * CLOCKWISE.index(side)
    angles = [math.radians(start + 90 * step / STEPS) for step in range(STEPS + 1)]
    half = ((box.right - box.left) / 2, (box.bottom - box.top) / 2)
    return [(middle[0] + half[0] * math.cos(angle), middle[1] + half[1] * math.sin(angle)) for angle in angles]


def between(start: Point, end: Point, steps: int = STEPS) -> list[Point]:
    """Return points from one to another."""
    shares = [step / steps for step in range(steps + 1)]
    return [(start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share) for share in shares]


def _wavy(line: Sequence[Point], box: Box) -> list[Point]:
    """A free edge in waves, as a gathered one falls."""
    (left, top), (right, bottom) = line[0], line[-1]
    length = math.dist(line[0], line[-1])
    longest = max(box.right - box.left, box.bottom - box.top)
    waves = max(2, round(WAVES * length / longest))
    high = length / waves * 0.16
    across = ((bottom - top) / length * high, (left - right) / length * high)
    found = []
    for place, (x, y) in enumerate(between(line[0], line[-1], waves * 8)):
        swing = math.sin(math.tau * place / 8)
        found.append((x + across[0] * swing, y + across[1] * swing))
    return found


def _gathers(piece: Piece, sewn: Sequence[Point], free: Sequence[Point], box: Box) -> list[list[Point]]:
    """Lines from the edge at which a strip is drawn up to its free one: short for gathers, whole for pleats."""
    pleats = len(piece.made.pleats)
    longest = max(box.right - box.left, box.bottom - box.top)
    length = math.dist(sewn[0], sewn[-1])
    number = pleats or max(4, round(1.6 * WAVES * length / longest))
    starts = between(sewn[0], sewn[-1], 2 * number)[1::2]
    ends = between(free[-1], free[0], 2 * number)[1::2]
    shares = [1.0] if pleats else SHARES
    return [
        between(start, _share(start, end, shares[place % len(shares)]), 6)
        for place, (start, end) in enumerate(zip(starts, ends, strict=True))
    ]


def _share(start: Point, end: Point, share: float) -> Point:
    return start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share


def _bound(piece: Piece, lying: Lying, box: Box) -> Iterable[list[Point]]:
    """The inner edge of a binding along every bound edge."""
    bound = {lying.lies_at(side) for side, edge in piece.edges.items() if edge.end.kind == "bound"}
    inset = BORDER * max(box.right - box.left, box.bottom - box.top)
    inner = Box(
        box.left + inset * ("left" in bound),
        box.top + inset * ("top" in bound),
        box.right - inset * ("right" in bound),
        box.bottom - inset * ("bottom" in bound),
    )
    return [_side(inner, side) for side in CLOCKWISE if side in bound]


def _hems(piece: Piece, lying: Lying, box: Box) -> Iterable[list[Point]]:
    """The stitching of every hem that is wide enough to be seen, along its inner fold; a casing is one of them."""
    least = BORDER * max(box.right - box.left, box.bottom - box.top)
    for side, edge in piece.edges.items():
        deep, at = float(edge.end.second), lying.lies_at(side)
        if edge.end.kind == "hem" and deep > least:
            inner = {"left": (deep, 0.0), "right": (-deep, 0.0), "top": (0.0, deep), "bottom": (0.0, -deep)}[at]
            yield [(x + inner[0], y + inner[1]) for x, y in _side(box, at)]


def in_the_thing(lying: Lying) -> Callable[[Point], Point]:
    """Return what tells where a point of a piece, from its own upper left corner, lies in the thing [in].

    A piece has thousands of points; its exact place and its quarter turns are worked out once for all of them.
    """
    left, top = float(lying.left), float(lying.top)
    right, bottom = left + float(lying.across), top + float(lying.along)
    turns: tuple[Callable[[Point], Point], ...] = (
        lambda point: (left + point[0], top + point[1]),
        lambda point: (right - point[1], top + point[0]),
        lambda point: (right - point[0], bottom - point[1]),
        lambda point: (left + point[1], bottom - point[0]),
    )
    return turns[lying.turned]

"""Shapes in a cutting layout: a worksheet's cut lines and where a piece lies come in, lines on paper go out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from types import MappingProxyType

from generator.calculation.laid import PlacedItem
from generator.calculation.worked_project import Worksheet
from generator.drawing.labels import Point

Spots = Sequence[tuple[Fraction, Fraction]]
Shapes = Mapping[str, Spots]
NO_SHAPES: Shapes = MappingProxyType({})


def shapes_cut(worksheet: Worksheet) -> Shapes:
    """Return the cut line of every piece that is cut out of one rectangle by its paper."""
    parts = {name: one.parts[0] for name, one in worksheet.pieces.items() if len(one.parts) == 1 and not one.lengths}
    return {name: part.shape.cut for name, part in parts.items() if part.shape is not None}


def cut_line_on(piece: PlacedItem, cut: Spots, corner: Point, scale: float) -> list[Point]:
    """Return the cut line of a piece in its rectangle, whose upper left corner is told; a turned one lies turned."""
    left, top = (float(min(spot[way] for spot in cut)) for way in (0, 1))
    spots = [(float(x) - left, float(y) - top) for x, y in cut]
    if piece.turned:
        spots = [(float(piece.across) - y, x) for x, y in spots]
    return [(corner[0] + x * scale, corner[1] + y * scale) for x, y in spots]

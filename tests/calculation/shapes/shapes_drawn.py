"""Shapes for the tests of outlines, and the same shapes by a general library."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction

from shapely.geometry import Polygon

from generator.calculation.shapes.cut_line import SeamEdge, cut_line
from generator.calculation.shapes.segments import Segment, Spot, StraightLine
from generator.lengths import INCH

HALF = Fraction(1, 2)


def spot(x: object, y: object) -> Spot:
    return Fraction(str(x)), Fraction(str(y))


def sides(*corners: tuple[object, object]) -> tuple[Segment, ...]:
    """Straight lines from corner to corner."""
    spots = [spot(*corner) for corner in corners]
    return tuple(StraightLine(one, other) for one, other in itertools.pairwise(spots))


def sewn(edges: Mapping[str, Sequence[Segment]], allowance: Fraction = HALF) -> list[SeamEdge]:
    return [SeamEdge(name, tuple(lines), allowance) for name, lines in edges.items()]


def polygon(spots: Iterable[Spot]) -> Polygon:
    return Polygon([(float(x), float(y)) for x, y in spots])


def fine(edges: Iterable[SeamEdge], parts: int = 2048) -> Polygon:
    """The seam line in so many parts a curve that its chords are the curve for any ruler."""
    return polygon(step.spot for edge in edges for line in edge.segments for step in line.walked(parts)[:-1])


def cut(edges: Sequence[SeamEdge]) -> Polygon:
    return polygon(cut_line(edges, INCH))

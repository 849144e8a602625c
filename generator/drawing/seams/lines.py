"""Lines of a seam: how long they are, the part between two places, which way is out; inches, y downwards, clockwise."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from itertools import accumulate, pairwise

from generator.calculation.making_up.laid import CLOCKWISE
from generator.drawing.labels import Point

Line = tuple[Point, ...]
_NEAR = 1e-6
OUT = {"left": (-1.0, 0.0), "top": (0.0, -1.0), "right": (1.0, 0.0), "bottom": (0.0, 1.0)}


def length_of(line: Sequence[Point]) -> float:
    """Return how long a line is."""
    return sum(math.dist(*ends) for ends in pairwise(line))


def _places(line: Sequence[Point]) -> Iterable[float]:
    """How far along a line each of its points lies."""
    return accumulate((math.dist(*ends) for ends in pairwise(line)), initial=0.0)


def between(line: Sequence[Point], start: float, end: float) -> Line:
    """Return the part of a line from one place along it to another, each told from its start."""
    inner = [point for point, place in zip(line, _places(line), strict=True) if start + _NEAR < place < end - _NEAR]
    return (at(line, start), *inner, at(line, end))


def at(line: Sequence[Point], place: float) -> Point:
    """Return the point at a place along a line, told from its start; its ends beyond it."""
    left = max(0.0, place)
    for (x, y), (end_x, end_y) in pairwise(line):
        long = math.dist((x, y), (end_x, end_y))
        if long and left <= long:
            return x + (end_x - x) * left / long, y + (end_y - y) * left / long
        left -= long
    return line[-1]


def without(line: Line, gap: Line) -> list[Line]:
    """Return the parts of a line that a gap in it leaves; the line itself where the gap lies in no part of it."""
    ends = sorted(place for place in (_place_of(line, gap[0]), _place_of(line, gap[-1])) if place is not None)
    if len(ends) < 2:
        return [line]
    parts = ((0.0, ends[0]), (ends[1], length_of(line)))
    return [between(line, *part) for part in parts if part[1] - part[0] > _NEAR]


def _place_of(line: Line, point: Point) -> float | None:
    """How far along a line a point lies, None where it lies beside it."""
    so_far = 0.0
    for start, end in pairwise(line):
        long = math.dist(start, end)
        if math.dist(start, point) + math.dist(point, end) <= long + _NEAR:
            return so_far + math.dist(start, point)
        so_far += long
    return None


def outwards(line: Sequence[Point], place: float) -> Point:
    """Return which way is out at a place along an edge that runs clockwise, one inch far."""
    step = max(length_of(line) / 100, _NEAR)
    (x, y), (end_x, end_y) = at(line, place - step), at(line, place + step)
    long = math.dist((x, y), (end_x, end_y)) or 1.0
    return (end_y - y) / long, (x - end_x) / long


def moved(line: Sequence[Point], out: float) -> Line:
    """Return a line moved outwards, inwards by less than nothing."""
    ways = [outwards(line, place) for place in _places(line)]
    return tuple((x + out * right, y + out * down) for (x, y), (right, down) in zip(line, ways, strict=True))


def looks(way: Point) -> str:
    """Return the side of the paper that a direction points to most."""
    return max(CLOCKWISE, key=lambda side: OUT[side][0] * way[0] + OUT[side][1] * way[1])

"""Hatching and dots, which a photocopier keeps where it loses grey: a shape comes in, lines or places inside go out.

All lengths in inches on paper, y downwards; a shape is its corners in order.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from generator.drawing.labels import Point, Segment

HATCH_GAP, DOT_GAP = 0.1, 0.11
# The radii of a dot of what is left over and of one at the end of a leader: less is lost in the second copy at 70 %.
PATTERN_DOT, LEADER_DOT = 0.011, 0.028


def hatching_inside(shape: Sequence[Point], gap: float = HATCH_GAP) -> list[Segment]:
    """Return lines that rise to the right inside a shape, a gap apart.

    Examples
    --------
    In a square of side 2, lines half a diagonal apart: the middle one runs from corner to corner.

    >>> [[round(x, 2) for x, _ in line] for line in hatching_inside(((0, 0), (2, 0), (2, 2), (0, 2)), gap=0.5**0.5)]
    [[0.0, 1.0], [0.0, 2.0], [1.0, 2.0]]
    """
    # Along such a line x + y is the same everywhere; a hair more than whole steps keeps clear of corners.
    sums = [x + y for x, y in shape]
    step = gap * math.sqrt(2)
    first, last = math.floor(min(sums) / step) + 1, math.ceil(max(sums) / step)
    return [line for number in range(first, last) for line in _inside(shape, number * step)]


def _inside(shape: Sequence[Point], total: float) -> list[Segment]:
    """Return the parts of the line x + y = total inside a shape: from every odd crossing of its edge to the next."""
    crossed = []
    for (left, top), (right, bottom) in zip(shape, (*shape[1:], shape[0]), strict=True):
        before, after = left + top - total, right + bottom - total
        if (before < 0) != (after < 0):
            crossed.append(left + (right - left) * before / (before - after))
    crossed.sort()
    return [((x, total - x), (end, total - end)) for x, end in zip(crossed[::2], crossed[1::2], strict=True)]


def dots_inside(shape: Sequence[Point], gap: float = DOT_GAP) -> list[Point]:
    """Return places inside a shape, staggered, each at least a third of a gap from the shape's highest and lowest."""
    lowest, highest = min(y for _, y in shape), max(y for _, y in shape)
    rows = max(1, round((highest - lowest) / gap))
    found: list[Point] = []
    for row in range(rows):
        y = lowest + (highest - lowest) * (row + 0.5) / rows
        for left, right in _level(shape, y):
            count = int((right - left - 2 * gap / 3) / (2 * gap)) + 1 if right - left > gap else 0
            shift = gap if row % 2 else 0.0
            found += [(left + gap / 2 + shift + 2 * gap * place, y) for place in range(count)]
    return [(x, y) for x, y in found if any(left < x < right - gap / 4 for left, right in _level(shape, y))]


def _level(shape: Sequence[Point], y: float) -> list[tuple[float, float]]:
    crossed = sorted(
        left + (right - left) * (y - top) / (bottom - top)
        for (left, top), (right, bottom) in pairwise((*shape, shape[0]))
        if (top < y) != (bottom < y)
    )
    return list(zip(crossed[::2], crossed[1::2], strict=True))

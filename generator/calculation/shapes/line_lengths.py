"""How long the lines of an outline are: lines come in, two lengths between which theirs lies go out."""

from __future__ import annotations

import math
from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from generator.calculation.irrational import root_above, root_below
from generator.calculation.shapes.segments import Segment, Spot, StraightLine
from generator.errors import CalculationError
from generator.lengths import round_nearest

_FINENESS = 10**6
_CLOSE = Fraction(1, 100)
_MOST_PARTS = 1024


def length_bounds(segments: Sequence[Segment]) -> tuple[Fraction, Fraction]:
    """Return two lengths between which that of some lines lies.

    The chords of a curve are no longer than the curve, its tangents, and the points that a cubic is drawn towards, no
    shorter. Each root is rounded outward to a millionth of an inch before it is added; the parts are doubled until
    both lengths lie within 1/100 in of each other.

    Parameters
    ----------
    segments : sequence of Segment
        The lines, one after the other.

    Returns
    -------
    tuple of Fraction
        At most and at least the length of them all [in].

    Raises
    ------
    CalculationError
        If a curve is so long or so crooked that its length cannot be told.

    Examples
    --------
    A quarter of a circle of radius 1 is pi / 2 = 1.570796 long.

    >>> from generator.calculation.shapes.segments import QuarterOval
    >>> nothing, one = Fraction(0), Fraction(1)
    >>> less, more = length_bounds([QuarterOval((nothing, nothing), (one, one), "across")])
    >>> less < Fraction("1.570796") < more < less + Fraction(1, 100)
    True

    References
    ----------
    The inscribed and the circumscribed polygon: Archimedes, Measurement of a Circle (from memory).
    """
    parts = 8
    while parts <= _MOST_PARTS:
        less = sum((_below(_chords(one, parts)) for one in segments), Fraction(0))
        more = sum((_above(one.outside(parts)) for one in segments), Fraction(0))
        if more - less <= _CLOSE:
            return less, more
        parts *= 2
    raise CalculationError("a curve of the outline is too long or too crooked to be measured; look at its points")


def fitted_length(segments: Sequence[Segment], step: Fraction) -> Fraction:
    """Return how long lines are, to the nearest division of a ruler; straight ones that are exact stay exact.

    What is sewn along a curve must reach round it, so its upper bound is taken; it is a fit, so it is rounded to the
    nearest.

    Parameters
    ----------
    segments : sequence of Segment
        The lines, one after the other.
    step : Fraction
        Division of the ruler [in].

    Returns
    -------
    Fraction
        Length [in].

    Examples
    --------
    A line 3 in to the right and 4 in down is 5 in long.

    >>> nothing = Fraction(0)
    >>> fitted_length([StraightLine((nothing, nothing), (Fraction(3), Fraction(4)))], Fraction(1, 8))
    Fraction(5, 1)

    References
    ----------
    Derived in the docstring above.
    """
    if all(isinstance(one, StraightLine) for one in segments):
        squares = [_square(one.start, one.end) for one in segments]
        roots = [root_below(square) for square in squares]
        if all(root * root == square for root, square in zip(roots, squares, strict=True)):
            return sum(roots, Fraction(0))
    return round_nearest(length_bounds(segments)[1], step)


def _chords(segment: Segment, parts: int) -> tuple[Spot, ...]:
    return tuple(step.spot for step in segment.walked(parts))


def _square(one: Spot, other: Spot) -> Fraction:
    return (one[0] - other[0]) ** 2 + (one[1] - other[1]) ** 2


def _below(spots: Sequence[Spot]) -> Fraction:
    roots = (math.floor(root_below(_square(one, other)) * _FINENESS) for one, other in pairwise(spots))
    return Fraction(sum(roots), _FINENESS)


def _above(spots: Sequence[Spot]) -> Fraction:
    roots = (math.ceil(root_above(_square(one, other)) * _FINENESS) for one, other in pairwise(spots))
    return Fraction(sum(roots), _FINENESS)

"""Lines of an outline in steps so fine that nobody can cut the difference: a line comes in, places and ways go out.

Places are whole millionths of an inch, to which the one root that a direction needs is rounded.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from functools import lru_cache
from itertools import pairwise
from math import isqrt

from generator.calculation.shapes.crossing import Grain
from generator.calculation.shapes.segments import Segment, Spot, StraightLine, Waypoint

MILLION = 10**6
FAR = 10**4 * MILLION
"""Further than any line is carried on at a corner [millionths of an inch]."""
_FLAT = Fraction(1, 500)
_LEAST_PARTS, _MOST_PARTS = 16, 512


# An own measure is tried with many values, and each time a thing has the same lines again.
@lru_cache(maxsize=512)
def fine_steps(segment: Segment) -> tuple[Waypoint, ...]:
    """Return points of a line, of a curve so many that none of it lies 1/500 in from the chords between them.

    Parameters
    ----------
    segment : Segment
        The line.

    Returns
    -------
    tuple of Waypoint
        From its start to its end [in].

    Examples
    --------
    >>> nothing, four = Fraction(0), Fraction(4)
    >>> len(fine_steps(StraightLine((nothing, nothing), (four, nothing))))
    2
    """
    if isinstance(segment, StraightLine):
        return segment.walked(1)
    parts = _LEAST_PARTS
    while parts < _MOST_PARTS and _height(segment, parts) > _FLAT:
        parts *= 2
    return segment.walked(parts)


def _height(segment: Segment, parts: int) -> Fraction:
    """The greatest height of the triangles between chords and tangents, a little more than that [in]."""
    steps = segment.walked(parts)
    most = Fraction(0)
    for one, other in pairwise(steps):
        (x, y), (to_x, to_y) = one.spot, other.spot
        run, rise = to_x - x, to_y - y
        # Two tangents that leave a chord by the angles p and q meet at most chord / 2 x the greater tangent above it.
        for ahead in (one.ahead, other.ahead):
            along = ahead[0] * run + ahead[1] * rise
            beside = abs(ahead[0] * rise - ahead[1] * run)
            if along > 0:
                # The chord is at most its longer side and half its shorter one.
                long = max(abs(run), abs(rise)) + min(abs(run), abs(rise)) / 2
                most = max(most, beside / along * long / 2)
    return most


def grain(spot: Spot) -> Grain:
    """Return a place in whole millionths of an inch.

    Examples
    --------
    >>> grain((Fraction(1, 2), Fraction(1)))
    (500000, 1000000)
    """
    return round(spot[0] * MILLION), round(spot[1] * MILLION)


def way(ahead: Spot) -> Grain:
    """Return a direction as a way of a million [-].

    Examples
    --------
    >>> way((Fraction(3), Fraction(4)))
    (600000, 800000)
    """
    x, y = (round(one * 10**9) for one in ahead)
    long = isqrt(x * x + y * y) or 1
    return round(Fraction(x * MILLION, long)), round(Fraction(y * MILLION, long))


def moved(spot: Spot, ahead: Grain, out: Fraction) -> Grain:
    """Return a place moved straight out of a shape, which lies at the right hand of who walks; less than nothing is in.

    Parameters
    ----------
    spot : tuple of Fraction
        The place [in].
    ahead : tuple of int
        The way on there, a million long.
    out : Fraction
        How far [in].

    Returns
    -------
    tuple of int
        The place moved [millionths of an inch].

    Examples
    --------
    >>> moved((Fraction(0), Fraction(0)), (MILLION, 0), Fraction(1, 2))
    (0, -500000)
    """
    x, y = spot
    return round(x * MILLION + out * ahead[1]), round(y * MILLION - out * ahead[0])


def turns_back(steps: Sequence[Waypoint], beside: Sequence[Grain]) -> bool:
    """Return whether a line moved aside runs backward anywhere: it bends there more tightly than it was moved."""
    for (one, other), (before, after) in zip(pairwise(steps), pairwise(beside), strict=True):
        on = other.spot[0] - one.spot[0], other.spot[1] - one.spot[1]
        if (after[0] - before[0]) * on[0] + (after[1] - before[1]) * on[1] <= 0 < on[0] ** 2 + on[1] ** 2:
            return True
    return False


def ray(spot: Grain, ahead: Grain, far: int) -> Grain:
    """Return the place so far on from another; ``far`` and places are millionths of an inch, the way a million long.

    Examples
    --------
    >>> ray((0, 0), (MILLION, 0), 5)
    (5, 0)
    """
    return spot[0] + ahead[0] * far // MILLION, spot[1] + ahead[1] * far // MILLION

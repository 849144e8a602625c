"""A curve through points: the points come in, its stretches go out, smooth where they meet."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from generator.calculation.irrational import root_below
from generator.calculation.shapes.segments import Cubic, Spot, Way, minus
from generator.errors import CalculationError
from generator.lengths import round_nearest

_CHORD_STEP = Fraction(1, 64)


def curve_through(spots: Sequence[Spot], leaving: Way | None = None, arriving: Way | None = None) -> tuple[Cubic, ...]:
    r"""Return the stretches of a curve through points, one cubic from each point to the next.

    The direction at a point is that of the parabola through it and its neighbours, each point reached after the chords
    before it: with chords :math:`h_1, h_2` and their slopes :math:`d_1, d_2` it is
    :math:`(d_1 h_2 + d_2 h_1) / (h_1 + h_2)`. At an end that is not told the curve runs out without bending:
    :math:`(3 d - m) / 2`, where m is the direction at the next point. A told end goes the told way.

    Parameters
    ----------
    spots : sequence of tuple of Fraction
        The points, from the start of the curve to its end [in].
    leaving, arriving : str, optional
        ``across`` or ``down``: how the curve sets out and arrives.

    Returns
    -------
    tuple of Cubic
        One stretch fewer than points.

    Raises
    ------
    CalculationError
        If two neighbouring points are one.

    Notes
    -----
    The chords only set how fast the curve is walked, so they are taken to 1/64 in; the curve is exact for those.

    Examples
    --------
    Three points on a level stay on it; their parabola is that line.

    >>> level = [(Fraction(x), Fraction(2)) for x in (0, 3, 6)]
    >>> [stretch.first for stretch in curve_through(level)]
    [(Fraction(1, 1), Fraction(2, 1)), (Fraction(4, 1), Fraction(2, 1))]

    References
    ----------
    Derived in the docstring above.
    """
    chords = [_chord(one, other) for one, other in pairwise(spots)]
    slopes = [_scaled(minus(other, one), 1 / h) for (one, other), h in zip(pairwise(spots), chords, strict=True)]
    ways = [_inner(slopes[k], slopes[k + 1], chords[k], chords[k + 1]) for k in range(len(slopes) - 1)]
    first = _told(slopes[0], leaving) if leaving else _natural(slopes[0], ways[0] if ways else None)
    last = _told(slopes[-1], arriving) if arriving else _natural(slopes[-1], ways[-1] if ways else first)
    if not ways and arriving and not leaving:
        first = _natural(slopes[0], last)
    at = [first, *ways, last]
    return tuple(
        Cubic(one, _moved(one, at[k], h / 3), _moved(other, at[k + 1], -h / 3), other)
        for k, ((one, other), h) in enumerate(zip(pairwise(spots), chords, strict=True))
    )


def _chord(one: Spot, other: Spot) -> Fraction:
    x, y = minus(other, one)
    if x == y == 0:
        raise CalculationError("two points of a curve that follow each other are one point; take one of them out")
    return max(_CHORD_STEP, round_nearest(root_below(x * x + y * y), _CHORD_STEP))


def _inner(before: Spot, after: Spot, h_before: Fraction, h_after: Fraction) -> Spot:
    whole = h_before + h_after
    return tuple(  # type: ignore[return-value]
        (one * h_after + other * h_before) / whole for one, other in zip(before, after, strict=True)
    )


def _natural(slope: Spot, near: Spot | None) -> Spot:
    """The direction at an end without a bend, beside a point where it is ``near``; alone it is straight."""
    if near is None:
        return slope
    return (3 * slope[0] - near[0]) / 2, (3 * slope[1] - near[1]) / 2


def _told(slope: Spot, way: Way) -> Spot:
    """The told way, towards where the curve goes on: down where it goes neither up nor down."""
    if way == "down":
        return Fraction(0), Fraction(-1 if slope[1] < 0 else 1)
    return Fraction(-1 if slope[0] < 0 else 1), Fraction(0)


def _scaled(way: Spot, by: Fraction) -> Spot:
    return way[0] * by, way[1] * by


def _moved(spot: Spot, way: Spot, by: Fraction) -> Spot:
    return spot[0] + way[0] * by, spot[1] + way[1] * by

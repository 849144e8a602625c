"""Marks at the edges of a shape by which it is matched: its edges come in, notches and dots go out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from generator.calculation.irrational import root_below
from generator.calculation.shapes.cut_line import SeamEdge, seam_line
from generator.calculation.shapes.segments import Spot, minus

# A notch is as deep as this, and an allowance narrower than twice that has a dot instead; quarters of an edge are
# marked where they are no shorter than that. The two last are our own limits.
DEPTH, LEAST_ALLOWANCE, LEAST_QUARTER = Fraction(1, 8), Fraction(1, 4), Fraction(2)
_MILLION = 10**6


@dataclass(frozen=True, slots=True)
class Notch:
    """A mark at a place of the seam line: a snip from ``outer`` to ``inner``, or a dot where both are one place."""

    edge: str
    at: Spot
    outer: Spot
    inner: Spot

    @property
    def dot(self) -> bool:
        """Whether it is a dot."""
        return self.outer == self.inner


def notches(edges: Sequence[SeamEdge]) -> tuple[Notch, ...]:
    """Return the marks of a shape: at the ends, the middle and the quarters of every edge, by its seam line.

    They are measured along the seam line, since there two edges meet; the allowance of a round edge is longer.

    Parameters
    ----------
    edges : sequence of SeamEdge
        The edges clockwise.

    Returns
    -------
    tuple of Notch
        In the order of the edges; the end of one edge and the start of the next have each their own.

    Examples
    --------
    An edge of 8 in with an allowance of 1/2 in: marks at 0, 2, 4, 6 and 8 in, cut from 1/2 to 3/8 in beyond it.

    >>> from generator.calculation.shapes.segments import StraightLine
    >>> nothing = Fraction(0)
    >>> top = SeamEdge("top", (StraightLine((nothing, nothing), (Fraction(8), nothing)),), Fraction(1, 2))
    >>> [str(one.at[0]) for one in notches([top])]
    ['0', '2', '4', '6', '8']
    >>> one = notches([top])[0]
    >>> str(one.outer[1]), str(one.inner[1])
    ('-1/2', '-3/8')
    """
    return tuple(notch for edge in edges for notch in _of(edge))


def _of(edge: SeamEdge) -> list[Notch]:
    spots = seam_line(edge)
    stretches = [(one, other, _long(one, other)) for one, other in pairwise(spots)]
    whole = sum((long for _, _, long in stretches), Fraction(0))
    closed = spots[0] == spots[-1]
    parts = 4 if whole >= 4 * LEAST_QUARTER else 2
    return [_notch(edge, stretches, whole * place / parts) for place in range(parts + (0 if closed else 1))]


def _notch(edge: SeamEdge, stretches: Sequence[tuple[Spot, Spot, Fraction]], away: Fraction) -> Notch:
    for one, other, long in stretches:
        if away <= long or (one, other, long) == stretches[-1]:
            share = min(away / long, Fraction(1))
            run, rise = minus(other, one)
            at = _rounded((one[0] + run * share, one[1] + rise * share))
            # Outside lies at the left hand of who walks clockwise.
            out = rise / long, -run / long
            deep = edge.allowance - DEPTH if edge.allowance >= LEAST_ALLOWANCE else Fraction(0)
            far = edge.allowance if deep else Fraction(0)
            return Notch(edge.name, at, *(_rounded((at[0] + out[0] * by, at[1] + out[1] * by)) for by in (far, deep)))
        away -= long
    raise AssertionError("an edge has at least one stretch")


def _long(one: Spot, other: Spot) -> Fraction:
    x, y = minus(other, one)
    return _whole(root_below(x * x + y * y))


def _rounded(spot: Spot) -> Spot:
    return _whole(spot[0]), _whole(spot[1])


def _whole(length: Fraction) -> Fraction:
    return Fraction(round(length * _MILLION), _MILLION)

"""The lines that an outline is made of: their ends come in, exact points and directions along them go out.

A point is (across, along) in inches from wherever the outline is told from: across grows to the right, along down. An
outline is walked clockwise, so that what is outside lies at the left hand of who walks.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from typing import Literal

Spot = tuple[Fraction, Fraction]
Way = Literal["across", "down"]


@dataclass(frozen=True, slots=True)
class Waypoint:
    """One point of a line and the direction in which the line goes on there, of any length."""

    spot: Spot
    ahead: Spot


@dataclass(frozen=True, slots=True)
class StraightLine:
    """A straight line."""

    start: Spot
    end: Spot

    def walked(self, parts: int) -> tuple[Waypoint, ...]:
        """Return its two ends; a straight line has no need of more."""
        ahead = minus(self.end, self.start)
        return Waypoint(self.start, ahead), Waypoint(self.end, ahead)

    def outside(self, parts: int) -> tuple[Spot, ...]:
        """Return points whose joining line is no shorter than this line."""
        return self.start, self.end


@dataclass(frozen=True, slots=True)
class QuarterOval:
    r"""A quarter of an oval that sets out ``leaving`` across or down, and arrives the other way.

    With half axes a and b its points are :math:`a \frac{2t}{1+t^2}` and :math:`b \frac{1-t^2}{1+t^2}` from its middle,
    for t from 0 to 1: fractions wherever t is one. Tangents at t and s meet at :math:`a \frac{t+s}{1+ts}` and
    :math:`b \frac{1-ts}{1+ts}`.
    """

    start: Spot
    end: Spot
    leaving: Way

    def walked(self, parts: int) -> tuple[Waypoint, ...]:
        """Return points of it with their directions, one more than ``parts``."""
        found = []
        for place in range(parts + 1):
            t = Fraction(place, parts)
            spot = self._at(2 * t / (1 + t * t), (1 - t * t) / (1 + t * t))
            found.append(Waypoint(spot, self._along(1 - t * t, 2 * t)))
        return tuple(found)

    def outside(self, parts: int) -> tuple[Spot, ...]:
        """Return its ends and where the tangents of neighbouring points meet: a line longer than the curve."""
        ts = [Fraction(place, parts) for place in range(parts + 1)]
        met = [self._at((t + s) / (1 + t * s), (1 - t * s) / (1 + t * s)) for t, s in pairwise(ts)]
        return self.start, *met, self.end

    def _at(self, gone: Fraction, left: Fraction) -> Spot:
        """The point that has ``gone`` so much of the way first taken, and has ``left`` so much of the other one."""
        (x, y), (to_x, to_y) = self.start, self.end
        if self.leaving == "across":
            return x + (to_x - x) * gone, to_y + (y - to_y) * left
        return to_x + (x - to_x) * left, y + (to_y - y) * gone

    def _along(self, first: Fraction, other: Fraction) -> Spot:
        (x, y), (to_x, to_y) = self.start, self.end
        if self.leaving == "across":
            return (to_x - x) * first, (to_y - y) * other
        return (to_x - x) * other, (to_y - y) * first


@dataclass(frozen=True, slots=True)
class Cubic:
    """One stretch of a curve, told by its ends and the two points that its ends are drawn towards."""

    start: Spot
    first: Spot
    second: Spot
    end: Spot

    def walked(self, parts: int) -> tuple[Waypoint, ...]:
        """Return points of it with their directions, one more than ``parts``, a power of two."""
        pieces = self._halved(parts)
        return (
            *(Waypoint(one.start, one._setting_out()) for one in pieces),
            Waypoint(self.end, pieces[-1]._arriving()),
        )

    def outside(self, parts: int) -> tuple[Spot, ...]:
        """Return the points that the halves of it are drawn towards: a line no shorter than the curve."""
        return (self.start, *(spot for one in self._halved(parts) for spot in (one.first, one.second, one.end)))

    def _halved(self, parts: int) -> tuple[Cubic, ...]:
        if parts <= 1:
            return (self,)
        early, mid, late = _mid(self.start, self.first), _mid(self.first, self.second), _mid(self.second, self.end)
        before, after = _mid(early, mid), _mid(mid, late)
        half = _mid(before, after)
        halves = Cubic(self.start, early, before, half), Cubic(half, after, late, self.end)
        return tuple(one for each in halves for one in each._halved(parts // 2))

    def _setting_out(self) -> Spot:
        return _first_way(self.start, (self.first, self.second, self.end))

    def _arriving(self) -> Spot:
        x, y = _first_way(self.end, (self.second, self.first, self.start))
        return -x, -y


@dataclass(frozen=True, slots=True)
class Traced:
    """A line that runs beside others at a distance, told by points close enough together and the ways on at them."""

    steps: tuple[Waypoint, ...]

    @property
    def start(self) -> Spot:
        """Where it begins."""
        return self.steps[0].spot

    @property
    def end(self) -> Spot:
        """Where it ends."""
        return self.steps[-1].spot

    def walked(self, parts: int) -> tuple[Waypoint, ...]:
        """Return its points as they are."""
        return self.steps

    def outside(self, parts: int) -> tuple[Spot, ...]:
        """Return its points, and between two of them where their tangents meet, as far as they do on the way."""
        found = [self.start]
        for one, other in pairwise(self.steps):
            found += [*_tangents_meet(one, other), other.spot]
        return tuple(found)


Segment = StraightLine | QuarterOval | Cubic | Traced


def _tangents_meet(one: Waypoint, other: Waypoint) -> tuple[Spot, ...]:
    """Where the ways on at one point and back at the next one cross; nothing where they run alike or apart."""
    run, rise = minus(other.spot, one.spot)
    under = one.ahead[0] * other.ahead[1] - one.ahead[1] * other.ahead[0]
    if under == 0:
        return ()
    on = (run * other.ahead[1] - rise * other.ahead[0]) / under
    back = (run * one.ahead[1] - rise * one.ahead[0]) / -under
    if on <= 0 or back <= 0:
        return ()
    return ((one.spot[0] + one.ahead[0] * on, one.spot[1] + one.ahead[1] * on),)


def minus(one: Spot, other: Spot) -> Spot:
    """Return the way from the other point to the one.

    Parameters
    ----------
    one, other : tuple of Fraction
        Two points, across and along [in].

    Returns
    -------
    tuple of Fraction
        How far the one lies to the right of the other, and how far below it [in].

    Examples
    --------
    >>> minus((Fraction(3), Fraction(1)), (Fraction(1), Fraction(2)))
    (Fraction(2, 1), Fraction(-1, 1))
    """
    return one[0] - other[0], one[1] - other[1]


def _mid(one: Spot, other: Spot) -> Spot:
    return (one[0] + other[0]) / 2, (one[1] + other[1]) / 2


def _first_way(start: Spot, towards: tuple[Spot, ...]) -> Spot:
    """The way to the first of some points that lies elsewhere."""
    return next((minus(spot, start) for spot in towards if spot != start), (Fraction(0), Fraction(0)))

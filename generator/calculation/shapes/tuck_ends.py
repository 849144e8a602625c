"""Where tucks end that are cut to a shape: the seam line and the tucks come in, the ends of each tuck go out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from typing import Protocol

from generator.calculation.shapes.segments import Spot


class NamedLine(Protocol):
    """One edge of a shape: its name and its points."""

    @property
    def name(self) -> str: ...  # noqa: D102
    @property
    def spots(self) -> tuple[Spot, ...]: ...  # noqa: D102


@dataclass(frozen=True, slots=True)
class TuckEnd:
    """One tuck between two places of the seam line [in from its highest point], and which of them must be caught.

    In a hollow shape a tuck may be there twice.
    """

    tuck: int
    top: Fraction
    bottom: Fraction
    catch_top: bool
    catch_bottom: bool

    @property
    def length(self) -> Fraction:
        """How long it is [in]."""
        return self.bottom - self.top


def tuck_ends(around: Sequence[Spot], stitching: Sequence[Fraction], depths: Sequence[Fraction]) -> tuple[TuckEnd, ...]:
    """Return every tuck as the seam line of a shape ends it.

    A tuck of depth d at x is stitched from edge to edge of the shape; its fold lies d beside that, at the left or the
    right, and the edge ends it higher or lower by w there. Where w is more than 2 d, or the edge does not reach the
    fold at all, so little of the tuck is left in the seam that it is caught by hand before the panel is cut.

    Parameters
    ----------
    around : sequence of tuple of Fraction
        The seam line, closed, from the left and the highest point of the shape [in].
    stitching : sequence of Fraction
        The stitching line of each tuck, from the left of the shape [in].
    depths : sequence of Fraction
        The depth of each tuck [in].

    Returns
    -------
    tuple of TuckEnd
        From the left, of one tuck from above.

    Notes
    -----
    That w may be twice the depth is our own limit. Both ways to lie are looked at, since a tuck may lie either way.

    Examples
    --------
    A square of 4 in: every tuck is 4 in long, and its fold ends level with its stitching.

    >>> corners = [(Fraction(x), Fraction(y)) for x, y in ((0, 0), (4, 0), (4, 4), (0, 4), (0, 0))]
    >>> [(str(one.length), one.catch_top) for one in tuck_ends(corners, [Fraction(2)], [Fraction(1, 4)])]
    [('4', False)]

    References
    ----------
    Derived in the docstring above.
    """
    found = []
    for number, (at, depth) in enumerate(zip(stitching, depths, strict=True), 1):
        crossed = _crossings(around, at)
        beside = [_crossings(around, at + side * depth) for side in (-1, 1)]
        for top, bottom in zip(crossed[::2], crossed[1::2], strict=False):
            catches = (any(_reach(end, ways) > 2 * depth for ways in beside) for end in (top, bottom))
            found.append(TuckEnd(number, top, bottom, *catches))
    return tuple(found)


def crossed_edges(lines: Sequence[NamedLine], at: Fraction) -> list[tuple[str, Fraction, Fraction]]:
    """Return which edges of a shape a line down it meets, from above: name, height [in] and slope there [-].

    Parameters
    ----------
    lines : sequence of named lines
        The edges of the shape, by their points [in].
    at : Fraction
        Where the line down it lies, from the left [in].

    Returns
    -------
    list of tuple
        Name, height from the highest point [in], slope without its sign [-].

    Examples
    --------
    A square of 4 in: the top and the bottom, both level.

    >>> from generator.calculation.worked_piece import SeamLine
    >>> corners = [(Fraction(x), Fraction(y)) for x, y in ((0, 0), (4, 0), (4, 4), (0, 4))]
    >>> lines = (SeamLine("top", tuple(corners[:2])), SeamLine("bottom", tuple(corners[2:])))
    >>> [(name, str(at), str(slope)) for name, at, slope in crossed_edges(lines, Fraction(2))]
    [('top', '0', '0'), ('bottom', '4', '0')]

    References
    ----------
    Derived: where a line crosses the sides of a polygon.
    """
    met = []
    for line in lines:
        for (x, y), (to_x, to_y) in pairwise(line.spots):
            if min(x, to_x) <= at < max(x, to_x):
                slope = (to_y - y) / (to_x - x)
                met.append((line.name, y + slope * (at - x), abs(slope)))
    return sorted(met, key=lambda one: one[1])


def _crossings(around: Sequence[Spot], at: Fraction) -> list[Fraction]:
    """Where a line down the shape meets its edge, from above [in]."""
    met = []
    for (x, y), (to_x, to_y) in pairwise(around):
        if min(x, to_x) <= at < max(x, to_x):
            met.append(y + (to_y - y) * (at - x) / (to_x - x))
    return sorted(met)


def _reach(end: Fraction, beside: Sequence[Fraction]) -> Fraction:
    """How much higher or lower the edge is beside an end; as good as endless where it is not there."""
    return min((abs(end - other) for other in beside), default=Fraction(10**6))

"""One side of an outline and its mirror image: the edges down the right side come in, those all round go out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from generator.calculation.shapes.segments import Cubic, QuarterOval, Segment, Spot, StraightLine, Traced, Waypoint
from generator.errors import CalculationError


def mirrored(edges: Mapping[str, tuple[Segment, ...]]) -> dict[str, tuple[Segment, ...]]:
    """Return the edges all round, clockwise, of an outline told down its right side, from middle to middle.

    The first and the last edge are whole; every other one is there twice, as the right and the left of its name.

    Parameters
    ----------
    edges : Mapping of str to tuple of Segment
        The edges of the right side, across told from the middle line.

    Returns
    -------
    dict of str to tuple of Segment
        The edges by their full names.

    Raises
    ------
    CalculationError
        If the side does not begin and end on the middle line.

    Examples
    --------
    >>> from fractions import Fraction
    >>> nothing, four = Fraction(0), Fraction(4)
    >>> corners = [(nothing, nothing), (four, nothing), (four, four), (nothing, four)]
    >>> side = {name: (StraightLine(*ends),) for name, ends in zip(("top", "side", "hem"), zip(corners, corners[1:]))}
    >>> list(mirrored(side))
    ['top', 'right side', 'hem', 'left side']
    """
    names = list(edges)
    first, last = edges[names[0]], edges[names[-1]]
    if first[0].start[0] != 0 or last[-1].end[0] != 0:
        raise CalculationError(
            "one side of a mirrored outline begins and ends on its middle line: begin 'start' with 0, and let the last "
            "edge end at 0 across"
        )
    if len(names) == 1:
        return {names[0]: _across_the_middle(_back(first), first)}
    around = {names[0]: _across_the_middle(_back(first), first)}
    around |= {f"right {name}": edges[name] for name in names[1:-1]}
    around[names[-1]] = _across_the_middle(last, _back(last))
    return around | {f"left {name}": _back(edges[name]) for name in reversed(names[1:-1])}


def _back(segments: tuple[Segment, ...]) -> tuple[Segment, ...]:
    """The mirror image of lines, walked the other way."""
    return tuple(_image(segment) for segment in reversed(segments))


def _image(segment: Segment) -> Segment:
    start, end = _over(segment.end), _over(segment.start)
    if isinstance(segment, Cubic):
        return Cubic(start, _over(segment.second), _over(segment.first), end)
    if isinstance(segment, QuarterOval):
        return QuarterOval(start, end, "down" if segment.leaving == "across" else "across")
    if isinstance(segment, Traced):
        steps = (Waypoint(_over(one.spot), (one.ahead[0], -one.ahead[1])) for one in reversed(segment.steps))
        return Traced(tuple(steps))
    return replace(segment, start=start, end=end)


def _over(spot: Spot) -> Spot:
    return -spot[0], spot[1]


def _across_the_middle(before: tuple[Segment, ...], after: tuple[Segment, ...]) -> tuple[Segment, ...]:
    """Lines that meet on the middle line; a level one over it is one straight line."""
    one, other = before[-1], after[0]
    if isinstance(one, StraightLine) and isinstance(other, StraightLine) and one.start[1] == one.end[1]:
        return (*before[:-1], StraightLine(one.start, other.end), *after[1:])
    return (*before, *after)

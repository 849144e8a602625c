"""The cut line of an outline: its seam line and the allowance of every edge come in, the line to cut on goes out.

Every edge has its own allowance. Where two edges meet, their cut lines are carried on until they cross; a corner that
would reach out further than twice the wider allowance is cut blunt. All places are worked in whole millionths of an
inch, to which the one root that a direction needs is rounded.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import isqrt

from generator.calculation.shapes.crossing import Grain, crosses_itself, first_meeting, meeting, other_way
from generator.calculation.shapes.segments import Segment, Spot, StraightLine
from generator.calculation.shapes.stepped import FAR, MILLION, fine_steps, grain, moved, ray, turns_back, way
from generator.errors import CalculationError
from generator.lengths import Edition, round_down, say_length


@dataclass(frozen=True, slots=True)
class SeamEdge:
    """One edge of an outline: its name, its lines one after the other, and the cloth beyond it [in].

    An edge that is ``turned`` is folded over itself, as a hem is: the cut lines beside it must lie under themselves
    once it is folded, so beyond its fold they mirror what lies before it.
    """

    name: str
    segments: tuple[Segment, ...]
    allowance: Fraction
    turned: bool = False


@dataclass(frozen=True, slots=True)
class _Side:
    """The cut line of one edge before its ends are trimmed, with the ways in which it begins and ends."""

    edge: SeamEdge
    spots: tuple[Grain, ...]
    first: Grain
    last: Grain
    corner: Grain


def seam_line(edge: SeamEdge) -> tuple[Spot, ...]:
    """Return the seam line of an edge as points close enough together that no one can cut the difference.

    Parameters
    ----------
    edge : SeamEdge
        The edge.

    Returns
    -------
    tuple of tuple of Fraction
        Its points from its start to its end [in]; the line between them leaves a curve by less than 1/500 in.

    Examples
    --------
    >>> nothing, four = Fraction(0), Fraction(4)
    >>> len(seam_line(SeamEdge("top", (StraightLine((nothing, nothing), (four, nothing)),), nothing)))
    2
    """
    spots = [step.spot for segment in edge.segments for step in fine_steps(segment)]
    return tuple(spot for place, spot in enumerate(spots) if place == 0 or spot != spots[place - 1])


def cut_line(edges: Sequence[SeamEdge], edition: Edition) -> tuple[Spot, ...]:
    """Return the line on which a shape is cut.

    Parameters
    ----------
    edges : sequence of SeamEdge
        The edges clockwise; each begins where the one before it ends.
    edition : Edition
        Whose words a refusal uses.

    Returns
    -------
    tuple of tuple of Fraction
        Its corners in order, the last of them joined to the first [in].

    Raises
    ------
    CalculationError
        If the outline crosses itself, an edge is hollow and tighter than its allowance, or the cut line crosses itself.

    Examples
    --------
    A square of 4 in with 1/2 in at every edge is cut 5 in wide.

    >>> from itertools import pairwise
    >>> from generator.lengths import INCH
    >>> corners = [(Fraction(x), Fraction(y)) for x, y in ((0, 0), (4, 0), (4, 4), (0, 4), (0, 0))]
    >>> lines = [(StraightLine(*ends),) for ends in pairwise(corners)]
    >>> sides = [SeamEdge(name, line, Fraction(1, 2)) for name, line in zip("abcd", lines)]
    >>> [(float(x), float(y)) for x, y in cut_line(sides, INCH)]
    [(4.5, -0.5), (4.5, 4.5), (-0.5, 4.5), (-0.5, -0.5)]

    References
    ----------
    Derived in the docstring above; the tests lay it beside a general library's buffer.
    """
    seams = [grain(spot) for edge in edges for spot in seam_line(edge)]
    _refuse_crossing(seams, "the outline", edition)
    if told := other_way(seams):
        raise CalculationError(told)
    runs = [_offset(edge, edition) for edge in edges]
    for place in range(len(runs)):
        after = (place + 1) % len(runs)
        runs[place], runs[after] = _joined(runs[place], runs[after])
    around = [spot for run in runs for spot in run.spots]
    found = _corners([spot for place, spot in enumerate(around) if spot != around[place - 1]])
    _refuse_crossing(found, "the cut line, outside the seams,", edition)
    return tuple((Fraction(x, MILLION), Fraction(y, MILLION)) for x, y in found)


def _corners(around: list[Grain]) -> list[Grain]:
    """The points of a closed line without those that lie on the way from one neighbour straight to the other."""
    after = [*around[1:], around[0]]
    return [
        (x, y)
        for (from_x, from_y), (x, y), (to_x, to_y) in zip([around[-1], *around[:-1]], around, after, strict=True)
        if (x - from_x) * (to_y - y) != (y - from_y) * (to_x - x)
    ]


def _refuse_crossing(spots: Sequence[Grain], what: str, edition: Edition) -> None:
    around = [spot for place, spot in enumerate(spots) if spot != spots[place - 1]]
    place = crosses_itself(around)
    if place is not None:
        across, along = (
            say_length(round_down(Fraction(one - least, MILLION), edition.mark), edition)
            for one, least in zip(place, (min(x for x, _ in around), min(y for _, y in around)), strict=True)
        )
        where = f"about {across} from its left and {along} from its highest point"
        raise CalculationError(f"{what} crosses itself, {where}; look at the points of the outline, or make seams less")


def _offset(edge: SeamEdge, edition: Edition) -> _Side:
    """The cut line of one edge: every point of its seam line moved straight out by the allowance."""
    out = edge.allowance
    spots: list[Grain] = []
    ways: list[Grain] = []
    for segment in edge.segments:
        steps = fine_steps(segment)
        beyond = [moved(step.spot, way(step.ahead), out) for step in steps]
        if turns_back(steps, beyond):
            raise CalculationError(_too_tight(edge, edition))
        spots += beyond
        ways += [way(step.ahead) for step in steps]
    corner = grain(edge.segments[-1].end)
    return _Side(edge, tuple(spots), ways[0], ways[-1], corner)


def _too_tight(edge: SeamEdge, edition: Edition) -> str:
    return (
        f"the edge '{edge.name}' is hollow, and somewhere rounder than its allowance of "
        f"{say_length(edge.allowance, edition)} is wide, so no cut line lies beside it: make the hollow flatter, or "
        "the allowance less"
    )


def _joined(before: _Side, after: _Side) -> tuple[_Side, _Side]:
    """Two neighbours with their cut lines carried on, trimmed, or cut blunt where they meet."""
    if before.edge.turned or after.edge.turned:
        between = _mirrored(before, after)
        if between is not None:
            return between
    turn = before.last[0] * after.first[1] - before.last[1] * after.first[0]
    level = before.last[0] * after.first[0] + before.last[1] * after.first[1] > 0
    if level and abs(turn) < MILLION * MILLION // 1000:
        # A smooth join: where the allowances differ, the cut line takes a step.
        return before, after
    far, near = ray(before.spots[-1], before.last, FAR), ray(after.spots[0], after.first, -FAR)
    first, second = (*before.spots, far), (near, *after.spots)
    met = first_meeting(first, second)
    if met is None:
        names = f"'{before.edge.name}' and '{after.edge.name}'"
        raise CalculationError(f"the cut lines of {names} do not meet; look at the corner between them")
    k, j, at = met
    blunt = _blunt(before, after, at) if k == len(first) - 2 and j == 0 else (at,)
    return _with(before, (*first[: k + 1], *blunt)), _with(after, tuple(second[j + 1 :]))


def _blunt(before: _Side, after: _Side, at: Grain) -> tuple[Grain, ...]:
    """The corner where two cut lines cross, or its blunt end where it would reach out too far."""
    x, y = at[0] - before.corner[0], at[1] - before.corner[1]
    long = isqrt(x * x + y * y)
    most = int(2 * max(before.edge.allowance, after.edge.allowance) * MILLION)
    if long <= most:
        return (at,)
    middle = before.corner[0] + x * most // long, before.corner[1] + y * most // long
    chord = (
        (middle[0] + y * FAR // long, middle[1] - x * FAR // long),
        (
            middle[0] - y * FAR // long,
            middle[1] + x * FAR // long,
        ),
    )
    ends = [meeting(chord, (run, at)) for run in (before.spots[-1], after.spots[0])]
    return tuple(end for end in ends if end is not None)


def _mirrored(before: _Side, after: _Side) -> tuple[_Side, _Side] | None:
    """The ends of a straight edge that is folded over: beyond its fold its neighbour's cut line is mirrored."""
    fold, beside = (before, after) if before.edge.turned else (after, before)
    if beside.edge.turned or len(fold.edge.segments) > 1 or not isinstance(fold.edge.segments[0], StraightLine):
        return None
    ahead = beside is before
    lies, way = (beside.spots[-1], beside.last) if ahead else (beside.spots[0], _back(beside.first))
    edge_start, edge_end = grain(fold.edge.segments[0].start), grain(fold.edge.segments[0].end)
    along = fold.first
    beyond = (
        ray(edge_start, along, -FAR // 2),
        ray(edge_end, along, FAR // 2),
    )
    crossed = meeting((ray(lies, way, -FAR // 2), ray(lies, way, FAR // 2)), beyond)
    if crossed is None:
        return None
    level = (way[0] * along[0] + way[1] * along[1]) // MILLION
    mirrored = way[0] - 2 * level * along[0] // MILLION, way[1] - 2 * level * along[1] // MILLION
    rim = ray(fold.spots[0], along, -FAR // 2), ray(fold.spots[-1], along, FAR // 2)
    end = meeting((crossed, ray(crossed, mirrored, FAR // 2)), rim)
    if end is None:
        return None
    if ahead:
        return _with(before, (*before.spots, crossed)), _with(after, (end, *after.spots[1:]))
    return _with(before, (*before.spots[:-1], end)), _with(after, (crossed, *after.spots))


def _with(run: _Side, spots: tuple[Grain, ...]) -> _Side:
    return _Side(run.edge, spots, run.first, run.last, run.corner)


def _back(way: Grain) -> Grain:
    return -way[0], -way[1]

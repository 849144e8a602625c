"""Facings cut to the shape of edges: an outline, the edges that are faced and a width come in, the facing goes out.

A facing is traced from the piece that it faces. Its outer edge is the faced edge itself, its ends lie on the edges
beside that, and its free edge runs inside at the width everywhere.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.shapes.crossing import Grain, crosses_itself, first_meeting
from generator.calculation.shapes.segments import Segment, Spot, Traced, Waypoint
from generator.calculation.shapes.stepped import FAR, MILLION, fine_steps, grain, moved, ray, turns_back, way
from generator.errors import CalculationError
from generator.lengths import Edition, say_length

# Directions that differ by less than a thousandth run on without a corner.
_SMOOTH = MILLION * MILLION // 1000


@dataclass(frozen=True, slots=True)
class FacedRun:
    """Edges that one facing faces, clockwise one after the other, and the edges before and after them."""

    edges: tuple[str, ...]
    before: str
    after: str


@dataclass(frozen=True, slots=True)
class FacingShape:
    """The lines of a facing, clockwise: its faced edges, the end after them, its free edge, the end before them."""

    faced: Mapping[str, tuple[Segment, ...]]
    after: tuple[Segment, ...]
    free: tuple[Segment, ...]
    before: tuple[Segment, ...]


@dataclass(frozen=True, slots=True)
class _Step:
    """A point of the free edge with the way on along the faced edge."""

    spot: Grain
    ahead: Grain


def facing_shape(
    lines: Mapping[str, tuple[Segment, ...]], run: FacedRun, width: Fraction, edition: Edition
) -> FacingShape:
    r"""Return the facing of some edges of an outline.

    Every point of the faced edges is moved straight inward by the width. Where two of their lines meet in a corner,
    the moved lines are carried on until they cross, or trimmed where they do; at both ends they are carried on, or
    trimmed, to the edges of the outline beside them. So the free edge of a line that bends by an angle :math:`\theta`
    round a hollow is :math:`w \theta` longer than the line, and round an outward curve as much shorter.

    Parameters
    ----------
    lines : Mapping of str to tuple of Segment
        The edges of the outline, clockwise.
    run : FacedRun
        Those that are faced.
    width : Fraction
        Finished width of the facing [in].
    edition : Edition
        Whose words a refusal uses.

    Returns
    -------
    FacingShape
        Its lines.

    Raises
    ------
    CalculationError
        If an edge bends outward more tightly than the width, or the facing has no room in the piece.

    Examples
    --------
    A square of 8 in, faced 2 in wide along its top: both ends are 2 in long, the free edge 8 in.

    >>> from itertools import pairwise
    >>> from generator.calculation.shapes.segments import StraightLine
    >>> from generator.lengths import INCH
    >>> corners = [(Fraction(x), Fraction(y)) for x, y in ((0, 0), (8, 0), (8, 8), (0, 8), (0, 0))]
    >>> square = dict(zip("trbl", ((StraightLine(*ends),) for ends in pairwise(corners))))
    >>> found = facing_shape(square, FacedRun(("t",), "l", "r"), Fraction(2), INCH)
    >>> [(float(x), float(y)) for x, y in (found.free[0].start, found.free[0].end)]
    [(8.0, 2.0), (0.0, 2.0)]

    References
    ----------
    That a shaped facing is traced from the edge that it faces: common practice, no source. The tests lay it beside a
    general library's buffer.
    """
    said = say_length(width, edition)
    if width <= 0:
        raise CalculationError(f"a facing {said} wide is none; write how wide it is finished")
    inner = _inner(lines, run, width, said)
    after, before = (_seam(lines[name]) for name in (run.after, run.before))
    last = _end(inner, after, run.after, said)
    first = _end(_back(last.free), _back(before), run.before, said)
    _refuse_no_room(lines, run, first.free, (last.on, first.on), said)
    faced = {name: lines[name] for name in run.edges}
    return FacingShape(faced, _traced(last.beside), _traced(first.free), _traced(_back(first.beside)))


@dataclass(frozen=True, slots=True)
class _End:
    """A free edge up to the edge beside it, and that edge from the corner to there, ``on`` which stretch of it."""

    free: list[_Step]
    beside: list[_Step]
    on: int


def _inner(lines: Mapping[str, tuple[Segment, ...]], run: FacedRun, width: Fraction, said: str) -> list[_Step]:
    """The free edge as it lies inside the faced edges, not yet ended at the edges beside them."""
    inner: list[_Step] = []
    for name in run.edges:
        for segment in lines[name]:
            steps = fine_steps(segment)
            aside = [_Step(moved(one.spot, way(one.ahead), -width), way(one.ahead)) for one in steps]
            if turns_back(steps, [one.spot for one in aside]):
                raise CalculationError(
                    f"the edge '{name}' bends outward, somewhere rounder than the facing of {said} is wide, so no free "
                    "edge lies beside it: make the facing narrower, or the curve flatter"
                )
            inner = _carried_on(inner, aside, name)
    return inner


def _carried_on(before: list[_Step], after: list[_Step], name: str) -> list[_Step]:
    """Two lines one after the other: smooth, or with the corner in which they cross."""
    if not before or _is_smooth(before[-1].ahead, after[0].ahead):
        return before + after
    far, near = ray(before[-1].spot, before[-1].ahead, FAR), ray(after[0].spot, after[0].ahead, -FAR)
    met = first_meeting([*(one.spot for one in before), far], [near, *(one.spot for one in after)])
    if met is None:
        raise CalculationError(f"the facing has no corner inside '{name}'; make it narrower")
    k, j, at = met
    return [*before[: k + 1], _Step(at, before[k].ahead), _Step(at, after[max(j - 1, 0)].ahead), *after[j:]]


def _is_smooth(one: Grain, other: Grain) -> bool:
    return one[0] * other[0] + one[1] * other[1] > 0 and abs(one[0] * other[1] - one[1] * other[0]) < _SMOOTH


def _end(inner: list[_Step], beside: list[_Step], name: str, said: str) -> _End:
    """A free edge carried on or trimmed to the edge beside it, which is told from the corner where both begin."""
    far = ray(inner[-1].spot, inner[-1].ahead, FAR)
    met = first_meeting([*(one.spot for one in inner), far], [one.spot for one in beside])
    if met is None:
        raise CalculationError(
            f"the free edge of a facing {said} wide does not meet '{name}', at which it should end: make the facing "
            f"narrower, or face the edge behind '{name}' too"
        )
    k, j, at = met
    return _End([*inner[: k + 1], _Step(at, inner[k].ahead)], [*beside[: j + 1], _Step(at, beside[j].ahead)], j)


def _refuse_no_room(
    lines: Mapping[str, tuple[Segment, ...]], run: FacedRun, free: list[_Step], on: tuple[int, int], said: str
) -> None:
    """Refuse a facing whose free edge leaves the piece: what is left of the piece would be no shape."""
    names = list(lines)
    names = names[names.index(run.after) :] + names[: names.index(run.after)]
    left = [_seam(lines[name]) for name in names[: names.index(run.before) + 1]]
    # Counted from the far end, the edge before ends where its facing begins.
    left[-1] = left[-1][: len(left[-1]) - 1 - on[1]]
    left[0] = left[0][on[0] + 1 :]
    around = [one.spot for line in (_back(free), *left) for one in line]
    around = [spot for place, spot in enumerate(around) if spot != around[place - 1]]
    overlap = run.before == run.after and on[0] + on[1] > len(_seam(lines[run.after])) - 2
    if overlap or crosses_itself(around) is not None:
        told = f"a facing {said} wide has no room here: its free edge would leave the piece or cross itself"
        raise CalculationError(f"{told}; make it narrower")


def _seam(segments: tuple[Segment, ...]) -> list[_Step]:
    return [_Step(grain(one.spot), way(one.ahead)) for segment in segments for one in fine_steps(segment)]


def _back(steps: Sequence[_Step]) -> list[_Step]:
    """A line walked the other way."""
    return [_Step(one.spot, (-one.ahead[0], -one.ahead[1])) for one in reversed(steps)]


def _traced(steps: Sequence[_Step]) -> tuple[Segment, ...]:
    return (Traced(tuple(Waypoint(_spot(one.spot), _spot(one.ahead)) for one in steps)),)


def _spot(place: Grain) -> Spot:
    return Fraction(place[0], MILLION), Fraction(place[1], MILLION)

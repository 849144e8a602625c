"""A round end on a ring: the ring stands wrong side out, the round lies on its edge; three parts of a picture go out.

Inches of cloth; the upper edge of the ring begins at (0, 0), and an edge that goes round is drawn as a flat oval.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial

from generator.calculation.making_up.joined import Joined
from generator.calculation.making_up.laid import CLOCKWISE
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import Worksheet
from generator.drawing.labels import Box, Point
from generator.drawing.seams.boxes import FLAT
from generator.drawing.seams.frames import Frame
from generator.drawing.seams.paper import Paper
from generator.lengths import say_length

OVAL = 0.3  # how high an oval is, in parts of its width
APART = 0.75  # from the ring up to a round that is held above it, in parts of its width
SEEN = 0.8  # of a ring that is longer than this, in parts of its width, the far end is left out
QUARTERS = (45.0, 135.0, 225.0, 315.0)


@dataclass(frozen=True, slots=True)
class RoundEnd:
    """A round and the ring that it closes: how wide, how much of the ring is drawn, the seam's allowance [in]."""

    joined: Joined
    ring: Piece
    end: Piece
    wide: float
    high: float
    allowance: float
    ends: int

    @property
    def whole(self) -> Box:
        """The ring with the round held above it."""
        return Box(0.0, -self.wide * (APART + OVAL / 2), self.wide, self.high + self.wide * OVAL / 2)

    @property
    def closed(self) -> Box:
        """The ring with the round on it."""
        return Box(0.0, -self.wide * OVAL / 2, self.wide, self.high + self.wide * OVAL / 2)


def plan_round_end(worksheet: Worksheet, joined: Joined) -> RoundEnd | None:
    """Return what is drawn where a round is sewn to one or both edges of a ring; None elsewhere."""
    lowest, *over = joined.layers
    if over and all(layer.own == "rim" for layer in over):
        ring, end, at = lowest.pieces[0], over[0].pieces[0], over[0].at
    elif len(over) == 1 and over[0].at == "rim":
        ring, end, at = over[0].pieces[0], lowest.pieces[0], over[0].own
    else:
        return None
    return _on_ring(joined, worksheet.pieces[ring], worksheet.pieces[end], at, len(over))


def _on_ring(joined: Joined, ring: Piece, end: Piece, at: str, ends: int) -> RoundEnd | None:
    if not end.parts or not ring.parts or at not in CLOCKWISE:
        return None
    wide = float(end.finished_across)
    long = float(ring.finished_across if at in FLAT else ring.finished_along)
    allowance = float(end.edges["rim"].allowance)
    return RoundEnd(joined, ring, end, wide, min(long, SEEN * wide), allowance, ends)


def round_end_frames(plan: RoundEnd, worksheet: Worksheet) -> tuple[Frame, ...]:
    """Return the parts: quarters to quarters, sewn, and turned out where the step does that."""
    end, ring = _labels(plan)
    said = say_length(plan.end.edges["rim"].allowance, worksheet.edition)
    twice = "\nthe other end alike" if plan.ends > 1 else ""
    lay = Frame(
        "Lay",
        f"{end}, wrong side up",
        f"{ring}, wrong side out,\nquarters meet",
        plan.whole,
        partial(_lay, plan=plan),
        points=partial(_points, plan=plan),
    )
    sew = Frame("Sew", "", f"{said} from the edge{twice}", plan.closed, partial(_sew, plan=plan))
    done = Frame("Turn out", "", "right side out", plan.closed, partial(_done, plan=plan))
    return (lay, sew, done) if plan.joined.turned else (lay, sew)


def round_end_told(plan: RoundEnd, worksheet: Worksheet) -> str:
    """Return the act in a sentence or two."""
    end, ring = _labels(plan)
    said = say_length(plan.end.edges["rim"].allowance, worksheet.edition)
    both = "Both ends alike. " if plan.ends > 1 else ""
    turned = "Turned out." if plan.joined.turned else ""
    return (
        f"{end.capitalize()}, wrong side up, lies on the edge of {ring}, which stands wrong side out; quarters meet. "
        f"Sewn all round, {said} from the edge. {both}{turned}"
    ).strip()


def _labels(plan: RoundEnd) -> tuple[str, str]:
    return plan.end.label or plan.end.name, plan.ring.label or plan.ring.name


def _oval(plan: RoundEnd, y: float, beyond: float = 0.0) -> list[Point]:
    """An oval about the middle of the ring at a height; ``beyond`` is how much wider it is on each side."""
    half = plan.wide / 2 + beyond
    return [_at(plan, y, half, degree) for degree in range(0, 360, 5)]


def _at(plan: RoundEnd, y: float, half: float, degree: float) -> Point:
    angle = math.radians(degree)
    return plan.wide / 2 + half * math.cos(angle), y + half * OVAL * math.sin(angle)


def _ring(paper: Paper, plan: RoundEnd, *, hatched: bool) -> None:
    """The outside of the ring, down to its lower edge, or as far as it is shown."""
    lower = [_at(plan, plan.high, plan.wide / 2, degree) for degree in range(0, 181, 5)]
    shape = [paper.at(point) for point in ((plan.wide, 0.0), *lower, (0.0, 0.0))]
    if hatched:
        paper.canvas.hatched(shape, paper.canvas.style.outline)
    else:
        paper.canvas.area(shape, paper.canvas.style.paper, paper.canvas.style.outline)


def _placed(paper: Paper, points: Sequence[Point]) -> list[Point]:
    return [paper.at(point) for point in points]


def _lay(paper: Paper, *, plan: RoundEnd) -> None:
    """The round held above the edge of the ring, quarter over quarter."""
    canvas, style = paper.canvas, paper.canvas.style
    up = -plan.wide * APART
    _ring(paper, plan, hatched=True)
    canvas.area(_placed(paper, _oval(plan, 0.0)), style.paper, style.outline)
    for degree in QUARTERS:
        upper, lower = (paper.at(_at(plan, y, plan.wide / 2, degree)) for y in (up, 0.0))
        canvas.line((upper, lower), style.finish)
    canvas.hatched(_placed(paper, _oval(plan, up)), style.outline)
    for y in (up, 0.0):
        for degree in QUARTERS:
            ends = [paper.at(_at(plan, y, plan.wide / 2 * share, degree)) for share in (0.88, 1.06)]
            canvas.line(ends, style.cut)


def _sew(paper: Paper, *, plan: RoundEnd) -> None:
    """The round on the ring with its seam inside its edge."""
    canvas, style = paper.canvas, paper.canvas.style
    _ring(paper, plan, hatched=True)
    canvas.hatched(_placed(paper, _oval(plan, 0.0)), style.outline)
    canvas.line(_placed(paper, _oval(plan, 0.0, -plan.allowance)), style.stitch, closed=True)


def _done(paper: Paper, *, plan: RoundEnd) -> None:
    canvas, style = paper.canvas, paper.canvas.style
    _ring(paper, plan, hatched=False)
    canvas.area(_placed(paper, _oval(plan, 0.0)), style.paper, style.outline)


def _points(paper: Paper, plan: RoundEnd) -> tuple[Point, Point]:
    return paper.at((plan.wide / 2, -plan.wide * APART)), paper.at((plan.wide / 2, plan.high * 0.75))

"""Where the lines of a part of a piece lie on paper: the part comes in, exact places in inches go out."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.worked_piece import Part

WIDE, HIGH = Fraction(11, 2), Fraction(3)
THIN = Fraction(7, 10)
LONG = 6


@dataclass(frozen=True, slots=True)
class Stretch:
    """One direction of a piece on paper: its length on cloth, its length on paper, and where something is left out.

    A stretch too long for the paper keeps both its ends at the scale of the drawing; its middle is left out.
    """

    cloth: Fraction
    paper: Fraction
    scale: Fraction

    @property
    def broken(self) -> bool:
        """Whether the middle is left out."""
        return self.cloth * self.scale > self.paper

    def place(self, at: Fraction) -> Fraction | None:
        """Return the place on paper of a place on the cloth [in], None in the part that is left out."""
        if not self.broken:
            return at * self.scale
        from_start, from_end = at * self.scale, (self.cloth - at) * self.scale
        clear = self.paper * Fraction(2, 5)
        if from_start <= clear:
            return from_start
        return self.paper - from_end if from_end <= clear else None


@dataclass(frozen=True, slots=True)
class PiecePlan:
    """A rectangle or circle on paper: both stretches, and for each side the lines that run along it, from the edge in.

    ``finished`` is the finished edge (None where it is the cut edge), ``turns`` the folds of a hem outside it [in on
    cloth].
    """

    across: Stretch
    along: Stretch
    finished: dict[str, Fraction]
    turns: dict[str, Fraction]

    @property
    def paper(self) -> tuple[float, float]:
        """How wide and how high it is on paper."""
        return float(self.across.paper), float(self.along.paper)


def plan_part(part: Part, wide: Fraction = WIDE) -> PiecePlan:
    """Return the plan of a part of a piece with its edges, at most ``wide`` [in] on paper."""
    scale = piece_scale(part.cut_across, part.cut_along, wide)
    finished = {side: edge.allowance for side, edge in part.edges.items() if edge.allowance > 0}
    turns = {
        side: edge.end.first
        for side, edge in part.edges.items()
        if edge.end.kind == "hem" and 0 < edge.end.first < edge.allowance
    }
    return PiecePlan(
        Stretch(part.cut_across, min(part.cut_across * scale, wide), scale),
        Stretch(part.cut_along, min(part.cut_along * scale, HIGH), scale),
        finished,
        turns,
    )


def piece_scale(across: Fraction, along: Fraction, wide: Fraction = WIDE) -> Fraction:
    """Return paper over cloth [-]: the whole piece fits, unless it is so long that it would come out too thin to read.

    Examples
    --------
    A square of 11 in must fit into 3 in; a strip 55 in long and 1 in wide would come out 1/10 in wide, and is drawn
    7/10 in wide with its middle left out.

    >>> piece_scale(Fraction(11), Fraction(11)), piece_scale(Fraction(55), Fraction(1))
    (Fraction(3, 11), Fraction(7, 10))
    """
    whole = min(Fraction(1), wide / across, HIGH / along)
    shorter, longer = sorted((across, along))
    return max(whole, min(Fraction(1), THIN / shorter)) if longer > LONG * shorter else whole

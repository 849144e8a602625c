"""What is seen when tucks are looked at from their ends; tucks and rows come in, pairs with their gaps go out.

Lengths across the tucks are exact and true to each other; the plies are drawn thicker than cloth is.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.worked import TuckSet, Turn
from generator.drawing.labels import Point
from generator.lengths import Edition, say_length

ROUNDING = 5


@dataclass(frozen=True, slots=True)
class TuckPair:
    """Two neighbouring tucks at a tack row; all lengths [in], places from the left tuck's foot.

    ``space`` is what shows between them, less than nothing where one covers the other's stitching or its fold.
    ``top`` tells which of the two lies on top where they overlap.
    """

    tucks: tuple[int, int]
    turns: tuple[Turn, Turn]
    depths: tuple[Fraction, Fraction]
    pitch: Fraction
    space: Fraction
    top: int

    @property
    def facing(self) -> bool:
        """Whether the two folds look at each other."""
        return self.turns == (Turn.RIGHT, Turn.LEFT)

    @property
    def folds(self) -> tuple[Fraction, Fraction]:
        """Where the two folded edges lie."""
        signs = {Turn.LEFT: -1, Turn.RIGHT: 1, Turn.UPRIGHT: 0}
        left, right = (signs[turn] * depth for turn, depth in zip(self.turns, self.depths, strict=True))
        return Fraction(left), self.pitch + right


def pair_of(tucks: TuckSet, left: int, turns: tuple[Turn, Turn], *, right_last: bool) -> TuckPair:
    """Return the pair of tucks ``left`` and the next, turned as told.

    Facing: pitch less both depths. One way: pitch less the depth of the tuck that lies on the space between.

    References
    ----------
    Derived from the places of the folds: each lies a depth beside its foot.
    """
    depths = tucks.depths[left - 1], tucks.depths[left]
    pitch = tucks.stitching[left] - tucks.stitching[left - 1]
    covered = (depths[0] if turns[0] is Turn.RIGHT else 0) + (depths[1] if turns[1] is Turn.LEFT else 0)
    on_top = left + 1 if right_last else left
    if turns == (Turn.RIGHT, Turn.RIGHT):
        on_top = left
    elif turns == (Turn.LEFT, Turn.LEFT):
        on_top = left + 1
    return TuckPair((left, left + 1), turns, depths, pitch, pitch - covered, on_top)


def pair_words(pair: TuckPair, edition: Edition) -> tuple[str, str]:
    """Return the name of a pair and what shows between the two, in words."""
    size = say_length(abs(pair.space), edition)
    if pair.facing:
        met = (
            "the folds meet"
            if pair.space == 0
            else f"a gap of {size}"
            if pair.space > 0
            else f"folds overlap by {size}"
        )
        return "Facing pair", met
    if pair.turns[0] is not pair.turns[1]:
        return "Back to back", f"{size} shows"
    if pair.space > 0:
        return "Turned one way", f"{size} shows"
    if pair.space == 0:
        return "Meeting tucks", "each fold reaches the next stitching"
    return "Blind tucks", f"each covers the next stitching by {size}"


def rounded(points: Sequence[Point], radius: float) -> tuple[Point, ...]:
    """Return a line with its corners rounded; a corner keeps to half of its shorter side."""
    smooth = [points[0]]
    for before, corner, after in zip(points, points[1:], points[2:], strict=False):
        start, end = _towards(corner, before, radius), _towards(corner, after, radius)
        for step in range(ROUNDING + 1):
            part = step / ROUNDING
            weights = (1 - part) ** 2, 2 * part * (1 - part), part**2
            smooth.append(
                (
                    sum(weight * point[0] for weight, point in zip(weights, (start, corner, end), strict=True)),
                    sum(weight * point[1] for weight, point in zip(weights, (start, corner, end), strict=True)),
                )
            )
    return (*smooth, points[-1])


def _towards(corner: Point, other: Point, radius: float) -> Point:
    across, down = other[0] - corner[0], other[1] - corner[1]
    length = (across**2 + down**2) ** 0.5
    share = min(radius, length / 2) / length if length else 0.0
    return corner[0] + across * share, corner[1] + down * share

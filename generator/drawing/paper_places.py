"""Places on the paper of a shape: its lines come in, where it is named and what lies right of its fold go out."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from generator.calculation.shapes.tuck_ends import crossed_edges
from generator.calculation.worked_piece import Part, Shaped

Spots = Sequence[tuple[Fraction, Fraction]]
NARROW = 3  # a shape that is less high has no room for its name beside those of its edges


def name_place(part: Part, shape: Shaped, *, on_fold: bool) -> tuple[Fraction, Fraction]:
    """Return where a shape is named: in its middle, of a narrow one beside that, where no edge has its name."""
    wide, beside = (Fraction(3, 4), Fraction(5, 8)) if on_fold else (Fraction(1, 2), Fraction(1, 4))
    top, bottom = _reach_at(shape, part.finished_across * wide)
    if bottom - top >= NARROW:
        return part.finished_across * wide, (top + bottom) / 2
    return part.finished_across * beside, sum(_reach_at(shape, part.finished_across * beside), Fraction(0)) / 2


def _reach_at(shape: Shaped, at: Fraction) -> tuple[Fraction, Fraction]:
    """From where to where the cloth reaches at a line down the shape, at its longest."""
    heights = [height for _, height, _ in crossed_edges(shape.lines, at)]
    return max(zip(heights[::2], heights[1::2], strict=False), key=lambda run: run[1] - run[0])


def right_of(spots: Spots, fold: Fraction) -> Spots:
    """Return what lies right of a fold of a line that begins or ends there, or crosses it."""
    found = []
    for (x, y), (to_x, to_y) in pairwise(spots):
        found += [(x, y)] if x >= fold else []
        if (x - fold) * (to_x - fold) < 0:
            found.append((fold, y + (to_y - y) * (fold - x) / (to_x - x)))
    return (*found, spots[-1]) if spots[-1][0] >= fold else tuple(found)

"""Shapes cut on a fold: a closed line and a middle come in, whether both halves are alike goes out."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from generator.calculation.shapes.crossing import Grain
from generator.calculation.shapes.segments import Spot
from generator.calculation.shapes.stepped import MILLION, grain

# Nobody can cut so little; a drawn curve may leave the true one by half of it.
_ALIKE = MILLION // 250


def folds_on_itself(around: Sequence[Spot], middle: Fraction) -> bool:
    """Return whether a shape lies on itself when it is folded along an upright line.

    Every corner, folded over to the other side, must lie on the line, within 1/250 in.

    Parameters
    ----------
    around : sequence of tuple of Fraction
        The corners of the closed line, in order [in].
    middle : Fraction
        How far across the fold lies [in].

    Returns
    -------
    bool
        Whether both halves are alike.

    Examples
    --------
    >>> square = [(Fraction(x), Fraction(y)) for x, y in ((0, 0), (4, 0), (4, 4), (0, 4))]
    >>> folds_on_itself(square, Fraction(2)), folds_on_itself(square, Fraction(1))
    (True, False)

    References
    ----------
    Derived in the docstring above; the limit is our own.
    """
    spots = [grain(spot) for spot in around]
    stretches = [*pairwise(spots), (spots[-1], spots[0])]
    twice = round(2 * middle * MILLION)
    return all(any(_is_on((twice - x, y), stretch) for stretch in stretches) for x, y in spots)


def _is_on(spot: Grain, stretch: tuple[Grain, Grain]) -> bool:
    """Whether a place lies on a stretch of line, as near as nobody can cut."""
    (x, y), (to_x, to_y) = stretch
    run, rise = to_x - x, to_y - y
    away, down = spot[0] - x, spot[1] - y
    long = run * run + rise * rise
    along = min(max(away * run + down * rise, 0), long)
    # The nearest place of the stretch, all told times its square.
    left, over = away * long - run * along, down * long - rise * along
    return left * left + over * over <= (_ALIKE * long) ** 2 if long else away * away + down * down <= _ALIKE**2

"""Pattern that repeats along the cloth: drops that must match come in, how far apart they begin goes out."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from generator.errors import CalculationError
from generator.lengths import round_up


def matched_drops(straight: int, shifted: int, cut: Fraction, repeat: Fraction) -> tuple[tuple[bool, Fraction], ...]:
    r"""Return the drops in the order in which they need least cloth, each with the cloth up to the next.

    Drops that are alike begin at the same place of the pattern, so whole repeats apart: :math:`\lceil C/R \rceil R`. In
    a half drop every other breadth begins half a repeat further on; from one of each sort to the other it is the least
    :math:`o \ge C` that is R/2 more than whole repeats. With n drops and k changes of sort the cloth is :math:`(n-1-k)
    \lceil C/R \rceil R + k\,o + C`: it grows or falls evenly with k, so k is as small or as great as it can be.

    Parameters
    ----------
    straight, shifted : int
        How many drops begin at the place chosen, and how many half a repeat further on [-].
    cut : Fraction
        Cut length of a drop, C [in].
    repeat : Fraction
        From one place of the pattern to the next like it, along the cloth, R [in].

    Returns
    -------
    tuple of (bool, Fraction)
        For each drop whether it is a shifted one, and the cloth from its top to that of the next; C for the last [in].

    Raises
    ------
    CalculationError
        If the repeat is not positive.

    Examples
    --------
    Nine drops of 94 1/2 with a repeat of 27: four repeats, 108, eight times, and 94 1/2 is 958 1/2. Without a pattern
    850 1/2 would do.

    >>> drops = matched_drops(9, 0, Fraction(189, 2), Fraction(27))
    >>> sum(height for _, height in drops)
    Fraction(1917, 2)

    Two and two in a half drop: 94 1/2 is just three repeats and a half, so nothing is lost when they change each time.

    >>> matched_drops(2, 2, Fraction(189, 2), Fraction(27))[1]
    (True, Fraction(189, 2))
    >>> sum(height for _, height in matched_drops(2, 2, Fraction(189, 2), Fraction(27)))
    Fraction(378, 1)

    References
    ----------
    Derived above. That drops are cut at the same place of the pattern is common practice, no source.
    """
    if repeat <= 0:
        raise CalculationError("the pattern repeat must be more than 0; measure from one place to the next like it")
    like = round_up(cut, repeat)
    unlike = round_up(cut - repeat / 2, repeat) + repeat / 2
    if unlike < like:
        pairs = min(straight, shifted)
        first = shifted > straight
        sorts = [*([first, not first] * pairs), *([first] * (abs(straight - shifted)))]
    else:
        sorts = [False] * straight + [True] * shifted
    heights = [like if one is other else unlike for one, other in pairwise(sorts)]
    return tuple(zip(sorts, [*heights, cut], strict=True)) if sorts else ()

"""Tucks that hold rods, and rings along them: thickness and lengths come in, depth and places go out; exact inches."""

from __future__ import annotations

import math
from fractions import Fraction

from generator.calculation.irrational import PI_ABOVE
from generator.calculation.panel_ends import edge_play
from generator.calculation.refused import more_than_nothing, not_negative
from generator.errors import CalculationError
from generator.lengths import Edition, read_length, say_length

# Farther apart than this cloth sags between the rings of a blind. Common practice, no source.
_FARTHEST = {"inch": read_length("12 in"), "metric": read_length("30 cm")}


def rod_depth(rod: Fraction, edition: Edition) -> Fraction:
    r"""Return the least depth of a tuck that a round rod slides into.

    The two plies of the tuck go once round the rod, so each goes half way round it, and it must slide:
    :math:`d \ge \pi r / 2 + 1/8` in (3 mm), for a rod r thick.

    Parameters
    ----------
    rod : Fraction
        Its thickness, r [in].
    edition : Edition
        The play is a whole number of its unit.

    Returns
    -------
    Fraction
        The least depth, d [in], rounded outward with pi.

    Raises
    ------
    CalculationError
        If the rod has no thickness.

    Examples
    --------
    A rod of 3/8 in: 0.589 and 0.125 make 0.714 in, so a tuck of 3/4 in holds it and one of 5/8 in does not.

    >>> from generator.lengths import INCH
    >>> least = rod_depth(Fraction(3, 8), INCH)
    >>> Fraction(5, 8) < least < Fraction(3, 4), round(float(least), 3)
    (True, 0.714)

    References
    ----------
    Derived in the docstring above; the play: common practice, no source.
    """
    return PI_ABOVE * more_than_nothing(rod, "the thickness of a rod") / 2 + edge_play(edition)


def ring_places(length: Fraction, from_sides: Fraction, edition: Edition) -> tuple[Fraction, ...]:
    r"""Return where the rings along a rod are sewn on, evenly, no farther apart than 12 in (30 cm).

    Between the outer two lies :math:`w = L - 2 s`; :math:`k = \lceil w / 12 \rceil` equal spaces divide it.

    Parameters
    ----------
    length : Fraction
        Finished length of the tuck, L [in].
    from_sides : Fraction
        The outer rings lie so far from its ends, s [in].
    edition : Edition
        Its unit.

    Returns
    -------
    tuple of Fractions
        Places from one end [in]: two at least.

    Raises
    ------
    CalculationError
        If the outer rings would meet or pass each other.

    Examples
    --------
    A blind 30 in wide, 3 in from the sides: 24 in are two spaces of 12 in.

    >>> from generator.lengths import INCH
    >>> [str(place) for place in ring_places(Fraction(30), Fraction(3), INCH)]
    ['3', '15', '27']

    References
    ----------
    Common practice, no source.
    """
    between = more_than_nothing(length, "the length of a tuck") - 2 * not_negative(from_sides, "the place of a ring")
    if between <= 0:
        raise CalculationError(
            f"rings {say_length(from_sides, edition)} from both sides leave nothing between them on "
            f"{say_length(length, edition)}; put them nearer to the sides"
        )
    spaces = math.ceil(between / _FARTHEST[edition.name])
    return tuple(from_sides + between * number / spaces for number in range(spaces + 1))

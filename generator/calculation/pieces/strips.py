"""Strips sewn end to end: their length and number come in, what they come to goes out, and back."""

from __future__ import annotations

import math
from fractions import Fraction

from generator.calculation.refused import more_than_nothing, not_negative
from generator.errors import CalculationError


def lost_in_straight_join(allowance: Fraction) -> Fraction:
    """Return the length that two strips lose when they are joined straight across.

    Both ends give one allowance: 2 a.

    Parameters
    ----------
    allowance : Fraction
        Seam allowance, a [in].

    Returns
    -------
    Fraction
        Length lost in one join [in].

    Examples
    --------
    >>> lost_in_straight_join(Fraction(1, 4))
    Fraction(1, 2)

    References
    ----------
    Derived in the docstring above.
    """
    return 2 * not_negative(allowance, "the allowance of a join")


def lost_in_diagonal_join(width: Fraction) -> Fraction:
    """Return the length that two straight-cut strips lose when they are joined diagonally.

    The strips are crossed at right angles, one wholly over the other, and sewn from corner to corner of the square in
    which they cross. Unfolded, they share that square: one strip width is lost, whatever is trimmed off behind.

    Parameters
    ----------
    width : Fraction
        Width of the strips as cut [in].

    Returns
    -------
    Fraction
        Length lost in one join [in].

    Examples
    --------
    >>> lost_in_diagonal_join(Fraction(3, 2))
    Fraction(3, 2)

    References
    ----------
    Derived in the docstring above.
    """
    return more_than_nothing(width, "the width of the strips")


def joined_length(number: int, each: Fraction, lost: Fraction) -> Fraction:
    """Return the length of equal strips sewn end to end.

    There is one join fewer than strips: L = N l - (N - 1) j.

    Parameters
    ----------
    number : int
        Number of strips, N [-].
    each : Fraction
        Length of one strip, l [in].
    lost : Fraction
        Length lost in one join, j [in].

    Returns
    -------
    Fraction
        Joined length, L [in]; nothing for no strips.

    Raises
    ------
    CalculationError
        If a strip is not longer than what a join takes.

    Examples
    --------
    Eighteen strips of 54 in lose 1 1/2 in in each of 17 joins: 972 - 25 1/2 = 946 1/2.

    >>> joined_length(18, Fraction(54), Fraction(3, 2))
    Fraction(1893, 2)
    >>> joined_length(0, Fraction(54), Fraction(3, 2))
    Fraction(0, 1)

    References
    ----------
    Derived in the docstring above.
    """
    if more_than_nothing(each, "the length of a strip") <= not_negative(lost, "the length lost in a join"):
        raise CalculationError("the strips are shorter than what their joins take; cut longer or narrower strips")
    return number * each - (number - 1) * lost if number > 0 else Fraction(0)


def strips_needed(length: Fraction, each: Fraction, lost: Fraction) -> int:
    """Return the least number of equal strips that, joined, are at least a length.

    A strip more adds l - j, so N = ceil((L - j) / (l - j)), at least one: rounded up, since a strip too short cannot
    be let out.

    Parameters
    ----------
    length : Fraction
        Length wanted, L [in].
    each : Fraction
        Length of one strip, l [in].
    lost : Fraction
        Length lost in one join, j [in].

    Returns
    -------
    int
        Number of strips, N [-].

    Examples
    --------
    950 in from strips of 54 in: straight joins that take 1/2 in leave 53 1/2, 949 1/2 / 53 1/2 = 17.7, so 18;
    diagonal joins of 1 1/2 in leave 52 1/2, 948 1/2 / 52 1/2 = 18.07, so 19.

    >>> strips_needed(Fraction(950), Fraction(54), Fraction(1, 2))
    18
    >>> strips_needed(Fraction(950), Fraction(54), Fraction(3, 2))
    19
    >>> strips_needed(Fraction(10), Fraction(54), Fraction(1, 2))
    1

    References
    ----------
    Derived in the docstring above.
    """
    gained = joined_length(2, each, lost) - each
    return max(1, math.ceil((more_than_nothing(length, "the length of the joined strip") - lost) / gained))

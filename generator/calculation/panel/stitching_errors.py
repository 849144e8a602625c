"""How errors of single stitching lines add up over a panel: their number and size come in, the whole error goes out."""

from __future__ import annotations

import math
from fractions import Fraction

from generator.calculation.refused import not_negative, whole_number

_SCALE = 10**6


def systematic_error(count: int, off_each: Fraction) -> Fraction:
    r"""Return how much a panel is off when every stitching line is off the same way.

    A tuck takes cloth on both sides of its fold, so an error of depth counts twice in each: :math:`2 n \varepsilon`.

    Parameters
    ----------
    count : int
        Number of tucks, n [-].
    off_each : Fraction
        Error of every stitching line, eps [in]; positive is too deep.

    Returns
    -------
    Fraction
        Error of the finished width [in]; positive is too narrow.

    Raises
    ------
    CalculationError
        If ``count`` is negative.

    Examples
    --------
    17 tucks, each 1/32 in too deep: 17/16 in, more than an inch.

    >>> systematic_error(17, Fraction(1, 32))
    Fraction(17, 16)

    References
    ----------
    Derived in the docstring above.
    """
    return 2 * whole_number(count, "the number of tucks") * Fraction(off_each)


def random_error(count: int, deviation: Fraction) -> Fraction:
    r"""Return how much a panel may be off when every stitching line errs by itself.

    Errors that do not know of each other partly cancel: their sum grows with the root of their number,
    :math:`2 \varepsilon \sqrt n`.

    Parameters
    ----------
    count : int
        Number of tucks, n [-].
    deviation : Fraction
        Standard deviation of one stitching line, eps [in].

    Returns
    -------
    Fraction
        Standard deviation of the finished width [in], never too small and by less than a millionth too large.

    Raises
    ------
    CalculationError
        If a number is negative.

    Examples
    --------
    16 tucks, 1/32 in each: 2/32 x 4 = 1/4 in, where the systematic error would be a whole inch.

    >>> random_error(16, Fraction(1, 32))
    Fraction(1, 4)
    >>> random_error(0, Fraction(1, 32))
    Fraction(0, 1)

    References
    ----------
    Derived in the docstring above.
    """
    square = whole_number(count, "the number of tucks") * _SCALE**2
    root = math.isqrt(square)
    above = root if root * root == square else root + 1
    return 2 * not_negative(deviation, "the deviation") * Fraction(above, _SCALE)

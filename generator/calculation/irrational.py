"""Pi and square roots as exact fractions with a stated direction; squares come in, bounds go out."""

from __future__ import annotations

from fractions import Fraction
from math import isqrt

from generator.errors import CalculationError

PI_BELOW = Fraction(314_159_265_358_979, 10**14)
"""Pi is more than this."""
PI_ABOVE = Fraction(314_159_265_358_980, 10**14)
"""Pi is less than this."""

_FINENESS = 10**9


def root_below(square: Fraction) -> Fraction:
    r"""Return a fraction that is at most the square root and less than one thousand-millionth below it.

    With :math:`s = p / q` the root is :math:`\sqrt{p q} / q`, and the whole root of a whole number is known exactly.
    A root that is a fraction itself is returned as it is.

    Parameters
    ----------
    square : Fraction
        The number under the root sign, s [in², or a plain number].

    Returns
    -------
    Fraction
        The root rounded down [in, or a plain number].

    Raises
    ------
    CalculationError
        If ``square`` is less than nothing.

    Examples
    --------
    The root of 9/4 is 3/2; the root of 2 begins 1.414213562 and goes on.

    >>> root_below(Fraction(9, 4))
    Fraction(3, 2)
    >>> root_below(Fraction(2)) == Fraction("1.414213562")
    True

    References
    ----------
    Derived in the docstring above.
    """
    if square < 0:
        raise CalculationError("a number less than nothing has no square root")
    whole = isqrt(square.numerator * square.denominator * _FINENESS**2)
    return Fraction(whole, square.denominator * _FINENESS)


def root_above(square: Fraction) -> Fraction:
    """Return a fraction that is at least the square root and less than one thousand-millionth above it.

    It is the root rounded down where that is exact, else one step of the same fineness more.

    Parameters
    ----------
    square : Fraction
        The number under the root sign [in², or a plain number].

    Returns
    -------
    Fraction
        The root rounded up [in, or a plain number].

    Examples
    --------
    >>> root_above(Fraction(9, 4))
    Fraction(3, 2)
    >>> root_above(Fraction(2)) == Fraction("1.414213563")
    True

    References
    ----------
    Derived in the docstring above.
    """
    below = root_below(square)
    return below if below**2 == square else below + Fraction(1, square.denominator * _FINENESS)

"""The doorkeepers of the calculations: a number comes in, the same number goes out, or a sentence says why not."""

from __future__ import annotations

from fractions import Fraction

from generator.errors import CalculationError


def more_than_nothing(length: Fraction, what: str) -> Fraction:
    """Return a length that is more than nothing.

    Parameters
    ----------
    length : Fraction
        The length [in].
    what : str
        What it is, as a teacher says it: ``the depth of a tuck``.

    Returns
    -------
    Fraction
        The same length [in].

    Raises
    ------
    CalculationError
        If the length is nothing or less.
    TypeError
        If it is a float, which is never exact.

    Examples
    --------
    >>> more_than_nothing(Fraction(3, 8), "the depth of a tuck")
    Fraction(3, 8)
    """
    if exact(length, what) <= 0:
        raise CalculationError(f"{what} must be more than nothing, not {length}")
    return length


def not_negative(length: Fraction, what: str) -> Fraction:
    """Return a length that is nothing or more.

    Parameters
    ----------
    length : Fraction
        The length [in].
    what : str
        What it is, as a teacher says it: ``a margin``.

    Returns
    -------
    Fraction
        The same length [in].

    Raises
    ------
    CalculationError
        If the length is less than nothing.
    TypeError
        If it is a float, which is never exact.

    Examples
    --------
    >>> not_negative(Fraction(0), "a margin")
    Fraction(0, 1)
    """
    if exact(length, what) < 0:
        raise CalculationError(f"{what} cannot be less than nothing, it is {length}")
    return length


def whole_number(count: int, what: str, *, least: int = 0) -> int:
    """Return a number of things that is whole and large enough.

    Parameters
    ----------
    count : int
        The number [-].
    what : str
        What is counted, as a teacher says it: ``the number of tucks``.
    least : int
        The smallest number allowed [-].

    Returns
    -------
    int
        The same number [-].

    Raises
    ------
    CalculationError
        If the number is smaller than ``least``.
    TypeError
        If it is not a whole number.

    Examples
    --------
    >>> whole_number(0, "the number of tucks")
    0
    """
    if isinstance(count, bool) or not isinstance(count, int):
        raise TypeError(f"{what} is counted in whole numbers, not in {type(count).__name__}")
    if count < least:
        raise CalculationError(f"{what} must be {least} or more, not {count}")
    return count


def exact(length: Fraction, what: str) -> Fraction:
    """Return a length that is exact.

    Parameters
    ----------
    length : Fraction
        The length [in].
    what : str
        What it is, as a teacher says it.

    Returns
    -------
    Fraction
        The same length [in].

    Raises
    ------
    TypeError
        If it is neither a Fraction nor a whole number.

    Examples
    --------
    >>> exact(Fraction(1, 3), "the spacing")
    Fraction(1, 3)
    """
    if isinstance(length, bool) or not isinstance(length, (int, Fraction)):
        raise TypeError(f"{what} is an exact Fraction of an inch, not a {type(length).__name__}")
    return length

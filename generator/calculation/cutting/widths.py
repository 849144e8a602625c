"""Widths of cloth joined for a plain piece wider than the cloth: its size comes in, the widths to cut go out."""

from __future__ import annotations

from fractions import Fraction

from generator.errors import CalculationError
from generator.lengths import round_down, round_up

_LEAST_PART = 4
"""A part width is this many allowances wide at least, or it is all seam; common practice, no source."""


def joined_widths(
    size: Fraction, width: Fraction, allowance: Fraction, parts: int, mark: Fraction
) -> tuple[int, Fraction, Fraction]:
    r"""Return the widths that a plain piece is joined from: whole ones, and a part width at one or at both sides.

    Each join takes an allowance of both widths. With m whole widths and k parts (one at the outer edge, or two, so that
    no join lies in the middle of a round) each part is :math:`p = (S - m W + 2 a (m + k - 1)) / k`; m is as great as it
    can be. A part of less than four allowances is cut wider, and the whole widths narrower.

    Parameters
    ----------
    size : Fraction
        Cut size across of the whole piece, S, more than W [in].
    width : Fraction
        Usable width of the cloth, W [in].
    allowance : Fraction
        Seam allowance of a join, a [in].
    parts : int
        k, 1 or 2 [-].
    mark : Fraction
        What the ruler shows: whole widths are rounded down to it, parts up [in].

    Returns
    -------
    tuple of (int, Fraction, Fraction)
        How many whole widths, how wide each is cut, and how wide a part; 0 where whole widths are just enough [in].

    Raises
    ------
    CalculationError
        If the cloth is too narrow to be joined with such allowances.

    Examples
    --------
    110 on 45 with 1/2: two wholes are 89, and the part is 110 - 90 + 2 = 22.

    >>> quarter, half = Fraction(1, 4), Fraction(1, 2)
    >>> joined_widths(Fraction(110), Fraction(45), half, 1, quarter)
    (2, Fraction(45, 1), Fraction(22, 1))

    A round of 60 on 45: one whole in the middle, and at each side (60 - 45 + 2) / 2 = 8 1/2.

    >>> joined_widths(Fraction(60), Fraction(45), half, 2, quarter)
    (1, Fraction(45, 1), Fraction(17, 2))

    89 1/2 would leave a part of 1 1/2. It is cut 2 wide; each of two wholes gives a quarter of an inch for it.

    >>> joined_widths(Fraction(179, 2), Fraction(45), half, 1, quarter)
    (2, Fraction(179, 4), Fraction(2, 1))

    References
    ----------
    Derived above. That the part lies on the outer edge: *Ellesmere Guardian*, 24 May 1935 (from memory).
    """
    least = _LEAST_PART * allowance
    whole = round_down(width, mark)
    gains = whole - 2 * allowance
    if allowance <= 0 or whole <= 2 * least:
        raise CalculationError(
            "widths are joined with a seam allowance of more than 0, on cloth that is eight allowances wide at least"
        )
    wholes = int((size - 2 * allowance) // gains)
    if wholes * gains + 2 * allowance == size:
        return wholes, whole, Fraction(0)
    without = size + 2 * allowance * (wholes + parts - 1)
    if without - wholes * whole < parts * least:
        whole = round_down((without - parts * least) / wholes, mark)
    return wholes, whole, round_up((without - wholes * whole) / parts, mark)

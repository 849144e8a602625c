"""The formulas of a tuck and of a row of equal tucks: exact lengths in inches come in, exact lengths go out."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.refused import more_than_nothing, not_negative, whole_number
from generator.errors import CalculationError


def tuck_take_up(count: int, depth: Fraction) -> Fraction:
    r"""Return the length of cloth that a row of equal tucks hides.

    The cloth runs from the stitching to the fold and back, so a tuck hides twice its depth: :math:`T = 2 n d`.

    Parameters
    ----------
    count : int
        Number of tucks, n [-]; zero is a plain panel.
    depth : Fraction
        Stitching to folded edge of one tuck, d [in].

    Returns
    -------
    Fraction
        Cloth hidden by the row, T [in]; cut length = finished length + T + allowances.

    Raises
    ------
    CalculationError
        If ``count`` is negative or ``depth`` is not positive.

    Notes
    -----
    Spacing does not enter. Cloth thickness is neglected; a measured sample replaces this value.

    Examples
    --------
    Five tucks of 3/8 in: each hides 3/4 in, five hide 15/4 in.

    >>> tuck_take_up(5, Fraction(3, 8))
    Fraction(15, 4)
    >>> tuck_take_up(0, Fraction(3, 8))
    Fraction(0, 1)

    References
    ----------
    L. I. Baldt, *Clothing for Women*, Lippincott 1916, "Decoration: Self-Trimmings".
    """
    return 2 * whole_number(count, "the number of tucks") * more_than_nothing(depth, "the depth of a tuck")


def pitch(spacing: Fraction, take_up: Fraction) -> Fraction:
    r"""Return the distance from stitching to stitching on the finished panel.

    Between two fold marks lies half of each neighbour's hidden cloth, together one take-up: :math:`p = m - u`.

    Parameters
    ----------
    spacing : Fraction
        Fold mark to fold mark on the flat cloth, m [in].
    take_up : Fraction
        Cloth hidden by one tuck, u [in]: twice the depth, or as measured on a sample.

    Returns
    -------
    Fraction
        Stitching to stitching, p [in].

    Raises
    ------
    CalculationError
        If nothing is left between the stitching lines.

    Examples
    --------
    Marks 1 1/2 in apart, tucks 3/8 in deep: 3/2 - 3/4 = 3/4 in.

    >>> pitch(Fraction(3, 2), Fraction(3, 4))
    Fraction(3, 4)

    References
    ----------
    Derived in the docstring above.
    """
    more_than_nothing(spacing, "the spacing")
    if spacing <= more_than_nothing(take_up, "the take-up of a tuck"):
        raise CalculationError(
            f"a spacing of {spacing} in leaves nothing between tucks that take up {take_up} in each: "
            f"the spacing must be more than {take_up} in"
        )
    return spacing - take_up


def spacing_for(pitch: Fraction, left_take_up: Fraction, right_take_up: Fraction) -> Fraction:
    r"""Return the distance between the fold marks of two neighbours, which may be of unequal depth.

    From the left fold it is half its hidden cloth to its stitching, then the pitch, then half of the right one's:
    :math:`m = u_l / 2 + p + u_r / 2`, which is d + p + d where nothing was measured.

    Parameters
    ----------
    pitch : Fraction
        Stitching to stitching on the finished panel, p [in].
    left_take_up, right_take_up : Fraction
        Cloth hidden by each of the two tucks, u [in].

    Returns
    -------
    Fraction
        Fold mark to fold mark on the flat cloth, m [in].

    Raises
    ------
    CalculationError
        If a length is not positive.

    Examples
    --------
    Tucks 1/2 in and 5/8 in deep, 2 in from stitching to stitching: 1/2 + 2 + 5/8 = 25/8 in.

    >>> spacing_for(Fraction(2), Fraction(1), Fraction(5, 4))
    Fraction(25, 8)

    References
    ----------
    Derived in the docstring above.
    """
    halves = more_than_nothing(left_take_up, "the take-up of a tuck") / Fraction(2)
    halves += more_than_nothing(right_take_up, "the take-up of a tuck") / Fraction(2)
    return halves + more_than_nothing(pitch, "the pitch")


def visible_space(pitch: Fraction, depth: Fraction) -> Fraction:
    r"""Return what shows of the ground beside a tuck that lies flat.

    The tuck rests on the pitch with its whole depth: :math:`v = p - d`. More than nothing: spaced tucks; nothing:
    meeting tucks; less: blind tucks, each of which covers the next one's stitching.

    Parameters
    ----------
    pitch : Fraction
        Stitching to stitching on the finished panel, p [in].
    depth : Fraction
        Depth of the tuck that lies on it, d [in], as sewn and never as measured in take-up.

    Returns
    -------
    Fraction
        Visible space, v [in]; negative for blind tucks.

    Raises
    ------
    CalculationError
        If a length is not positive.

    Notes
    -----
    For neighbours that all lie one way. Two that face each other share the pitch.

    Examples
    --------
    Tucks 1/2 in deep, 1/2 in from stitching to stitching: each fold meets the next stitching.

    >>> visible_space(Fraction(1, 2), Fraction(1, 2))
    Fraction(0, 1)

    References
    ----------
    *Hand Sewing Lessons*, Model 6 (the meeting tucks of the example).
    """
    return more_than_nothing(pitch, "the pitch") - more_than_nothing(depth, "the depth of a tuck")


def finished_width(count: int, pitch: Fraction, margins: tuple[Fraction, Fraction]) -> Fraction:
    r"""Return the finished width of a panel of equal tucks.

    Between n stitching lines lie n - 1 pitches, beyond them the margins: :math:`F = e_l + (n - 1) p + e_r`.

    Parameters
    ----------
    count : int
        Number of tucks, n [-]; with one tuck or none only the margins count.
    pitch : Fraction
        Stitching to stitching, p [in].
    margins : tuple of two Fractions
        Finished edge to the nearest stitching, left and right, e [in].

    Returns
    -------
    Fraction
        Finished width across the tucks, F [in].

    Raises
    ------
    CalculationError
        If a length is negative or the pitch nothing.

    Examples
    --------
    17 tucks, 3/4 in from stitching to stitching, margins 3/4 in: 3/4 + 16 x 3/4 + 3/4 = 13 1/2 in.

    >>> finished_width(17, Fraction(3, 4), (Fraction(3, 4), Fraction(3, 4)))
    Fraction(27, 2)
    >>> finished_width(1, Fraction(3, 4), (Fraction(2), Fraction(3)))
    Fraction(5, 1)

    References
    ----------
    Derived in the docstring above.
    """
    gaps = max(whole_number(count, "the number of tucks") - 1, 0)
    left, right = margins
    edges = not_negative(left, "a margin") + not_negative(right, "a margin")
    return edges + gaps * more_than_nothing(pitch, "the pitch")


def cut_width(finished: Fraction, take_up: Fraction, allowances: tuple[Fraction, Fraction]) -> Fraction:
    r"""Return the width to cut for a tucked panel.

    The cloth is what shows, what the tucks hide and what lies beyond the edges: :math:`L = F + T + A_l + A_r`.

    Parameters
    ----------
    finished : Fraction
        Finished width across the tucks, F [in].
    take_up : Fraction
        Cloth hidden by all tucks together, T [in]; nothing for a plain panel.
    allowances : tuple of two Fractions
        Cloth beyond the finished edge, left and right, A [in].

    Returns
    -------
    Fraction
        Width to cut, L [in].

    Raises
    ------
    CalculationError
        If a length is negative.

    Examples
    --------
    13 1/2 in finished, 17 tucks that hide 3/4 in each, seams of 1/2 in: 27/2 + 51/4 + 1 = 27 1/4 in.

    >>> cut_width(Fraction(27, 2), Fraction(51, 4), (Fraction(1, 2), Fraction(1, 2)))
    Fraction(109, 4)

    References
    ----------
    L. I. Baldt, *Clothing for Women*, Lippincott 1916 (finished width and hidden cloth; the allowances derived above).
    """
    left, right = allowances
    beyond = not_negative(left, "an allowance") + not_negative(right, "an allowance")
    return not_negative(finished, "the finished width") + not_negative(take_up, "the take-up") + beyond

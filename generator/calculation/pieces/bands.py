"""Bands of cloth that follow an edge: finished lengths and widths come in, cut widths and lengths go out.

Every function returns the cut size as (across, along): a band lies before you upright, so its width is across.
"""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.irrational import PI_ABOVE
from generator.calculation.refused import more_than_nothing, not_negative
from generator.lengths import round_up


def worked_tie(length: Fraction, width: Fraction, allowance: Fraction) -> tuple[Fraction, Fraction]:
    """Return the cut size of a tie or strap that is folded lengthwise, sewn and turned out.

    Its two sides are one piece folded along one edge; the other edge and both ends are seams:
    B = 2 w + 2 a, L = l + 2 a.

    Parameters
    ----------
    length, width : Fraction
        Finished sizes, l and w [in].
    allowance : Fraction
        Seam allowance, a [in].

    Returns
    -------
    tuple of Fraction
        Cut width B, cut length L [in].

    Examples
    --------
    A strap 1 1/4 in wide and 13 in long, seams of 3/8 in: 2 1/2 + 3/4 = 13/4 wide, 13 3/4 long.

    >>> worked_tie(Fraction(13), Fraction(5, 4), Fraction(3, 8))
    (Fraction(13, 4), Fraction(55, 4))

    References
    ----------
    Derived in the docstring above.
    """
    side = more_than_nothing(width, "the width of a tie")
    return _with_seams(2 * side, allowance), _with_seams(more_than_nothing(length, "the length of a tie"), allowance)


def worked_binding(length: Fraction, width: Fraction, allowance: Fraction, room: Fraction) -> tuple[Fraction, Fraction]:
    """Return the cut size of a binding that shows equally on both sides of an edge.

    It lies over the edge with both raw edges turned in: it shows twice and turns in twice, four times its width, and
    beside that it goes round the thickness of the edge: B = 4 w + r. Its ends overlap, turn in or are joined by one
    allowance each.

    Parameters
    ----------
    length, width : Fraction
        Length of the bound edge and finished width of the binding, w [in].
    allowance : Fraction
        Allowance of each end [in].
    room : Fraction
        What the thickness of the edge takes, r [in].

    Returns
    -------
    tuple of Fraction
        Cut width B, cut length [in].

    Notes
    -----
    Without the room its second fold would end on the stitching of the first and not cover it. A mitred corner takes up
    no length along the edge.

    Examples
    --------
    A 1/2 in binding on 40 in, ends of 1/2 in, room of 1/8 in: 2 1/8 in by 41 in.

    >>> worked_binding(Fraction(40), Fraction(1, 2), Fraction(1, 2), Fraction(1, 8))
    (Fraction(17, 8), Fraction(41, 1))

    References
    ----------
    Common practice, no source.
    """
    plies = 4 * more_than_nothing(width, "the width of a binding") + not_negative(room, "the room for an edge")
    return plies, _with_seams(more_than_nothing(length, "the length of a binding"), allowance)


def worked_piping(length: Fraction, cord: Fraction, allowance: Fraction, step: Fraction) -> tuple[Fraction, Fraction]:
    r"""Return the cut size of the strip that covers a piping cord.

    The strip goes once round the cord and leaves an allowance on both sides of it: :math:`B = \pi c + 2 a`. The way
    round the cord is rounded outward, so that the cord is never squeezed.

    Parameters
    ----------
    length, cord : Fraction
        Length of the edge that gets the piping, and diameter of the cord, c [in].
    allowance : Fraction
        Seam allowance, a, also of the two ends [in].
    step : Fraction
        Division of the ruler to which the cut width is rounded up [in].

    Returns
    -------
    tuple of Fraction
        Cut width B, cut length [in].

    Notes
    -----
    Cloth thickness is neglected: measured round the covered cord is better.

    Examples
    --------
    A cord of 1/4 in is 0.785 in round, with two seams of 1/2 in 1.785; to 1/8 in that is 1 7/8 = 15/8.

    >>> worked_piping(Fraction(48), Fraction(1, 4), Fraction(1, 2), Fraction(1, 8))
    (Fraction(15, 8), Fraction(49, 1))

    References
    ----------
    Derived in the docstring above.
    """
    around = more_than_nothing(cord, "the thickness of a cord") * PI_ABOVE
    width = round_up(_with_seams(around, allowance), more_than_nothing(step, "the step"))
    return width, _with_seams(more_than_nothing(length, "the length of a piping"), allowance)


def _with_seams(finished: Fraction, allowance: Fraction) -> Fraction:
    return finished + 2 * not_negative(allowance, "the allowance")

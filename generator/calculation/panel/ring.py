"""Tucks on a panel closed on itself: the way round and a number of tucks come in, pitch and cut width go out."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.refused import more_than_nothing, not_negative, whole_number


def ring_pitch(finished: Fraction, count: int) -> Fraction:
    r"""Return the pitch of tucks that stand evenly round a ring.

    A ring has no ends, so there are as many pitches as tucks, the one across the seam among them: :math:`p = F / n`.

    Parameters
    ----------
    finished : Fraction
        The way round when sewn and closed, F [in].
    count : int
        Number of tucks, n [-].

    Returns
    -------
    Fraction
        Stitching to stitching, p [in]; the margins on both sides of the seam are together one pitch.

    Raises
    ------
    CalculationError
        If there is no tuck or no way round.

    Examples
    --------
    24 tucks round 18 in: 3/4 in each.

    >>> ring_pitch(Fraction(18), 24)
    Fraction(3, 4)

    References
    ----------
    Derived in the docstring above.
    """
    whole_number(count, "the number of tucks of a ring", least=1)
    return more_than_nothing(finished, "the way round a ring") / Fraction(count)


def ring_cut(finished: Fraction, count: int, take_up: Fraction, seam: Fraction) -> Fraction:
    r"""Return the width to cut for a tucked ring.

    Every tuck hides its cloth and the closing seam has an allowance on each side: :math:`L = F + n u + 2 a`.

    Parameters
    ----------
    finished : Fraction
        The way round when sewn and closed, F [in].
    count : int
        Number of tucks, n [-].
    take_up : Fraction
        Cloth hidden by one tuck, u [in].
    seam : Fraction
        Allowance of the closing seam, a [in].

    Returns
    -------
    Fraction
        Width to cut, L [in].

    Raises
    ------
    CalculationError
        If a length is negative or there is no way round.

    Examples
    --------
    24 tucks of 3/8 in round 18 in, seam 1/2 in: 18 + 24 x 3/4 + 1 = 37 in.

    >>> ring_cut(Fraction(18), 24, Fraction(3, 4), Fraction(1, 2))
    Fraction(37, 1)

    References
    ----------
    Derived in the docstring above.
    """
    hidden = whole_number(count, "the number of tucks") * not_negative(take_up, "the take-up of a tuck")
    return more_than_nothing(finished, "the way round a ring") + hidden + 2 * not_negative(seam, "the seam")

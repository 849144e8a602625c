"""What a sewn sample says: measures of the sample come in, take-up, draw-in, shrinkage and doubt go out."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.refused import exact, more_than_nothing, not_negative, whole_number
from generator.errors import CalculationError
from generator.lengths import Edition, say_length


def sample_take_up(count: int, flat: Fraction, finished: Fraction) -> Fraction:
    r"""Return the cloth that one tuck of a sewn sample hides.

    What the flat length has lost is shared by the tucks: :math:`u = (B - C) / K`.

    Parameters
    ----------
    count : int
        Tucks sewn on the sample, K [-].
    flat : Fraction
        Flat length before sewing, B [in].
    finished : Fraction
        The same length after sewing, C [in].

    Returns
    -------
    Fraction
        Take-up of one tuck, u [in].

    Raises
    ------
    CalculationError
        If there is no tuck, or the sample did not grow shorter.

    Examples
    --------
    Eight tucks on 10 in finish at 6 1/16 in: (160 - 97)/16 / 8 = 63/128 in each, a little less than twice 1/4 in.

    >>> sample_take_up(8, Fraction(10), Fraction(97, 16))
    Fraction(63, 128)

    References
    ----------
    Derived in the docstring above.
    """
    whole_number(count, "the number of tucks on a sample", least=1)
    more_than_nothing(finished, "the finished length of a sample")
    if exact(flat, "the flat length of a sample") <= finished:
        raise CalculationError(
            f"a sample grows shorter when it is tucked: {flat} in flat cannot finish at {finished} in; "
            "were the two measures exchanged?"
        )
    return (flat - finished) / Fraction(count)


def carried_take_up(take_up: Fraction, sample_depth: Fraction, depth: Fraction) -> Fraction:
    r"""Return the take-up at another depth than the sample's.

    What the cloth's thickness and the hand add or take does not grow with the depth, so the difference from twice the
    depth carries over, not the take-up: :math:`u' = 2 d' + (u - 2 d)`.

    Parameters
    ----------
    take_up : Fraction
        Take-up as measured, u [in].
    sample_depth : Fraction
        Depth at which the sample was sewn, d [in].
    depth : Fraction
        Depth wanted, d' [in].

    Returns
    -------
    Fraction
        Take-up to expect, u' [in].

    Raises
    ------
    CalculationError
        If a depth is not positive or no take-up is left.

    Notes
    -----
    For depths that are near each other. A sample at the depth itself is always better.

    Examples
    --------
    Measured 39/160 in at 1/8 in (1/160 less than twice the depth); at 1/4 in: 1/2 - 1/160 = 79/160 in.

    >>> carried_take_up(Fraction(39, 160), Fraction(1, 8), Fraction(1, 4))
    Fraction(79, 160)

    References
    ----------
    Derived in the docstring above.
    """
    more_than_nothing(sample_depth, "the depth of the sample")
    difference = more_than_nothing(take_up, "the take-up of a sample") - 2 * sample_depth
    carried = 2 * more_than_nothing(depth, "the depth of a tuck") + difference
    return more_than_nothing(carried, "the take-up carried over to this depth")


def unlikely_take_up(take_up: Fraction, depth: Fraction, edition: Edition) -> str:
    r"""Return a warning where a sample says so much else than its depth that it was likely miscounted.

    Thick cloth or a heavy hand changes a take-up by a little; a tuck left out of the count, or flat and finished read
    from another sample, by much. Told is a difference from twice the depth of more than half the depth, and of more
    than 1/8 in (3 mm): :math:`|u - 2 d| > \max(d / 2, 1/8)`.

    Examples
    --------
    Eighty tucks in place of eight on 10 in that finish at 4 in: 3/40 in each, and twice 3/8 in is 3/4 in.

    >>> from generator.lengths import INCH
    >>> print(unlikely_take_up(Fraction(3, 40), Fraction(3, 8), INCH))
    the sample says that a tuck 3/8 in deep takes up 1/16 in, but twice its depth is 3/4 in; count its
    tucks and measure again
    >>> unlikely_take_up(Fraction(63, 128), Fraction(1, 4), INCH)
    ''

    References
    ----------
    Common practice, no source.
    """
    if abs(take_up - 2 * depth) <= max(depth / 2, edition.wish_step):
        return ""
    return (
        f"the sample says that a tuck {say_length(depth, edition)} deep takes up {say_length(take_up, edition)}, but "
        f"twice its depth is {say_length(2 * depth, edition)}; count its tucks and measure again"
    )


def sample_draw_in(before: Fraction, after: Fraction, intervals: int = 1) -> Fraction:
    r"""Return what one interval between rows loses when the tucks are turned.

    Measured along the tucks before and after the rows are sewn: :math:`(B - C) / k`.

    Parameters
    ----------
    before : Fraction
        First to last row as ruled, B [in].
    after : Fraction
        The same after sewing, C [in].
    intervals : int
        Intervals between those rows, k [-].

    Returns
    -------
    Fraction
        Draw-in of one interval [in].

    Raises
    ------
    CalculationError
        If the rows have moved apart, or there is no interval.

    Examples
    --------
    Four intervals of 3 in measure 11 1/4 in afterwards: 3/4 in lost, 3/16 in each.

    >>> sample_draw_in(Fraction(12), Fraction(45, 4), 4)
    Fraction(3, 16)

    References
    ----------
    Derived in the docstring above.
    """
    whole_number(intervals, "the number of intervals", least=1)
    more_than_nothing(after, "the length after the rows")
    if exact(before, "the length before the rows") < after:
        raise CalculationError(f"rows never move apart: {before} in before sewing cannot be {after} in after")
    return (before - after) / Fraction(intervals)


def sample_shrinkage(before: Fraction, after: Fraction) -> Fraction:
    r"""Return the share of its length that cloth loses in the wash.

    It is told as a share of the length *before*: :math:`s = (B - C) / B`, so that cut = finished / (1 - s).

    Parameters
    ----------
    before : Fraction
        A length marked before washing, B [in].
    after : Fraction
        The same after washing and pressing, C [in].

    Returns
    -------
    Fraction
        Shrinkage, s [-], from nothing to less than 1.

    Raises
    ------
    CalculationError
        If the cloth has grown.

    Examples
    --------
    20 in become 19 1/4 in: 3/80, a little under 4 per cent.

    >>> sample_shrinkage(Fraction(20), Fraction(77, 4))
    Fraction(3, 80)

    References
    ----------
    Derived in the docstring above.
    """
    more_than_nothing(after, "the length after washing")
    if exact(before, "the length before washing") < after:
        raise CalculationError(f"cloth does not grow in the wash: {before} in before cannot be {after} in after")
    return Fraction(before - after) / before


def thickness_doubt(count: int, thickness: Fraction) -> tuple[Fraction, Fraction]:
    r"""Return how far the cloth hidden by a row of tucks may differ from twice their depths.

    Thick cloth runs round its fold and is not as flat as paper, and where the needle enters is not quite where the
    guide measures: one tuck hides from 0.3 t less to 2 t more than twice its depth.

    Parameters
    ----------
    count : int
        Number of tucks, n [-].
    thickness : Fraction
        Thickness of one layer of the cloth, t [in].

    Returns
    -------
    tuple of two Fractions
        Least and most difference of the whole row [in]: :math:`-0.3 n t` and :math:`2 n t`.

    Raises
    ------
    CalculationError
        If a number is negative.

    Notes
    -----
    Even the sign is uncertain, so no sum uses it: it only says when a sample is worth sewing.

    Examples
    --------
    20 tucks in cloth 1/50 in thick: from 0.12 in less to 0.8 in more.

    >>> thickness_doubt(20, Fraction(1, 50))
    (Fraction(-3, 25), Fraction(4, 5))

    References
    ----------
    Common practice, no source; the fold's arc alone gives (2 - pi/2) t.
    """
    layers = whole_number(count, "the number of tucks") * not_negative(thickness, "the thickness of the cloth")
    return Fraction(-3, 10) * layers, 2 * layers * Fraction(1)

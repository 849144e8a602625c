"""What closes and holds an edge: the edge and what is bought come in, lengths to cut and what is too small go out."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.refused import more_than_nothing, not_negative
from generator.errors import CalculationError
from generator.lengths import Edition, read_length, round_nearest

_CASING_ROOM = {"inch": read_length("1/4 in"), "metric": read_length("6 mm")}


def elastic_length(edge: Fraction, shorter: Fraction, lap: Fraction, edition: Edition) -> Fraction:
    """Return how long an elastic is cut that holds an edge in.

    L = E (1 - s) + lap, to the nearest division that cut sizes are told in.

    Parameters
    ----------
    edge : Fraction
        Finished length of the edge, E [in].
    shorter : Fraction
        By which share of the edge the elastic is shorter, s [-].
    lap : Fraction
        How far its ends lie over each other [in].
    edition : Edition
        Whose 1/8 in or 5 mm the length is rounded to.

    Returns
    -------
    Fraction
        Cut length, L [in].

    Raises
    ------
    CalculationError
        If the edge is nothing, or the lap less than nothing or as long as the elastic.

    Examples
    --------
    An edge of 44 in, a tenth shorter, ends lapped by 1 in: 44 x 9/10 + 1 = 40.6, so 40 5/8 in.

    >>> from generator.lengths import INCH
    >>> elastic_length(Fraction(44), Fraction(1, 10), Fraction(1), INCH)
    Fraction(325, 8)

    References
    ----------
    A tenth shorter is common practice, no source: it is tried on.
    """
    pulled = more_than_nothing(edge, "the edge of an elastic") * (1 - shorter)
    if not_negative(lap, "the lap of an elastic") >= pulled:
        raise CalculationError("the ends of the elastic lap by as much as it is long; write a shorter 'lap'")
    return round_nearest(pulled + lap, edition.cut_step)


def least_casing(width: Fraction, edition: Edition) -> Fraction:
    """Return the least second turn of a casing in which an elastic or a tape of a width can slide.

    W = w + 1/4 in (6 mm): half of that for the line of stitching beside the inner fold, half to slide.

    Parameters
    ----------
    width : Fraction
        Width of what slides in it, w [in].
    edition : Edition
        Which of 1/4 in and 6 mm.

    Returns
    -------
    Fraction
        Second turn, W [in].

    Examples
    --------
    An elastic of 3/8 in: 5/8 in. With a first turn of 1/4 in the casing takes 7/8 in.

    >>> from generator.lengths import INCH
    >>> least_casing(Fraction(3, 8), INCH)
    Fraction(5, 8)

    References
    ----------
    Oregon State University Extension, 4-H 320-36: a turn of 1/4 in, the width of the elastic and 1/4 in.
    """
    return more_than_nothing(width, "the width of an elastic") + _CASING_ROOM[edition.name]

"""What closes and holds an edge: the edge and what is bought come in, lengths to cut and what is too small go out."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from generator.calculation.refused import more_than_nothing, not_negative
from generator.errors import CalculationError
from generator.lengths import Edition, read_length, round_nearest, say_length

_LEAST_TAB = {"inch": read_length("1/2 in"), "metric": read_length("1.2 cm")}
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


def zip_tab(edge: Fraction, zip_length: Fraction, seam: Fraction, edition: Edition) -> tuple[Fraction, Fraction]:
    """Return how long a tab at the end of a zip shows, and how long it is cut.

    Two tabs fill an edge up: each shows s = (E - z) / 2. It is folded across its middle, and its two raw ends lie in
    the seam: it is cut 2 (s + a).

    Parameters
    ----------
    edge : Fraction
        Finished length of the edge, E [in].
    zip_length : Fraction
        Length of the zip between its stops, z [in].
    seam : Fraction
        Allowance of the seam that crosses the end, a [in].
    edition : Edition
        Whose 1/2 in or 1.2 cm is the least that shows.

    Returns
    -------
    tuple of Fraction
        What shows, s, and the cut length [in].

    Raises
    ------
    CalculationError
        If the zip is longer than the edge, or so little shows that the seam would meet the stops.

    Examples
    --------
    A zip of 7 in in an edge of 9 in, seams 1/2 in: each tab shows 1 in and is cut 3 in.

    >>> from generator.lengths import INCH
    >>> zip_tab(Fraction(9), Fraction(7), Fraction(1, 2), INCH)
    (Fraction(1, 1), Fraction(3, 1))

    References
    ----------
    Derived in the docstring above; the least that shows is common practice, no source.
    """
    more_than_nothing(zip_length, "the length of a zip")
    shows, least = (edge - zip_length) / 2, _LEAST_TAB[edition.name]
    if shows < least:
        raise CalculationError(
            f"a zip of {say_length(zip_length, edition)} in an edge of {say_length(edge, edition)} leaves "
            f"{say_length(max(shows, Fraction(0)), edition)} for each tab, less than {say_length(least, edition)}; "
            f"take a zip of {say_length(max(edge - 2 * least, Fraction(0)), edition)} at most"
        )
    return shows, 2 * (shows + seam)


def zip_to_buy(zip_length: Fraction, lengths: Iterable[Fraction]) -> Fraction:
    """Return which zip to buy: the shortest of a shop's that is long enough, else one of just the length.

    Parameters
    ----------
    zip_length : Fraction
        Length that is wanted between the stops [in].
    lengths : iterable of Fraction
        Those that the shop has [in].

    Returns
    -------
    Fraction
        Length of the zip to buy [in].

    Examples
    --------
    For 7 in from a shop with 6, 8 and 10 in: 8 in, which is shortened.

    >>> zip_to_buy(Fraction(7), [Fraction(6), Fraction(8), Fraction(10)])
    Fraction(8, 1)

    References
    ----------
    A coil is shortened by a sewn stop: common practice, no source.
    """
    return min((length for length in lengths if length >= zip_length), default=zip_length)


def least_overlap(width: Fraction, edition: Edition) -> Fraction:
    """Return the least overlap of two edges on which a fastener lies wholly: 1/4 in or 6 mm wider than it.

    Parameters
    ----------
    width : Fraction
        Its width or diameter [in].
    edition : Edition
        Which of 1/4 in and 6 mm.

    Returns
    -------
    Fraction
        The overlap [in].

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> least_overlap(Fraction(3, 4), INCH)
    Fraction(1, 1)

    References
    ----------
    Common practice, no source.
    """
    return width + _CASING_ROOM[edition.name]

"""Tucks that are stitched over a part of their length: where they are held and the take-up come in, widths go out."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from generator.lengths import round_nearest

Stretch = tuple[Fraction, Fraction]
Stretches = tuple[Stretch, ...]

# Our own limit: a tuck that is stitched over fewer of its depths neither shows nor holds.
LEAST_DEPTHS = 4
# Our own limit: a row or a cross tuck needs so many depths of stitching beyond it.
BEYOND_DEPTHS = 2


def evenly(first: Fraction, last: Fraction, count: int, mark: Fraction, *, mirror: bool = False) -> list[Fraction]:
    """Return one place for each of a number of tucks, in even steps from the first to the last.

    Of n tucks the i-th has :math:`a + (b - a) (i - 1) / (n - 1)`; mirrored ones reach b in the middle and come back.

    Parameters
    ----------
    first, last : Fraction
        The places of the first tuck, a, and of the last, or of the middle ones, b [in].
    count : int
        Number of tucks, n [-].
    mark : Fraction
        The finest mark of the ruler, to which places are rounded [in].
    mirror : bool
        Whether the right half is the left one the other way round.

    Returns
    -------
    list of Fraction
        The places [in].

    Examples
    --------
    Five tucks from 4 to 6 in, then the same mirrored.

    >>> [str(place) for place in evenly(Fraction(4), Fraction(6), 5, Fraction(1, 16))]
    ['4', '9/2', '5', '11/2', '6']
    >>> [str(place) for place in evenly(Fraction(4), Fraction(6), 5, Fraction(1, 16), mirror=True)]
    ['4', '5', '6', '5', '4']

    References
    ----------
    Derived in the docstring above.
    """
    steps = [min(place, count - 1 - place) if mirror else place for place in range(count)]
    most = max(steps, default=0) or 1
    return [round_nearest(first + (last - first) * step / most, mark) for step in steps]


def released_width(
    finished: Fraction, take_ups: Sequence[Fraction], held: Sequence[Stretches], at: Fraction
) -> Fraction:
    r"""Return how wide a panel is at a height where some of its tucks are let go.

    Every tuck that is not stitched there gives back what it takes: :math:`W = F + \sum u_i`.

    Parameters
    ----------
    finished : Fraction
        The finished width where all tucks are stitched, F [in].
    take_ups : sequence of Fraction
        What each tuck takes, u [in].
    held : sequence of stretches
        Where each tuck is stitched, from and to [in from the top].
    at : Fraction
        The height [in from the top].

    Returns
    -------
    Fraction
        The width W [in].

    Examples
    --------
    A yoke 12 in wide, 11 tucks of 1/4 in that are stitched for 4 in: 17 1/2 in below.

    >>> half = [Fraction(1, 2)] * 11
    >>> held = [((Fraction(0), Fraction(4)),)] * 11
    >>> [str(released_width(Fraction(12), half, held, Fraction(at))) for at in (0, 4, 16)]
    ['12', '12', '35/2']

    References
    ----------
    Derived in the docstring above.
    """
    free = (take for take, own in zip(take_ups, held, strict=True) if not _is_held(own, at))
    return finished + sum(free, Fraction(0))


def widest_of(finished: Fraction, take_ups: Sequence[Fraction], held: Sequence[Stretches]) -> Fraction:
    """Return how wide a panel is at the most, at any height.

    It changes at the ends of stitching alone, so it is asked for between every two of them and beyond the last.

    Parameters
    ----------
    finished : Fraction
        The finished width where all tucks are stitched, F [in].
    take_ups : sequence of Fraction
        What each tuck takes, u [in].
    held : sequence of stretches
        Where each tuck is stitched, from and to [in from the top].

    Returns
    -------
    Fraction
        The greatest width W [in].

    Examples
    --------
    Two tucks of 1/4 in on 12 in, stitched from 0 to 4 and from 3 to 8 in: at no height are both let go but below 8 in.

    >>> held = [((Fraction(0), Fraction(4)),), ((Fraction(3), Fraction(8)),)]
    >>> str(widest_of(Fraction(12), [Fraction(1, 2)] * 2, held))
    '13'

    References
    ----------
    Derived in the docstring above.
    """
    ends = sorted({at for own in held for stretch in own for at in stretch})
    middles = [(before + after) / 2 for before, after in pairwise(ends)]
    beyond = (ends[0] - 1, ends[-1] + 1)
    return max(released_width(finished, take_ups, held, at) for at in (*middles, *beyond))


def _is_held(stretches: Stretches, at: Fraction) -> bool:
    return any(first <= at <= last for first, last in stretches)


def within(stretches: Stretches, top: Fraction, bottom: Fraction) -> Stretches:
    """Return what is left of where a tuck is stitched between two heights.

    Parameters
    ----------
    stretches : stretches
        Where it is stitched, from and to [in from the top].
    top, bottom : Fraction
        The heights [in from the top].

    Returns
    -------
    stretches
        What lies between them [in from the top].

    Examples
    --------
    A tuck that is stitched to 8 in, in a shape whose neck cuts it at 2 2/5 in: 5 3/5 in are stitched.

    >>> ((first, last),) = within(((Fraction(0), Fraction(8)),), Fraction(12, 5), Fraction(30))
    >>> str(last - first)
    '28/5'

    References
    ----------
    Derived: what two stretches have in common.
    """
    common = ((max(first, top), min(last, bottom)) for first, last in stretches)
    return tuple((first, last) for first, last in common if first < last)


def shortest(stretches: Stretches) -> Fraction:
    """Return how long the shortest stretch of stitching is, nothing where there is none.

    Parameters
    ----------
    stretches : stretches
        Where a tuck is stitched, from and to [in from the top].

    Returns
    -------
    Fraction
        The least of their lengths [in].

    Examples
    --------
    >>> str(shortest(((Fraction(0), Fraction(4)), (Fraction(12), Fraction(15)))))
    '3'

    References
    ----------
    Derived in the docstring above.
    """
    return min((last - first for first, last in stretches), default=Fraction(0))


def clear_of(stretches: Stretches, at: Fraction, depth: Fraction) -> bool:
    """Return whether what crosses a tuck lies on its stitching, two of its depths inside the end that is let go.

    Examples
    --------
    Tucks of 1/4 in, stitched to 8 in: a row at 7 1/2 in holds them, one at 7 3/4 in would pull at the last stitch.

    >>> held = ((Fraction(0), Fraction(8)),)
    >>> [clear_of(held, Fraction(at), Fraction(1, 4)) for at in ("15/2", "31/4")]
    [True, False]

    References
    ----------
    That two depths are enough is our own limit.
    """
    # At an edge of the panel nothing is let go: there is no end to keep clear of.
    return any(
        (first <= 0 or first + BEYOND_DEPTHS * depth <= at) and at + BEYOND_DEPTHS * depth <= last
        for first, last in stretches
    )

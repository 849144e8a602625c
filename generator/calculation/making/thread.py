"""Sewing thread: lengths of stitching come in, lengths of thread and numbers of spools go out."""

from __future__ import annotations

import math
from fractions import Fraction

from generator.calculation.refused import more_than_nothing, not_negative

LEAST_RATIO = Fraction(5, 2)
"""Thread to seam of a lockstitch on ordinary cloth [-]."""
NEATENING_RATIOS = {"zigzag": Fraction(11, 2), "overlock": Fraction(14), "stitched": Fraction(8)}
"""Thread to seam of what keeps raw edges from fraying [-].

The zigzag (ISO 4915 type 304): Coats, *Standard Stitch Type Classification Guide*. The overlock of three threads
(type 504): from memory. One that is stitched and trimmed has a line of 2 1/2 times below a zigzag."""

BUTTONHOLE_THREAD = Fraction(36)
"""Thread of one buttonhole in a colour of its own [in]; common practice, no source."""


def lockstitch_geometry(stack: Fraction, stitches: Fraction) -> Fraction:
    """Return the thread of a lockstitch by its geometry, as a multiple of the length of the seam.

    Needle and bobbin thread each run along the seam once, and with every stitch they cross the cloth down and up
    between them: 2 + 2 T S.

    Parameters
    ----------
    stack : Fraction
        Thickness of all layers together, T [in].
    stitches : Fraction
        Stitches per inch, S [1/in].

    Returns
    -------
    Fraction
        Thread by length of seam [-]; needle and bobbin together.

    Examples
    --------
    T 0.01 in, S 10: 2 + 2 x 0.01 x 10 = 2.2.

    >>> lockstitch_geometry(Fraction(1, 100), Fraction(10))
    Fraction(11, 5)

    References
    ----------
    A. K. Das, textile calculation notes.
    """
    thick = not_negative(stack, "the thickness of the cloth")
    return 2 + 2 * thick * more_than_nothing(stitches, "the number of stitches")


def thread_ratio(stack: Fraction, stitches: Fraction) -> Fraction:
    """Return how much thread a length of lockstitch uses, as a multiple of that length.

    Crimp and tension take more on thin cloth than the geometry tells, and practice counts 2.5 there; thick cloth takes
    what the geometry tells. So the larger of the two is used: max(2.5, 2 + 2 T S).

    Parameters
    ----------
    stack : Fraction
        Thickness of all layers together, T [in].
    stitches : Fraction
        Stitches per inch, S [1/in].

    Returns
    -------
    Fraction
        Thread by length of seam [-]; needle and bobbin together.

    Notes
    -----
    Lockstitch only (ISO 4915 type 301); half of it comes from each thread.

    Examples
    --------
    T 0.01 in, S 10: 2.2, so 2.5 is used. Nine layers of 0.02 in: 2 + 2 x 0.18 x 10 = 5.6.

    >>> thread_ratio(Fraction(1, 100), Fraction(10))
    Fraction(5, 2)
    >>> thread_ratio(Fraction(9 * 2, 100), Fraction(10))
    Fraction(28, 5)

    References
    ----------
    Coats, *Standard Stitch Type Classification Guide* (2.5 : 1).
    """
    return max(LEAST_RATIO, lockstitch_geometry(stack, stitches))


def stitching_thread(length: Fraction, ratio: Fraction = LEAST_RATIO) -> Fraction:
    """Return the thread in a length of stitching.

    Parameters
    ----------
    length : Fraction
        Length of the line of stitching [in].
    ratio : Fraction
        Thread by length of seam [-].

    Returns
    -------
    Fraction
        Thread, needle and bobbin together, without ends and waste [in].

    Examples
    --------
    A yard of stitching takes 90 in.

    >>> stitching_thread(Fraction(36))
    Fraction(90, 1)
    >>> stitching_thread(Fraction(0))
    Fraction(0, 1)

    References
    ----------
    Coats, *Standard Stitch Type Classification Guide* (2.5 : 1).
    """
    return not_negative(length, "the length of stitching") * more_than_nothing(ratio, "the thread ratio")


def thread_with_waste(length: Fraction, waste: Fraction) -> Fraction:
    """Return a length of thread with its ends and waste.

    Ends, bobbins that run out and unpicked seams are a share of the whole: L (1 + s).

    Parameters
    ----------
    length : Fraction
        Thread in the stitching, L [in].
    waste : Fraction
        Share added, s [-]; 0.15 to 0.20 is usual.

    Returns
    -------
    Fraction
        Thread used [in].

    Examples
    --------
    >>> thread_with_waste(Fraction(100), Fraction(1, 5))
    Fraction(120, 1)

    References
    ----------
    "Estimating Thread Consumption", thread maker's bulletin (15 to 20 %).
    """
    used = not_negative(length, "the length of thread")
    return used * (1 + not_negative(waste, "the waste of thread"))


def spools(length: Fraction, spool: Fraction, waste: Fraction) -> int:
    """Return the number of spools to buy.

    Thread is bought in whole spools: ceil(L (1 + s) / spool).

    Parameters
    ----------
    length : Fraction
        Thread in the stitching, L [in].
    spool : Fraction
        Thread on a spool [in].
    waste : Fraction
        Share added for ends and waste, s [-].

    Returns
    -------
    int
        Spools [-]; none where nothing is stitched.

    Examples
    --------
    Spools of 110 yd are 3960 in. 3300 in and a fifth are 3960 in, one spool; an inch more needs two.

    >>> spools(Fraction(3300), Fraction(3960), Fraction(1, 5)), spools(Fraction(3301), Fraction(3960), Fraction(1, 5))
    (1, 2)

    References
    ----------
    Derived in the docstring above.
    """
    return math.ceil(thread_with_waste(length, waste) / more_than_nothing(spool, "the length of a spool"))

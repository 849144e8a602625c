"""The opening through which work is turned: the size of the work comes in, how long to leave open goes out."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.refused import more_than_nothing
from generator.lengths import Edition, read_length, round_nearest

# What a hand with the work in it goes through at least, what is easily turned through at most, and the step.
_LEAST = {"inch": read_length("2 1/2 in"), "metric": read_length("6 cm")}
_MOST = {"inch": read_length("6 in"), "metric": read_length("15 cm")}
_CORNER = {"inch": read_length("3/4 in"), "metric": read_length("2 cm")}
_STEP = {"inch": read_length("1/2 in"), "metric": read_length("1 cm")}


def turning_opening(across: Fraction, along: Fraction, edition: Edition) -> Fraction:
    """Return how long an opening is left in a seam to turn the work through it.

    Half of the shorter side: folded together once, the work goes through. Between what fingers and cloth need
    (2 1/2 in or 6 cm) and what is easily turned through (6 in or 15 cm). At both ends of the longer side 3/4 in or 2 cm
    stay sewn beside the corners, or a quarter of a side that is very short.

    Parameters
    ----------
    across, along : Fraction
        Finished size of the work [in].
    edition : Edition
        The ruler.

    Returns
    -------
    Fraction
        Length of the opening, to 1/2 in or 1 cm where it can be [in].

    Examples
    --------
    A runner 14 in by 54 in, a sample 4 in square, and a bag 10 in by 11 in:

    >>> from generator.lengths import INCH
    >>> turning_opening(Fraction(14), Fraction(54), INCH), turning_opening(Fraction(4), Fraction(4), INCH)
    (Fraction(6, 1), Fraction(5, 2))
    >>> turning_opening(Fraction(10), Fraction(11), INCH)
    Fraction(5, 1)

    References
    ----------
    Common practice, no source.
    """
    shorter, longer = sorted(
        (more_than_nothing(across, "the width of the work"), more_than_nothing(along, "its length"))
    )
    step = _STEP[edition.name]
    wanted = round_nearest(shorter / 2, step)
    return min(
        max(wanted, _LEAST[edition.name]), _MOST[edition.name], max(longer - 2 * _CORNER[edition.name], longer / 2)
    )

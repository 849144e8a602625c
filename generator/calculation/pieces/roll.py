"""What goes round: a diameter or a measured girth comes in, the pieces of a bolster's ends and tube go out."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.irrational import PI_ABOVE, PI_BELOW
from generator.calculation.refused import more_than_nothing, not_negative
from generator.lengths import Edition, round_nearest, say_length


def circumference_bounds(diameter: Fraction) -> tuple[Fraction, Fraction]:
    r"""Return two fractions between which the way round a circle lies.

    :math:`C = \pi d`, with pi taken once too small and once too large.

    Parameters
    ----------
    diameter : Fraction
        Diameter, d [in].

    Returns
    -------
    tuple of Fraction
        A little less and a little more than the circumference [in].

    Examples
    --------
    One inch across is more than 3.14159 and less than 3.1416 in round.

    >>> less, more = circumference_bounds(Fraction(1))
    >>> Fraction("3.14159") < less < more < Fraction("3.1416")
    True

    References
    ----------
    The value of pi: from memory; the tests work it out again by two series.
    """
    across = more_than_nothing(diameter, "the diameter")
    return across * PI_BELOW, across * PI_ABOVE


def circumference(diameter: Fraction, step: Fraction) -> Fraction:
    """Return the way round a circle, to the nearest division of a ruler.

    It is a fit and not a cut edge: too tight is as wrong as too loose, so it is rounded to the nearest.

    Parameters
    ----------
    diameter : Fraction
        Diameter [in].
    step : Fraction
        Division of the ruler [in].

    Returns
    -------
    Fraction
        Circumference [in].

    Notes
    -----
    A girth measured with a tape round the form is better than any diameter.

    Examples
    --------
    9 in across is 28.27 in round, to 1/8 in 28 1/4 = 113/4.

    >>> circumference(Fraction(9), Fraction(1, 8))
    Fraction(113, 4)

    References
    ----------
    Derived in the docstring above.
    """
    return round_nearest(circumference_bounds(diameter)[1], more_than_nothing(step, "the step"))


def worked_gathered_end(
    girth: Fraction, radius: Fraction, seam: Fraction, centre: Fraction
) -> tuple[Fraction, Fraction]:
    """Return the cut size of a strip that is sewn round the rim of a bolster and drawn up in the middle of its end.

    It goes once round and is closed by a seam; from the rim it reaches to the middle, where its edge is turned in for
    the drawing thread: B = C + 2 a, L = r + a + c.

    Parameters
    ----------
    girth, radius : Fraction
        Finished way round the rim, C, and radius of the end, r [in].
    seam : Fraction
        Allowance of the rim and of the closing seam, a [in].
    centre : Fraction
        Cloth turned in at the middle, c [in].

    Returns
    -------
    tuple of Fraction
        Cut across (round the rim), cut along (rim to middle) [in].

    Notes
    -----
    Nothing is left open in the middle: a button or a tassel covers what the thread cannot close.

    Examples
    --------
    Girth 22 in, radius 3 1/2, seams 1/2, 1/2 in turned in at the middle: 23 in by 4 1/2 in.

    >>> worked_gathered_end(Fraction(22), Fraction(7, 2), Fraction(1, 2), Fraction(1, 2))
    (Fraction(23, 1), Fraction(9, 2))

    References
    ----------
    Derived in the docstring above.
    """
    allowance = not_negative(seam, "the seam of a gathered end")
    turned_in = not_negative(centre, "the turned edge of a gathered end")
    across = more_than_nothing(girth, "the girth") + 2 * allowance
    return across, more_than_nothing(radius, "the radius of a gathered end") + allowance + turned_in


def end_across(around: Fraction, step: Fraction) -> Fraction:
    r"""Return how large across an end is that something goes round, to the nearest division of a ruler.

    :math:`d = l / \pi`: the circumference asked the other way. What goes round an end fits where this is the end's own
    diameter, since nobody cuts an end finer than the ruler shows.

    Parameters
    ----------
    around : Fraction
        Finished length of what is sewn round the end, l [in].
    step : Fraction
        Division of the ruler [in].

    Returns
    -------
    Fraction
        Diameter, d [in].

    Examples
    --------
    20 in go round an end of 6.366 in, to 1/16 in 6 3/8.

    >>> end_across(Fraction(20), Fraction(1, 16))
    Fraction(51, 8)

    References
    ----------
    Derived in the docstring above.
    """
    return round_nearest(more_than_nothing(around, "what goes round the end") / PI_ABOVE, step)


def round_end_remedy(around: Fraction, diameter: Fraction, edition: Edition) -> str:
    r"""Return what to change where something does not go round a circular end.

    The end is :math:`\pi d` round; a tube of length l goes round an end :math:`l / \pi` across.

    Examples
    --------
    A tube of 63 cm on an end of 23 cm: 3.1416 x 23 = 72.3; 63 / 3.1416 = 20.1.

    >>> from generator.lengths import CENTIMETRE, METRIC
    >>> round_end_remedy(63 * CENTIMETRE, 23 * CENTIMETRE, METRIC)
    'an end 23 cm across is 72.3 cm round: make what goes round it as long, or the end 20.1 cm across'
    """
    needed = circumference(diameter, edition.wish_step)
    fitting = end_across(around, edition.mark)
    across, length, end = (say_length(value, edition) for value in (diameter, needed, fitting))
    return f"an end {across} across is {length} round: make what goes round it as long, or the end {end} across"

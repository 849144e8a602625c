"""What goes round: a diameter or a measured girth comes in, the pieces of a bolster's ends and tube go out."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.irrational import PI_ABOVE, PI_BELOW
from generator.calculation.refused import more_than_nothing, not_negative
from generator.errors import CalculationError
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


def diameter_of(girth: Fraction, step: Fraction) -> Fraction:
    r"""Return the diameter of the circle that a measured girth goes round, to the nearest division of a ruler.

    :math:`d = C / \pi`: the end of a bolster is drawn from the tape measure round its form.

    Parameters
    ----------
    girth : Fraction
        Girth as measured, C [in].
    step : Fraction
        Division of the ruler [in].

    Returns
    -------
    Fraction
        Diameter [in].

    Examples
    --------
    A girth of 28 1/4 in: 28.25 / 3.1416 = 8.992, to 1/8 in 9.

    >>> diameter_of(Fraction(113, 4), Fraction(1, 8))
    Fraction(9, 1)

    References
    ----------
    Derived in the docstring above.
    """
    return round_nearest(more_than_nothing(girth, "the girth") / PI_ABOVE, more_than_nothing(step, "the step"))


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


def girth_fits(cut: Fraction, seam: Fraction, diameter: Fraction, edition: Edition) -> Fraction:
    r"""Return how much longer than needed a panel is that goes round a circular end; refuse one that cannot.

    Sewn to a tube, the panel is :math:`L - 2 a` round, the end :math:`\pi d`. A difference of one cutting step either
    way is eased in; more makes pleats in one of the two.

    Parameters
    ----------
    cut, seam : Fraction
        Cut length L of the panel round the end, and the allowance a of its closing seam [in].
    diameter : Fraction
        Finished diameter of the end, d [in].
    edition : Edition
        Its cutting step is what can be eased in; its unit is spoken.

    Returns
    -------
    Fraction
        Length to ease in [in]; less than nothing where the end is the longer one.

    Raises
    ------
    CalculationError
        If the two differ by more; the message gives the length and the diameter that would fit.

    Examples
    --------
    29 1/4 in with seams of 1/2 in is 28 1/4 in round; an end of 9 in is 28.274: 0.024 in is eased in.

    >>> from generator.lengths import INCH
    >>> round(float(girth_fits(Fraction(117, 4), Fraction(1, 2), Fraction(9), INCH)), 3)
    -0.024

    References
    ----------
    Derived in the docstring above; that one cutting step can be eased in is common practice, no source.
    """
    inside = more_than_nothing(cut, "the panel") - 2 * not_negative(seam, "the seam")
    around = circumference_bounds(diameter)[1]
    if abs(inside - around) <= edition.cut_step:
        return inside - around
    found, seams, across = (say_length(length, edition) for length in (cut, seam, diameter))
    needed = say_length(around + 2 * seam, edition)
    remedy = f"cut the panel {needed}"
    if inside > 0:
        remedy += f" or make the end {say_length(inside / PI_ABOVE, edition)} across"
    raise CalculationError(
        f"a panel cut {found} with seams of {seams} does not go round an end {across} across: "
        f"it needs {needed}; {remedy}"
    )

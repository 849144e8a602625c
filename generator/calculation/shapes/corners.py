"""Whether edges run on over a seam: the corners of two shapes at one end of it come in, a yes or a no goes out."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.shapes.segments import Spot

# The tangent of 15 degrees is 2 - root 3. That so much is let pass is our own limit.
_TANGENT = Fraction(267_949, 10**6)


def run_on(one: tuple[Spot, Spot], other: tuple[Spot, Spot]) -> bool:
    """Return whether two corners that are sewn to each other make one line without a point.

    Their angles must add up to half a turn, within 15 degrees. With the directions u and v before and after a corner as
    numbers of the plane, walked clockwise, v / u turns by half a turn less the angle of the cloth; so the product of
    both turns is half a turn if the angles add up to one.

    Parameters
    ----------
    one, other : tuple of tuple of Fraction
        The directions in which each outline arrives at its corner and leaves it, of any length.

    Returns
    -------
    bool
        Whether the line runs on.

    Examples
    --------
    Two square corners do; a square one and one of 45 degrees do not.

    >>> right, down, left = ((Fraction(x), Fraction(y)) for x, y in ((1, 0), (0, 1), (-1, 0)))
    >>> run_on((right, down), (down, left)), run_on((right, down), (down, (Fraction(-1), Fraction(-1))))
    (True, False)

    References
    ----------
    That corners are trued: A Complete Course in Dressmaking, vol. 9, p. 22.
    """
    turn, beside = _product(_turn(*one), _turn(*other))
    return turn < 0 and abs(beside) <= _TANGENT * -turn


def _turn(arriving: Spot, leaving: Spot) -> Spot:
    """The turn from one direction to the other, as a number of the plane."""
    return _product(leaving, (arriving[0], -arriving[1]))


def _product(one: Spot, other: Spot) -> Spot:
    return one[0] * other[0] - one[1] * other[1], one[0] * other[1] + one[1] * other[0]

"""What shows between two neighbouring tucks: pitch, depths and turns come in, the visible space goes out."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.refused import more_than_nothing
from generator.calculation.worked import Turn


def visible_between(pitch: Fraction, depths: tuple[Fraction, Fraction], turns: tuple[Turn, Turn]) -> Fraction:
    r"""Return what shows of the ground between two neighbours, as their turns let it.

    A tuck turned right lies over the space to its right, one turned left over the space to its left. So both right
    show :math:`p - d_l`, both left :math:`p - d_r`, facing ones :math:`p - d_l - d_r`, back to back the whole pitch.

    Parameters
    ----------
    pitch : Fraction
        Stitching to stitching on the finished panel, p [in].
    depths : tuple of two Fractions
        Depth of the left and of the right tuck, d [in].
    turns : tuple of two Turns
        How each lies; an upright tuck covers nothing.

    Returns
    -------
    Fraction
        Visible space [in]; negative where a fold covers the other's stitching or fold.

    Raises
    ------
    CalculationError
        If a length is not positive.

    Examples
    --------
    Tucks 1/2 and 1 in deep, 2 in from stitching to stitching.

    >>> half, one, two = Fraction(1, 2), Fraction(1), Fraction(2)
    >>> visible_between(two, (half, one), (Turn.RIGHT, Turn.RIGHT)), visible_between(two, (half, one), (Turn.LEFT,) * 2)
    (Fraction(3, 2), Fraction(1, 1))
    >>> visible_between(two, (half, one), (Turn.RIGHT, Turn.LEFT))
    Fraction(1, 2)
    >>> visible_between(two, (half, one), (Turn.LEFT, Turn.RIGHT))
    Fraction(2, 1)

    References
    ----------
    Derived in the docstring above.
    """
    left, right = (more_than_nothing(depth, "the depth of a tuck") for depth in depths)
    covered = left if turns[0] is Turn.RIGHT else Fraction(0)
    covered += right if turns[1] is Turn.LEFT else Fraction(0)
    return more_than_nothing(pitch, "the pitch") - covered

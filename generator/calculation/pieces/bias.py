"""Strips cut on the true bias: cloth comes in, the length of strip it gives goes out, and back.

True bias runs at exactly 45 degrees to the grain, so every length along it is a straight one times the root of two.
That root is rounded so that a length of strip is never promised that the cloth does not hold.
"""

from __future__ import annotations

import math
from fractions import Fraction

from generator.calculation.irrational import root_above, root_below
from generator.calculation.refused import more_than_nothing, not_negative
from generator.lengths import round_up

ROOT_TWO_BELOW = root_below(Fraction(2))
ROOT_TWO_ABOVE = root_above(Fraction(2))


def continuous_bias_length(side: Fraction, width: Fraction, join: Fraction) -> Fraction:
    r"""Return the length of the one continuous bias strip that a square gives.

    The square is cut corner to corner, its halves are joined along two straight edges, and the slanting piece is joined
    to a tube, shifted by one strip. Joined edge to edge, its bias edges lie :math:`(Q - 2 a) / \sqrt 2` apart, which
    holds :math:`\lfloor (Q - 2 a) / (w \sqrt 2) \rfloor` whole strips; each round is :math:`(Q - 2 a) \sqrt 2` long:
    the same as from a square smaller by 2 a that needs no joins.
    :math:`L = \lfloor (Q - 2 a) / (w \sqrt 2) \rfloor \sqrt 2 (Q - 2 a)`.

    Parameters
    ----------
    side : Fraction
        Side of the square, Q [in].
    width : Fraction
        Width of the strip as cut, w [in].
    join : Fraction
        Seam allowance of the two joins, a [in].

    Returns
    -------
    Fraction
        Length of the strip, L [in], rounded down by less than a millionth; nothing if the square is too small.

    Notes
    -----
    Sewers who slide one half along the other by 2 a before joining gain that width again, :math:`Q / \sqrt 2`, and
    sometimes a round, which is then :math:`2 a \sqrt 2` shorter. The number here is for edges laid level.

    Examples
    --------
    A square of 23 in, 2 in strip, joins of 1/4 in: 22.5 / 2.828 = 7.95 gives 7 rounds of 1.41421 x 22.5 = 31.82 in.

    >>> round(continuous_bias_length(Fraction(23), Fraction(2), Fraction(1, 4)), 1) == Fraction("222.7")
    True
    >>> continuous_bias_length(Fraction(2), Fraction(2), Fraction(1, 4))
    Fraction(0, 1)

    References
    ----------
    Derived in the docstring above.
    """
    strip = more_than_nothing(width, "the width of a bias strip")
    seam = 2 * not_negative(join, "the allowance of a join")
    apart = more_than_nothing(side, "the side of the square") - seam
    rounds = max(0, math.floor(apart / (strip * ROOT_TWO_ABOVE)))
    return rounds * ROOT_TWO_BELOW * apart


def bias_square(length: Fraction, width: Fraction, join: Fraction, step: Fraction) -> Fraction:
    """Return the side of the smallest square that gives a length of continuous bias strip.

    The side is tried step by step from the one that area alone would allow, with what the joins take beside it: whole
    rounds make it larger than the root of length times width, by an amount that no short formula tells.

    Parameters
    ----------
    length, width : Fraction
        Length and cut width of the strip wanted [in].
    join : Fraction
        Seam allowance of the two joins [in].
    step : Fraction
        The side is a whole number of these [in].

    Returns
    -------
    Fraction
        Side of the square [in].

    Examples
    --------
    250 in of 2 in strip: by area 22.4 and 1/2 for joins, so 23 is tried first; it gives 222.7. 24 gives 8 rounds of
    33.2, which is 265.9.

    >>> bias_square(Fraction(250), Fraction(2), Fraction(1, 4), Fraction(1))
    Fraction(24, 1)

    References
    ----------
    Derived in the docstring above.
    """
    area = more_than_nothing(length, "the length of a bias strip") * more_than_nothing(width, "its width")
    used_up = 2 * not_negative(join, "the allowance of a join")
    side = round_up(root_below(area) + used_up, more_than_nothing(step, "the step"))
    while continuous_bias_length(side, width, join) < length:
        side += step
    return side

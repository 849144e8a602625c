"""Strips cut on the true bias: cloth comes in, the length of strip it gives goes out, and back.

True bias runs at exactly 45 degrees to the grain, so every length along it is a straight one times the root of two.
That root is rounded so that a length of strip is never promised that the cloth does not hold.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.irrational import root_above, root_below
from generator.calculation.refused import more_than_nothing, not_negative
from generator.errors import CalculationError
from generator.lengths import round_up

ROOT_TWO_BELOW = root_below(Fraction(2))
ROOT_TWO_ABOVE = root_above(Fraction(2))
SHORTEST_STRIP = Fraction(12)
"""Strips shorter than this are not worth joining [in]; common practice, no source."""


@dataclass(frozen=True, slots=True)
class BiasStrips:
    """Bias strips cut one by one from a length of cloth: how many, how long each is, and joined [in]."""

    number: int
    each: Fraction
    length: Fraction


def area_bound(cloth_across: Fraction, cloth_along: Fraction, width: Fraction) -> Fraction:
    """Return the length of strip that no way of cutting can exceed.

    Strip and cloth have the same area at best: L <= A / w. Joins and corners always take some of it, so this is a
    bound and never a promise.

    Parameters
    ----------
    cloth_across, cloth_along : Fraction
        Sides of the cloth [in].
    width : Fraction
        Width of the strip as cut, w [in].

    Returns
    -------
    Fraction
        Upper limit of the length [in].

    Examples
    --------
    A square of 23 in holds at most 529 / 2 = 264 1/2 in of 2 in strip.

    >>> area_bound(Fraction(23), Fraction(23), Fraction(2))
    Fraction(529, 2)

    References
    ----------
    Derived in the docstring above.
    """
    return cloth_across * cloth_along / more_than_nothing(width, "the width of a bias strip")


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
    return rounds * ROOT_TWO_BELOW * max(apart, Fraction(0))


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


def bias_strips(cloth_across: Fraction, cloth_along: Fraction, width: Fraction, join: Fraction) -> BiasStrips:
    r"""Return the full bias strips that can be cut one by one from a length of cloth, and their length when joined.

    Full strips run from one long edge of the cloth to the other. With B the shorter side and E the longer one, each is
    :math:`B \sqrt 2` long and takes :math:`w \sqrt 2` of the long edge; the slant of the first and last takes B once:
    :math:`N = \lfloor (E - B) / (w \sqrt 2) \rfloor`. Their ends lie on the straight grain; a join along it takes
    :math:`2 a \sqrt 2` of the strip.

    Parameters
    ----------
    cloth_across, cloth_along : Fraction
        Usable width and length of the cloth, in either order [in].
    width : Fraction
        Width of the strips as cut, w [in].
    join : Fraction
        Seam allowance of a join, a [in].

    Returns
    -------
    BiasStrips
        Number, length of each and joined length [in], rounded down by less than a millionth a strip.

    Raises
    ------
    CalculationError
        If a strip is shorter than what a join takes.

    Notes
    -----
    The two corners that are left give shorter strips, which are not counted.

    Examples
    --------
    Cloth 10 in by 30 in, 2 in strips: (30 - 10) / 2.828 = 7.07, so 7 strips of 14.14 in.

    >>> strips = bias_strips(Fraction(10), Fraction(30), Fraction(2), Fraction(1, 4))
    >>> strips.number, round(float(strips.each), 2)
    (7, 14.14)

    Six joins of 0.7071 in take 4.24 in from 98.99.

    >>> round(float(strips.length), 2)
    94.75
    >>> bias_strips(Fraction(10), Fraction(10), Fraction(2), Fraction(1, 4)).number
    0

    References
    ----------
    Derived in the docstring above.
    """
    between, along = sorted((more_than_nothing(cloth_across, "the cloth"), more_than_nothing(cloth_along, "the cloth")))
    lost = 2 * not_negative(join, "the allowance of a join")
    if lost >= between:
        raise CalculationError("the cloth is too narrow: a join would take the whole strip; use wider cloth")
    strip = more_than_nothing(width, "the width of a bias strip")
    number = math.floor((along - between) / (strip * ROOT_TWO_ABOVE))
    straight = number * between - max(number - 1, 0) * lost
    return BiasStrips(number, between * ROOT_TWO_BELOW, straight * ROOT_TWO_BELOW)


def cloth_for_bias(
    length: Fraction, width: Fraction, cloth_width: Fraction, *, join: Fraction, step: Fraction
) -> Fraction:
    """Return the shortest length of cloth that gives a length of bias strip, cut in full strips and joined.

    The length is tried step by step, from the one that area alone would allow: a length a little less than the width of
    the cloth can give fewer strips than a shorter one. Cloth so short that its strips come out under 12 in is passed
    over, unless no longer strip is wanted: it would be all joins.

    Parameters
    ----------
    length, width : Fraction
        Length and cut width of the strip wanted [in].
    cloth_width : Fraction
        Usable width of the cloth [in].
    join : Fraction
        Seam allowance of a join [in].
    step : Fraction
        The length is a whole number of these [in].

    Returns
    -------
    Fraction
        Length of cloth [in].

    Raises
    ------
    CalculationError
        If the cloth is too narrow for strips worth joining.

    Examples
    --------
    90 in of 2 in strip from cloth 30 in wide: 9 in gives 7 strips of 12.7 in less 6 joins of 0.71, 84.9 in; 10 in gives
    94.7 in. 20 in of 1 in strip from cloth 44 in wide: 9 in is the shortest that gives strips of 12 in.

    >>> cloth_for_bias(Fraction(90), Fraction(2), Fraction(30), join=Fraction(1, 4), step=Fraction(1))
    Fraction(10, 1)
    >>> cloth_for_bias(Fraction(20), Fraction(1), Fraction(44), join=Fraction(1, 4), step=Fraction(1))
    Fraction(9, 1)

    References
    ----------
    Derived in the docstring above.
    """
    area = more_than_nothing(length, "the length of a bias strip") * more_than_nothing(width, "its width")
    shortest = max(min(SHORTEST_STRIP, length), 2 * ROOT_TWO_ABOVE * join + width)
    narrowest = shortest / ROOT_TWO_BELOW
    if more_than_nothing(cloth_width, "the width of the cloth") < narrowest:
        raise CalculationError("the cloth is too narrow for bias strips that are worth joining; use wider cloth")
    cloth = round_up(max(area / cloth_width, narrowest), more_than_nothing(step, "the step"))
    while bias_strips(cloth_width, cloth, width, join).length < length:
        cloth += step
    return cloth

"""Strips cut on the true bias: cloth comes in, the length of strip it gives goes out, and back.

True bias runs at exactly 45 degrees to the grain, so every length along it is a straight one times the root of two.
That root is rounded so that a length of strip is never promised that the cloth does not hold.
"""

from __future__ import annotations

import math
from fractions import Fraction
from typing import NamedTuple

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


class PiecedBias(NamedTuple):
    """A strip on the bias pieced from a rectangle: its short and long side, how many strips, what they give [in]."""

    short: Fraction
    long: Fraction
    strips: int
    gives: Fraction


def pieced_bias(
    sides: tuple[Fraction, Fraction],
    width: Fraction,
    join: Fraction,
    wanted: Fraction | None = None,
    least: Fraction = Fraction(0),
) -> PiecedBias:
    r"""Return the bias strip that a rectangle gives, cut in strips that are joined on the thread.

    The short side P is folded onto the long side Q. From that fold strips are ruled to both sides, which begin
    :math:`s = w \sqrt 2` apart on Q, at :math:`c = P + k s`. Their ends are cut along Q, with the thread; a strip is
    whole between :math:`\max(0, c + s - Q)` and :math:`\min(P, c)` of P, an extent e. It is used where e is more than
    its two allowances. Joined, m strips give :math:`\sqrt 2\,(\sum e - 2 a (m - 1))`. The longest are used first, and
    no more than are wanted; those shorter than a least length are left.

    Parameters
    ----------
    sides : tuple of Fraction
        The short and the long side of the rectangle, P not more than Q [in].
    width : Fraction
        Width of the strip as cut, w [in].
    join : Fraction
        Seam allowance of a join, a [in].
    wanted : Fraction, optional
        The length that is enough [in]; without it every strip is used.
    least : Fraction
        The least length of a strip [in].

    Returns
    -------
    PiecedBias
        Without any strip, and nothing given, where the rectangle is too small.

    Examples
    --------
    8 x 20, 2 in strip, joins of 1/4: four strips go from side to side, the others are 5.86, 5.17, 3.03 and 2.34 of the
    8 in: 48.40 less seven joins of 1/2, times 1.41421, is 63 1/2.

    >>> found = pieced_bias((Fraction(8), Fraction(20)), Fraction(2), Fraction(1, 4))
    >>> found.strips, round(float(found.gives), 1)
    (8, 63.5)
    >>> pieced_bias((Fraction(1), Fraction(1)), Fraction(2), Fraction(1, 4)).strips
    0

    References
    ----------
    Derived above. That strips are joined on the thread: *Sewing Handicraft for Girls*, "Bias" (from memory).
    """
    apart = more_than_nothing(width, "the width of a bias strip") * ROOT_TWO_ABOVE
    lost = 2 * not_negative(join, "the allowance of a join")
    least_extent = max(lost, least / ROOT_TWO_BELOW)
    # Whole numbers of one small unit: many rectangles are asked for, and fractions of a root are slow.
    below = math.lcm(*(length.denominator for length in (*sides, apart, lost, least_extent)))
    short, long, each, twice, shortest = (int(length * below) for length in (*sides, apart, lost, least_extent))
    starts = range(short % each, long + short + 1, each)
    extents = sorted((min(short, start) - max(0, start + each - long) for start in starts), reverse=True)
    enough = None if wanted is None else math.ceil(wanted / ROOT_TWO_BELOW * below)
    number, used = 0, 0
    for extent in extents:
        if extent <= twice or extent < shortest or (enough is not None and used >= enough):
            break
        number, used = number + 1, used + extent - (twice if number else 0)
    return PiecedBias(*sides, number, ROOT_TWO_BELOW * used / below)


def bias_rectangle(
    strip: tuple[Fraction, Fraction], join: Fraction, long: Fraction, step: Fraction, least: Fraction = Fraction(0)
) -> PiecedBias | None:
    """Return the narrowest rectangle of a long side that gives a length of bias strip, pieced.

    Parameters
    ----------
    strip : tuple of Fraction
        Length and cut width of the strip wanted [in].
    join : Fraction
        Seam allowance of a join [in].
    long : Fraction
        The long side [in].
    step : Fraction
        The short side is a whole number of these [in].
    least : Fraction
        The least length of each strip that is joined [in].

    Returns
    -------
    PiecedBias or None
        None where even a square of that side gives too little.

    Examples
    --------
    950 in of 1 1/2 in strip off cloth of 54 in: 28 1/4 in of it, in 36 strips.

    >>> found = bias_rectangle((Fraction(950), Fraction(3, 2)), Fraction(1, 4), Fraction(54), Fraction(1, 4))
    >>> found.short, found.strips
    (Fraction(113, 4), 36)

    References
    ----------
    Derived in ``pieced_bias``; the sides are tried one after the other from what area and the least strip allow.
    """
    length, width = strip
    short = round_up(max(length * width / long, least / ROOT_TWO_ABOVE), more_than_nothing(step, "the step"))
    while short <= long:
        found = pieced_bias((short, long), width, join, length, least)
        if found.gives >= length:
            return found
        short += step
    return None

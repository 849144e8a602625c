"""The panel that a piece of cloth gives: its width and a wish come in, the plan with one number of tucks goes out."""

from __future__ import annotations

import math
from dataclasses import replace
from fractions import Fraction

from generator.calculation.panel.candidates import least_pitch
from generator.calculation.panel.margins import Pair, least_margins, margins_keep, settled_margin
from generator.calculation.panel.marks import laid_out, rounded
from generator.calculation.panel.wish import TuckWish
from generator.calculation.panel_ends import end_allowance
from generator.calculation.worked import End, TuckSet
from generator.errors import CalculationError
from generator.lengths import Edition, round_down


def most_tucks(cloth: Fraction, wish: TuckWish, edition: Edition) -> int:
    r"""Return how many tucks a piece of cloth holds, before any rule about their number.

    The first and last mark lie at least one end's due from the raw edges, the others a spacing apart:
    :math:`n = \lfloor (L - f_{1,l} - f_{1,r}) / m \rfloor + 1`, with the least margins in both.

    Parameters
    ----------
    cloth : Fraction
        Width of the cloth across the tucks, L [in].
    wish : TuckWish
        Depth, spacing, ends and margins; the finished size is not read.
    edition : Edition
        Foot room and play are whole numbers of its unit.

    Returns
    -------
    int
        Number of tucks, n [-]; nothing where not even one fits.

    Examples
    --------
    27 1/4 in of cloth, seams 1/2 in, tucks 3/8 in deep, at least 3/4 in of margin: 27 1/4 - 2 x 1 5/8 = 24 in hold 16
    spacings of 1 1/2 in, so 17 tucks.

    >>> from generator.lengths import INCH
    >>> seam, margin = End("seam", Fraction(1, 2)), (Fraction(3, 4), Fraction(2))
    >>> wish = TuckWish(Fraction(0), Fraction(3, 8), Fraction(3, 2), (seam, seam), margin, margin)
    >>> most_tucks(Fraction(109, 4), wish, INCH), most_tucks(Fraction(3), wish, INCH)
    (17, 0)

    References
    ----------
    Derived in the docstring above.
    """
    low = least_margins(wish, max(wish.rule.multiple, 1), (wish.depth, wish.depth), edition)
    least = (max(wish.left_margin[0], low[0]), max(wish.right_margin[0], low[1]))
    return max(math.floor(_over(cloth, 1, least, wish) / wish.spacing) + 1, 0)


def panel_from_cloth(cloth: Fraction, count: int, wish: TuckWish, edition: Edition) -> TuckSet | None:
    """Return the panel that a piece of cloth gives with one number of tucks, or None where that number does not fit.

    What the tucks leave goes to the margins, both the same share of their ranges; a caught hem grows with its margin
    and so takes twice. The whole cloth is used, but for one mark where a caught hem needs an even number.

    Parameters
    ----------
    cloth : Fraction
        Width of the cloth across the tucks, L [in].
    count : int
        Number of tucks, n [-].
    wish : TuckWish
        Depth, spacing, ends and margins; the finished size is not read.
    edition : Edition
        Ruler and steps.

    Returns
    -------
    TuckSet or None
        The panel, rounded; what it finishes at counts as asked for.

    Examples
    --------
    27 3/4 in of cloth hold 17 tucks as 27 1/4 in do; the half inch goes to the margins, 1/4 in each.

    >>> from generator.lengths import INCH
    >>> seam, margin = End("seam", Fraction(1, 2)), (Fraction(3, 4), Fraction(2))
    >>> wish = TuckWish(Fraction(0), Fraction(3, 8), Fraction(3, 2), (seam, seam), margin, margin)
    >>> panel = panel_from_cloth(Fraction(111, 4), 17, wish, INCH)
    >>> str(panel.left_margin), str(panel.right_margin), str(panel.finished), str(panel.cut)
    ('1', '1', '14', '111/4')

    References
    ----------
    Derived in the docstring above.
    """
    take_up = wish.take_up_at(wish.depth)
    pitch = wish.spacing - take_up
    least = least_margins(wish, count, (wish.depth, wish.depth), edition)
    margins = _shared(round_down(cloth, edition.mark), count, wish, least, edition)
    if margins is None or pitch <= 0 or pitch < least_pitch(wish, wish.depth):
        return None
    try:
        exact = laid_out((wish.depth,) * count, (take_up,) * count, (pitch,) * (count - 1), wish.ends, margins)
        panel = rounded(exact, edition)
    except CalculationError:
        return None
    kept = margins_keep((panel.left_margin, panel.right_margin), wish, least, edition)
    return replace(panel, asked=panel.finished, wish=wish.spacing) if kept and panel.cut <= cloth else None


def _over(cloth: Fraction, count: int, margins: Pair, wish: TuckWish) -> Fraction:
    """Return the cloth that is left over beside a number of tucks with certain margins."""
    take_up = wish.take_up_at(wish.depth)
    ends = sum(
        end_allowance(end, margin, take_up) + margin + take_up / 2
        for end, margin in zip(wish.ends, margins, strict=True)
    )
    return cloth - (count - 1) * wish.spacing - ends


def _shared(cloth: Fraction, count: int, wish: TuckWish, least: Pair, edition: Edition) -> Pair | None:
    """Return the margins that use the cloth up, with the outermost marks on the ruler."""
    take_up = wish.take_up_at(wish.depth)
    low = (max(wish.left_margin[0], least[0]), max(wish.right_margin[0], least[1]))
    play = tuple(
        max(most - few, Fraction(0)) for few, (_, most) in zip(low, (wish.left_margin, wish.right_margin), strict=True)
    )
    left_over = _over(cloth, count, low, wish)
    takes = tuple(2 if end.kind == "caught hem" else 1 for end in wish.ends)
    room = takes[0] * play[0] + takes[1] * play[1]
    if left_over < 0 or left_over >= room + 2 * edition.mark:
        return None
    share = min(left_over / room, Fraction(1)) if room else Fraction(0)
    left = settled_margin(low[0] + share * play[0], wish.ends[0], take_up, edition)
    rest = _over(cloth, count, (left, Fraction(0)), wish) / takes[1]
    return (left, _held(rest, wish.ends[1], take_up, edition)) if rest >= 0 else None


def _held(margin: Fraction, end: End, take_up: Fraction, edition: Edition) -> Fraction:
    """Return the right margin, less half a mark where its caught hem would end between two divisions."""
    return settled_margin(margin - edition.mark / 2, end, take_up, edition) if end.kind == "caught hem" else margin

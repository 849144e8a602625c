"""The room beside the tucks: a total and ranges come in, two margins that put marks on the ruler go out."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from generator.calculation.panel.wish import Range, TuckWish, lie
from generator.calculation.panel_ends import end_allowance, least_margin
from generator.calculation.worked import End
from generator.lengths import Edition, round_down, round_nearest, round_up

Pair = tuple[Fraction, Fraction]
_Rounding = Callable[[Fraction, Fraction], Fraction]


def least_margins(wish: TuckWish, count: int, depths: Pair, edition: Edition) -> Pair:
    """Return the smallest margins that can be sewn, whatever was asked for.

    Parameters
    ----------
    wish : TuckWish
        The ends, and how the outermost tucks lie.
    count : int
        Number of tucks, n [-].
    depths : tuple of two Fractions
        Depth of the first and of the last tuck, d [in].
    edition : Edition
        Foot room and play are whole numbers of its unit.

    Returns
    -------
    tuple of two Fractions
        Least left and right margin [in].

    Examples
    --------
    Tucks 3/8 in deep standing beside seams: 3/8 in of foot room.

    >>> from generator.lengths import INCH
    >>> wish = TuckWish(Fraction(9), Fraction(3, 8), Fraction(2), (End("seam"),) * 2, (0, 1), (0, 1))
    >>> least_margins(wish, 5, (Fraction(3, 8),) * 2, INCH)
    (Fraction(3, 8), Fraction(3, 8))

    References
    ----------
    Derived from the least margin of one end.
    """
    lies = wish.lies_at(count)
    return (
        least_margin(wish.ends[0], depths[0], lie(lies[0]), edition),
        least_margin(wish.ends[1], depths[1], lie(lies[1]), edition),
    )


def margin_ranges(wish: TuckWish, least: Pair) -> tuple[Range, Range]:
    """Return what each margin may be: the range asked for, from the least that can be sewn.

    Parameters
    ----------
    wish : TuckWish
        The ranges asked for.
    least : tuple of two Fractions
        Least left and right margin that can be sewn [in].

    Returns
    -------
    tuple of two ranges
        Least and most of the left and of the right margin [in]; a least above its most means that nothing fits.

    Examples
    --------
    >>> wish = TuckWish(Fraction(9), Fraction(3, 8), Fraction(2), (End("seam"),) * 2, (0, 1), (1, 2))
    >>> margin_ranges(wish, (Fraction(3, 8), Fraction(3, 8)))
    ((Fraction(3, 8), 1), (1, 2))

    References
    ----------
    Derived in the docstring above.
    """
    left, right = wish.left_margin, wish.right_margin
    return (max(left[0], least[0]), left[1]), (max(right[0], least[1]), right[1])


def margins_keep(margins: Pair, wish: TuckWish, least: Pair, edition: Edition) -> bool:
    """Return whether two margins keep their limits.

    What can be sewn is kept exactly. The range asked for may be left by less than one mark of the ruler, because marks
    are rounded and take-up from a sample never falls on it.

    Parameters
    ----------
    margins : tuple of two Fractions
        Left and right margin [in].
    wish : TuckWish
        The ranges asked for.
    least : tuple of two Fractions
        Least left and right margin that can be sewn [in].
    edition : Edition
        Its ``mark`` is the play of the range.

    Returns
    -------
    bool
        Whether both are kept.

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> one, most = Fraction(1), Fraction(33, 32)
    >>> wish = TuckWish(Fraction(9), one, one, (End("raw"),) * 2, (one, one), (one, one))
    >>> margins_keep((most, one), wish, (one, one), INCH), margins_keep((one, one - 1), wish, (one, one), INCH)
    (True, False)

    References
    ----------
    Derived in the docstring above.
    """
    asked = (wish.left_margin, wish.right_margin)
    return all(
        margin >= low and bounds[0] - edition.mark < margin < bounds[1] + edition.mark
        for margin, low, bounds in zip(margins, least, asked, strict=True)
    )


def dealt_margins(total: Fraction, wish: TuckWish, least: Pair, take_up: Fraction, edition: Edition) -> Pair | None:
    """Return two margins that share what the tucks leave, with the first fold mark on the ruler.

    Both take the same share of their ranges, so equal ranges give equal margins, but none gets less than can be sewn.
    Then the left one moves to the nearest place that puts the first mark on a division; the right one takes the rest.

    Parameters
    ----------
    total : Fraction
        Both margins together [in].
    wish : TuckWish
        The ranges asked for and the ends.
    least : tuple of two Fractions
        Least left and right margin that can be sewn [in].
    take_up : Fraction
        Cloth hidden by the first tuck, u [in].
    edition : Edition
        Its ``mark`` is the finest division.

    Returns
    -------
    tuple of two Fractions or None
        Left and right margin [in]; None where no two margins fit.

    Examples
    --------
    3 in left over beside raw edges, both margins 1 in to 2 in: one and a half each.

    >>> from generator.lengths import INCH
    >>> one, two = Fraction(1), Fraction(2)
    >>> wish = TuckWish(Fraction(9), one, two, (End("raw"),) * 2, (one, two), (one, two))
    >>> dealt_margins(Fraction(3), wish, (one, one), two, INCH)
    (Fraction(3, 2), Fraction(3, 2))
    >>> dealt_margins(Fraction(5), wish, (one, one), two, INCH) is None
    True

    References
    ----------
    Derived in the docstring above.
    """
    (left_least, left_most), (right_least, right_most) = margin_ranges(wish, least)
    lowest, highest = max(left_least, total - right_most), min(left_most, total - right_least)
    if lowest > highest:
        return None
    share = _share(total, wish.left_margin, wish.right_margin)
    left = min(max(share, lowest), highest)
    for rounding in (round_nearest, round_up, round_down):
        moved = _on_ruler(left, wish.ends[0], take_up, edition.mark, rounding)
        if margins_keep((moved, total - moved), wish, least, edition):
            return moved, total - moved
    return left, total - left


def _share(total: Fraction, left: Range, right: Range) -> Fraction:
    """Return the left margin when both take the same share of their ranges."""
    play = left[1] - left[0] + right[1] - right[0]
    return left[0] + (total - left[0] - right[0]) * (left[1] - left[0]) / play if play else left[0]


def settled_margin(least: Fraction, end: End, take_up: Fraction, edition: Edition) -> Fraction:
    """Return the smallest margin, not below a least one, that puts the mark nearest its edge on the ruler.

    Parameters
    ----------
    least : Fraction
        The least margin [in].
    end : End
        How the edge is finished.
    take_up : Fraction
        Cloth hidden by the tuck nearest this edge, u [in].
    edition : Edition
        Its ``mark`` is the finest division.

    Returns
    -------
    Fraction
        The margin [in].

    Examples
    --------
    A seam of 1/2 in, at least 1 in of margin, and half of 0.49 in: 1.745 in, so the mark at 1 3/4 in, 0.005 in more.

    >>> from generator.lengths import INCH
    >>> settled_margin(Fraction(1), End("seam", Fraction(1, 2)), Fraction(49, 100), INCH)
    Fraction(201, 200)

    References
    ----------
    Derived in the docstring above.
    """
    return _on_ruler(least, end, take_up, edition.mark, round_up)


def _on_ruler(margin: Fraction, end: End, take_up: Fraction, step: Fraction, rounding: _Rounding) -> Fraction:
    """Return a margin moved so that its fold mark falls on the ruler; half a caught hem's mark is the hem."""
    beyond = take_up / 2 + (0 if end.kind == "caught hem" else end_allowance(end, Fraction(0), take_up))
    return rounding(beyond + margin, step) - beyond

"""Why a plan stands where it stands in the list: a rounded set of tucks comes in, short sentences go out."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.panel.tucks import visible_space
from generator.calculation.panel.wish import TuckWish
from generator.calculation.turning.facing import facing_gap
from generator.calculation.worked import TuckSet
from generator.lengths import Edition, say_length, say_range


def choice_reasons(tucks: TuckSet, wish: TuckWish, edition: Edition) -> tuple[str, ...]:
    """Return what speaks for and against a plan, in the order of weight.

    Parameters
    ----------
    tucks : TuckSet
        A rounded set of equal tucks.
    wish : TuckWish
        What was asked for.
    edition : Edition
        How lengths are said.

    Returns
    -------
    tuple of str
        Parts of a sentence without capital or stop.

    Examples
    --------
    >>> from generator.calculation.panel.marks import laid_out, rounded
    >>> from generator.calculation.worked import End
    >>> from generator.lengths import INCH
    >>> ends, two = (End("raw"), End("raw")), Fraction(2)
    >>> wish = TuckWish(two * 2, Fraction(1, 4), two, ends, (two, two), (two, two))
    >>> choice_reasons(rounded(laid_out((wish.depth,), (wish.depth * 2,), (), ends, (two, two)), INCH), wish, INCH)
    ('every mark on a 1/4 in division', 'margins of 2 in')

    References
    ----------
    Derived from the limits and the cost of a plan.
    """
    reasons = [f"every mark on a {say_length(tucks.grid, edition)} division"]
    reasons += _spacing(tucks, wish, edition)
    depth = tucks.depths[0]
    if depth != wish.depth:
        reasons.append(f"depth {_away(depth - wish.depth, edition)}")
    reasons += _margins(tucks, edition)
    return (*reasons, *_surface(tucks, wish, edition))


def _spacing(tucks: TuckSet, wish: TuckWish, edition: Edition) -> list[str]:
    if tucks.count < 2:
        return []
    narrow, wide = min(tucks.spacings), max(tucks.spacings)
    if narrow != wide:
        return [f"spacing uneven, {say_range(narrow, wide, edition)}"]
    return ["spacing as asked for" if wide == wish.spacing else f"spacing {_away(wide - wish.spacing, edition)}"]


def _margins(tucks: TuckSet, edition: Edition) -> list[str]:
    if tucks.ring:
        return ["the pitch runs on across the seam"]
    left, right = (say_length(margin, edition) for margin in (tucks.left_margin, tucks.right_margin))
    if left == right:
        return [f"margins of {left}"]
    reasons = [f"margins of {left} and {right}"]
    odd = (
        [tucks.pitches[0] / edition.mark % 2 == 1, tucks.finished / edition.mark % 2 == 0] if tucks.pitches else [False]
    )
    if all(odd) and abs(tucks.left_margin - tucks.right_margin) == edition.mark:
        reasons.append("an even number of marks in the pitch would make the margins equal")
    return reasons


def _surface(tucks: TuckSet, wish: TuckWish, edition: Edition) -> list[str]:
    if tucks.count < 2:
        return []
    pitch, depth = min(tucks.pitches), tucks.depths[0]
    if wish.facing:
        gap = facing_gap(pitch, depth, depth)
        if gap == 0:
            return ["facing folds just meet"]
        return [f"facing folds {'leave a gap of' if gap > 0 else 'overlap by'} {say_length(abs(gap), edition)}"]
    shows = visible_space(pitch, depth)
    return [f"{say_length(shows, edition)} shows between tucks"] if shows > 0 else []


def _away(difference: Fraction, edition: Edition) -> str:
    return f"{say_length(abs(difference), edition)} {'more' if difference > 0 else 'less'} than asked for"

"""What to do about a panel that is off, in words: a dealt-out change or a measure beyond it comes in, text goes out."""

from __future__ import annotations

import math
from fractions import Fraction

from generator.calculation.worked import CheckPoint, TuckSet
from generator.lengths import MILLIMETRE, Edition, round_down, say_length

_NARROWEST_SEAM = {"in": Fraction(1, 4), "cm": 6 * MILLIMETRE}


def allowed_change(depth: Fraction, edition: Edition) -> Fraction:
    """Return how much the depth of one tuck may be changed to win back an error without being seen.

    1/16 in (1 mm), or an eighth of the depth where that is more; of a shallow tuck never more than a quarter.

    Parameters
    ----------
    depth : Fraction
        Depth of the tuck, d [in].
    edition : Edition
        Its ``mark`` and its ``fine`` step.

    Returns
    -------
    Fraction
        The change, a whole number of fine steps [in]; nothing for the finest tucks.

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> [str(allowed_change(Fraction(depth), INCH)) for depth in ("3/8", "1", "1/8", "1/16")]
    ['1/16', '1/8', '1/32', '0']

    References
    ----------
    Common practice, no source.
    """
    return round_down(min(max(edition.mark, depth / 8), depth / 4), edition.fine)


def spare_allowance(tucks: TuckSet, edition: Edition) -> Fraction:
    """Return how much of its allowances a panel can give while each still holds a seam.

    A caught hem, a bound or a raw edge gives nothing.

    Parameters
    ----------
    tucks : TuckSet
        A rounded set.
    edition : Edition
        Its unit tells how narrow a seam may be: 1/4 in or 6 mm.

    Returns
    -------
    Fraction
        Of both ends together [in].

    References
    ----------
    Common practice, no source.
    """
    least = _NARROWEST_SEAM[edition.unit]
    ends = ((tucks.left, tucks.left_allowance), (tucks.right, tucks.right_allowance))
    return sum((max(Fraction(0), cut - least) for end, cut in ends if end.kind != "caught hem"), Fraction(0))


def dealt_words(dealt: tuple[tuple[int, Fraction], ...], after: int, edition: Edition) -> str:
    """Return which tucks to stitch deeper or shallower, by their numbers.

    Parameters
    ----------
    dealt : tuple of (int, Fraction)
        Number of tucks and the change of their depth [in], in the order of sewing.
    after : int
        The last tuck already stitched [-].
    edition : Edition
        How lengths are said.

    Returns
    -------
    str
        One sentence.

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> dealt_words(((2, Fraction(-1, 16)), (1, Fraction(-1, 32))), 13, INCH)
    'Stitch tucks 14 and 15 shallower by 1/16 in and tuck 16 shallower by 1/32 in.'
    """
    parts = []
    first = after + 1
    for count, change in dealt:
        last = first + count - 1
        which = f"tuck {first}" if count == 1 else f"tucks {first} {'and' if count == 2 else 'to'} {last}"
        parts.append(f"{which} {'deeper' if change > 0 else 'shallower'} by {say_length(abs(change), edition)}")
        first += count
    return f"Stitch {' and '.join(parts)}."


def beyond_words(tucks: TuckSet, checkpoint: CheckPoint, off: Fraction, edition: Edition) -> str:
    """Return what to do where the tucks that are left cannot absorb an error.

    Parameters
    ----------
    tucks : TuckSet
        A rounded set.
    checkpoint : CheckPoint
        Where the panel was measured.
    off : Fraction
        How far it is off [in]; negative is too narrow.
    edition : Edition
        How lengths are said.

    Returns
    -------
    str
        A few sentences.

    Notes
    -----
    Leaving one tuck out gives its whole take-up; towards a caught hem at the far end a mark moved by x wins x / 2.
    """
    left = tucks.count - checkpoint.after
    size = say_length(abs(off), edition)
    if not left and abs(off) <= checkpoint.within:
        return "That is usual; ease it in when the panel is sewn to its neighbour."
    caught = [end.kind == "caught hem" for end in (tucks.left, tucks.right)]
    parts = []
    if left:
        few = "the 1 tuck" if left == 1 else f"the {left} tucks"
        parts.append(f"{size} is more than {few} left can absorb ({say_length(checkpoint.absorb, edition)}).")
    parts.append(_stitched_again(tucks, off, edition))
    if off < 0:
        parts.append(
            f"Or {'leave' if left else 'unpick'} one tuck{' out' if left else ''}: that gives back "
            f"{say_length(tucks.take_ups[-1], edition)}."
        )
    if left and off < 0 and caught[1]:
        parts.append(
            f"Or move the last fold mark {say_length(2 * abs(off), edition)} towards the far edge: the hem "
            f"there grows narrower by {size}."
        )
    if off > 0 and not all(caught):
        parts.append(f"Or trim {size} off.")
    if off < 0 and -off <= spare_allowance(tucks, edition):
        parts.append(f"Or take {size} from the allowances.")
    return " ".join((*parts, "Or cut the other pieces to the panel as sewn."))


def _stitched_again(tucks: TuckSet, off: Fraction, edition: Edition) -> str:
    """Return how many tucks to unpick and stitch again, changed as much as each may be."""
    each = min(allowed_change(depth, edition) for depth in tucks.depths)
    number = math.ceil(abs(off) / 2 / each) if each else 0
    way = "deeper" if off > 0 else "shallower"
    if not 1 <= number <= tucks.count:
        return f"Unpick the tucks and stitch them again, all a little {way}."
    if number == 1:
        return f"Unpick one tuck and stitch it again, {way} by {say_length(abs(off) / 2, edition)}."
    return f"Unpick {number} tucks and stitch them again, {way} by {say_length(abs(off) / 2, edition)} together."

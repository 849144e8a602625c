"""What to do about a panel that is off, in words: a dealt-out change or a measure beyond it comes in, text goes out."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.worked import CheckPoint, TuckSet
from generator.lengths import Edition, say_length


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
    'Stitch tucks 14 to 15 1/16 in shallower and tuck 16 1/32 in shallower.'
    """
    parts = []
    first = after + 1
    for count, change in dealt:
        which = f"tuck {first}" if count == 1 else f"tucks {first} to {first + count - 1}"
        parts.append(f"{which} {say_length(abs(change), edition)} {'deeper' if change > 0 else 'shallower'}")
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
    opening = ""
    if left:
        few = "the 1 tuck" if left == 1 else f"the {left} tucks"
        opening = f"{size} is more than {few} left can absorb ({say_length(checkpoint.absorb, edition)}). "
    if off > 0:
        return opening + f"Trim {size} off, half at each edge, or unpick and stitch deeper."
    fewer = "Unpick one tuck" if not left else "Leave one tuck out"
    text = f"{fewer}: that gives {say_length(tucks.take_ups[-1], edition)}. Or take {size} from the allowances, "
    text += "or cut the other pieces to the panel as sewn."
    if left and tucks.right.kind == "caught hem":
        moved = say_length(2 * abs(off), edition)
        text += f" Or move the last fold mark {moved} towards the far edge: the hem there grows narrower by {size}."
    return opening + text

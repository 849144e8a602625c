"""The narrowest cloth for some pieces: a layout comes in, the width that would do for the same purchase goes out."""

from __future__ import annotations

from collections.abc import Sequence

from generator.calculation.cutting.layout_blocks import CutStrip
from generator.calculation.cutting.layout_cover import strips_within
from generator.calculation.cutting.layout_items import UnitItems, sorted_items
from generator.calculation.cutting.layout_stacks import Looks, SearchTooLongError, task_of

_NARROWED_PIECES = 20


def narrowest_width(found: UnitItems, length: int, strips: Sequence[CutStrip], limits: tuple[int, int]) -> int:
    """Return the narrowest width on which all pieces can be cut from a length.

    A layout that fits a width fits every greater one, so the width is found by halving; each layout found may need
    less than the width asked, which shortens the way.

    Parameters
    ----------
    found : UnitItems
        What is cut from the cloth.
    length : int
        The length to stay within [unit].
    strips : sequence of CutStrip
        A layout within that length.
    limits : tuple of int
        How much may be looked at for one width [-], and how high a strip may be whose pieces are not [unit].

    Returns
    -------
    int
        The narrowest width [unit].

    Notes
    -----
    A width at which the search needs too many looks counts as too narrow, so the answer always does. Beyond 20 pieces
    the width that the layout uses is returned.
    """
    looks, highest = limits
    width = _used(strips)
    if sum(item.item.quantity for item in found.items) > _NARROWED_PIECES:
        return width
    area = sum(min(along * across for along, across in ways) * item.quantity for item, ways in found.items)
    low = max(-(-area // length), *(min(across for _, across in ways) for _, ways in found.items))
    while low < width:
        tried = (low + width) // 2
        narrow = sorted_items(found._replace(width=tried), found.items, stacked=True, apart=True).pieces
        try:
            laid = strips_within(task_of(narrow, Looks(looks), highest), length)
        except SearchTooLongError:
            laid = None
        if laid is None:
            low = tried + 1
        else:
            width = _used(laid)
    return width


def _used(strips: Sequence[CutStrip]) -> int:
    """Return the width of the fullest strip."""
    return max(sum(stack.across for stack in strip.stacks) for strip in strips)

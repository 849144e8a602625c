"""The cutting layout of one cloth: rectangles and a usable width come in, a layout of straight cuts goes out.

The cloth is first cut across into strips, then each strip into pieces; a piece lower than its strip is trimmed. A
person can cut that with a ruler, and tear it along the thread where the cloth allows.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from operator import attrgetter

from generator.calculation.cutting.layout_bounds import lower_bound
from generator.calculation.cutting.layout_kinds import LayoutWay, StripTable
from generator.calculation.cutting.layout_pieces import LayoutPieces, narrowest_usable, pieces_by_kind, width_used
from generator.calculation.cutting.layout_search import CutStrip
from generator.calculation.cutting.layout_strips import shortest_strips
from generator.calculation.worked import CutItem, Layout, PlacedItem
from generator.lengths import INCH, Edition

_Taken = tuple[CutItem, int, LayoutWay]


def cutting_layout(items: Sequence[CutItem], width: Fraction, edition: Edition = INCH) -> Layout:
    """Return the shortest layout of strips for some pieces on cloth of a width.

    Up to 20 pieces no layout of strips across the cloth is shorter; beyond, the layout is a good one, and ``optimal``
    says whether it is proven shortest all the same.

    Parameters
    ----------
    items : sequence of CutItem
        The pieces to cut [in]; on one-way cloth none may be turnable.
    width : Fraction
        Usable width, after washing where the cloth is washed first [in].
    edition : Edition
        The unit in which a fault is told.

    Returns
    -------
    Layout
        Strips from the highest down, those that are only cut later after the others; pieces from the left, the highest
        first. ``lower_bound`` holds for any way of cutting, ``narrowest`` is the narrowest width at which the length
        stays.

    Raises
    ------
    CalculationError
        If a piece is wider than the cloth in every way that it may lie, or a size is not positive.

    Notes
    -----
    The search counts its steps: should 20 pieces ever need too many, the layout is a good one and ``optimal`` is False.
    ``narrowest`` is exact up to 20 pieces; beyond, it is the width that this layout uses. The same pieces give the same
    layout every time.

    Examples
    --------
    Two pieces of 24 x 30 and two of 16 x 20 on 44 in: one of each fills a strip (24 + 16 = 40), two strips of 30.

    >>> front = CutItem("front", "Front", Fraction(24), Fraction(30), 2)
    >>> back = CutItem("back", "Back", Fraction(16), Fraction(20), 2)
    >>> layout = cutting_layout([front, back], Fraction(44))
    >>> layout.length, layout.optimal, layout.narrowest
    (Fraction(60, 1), True, Fraction(40, 1))

    Nothing to cut needs no cloth:

    >>> cutting_layout([], Fraction(44)).length
    Fraction(0, 1)

    References
    ----------
    Derived in the modules of the layout; straight cuts in two stages are common practice, no source.
    """
    pieces = pieces_by_kind(items, width, edition)
    if not pieces.kinds:
        return Layout(width, Fraction(0), (), (), Fraction(0), optimal=True, narrowest=Fraction(0))
    table = pieces.table(width // pieces.unit)
    found = shortest_strips(table, pieces.counts)
    ordered = sorted(found.strips, key=lambda strip: (-strip.height, [-taken for taken in strip.take]))
    filled = _filled(pieces, table, ordered)
    return Layout(
        width=width,
        length=found.length * pieces.unit,
        placed=_placed(filled, pieces.unit),
        strips=_strips(pieces.unit, [height for height, _ in filled]),
        lower_bound=lower_bound(items, width),
        optimal=found.proven,
        narrowest=narrowest_usable(pieces, width_used(table, found.strips), found.length) * pieces.unit,
    )


def _strips(unit: Fraction, heights: Sequence[int]) -> tuple[tuple[Fraction, Fraction], ...]:
    """Return where each strip begins and how high it is [in]."""
    begins = [sum(heights[:number]) for number in range(len(heights))]
    return tuple((begin * unit, height * unit) for begin, height in zip(begins, heights, strict=True))


def _filled(pieces: LayoutPieces, table: StripTable, strips: Sequence[CutStrip]) -> list[tuple[int, list[_Taken]]]:
    """Return the height of each strip and what is cut from it; a strip of which nothing is cut at once comes last."""
    waiting = [
        [(item, copy + 1) for item in sorted(alike, key=attrgetter("later")) for copy in range(item.quantity)][::-1]
        for alike in pieces.items
    ]
    filled = [
        (strip.height, [(*waiting[kind].pop(), way) for way, kind in _in_strip(table, strip)]) for strip in strips
    ]
    return sorted(filled, key=lambda strip: all(item.later for item, _, _ in strip[1]))


def _placed(strips: Sequence[tuple[int, list[_Taken]]], unit: Fraction) -> tuple[PlacedItem, ...]:
    """Lay every piece at the top of its strip, the highest at the left."""
    placed = []
    top = 0
    for height, taken in strips:
        left = 0
        for item, copy, way in taken:
            placed.append(_lying(item, copy, way, (left * unit, top * unit), unit))
            left += way.across
        top += height
    return tuple(placed)


def _in_strip(table: StripTable, strip: CutStrip) -> list[tuple[LayoutWay, int]]:
    """Return how each piece of a strip lies and the place of its kind, from the left."""
    lying = [
        (table.kinds[kind].lying(strip.height), kind) for kind, taken in enumerate(strip.take) for _ in range(taken)
    ]
    return sorted(lying, key=lambda piece: (-piece[0].along, -piece[0].across, piece[1]))


def _lying(item: CutItem, copy: int, way: LayoutWay, corner: tuple[Fraction, Fraction], unit: Fraction) -> PlacedItem:
    across, along = way.across * unit, way.along * unit
    turned = across != item.across
    return PlacedItem(item.piece, item.label, copy, corner[0], corner[1], across, along, turned)

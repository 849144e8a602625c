"""Exact pieces made ready for laying: cut items come in, kinds and counts in whole numbers go out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import gcd, lcm

from generator.calculation.cutting.layout_kinds import Counts, LayoutKind, StripTable, kind_of
from generator.calculation.cutting.layout_search import CutStrip, SearchBudget, SearchTooLongError
from generator.calculation.cutting.layout_strips import EXACT_PIECES, shorter_strips
from generator.calculation.worked import CutItem
from generator.errors import CalculationError
from generator.lengths import Edition, say_length

_NARROWING_LOOKS = 100_000


@dataclass(frozen=True, slots=True)
class LayoutPieces:
    """All pieces by kind: sizes in whole numbers of ``unit`` [in], ``items`` the cut items of each kind."""

    unit: Fraction
    kinds: tuple[LayoutKind, ...]
    counts: Counts
    items: tuple[tuple[CutItem, ...], ...]

    def table(self, width: int) -> StripTable:
        """Return what the pieces take on cloth of a width [unit] that has room for every kind."""
        return StripTable(
            (LayoutKind(tuple(way for way in kind.ways if way.across <= width)) for kind in self.kinds), width
        )


def pieces_by_kind(items: Sequence[CutItem], width: Fraction, edition: Edition) -> LayoutPieces:
    """Return the pieces sorted by kind, in whole numbers of the largest unit that measures every size.

    Parameters
    ----------
    items : sequence of CutItem
        The pieces to cut [in].
    width : Fraction
        Usable width [in].
    edition : Edition
        The unit in which a fault is told.

    Returns
    -------
    LayoutPieces
        The kinds that occur, the largest first; none where nothing is to be cut.

    Raises
    ------
    CalculationError
        If a piece is wider than the cloth in every way that it may lie, or a size is not positive.

    Examples
    --------
    Halves and thirds of an inch are whole numbers of sixths: 3/2 is 9, 4/3 is 8.

    >>> from generator.lengths import INCH
    >>> tie = CutItem("tie", "Tie", Fraction(3, 2), Fraction(4, 3), 2)
    >>> pieces = pieces_by_kind([tie], Fraction(44), INCH)
    >>> pieces.unit, pieces.counts, pieces.kinds[0].area
    (Fraction(1, 6), (2,), 72)
    """
    if width <= 0:
        raise CalculationError("the cloth has no usable width; give the width between its selvages")
    sizes = [Fraction(size) for item in items for size in (item.across, item.along) if size > 0]
    below = lcm(*(size.denominator for size in sizes))
    unit = Fraction(gcd(*(int(size * below) for size in sizes)) or 1, below)
    by_kind: dict[LayoutKind, list[CutItem]] = {}
    for item in items:
        if item.across <= 0 or item.along <= 0 or item.quantity < 0:
            raise CalculationError(f"{item.label} cannot be cut: its sizes must be more than 0, its quantity 0 or more")
        kind = kind_of(int(item.across / unit), int(item.along / unit), width // unit, turnable=item.turnable)
        if kind is None:
            raise CalculationError(_too_wide(item, width, edition))
        if item.quantity:
            by_kind.setdefault(kind, []).append(item)
    kinds = tuple(sorted(by_kind, reverse=True))
    counts = tuple(sum(item.quantity for item in by_kind[kind]) for kind in kinds)
    return LayoutPieces(unit, kinds, counts, tuple(tuple(by_kind[kind]) for kind in kinds))


def _too_wide(item: CutItem, width: Fraction, edition: Edition) -> str:
    turned = f" ({say_length(item.along, edition)} when turned)" if item.turnable else ""
    remedies = "take a wider cloth"
    if not item.turnable and item.along <= width:
        remedies += ", cut it the other way of the grain"
    return (
        f"{item.label} is {say_length(item.across, edition)} across{turned}, but the cloth is only "
        f"{say_length(width, edition)} wide; {remedies}, or write it as two pieces that meet in a seam"
    )


def width_used(table: StripTable, strips: Sequence[CutStrip]) -> int:
    """Return the width of the fullest strip.

    Parameters
    ----------
    table : StripTable
        The kinds and what they take in strips of each height.
    strips : sequence of CutStrip
        The strips of a layout.

    Returns
    -------
    int
        The width that the layout needs [unit].
    """
    return max(
        sum(taken * across for taken, across in zip(strip.take, table.across(strip.height), strict=True))
        for strip in strips
    )


def narrowest_usable(pieces: LayoutPieces, width: int, length: int) -> int:
    """Return the narrowest width on which a layout of strips stays within a length.

    A layout that fits a width fits every greater one, so the width is found by halving; each layout found may need
    less than the width asked, which shortens the way.

    Parameters
    ----------
    pieces : LayoutPieces
        The pieces.
    width : int
        A width known to do, and in fact used by a layout of this length [unit].
    length : int
        The length to stay within [unit].

    Returns
    -------
    int
        The narrowest width [unit].

    Notes
    -----
    A width at which the search needs too many steps counts as too narrow, so the answer always does. Beyond 20 pieces
    the width known to do is returned.
    """
    if sum(pieces.counts) > EXACT_PIECES:
        return width
    area = sum(count * kind.area for count, kind in zip(pieces.counts, pieces.kinds, strict=True))
    low = max(-(-area // length), *(kind.narrowest for kind in pieces.kinds))
    while low < width:
        tried = (low + width) // 2
        table = pieces.table(tried)
        try:
            strips = shorter_strips(table, pieces.counts, length + 1, SearchBudget(_NARROWING_LOOKS))
        except SearchTooLongError:
            strips = None
        if strips is None:
            low = tried + 1
        else:
            width = width_used(table, strips)
    return width

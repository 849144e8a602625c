"""Cut items made ready for laying: exact sizes come in, kinds and counts in whole numbers of one unit go out."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import gcd, lcm
from typing import NamedTuple

from generator.calculation.cutting.layout_pieces import ALONE, LayoutKind, LayoutPieces, LayoutWay, kind_of
from generator.calculation.laid import CutItem
from generator.errors import CalculationError
from generator.lengths import Edition, say_length


class UnitItem(NamedTuple):
    """A cut item and the ways in which it may lie [unit]."""

    item: CutItem
    ways: tuple[LayoutWay, ...]


class UnitItems(NamedTuple):
    """Everything that is cut from a cloth, in whole numbers of ``unit`` [in]; ``width`` is that of the cloth [unit]."""

    unit: Fraction
    width: int
    items: tuple[UnitItem, ...]


class SortedItems(NamedTuple):
    """The same by kind: ``items`` are the cut items of each kind of the pieces."""

    pieces: LayoutPieces
    items: tuple[tuple[CutItem, ...], ...]


def in_units(items: Sequence[CutItem], width: Fraction, edition: Edition) -> UnitItems:
    """Return what is to be cut, in whole numbers of the largest unit that measures every size.

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
    UnitItems
        Those of which any is to be cut.

    Raises
    ------
    CalculationError
        If a piece is wider than the cloth in every way that it may lie, or a size is not positive.

    Examples
    --------
    Halves and thirds of an inch are whole numbers of sixths: 3/2 is 9, 4/3 is 8.

    >>> from generator.lengths import INCH
    >>> tie = CutItem("tie", "Tie", Fraction(3, 2), Fraction(4, 3), 2)
    >>> found = in_units([tie], Fraction(44), INCH)
    >>> found.unit, found.width, found.items[0].ways
    (Fraction(1, 6), 264, (LayoutWay(along=8, across=9),))
    """
    if width <= 0:
        raise CalculationError("the cloth has no usable width; give the width between its selvages")
    for item in items:
        if item.across <= 0 or item.along <= 0 or item.quantity < 0:
            raise CalculationError(f"{item.label} cannot be cut: its sizes must be more than 0, its quantity 0 or more")
        if min(across for _, across in _ways(item)) > width:
            raise CalculationError(_too_wide(item, width, edition))
    sizes = [Fraction(size) for item in items for way in _ways(item) for size in way]
    below = lcm(*(size.denominator for size in sizes))
    unit = Fraction(gcd(*(int(size * below) for size in sizes)) or 1, below)
    ready = [
        UnitItem(item, tuple(LayoutWay(int(along / unit), int(across / unit)) for along, across in _ways(item)))
        for item in items
        if item.quantity
    ]
    return UnitItems(unit, width // unit, tuple(ready))


def _ways(item: CutItem) -> tuple[tuple[Fraction, Fraction], ...]:
    """Return the sizes of an item along and across the cloth, as it may lie."""
    if item.instead:
        return tuple(
            way for one, other in ((item.across, item.along), *item.instead) for way in ((one, other), (other, one))
        )
    if item.turnable and item.across != item.along:
        return (item.along, item.across), (item.across, item.along)
    return ((item.along, item.across + item.room),)


def sorted_items(found: UnitItems, items: Sequence[UnitItem], *, stacked: bool, apart: bool) -> SortedItems:
    """Return items sorted by kind, the largest first.

    Parameters
    ----------
    found : UnitItems
        Everything that is cut from the cloth.
    items : sequence of UnitItem
        Those of it that are to be laid.
    stacked : bool
        Whether pieces may lie one below the other in a strip.
    apart : bool
        Whether what is cut later shares no stack with what is cut now.

    Returns
    -------
    SortedItems
        The pieces and the items of each kind.
    """
    by_kind: dict[LayoutKind, list[CutItem]] = {}
    for item, ways in items:
        group = int(apart and item.later) if stacked and not item.alone else ALONE
        by_kind.setdefault(kind_of(ways, found.width, group), []).append(item)
    kinds = sorted(by_kind, key=lambda kind: (-kind.area, kind))
    counts = [sum(item.quantity for item in by_kind[kind]) for kind in kinds]
    return SortedItems(LayoutPieces(kinds, counts, found.width), tuple(tuple(by_kind[kind]) for kind in kinds))


def _too_wide(item: CutItem, width: Fraction, edition: Edition) -> str:
    turned = f" ({say_length(item.along, edition)} when turned)" if item.turnable else ""
    remedies = "take a wider cloth"
    if not item.turnable and item.along <= width:
        remedies += ", cut it the other way of the grain"
    return (
        f"{item.label} is {say_length(item.across, edition)} across{turned}, but the cloth is only "
        f"{say_length(width, edition)} wide; {remedies}, or write it as two pieces that meet in a seam"
    )

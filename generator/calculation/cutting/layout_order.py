"""A layout as it lies on the table: strips of kinds come in, strips with named pieces and their places go out.

The highest strip is cut first, strips of which everything waits last. In a strip what is cut now lies at the left, the
highest stack first, then the widest; in a stack the widest piece lies at the top.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import accumulate
from operator import attrgetter
from typing import NamedTuple

from generator.calculation.cutting.layout_blocks import CutStrip
from generator.calculation.cutting.layout_items import SortedItems
from generator.calculation.cutting.layout_pieces import LayoutWay
from generator.calculation.cutting.layout_stacks import CutStack, Lying
from generator.calculation.laid import CutItem, LaidStack, LaidStrip, PlacedItem, below_each_other


class LaidGroup(NamedTuple):
    """Items and the strips that hold them."""

    sorted: SortedItems
    strips: tuple[CutStrip, ...]


class _Taken(NamedTuple):
    """A stack with the copies that are cut from it, from the top."""

    stack: CutStack
    copies: tuple[tuple[CutItem, int, LayoutWay], ...]

    @property
    def later(self) -> bool:
        return all(item.later for item, _, _ in self.copies)


def laid_strips(groups: Sequence[LaidGroup], unit: Fraction) -> tuple[LaidStrip, ...]:
    """Return the strips in the order of cutting.

    Parameters
    ----------
    groups : sequence of LaidGroup
        Groups of strips, each of its own items.
    unit : Fraction
        The unit of the sizes [in].

    Returns
    -------
    tuple of LaidStrip
        From the straightened end, with every copy of every item in its place [in].
    """
    return below_each_other(
        [
            LaidStrip(Fraction(0), along * unit, tuple(_placed_stacks(stacks, unit)))
            for group in groups
            for along, stacks in _taken(group)
        ]
    )


def _taken(group: LaidGroup) -> list[tuple[int, list[_Taken]]]:
    """Return the height of each strip and its stacks; of equal pieces those that wait are cut from the last ones."""
    waiting = [
        deque((item, copy + 1) for item in sorted(alike, key=attrgetter("later")) for copy in range(item.quantity))
        for alike in group.sorted.items
    ]
    strips = []
    for strip in sorted(group.strips, key=lambda strip: (-strip.along, strip.part)):
        ordered = sorted(strip.stacks, key=lambda stack: (-stack.along, -stack.across, stack.part))
        stacks = [
            _Taken(
                stack, tuple((*waiting[kind].popleft(), way) for kind, way in sorted(stack.lying, key=_widest_first))
            )
            for stack in ordered
        ]
        strips.append((strip.along, sorted(stacks, key=attrgetter("later"))))
    return strips


def _widest_first(lying: Lying) -> tuple[int, int, int]:
    kind, way = lying
    return -way.across, -way.along, kind


def _placed_stacks(stacks: Sequence[_Taken], unit: Fraction) -> Iterator[LaidStack]:
    left = 0
    for taken in stacks:
        tops = accumulate((way.along for _, _, way in taken.copies), initial=0)
        placed = [
            _placed(item, copy, way, (left * unit, begins * unit), unit)
            for (item, copy, way), begins in zip(taken.copies, tops, strict=False)
        ]
        yield LaidStack(left * unit, taken.stack.across * unit, taken.later, tuple(placed))
        left += taken.stack.across


def _placed(item: CutItem, copy: int, way: LayoutWay, corner: tuple[Fraction, Fraction], unit: Fraction) -> PlacedItem:
    across, along = way.across * unit - item.room, way.along * unit
    return PlacedItem(item.piece, item.label, copy, *corner, across, along, across != item.across, item.kit)

"""Cutting layouts made by hand for tests of diagrams: items are laid on shelves, the highest first."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from generator.calculation.cutting.cloth import Buying, buy_text
from generator.calculation.laid import LaidStack, LaidStrip, Layout, PlacedItem
from generator.calculation.worked_project import ClothUse
from generator.lengths import INCH, YARD

PLAIN = Buying(YARD / 8)
Item = tuple[str, Fraction | int, Fraction | int, int]


def shelves(width: Fraction | int, items: Iterable[Item]) -> Layout:
    """Lay items (name, across, along, how many) side by side, a new strip where the width is used up."""
    strips: list[LaidStrip] = []
    stacks: list[LaidStack] = []
    top = left = Fraction(0)
    for name, across, along, number in sorted(items, key=lambda item: -item[2]):
        for copy in range(1, number + 1):
            if left + across > width:
                strips.append(_strip(top, stacks))
                top, left, stacks = strips[-1].bottom, Fraction(0), []
            piece = PlacedItem(name, name, copy, left, top, Fraction(across), Fraction(along), turned=False)
            stacks.append(LaidStack(left, Fraction(across), later=False, placed=(piece,)))
            left += across
    strips.append(_strip(top, stacks))
    length = strips[-1].bottom
    return Layout(Fraction(width), length, tuple(strips), length, length, "shortest", Fraction(width), length)


def used(layout: Layout) -> ClothUse:
    """Return the cloth of a layout, bought by the eighth of a yard."""
    buy = PLAIN.bought(layout.length)
    return ClothUse("face", "cotton", layout.width, layout, buy, buy_text(buy, INCH), PLAIN)


def _strip(top: Fraction, stacks: list[LaidStack]) -> LaidStrip:
    return LaidStrip(top, max(placed.along for stack in stacks for placed in stack.placed), tuple(stacks))

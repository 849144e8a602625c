"""Cutting layouts made by hand for tests of diagrams: items are laid on shelves, the highest first."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from generator.calculation.worked import Layout, PlacedItem

Item = tuple[str, Fraction | int, Fraction | int, int]


def shelves(width: Fraction | int, items: Iterable[Item]) -> Layout:
    """Lay items (name, across, along, how many) side by side, a new strip where the width is used up."""
    placed: list[PlacedItem] = []
    strips: list[tuple[Fraction, Fraction]] = []
    top = left = high = Fraction(0)
    for name, across, along, number in sorted(items, key=lambda item: -item[2]):
        for copy in range(1, number + 1):
            if left + across > width:
                strips.append((top, high))
                top, left, high = top + high, Fraction(0), Fraction(0)
            placed.append(PlacedItem(name, name, copy, left, top, Fraction(across), Fraction(along), turned=False))
            left, high = left + across, max(high, Fraction(along))
    strips.append((top, high))
    length = top + high
    return Layout(
        Fraction(width), length, tuple(placed), tuple(strips), length, optimal=False, narrowest=Fraction(width)
    )

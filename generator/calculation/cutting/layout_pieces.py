"""Pieces of equal size and the ways they can lie: sizes come in, any part of the pieces goes out as one whole number.

The layout files work in whole numbers of one small unit; ``layout.py`` turns exact lengths into it and back. One
subtraction tells whether a part of the pieces lies within another.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

ALONE = -1
"""The group of pieces that never share a stack with another."""


class LayoutWay(NamedTuple):
    """One way in which a piece can lie on the cloth."""

    along: int
    across: int


class LayoutKind(NamedTuple):
    """Pieces that can take each other's place.

    ``ways`` are all ways they can lie, lowest first, none of them beaten by another both ways. Pieces share a stack
    with pieces of the same ``group`` only.
    """

    ways: tuple[LayoutWay, ...]
    group: int

    @property
    def area(self) -> int:
        """The least cloth in one piece."""
        return min(along * across for along, across in self.ways)

    def within(self, across: int) -> LayoutWay | None:
        """Return the lowest way that a width has room for."""
        return next((way for way in self.ways if way.across <= across), None)

    def fits(self, across: int, along: int) -> bool:
        """Return whether one piece lies within a rectangle."""
        way = self.within(across)
        return way is not None and way.along <= along


def kind_of(ways: Iterable[LayoutWay], width: int, group: int = 0) -> LayoutKind:
    """Return the kind of a piece on cloth of a width.

    Parameters
    ----------
    ways : iterable of LayoutWay
        The ways in which it may lie [unit].
    width : int
        Usable width [unit].
    group : int
        The pieces with which it may share a stack [-].

    Returns
    -------
    LayoutKind
        The kind; without any way where the piece is wider than the cloth in every way allowed.

    Examples
    --------
    A piece 5 across and 2 along, turned 2 across and 5 along; a third way, 6 across and 2 along, is never better:

    >>> kind_of([LayoutWay(2, 5), LayoutWay(5, 2), LayoutWay(2, 6)], 9).ways
    (LayoutWay(along=2, across=5), LayoutWay(along=5, across=2))
    >>> kind_of([LayoutWay(2, 5)], 4).ways
    ()
    """
    usable: list[LayoutWay] = []
    for way in sorted(way for way in ways if way.across <= width):
        if not usable or way.across < usable[-1].across:
            usable.append(way)
    return LayoutKind(tuple(usable), group)


class LayoutPieces:
    """Pieces by kind on cloth of one width, the largest kind first; a part of them is one whole number.

    Each kind has a field of bits for its count and a guard bit above it: a part is within another where subtracting it
    leaves every guard bit standing.
    """

    def __init__(self, kinds: Sequence[LayoutKind], counts: Sequence[int], width: int) -> None:
        self.kinds, self.counts, self.width = tuple(kinds), tuple(counts), width
        self.one: list[int] = []
        self.whole = self.guard = 0
        self._kind_at: list[int] = []
        for kind, count in enumerate(self.counts):
            shift, bits = len(self._kind_at), count.bit_length()
            self.one.append(1 << shift)
            self.whole |= count << shift
            self.guard |= 1 << (shift + bits)
            self._kind_at += [kind] * (bits + 1)
        self.fields = [((1 << count.bit_length()) - 1) * one for count, one in zip(self.counts, self.one, strict=True)]

    @property
    def number(self) -> int:
        """How many pieces there are."""
        return sum(self.counts)

    def first(self, part: int) -> int:
        """Return the largest kind of which a part holds a piece."""
        return self._kind_at[(part & -part).bit_length() - 1]

    def count(self, part: int, kind: int) -> int:
        """Return how many pieces of a kind a part holds."""
        return (part & self.fields[kind]) // self.one[kind]

    def holds(self, part: int, other: int) -> bool:
        """Return whether a part holds all pieces of another."""
        return ((part | self.guard) - other) & self.guard == self.guard

    def some(self, counts: Sequence[int]) -> tuple[LayoutPieces, list[int]]:
        """Return some of the pieces by themselves, and the place of each of their kinds among these."""
        places = [place for place, count in enumerate(counts) if count]
        kinds = [self.kinds[place] for place in places]
        return LayoutPieces(kinds, [counts[place] for place in places], self.width), places

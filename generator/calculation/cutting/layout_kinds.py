"""Pieces of equal size and the ways they can lie: whole numbers come in, tables for laying strips go out.

The layout files work in whole numbers of one small unit; ``layout.py`` turns exact lengths into it and back. A *strip*
is cut across the whole width; its height is the height of its highest piece.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

Counts = tuple[int, ...]
"""How many pieces of each kind, in the order of the kinds."""


@dataclass(frozen=True, slots=True, order=True)
class LayoutWay:
    """One way in which a piece can lie on the cloth."""

    along: int
    across: int

    def holds(self, other: LayoutWay) -> bool:
        """Return whether a piece lying the other way fits where this one lies."""
        return other.along <= self.along and other.across <= self.across


@dataclass(frozen=True, slots=True, order=True)
class LayoutKind:
    """Pieces that can take each other's place: ``ways`` are all ways they can lie, lowest first."""

    ways: tuple[LayoutWay, ...]

    @property
    def lowest(self) -> int:
        """The height that a strip needs at least for this kind."""
        return self.ways[0].along

    @property
    def narrowest(self) -> int:
        """The width that this kind takes at least, standing up where it may be turned."""
        return self.ways[-1].across

    @property
    def area(self) -> int:
        """The cloth in one piece."""
        return self.ways[0].along * self.ways[0].across

    def lying(self, height: int) -> LayoutWay:
        """Return the narrowest way that a strip of a height has room for; the strip is high enough for one."""
        return next(way for way in reversed(self.ways) if way.along <= height)

    def harder_than(self, other: LayoutKind) -> bool:
        """Return whether the other kind fits wherever this one does, and not the other way round."""
        return self != other and all(any(mine.holds(its) for its in other.ways) for mine in self.ways)


def kind_of(across: int, along: int, width: int, *, turnable: bool) -> LayoutKind | None:
    """Return the kind of a piece on cloth of a width.

    Parameters
    ----------
    across, along : int
        The piece as it lies unturned [unit].
    width : int
        Usable width [unit].
    turnable : bool
        Whether the grain may run either way.

    Returns
    -------
    LayoutKind or None
        The kind; None where the piece is wider than the cloth in every way allowed.

    Examples
    --------
    A piece 5 across and 2 along, turned 2 across and 5 along:

    >>> kind_of(5, 2, 9, turnable=True).ways
    (LayoutWay(along=2, across=5), LayoutWay(along=5, across=2))
    >>> kind_of(5, 2, 4, turnable=False) is None
    True
    """
    ways = {LayoutWay(along, across), LayoutWay(across, along)} if turnable else {LayoutWay(along, across)}
    usable = tuple(sorted(way for way in ways if way.across <= width))
    return LayoutKind(usable) if usable else None


class StripTable:
    """What each kind takes in strips of each height, on cloth of one width."""

    def __init__(self, kinds: Iterable[LayoutKind], width: int) -> None:
        self.kinds = tuple(kinds)
        self.width = width
        self.heights = sorted({way.along for kind in self.kinds for way in kind.ways})
        # A kind that a strip is too low for gets a width beyond the cloth's, so it never fits.
        self._never = LayoutWay(0, width + 1)
        self._lying: dict[int, tuple[list[int], list[int]]] = {}

    def across(self, height: int) -> list[int]:
        """Return the width that each kind takes in a strip of a height."""
        return self._at(height)[0]

    def along(self, height: int) -> list[int]:
        """Return the height that each kind takes in a strip of a height."""
        return self._at(height)[1]

    def _at(self, height: int) -> tuple[list[int], list[int]]:
        if height not in self._lying:
            ways = [kind.lying(height) if kind.lowest <= height else self._never for kind in self.kinds]
            self._lying[height] = ([way.across for way in ways], [way.along for way in ways])
        return self._lying[height]

    @cached_property
    def hardest_first(self) -> list[int]:
        """The places of the kinds, from the one that needs the highest strip."""
        return sorted(
            range(len(self.kinds)), key=lambda place: (-self.kinds[place].lowest, -self.kinds[place].narrowest, place)
        )

    @cached_property
    def harder(self) -> list[list[int]]:
        """For each kind the places of the kinds that are harder to place than it."""
        return [[place for place, other in enumerate(self.kinds) if other.harder_than(kind)] for kind in self.kinds]

    def hardest(self, counts: Counts) -> int:
        """Return the place of the hardest kind of which pieces are left."""
        return next(place for place in self.hardest_first if counts[place])

    def heights_for(self, counts: Counts, place: int) -> list[int]:
        """Return the heights, lowest first, that a strip with a piece of a kind can have."""
        lowest = self.kinds[place].lowest
        return sorted(
            {
                way.along
                for kind, count in zip(self.kinds, counts, strict=True)
                if count
                for way in kind.ways
                if way.along >= lowest
            }
        )

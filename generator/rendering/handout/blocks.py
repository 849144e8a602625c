"""The blocks of a handout as they are measured and as they are placed: lengths are millimetres; nothing is set here."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from generator.drawing.sizes import Heights

PICTURE_GAP = 1.5


@dataclass(frozen=True, slots=True)
class Block:
    """An act, or another part of a sheet that stands on one page, as measured.

    ``fixed`` is the height of what runs across the page, such as its heading and tables. Its paragraphs are ``narrow``
    beside the pictures and ``wide`` below them; ``strip`` is the height of what stands to the right of the pictures. A
    block that ``leads`` is not the last on its page, one that ``rather`` does only where that takes no more
    pages. Pictures that are ``under`` stand below the words in their column, then all words are narrow; those that are
    ``spread`` run across the page, below the words. One that is ``whole`` never goes on over the page, one that
    ``faces`` only on the page that lies open beside it.
    """

    name: str
    fixed: float
    narrow: tuple[float, ...] = ()
    wide: tuple[float, ...] = ()
    pictures: tuple[Heights, ...] = ()
    leads: bool = False
    rather: bool = False
    strip: float = 0.0
    under: tuple[Heights, ...] = ()
    spread: tuple[Heights, ...] = ()
    whole: bool = False
    faces: bool = False

    def column(self, heights: Sequence[float]) -> float:
        """Return the height of the pictures below each other, and of what stands beside them."""
        return max(self.strip, sum(heights) + PICTURE_GAP * (len(heights) - 1) if heights else 0.0)

    def beside(self, column: float) -> int:
        """Return how many paragraphs stand beside a column of pictures, so that the block is lowest."""
        if not column:
            return 0
        if self.under:
            return len(self.narrow)
        return min(range(len(self.narrow), -1, -1), key=lambda number: round(self._words(number, column), 3))

    def _words(self, number: int, column: float, below: float = 0.0) -> float:
        return max(sum(self.narrow[:number]) + below, column) + sum(self.wide[number:])

    def placed(self, share: float) -> PlannedBlock:
        """Return the block with its pictures at a share: 0 least, 1 as drawn by themselves, 2 greatest."""
        pictures, under, spread = (
            tuple(_height_at(one, share) for one in some) for some in (self.pictures, self.under, self.spread)
        )
        column = self.column(pictures)
        below, across = (sum(some) + PICTURE_GAP * len(some) for some in (under, spread))
        beside = self.beside(column)
        high = self.fixed + self._words(beside, column, below) + across
        return PlannedBlock(self.name, pictures, beside, column, high, under, spread)

    def at(self, share: float) -> float:
        """Return its height with the pictures at a share of theirs."""
        return self.placed(share).high


def _height_at(one: Heights, share: float) -> float:
    if share < 1:
        return one.least + share * (one.natural - one.least)
    return one.natural + (share - 1) * (one.greatest - one.natural)


@dataclass(frozen=True, slots=True)
class PlannedBlock:
    """A block on its page: the heights of its pictures and of their column, how many paragraphs stand beside."""

    name: str
    pictures: tuple[float, ...]
    beside: int
    column: float
    high: float
    under: tuple[float, ...] = ()
    spread: tuple[float, ...] = ()

"""How the blocks of a handout are dealt out on pages: measured heights come in, pages go out; nothing is set here.

All lengths are millimetres. A block is never split. Pages are even in number, as few as hold the blocks with their
smallest pictures; room that is left goes to the pictures, then to the gaps between blocks, then to lines for notes.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from generator.drawing.sizes import Heights

PICTURE_GAP = 2.0
LEAST_GAP, GREATEST_GAP = 0.6, 7.0
# Lines to write on take what is still white then, from here on.
LEAST_NOTES = 5.5
# One sheet, folded.
FEWEST_PAGES = 4
_STEPS = 30


@dataclass(frozen=True, slots=True)
class Block:
    """An act, or another part of a sheet that stands on one page, as measured.

    ``fixed`` is the height of what runs across the page, such as its heading and tables. Its paragraphs are ``narrow``
    beside the pictures and ``wide`` below them; ``strip`` is the height of what stands to the right of the pictures. A
    block that ``leads`` is not the last on its page, one that ``rather`` does only where that takes no more
    pages. Pictures that are ``under`` stand below the words in their column, then all words are narrow; those that are
    ``spread`` run across the page, below the words. One that ``ends`` is the last on its page.
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
    ends: bool = False

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


@dataclass(frozen=True, slots=True)
class PlannedPage:
    """The blocks of a page, the gap between them, and the height of the lines for notes at its foot."""

    blocks: tuple[PlannedBlock, ...]
    gap: float
    notes: float


def fewest(blocks: Sequence[Block], rooms: Callable[[int, int], float]) -> tuple[PlannedPage, ...]:
    """Return the blocks on pages as :func:`planned` does; those that rather lead do, unless that takes more pages."""
    kept = planned([replace(block, leads=block.leads or block.rather) for block in blocks], rooms)
    loose = planned(blocks, rooms)
    return loose if loose and (not kept or len(loose) < len(kept)) else kept


def planned(blocks: Sequence[Block], rooms: Callable[[int, int], float], most: int = 60) -> tuple[PlannedPage, ...]:
    """Return the blocks on the fewest even pages that hold them.

    Parameters
    ----------
    blocks : sequence of Block
        In reading order.
    rooms : function of int and int
        The height for blocks of a page, by its number, from 1, and by the number of all pages.
    most : int
        Where more pages than this are needed, nothing is planned.

    Returns
    -------
    tuple of PlannedPage
        Empty where a block is higher than its page, or there are too many.
    """
    least = math.ceil(sum(block.at(0) for block in blocks) / rooms(2, FEWEST_PAGES))
    for number in range(max(FEWEST_PAGES, least + least % 2), most + 1, 2):
        ends = _ends(blocks, [rooms(page, number) for page in range(1, number + 1)])
        if ends:
            starts = (0, *ends)
            return tuple(
                _filled(blocks[start:end], rooms(page, number))
                for page, (start, end) in enumerate(zip(starts, ends, strict=False), 1)
            )
    return ()


def _ends(blocks: Sequence[Block], rooms: Sequence[float]) -> tuple[int, ...]:
    """Return after which block each page ends, so that least white is left; empty where they do not fit."""
    small, drawn = [block.at(0) for block in blocks], [block.at(1) for block in blocks]
    best: dict[int, tuple[float, tuple[int, ...]]] = {0: (0.0, ())}
    for room in rooms:
        after: dict[int, tuple[float, tuple[int, ...]]] = {}
        for start, (cost, ends) in best.items():
            for end in range(start + 1, len(blocks) + 1):
                gaps = LEAST_GAP * (end - start - 1)
                if sum(small[start:end]) + gaps > room:
                    break
                if any(block.ends for block in blocks[start : end - 1]):
                    break
                if blocks[end - 1].leads:
                    continue
                white = room - sum(drawn[start:end]) - gaps
                found = (cost + white**2, (*ends, end))
                if end not in after or found < after[end]:
                    after[end] = found
        best = after
    return best.get(len(blocks), (0.0, ()))[1]


def _filled(blocks: Sequence[Block], room: float) -> PlannedPage:
    """Return a page with its room shared out."""
    free = room - LEAST_GAP * (len(blocks) - 1)
    low, high = 0.0, 2.0
    for _ in range(_STEPS):
        middle = (low + high) / 2
        low, high = (middle, high) if sum(block.at(middle) for block in blocks) <= free else (low, middle)
    left = free - sum(block.at(low) for block in blocks)
    between = max(1, len(blocks) - 1)
    gap = LEAST_GAP + min(GREATEST_GAP - LEAST_GAP, max(0.0, left) / between)
    left -= (gap - LEAST_GAP) * (len(blocks) - 1)
    return PlannedPage(tuple(block.placed(low) for block in blocks), gap, left if left >= LEAST_NOTES else 0.0)

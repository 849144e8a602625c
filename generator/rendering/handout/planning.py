"""How the blocks of a handout are dealt out on pages: measured heights come in, pages go out; nothing is set here.

All lengths are millimetres. Pages are even in number, as few as hold the blocks with their smallest pictures. An act is
kept whole, and its tables with it, wherever that takes no more pages. Room that is left goes to the pictures, then to
the gaps between blocks, then to lines for notes.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate

from generator.rendering.handout.blocks import Block, PlannedBlock
from generator.rendering.handout.breaking import PageCut, cuts, head, tail

LEAST_GAP, GREATEST_GAP = 0.4, 7.0
# Lines to write on take what is still white then, from here on.
LEAST_NOTES = 5.5
# One sheet, folded.
FEWEST_PAGES = 4
_STEPS = 30
# An act that goes on, and tables apart from theirs, weigh more than any white [mm2].
_BROKEN, _APART = 1e8, 1e6
Rooms = Callable[[int, int], float]


@dataclass(frozen=True, slots=True)
class PlannedPage:
    """The blocks of a page, the gap between them, and the height of the lines for notes at its foot."""

    blocks: tuple[PlannedBlock, ...]
    gap: float
    notes: float


@dataclass(frozen=True, slots=True)
class DealtOut:
    """Pages, and after how many of its paragraphs and pictures each act goes on over the page, by its name."""

    pages: tuple[PlannedPage, ...] = ()
    broken: tuple[tuple[str, PageCut], ...] = ()


def planned(blocks: Sequence[Block], rooms: Rooms, heading: float = 0.0, most: int = 60) -> DealtOut:
    """Return the blocks on the fewest even pages that hold them.

    Parameters
    ----------
    blocks : sequence of Block
        In reading order.
    rooms : function of int and int
        The height for blocks of a page, by its number, from 1, and by the number of all pages.
    heading : float
        The height of the line that tells which act goes on [mm].
    most : int
        Where more pages than this are needed, nothing is planned.

    Returns
    -------
    DealtOut
        Without pages where a block is higher than its page, or there are too many.
    """
    dealer = _Dealer(blocks, heading)
    least = math.ceil(sum(block.at(0) for block in blocks) / rooms(2, FEWEST_PAGES))
    for number in range(max(FEWEST_PAGES, least + least % 2), most + 1, 2):
        ends = dealer.ends([rooms(page, number) for page in range(1, number + 1)])
        if ends:
            starts = (PageCut(0), *ends)
            pages = (
                _filled(dealer.between(start, end), rooms(page, number))
                for page, (start, end) in enumerate(zip(starts, ends, strict=False), 1)
            )
            return DealtOut(tuple(pages), tuple((blocks[end.block].name, end) for end in ends if end.words))
    return DealtOut()


class _Dealer:
    """Deals blocks out on pages; how high what lies between two cuts is follows from sums made once."""

    def __init__(self, blocks: Sequence[Block], heading: float) -> None:
        self.blocks, self.heading, self.cuts = blocks, heading, cuts(blocks)
        self._places = {cut: place for place, cut in enumerate(self.cuts)}
        self._small, self._drawn = (
            tuple(accumulate((block.at(share) for block in blocks), initial=0.0)) for share in (0, 1)
        )
        self._heads = {cut: self._both(head(blocks[cut.block], cut)) for cut in self.cuts if cut.words}
        self._tails = {cut: self._both(tail(blocks[cut.block], cut, heading)) for cut in self.cuts if cut.words}

    @staticmethod
    def _both(block: Block) -> tuple[float, float]:
        return block.at(0), block.at(1)

    def between(self, start: PageCut, end: PageCut) -> list[Block]:
        """Return the blocks from one cut to another, the first with what was left of it, the last with its head."""
        first = [tail(self.blocks[start.block], start, self.heading)] if start.words else []
        last = [head(self.blocks[end.block], end)] if end.words else []
        return [*first, *self.blocks[start.block + len(first) : end.block], *last]

    def _high(self, start: PageCut, end: PageCut) -> tuple[float, float]:
        """The height of what lies between two cuts, with the smallest pictures and with those drawn by themselves."""
        place = start.block + bool(start.words)
        gaps = LEAST_GAP * (end.block + bool(end.words) - start.block - 1)
        few, more = self._tails.get(start, (0.0, 0.0)), self._heads.get(end, (0.0, 0.0))
        small = few[0] + self._small[end.block] - self._small[place] + more[0]
        return small + gaps, few[1] + self._drawn[end.block] - self._drawn[place] + more[1] + gaps

    def _weight(self, end: PageCut) -> float:
        """What it weighs that a page ends at a cut."""
        if end.words:
            return _BROKEN
        return _APART if self.blocks[end.block - 1].rather else 0.0

    def _may_end(self, end: PageCut, page: int) -> bool:
        """Whether a page of a number may end at a cut; pages of even numbers lie open beside the next."""
        if end.words:
            return page % 2 == 0 or not self.blocks[end.block].faces
        return not self.blocks[end.block - 1].leads

    def _after(self, start: PageCut, room: float, page: int) -> Iterator[tuple[PageCut, float]]:
        """Every cut that a page may end at which begins at one, with what that weighs."""
        for end in self.cuts[self._places[start] + 1 :]:
            if end.block == start.block and start.words:
                continue
            small, drawn = self._high(start, end)
            if small > room:
                if not end.words:
                    return
            elif self._may_end(end, page):
                yield end, self._weight(end) + (room - drawn) ** 2

    def ends(self, rooms: Sequence[float]) -> tuple[PageCut, ...]:
        """Return where each page ends, so that least is broken and least white is left; empty where nothing fits."""
        best: dict[PageCut, tuple[float, tuple[PageCut, ...]]] = {PageCut(0): (0.0, ())}
        for page, room in enumerate(rooms, 1):
            after: dict[PageCut, tuple[float, tuple[PageCut, ...]]] = {}
            for start, (cost, ends) in best.items():
                for end, weight in self._after(start, room, page):
                    found = (cost + weight, (*ends, end))
                    if end not in after or found < after[end]:
                        after[end] = found
            best = after
        return best.get(PageCut(len(self.blocks)), (0.0, ()))[1]


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

"""Acts that go on over the page: measured blocks come in, blocks with a head and a tail go out; nothing is set here.

An act is kept whole wherever that takes no more pages. What goes on is whole paragraphs that stand below its pictures.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass, replace

from generator.rendering.handout.planning import Block, PlannedPage, fewest, planned

TAIL = "-c"
"""What the name of a tail ends in."""
Rooms = Callable[[int, int], float]


@dataclass(frozen=True, slots=True)
class BrokenPlan:
    """Pages, and after how many of its paragraphs each act goes on over the page, by its name."""

    pages: tuple[PlannedPage, ...]
    broken: dict[str, int]


def with_breaks(blocks: Sequence[Block], rooms: Rooms, heading: float) -> BrokenPlan:
    """Return the blocks on the fewest even pages; acts go on over the page only where that saves pages.

    Parameters
    ----------
    blocks : sequence of Block
        In reading order.
    rooms : function of int and int
        The height for blocks of a page, by its number and by the number of all pages.
    heading : float
        The height of the line that tells which act goes on [mm].

    Returns
    -------
    BrokenPlan
        Without pages where a block is higher than its page.
    """
    whole = fewest(blocks, rooms)
    every = {block.name: number for block in blocks for number in _break(block)}
    loose = planned(list(_split(blocks, every, heading)), rooms)
    if not loose or (whole and len(whole) <= len(loose)):
        return BrokenPlan(whole, {})
    opening = {page.blocks[0].name.removesuffix(TAIL) for page in loose if page.blocks[0].name.endswith(TAIL)}
    needed = {name: number for name, number in every.items() if name in opening}
    pages = planned(list(_split(blocks, needed, heading, opening)), rooms)
    return BrokenPlan(pages, needed) if pages and len(pages) == len(loose) else BrokenPlan(whole, {})


def _break(block: Block) -> Iterator[int]:
    """After how many paragraphs a block may go on: those beside its pictures stay with them."""
    column = block.placed(0).column
    if not column or block.under or block.spread or block.leads:
        return
    number = block.beside(column)
    if 0 < number < len(block.narrow):
        yield number


def _split(
    blocks: Sequence[Block], after: dict[str, int], heading: float, opening: Collection[str] = ()
) -> Iterator[Block]:
    """The blocks, some with their tail by itself; the head of one whose tail opens a page is the last on its page."""
    for block in blocks:
        number = after.get(block.name)
        if number is None:
            yield block
            continue
        ends = block.name in opening
        yield replace(block, narrow=block.narrow[:number], wide=block.wide[:number], ends=ends)
        yield Block(f"{block.name}{TAIL}", heading, block.narrow[number:], block.wide[number:], rather=block.rather)

"""Acts that go on over the page: a measured block comes in, its head and its tail go out; nothing is set here.

What goes on is whole paragraphs. Pictures are parted with the words that they stand beside; those that run across the
page come with the last words.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import accumulate

from generator.drawing.sizes import Heights
from generator.rendering.handout.blocks import PICTURE_GAP, Block

TAIL = "-c"
"""What the name of a tail ends in."""
# A head and a tail are not less than two lines [mm].
_LEAST = 7.0


@dataclass(frozen=True, slots=True, order=True)
class PageCut:
    """Where a page may end: before a block, or after so many of its paragraphs and of its pictures."""

    block: int
    words: int = 0
    pictures: int = 0


def cuts(blocks: Sequence[Block]) -> tuple[PageCut, ...]:
    """Return every place where a page may begin or end, in reading order."""
    inside = (cut for place, block in enumerate(blocks) for cut in (PageCut(place), *_breaks(place, block)))
    return (*inside, PageCut(len(blocks)))


def _breaks(place: int, block: Block) -> Iterator[PageCut]:
    """After how many paragraphs and pictures a block may go on."""
    if block.whole or block.leads:
        return
    done = tuple(accumulate(block.narrow))
    beside = tuple(accumulate((one.least + PICTURE_GAP for one in _pictures(block)), initial=0.0))
    for number in range(1, len(done)):
        words = done[number - 1]
        if min(words, done[-1] - words) >= _LEAST:
            yield PageCut(place, number, min(range(len(beside)), key=lambda shown: abs(beside[shown] - words)))


def _pictures(block: Block) -> tuple[Heights, ...]:
    """All pictures beside the words, those below them last."""
    return (*block.pictures, *block.under)


def head(block: Block, cut: PageCut) -> Block:
    """Return what of a block stands on the page where it begins."""
    shown = _pictures(block)[: cut.pictures]
    return replace(
        block, narrow=block.narrow[: cut.words], wide=block.wide[: cut.words], pictures=shown, under=(), spread=()
    )


def tail(block: Block, cut: PageCut, heading: float) -> Block:
    """Return what of a block stands on the next page, below a heading of a height [mm]."""
    return Block(
        f"{block.name}{TAIL}",
        heading,
        block.narrow[cut.words :],
        block.wide[cut.words :],
        _pictures(block)[cut.pictures :],
        rather=block.rather,
        spread=block.spread,
    )

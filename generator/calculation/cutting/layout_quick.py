"""A good layout soon: pieces come in, strips go out that need not be the shortest.

The pieces are laid one after the other where there is room first, in several orders; then a few strips at a time are
laid anew by the exact search, for as long as that makes the whole shorter.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import combinations

from generator.calculation.cutting.layout_blocks import CutStrip, strip_of
from generator.calculation.cutting.layout_cover import strips_within
from generator.calculation.cutting.layout_pieces import ALONE, LayoutKind, LayoutWay
from generator.calculation.cutting.layout_stacks import (
    LayoutTask,
    Looks,
    Lying,
    SearchTooLongError,
    stack_of,
    task_of,
)

_ALL_GROUPS = 7
_REGROUPED_PIECES = 24
_ORDERS: tuple[Callable[[LayoutWay], tuple[int, ...]], ...] = (
    lambda way: (-way.along, -way.across),
    lambda way: (-way.across, -way.along),
    lambda way: (-way.across * way.along, -way.along),
    lambda way: (-max(way), -min(way)),
)


def total(strips: Sequence[CutStrip]) -> int:
    """Return the length of some strips.

    Parameters
    ----------
    strips : sequence of CutStrip
        The strips of a layout.

    Returns
    -------
    int
        Their heights together [unit].
    """
    return sum(strip.along for strip in strips)


class _Heap:
    """A stack that is being made."""

    def __init__(self, kind: int, way: LayoutWay, group: int) -> None:
        self.across, self.along, self.group = way.across, way.along, group
        self.lying: list[Lying] = [(kind, way)]

    def takes(self, way: LayoutWay, group: int, height: int) -> bool:
        """Return whether a piece may lie below the others."""
        fits = way.across <= self.across and self.along + way.along <= height
        return fits and group == self.group != ALONE

    def add(self, kind: int, way: LayoutWay) -> None:
        """Lay a piece below the others."""
        self.along += way.along
        self.lying.append((kind, way))


class _Shelf:
    """A strip that is being filled."""

    def __init__(self, height: int, width: int) -> None:
        self.height, self.room = height, width
        self.heaps: list[_Heap] = []

    def takes(self, kind: int, way: LayoutWay, group: int) -> bool:
        """Lay a piece below others, or beside them, if there is room."""
        for heap in self.heaps:
            if heap.takes(way, group, self.height):
                heap.add(kind, way)
                return True
        if way.along > self.height or way.across > self.room:
            return False
        self.heaps.append(_Heap(kind, way, group))
        self.room -= way.across
        return True


def _standing(kind: LayoutKind) -> LayoutWay:
    return kind.ways[-1]


def _lying(kind: LayoutKind) -> LayoutWay:
    return kind.ways[0]


def first_fit(task: LayoutTask) -> list[CutStrip]:
    """Return the shortest layout in which each piece lies in the first place with room for it, in several orders.

    Parameters
    ----------
    task : LayoutTask
        The pieces.

    Returns
    -------
    list of CutStrip
        The strips.
    """
    filled = (_laid(task, order, wish) for order in _ORDERS for wish in (_lying, _standing))
    shelves = min(filled, key=lambda shelves: sum(shelf.height for shelf in shelves))
    return [
        strip_of(task, shelf.height, tuple(stack_of(task, heap.lying) for heap in shelf.heaps)) for shelf in shelves
    ]


def _laid(
    task: LayoutTask, order: Callable[[LayoutWay], tuple[int, ...]], wish: Callable[[LayoutKind], LayoutWay]
) -> list[_Shelf]:
    pieces = task.pieces
    wished = sorted((order(wish(kind)), place) for place, kind in enumerate(pieces.kinds))
    shelves: list[_Shelf] = []
    for _, place in wished:
        kind = pieces.kinds[place]
        liked = wish(kind)
        ways = [liked, *(way for way in kind.ways if way != liked)]
        for _ in range(pieces.counts[place]):
            if not any(shelf.takes(place, way, kind.group) for shelf in shelves for way in ways):
                shelf = _Shelf(ways[0].along, pieces.width)
                shelf.takes(place, ways[0], kind.group)
                shelves.append(shelf)
    return shelves


def laid_anew(task: LayoutTask, strips: list[CutStrip], each: int) -> list[CutStrip]:
    """Return strips that are shorter where a few of them could be laid better.

    Parameters
    ----------
    task : LayoutTask
        The pieces, and the looks for all of it.
    strips : list of CutStrip
        A layout.
    each : int
        The looks for one group of strips [-].

    Returns
    -------
    list of CutStrip
        The layout itself where nothing was gained.
    """
    better: list[CutStrip] | None = strips
    asked: set[tuple[int, int]] = set()
    while better is not None:
        strips = sorted(better, key=lambda strip: (-strip.along, strip.part))
        better = _improved(task, strips, each, asked)
    return strips


def _improved(
    task: LayoutTask, strips: list[CutStrip], each: int, asked: set[tuple[int, int]]
) -> list[CutStrip] | None:
    """Return the strips with a few of them laid shorter; what has been asked in vain is not asked again."""
    for group in _groups(len(strips)):
        chosen = [strips[place] for place in group]
        question = sum(strip.part for strip in chosen), total(chosen)
        if question in asked or not _may_be_shorter(task, chosen):
            continue
        if task.looks.left <= 0:
            return None
        shorter = _shorter(task, chosen, each)
        if shorter is not None:
            return [*(strip for place, strip in enumerate(strips) if place not in group), *shorter]
        asked.add(question)
    return None


def _may_be_shorter(task: LayoutTask, strips: Sequence[CutStrip]) -> bool:
    """Return whether strips waste as much as a cut across the whole cloth, by both measures."""
    return (
        sum(strip.waste for strip in strips) >= task.plain.whole
        and sum(strip.best_waste for strip in strips) >= task.best.whole
    )


def _groups(number: int) -> Iterator[tuple[int, ...]]:
    """Two, three, four strips: every choice of a few strips, neighbours of many."""
    for size in range(2, min(4, number) + 1):
        if number <= _ALL_GROUPS:
            yield from combinations(range(number), size)
        else:
            yield from (tuple(sorted((start + step) % number for step in range(size))) for start in range(number))


def _shorter(task: LayoutTask, strips: Sequence[CutStrip], each: int) -> list[CutStrip] | None:
    """Return a shorter layout of the pieces of some strips, None where none was found in time."""
    together = sum(strip.part for strip in strips)
    counts = [task.pieces.count(together, kind) for kind in range(len(task.pieces.kinds))]
    if sum(counts) > _REGROUPED_PIECES:
        return None
    pieces, places = task.pieces.some(counts)
    looks = Looks(min(each, task.looks.left))
    given = looks.left
    try:
        found = strips_within(task_of(pieces, looks, task.highest), total(strips) - 1)
    except SearchTooLongError:
        found = None
    task.looks.left -= given - max(looks.left, 0)
    return None if found is None else [_of_all(task, strip, places) for strip in found]


def _of_all(task: LayoutTask, strip: CutStrip, places: Sequence[int]) -> CutStrip:
    """Return a strip of some pieces as one of all pieces."""
    stacks = [tuple((places[kind], way) for kind, way in stack.lying) for stack in strip.stacks]
    return strip_of(task, strip.along, tuple(stack_of(task, lying) for lying in stacks))

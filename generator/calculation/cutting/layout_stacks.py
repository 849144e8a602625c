"""Stacks of pieces without much waste: pieces come in, stacks go out.

A *stack* is cut out of a strip from top to bottom and holds pieces one below the other; a narrower piece is trimmed.
Whatever is added to a stack, its waste never shrinks: so one that wastes more than the whole layout may is never
needed. (After P. Y. Wang, *Operations Research* 31, 1983, from memory.)
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from generator.calculation.cutting.layout_measures import WidthMeasure, measures
from generator.calculation.cutting.layout_pieces import ALONE, LayoutPieces, LayoutWay

Lying = tuple[int, LayoutWay]
"""A piece of a kind, and how it lies."""
Spare = tuple[int, int]
"""What may be wasted, by the plain width and by the best measure."""


class SearchTooLongError(Exception):
    """The search has used up the looks it was given."""


class Looks:
    """How much may still be looked at: a limit that, unlike a clock, gives the same layout every day."""

    def __init__(self, left: int) -> None:
        self.left = left

    def spend(self, number: int) -> None:
        """Count some looks, or give up."""
        self.left -= number
        if self.left < 0:
            raise SearchTooLongError


class CutStack(NamedTuple):
    """Pieces one below the other, the part that they are, and what they need by both measures."""

    across: int
    along: int
    part: int
    plain: int
    best: int
    lying: tuple[Lying, ...]


class LayoutTask(NamedTuple):
    """Pieces to lay, the two measures of their widths, the looks that it may take, and how high a strip may be."""

    pieces: LayoutPieces
    plain: WidthMeasure
    best: WidthMeasure
    looks: Looks
    highest: int

    def spare(self, length: int) -> Spare:
        """Return what a layout of all pieces may waste if it is to keep within a length."""
        return self.plain.spare(length), self.best.spare(length)


def task_of(pieces: LayoutPieces, looks: Looks, highest: int) -> LayoutTask:
    """Return the task of laying pieces in strips no higher than a person can cut down, or than the pieces are long."""
    tallest = max((way.along for kind in pieces.kinds for way in kind.ways), default=0)
    return LayoutTask(pieces, *measures(pieces), looks, max(highest, tallest))


BLOCK_LOOKS, _GROWTH_LOOKS = 4, 8
NO_STACK = CutStack(0, 0, 0, 0, 0, ())
_Fit = tuple[int, int, LayoutWay]


def with_piece(task: LayoutTask, stack: CutStack, kind: int, way: LayoutWay) -> CutStack:
    """Return a stack with one piece more.

    Parameters
    ----------
    task : LayoutTask
        All pieces.
    stack : CutStack
        The stack so far.
    kind : int
        The place of the piece's kind [-].
    way : LayoutWay
        How it lies.

    Returns
    -------
    CutStack
        With its size and its needs.
    """
    across, along, part, plain, best, lying = stack
    return CutStack(
        max(across, way.across),
        along + way.along,
        part + task.pieces.one[kind],
        plain + task.plain.needs[kind],
        best + task.best.needs[kind],
        (*lying, (kind, way)),
    )


def stack_of(task: LayoutTask, lying: Iterable[Lying]) -> CutStack:
    """Return the stack of some pieces that lie one below the other.

    Parameters
    ----------
    task : LayoutTask
        All pieces.
    lying : iterable of Lying
        What the stack holds, from the top.

    Returns
    -------
    CutStack
        With its size and its needs.
    """
    stack = NO_STACK
    for kind, way in lying:
        stack = with_piece(task, stack, kind, way)
    return stack


class StackGrowth:
    """Grows stacks of one width from pieces of one group.

    ``ways`` tell how the kinds lie that may be in such a stack; ``exact`` are those that can be as wide as the stack,
    of which it holds one at least, as a part of the pieces.
    """

    def __init__(self, task: LayoutTask, across: int, group: int) -> None:
        self.across = across
        self.worth = task.best.of(across)
        self.group, self._task = group, task
        self.ways = {
            place: way
            for place, kind in enumerate(task.pieces.kinds)
            if kind.group == group and (way := kind.within(across))
        }
        alone = group == ALONE
        self.parts = [task.pieces.one[place] for place in self.ways] if alone else [task.pieces.whole]
        """The parts of the pieces that can be stacked: pieces that lie alone one by one, others all."""
        self.exact = sum(task.pieces.fields[place] for place, way in self.ways.items() if way.across == across)

    def grown(self, part: int, spare: Spare, heights: tuple[int, int], begun: CutStack = NO_STACK) -> list[CutStack]:
        """Return the stacks between a least and a greatest height that a part of the pieces makes of one begun."""
        fields, one = self._task.pieces.fields, self._task.pieces.one
        self._spare = spare
        self._least, self._most = heights
        self._fits: list[_Fit] = [
            (kind, (part & fields[kind]) // one[kind], way)
            for kind, way in self.ways.items()
            if part & fields[kind] and way.along <= self._most
        ]
        self._after = [0]
        for _, count, way in reversed(self._fits):
            self._after.append(self._after[-1] + count * way.along)
        self._after.reverse()
        self._found: list[CutStack] = []
        self._task.looks.spend(_GROWTH_LOOKS + len(self._fits))
        if begun.along + self._after[0] >= self._least and self._allows(begun):
            self._grow(begun, 0)
        return self._found

    def _grow(self, stack: CutStack, start: int) -> None:
        if stack.across == self.across and stack.along >= self._least:
            self._found.append(stack)
        self._task.looks.spend(BLOCK_LOOKS)
        for place in range(start, len(self._fits)):
            if stack.along + self._after[place] < self._least:
                return
            kind, count, way = self._fits[place]
            grown = stack
            for _ in range(count):
                self._task.looks.spend(BLOCK_LOOKS)
                grown = with_piece(self._task, grown, kind, way)
                if not self._allows(grown):
                    break
                self._grow(grown, place + 1)

    def _allows(self, stack: CutStack) -> bool:
        return (
            stack.along <= self._most
            and self.across * stack.along - stack.plain <= self._spare[0]
            and self.worth * stack.along - stack.best <= self._spare[1]
        )


def worthy_stacks(task: LayoutTask, spare: Spare, most: int) -> list[CutStack]:
    """Return every stack that wastes no more than may be wasted; of one part of the pieces none beaten by another.

    Parameters
    ----------
    task : LayoutTask
        The pieces.
    spare : tuple of int
        What one stack may waste, by both measures.
    most : int
        The greatest height [unit].

    Returns
    -------
    list of CutStack
        The narrowest first.
    """
    best: dict[int, list[tuple[int, int]]] = {}
    found = []
    for stack in _stacks(task, spare, most):
        sizes = best.setdefault(stack.part, [])
        if not any(across <= stack.across and along <= stack.along for across, along in sizes):
            sizes.append((stack.across, stack.along))
            found.append(stack)
    return found


def _stacks(task: LayoutTask, spare: Spare, most: int) -> Iterator[CutStack]:
    for growth in stack_growths(task):
        for part in growth.parts:
            yield from growth.grown(part, spare, (1, most))


def stack_growths(task: LayoutTask) -> list[StackGrowth]:
    """Return the growths of all stacks that there can be, the narrowest first.

    Parameters
    ----------
    task : LayoutTask
        The pieces.

    Returns
    -------
    list of StackGrowth
        One for each width of each group.
    """
    acrosses = sorted({(way.across, kind.group) for kind in task.pieces.kinds for way in kind.ways})
    return [StackGrowth(task, across, group) for across, group in acrosses]

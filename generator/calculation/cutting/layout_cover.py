"""Strips that hold all pieces within a length: the pieces come in, the strips go out, or the proof that there are none.

All strips of a layout together waste what its length leaves over, so at most one of them wastes more than half of that.
Only the others are listed, which are far fewer. Again and again the largest piece that is left is laid in a listed
strip, or it is put aside for the wasteful one; whether what was put aside fits into one strip is seen at the end.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from generator.calculation.cutting.layout_blocks import CutStrip, listed_strips, strip_of
from generator.calculation.cutting.layout_pieces import ALONE
from generator.calculation.cutting.layout_stacks import (
    NO_STACK,
    CutStack,
    LayoutTask,
    Spare,
    StackGrowth,
    stack_growths,
    with_piece,
)


def strips_within(task: LayoutTask, length: int) -> list[CutStrip] | None:
    """Return strips for all pieces that are no longer than a length.

    Parameters
    ----------
    task : LayoutTask
        The pieces.
    length : int
        The length to stay within [unit].

    Returns
    -------
    list of CutStrip or None
        The strips; None where it is proven that there are none.

    Raises
    ------
    SearchTooLongError
        If the looks are used up before either is certain.

    Examples
    --------
    Two squares of 6 and two of 4 on cloth of 10: 6 + 4 fill a strip, two strips are 12.

    >>> from generator.calculation.cutting.layout_stacks import Looks, task_of
    >>> from generator.calculation.cutting.layout_pieces import LayoutPieces, LayoutWay, kind_of
    >>> pieces = LayoutPieces([kind_of([LayoutWay(6, 6)], 10), kind_of([LayoutWay(4, 4)], 10)], [2, 2], 10)
    >>> task = task_of(pieces, Looks(10_000), 60)
    >>> [strip.along for strip in strips_within(task, 12)], strips_within(task, 11)
    ([6, 6], None)

    References
    ----------
    Derived above.
    """
    if min(task.spare(length)) < 0:
        return None
    return _Cover(task, length).found()


class _Cover:
    """Lays the largest piece left, again and again, within one length."""

    def __init__(self, task: LayoutTask, length: int) -> None:
        self._task, self._length = task, length
        spare, best_spare = task.spare(length)
        self._half = best_spare // 2
        plain = self._half if task.plain is task.best else spare
        self._listed = listed_strips(task, (plain, self._half), min(length, task.highest))
        self._growths = stack_growths(task)
        self._failed: dict[tuple[int, int], int] = {}
        self._fits: dict[tuple[int, int], CutStrip | None] = {}

    def found(self) -> list[CutStrip] | None:
        return self._lay(self._task.pieces.whole, 0, self._length, self._task.spare(self._length))

    def _lay(self, rest: int, aside: int, left: int, spare: Spare) -> list[CutStrip] | None:
        """Lay the rest and what is put aside within the length that is left, wasting no more than is spare."""
        if not rest:
            return self._last(aside, left, spare)
        # What may be wasted follows from the length that is left, so where more of it failed, less cannot help.
        if self._failed.get((rest, aside), -1) >= left:
            return None
        task, pieces = self._task, self._task.pieces
        first = pieces.first(rest)
        most = spare[1] - (self._half + 1 if aside else 0)
        self._task.looks.spend(4)
        for strip in self._listed[first]:
            along, waste, best_waste, part, _, room_for = strip
            task.looks.spend(1)
            # They are listed by what they waste, so none that follows wastes less.
            if best_waste > most:
                break
            if waste > spare[0] or along > left or not pieces.holds(rest, part):
                continue
            after = rest - part
            # A piece is left for which this strip has room: the strip that holds it as well is tried by itself.
            if after & room_for:
                continue
            found = self._lay(after, aside, left - along, (spare[0] - waste, spare[1] - best_waste))
            if found is not None:
                return [strip, *found]
        one = pieces.one[first]
        if spare[1] > self._half and pieces.kinds[first].ways[0].along <= left:
            found = self._lay(rest - one, aside + one, left, spare)
            if found is not None:
                return found
        self._failed[rest, aside] = left
        return None

    def _last(self, aside: int, left: int, spare: Spare) -> list[CutStrip] | None:
        """Return the wasteful strip, if there is one, no higher than what is left."""
        if not aside:
            return []
        if (aside, left) not in self._fits:
            high = min(left, self._task.highest)
            self._fits[aside, left] = _Filling(self._task, self._growths, aside, high).strip(spare)
        strip = self._fits[aside, left]
        return None if strip is None else [strip]


class _Filling:
    """Finds stacks that hold a part of the pieces within the width and a height."""

    def __init__(self, task: LayoutTask, growths: Sequence[StackGrowth], part: int, height: int) -> None:
        self._task, self._growths, self._part, self._height = task, growths, part, height
        self._failed: dict[int, int] = {}

    def strip(self, spare: Spare) -> CutStrip | None:
        """Return a strip of the pieces that wastes no more than is spare, up to the height."""
        stacks = self._fill(self._part, self._task.pieces.width, spare)
        return None if stacks is None else strip_of(self._task, max(stack.along for stack in stacks), stacks)

    def _fill(self, rest: int, room: int, spare: Spare) -> tuple[CutStack, ...] | None:
        """Put the largest piece left into a stack that wastes no more than is spare, and so on within the room."""
        if not rest:
            return ()
        if self._failed.get(rest, -1) >= room:
            return None
        self._task.looks.spend(4)
        for stack in self._stacks(rest, room, spare):
            wasted = (
                stack.across * self._height - stack.plain,
                self._task.best.of(stack.across) * self._height - stack.best,
            )
            found = self._fill(rest - stack.part, room - stack.across, (spare[0] - wasted[0], spare[1] - wasted[1]))
            if found is not None:
                return (stack, *found)
        self._failed[rest] = room
        return None

    def _stacks(self, rest: int, room: int, spare: Spare) -> Iterator[CutStack]:
        """Yield the stacks with the largest piece left that, filled up to the height, waste no more than is spare."""
        task, height = self._task, self._height
        first = task.pieces.first(rest)
        group, one = task.pieces.kinds[first].group, task.pieces.one[first]
        for growth in self._growths:
            if growth.across > room:
                return
            if growth.group != group or first not in growth.ways or not rest & growth.exact:
                continue
            least = height - min(spare[0] // growth.across, spare[1] // growth.worth if growth.worth else height)
            begun = with_piece(task, NO_STACK, first, growth.ways[first])
            yield from growth.grown(0 if group == ALONE else rest - one, spare, (least, height), begun)

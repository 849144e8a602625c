"""Strips of stacks without much waste: pieces come in, strips go out.

A *strip* is cut across the whole width and holds stacks side by side; its height is that of its highest stack. As with
stacks, what is added to a strip never lessens its waste.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from generator.calculation.cutting.layout_pieces import ALONE, LayoutPieces
from generator.calculation.cutting.layout_stacks import BLOCK_LOOKS, CutStack, LayoutTask, Spare, worthy_stacks


class CutStrip(NamedTuple):
    """Stacks side by side: what they waste by both measures, the part that they are, and what there is room for.

    ``room_for`` are the kinds of which a piece would fit beside the stacks or below one of them, as a part.
    """

    along: int
    waste: int
    best_waste: int
    part: int
    stacks: tuple[CutStack, ...]
    room_for: int


class _Begun(NamedTuple):
    """A strip that is being filled: what is left of its width, of its worth, and of what it may waste."""

    stacks: tuple[CutStack, ...]
    part: int
    room: int
    worth: int
    spare: int
    best_spare: int


_Candidate = tuple[int, int, int, int, CutStack]
"""A stack in a strip of a height: its width, what it wastes there by both measures, its part."""


class StripGrowth:
    """All strips that waste no more than may be wasted."""

    def __init__(self, task: LayoutTask, spare: Spare, most: int) -> None:
        self._task, self._spare = task, spare
        self._stacks = worthy_stacks(task, spare, most)
        self._known_copies: dict[int, int] = {}
        self.found: dict[int, tuple[int, tuple[CutStack, ...]]] = {}
        """For each part the lowest strip that holds it, and its stacks."""
        for height in sorted({stack.along for stack in self._stacks}):
            self._fill(height)

    def _fill(self, height: int) -> None:
        """Find the strips whose highest stacks are of a height."""
        task = self._task
        task.looks.spend(len(self._stacks))
        candidates = self._candidates(height)
        self._height, self._reached = height, self._reach(candidates)
        highest = sum(candidate[4].along == height for candidate in candidates)
        nothing = _Begun((), 0, task.pieces.width, task.best.whole, *self._spare)
        self._grow(nothing, candidates, highest)

    def _candidates(self, height: int) -> list[_Candidate]:
        """Return the narrowest stack of each part that fits a height, the highest first, then the widest."""
        narrowest: dict[int, CutStack] = {}
        spare, best_spare = self._spare
        worth = self._task.best.of
        for stack in self._stacks:
            across, along, part, plain, best, _ = stack
            if (
                along <= height
                and across * height - plain <= spare
                and worth(across) * height - best <= best_spare
                and (part not in narrowest or across < narrowest[part].across)
            ):
                narrowest[part] = stack
        ordered = sorted(narrowest.values(), key=lambda stack: (stack.along != height, -stack.across, stack.part))
        return [
            (
                stack.across,
                stack.across * height - stack.plain,
                worth(stack.across) * height - stack.best,
                stack.part,
                stack,
            )
            for stack in ordered
        ]

    def _reach(self, candidates: Sequence[_Candidate]) -> int:
        """Return the widths that stacks can fill side by side, as the bits of a number."""
        width = self._task.pieces.width
        inside = (1 << (width + 1)) - 1
        reached = 1
        for across, _, _, part, _ in candidates:
            for _ in range(min(self._copies(part), width // across)):
                reached = (reached | reached << across) & inside
        return reached

    def _copies(self, part: int) -> int:
        """Return how often a part is in all the pieces; every height asks for the same few."""
        if part not in self._known_copies:
            pieces = self._task.pieces
            counts = ((pieces.counts[kind], pieces.count(part, kind)) for kind in range(len(pieces.kinds)))
            self._known_copies[part] = min(all_of // count for all_of, count in counts if count)
        return self._known_copies[part]

    def _grow(self, begun: _Begun, candidates: Sequence[_Candidate], number: int) -> None:
        """Go on with each of the first candidates, and from there with those that come after it."""
        height, reached, guard = self._height, self._reached, self._task.pieces.guard
        allowed = self._task.pieces.whole | guard
        for place in range(number):
            across, wasted, best_wasted, part, stack = candidates[place]
            room, spare, best_spare = begun.room - across, begun.spare - wasted, begun.best_spare - best_wasted
            least = room - spare // height
            if least > 0 and not (reached >> least) & ((1 << (room - least + 1)) - 1):
                continue
            left = allowed - begun.part - part
            fitting = [
                candidate
                for candidate in candidates[place:]
                if candidate[0] <= room
                and candidate[1] <= spare
                and candidate[2] <= best_spare
                and (left - candidate[3]) & guard == guard
            ]
            self._task.looks.spend(len(candidates) - place + BLOCK_LOOKS)
            worth = begun.worth - self._task.best.of(across)
            grown = _Begun((*begun.stacks, stack), begun.part + part, room, worth, spare, best_spare)
            if least <= 0 and worth * height <= best_spare:
                self.found.setdefault(grown.part, (height, grown.stacks))
            self._grow(grown, fitting, len(fitting))


def listed_strips(task: LayoutTask, spare: Spare, most: int) -> list[list[CutStrip]]:
    """Return the strips by their largest kind, those that waste least first.

    Parameters
    ----------
    task : LayoutTask
        The pieces.
    spare : tuple of int
        What one strip may waste, by both measures.
    most : int
        The greatest height of a strip [unit].

    Returns
    -------
    list of list of CutStrip
        For each kind the strips in which it is the largest.

    Raises
    ------
    SearchTooLongError
        If the looks are used up.
    """
    listed: list[list[CutStrip]] = [[] for _ in task.pieces.kinds]
    if min(spare) >= 0:
        for part, (height, stacks) in StripGrowth(task, spare, most).found.items():
            listed[task.pieces.first(part)].append(strip_of(task, height, stacks))
    for strips in listed:
        strips.sort(key=lambda strip: (strip.best_waste, strip.waste, strip.along, strip.part))
    return listed


def strip_of(task: LayoutTask, height: int, stacks: tuple[CutStack, ...]) -> CutStrip:
    """Return the strip of a height that holds some stacks.

    Parameters
    ----------
    task : LayoutTask
        The pieces.
    height : int
        Its height [unit].
    stacks : tuple of CutStack
        What it holds.

    Returns
    -------
    CutStrip
        With what it wastes and what it has room for.
    """
    return CutStrip(
        height,
        task.plain.whole * height - sum(stack.plain for stack in stacks),
        task.best.whole * height - sum(stack.best for stack in stacks),
        sum(stack.part for stack in stacks),
        stacks,
        _room_for(task.pieces, height, stacks),
    )


def _room_for(pieces: LayoutPieces, height: int, stacks: Sequence[CutStack]) -> int:
    """Return the kinds of which a piece fits beside the stacks of a strip or below one of them, as a part."""
    beside = pieces.width - sum(stack.across for stack in stacks)
    room = 0
    for kind, sort in enumerate(pieces.kinds):
        below = any(
            sort.group == pieces.kinds[stack.lying[0][0]].group != ALONE
            and sort.fits(stack.across, height - stack.along)
            for stack in stacks
        )
        if below or sort.fits(beside, height):
            room |= pieces.fields[kind]
    return room

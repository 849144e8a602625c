"""The shortest strips for all pieces: pieces come in, strips and the proven least length go out.

A quick layout comes first. Then lengths are asked from the least upward, because a tight length leaves little to try:
what is refused is proven too short, what is found is the shortest or soon leads to it. A length that would save a step
at the shop is never passed over.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from generator.calculation.cutting.layout_blocks import CutStrip
from generator.calculation.cutting.layout_cover import strips_within
from generator.calculation.cutting.layout_measures import least_length
from generator.calculation.cutting.layout_pieces import LayoutPieces
from generator.calculation.cutting.layout_quick import first_fit, laid_anew, total
from generator.calculation.cutting.layout_stacks import LayoutTask, Looks, SearchTooLongError, task_of

_SEARCHED_PIECES = 300
_CHEAP = 20_000


class FoundStrips(NamedTuple):
    """The best strips found, and a length that no layout can beat."""

    strips: list[CutStrip]
    least: int

    @property
    def length(self) -> int:
        """The heights of all strips together."""
        return total(self.strips)


def shortest_strips(pieces: LayoutPieces, looks: Looks, saving: Callable[[int], int], highest: int) -> FoundStrips:
    """Return the shortest strips, or good ones where the looks do not suffice to be sure.

    Parameters
    ----------
    pieces : LayoutPieces
        The pieces.
    looks : Looks
        How much may be looked at.
    saving : callable
        For a length the greatest one that costs less at the shop [unit].
    highest : int
        How high a strip may be whose pieces are not [unit].

    Returns
    -------
    FoundStrips
        The strips, and the proven least length [unit].

    Examples
    --------
    Two squares of 6 and two of 4 on cloth of 10: a strip of 6 holds one of each, so two strips are 12.

    >>> from generator.calculation.cutting.layout_pieces import LayoutWay, kind_of
    >>> squares = LayoutPieces([kind_of([LayoutWay(6, 6)], 10), kind_of([LayoutWay(4, 4)], 10)], [2, 2], 10)
    >>> found = shortest_strips(squares, Looks(10_000), lambda length: length - 1, 60)
    >>> found.length, found.least
    (12, 12)

    References
    ----------
    Derived in the modules of the layout.
    """
    if not pieces.kinds:
        return FoundStrips([], 0)
    task = task_of(pieces, looks, highest)
    best, least = first_fit(task), least_length(pieces)
    if total(best) > least:
        quick = Looks(looks.left // 4)
        given = quick.left
        best = laid_anew(task._replace(looks=quick), best, max(looks.left // 100, 1))
        looks.left -= given - max(quick.left, 0)
    if pieces.number > _SEARCHED_PIECES:
        return FoundStrips(best, least)
    return _asked(task, FoundStrips(best, least), saving)


def _asked(task: LayoutTask, found: FoundStrips, saving: Callable[[int], int]) -> FoundStrips:
    """Ask one length after the other, until the shortest is proven or the looks are used up."""
    best, least = found
    step, before = 1, 0
    try:
        while least < total(best):
            saves = saving(total(best))
            asked = min(least + step - 1, saves if saves >= least else total(best) - 1)
            left = task.looks.left
            strips = strips_within(task, asked)
            if strips is not None:
                best = strips
                continue
            least = asked + 1
            spent = left - task.looks.left
            if spent < max(2 * before, _CHEAP):
                step *= 2
            elif spent > 4 * before:
                step = max(1, step // 2)
            before = spent
    except SearchTooLongError:
        pass
    return FoundStrips(best, least)

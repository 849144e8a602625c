"""Strips for all pieces: a table and counts come in, a good layout comes out, with whether it is proven shortest.

A quick layout comes first: strip by strip, each filled as well as it can be. Up to 20 pieces the search then goes
on until the shortest is found and proven. Beyond, it goes on for a limited number of positions, and after that lays
neighbouring strips anew, a few at a time, for as long as that makes the whole shorter.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from generator.calculation.cutting.layout_bounds import StripBounds
from generator.calculation.cutting.layout_kinds import Counts, StripTable
from generator.calculation.cutting.layout_search import CutStrip, SearchBudget, SearchTooLongError, StripSearch
from generator.calculation.cutting.layout_weights import SCALE, fullest_strip, strip_weights

EXACT_PIECES = 20
"""So many pieces at most are always laid out exactly."""

_EXACT_LOOKS = 4_000_000
_QUICK_LOOKS = 40_000
_SEARCHED_KINDS = 32
_SEARCHED_STRIPS = 200
_REGROUPED_PIECES = 16
_REGROUP_LOOKS = 5_000
_REGROUPS = 20
_HEIGHTS_TRIED = 8


@dataclass(frozen=True, slots=True)
class StripLayout:
    """Strips that hold all pieces; ``proven`` where no layout of strips is shorter."""

    strips: tuple[CutStrip, ...]
    proven: bool

    @property
    def length(self) -> int:
        """The heights of all strips together."""
        return sum(strip.height for strip in self.strips)


def shortest_strips(table: StripTable, counts: Counts) -> StripLayout:
    """Return the shortest layout of strips, or a good one where there are too many pieces to be sure.

    Parameters
    ----------
    table : StripTable
        The kinds and what they take in strips of each height.
    counts : tuple of int
        Pieces of each kind, one at least [-].

    Returns
    -------
    StripLayout
        The layout; the same every time for the same pieces.

    Examples
    --------
    Two squares of 6 and two of 4 on cloth of 10: a strip of 6 holds one of each, so two strips are 12.

    >>> from generator.calculation.cutting.layout_kinds import kind_of
    >>> table = StripTable([kind_of(6, 6, 10, turnable=False), kind_of(4, 4, 10, turnable=False)], 10)
    >>> layout = shortest_strips(table, (2, 2))
    >>> layout.length, layout.proven
    (12, True)

    References
    ----------
    Derived in the modules of the layout.
    """
    areas = [kind.area for kind in table.kinds]
    quick = quick_strips(table, counts, areas)
    exact = sum(counts) <= EXACT_PIECES
    if exact or (len(table.kinds) <= _SEARCHED_KINDS and len(quick) <= _SEARCHED_STRIPS):
        try:
            better = shorter_strips(
                table, counts, _length(quick), SearchBudget(_EXACT_LOOKS if exact else _QUICK_LOOKS)
            )
            return StripLayout(tuple(better or quick), proven=True)
        except SearchTooLongError:
            quick = min(quick, quick_strips(table, counts, strip_weights(table, counts)), key=_length)
    better = _regrouped(table, quick)
    return StripLayout(
        tuple(better), proven=_length(better) == StripBounds(table, [_area_weights(table)]).length(counts)
    )


def _area_weights(table: StripTable) -> tuple[int, ...]:
    """Return the simplest weights: the length of cloth that a piece would take as a strip of full width."""
    return tuple(kind.area * SCALE // table.width for kind in table.kinds)


def _length(strips: Sequence[CutStrip]) -> int:
    return sum(strip.height for strip in strips)


def shorter_strips(table: StripTable, counts: Counts, limit: int, budget: SearchBudget) -> list[CutStrip] | None:
    """Return the shortest layout if it is shorter than a limit.

    The search asks for lengths just above the lower bound first, because a tight limit leaves little to try.

    Parameters
    ----------
    table : StripTable
        The kinds and what they take in strips of each height.
    counts : tuple of int
        Pieces of each kind [-].
    limit : int
        The length to stay below [unit].
    budget : SearchBudget
        How many positions may be looked at.

    Returns
    -------
    list of CutStrip or None
        The strips; None where it is proven that every layout reaches the limit.

    Raises
    ------
    SearchTooLongError
        If the budget is used up before either is certain.
    """
    bounds = StripBounds(table, [_area_weights(table), strip_weights(table, counts)])
    search = StripSearch(table, bounds, budget)
    asked = bound = search.bound(counts)
    step = max(1, bound // 256)
    while asked < limit:
        asked = min(bound + step, limit)
        if search.shortest(counts, asked) is not None:
            return search.strips(counts)
        step *= 2
    return None


def quick_strips(table: StripTable, counts: Counts, worths: Sequence[int]) -> list[CutStrip]:
    """Return a layout made strip by strip: each holds the hardest piece left and is filled with the most worth.

    Parameters
    ----------
    table : StripTable
        The kinds and what they take in strips of each height.
    counts : tuple of int
        Pieces of each kind [-].
    worths : sequence of int
        What a piece of each kind is worth, its area for example [-].

    Returns
    -------
    list of CutStrip
        The strips in the order in which they were filled.
    """
    strips = []
    while any(counts):
        first = table.hardest(counts)
        heights = table.heights_for(counts, first)[:_HEIGHTS_TRIED]
        filled = [_filled(table, counts, height, worths) for height in heights]
        best = max(filled, key=lambda strip: _worth(strip, worths) / strip.height)
        strips.append(best)
        counts = tuple(count - taken for count, taken in zip(counts, best.take, strict=True))
    return strips


def _worth(strip: CutStrip, worths: Sequence[int]) -> int:
    return sum(taken * worth for taken, worth in zip(strip.take, worths, strict=True))


def _filled(table: StripTable, counts: Counts, height: int, worths: Sequence[int]) -> CutStrip:
    """Fill a strip around one piece of the hardest kind; its height becomes that of its highest piece."""
    first = table.hardest(counts)
    left = list(counts)
    left[first] -= 1
    across, along = table.across(height), table.along(height)
    take = fullest_strip(worths, across, left, table.width - across[first]).take
    take[first] += 1
    return CutStrip(max(high for high, taken in zip(along, take, strict=True) if taken), tuple(take))


def _regrouped(table: StripTable, strips: list[CutStrip]) -> list[CutStrip]:
    """Lay groups of strips of neighbouring heights anew while that makes the layout shorter."""
    strips = sorted(strips, key=lambda strip: (-strip.height, strip.take))
    start = unchanged = 0
    for _ in range(_REGROUPS):
        group = _group(strips, start)
        better = _laid_anew(table, group) if len(group) > 1 else None
        if better is not None:
            strips[start : start + len(group)] = better
            strips.sort(key=lambda strip: (-strip.height, strip.take))
            unchanged = 0
        unchanged += 1
        start = (start + max(1, len(group) - 1)) % len(strips)
        if unchanged > len(strips):
            break
    return strips


def _group(strips: Sequence[CutStrip], start: int) -> list[CutStrip]:
    """Return as many strips from a start as hold few enough pieces to be laid exactly."""
    group: list[CutStrip] = []
    pieces = 0
    for strip in strips[start:]:
        pieces += sum(strip.take)
        if pieces > _REGROUPED_PIECES:
            break
        group.append(strip)
    return group


def _laid_anew(table: StripTable, group: Sequence[CutStrip]) -> list[CutStrip] | None:
    """Return shorter strips for the pieces of a group, or None where none were found."""
    counts = [sum(numbers) for numbers in zip(*(strip.take for strip in group), strict=True)]
    places = [place for place, count in enumerate(counts) if count]
    part = StripTable([table.kinds[place] for place in places], table.width)
    try:
        few = tuple(counts[place] for place in places)
        better = shorter_strips(part, few, _length(group), SearchBudget(_REGROUP_LOOKS))
    except SearchTooLongError:
        return None
    return None if better is None else [_spread(strip, places, len(counts)) for strip in better]


def _spread(strip: CutStrip, places: Sequence[int], size: int) -> CutStrip:
    """Return a strip of some kinds as one of all kinds."""
    take = [0] * size
    for place, taken in zip(places, strip.take, strict=True):
        take[place] = taken
    return CutStrip(strip.height, tuple(take))

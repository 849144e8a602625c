"""Drops that must match on cloth with a pattern: the drops of one piece come in, their strips go out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from typing import NamedTuple

from generator.calculation.cutting.layout_items import in_units, sorted_items
from generator.calculation.cutting.layout_order import LaidGroup, laid_strips
from generator.calculation.cutting.layout_shortest import shortest_strips
from generator.calculation.cutting.layout_stacks import Looks
from generator.calculation.cutting.repeats import matched_drops
from generator.calculation.laid import CutItem, LaidStack, LaidStrip, Match, PlacedItem
from generator.lengths import Edition


class LaidDrops(NamedTuple):
    """The strips of drops that match, in the order of cutting, and what no such strips can beat [in]."""

    strips: tuple[LaidStrip, ...]
    least: Fraction

    @property
    def length(self) -> Fraction:
        """The cloth that they take [in]."""
        return sum((strip.along for strip in self.strips), Fraction(0))


def laid_drops(items: Sequence[CutItem], match: Match, width: Fraction, edition: Edition, looks: int) -> LaidDrops:
    """Return drops that match in as few strips as they need, and these as close as the pattern allows.

    Only at the selvages it is known what the pattern does across the cloth. So widths that are joined lie at one of
    them: what is joined at a right edge begins at the left selvage, and the other way round; in a half drop all do.

    Parameters
    ----------
    items : sequence of CutItem
        The drops of one piece, all equally long [in].
    match : Match
        The repeat of the pattern.
    width : Fraction
        Usable width [in].
    edition : Edition
        The unit in which a fault is told.
    looks : int
        How much may be looked at [-].

    Returns
    -------
    LaidDrops
        Each strip reaches to the next; the last is as high as its drop.

    Raises
    ------
    CalculationError
        If a drop is wider than the cloth.

    Examples
    --------
    Three drops of 20 x 30 with a repeat of 12 on 44: two side by side, the third 36 further on, 66 in all.

    >>> from generator.lengths import INCH
    >>> drop = CutItem("curtain", "Curtain", Fraction(20), Fraction(30), 3, match=Match(Fraction(12)))
    >>> laid_drops([drop], drop.match, Fraction(44), INCH, 10_000).length
    Fraction(66, 1)

    References
    ----------
    Derived in ``repeats``.
    """
    cut = items[0].along
    if match.at_selvage or match.half_drop:
        sorts = [_at_selvages([item for item in items if _shifted(item) is sort], width) for sort in (False, True)]
        return LaidDrops(_spaced(sorts, cut, match.repeat), _length(len(sorts[0]), len(sorts[1]), cut, match.repeat))
    found = in_units(items, width, edition)
    ordered = sorted_items(found, found.items, stacked=False, apart=True)
    best = shortest_strips(ordered.pieces, Looks(looks), lambda length: length - 1, 0)
    fewest = -(-best.least * found.unit // cut)
    strips = laid_strips([LaidGroup(ordered, tuple(best.strips))], found.unit)
    return LaidDrops(_spaced([list(strips), []], cut, match.repeat), _length(int(fewest), 0, cut, match.repeat))


def _shifted(item: CutItem) -> bool:
    return item.match is not None and item.match.shifted


def _at_selvages(items: Sequence[CutItem], width: Fraction) -> list[LaidStrip]:
    """Return strips with one drop at the left selvage, or two narrow widths to be joined, one at each selvage."""
    copies = [(item, copy) for item in items for copy in range(1, item.quantity + 1)]
    narrow = [one for one in copies if one[0].match and one[0].match.at_selvage and 2 * one[0].across <= width]
    pairs = list(zip(narrow[::2], narrow[1::2], strict=False))
    second = dict(pairs)
    strips = []
    for one in copies:
        if one in second.values():
            continue
        item, nothing = one[0], Fraction(0)
        stacks = [_stack(one, nothing, nothing, item.across + item.room)]
        if one in second:
            other = second[one]
            stacks.append(_stack(other, width - other[0].across, item.across, width - item.across))
        strips.append(LaidStrip(nothing, item.along, tuple(stacks)))
    return strips


def _stack(one: tuple[CutItem, int], left: Fraction, begins: Fraction, across: Fraction) -> LaidStack:
    """A stack of one drop, which lies at ``left``; the stack begins where the cloth beside it ends."""
    item, copy = one
    placed = PlacedItem(item.piece, item.label, copy, left, Fraction(0), item.across, item.along, turned=False)
    return LaidStack(begins, across, item.later, (replace(placed, kit=item.kit),))


def _spaced(sorts: list[list[LaidStrip]], cut: Fraction, repeat: Fraction) -> tuple[LaidStrip, ...]:
    """Return strips of both sorts in the order that needs least cloth, each reaching to the next."""
    waiting = [iter(strips) for strips in sorts]
    drops = matched_drops(len(sorts[0]), len(sorts[1]), cut, repeat)
    return tuple(replace(next(waiting[shifted]), along=height) for shifted, height in drops)


def _length(straight: int, shifted: int, cut: Fraction, repeat: Fraction) -> Fraction:
    return sum((height for _, height in matched_drops(straight, shifted, cut, repeat)), Fraction(0))

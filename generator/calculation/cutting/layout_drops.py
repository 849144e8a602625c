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

    Where the pattern has a half drop each drop begins at the left selvage, for only there the pattern is known.

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
    if match.half_drop:
        sorts = [
            [_alone(item, copy) for item in items if _shifted(item) is shifted for copy in range(1, item.quantity + 1)]
            for shifted in (False, True)
        ]
        return LaidDrops(_spaced(sorts, cut, match.repeat), _length(len(sorts[0]), len(sorts[1]), cut, match.repeat))
    found = in_units(items, width, edition)
    ordered = sorted_items(found, found.items, stacked=False, apart=True)
    best = shortest_strips(ordered.pieces, Looks(looks), lambda length: length - 1, 0)
    fewest = -(-best.least * found.unit // cut)
    strips = laid_strips([LaidGroup(ordered, tuple(best.strips))], found.unit)
    return LaidDrops(_spaced([list(strips), []], cut, match.repeat), _length(int(fewest), 0, cut, match.repeat))


def _shifted(item: CutItem) -> bool:
    return item.match is not None and item.match.shifted


def _alone(item: CutItem, copy: int) -> LaidStrip:
    """A strip with one drop at the left selvage."""
    nothing = Fraction(0)
    placed = PlacedItem(
        item.piece, item.label, copy, nothing, nothing, item.across, item.along, turned=False, kit=item.kit
    )
    return LaidStrip(nothing, item.along, (LaidStack(nothing, item.across + item.room, item.later, (placed,)),))


def _spaced(sorts: list[list[LaidStrip]], cut: Fraction, repeat: Fraction) -> tuple[LaidStrip, ...]:
    """Return strips of both sorts in the order that needs least cloth, each reaching to the next."""
    waiting = [iter(strips) for strips in sorts]
    drops = matched_drops(len(sorts[0]), len(sorts[1]), cut, repeat)
    return tuple(replace(next(waiting[shifted]), along=height) for shifted, height in drops)


def _length(straight: int, shifted: int, cut: Fraction, repeat: Fraction) -> Fraction:
    return sum((height for _, height in matched_drops(straight, shifted, cut, repeat)), Fraction(0))

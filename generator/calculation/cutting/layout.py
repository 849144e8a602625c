"""The cutting layout of one cloth: rectangles and a usable width come in, a layout of straight cuts goes out.

The cloth is first cut across into strips, then each strip down into stacks, then each stack across into pieces; a piece
narrower than its stack is trimmed. A person can cut that with a ruler, and tear it along the thread where the cloth
allows. Of layouts that buy the same the one that is easiest to cut is taken.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from functools import partial
from typing import NamedTuple

from generator.calculation.cutting.cloth import Buying
from generator.calculation.cutting.layout_drops import LaidDrops, laid_drops
from generator.calculation.cutting.layout_items import SortedItems, UnitItems, in_units, sorted_items
from generator.calculation.cutting.layout_measures import least_length
from generator.calculation.cutting.layout_narrow import narrowest_width
from generator.calculation.cutting.layout_order import LaidGroup, laid_strips
from generator.calculation.cutting.layout_shortest import shortest_strips
from generator.calculation.cutting.layout_stacks import Looks
from generator.calculation.laid import CutItem, Layout, below_each_other
from generator.lengths import CENTIMETRE, INCH, Edition

LOOKS = 8_000_000
"""How much may be looked at for one cloth."""
_WIDTHS = 160
"""A narrower cloth is asked for with one part in so many of the looks, for each width that is tried."""
HIGHEST = {"in": Fraction(60), "cm": 150 * CENTIMETRE}
"""How high a strip may be whose pieces are not: nobody rules longer cuts down well. How long is ours to say."""


class _Choice(NamedTuple):
    """One way of laying all pieces: its groups of strips, its length, and what no such way can beat [unit]."""

    groups: tuple[LaidGroup, ...]
    length: int
    least: int


def cutting_layout(
    items: Sequence[CutItem],
    width: Fraction,
    edition: Edition = INCH,
    buying: Buying | None = None,
    looks: int = LOOKS,
) -> Layout:
    """Return the layout that needs least from the shop and is easiest to cut among those that do.

    Now and later never share a stack, so what waits for the sewn panel stays whole. As long as the purchase stays
    least, later has strips of its own, at the end; nothing lies in stacks; and the layout is the shortest of its sort.

    Parameters
    ----------
    items : sequence of CutItem
        The pieces to cut [in]; on one-way cloth none may be turnable.
    width : Fraction
        Usable width, after washing where the cloth is washed first [in].
    edition : Edition
        The unit in which a fault is told.
    buying : Buying, optional
        How the cloth is bought; without it by the edition's steps, without shrinkage, its end straight.
    looks : int
        How much may be looked at [-]; with fewer the layout may be longer, and says that it is not proven.

    Returns
    -------
    Layout
        Strips from the highest down, those that are only cut later after the others; stacks from the left.

    Raises
    ------
    CalculationError
        If a piece is wider than the cloth in every way that it may lie, or a size is not positive.

    Notes
    -----
    The same pieces give the same layout every time and everywhere: the search counts its looks, not the time.

    Examples
    --------
    Two pieces of 24 x 30 and two of 16 x 20 on 44 in: one of each fills a strip (24 + 16 = 40), two strips of 30.

    >>> front = CutItem("front", "Front", Fraction(24), Fraction(30), 2)
    >>> back = CutItem("back", "Back", Fraction(16), Fraction(20), 2)
    >>> layout = cutting_layout([front, back], Fraction(44))
    >>> layout.length, layout.proven, layout.narrowest
    (Fraction(60, 1), 'shortest', Fraction(40, 1))

    A cover of 15 x 16 3/4 and two of 16 3/4 x 3 1/2 on 44: in strips 16 3/4 + 3 1/2 = 20 1/4, but the two stacked are 7
    high and lie beside the cover. A step of 4 1/2 in is saved.

    >>> cover = CutItem("cover", "Cover", Fraction(15), Fraction(67, 4), 1)
    >>> ends = CutItem("end", "End", Fraction(67, 4), Fraction(7, 2), 2)
    >>> cutting_layout([cover, ends], Fraction(44)).length
    Fraction(67, 4)

    Nothing to cut needs no cloth:

    >>> cutting_layout([], Fraction(44)).length
    Fraction(0, 1)

    References
    ----------
    Derived in the modules of the layout; cuts across, down and across are common practice, no source.
    """
    whole = in_units(items, width, edition)
    drops: dict[tuple[str, str], list[CutItem]] = {}
    for item in items:
        if item.match is not None and item.quantity:
            drops.setdefault((item.piece, item.kit), []).append(item)
    matched = [laid_drops(alike, alike[0].match, width, edition, looks) for alike in drops.values() if alike[0].match]
    rest = in_units([item for item in items if item.match is None], width, edition) if matched else whole
    bound = _bound(whole)
    highest = int(HIGHEST[edition.unit] // rest.unit)
    return _Chooser(rest, matched, buying or Buying(edition.buy_step), (looks, highest)).layout(width, bound)


def length_bound(items: Sequence[CutItem], width: Fraction, edition: Edition) -> Fraction:
    """Return a length that no layout of the pieces can beat [in], without laying them.

    Parameters
    ----------
    items : sequence of CutItem
        The pieces to cut [in].
    width : Fraction
        Usable width [in].
    edition : Edition
        The unit in which a fault is told.

    Returns
    -------
    Fraction
        The bound [in].

    Examples
    --------
    Three of 24 x 20 on 44: no two lie beside each other, so 60.

    >>> length_bound([CutItem("front", "Front", Fraction(24), Fraction(20), 3)], Fraction(44), INCH)
    Fraction(60, 1)

    References
    ----------
    ``least_length``.
    """
    return _bound(in_units(items, width, edition))


def _bound(found: UnitItems) -> Fraction:
    return least_length(sorted_items(found, found.items, stacked=True, apart=False).pieces) * found.unit


class _Chooser:
    """Weighs the ways of laying the pieces of one cloth after its drops that match; lengths are in its unit."""

    def __init__(self, found: UnitItems, matched: Sequence[LaidDrops], buying: Buying, limits: tuple[int, int]) -> None:
        self._found, self._matched, self._buying = found, matched, buying
        self._left, self._highest = limits
        self._narrowing = limits[0] // _WIDTHS, limits[1]
        self._drops = sum((drops.length for drops in matched), Fraction(0))
        self._more = self._drops - sum((drops.least for drops in matched), Fraction(0))

    def layout(self, width: Fraction, bound: Fraction) -> Layout:
        """Return the layout chosen; ``bound`` is what no layout of any sort can beat [in]."""
        found, unit, drops = self._found, self._found.unit, self._drops
        free = self._solved([sorted_items(found, found.items, stacked=True, apart=False)], Fraction(3, 4))
        chosen, apart = self._chosen(free)
        length, least = drops + chosen.length * unit, drops - self._more + apart.least * unit
        above = self._steps(chosen.length) - self._steps(apart.least, self._more)
        strips = [strip for matched in self._matched for strip in matched.strips]
        return Layout(
            width=width,
            length=length,
            strips=below_each_other([*strips, *laid_strips(chosen.groups, unit)]),
            lower_bound=bound,
            least=least,
            proven="shortest" if length <= least else "open" if above else "purchase",
            narrowest=max(self._narrowest(chosen), *(strip.across for strip in strips), Fraction(0)),
            possible=drops + min(chosen.length, apart.length) * unit,
            steps_above=above,
            apart_costs=self._steps(apart.length) - self._steps(free.length),
        )

    def _narrowest(self, chosen: _Choice) -> Fraction:
        """Return the narrowest width on which what need not match can be cut from what is bought [in]."""
        strips = [strip for group in chosen.groups for strip in group.strips]
        if not strips:
            return Fraction(0)
        return (
            narrowest_width(self._found, self._enough(self._steps(chosen.length)), strips, self._narrowing)
            * self._found.unit
        )

    def _chosen(self, free: _Choice) -> tuple[_Choice, _Choice]:
        """Return the choice, and the shortest known that keeps whole what waits with what no such layout can beat."""
        tried = []
        for choice in self._choices(free):
            if self._steps(choice.length) <= self._steps(free.length):
                return choice, free
            tried.append(choice)
        shortest = min(choice.length for choice in tried)
        chosen = next(choice for choice in tried if self._steps(choice.length) == self._steps(shortest))
        return chosen, _Choice((), shortest, tried[-1].least)

    def _choices(self, free: _Choice) -> Iterator[_Choice]:
        """Yield the ways that keep whole what waits, the easiest to cut first; the last leaves most open."""
        found = self._found
        times = [[item for item in found.items if item.item.later is later] for later in (False, True)]
        own = [items for items in times if items]
        yield self._solved([sorted_items(found, items, stacked=False, apart=True) for items in own], Fraction(1, 3))
        if len(own) <= 1:
            yield free
            return
        yield self._solved([sorted_items(found, items, stacked=True, apart=True) for items in own], Fraction(1, 3))
        yield self._solved([sorted_items(found, found.items, stacked=False, apart=True)], Fraction(1, 2))
        yield self._solved([sorted_items(found, found.items, stacked=True, apart=True)], Fraction(1))

    def _solved(self, groups: Sequence[SortedItems], share: Fraction) -> _Choice:
        """Return groups of pieces, each laid in strips of its own, for a share of the looks that are left."""
        laid: list[LaidGroup] = []
        length = least = 0
        given = int(self._left * share / max(len(groups), 1))
        for group in groups:
            looks = Looks(given)
            best = shortest_strips(group.pieces, looks, partial(self._saving, length), self._highest)
            self._left -= given - max(looks.left, 0)
            laid.append(LaidGroup(group, tuple(best.strips)))
            length, least = length + best.length, least + best.least
        return _Choice(tuple(laid), length, least)

    def _steps(self, length: int, less: Fraction = Fraction(0)) -> int:
        """Return how many steps of the shop a layout needs, its drops that match ``less`` long than they are."""
        return int(self._buying.bought(self._drops - less + length * self._found.unit) / self._buying.step)

    def _enough(self, steps: int) -> int:
        """Return the longest layout for which some steps of the shop are enough."""
        return (self._buying.enough(steps * self._buying.step) - self._drops) // self._found.unit

    def _saving(self, before: int, length: int) -> int:
        """Return the greatest length that saves a step where strips of another length are laid before."""
        return self._enough(self._steps(before + length) - 1) - before

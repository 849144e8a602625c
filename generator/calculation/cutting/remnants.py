"""What can be cut from the pieces of cloth that there are: items and remnants come in, where they lie goes out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import product
from math import prod
from typing import NamedTuple

from generator.calculation.cutting.layout_blocks import CutStrip
from generator.calculation.cutting.layout_cover import strips_within
from generator.calculation.cutting.layout_items import UnitItems, in_units, sorted_items
from generator.calculation.cutting.layout_pieces import LayoutPieces, LayoutWay, kind_of
from generator.calculation.cutting.layout_stacks import Looks, SearchTooLongError, task_of
from generator.calculation.laid import CutItem
from generator.lengths import Edition

MOST_PARTS = 2000
"""So many parts of the pieces are asked for one by one; with more only a good try is made."""
_LOOKS, _LOOKS_EACH = 4_000_000, 200_000


class Remnant(NamedTuple):
    """A piece of cloth, washed and straightened: across along the weft, along with the selvage [in]."""

    across: Fraction
    along: Fraction


class LiesOn(NamedTuple):
    """A piece as it lies on a remnant: which one, its place from the left and from the top, its size there [in]."""

    remnant: int
    label: str
    left: Fraction
    top: Fraction
    across: Fraction
    along: Fraction


class FromRemnants(NamedTuple):
    """Where all pieces lie, nothing where they do not; ``certain`` whether there is no other way of cutting them."""

    lying: tuple[LiesOn, ...] | None
    certain: bool


_Part = tuple[int, ...]
"""How many of each kind."""


def cut_from_remnants(
    items: Sequence[CutItem], remnants: Sequence[Remnant], edition: Edition, looks: int = _LOOKS
) -> FromRemnants:
    """Return whether and where all pieces can be cut from some remnants, each cut in three stages.

    The first cuts go across a remnant or along it, the second ones the other way, the third ones as the first.

    Parameters
    ----------
    items : sequence of CutItem
        The pieces to cut [in].
    remnants : sequence of Remnant
        What there is [in].
    edition : Edition
        The unit in which a fault is told.
    looks : int
        How much may be looked at [-].

    Returns
    -------
    FromRemnants
        The places; without them, whether that is certain.

    Raises
    ------
    CalculationError
        If a size is not positive.

    Notes
    -----
    What fits a remnant still does when a piece is taken away. So of all parts that fit the first remnant only those are
    asked for to which nothing can be added, and a part is refused unseen that holds one refused before.

    Examples
    --------
    A square of 10 and two bands of 4 x 10 do not fit 14 x 12, but the second band fits another piece:

    >>> from generator.lengths import INCH
    >>> items = [CutItem("square", "Square", Fraction(10), Fraction(10), 1)]
    >>> items += [CutItem("band", "Band", Fraction(4), Fraction(10), 2)]
    >>> first, second = Remnant(Fraction(14), Fraction(12)), Remnant(Fraction(5), Fraction(11))
    >>> cut_from_remnants(items, [first], INCH)
    FromRemnants(lying=None, certain=True)
    >>> [(one.remnant, one.label) for one in cut_from_remnants(items, [first, second], INCH).lying]
    [(0, 'Square'), (0, 'Band'), (1, 'Band')]

    References
    ----------
    Derived above.
    """
    widest = max(max(item.across + item.room, item.along) for item in items) if items else Fraction(1)
    found = in_units(items, widest, edition)
    if not found.items:
        return FromRemnants((), certain=True)
    return _Sharing(found, remnants, looks).answer()


class _Sharing:
    """Shares pieces out to remnants, one remnant after the other."""

    def __init__(self, found: UnitItems, remnants: Sequence[Remnant], looks: int) -> None:
        self._unit, self._looks = found.unit, Looks(looks)
        ordered = sorted_items(found, found.items, stacked=True, apart=True)
        self._kinds, self._counts = ordered.pieces.kinds, ordered.pieces.counts
        self._names = [[item for item in items for _ in range(item.quantity)] for items in ordered.items]
        self._ways = [_all_ways(found, items[0]) for items in ordered.items]
        # No cloth is larger than it need be: all pieces side by side, or one below the other.
        most = sum(max(max(way) for way in ways) * count for ways, count in zip(self._ways, self._counts, strict=True))
        self._remnants = [
            (min(most, int(one.across // found.unit)), min(most, int(one.along // found.unit))) for one in remnants
        ]
        self._certain = True
        self._known: dict[tuple[tuple[int, int], _Part], tuple[bool, tuple[CutStrip, ...]] | None] = {}
        self._refused: dict[tuple[int, int], list[_Part]] = {}

    def answer(self) -> FromRemnants:
        """Return where everything lies, if it does."""
        if self._too_little():
            return FromRemnants(None, certain=True)
        order = sorted(range(len(self._remnants)), key=lambda place: -prod(self._remnants[place]))
        shared = self._share(tuple(self._counts), order)
        if shared is None:
            return FromRemnants(None, self._certain)
        return FromRemnants(tuple(self._lying(shared)), certain=True)

    def _too_little(self) -> bool:
        """Return whether the pieces are larger than all remnants together, or one of them fits none."""
        areas = zip(self._kinds, self._counts, strict=True)
        if sum(kind.area * count for kind, count in areas) > sum(map(prod, self._remnants)):
            return True
        return not all(
            any(way.across <= across and way.along <= along for way in ways for across, along in self._remnants)
            for ways in self._ways
        )

    def _share(self, rest: _Part, order: Sequence[int]) -> list[tuple[int, _Part]] | None:
        """Return which part of the rest each remnant gets."""
        if not any(rest):
            return []
        if not order:
            return None
        first, others = order[0], order[1:]
        size, tried = self._remnants[first], list[_Part]()
        for part in [rest] if not others else self._parts(rest, size):
            if any(_within(part, other) for other in tried) or self._strips(part, size) is None:
                continue
            tried.append(part)
            left = tuple(count - taken for count, taken in zip(rest, part, strict=True))
            shared = self._share(left, others)
            if shared is not None:
                return [(first, part), *shared]
        return None

    def _parts(self, rest: _Part, size: tuple[int, int]) -> Iterator[_Part]:
        """Yield the parts of the rest that a remnant may get, the largest first; of very many only a good one."""
        if prod(count + 1 for count in rest) <= MOST_PARTS:
            areas = [kind.area for kind in self._kinds]
            parts = product(*(range(count, -1, -1) for count in rest))
            yield from sorted(
                parts, key=lambda part: -sum(count * area for count, area in zip(part, areas, strict=True))
            )
        else:
            self._certain = False
            yield self._filled(rest, size)

    def _filled(self, rest: _Part, size: tuple[int, int]) -> _Part:
        """Return one good part of many: pieces are added one by one, the largest first, while they fit."""
        part = tuple(0 for _ in rest)
        for kind, count in enumerate(rest):
            for _ in range(count):
                more = (*part[:kind], part[kind] + 1, *part[kind + 1 :])
                if self._strips(more, size) is None:
                    break
                part = more
        return part

    def _strips(self, part: _Part, size: tuple[int, int]) -> tuple[bool, tuple[CutStrip, ...]] | None:
        """Return the strips of a part on a remnant, and whether they are cut along it; None where none were found."""
        if (size, part) not in self._known:
            refused = self._refused.setdefault(size, [])
            found = None
            if not any(_within(other, part) for other in refused):
                found = self._laid(part, size, along=False) or self._laid(part, size, along=True)
                if found is None:
                    refused.append(part)
            self._known[size, part] = found
        return self._known[size, part]

    def _pieces(self, part: _Part, width: int, *, along: bool) -> tuple[LayoutPieces, list[int]] | None:
        """Return the pieces of a part on a width, and the place of each of their kinds; None where one is too wide."""
        places = [place for place, count in enumerate(part) if count]
        kinds = [
            kind_of(
                (LayoutWay(way.across, way.along) if along else way for way in self._ways[place]),
                width,
                self._kinds[place].group,
            )
            for place in places
        ]
        if not all(kind.ways for kind in kinds):
            return None
        order = sorted(range(len(places)), key=lambda at: (-kinds[at].area, kinds[at], places[at]))
        counts = [part[places[at]] for at in order]
        return LayoutPieces([kinds[at] for at in order], counts, width), [places[at] for at in order]

    def _laid(self, part: _Part, size: tuple[int, int], *, along: bool) -> tuple[bool, tuple[CutStrip, ...]] | None:
        width, length = reversed(size) if along else size
        pieces = self._pieces(part, width, along=along)
        if pieces is None or not any(part):
            return None if any(part) else (along, ())
        looks = Looks(min(_LOOKS_EACH, max(self._looks.left, 0)))
        given = looks.left
        try:
            strips = strips_within(task_of(pieces[0], looks, length), length)
        except SearchTooLongError:
            self._certain, strips = False, None
        self._looks.left -= given - max(looks.left, 0)
        return None if strips is None else (along, tuple(strips))

    def _lying(self, shared: Sequence[tuple[int, _Part]]) -> Iterator[LiesOn]:
        """Yield every piece in its place, remnant by remnant."""
        waiting = [iter(names) for names in self._names]
        for remnant, part in sorted(shared):
            found = self._strips(part, self._remnants[remnant])
            along, strips = found if found is not None else (False, ())
            pieces = self._pieces(part, self._remnants[remnant][int(along)], along=along)
            places = pieces[1] if pieces is not None else []
            for kind, way, left, top in _placed(strips):
                item = next(waiting[places[kind]])
                corner, size = ((top, left), way) if along else ((left, top), (way.across, way.along))
                yield LiesOn(remnant, item.label, *(length * self._unit for length in (*corner, *size)))


def _all_ways(found: UnitItems, item: CutItem) -> tuple[LayoutWay, ...]:
    return next(ways for one, ways in found.items if one == item)


def _within(part: _Part, other: _Part) -> bool:
    return all(count <= most for count, most in zip(part, other, strict=True))


def _placed(strips: Sequence[CutStrip]) -> Iterator[tuple[int, LayoutWay, int, int]]:
    """Yield each piece of some strips: its kind, how it lies, from the left and from the top [unit]."""
    top = 0
    for strip in sorted(strips, key=lambda strip: (-strip.along, strip.part)):
        left = 0
        for stack in strip.stacks:
            down = top
            for kind, way in stack.lying:
                yield kind, way, left, down
                down += way.along
            left += stack.across
        top += strip.along

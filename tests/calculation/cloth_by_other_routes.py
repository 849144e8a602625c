"""Cutting layouts by another route: every way of cutting across, down and across is tried."""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import combinations, pairwise, product

from shapely.geometry import box

from generator.calculation.laid import CutItem, Layout

Size = tuple[Fraction, Fraction]
"""Across and along."""


def random_items(seed: int, number: int, sizes: tuple[int, int], *, turnable: Sequence[bool]) -> list[CutItem]:
    """Return pieces of random whole inches, the same for the same seed; each may be turned or not as listed."""
    chance = random.Random(seed)  # noqa: S311
    return [
        CutItem(
            f"piece {count}",
            f"Piece {count}",
            Fraction(chance.randint(*sizes)),
            Fraction(chance.randint(*sizes)),
            1,
            chance.choice(turnable),
        )
        for count in range(number)
    ]


def _ways(item: CutItem) -> list[Size]:
    return [(item.across, item.along)] + ([(item.along, item.across)] if item.turnable else [])


def _parts(whole: int) -> Iterator[int]:
    """Every part of a set that holds its first member."""
    first = whole & -whole
    rest = whole ^ first
    part = rest
    while True:
        yield part | first
        if not part:
            return
        part = (part - 1) & rest


def length_by_trying_everything(
    items: Sequence[CutItem], width: Fraction, *, stacked: bool = True, apart: bool = True
) -> Fraction:
    """The shortest layout over every choice of stacks, of ways to lie, and of strips; no bound, nothing left out."""
    single = [item for item in items for _ in range(item.quantity)]
    stacks: dict[int, set[Size]] = {}
    rows: dict[int, set[Size]] = {0: {(Fraction(0), Fraction(0))}}
    shortest: dict[int, Fraction] = {0: Fraction(0)}
    for part in range(1, 1 << len(single)):
        members = [item for place, item in enumerate(single) if part >> place & 1]
        allowed = (stacked or len(members) == 1) and not (apart and len({item.later for item in members}) > 1)
        lying = product(*map(_ways, members)) if allowed else ()
        stacks[part] = {(max(across for across, _ in ways), sum(along for _, along in ways)) for ways in lying}
    for part in range(1, 1 << len(single)):
        rows[part] = {
            (wide + across, max(high, along))
            for first in _parts(part)
            for wide, high in stacks[first]
            for across, along in rows[part ^ first]
            if wide + across <= width
        }
    for part in range(1, 1 << len(single)):
        shortest[part] = min(
            min(high for _, high in rows[first]) + shortest[part ^ first]
            for first in _parts(part)
            if rows[first] and part ^ first in shortest
        )
    return shortest[(1 << len(single)) - 1]


def assert_can_be_cut(layout: Layout, items: Sequence[CutItem]) -> None:
    """Lay the rectangles out: inside stack, strip and cloth, none over another, all there, grain and time kept."""
    wanted = Counter((item.piece, copy + 1) for item in items for copy in range(item.quantity))
    assert Counter((placed.piece, placed.copy) for placed in layout.placed) == wanted
    by_name = {(item.piece, item.label): item for item in items}
    for strip in layout.strips:
        for stack in strip.stacks:
            assert {by_name[placed.piece, placed.label].later for placed in stack.placed} == {stack.later}
            assert stack.left + stack.across <= layout.width
            assert max(placed.across for placed in stack.placed) == stack.across
            assert {placed.left for placed in stack.placed} == {stack.left}
            assert stack.placed[0].top == strip.top
            assert all(above.top + above.along == below.top for above, below in pairwise(stack.placed))
            assert stack.placed[-1].top + stack.placed[-1].along <= strip.bottom
        assert all(one.left + one.across <= other.left for one, other in pairwise(strip.stacks))
        lowest = max(placed.top + placed.along for placed in strip.placed)
        assert lowest <= strip.bottom
        if by_name[strip.placed[0].piece, strip.placed[0].label].match is None:
            assert lowest == strip.bottom
    for placed in layout.placed:
        item = by_name[placed.piece, placed.label]
        assert (placed.across, placed.along) == (
            (item.along, item.across) if placed.turned else (item.across, item.along)
        )
        assert item.turnable or not placed.turned
    shapes = [
        box(placed.left, placed.top, placed.left + placed.across, placed.top + placed.along) for placed in layout.placed
    ]
    assert all(one.intersection(other).area == 0 for one, other in combinations(shapes, 2))
    assert [strip.top for strip in layout.strips] == [0, *(strip.bottom for strip in layout.strips[:-1])]
    assert layout.strips[-1].bottom == layout.length
    assert layout.lower_bound <= layout.possible <= layout.length

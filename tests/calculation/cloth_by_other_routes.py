"""Cutting layouts by two other routes: by trying everything, and by a general solver of whole-number programmes."""

from __future__ import annotations

import random
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import product

import numpy as np
from scipy.optimize import LinearConstraint, milp
from scipy.sparse import lil_array

from generator.calculation.worked import CutItem

Size = tuple[int, int]
"""Across and along, in whole inches."""


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


def ways_to_lie(item: CutItem, width: Fraction) -> list[Size]:
    ways = {(int(item.across), int(item.along))} | ({(int(item.along), int(item.across))} if item.turnable else set())
    return sorted(way for way in ways if way[0] <= width)


def partitions(places: Sequence[int]) -> Iterator[list[list[int]]]:
    """Every way to deal places out to strips."""
    if not places:
        yield []
        return
    first, rest = places[0], places[1:]
    for strips in partitions(rest):
        yield [[first], *strips]
        for number, strip in enumerate(strips):
            yield [*strips[:number], [first, *strip], *strips[number + 1 :]]


def length_by_trying_everything(items: Sequence[CutItem], width: Fraction) -> int:
    """Every turning of every piece, every way to deal the pieces out to strips; the shortest that fits."""
    single = [item for item in items for _ in range(item.quantity)]
    best = sum(max(way[1] for way in ways_to_lie(item, width)) for item in single)
    for lying in product(*(ways_to_lie(item, width) for item in single)):
        for strips in partitions(range(len(single))):
            if all(sum(lying[place][0] for place in strip) <= width for strip in strips):
                best = min(best, sum(max(lying[place][1] for place in strip) for strip in strips))
    return best


def length_by_solver(items: Sequence[CutItem], width: Fraction) -> int:
    """The shortest strips as a whole-number programme.

    A piece lying in some way either opens a strip of its own height or lies in the strip that another piece, not lower,
    has opened. Every piece lies once; a strip holds no more than the width.
    """
    lying = [
        (piece, across, along)
        for piece, item in enumerate(item for item in items for _ in range(item.quantity))
        for across, along in ways_to_lie(item, width)
    ]
    lying.sort(key=lambda entry: -entry[2])
    count = len(lying)
    inside = [
        (opener, other)
        for opener in range(count)
        for other in range(opener + 1, count)
        if lying[opener][0] != lying[other][0] and lying[opener][1] + lying[other][1] <= width
    ]
    pieces = 1 + max(piece for piece, _, _ in lying)
    once, room = lil_array((pieces, count + len(inside))), lil_array((count, count + len(inside)))
    for place, (piece, across, _) in enumerate(lying):
        once[piece, place] = 1
        room[place, place] = across - int(width)
    for column, (opener, other) in enumerate(inside, count):
        once[lying[other][0], column] = 1
        room[opener, column] = lying[other][1]
    heights = np.array([along for _, _, along in lying] + [0] * len(inside))
    solved = milp(
        heights,
        integrality=np.ones(len(heights)),
        bounds=(0, 1),
        constraints=[LinearConstraint(once.tocsr(), 1, 1), LinearConstraint(room.tocsr(), -np.inf, 0)],
    )
    assert solved.success, solved.message
    return round(solved.fun)

"""Facings cut to shape: their seams come in, what must be done before them goes out."""

from __future__ import annotations

from collections.abc import Iterable

from generator.calculation.making_up.items import Item, free_edge, sewn_items
from generator.calculation.making_up.seams import FLAT_SEAMS, facings_of
from generator.calculation.making_up.thing import Component, Edge, Seam, Thing


def before_facing(seam: Seam | None, thing: Thing) -> Iterable[Item]:
    """Return what comes before facings are sewn on: their free edges, their joins, and the seams that these lie on."""
    for name in facings_of(seam, thing) if seam is not None else ():
        yield from free_edge(thing.parts[name])
        yield from joined_ends(thing.parts[name], thing)
        for side in _joined_sides(name, thing):
            for piece in seam.pieces if seam is not None else ():
                yield from _flat_at((piece, side), thing)


def joined_ends(part: Component | None, thing: Thing) -> Iterable[Item]:
    """Return the seams by which the ends of a facing are joined to others; none where they lie free."""
    if part is not None:
        for side in _joined_sides(part.name, thing):
            yield from _flat_at((part.name, side), thing)


def _joined_sides(name: str, thing: Thing) -> list[str]:
    edges = (edge for seam in thing.seams_of(name) if seam.sort in FLAT_SEAMS for edge in sorted(seam.edges))
    return [side for piece, side in edges if piece == name]


def _flat_at(edge: Edge, thing: Thing) -> Iterable[Item]:
    for seam in thing.seams:
        if seam.sort in FLAT_SEAMS:
            yield from (item for pair, item in zip(seam.pairs, sewn_items(seam), strict=True) if edge in pair)

"""What is tried in its place while it can still be altered: a thing comes in, what lies before and after goes out.

A panel that closes round a lampshade is tried on before its free edges are bound or hemmed; a curtain hangs from its
casing before its lower hem is sewn, for cloth drops by its own weight (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Container, Iterable
from dataclasses import dataclass

from generator.calculation.making_up.items import HEMS, Item, sewn_items
from generator.calculation.making_up.laid import opposite
from generator.calculation.making_up.thing import SIDES, Component, Thing

TRIED = "tried"


@dataclass(frozen=True, slots=True)
class Trial:
    """A piece that is tried in its place, after some items are given and before others are."""

    piece: str
    after: tuple[Item, ...]
    before: tuple[Item, ...]

    @property
    def item(self) -> Item:
        """That it has been tried."""
        return Item(TRIED, self.piece)


def trials_of(thing: Thing, cased: Container[Item]) -> tuple[Trial, ...]:
    """Return what is tried in its place; ``cased`` are the hems that a rod runs through."""
    found: list[Trial] = []
    for part in thing.parts.values():
        if "on a frame" in thing.facts:
            found += _on_its_shade(part, thing)
        elif "hung" in thing.facts:
            found += _from_its_rod(part, cased)
    return tuple(trial for trial in found if trial.before)


def _on_its_shade(part: Component, thing: Thing) -> Iterable[Trial]:
    rings = [seam for seam in thing.seams_of(part.name) if seam.sort == "ring of a panel"]
    for ring in rings:
        free = [side for side in SIDES if (part.name, side) not in ring.edges]
        bound = [
            item
            for seam in thing.seams_of(part.name)
            if seam.sort == "binding"
            for pair, item in zip(seam.pairs, sewn_items(seam), strict=True)
            if {(part.name, side) for side in free} & set(pair)
        ]
        yield Trial(part.name, sewn_items(ring), (*bound, *(_hem(part, side) for side in free if _hemmed(part, side))))


def _from_its_rod(part: Component, cased: Container[Item]) -> Iterable[Trial]:
    for side in part.ends:
        if side in SIDES and _hem(part, side) in cased and _hemmed(part, opposite(side)):
            yield Trial(part.name, (_hem(part, side),), (_hem(part, opposite(side)),))


def _hem(part: Component, side: str) -> Item:
    return Item("hemmed", f"{part.name}.{side}")


def _hemmed(part: Component, side: str) -> bool:
    return part.ends.get(side) in HEMS and part.ends[side] not in ("caught hem", "casing")

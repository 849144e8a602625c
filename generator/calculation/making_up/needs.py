"""What a state needs before it: an item of a thing comes in, the items that must have been given go out.

States of a piece need every earlier one that is due to it. What else is needed has a name, and one function here.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from types import MappingProxyType

from generator.calculation.making_up.acts import Act
from generator.calculation.making_up.book import Book
from generator.calculation.making_up.facings import before_facing, joined_ends
from generator.calculation.making_up.items import (
    HEMS,
    RODS_IN,
    WORK,
    Item,
    earlier_items,
    edge_items,
    edge_ready,
    is_filled,
    is_strip,
    piece_items,
    placed_item,
    ready_items,
    rod_hems,
    seam_item,
    sewn_items,
)
from generator.calculation.making_up.laid import opposite
from generator.calculation.making_up.seams import FLAT_SEAMS, closes, encloses, is_ring, lining_of, turned_by, zip_of
from generator.calculation.making_up.thing import NEIGHBOURS, SIDES, Component, Edge, Seam
from generator.calculation.making_up.trials import TRIED

_CATCHING = frozenset({"box", "three sides", "shaped facing", "facing", "tops", "lining", "laid", "all round"})


class Needs:
    """What items need, in a recipe whose acts are known: what one of them bastes on, a later seam catches."""

    def __init__(self, book: Book, acts: Sequence[Act] = ()) -> None:
        self.book, self.thing = book, book.thing
        self._basted = [act for act in acts if act.does in ("baste", "lay") and act.onto]
        on_face = (act for act in acts if act.does == "sew" and act.word == "on")
        self._on_face = frozenset(item for act in on_face for item in book.gives(act) if item.state == "sewn")

    @property
    def laid(self) -> frozenset[str]:
        """The panels that an act lays on something, such as blocks on their wadding: it shuts their seams in."""
        laid = (piece for act in self._basted if act.does == "lay" for piece, _ in act.what)
        return frozenset(piece for piece in laid if self.thing.parts[piece].is_panel)

    def of_act(self, act: Act) -> tuple[Item, ...]:
        """Return everything that an act needs and does not give itself, each once, in order."""
        gives = self.book.gives(act)
        method = self.book.methods.get(act.does)
        named = method.needs if method is not None else _ACT_NEEDS.get(act.does, ())
        found = [need for item in gives for need in self._natural(item)]
        found += [need for item in gives for name in named for need in self._named(name, item)]
        found += [trial.item for trial in map(self.book.trial, gives) if trial is not None]
        if any(item.state in ("attached", "set") for item in gives):
            found += [item for piece in act.pieces for item in ready_items(self.thing.parts[piece], self.thing)]
            found += [item for piece, _ in act.what for item in edge_items(self.thing.parts[piece])]
        # Whoever looks at what an act did, needs what it gave.
        if act.does == "look" and act.word:
            found += self.book.gives(Act(act.word, act.what))
        return tuple(item for item in dict.fromkeys(found) if item not in gives)

    def _named(self, name: str, item: Item) -> Iterable[Item]:
        return _NEEDS[name](self, item) if name in _NEEDS else (Item(name, item.on),)

    def _natural(self, item: Item) -> Iterable[Item]:
        part = self.part_of(item)
        if part is None:
            return ()
        earlier = piece_items(part)
        if item.state == RODS_IN or item in (*earlier, *rod_hems(part)):
            return earlier_items(part, item)
        if item.state in ("attached", "one first"):
            return ()
        if item.state == TRIED:
            return (*earlier, *(one for trial in self.book.trials if trial.item == item for one in trial.after))
        if item.state != "hemmed":
            return earlier
        before = (*ready_items(part, self.thing), *_side_seams(self, item), *self._beside_rod(part, item))
        return () if part.ends.get(item.edge) == "caught hem" else before

    def _beside_rod(self, part: Component, item: Item) -> Iterable[Item]:
        """The hems at both ends of a casing, which lies over them, and of the hem across from it."""
        if any(
            item in (*trial.after, *trial.before) and trial.after[0].state == "hemmed" for trial in self.book.trials
        ):
            beside = (side for side in SIDES if side not in (item.edge, opposite(item.edge)))
            yield from (Item("hemmed", f"{part.name}.{side}") for side in beside if part.ends.get(side) in HEMS)

    def part_of(self, item: Item) -> Component | None:
        """Return the piece that an item is about, None where it is about a seam, a closing or the work."""
        if item.on in self.thing.parts:
            return self.thing.parts[item.on]
        return self.thing.parts.get(item.on.rpartition(".")[0])

    def seam_of(self, item: Item) -> Seam | None:
        """Return the seam that an item is about, or None."""
        if not item.on.startswith("#"):
            return None
        number = int(item.on.removeprefix("#").partition(".")[0])
        return next(seam for seam in self.thing.seams if seam.number == number)

    def edges_of(self, item: Item) -> tuple[Edge, ...]:
        """Return the edges that an item is about: those of a pair, of a whole seam, of an edge."""
        seam = self.seam_of(item)
        if seam is not None:
            place = item.on.partition(".")[2]
            return seam.pairs[int(place)] if place else tuple(edge for pair in seam.pairs for edge in pair)
        part = self.part_of(item)
        return ((part.name, item.edge),) if part is not None and part.name != item.on else ()

    def seams_at(self, edge: Edge) -> Iterable[tuple[Seam, Item]]:
        """Return the pairs that lie at an edge, each with its seam."""
        for seam in self.thing.seams:
            for pair, item in zip(seam.pairs, sewn_items(seam), strict=True):
                if edge in pair:
                    yield seam, item

    def sewn_in(self, seam: Seam) -> tuple[Item, ...]:
        """Return the pairs of a seam that are sewn from inside; what is sewn on its face comes when it is turned."""
        pairs = tuple(item for item in sewn_items(seam) if item not in self._on_face)
        return pairs or sewn_items(seam)

    def basted_at(self, edge: Edge) -> Iterable[Item]:
        """Return what an act of the recipe lays or bastes on an edge."""
        for act in self._basted:
            if any(piece == edge[0] and side in ("", "all", edge[1]) for piece, side in act.onto):
                yield from (placed_item(self.thing.parts[piece]) for piece, _ in act.what)
        yield from (Item("attached", one.strips) for one in self.thing.closings if one.strips and edge in one.on)


def _its_panels(needs: Needs, item: Item) -> Iterable[Item]:
    part = needs.part_of(item)
    for panel in part.waits_for if part is not None else ():
        yield from piece_items(needs.thing.parts[panel])


def _its_piece(needs: Needs, item: Item) -> Iterable[Item]:
    """What a copy is fixed to, a pocket sewn on or a grid joined of, finished by itself: tucked, turned, shaped."""
    part = needs.part_of(item)
    below = part is not None and needs.thing.parts.get(part.lies_on or part.sewn_on or part.blocks)
    return piece_items(below) if below else edge_ready(part, needs.thing) if part is not None else ()


def _its_tabs(needs: Needs, item: Item) -> Iterable[Item]:
    # Piping at the edges of a zip lies in the same seam, and the zip is sewn along it.
    closing = needs.thing.closing_at(item.on)
    for edge in (*closing.on, *closing.onto) if closing is not None else ():
        yield from (sewn for seam, sewn in needs.seams_at(edge) if seam.sort == "piping")
    yield from piece_items(needs.thing.parts[closing.tabs]) if closing is not None and closing.tabs else ()


def _ready(needs: Needs, item: Item) -> Iterable[Item]:
    edges = needs.edges_of(item)
    for piece in dict.fromkeys(piece for piece, _ in edges):
        yield from ready_items(needs.thing.parts[piece], needs.thing)
        yield from (Item("attached", name) for name in needs.thing.sewn_on(piece))
    for part, side in ((needs.thing.parts[piece], side) for piece, side in edges):
        if (is_strip(part) and side in ("top", "edge")) or side in part.drawn:
            drawn = (one for one in edge_items(part) if one.state in ("gathered", "pleated"))
            yield from (one for one in drawn if is_strip(part) or one.edge == side)


def _ends(needs: Needs, item: Item) -> Iterable[Item]:
    """The finish at the ends of an edge, which it covers; a buttonhole needs the finish of its own edge."""
    closing = needs.thing.closing_at(item.on)
    if closing is not None:
        for piece, side in closing.on:
            part = needs.thing.parts[piece]
            yield from (one for one in edge_items(part) if one.on == f"{piece}.{side}")
            yield from (sewn for seam, sewn in needs.seams_at((piece, side)) if seam.sort != "binding")
        return
    own = needs.seam_of(item)
    for piece, side in needs.edges_of(item) if own is None or not closes(own) else ():
        part = needs.thing.parts[piece]
        side = "top" if side == "edge" and is_strip(part) else side
        for beside in NEIGHBOURS.get(side, ()):
            if part.ends.get(beside) in HEMS:
                yield Item("hemmed", f"{piece}.{beside}")
            yield from (sewn for seam, sewn in needs.seams_at((piece, beside)) if is_ring(seam))


def _its_edge(needs: Needs, item: Item) -> Iterable[Item]:
    """What a strip is gathered to, finished by itself: its edge is divided and pinned to the gathers."""
    others = (piece for edge in needs.edges_of(item) for seam, _ in needs.seams_at(edge) for piece in seam.pieces)
    return [state for piece in others for state in piece_items(needs.thing.parts[piece])]


def _side_seams(needs: Needs, item: Item) -> Iterable[Item]:
    """The seams at the ends of a hem: a skirt is closed before it is hemmed below, on whichever side it lies."""
    for piece, side in needs.edges_of(item):
        for beside in NEIGHBOURS.get(side, ()):
            yield from (sewn for seam, sewn in needs.seams_at((piece, beside)) if seam.sort in FLAT_SEAMS)
        for beside in () if side in NEIGHBOURS else NEIGHBOURS:
            yield from (sewn for seam, sewn in needs.seams_at((piece, beside)) if closes(seam))


def _caught(needs: Needs, item: Item) -> Iterable[Item]:
    """What the seam catches: strips, piping, a lining laid flat, what is basted on, what must be set before."""
    own = needs.seam_of(item)
    if own is None:
        return
    for edge in needs.edges_of(item):
        if not _hangs(needs, own) and not is_strip(needs.thing.parts[edge[0]]):
            yield from (
                sewn for seam, sewn in needs.seams_at(edge) if seam.number != own.number and _hangs(needs, seam)
            )
        yield from needs.basted_at(edge)
    if own.sort in _CATCHING or zip_of(own, needs.thing) is not None:
        for closing in needs.thing.closings:
            if "set flat" in closing.facts and set(closing.pieces) & set(own.pieces):
                yield Item("set", f"@{closing.number}")


def _hangs(needs: Needs, seam: Seam) -> bool:
    """Whether a seam sews on what a later one catches: a strip, piping, or a lining laid flat."""
    return seam.sort in ("piping", "laid") or any(is_strip(needs.thing.parts[piece]) for piece in seam.pieces)


def _laid(needs: Needs, item: Item) -> Iterable[Item]:
    own = needs.seam_of(item)
    bound = set(own.pieces) if own is not None and own.sort == "binding" else set()
    laid = (seam for seam in needs.thing.seams if seam.sort == "laid" and bound & set(seam.pieces))
    return [sewn for seam in laid for sewn in sewn_items(seam)]


def _outside(needs: Needs, item: Item) -> Iterable[Item]:
    """The seams between the pieces that are lined."""
    own = needs.seam_of(item)
    if own is None or own.sort not in ("tops", "lining"):
        return
    lined = set(own.pieces) - {lining_of(own, needs.thing)}
    for seam in (one for one in needs.thing.seams if one.sort in FLAT_SEAMS | {"box", "three sides", "all round"}):
        yield from sewn_items(seam) if set(seam.pieces) <= lined else ()


def _whole(needs: Needs, item: Item) -> Iterable[Item]:
    """The seams of a panel that is laid on something: blocks are sewn together before they are laid on wadding."""
    part = needs.part_of(item)
    seams = needs.thing.seams_of(part.name) if part is not None and part.is_panel else ()
    return [sewn for seam in seams if seam.sort in FLAT_SEAMS for sewn in sewn_items(seam)]


def _all(needs: Needs, item: Item) -> Iterable[Item]:
    for seam in needs.thing.seams:
        yield from sewn_items(seam)
    yield from (seam_item("turned out", seam) for seam in needs.thing.seams if encloses(seam, needs.thing))


def _filled(needs: Needs, item: Item) -> Iterable[Item]:
    """The filling, where the thing is filled, and that the seam is the right side out."""
    yield from (Item("filled", WORK),) if is_filled(needs.thing) else ()
    seam = needs.seam_of(item)
    if seam is not None and encloses(seam, needs.thing):
        yield seam_item("turned out", seam)


def _its_seam(needs: Needs, item: Item) -> Iterable[Item]:
    seam = needs.seam_of(item)
    together = turned_by(seam, needs.thing) if seam is not None and item.state == "turned out" else ()
    return [sewn for one in together or filter(None, [seam]) for sewn in needs.sewn_in(one)]


_NEEDS: Mapping[str, Callable[[Needs, Item], Iterable[Item]]] = MappingProxyType(
    {
        "its panels": _its_panels,
        "its piece": _its_piece,
        "its tabs": _its_tabs,
        "ready": _ready,
        "ends": _ends,
        "its edge": _its_edge,
        "its facing": lambda needs, item: before_facing(needs.seam_of(item), needs.thing),
        "joined ends": lambda needs, item: joined_ends(needs.part_of(item), needs.thing),
        "caught": _caught,
        "laid": _laid,
        "outside": _outside,
        "whole": _whole,
        "all": _all,
        "filled": _filled,
        "its seam": _its_seam,
    }
)
_SEWING = ("ready", "ends", "caught", "laid", "outside")
_ACT_NEEDS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "sew": _SEWING,
        "lay": ("whole", "its piece"),
        "leave open": ("its seam",),
        "turn out": ("its seam",),
        "close": ("open", "filled"),
        "put in": ("all",),
    }
)

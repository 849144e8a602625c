"""What an act of a step of one's own gives: a thing and an act come in, the items that it gives go out.

A new verb is one function and one line in ``_ACTS``.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from types import MappingProxyType

from generator.calculation.making_up.acts import ANY, Act
from generator.calculation.making_up.items import (
    WORK,
    Item,
    edge_items,
    free_edge,
    pair_item,
    placed_item,
    seam_item,
    sewn_items,
)
from generator.calculation.making_up.seams import SHUT_IN, encloses
from generator.calculation.making_up.thing import Closing, Edge, Seam, Thing


def given_by(thing: Thing, act: Act) -> tuple[Item, ...]:
    """Return what an act gives that is no technique: seams sewn, pieces laid on, openings, fillings."""
    return tuple(dict.fromkeys(_ACTS[act.does](thing, act))) if act.does in _ACTS else ()


def _matches(edge: Edge, written: Sequence[Edge]) -> bool:
    return any(piece == edge[0] and side in (ANY, "all", edge[1]) for piece, side in written)


def _sewn(thing: Thing, act: Act) -> Iterable[Item]:
    """The pairs of edges that an act names; where the file has none, what it names is sewn on by itself."""
    found = False
    for seam in thing.seams:
        hits = []
        for place, (one, other) in enumerate(seam.pairs):
            there = _matches(one, act.what) and _matches(other, act.onto)
            back = _matches(other, act.what) and _matches(one, act.onto)
            if there or back:
                hits.append(pair_item(seam, place))
        if hits:
            found = True
            yield from hits
            if seam.sort in SHUT_IN:
                yield seam_item("out of reach", seam)
    if not found or act.word == "on":
        yield from (Item("attached", piece) for piece, _ in act.what)
    if not found:
        yield from (Item("attached", piece) for piece, _ in act.onto)


def _attached(thing: Thing, act: Act) -> Iterable[Item]:
    for seam in thing.seams:
        if seam.sort == "laid" and any(_matches(edge, act.what) for edge in seam.edges):
            yield from (*sewn_items(seam), seam_item("out of reach", seam))
    yield from (placed_item(thing.parts[piece]) for piece, _ in act.what)


def _seams_at(thing: Thing, act: Act) -> Iterable[Seam]:
    return (seam for seam in thing.seams if any(_matches(edge, act.what) for edge in seam.edges))


def _turned_out(thing: Thing, act: Act) -> Iterable[Item]:
    """Everything that hangs together with the piece is turned out with it."""
    reached = {piece for piece, _ in act.what}
    for _ in thing.seams:
        for seam in thing.seams:
            if reached & set(seam.pieces):
                reached |= set(seam.pieces)
    return (
        seam_item("turned out", seam) for seam in thing.seams if reached & set(seam.pieces) and encloses(seam, thing)
    )


def _states(state: str) -> Callable[[Thing, Act], Iterable[Item]]:
    """Give a state to the seams at the edges named; where the file has no seam there, to the pieces themselves."""

    def given(thing: Thing, act: Act) -> Iterable[Item]:
        seams = [seam_item(state, seam) for seam in _seams_at(thing, act)]
        return seams or [Item(state, piece) for piece, _ in act.what]

    return given


def _set(thing: Thing, act: Act) -> Iterable[Item]:
    return (Item("set", f"@{one.number}") for one in thing.closings if _is_named(one, act.word))


def _is_named(closing: Closing, word: str) -> bool:
    return closing.kind.rstrip("s") == word.rstrip("s")


def _edged(thing: Thing, act: Act) -> Iterable[Item]:
    edges = (item for piece in act.pieces for item in free_edge(thing.parts[piece]))
    return (item for item in edges if _matches((item.on.partition(".")[0], item.edge), act.what))


def _fastened(thing: Thing, act: Act) -> Iterable[Item]:
    return (
        item
        for piece in act.pieces
        for item in edge_items(thing.parts[piece])
        if item.state == "fastened" and _matches((piece, item.edge), act.what)
    )


_ACTS: Mapping[str, Callable[[Thing, Act], Iterable[Item]]] = MappingProxyType(
    {
        "sew": _sewn,
        "lay": _attached,
        "baste": _attached,
        "leave open": lambda thing, act: _states("left open" if act.for_good else "open")(thing, act),
        "turn out": _turned_out,
        "close": _states("closed"),
        "put in": lambda _thing, _act: (Item("filled", WORK),),
        "neaten": lambda thing, act: (*_states("neat")(thing, act), *_edged(thing, act)),
        "set": _set,
        "fasten": _fastened,
        "look": lambda _thing, _act: (),
        "one first": lambda _thing, act: (Item("one first", piece) for piece in act.pieces),
    }
)

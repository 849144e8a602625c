"""What is due to a thing: a thing comes in, every state that it must be given goes out, in the order of the work."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from generator.calculation.making_up.seams import SHUT_IN, encloses
from generator.calculation.making_up.thing import Component, Seam, Thing

HEMS = frozenset({"hem", "caught hem", "rolled hem", "casing"})
TRIMMED = frozenset({"stitched and trimmed", "sealed and trimmed"})
_MEASURED = frozenset({"seam", "hem", "bound", "faced"})
# Sorts of seam whose raw edges are not shut in by the seam itself.
RAW = frozenset({"plain", "ring", "ring of a panel", "three sides"})
WORK = "*"
RODS_IN = "rods in"
_BEFORE_ROD_HEMS = ("cut", "joined", "lengthened")


@dataclass(frozen=True, slots=True)
class Item:
    """A state of one thing.

    ``on`` is a piece ('front'), an edge ('front.top'), a seam ('#2') or one of its pairs ('#2.1'), a closing ('@0') or
    the work as a whole ('*').
    """

    state: str
    on: str

    @property
    def edge(self) -> str:
        """The name of the edge that it is about, where it is about one."""
        return self.on.rpartition(".")[2]


@dataclass(frozen=True, slots=True)
class Due:
    """An item that must be given, and the pieces that it is about."""

    item: Item
    pieces: tuple[str, ...]


def pair_item(seam: Seam, place: int) -> Item:
    """Return the item of one pair of a seam, counted from 0."""
    return Item("sewn", f"#{seam.number}.{place}")


def sewn_items(seam: Seam) -> tuple[Item, ...]:
    """Return that every pair of a seam is sewn."""
    return tuple(pair_item(seam, place) for place in range(len(seam.pairs)))


def seam_item(state: str, seam: Seam) -> Item:
    """Return a state of a whole seam, such as that it is turned out."""
    return Item(state, f"#{seam.number}")


def _fact(name: str) -> Callable[[Component], bool]:
    return lambda part: name in part.facts


def _trimmed(part: Component) -> bool:
    held = any(part.ends.get(side) in _MEASURED for side in ("top", "bottom"))
    return "rows" in part.facts and "outline" not in part.facts and held


# Which piece a state is due to, in the order of the work.
PIECE_STATES: Mapping[str, Callable[[Component], bool]] = MappingProxyType(
    {
        "cut": lambda part: "bought ready" not in part.facts,
        "joined": _fact("breadths"),
        "lengthened": lambda part: bool({"lengths", "bias"} & part.facts),
        "marked": _fact("tucks"),
        "creased": _fact("tucks"),
        "tucked": _fact("tucks"),
        "pressed": _fact("pressed"),
        "cross marked": _fact("cross tucks"),
        "cross creased": _fact("cross tucks"),
        "cross tucked": _fact("cross tucks"),
        "measured": _fact("sample"),
        "ruled": _fact("rows"),
        "turned": _fact("rows"),
        "trimmed": _trimmed,
        "shaped": _fact("outline"),
        "released": _fact("released"),
        "embroidered": _fact("embroidered"),
        "made": _fact("made"),
        "laid out": _fact("of blocks"),
        "put together": _fact("of blocks"),
        "fixed": lambda part: bool(part.lies_on),
    }
)


def piece_items(part: Component) -> tuple[Item, ...]:
    """Return the states of a piece itself that are due to it, in their order."""
    return tuple(Item(state, part.name) for state, is_due in PIECE_STATES.items() if is_due(part))


def ready_items(part: Component, thing: Thing) -> tuple[Item, ...]:
    """Return what is due to a piece before it is hemmed or sewn to others: its own states, and what lies on it."""
    return (*piece_items(part), *(placed_item(copy) for copy in thing.copies_on(part.name)))


def placed_item(part: Component) -> Item:
    """Return that a piece is in its place on another: a copy is laid there, anything else sewn or basted on."""
    return Item("fixed" if part.lies_on else "attached", part.name)


def edge_ready(part: Component, thing: Thing) -> tuple[Item, ...]:
    """Return what is due to an edge before ties or loops are sewn to it: the states of its piece, and its hem."""
    edges = [edge for closing in thing.closings if closing.strips == part.name for edge in closing.on]
    own = [item for piece, _ in edges for item in piece_items(thing.parts[piece])]
    hems = (Item("hemmed", f"{piece}.{side}") for piece, side in edges if thing.parts[piece].ends.get(side) in HEMS)
    return (*dict.fromkeys(own), *hems)


def rod_hems(part: Component) -> tuple[Item, ...]:
    """Return the hems that are made before the tucks of a blind are marked: rods slide in at both ends of its tucks."""
    sides = (side for side in ("top", "bottom") if "rods" in part.facts and part.ends.get(side) in HEMS)
    return tuple(Item("hemmed", f"{part.name}.{side}") for side in sides)


def earlier_items(part: Component, item: Item) -> tuple[Item, ...]:
    """Return what comes before a state of a piece itself, before its rods, or a hem that they slide past."""
    own, hems = piece_items(part), rod_hems(part)
    if item.state == RODS_IN:
        return (*own, *edge_items(part))
    if item in hems:
        return tuple(one for one in own if one.state in _BEFORE_ROD_HEMS)
    before = own[: own.index(item)]
    return before if item.state in _BEFORE_ROD_HEMS else (*before, *hems)


def edge_items(part: Component) -> tuple[Item, ...]:
    """Return the states of a piece's edges that are due: hems first, then gathers and pleats, then what is fastened."""
    hems = [Item("hemmed", f"{part.name}.{side}") for side, end in part.ends.items() if end in HEMS]
    tops = [Item(drawn, f"{part.name}.top") for drawn in ("gathered", "pleated") if drawn in part.facts]
    tops += [Item(drawn, f"{part.name}.{side}") for side, drawn in part.drawn.items()]
    middle = [Item("gathered", f"{part.name}.middle")] if "drawn together" in part.facts else []
    board = [Item("fastened", f"{part.name}.{side}") for side, end in part.ends.items() if end == "turnover"]
    return (*hems, *free_edge(part), *trimmed_edges(part), *tops, *middle, *board)


def trimmed_edges(part: Component) -> tuple[Item, ...]:
    """Return that edges are trimmed which are stitched or sealed at the finished line."""
    sides = (side for side, end in part.ends.items() if end in TRIMMED)
    return tuple(Item("edge trimmed", f"{part.name}.{side}") for side in sides)


def free_edge(part: Component) -> tuple[Item, ...]:
    """Return that the free edge of a facing is neatened, where it stays raw and its cloth frays."""
    frays = (
        "along an edge" in part.facts
        and part.ends.get("free") == "raw"
        and part.frays
        and part.neat_way("free") != "none"
    )
    return (Item("edged", f"{part.name}.free"),) if frays else ()


def _is_loose(part: Component, thing: Thing) -> bool:
    """Whether nothing in the file says what a piece is sewn to, and it is no thing by itself."""
    if (
        part.lies_on
        or any(other.blocks == part.name for other in thing.parts.values())
        or {"closes", "bought ready"} & part.facts
        or thing.seams_of(part.name)
        or len(thing.parts) == 1
    ):
        return False
    if part.is_panel and not thing.seams:
        return False
    return not part.ends or not all(end in HEMS | TRIMMED or end == "turnover" for end in part.ends.values())


def all_due(thing: Thing, tried: Iterable[Item] = ()) -> tuple[Due, ...]:
    """Return everything that is due to a thing, in the order of the work: panels, other pieces, seams, the rest.

    ``tried`` is what is tried in its place.
    """
    parts = sorted(thing.parts.values(), key=lambda part: ("later" in part.facts, not part.is_panel))
    due = [Due(item, (part.name,)) for part in parts for item in (*piece_items(part), *edge_items(part))]
    due += [Due(item, (item.on,)) for item in tried]
    rodded = [part.name for part in parts if "rods" in part.facts]
    due += [Due(Item("attached", part.name), (part.name,)) for part in parts if _is_loose(part, thing)]
    for closing in thing.closings:
        if "set flat" in closing.facts:
            due.append(Due(Item("set", f"@{closing.number}"), closing.pieces))
    for seam in thing.seams:
        due += [
            Due(item, tuple(dict.fromkeys(piece for piece, _ in seam.pairs[place])))
            for place, item in enumerate(sewn_items(seam))
        ]
        if encloses(seam, thing):
            due.append(Due(seam_item("turned out", seam), seam.pieces))
    for closing in thing.closings:
        if "holed" in closing.facts:
            due += [Due(Item(state, f"@{closing.number}"), closing.pieces) for state in ("holed", "set")]
        if "runs in a hem" in closing.facts:
            due.append(Due(Item("set", f"@{closing.number}"), closing.pieces))
    due += [Due(Item(RODS_IN, name), (name,)) for name in rodded]
    everything = tuple(thing.parts)
    due += [Due(Item("filled", WORK), everything)] if is_filled(thing) else []
    due += [Due(Item("fitted", WORK), everything)] if "on a frame" in thing.facts else []
    return tuple(due)


def is_filled(thing: Thing) -> bool:
    """Return whether the thing is filled: a cushion, a bolster, a sample that is sewn to more than a binding."""
    return "filled" in thing.facts and any(seam.sort != "binding" for seam in thing.seams)


def raw_seams(thing: Thing, laid: Iterable[str] = ()) -> tuple[Seam, ...]:
    """Return the seams whose raw edges stay open to sight and wear: inside no lining, facing, binding or closed box.

    Only of cloth that frays, and none between a piece and its like of another cloth, which lines it; nor of pieces that
    are ``laid`` on others.
    """
    shut = set(laid) | {
        piece for seam in thing.seams if seam.sort in SHUT_IN or seam.sort == "box" for piece in seam.pieces
    }
    return tuple(
        seam
        for seam in thing.seams
        if seam.sort in RAW
        and not shut & set(seam.pieces)
        and not _lines(seam, thing)
        and any(
            thing.parts[piece].frays and thing.parts[piece].neat_way(side) != "none"
            for pair in seam.pairs
            for piece, side in pair
        )
    )


def _lines(seam: Seam, thing: Thing) -> bool:
    """Whether two flat pieces of unlike cloth lie on each other, edge on like-named edge."""
    parts = [thing.parts[name] for name in seam.pieces]
    flat = all({"panel", "plain"} & part.facts for part in parts)
    return flat and len({part.cloth for part in parts}) > 1 and all(one[1] == other[1] for one, other in seam.pairs)


def is_strip(part: Component) -> bool:
    """Return whether a piece hangs at the seam that it is sewn in, so that a later seam catches it."""
    return "hangs" in part.facts

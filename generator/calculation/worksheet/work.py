"""What a step is done to, as its time is counted: its acts come in, stretches of seam, hem and opening go out [in]."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.making_up.acts import Act
from generator.calculation.making_up.book import Book
from generator.calculation.making_up.items import Item, sewn_items
from generator.calculation.making_up.seams import lining_of
from generator.calculation.making_up.thing import SIDES, Edge, Seam
from generator.calculation.worked_piece import Piece
from generator.calculation.worksheet.step_context import StepContext

_NOTHING = Fraction(0)


@dataclass(frozen=True, slots=True)
class SewnStretch:
    """Something sewn in one go: how long it is [in], the corners that it turns, and how many times it is sewn."""

    length: Fraction
    corners: int = 0
    times: int = 1


@dataclass(frozen=True, slots=True)
class Work:
    """What a step is done to: pieces, and the seams, hems and openings that it sews, one stretch each.

    ``neatened`` are seams and edges that it neatens, ``turned`` counts what it turns right side out.
    """

    pieces: tuple[Piece, ...] = ()
    seams: tuple[SewnStretch, ...] = ()
    hems: tuple[SewnStretch, ...] = ()
    neatened: tuple[SewnStretch, ...] = ()
    openings: tuple[SewnStretch, ...] = ()
    turned: int = 0


def work_of(context: StepContext, acts: Sequence[Act], names: Sequence[str]) -> Work:
    """Return what acts are done to, with the pieces of their step."""
    pieces = tuple(context.pieces[name] for name in names)
    if context.joiner is None:
        return Work(pieces)
    book = context.joiner.book
    items = tuple(dict.fromkeys(item for act in acts for item in book.gives(act)))
    on = {state: {item.on for item in items if item.state == state} for state in ("neat", "turned out", "closed")}
    return Work(
        pieces,
        tuple(_seams(context.pieces, book, items)),
        tuple(_hems(context.pieces, items)),
        (
            *(stretch_of(one, one.pairs, context.pieces) for one in book.thing.seams if f"#{one.number}" in on["neat"]),
            *(edge_stretch(context.pieces, item) for item in items if item.state in ("edged", "edge trimmed")),
        ),
        tuple(SewnStretch(_opening(context, place)) for place in _opened_once(book, sorted(on["closed"]))),
        min(len(on["turned out"]), 1),
    )


def _seams(pieces: Mapping[str, Piece], book: Book, items: Sequence[Item]) -> Iterable[SewnStretch]:
    for seam in book.thing.seams:
        pairs = [pair for pair, item in zip(seam.pairs, sewn_items(seam), strict=True) if item in items]
        if pairs:
            yield stretch_of(seam, pairs, pieces)


def stretch_of(seam: Seam, pairs: Sequence[tuple[Edge, Edge]], pieces: Mapping[str, Piece]) -> SewnStretch:
    """Return a seam as long as its pairs together; it turns a corner from side to side of one piece."""
    length = sum((min(_length(one, pieces), _length(other, pieces)) for one, other in pairs), _NOTHING)
    round_one = len({one[0] for one, _ in pairs}) == 1 and len(pairs) > 1
    corners = 0 if not round_one else len(pairs) if len(pairs) == len(SIDES) else len(pairs) - 1
    return SewnStretch(length, corners, _times(seam, pieces))


def _length(edge: Edge, pieces: Mapping[str, Piece]) -> Fraction:
    edges = pieces[edge[0]].edges
    return edges[edge[1]].finished if edge[1] in edges else _NOTHING


def _times(seam: Seam, pieces: Mapping[str, Piece]) -> int:
    """How many times a seam is sewn: two halves of a skirt have two side seams, two fronts of a bag are joined once."""
    if len(seam.pieces) > 1:
        return min(pieces[name].quantity for name in seam.pieces)
    alike = all(one[1] == other[1] for one, other in seam.pairs)
    return max(1, pieces[seam.pieces[0]].quantity // (2 if alike else 1))


def _hems(pieces: Mapping[str, Piece], items: Sequence[Item]) -> Iterable[SewnStretch]:
    for item in items:
        name, _, side = item.on.partition(".")
        if item.state == "hemmed" and pieces[name].edges[side].end.kind != "caught hem":
            yield edge_stretch(pieces, item)


def edge_stretch(pieces: Mapping[str, Piece], item: Item) -> SewnStretch:
    """Return the edge that an item is about, once for every copy of its piece."""
    name, _, side = item.on.partition(".")
    return SewnStretch(pieces[name].edges[side].finished, times=pieces[name].quantity)


def _opened_once(book: Book, places: Sequence[str]) -> Iterable[str]:
    """Where openings are; of the two seams of a box one stays open."""
    boxes = [f"#{seam.number}" for seam in book.thing.seams if seam.sort == "box"]
    return (place for place in places if place not in boxes or place == next(one for one in places if one in boxes))


def _opening(context: StepContext, place: str) -> Fraction:
    """How long an opening is that is closed by hand: as an act says, a side of a box, or as work of its size wants."""
    assert context.joiner is not None
    book, usual = context.joiner.book, context.joiner.usual_opening
    said = (act.length for act in context.acts if act.length and Item("open", place) in book.gives(act))
    length = next(said, None)
    if length is not None:
        return length
    seam = next((one for one in book.thing.seams if f"#{one.number}" == place), None)
    if seam is None:
        return usual(book.thing.parts[place])
    if seam.sort == "box":
        return min(_length(one, context.pieces) for one, _ in seam.pairs)
    return usual(book.thing.parts[lining_of(seam, book.thing) or seam.pieces[0]])

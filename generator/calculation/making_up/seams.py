"""Sorts of seam: edges that meet and the parts they belong to come in, each seam's sort and its pairs of edges go out.

Nobody writes the sort of a seam: it follows from the kinds of its pieces and the finishes of their edges. A new sort is
one function in ``_SORTS``.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import product

from generator.calculation.making_up.all_round import all_round, closing_seams, end_of, sides_round
from generator.calculation.making_up.thing import Closing, Component, Edge, Seam, Thing, pieces_of

ENCLOSING = frozenset({"box", "three sides", "lining", "tops", "all round"})
RINGS = frozenset({"ring", "ring of a panel"})
ENCLOSED = frozenset({"french", "felled"})
FLAT_SEAMS = RINGS | ENCLOSED | {"plain"}
_PAIR, _HALF, _NEARLY_ALL = 2, Fraction(1, 2), Fraction(4, 5)
SHUT_IN = frozenset({"laid", "facing", "tops", "lining"})
CLOSED = frozenset({"all round"})


Test = Callable[[Seam, Thing], bool]


def sorted_seams(thing: Thing) -> Thing:
    """Return the thing with the pairs and the sort of every seam."""
    paired = tuple(replace(seam, pairs=_pairs(seam, thing.parts)) for seam in thing.seams)
    whole = replace(thing, seams=paired)
    return replace(whole, seams=tuple(replace(seam, sort=_sort(seam, whole)) for seam in paired))


def encloses(seam: Seam, thing: Thing) -> bool:
    """Return whether a seam leaves the work wrong side out, so that it has to be turned.

    That of a box, a bag or a lining does, and two pieces sewn to each other all round; of several seams that make a bag
    or close two faces together, the last. What is sewn with a zip between is turned at once.
    """
    linings = [one for closing in thing.closings for one, _ in zip_linings(closing, thing)]
    if any(one.number == seam.number for one in linings) and len(seam.pairs) == 1:
        return False
    together = turned_by(seam, thing)
    if seam.sort in ENCLOSING - CLOSED or (seam.sort == "plain" and all_round(seam, thing)):
        return True
    return bool(together) and together[-1].number == seam.number


def turned_by(seam: Seam, thing: Thing) -> tuple[Seam, ...]:
    """Return the seams of which the work is turned when the last is sewn: those of a bag, or of what they close."""
    return _bag_seams(seam, thing) or closing_seams(seam, thing)


def _bag_seams(seam: Seam, thing: Thing) -> tuple[Seam, ...]:
    """Return the flat seams that join two faces at all edges but one; none where they make no bag.

    What has an outline may be sewn to its like, and is sewn round a curve; where it is lined, it is turned with that.
    """
    parts = [thing.parts[name] for name in seam.pieces]
    lined = any(one.sort in ("tops", "lining") for one in thing.seams_of(parts[0].name))
    copies = len(parts) == 1 and parts[0].quantity > 1 and bool(parts[0].curved) and not lined
    if seam.sort not in FLAT_SEAMS or not (len(parts) == _PAIR or copies):
        return ()
    together = [one for one in thing.seams if one.sort in FLAT_SEAMS and set(one.pieces) == set(seam.pieces)]
    for part in parts:
        round_it = sides_round(part)
        sewn = {edge for one in together for piece, edge in one.edges if piece == part.name} & set(round_it)
        flat = "own edges" in part.facts and not sewn & set(part.curved)
        if "face" not in part.facts or flat or not sewn or len(round_it) - len(sewn) > 1:
            return ()
    return tuple(together)


def zip_of(seam: Seam, thing: Thing) -> Closing | None:
    """Return the zip in a seam, through which the work is turned and filled; in a box any zip of its pieces is that.

    It lies between two edges that the seam would else close.
    """
    zips = [closing for closing in thing.closings if "opens a seam" in closing.facts]
    if seam.sort == "box":
        return next((one for one in zips if set(one.pieces) & set(seam.pieces)), None)
    pairs = {frozenset(pair) for pair in seam.pairs}
    return next((one for one in zips if pairs & {frozenset(pair) for pair in product(one.on, one.onto)}), None)


def zip_linings(closing: Closing, thing: Thing) -> tuple[tuple[Seam, tuple[Edge, Edge]], ...]:
    """Return what is sewn in one go with a zip whose both sides are lined: each seam, and its edge with the lining's.

    None where one side of the zip has no lining: then its edges are folded beside the teeth.
    """
    if "opens a seam" not in closing.facts:
        return ()
    own = (*closing.on, *closing.onto)
    found: dict[Edge, tuple[Seam, tuple[Edge, Edge]]] = {}
    for seam in thing.seams:
        for pair in seam.pairs if seam.sort in SHUT_IN | {"plain"} else ():
            for edge, other in (pair, pair[::-1]):
                if edge in own and other[0] not in closing.pieces:
                    found.setdefault(edge, (seam, (edge, other)))
    return tuple(found.values()) if set(found) == set(own) else ()


def closes(seam: Seam) -> bool:
    """Return whether a seam closes pieces to a ring or a row of their own, like the side seams of a skirt."""
    return seam.sort in RINGS or (seam.sort in FLAT_SEAMS and len(seam.pieces) == 1)


def is_ring(seam: Seam) -> bool:
    """Return whether a seam closes one piece on itself, shutting in its own edges or not."""
    return seam.sort in RINGS or (seam.sort in ENCLOSED and len(seam.pieces) == 1)


def lining_of(seam: Seam, thing: Thing) -> str:
    """Return the piece that lies inside: the lining, the facing, the lower of two laid pieces; empty elsewhere."""
    if seam.sort == "shaped facing":
        return facings_of(seam, thing)[0]
    if seam.sort not in SHUT_IN:
        return ""
    join, to = pieces_of(seam.join), pieces_of(seam.to)
    for own, other in ((to, join), (join, to)):
        part = thing.parts[own[0]]
        if len(own) == 1 and ("turned in" in part.facts or _is_inside(part, [thing.parts[name] for name in other])):
            return own[0]
    return to[0]


def facings_of(seam: Seam, thing: Thing) -> tuple[str, ...]:
    """Return the pieces of a seam that are cut to the shape of the edges they face."""
    return tuple(name for name in seam.pieces if "along an edge" in thing.parts[name].facts)


def told_of(seam: Seam, thing: Thing) -> frozenset[str]:
    """Return the pieces of which a step that sews a seam must name one: what is laid on, bound on or goes round.

    All of the seam's where none of them goes before the others.
    """
    if seam.sort in SHUT_IN:
        return frozenset({lining_of(seam, thing)})
    if seam.sort == "shaped facing":
        return frozenset(facings_of(seam, thing))
    goes_round = {"binding": "band", "piping": "band", "box": "boxes"}.get(seam.sort, "")
    bands = frozenset(name for name in seam.pieces if goes_round in thing.parts[name].facts)
    return bands or frozenset(seam.pieces)


def _is_inside(part: Component, others: Sequence[Component]) -> bool:
    return "plain" in part.facts and (
        any(other.is_panel for other in others) or all(other.cloth != part.cloth for other in others)
    )


def _pairs(seam: Seam, parts: Mapping[str, Component]) -> tuple[tuple[Edge, Edge], ...]:
    """The edges that lie on each other, one by one; an edge that goes right round lies on all the others."""
    join, to = spread(seam.join, parts), spread(seam.to, parts)
    longer = range(max(len(join), len(to)))
    return tuple((join[min(place, len(join) - 1)], to[min(place, len(to) - 1)]) for place in longer)


def spread(edges: Sequence[Edge], parts: Mapping[str, Component]) -> list[Edge]:
    """Return edges side by side: all four, or all of an outline, where a file says 'all'."""
    found: list[Edge] = []
    for piece, edge in edges:
        sides = sides_round(parts[piece]) if edge == "all" else []
        found += [(piece, side) for side in sides] or [(piece, edge)]
    return found


def _facts(seam: Seam, thing: Thing) -> frozenset[str]:
    """What is true of any of its pieces."""
    return frozenset().union(*(thing.parts[name].facts for name in seam.pieces))


def _is_binding(seam: Seam, thing: Thing) -> bool:
    if "binds" in _facts(seam, thing):
        return True
    strips = {name for name in seam.pieces if "may bind" in thing.parts[name].facts}
    return bool(strips) and all(
        end_of(edge, thing) == "bound" for pair in seam.pairs for edge in pair if edge[0] not in strips
    )


def _is_laid(seam: Seam, thing: Thing) -> bool:
    return any(end_of(one, thing) == end_of(other, thing) == "bound" for one, other in seam.pairs)


def _is_enclosed(way: str) -> Test:
    """Whether a seam shuts in both of its edges in a way."""
    return lambda seam, thing: all(end_of(edge, thing) == way for pair in seam.pairs for edge in pair)


def _is_ring(seam: Seam, thing: Thing) -> bool:
    """Whether a piece is closed on itself, and not two of it side by side, like the halves of a skirt."""
    if len(seam.pieces) != 1 or len(seam.pairs) != 1:
        return False
    part = thing.parts[seam.pieces[0]]
    return part.quantity == 1 or any(
        len(other.pairs) > 1 or any(edge[1] in ("rim", "all") for edge in other.join + other.to)
        for other in thing.seams_of(part.name)
        if other.number != seam.number
    )


def _is_three_sides(seam: Seam, thing: Thing) -> bool:
    sides = [pieces_of(run) for run in (seam.join, seam.to)]
    return len(seam.pairs) == 3 and all(len(side) == 1 for side in sides)


def _is_facing(seam: Seam, thing: Thing) -> bool:
    faced = any(end_of(edge, thing) == "faced" for pair in seam.pairs for edge in pair)
    return faced or ("turned in" in _facts(seam, thing) and not all_round(seam, thing))


def _is_shaped_facing(seam: Seam, thing: Thing) -> bool:
    """Whether facings cut to shape lie on one side only: their own ends are joined by plain seams."""
    return 0 < len(facings_of(seam, thing)) < len(seam.pieces)


def _is_tops(seam: Seam, thing: Thing) -> bool:
    """Whether the open edges of a bag meet those of its lining."""
    if len(seam.pieces) < 2 or any(edge[1] != "top" for pair in seam.pairs for edge in pair):
        return False
    sides = (pieces_of(seam.join), pieces_of(seam.to))
    for outer, inner in (sides, sides[::-1]):
        bag = any(set(outer) >= set(other.pieces) and len(other.pairs) == 3 for other in thing.seams)
        beside = [thing.parts[name] for name in outer]
        if bag and all(_is_inside(thing.parts[name], beside) for name in inner):
            return True
    return False


def _is_lining(seam: Seam, thing: Thing) -> bool:
    sides = (pieces_of(seam.join), pieces_of(seam.to))
    for own, others in (sides, sides[::-1]):
        part = thing.parts[own[0]]
        if len(own) != 1 or not {"plain", "turned in"} & part.facts or part.name in others:
            continue
        beside = [thing.parts[name] for name in others]
        if any(other.is_panel for other in beside) and all_round(seam, thing):
            return True
        joined = {edge[1] for other in thing.seams_of(part.name) for edge in other.edges if edge[0] == part.name}
        round_it = set(part.ends) <= joined or "rim" in joined
        unlike = all(other.cloth != part.cloth for other in beside)
        if (
            round_it
            and (unlike or _lines_a_row(part, thing))
            and _alike(part, thing) >= (_HALF if unlike else _NEARLY_ALL)
        ):
            return True
    return False


def _lines_a_row(part: Component, thing: Thing) -> bool:
    """Whether a piece meets several others, each of which is joined to another of them."""
    others = {name for seam in thing.seams_of(part.name) for name in seam.pieces} - {part.name}
    joined = [set(seam.pieces) for seam in thing.seams if len(seam.pieces) == _PAIR and set(seam.pieces) <= others]
    return bool(joined) and others <= set().union(*joined)


def _alike(part: Component, thing: Thing) -> Fraction:
    """How many of the edges that a piece meets are named like its own: all behind a row, none in a patchwork."""
    pairs = [pair for seam in thing.seams_of(part.name) for pair in seam.pairs if part.name in (pair[0][0], pair[1][0])]
    return Fraction(sum(one[1] == other[1] for one, other in pairs), len(pairs))


# In the order in which they are asked.
_SORTS: tuple[tuple[str, Test], ...] = (
    ("piping", lambda seam, thing: "corded" in _facts(seam, thing)),
    ("binding", _is_binding),
    ("box", lambda seam, thing: "boxes" in _facts(seam, thing) and len(seam.pieces) > 1),
    ("french", _is_enclosed("french seam")),
    ("felled", _is_enclosed("felled seam")),
    ("ring of a panel", lambda seam, thing: _is_ring(seam, thing) and thing.parts[seam.pieces[0]].is_panel),
    ("ring", _is_ring),
    ("laid", _is_laid),
    ("three sides", _is_three_sides),
    ("shaped facing", _is_shaped_facing),
    ("facing", _is_facing),
    ("tops", _is_tops),
    ("lining", _is_lining),
    ("all round", lambda seam, thing: bool(closing_seams(seam, thing))),
)


SORTS = frozenset({"plain", *(sort for sort, _ in _SORTS)})
"""Every sort of seam."""


def _sort(seam: Seam, thing: Thing) -> str:
    return next((sort for sort, is_so in _SORTS if is_so(seam, thing)), "plain")

"""What a standard step meets at its place in the recipe: its act and all acts before it come in, answers go out.

``MOMENT_CONDITIONS`` and ``MOMENT_BRACKETS`` are the words of technique texts that ask for it: a new one is one entry.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from fractions import Fraction
from types import MappingProxyType

from generator.calculation.making_up.items import Item, is_strip, raw_seams, seam_item, sewn_items
from generator.calculation.making_up.layers import ThickPlace, thick_places
from generator.calculation.making_up.thing import SIDES, Edge
from generator.calculation.worked_piece import Piece
from generator.calculation.worksheet import lists
from generator.calculation.worksheet.casings import casing_side, casing_words
from generator.calculation.worksheet.edge_strips import STRIP_BRACKETS, STRIP_CONDITIONS
from generator.calculation.worksheet.embroideries import EMBROIDERY_BRACKETS, EMBROIDERY_CONDITIONS
from generator.calculation.worksheet.enclosed_seams import enclosed_list
from generator.calculation.worksheet.facings_told import FACING_BRACKETS, FACING_CONDITIONS
from generator.calculation.worksheet.moment import Moment
from generator.calculation.worksheet.neat_told import NEAT_BRACKETS, NEAT_CONDITIONS
from generator.calculation.worksheet.set_zips import ZIP_BRACKETS, ZIP_CONDITIONS
from generator.calculation.worksheet.thickness import layers_brought, like_medium, where_it_lies
from generator.lengths import say_length
from generator.listed import listed

# From more layers of medium cloth than these on a step says how thick its seam is; common practice, no source.
_TOLD_OVER = 5
_CLOCKWISE = ("top", "right", "bottom", "left")


MomentTest = Callable[[Moment], bool]


def _stays_raw(moment: Moment) -> bool:
    raw = raw_seams(moment.book.thing) if moment.book is not None else ()
    return any(seam in raw for seam in moment.seams)


def _sides(moment: Moment) -> set[str]:
    return {side for seam in moment.seams for pair in seam.pairs for _, side in pair}


def _turns_corners(moment: Moment) -> bool:
    """Whether the seams between two pieces go on from one side of them to the next."""
    sides: dict[tuple[str, ...], set[str]] = {}
    for seam in moment.seams:
        for one, other in seam.pairs:
            sides.setdefault((one[0], other[0]), set()).add(one[1])
    return any(found & {"left", "right"} and found & {"top", "bottom"} for found in sides.values())


def _is_neat(moment: Moment) -> bool:
    given = moment.given
    return bool(moment.seams) and all(seam_item("neat", seam) in given for seam in moment.seams)


def _hanging(moment: Moment) -> tuple[str, ...]:
    """What hangs at the pieces of a step's seams already and must not be caught: frills, straps, ties."""
    if moment.book is None:
        return ()
    thing, given = moment.book.thing, moment.given
    own = {piece for seam in moment.seams for piece in seam.pieces}
    sewn = {piece for piece in own if not is_strip(thing.parts[piece])}
    strips = [
        piece
        for seam in thing.seams
        if set(seam.pieces) & sewn and given & set(sewn_items(seam))
        for piece in seam.pieces
        if is_strip(thing.parts[piece])
    ]
    basted = [piece for piece, onto in _basted(moment) if onto[0] in sewn]
    return tuple(name for name in dict.fromkeys([*strips, *basted]) if name not in own)


def _basted(moment: Moment) -> Iterator[tuple[str, Edge]]:
    """Straps, ties and strips that steps before have basted on an edge of something."""
    parts = moment.book.thing.parts if moment.book is not None else {}
    for act in moment.before:
        if act.does == "baste":
            hangs = [piece for piece, _ in act.what if {"strap", "hangs"} & parts[piece].facts]
            yield from ((piece, onto) for piece in hangs for onto in act.onto)
    for closing in moment.book.thing.closings if moment.book is not None else ():
        if closing.strips and Item("attached", closing.strips) in moment.given:
            yield from ((closing.strips, edge) for edge in closing.on)


def _caught(moment: Moment) -> tuple[str, ...]:
    """What is basted on the very edges that the step sews."""
    edges = {edge for seam in moment.seams for pair in seam.pairs for edge in pair}
    return tuple(dict.fromkeys(piece for piece, onto in _basted(moment) if onto in edges))


def _piped(moment: Moment) -> bool:
    """Whether piping is sewn already to a piece at the seams of a step, so that a plain foot cannot come close."""
    thing = moment.book.thing if moment.book is not None else None
    own = {piece for seam in moment.seams for piece in seam.pieces}
    return thing is not None and any(
        seam.sort == "piping" and own & set(seam.pieces) and moment.given & set(sewn_items(seam))
        for seam in thing.seams
    )


def _named(names: Sequence[str], moment: Moment) -> str:
    """Pieces by their labels: 'the frill and every strap'."""
    pieces = [moment.context.pieces[name] for name in names]
    labels = [f"{'every' if piece.quantity > 1 else 'the'} {piece.label}" for piece in pieces]
    return listed(labels)


def _edges(moment: Moment) -> str:
    """The edges that the step is done to, where they are those of one piece: 'left and right edges'."""
    here = _hems_here(moment)
    done = next(iter(here.values()), [])
    if len(here) != 1 or len(done) == len(SIDES):
        return "edges"
    piece = moment.context.pieces[next(iter(here))]
    hung = [piece.said(side).partition(" (")[0] for side in done]
    sides = sorted(hung, key=lambda side: SIDES.index(side) if side in SIDES else len(SIDES))
    return f"{listed(sides)} edge{'s' if len(sides) > 1 else ''}"


def _hems_here(moment: Moment) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for item in moment.gives:
        if item.state == "hemmed":
            found.setdefault(item.on.partition(".")[0], []).append(item.edge)
    return found


def _corner_marks(moment: Moment) -> str:
    """Where the corners of a face come on the boxing that goes round it, from the seam of its ring."""
    seam = next((one for one in moment.seams if one.sort == "box"), None)
    if seam is None:
        return ""
    face = next(edge[0] for pair in seam.pairs for edge in pair if edge[1] in SIDES)
    edges = moment.context.pieces[face].edges
    places, at = [], Fraction(0)
    for side in _CLOCKWISE[:-1]:
        at += edges[side].finished
        places.append(say_length(at, moment.context.scope.edition))
    return listed(places)


def _boxing_edges(moment: Moment) -> str:
    """The edges of a boxing that the step sews: both, or the one that goes round the only face."""
    faces = {name for seam in moment.seams if seam.sort == "box" for name in seam.pieces}
    labels = [piece.label for name in faces if (piece := moment.context.pieces[name]).made.goes_round != "faces"]
    return f"the edge for the {labels[0]}" if len(labels) == 1 else "both edges"


def _square(moment: Moment) -> bool:
    faces = [seam.pairs[0] for seam in moment.seams if seam.sort == "box"]
    names = {edge[0] for pair in faces for edge in pair if edge[1] in SIDES}
    lengths = {edge.finished for name in names for edge in moment.context.pieces[name].edges.values()}
    return len(lengths) == 1


def _cross_tucks(moment: Moment) -> bool:
    """Whether a hem of the step lies across tucks that are stitched already."""
    here = _hems_here(moment)
    tucked = {item.on for item in moment.given if item.state == "tucked"}
    across = {"top", "bottom"}
    return any(name in tucked and set(sides) & (across - _free(moment, name)) for name, sides in here.items())


def _free(moment: Moment, name: str) -> set[str]:
    """The edges of a piece at which its tucks are let go."""
    panel = moment.context.pieces[name].panel
    return set(panel.free) if panel is not None else set()


def _hems(moment: Moment) -> str:
    here = _hems_here(moment)
    pieces = [moment.context.pieces[name] for name in moment.act.pieces or tuple(moment.context.pieces)]
    return lists.hem_list(pieces, moment.context.scope.edition, here)


def _casing(moment: Moment) -> tuple[Piece, str] | None:
    """The piece with the hem that a rod runs through, and its side: the one that the step makes; None without any."""
    for name, sides in _hems_here(moment).items():
        return moment.context.pieces[name], sides[0]
    piece = next((moment.context.pieces[name] for name in moment.act.pieces), None)
    return (piece, casing_side(piece)) if piece is not None else None


def _casing_place(moment: Moment) -> str:
    found = _casing(moment)
    return casing_words(*found) if found is not None else ""


def _casing_hem(moment: Moment) -> str:
    found = _casing(moment)
    return lists.hem_turns(*found, moment.context.scope.edition) if found is not None else ""


def _thickest(moment: Moment) -> ThickPlace | None:
    """The thickest place at the seams that the step sews last, where it is thick enough to be told of."""
    if moment.book is None:
        return None
    pieces, scope = moment.context.pieces, moment.context.scope
    places = thick_places(moment.book.thing, lambda edge: layers_brought(pieces, edge))
    lines = [seam.place for seam in moment.seams]
    here = [place for place in places if place.place in lines and like_medium(scope, place) > _TOLD_OVER]
    return max(here, key=lambda place: place.layers, default=None)


def _layers(moment: Moment) -> str:
    place = _thickest(moment)
    return f"{place.layers} layers of cloth, {where_it_lies(place, moment.context.pieces)}" if place is not None else ""


def _meetings(moment: Moment) -> str:
    """The edges that the step sews to each other."""
    sewn = {seam.number for seam in moment.seams}
    told = [one for number, one in enumerate(moment.context.meetings) if number in sewn]
    return lists.meeting_list(told or moment.context.meetings, moment.context.pieces, moment.context.scope.edition)


def _elastic(moment: Moment) -> bool:
    """Whether an elastic runs in a hem that the step makes."""
    hems = {tuple(item.on.split(".")) for item in moment.gives if item.state == "hemmed"}
    closings = moment.book.thing.closings if moment.book is not None else ()
    return any(closing.kind == "elastic" and hems & set(closing.on) for closing in closings)


def _ring_done(moment: Moment) -> bool:
    """Whether a piece that the step sews has been closed to a ring by a step before it."""
    thing = moment.book.thing if moment.book is not None else None
    rings = [seam for seam in thing.seams if seam.sort == "ring"] if thing is not None else []
    return any(set(seam.pieces) & set(moment.act.pieces) and moment.given & set(sewn_items(seam)) for seam in rings)


MOMENT_CONDITIONS: Mapping[str, MomentTest] = MappingProxyType(
    {
        **FACING_CONDITIONS,
        **NEAT_CONDITIONS,
        "raw inside": _stays_raw,
        "turns corners": _turns_corners,
        "neat": _is_neat,
        "round outline": lambda moment: "rim" in _sides(moment),
        "square": _square,
        "two faces": lambda moment: sum(seam.sort == "box" for seam in moment.seams) > 1,
        "hangs near": lambda moment: bool(_hanging(moment)),
        "thick": lambda moment: _thickest(moment) is not None,
        "gathers": lambda moment: any(
            is_strip(moment.book.thing.parts[piece]) for seam in moment.seams for piece in seam.pieces if moment.book
        ),
        "catches": lambda moment: bool(_caught(moment)),
        "piped": _piped,
        **EMBROIDERY_CONDITIONS,
        **STRIP_CONDITIONS,
        **ZIP_CONDITIONS,
        "elastic": _elastic,
        "ring done": _ring_done,
        "tucks inside": lambda moment: any(
            moment.context.pieces[piece].panel is not None for seam in moment.seams for piece in seam.pieces
        ),
        "cross tucks done": lambda moment: any(
            item.state == "cross tucked" and item.on in moment.act.pieces for item in moment.given
        ),
        "hems cross tucks": _cross_tucks,
        "hems free": lambda moment: any(set(sides) & _free(moment, name) for name, sides in _hems_here(moment).items()),
        "hems meet": lambda moment: any(
            set(sides) & {"left", "right"} and set(sides) & {"top", "bottom"} for sides in _hems_here(moment).values()
        ),
    }
)
MOMENT_BRACKETS: Mapping[str, Callable[[Moment], str]] = MappingProxyType(
    {
        **FACING_BRACKETS,
        **NEAT_BRACKETS,
        "keep clear": lambda moment: _named(_hanging(moment), moment),
        "caught": lambda moment: _named(_caught(moment), moment),
        "layers": _layers,
        "edge": _edges,
        "boxing edges": _boxing_edges,
        "corner marks": _corner_marks,
        "meetings": _meetings,
        "hems": _hems,
        "enclosed seams": lambda moment: enclosed_list(
            moment.seams, moment.context.meetings, moment.context.pieces, moment.context.scope.edition
        ),
        "casing place": _casing_place,
        "casing hem": _casing_hem,
        **EMBROIDERY_BRACKETS,
        **STRIP_BRACKETS,
        **ZIP_BRACKETS,
    }
)

"""The thickest place of every panel: worked pieces and their seams come in, layers and where they lie go out."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

from generator.calculation.making_up.items import HEMS
from generator.calculation.making_up.layers import BINDING, FOLDED, HEMMED, ThickPlace, lap_layers, thick_places
from generator.calculation.making_up.thing import NEIGHBOURS, Edge, Thing
from generator.calculation.pieces.enclosed import TIMES_FOLDED
from generator.calculation.shapes.tuck_ends import crossed_edges
from generator.calculation.turning.layers import LayerLimits, as_medium, edge_layers, refuse_too_thick, row_layers
from generator.calculation.worked import Turn
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import Thickness
from generator.calculation.worksheet.scope import Scope

_IN_ROWS = ""


def thickest_places(scope: Scope, thing: Thing, pieces: Mapping[str, Piece]) -> dict[str, Thickness]:
    """Return where each panel with rows or seams is thickest; too many layers are refused, many are warned of."""
    places = thick_places(thing, lambda edge: layers_brought(pieces, edge))
    met = {place.edge for place in places}
    own = [place for piece in pieces.values() for place in _own_places(piece) if place.edge not in met]
    thickest: dict[str, ThickPlace] = {}
    for place in (*own, *places):
        thickest[place.edge[0]] = max(thickest.get(place.edge[0], place), place, key=lambda one: one.layers)
    told = {name: Thickness(place.layers, where_it_lies(place, pieces)) for name, place in thickest.items()}
    for name, place in thickest.items():
        _report(scope, name, place, told[name])
    return {name: thickness for name, thickness in told.items() if pieces[name].panel is not None}


def layers_brought(pieces: Mapping[str, Piece], edge: Edge) -> int:
    """Return the layers that a piece brings to a seam at one of its edges, at their thickest, with what lies on it.

    A copy lies there that goes beyond the seam line; at a bound edge that line is the raw edge, which it reaches.
    """
    name, side = edge
    own, blocks = pieces[name].edges.get(side), pieces[name].blocks
    bound = own is not None and own.end.kind == "bound"
    copies = (piece.edges[side] for piece in pieces.values() if piece.lies_on == name and side in piece.edges)
    beside = sum(bound or copy.allowance > 0 for copy in copies)
    if blocks is not None:
        return max(_of_piece(pieces[blocks.of], one) for one in ("top", "left")) + beside
    return _of_piece(pieces[name], side) + beside


def _of_piece(piece: Piece, side: str) -> int:
    made = piece.made
    if made.goes_round == "an edge":
        return BINDING
    if made.folds:
        return FOLDED
    folded = TIMES_FOLDED if side in piece.edges and piece.edges[side].end.shuts_in else 1
    # Gathers are pushed beside tucks, and pleats laid beside them: their layers add up and do not multiply.
    drawn = piece.drawn_at(side)
    gathers = drawn.layers - 1 if drawn is not None else 0
    return folded * max(_crossed(piece, side) + gathers, _hem_ends(piece, side), _drawn_up(piece, side))


def _crossed(piece: Piece, side: str) -> int:
    """The layers of the tucks where an edge crosses them: as the edge holds them, else flat."""
    panel = piece.panel
    if panel is None:
        return 1
    if (
        piece.shape is not None
        and piece.shape.lines
        and not any(
            edge == side for foot in panel.across.stitching for edge, _, _ in crossed_edges(piece.shape.lines, foot)
        )
    ):
        return 1
    if side in ("left", "right"):
        return row_layers(panel.cross, (Turn.RIGHT,) * panel.cross.count) if panel.cross else 1
    return row_layers(panel.across, panel.held(side) or (Turn.RIGHT,) * panel.across.count)


def _hem_ends(piece: Piece, side: str) -> int:
    """The layers where hemmed sides, or the lap of two hemmed parts, end at top or bottom; side seams come first."""
    ends = {piece.edges[one].end.kind for one in NEIGHBOURS.get(side, ()) if one in piece.edges}
    layers = HEMMED if ends & HEMS else 1
    if not piece.made.lap or side not in NEIGHBOURS:
        return layers
    hems = [edge.end.first for part in piece.parts for edge in part.edges.values() if edge.end.kind == "hem"]
    return max(layers, lap_layers(piece.made.lap, max(hems)))


def _drawn_up(piece: Piece, side: str) -> int:
    drawn = piece.made.drawn_up
    return drawn.layers if drawn is not None and drawn.side == side else 1


def _own_places(piece: Piece) -> Iterable[ThickPlace]:
    """What a panel is by itself: in its rows, over a join inside a tuck, and at edges that meet nothing."""
    panel = piece.panel
    if panel is None:
        return
    if panel.rows is not None:
        in_rows = max((row_layers(panel.across, row.turns) for row in panel.rows.rows), default=1)
        inside = any(join.in_tuck for join in panel.joins)
        joins = (("the join of its breadths", 2),) if inside else ()
        yield ThickPlace((piece.name, _IN_ROWS), ((piece.name, in_rows), *joins))
    for side in ("top", "bottom") if panel.rods is not None else ():
        # The tucks of a blind are stitched through the hems at their ends.
        if side in piece.edges and piece.edges[side].end.kind == "hem":
            yield ThickPlace((piece.name, side), ((piece.name, 2 * HEMMED),))
    for side in ("top", "bottom"):
        if panel.held(side) and side in piece.edges:
            layers = edge_layers(row_layers(panel.across, panel.held(side)), piece.edges[side].end)
            yield ThickPlace((piece.name, side), ((piece.name, layers),))


def where_it_lies(place: ThickPlace, pieces: Mapping[str, Piece]) -> str:
    """Return where a thick place lies and what each piece brings: 'at the top: front 3 + back 4'."""
    name, side = place.edge
    at = pieces[name].said(side) if name in pieces else side
    if len(place.shares) == 1:
        return f"at the {at}" if side else "in the rows"
    shares = [f"{pieces[name].label if name in pieces else name} {layers}" for name, layers in place.shares]
    return f"{'at the ' + at if side else 'in the rows'}: {' + '.join(shares)}"


def like_medium(scope: Scope, place: ThickPlace) -> Fraction:
    """Return how many layers of medium cloth a place is like; what is no piece is of the panel's own cloth."""
    models = scope.project.pieces
    own = models[place.edge[0]]
    shares = ((layers, models.get(name, own)) for name, layers in place.shares)
    return sum((as_medium(layers, scope.weight_of(model)) for layers, model in shares), Fraction(0))


def _report(scope: Scope, name: str, place: ThickPlace, told: Thickness) -> None:
    limits = LayerLimits(scope.room.layers_warn, scope.room.layers_refuse)
    at = place.place or scope.project.pieces[name].place
    label = scope.project.pieces[name].label or name
    with scope.reporting(at, name):
        refuse_too_thick(f"'{label}' {told.where.partition(':')[0]}", place.layers, limits)
    if like_medium(scope, place) > limits.warn:
        text = (
            f"there are up to {place.layers} layers of cloth under the needle {told.where}; use a longer stitch and a "
            "stronger needle, and turn the wheel by hand over the thickest place"
        )
        scope.report("warning", text, at, name)

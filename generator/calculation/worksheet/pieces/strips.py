"""Strips of all sorts: a strip of a project file comes in, its sizes go out."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import assert_never

from generator.calculation.panel_ends import narrowest_seam
from generator.calculation.pieces.bands import worked_binding, worked_piping, worked_tie
from generator.calculation.pieces.bias import bias_square
from generator.calculation.pieces.fullness import worked_gathered_strip
from generator.calculation.pieces.plain_pieces import worked_rectangle
from generator.calculation.pieces.pleat_findings import pleat_findings
from generator.calculation.pieces.pleats import Pleats, worked_pleated_strip
from generator.calculation.pieces.roll import worked_gathered_end
from generator.calculation.turning.layers import LayerLimits
from generator.calculation.worked_piece import DrawnUp, Made, Part, Straight
from generator.calculation.worksheet.pieces.sizes import (
    Join,
    PieceSizes,
    Size,
    edge_ends,
    side_lengths,
    whole,
    worked_edges,
)
from generator.calculation.worksheet.scope import Scope
from generator.definitions.pieces.strips import (
    BiasStrip,
    Binding,
    Boxing,
    GatheredEnd,
    GatheredStrip,
    Piping,
    PleatedStrip,
    Strip,
    StripPiece,
    Tie,
)
from generator.lengths import read_length, round_nearest, round_up

# Common practice, no source: what a binding loses round the edge of a few layers, and what a square is cut larger so
# that a line ruled aslant costs no strip.
_ROOM_FOR_AN_EDGE = {"inch": read_length("1/8 in"), "metric": read_length("3 mm")}
_SPARE_OF_A_SQUARE = {"inch": read_length("3/4 in"), "metric": read_length("2 cm")}
Band = Binding | Tie | Piping | BiasStrip


def strip_sizes(scope: Scope, name: str, model: StripPiece) -> PieceSizes:
    """Return the sizes of a strip, each kind by its own sum."""
    match model:
        case GatheredStrip():
            return _gathered_strip(scope, model)
        case PleatedStrip():
            return _pleated_strip(scope, name, model)
        case GatheredEnd():
            return _gathered_end(scope, model)
        case Binding() | Tie() | Piping() | BiasStrip():
            return _band(scope, model)
        case Strip():
            length, width = scope.value(model.length), scope.value(model.width)
            return _straight(scope, model, (length, width), {"length": length, "width": width})
        case Boxing():
            edge, depth = scope.value(model.edge), scope.value(model.depth)
            sizes = _straight(scope, model, (edge, depth), {"depth": depth, "length": edge})
            return replace(sizes, made=Made(goes_round="faces"))
        case _:
            assert_never(model)


def _gathered_strip(scope: Scope, model: GatheredStrip) -> PieceSizes:
    """A frill: its edge times its fullness."""
    edge, fullness, drop = (scope.value(value) for value in (model.edge, model.fullness, model.drop))
    ends = edge_ends(scope, model)
    strip = worked_gathered_strip(edge, fullness, drop, ends)
    measures = {"edge": edge, "fullness": fullness, "drop": drop, "length": strip.flat}
    edges = worked_edges(_drawn_up(edge, strip.flat, drop), ends)
    finished = (strip.flat, drop)
    parts = whole((strip.cut_across, strip.cut_along), finished, edges)
    return PieceSizes(parts, finished, edges, measures, Made(DrawnUp("top", edge)), join=_join(scope, model))


def _pleated_strip(scope: Scope, name: str, model: PleatedStrip) -> PieceSizes:
    """A pleated strip with its folds; what reaches past its ends or is thick is reported."""
    edge, drop, mark = scope.value(model.edge), scope.value(model.drop), scope.edition.mark
    ends = edge_ends(scope, model)
    pleats = Pleats(model.style, scope.count(model.pleats), scope.value(model.pleat_depth))
    strip = worked_pleated_strip(edge, drop, pleats, ends)
    warn, refuse = scope.room.layers_warn, scope.room.layers_refuse
    for told in pleat_findings(strip, LayerLimits(warn, refuse), scope.edition):
        scope.report("warning", told, model.pleat_depth.place, name)
    measures = {
        "edge": edge,
        "drop": drop,
        "pleats": Fraction(pleats.number),
        "pleat depth": pleats.depth,
        "section": strip.width,
        "length": strip.flat,
    }
    edges = worked_edges(_drawn_up(edge, strip.flat, drop), ends)
    folds = tuple((round_nearest(line.fold, mark), round_nearest(line.onto, mark)) for line in strip.lines)
    finished = (strip.flat, drop)
    parts = whole((strip.cut_across, strip.cut_along), finished, edges)
    return PieceSizes(parts, finished, edges, measures, Made(DrawnUp("top", edge, folds)), join=_join(scope, model))


def _drawn_up(edge: Fraction, flat: Fraction, drop: Fraction) -> dict[str, Fraction]:
    """The finished length of each edge of a strip that is drawn up at its top [in]."""
    return {"top": edge, "bottom": flat, "left": drop, "right": drop, "edge": edge}


def _gathered_end(scope: Scope, model: GatheredEnd) -> PieceSizes:
    """The end of a bolster: its lower edge is the rim, its upper one is drawn up in the middle."""
    edge, radius, rim = scope.value(model.edge), scope.value(model.radius), scope.end(model.finish("rim"))
    cut = worked_gathered_end(edge, radius, rim.first, rim.first)
    measures = {"edge": edge, "radius": radius, "length": edge, "drop": radius}
    edges = worked_edges({"rim": edge}, {"rim": rim})
    part = Part(Straight(), *cut, edge, radius, {"bottom": edges["rim"]})
    made = Made(DrawnUp("top", Fraction(0)))
    return PieceSizes((part,), (edge, radius), edges, measures, made, join=_join(scope, model))


def _band(scope: Scope, model: Band) -> PieceSizes:
    """A strip without ends of its own; it is cut from the bias of a square where its grain says so."""
    length = scope.value(model.length)
    width, cut, made = _cut_band(scope, model, length)
    measures = {"length": length, "width": width, "edge": length}
    if isinstance(model, Piping):
        measures["cord"] = scope.value(model.cord)
    edges = worked_edges({"edge": length}, {})
    # A straight join would lie on itself in one lump where the strip is folded over an edge or a cord.
    slanting = isinstance(model, Binding | Piping)
    join = _join(scope, model, slanting=slanting)
    sizes = PieceSizes(whole(cut, (length, width), edges), (length, width), edges, measures, made, join=join)
    if isinstance(model, BiasStrip) or model.grain == "bias":
        return _on_the_bias(scope, sizes, cut, _join(scope, model, slanting=True).allowance)
    return sizes


def _cut_band(scope: Scope, model: Band, length: Fraction) -> tuple[Fraction, Size, Made]:
    """The finished width of a band, its cut size, and how it is folded and stitched."""
    if isinstance(model, BiasStrip):
        width = scope.value(model.width)
        return width, (length, width), Made()
    if isinstance(model, Piping):
        width, cut_length = worked_piping(length, scope.value(model.cord), scope.seam, scope.edition.mark)
        return width, (cut_length, width), Made(folds=_folds(scope, width, 2), stitched=2 * length, goes_round="a cord")
    width = scope.value(model.width)
    if isinstance(model, Binding):
        room = _ROOM_FOR_AN_EDGE[scope.edition.name]
        cut_width, cut_length = worked_binding(length, width, scope.seam, room)
        made = Made(folds=_folds(scope, cut_width, 1, 2, 3), stitched=2 * length, goes_round="an edge")
    else:
        cut_width, cut_length = worked_tie(length, width, scope.seam)
        made = Made(folds=_folds(scope, cut_width, 2), stitched=2 * length)
    return width, (cut_length, cut_width), made


def _folds(scope: Scope, cut_width: Fraction, *quarters: int) -> tuple[Fraction, ...]:
    """Where a strip is folded lengthwise, in quarters of the width that the ruler shows [in]."""
    width = round_up(cut_width, scope.edition.mark)
    return tuple(width * quarter / 4 for quarter in quarters)


def _on_the_bias(scope: Scope, sizes: PieceSizes, cut: Size, join: Fraction) -> PieceSizes:
    """The same strip from the bias of a square, a little larger than it must be."""
    square = bias_square(*cut, join, scope.edition.wish_step) + _SPARE_OF_A_SQUARE[scope.edition.name]
    return replace(sizes, square=square, measures={**sizes.measures, "square": square}, join=None)


def _join(scope: Scope, model: StripPiece, *, slanting: bool = False) -> Join:
    """How a strip is joined: as its file says, else with the project's seam, or a narrow one where it is slanting."""
    if model.join_allowance is not None:
        return Join(scope.value(model.join_allowance), slanting)
    return Join(narrowest_seam(scope.edition) if slanting else scope.seam, slanting)


def _straight(scope: Scope, model: Strip | Boxing, finished: Size, measures: dict[str, Fraction]) -> PieceSizes:
    """A strip with four finished edges; its ``edge`` is as long as it is itself."""
    ends = edge_ends(scope, model)
    edges = worked_edges({**side_lengths(*finished), "edge": finished[0]}, ends)
    parts = whole(worked_rectangle(*finished, ends), finished, edges)
    return PieceSizes(parts, finished, edges, {**measures, "edge": finished[0]}, join=_join(scope, model))

"""Strips of all sorts: a strip of a project file comes in, its sizes go out."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import assert_never

from generator.calculation.drawn_up import DrawnUp
from generator.calculation.pieces.fullness import gathered_layers, worked_gathered_strip
from generator.calculation.pieces.plain_pieces import worked_rectangle
from generator.calculation.pieces.pleat_findings import pleat_findings
from generator.calculation.pieces.pleats import Pleats, worked_pleated_strip
from generator.calculation.pieces.roll import worked_gathered_end
from generator.calculation.turning.layers import LayerLimits, limits_of
from generator.calculation.worked_piece import Made, Part, Straight
from generator.calculation.worksheet.pieces import bands
from generator.calculation.worksheet.pieces.bands import strip_join
from generator.calculation.worksheet.pieces.sizes import (
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
from generator.lengths import round_nearest


def strip_sizes(scope: Scope, name: str, model: StripPiece) -> PieceSizes:
    """Return the sizes of a strip, each kind by its own sum."""
    match model:
        case GatheredStrip():
            return _gathered_strip(scope, model)
        case PleatedStrip():
            return _pleated_strip(scope, name, model)
        case GatheredEnd():
            return _gathered_end(scope, model)
        case Binding():
            return bands.binding(scope, model)
        case Tie():
            return bands.tie(scope, model)
        case Piping():
            return bands.piping(scope, model)
        case BiasStrip():
            return bands.bias_strip(scope, model)
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
    drawn_up = DrawnUp("top", edge, layers=gathered_layers(fullness))
    return PieceSizes(parts, finished, edges, measures, Made(drawn_up), join=strip_join(scope, model))


def _pleated_strip(scope: Scope, name: str, model: PleatedStrip) -> PieceSizes:
    """A pleated strip with its folds; what reaches past its ends or is thick is reported."""
    edge, drop, mark = scope.value(model.edge), scope.value(model.drop), scope.edition.mark
    ends = edge_ends(scope, model)
    pleats = Pleats(model.style, scope.count(model.pleats), scope.value(model.pleat_depth))
    strip = worked_pleated_strip(edge, drop, pleats, ends)
    limits = limits_of(LayerLimits(scope.room.layers_warn, scope.room.layers_refuse), scope.weight_of(model))
    for told in pleat_findings(strip, limits, scope.edition):
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
    drawn_up = DrawnUp("top", edge, folds, strip.layers)
    return PieceSizes(parts, finished, edges, measures, Made(drawn_up), join=strip_join(scope, model))


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
    return PieceSizes((part,), (edge, radius), edges, measures, made, join=strip_join(scope, model))


def _straight(scope: Scope, model: Strip | Boxing, finished: Size, measures: dict[str, Fraction]) -> PieceSizes:
    """A strip with four finished edges; its ``edge`` is as long as it is itself."""
    ends = edge_ends(scope, model)
    edges = worked_edges({**side_lengths(*finished), "edge": finished[0]}, ends)
    parts = whole(worked_rectangle(*finished, ends), finished, edges)
    return PieceSizes(parts, finished, edges, {**measures, "edge": finished[0]}, join=strip_join(scope, model))

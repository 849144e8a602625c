"""Strips of all sorts: a strip of a project file comes in, its sizes go out; a long one is joined from lengths."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

from generator.calculation.pieces.bands import worked_binding, worked_piping, worked_tie
from generator.calculation.pieces.bias import bias_square
from generator.calculation.pieces.fullness import worked_gathered_strip
from generator.calculation.pieces.plain_pieces import worked_rectangle
from generator.calculation.pieces.pleat_findings import pleat_findings
from generator.calculation.pieces.pleats import Pleats, worked_pleated_strip
from generator.calculation.pieces.roll import worked_gathered_end
from generator.calculation.pieces.strips import lost_in_diagonal_join, lost_in_straight_join, strips_needed
from generator.calculation.turning.layers import LayerLimits
from generator.calculation.worked import Piece
from generator.calculation.worksheet.piece_sizes import PieceSizes, edge_ends, side_lengths
from generator.calculation.worksheet.scope import Scope
from generator.errors import CalculationError
from generator.lengths import Edition, read_length, round_nearest, round_up

MOST_LENGTHS = 200
# A straight join would lie on itself in one lump where the strip is folded over an edge or a cord.
_FOLDED_OVER_AN_EDGE = frozenset({"binding", "piping"})
# Common practice, no source: what a binding loses round the edge of a few layers, and what a square is cut larger so
# that a line ruled aslant costs no strip.
_ROOM_FOR_AN_EDGE = {"inch": read_length("1/8 in"), "metric": read_length("3 mm")}
_SPARE_OF_A_SQUARE = {"inch": read_length("3/4 in"), "metric": read_length("2 cm")}


def gathered_strip(scope: Scope, _name: str, model: Any) -> PieceSizes:
    """Return a frill: its edge times its fullness."""
    edge, fullness, drop = (scope.value(value) for value in (model.edge, model.fullness, model.drop))
    ends = edge_ends(scope, model)
    strip = worked_gathered_strip(edge, fullness, drop, ends)
    measures = {"edge": edge, "fullness": fullness, "drop": drop, "length": strip.flat}
    lengths = {"top": edge, "bottom": strip.flat, "left": drop, "right": drop, "edge": edge}
    return PieceSizes((strip.cut_across, strip.cut_along), (strip.flat, drop), ends, lengths, measures)


def pleated_strip(scope: Scope, name: str, model: Any) -> PieceSizes:
    """Return a pleated strip with its folds; what reaches past its ends or is thick is reported."""
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
    lengths = {"top": edge, "bottom": strip.flat, "left": drop, "right": drop, "edge": edge}
    folds = tuple((round_nearest(line.fold, mark), round_nearest(line.onto, mark)) for line in strip.lines)
    return PieceSizes((strip.cut_across, strip.cut_along), (strip.flat, drop), ends, lengths, measures, pleats=folds)


def gathered_end(scope: Scope, _name: str, model: Any) -> PieceSizes:
    """Return the end of a bolster, which is drawn up in its middle."""
    edge, radius, rim = scope.value(model.edge), scope.value(model.radius), scope.end(model.finish("rim"))
    cut = worked_gathered_end(edge, radius, rim.first, rim.first)
    measures = {"edge": edge, "radius": radius, "length": edge, "drop": radius}
    return PieceSizes(cut, (edge, radius), {"rim": rim}, {"rim": edge}, measures)


def binding(scope: Scope, _name: str, model: Any) -> PieceSizes:
    """Return a binding: four times its finished width and what the edge in it takes, and turned in at both ends."""
    length, width = scope.value(model.length), scope.value(model.width)
    room = _ROOM_FOR_AN_EDGE[scope.edition.name]
    return _folded_strip(scope, model, width, worked_binding(length, width, scope.seam, room))


def tie(scope: Scope, _name: str, model: Any) -> PieceSizes:
    """Return a tie sewn from a strip folded lengthwise and turned: twice its width and two allowances."""
    length, width = scope.value(model.length), scope.value(model.width)
    return _folded_strip(scope, model, width, worked_tie(length, width, scope.seam))


def _folded_strip(scope: Scope, model: Any, width: Fraction, cut: tuple[Fraction, Fraction]) -> PieceSizes:
    length = scope.value(model.length)
    cut_width, cut_length = cut
    measures = {"length": length, "width": width, "edge": length}
    sizes = PieceSizes((cut_length, cut_width), (length, width), {}, {"edge": length}, measures)
    return _on_the_bias(scope, sizes) if model.grain == "bias" else sizes


def _on_the_bias(scope: Scope, sizes: PieceSizes, join: Fraction | None = None) -> PieceSizes:
    """The same strip from the bias of a square, a little larger; without a word of the file its joins are narrow."""
    allowance = join if join is not None else _bias_join(scope.edition)
    square = bias_square(sizes.cut[0], sizes.cut[1], allowance, scope.edition.wish_step)
    square += _SPARE_OF_A_SQUARE[scope.edition.name]
    return replace(sizes, part=(square, square), measures={**sizes.measures, "square": square})


def _bias_join(edition: Edition) -> Fraction:
    """The narrow seam of a slanting join: 1/4 in or 6 mm."""
    return 8 * edition.fine if edition.name == "inch" else 12 * edition.fine


def plain_strip(scope: Scope, _name: str, model: Any) -> PieceSizes:
    """Return a straight strip."""
    length, width = scope.value(model.length), scope.value(model.width)
    return _straight(scope, model, (length, width), {"length": length, "width": width, "edge": length})


def bias_strip(scope: Scope, _name: str, model: Any) -> PieceSizes:
    """Return a strip from the bias of a square."""
    length, width = scope.value(model.length), scope.value(model.width)
    measures = {"length": length, "width": width, "edge": length}
    sizes = PieceSizes((length, width), (length, width), {}, {"edge": length}, measures)
    return _on_the_bias(scope, sizes, scope.value(model.join_allowance))


def piping(scope: Scope, _name: str, model: Any) -> PieceSizes:
    """Return piping, which covers a cord: the strip goes once round it and has an allowance at both edges."""
    length, cord = scope.value(model.length), scope.value(model.cord)
    width, _ = worked_piping(length, cord, scope.seam, scope.edition.mark)
    measures = {"length": length, "cord": cord, "width": width, "edge": length}
    sizes = PieceSizes((length + 2 * scope.seam, width), (length, width), {}, {"edge": length}, measures)
    return _on_the_bias(scope, sizes) if model.grain == "bias" else sizes


def boxing(scope: Scope, _name: str, model: Any) -> PieceSizes:
    """Return a boxing strip, which goes once round the cushion and is closed by a seam."""
    edge, depth = scope.value(model.edge), scope.value(model.depth)
    return _straight(scope, model, (edge, depth), {"edge": edge, "depth": depth, "length": edge})


def _straight(
    scope: Scope, model: Any, finished: tuple[Fraction, Fraction], measures: dict[str, Fraction]
) -> PieceSizes:
    """The sizes of a strip with four finished edges; its ``edge`` is as long as it is itself."""
    ends = edge_ends(scope, model)
    lengths = {**side_lengths(*finished), "edge": finished[0]}
    return PieceSizes(worked_rectangle(*finished, ends), finished, ends, lengths, measures)


def joined_strip(scope: Scope, piece: Piece) -> Piece:
    """Return a strip in as many equal lengths as the cloth's width asks for; one length stays as it is."""
    width = scope.washed_width(piece.cloth)
    if piece.part_across or piece.grain != "along" or piece.cut_across <= width:
        return piece
    allowance, diagonal = scope.seam, piece.kind in _FOLDED_OVER_AN_EDGE
    lost = lost_in_diagonal_join(piece.cut_along) if diagonal else lost_in_straight_join(allowance)
    number = strips_needed(piece.cut_across, width, lost) if width > lost else 0
    if not 0 < number <= MOST_LENGTHS:
        raise CalculationError(
            f"a strip of {scope.say(piece.cut_across)} would be joined from more than {MOST_LENGTHS} lengths of cloth "
            f"{scope.say(width)} wide; are its length and the width of the cloth in the right units?"
        )
    each = round_up((piece.cut_across + (number - 1) * lost) / number, scope.edition.mark)
    return replace(
        piece,
        parts=number,
        part_across=each,
        part_along=piece.cut_along,
        join_allowance=_bias_join(scope.edition) if diagonal else allowance,
        diagonal=diagonal,
    )

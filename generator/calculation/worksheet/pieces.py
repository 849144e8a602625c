"""Pieces without tucks: a piece of a project file comes in, the worked piece goes out. A new kind is one entry here."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import Any

from generator.calculation.pieces.bands import worked_binding, worked_piping, worked_tie
from generator.calculation.pieces.bias import bias_square
from generator.calculation.pieces.envelope import gaping_overlap, worked_envelope_back
from generator.calculation.pieces.fullness import worked_gathered_strip
from generator.calculation.pieces.plain_pieces import cut_size, plain_allowance, worked_circle, worked_rectangle
from generator.calculation.pieces.pleats import Pleats, worked_pleated_strip
from generator.calculation.pieces.roll import circumference, worked_gathered_end
from generator.calculation.pieces.strips import lost_in_diagonal_join, lost_in_straight_join, strips_needed
from generator.calculation.worked import EdgeWork, End, Piece
from generator.calculation.worksheet.panels import worked_panel
from generator.calculation.worksheet.scope import Scope
from generator.errors import CalculationError
from generator.lengths import Edition, round_up

MOST_LENGTHS = 200
_SIDES = ("left", "right", "top", "bottom")
_RAW = End("raw")


@dataclass(frozen=True, slots=True)
class Sizes:
    """What a kind of piece works out for itself; lengths in inches, ``cut`` and ``finished`` are (across, along)."""

    cut: tuple[Fraction, Fraction]
    finished: tuple[Fraction, Fraction]
    ends: Mapping[str, End] = field(default_factory=dict)
    lengths: Mapping[str, Fraction] = field(default_factory=dict)
    measures: Mapping[str, Fraction] = field(default_factory=dict)
    shape: str = "rectangle"
    parts: int = 1
    part: tuple[Fraction, Fraction] = (Fraction(0), Fraction(0))


def worked_piece(scope: Scope, name: str) -> Piece:
    """Return one worked piece of the project, of whatever kind."""
    model = scope.project.pieces[name]
    if model.kind == "tucked panel":
        return worked_panel(scope, name)
    sizes = _KINDS[model.kind](scope, name, model)
    cut = tuple(round_up(side, scope.edition.mark) for side in sizes.cut)
    edges = {side: _edge(side, sizes) for side in sizes.lengths}
    quantity = scope.quantity(model)
    piece = Piece(
        name=name,
        label=model.label or name,
        kind=model.kind,
        shape=sizes.shape,  # type: ignore[arg-type]
        cloth=scope.cloth_of(model),
        quantity=quantity,
        grain=model.grain,
        cut_across=cut[0],
        cut_along=cut[1],
        finished_across=sizes.finished[0],
        finished_along=sizes.finished[1],
        edges=edges,
        measures=_measures(sizes, cut, quantity, edges),
        note=scope.text(model.note),
        after_panel=model.cut == "after the panel",
        parts=sizes.parts,
        part_across=sizes.part[0],
        part_along=sizes.part[1],
    )
    return _joined_strip(scope, piece) if model.kind in _STRIPS else piece


def _edge(side: str, sizes: Sizes) -> EdgeWork:
    end = sizes.ends.get(side, _RAW)
    return EdgeWork(side, sizes.lengths[side], end, plain_allowance(end))


def _measures(
    sizes: Sizes, cut: tuple[Fraction, ...], quantity: int, edges: Mapping[str, EdgeWork]
) -> dict[str, Fraction]:
    return {
        "across": sizes.finished[0],
        "along": sizes.finished[1],
        "cut across": cut[0],
        "cut along": cut[1],
        "quantity": Fraction(quantity),
        **{f"{side} allowance": edge.allowance for side, edge in edges.items()},
        **sizes.measures,
    }


def _rectangle(scope: Scope, _name: str, model: Any) -> Sizes:
    across, along = scope.value(model.finished_across), scope.value(model.finished_along)
    ends = _ends(scope, model)
    cut = worked_rectangle(across, along, ends)
    return Sizes(cut, (across, along), ends, _side_lengths(across, along), {"edge": 2 * (across + along)})


def _ends(scope: Scope, model: Any) -> dict[str, End]:
    return {side: scope.end(model.finish(side)) for side in _SIDES}


def _side_lengths(across: Fraction, along: Fraction) -> dict[str, Fraction]:
    return {"left": along, "right": along, "top": across, "bottom": across}


def _envelope_back(scope: Scope, name: str, model: Any) -> Sizes:
    across, along = scope.value(model.finished_across), scope.value(model.finished_along)
    overlap, hem = scope.value(model.overlap), scope.value(model.hem)
    ends = _ends(scope, model)
    left, right = worked_envelope_back(across, along, overlap, End("hem", hem, hem), ends)
    mark = scope.edition.mark
    part = (round_up(max(left.cut_across, right.cut_across), mark), round_up(left.cut_along, mark))
    warning = gaping_overlap(overlap, scope.edition)
    if warning:
        scope.report("warning", warning, model.overlap.place, name)
    measures = {"overlap": overlap, "hem": hem, "half across": part[0] - 2 * hem, "edge": 2 * (across + along)}
    return Sizes(part, (across, along), ends, _side_lengths(across, along), measures, parts=2, part=part)


def _circle(scope: Scope, _name: str, model: Any) -> Sizes:
    diameter, rim = scope.value(model.diameter), scope.end(model.finish("rim"))
    cut = worked_circle(diameter, rim)
    length = circumference(diameter, scope.edition.wish_step)
    measures = {"diameter": diameter, "cut diameter": cut[0], "edge": length}
    return Sizes(cut, (diameter, diameter), {"rim": rim}, {"rim": length}, measures, "circle")


def _gathered_strip(scope: Scope, _name: str, model: Any) -> Sizes:
    edge, fullness, drop = (scope.value(value) for value in (model.edge, model.fullness, model.drop))
    ends = _ends(scope, model)
    strip = worked_gathered_strip(edge, fullness, drop, ends)
    measures = {"edge": edge, "fullness": fullness, "drop": drop, "length": strip.flat}
    lengths = {"top": edge, "bottom": strip.flat, "left": drop, "right": drop, "edge": edge}
    return Sizes((strip.cut_across, strip.cut_along), (strip.flat, drop), ends, lengths, measures)


def _pleated_strip(scope: Scope, _name: str, model: Any) -> Sizes:
    edge, drop = scope.value(model.edge), scope.value(model.drop)
    ends = _ends(scope, model)
    pleats = Pleats(model.style, scope.count(model.pleats), scope.value(model.pleat_depth))
    strip = worked_pleated_strip(edge, drop, pleats, ends)
    measures = {
        "edge": edge,
        "drop": drop,
        "pleats": Fraction(pleats.number),
        "pleat depth": pleats.depth,
        "section": strip.width,
        "length": strip.flat,
    }
    lengths = {"top": edge, "bottom": strip.flat, "left": drop, "right": drop, "edge": edge}
    return Sizes((strip.cut_across, strip.cut_along), (strip.flat, drop), ends, lengths, measures)


def _gathered_end(scope: Scope, _name: str, model: Any) -> Sizes:
    edge, radius, rim = scope.value(model.edge), scope.value(model.radius), scope.end(model.finish("rim"))
    cut = worked_gathered_end(edge, radius, rim.first, rim.first)
    measures = {"edge": edge, "radius": radius, "length": edge, "drop": radius}
    return Sizes(cut, (edge, radius), {"rim": rim}, {"rim": edge}, measures)


def _binding(scope: Scope, _name: str, model: Any) -> Sizes:
    """A binding folded in four: it is cut four times its finished width, and turned in at both ends."""
    length, width = scope.value(model.length), scope.value(model.width)
    return _folded_strip(scope, model, width, worked_binding(length, width, scope.seam))


def _tie(scope: Scope, _name: str, model: Any) -> Sizes:
    """A tie sewn from a strip folded lengthwise and turned: twice its width and two allowances."""
    length, width = scope.value(model.length), scope.value(model.width)
    return _folded_strip(scope, model, width, worked_tie(length, width, scope.seam))


def _folded_strip(scope: Scope, model: Any, width: Fraction, cut: tuple[Fraction, Fraction]) -> Sizes:
    length = scope.value(model.length)
    cut_width, cut_length = cut
    measures = {"length": length, "width": width, "edge": length}
    sizes = Sizes((cut_length, cut_width), (length, width), {}, {"edge": length}, measures)
    return _on_the_bias(scope, sizes) if model.grain == "bias" else sizes


def _on_the_bias(scope: Scope, sizes: Sizes, join: Fraction | None = None) -> Sizes:
    """The same strip from the bias of a square; without a word of the file its joins are narrow."""
    allowance = join if join is not None else _bias_join(scope.edition)
    square = bias_square(sizes.cut[0], sizes.cut[1], allowance, scope.edition.wish_step)
    return replace(sizes, part=(square, square), measures={**sizes.measures, "square": square})


def _bias_join(edition: Edition) -> Fraction:
    """The narrow seam of a slanting join: 1/4 in or 6 mm."""
    return 8 * edition.fine if edition.name == "inch" else 12 * edition.fine


def _strip(scope: Scope, _name: str, model: Any) -> Sizes:
    length, width = scope.value(model.length), scope.value(model.width)
    ends = _ends(scope, model)
    cut = (cut_size(length, ends["left"], ends["right"]), cut_size(width, ends["top"], ends["bottom"]))
    lengths = {**_side_lengths(length, width), "edge": length}
    return Sizes(cut, (length, width), ends, lengths, {"length": length, "width": width, "edge": length})


def _bias_strip(scope: Scope, _name: str, model: Any) -> Sizes:
    length, width = scope.value(model.length), scope.value(model.width)
    measures = {"length": length, "width": width, "edge": length}
    sizes = Sizes((length, width), (length, width), {}, {"edge": length}, measures)
    return _on_the_bias(scope, sizes, scope.value(model.join_allowance))


def _piping(scope: Scope, _name: str, model: Any) -> Sizes:
    """Piping covers a cord: the strip goes once round it and has an allowance at both edges."""
    length, cord = scope.value(model.length), scope.value(model.cord)
    width, _ = worked_piping(length, cord, scope.seam, scope.edition.mark)
    measures = {"length": length, "cord": cord, "width": width, "edge": length}
    sizes = Sizes((length + 2 * scope.seam, width), (length, width), {}, {"edge": length}, measures)
    return _on_the_bias(scope, sizes) if model.grain == "bias" else sizes


def _boxing(scope: Scope, _name: str, model: Any) -> Sizes:
    """A boxing strip goes once round the cushion and is closed by a seam."""
    edge, depth = scope.value(model.edge), scope.value(model.depth)
    ends = _ends(scope, model)
    cut = (cut_size(edge, ends["left"], ends["right"]), cut_size(depth, ends["top"], ends["bottom"]))
    lengths = {**_side_lengths(edge, depth), "edge": edge}
    return Sizes(cut, (edge, depth), ends, lengths, {"edge": edge, "depth": depth, "length": edge})


def _bought(_scope: Scope, _name: str, _model: Any) -> Sizes:
    nothing = (Fraction(0), Fraction(0))
    return Sizes(nothing, nothing, shape="none")


def _joined_strip(scope: Scope, piece: Piece) -> Piece:
    """The piece in as many equal lengths as the cloth's width asks for; one length stays as it is."""
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


# A straight join would lie on itself in one lump where the strip is folded over an edge or a cord.
_FOLDED_OVER_AN_EDGE = frozenset({"binding", "piping"})
_STRIPS = frozenset({"gathered strip", "pleated strip", "strip", "boxing", "binding", "tie", "piping", "gathered end"})
_KINDS: Mapping[str, Callable[[Scope, str, Any], Sizes]] = {
    "rectangle": _rectangle,
    "facing": _rectangle,
    "envelope back": _envelope_back,
    "circle": _circle,
    "gathered strip": _gathered_strip,
    "pleated strip": _pleated_strip,
    "gathered end": _gathered_end,
    "binding": _binding,
    "tie": _tie,
    "strip": _strip,
    "bias strip": _bias_strip,
    "piping": _piping,
    "boxing": _boxing,
    "bought": _bought,
}

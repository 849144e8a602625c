"""Pieces without tucks: a piece of a project file comes in, the worked piece goes out. A new kind is one entry here."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any

from generator.calculation.pieces.envelope import gaping_overlap, worked_envelope_back
from generator.calculation.pieces.plain_pieces import plain_allowance, worked_circle, worked_rectangle
from generator.calculation.pieces.roll import circumference
from generator.calculation.worked import EdgeWork, End, Piece
from generator.calculation.worksheet import strips
from generator.calculation.worksheet.panels import worked_panel
from generator.calculation.worksheet.piece_sizes import PieceSizes, edge_ends, side_lengths
from generator.calculation.worksheet.scope import Scope
from generator.lengths import round_up

_RAW = End("raw")


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
        pleats=sizes.pleats,
    )
    return strips.joined_strip(scope, piece) if model.kind in _STRIPS else piece


def _edge(side: str, sizes: PieceSizes) -> EdgeWork:
    end = sizes.ends.get(side, _RAW)
    return EdgeWork(side, sizes.lengths[side], end, plain_allowance(end))


def _measures(
    sizes: PieceSizes, cut: tuple[Fraction, ...], quantity: int, edges: Mapping[str, EdgeWork]
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


def _rectangle(scope: Scope, _name: str, model: Any) -> PieceSizes:
    across, along = scope.value(model.finished_across), scope.value(model.finished_along)
    ends = edge_ends(scope, model)
    cut = worked_rectangle(across, along, ends)
    return PieceSizes(cut, (across, along), ends, side_lengths(across, along), {"edge": 2 * (across + along)})


def _envelope_back(scope: Scope, name: str, model: Any) -> PieceSizes:
    across, along = scope.value(model.finished_across), scope.value(model.finished_along)
    overlap, hem = scope.value(model.overlap), scope.value(model.hem)
    ends = edge_ends(scope, model)
    left, right = worked_envelope_back(across, along, overlap, End("hem", hem, hem), ends)
    mark = scope.edition.mark
    part = (round_up(max(left.cut_across, right.cut_across), mark), round_up(left.cut_along, mark))
    warning = gaping_overlap(overlap, scope.edition)
    if warning:
        scope.report("warning", warning, model.overlap.place, name)
    measures = {"overlap": overlap, "hem": hem, "half across": part[0] - 2 * hem, "edge": 2 * (across + along)}
    return PieceSizes(part, (across, along), ends, side_lengths(across, along), measures, parts=2, part=part)


def _circle(scope: Scope, _name: str, model: Any) -> PieceSizes:
    diameter, rim = scope.value(model.diameter), scope.end(model.finish("rim"))
    cut = worked_circle(diameter, rim)
    length = circumference(diameter, scope.edition.wish_step)
    measures = {"diameter": diameter, "cut diameter": cut[0], "edge": length}
    return PieceSizes(cut, (diameter, diameter), {"rim": rim}, {"rim": length}, measures, "circle")


def _bought(_scope: Scope, _name: str, _model: Any) -> PieceSizes:
    nothing = (Fraction(0), Fraction(0))
    return PieceSizes(nothing, nothing, shape="none")


_STRIPS = frozenset({"gathered strip", "pleated strip", "strip", "boxing", "binding", "tie", "piping", "gathered end"})
_KINDS: Mapping[str, Callable[[Scope, str, Any], PieceSizes]] = {
    "rectangle": _rectangle,
    "facing": _rectangle,
    "envelope back": _envelope_back,
    "circle": _circle,
    "gathered strip": strips.gathered_strip,
    "pleated strip": strips.pleated_strip,
    "gathered end": strips.gathered_end,
    "binding": strips.binding,
    "tie": strips.tie,
    "strip": strips.plain_strip,
    "bias strip": strips.bias_strip,
    "piping": strips.piping,
    "boxing": strips.boxing,
    "bought": _bought,
}

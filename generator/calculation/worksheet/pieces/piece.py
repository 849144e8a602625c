"""One piece of a project, of whatever kind: its name comes in, the worked piece goes out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from generator.calculation.worked_piece import EdgeWork, Part, Piece
from generator.calculation.worksheet.panels import worked_panel
from generator.calculation.worksheet.pieces.flat import flat_sizes
from generator.calculation.worksheet.pieces.joined import joined_lengths
from generator.calculation.worksheet.pieces.sizes import PieceSizes
from generator.calculation.worksheet.pieces.strips import strip_sizes
from generator.calculation.worksheet.scope import Scope
from generator.definitions.pieces.bought import Bought
from generator.definitions.pieces.flat import Circle, FlatPiece, Rectangle
from generator.definitions.pieces.panel import TuckedPanel
from generator.definitions.pieces.strips import StripPiece
from generator.lengths import round_up

_NOTHING = PieceSizes((), (Fraction(0), Fraction(0)))


def worked_piece(scope: Scope, name: str) -> Piece:
    """Return one worked piece of the project, of whatever kind."""
    model = scope.project.pieces[name]
    if isinstance(model, TuckedPanel):
        return worked_panel(scope, name, model)
    sizes = _sizes(scope, name, model)
    parts = tuple(_on_ruler(part, scope) for part in sizes.parts)
    quantity = scope.quantity(model)
    piece = Piece(
        name=name,
        label=model.label or name,
        kind=model.kind,
        cloth=scope.cloth_of(model),
        quantity=quantity,
        grain=model.grain,
        parts=parts,
        finished_across=sizes.finished[0],
        finished_along=sizes.finished[1],
        edges=sizes.edges,
        note=scope.text(model.note),
        after_panel=model.cut == "after the panel",
        matches=isinstance(model, Rectangle | Circle),
        square=sizes.square,
        made=sizes.made,
    )
    lengths = joined_lengths(scope, piece, sizes.join) if sizes.join else None
    return replace(piece, lengths=lengths, measures={**_measures(piece), **sizes.measures})


def _sizes(scope: Scope, name: str, model: FlatPiece | StripPiece | Bought) -> PieceSizes:
    if isinstance(model, Bought):
        return _NOTHING
    if isinstance(model, FlatPiece):
        return flat_sizes(scope, name, model)
    return strip_sizes(scope, name, model)


def _on_ruler(part: Part, scope: Scope) -> Part:
    """The same part with its cut sizes rounded up to what the ruler shows."""
    mark = scope.edition.mark
    return replace(part, cut_across=round_up(part.cut_across, mark), cut_along=round_up(part.cut_along, mark))


def _measures(piece: Piece) -> dict[str, Fraction]:
    return {
        "across": piece.finished_across,
        "along": piece.finished_along,
        "cut across": piece.cut_across,
        "cut along": piece.cut_along,
        "quantity": Fraction(piece.quantity),
        **allowances(piece.edges),
    }


def allowances(edges: Mapping[str, EdgeWork]) -> dict[str, Fraction]:
    """Return the allowance of each edge by the name that formulas ask it by [in]."""
    return {f"{side} allowance": edge.allowance for side, edge in edges.items()}

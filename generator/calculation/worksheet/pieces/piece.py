"""One piece of a project, of whatever kind: its name comes in, the worked piece goes out."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from generator.calculation.worked_piece import Piece
from generator.calculation.worksheet.panels import worked_panel
from generator.calculation.worksheet.pieces.flat import flat_sizes
from generator.calculation.worksheet.pieces.joined import joined_lengths
from generator.calculation.worksheet.pieces.sizes import PieceSizes, allowances, on_ruler
from generator.calculation.worksheet.pieces.strips import strip_sizes
from generator.calculation.worksheet.scope import Scope
from generator.definitions.pieces.bought import Bought
from generator.definitions.pieces.flat import Circle, FlatPiece, Rectangle
from generator.definitions.pieces.panel import TuckedPanel
from generator.definitions.pieces.strips import StripPiece

_NOTHING = PieceSizes((), (Fraction(0), Fraction(0)))


def worked_piece(scope: Scope, name: str) -> Piece:
    """Return one worked piece of the project, of whatever kind."""
    model = scope.project.pieces[name]
    if isinstance(model, TuckedPanel):
        return worked_panel(scope, name, model)
    sizes = _sizes(scope, name, model)
    parts = tuple(on_ruler(part, scope.edition.mark) for part in sizes.parts)
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
        note=scope.note_of(model),
        pair=model.pair,
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


def _measures(piece: Piece) -> dict[str, Fraction]:
    return {
        "across": piece.finished_across,
        "along": piece.finished_along,
        "cut across": piece.cut_across,
        "cut along": piece.cut_along,
        "quantity": Fraction(piece.quantity),
        **allowances(piece.edges),
    }

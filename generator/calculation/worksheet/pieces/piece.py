"""One piece of a project, of whatever kind: its name comes in, the worked piece goes out."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from generator.calculation.notes import notes_in_turn
from generator.calculation.shapes.fold import folds_on_itself
from generator.calculation.worked_piece import Piece
from generator.calculation.worksheet.panels import worked_panel
from generator.calculation.worksheet.pieces.copies import copy_note, copy_sizes
from generator.calculation.worksheet.pieces.faced import facing_sizes
from generator.calculation.worksheet.pieces.flat import flat_sizes
from generator.calculation.worksheet.pieces.grids import band_cuts, blocks_of, grid_sizes
from generator.calculation.worksheet.pieces.joined import joined_lengths
from generator.calculation.worksheet.pieces.placed import placed
from generator.calculation.worksheet.pieces.sizes import PieceSizes, allowances, on_ruler
from generator.calculation.worksheet.pieces.strips import strip_sizes
from generator.calculation.worksheet.pieces.tabs import tab_sizes
from generator.calculation.worksheet.scope import Scope
from generator.definitions.pieces.bought import Bought
from generator.definitions.pieces.copy import Copy
from generator.definitions.pieces.flat import Circle, FlatPiece, Rectangle
from generator.definitions.pieces.grid import Grid
from generator.definitions.pieces.model import PieceModel
from generator.definitions.pieces.panel import TuckedPanel
from generator.definitions.pieces.shaped_facing import ShapedFacing
from generator.definitions.pieces.strips import StripPiece
from generator.definitions.pieces.tabs import ZipTab
from generator.errors import Place
from generator.lengths import write_length

Untucked = FlatPiece | ShapedFacing | Grid | StripPiece | Copy | ZipTab | Bought
_NOTHING = PieceSizes((), (Fraction(0), Fraction(0)))


def worked_piece(scope: Scope, name: str) -> Piece:
    """Return one worked piece of the project, of whatever kind."""
    model = scope.project.pieces[name]
    piece = worked_panel(scope, name, model) if isinstance(model, TuckedPanel) else _plain(scope, name, model)
    _report_nothing(scope, piece, model.place)
    return placed(scope, replace(piece, on_fold=_is_on_fold(scope, piece, model)), model)


def _is_on_fold(scope: Scope, piece: Piece, model: PieceModel) -> bool:
    """Whether a piece is cut on a fold; one that cannot be is reported."""
    if not model.on_a_fold:
        return False
    why = ""
    if piece.panel is not None:
        why = "a tucked panel is cut to its shape in one layer"
    elif len(piece.parts) != 1 or piece.parts[0].shape is None:
        why = "only a piece with an outline of its own is cut by paper"
    elif piece.grain == "bias":
        why = "cloth that lies on the bias is not folded: it stretches at the fold"
    elif not folds_on_itself(piece.parts[0].shape.cut, piece.finished_across / 2):
        why = "its two halves are not alike"
    if why:
        scope.report(
            "error", f"'{piece.name}' is not cut on a fold: {why}; take 'on a fold' out", model.place, piece.name
        )
    return not why


def _report_nothing(scope: Scope, piece: Piece, place: Place | None) -> None:
    """Report a piece that is finished narrower than the finest mark of the ruler: a digit or a unit is wrong."""
    mark = scope.edition.mark
    if any(0 < length < mark for part in piece.parts for length in (part.finished_across, part.finished_along)):
        size = " by ".join(
            write_length(one, scope.edition, unit=True) for one in (piece.finished_across, piece.finished_along)
        )
        told = f"'{piece.name}' is finished {size}, less than the finest mark of the room's ruler, {scope.say(mark)}"
        scope.report("error", f"{told}; look at its numbers and their units", place, piece.name)


def _plain(scope: Scope, name: str, model: Untucked) -> Piece:
    """Return a piece without tucks."""
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
        note=_note(scope, model),
        pair=model.pair,
        after_panel=model.cut == "after the panel",
        matches=isinstance(model, Rectangle | Circle),
        square=sizes.square,
        made=sizes.made,
        fixed=(model.fixed or "") if isinstance(model, Copy) else "",
        lies_on=model.lies_on if isinstance(model, Copy) else "",
    )
    if isinstance(model, Grid):
        blocks = blocks_of(scope, model)
        piece = replace(piece, blocks=blocks, bands=band_cuts(blocks, scope.edition.mark))
    lengths = joined_lengths(scope, piece, sizes.join) if sizes.join else None
    return replace(piece, lengths=lengths, measures={**_measures(piece), **sizes.measures})


def _sizes(scope: Scope, name: str, model: Untucked) -> PieceSizes:
    if isinstance(model, Bought):
        return _NOTHING
    if isinstance(model, ZipTab):
        return tab_sizes(scope, model)
    if isinstance(model, Grid):
        return grid_sizes(scope, name, model)
    if isinstance(model, Copy):
        return copy_sizes(scope, name, model)
    if isinstance(model, ShapedFacing):
        return facing_sizes(scope, name, model)
    if isinstance(model, FlatPiece):
        return flat_sizes(scope, name, model)
    return strip_sizes(scope, name, model)


def _note(scope: Scope, model: Untucked) -> str:
    """The note of a piece; of a copy that is fixed first what it is fixed to."""
    own = copy_note(scope, model) if isinstance(model, Copy) else ""
    return notes_in_turn((own, scope.note_of(model)))


def _measures(piece: Piece) -> dict[str, Fraction]:
    return {
        "across": piece.finished_across,
        "along": piece.finished_along,
        "cut across": piece.cut_across,
        "cut along": piece.cut_along,
        "quantity": Fraction(piece.quantity),
        **allowances(piece.edges),
    }

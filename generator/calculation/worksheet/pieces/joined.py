"""A piece longer than its cloth is wide: the piece and its join come in, the lengths or widths to cut go out."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.cutting.joins import inner_fold_joins
from generator.calculation.cutting.widths import joined_widths
from generator.calculation.pieces.strips import lost_in_diagonal_join, lost_in_straight_join, strips_needed
from generator.calculation.worked_piece import Lengths, Piece
from generator.calculation.worksheet.pieces.sizes import Join
from generator.calculation.worksheet.scope import Scope
from generator.errors import CalculationError
from generator.lengths import round_up
from generator.limits import MOST_LENGTHS


def joined_lengths(scope: Scope, piece: Piece, join: Join) -> Lengths | None:
    """Return the lengths of a strip or the widths of a plain piece; None for a piece that is cut as it is.

    A strip is cut in as many equal lengths as the cloth's width asks for, a pleated one where its joins are hidden.
    """
    width = scope.washed_width(piece.cloth)
    turned = piece.grain == "either" and piece.cut_along <= width
    if piece.square or piece.grain not in join.grains or turned or piece.cut_across <= width:
        return None
    if join.parts:
        return _widths(scope, piece, join, width)
    hidden = inner_fold_joins(piece.cut_across, piece.made.pleats, width, join.allowance, scope.edition.mark)
    if hidden:
        return Lengths(1, hidden[0], piece.cut_along, join.allowance, join.slanting, hidden[1:])
    lost = lost_in_diagonal_join(piece.cut_along) if join.slanting else lost_in_straight_join(join.allowance)
    number = strips_needed(piece.cut_across, width, lost) if width > lost else 0
    _refuse_too_many(scope, f"a strip of {scope.say(piece.cut_across)}", number, width)
    each = round_up((piece.cut_across + (number - 1) * lost) / number, scope.edition.mark)
    return Lengths(number, each, piece.cut_along, join.allowance, join.slanting)


def _widths(scope: Scope, piece: Piece, join: Join, width: Fraction) -> Lengths:
    """Return whole widths and what is joined to them at one side or at both."""
    mark = scope.edition.mark
    number, whole, part = joined_widths(piece.cut_across, width, join.allowance, join.parts, mark)
    _refuse_too_many(scope, f"a piece {scope.say(piece.cut_across)} wide", number, width)
    parts = (part,) * join.parts if part else ()
    return Lengths(number, whole, piece.cut_along, join.allowance, slanting=False, others=parts, side_by_side=True)


def _refuse_too_many(scope: Scope, what: str, number: int, width: Fraction) -> None:
    if not 0 < number <= MOST_LENGTHS:
        raise CalculationError(
            f"{what} would be joined from more than {MOST_LENGTHS} lengths of cloth {scope.say(width)} wide; are its "
            "length and the width of the cloth in the right units?"
        )

"""A strip longer than its cloth is wide: the strip and its join come in, the lengths to cut go out."""

from __future__ import annotations

from generator.calculation.pieces.strips import lost_in_diagonal_join, lost_in_straight_join, strips_needed
from generator.calculation.worked_piece import Lengths, Piece
from generator.calculation.worksheet.pieces.sizes import Join
from generator.calculation.worksheet.scope import Scope
from generator.errors import CalculationError
from generator.lengths import round_up
from generator.limits import MOST_LENGTHS


def joined_lengths(scope: Scope, piece: Piece, join: Join) -> Lengths | None:
    """Return as many equal lengths as the cloth's width asks for; None for a strip that is cut as it is."""
    width = scope.washed_width(piece.cloth)
    if piece.square or piece.grain != "along" or piece.cut_across <= width:
        return None
    lost = lost_in_diagonal_join(piece.cut_along) if join.slanting else lost_in_straight_join(join.allowance)
    number = strips_needed(piece.cut_across, width, lost) if width > lost else 0
    if not 0 < number <= MOST_LENGTHS:
        raise CalculationError(
            f"a strip of {scope.say(piece.cut_across)} would be joined from more than {MOST_LENGTHS} lengths of cloth "
            f"{scope.say(width)} wide; are its length and the width of the cloth in the right units?"
        )
    each = round_up((piece.cut_across + (number - 1) * lost) / number, scope.edition.mark)
    return Lengths(number, each, piece.cut_along, join.allowance, join.slanting)

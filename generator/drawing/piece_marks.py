"""What a piece shows inside its outline: gathering threads, pleats, folds of a strip; a piece on paper comes in."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.worked_piece import Piece
from generator.drawing.canvas import Canvas
from generator.drawing.piece_plan import PiecePlan
from generator.lengths import Edition, say_length

Corner = tuple[float, float]
GATHER_GAP = 0.035
MOST_PLEATS = 60


def draw_marks(canvas: Canvas, piece: Piece, plan: PiecePlan, corner: Corner) -> None:
    """Draw what is made of a piece beside its edges; most pieces show nothing."""
    drawn_up = piece.made.drawn_up
    if drawn_up is not None and drawn_up.gathered:
        _gathering(canvas, plan, corner, drawn_up.side)
    elif drawn_up is not None:
        _pleats(canvas, drawn_up.pleats, plan, corner)
    for place in map(plan.along.place, piece.made.folds):
        if place is not None:
            y = corner[1] + float(place)
            canvas.line(((corner[0], y), (corner[0] + float(plan.across.paper), y)), canvas.style.fold)


def drawn_up_words(piece: Piece, edition: Edition) -> str:
    """Return to which length a piece is gathered or pleated, empty for one that keeps its length."""
    drawn_up = piece.made.drawn_up
    if drawn_up is None:
        return ""
    if not drawn_up.to:
        return f" Gather its {drawn_up.side} edge until it closes in the middle."
    return f" {'Gather' if drawn_up.gathered else 'Pleat'} it to {say_length(drawn_up.to, edition)}."


def _gathering(canvas: Canvas, plan: PiecePlan, corner: Corner, side: str) -> None:
    """Draw two gathering threads along the top, one on each side of the finished edge."""
    seam = float(plan.finished.get(side, Fraction(0)) * plan.along.scale)
    for at in (max(seam - GATHER_GAP, GATHER_GAP / 2), seam + GATHER_GAP):
        y = corner[1] + at
        canvas.line(((corner[0], y), (corner[0] + float(plan.across.paper), y)), canvas.style.stitch)


def _pleats(canvas: Canvas, pleats: tuple[tuple[Fraction, Fraction], ...], plan: PiecePlan, corner: Corner) -> None:
    """Draw a short line at every fold of a pleat and a shorter one at the line that it is laid on."""
    if len(pleats) > MOST_PLEATS:
        return
    for fold, onto in pleats:
        for at, long in ((fold, 0.25), (onto, 0.12)):
            place = plan.across.place(at)
            if place is not None:
                x = corner[0] + float(place)
                canvas.line(((x, corner[1]), (x, corner[1] + long)), canvas.style.fold)

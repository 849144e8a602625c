"""What only some kinds of piece show: gathering threads, pleats, folds of a strip; a piece on paper comes in."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction

from generator.calculation.worked import Piece
from generator.drawing.canvas import Canvas
from generator.drawing.piece_plan import PiecePlan
from generator.lengths import Edition, say_length

Corner = tuple[float, float]
GATHER_GAP = 0.035
MOST_PLEATS = 60
FOLDED: Mapping[str, tuple[int, ...]] = {"tie": (2,), "piping": (2,), "binding": (1, 2, 3)}
"""Where strips are folded lengthwise, in quarters of their width."""


def draw_kind_marks(canvas: Canvas, piece: Piece, plan: PiecePlan, corner: Corner) -> None:
    """Draw what the kind of a piece needs beside its outline; most kinds need nothing."""
    draw = MARKS.get(piece.kind)
    if draw is not None:
        draw(canvas, piece, plan, corner)


def drawn_up_words(piece: Piece, edition: Edition) -> str:
    """Return to which length a strip is gathered or pleated, empty for other kinds."""
    drawn_up = {"gathered strip": "Gather", "gathered end": "Gather", "pleated strip": "Pleat"}
    if piece.kind not in drawn_up or "edge" not in piece.measures:
        return ""
    return f" {drawn_up[piece.kind]} it to {say_length(piece.measures['edge'], edition)}."


def _gathering(canvas: Canvas, piece: Piece, plan: PiecePlan, corner: Corner) -> None:
    """Draw two gathering threads along the top, one on each side of the finished edge."""
    seam = float(plan.finished.get("top", Fraction(0)) * plan.along.scale)
    for at in (max(seam - GATHER_GAP, GATHER_GAP / 2), seam + GATHER_GAP):
        y = corner[1] + at
        canvas.line(((corner[0], y), (corner[0] + float(plan.across.paper), y)), canvas.style.stitch)


def _pleats(canvas: Canvas, piece: Piece, plan: PiecePlan, corner: Corner) -> None:
    """Draw a short line at every fold of a pleat and a shorter one at the line that it is laid on."""
    if len(piece.pleats) > MOST_PLEATS:
        return
    for fold, onto in piece.pleats:
        for at, long in ((fold, 0.25), (onto, 0.12)):
            place = plan.across.place(at)
            if place is not None:
                x = corner[0] + float(place)
                canvas.line(((x, corner[1]), (x, corner[1] + long)), canvas.style.fold)


def _folds(canvas: Canvas, piece: Piece, plan: PiecePlan, corner: Corner) -> None:
    """Draw the folds along a strip."""
    wide, high = float(plan.across.paper), float(plan.along.paper)
    for quarter in FOLDED[piece.kind]:
        if piece.cut_across >= piece.cut_along:
            y = corner[1] + high * quarter / 4
            canvas.line(((corner[0], y), (corner[0] + wide, y)), canvas.style.fold)
        else:
            x = corner[0] + wide * quarter / 4
            canvas.line(((x, corner[1]), (x, corner[1] + high)), canvas.style.fold)


MARKS: Mapping[str, Callable[[Canvas, Piece, PiecePlan, Corner], None]] = {
    "gathered strip": _gathering,
    "gathered end": _gathering,
    "pleated strip": _pleats,
    **dict.fromkeys(FOLDED, _folds),
}

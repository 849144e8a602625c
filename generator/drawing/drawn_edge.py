"""An edge that is gathered or pleated to a shorter one: a worked piece comes in, a picture of both edges goes out."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.drawn_up import DrawnUp
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.meetings import before
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.labels import text_height
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style
from generator.lengths import Edition, say_length

_LEAST, _BEST, _MOST = (high / MILLIMETRES for high in (22.0, 27.0, 36.0))


@dataclass(frozen=True, slots=True)
class DrawnEdgePlan:
    """Both edges in parts of the longer one: quarters of either, of pleats halves, and both lines of every pleat."""

    upper: tuple[Fraction, ...]
    lower: tuple[Fraction, ...]
    folds: tuple[tuple[Fraction, Fraction], ...]


def plan_drawn_edge(longer: Fraction, drawn: DrawnUp, start: Fraction) -> DrawnEdgePlan:
    """Return where quarters or pleats lie on both edges; ``start`` is the cloth before the longer one [in]."""
    parts = 2 if drawn.pleats else 4
    quarters = tuple(Fraction(place, parts) for place in range(parts + 1))
    folds = tuple(((fold - start) / longer, (onto - start) / longer) for fold, onto in drawn.pleats)
    shorter = drawn.to / longer
    before = (1 - shorter) / 2
    return DrawnEdgePlan(quarters, tuple(before + shorter * place for place in quarters), folds)


def drawn_edges(worksheet: Worksheet) -> Iterable[str]:
    """Return the pieces with an edge that is drawn up to what it meets."""
    return [name for name, piece in worksheet.pieces.items() if piece.drawn]


def heights_of_drawn_edge(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the picture can be: both edges, one below the other, for each edge that is drawn up."""
    words, number = 3 * text_height(style.small), len(worksheet.pieces[name].drawn)
    return Heights.of_inches(number * (_LEAST + words), number * (_BEST + words), number * (_MOST + words))


def draw_drawn_edges(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return how an edge is divided and drawn up to the shorter one below it."""
    piece, edition = worksheet.pieces[name], worksheet.edition
    canvas = canvas_of(size, style, f"drawn edge {name}")
    high = canvas.height / len(piece.drawn)
    told = []
    for place, drawn in enumerate(piece.drawn):
        _sketch(canvas, (piece, drawn), (place * high, (place + 1) * high), edition)
        how = "gathered on two rows of long stitches" if drawn.gathered else f"laid in {len(drawn.pleats)} pleats"
        lengths = [say_length(length, edition) for length in (piece.edges[drawn.side].finished, drawn.to)]
        parts = "half to half" if drawn.pleats else "quarter to quarter"
        told.append(f"The edge of {lengths[0]} is {how}, to {lengths[1]}; lines lead from {parts}.")
    return canvas.picture(" ".join(told), "")


def _sketch(canvas: Canvas, told: tuple[Piece, DrawnUp], box: tuple[float, float], edition: Edition) -> None:
    """Draw the longer edge above, the shorter one below it, and lines from each quarter to its own."""
    (piece, drawn), style, line = told, canvas.style, text_height(canvas.style.small)
    longer = piece.edges[drawn.side].finished
    plan = plan_drawn_edge(longer, drawn, before(piece, drawn.side))
    upper, lower = box[0] + 1.5 * line, box[1] - 1.5 * line
    deep = min(0.34, (lower - upper) * 0.3)

    def across(place: Fraction) -> float:
        return 0.06 + (canvas.width - 0.12) * float(place)

    ends = ((plan.upper, upper, upper - 0.75 * line, longer), (plan.lower, lower - deep, lower + 0.75 * line, drawn.to))
    for quarters, top, y, length in ends:
        left, right = across(quarters[0]), across(quarters[-1])
        canvas.rectangle((left, top), (right, top + deep), fill=style.paper, pen=style.outline)
        canvas.arrow((left, y), (right, y), style.measure, both=True)
        canvas.text(say_length(length, edition), (left + right) / 2, y, bold=True, backing=style.paper)
    for fold, onto in plan.folds:
        canvas.line(((across(fold), upper), (across(fold), upper + deep)), style.fold)
        canvas.line(((across(onto), upper), (across(onto), upper + deep)), style.measure)
        canvas.arrow((across(fold), upper + deep / 2), (across(onto), upper + deep / 2), style.measure)
    for y in () if plan.folds else (upper + deep * 0.55, upper + deep * 0.8):
        canvas.line(((across(plan.upper[0]), y), (across(plan.upper[-1]), y)), style.stitch)
    for one, other in zip(plan.upper, plan.lower, strict=True):
        canvas.line(((across(one), upper + deep), (across(other), lower - deep)), style.measure)

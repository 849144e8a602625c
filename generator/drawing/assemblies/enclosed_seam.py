"""Seams that shut in their raw edges: three stages each, seen from the end of the seam."""

from __future__ import annotations

from generator.calculation.worksheet.enclosed_seams import lines_at
from generator.calculation.worksheet.followed import edges_of
from generator.drawing.assemblies.marks import note
from generator.drawing.assemblies.stage_canvas import Stage, StageCanvas, Subject
from generator.drawing.cloth_edge import draw_ply
from generator.drawing.labels import Point
from generator.lengths import say_length

_APART = 0.09
_BASE = 0.7
_LINE, _FOLD = 1.05, 1.35
_FIRST, _EDGE = 1.1, 1.55


def encloses(way: str, subject: Subject) -> bool:
    """Whether a piece is the first of two that such a seam joins, so that the pair is shown once."""
    firsts = (edges_of(meeting.join)[0] for meeting in subject.worksheet.meetings)
    sides = [side for name, side in firsts if name == subject.piece.name and side in subject.piece.edges]
    return any(subject.piece.edges[side].end.way == way for side in sides)


def _said(subject: Subject, way: str) -> tuple[str, str]:
    side = next(side for side, edge in subject.piece.edges.items() if edge.end.way == way)
    lines = lines_at(subject.piece, side, subject.worksheet.edition)
    assert lines is not None
    return say_length(lines.first, subject.worksheet.edition), say_length(lines.second, subject.worksheet.edition)


def french_stages(subject: Subject) -> tuple[Stage, ...]:
    """Return a French seam sewn wrong sides together, turned and sewn again, and opened."""
    first, second = _said(subject, "french seam")
    return (
        Stage("1 Wrong sides together", 1.95, 1.35, lambda canvas: _sewn(canvas, first, "right side")),
        Stage("2 Turned", 1.9, 1.35, lambda canvas: _shut_in(canvas, second)),
        Stage("3 Opened, from the wrong side", 1.9, 1.35, _opened),
    )


def felled_stages(subject: Subject) -> tuple[Stage, ...]:
    """Return a felled seam sewn right sides together, one allowance trimmed, and the other sewn down over it."""
    first, second = _said(subject, "felled seam")
    return (
        Stage("1 Right sides together", 1.95, 1.35, lambda canvas: _sewn(canvas, first, "wrong side")),
        Stage("2 One trimmed", 1.95, 1.35, lambda canvas: _trimmed(canvas, second)),
        Stage("3 Folded over, sewn down", 1.9, 1.35, _felled),
    )


def _stitch(canvas: StageCanvas, x: float, top: float, bottom: float) -> None:
    canvas.line(((x, top - 0.14), (x, bottom + 0.14)), canvas.style.stitch)


def _width(canvas: StageCanvas, left: float, right: float, y: float, words: str) -> None:
    canvas.arrow((left, y), (right, y), canvas.style.measure, both=True)
    canvas.text(words, (left + right) / 2, y + 0.17)


def _sewn(canvas: StageCanvas, first: str, outside: str) -> None:
    """Two plies with raw edges level, and the first line."""
    for y in (_BASE, _BASE - _APART):
        draw_ply(canvas, ((0.1, y), (_EDGE, y)))
    _stitch(canvas, _FIRST, _BASE - _APART, _BASE)
    note(canvas, outside, (0.1, 0.2), (0.4, _BASE - _APART - 0.02))
    _width(canvas, _FIRST, _EDGE, _BASE + 0.28, first)


def _shut_in(canvas: StageCanvas, second: str) -> None:
    """The same turned at its first line: both trimmed edges lie inside, and the second line runs beside them."""
    draw_ply(canvas, _hook(_BASE + 0.1, _BASE - 0.03))
    draw_ply(canvas, _hook(_BASE - 0.28, _BASE - 0.15))
    _stitch(canvas, _LINE, _BASE - 0.28, _BASE + 0.1)
    note(canvas, "raw edges inside", (0.1, 0.12), (_LINE + 0.12, _BASE - 0.1))
    _width(canvas, _LINE, _FOLD, _BASE + 0.38, second)


def _hook(outer: float, inner: float) -> tuple[Point, ...]:
    """A ply that runs to the fold and back inside, short of the second line."""
    return ((0.1, outer), (_FOLD, outer), (_FOLD, inner), (_LINE + 0.1, inner))


def _opened(canvas: StageCanvas) -> None:
    """The cloth lies flat to both sides; the seam stands between and is pressed to one side."""
    y = _BASE + 0.25
    middle = 0.85
    draw_ply(canvas, ((0.1, y), (middle, y), (middle, y - 0.09), (middle + 0.34, y - 0.09), (middle + 0.34, y - 0.16)))
    draw_ply(canvas, ((1.75, y), (middle + 0.1, y)))
    draw_ply(canvas, ((middle, y - 0.32), (middle + 0.34, y - 0.32), (middle + 0.34, y - 0.25)))
    draw_ply(canvas, ((middle, y - 0.09), (middle, y - 0.32)))
    note(canvas, "pressed to one side", (0.35, 0.25), (middle + 0.2, y - 0.34))


def _trimmed(canvas: StageCanvas, second: str) -> None:
    """Both allowances to one side, the lower one trimmed."""
    draw_ply(canvas, ((0.1, _BASE), (_EDGE, _BASE)))
    draw_ply(canvas, ((0.1, _BASE - _APART), (_FIRST + 0.22, _BASE - _APART)))
    _stitch(canvas, _FIRST, _BASE - _APART, _BASE)
    note(canvas, "trimmed", (_FIRST + 0.05, 0.2), (_FIRST + 0.18, _BASE - _APART - 0.02))
    _width(canvas, _FIRST, _FIRST + 0.22, _BASE + 0.28, second)


def _felled(canvas: StageCanvas) -> None:
    """The wide allowance folded in and over the trimmed one, flat on the cloth."""
    y = _BASE + 0.2
    start, end = 0.6, 1.15
    draw_ply(canvas, ((start, y), (1.8, y)))
    draw_ply(canvas, ((start, y), (start, y - 0.11), (end - 0.15, y - 0.11)))
    over = ((0.1, y + 0.09), (start - 0.05, y + 0.09), (start - 0.05, y - 0.22), (end, y - 0.22), (end, y - 0.14))
    draw_ply(canvas, (*over, (end - 0.2, y - 0.14)))
    _stitch(canvas, start + 0.06, y - 0.22, y + 0.09)
    _stitch(canvas, end - 0.07, y - 0.22, y)
    note(canvas, "second line, close to the fold", (0.15, 0.2), (end - 0.07, y - 0.36))

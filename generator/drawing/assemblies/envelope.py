"""An envelope back: its two halves lapped over each other, from above, and from the end on the front."""

from __future__ import annotations

from generator.drawing.assemblies.marks import note, span
from generator.drawing.assemblies.stage_canvas import Stage, StageCanvas, Subject
from generator.drawing.cloth_edge import draw_ply
from generator.lengths import say_length

LARGEST = 0.8


def envelope_stages(subject: Subject) -> tuple[Stage, ...]:
    """Return the halves in the proportions of the cover, and a section through them and the front."""
    piece, edition = subject.piece, subject.worksheet.edition
    share = float(piece.made.lap / piece.finished_across)
    scale = LARGEST / float(max(piece.finished_across, piece.finished_along))
    size = (float(piece.finished_across) * scale, float(piece.finished_along) * scale)
    across, words = say_length(piece.finished_across, edition), f"overlap {say_length(piece.made.lap, edition)}"
    return (
        Stage("", max(size[0], 0.8) + 0.2, size[1] + 0.6, lambda canvas: _plan(canvas, share, size, across)),
        Stage("", 3.8, 1.45, lambda canvas: _section(canvas, share, words)),
    )


def _plan(canvas: StageCanvas, share: float, size: tuple[float, float], across: str) -> None:
    style, left, top = canvas.style, 0.1, 0.25
    (wide, high), half = size, size[0] * (1 + share) / 2
    inner, outer = left + wide - half, left + half
    canvas.rectangle((inner, top), (left + wide, top + high), fill=style.cloth, pen=style.outline)
    canvas.rectangle((left, top), (outer, top + high), fill=style.cloth, pen=style.outline)
    canvas.line(((inner, top), (inner, top + high)), style.finish)
    canvas.line(((outer - 0.07, top), (outer - 0.07, top + high)), style.stitch)
    canvas.text("2nd", (left + inner) / 2, top + high / 2, backing=style.cloth)
    canvas.text("1st", (left + wide + outer) / 2, top + high / 2, backing=style.cloth)
    span(canvas, across, (left, top + high + 0.2), (left + wide, top + high + 0.2))
    canvas.lines([((x, top), (x, top - 0.18)) for x in (inner, outer)], style.measure)
    canvas.arrow((inner, top - 0.12), (outer, top - 0.12), style.measure, both=True)


def _section(canvas: StageCanvas, share: float, words: str) -> None:
    """Draw front and halves from the end, pulled apart so that each is seen."""
    style, left, right, front = canvas.style, 0.1, 2.1, 1.02
    reach = (right - left) * (1 + share) / 2
    inner, outer = right - reach, left + reach
    first, second = front - 0.22, front - 0.45
    draw_ply(canvas, ((left, front), (right, front)))
    draw_ply(canvas, ((right, first), (inner, first), (inner, first - 0.08), (inner + 0.25, first - 0.08)))
    draw_ply(canvas, ((left, second), (outer, second), (outer, second - 0.08), (outer - 0.25, second - 0.08)))
    canvas.lines([((x, second - 0.15), (x, front + 0.12)) for x in (left + 0.1, right - 0.1)], style.stitch)
    top = second - 0.35
    canvas.lines([((x, top - 0.06), (x, second - 0.12)) for x in (inner, outer)], style.measure)
    canvas.arrow((inner, top), (outer, top), style.measure, both=True)
    canvas.text(words, (left + right) / 2, top - 0.16)
    note(canvas, "2nd half", (right + 0.25, second - 0.12), (outer, second))
    note(canvas, "1st half", (right + 0.25, first), (right, first))
    note(canvas, "front, right side up", (right + 0.25, front + 0.05), (right, front))
    note(canvas, "seam", (left + 0.4, front + 0.32), (left + 0.1, front + 0.08))

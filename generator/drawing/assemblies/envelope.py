"""An envelope back: its two halves lapped over each other, from above, and from the end on the front."""

from __future__ import annotations

from generator.drawing.assemblies.bench import Bench, Making, Stage
from generator.drawing.assemblies.marks import note, span
from generator.drawing.cloth_edge import draw_ply
from generator.lengths import say_length

LARGEST = 1.7


def envelope_stages(making: Making) -> tuple[Stage, ...]:
    """Return the halves in the proportions of the cover, and a section through them and the front."""
    piece, edition = making.piece, making.worksheet.edition
    overlap = piece.measures.get("overlap", piece.finished_across / 4)
    share = float(overlap / piece.finished_across)
    scale = LARGEST / float(max(piece.finished_across, piece.finished_along))
    size = (float(piece.finished_across) * scale, float(piece.finished_along) * scale)
    across, words = say_length(piece.finished_across, edition), f"overlap {say_length(overlap, edition)}"
    return (
        Stage("", max(size[0], 0.8) + 0.2, size[1] + 0.6, lambda bench: _plan(bench, share, size, across)),
        Stage("", 3.8, 1.9, lambda bench: _section(bench, share, words)),
    )


def _plan(bench: Bench, share: float, size: tuple[float, float], across: str) -> None:
    style, left, top = bench.style, 0.1, 0.25
    (wide, high), half = size, size[0] * (1 + share) / 2
    inner, outer = left + wide - half, left + half
    bench.rectangle((inner, top), (left + wide, top + high), fill=style.shade, pen=style.outline)
    bench.rectangle((left, top), (outer, top + high), fill=style.cloth, pen=style.outline)
    bench.line(((inner, top), (inner, top + high)), style.finish)
    bench.line(((outer - 0.07, top), (outer - 0.07, top + high)), style.stitch)
    bench.text("2nd", (left + inner) / 2, top + high / 2, backing=style.cloth)
    bench.text("1st", (left + wide + outer) / 2, top + high / 2, backing=style.shade)
    span(bench, across, (left, top + high + 0.2), (left + wide, top + high + 0.2))
    bench.lines([((x, top), (x, top - 0.18)) for x in (inner, outer)], style.measure)
    bench.arrow((inner, top - 0.12), (outer, top - 0.12), style.measure, both=True)


def _section(bench: Bench, share: float, words: str) -> None:
    """Draw front and halves from the end, pulled apart so that each is seen."""
    style, left, right, front = bench.style, 0.1, 2.1, 1.3
    reach = (right - left) * (1 + share) / 2
    inner, outer = right - reach, left + reach
    first, second = front - 0.22, front - 0.45
    draw_ply(bench, ((left, front), (right, front)))
    draw_ply(bench, ((right, first), (inner, first), (inner, first - 0.08), (inner + 0.25, first - 0.08)))
    draw_ply(bench, ((left, second), (outer, second), (outer, second - 0.08), (outer - 0.25, second - 0.08)))
    bench.lines([((x, second - 0.15), (x, front + 0.12)) for x in (left + 0.1, right - 0.1)], style.stitch)
    top = second - 0.35
    bench.lines([((x, top - 0.06), (x, second - 0.12)) for x in (inner, outer)], style.measure)
    bench.arrow((inner, top), (outer, top), style.measure, both=True)
    bench.text(words, (left + right) / 2, top - 0.16)
    note(bench, "2nd half", (right + 0.25, second - 0.12), (outer, second))
    note(bench, "1st half", (right + 0.25, first), (right, first))
    note(bench, "front, right side up", (right + 0.25, front + 0.05), (right, front))
    note(bench, "seam", (left + 0.4, front + 0.32), (left + 0.1, front + 0.08))

"""A strip gathered onto an edge: marked in quarters, then drawn up."""

from __future__ import annotations

from generator.drawing.assemblies.bench import Bench, Making, Stage
from generator.drawing.assemblies.marks import note, pleated_lines, span, wave


def frill_stages(making: Making) -> tuple[Stage, ...]:
    """Return the strip flat with its threads and quarter marks, and drawn up on the edge."""
    return (
        Stage("Mark the quarters", 2.8, 1.5, lambda bench: _flat(bench, making.said("length"))),
        Stage("Draw up to the edge", 2.8, 1.6, lambda bench: _drawn_up(bench, making.said("edge"))),
    )


def _quarters(left: float, right: float) -> list[float]:
    return [left + (right - left) * place / 4 for place in range(1, 4)]


def _flat(bench: Bench, length: str) -> None:
    style, left, right, top, bottom = bench.style, 0.15, 2.65, 0.45, 1.1
    bench.rectangle((left, top), (right, bottom), fill=style.cloth, pen=style.outline)
    bench.lines([((left - 0.1, y), (right + 0.1, y)) for y in (top + 0.08, top + 0.16)], style.stitch)
    quarters = _quarters(left, right)
    bench.lines([((x, top - 0.08), (x, top + 0.08)) for x in quarters], style.cut)
    note(bench, "quarter", (quarters[0], top - 0.3), (quarters[0], top - 0.08), hold="centre")
    note(bench, "two threads", (2.2, top - 0.3), (2.5, top + 0.08), hold="right")
    if length:
        span(bench, length, (left, bottom + 0.25), (right, bottom + 0.25))


def _drawn_up(bench: Bench, edge: str) -> None:
    style, left, right, top, seam, bottom = bench.style, 0.15, 1.85, 0.05, 0.5, 1.1
    bench.rectangle((left, top), (right, seam), fill=style.shade, pen=style.outline)
    lower = wave(left - 0.1, right + 0.1, bottom, waves=11, high=0.05)
    bench.area([(left, seam), (right, seam), *reversed(lower)], style.cloth)
    bench.lines([lower, [(left, seam), lower[0]], [(right, seam), lower[-1]]], style.outline)
    bench.lines(pleated_lines(((left, seam), (right, seam)), bottom - seam, number=32), style.measure)
    bench.line(((left, seam), (right, seam)), style.stitch)
    bench.lines([((x, seam - 0.1), (x, seam + 0.1)) for x in _quarters(left, right)], style.cut)
    bench.text("edge", (left + right) / 2, (top + seam) / 2 - 0.06, backing=style.shade)
    note(bench, "quarters meet", (right + 0.15, seam - 0.3), (_quarters(left, right)[2], seam - 0.1))
    if edge:
        span(bench, edge, (left, bottom + 0.3), (right, bottom + 0.3))

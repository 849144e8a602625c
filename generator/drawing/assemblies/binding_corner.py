"""Binding round a corner: three stages, seen from above with the right side of the work up."""

from __future__ import annotations

from generator.drawing.assemblies.bench import Bench, Making, Stage
from generator.drawing.assemblies.marks import note
from generator.drawing.labels import Point

WIDTH = 0.17  # how wide the binding shows, on paper [in]
STRIP = 3 * WIDTH  # one of its folds is open while it is sewn on
CORNER: Point = (1.2, 0.55)
LEFT, FOOT = 0.1, 1.25
TURN: Point = (CORNER[0] - WIDTH, CORNER[1] + WIDTH)


def binding_corner_stages(making: Making) -> tuple[Stage, ...]:
    """Return the stitching stopped before the corner, the strip folded up, and folded down along the next edge."""
    width = making.said("width")
    return (
        Stage("Stop before the corner", 1.85, 1.6, lambda bench: _stopped(bench, width)),
        Stage("Fold it straight up", 1.6, 1.6, _folded_up),
        Stage("Fold it down and go on", 1.85, 1.6, _folded_down),
    )


def _work(bench: Bench) -> None:
    """Draw the corner of the work, cut away at the left and below."""
    style, (right, top) = bench.style, CORNER
    bench.rectangle((LEFT, top), (right, FOOT), fill=style.cloth)
    bench.lines([((LEFT, top), (right, top)), ((right, top), (right, FOOT))], style.cut)


def _along_the_top(bench: Bench, right: float) -> None:
    """Draw the strip, wrong side up, on the upper edge; its free edge is a fold."""
    style, top = bench.style, CORNER[1]
    bench.rectangle((LEFT, top), (right, top + STRIP), fill=style.shade)
    bench.lines([((LEFT, top), (right, top)), ((right, top), (right, top + STRIP))], style.outline)
    bench.line(((LEFT, top + STRIP), (right, top + STRIP)), style.fold)


def _stitched(bench: Bench) -> None:
    bench.line(((LEFT, TURN[1]), TURN), bench.style.stitch)


def _stopped(bench: Bench, width: str) -> None:
    _work(bench)
    _along_the_top(bench, 1.75)
    _stitched(bench)
    bench.lines([((x, CORNER[1] - 0.05), (x, CORNER[1] - 0.27)) for x in (TURN[0], CORNER[0])], bench.style.measure)
    bench.arrow((TURN[0] - 0.25, CORNER[1] - 0.17), (TURN[0], CORNER[1] - 0.17), bench.style.measure)
    bench.arrow((CORNER[0] + 0.25, CORNER[1] - 0.17), (CORNER[0], CORNER[1] - 0.17), bench.style.measure)
    if width:
        bench.text(width, (TURN[0] + CORNER[0]) / 2, CORNER[1] - 0.38)
    note(bench, "binding, wrong side up", (LEFT, FOOT + 0.22), (0.4, CORNER[1] + 0.38))


def _folded_up(bench: Bench) -> None:
    style, (right, top), high = bench.style, CORNER, 0.05
    _work(bench)
    inner = right - STRIP
    bench.area([(LEFT, top), (right, top), (inner, top + STRIP), (LEFT, top + STRIP)], style.shade)
    bench.area([(right, high), (right, top), (inner, top + STRIP), (inner, high)], style.cloth)
    bench.lines(
        [((LEFT, top), (inner, top)), ((right, high), (right, top)), ((inner, high), (right, high))], style.outline
    )
    bench.lines([((LEFT, top + STRIP), (inner, top + STRIP)), ((inner, high), (inner, top + STRIP))], style.fold)
    bench.line(((right, top), (inner, top + STRIP)), style.outline)
    bench.line(((LEFT, TURN[1]), (inner, TURN[1])), style.stitch)
    note(bench, "slanting fold", (0.3, FOOT + 0.22), (right - 0.3, top + 0.3))


def _folded_down(bench: Bench) -> None:
    style, (right, top) = bench.style, CORNER
    _work(bench)
    _along_the_top(bench, right)
    inner = right - STRIP
    bench.area([(inner, top), (right, top), (right, FOOT), (inner, FOOT)], style.shade)
    bench.line(((inner, top), (right, top)), style.cut)
    bench.lines([((right, top), (right, FOOT))], style.outline)
    bench.line(((inner, top), (inner, FOOT)), style.fold)
    bench.line(((LEFT, TURN[1]), (inner, TURN[1])), style.stitch)
    bench.line(((TURN[0], top), (TURN[0], FOOT)), style.stitch)
    note(bench, "fold, level with the edge", (0.1, 0.2), (right - 0.12, top))

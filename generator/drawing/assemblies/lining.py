"""Two layers sewn right sides together and turned: a lining with an opening in a side, or a bag open at its top."""

from __future__ import annotations

from generator.drawing.assemblies.bench import Bench, Making, Stage
from generator.drawing.assemblies.marks import note
from generator.drawing.labels import Point

LEFT, RIGHT, TOP, BOTTOM = 0.1, 2.1, 0.05, 1.15
SEAM = 0.09
OPENING = (0.8, 1.4)
CORNER = 0.42


def lining_stages(making: Making) -> tuple[Stage, ...]:
    """Return the lining on the work, sewn round but for an opening, and its corner trimmed."""
    return (
        Stage("Sew round, leave an opening", 2.4, 1.65, _sewn_round),
        Stage("Trim the corners and turn", 2.6, 1.65, lambda bench: _turning(bench, "through the opening")),
    )


def bag_stages(making: Making) -> tuple[Stage, ...]:
    """Return two pieces sewn together at sides and bottom, and their corner trimmed."""
    return (
        Stage("Sew sides and bottom", 2.4, 1.65, _sewn_below),
        Stage("Trim the corners and turn", 2.6, 1.65, lambda bench: _turning(bench, "through the open top")),
    )


def _sewn_round(bench: Bench) -> None:
    _layers(bench, "lining, wrong side up")
    near, upper, far, lower = LEFT + SEAM, TOP + SEAM, RIGHT - SEAM, BOTTOM - SEAM
    seam = [(OPENING[0], lower), (near, lower), (near, upper), (far, upper), (far, lower), (OPENING[1], lower)]
    bench.line(seam, bench.style.stitch)
    bench.lines([((x, BOTTOM - 0.15), (x, BOTTOM)) for x in OPENING], bench.style.outline)
    note(bench, "opening", (sum(OPENING) / 2, BOTTOM + 0.35), (sum(OPENING) / 2, BOTTOM - 0.05), hold="centre")


def _sewn_below(bench: Bench) -> None:
    _layers(bench, "back, wrong side up")
    near, far, lower = LEFT + SEAM, RIGHT - SEAM, BOTTOM - SEAM
    seam: list[Point] = [(near, TOP), (near, lower), (far, lower), (far, TOP)]
    bench.line(seam, bench.style.stitch)
    note(bench, "turn square at the corner", (1.1, BOTTOM + 0.35), (far, lower), hold="centre")


def _layers(bench: Bench, upper: str) -> None:
    style, middle = bench.style, (LEFT + RIGHT) / 2
    bench.rectangle((LEFT + 0.05, TOP + 0.05), (RIGHT + 0.05, BOTTOM + 0.05), fill=style.cloth, pen=style.outline)
    bench.rectangle((LEFT, TOP), (RIGHT, BOTTOM), fill=style.shade, pen=style.outline)
    bench.text(upper, middle, 0.5, backing=style.shade)
    bench.text("right sides together", middle, 0.7, backing=style.shade)


def _turning(bench: Bench, words: str) -> None:
    """Draw the trimmed corner large, and tell where the work is turned."""
    style, left, top, right, bottom = bench.style, 0.1, 0.05, 1.4, 1.1
    shape = [(left, top), (right, top), (right, bottom - CORNER), (right - CORNER, bottom), (left, bottom)]
    bench.area(shape, style.shade)
    bench.lines([((right, top), (right, bottom - CORNER)), ((right - CORNER, bottom), (left, bottom))], style.cut)
    bench.line(((right, bottom - CORNER), (right - CORNER, bottom)), style.fold)
    bench.line([(right - 0.28, top), (right - 0.28, bottom - 0.28), (left, bottom - 0.28)], style.stitch)
    note(bench, "cut off the corner,", (right + 0.12, 0.6), (right - CORNER / 2, bottom - CORNER / 2))
    bench.text("not the stitches", right + 0.12, 0.75, hold="left")
    bench.text(f"then turn {words}", left, bottom + 0.35, hold="left")

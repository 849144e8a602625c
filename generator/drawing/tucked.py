"""The tucks of a panel as lines: where each fold lies, by its turns, from its foot to its depth; drawn at any scale."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from itertools import pairwise

import numpy as np

from generator.calculation.drawn_up import DrawnUp
from generator.calculation.worked_piece import Piece
from generator.drawing.canvas import Canvas
from generator.drawing.labels import Point, Segment
from generator.drawing.style import Pen
from generator.drawing.surface_geometry import Surface, angles, folds, held_share, surface_of

STEPS = 10
_SHOWS = 0.5
CLOSEST = 0.045
"""Lines closer than this on paper [in] run together in a copy; then only some of the tucks are drawn."""


def fold_lines(piece: Piece) -> list[list[Point]]:
    """Return the fold of every tuck of a panel, from its finished upper left corner [in on cloth], then cross tucks."""
    surface = surface_of(piece)
    heights = _heights(surface)
    across, _ = folds(surface, angles(surface, heights))
    lines = [[(float(x), float(y)) for x, y in zip(line, heights, strict=True)] for line in across]
    wide = float(surface.across)
    return lines + [[(0.0, float(place)), (wide, float(place))] for place, _ in surface.cross]


def _heights(surface: Surface) -> np.ndarray:
    """The heights at which folds are asked for: close enough for the swing between two rows."""
    ends = {float(at) for own in surface.stitched for stretch in own for at in stretch}
    held = {float(line.at) for line in surface.held}
    places = sorted({0.0, float(surface.along)} | ends | held)
    steps = [np.linspace(upper, lower, STEPS, endpoint=False) for upper, lower in pairwise(places)]
    return np.append(np.concatenate(steps), places[-1]) if held or ends else np.array([places[0], places[-1]])


def draw_tucks(canvas: Canvas, piece: Piece, place: Callable[[Point], Point | None], scale: float) -> None:
    """Draw the folds of a panel; ``place`` puts a point of it on paper, None where nothing of it is shown."""
    if piece.panel is None:
        return
    feet = piece.panel.across.stitching
    pitch = float(min(piece.panel.across.pitches, default=piece.finished_across)) * scale
    every = max(1, round(CLOSEST / pitch + 0.49)) if pitch > 0 else len(feet)
    pen = Pen(canvas.style.ink, canvas.style.hairline)
    lines = fold_lines(piece)
    surface = surface_of(piece)
    for number, line in enumerate(lines):
        if number >= len(feet):
            canvas.lines(shown_parts(line, place), pen)
        elif number % every == 0:
            canvas.lines(shown_parts(line, _while_folded(surface, number, place)), pen)


def _while_folded(
    surface: Surface, tuck: int, place: Callable[[Point], Point | None]
) -> Callable[[Point], Point | None]:
    """Where points of a fold lie on paper: nowhere once the fold has run out beyond its stitching."""

    def folded(point: Point) -> Point | None:
        return place(point) if held_share(surface, tuck, np.array([point[1]]))[0] >= _SHOWS else None

    return folded


def shown_parts(line: Sequence[Point], place: Callable[[Point], Point | None]) -> list[list[Point]]:
    """Return the parts of a line that have a place on paper, each of two points at least."""
    parts: list[list[Point]] = [[]]
    for point in line:
        placed = place(point)
        if placed is not None:
            parts[-1].append(placed)
        elif parts[-1]:
            parts.append([])
    return [part for part in parts if len(part) > 1]


SHARES = (0.5, 0.24, 0.38, 0.18)
"""How far gathers run from the edge, in parts of the drop: uneven in a regular way, as gathers are."""


def gathers(piece: Piece, long: float) -> int:
    """Return how many lines show the gathers of an edge so long on paper [in]; its pleats where it is pleated."""
    return max(6, round(long / 0.07)) if piece.made.gathered else len(piece.made.pleats)


def gathered_share(piece: Piece, place: int) -> float:
    """Return how far a gather or a pleat runs from the edge, in parts of the drop."""
    return SHARES[place % len(SHARES)] if piece.made.gathered else 0.92


def draw_drawn_up(canvas: Canvas, piece: Piece, edge: Segment, drop: Point) -> None:
    """Draw the gathers or pleats of a piece from the edge at which it is drawn up; ``drop`` leads to its other edge."""
    if piece.made.drawn_up is not None:
        draw_drawn_edge(canvas, piece.made.drawn_up, edge, drop)


def draw_drawn_edge(canvas: Canvas, drawn: DrawnUp, edge: Segment, drop: Point) -> None:
    """Draw the gathers or pleats of an edge; ``drop`` leads from it to the other edge of its piece."""
    (left, top), (right, bottom) = edge
    number = max(6, round(math.dist(*edge) / 0.07)) if drawn.gathered else len(drawn.pleats)
    lines = []
    for place in range(number):
        part = (place + 0.5) / number
        share = SHARES[place % len(SHARES)] if drawn.gathered else 0.92
        start = (left + (right - left) * part, top + (bottom - top) * part)
        lines.append((start, (start[0] + drop[0] * share, start[1] + drop[1] * share)))
    canvas.lines(lines, Pen(canvas.style.ink, canvas.style.hairline))

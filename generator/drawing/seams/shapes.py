"""Pieces with an outline of their own as they lie in a seam: their lines, turned over and laid edge on edge; inches."""

from __future__ import annotations

import math
from collections.abc import Callable, Container, Mapping, Sequence
from dataclasses import dataclass

from generator.calculation.worked_piece import Piece
from generator.drawing.labels import Box, Point
from generator.drawing.seams.lines import Line, at, length_of, moved

STEPS = 8
# How far two edges may lie apart and still lie on each other, in parts of their length.
ALIKE = 0.03


@dataclass(frozen=True, slots=True)
class Outline:
    """The finished edges of a piece by their names, clockwise as they lie, and the line on which it is cut."""

    lines: Mapping[str, Line]
    cut: Line

    @property
    def finished(self) -> Box:
        """The box round its finished edges."""
        return box_round([point for line in self.lines.values() for point in line])

    def placed(self, place: Callable[[Point], Point], *, over: bool = False) -> Outline:
        """Return it with every point put elsewhere; one that is turned ``over`` runs the other way round."""
        step = -1 if over else 1
        lines = {name: tuple(place(point) for point in line[::step]) for name, line in self.lines.items()}
        return Outline(dict(list(lines.items())[::step]), tuple(place(point) for point in self.cut[::step]))

    def without_seams(self, sewn: Container[str], beyond: Mapping[str, float]) -> Outline:
        """Return it as it is when it is sewn: what lies beyond its sewn edges is inside."""
        edges = (line if name in sewn else moved(line, beyond.get(name, 0.0)) for name, line in self.lines.items())
        return Outline(self.lines, tuple(point for line in edges for point in line))


def outline_of(piece: Piece) -> Outline | None:
    """Return the outline of a piece from its own numbers, right side up; None of a rectangle."""
    if piece.shape is None:
        return None

    def line(spots: Sequence[tuple[object, object]]) -> Line:
        return tuple((float(x), float(y)) for x, y in spots)  # type: ignore[arg-type]

    return Outline({one.name: line(one.spots) for one in piece.shape.lines}, line(piece.shape.cut))


def turned_over(outline: Outline) -> Outline:
    """Return an outline as it is seen from the wrong side, in the same box."""
    box = outline.finished
    return outline.placed(lambda point: (box.left + box.right - point[0], point[1]), over=True)


def edge_on_edge(outline: Outline, own: str, line: Line) -> Outline | None:
    """Return an outline, wrong side against the other's, with an edge on a line that runs the same way.

    None where the edge does not lie on the line all along it.
    """
    over = outline.placed(lambda point: (-point[0], point[1]), over=True)
    edge = over.lines[own]
    if len(edge) == len(line) == 2:
        return over.placed(_onto(_about_its_middle(edge), _about_its_middle(line)))
    if abs(length_of(edge) - length_of(line)) > ALIKE * length_of(line):
        return None
    found = over.placed(_onto(edge, line))
    ends = found.lines[own]
    apart = max(
        math.dist(at(ends, length_of(ends) * step / STEPS), at(line, length_of(line) * step / STEPS))
        for step in range(STEPS + 1)
    )
    return found if apart <= ALIKE * length_of(line) else None


def hung_from(line: Line, own: str, drop: float, beyond: float) -> Outline:
    """Return a strip that lies inwards from a line by its drop; outwards where that is less than nothing."""
    far, raw = moved(line, -drop), moved(line, beyond)
    return Outline({own: line, "": far}, (*raw, *far[::-1]))


def folded_over(outline: Outline, line: Line) -> Outline:
    """Return an outline folded over a straight line, to its other side."""
    (x, y), (end_x, end_y) = line[0], line[-1]
    long = math.dist((x, y), (end_x, end_y))
    right, down = (end_x - x) / long, (end_y - y) / long

    def place(point: Point) -> Point:
        along = (point[0] - x) * right + (point[1] - y) * down
        foot = x + along * right, y + along * down
        return 2 * foot[0] - point[0], 2 * foot[1] - point[1]

    return outline.placed(place, over=True)


def _about_its_middle(line: Line) -> Line:
    """A straight line from its middle to its end."""
    return at(line, length_of(line) / 2), line[-1]


def _onto(edge: Line, line: Line) -> Callable[[Point], Point]:
    """Return what turns and moves one line to the start and the direction of another; both may be closed."""
    (x, y), (to_x, to_y) = edge[0], line[0]
    turn = _direction(line) - _direction(edge)
    right, down = math.cos(turn), math.sin(turn)

    def place(point: Point) -> Point:
        across, along = point[0] - x, point[1] - y
        return to_x + across * right - along * down, to_y + across * down + along * right

    return place


def _direction(line: Line) -> float:
    """The direction from the start of a line to its end, to its middle where it is closed."""
    end = line[-1] if math.dist(line[0], line[-1]) > ALIKE * length_of(line) else at(line, length_of(line) / 2)
    return math.atan2(end[1] - line[0][1], end[0] - line[0][0])


def box_round(points: Sequence[Point]) -> Box:
    """Return the box round some points."""
    across, along = [x for x, _ in points], [y for _, y in points]
    return Box(min(across), min(along), max(across), max(along))

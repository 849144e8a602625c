"""What all drawings of making up share: notes with a leader, dimensions, gathers, buttons; inches on the stage."""

from __future__ import annotations

import math

from generator.drawing.assemblies.stage_canvas import StageCanvas
from generator.drawing.labels import Hold, Point
from generator.drawing.patterns import LEADER_DOT


def note(canvas: StageCanvas, words: str, at: Point, point: Point, *, hold: Hold = "left") -> None:
    """Write words at a place with a leader to a point, from the side of the words that looks to it."""
    box = canvas.room(canvas.text(words, *at, hold=hold))
    if box.left <= point[0] <= box.right:
        start = (point[0], box.top if point[1] < at[1] else box.bottom)
    else:
        start = (box.left if point[0] < box.left else box.right, at[1])
    canvas.line((start, point), canvas.style.measure)
    canvas.dots([point], LEADER_DOT)


def span(canvas: StageCanvas, words: str, start: Point, end: Point) -> None:
    """Draw a dimension from start to end with its words on it; upright where the line is upright."""
    canvas.arrow(start, end, canvas.style.measure, both=True)
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    canvas.text(words, *middle, turned=start[0] == end[0], backing=canvas.style.paper)


def button(canvas: StageCanvas, centre: Point, radius: float) -> None:
    """Draw a button with two holes."""
    canvas.circle(centre, radius, fill=canvas.style.paper, pen=canvas.style.outline)
    canvas.dots([(centre[0] - radius / 3, centre[1]), (centre[0] + radius / 3, centre[1])], radius / 7)


def wave(start: float, end: float, middle: float, *, waves: int, high: float) -> list[Point]:
    """Return a wavy line from left to right about a height."""
    steps = waves * 8
    return [
        (start + (end - start) * step / steps, middle + high * math.sin(math.tau * waves * step / steps))
        for step in range(steps + 1)
    ]


def pleated_lines(edges: tuple[Point, Point], drop: float, *, number: int) -> list[tuple[Point, Point]]:
    """Return short lines that fan down from a gathered edge, uneven in a regular way, as gathers are."""
    (left, top), (right, _) = edges
    places = [left + (right - left) * (place + 0.5) / number for place in range(number)]
    share = (0.85, 0.45, 0.65, 0.35)
    return [
        ((x, top), (x + (x - (left + right) / 2) * 0.04, top + drop * share[place % 4]))
        for place, x in enumerate(places)
    ]


def arc(centre: Point, radius: float, start: float, end: float) -> list[Point]:
    """Return points of an arc; degrees run clockwise from the right, as y runs down."""
    steps = max(8, int(abs(end - start) / 5))
    around = [math.radians(start + (end - start) * step / steps) for step in range(steps + 1)]
    return [(centre[0] + radius * math.cos(angle), centre[1] + radius * math.sin(angle)) for angle in around]

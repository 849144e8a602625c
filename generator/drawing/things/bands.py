"""Straps, loops and ties of a finished thing: what is sewn on at an edge comes in, bands that stand out go out."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise

from generator.calculation.making_up.joined import Attached
from generator.calculation.making_up.laid import Lying
from generator.calculation.worked_project import Worksheet
from generator.drawing.labels import Box, Point
from generator.drawing.things.forms import Form
from generator.drawing.things.shapes import Shape, box_of, in_the_thing

ENDS = (0.22, 0.78)  # where the ends of a handle and two straps stand, in parts of the edge
LONGEST = 0.45  # of the size of the thing: what is longer is drawn as long as this
LEAST_WIDE = 0.02  # of the width of the thing
Edge = Callable[[float], float]


def bands(worksheet: Worksheet, lying: Lying, form: Form) -> list[Shape]:
    """Return the bands at the top edge of a piece: a handle, two straps, or loops that a rod runs through."""
    found = []
    for one in worksheet.attached:
        piece = worksheet.pieces[one.piece]
        if one.onto[0] == lying.piece and one.onto[1] and lying.lies_at(one.onto[1]) == "top" and piece.made.folds:
            shapes = _bands(worksheet, one, lying, form)
            found += [replace(shape, cloth=piece.cloth) for shape in shapes]
    return found


def _bands(worksheet: Worksheet, one: Attached, lying: Lying, form: Form) -> list[Shape]:
    piece, box, edge = worksheet.pieces[one.piece], box_of(lying), _edge(worksheet, lying, one.onto[1])
    wide, high = box.right - box.left, box.bottom - box.top
    width = max(float(piece.measures.get("width", 0)), LEAST_WIDE * wide)
    edges = sum(other.piece == one.piece for other in worksheet.attached)
    faces = sum(other.piece == lying.piece for other in worksheet.laid_out.pieces)
    number = max(1, piece.quantity // (edges * faces))
    long = float(piece.measures.get("length", piece.finished_across))
    reach = min(long / 2, LONGEST * max(wide, high))
    closed = _closed_at(worksheet, one)
    if closed:
        # Ties lie side by side at each place, one for each of the things that are tied.
        beside = [(place - (number / len(closed) - 1) / 2) * 2 * width for place in range(number // len(closed))]
        return [_strip(box.left + at + aside, edge, reach, width, form) for at in closed for aside in beside]
    if number > len(ENDS):
        places = [(place + 0.5) / number for place in range(number)]
        return [_strip(box.left + wide * place, edge, long / 2, width, form) for place in places]
    if number == 1:
        return [_handle(box, edge, reach, width, form)]
    return [_strip(box.left + wide * share, edge, reach, width, form) for share in ENDS]


def _edge(worksheet: Worksheet, lying: Lying, name: str) -> Edge:
    """How high the upper edge of a piece lies at a place from left to right: a drawn one goes up and down."""
    shape = worksheet.pieces[lying.piece].shape
    line = next((one for one in shape.lines if one.name == name), None) if shape is not None else None
    if line is None:
        return lambda _x: float(lying.top)
    in_thing = in_the_thing(lying)
    spots = sorted(in_thing((float(x), float(y))) for x, y in line.spots)

    def height(at: float) -> float:
        at = min(max(at, spots[0][0]), spots[-1][0])
        (x, y), (other_x, other_y) = next(run for run in pairwise(spots) if run[1][0] >= at)
        return y + (other_y - y) * ((at - x) / (other_x - x) if other_x > x else 0.0)

    return height


def _closed_at(worksheet: Worksheet, one: Attached) -> list[float]:
    """The places along the edge at which a closure holds the bands; none where nothing closes them."""
    edges = (".".join(one.onto), f"{one.piece}.")
    places = [
        [float(place) for place in closure.positions]
        for closure in worksheet.closures
        if closure.on == edges[0] or closure.onto.startswith(edges[1])
    ]
    return places[0] if places else []


def _strip(x: float, edge: Edge, reach: float, width: float, form: Form) -> Shape:
    left, right = x - width / 2, x + width / 2
    top = min(edge(left), edge(right)) - reach
    corners = [form.seen(point) for point in ((left, edge(left)), (left, top), (right, top), (right, edge(right)))]
    return Shape(covers=tuple(corners), edges=(tuple(corners),))


def _handle(box: Box, edge: Edge, reach: float, width: float, form: Form) -> Shape:
    """A handle: both ends at the edge, round at its top."""
    wide = box.right - box.left
    left, right = (box.left + wide * share for share in ENDS)
    outer = _arch(left - width / 2, right + width / 2, edge, reach)
    inner = _arch(left + width / 2, right - width / 2, edge, reach - width)
    shown = [tuple(form.seen(point) for point in line) for line in (outer, inner)]
    return Shape(covers=(*shown[0], *reversed(shown[1])), edges=(shown[0], shown[1]))


def _arch(left: float, right: float, edge: Edge, high: float) -> list[Point]:
    """Up from a foot, in half an ellipse to the other side, and down."""
    middle, half = (left + right) / 2, (right - left) / 2
    round_high = min(half, high)
    spring = min(edge(left), edge(right)) - (high - round_high)
    angles = [math.pi * step / 24 for step in range(25)]
    curve = [(middle - half * math.cos(angle), spring - round_high * math.sin(angle)) for angle in angles]
    return [(left, edge(left)), *curve, (right, edge(right))]

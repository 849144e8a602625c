"""What belongs to the form of a thing and is no piece of it: sides of a box, the outline of a roll, a rod, a table."""

from __future__ import annotations

import math

from generator.calculation.worked_project import Worksheet
from generator.drawing.labels import Box, Point
from generator.drawing.things.forms import FLAT, SLANT, Form
from generator.drawing.things.rods import has_rods
from generator.drawing.things.shapes import Shape, between

CORD = 0.012  # of the size of a box: how wide its piping is drawn
STUB, BAR = 0.06, 0.012  # of the width of a curtain: how far its rod stands out, half of its thickness
TABLE = 0.3  # of the width of a runner: how much of the table is seen beside it


def behind(worksheet: Worksheet, form: Form) -> list[Shape]:
    """Return what lies behind the pieces."""
    if form.name == "over an edge":
        return [_table(form)]
    return [_rim(form)] if form.name == "tube" else []


def before(worksheet: Worksheet, form: Form) -> list[Shape]:
    """Return what lies before the pieces."""
    if form.name == "box":
        return _box_sides(worksheet, form)
    if form.name == "drum":
        return [_drum_side(worksheet, form)]
    if form.name == "roll":
        return [_outline(worksheet, form)]
    if form.name == "tube":
        return [_tube_sides(form)]
    if form.name != "hung" or any(has_rods(worksheet.pieces[one.piece]) for one in worksheet.laid_out.seen):
        # A blind hangs from a board that it hides.
        return []
    return _rod(form, _loops(worksheet))


def _loops(worksheet: Worksheet) -> float:
    """How high the loops stand that a rod runs through."""
    hung = {lying.piece for lying in worksheet.laid_out.seen}
    loops = [worksheet.pieces[one.piece] for one in worksheet.attached if one.onto[0] in hung]
    return max((float(loop.finished_across) / 2 for loop in loops if loop.made.folds), default=0.0)


def _box_sides(worksheet: Worksheet, form: Form) -> list[Shape]:
    """The boxing at the front and at the right, with a line beside each edge that is piped."""
    (depth,) = form.sizes
    wide, high = form.flat.right - form.flat.left, form.flat.bottom - form.flat.top
    far = (wide + high * SLANT, -high * FLAT)
    cord = _cord(worksheet, wide)
    shapes = []
    for start, end in (((0.0, 0.0), (wide, 0.0)), ((wide, 0.0), far)):
        low, lower = (start[0], start[1] + depth), (end[0], end[1] + depth)
        lines = [((start[0], y + start[1]), (end[0], y + end[1])) for y in (cord, depth - cord) if cord]
        shapes.append(
            Shape(
                covers=(start, end, lower, low),
                edges=((start, end, lower, low, start),),
                lines=tuple(tuple(line) for line in lines),
            )
        )
    return shapes


def _cord(worksheet: Worksheet, wide: float) -> float:
    """How far from its edges a line is drawn on a boxing; nothing where nothing is piped."""
    return CORD * wide if any(piece.made.goes_round == "a cord" for piece in worksheet.pieces.values()) else 0.0


def _drum_side(worksheet: Worksheet, form: Form) -> Shape:
    """The near half of a round boxing."""
    (depth,) = form.sizes
    half = (form.flat.right - form.flat.left) / 2
    cord = _cord(worksheet, 2 * half)

    def arc(down: float) -> tuple[Point, ...]:
        angles = (math.pi * step / 40 for step in range(41))
        return tuple((half - half * math.cos(one), FLAT * half * (1 + math.sin(one)) + down) for one in angles)

    around = (*arc(0.0), *arc(depth)[::-1])
    return Shape(
        covers=around,
        edges=((*around, around[0]),),
        lines=tuple(arc(down) for down in (cord, depth - cord) if cord),
    )


def _outline(worksheet: Worksheet, form: Form) -> Shape:
    """The upper and the lower edge of a roll, and of what stands beyond its ends."""
    _, middle, girth = form.sizes
    reach = girth / 4
    ways = (middle + reach, middle - reach + (girth if middle - reach < form.flat.left else 0.0))
    edges = []
    for way in ways:
        line = [form.place((way, y)) for _, y in between((0.0, form.flat.top), (0.0, form.flat.bottom), 60)]
        edges.append(tuple(point for point in line if point is not None))
    return Shape(edges=tuple(edges))


def _rim(form: Form) -> Shape:
    """The far half of the upper edge of a ring."""
    radius = form.sizes[0]
    angles = [math.pi * step / 40 - math.pi / 2 for step in range(41)]
    bend = radius * FLAT * 0.5
    return Shape(edges=(tuple((radius * math.sin(angle), form.flat.top - bend * math.cos(angle)) for angle in angles),))


def _tube_sides(form: Form) -> Shape:
    radius = form.sizes[0]
    return Shape(edges=tuple(((x, form.flat.top), (x, form.flat.bottom)) for x in (-radius, radius)))


def _rod(form: Form, loops: float) -> list[Shape]:
    """The ends of the rod or board that it hangs from, through its loops where it has some."""
    wide = form.flat.right - form.flat.left
    top = form.seen((form.flat.left, form.flat.top))[1] + 2 * BAR * wide - loops
    left, right = (form.seen((x, form.flat.top))[0] for x in (form.flat.left, form.flat.right))
    return [
        _rectangle(Box(start, top - BAR * wide, end, top + BAR * wide))
        for start, end in ((left - STUB * wide, left), (right, right + STUB * wide))
    ]


def _rectangle(box: Box) -> Shape:
    corners = ((box.left, box.top), (box.right, box.top), (box.right, box.bottom), (box.left, box.bottom))
    return Shape(covers=corners, edges=((*corners, corners[0]),))


def _table(form: Form) -> Shape:
    """The edge of a table and its surface going away, beyond both sides of what lies on it."""
    wide, length, _ = form.sizes
    beside = TABLE * wide
    near_left, near_right = (-beside, 0.0), (wide + beside, 0.0)
    away: Point = (length * SLANT, -length * FLAT)
    lines = [(near_left, near_right), (near_left, (near_left[0] + away[0], away[1]))]
    lines += [(near_right, (near_right[0] + away[0], away[1]))]
    board = 0.05 * wide
    lines += [((near_left[0], board), (near_right[0], board)), (near_left, (near_left[0], board))]
    lines += [(near_right, (near_right[0], board))]
    return Shape(lines=tuple(lines))

"""Where a pocket or patch is pinned: a worksheet and its name come in, the piece below with both distances goes out."""

from __future__ import annotations

from collections.abc import Iterable

from generator.calculation.making_up.laid import CLOCKWISE
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.pieces.placed import distance, lies_raw, measured_sides, place_words
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.labels import Box, Point, text_height, text_width
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style
from generator.drawing.tucked import draw_tucks
from generator.lengths import say_length

_LEAST, _BEST, _MOST = (high / MILLIMETRES for high in (38.0, 58.0, 90.0))
_AIR = 0.06
_FLAT = ("left", "right")


def placed_pieces(worksheet: Worksheet) -> Iterable[str]:
    """Return the names of the pieces of which a file says where they are sewn on another."""
    return [name for name, piece in worksheet.pieces.items() if piece.on_piece is not None]


def heights_of_placed(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the picture can be."""
    least = max(_LEAST, 9 * text_height(style.small))
    return Heights.of_inches(least, _BEST, _MOST)


def draw_placed(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return the piece below, right side up, with what is sewn on it and how far that lies from two edges."""
    piece = worksheet.pieces[name]
    assert piece.on_piece is not None
    under = worksheet.pieces[piece.on_piece.piece]
    canvas = canvas_of(size, style, f"placed {name}")
    words = f"{under.label}, right side up"
    line = 1.3 * text_height(style.small)
    canvas.text(words, canvas.width / 2, canvas.height - line / 2)
    _sketch(canvas, worksheet, piece, under, Box(_AIR, _AIR, canvas.width - _AIR, canvas.height - line - _AIR))
    told = place_words([piece], [under], worksheet.edition)
    return canvas.picture(f"The {piece.label} on the {under.label}, both right side up: {told}.", "")


def _sketch(canvas: Canvas, worksheet: Worksheet, piece: Piece, under: Piece, room: Box) -> None:
    cut = _cut(under)
    scale = min((room.right - room.left) / (cut.right - cut.left), (room.bottom - room.top) / (cut.bottom - cut.top))
    left = (room.left + room.right - (cut.right - cut.left) * scale) / 2

    def at(point: Point) -> Point:
        return left + (point[0] - cut.left) * scale, room.top + (point[1] - cut.top) * scale

    style, on = canvas.style, piece.on_piece
    assert on is not None
    canvas.rectangle(at((cut.left, cut.top)), at((cut.right, cut.bottom)), fill=style.paper, pen=style.outline)
    draw_tucks(canvas, under, at, scale)
    whole = (float(under.finished_across), float(under.finished_along))
    canvas.line([at(point) for point in _corners((0.0, 0.0), whole)], style.finish, closed=True)
    start = (float(on.left), float(on.top))
    end = (start[0] + float(piece.finished_across), start[1] + float(piece.finished_along))
    canvas.rectangle(at(start), at(end), fill=style.paper, pen=style.cut)
    draw_tucks(canvas, piece, lambda point: at((start[0] + point[0], start[1] + point[1])), scale)
    for side in measured_sides(piece):
        ends = [at(point) for point in _measured(side, Box(*start, *end), cut)]
        canvas.arrow(ends[0], ends[1], style.outline, both=True)
        words = say_length(distance(piece, under, side), worksheet.edition)
        canvas.text(words, (ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2, bold=True, backing=style.paper)
    if text_width(piece.label, style.small, font=style.font) < (end[0] - start[0]) * scale:
        _name(canvas, piece.label, Box(*at(start), *at(end)))


def _name(canvas: Canvas, words: str, room: Box) -> None:
    """Write a name in the middle of its room, or where no distance is told; not at all where there is no such place."""
    style = canvas.style
    wide, high = text_width(words, style.small, font=style.font), text_height(style.small)
    x = (room.left + room.right) / 2
    for share in (0.5, 0.75, 0.25):
        y = room.top + share * (room.bottom - room.top)
        box = Box(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2).grown(0.02)
        inside = box.top > room.top and box.bottom < room.bottom
        if inside and not any(box.overlaps(label.box) for label in canvas.labels):
            canvas.text(words, x, y, backing=style.paper)
            return


def _measured(side: str, box: Box, cut: Box) -> tuple[Point, Point]:
    """From a side of what is below to the same side of what lies on it, at the middle of that."""
    x, y = (box.left + box.right) / 2, (box.top + box.bottom) / 2
    ends = getattr(cut, side), getattr(box, side)
    return ((ends[0], y), (ends[1], y)) if side in _FLAT else ((x, ends[0]), (x, ends[1]))


def _corners(start: Point, end: Point) -> list[Point]:
    return [start, (end[0], start[1]), end, (start[0], end[1])]


def _cut(under: Piece) -> Box:
    """What the piece below covers when something is sewn on it: its cut edges where they lie raw."""
    beyond = dict.fromkeys(CLOCKWISE, 0.0)
    beyond |= {side: float(under.edges[side].allowance) for side in CLOCKWISE if lies_raw(under, side)}
    return Box(
        -beyond["left"],
        -beyond["top"],
        float(under.finished_across) + beyond["right"],
        float(under.finished_along) + beyond["bottom"],
    )

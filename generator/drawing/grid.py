"""A grid of blocks as it is laid out: a worksheet and its name come in, blocks with their arrows and bands go out."""

from __future__ import annotations

from collections.abc import Iterable

from generator.calculation.pieces.grid import Blocks
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.labels import Point, text_height, text_lines, text_width
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style
from generator.lengths import say_length

_LEAST, _BEST, _MOST = (high / MILLIMETRES for high in (40.0, 70.0, 110.0))
_AIR = 0.05
_ARROW = 0.6  # of a block: how long its arrow is


def grids(worksheet: Worksheet) -> Iterable[str]:
    """Return the names of the grids of a worksheet."""
    return [name for name, piece in worksheet.pieces.items() if piece.blocks is not None]


def heights_of_grid(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the picture can be."""
    least = max(_LEAST, 9 * text_height(style.small))
    return Heights.of_inches(least, _BEST, _MOST)


def draw_grid(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return the blocks as they are laid out: each with an arrow to its top, short bands hatched, long ones dotted."""
    blocks = worksheet.pieces[name].blocks
    assert blocks is not None
    canvas = canvas_of(size, style, f"blocks {name}")
    words = [
        line
        for told in _words(blocks, worksheet)
        for line in text_lines(told, style.small, canvas.width, font=style.font)
    ]
    line = 1.25 * text_height(style.small)
    for place, told in enumerate(words):
        canvas.text(told, canvas.width / 2, canvas.height - (len(words) - place - 0.5) * line)
    _sketch(canvas, blocks, canvas.height - len(words) * line - _AIR)
    wide, high = blocks.number
    turned = " Every second one is turned by a quarter." if blocks.turned else ""
    return canvas.picture(f"{high} rows of {wide} blocks. {'. '.join(words)}.{turned}", "")


def _words(blocks: Blocks, worksheet: Worksheet) -> list[str]:
    """What the picture shows, in lines: the order of the seams and the widths of the bands as they are cut."""
    if not blocks.band:
        return ["arrow: to the top of the block", "seams: each row first, then the rows"]
    cut = say_length(blocks.bands[0].across if blocks.number[0] > 1 else blocks.bands[0].along, worksheet.edition)
    return [
        "arrow: to the top of the block",
        f"bands cut {cut} wide; first the short ones (hatched), row by row, then the long ones",
    ]


def _sketch(canvas: Canvas, blocks: Blocks, high: float) -> None:
    style = canvas.style
    across, along = (float(raw) for raw in blocks.raw)
    scale = min((canvas.width - 2 * _AIR) / across, (high - _AIR) / along)
    left = (canvas.width - across * scale) / 2

    def at(x: float, y: float) -> Point:
        return left + x * scale, _AIR + y * scale

    canvas.rectangle(at(0, 0), at(across, along), fill=style.paper, pen=style.outline)
    wide, tall = (float(side) for side in blocks.block)
    band, seam = float(blocks.band), float(blocks.seam)
    for row, place, x, y, turned in blocks.places():
        start, end = at(float(x), float(y)), at(float(x) + wide, float(y) + tall)
        if band and place < blocks.number[0]:
            near, far = at(float(x) + wide, float(y)), at(float(x) + wide + band, float(y) + tall)
            canvas.hatched([near, (far[0], near[1]), far, (near[0], far[1])], style.outline)
        if band and place == 1 and row < blocks.number[1]:
            near, far = at(seam, float(y) + tall), at(across - seam, float(y) + tall + band)
            canvas.dotted([near, (far[0], near[1]), far, (near[0], far[1])], style.outline)
        canvas.rectangle(start, end, fill=style.paper, pen=style.outline)
        _arrow(canvas, start, end, turned=turned)
        words = f"{row}-{place}"
        if text_width(words, style.small, font=style.font) < (end[0] - start[0]) / 2:
            canvas.text(words, start[0] + 0.04, start[1] + 0.6 * text_height(style.small), hold="left")


def _arrow(canvas: Canvas, start: Point, end: Point, *, turned: bool) -> None:
    """Draw the way to the top of a block: up, or to the right where it is turned by a quarter."""
    x, y = (start[0] + end[0]) / 2, (start[1] + end[1]) / 2
    reach = _ARROW * min(end[0] - start[0], end[1] - start[1]) / 2
    tail, head = ((x - reach, y), (x + reach, y)) if turned else ((x, y + reach), (x, y - reach))
    canvas.arrow(tail, head, canvas.style.outline, size=0.09)

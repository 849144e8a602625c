"""Where stages of making up are drawn: stages come in, a canvas with them side by side or stacked goes out.

A stage is laid out once, for words of 7 pt. Larger words enlarge the stage with them, so that what stood clear still
does, as in large print.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import Unpack

from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas, Lettering
from generator.drawing.labels import Box, Label, Point, Segment, text_height
from generator.drawing.style import Pen, Style
from generator.lengths import say_length

PAGE = 7.0
GAP = 0.25
DRAWN_FOR = 7.0  # the size of words [pt] for which stages are laid out; larger words enlarge the whole stage


@dataclass(frozen=True, slots=True)
class Subject:
    """What a drawing is made from: the worksheet and the piece that it is about."""

    worksheet: Worksheet
    piece: Piece

    def said(self, measure: str) -> str:
        """Return a measure of the piece as a sheet says it, empty where the piece has none of that name."""
        measures = self.piece.measures
        return say_length(measures[measure], self.worksheet.edition) if measure in measures else ""

    @property
    def cut_wide(self) -> str:
        """How wide a strip is cut, as a sheet says it."""
        return say_length(self.piece.cut_along, self.worksheet.edition)


class StageCanvas(Canvas):
    """A canvas for stages: places are told from the corner of the stage at hand and enlarged with its words."""

    def __init__(self, width: float, height: float, style: Style, key: str) -> None:
        super().__init__(width, height, style, key)
        self.zoom = style.small / DRAWN_FOR
        self.corner: Point = (0.0, 0.0)

    def paper(self, point: Point) -> Point:
        """Return the place on paper of a place on the stage."""
        return self.corner[0] + point[0] * self.zoom, self.corner[1] + point[1] * self.zoom

    def line(self, points: Sequence[Point], pen: Pen, *, closed: bool = False) -> None:
        """Draw a line through points of the stage."""
        super().line([self.paper(point) for point in points], pen, closed=closed)

    def area(self, points: Sequence[Point], fill: str, pen: Pen | None = None) -> None:
        """Fill a closed shape on the stage, with its outline where wanted."""
        super().area([self.paper(point) for point in points], fill)
        if pen is not None:
            self.line(points, pen, closed=True)

    def dots(self, centres: Iterable[Point], radius: float, colour: str = "") -> None:
        """Draw filled dots on the stage."""
        super().dots([self.paper(centre) for centre in centres], radius * self.zoom, colour)

    def heads(self, arrows: Iterable[Segment], size: float, colour: str = "") -> None:
        """Draw arrowheads at the ends of lines on the stage."""
        super().heads([(self.paper(start), self.paper(end)) for start, end in arrows], size * self.zoom, colour)

    def text(self, words: str, x: float, y: float, **how: Unpack[Lettering]) -> Label:
        """Write words at a place of the stage."""
        return super().text(words, *self.paper((x, y)), **how)

    def room(self, label: Label) -> Box:
        """Return the room that written words take on the stage, with a little air."""
        box = label.box.grown(0.02)
        (left, top), (right, bottom) = (
            ((x - self.corner[0]) / self.zoom, (y - self.corner[1]) / self.zoom)
            for x, y in ((box.left, box.top), (box.right, box.bottom))
        )
        return Box(left, top, right, bottom)


@dataclass(frozen=True, slots=True)
class Stage:
    """One part of a drawing: its title, its size for words of 7 pt [in], and what draws it from its own corner."""

    title: str
    width: float
    height: float
    draw: Callable[[StageCanvas], None]


def set_up(stages: Sequence[Stage], style: Style, key: str) -> StageCanvas:
    """Return a canvas with the stages side by side, or one below the other where the page is too narrow for that."""
    zoom = style.small / DRAWN_FOR
    widths = [stage.width * zoom for stage in stages]
    beside = sum(widths) + GAP * (len(stages) - 1) <= PAGE
    head = 1.8 * text_height(style.small) if any(stage.title for stage in stages) else 0.0
    heights = [head + stage.height * zoom for stage in stages]
    wide = sum(widths) + GAP * (len(stages) - 1) if beside else max(widths)
    high = max(heights) if beside else sum(heights) + GAP * (len(stages) - 1)
    canvas = StageCanvas(wide, high, style, key)
    left = top = 0.0
    for stage, width, height in zip(stages, widths, heights, strict=True):
        canvas.corner = (left, top)
        if stage.title:
            canvas.text(stage.title, stage.width / 2, head / 2 / zoom, bold=True)
        canvas.corner = (left, top + head)
        stage.draw(canvas)
        left, top = (left + width + GAP, top) if beside else (left, top + height + GAP)
    return canvas

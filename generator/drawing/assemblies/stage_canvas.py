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
from generator.drawing.patterns import hatching_inside
from generator.drawing.style import Pen, Style
from generator.lengths import say_length

PAGE = 7.0
GAP, BELOW = 0.25, 0.12
LITTLE = 0.88
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
        """Fill a closed shape on the stage, with its outline where wanted; what is shaded is hatched, for copies."""
        placed = [self.paper(point) for point in points]
        super().area(placed, self._ground(fill))
        for line in hatching_inside(placed) if fill == self.style.shade else ():
            super().line(line, self.style.hatch)
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
        if how.get("backing"):
            how["backing"] = self._ground(how["backing"])
        return super().text(words, *self.paper((x, y)), **how)

    def _ground(self, fill: str) -> str:
        """What is drawn for a filling: cloth is white on paper, and so is what lies under hatching and words on it."""
        return self.style.paper if fill in (self.style.shade, self.style.cloth) else fill

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


@dataclass(frozen=True, slots=True)
class StageRows:
    """Stages in rows that fit a width: how much each is enlarged, and how wide and high all of them are [in]."""

    rows: tuple[tuple[Stage, ...], ...]
    zoom: float
    head: float

    @property
    def width(self) -> float:
        """The width of the widest row."""
        return max(sum(stage.width * self.zoom for stage in row) + GAP * (len(row) - 1) for row in self.rows)

    @property
    def height(self) -> float:
        """The height of all rows."""
        return sum(self.row_height(row) for row in self.rows) + BELOW * (len(self.rows) - 1)

    def row_height(self, row: Sequence[Stage]) -> float:
        """Return the height of one row with the titles of its stages."""
        return self.head + max(stage.height for stage in row) * self.zoom


def in_rows(stages: Sequence[Stage], style: Style, width: float = PAGE) -> StageRows:
    """Return stages side by side as far as a width lets them; a stage that is wider is drawn smaller, not its words."""
    zoom = min(style.small / DRAWN_FOR, width / max(stage.width for stage in stages))
    # Where all of them would all but fit beside each other, they are drawn a little smaller and do.
    beside_each_other = (width - GAP * (len(stages) - 1)) / sum(stage.width for stage in stages)
    zoom = beside_each_other if LITTLE * zoom <= beside_each_other < zoom else zoom
    head = 1.8 * text_height(style.small) if any(stage.title for stage in stages) else 0.0
    rows: list[list[Stage]] = [[]]
    for stage in stages:
        beside = sum(one.width * zoom + GAP for one in rows[-1])
        if rows[-1] and beside + stage.width * zoom > width + 1e-9:
            rows.append([])
        rows[-1].append(stage)
    return StageRows(tuple(tuple(row) for row in rows), zoom, head)


def set_up(placed: StageRows, style: Style, key: str, size: tuple[float, float] | None = None) -> StageCanvas:
    """Return a canvas with stages in their rows, as large as they are, or in the middle of a size [in]."""
    width, height = size or (placed.width, placed.height)
    canvas = StageCanvas(width, height, style, key)
    canvas.zoom = zoom = placed.zoom
    top = (height - placed.height) / 2
    for row in placed.rows:
        left = (width - sum(stage.width * zoom for stage in row) - GAP * (len(row) - 1)) / 2
        for stage in row:
            canvas.corner = (left, top)
            if stage.title:
                canvas.text(stage.title, stage.width / 2, placed.head / 2 / zoom, bold=True)
            canvas.corner = (left, top + placed.head)
            stage.draw(canvas)
            left += stage.width * zoom + GAP
        top += placed.row_height(row) + BELOW
    return canvas

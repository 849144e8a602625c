"""Paper to draw on: lines, areas and words in inches come in, a slim SVG picture goes out.

x runs to the right and y *down* from the top left corner, both in inches on paper. What is drawn is first only
written down, so that tests can ask where every line and label lies; all lines of one pen become one path.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from itertools import pairwise
from typing import TypedDict, Unpack

import numpy as np
import numpy.typing as npt

from generator.drawing.labels import Hold, Label, Point, Segment, crossings
from generator.drawing.patterns import PATTERN_DOT, dots_inside, hatching_inside
from generator.drawing.picture import Picture
from generator.drawing.sizes import DrawnSize
from generator.drawing.style import Pen, Style
from generator.drawing.svg import PathGroup, Pixels, written_svg
from generator.drawing.typeface import Typeface


class Lettering(TypedDict, total=False):
    """How words may be written: the fields of a label beside its words and place."""

    size: float
    hold: Hold
    turned: bool
    bold: bool
    backing: str
    colour: str
    font: Typeface


class Canvas:
    """A sheet of ``width`` by ``height`` inches; ``key`` names the picture.

    An area hides what was drawn before it. Lines, dots and arrowheads lie over the areas before them, words over all.
    """

    def __init__(self, width: float, height: float, style: Style, key: str) -> None:
        self.width = float(width)
        self.height = float(height)
        self.style = style
        self.key = key
        self.labels: list[Label] = []
        self.segments: list[Segment] = []
        self._layers: list[PathGroup] = []
        self._open: dict[tuple[object, ...], PathGroup] = {}
        self._images: list[Pixels] = []
        self._clip: tuple[Point, ...] = ()

    def line(self, points: Sequence[Point], pen: Pen, *, closed: bool = False) -> None:
        """Draw a line through points."""
        through = [*points, points[0]] if closed else list(points)
        self._layer(pen=pen).outlines.append(through)
        self.segments += pairwise(through)

    def lines(self, lines: Iterable[Sequence[Point]], pen: Pen) -> None:
        """Draw several lines with one pen."""
        for points in lines:
            self.line(points, pen)

    def area(self, points: Sequence[Point], fill: str, pen: Pen | None = None) -> None:
        """Fill a closed shape, over all that was drawn before; its outline, where wanted, with a pen."""
        layer = PathGroup(None, fill, self._clip, [tuple(points)])
        self._layers.append(layer)
        self._open.clear()
        if pen is not None:
            self.line(points, pen, closed=True)

    def hatched(self, points: Sequence[Point], pen: Pen | None = None) -> None:
        """Hatch a closed shape that need not be seen through; its outline, where wanted, with a pen."""
        self.area(points, self.style.paper)
        self.lines(hatching_inside(points), self.style.hatch)
        if pen is not None:
            self.line(points, pen, closed=True)

    def dotted(self, points: Sequence[Point], pen: Pen | None = None) -> None:
        """Fill a closed shape with dots: what is left over; its outline, where wanted, with a pen."""
        self.area(points, self.style.paper)
        self.dots(dots_inside(points), PATTERN_DOT)
        if pen is not None:
            self.line(points, pen, closed=True)

    def rectangle(self, corner: Point, opposite: Point, *, fill: str = "", pen: Pen | None = None) -> None:
        """Draw a rectangle between two corners, filled or only outlined."""
        (left, top), (right, bottom) = corner, opposite
        points = ((left, top), (right, top), (right, bottom), (left, bottom))
        if fill:
            self.area(points, fill, pen)
        elif pen is not None:
            self.line(points, pen, closed=True)

    def circle(self, centre: Point, radius: float, *, fill: str = "", pen: Pen | None = None) -> None:
        """Draw a circle, filled or only outlined."""
        around = _ring(centre, radius)
        if fill:
            self.area(around, fill, pen)
        elif pen is not None:
            self.line(around, pen, closed=True)

    def dots(self, centres: Iterable[Point], radius: float, colour: str = "") -> None:
        """Draw filled dots."""
        layer = self._layer(fill=colour or self.style.ink)
        for x, y in centres:
            layer.outlines.append(_ring((x, y), radius))
            self.segments += [((x - radius, y), (x + radius, y)), ((x, y - radius), (x, y + radius))]

    def shape(self, points: Sequence[Point], colour: str = "") -> None:
        """Draw a small filled sign; like a dot it lies among the lines, and all of one colour are one path."""
        self._layer(fill=colour or self.style.ink).outlines.append(tuple(points))

    def heads(self, arrows: Iterable[Segment], size: float, colour: str = "") -> None:
        """Draw filled arrowheads at the ends of straight lines; ``size`` is their length [in]."""
        layer = self._layer(fill=colour or self.style.ink)
        for (start_x, start_y), (end_x, end_y) in arrows:
            length = math.hypot(end_x - start_x, end_y - start_y)
            along_x, along_y = (end_x - start_x) / length * size, (end_y - start_y) / length * size
            back_x, back_y = end_x - along_x, end_y - along_y
            left = (back_x - along_y * 0.38, back_y + along_x * 0.38)
            right = (back_x + along_y * 0.38, back_y - along_x * 0.38)
            layer.outlines.append(((end_x, end_y), left, right))

    def arrow(self, start: Point, end: Point, pen: Pen, *, both: bool = False, size: float = 0.07) -> None:
        """Draw a straight arrow, with a head at its end or at both ends."""
        self.line((start, end), pen)
        self.heads([(start, end), (end, start)] if both else [(start, end)], size, pen.colour)

    def label(self, label: Label) -> None:
        """Write a label."""
        self.labels.append(label)

    def text(self, words: str, x: float, y: float, **how: Unpack[Lettering]) -> Label:
        """Write words in the style's small size and font, or as the keywords of :class:`Label` say."""
        values: Lettering = {"size": self.style.small, "font": self.style.font, "colour": self.style.ink}
        values.update(how)
        label = Label(words, x, y, **values)
        self.labels.append(label)
        return label

    def image(self, pixels: npt.NDArray[np.uint8], corner: Point, opposite: Point) -> None:
        """Place a picture of pixels (rows from the top, RGB or RGBA) between two corners, under everything else."""
        self._images.append(Pixels(pixels, corner, opposite))

    @contextmanager
    def clipped(self, points: Sequence[Point]) -> Iterator[None]:
        """Draw lines and areas only inside a closed shape; words are not clipped."""
        self._clip = tuple(points)
        yield
        self._clip = ()

    def crossings(self) -> tuple[str, ...]:
        """Return what overlaps or leaves the paper, in words; empty when all is well."""
        outside = [
            f"'{label.words}' leaves the paper"
            for label in self.labels
            if label.box.left < 0 or label.box.top < 0 or label.box.right > self.width or label.box.bottom > self.height
        ]
        return (*outside, *crossings(self.labels, self.segments))

    def picture(self, alt: str, caption: str, text: str = "") -> Picture:
        """Return the finished picture; the same drawing gives the same bytes."""
        svg = written_svg(
            (self.width, self.height), self.key, self._images, [*self._layers, *self._lettering()], self.style
        )
        return Picture(self.key, svg, self.width, self.height, alt, caption, text)

    def _lettering(self) -> list[PathGroup | Label]:
        patches: list[PathGroup | Label] = [_patch(label) for label in self.labels if label.backing]
        return patches + self.labels

    def _layer(self, pen: Pen | None = None, fill: str = "") -> PathGroup:
        sort = (pen, fill, self._clip)
        if sort not in self._open:
            self._open[sort] = PathGroup(pen, fill, self._clip)
            self._layers.append(self._open[sort])
        return self._open[sort]


def canvas_of(size: DrawnSize, style: Style, key: str) -> Canvas:
    """Return paper of a size."""
    return Canvas(*size.inches, style, key)


def _patch(label: Label) -> PathGroup:
    box = label.box.grown(0.01)
    corners = ((box.left, box.top), (box.right, box.top), (box.right, box.bottom), (box.left, box.bottom))
    return PathGroup(fill=label.backing, outlines=[corners])


def _ring(centre: Point, radius: float) -> tuple[Point, ...]:
    steps = max(6 if radius < 0.01 else 16, math.ceil(radius * 100))
    return tuple(
        (centre[0] + radius * math.cos(math.tau * step / steps), centre[1] + radius * math.sin(math.tau * step / steps))
        for step in range(steps)
    )

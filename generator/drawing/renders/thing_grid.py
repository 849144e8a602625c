"""The grid of a thing that is laid flat: rectangles, polygons and lines in inches come in, what they cover goes out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from PIL import Image as Raster
from PIL import ImageDraw

from generator.drawing.labels import Box, Point
from generator.drawing.renders.colours import Image
from generator.drawing.renders.grids import Grid


@dataclass(slots=True)
class FlatThing:
    """A thing laid flat on a grid whose corner lies at (``left``, ``top``) of it [in]."""

    left: float
    top: float
    pixels: float
    height: Grid
    colour: Image
    cover: Grid

    def slices(self, box: Box) -> tuple[slice, slice]:
        """Return the rows and columns of the grid that a rectangle covers."""
        high, wide = self.cover.shape
        rows = (round((line - self.top) * self.pixels) for line in (box.top, box.bottom))
        columns = (round((line - self.left) * self.pixels) for line in (box.left, box.right))
        return slice(*(min(max(row, 0), high) for row in rows)), slice(*(min(max(one, 0), wide) for one in columns))

    def filled(self, points: Sequence[Point]) -> Grid:
        """Return what a polygon covers: 1 inside, 0 outside."""
        high, wide = self.cover.shape
        raster = Raster.new("L", (wide, high), 0)
        places = [((x - self.left) * self.pixels - 0.5, (y - self.top) * self.pixels - 0.5) for x, y in points]
        ImageDraw.Draw(raster).polygon(places, fill=1)
        return np.asarray(raster, dtype=np.float32)

    def ruled(self, lines: Sequence[Sequence[Point]], wide: float) -> Grid:
        """Return what lines of a width [in] cover."""
        raster = Raster.new("L", self.cover.shape[::-1], 0)
        for line in lines:
            places = [((x - self.left) * self.pixels, (y - self.top) * self.pixels) for x, y in line]
            ImageDraw.Draw(raster).line(places, fill=1, width=max(1, round(wide * self.pixels)))
        return np.asarray(raster, dtype=np.float32)

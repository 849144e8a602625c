"""The finished thing laid out flat, as lit cloth: a worksheet comes in, its colours and what it covers go out.

Shapes are laid one over the other, as the line drawing does; the whole is lit at once, so that a flap throws its shadow
on what it closes.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from PIL import Image as Raster
from PIL import ImageDraw

from generator.calculation.making_up.laid import Lying
from generator.calculation.worked_project import Worksheet
from generator.drawing.labels import Box, Point
from generator.drawing.renders.cloths import ClothGrid, cloth_of, plain_cloth
from generator.drawing.renders.colours import Image, mixed
from generator.drawing.renders.edgings import CORD, SIDES, binding_dye, bound, bound_edges, corded, dye_of, sewn_on_cord
from generator.drawing.renders.grids import Grid, blurred
from generator.drawing.renders.lamp import lit
from generator.drawing.things.shapes import Shape

ABOVE = 0.06  # how much higher a shape lies than what was laid before it and reaches beyond it [in]
ROUNDED, SUNK = 0.07, 0.06  # how far from its edge a piece is round, and how deep it sinks there [in]


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


def flat_thing(
    worksheet: Worksheet, shapes: Sequence[Shape], whole: Box, pixels: float, *, quarter: int = 0
) -> FlatThing:
    """Return shapes laid flat, on ``pixels`` places to an inch, turned clockwise by quarter turns, and lit.

    Turned once, what lay at (x, y) lies at (-y, x).
    """
    size = tuple(max(2, round(side * pixels)) for side in (whole.bottom - whole.top, whole.right - whole.left))
    blank = np.zeros(size, dtype=np.float32)
    thing = FlatThing(whole.left, whole.top, pixels, blank, np.zeros((*size, 3), dtype=np.float32), blank.copy())
    for shape in shapes:
        if len(shape.covers) > 2:
            _lay(thing, worksheet, shape)
    cord, rounded = corded(worksheet), any(is_round(worksheet, shape) for shape in shapes)
    if worksheet.laid_out.depth and cord is not None:
        laid = (thing.height, thing.colour)
        round_it = bound(laid, thing.cover, {"rim": CORD}, cord, pixels)
        thing.height, thing.colour = round_it if rounded else sewn_on_cord(laid, cord, SIDES, pixels)
    thing = _laid(thing, whole, quarter)
    thing.colour = lit(thing.height, thing.colour, pixels)
    return thing


def is_round(worksheet: Worksheet, shape: Shape) -> bool:
    """Return whether a shape is a round piece."""
    return shape.lying is not None and any(
        part.outline.one_measure for part in worksheet.pieces[shape.lying.piece].parts
    )


def _laid(thing: FlatThing, whole: Box, quarter: int) -> FlatThing:
    """A thing after quarter turns clockwise."""
    left, top = {
        0: (whole.left, whole.top),
        1: (-whole.bottom, whole.left),
        2: (-whole.right, -whole.bottom),
        3: (whole.top, -whole.right),
    }[quarter % 4]
    grids = [np.rot90(grid, -quarter) for grid in (thing.height, thing.colour, thing.cover)]
    return FlatThing(left, top, thing.pixels, *(np.ascontiguousarray(grid) for grid in grids))


def _lay(thing: FlatThing, worksheet: Worksheet, shape: Shape) -> None:
    """Lay one shape over those before it."""
    mask = thing.filled(shape.covers)
    if shape.lying is None:
        cloth = plain_cloth(thing.cover.shape, thing.pixels, dye_of(worksheet, shape.cloth))
        rows, columns = slice(None), slice(None)
    else:
        piece = worksheet.pieces[shape.lying.piece]
        box = Box(*(float(side) for side in (shape.lying.left, shape.lying.top, shape.lying.right, shape.lying.bottom)))
        rows, columns = thing.slices(box)
        shown = (rows.stop - rows.start, columns.stop - columns.start)
        cloth = _turned(
            cloth_of(piece, dye_of(worksheet, piece.cloth), thing.pixels, turned_shape(shown, shape.lying)), shape.lying
        )
    bare = thing.cover[rows, columns] < 0.5
    mask = _inside(mask, rows, columns)
    part = mask[rows, columns] > 0.5
    if not part.size:
        return
    soft = blurred(mask, max(1, round(ROUNDED * thing.pixels)))[rows, columns]
    raised = cloth.height + np.where(bare, np.float32(0), np.float32(ABOVE))
    height = np.asarray(raised - np.float32(SUNK) * np.square(np.clip(2 - 2 * soft, 0, 1)), dtype=np.float32)
    colour = cloth.colour
    if shape.lying is not None:
        edges, dye = bound_edges(worksheet, shape.lying), binding_dye(worksheet)
        height, colour = bound((height, colour), mask[rows, columns], edges, dye, thing.pixels)
    thing.height[rows, columns] = np.where(part, height, thing.height[rows, columns])
    thing.colour[rows, columns] = np.where(part[..., np.newaxis], colour, thing.colour[rows, columns])
    np.maximum(thing.cover, mask, out=thing.cover)
    if shape.stitched:
        _hem(thing, shape.stitched)


def turned_shape(shown: tuple[int, int], lying: Lying) -> tuple[int, int]:
    """Return the size of a piece's own grid, before its quarter turns."""
    return (shown[1], shown[0]) if lying.turned % 2 else shown


def _turned(cloth: ClothGrid, lying: Lying) -> ClothGrid:
    return ClothGrid(*(np.rot90(grid, -lying.turned) for grid in (cloth.height, cloth.colour)))


def _inside(mask: Grid, rows: slice, columns: slice) -> Grid:
    """A mask cut to the rectangle of its piece."""
    found = np.zeros_like(mask)
    found[rows, columns] = mask[rows, columns]
    return found


def _hem(thing: FlatThing, lines: Sequence[Sequence[Point]]) -> None:
    """Stitch along the inner folds of hems."""
    sewn = thing.ruled(lines, 0.02) * thing.cover
    thing.height -= np.float32(0.03) * blurred(sewn, max(1, round(0.02 * thing.pixels)))
    thing.colour = mixed(thing.colour, np.asarray(thing.colour * 0.85, dtype=np.float32), sewn)


def boxing(worksheet: Worksheet, wide: float, deep: float, pixels: float) -> FlatThing:
    """Return one side of a boxing, lit, with the cords of its piping along its edges where it is piped."""
    cloth = next((piece.cloth for piece in worksheet.pieces.values() if piece.made.goes_round == "faces"), "")
    size = tuple(max(2, round(side * pixels)) for side in (deep, wide))
    plain, cord = plain_cloth(size, pixels, dye_of(worksheet, cloth)), corded(worksheet)
    height, colour = plain.height, plain.colour
    if cord is not None:
        height, colour = sewn_on_cord((height, colour), cord, ("top", "bottom"), pixels)
    return FlatThing(0.0, 0.0, pixels, height, lit(height, colour, pixels), np.ones(size, dtype=np.float32))

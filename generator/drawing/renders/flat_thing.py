"""The finished thing laid out flat, as lit cloth: a worksheet comes in, its colours and what it covers go out.

Shapes are laid one over the other, as the line drawing does; the whole is lit at once, so that a flap throws its shadow
on what it closes.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from generator.calculation.making_up.laid import Lying
from generator.calculation.worked_project import Worksheet
from generator.drawing.labels import Box, Point
from generator.drawing.renders.cloths import ClothGrid, cloth_of, plain_cloth
from generator.drawing.renders.colours import mixed
from generator.drawing.renders.edgings import CORD, SIDES, binding_dye, bound, bound_edges, corded, dye_of, sewn_on_cord
from generator.drawing.renders.grids import Grid, blurred
from generator.drawing.renders.lamp import lit
from generator.drawing.renders.thing_grid import FlatThing
from generator.drawing.renders.zips import with_teeth
from generator.drawing.things.forms import is_round
from generator.drawing.things.shapes import Shape

ABOVE = 0.06  # how much higher a shape lies than what was laid before it and reaches beyond it [in]
# How far from its edge a piece is round, and how deep it sinks there [in]; more where it is quilted over wadding.
PLAIN, QUILTED = (0.07, 0.06), (0.4, 0.16)


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
    cord, rounded = corded(worksheet), any(lies_round(worksheet, shape) for shape in shapes)
    if worksheet.laid_out.depth and cord is not None:
        laid = (thing.height, thing.colour)
        round_it = bound(laid, thing.cover, {"rim": CORD}, cord, pixels)
        thing.height, thing.colour = round_it if rounded else sewn_on_cord(laid, cord, SIDES, pixels)
    thing = _laid(with_teeth(thing, worksheet), whole, quarter)
    thing.colour = lit(thing.height, thing.colour, pixels)
    return thing


def lies_round(worksheet: Worksheet, shape: Shape) -> bool:
    """Return whether a shape is a round piece."""
    return shape.lying is not None and is_round(worksheet.pieces[shape.lying.piece])


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
    rounded, sunk = QUILTED if any(one.fixed == "quilted" for one in worksheet.pieces.values()) else PLAIN
    soft = blurred(mask, max(1, round(rounded * thing.pixels)))[rows, columns]
    raised = cloth.height + np.where(bare, np.float32(0), np.float32(ABOVE))
    height = np.asarray(raised - np.float32(sunk) * np.square(np.clip(2 - 2 * soft, 0, 1.4)), dtype=np.float32)
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
    """Return one side of a boxing, lit: with the cords of its piping where it is piped, and its hem."""
    strip = next((piece for piece in worksheet.pieces.values() if piece.made.goes_round == "faces"), None)
    size = tuple(max(2, round(side * pixels)) for side in (deep, wide))
    plain, cord = plain_cloth(size, pixels, dye_of(worksheet, strip.cloth if strip else "")), corded(worksheet)
    height, colour = plain.height, plain.colour
    if cord is not None:
        height, colour = sewn_on_cord((height, colour), cord, ("top", "bottom"), pixels)
    thing = FlatThing(0.0, 0.0, pixels, height, colour, np.ones(size, dtype=np.float32))
    hem = strip.edges["bottom"].end if strip is not None and "bottom" in strip.edges else None
    if hem is not None and hem.kind == "hem":
        _hem(thing, [((0.0, deep - float(hem.second)), (wide, deep - float(hem.second)))])
    thing.colour = lit(thing.height, thing.colour, pixels)
    return thing

"""What is sewn round the edges of cloth: bindings and cords; heights and colours come in, and go out with them."""

from __future__ import annotations

from collections.abc import Collection, Mapping

import numpy as np

from generator.calculation.making_up.laid import CLOCKWISE, Lying
from generator.calculation.worked_project import Worksheet
from generator.drawing.renders.cloths import plain_cloth
from generator.drawing.renders.colours import Image, dyed
from generator.drawing.renders.grids import Grid, blurred

SIDES = CLOCKWISE
BINDING = 0.05  # how high a binding stands [in]
CORD = 0.2  # how thick a piping is [in]
RELIEF = tuple[Grid, Image]


def dye_of(worksheet: Worksheet, cloth: str) -> Image:
    """Return the linear colour of a cloth by its name."""
    found = worksheet.cloths.get(cloth)
    return dyed(found.colour if found else "")


def corded(worksheet: Worksheet) -> Image | None:
    """Return the colour of a thing's piping, None where it is not piped."""
    cords = [piece.cloth for piece in worksheet.pieces.values() if piece.made.goes_round == "a cord"]
    return dye_of(worksheet, cords[0]) if cords else None


def binding_dye(worksheet: Worksheet) -> Image:
    """Return the colour of what binds the edges of a thing."""
    bindings = [piece.cloth for piece in worksheet.pieces.values() if piece.made.goes_round == "an edge"]
    return dye_of(worksheet, bindings[0] if bindings else "")


def bound_edges(worksheet: Worksheet, lying: Lying) -> Mapping[str, float]:
    """Return where the bound edges of a piece lie in the thing, and how wide each binding is [in]."""
    edges = worksheet.pieces[lying.piece].edges
    return {lying.lies_at(side): float(edge.end.first) for side, edge in edges.items() if edge.end.kind == "bound"}


def bound(cloth: RELIEF, mask: Grid, edges: Mapping[str, float], dye: Image, pixels: float) -> RELIEF:
    """Return cloth with bindings along some of its edges; ``mask`` is what it covers, a rim lies all round it."""
    wide = max(edges.values(), default=0.0) * pixels
    if wide < 1:
        return cloth
    border = round(2 * wide) + 2
    near = blurred(np.pad(mask, border), round(wide))[border:-border, border:-border]
    away = _away(mask.shape)
    band = near < 0.875
    if edges.keys() & away.keys():
        beside = np.minimum.reduce([away[side] / max(edges[side], 1e-6) for side in edges.keys() & away.keys()])
        band &= beside < pixels
    stands = BINDING * np.sqrt(np.clip((near - 0.5) / 0.375, 0, 1) * np.clip((0.9 - near) / 0.2, 0, 1))
    height, colour = cloth
    tone = plain_cloth(mask.shape, pixels, dye).colour
    return np.where(band, stands, height).astype(np.float32), np.where(band[..., np.newaxis], tone, colour)


def sewn_on_cord(cloth: RELIEF, dye: Image, sides: Collection[str], pixels: float) -> RELIEF:
    """Return cloth with a cord along some of its sides."""
    height, colour = cloth
    away = _away(height.shape)
    near = np.minimum.reduce([away[side] for side in sides]) / (CORD * pixels)
    cord = near < 1
    stands = CORD / 2 * np.sqrt(1 - np.square(2 * np.clip(near, 0, 1) - 1))
    sunk = height - 0.04 * np.exp(-np.maximum(near - 1, 0))
    tone = plain_cloth(height.shape, pixels, dye).colour
    return np.where(cord, stands, sunk).astype(np.float32), np.where(cord[..., np.newaxis], tone, colour)


def _away(shape: tuple[int, ...]) -> dict[str, Grid]:
    """How far each place of a grid lies from each side of it [places]."""
    high, wide = shape
    down = np.broadcast_to(np.arange(high, dtype=np.float32)[:, np.newaxis], shape)
    right = np.broadcast_to(np.arange(wide, dtype=np.float32), shape)
    lines = (down, wide - 1 - right, high - 1 - down, right)
    return {side: np.asarray(line, dtype=np.float32) for side, line in zip(SIDES, lines, strict=True)}

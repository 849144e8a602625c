"""What stands behind a thing in its picture: the size of the picture comes in, a lit ground goes out.

Grounds are plain and quiet: a wall, a floor, a table of wood, a window. They are not part of what is made.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.drawing.renders.colours import Image, linear
from generator.drawing.renders.grids import Grid, blurred, uneven

WALL, DEEP_WALL, EVENING = linear(0.905, 0.878, 0.832), linear(0.66, 0.68, 0.68), linear(0.45, 0.41, 0.35)
FLOOR, WOOD, DARK_WOOD = linear(0.73, 0.61, 0.48), linear(0.70, 0.55, 0.39), linear(0.5, 0.37, 0.26)
PANE, FRAME = linear(0.78, 0.84, 0.88), linear(0.95, 0.94, 0.91)
PALE = 0.42  # from this brightness on a cloth wants a deeper ground


@dataclass(frozen=True, slots=True)
class Field:
    """The places of a picture: from the left and from the top, each from 0 to 1 of its height."""

    right: Grid
    down: Grid

    @property
    def wide(self) -> float:
        """The width of the picture, in its height."""
        high, wide = self.right.shape
        return float(wide / high)


def field_of(wide: int, high: int) -> Field:
    """Return the places of a picture of a size."""
    right, down = ((np.arange(size, dtype=np.float32) + np.float32(0.5)) / np.float32(high) for size in (wide, high))
    return Field(*(np.ascontiguousarray(one) for one in np.broadcast_arrays(right[np.newaxis], down[:, np.newaxis])))


def _shaded(field: Field, colour: Image, fall: float = 0.22) -> Image:
    """A wall that gets darker away from the lamp at the upper left."""
    away = np.sqrt(np.square(field.right / field.wide * 0.8) + np.square(field.down * 0.7))
    light = 1.04 - np.float32(fall) * away
    return np.asarray(colour * light[..., np.newaxis], dtype=np.float32)


def wall(field: Field, *, pale: bool = False) -> Image:
    """Return a wall, deeper behind pale cloth."""
    return _shaded(field, DEEP_WALL if pale else WALL)


def evening_wall(field: Field, middle: tuple[float, float]) -> Image:
    """Return a wall in the evening, lit round a lamp."""
    away = np.square(field.right - middle[0]) + np.square(field.down - middle[1])
    glow = np.exp(-away / 0.16)
    warm = linear(0.98, 0.84, 0.62)
    return np.asarray(EVENING * np.float32(0.7) + 0.55 * warm * glow[..., np.newaxis], dtype=np.float32)


def wall_and_floor(field: Field, line: float, *, pale: bool = False) -> Image:
    """Return a wall with a floor below a line; where they meet is out of focus."""
    floor = np.clip((field.down - line) / 0.03 + 0.5, 0, 1)
    floor = floor * floor * (3 - 2 * floor)
    grain = 1 + 0.02 * uneven(field.down * 160 + 1.5 * uneven(field.right * 2, 12), 11)
    boards = _shaded(field, DARK_WOOD if pale else FLOOR, 0.3) * grain[..., np.newaxis]
    return np.asarray(wall(field, pale=pale) * (1 - floor[..., np.newaxis]) + boards * floor[..., np.newaxis])


def grained(across: Grid, along: Grid, colour: Image) -> Image:
    """Return wood by its own places [in]: boards that run along, with a fine grain."""
    wander = across + np.float32(0.25) * uneven(along * np.float32(0.12), 21)
    fine = uneven(wander * np.float32(9), 22) + np.float32(0.6) * uneven(wander * np.float32(23), 23)
    broad = uneven(wander * np.float32(0.9), 24)
    tone = 1 + np.float32(0.035) * fine + np.float32(0.05) * broad
    return np.asarray(colour * tone[..., np.newaxis], dtype=np.float32)


def table_top(field: Field, *, pale: bool = False) -> Image:
    """Return a table of wood from above."""
    wood = grained(field.down * 14, field.right * 14, DARK_WOOD if pale else WOOD)
    light = 1.06 - 0.3 * np.sqrt(np.square(field.right / field.wide) + np.square(field.down))
    return np.asarray(wood * light[..., np.newaxis], dtype=np.float32)


def window(field: Field, box: tuple[float, float, float, float]) -> Image:
    """Return a window in a wall; the box is its left, top, right and bottom in the height of the picture."""
    left, top, right, bottom = box
    ground = wall(field)
    frame = _within(field, left, top, right, bottom)
    ground = ground + (_shaded(field, FRAME, 0.1) - ground) * frame[..., np.newaxis]
    middle, bar = (left + right) / 2, 0.022
    sky = PANE * (1.12 - 0.3 * (field.down - top) / max(bottom - top, 0.01))[..., np.newaxis]
    for start, end in ((left + 0.03, middle - bar / 2), (middle + bar / 2, right - 0.03)):
        pane = _within(field, start, top + 0.03, end, bottom - 0.03)
        ground = ground + (sky - ground) * pane[..., np.newaxis]
    return np.asarray(ground, dtype=np.float32)


def _within(field: Field, left: float, top: float, right: float, bottom: float) -> Grid:
    """A rectangle with soft edges."""
    near = np.minimum(
        np.minimum(field.right - left, right - field.right), np.minimum(field.down - top, bottom - field.down)
    )
    return np.asarray(np.clip(near * len(field.down) + 0.5, 0, 1), dtype=np.float32)


def cast(ground: Image, cover: Grid, *, right: int, down: int, soft: int, dark: float) -> Image:
    """Return a ground with the shadow of what covers part of it, moved and softened [places]."""
    edged = np.pad(cover, soft * 2)
    shade = blurred(edged, soft)[soft * 2 : -soft * 2 or None, soft * 2 : -soft * 2 or None]
    high, wide = cover.shape
    rows, columns = np.clip(np.arange(high) - down, 0, high - 1), np.clip(np.arange(wide) - right, 0, wide - 1)
    shade = shade[rows[:, np.newaxis], columns]
    return np.asarray(ground * (1 - np.float32(dark) * shade[..., np.newaxis]), dtype=np.float32)


def stood(ground: Image, cover: Grid, foot: int) -> Image:
    """Return a ground with the shadow right under what stands on it at a line [places from the top]."""
    seen = cover[max(0, foot - 14) : foot + 2].max(axis=0) if foot > 2 else cover[0]
    high = len(cover)
    down = np.arange(high, dtype=np.float32)[:, np.newaxis] - (foot + 1)
    near = np.where(down < 0, np.exp(-np.square(down / (0.012 * high))), np.exp(-down / (0.022 * high)))
    line = blurred(np.repeat(seen[np.newaxis], 3, axis=0), max(1, round(0.012 * high)))[1]
    shade = np.float32(0.62) * near * line[np.newaxis]
    return np.asarray(ground * (1 - shade[..., np.newaxis]), dtype=np.float32)

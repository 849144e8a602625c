"""A thing put into a picture: a lit flat thing and its form come in, its colours and what it covers go out."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.drawing.labels import Box
from generator.drawing.renders.bends import Bend, Bent
from generator.drawing.renders.colours import Image
from generator.drawing.renders.grids import Grid
from generator.drawing.renders.thing_grid import FlatThing

FINER = 2  # each place of a picture is the mean of so many by so many


@dataclass(frozen=True, slots=True)
class Placed:
    """Where a form stands in a picture of ``wide`` by ``high`` places: its origin, and how long an inch is."""

    wide: int
    high: int
    scale: float
    left: float
    top: float

    def of(self, x: float, y: float) -> tuple[float, float]:
        """Return where a place of the form [in] stands in the picture."""
        return self.left + x * self.scale, self.top + y * self.scale

    def box(self, box: Box) -> Box:
        """Return where a rectangle of the form [in] stands in the picture."""
        return Box(*self.of(box.left, box.top), *self.of(box.right, box.bottom))


def placed(box: Box, size: tuple[int, int], room: Box, foot: float | None = None) -> Placed:
    """Return where a form stands: as large as a room in the picture lets it, in its middle or on a line."""
    wide, high = max(box.right - box.left, 1e-6), max(box.bottom - box.top, 1e-6)
    scale = min((room.right - room.left) / wide, (room.bottom - room.top) / high)
    left = (room.left + room.right - wide * scale) / 2 - box.left * scale
    top = (room.top + room.bottom - high * scale) / 2 if foot is None else foot - high * scale
    return Placed(*size, scale, left, top - box.top * scale)


def shown(thing: FlatThing, bend: Bend, place: Placed) -> tuple[Image, Grid]:
    """Return the colours of a bent thing in a picture, each as bright as it is covered, and what it covers."""
    (left, top), (right, bottom) = place.of(bend.box.left, bend.box.top), place.of(bend.box.right, bend.box.bottom)
    columns = slice(max(0, int(left) - 1), min(place.wide, int(right) + 2))
    rows = slice(max(0, int(top) - 1), min(place.high, int(bottom) + 2))
    colour = np.zeros((place.high, place.wide, 3), dtype=np.float32)
    cover = np.zeros((place.high, place.wide), dtype=np.float32)
    if rows.start >= rows.stop or columns.start >= columns.stop:
        return colour, cover
    x = _places(columns, place.left, place.scale)
    y = _places(rows, place.top, place.scale)
    found = seen(
        thing, bend.at(*(np.ascontiguousarray(one) for one in np.broadcast_arrays(x[np.newaxis], y[:, np.newaxis])))
    )
    mean = found.reshape(len(y) // FINER, FINER, len(x) // FINER, FINER, 4).mean(axis=(1, 3))
    colour[rows, columns], cover[rows, columns] = mean[..., :3], mean[..., 3]
    return colour, cover


def _places(run: slice, start: float, scale: float) -> Grid:
    number = (run.stop - run.start) * FINER
    places = (run.start + (np.arange(number) + 0.5) / FINER - start) / scale
    return np.asarray(places, dtype=np.float32)


def seen(thing: FlatThing, bent: Bent) -> Grid:
    """Return red, green, blue and cover of a thing at the places that a form shows, each as bright as it is covered."""
    high, wide = thing.cover.shape
    whole = np.dstack((thing.colour * thing.cover[..., np.newaxis], thing.cover)).reshape(-1, 4)
    column = np.clip((bent.across - thing.left) * np.float32(thing.pixels) - np.float32(0.5), 0, wide - 1)
    row = np.clip((bent.along - thing.top) * np.float32(thing.pixels) - np.float32(0.5), 0, high - 1)
    left, upper = column.astype(np.int32), row.astype(np.int32)
    beside, below = (column - left)[..., np.newaxis], (row - upper)[..., np.newaxis]
    right, lower = np.minimum(left + 1, wide - 1), np.minimum(upper + 1, high - 1)
    top = whole[upper * wide + left] * (1 - beside) + whole[upper * wide + right] * beside
    low = whole[lower * wide + left] * (1 - beside) + whole[lower * wide + right] * beside
    found = (top * (1 - below) + low * below) * bent.inside[..., np.newaxis]
    found[..., :3] *= bent.light[..., np.newaxis]
    return np.asarray(found, dtype=np.float32)


def over(ground: Image, colour: Image, cover: Grid) -> Image:
    """Return a picture with a thing before its ground."""
    return np.asarray(ground * (1 - cover[..., np.newaxis]) + colour, dtype=np.float32)

"""What lies flat and is thick in its middle: a flat thing comes in, and goes out lit so, whatever its outline."""

from __future__ import annotations

import numpy as np

from generator.drawing.renders.bends import faced
from generator.drawing.renders.grids import Grid, doubled, halved
from generator.drawing.renders.thing_grid import FlatThing

FORM, LEAST = 120, 6  # about so many places long is the grid of a form, and so many wide at the least
ROUNDS = 60  # of smoothing on each grid


def thickened(thing: FlatThing, thick: float, *, stands: bool = False) -> FlatThing:
    """Return a thing lit as one that is thick in its middle, in parts of its smaller side.

    One that ``stands`` is open below, and as thick there as above.
    """
    high, wide = thing.cover.shape
    step = max(1, max(high, wide) // FORM)
    cover = thing.cover[step // 2 :: step, step // 2 :: step]
    if not thick or min(cover.shape) < LEAST:
        return thing
    rows = len(cover)
    up = risen(np.pad(cover, ((1, rows + 1 if stands else 1), (1, 1)), mode="edge" if stands else "constant"))
    down, right = np.gradient(up * np.float32(thick * min(cover.shape)))
    down, right = (np.clip(slope[1 : rows + 1, 1:-1], -1.4, 1.4) for slope in (down, right))
    light = faced(-right, -down, 1.0)
    places = [(np.arange(size, dtype=np.float32) + 0.5) / step - 0.5 for size in (high, wide)]
    thing.colour = np.asarray(thing.colour * _between(light, *places)[..., np.newaxis], dtype=np.float32)
    return thing


def risen(cover: Grid) -> Grid:
    """Return how high a skin over an outline stands that is blown up a little: 0 at its edge, 1 where it is highest.

    Its height satisfies the equation of a loaded membrane, found from a coarse grid to a finer one.
    """
    coarser = [cover]
    while min(coarser[-1].shape) > 2 * LEAST:
        coarser.append(halved(coarser[-1]))
    up = np.zeros_like(coarser[-1])
    for inside in reversed(coarser):
        up = doubled(up, inside.shape) * 4 if up.shape != inside.shape else up
        for _ in range(ROUNDS):
            edged = np.pad(up, 1)
            beside = edged[:-2, 1:-1] + edged[2:, 1:-1] + edged[1:-1, :-2] + edged[1:-1, 2:]
            up = np.asarray((beside + 1) / 4 * inside, dtype=np.float32)
    return np.asarray(np.sqrt(up / max(float(up.max()), 1e-6)), dtype=np.float32)


def _between(grid: Grid, down: Grid, right: Grid) -> Grid:
    """A grid at places between its own."""
    rows, columns = (np.clip(place, 0, size - 1.001) for place, size in zip((down, right), grid.shape, strict=True))
    upper, left = rows.astype(np.int64), columns.astype(np.int64)
    below, beside = (rows - upper)[:, np.newaxis].astype(np.float32), (columns - left)[np.newaxis].astype(np.float32)
    lines = grid[:, left] * (1 - beside) + grid[:, left + 1] * beside
    return np.asarray(lines[upper] * (1 - below) + lines[upper + 1] * below, dtype=np.float32)

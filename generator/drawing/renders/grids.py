"""Sums on grids of a picture: arrays come in, arrays go out, the same on every machine."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Grid = NDArray[np.float32]
Whole = NDArray[np.int64]


def chance(number: Whole | int, seed: int = 0) -> Grid:
    """Return a share from 0 to 1 for every whole number, spread as if by chance, always the same for the same number.

    The numbers are stirred as whole numbers of 32 bits, which is exact everywhere.
    """
    given = np.asarray(number, dtype=np.int64)
    start = (seed * 668265263 + 1442695041) & 0xFFFFFFFF
    stirred = (given.reshape(-1).astype(np.uint64) * 374761393 + start) & 0xFFFFFFFF
    for shift, factor in ((15, 2246822519), (13, 3266489917)):
        stirred = ((stirred ^ (stirred >> shift)) * factor) & 0xFFFFFFFF
    return np.asarray((stirred ^ (stirred >> 16)) / 4294967296.0, dtype=np.float32).reshape(given.shape)


def uneven(place: Grid, seed: int = 0) -> Grid:
    """Return a smooth unevenness along a line, from -1 to 1, that changes with every whole number on it."""
    whole = np.floor(place)
    share = (place - whole).astype(np.float32)
    soft = share * share * (3 - 2 * share)
    before, after = (chance(whole.astype(np.int64) + step, seed) for step in (0, 1))
    return np.asarray(2 * (before + (after - before) * soft) - 1, dtype=np.float32)


def blurred(grid: Grid, reach: int) -> Grid:
    """Return the mean of a grid over squares of ``reach`` places each way, taken twice for a soft edge."""
    if reach < 1:
        return grid
    for _ in range(2):
        grid = _blurred_down(_blurred_down(grid, reach).T, reach).T
    return grid


def _blurred_down(grid: Grid, reach: int) -> Grid:
    edged = np.pad(grid, ((reach + 1, reach), (0, 0)), mode="edge")
    total = np.cumsum(edged, axis=0, dtype=np.float64)
    return np.asarray((total[2 * reach + 1 :] - total[: len(grid)]) / (2 * reach + 1), dtype=np.float32)


def moved(grid: Grid, right: int, down: int) -> Grid:
    """Return a grid moved by whole places; what comes in from outside is as its edge."""
    high, wide = grid.shape
    rows = np.clip(np.arange(high) - down, 0, high - 1)
    columns = np.clip(np.arange(wide) - right, 0, wide - 1)
    return np.asarray(grid[rows[:, np.newaxis], columns])


def halved(grid: Grid) -> Grid:
    """Return a grid of half the size, of the mean of each two by two places; an odd edge is doubled."""
    high, wide = grid.shape
    even = np.pad(grid, ((0, high % 2), (0, wide % 2)), mode="edge")
    return (even[::2, ::2] + even[1::2, ::2] + even[::2, 1::2] + even[1::2, 1::2]) * np.float32(0.25)


def doubled(grid: Grid, shape: tuple[int, ...]) -> Grid:
    """Return a grid of twice the size, cut to a shape, with what lies between two places."""
    high, wide = shape
    return _between(_between(grid, high).T, wide).T


def _between(grid: Grid, size: int) -> Grid:
    place = np.clip((np.arange(size, dtype=np.float32) - 0.5) / 2, 0, len(grid) - 1)
    before = np.floor(place).astype(np.int64)
    after = np.minimum(before + 1, len(grid) - 1)
    share = (place - before).astype(np.float32)[:, np.newaxis]
    return np.asarray(grid[before] * (1 - share) + grid[after] * share, dtype=np.float32)

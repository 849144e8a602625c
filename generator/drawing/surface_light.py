"""Cloth and light: a surface comes in, an image of the lit cloth goes out, with the map of what lies uppermost.

The panel is seen from straight above as a relief: every flap is a fold of cloth, narrow at its foot and round at its
fold. The light falls low from the upper left, so that tucks turned to the left and to the right look different, each
casts a shadow on what lies beside it, and the hollows are darker than the ridges.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from generator.drawing.surface_geometry import Surface, angles, held_share, order

Grid = NDArray[np.float32]
Owners = NDArray[np.int16]

PANEL, CROSS = -1, -2
FOOT, ROUND = 0.05, 0.14  # half the thickness of a flap at its foot and at its fold, in depths
LIGHT = (-0.62, -0.42, 0.66)  # towards the lamp: from the left, from the top, from above
SHADOW_STEPS = 22
COLUMNS_AT_A_TIME = 64
# A flap that is let go is none any more under this share; the wave that it leaves is so high, in depths; by eye.
LEAST_SHARE, SOFT = 0.08, 0.2


@dataclass(frozen=True, slots=True)
class Relief:
    """A surface on a grid of ``pixels`` an inch: height above the panel [in], and which tuck lies uppermost.

    ``turned`` holds the angle of every tuck (first axis) on every line of the grid (second axis).
    """

    pixels: float
    height: Grid
    owner: Owners
    turned: NDArray[np.float64]


def relief(surface: Surface, pixels: float) -> Relief:
    """Return the relief of a surface; where flaps cover each other the one on top is kept."""
    wide, high = (round(float(size) * pixels) for size in (surface.across, surface.along))
    lines = (np.arange(high, dtype=np.float64) + 0.5) / np.float64(pixels)
    turned = angles(surface, lines)
    ranks = order(surface, lines, turned).astype(np.float32)
    height = np.zeros((high, wide), dtype=np.float32)
    owner = np.full((high, wide), PANEL, dtype=np.int16)
    top = np.full((high, wide), -1, dtype=np.float32)
    for number, (foot, depth) in enumerate(zip(surface.feet, surface.depths, strict=True)):
        reach = float(depth) * (1 + ROUND) + 2 / pixels
        first = max(0, int((float(foot) - reach) * pixels))
        last = min(wide, int((float(foot) + reach) * pixels) + 2)
        if first >= last:
            # Only a part of the panel is seen, and this tuck lies beside it.
            continue
        beside = ((np.arange(first, last) + 0.5) / pixels - float(foot)).astype(np.float32)
        flap = _flap(beside, turned[number].astype(np.float32), float(depth), 1 / pixels)
        if surface.stitched:
            share = held_share(surface, number, lines).astype(np.float32)[:, np.newaxis]
            flap *= np.where(share > LEAST_SHARE, share, 0)
            height[:, first:last] += _soft_fold(beside, float(depth)) * (1 - share)
        upper = (flap > 0) & (ranks[number][:, np.newaxis] > top[:, first:last])
        under = height[:, first:last]
        lies = flap[upper] + np.where(owner[:, first:last] == PANEL, 0, FOOT * float(depth))[upper]
        # Where it is let go it runs out into the wave that is left of it.
        under[upper] = np.maximum(lies, under[upper]) if surface.stitched else lies
        owner[:, first:last][upper] = number
        top[:, first:last][upper] = np.broadcast_to(ranks[number][:, np.newaxis], upper.shape)[upper]
    seen = Relief(pixels, height, owner, turned)
    for place, depth in surface.cross:
        _lay_across(seen, float(place), float(depth))
    return seen


def _soft_fold(beside: Grid, depth: float) -> Grid:
    """Return the wave that is left of a tuck which is let go: low, and as wide as its cloth allows."""
    return np.asarray(SOFT * depth * np.exp(-((beside / np.float32(0.9 * depth)) ** 2)), dtype=np.float32)


def _lay_across(seen: Relief, place: float, depth: float) -> None:
    """Stand a cross tuck on what lies there already; its place from the top and its depth [in]."""
    pixel, high = 1 / seen.pixels, len(seen.height)
    first, last = (min(max(round((place + side * depth) * seen.pixels), 0), high) for side in (-1, 1))
    beside = ((np.arange(first, last) + 0.5) * pixel - place).astype(np.float32)
    flap = _flap(beside, np.zeros(1, dtype=np.float32), depth, pixel)[0]
    seen.height[first:last] = np.maximum(seen.height[first:last], flap[:, np.newaxis])
    seen.owner[first:last][flap > 0] = CROSS


def foot_half(depth: float, pixel: float) -> float:
    """Return half the thickness of a flap at its foot [in], at least what a pixel can show."""
    return max(FOOT * depth, pixel * 0.6)


def _flap(beside: Grid, turned: Grid, depth: float, pixel: float) -> Grid:
    """Return the height of one flap over the places beside its foot, for every angle; 0 where it does not reach.

    Its section is the hull of two circles, a small one at the foot and a larger one at the fold, which ends a depth
    from the foot: over the straight part the height is that of the upper tangent, at the fold that of the circle.
    """
    small, large = foot_half(depth, pixel), max(ROUND * depth, pixel * 1.1)
    lean = np.abs(turned)[:, np.newaxis]
    place = np.where(turned >= 0, 1, -1).astype(np.float32)[:, np.newaxis] * beside
    arm = max(depth - large, large)
    across, above = arm * np.sin(lean), arm * np.cos(lean)
    taper = (large - small) / arm
    straight = np.float32(np.sqrt(1 - taper * taper))
    side = -straight * np.cos(lean) - taper * np.sin(lean)
    up = straight * np.sin(lean) - taper * np.cos(lean)
    run = np.maximum(across + (large - small) * side, 1e-4)
    share = (place - small * side) / run
    tangent = share * above + (small + share * (large - small)) * up
    cap = above + np.sqrt(np.maximum(large * large - (place - across) ** 2, 0))
    on_cap, on_slope = np.abs(place - across) < large, (share >= 0) & (share <= 1) & (up > 0)
    return np.maximum(np.where(on_cap, cap, 0), np.where(on_slope, tangent, 0)).astype(np.float32)


def light(seen: Relief, deepest: float) -> Grid:
    """Return how bright each place of a relief is, from 0 to 1, for tucks at most ``deepest`` [in] deep."""
    soft = replace(seen, height=_softened(seen.height))
    hollow = _blurred(soft.height, round(0.45 * deepest * seen.pixels)) - soft.height
    open_sky = 1 - np.clip(hollow / deepest, -0.1, 0.9) * 0.6
    lit = 1 - 0.6 * _shadow(soft, deepest)
    slope_down, slope_right = np.gradient(soft.height * np.float32(seen.pixels))
    steep = np.float32(0.8)
    slope_right, slope_down = (np.tanh(slope * steep) / steep for slope in (slope_right, slope_down))
    left, top, above = LIGHT
    facing = (-slope_right * left - slope_down * top + above) / np.sqrt(1 + slope_right**2 + slope_down**2)
    bright = (0.4 + 0.62 * np.maximum(facing, 0) * lit) * open_sky * _weave(seen.height.shape)
    return np.asarray(np.clip(bright, 0, 1), dtype=np.float32)


def _weave(shape: tuple[int, ...]) -> Grid:
    """Return the unevenness of woven threads, lengthwise and crosswise, about 1; the same for the same size."""
    chance = np.random.default_rng(shape)
    threads = [chance.normal(0, 0.006, size).astype(np.float32) for size in shape]
    return np.asarray(1 + threads[0][:, np.newaxis] + threads[1])


def _softened(height: Grid) -> Grid:
    """Return heights with the steps between the places of the grid smoothed, so that folds have clean edges."""
    edged = np.pad(height, 1, mode="edge")
    rows = (edged[:-2] + 2 * edged[1:-1] + edged[2:]) / 4
    return np.asarray((rows[:, :-2] + 2 * rows[:, 1:-1] + rows[:, 2:]) / 4, dtype=np.float32)


def _shadow(seen: Relief, deepest: float) -> Grid:
    """Return how far each place lies in the shadow of what stands toward the lamp: 0 in the light, 1 in the dark."""
    left, top, above = LIGHT
    level = np.hypot(left, top)
    longest = 1.4 * deepest * level / above
    shade = np.zeros_like(seen.height)
    for step in range(1, SHADOW_STEPS + 1):
        away = longest * step / SHADOW_STEPS
        right, down = (round(away * part / level * seen.pixels) for part in (left, top))
        over = _moved(seen.height, -right, -down) - seen.height - np.float32(away * above / level)
        np.maximum(shade, over, out=shade)
    return np.asarray(_blurred(np.clip(shade / (0.12 * deepest), 0, 1), max(1, round(0.05 * deepest * seen.pixels))))


def _moved(grid: Grid, right: int, down: int) -> Grid:
    """Return a grid moved by whole places to the right and down; what comes in from outside is flat."""
    moved = np.zeros_like(grid)
    moved[down:, right:] = grid[: grid.shape[0] - down, : grid.shape[1] - right]
    return moved


def _blurred(grid: Grid, reach: int) -> Grid:
    """Return the mean of a grid over squares of ``reach`` places each way, taken twice for a soft edge."""
    for _ in range(2):
        grid = _blurred_down(_blurred_down(grid, reach).T, reach).T
    return grid


def _blurred_down(grid: Grid, reach: int) -> Grid:
    """Return the mean of each place and ``reach`` places above and below it.

    Exact sums take twice the room of a grid, so they are kept for a few columns at a time.
    """
    mean = np.empty_like(grid)
    for first in range(0, grid.shape[1], COLUMNS_AT_A_TIME):
        some = slice(first, first + COLUMNS_AT_A_TIME)
        edged = np.pad(grid[:, some], ((reach + 1, reach), (0, 0)), mode="edge")
        total = np.cumsum(edged, axis=0, dtype=np.float64)
        mean[:, some] = (total[2 * reach + 1 :] - total[: len(grid)]) / (2 * reach + 1)
    return mean

"""A tucked panel as cloth: its surface comes in, heights and places on the flat cloth go out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from generator.calculation.worked import Turn
from generator.drawing.renders.grids import Grid, uneven
from generator.drawing.surface_geometry import HeldLine, Surface, is_stitched
from generator.drawing.surface_light import PANEL, Relief, foot_half, relief

SINKS = 0.03  # how far stitching pulls the cloth in [in]
STITCH, GAP, THICK = 0.105, 0.02, 0.022  # of a stitch: from hole to hole, the hole, the thread [in]
PUCKERS = 5.0  # to an inch beside a row
LEAST_LEAN = 0.4  # radians from upright from which a flap leaves the stitching at its foot bare


@dataclass(frozen=True, slots=True)
class SewnCloth:
    """A piece of cloth on a grid: its height [in], where it lies on the flat cloth [in], and how far it is thread."""

    height: Grid
    across: Grid
    along: Grid
    thread: Grid


def sewn(surface: Surface, pixels: float) -> tuple[SewnCloth, Relief]:
    """Return a finished panel as it lies, with its stitching, on ``pixels`` places to an inch."""
    seen = relief(surface, pixels)
    height = seen.height.copy()
    thread = np.zeros_like(height)
    for number in range(len(surface.feet)):
        _stitch_foot(surface, seen, number, height, thread)
    for line in surface.held:
        if line.sewn:
            _stitch_row(surface, seen, line, height, thread)
    across, along = cloth_places(surface, seen)
    return SewnCloth(height, across, along, thread), seen


def cloth_places(surface: Surface, seen: Relief) -> tuple[Grid, Grid]:
    """Return where on the flat cloth [in] what lies uppermost is, from the panel's upper left finished corner."""
    high, wide = seen.owner.shape
    across = _places(wide, seen.pixels)
    feet = np.array([float(foot) for foot in surface.feet], dtype=np.float32)
    depths = np.array([float(depth) for depth in surface.depths], dtype=np.float32)
    before = np.concatenate([np.zeros(1, dtype=np.float32), np.cumsum(2 * depths, dtype=np.float32)])
    panel = across + before[np.searchsorted(feet, across)]
    cloth = np.broadcast_to(panel, (high, wide)).astype(np.float32)
    for number, (foot, depth) in enumerate(zip(feet, depths, strict=True)):
        reach = depth * np.float32(1.2) + 2 / seen.pixels
        first, last = (int(np.clip((foot + side * reach) * seen.pixels, 0, wide)) for side in (-1, 1))
        lean = np.sin(seen.turned[number]).astype(np.float32)[:, np.newaxis]
        up = np.minimum(np.abs(across[first:last] - foot) / np.maximum(np.abs(lean), 0.25), depth)
        side = np.where(lean >= 0, np.float32(-1), np.float32(1))
        flap = foot + before[number] + depth + side * (depth - up)
        part = cloth[:, first:last]
        part[seen.owner[:, first:last] == number] = flap[seen.owner[:, first:last] == number]
    return cloth, np.broadcast_to(_places(high, seen.pixels)[:, np.newaxis], (high, wide)).astype(np.float32)


def _places(number: int, pixels: float) -> Grid:
    return ((np.arange(number) + 0.5) / pixels).astype(np.float32)


def _stitch_foot(surface: Surface, seen: Relief, number: int, height: Grid, thread: Grid) -> None:
    """Draw the cloth in along one foot, and lay the stitches where the flap leaves them bare."""
    foot, depth = float(surface.feet[number]), float(surface.depths[number])
    high, wide = height.shape
    along = _places(high, seen.pixels)
    near = foot_half(depth, 1 / seen.pixels)
    sewn_here = is_stitched(surface, number, seen.pixels, high)[:, np.newaxis]
    for side in (-1, 1):
        first, last = (int(np.clip((foot + end) * seen.pixels, 0, wide)) for end in sorted((0.0, side * (near + 0.2))))
        if first >= last:
            continue
        beside = np.abs(_places(wide, seen.pixels)[first:last] - foot) - near
        bare = (seen.owner[:, first:last] == PANEL) & (side * seen.turned[number] < LEAST_LEAN)[:, np.newaxis]
        bare &= sewn_here
        dip = np.exp(-((np.maximum(beside, 0) / 0.05) ** 2)).astype(np.float32)
        height[:, first:last] -= np.float32(SINKS) * dip * bare
        shows = bare & (side * seen.turned[number] < -LEAST_LEAN)[:, np.newaxis]
        _lay(
            height[:, first:last], thread[:, first:last], _line(beside - 0.02, seen.pixels), along[:, np.newaxis], shows
        )


def _stitch_row(surface: Surface, seen: Relief, line: HeldLine, height: Grid, thread: Grid) -> None:
    """Draw the cloth in along one row, pucker it beside it, and lay the stitches over the flaps."""
    high, wide = height.shape
    at = float(line.at)
    first, last = (int(np.clip((at + side * 0.4) * seen.pixels, 0, high)) for side in (-1, 1))
    if first >= last:
        return
    across = _places(wide, seen.pixels)
    beside = (_places(high, seen.pixels)[first:last] - at)[:, np.newaxis]
    held = _held(surface, line, across)
    height[first:last] -= np.float32(SINKS) * np.exp(-((beside / 0.055) ** 2)) * held
    folds = uneven(across * np.float32(PUCKERS), round(at * 64))
    height[first:last] += np.float32(0.009) * folds * np.exp(-np.abs(beside) / 0.14) * held
    lies = np.broadcast_to(held > 0.5, (last - first, wide))
    _lay(height[first:last], thread[first:last], _line(beside, seen.pixels), across, lies)


def _held(surface: Surface, line: HeldLine, across: Grid) -> Grid:
    """Where a row is sewn: not at the feet of tucks that it leaves upright."""
    found = np.ones_like(across)
    for foot, depth, turn in zip(surface.feet, surface.depths, line.turns, strict=True):
        if turn is Turn.UPRIGHT:
            found[np.abs(across - float(foot)) < float(depth) / 4] = 0
    return found


def _line(beside: Grid, pixels: float) -> Grid:
    """How much of each place a thread covers that runs where ``beside`` is 0: it is thinner than a place at times."""
    half = max(THICK / 2, 0.5 / pixels)
    return np.asarray(
        np.clip((half - np.abs(beside)) * pixels + 0.5, 0, 1) * min(1.0, THICK * pixels), dtype=np.float32
    )


def _lay(height: Grid, thread: Grid, line: Grid, run: Grid, shows: np.ndarray) -> None:
    """Lay stitches along a line: they rise in their middles, and their ends are holes."""
    step = run / np.float32(STITCH)
    share = step - np.floor(step)
    ends = np.minimum(share, 1 - share) * np.float32(STITCH)
    stitch = np.clip(ends / np.float32(GAP) - 0.5, 0, 1)
    laid = line * stitch * shows
    np.maximum(thread, laid, out=thread)
    height += np.float32(0.014) * laid - np.float32(0.012) * line * (1 - stitch) * shows


def closest(feet: Sequence[float], whole: float) -> float:
    """Return how close the feet of tucks stand at the least [in]."""
    return min((after - before for before, after in pairwise(feet)), default=whole)

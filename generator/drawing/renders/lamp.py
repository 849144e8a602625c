"""Light on cloth: heights and colours come in, the colours in the light go out, linear; a flat sheet keeps its own.

The lamp stands at the upper left and is broad, so that shadows are soft. What lies in a hollow sees less of the sky,
and gets the light that the cloth beside it throws back.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from generator.drawing.renders.grids import Grid, blurred, doubled, halved, moved

LAMP = (-0.56, -0.46, 0.69)  # towards the lamp: right, down, up
SPREAD = ((1.0, 0.0, 0.0), (0.8, 0.22, 0.0), (0.8, -0.22, 0.0), (0.75, 0.0, 0.25), (0.75, 0.0, -0.2))
WRAP = 0.3
DIRECT, SKY, BOUNCE = 0.74, 0.42, 0.3
HOLLOWS = ((0.05, 0.85), (0.18, 0.45), (0.5, 0.3))  # reach [in] and share of the sky that is lost in one so deep
SHADOW_STEPS = 10
FARTHEST = 0.9  # how far a shadow is looked for [in]


def lit(height: Grid, colour: NDArray[np.float32], pixels: float) -> NDArray[np.float32]:
    """Return the colours of a relief [in] in the light, of ``pixels`` places to an inch."""
    direct, sky = _direct(height, pixels), _sky(height, pixels)
    light = DIRECT * direct + SKY * sky
    light /= np.float32(DIRECT * _wrapped(LAMP[2]) + SKY)
    thrown = BOUNCE * (1 - sky)
    return np.asarray(colour * light[..., np.newaxis] + colour * colour * thrown[..., np.newaxis], dtype=np.float32)


def _wrapped(facing: float) -> float:
    return (facing + WRAP) / (1 + WRAP)


def _direct(height: Grid, pixels: float) -> Grid:
    """How much of the lamp each place sees."""
    down, right = np.gradient(height * np.float32(pixels))
    down, right = (np.clip(slope, -2.5, 2.5) for slope in (down, right))
    x, y, z = LAMP
    facing = (z - right * x - down * y) / np.sqrt(1 + right * right + down * down)
    bright = np.clip((facing + WRAP) / (1 + WRAP), 0, None)
    return np.asarray(bright * (1 - shadow(height, pixels)), dtype=np.float32)


def shadow(height: Grid, pixels: float) -> Grid:
    """Return how far each place lies in shadow: 0 in the full light, 1 in the dark of the whole lamp."""
    low, coarse = halved(height), pixels / 2
    found = np.zeros_like(low)
    relief = float(height.max() - height.min())
    for level, aside, up in SPREAD:
        x, y = LAMP[0] * level - LAMP[1] * aside, LAMP[1] * level + LAMP[0] * aside
        rise = (LAMP[2] + up) / float(np.hypot(x, y))
        reach = min(FARTHEST, relief / rise)
        dark = np.zeros_like(low)
        for step in range(1, SHADOW_STEPS + 1):
            away = reach * step / SHADOW_STEPS * coarse / float(np.hypot(x, y))
            right, below = round(x * away), round(y * away)
            if right or below:
                run = float(np.hypot(right, below)) / coarse
                over = moved(low, -right, -below) - low - np.float32(run * rise)
                np.maximum(dark, np.clip(over / np.float32(0.02 + 0.12 * run), 0, 1), out=dark)
        found += dark / np.float32(len(SPREAD))
    return doubled(blurred(found, max(1, round(0.012 * coarse))), height.shape)


def _sky(height: Grid, pixels: float) -> Grid:
    """How much of the open sky each place sees."""
    low, coarse = halved(height), pixels / 2
    seen = np.ones_like(low)
    for reach, share in HOLLOWS:
        hollow = blurred(low, max(1, round(reach * coarse))) - low
        seen -= np.float32(share) * np.clip(hollow / np.float32(reach), -0.25, 0.8)
    return doubled(np.clip(seen, 0.12, 1.25), height.shape)

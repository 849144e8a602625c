"""A round thing with a side, seen from above and before: its sizes [in] come in, the forms of its two parts go out.

It is told by parallel lines of sight: its rim is an ellipse, its side the near half of what stands below it.
"""

from __future__ import annotations

import math

import numpy as np

from generator.drawing.labels import Box
from generator.drawing.renders.bends import Bend, Bent, faced
from generator.drawing.renders.grids import Grid

SEEN_FROM = 0.52  # how far above the floor the eye stands [rad]
CROWNED = 0.5  # how steep a face is at its rim
ROUNDED = 0.16  # of its radius: how far from its rim a face turns down
UNDER = 0.1  # how far the side reaches over the rim, so that nothing shows between the two [in]
PUCKERED = 4.5  # how steep the folds of an edge are, in parts of what it is drawn in
SINE, COSINE = math.sin(SEEN_FROM), math.cos(SEEN_FROM)


def whole_of(radius: float, depth: float) -> Box:
    """Return what a round thing covers, its middle at (0, 0) [in]."""
    return Box(-radius, -radius * SINE, radius, radius * SINE + depth * COSINE)


def face(whole: Box) -> Bend:
    """Return the upper face; ``whole`` is the square that it covers when it lies flat."""
    radius = (whole.right - whole.left) / 2
    middle = ((whole.left + whole.right) / 2, (whole.top + whole.bottom) / 2)

    def at(x: Grid, y: Grid) -> Bent:
        u, v = x / np.float32(radius), y / np.float32(radius * SINE)
        away = np.sqrt(u * u + v * v)
        turned = np.clip((away - (1 - ROUNDED)) / ROUNDED, 0, 1)
        steep = np.float32(CROWNED) * (0.3 * away + turned * turned)
        aside, near = (steep * way / np.maximum(away, 1e-3) for way in (u, v))
        light = faced(aside, near * SINE - COSINE, np.asarray(SINE + near * COSINE, dtype=np.float32))
        inside = (away <= 1).astype(np.float32)
        return Bent(x + np.float32(middle[0]), y / np.float32(SINE) + np.float32(middle[1]), light, inside)

    return Bend(Box(-radius, -radius * SINE, radius, radius * SINE), at)


def side(radius: float, depth: float, drawn_in: float = 0.0) -> Bend:
    """Return the near half of the side, laid flat from 0 to half of its way round; ``drawn_in`` of its radius below.

    Where it is drawn in, it falls in small folds, deepest at its lower edge.
    """

    def at(x: Grid, y: Grid) -> Bent:
        guess = np.zeros_like(x)
        for _ in range(3):
            here = np.float32(radius) * (1 - np.float32(drawn_in) * np.square(guess))
            sine = np.clip(x / here, -1, 1)
            guess = np.clip((y - SINE * here * np.sqrt(1 - sine * sine)) / np.float32(depth * COSINE), 0, 1)
        cosine = np.sqrt(1 - sine * sine)
        down = (y - SINE * here * cosine) / np.float32(COSINE)
        inside = (np.abs(x) <= here) & (down >= -UNDER) & (down <= depth)
        way = np.arcsin(sine)
        fold = np.float32(PUCKERED * drawn_in) * np.square(guess) * np.cos(way * np.float32(9 * radius))
        light = faced(sine + fold * cosine, cosine * SINE, np.asarray(cosine * COSINE, dtype=np.float32))
        across = (way + np.float32(math.pi / 2)) * np.float32(radius)
        return Bent(across, np.asarray(down, dtype=np.float32), light, inside.astype(np.float32))

    return Bend(Box(-radius, 0.0, radius, radius * SINE + depth * COSINE), at)

"""How a flat thing is bent to its form: a place of the picture comes in, the place of the thing seen there goes out.

Each bend knows the box that it fills, in inches of its own, x to the right and y down, and how the form alone is lit.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from generator.drawing.labels import Box
from generator.drawing.renders.grids import Grid, chance
from generator.drawing.renders.lamp import LAMP, WRAP

DRAWN_IN = 0.06  # of its size: how far the middles of a filled cover's sides come in
RESTS = 0.025  # the same of the side that it stands on
PUFFED = 0.3  # of half its size: how high a filled cover stands
FOLDS_HUNG = 0.34  # how steep the folds of a curtain are
BULGE, LIES_BACK = 1.6, 0.16  # how steep a blind is at its rods, and between them
SPREAD = 0.25  # how far a frill at the end of a roll spreads, in parts of its drop
BOWED = 0.14  # of half its width: how far the lower edge of a hollow thing bows as it stands
TILT = 0.26  # of its radius: how far the rims of a standing ring bend


@dataclass(frozen=True, slots=True)
class Bent:
    """What is seen at places of the picture: where on the flat thing [in], how lit, and whether anything."""

    across: Grid
    along: Grid
    light: Grid
    inside: Grid


@dataclass(frozen=True, slots=True)
class Bend:
    """A form: the box that it fills [in], and what is seen at places of it."""

    box: Box
    at: Callable[[Grid, Grid], Bent]


def faced(right: Grid, down: Grid, up: Grid | float) -> Grid:
    """Return how bright a place is whose outward direction is given, against one that faces the viewer."""
    x, y, z = LAMP
    length = np.sqrt(right * right + down * down + np.square(up))
    facing = (right * x + down * y + up * z) / np.maximum(length, 1e-6)
    bright = np.clip((facing + WRAP) / (z + WRAP), 0.12, None)
    return np.asarray(0.25 + 0.75 * bright, dtype=np.float32)


def flat(whole: Box) -> Bend:
    """Return a thing as it lies or hangs, flat before the viewer."""

    def at(x: Grid, y: Grid) -> Bent:
        inside = (x >= whole.left) & (x <= whole.right) & (y >= whole.top) & (y <= whole.bottom)
        fall = np.float32(1.03) - np.float32(0.08) * (y - whole.top) / (whole.bottom - whole.top)
        return Bent(x, y, np.asarray(fall, dtype=np.float32), inside.astype(np.float32))

    return Bend(whole, at)


def standing(whole: Box) -> Bend:
    """Return a body of two faces that stands on its lower edge, which bows toward the viewer."""
    middle, half = (whole.left + whole.right) / 2, (whole.right - whole.left) / 2
    bow = BOWED * half

    def at(x: Grid, y: Grid) -> Bent:
        aside = np.clip((x - middle) / np.float32(half), -1, 1)
        share = np.clip((y - whole.top) / (whole.bottom + bow - whole.top), 0, 1)
        along = y - np.float32(bow) * share * np.sqrt(1 - aside * aside)
        inside = (np.abs(x - middle) <= half) & (along >= whole.top) & (along <= whole.bottom)
        light = faced(0.3 * aside, 0.25 - 0.5 * share, 1.0)
        return Bent(x, np.asarray(along, dtype=np.float32), light, inside.astype(np.float32))

    return Bend(Box(whole.left, whole.top, whole.right, whole.bottom + bow), at)


def flared(whole: Box, seam: float, share: float) -> Bend:
    """Return a thing as it is worn: below a seam it spreads, by a share of its width."""
    middle, half = (whole.left + whole.right) / 2, (whole.right - whole.left) / 2
    widest = half * (1 + share)

    def at(x: Grid, y: Grid) -> Bent:
        below = np.clip((y - seam) / max(whole.bottom - seam, 1e-3), 0, 1)
        swing = (x - middle) / np.float32(widest)
        level = y - np.float32(0.05 * half) * below * (1 - swing * swing)
        below = np.clip((level - seam) / max(whole.bottom - seam, 1e-3), 0, 1)
        back = middle + (x - middle) / (1 + np.float32(share) * below)
        inside = (np.abs(back - middle) <= half) & (level >= whole.top) & (level <= whole.bottom)
        light = faced(0.5 * swing * below, np.zeros_like(x), 1.0)
        return Bent(back, level, light, inside.astype(np.float32))

    return Bend(Box(middle - widest, whole.top, middle + widest, whole.bottom + 0.05 * half), at)


def pillow(whole: Box, *, drawn_in: float = DRAWN_IN, puffed: float = PUFFED) -> Bend:
    """Return a filled cover: its sides come in between the corners, and it stands high in its middle."""
    middle = ((whole.left + whole.right) / 2, (whole.top + whole.bottom) / 2)
    half = ((whole.right - whole.left) / 2, (whole.bottom - whole.top) / 2)
    high, rests = puffed * min(half), min(RESTS, drawn_in)

    def at(x: Grid, y: Grid) -> Bent:
        # It leans back, so that its top is a little smaller.
        away = 1 - np.float32(0.035) * (y - middle[1]) / half[1]
        across, along = (x - middle[0]) * away / half[0], (y - middle[1]) / half[1]
        u, v = across, along
        # What it stands on holds its lower side nearly straight.
        lower = np.where(along > 0, np.float32(rests), np.float32(drawn_in))
        for _ in range(5):
            u, v = across / (1 - drawn_in * (1 - v * v)), along / (1 - lower * (1 - u * u))
        inside = (np.abs(u) <= 1) & (np.abs(v) <= 1)
        bows = [1 - np.abs(np.clip(place, -1, 1)) ** 3 for place in (u, v)]
        slopes = [-3 * place * np.abs(place) * other for place, other in ((u, bows[1]), (v, bows[0]))]
        light = faced(-slopes[0] * high / half[0], -slopes[1] * high / half[1], 1.0)
        return Bent(
            (middle[0] + u * half[0]).astype(np.float32),
            (middle[1] + v * half[1]).astype(np.float32),
            light,
            inside.astype(np.float32),
        )

    wide = 1.04 * half[0]
    return Bend(Box(middle[0] - wide, whole.top, middle[0] + wide, whole.bottom), at)


def cushion(whole: Box) -> Bend:
    """Return a round filled cover: it stands high in its middle."""
    middle = ((whole.left + whole.right) / 2, (whole.top + whole.bottom) / 2)
    half = ((whole.right - whole.left) / 2, (whole.bottom - whole.top) / 2)

    def at(x: Grid, y: Grid) -> Bent:
        u, v = (x - middle[0]) / np.float32(half[0]), (y - middle[1]) / np.float32(half[1])
        away = np.sqrt(u * u + v * v)
        steep = np.float32(2.6 * PUFFED) * np.minimum(away, 1) ** 2
        light = faced(steep * u / np.maximum(away, 1e-3), steep * v / np.maximum(away, 1e-3), 1.0)
        return Bent(x, y, light, (away <= 1).astype(np.float32))

    return Bend(whole, at)


def roll(whole: Box, body: tuple[float, float], middle: float, girth: float) -> Bend:
    """Return a roll that lies from left to right; ``middle`` is its highest line toward you, ``body`` its own ends.

    What stands beyond an end of the body is a frill, which spreads.
    """
    radius = girth / math.tau

    def at(x: Grid, y: Grid) -> Bent:
        beyond = np.maximum(np.maximum(body[0] - x, x - body[1]), 0)
        round_here = radius + SPREAD * beyond
        sine = np.clip(y / round_here, -1, 1)
        angle = np.arcsin(sine)
        inside = (np.abs(y) <= round_here) & (x >= whole.left) & (x <= whole.right)
        light = faced(np.zeros_like(x), sine, np.sqrt(np.maximum(1 - sine * sine, 1e-4)))
        return Bent(x, (middle + angle * radius).astype(np.float32), light, inside.astype(np.float32))

    widest = radius + SPREAD * max(body[0] - whole.left, whole.right - body[1], 0)
    return Bend(Box(whole.left, -widest, whole.right, widest), at)


def tube(whole: Box, girth: float, *, glows: bool = False) -> Bend:
    """Return a ring that stands, seen a little from above; a lampshade glows from within."""
    radius, middle = girth / math.tau, (whole.left + whole.right) / 2
    bend = TILT * radius

    def at(x: Grid, y: Grid) -> Bent:
        sine = np.clip(x / radius, -1, 1)
        cosine = np.sqrt(1 - sine * sine)
        along = y - bend * cosine
        inside = (np.abs(x) <= radius) & (along >= whole.top) & (along <= whole.bottom)
        light = faced(sine, np.zeros_like(x), np.maximum(cosine, 0.02))
        if glows:
            level = (along - whole.top) / (whole.bottom - whole.top) - np.float32(0.55)
            light = (0.8 + 0.75 * np.exp(-np.square(level / 0.5))) * (0.45 + 0.55 * np.sqrt(cosine))
        return Bent((middle + np.arcsin(sine) * radius).astype(np.float32), along, light, inside.astype(np.float32))

    return Bend(Box(-radius, whole.top - bend, radius, whole.bottom + bend), at)


def hung(whole: Box) -> Bend:
    """Return a curtain: it falls in soft folds, deeper below."""
    wide, high = whole.right - whole.left, whole.bottom - whole.top
    number = max(3, round(7 * wide / max(high, wide / 3)))
    shift = float(chance(number, 5))

    def at(x: Grid, y: Grid) -> Bent:
        down = np.clip((y - whole.top) / high, 0, 1)
        place = (x - whole.left) / wide * number + shift
        turn = np.float32(math.tau) * (place + np.float32(0.2) * np.sin(place * 1.7))
        deep = np.float32(FOLDS_HUNG) * (0.25 + 0.75 * down)
        hem = np.float32(0.008) * high * np.sin(turn) * down
        across = x + np.float32(0.12) * wide / number * deep * np.sin(2 * turn)
        inside = (x >= whole.left) & (x <= whole.right) & (y >= whole.top) & (y + hem <= whole.bottom)
        light = faced(deep * np.cos(turn), np.zeros_like(x), 1.0)
        return Bent(np.clip(across, whole.left, whole.right), y, light, inside.astype(np.float32))

    return Bend(whole, at)


def rodded(whole: Box, rods: Sequence[float], thick: float) -> Bend:
    """Return a blind that hangs level: it bulges over the rods at some lines and lies back a little between them."""
    lines = np.array([whole.top, *rods, whole.bottom], dtype=np.float32)

    def at(x: Grid, y: Grid) -> Bent:
        inside = (x >= whole.left) & (x <= whole.right) & (y >= whole.top) & (y <= whole.bottom)
        number = np.clip(np.searchsorted(lines, y, side="right"), 1, len(lines) - 1)
        share = (y - lines[number - 1]) / np.maximum(lines[number] - lines[number - 1], np.float32(1e-3))
        slope = np.float32(-LIES_BACK) * np.cos(np.float32(math.pi) * np.clip(share, 0, 1))
        for line in rods:
            away = (y - np.float32(line)) / np.float32(2 * thick)
            slope += np.float32(BULGE) * away * np.exp(-away * away)
        light = faced(np.zeros_like(x), np.asarray(slope, dtype=np.float32), 1.0)
        return Bent(x, y, light, inside.astype(np.float32))

    return Bend(whole, at)


def twice(bend: Bend, apart: float) -> Bend:
    """Return two of a form side by side, so far apart [in]."""
    box = bend.box
    step = box.right - box.left + apart

    def at(x: Grid, y: Grid) -> Bent:
        return bend.at(np.where(x > box.right + apart / 2, x - np.float32(step), x).astype(np.float32), y)

    return Bend(Box(box.left, box.top, box.right + step, box.bottom), at)

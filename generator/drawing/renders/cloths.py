"""Pieces as cloth: a worked piece comes in, the height and the colour of each place of it go out.

A tucked panel lies as its numbers say; what is drawn up falls in folds; everything else is plain.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.calculation.worked_piece import Piece
from generator.drawing.renders.colours import Image, dyed, spun
from generator.drawing.renders.grids import Grid, uneven
from generator.drawing.renders.tucked import SewnCloth, sewn
from generator.drawing.renders.weave import woven
from generator.drawing.surface_geometry import Surface, surface_of
from generator.drawing.surface_stripes import stripes_seen

GATHERS, FALLS = 3.2, 1.1  # folds to an inch at the thread and lower down
PLEATED = 0.28  # how high the fold of a pleat stands [in]
FULL = 0.13  # how high a fold of a frill stands [in]


@dataclass(frozen=True, slots=True)
class ClothGrid:
    """A piece of cloth on a grid: its height [in] and its colour before it is lit."""

    height: Grid
    colour: Image


def cloth_of(piece: Piece, dye: Image, pixels: float, shape: tuple[int, int]) -> ClothGrid:
    """Return a piece as it lies before you, on a grid of a shape."""
    if piece.panel is not None and piece.panel.across.count and min(_size(piece, pixels)) >= 1:
        return _fitted(_panel(piece, dye, pixels), shape)
    if piece.made.drawn_up is not None:
        folds = _pleats(shape, len(piece.made.pleats)) if piece.made.pleats else _gathers(shape, pixels)
        quarters = ("top", "left", "bottom", "right").index(piece.made.drawn_up.side)
        if quarters % 2:
            folds = _pleats(shape[::-1], len(piece.made.pleats)) if piece.made.pleats else _gathers(shape[::-1], pixels)
        plain = plain_cloth(shape, pixels, dye)
        return ClothGrid(plain.height + np.rot90(folds, quarters), plain.colour)
    return plain_cloth(shape, pixels, dye)


def _size(piece: Piece, pixels: float) -> tuple[int, int]:
    """How many places a panel covers: none at all where it is tiny beside the rest of its thing."""
    return round(float(piece.finished_across) * pixels), round(float(piece.finished_along) * pixels)


def plain_cloth(shape: tuple[int, ...], pixels: float, dye: Image) -> ClothGrid:
    """Return flat cloth."""
    down, right = (((np.arange(size) + 0.5) / pixels).astype(np.float32) for size in shape)
    bump, tone = woven(np.broadcast_to(right, shape), np.broadcast_to(down[:, np.newaxis], shape), pixels)
    return ClothGrid(bump, np.asarray(tone[..., np.newaxis] * dye, dtype=np.float32))


def tucked_cloth(surface: Surface, dye: Image, pixels: float) -> ClothGrid:
    """Return a panel of one colour with its tucks."""
    patch, _ = sewn(surface, pixels)
    return dressed(patch, np.broadcast_to(dye, (*patch.height.shape, 3)), dye, pixels)


def _panel(piece: Piece, dye: Image, pixels: float) -> ClothGrid:
    assert piece.panel is not None
    patch, seen = sewn(surface_of(piece), pixels)
    striped = piece.panel.stripes
    if striped is None:
        return dressed(patch, np.broadcast_to(dye, (*patch.height.shape, 3)), dye, pixels)
    colours = np.array([dyed(stripe.colour) for stripe in striped.stripes], dtype=np.float32)
    return dressed(patch, colours[stripes_seen(seen, piece.panel.across, striped)], dye, pixels)


def dressed(patch: SewnCloth, dye: Image, thread: Image, pixels: float) -> ClothGrid:
    """Return sewn cloth with its colours, its weave, and a thread that goes with a colour."""
    bump, tone = woven(patch.across, patch.along, pixels)
    share = patch.thread[..., np.newaxis]
    colour = dye * tone[..., np.newaxis] * (1 - share) + spun(thread) * share
    return ClothGrid(patch.height + bump, np.asarray(colour, dtype=np.float32))


def _fitted(cloth: ClothGrid, shape: tuple[int, int]) -> ClothGrid:
    """A cloth on a grid that may be a place larger or smaller, for the roundings of its rectangle in the thing."""
    rows, columns = (
        np.minimum(np.arange(size), have - 1) for size, have in zip(shape, cloth.height.shape, strict=True)
    )
    return ClothGrid(cloth.height[rows[:, np.newaxis], columns], cloth.colour[rows[:, np.newaxis], columns])


def _gathers(shape: tuple[int, int], pixels: float) -> Grid:
    """Folds from a thread at the top: many small ones there, fewer and deeper ones below."""
    down = np.linspace(0, 1, shape[0], dtype=np.float32)[:, np.newaxis]
    right = ((np.arange(shape[1]) + 0.5) / pixels).astype(np.float32)
    swing = right + np.float32(0.12) * down * uneven(right, 7)
    small = uneven(swing * np.float32(2 * GATHERS), 3) * np.exp(-down * 5)
    deep = uneven(swing * np.float32(2 * FALLS), 4) * np.minimum(1, 2.5 * down)
    return np.asarray(np.float32(FULL) * (np.float32(0.55) * small + deep), dtype=np.float32)


def _pleats(shape: tuple[int, int], number: int) -> Grid:
    """Knife pleats: each rises slowly to its fold and drops there."""
    place = np.linspace(0, number, shape[1], endpoint=False, dtype=np.float32)
    share = place - np.floor(place)
    down = np.linspace(0.6, 1, shape[0], dtype=np.float32)[:, np.newaxis]
    fold = np.minimum(share, (1 - share) * 25)
    return np.asarray(np.float32(PLEATED) * down * fold, dtype=np.float32)

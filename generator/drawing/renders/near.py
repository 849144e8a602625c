"""A panel seen close to: a worked piece or a turn plan comes in, a lit picture of a part of it goes out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import numpy as np

from generator.calculation.worked import Turn
from generator.calculation.worked_piece import Piece
from generator.drawing.labels import Box
from generator.drawing.renders.cloths import dressed
from generator.drawing.renders.colours import Image, dyed
from generator.drawing.renders.lamp import lit
from generator.drawing.renders.tucked import sewn
from generator.drawing.surface_geometry import Surface, sample_surface, surface_of
from generator.drawing.surface_stripes import stripes_at

NEAR = (640, 480)
TUCKS_SEEN = 6.2  # about so many tucks are seen side by side
LEAST_SEEN = 1.5  # in, of the narrowest tucks
PLAN_WORDS = "The turn plan “{}”, sewn in undyed cloth: 12 tucks run from top to bottom, turned at 6 rows of stitching."
REACH = 1.1  # depths to both sides of its foot that a tuck is looked for; a flap and its fold reach a little farther


def near_view(piece: Piece, colour: str, size: tuple[int, int] = NEAR) -> Image:
    """Return the middle of a tucked panel close to, linear, a few tucks wide; as much of it as there is."""
    surface = surface_of(piece)
    # Seen as it hangs: of a panel on its side the window lies on its side too.
    wide, high = size[::-1] if piece.quarters % 2 else size
    window = near_window(surface, high / wide)
    return _seen(piece, surface, window, dyed(colour), 2 * wide / (window.right - window.left))


def near_window(surface: Surface, shape: float) -> Box:
    """Return the part of a surface that a close view shows [in]: about its middle, ``shape`` times as high as wide."""
    across, along = float(surface.across), float(surface.along)
    feet = [float(foot) for foot in surface.feet]
    pitch = min((after - before for before, after in pairwise(feet)), default=across / TUCKS_SEEN)
    wide = min(max(TUCKS_SEEN * pitch, LEAST_SEEN), across, along / shape)
    middle = (feet[0] + feet[-1]) / 2 if feet else across / 2
    left = min(max(middle - wide / 2, 0), across - wide)
    top = min(max(_between_rows(surface) - wide * shape / 2, 0), along - wide * shape)
    return Box(left, top, left + wide, top + wide * shape)


def _between_rows(surface: Surface) -> float:
    """The middle between the two rows that are nearest to the middle of a panel, from its top.

    Of tucks that are let go it is the place nearest to there where one of them is.
    """
    middle = float(surface.along) / 2
    stops = {at for own in surface.stitched for stretch in own for at in stretch} - {0, surface.along}
    if stops:
        return min((float(at) for at in stops), key=lambda at: abs(at - middle))
    rows = [float(line.at) for line in surface.held]
    return min(
        ((upper + lower) / 2 for upper, lower in pairwise(rows)), key=lambda at: abs(at - middle), default=middle
    )


def _seen(piece: Piece, surface: Surface, window: Box, dye: Image, pixels: float) -> Image:
    assert piece.panel is not None
    part, hidden = cut_out(surface, window)
    patch, _ = sewn(part, pixels)
    start = float(piece.panel.across.left_allowance) + window.left + hidden
    patch = replace(patch, across=(patch.across + np.float32(start)), along=patch.along + np.float32(window.top))
    colour: Image = np.broadcast_to(dye, (*patch.height.shape, 3))
    if piece.panel.stripes is not None:
        colours = np.array([dyed(stripe.colour) for stripe in piece.panel.stripes.stripes], dtype=np.float32)
        colour = colours[stripes_at(patch.across, piece.panel.stripes)]
    cloth = dressed(patch, colour, dye, pixels)
    height, colour = (np.rot90(grid, -piece.quarters) for grid in (cloth.height, cloth.colour))
    return smaller(lit(height, colour, pixels))


def cut_out(surface: Surface, window: Box) -> tuple[Surface, float]:
    """Return a part of a surface, told from its own upper left corner, and how much cloth is hidden left of it [in]."""
    left, top = Fraction(window.left), Fraction(window.top)
    tucks = list(zip(surface.feet, surface.depths, strict=True))
    places = [
        number
        for number, (foot, depth) in enumerate(tucks)
        if window.left - REACH * float(depth) < float(foot) < window.right + REACH * float(depth)
    ]
    first = places[0] if places else sum(float(foot) < window.left for foot in surface.feet)
    part = Surface(
        Fraction(window.right) - left,
        Fraction(window.bottom) - top,
        tuple(surface.feet[number] - left for number in places),
        tuple(surface.depths[number] for number in places),
        tuple(
            replace(line, at=line.at - top, turns=tuple(line.turns[number] for number in places))
            for line in surface.held
        ),
        tuple((place - top, depth) for place, depth in surface.cross),
        tuple(
            tuple((first - top, last - top) for first, last in surface.stitched[number])
            for number in (places if surface.stitched else ())
        ),
    )
    return part, 2 * sum(float(depth) for depth in surface.depths[:first])


def plan_view(cell: Sequence[Sequence[Turn]], wide: int) -> Image:
    """Return a sample of a turn plan in undyed cloth, linear, ``wide`` places across."""
    surface = sample_surface(cell)
    pixels = 2 * wide / float(surface.across)
    patch, _ = sewn(surface, pixels)
    dye = dyed("")
    cloth = dressed(patch, np.broadcast_to(dye, (*patch.height.shape, 3)), dye, pixels)
    return smaller(lit(cloth.height, cloth.colour, pixels))


def smaller(image: Image) -> Image:
    """Return a picture of half the size, of the mean of each two by two places; an odd edge is left out."""
    high, wide = (size // 2 * 2 for size in image.shape[:2])
    even = image[:high, :wide]
    return np.asarray((even[::2, ::2] + even[1::2, ::2] + even[::2, 1::2] + even[1::2, 1::2]) / 4, dtype=np.float32)

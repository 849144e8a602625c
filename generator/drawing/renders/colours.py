"""Colours in the light: words or shares come in, linear red, green and blue go out, and pictures of bytes.

Linear is the square of what is stored: near enough to what screens do, and exact everywhere.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from generator.drawing.cloth_colour import WHITEST, cloth_colour
from generator.drawing.renders.grids import Grid

Image = NDArray[np.float32]
DEEPEST = 0.15  # the share of light that the darkest cloth keeps, so that its folds are seen


def linear(*shares: float) -> Image:
    """Return a colour of stored shares of red, green and blue as linear ones."""
    return np.asarray(np.square(np.array(shares)), dtype=np.float32)


def dyed(words: str) -> Image:
    """Return the linear colour of a cloth told in words; its lights and shadows stay off white and black."""
    shares = np.array(cloth_colour(words))
    grey, softer = shares.mean(), 0.2 * (shares.max() - shares.min())
    return linear(*(DEEPEST + (WHITEST - DEEPEST) * (share + softer * (grey - share)) for share in shares))


def spun(cloth: Image) -> Image:
    """Return the colour of the thread of a cloth, tone on tone: paler on a dark cloth, deeper on a pale one."""
    pale = cloth.mean() > 0.35
    return np.asarray(cloth * 0.8 if pale else 0.8 * cloth + 0.2 * np.sqrt(cloth) + 0.02, dtype=np.float32)


def mixed(under: Image, over: Image, share: Grid) -> Image:
    """Return one picture laid over another by a share for each place."""
    return np.asarray(under + (over - under) * share[..., np.newaxis], dtype=np.float32)


def stored(image: Image) -> NDArray[np.uint8]:
    """Return a linear picture as bytes; what is too bright is bent down softly."""
    soft = np.where(image > 0.8, 1 - 0.04 / np.maximum(image - 0.6, 0.2), image)
    return np.asarray(np.rint(np.sqrt(np.clip(soft, 0, 1)) * 255), dtype=np.uint8)

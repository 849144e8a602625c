"""The colour of cloth: a word or #rrggbb comes in, the shades from deep shadow to full light go out, and the thread."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from generator.definitions.colours import colour_of

Colour = tuple[float, float, float]

UNDYED = "#e8dcc2"
SHADES = 32
IN_LIGHT = 0.8  # how bright a flat panel is lit: there the cloth has its own colour
DEEPEST, GLEAM = 0.2, 0.42
BLACKEST, WHITEST = 0.04, 0.94


def cloth_colour(words: str) -> Colour:
    """Return red, green and blue, from 0 to 1, of a colour told in words or as #rrggbb; unknown words are undyed linen.

    Of several words the longest ending that names a colour counts.

    Examples
    --------
    >>> cloth_colour("#ff0000") == cloth_colour("quite red")
    True
    >>> cloth_colour("who knows") == cloth_colour("")
    True
    """
    found = colour_of(words) or UNDYED
    red, green, blue = (int(found[place : place + 2], 16) / 255 for place in (1, 3, 5))
    return red, green, blue


def shades(colour: Colour) -> NDArray[np.uint8]:
    """Return the shades of a colour from shadow to light: its own on a flat panel, paler where the light gleams.

    The cloth keeps a little off black and white, or its shadows or its lights would be lost.
    """
    own = BLACKEST + (WHITEST - BLACKEST) * np.array(colour)
    bright = np.linspace(0, 1, SHADES)[:, np.newaxis]
    dark = own * (DEEPEST + (1 - DEEPEST) * bright / IN_LIGHT)
    gleam = own + (1 - own) * GLEAM * (bright - IN_LIGHT) / (1 - IN_LIGHT)
    return np.asarray(np.rint(np.where(bright < IN_LIGHT, dark, gleam) * 255), dtype=np.uint8)


def thread_colour(colour: Colour) -> str:
    """Return a thread (#rrggbb) that shows on a cloth: dark on a pale cloth, pale on a dark one."""
    red, green, blue = colour
    pale = 0.3 * red + 0.59 * green + 0.11 * blue > 0.4
    seen = [part * 0.5 if pale else part + (1 - part) * 0.6 for part in colour]
    return "#" + "".join(f"{round(part * 255):02x}" for part in seen)


def pale(colour: Colour, share: float) -> str:
    """Return a colour (#rrggbb) thinned with white by a share of 1, so that lines and words stay readable on it."""
    return "#" + "".join(f"{round((part + (1 - part) * share) * 255):02x}" for part in colour)

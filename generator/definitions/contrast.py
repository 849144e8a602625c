"""How well a colour can be read on another: two colours such as ``#1b1b1a`` come in, their contrast goes out."""

from __future__ import annotations


def contrast(colour: str, other: str) -> float:
    """Return the contrast of two colours, from 1 (equal) to 21 (black on white).

    The ratio of the relative luminances, each with 0.05 added for stray light.

    Parameters
    ----------
    colour, other : str
        Colours as ``#`` and six digits.

    Returns
    -------
    float
        The contrast [-].

    Examples
    --------
    >>> round(contrast("#000000", "#ffffff"), 6), contrast("#ffffff", "#ffffff")
    (21.0, 1.0)

    References
    ----------
    W3C, *Web Content Accessibility Guidelines* 2.2, "contrast ratio" and "relative luminance"; from memory.
    """
    dark, light = sorted((_luminance(colour), _luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def _luminance(colour: str) -> float:
    channels = (int(colour[start : start + 2], 16) / 255 for start in (1, 3, 5))
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in channels)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue

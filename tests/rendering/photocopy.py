"""A page copied twice at 70 % on a copier that knows black and white alone: an opened PDF comes in, dots go out."""

from __future__ import annotations

from typing import Any

import numpy
import pypdfium2
from PIL import Image, ImageFilter

_DOTS, _SMALLER, _TIMES, _GLASS = 300, 0.7, 2, 0.6
"""Dots in an inch of the page, each copy to the one before, how often, and how blurred the glass is [dots]."""
COPIED_DOTS = _DOTS * _SMALLER**_TIMES


def photocopied(pdf: bytes, page: int = 0) -> numpy.ndarray[Any, Any]:
    """Return the second copy of a page, row by row: where there is ink."""
    with pypdfium2.PdfDocument(pdf) as read:
        image = read[page].render(scale=_DOTS / 72).to_pil().convert("L")
    for _ in range(_TIMES):
        size = (round(image.width * _SMALLER), round(image.height * _SMALLER))
        glass = image.resize(size, Image.Resampling.LANCZOS).filter(ImageFilter.GaussianBlur(_GLASS))
        image = glass.point(lambda grey: 255 if grey >= 128 else 0)
    return numpy.asarray(image) == 0

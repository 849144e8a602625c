"""A cutting layout in one picture of any size: a worksheet and a size come in, the picture goes out.

What has no room in the cloth stands below it, strip by strip. The lower the picture, the smaller the cloth.
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache

from generator.calculation.laid import Layout
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.layout import SELVAGE, DrawnLayout, layout_telling
from generator.drawing.layout_plan import whole_part
from generator.drawing.layout_shapes import shapes_cut
from generator.drawing.layout_words import letters
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style
from generator.lengths import Edition

_STEPS = 16
_HIGHEST = 1.25
"""At best the cloth is so much higher than the paper is wide; where it is longer, it is drawn narrower."""
_LEAST_HIGH = Fraction(5, 2)
"""A long cloth may be drawn so low [in]; a short one half as large as there is room for."""


def heights_of_layout(worksheet: Worksheet, cloth: str, style: Style, width: float) -> Heights:
    """Return how high the layout of a cloth can be: the cloth as wide as fits at most."""
    drawn = _at_scales(worksheet.cloths[cloth].layout, worksheet.edition, style, width)
    best = next((one for one in drawn if one.high <= _HIGHEST * width / MILLIMETRES), drawn[-1])
    highs = [one.height for one in drawn]
    return Heights.of_inches(min(highs), best.height, max(highs))


def draw_sized_layout(worksheet: Worksheet, cloth: str, style: Style, size: DrawnSize) -> Picture:
    """Return the layout of a cloth, as large as a room has place for it."""
    telling = layout_telling(worksheet.cloths[cloth], worksheet.edition)
    return sketched(worksheet, cloth, style, size).picture(*telling)


def sketched(worksheet: Worksheet, cloth: str, style: Style, size: DrawnSize) -> Canvas:
    """Return the canvas of a layout at a size."""
    canvas = canvas_of(size, style, f"layout {cloth}")
    drawn = _at_scales(worksheet.cloths[cloth].layout, worksheet.edition, style, size.width)
    best = next((one for one in drawn if one.height <= canvas.height + 0.01), min(drawn, key=lambda one: one.height))
    best.draw(canvas, "", shapes_cut(worksheet))
    return canvas


# Whoever draws a layout has asked how high it can be, and each time it is laid out at every scale.
@lru_cache(maxsize=4)
def _at_scales(layout: Layout, edition: Edition, style: Style, width: float) -> tuple[DrawnLayout, ...]:
    """Return the layout at several scales, the largest first."""
    wide = width / MILLIMETRES
    told = [DrawnLayout(part, {}, (edition, style), wide) for part in [whole_part(layout, Fraction(1, 1000))]]
    room = Fraction(wide - told[0].left - 4 * SELVAGE).limit_denominator(1000)
    largest = min(Fraction(1), room / layout.width)
    smaller = min(Fraction(1, 2), _LEAST_HIGH / max(whole_part(layout, largest).high, _LEAST_HIGH))
    parts = [whole_part(layout, largest * (1 - (1 - smaller) * Fraction(step, _STEPS))) for step in range(_STEPS + 1)]
    return tuple(DrawnLayout(part, letters([part], (edition, style)), (edition, style), wide) for part in parts)

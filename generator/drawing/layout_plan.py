"""Where a cutting layout lies on paper: a layout comes in, parts with exact places go out; nothing is drawn.

A long layout is broken between strips into parts, one a picture, all at one scale.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.laid import Layout, PlacedItem

WIDE, HIGH = Fraction(19, 4), Fraction(4)
LEAST_WIDE = Fraction(3)


@dataclass(frozen=True, slots=True)
class DrawnStrip:
    """One strip: its number in the order of cutting, where it begins and ends on the cloth [in], its pieces."""

    number: int
    top: Fraction
    bottom: Fraction
    pieces: tuple[PlacedItem, ...]


@dataclass(frozen=True, slots=True)
class LayoutPart:
    """Strips that follow each other, on one picture; ``scale`` is paper over cloth."""

    strips: tuple[DrawnStrip, ...]
    scale: Fraction
    width: Fraction

    @property
    def top(self) -> Fraction:
        """Where the part begins on the cloth [in]."""
        return self.strips[0].top

    @property
    def bottom(self) -> Fraction:
        """Where the part ends on the cloth [in]."""
        return self.strips[-1].bottom

    @property
    def high(self) -> Fraction:
        """The height of the part on paper [in]."""
        return (self.bottom - self.top) * self.scale

    @property
    def wide(self) -> Fraction:
        """The width of the cloth on paper [in]."""
        return self.width * self.scale


def plan_layout(layout: Layout, most_wide: Fraction = WIDE) -> tuple[LayoutPart, ...]:
    """Return the parts of a layout: one if its cloth comes out wide enough to read, else as few as fill the pages."""
    strips = numbered_strips(layout)
    if not strips:
        return ()
    tallest = max(strip.along for strip in layout.strips)
    scale = layout_scale(layout.width, layout.length, tallest, most_wide)
    groups: list[list[DrawnStrip]] = [[]]
    for strip in strips:
        if groups[-1] and (strip.bottom - groups[-1][0].top) * scale > HIGH:
            groups.append([])
        groups[-1].append(strip)
    return tuple(LayoutPart(tuple(group), scale, layout.width) for group in groups)


def layout_scale(width: Fraction, length: Fraction, tallest: Fraction, most_wide: Fraction = WIDE) -> Fraction:
    """Return paper over cloth [-]: never larger than life, the whole width and the tallest strip on the paper.

    Examples
    --------
    Cloth 38 in wide and 20 in long: 4 3/4 in of paper hold the width, an eighth of its size. 40 in long, 4 in of
    paper hold the length at a tenth, and the width comes out 3 4/5 in, wide enough. 76 in long the width would come out
    2 in; drawn 3 in wide, 3/38 of its size, the cloth is 6 in long on paper and takes two parts.

    >>> layout_scale(Fraction(38), Fraction(20), Fraction(20))
    Fraction(1, 8)
    >>> layout_scale(Fraction(38), Fraction(40), Fraction(20))
    Fraction(1, 10)
    >>> layout_scale(Fraction(38), Fraction(76), Fraction(38))
    Fraction(3, 38)
    """
    widest = min(Fraction(1), most_wide / width)
    whole = min(widest, HIGH / length)
    if whole * width < LEAST_WIDE:
        whole = min(widest, LEAST_WIDE / width)
    return min(whole, HIGH / tallest)


def numbered_strips(layout: Layout) -> tuple[DrawnStrip, ...]:
    """Return the strips from the cut end down, each with its pieces from the left selvage."""
    return tuple(
        DrawnStrip(number, strip.top, strip.bottom, strip.placed) for number, strip in enumerate(layout.strips, 1)
    )

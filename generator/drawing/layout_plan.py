"""Where a cutting layout lies on paper: a layout comes in, parts with exact places go out; nothing is drawn.

Strips that are alike are drawn once. A long layout is broken between strips into parts, one a picture, all at one
scale.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate

from generator.calculation.laid import Layout, PlacedItem
from generator.calculation.worksheet.cut_order import OrderedStrips, ordered_strips

WIDE, HIGH = Fraction(19, 4), Fraction(4)
LEAST_WIDE = Fraction(3)


@dataclass(frozen=True, slots=True)
class Patch:
    """A rectangle of cloth, from the left selvage and from the top of its picture [in of cloth]."""

    left: Fraction
    top: Fraction
    right: Fraction
    bottom: Fraction


@dataclass(frozen=True, slots=True)
class DrawnStrip:
    """Strips that are alike, drawn once: where they lie in their picture, from its top [in of cloth]."""

    ordered: OrderedStrips
    top: Fraction

    @property
    def along(self) -> Fraction:
        """Its height [in of cloth]."""
        return self.ordered.strip.along

    @property
    def bottom(self) -> Fraction:
        """Where it ends in its picture [in of cloth]."""
        return self.top + self.along

    @property
    def pieces(self) -> tuple[PlacedItem, ...]:
        """Its pieces, stack by stack from the left."""
        return self.ordered.strip.placed

    def patch(self, piece: PlacedItem) -> Patch:
        """Return where a piece lies in the picture."""
        top = self.top + piece.top - self.ordered.strip.top
        return Patch(piece.left, top, piece.left + piece.across, top + piece.along)

    @property
    def kept(self) -> Patch | None:
        """The cloth that stays whole for what waits, to the right selvage."""
        if not self.ordered.waiting:
            return None
        return Patch(self.ordered.waiting[0].left, self.top, self.ordered.width, self.bottom)

    @property
    def left_over(self) -> tuple[Patch, ...]:
        """What is left over beside the stacks, below them, and beside pieces narrower than their stack."""
        patches = []
        for ordered in self.ordered.now:
            for piece in ordered.stack.placed:
                lies = self.patch(piece)
                patches.append(Patch(lies.right, lies.top, ordered.right, lies.bottom))
                patches.append(Patch(ordered.stack.left, lies.top, lies.left, lies.bottom))
            patches.append(Patch(ordered.stack.left, self.top + ordered.bottoms[-1], ordered.right, self.bottom))
        if not self.ordered.waiting:
            patches.append(Patch(self.ordered.now[-1].right, self.top, self.ordered.width, self.bottom))
        return tuple(patch for patch in patches if patch.left < patch.right and patch.top < patch.bottom)


@dataclass(frozen=True, slots=True)
class LayoutPart:
    """Strips that follow each other, on one picture; ``scale`` is paper over cloth."""

    strips: tuple[DrawnStrip, ...]
    scale: Fraction
    width: Fraction

    @property
    def begins(self) -> str:
        """What the part begins with: the end of the cloth, or a cut."""
        first = self.strips[0].ordered.numbers[0]
        return "the straightened end" if first == 1 else f"cut {first - 1}"

    @property
    def high(self) -> Fraction:
        """The height of the part on paper [in]."""
        return self.strips[-1].bottom * self.scale

    @property
    def wide(self) -> Fraction:
        """The width of the cloth on paper [in]."""
        return self.width * self.scale


def plan_layout(layout: Layout, most_wide: Fraction = WIDE) -> tuple[LayoutPart, ...]:
    """Return the parts of a layout: one if its cloth comes out wide enough to read, else as few as fill the pages."""
    strips = ordered_strips(layout)
    if not strips:
        return ()
    heights = [strips.strip.along for strips in strips]
    scale = layout_scale(layout.width, sum(heights, Fraction(0)), max(heights), most_wide)
    groups: list[list[OrderedStrips]] = [[]]
    for one in strips:
        if groups[-1] and (sum(other.strip.along for other in groups[-1]) + one.strip.along) * scale > HIGH:
            groups.append([])
        groups[-1].append(one)
    return tuple(LayoutPart(_drawn(group), scale, layout.width) for group in groups)


def whole_part(layout: Layout, scale: Fraction) -> LayoutPart:
    """Return a whole layout as one part at a scale."""
    return LayoutPart(_drawn(list(ordered_strips(layout))), scale, layout.width)


def _drawn(group: list[OrderedStrips]) -> tuple[DrawnStrip, ...]:
    tops = accumulate((one.strip.along for one in group), initial=Fraction(0))
    return tuple(DrawnStrip(one, top) for one, top in zip(group, tops, strict=False))


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

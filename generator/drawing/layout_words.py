"""The words of a cutting layout: drawn strips come in, what is written in them and beside them goes out."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import product
from string import ascii_uppercase

from generator.calculation.laid import PlacedItem
from generator.calculation.worksheet.cut_order import OrderedStack, size_words
from generator.drawing.labels import text_height, text_lines, text_width
from generator.drawing.layout_plan import DrawnStrip, LayoutPart
from generator.drawing.style import Style
from generator.lengths import Edition, say_length, write_length
from generator.listed import listed

PAD = 0.05
HEADED_LINES = 6


@dataclass(frozen=True, slots=True)
class PieceWords:
    """The name of a piece and its size as it lies."""

    name: str
    size: str

    def lines(self, wide: float, high: float, style: Style) -> tuple[tuple[str, ...], bool]:
        """Return the lines that fit into a room on paper [in], and whether they are turned; none if nothing fits."""
        for across, down, turned in ((wide, high, False), (high, wide, True)):
            for lines in ((f"{self.name}, {self.size}",), self._broken(across, style)):
                widest = max(text_width(line, style.small, font=style.font) for line in lines)
                if widest <= across - 2 * PAD and len(lines) * 1.2 * text_height(style.small) <= down - 0.02:
                    return lines, turned
        return (), False

    def _broken(self, across: float, style: Style) -> tuple[str, ...]:
        room = across - 2 * PAD
        return (
            *text_lines(self.name, style.small, room, font=style.font),
            *text_lines(self.size, style.small, room, font=style.font),
        )


def piece_words(piece: PlacedItem, edition: Edition) -> PieceWords:
    """Return the words of a piece as it lies."""
    return PieceWords(piece.label, size_words(piece, edition))


def down_words(stack: OrderedStack, edition: Edition) -> str:
    """Return the name of a cut down and its distance from the left selvage."""
    return f"{stack.name} {write_length(stack.right, edition)}"


def headed_cuts(strip: DrawnStrip, part: LayoutPart, look: tuple[Edition, Style]) -> tuple[OrderedStack, ...]:
    """Return the cuts down whose words stand at the top of their strip: all of them, or none where one has no room."""
    edition, style = look
    scale = float(part.scale)
    cuts = tuple(stack for stack in strip.ordered.now if stack.name)
    halves = [
        text_width(down_words(stack, edition), style.small, bold=True, font=style.font) / 2 + 0.05 for stack in cuts
    ]
    rights = [float(stack.right) * scale for stack in cuts]
    ends = [0.0, *(right + half for right, half in zip(rights, halves, strict=True))]
    clear = all(right - half >= end for right, half, end in zip(rights, halves, ends, strict=False))
    high = float(strip.along) * scale >= HEADED_LINES * text_height(style.small)
    return cuts if clear and high and ends[-1] <= float(part.wide) else ()


def piece_lines(
    piece: PlacedItem, strip: DrawnStrip, part: LayoutPart, look: tuple[Edition, Style]
) -> tuple[tuple[str, ...], bool]:
    """Return the lines that stand in a piece, clear of the cuts told at the top of its strip; none where none fit."""
    edition, style = look
    topmost = piece.top == strip.ordered.strip.top
    head = 2 * 1.5 * text_height(style.small) if topmost and headed_cuts(strip, part, look) else 0.0
    across, along = float(piece.across * part.scale), float(piece.along * part.scale)
    return piece_words(piece, edition).lines(across, along - head, style)


def letters(parts: Sequence[LayoutPart], look: tuple[Edition, Style]) -> Mapping[PieceWords, str]:
    """Return a letter for every sort of piece whose words do not fit into it; equal pieces share one."""
    small: dict[PieceWords, str] = {}
    names = ("".join(sign) for length in (1, 2) for sign in product(ascii_uppercase, repeat=length))
    for part in parts:
        for strip in part.strips:
            for piece in strip.pieces:
                words = piece_words(piece, look[0])
                if words not in small and not piece_lines(piece, strip, part, look)[0]:
                    small[words] = next(names)
    return small


def strip_notes(
    strip: DrawnStrip, named: Mapping[PieceWords, str], inside: Sequence[str], edition: Edition
) -> tuple[str, ...]:
    """Return what is told beside a strip: its cuts that do not stand ``inside`` it, small pieces, what stays whole."""
    ordered = strip.ordered
    kept = [f"Keep whole{_room(ordered.grows_across, ordered.grows_along, edition)}"] if ordered.waiting else []
    return (*_cuts(strip, inside, edition), *_small(strip, named, edition), *kept)


def _cuts(strip: DrawnStrip, inside: Sequence[str], edition: Edition) -> Iterator[str]:
    """Yield the cuts of strips that are alike, those down that have no room in the strip, and those across a stack."""
    ordered = strip.ordered
    if len(ordered.strips) > 1:
        places = [write_length(one.bottom, edition) for one in ordered.strips]
        yield f"All alike, cut across at {listed(places)}"
    beside = [one for one in ordered.now if one.name and one.name not in inside]
    if beside:
        down = listed([f"{write_length(one.right, edition)} ({one.name})" for one in beside])
        each = "each" if len(ordered.strips) > 1 else "it"
        yield f"Cut {each} down at {down} from the left"
    for one in ordered.now:
        bottoms = [write_length(bottom, edition) for bottom in one.bottoms if bottom != strip.along]
        if bottoms:
            where = f"left of {one.name}" if one.name else "at the right"
            yield f"Cut the part {where} across at {listed(bottoms)} from its top"


def _small(strip: DrawnStrip, named: Mapping[PieceWords, str], edition: Edition) -> Iterator[str]:
    """Yield the pieces that bear a letter, equal ones once."""
    words = [piece_words(piece, edition) for piece in strip.pieces]
    for one, times in Counter(word for word in words if word in named).items():
        yield f"{named[one]}: {one.name}, {one.size}" + (f", {times} times" if times > 1 else "")


def _room(across: Fraction, along: Fraction, edition: Edition) -> str:
    ways = " and ".join(
        f"{say_length(more, edition)} {way}" for more, way in ((across, "across"), (along, "along")) if more
    )
    return f"; it may grow {ways}" if ways else ""

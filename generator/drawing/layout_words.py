"""The words of a cutting layout: placed pieces come in, what is written in them and beside them goes out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import product
from string import ascii_lowercase

from generator.calculation.laid import Layout, PlacedItem
from generator.drawing.labels import text_height, text_lines, text_width
from generator.drawing.layout_plan import LayoutPart, numbered_strips
from generator.drawing.style import Style
from generator.lengths import Edition, say_length, write_length

PAD = 0.05


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
        return (*text_lines(self.name, style.small, room), *text_lines(self.size, style.small, room))


def size_words(piece: PlacedItem, edition: Edition) -> str:
    """Return the size of a piece as it lies: across the cloth by along it."""
    return f"{write_length(piece.across, edition)} by {say_length(piece.along, edition)}"


def piece_words(piece: PlacedItem, edition: Edition) -> PieceWords:
    """Return the words of a piece as it lies."""
    return PieceWords(piece.label, size_words(piece, edition))


def letters(parts: Sequence[LayoutPart], edition: Edition, style: Style) -> Mapping[PieceWords, str]:
    """Return a letter for every sort of piece whose words do not fit into it; equal pieces share one."""
    small: dict[PieceWords, str] = {}
    names = ("".join(sign) for length in (1, 2) for sign in product(ascii_lowercase, repeat=length))
    for part in parts:
        for strip in part.strips:
            for piece in strip.pieces:
                words = piece_words(piece, edition)
                room = (float(piece.across * part.scale), float(piece.along * part.scale))
                if words not in small and not words.lines(*room, style)[0]:
                    small[words] = next(names)
    return small


def strip_words(layout: Layout, edition: Edition) -> str:
    """Return the layout strip by strip in words."""
    told = []
    for strip in numbered_strips(layout):
        pieces = ", ".join(f"{piece.label} {size_words(piece, edition)}" for piece in strip.pieces)
        told.append(f"Cut {strip.number} at {say_length(strip.bottom, edition)} from the cut end: {pieces}.")
    return "\n".join(told)

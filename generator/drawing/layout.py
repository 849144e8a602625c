"""The cutting layout of a cloth: a worksheet comes in, pictures of the cloth with its pieces and cuts go out.

The cloth lies with its selvages at the left and right, true to scale. Straight cuts across it are numbered in their
order; a piece too small for its words has a letter, told beside its strip.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from fractions import Fraction

from generator.calculation.laid import Layout, PlacedItem
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas
from generator.drawing.labels import spread, text_height, text_width
from generator.drawing.layout_plan import WIDE, DrawnStrip, LayoutPart, plan_layout
from generator.drawing.layout_words import PieceWords, letters, piece_words, strip_words
from generator.drawing.picture import Picture
from generator.drawing.style import Style
from generator.lengths import Edition, say_length, write_length

PAGE = 7.0
NARROWEST = Fraction(9, 4)
SELVAGE = 0.05
HATCH = 0.09


def draw_layout(worksheet: Worksheet, cloth: str, style: Style) -> tuple[Picture, ...]:
    """Return the cutting layout of one cloth of a project, as many pictures as its length needs."""
    use = worksheet.cloths[cloth]
    return draw_cutting(use.layout, use.label, worksheet.edition, style, key=f"layout {cloth}")


def draw_cutting(layout: Layout, label: str, edition: Edition, style: Style, *, key: str) -> tuple[Picture, ...]:
    """Return the pictures of any layout, also one for the kits of a class."""
    canvases = sketch_layout(layout, edition, style, key=key)
    size = f"{say_length(layout.width, edition)} wide, {say_length(layout.length, edition)} long"
    alt = f"Cutting layout on {label}, {size}: {len(layout.placed)} pieces in {len(layout.strips)} strips."
    caption = (
        "Cut straight across at each number in turn, measured from the cut end; then cut each strip into its pieces. "
        "Hatched: left over."
    )
    pictures = []
    for number, canvas in enumerate(canvases, 1):
        which = f" Part {number} of {len(canvases)}." if len(canvases) > 1 else ""
        pictures.append(canvas.picture(alt + which, caption, strip_words(layout, edition) if number == 1 else ""))
    return tuple(pictures)


def sketch_layout(layout: Layout, edition: Edition, style: Style, *, key: str) -> tuple[Canvas, ...]:
    """Return the canvases of a layout, one a part; the cloth gives way where words beside it need the room."""
    wide = WIDE
    while True:
        parts = plan_layout(layout, wide)
        named = letters(parts, edition, style)
        sheets = [_DrawnLayout(part, named, (edition, style)) for part in parts]
        excess = max((sheet.width for sheet in sheets), default=0) - PAGE
        if excess <= 0 or wide <= NARROWEST:
            break
        wide = max(NARROWEST, wide - Fraction(math.ceil(excess * 16), 16))
    canvases = []
    for number, sheet in enumerate(sheets, 1):
        canvas = Canvas(sheet.width, sheet.height, style, key + (f" {number}" if number > 1 else ""))
        sheet.draw(canvas, f"Part {number} of {len(parts)}" if len(parts) > 1 else "")
        canvases.append(canvas)
    return tuple(canvases)


class _DrawnLayout:
    """One part of the cloth on paper; the room that words need on both sides is known before it is drawn."""

    def __init__(self, part: LayoutPart, named: Mapping[PieceWords, str], look: tuple[Edition, Style]) -> None:
        self.part, self.named = part, named
        self.edition, self.style = look
        self.line = text_height(self.style.small)
        self.cut_at = f"cut at ({self.edition.unit}):"
        self.cuts = [f"{strip.number}: {write_length(strip.bottom, self.edition)}" for strip in part.strips]
        self.notes = [note for strip in part.strips for note in self._notes(strip)]
        self.left = max(text_width(words, self.style.small, bold=True) for words in (*self.cuts, self.cut_at)) + 0.2
        beside = [text_width(words, self.style.small) for words, _ in self.notes]
        self.right = 3.4 * self.line + (max(beside) + 0.2 if beside else 0.0)
        self.top = 3.4 * self.line
        self.high, self.wide = float(part.high), float(part.wide)
        told_high = max(len(self.notes), len(self.cuts)) * 1.25 * self.line
        self.width = self.left + max(self.wide + self.right, 2.6)
        self.height = self.top + max(self.high, told_high) + self.line

    def at(self, across: Fraction, along: Fraction) -> tuple[float, float]:
        """Return the place on paper of a place on the cloth."""
        scale = self.part.scale
        return self.left + float(across * scale), self.top + float((along - self.part.top) * scale)

    def draw(self, canvas: Canvas, title: str) -> None:
        """Draw everything, cloth first."""
        self._cloth(canvas)
        for strip in self.part.strips:
            for piece in strip.pieces:
                self._piece(canvas, piece)
        self._cuts(canvas)
        self._measures(canvas, title)
        self._write_notes(canvas)

    def _cloth(self, canvas: Canvas) -> None:
        """Draw the cloth hatched as left over; pieces cover it."""
        corner, opposite = (self.left, self.top), (self.left + self.wide, self.top + self.high)
        canvas.rectangle(corner, opposite, fill=self.style.shade)
        outline = (corner, (opposite[0], corner[1]), opposite, (corner[0], opposite[1]))
        with canvas.clipped(outline):
            steps = int((self.wide + self.high) / HATCH) + 1
            canvas.lines(
                [
                    ((self.left + step * HATCH, self.top), (self.left + step * HATCH - self.high, self.top + self.high))
                    for step in range(steps)
                ],
                self.style.measure,
            )
        del canvas.segments[-steps:]  # clipped lines reach less far than they are told to
        for side in (-1, 1):
            x = (corner if side < 0 else opposite)[0]
            for beyond in (0.0, side * SELVAGE):
                canvas.line(((x + beyond, corner[1]), (x + beyond, opposite[1])), self.style.outline)
        canvas.line(((corner[0] - SELVAGE, corner[1]), (opposite[0] + SELVAGE, corner[1])), self.style.cut)

    def _piece(self, canvas: Canvas, piece: PlacedItem) -> None:
        corner, opposite = self.at(piece.left, piece.top), self.at(piece.left + piece.across, piece.top + piece.along)
        canvas.rectangle(corner, opposite, fill=self.style.cloth, pen=self.style.outline)
        middle = ((corner[0] + opposite[0]) / 2, (corner[1] + opposite[1]) / 2)
        words = piece_words(piece, self.edition)
        lines, turned = words.lines(opposite[0] - corner[0], opposite[1] - corner[1], self.style)
        small = not lines
        if small:
            lines = (self.named[words],) if self._holds_letter(piece) else ()
        for number, told in enumerate(lines):
            off = (number - (len(lines) - 1) / 2) * 1.2 * self.line
            place = (middle[0] + off, middle[1]) if turned else (middle[0], middle[1] + off)
            canvas.text(told, *place, turned=turned, bold=small, backing=self.style.cloth)

    def _holds_letter(self, piece: PlacedItem) -> bool:
        return float(min(piece.across, piece.along) * self.part.scale) >= 1.15 * self.line

    def _cuts(self, canvas: Canvas) -> None:
        """Draw the cuts across, numbered at the left with the distance from the cut end."""
        edge = self.left - 0.12
        wanted = [self.at(Fraction(0), strip.bottom)[1] for strip in self.part.strips]
        heights = [1.2 * self.line] * len(wanted)
        places = spread(wanted, heights, self.top, self.height - 0.02) or tuple(wanted)
        for words, cut, y in zip(self.cuts, wanted, places, strict=True):
            canvas.line(((edge, y), (self.left - SELVAGE, cut)), self.style.measure)
            canvas.line(((self.left - SELVAGE, cut), (self.left + self.wide + SELVAGE, cut)), self.style.cut)
            canvas.text(words, edge - 0.03, y, hold="right", bold=True)
        canvas.text(self.cut_at, edge - 0.03, self.top - 0.1, hold="right")

    def _measures(self, canvas: Canvas, title: str) -> None:
        """Draw the width above, the length on the right, and the word selvage beside it."""
        pen, paper = self.style.measure, self.style.paper
        above, right = self.top - 1.1 * self.line, self.left + self.wide
        width = f"{say_length(self.part.width, self.edition)} wide"
        canvas.arrow((self.left, above), (right, above), pen, both=True)
        canvas.text(width, self.left + self.wide / 2, above, backing=paper)
        if title:
            canvas.text(title, self.left, 0.6 * self.line, hold="left", bold=True)
        beside = right + SELVAGE + 1.9 * self.line
        long = f"{say_length(self.part.bottom - self.part.top, self.edition)} long"
        if text_width(long, self.style.small) < self.high:
            canvas.arrow((beside, self.top), (beside, self.top + self.high), pen, both=True)
            canvas.text(long, beside, self.top + self.high / 2, turned=True, backing=paper)
        if text_width("selvage", self.style.small) < self.high:
            canvas.text(
                "selvage", right + SELVAGE + 0.65 * self.line, self.top + self.high / 2, turned=True, backing=paper
            )

    def _notes(self, strip: DrawnStrip) -> list[tuple[str, PlacedItem]]:
        """Return what must be told beside a strip, each with the last piece that it is about."""
        counted: dict[PieceWords, list[PlacedItem]] = {}
        for piece in strip.pieces:
            words = piece_words(piece, self.edition)
            if words in self.named:
                counted.setdefault(words, []).append(piece)
        return [
            (
                f"{self.named[words]}: {words.name}, {words.size}" + (f", {len(same)} times" if len(same) > 1 else ""),
                same[-1],
            )
            for words, same in counted.items()
        ]

    def _write_notes(self, canvas: Canvas) -> None:
        """Write what pieces too small for words are, beside them; a leader where not even a letter fits."""
        if not self.notes:
            return
        start = self.left + self.wide + SELVAGE + 2.8 * self.line
        wanted = [self.at(Fraction(0), piece.top + piece.along / 2)[1] for _, piece in self.notes]
        places = spread(wanted, [1.25 * self.line] * len(wanted), self.top, self.height - 0.02) or tuple(wanted)
        for (words, piece), y, middle in zip(self.notes, places, wanted, strict=True):
            canvas.text(words, start + 0.1, y, hold="left")
            if not self._holds_letter(piece):
                end = self.at(piece.left + piece.across, piece.top)[0]
                canvas.line(((end, middle), (start - 0.1, middle), (start + 0.06, y)), self.style.measure)

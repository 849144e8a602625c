"""The cutting layout of a cloth: a worksheet comes in, pictures of the cloth with its pieces and cuts go out.

The cloth lies with its straightened end at the top and its selvages at the sides, true to scale. Cuts across are
numbered at the left with their distance from that end, cuts down at the top of their strip with their distance from the
left selvage. What is cut now is white, what stays whole hatched, what is left over dotted.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from generator.calculation.laid import PlacedItem
from generator.calculation.worked_project import ClothUse, Worksheet
from generator.calculation.worksheet.cut_order import OrderedStack, cut_order, numbered, proof_words
from generator.drawing.canvas import Canvas
from generator.drawing.labels import spread, text_height, text_lines, text_width
from generator.drawing.layout_plan import WIDE, DrawnStrip, LayoutPart, Patch, plan_layout
from generator.drawing.layout_shapes import NO_SHAPES, Shapes, cut_line_on, shapes_cut
from generator.drawing.layout_words import (
    PieceWords,
    down_words,
    headed_cuts,
    letters,
    piece_lines,
    piece_words,
    strip_notes,
)
from generator.drawing.patterns import PATTERN_DOT
from generator.drawing.picture import Picture
from generator.drawing.style import Style
from generator.lengths import Edition, say_length, write_length

PAGE = 7.0
NARROWEST = Fraction(9, 4)
SELVAGE = 0.05
HATCH = 0.09
DOTS = 0.11
BESIDE = 1.7


def draw_layout(worksheet: Worksheet, cloth: str, style: Style) -> tuple[Picture, ...]:
    """Return the cutting layout of one cloth of a project, as many pictures as its length needs."""
    use, shapes = worksheet.cloths[cloth], shapes_cut(worksheet)
    return draw_cutting(use, worksheet.edition, style, key=f"layout {cloth}", shapes=shapes)


def draw_cutting(
    use: ClothUse, edition: Edition, style: Style, *, key: str, shapes: Shapes = NO_SHAPES
) -> tuple[Picture, ...]:
    """Return the pictures of any layout, also one for the kits of a class."""
    alt, caption, text = layout_telling(use, edition)
    canvases = sketch_layout(use, edition, style, key=key, shapes=shapes)
    pictures = []
    for number, canvas in enumerate(canvases, 1):
        which = f" Part {number} of {len(canvases)}." if len(canvases) > 1 else ""
        pictures.append(canvas.picture(alt + which, caption, text if number == 1 else ""))
    return tuple(pictures)


def layout_telling(use: ClothUse, edition: Edition) -> tuple[str, str, str]:
    """Return what is told of a layout in place of its picture, below it, and at length."""
    layout = use.layout
    size = f"{say_length(layout.width, edition)} wide, {say_length(layout.length, edition)} long"
    alt = f"Cutting layout on {use.label}, {size}: {len(layout.placed)} pieces in {len(layout.strips)} strips."
    whole = " Hatched: stays whole." if any(stack.later for strip in layout.strips for stack in strip.stacks) else ""
    caption = (
        f"Is the shorter selvage {say_length(layout.length, edition)} long at least? Then cut across at 1, 2 ... from "
        f"the straightened end, and each strip down at 1a, 1b ... from the left selvage.{whole} Dotted: left over."
    )
    order = (line.strip().removeprefix("- ") for line in cut_order(use, edition).splitlines())
    return alt, caption, "\n".join((*order, proof_words(use, edition))).replace("**", "")


def sketch_layout(
    use: ClothUse, edition: Edition, style: Style, *, key: str, shapes: Shapes = NO_SHAPES
) -> tuple[Canvas, ...]:
    """Return the canvases of a layout, one a part; the cloth gives way where words beside it need the room."""
    wide = WIDE
    while True:
        parts = plan_layout(use.layout, wide)
        named = letters(parts, (edition, style))
        sheets = [DrawnLayout(part, named, (edition, style)) for part in parts]
        excess = max((sheet.width for sheet in sheets), default=0) - PAGE
        if excess <= 0 or wide <= NARROWEST:
            break
        wide = max(NARROWEST, wide - Fraction(math.ceil(excess * 16), 16))
    canvases = []
    for number, sheet in enumerate(sheets, 1):
        canvas = Canvas(sheet.width, sheet.height, style, key + (f" {number}" if number > 1 else ""))
        sheet.draw(canvas, f"Part {number} of {len(parts)}" if len(parts) > 1 else "", shapes)
        canvases.append(canvas)
    return tuple(canvases)


class DrawnLayout:
    """One part of the cloth on paper; the room that words need round it is known before it is drawn.

    What has no room in a strip stands beside it, or below the cloth where the paper is only so ``wide`` [in].
    """

    def __init__(
        self, part: LayoutPart, named: Mapping[PieceWords, str], look: tuple[Edition, Style], wide: float = 0.0
    ) -> None:
        self.part, self.named = part, named
        self.edition, self.style = look
        self.line = text_height(self.style.small)
        self.cut_at = f"cut at ({self.edition.unit}):"
        self.cuts = [self._across(strip) for strip in part.strips]
        self.headed = {strip.top: headed_cuts(strip, part, look) for strip in part.strips}
        told = [self._notes(strip) for strip in part.strips]
        self.notes = [self._lines(notes, BESIDE) for notes in told] if not wide else [() for _ in told]
        self.below = self._legend(told, wide) if wide else ()
        self.left = max(text_width(words, self.style.small, bold=True) for words in (*self.cuts, self.cut_at)) + 0.2
        beside = [text_width(line, self.style.small) for lines in self.notes for line in lines]
        self.right = 2 * SELVAGE if wide else 2.3 * self.line + (max(beside) + 0.3 if beside else 0.0)
        self.top = 3.4 * self.line
        self.high, self.wide = float(part.high), float(part.wide)
        told_high = max(sum(len(lines) for lines in self.notes) * 1.2, len(self.cuts) * 1.25) * self.line
        self.width = wide or self.left + max(self.wide + self.right, 2.6)
        self.bottom = self.top + max(self.high, told_high + (0 if wide else 0.1 * len(self.notes))) + self.line
        self.height = self.bottom + 1.2 * self.line * len(self.below)

    def _across(self, strip: DrawnStrip) -> str:
        numbers = strip.ordered.numbers
        if len(numbers) > 1:
            return f"{numbers[0]} to {numbers[-1]}"
        told = f"{numbers[0]}: {write_length(strip.ordered.strip.bottom, self.edition)}"
        # What stays whole is cut by nobody here, but the cloth must reach so far.
        return told if strip.ordered.now else f"({told})"

    def _notes(self, strip: DrawnStrip) -> tuple[str, ...]:
        inside = [stack.name for stack in self.headed[strip.top]]
        return strip_notes(strip, self.named, inside, self.edition)

    def _lines(self, notes: Sequence[str], wide: float) -> tuple[str, ...]:
        return tuple(line for note in notes for line in text_lines(note, self.style.small, wide, font=self.style.font))

    def _legend(self, told: Sequence[tuple[str, ...]], wide: float) -> tuple[str, ...]:
        """What stands below the cloth, strip by strip."""
        strips = zip(self.part.strips, told, strict=True)
        return self._lines(
            [f"{numbered('Strip', strip.ordered.numbers)}: {'. '.join(notes)}." for strip, notes in strips if notes],
            wide - 0.04,
        )

    def at(self, across: Fraction, along: Fraction) -> tuple[float, float]:
        """Return the place on paper of a place on the cloth of the part."""
        scale = self.part.scale
        return self.left + float(across * scale), self.top + float(along * scale)

    def draw(self, canvas: Canvas, title: str, shapes: Shapes = NO_SHAPES) -> None:
        """Draw everything, cloth first; in the rectangles of pieces that are cut by paper the lines of their paper."""
        self._cloth(canvas)
        for strip in self.part.strips:
            self._strip(canvas, strip)
            for piece in strip.pieces:
                if piece.piece in shapes:
                    corner = self.at(piece.left, strip.patch(piece).top)
                    line = cut_line_on(piece, shapes[piece.piece], corner, float(self.part.scale))
                    canvas.line(line, self.style.trim, closed=True)
        self._cuts(canvas)
        self._measures(canvas, title)
        self._write_notes(canvas)
        for number, words in enumerate(self.below):
            canvas.text(words, 0.02, self.bottom + (1.2 * number + 0.5) * self.line, hold="left")

    def _cloth(self, canvas: Canvas) -> None:
        """Draw the cloth with its selvages."""
        corner, opposite = (self.left, self.top), (self.left + self.wide, self.top + self.high)
        canvas.rectangle(corner, opposite, fill=self.style.cloth)
        for side in (-1, 1):
            x = (corner if side < 0 else opposite)[0]
            for beyond in (0.0, side * SELVAGE):
                canvas.line(((x + beyond, corner[1]), (x + beyond, opposite[1])), self.style.outline)

    def _strip(self, canvas: Canvas, strip: DrawnStrip) -> None:
        for patch in strip.left_over:
            self._dotted(canvas, patch)
        if strip.kept is not None:
            self._hatched(canvas, strip.kept)
        waiting = {id(piece) for stack in strip.ordered.waiting for piece in stack.placed}
        for piece in strip.pieces:
            self._piece(canvas, strip, piece, later=id(piece) in waiting)
        for ordered in strip.ordered.now:
            self._down_cut(canvas, strip, ordered)

    def _corners(self, patch: Patch) -> tuple[tuple[float, float], tuple[float, float]]:
        return self.at(patch.left, patch.top), self.at(patch.right, patch.bottom)

    def _dotted(self, canvas: Canvas, patch: Patch) -> None:
        (left, top), (right, bottom) = self._corners(patch)
        across = range(math.ceil(left / DOTS), math.floor(right / DOTS) + 1)
        down = range(math.ceil(top / DOTS), math.floor(bottom / DOTS) + 1)
        canvas.dots([(x * DOTS, y * DOTS) for y in down for x in across], PATTERN_DOT)

    def _hatched(self, canvas: Canvas, patch: Patch) -> None:
        (left, top), (right, bottom) = self._corners(patch)
        before = len(canvas.segments)
        with canvas.clipped(((left, top), (right, top), (right, bottom), (left, bottom))):
            high = bottom - top
            steps = int((right - left + high) / HATCH) + 1
            canvas.lines(
                [((left + step * HATCH, top), (left + step * HATCH - high, bottom)) for step in range(steps)],
                self.style.hatch,
            )
        del canvas.segments[before:]  # clipped lines reach less far than they are told to

    def _piece(self, canvas: Canvas, strip: DrawnStrip, piece: PlacedItem, *, later: bool) -> None:
        corner, opposite = self._corners(strip.patch(piece))
        style = self.style
        canvas.rectangle(corner, opposite, fill="" if later else style.paper, pen=style.trim if later else None)
        middle = ((corner[0] + opposite[0]) / 2, (corner[1] + opposite[1]) / 2)
        lines, turned = piece_lines(piece, strip, self.part, (self.edition, style))
        small = not lines
        if small and self._holds_letter(piece):
            lines = (self.named[piece_words(piece, self.edition)],)
            if self.headed[strip.top] and piece.top == strip.ordered.strip.top:
                # Below the cuts that are told at the top of the strip.
                middle = (middle[0], max(middle[1], corner[1] + 2.2 * self.line))
            if middle[1] + 0.6 * self.line > opposite[1]:
                lines = ()
        for number, told in enumerate(lines):
            off = (number - (len(lines) - 1) / 2) * 1.2 * self.line
            place = (middle[0] + off, middle[1]) if turned else (middle[0], middle[1] + off)
            canvas.text(told, *place, turned=turned, bold=small, backing=style.cloth if later else style.paper)

    def _holds_letter(self, piece: PlacedItem) -> bool:
        return float(min(piece.across, piece.along) * self.part.scale) >= 1.15 * self.line

    def _down_cut(self, canvas: Canvas, strip: DrawnStrip, ordered: OrderedStack) -> None:
        """Draw the cut down beside a stack, the cuts across it, and where narrower pieces are trimmed."""
        if ordered.name:
            top, bottom = self.at(ordered.right, strip.top), self.at(ordered.right, strip.bottom)
            canvas.line((top, bottom), self.style.cut)
        for piece, across in zip(ordered.stack.placed, ordered.bottoms, strict=True):
            if across != strip.along:
                left = self.at(ordered.stack.left, strip.top + across)
                canvas.line((left, self.at(ordered.right, strip.top + across)), self.style.outline)
            if piece.across < ordered.stack.across:
                lies = strip.patch(piece)
                side = lies.left if lies.left > ordered.stack.left else lies.right
                canvas.line((self.at(side, lies.top), self.at(side, lies.bottom)), self.style.trim)
        if ordered in self.headed[strip.top]:
            words = down_words(ordered, self.edition)
            canvas.text(words, top[0], top[1] + 0.85 * self.line, bold=True, backing=self.style.paper)

    def _cuts(self, canvas: Canvas) -> None:
        """Draw the cuts across, numbered with the distance from the straightened end; none where all waits."""
        edge = self.left - 0.12
        wanted = [self.at(Fraction(0), strip.bottom)[1] for strip in self.part.strips]
        places = spread(wanted, [1.2 * self.line] * len(wanted), self.top, self.bottom - 0.02) or tuple(wanted)
        for strip, words, cut, y in zip(self.part.strips, self.cuts, wanted, places, strict=True):
            now = bool(strip.ordered.now)
            canvas.line(((edge, y), (self.left - SELVAGE, cut)), self.style.measure)
            pen = self.style.cut if now else self.style.measure
            canvas.line(((self.left - SELVAGE, cut), (self.left + self.wide + SELVAGE, cut)), pen)
            canvas.text(words, edge - 0.03, y, hold="right", bold=now)
        canvas.text(self.cut_at, edge - 0.03, self.top - 0.1, hold="right")
        heavy = replace(self.style.cut, width=1.5 * self.style.cut.width)
        canvas.line(((self.left - SELVAGE, self.top), (self.left + self.wide + SELVAGE, self.top)), heavy)

    def _measures(self, canvas: Canvas, title: str) -> None:
        """Draw the width above, name the end and the selvage."""
        above, right = self.top - 1.1 * self.line, self.left + self.wide
        width = f"{say_length(self.part.width, self.edition)} wide, {self.part.begins}"
        if self.below and text_width(width, self.style.small, font=self.style.font) > self.width - self.left:
            width = f"{say_length(self.part.width, self.edition)} wide"
        if text_width(width, self.style.small, font=self.style.font) + 0.3 < self.wide:
            canvas.arrow((self.left, above), (right, above), self.style.measure, both=True)
            canvas.text(width, self.left + self.wide / 2, above, backing=self.style.paper)
        else:
            canvas.text(width, self.left, above, hold="left")
        if title:
            canvas.text(title, self.left, 0.6 * self.line, hold="left", bold=True)
        if right + 2 * self.line < self.width and text_width("selvage", self.style.small) < self.high:
            beside = right + SELVAGE + 0.65 * self.line
            canvas.text("selvage", beside, self.top + self.high / 2, turned=True, backing=self.style.paper)

    def _write_notes(self, canvas: Canvas) -> None:
        """Write beside each strip what has no room in it."""
        start = self.left + self.wide + SELVAGE + 1.9 * self.line
        told = [(strip, lines) for strip, lines in zip(self.part.strips, self.notes, strict=True) if lines]
        heights = [1.2 * self.line * len(lines) + 0.1 for _, lines in told]
        wanted = [self.at(Fraction(0), (strip.top + strip.bottom) / 2)[1] for strip, _ in told]
        places = spread(wanted, heights, self.top, self.height - 0.02) or tuple(wanted)
        for (_, lines), y, middle in zip(told, places, wanted, strict=True):
            if abs(y - middle) > self.line:
                canvas.line(((start - 0.3 * self.line, middle), (start + 0.04, y)), self.style.measure)
            for number, words in enumerate(lines):
                off = (number - (len(lines) - 1) / 2) * 1.2 * self.line
                canvas.text(words, start + 0.1, y + off, hold="left")

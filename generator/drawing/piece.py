"""One piece of cloth as it is cut: a worksheet comes in, a picture with its edges, grain and sizes goes out.

The dotted line is the finished edge, inside the allowances; proportions are true. A strip too long for the paper is
broken in the middle.
"""

from __future__ import annotations

import math
from fractions import Fraction

from generator.calculation.worked_piece import Part, Piece, Straight
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.labels import text_height, text_lines, text_width
from generator.drawing.outlines import draw_outline, told_at
from generator.drawing.picture import Picture
from generator.drawing.piece_marks import draw_marks
from generator.drawing.piece_plan import WIDE, PiecePlan, plan_part
from generator.drawing.piece_words import caption_words, cut_words, piece_title, size_words
from generator.drawing.sheet_edges import edge_words
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style
from generator.lengths import Edition, say_length

GAP = 0.08
ARROW = 0.14
BETWEEN = 0.35
LEAST_WIDTH = 3.2
PAGE = 7.0
LEAST_DRAWN = Fraction(2)
MOST_FOLDS = 2  # with more of them there is no room for the word beside the grain arrow


def plain_pieces(worksheet: Worksheet) -> tuple[str, ...]:
    """Return the names of the pieces that this picture tells all about: those cut from cloth and not tucked."""
    return tuple(name for name, piece in worksheet.pieces.items() if piece.panel is None and piece.parts)


def draw_piece(worksheet: Worksheet, name: str, style: Style) -> tuple[Picture, ...]:
    """Return the picture of one piece, none for a piece that is not cut from cloth."""
    piece = worksheet.pieces[name]
    if not piece.parts:
        return ()
    canvas = sketch_piece(piece, worksheet.edition, style)
    return (canvas.picture(_alt(piece, worksheet.edition), caption_words(piece)),)


def heights_of_piece(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the picture of a piece is at a width."""
    drawn = _DrawnPiece(worksheet.pieces[name], (worksheet.edition, style), width / MILLIMETRES)
    return Heights.of_inches(drawn.height)


def draw_sized_piece(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return the picture of one piece at a size."""
    piece, edition = worksheet.pieces[name], worksheet.edition
    canvas = canvas_of(size, style, f"piece {name}")
    _DrawnPiece(piece, (edition, style), canvas.width).draw(canvas)
    return canvas.picture(_alt(piece, edition), caption_words(piece))


def shaped_pieces(worksheet: Worksheet) -> tuple[str, ...]:
    """Return the names of the pieces that need a picture: those that are no plain rectangle, or are folded."""
    return tuple(
        name
        for name in plain_pieces(worksheet)
        if worksheet.pieces[name].made.folds
        or any(not isinstance(part.outline, Straight) for part in worksheet.pieces[name].parts)
    )


def _alt(piece: Piece, edition: Edition) -> str:
    size = cut_words(piece, edition)
    return f"The {piece.label} as it is cut, {size}, with its finished edge inside the allowances."


def sketch_piece(piece: Piece, edition: Edition, style: Style) -> Canvas:
    """Return the canvas of one piece: its name and sizes in words, below them its parts side by side."""
    drawn = _DrawnPiece(piece, (edition, style), PAGE)
    narrow = max(LEAST_WIDTH, drawn.drawn, drawn.titled)
    if narrow < drawn.width:
        drawn = _DrawnPiece(piece, (edition, style), narrow)
    canvas = Canvas(drawn.width, drawn.height, style, f"piece {piece.name}")
    drawn.draw(canvas)
    return canvas


class _DrawnPiece:
    """All of one piece on paper that is so wide [in]; its height is known before it is drawn."""

    def __init__(self, piece: Piece, look: tuple[Edition, Style], width: float) -> None:
        edition, self.style = look
        self.width = width
        self.sheets, self.drawn = _fitting(piece, look, width)
        strong, font = self.style.strong, self.style.font
        self.title = text_lines(piece_title(piece), strong, width - 0.06, bold=True, font=font)
        self.told = text_lines(size_words(piece, edition), self.style.small, width - 0.1, font=font)
        self.titled = min(width, text_width(piece_title(piece), strong, bold=True, font=font) + 0.1)
        self.head = 1.2 * text_height(strong) * len(self.title) + 0.3 * text_height(strong)
        self.text = 1.3 * text_height(self.style.small) * len(self.told) + GAP
        self.height = self.head + self.text + max(sheet.height for sheet in self.sheets)

    def draw(self, canvas: Canvas) -> None:
        """Draw the words, and the parts below them."""
        strong, line = text_height(self.style.strong), text_height(self.style.small)
        for number, words in enumerate(self.title):
            canvas.text(words, 0.03, (0.7 + 1.2 * number) * strong, size=self.style.strong, bold=True, hold="left")
        for number, words in enumerate(self.told):
            canvas.text(words, 0.03, self.head + (0.6 + 1.3 * number) * line, hold="left")
        left = (canvas.width - self.drawn) / 2
        for sheet in self.sheets:
            sheet.draw(canvas, left, self.head + self.text)
            left += sheet.width + BETWEEN


def _fitting(piece: Piece, look: tuple[Edition, Style], width: float) -> tuple[list[_DrawnOutline], float]:
    """Return every part of a piece, as large as all of them fit side by side into a width, and how wide they are."""
    wide, least = min(WIDE, Fraction(width).limit_denominator(16)), min(LEAST_DRAWN, Fraction(width / 5))
    while True:
        sheets = _sheets(piece, wide, look)
        drawn = sum(sheet.width for sheet in sheets) + BETWEEN * (len(sheets) - 1)
        if drawn <= width or wide <= least:
            return sheets, drawn
        wide -= Fraction(math.ceil((drawn - width) * 16), 16)


def _sheets(piece: Piece, wide: Fraction, look: tuple[Edition, Style]) -> list[_DrawnOutline]:
    """Return every part of a piece, drawn at most ``wide`` [in]."""
    return [_DrawnOutline(piece, part, plan_part(part, wide), look) for part in piece.parts]


class _DrawnOutline:
    """One part with all that stands round it; its width and height on paper are known before it is drawn."""

    def __init__(self, piece: Piece, part: Part, plan: PiecePlan, look: tuple[Edition, Style]) -> None:
        self.piece, self.part, self.plan = piece, part, plan
        self.edition, self.style = look
        self.line = text_height(self.style.small)
        self.words = {side: edge_words(edge.end, self.edition) for side, edge in told_at(part).items()}
        self.wide, self.high = plan.paper
        cut = [self._width(self._said(length)) for length in (part.cut_across, part.cut_along)]
        over = max(
            0.0, (max([cut[0], *(self._width(self.words.get(side, "")) for side in ("top", "bottom"))]) - self.wide) / 2
        )
        self.left = max(over, self._beside("left") + GAP)
        self.right = max(over, self._beside("right") + ARROW + self._turned(cut[1]) + GAP)
        self.width = self.left + self.wide + self.right
        self.height = 1.4 * self.line + self.high + 1.4 * self.line + ARROW + self.line

    def _said(self, length: Fraction) -> str:
        return f"cut {say_length(length, self.edition)}"

    def _width(self, words: str) -> float:
        return text_width(words, self.style.small, font=self.style.font)

    def _turned(self, width: float) -> float:
        """Return the room beside the piece for words: turned where they fit along it, else lying."""
        return 0.6 * self.line if width <= self.high else width + 0.04

    def _beside(self, side: str) -> float:
        if side not in self.words:
            return 0.0
        width = self._width(self.words[side])
        return GAP + (self.line if width <= self.high else width)

    def draw(self, canvas: Canvas, left: float, top: float) -> None:
        """Draw the piece with its edge words and sizes; ``left`` and ``top`` are the corner of its room."""
        x, y = left + self.left, top + 1.4 * self.line
        draw_outline(canvas, self.part, self.plan, (x, y))
        draw_marks(canvas, self.piece, self.plan, (x, y))
        self._grain(canvas, x, y)
        self._edges(canvas, x, y)
        self._measures(canvas, x, y)

    def _grain(self, canvas: Canvas, x: float, y: float) -> None:
        """Draw the grain arrow; where the piece is too small for it, it is told in words with the sizes."""
        grain = self.piece.grain
        if grain == "either":
            return
        beside = 0.37 if self.piece.made.folds else 0.5
        lying = self.wide > self.high
        right = 0.25 if self.plan.across.broken else 0.5 if lying else beside
        down = 0.25 if self.plan.along.broken else beside if lying else 0.5
        middle = (x + self.wide * right, y + self.high * down)
        words = "bias" if grain == "bias" else "grain"
        run = {"along": (0.0, 1.0), "across": (1.0, 0.0), "bias": (0.7071, 0.7071)}[grain]
        reach = min(0.45, (self.high if run[1] else self.wide) * 0.3)
        ends = [(middle[0] + side * reach * run[0], middle[1] + side * reach * run[1]) for side in (-1, 1)]
        canvas.arrow(ends[0], ends[1], self.style.outline, both=True)
        if len(self.piece.made.folds) < MOST_FOLDS and (reach > 0.3 or run[0]):
            canvas.text(words, *middle, turned=grain == "along", backing=self.style.cloth)

    def _edges(self, canvas: Canvas, x: float, y: float) -> None:
        """Write beside every edge how it is finished."""
        for side, words in self.words.items():
            if side in ("top", "bottom"):
                at = y - 0.75 * self.line if side == "top" else y + self.high + 0.75 * self.line
                canvas.text(words, x + self.wide * (0.25 if self.plan.across.broken else 0.5), at)
                continue
            turned = self._width(words) <= self.high
            away = GAP + (self.line / 2 if turned else self._width(words) / 2)
            at = x - away if side == "left" else x + self.wide + away
            canvas.text(words, at, y + self.high / 2, turned=turned)

    def _measures(self, canvas: Canvas, x: float, y: float) -> None:
        """Draw the cut sizes below and on the right."""
        pen, paper = self.style.measure, self.style.paper
        below = y + self.high + 1.4 * self.line + ARROW
        canvas.arrow((x, below), (x + self.wide, below), pen, both=True)
        canvas.text(self._said(self.part.cut_across), x + self.wide / 2, below, backing=paper)
        if self.part.outline.one_measure:
            return
        words = self._said(self.part.cut_along)
        beside = x + self.wide + self._beside("right") + ARROW
        canvas.arrow((beside, y), (beside, y + self.high), pen, both=True)
        turned = self._width(words) <= self.high
        at = beside if turned else beside + self._width(words) / 2 + 0.04
        canvas.text(words, at, y + self.high / 2, turned=turned, backing=paper)

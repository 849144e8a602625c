"""The paper by which a shape is cut, at true size: a shape comes in, the tiles to print and join go out.

Every tile is its own picture and fits on Letter and on A4. It must be printed at the size it says: an inch of a tile is
an inch of cloth.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.worked_piece import EdgeWork, Part, Piece, Shaped
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas
from generator.drawing.labels import Point, text_height, text_width
from generator.drawing.paper_places import name_place, right_of
from generator.drawing.picture import Picture
from generator.drawing.style import Style
from generator.lengths import CENTIMETRE, Edition, say_length

Spots = Sequence[tuple[Fraction, Fraction]]
SIZES = {"in": (Fraction(13, 2), Fraction(9)), "cm": (16 * CENTIMETRE, 22 * CENTIMETRE)}
TAB, RIM = 0.5, 0.03
MEET = 0.16  # how far a triangle reaches into its tile, and half of how wide it is where two meet
GRAIN = 1.2
BRACKET = 0.4  # how far from the fold the bracket that points at it lies


@dataclass(frozen=True, slots=True)
class PaperTile:
    """One tile: its row (a letter) and column, where its corners lie on the shape [in], and its neighbours' names."""

    name: str
    left: Fraction
    top: Fraction
    right: Fraction
    bottom: Fraction
    beside: str
    below: str

    def holds(self, spot: tuple[Fraction, Fraction]) -> bool:
        """Whether a place of the shape lies on it; one on a line between two lies on the one before."""
        (x, y) = spot
        return self.left < x <= self.right and self.top < y <= self.bottom


def plan_paper(shape: Shaped, edition: Edition, fold: Fraction | None = None) -> tuple[PaperTile, ...]:
    """Return the tiles of a shape, row by row: as few as can be, the shape in their middle.

    Of one that is cut on a fold they begin at the fold, which lies so far across [in], and have what is right of it.
    """
    wide, high = SIZES[edition.unit]
    across, along = ([spot[way] for spot in shape.cut] for way in (0, 1))
    begins = min(across) if fold is None else fold
    columns = math.ceil((max(across) - begins) / wide)
    rows = math.ceil((max(along) - min(along)) / high)
    left = (begins + max(across) - columns * wide) / 2 if fold is None else fold
    top = (min(along) + max(along) - rows * high) / 2

    def name(row: int, column: int) -> str:
        return f"{chr(ord('A') + row)}{column + 1}" if row < rows and column < columns else ""

    return tuple(
        PaperTile(
            name(row, column),
            left + column * wide,
            top + row * high,
            left + (column + 1) * wide,
            top + (row + 1) * high,
            name(row, column + 1),
            name(row + 1, column),
        )
        for row in range(rows)
        for column in range(columns)
    )


def papers_of(worksheet: Worksheet) -> tuple[tuple[Piece, Part, Shaped], ...]:
    """Return the pieces of a worksheet that are cut by paper, each with the part and its lines."""
    every = worksheet.pieces.values()
    parts = ((piece, part) for piece in every for part in ((piece.trimmed_to,) if piece.trimmed_to else piece.parts))
    return tuple((piece, part, part.shape) for piece, part in parts if part.shape is not None)


def fold_of(piece: Piece, part: Part) -> Fraction | None:
    """Return how far across the fold of a piece lies that is cut on one [in]; None of any other."""
    return part.finished_across / 2 if piece.on_fold else None


def draw_paper(piece: Piece, part: Part, edition: Edition, style: Style) -> tuple[Picture, ...]:
    """Return the test squares and the tiles of one shape, row by row."""
    shape = part.shape
    if shape is None:
        return ()
    squares = sketch_squares(style, f"paper pattern {piece.name} squares").picture(
        "Two test squares: one inch and five centimetres a side.",
        "Print at actual size, 100 %, then measure both squares. If either is off, the paper is of no use.",
    )
    tiles = plan_paper(shape, edition, fold_of(piece, part))
    drawn = [
        _Tile(tile, (edition, style), f"paper pattern {piece.name} {tile.name}").drawn(piece, part, shape)
        for tile in tiles
    ]
    return (squares, *drawn)


class _Tile:
    """One tile being drawn: the corner of its frame lies so far from that of the paper that its line is not cut off."""

    def __init__(self, tile: PaperTile, look: tuple[Edition, Style], key: str) -> None:
        self.tile = tile
        self.edition, self.style = look
        self.wide, self.high = float(tile.right - tile.left), float(tile.bottom - tile.top)
        self.canvas = Canvas(2 * RIM + self.wide + TAB, 2 * RIM + self.high + TAB, self.style, key)

    def at(self, spot: tuple[Fraction, Fraction]) -> Point:
        """Return the place on paper of a place of the shape."""
        return RIM + float(spot[0] - self.tile.left), RIM + float(spot[1] - self.tile.top)

    def drawn(self, piece: Piece, part: Part, shape: Shaped) -> Picture:
        """Return the tile: frame and tabs, the lines of the shape, marks, names and the grain."""
        self._frame()
        with self.canvas.clipped(self._reach()):
            self._line([*shape.cut, shape.cut[0]], cut=True)
            for line in shape.lines:
                self._line(line.spots, cut=False)
            if part is piece.trimmed_to:
                self._middle_line(part, shape)
            if piece.on_fold and self.tile.name.endswith("1"):
                self._fold(shape)
            self.canvas.lines(
                [(self.at(one.outer), self.at(one.inner)) for one in shape.notches if not one.dot], self.style.outline
            )
            self.canvas.dots([self.at(one.at) for one in shape.notches if one.dot and self.tile.holds(one.at)], 0.03)
        self._names(shape, part.edges, fold_of(piece, part))
        self._middle(piece, part, shape)
        said = f"Tile {self.tile.name} of the paper for the {piece.label}, at true size"
        return self.canvas.picture(f"{said}: its cut line, its seam line and its marks.", self._caption())

    def _caption(self) -> str:
        joins = [
            f"{where} joins {name}" for where, name in (("right", self.tile.beside), ("below", self.tile.below)) if name
        ]
        told = f"; {' and '.join(joins)}" if joins else ""
        size = " by ".join(say_length(one, self.edition) for one in SIZES[self.edition.unit])
        return f"{self.tile.name}{told}. The frame is {size}."

    def _reach(self) -> tuple[Point, ...]:
        """The frame, and the tabs beside and below it that have a neighbour."""
        right = RIM + self.wide + (TAB if self.tile.beside else 0)
        bottom = RIM + self.high + (TAB if self.tile.below else 0)
        return (RIM, RIM), (right, RIM), (right, bottom), (RIM, bottom)

    def _frame(self) -> None:
        right, bottom = RIM + self.wide, RIM + self.high
        tabs = (
            (self.tile.beside, (right, RIM), (right + TAB, bottom), (right + TAB / 2, bottom * 0.25)),
            (self.tile.below, (RIM, bottom), (right, bottom + TAB), (right * 0.25, bottom + TAB / 2)),
        )
        for name, corner, opposite, middle in tabs:
            if name:
                self.canvas.rectangle(corner, opposite, fill=self.style.shade)
                self.canvas.text(f"tab: glue {name} here", *middle, turned=name == self.tile.beside)
        self.canvas.rectangle((RIM, RIM), (right, bottom), pen=self.style.measure)
        row, column = self.tile.name[:1], int(self.tile.name[1:])
        for place, inward, meets in (
            ((right, RIM + self.high / 2), (-MEET, 0.0), self.tile.beside),
            ((RIM, RIM + self.high / 2), (MEET, 0.0), column > 1),
            ((RIM + self.wide / 2, bottom), (0.0, -MEET), self.tile.below),
            ((RIM + self.wide / 2, RIM), (0.0, MEET), row > "A"),
        ):
            if meets:
                self._half_triangle(place, inward)
        self.canvas.text(self.tile.name, RIM + 0.08, RIM + 0.14, hold="left", bold=True, size=self.style.strong)

    def _half_triangle(self, place: Point, inward: Point) -> None:
        """Half of the sign that is whole where two tiles meet line on line."""
        (x, y), (to_x, to_y) = place, inward
        self.canvas.shape(((x - to_y, y - to_x), (x + to_x, y + to_y), (x + to_y, y + to_x)))

    def _line(self, spots: Spots, *, cut: bool) -> None:
        self.canvas.line([self.at(spot) for spot in spots], self.style.cut if cut else self.style.finish)

    def _middle_line(self, part: Part, shape: Shaped) -> None:
        """Draw the line that is laid on the middle of the tucks."""
        middle, along = part.finished_across / 2, [spot[1] for spot in shape.cut]
        self.canvas.line([self.at((middle, min(along))), self.at((middle, max(along)))], self.style.fold)

    def _fold(self, shape: Shaped) -> None:
        """Draw the fold along the left of the frame: a heavy line, and a bracket whose two arrows point at it."""
        cut = right_of([*shape.cut, shape.cut[0]], self.tile.left)
        along = [self.at(spot)[1] for spot in cut if spot[0] == self.tile.left]
        top, bottom = max(min(along), RIM), min(max(along), RIM + self.high)
        if top >= bottom:
            return
        self.canvas.line([(RIM, top), (RIM, bottom)], self.style.cut)
        ends = [top + (bottom - top) * share for share in (0.2, 0.8)]
        self.canvas.line([(RIM + BRACKET, end) for end in ends], self.style.outline)
        for end in ends:
            self.canvas.arrow((RIM + BRACKET, end), (RIM, end), self.style.outline)
        self.canvas.text("place on the fold, do not cut here", RIM + BRACKET + 0.15, sum(ends) / 2, turned=True)

    def _names(self, shape: Shaped, edges: Mapping[str, EdgeWork], fold: Fraction | None) -> None:
        """Write beside the middle of every edge on this tile its name and how long its seam line is."""
        for line in shape.lines:
            spots = line.spots if fold is None else right_of(line.spots, fold)
            middle = spots[len(spots) // 2] if len(spots) > 2 else _between(spots) if spots else None
            if middle is not None and self.tile.holds(middle):
                # Half a paper stands for both sides; of an edge over the fold it has half.
                name = line.name if fold is None else line.name.removeprefix("right ")
                whole = "whole " if fold is not None and any(x < fold for x, _ in line.spots) else ""
                words = f"{name}, {whole}{say_length(edges[line.name].finished, self.edition)}"
                half = text_width(words, self.style.small, font=self.style.font) / 2
                self._inside(words, self._inward(spots, middle, half))

    def _inward(self, spots: Spots, middle: tuple[Fraction, Fraction], half: float) -> Point:
        """Inside the seam line at a place of it, so far that words do not reach it; inside lies at the right hand."""
        place = max(1, len(spots) // 2)
        (x, y), (to_x, to_y) = spots[place - 1], spots[min(place + 1, len(spots) - 1)]
        run, rise = float(to_x - x), float(to_y - y)
        long = math.hypot(run, rise) or 1.0
        at = self.at(middle)
        away = 1.2 * text_height(self.style.small) + half * abs(rise) / long
        return at[0] - rise / long * away, at[1] + run / long * away

    def _inside(self, words: str, at: Point) -> None:
        """Write words as near to a place as the frame leaves room."""
        half, line = text_width(words, self.style.small, font=self.style.font) / 2 + 0.1, text_height(self.style.small)
        x = min(max(at[0], RIM + half), RIM + self.wide - half)
        y = min(max(at[1], RIM + 2.4 * line), RIM + self.high - line)
        self.canvas.text(words, x, y, backing=self.style.paper)

    def _middle(self, piece: Piece, part: Part, shape: Shaped) -> None:
        """Write in the middle of the shape what it is and how many are cut, and draw the grain."""
        middle = name_place(part, shape, on_fold=piece.on_fold)
        if not self.tile.holds(middle):
            return
        at, number = self.at(middle), piece.quantity * (1 if part is piece.trimmed_to else len(piece.parts))
        self._inside(
            f"{piece.label}, cut {number}{' on the fold' if piece.on_fold else ''}",
            (at[0], at[1] - 2 * text_height(self.style.small)),
        )
        run = {"along": (0.0, 1.0), "across": (1.0, 0.0), "bias": (0.7071, 0.7071)}.get(piece.grain)
        if run is not None:
            x, y = (
                min(max(place, RIM + GRAIN), RIM + size - GRAIN)
                for place, size in zip(self.at(middle), (self.wide, self.high), strict=True)
            )
            beside = 0.7 if run[1] else 0.0
            ends = [(x + beside + side * GRAIN / 2 * run[0], y + side * GRAIN / 2 * run[1]) for side in (-1, 1)]
            self.canvas.arrow(ends[0], ends[1], self.style.outline, both=True)
            self.canvas.text("grain", x + beside, y, turned=bool(run[1]) and not run[0], backing=self.style.paper)


def _between(spots: Spots) -> tuple[Fraction, Fraction]:
    (x, y), (to_x, to_y) = spots[0], spots[-1]
    return (x + to_x) / 2, (y + to_y) / 2


def rows_of(tiles: Sequence[PaperTile]) -> Iterator[tuple[str, ...]]:
    """Yield the names of tiles, row by row."""
    for letter in dict.fromkeys(tile.name[0] for tile in tiles):
        yield tuple(tile.name for tile in tiles if tile.name[0] == letter)


def sketch_squares(style: Style, key: str) -> Canvas:
    """Return the canvas of two test squares: of an inch, and of five centimetres a side."""
    line, five = text_height(style.small), float(5 * CENTIMETRE)
    width = 1.9 + five + text_width("5 cm square", style.small, font=style.font)
    canvas = Canvas(width, five + 0.1, style, key)
    for left, size, words in ((0.1, 1.0, "1 inch"), (1.3, five, "5 cm")):
        canvas.rectangle((left, 0.05), (left + size, 0.05 + size), pen=style.outline)
        canvas.text(words, left + size / 2, 0.05 + size / 2 - line * 0.6)
        canvas.text("square", left + size / 2, 0.05 + size / 2 + line * 0.6)
    return canvas

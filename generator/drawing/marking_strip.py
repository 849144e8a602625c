"""The marking strip at true size: a panel's fold marks come in, tiles to print, cut out and join go out.

Every tile is its own picture and fits between margins of half an inch on Letter and on A4. It must be printed at the
size it says: an inch of a tile is an inch of cloth.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from generator.calculation.worked import BreadthJoin, TuckSet
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas
from generator.drawing.labels import Label, levels, text_height, text_lines, text_width
from generator.drawing.picture import Picture
from generator.drawing.style import Style
from generator.lengths import CENTIMETRE, Edition, round_down, write_length

EDGE, TAB = 0.3, 0.3
TICK = 0.3
STRETCHES = {"in": Fraction(25, 4), "cm": Fraction(31, 2) * CENTIMETRE}
DIVISIONS = {"in": Fraction(1, 4), "cm": CENTIMETRE / 2}


@dataclass(frozen=True, slots=True)
class Tile:
    """A stretch of the strip, one ``of`` so many, from ``start`` to ``end`` [in from the left cut edge].

    Marks are (tuck, place); ``joins`` the places of seams between breadths.
    """

    number: int
    of: int
    start: Fraction
    end: Fraction
    marks: tuple[tuple[int, Fraction], ...]
    joins: tuple[Fraction, ...] = ()


def plan_marking_strip(tucks: TuckSet, edition: Edition, joins: Sequence[BreadthJoin] = ()) -> tuple[Tile, ...]:
    """Return the tiles of a strip as long as the cut cloth; a mark on a join is on both tiles.

    As few tiles as can be, as even as can be; they meet on divisions of the ruler, so that one may be longer than the
    even stretch by a division.
    """
    number = math.ceil(tucks.cut / STRETCHES[edition.unit])
    division = DIVISIONS[edition.unit]
    places = [*(round_down(tucks.cut * place / number, division) for place in range(number)), tucks.cut]
    return tuple(
        Tile(
            number=place,
            of=number,
            start=start,
            end=end,
            marks=tuple((tuck, at) for tuck, at in enumerate(tucks.marks, 1) if start <= at <= end),
            joins=tuple(join.at for join in joins if start <= join.at <= end),
        )
        for place, (start, end) in enumerate(pairwise(places), 1)
    )


def draw_marking_strip(worksheet: Worksheet, name: str, style: Style) -> tuple[Picture, ...]:
    """Return the test squares and the tiles of a panel's strip; nothing for a plain panel."""
    panel = worksheet.panels[name]
    tiles = plan_marking_strip(panel.across, worksheet.edition, panel.joins) if panel.across.count else ()
    title = f"{worksheet.pieces[name].label}, {worksheet.size_label}"
    return _pictures(tiles, title, worksheet.edition, style, f"marking strip {name}")


def draw_cross_marking_strip(worksheet: Worksheet, name: str, style: Style) -> tuple[Picture, ...]:
    """Return the test squares and the tiles of the strip for the cross tucks of a panel; nothing where it has none."""
    cross = worksheet.panels[name].cross
    tiles = plan_marking_strip(cross, worksheet.edition) if cross is not None and cross.count else ()
    title = f"{worksheet.pieces[name].label}, cross tucks, {worksheet.size_label}"
    return _pictures(tiles, title, worksheet.edition, style, f"cross marking strip {name}")


def _pictures(tiles: Sequence[Tile], title: str, edition: Edition, style: Style, key: str) -> tuple[Picture, ...]:
    if not tiles:
        return ()
    squares = sketch_squares(style, f"{key} squares").picture(
        "Two test squares: one inch and five centimetres a side.",
        "Print at actual size, 100 %, then measure both squares. If either is off, the strip is of no use.",
    )
    drawn = [
        sketch_tile(tile, title, edition, style, key=f"{key} {tile.number}").picture(
            _tile_words(tile, edition), _tile_caption(tile)
        )
        for tile in tiles
    ]
    return (squares, *drawn)


def _tile_words(tile: Tile, edition: Edition) -> str:
    told = ", ".join(f"{tuck} at {write_length(at, edition)}" for tuck, at in tile.marks)
    marks = f"fold marks {told}" if tile.marks else "no fold mark"
    return f"Strip {tile.number} of {tile.of} at true size, with {marks}."


def _tile_caption(tile: Tile) -> str:
    if tile.of == 1:
        return "Lay the upper edge of the strip along the edge of the cloth."
    if tile.number == tile.of:
        return "The strip ends at the cut edge. Lay its upper edge along the edge of the cloth."
    return f"Lay line {tile.number} of the next strip on line {tile.number} of this one, over the tab, and glue."


def sketch_squares(style: Style, key: str) -> Canvas:
    """Return the canvas of the two test squares."""
    line = text_height(style.small)
    five = float(5 * CENTIMETRE)
    canvas = Canvas(
        EDGE * 3 + 1 + five + text_width("5 cm square", style.small, font=style.font), five + 0.1, style, key
    )
    for left, size, words in ((EDGE / 3, 1.0, "1 inch"), (EDGE + 1.0, five, "5 cm")):
        canvas.rectangle((left, 0.05), (left + size, 0.05 + size), pen=style.outline)
        canvas.text(words, left + size / 2, 0.05 + size / 2 - line * 0.6)
        canvas.text("square", left + size / 2, 0.05 + size / 2 + line * 0.6)
    return canvas


def sketch_tile(tile: Tile, title: str, edition: Edition, style: Style, *, key: str) -> Canvas:
    """Return the canvas of one tile; the title says what it belongs to."""
    line = text_height(style.small)
    length = float(tile.end - tile.start)
    told = f"{title}: strip {tile.number} of {tile.of}" + ("; a triangle marks a join" if tile.joins else "")
    titles = text_lines(told, style.small, length - 0.2, font=style.font)
    canvas = Canvas(EDGE + length + TAB, TICK + (6.6 + len(titles)) * line + 0.1, style, key)
    top, bottom, left, right = 0.03, canvas.height - 0.03, EDGE, EDGE + length
    canvas.lines([((left, top), (right, top)), ((left, bottom), (right, bottom))], style.outline)
    _draw_end(canvas, left, tile.number - 1)
    if tile.number < tile.of:
        canvas.rectangle((right, top), (right + TAB - 0.02, bottom), fill=style.shade)
    _draw_end(canvas, right, tile.number if tile.number < tile.of else 0)
    _draw_marks(canvas, tile, edition)
    for place, words in enumerate(reversed(titles)):
        canvas.text(words, left + 0.1, bottom - 0.1 - (2.2 + place) * line, hold="left")
    _draw_ruler(canvas, tile, edition, bottom)
    for join in tile.joins:
        x = left + float(join - tile.start)
        canvas.shape(((x - 0.06, top), (x + 0.06, top), (x, top + 0.14)))
    return canvas


def _draw_end(canvas: Canvas, x: float, number: int) -> None:
    """Draw a numbered match line, or for 0 the cut edge, over the whole height, its name outside the strip."""
    line = text_height(canvas.style.small)
    canvas.line(((x, 0.03), (x, canvas.height - 0.03)), canvas.style.join if number else canvas.style.cut)
    outside = -0.75 * line if x == EDGE else 0.75 * line
    words = f"line {number}" if number else "cut edge"
    canvas.text(words, x + outside, canvas.height / 2, turned=True, bold=number > 0)


def _draw_marks(canvas: Canvas, tile: Tile, edition: Edition) -> None:
    style, line = canvas.style, text_height(canvas.style.small)
    places = [EDGE + float(at - tile.start) for _, at in tile.marks]
    canvas.lines([((x, 0.03), (x, 0.03 + TICK)) for x in places], style.cut)
    first = 0.03 + TICK + 0.8 * line
    numbers = [
        Label(str(tuck), x, first, style.small, bold=True, font=style.font)
        for (tuck, _), x in zip(tile.marks, places, strict=True)
    ]
    measures = [
        Label(write_length(at, edition), x, first, style.small, font=style.font)
        for (_, at), x in zip(tile.marks, places, strict=True)
    ]
    for label, _ in _standing([_inside(canvas, label) for label in numbers], most=1):
        canvas.label(label)
    for label, level in _standing([_inside(canvas, label) for label in measures], most=2):
        down = 1.15 * line * (level + 1)
        if level:
            canvas.line(((label.x, first + 0.65 * line), (label.x, first + down - 0.6 * line)), style.measure)
        canvas.label(label.moved(down=down))


def _inside(canvas: Canvas, label: Label) -> Label:
    """Return a label moved inwards where it would stand over the end of the tile."""
    half = (label.box.right - label.box.left) / 2 + 0.05
    low, high = EDGE + half, canvas.width - TAB - half
    return label.moved(right=min(max(label.x, low), high) - label.x) if low < high else label


def _standing(labels: Sequence[Label], most: int) -> list[tuple[Label, int]]:
    """Return the labels with their levels: all of them if they stand clear, else every second, third and so on."""
    gap = text_width("n", labels[0].size, font=labels[0].font) if labels else 0.0
    for step in range(1, len(labels) + 1):
        told = labels[::step]
        found = levels([label.x for label in told], [label.box.right - label.box.left for label in told], gap, most)
        if found is not None:
            return list(zip(told, found, strict=True))
    return []


def _draw_ruler(canvas: Canvas, tile: Tile, edition: Edition, bottom: float) -> None:
    """Draw divisions along the lower edge, the whole units numbered, so that the print can be checked."""
    style, division = canvas.style, DIVISIONS[edition.unit]
    line = text_height(style.small)
    for count in range(math.ceil(tile.start / division), math.floor(tile.end / division) + 1):
        at = count * division
        x = EDGE + float(at - tile.start)
        whole = (at / edition.unit_length).denominator == 1
        canvas.line(((x, bottom), (x, bottom - (0.1 if whole else 0.06))), style.outline if whole else style.measure)
        if whole and EDGE + 0.1 < x < canvas.width - TAB - 0.1:
            canvas.text(write_length(at, edition), x, bottom - 0.1 - 0.75 * line, colour=style.quiet)

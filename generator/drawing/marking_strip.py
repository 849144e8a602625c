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
from generator.lengths import CENTIMETRE, Edition, round_down, say_length, write_length

EDGE, TAB = 0.3, 0.3
TICK = 0.3
# How long the line is that a print is measured by [in].
CONTROL = {"in": 6.0, "cm": 15 / 2.54}
STRETCHES = {"in": Fraction(25, 4), "cm": Fraction(31, 2) * CENTIMETRE}
DIVISIONS = {"in": Fraction(1, 4), "cm": CENTIMETRE / 2}


@dataclass(frozen=True, slots=True)
class Tile:
    """A stretch of the strip, one ``of`` so many, from ``start`` to ``end`` [in from the left cut edge].

    Marks are (tuck, place); ``joins`` the places of seams between breadths; ``whole`` is how long all of them are when
    they are joined.
    """

    number: int
    of: int
    start: Fraction
    end: Fraction
    marks: tuple[tuple[int, Fraction], ...]
    joins: tuple[Fraction, ...] = ()
    whole: Fraction = Fraction(0)


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
            whole=tucks.cut,
        )
        for place, (start, end) in enumerate(pairwise(places), 1)
    )


def draw_marking_strip(worksheet: Worksheet, name: str, style: Style, mark: str = "") -> tuple[Picture, ...]:
    """Return the control measure and the tiles of a panel's strip; nothing for a plain panel.

    Each tile says what it belongs to, and under which edition ``mark`` it was made.
    """
    panel = worksheet.panels[name]
    tiles = plan_marking_strip(panel.across, worksheet.edition, panel.joins) if panel.across.count else ()
    title = _title(worksheet, worksheet.pieces[name].label, mark)
    return _pictures(tiles, title, worksheet.edition, style, f"marking strip {name}")


def draw_cross_marking_strip(worksheet: Worksheet, name: str, style: Style, mark: str = "") -> tuple[Picture, ...]:
    """Return the control measure and the tiles of the strip for the cross tucks of a panel; nothing without any."""
    cross = worksheet.panels[name].cross
    tiles = plan_marking_strip(cross, worksheet.edition) if cross is not None and cross.count else ()
    title = _title(worksheet, f"{worksheet.pieces[name].label}, cross tucks", mark)
    return _pictures(tiles, title, worksheet.edition, style, f"cross marking strip {name}")


def _title(worksheet: Worksheet, label: str, mark: str) -> str:
    """What a tile belongs to; strips of other days and of the other edition lie in the same box."""
    unit = {"in": "inches", "cm": "centimetres"}[worksheet.edition.unit]
    told = (f"{worksheet.title}, {worksheet.size_label}: {label}", f"{worksheet.edition.name} edition, in {unit}", mark)
    return "; ".join(part for part in told if part)


def _pictures(tiles: Sequence[Tile], title: str, edition: Edition, style: Style, key: str) -> tuple[Picture, ...]:
    if not tiles:
        return ()
    control = sketch_control(style, f"{key} control").picture(
        "A control measure: a line of six inches, and one of fifteen centimetres.",
        "Print at actual size, 100 %, then lay your ruler on this line. If it is off, the strip is of no use.",
    )
    drawn = [
        sketch_tile(tile, title, edition, style, key=f"{key} {tile.number}").picture(
            _tile_words(tile, edition), _tile_caption(tile, edition)
        )
        for tile in tiles
    ]
    return (control, *drawn)


def _tile_words(tile: Tile, edition: Edition) -> str:
    told = ", ".join(f"{tuck} at {write_length(at, edition)}" for tuck, at in tile.marks)
    marks = f"fold marks {told}" if tile.marks else "no fold mark"
    return f"Strip {tile.number} of {tile.of} at true size, with {marks}."


def _tile_caption(tile: Tile, edition: Edition) -> str:
    if tile.of == 1:
        return "Lay the upper edge of the strip along the edge of the cloth."
    if tile.number == tile.of:
        joined = say_length(tile.whole, edition)
        return f"Joined, the strip is {joined} from cut edge to cut edge: measure it before you mark."
    return f"Lay line {tile.number} of the next strip on line {tile.number} of this one, over the tab, and glue."


def sketch_control(style: Style, key: str) -> Canvas:
    """Return the canvas of the control measure: along one line inches above, centimetres below."""
    line = text_height(style.small)
    canvas = Canvas(EDGE + CONTROL["in"] + TAB, 3.6 * line + 0.4, style, key)
    y = canvas.height / 2
    canvas.line(((EDGE, y), (EDGE + CONTROL["in"], y)), style.cut)
    for unit, step, numbered, up in (("in", 0.5, 1.0, -1), ("cm", 1 / 2.54, 5 / 2.54, 1)):
        for place in range(round(CONTROL[unit] / step) + 1):
            x = EDGE + place * step
            whole = place % round(numbered / step) == 0
            canvas.line(((x, y), (x, y + up * (0.18 if whole else 0.1))), style.outline)
            if whole:
                number = str(round(place * step / numbered) * (1 if unit == "in" else 5))
                last = place == round(CONTROL[unit] / step)
                canvas.text(f"{number} {unit}" if last else number, x, y + up * (0.2 + 0.75 * line))
    return canvas


def sketch_tile(tile: Tile, title: str, edition: Edition, style: Style, *, key: str) -> Canvas:
    """Return the canvas of one tile, which says what it is of and how long all are when they are joined."""
    line = text_height(style.small)
    length = float(tile.end - tile.start)
    joined = f", joined: {say_length(tile.whole, edition)}" if tile.whole else ""
    first = f"Strip {tile.number} of {tile.of}{joined}" + ("; a triangle marks a join" if tile.joins else "")
    titles = [line for told in (first, title) for line in text_lines(told, style.small, length - 0.2, font=style.font)]
    canvas = Canvas(EDGE + length + TAB, TICK + (6.6 + len(titles)) * line + 0.1, style, key)
    top, bottom, left, right = 0.03, canvas.height - 0.03, EDGE, EDGE + length
    canvas.lines([((left, top), (right, top)), ((left, bottom), (right, bottom))], style.outline)
    _draw_end(canvas, left, tile.number - 1)
    if tile.number < tile.of:
        _draw_tab(canvas, right, (top, bottom))
    _draw_end(canvas, right, tile.number if tile.number < tile.of else 0)
    _draw_marks(canvas, tile, edition)
    for place, words in enumerate(reversed(titles)):
        canvas.text(words, left + 0.1, bottom - 0.1 - (2.2 + place) * line, hold="left")
    _draw_ruler(canvas, tile, edition, bottom)
    for join in tile.joins:
        x = left + float(join - tile.start)
        canvas.shape(((x - 0.06, top), (x + 0.06, top), (x, top + 0.14)))
    return canvas


def _draw_tab(canvas: Canvas, x: float, ends: tuple[float, float]) -> None:
    """Draw the tab that the next strip is glued on, hatched but for the name of its line."""
    high = text_width("line 00", canvas.style.small, bold=True, font=canvas.style.font) / 2 + 0.04
    middle, far = canvas.height / 2, x + TAB - 0.02
    for top, bottom in ((ends[0], middle - high), (middle + high, ends[1])):
        canvas.hatched(((x, top), (far, top), (far, bottom), (x, bottom)))
    canvas.line(((far, ends[0]), (far, ends[1])), canvas.style.measure)


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
            canvas.text(write_length(at, edition), x, bottom - 0.1 - 0.75 * line)

"""The surface of a finished panel: a worksheet comes in, a picture of the lit cloth goes out.

The cloth is an image, its stitching and the words are lines and text. Proportions are true.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np

from generator.calculation.turning.pressed import pressed_words
from generator.calculation.worked import Turn
from generator.calculation.worked_piece import Piece, Shaped
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.cloth_colour import SHADES, Colour, cloth_colour, shades, thread_colour
from generator.drawing.labels import text_height
from generator.drawing.picture import Picture
from generator.drawing.sizes import DrawnSize, Heights
from generator.drawing.style import Pen, Style
from generator.drawing.surface_geometry import HeldLine, Surface, is_stitched, surface_of
from generator.drawing.surface_light import PANEL, Relief, foot_half, light, relief
from generator.drawing.surface_stripes import stripes_seen
from generator.lengths import say_length

SHEET_WIDTH, SHEET_HEIGHT = 5.0, 6.0
PIXELS = 160
EDGE = 0.04
STITCH = (2.0, 1.4)
COVER = 0.02  # beyond the cloth, so that no line of its pixels stays
ROOM_FOR_STITCHING = 0.13
LEAST_LEAN = 0.4  # radians from upright from which a flap leaves the stitching at its foot bare


@dataclass(frozen=True, slots=True)
class _LitSurface:
    """A lit surface on paper: ``scale`` is paper inches for an inch of cloth, ``corner`` its place on the paper.

    ``quarters`` counts the quarter turns clockwise from the table to how it hangs, which is how it is seen.
    """

    surface: Surface
    relief: Relief
    scale: float
    corner: tuple[float, float]
    quarters: int = 0

    def at(self, across: float, along: float) -> tuple[float, float]:
        """Return the place on paper of a place on the panel [in]."""
        wide, high = float(self.surface.across), float(self.surface.along)
        for _ in range(self.quarters):
            across, along, wide, high = high - along, across, high, wide
        return self.corner[0] + across * self.scale, self.corner[1] + along * self.scale

    @property
    def box(self) -> tuple[tuple[float, float], tuple[float, float]]:
        """Its upper left and its lower right corner on paper."""
        wide, high = hung_size(self.surface, self.quarters)
        return self.corner, (self.corner[0] + wide * self.scale, self.corner[1] + high * self.scale)


def hung_size(surface: Surface, quarters: int) -> tuple[float, float]:
    """Return how wide and high a surface is as it hangs [in]."""
    size = (float(surface.across), float(surface.along))
    return size[::-1] if quarters % 2 else size


def draw_surface(worksheet: Worksheet, piece: str, style: Style) -> tuple[Picture, ...]:
    """Return how a tucked panel will look, at the size of a handout, with its measures."""
    found = worksheet.pieces[piece]
    caption = f"How the {found.label} will look. Light falls from the upper left."
    return (sketch_surface(worksheet, piece, style).picture(surface_words(found, surface_of(found)), caption),)


def sketch_surface(worksheet: Worksheet, piece: str, style: Style) -> Canvas:
    """Return the canvas of a surface at the size of a handout."""
    found, edition = worksheet.pieces[piece], worksheet.edition
    surface = surface_of(found)
    cloth = _on_paper(surface, SHEET_WIDTH, SHEET_HEIGHT, found.quarters)
    canvas = _canvas(cloth, style, f"surface {piece}", measures=True)
    _draw(canvas, cloth, _colour(worksheet, found), found)
    sides = [say_length(side, edition) for side in (surface.across, surface.along)]
    wide, high = sides[::-1] if found.quarters % 2 else sides
    _measures(canvas, cloth, wide, "across")
    _measures(canvas, cloth, high, "along")
    return canvas


def heights_of_surface(worksheet: Worksheet, piece: str, style: Style, width: float) -> Heights:
    """Return how high the surface can be: half as large at least, as wide as the room at most [mm]."""
    found = worksheet.pieces[piece]
    wide, high = hung_size(surface_of(found), found.quarters)
    whole = high / wide * width
    return Heights(min(whole, width) / 2, min(whole, width), whole)


def draw_sized_surface(worksheet: Worksheet, piece: str, style: Style, size: DrawnSize) -> Picture:
    """Return how a tucked panel will look, as large as a room has place for it."""
    found = worksheet.pieces[piece]
    surface = surface_of(found)
    canvas = canvas_of(size, style, f"surface {piece}")
    lit = _on_paper(surface, canvas.width - 2 * EDGE, canvas.height - 2 * EDGE, found.quarters)
    _, (right, bottom) = lit.box
    middle = replace(lit, corner=((canvas.width - right + EDGE) / 2, (canvas.height - bottom + EDGE) / 2))
    _draw(canvas, middle, _colour(worksheet, found), found)
    return canvas.picture(surface_words(found, surface), f"How the {found.label} will look.")


def _colour(worksheet: Worksheet, piece: Piece) -> Colour:
    cloth = worksheet.cloths.get(piece.cloth)
    return cloth_colour(cloth.colour if cloth else "")


def _on_paper(surface: Surface, most_wide: float, most_high: float, quarters: int) -> _LitSurface:
    """Return the surface lit, at the largest scale at which it fits on the paper."""
    wide, high = hung_size(surface, quarters)
    scale = min(most_wide / wide, most_high / high)
    return _LitSurface(surface, relief(surface, PIXELS * scale), scale, (EDGE, EDGE), quarters)


def _canvas(cloth: _LitSurface, style: Style, key: str, *, measures: bool = False) -> Canvas:
    _, (right, bottom) = cloth.box
    room = _beside(style) + text_height(style.small) if measures else EDGE
    return Canvas(right + room, bottom + room, style, key)


def _draw(canvas: Canvas, cloth: _LitSurface, colour: Colour, piece: Piece | None = None) -> None:
    surface, panel = cloth.surface, piece.panel if piece is not None else None
    deepest = max((float(depth) for depth in surface.depths), default=0.1)
    bright = light(replace(cloth.relief, height=np.rot90(cloth.relief.height, -cloth.quarters)), deepest)
    shade = np.rint(bright * (SHADES - 1)).astype(np.intp)
    if panel is not None and panel.stripes is not None:
        dyed = np.array([shades(cloth_colour(stripe.colour)) for stripe in panel.stripes.stripes])
        seen = stripes_seen(cloth.relief, panel.across, panel.stripes)
        pixels = dyed[np.rot90(seen, -cloth.quarters), shade]
    else:
        pixels = shades(colour)[shade]
    corner, opposite = cloth.box
    canvas.image(pixels, corner, opposite)
    thread = Pen(thread_colour(colour), canvas.style.hairline, STITCH)
    if _roomy(cloth):
        for number in range(len(surface.feet)):
            canvas.lines(_foot_stitching(cloth, number), thread)
    for line in surface.held:
        if line.sewn:
            canvas.lines(_row_stitching(cloth, line), Pen(thread.colour, canvas.style.thin, STITCH))
    pen = Pen(canvas.style.ink, canvas.style.thin)
    if piece is not None and piece.shape is not None:
        _cut_to(canvas, cloth, piece.shape, pen)
    else:
        canvas.rectangle(corner, opposite, pen=pen)


def _cut_to(canvas: Canvas, cloth: _LitSurface, shape: Shaped, pen: Pen) -> None:
    """Cover all that lies outside of a shape, and draw its finished edge."""
    around = [cloth.at(float(x), float(y)) for line in shape.lines for x, y in line.spots]
    (left, top), (right, bottom) = cloth.box
    start = around[0]
    left, top, right, bottom = left - COVER, top - COVER, right + COVER, bottom + COVER
    # One line round the rectangle, in to the shape, round that and out again encloses what lies between both.
    box = [(left, top), (left, bottom), (right, bottom), (right, top), (left, top)]
    canvas.area([*box, start, *around, start, (left, top)], canvas.style.paper)
    canvas.line(around, pen, closed=True)


def _roomy(cloth: _LitSurface) -> bool:
    """Return whether the tucks stand far enough apart on paper for stitching to show between them."""
    feet = cloth.surface.feet
    closest = min((after - before for before, after in pairwise(feet)), default=cloth.surface.across)
    return float(closest) * cloth.scale >= ROOM_FOR_STITCHING


def _foot_stitching(cloth: _LitSurface, number: int) -> list[list[tuple[float, float]]]:
    """Return where the stitching along one foot shows: on the side that the flap leaves bare, if nothing covers it."""
    seen, foot, depth = cloth.relief, float(cloth.surface.feet[number]), float(cloth.surface.depths[number])
    beside = foot_half(depth, 1 / seen.pixels) + 1.2 / seen.pixels
    shown = []
    for side in (-1, 1):
        place = foot + side * beside
        column = min(max(int(place * seen.pixels), 0), seen.owner.shape[1] - 1)
        bare = (seen.owner[:, column] == PANEL) & (side * seen.turned[number] < -LEAST_LEAN)
        bare &= is_stitched(cloth.surface, number, seen.pixels, len(bare))
        steps = np.diff(np.concatenate(([0], bare.astype(np.int8), [0])))
        for first, last in zip(np.flatnonzero(steps == 1), np.flatnonzero(steps == -1), strict=True):
            if last - first > 2:
                shown.append([cloth.at(place, end / seen.pixels) for end in (float(first), float(last))])
    return shown


def _row_stitching(cloth: _LitSurface, line: HeldLine) -> list[list[tuple[float, float]]]:
    """Return the stitching of one row over the flaps, left out at the feet of tucks that the row leaves upright."""
    at, ends = float(line.at), [0.0]
    for foot, depth, turn in zip(cloth.surface.feet, cloth.surface.depths, line.turns, strict=True):
        if turn is Turn.UPRIGHT:
            ends += [float(foot - depth / 4), float(foot + depth / 4)]
    ends.append(float(cloth.surface.across))
    return [[cloth.at(start, at), cloth.at(end, at)] for start, end in zip(ends[::2], ends[1::2], strict=True)]


def _beside(style: Style) -> float:
    """Return how far from the cloth its measures are drawn [in]."""
    return 0.05 + 0.6 * text_height(style.small)


def _measures(canvas: Canvas, cloth: _LitSurface, words: str, direction: str) -> None:
    """Draw one measure beside the cloth, with a line from end to end."""
    gap, pen = _beside(canvas.style), canvas.style.measure
    (left, top), (right, bottom) = cloth.box
    if direction == "across":
        canvas.arrow((left, bottom + gap), (right, bottom + gap), pen, both=True)
        canvas.text(words, (left + right) / 2, bottom + gap, backing=canvas.style.paper)
    else:
        canvas.arrow((right + gap, top), (right + gap, bottom), pen, both=True)
        canvas.text(words, right + gap, (top + bottom) / 2, backing=canvas.style.paper, turned=True)


def surface_words(piece: Piece, surface: Surface) -> str:
    """Return in a sentence what a person sees of a panel as it hangs."""
    label, run, beside = piece.label, "from top to bottom", "side by side"
    if piece.quarters % 2:
        run, beside = "from side to side", "one below the other"
    tucks, rows = len(surface.feet), [line for line in surface.held if line.sewn]
    counted = f"{tucks} tuck" + ("" if tucks == 1 else "s")
    if surface.held and not rows:
        lie = pressed_words(surface.held[0].turns, piece.hangs_by)
        run = "as far as they are stitched" if surface.stitched else run
        return f"The {label} seen from above: {counted} lie flat {run}, pressed {lie}."
    if not rows:
        run = "as far as they are stitched" if surface.stitched else run
        return f"The {label} seen from above: {counted} stand {beside} {run}."
    held = f"{len(rows)} row" + ("" if len(rows) == 1 else "s")
    return (
        f"The {label} seen from above: {counted} run {run}, turned at {held} of stitching; "
        "between the rows each fold swings over to its next turn."
    )

"""Tucks that are let go: a worked panel comes in, where they are stitched and how wide they fall goes out, drawn.

The stitched part is hatched, a bar stands where the stitching stops, and the folds run out beyond it. At every height
the panel is as wide as it is there; heights and widths have scales of their own.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from generator.calculation.shapes.released import Stretches, released_width, within
from generator.calculation.worked import Panel
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.labels import text_height, text_width
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style
from generator.lengths import Edition, say_length

_LEAST, _BEST, _MOST = (high / MILLIMETRES for high in (38.0, 50.0, 70.0))
_MOST_TUCKS = 7
_BAR = 0.06


@dataclass(frozen=True, slots=True)
class ReleasedPlan:
    """Where all lies, in parts of the picture: a width is a part of the widest, a height a part of the panel.

    ``widths`` are (height, width) from the top down. ``tucks`` has for each tuck that is drawn its place across and the
    heights from and to which it is stitched, within the shape where the panel is cut to one.
    """

    widths: tuple[tuple[Fraction, Fraction], ...]
    tucks: tuple[tuple[Fraction, Stretches], ...]


def plan_released(panel: Panel, along: Fraction) -> ReleasedPlan:
    """Return how wide a panel is at every height where that changes, and where its tucks are stitched, as parts."""
    assert panel.released is not None
    tucks, stitched = panel.across, panel.released.stitched
    ends = sorted({at for own in stitched for stretch in own for at in stretch} | {Fraction(0), along})
    middles = [(above + below) / 2 for above, below in pairwise(ends)]
    wide = [released_width(tucks.finished, tucks.take_ups, stitched, at) for at in middles]
    most = max(wide)
    widths = [
        (at / along, width / most)
        for (above, below), width in zip(pairwise(ends), wide, strict=True)
        for at in (above, below)
    ]
    every = -(-tucks.count // _MOST_TUCKS)
    drawn = tuple(
        (
            tucks.stitching[number] / tucks.finished,
            tuple((first / along, last / along) for first, last in _seen(panel, number)),
        )
        for number in range(0, tucks.count, every)
    )
    return ReleasedPlan(tuple(widths), drawn)


def _seen(panel: Panel, number: int) -> Stretches:
    """What of the stitching of a tuck is left in the shape to which a panel is cut [in]."""
    assert panel.released is not None
    stitched = panel.released.stitched[number]
    ends = [one for one in panel.shaped_ends if one.tuck == number + 1]
    if not ends:
        return stitched
    return tuple(part for one in ends for part in within(stitched, one.top, one.bottom))


def heights_of_released(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the picture of tucks that are let go can be."""
    words = 2.6 * text_height(style.small)
    return Heights.of_inches(_LEAST + words, _BEST + words, _MOST + words)


def draw_released(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return where the tucks of a panel are stitched, and how wide it is there and where they are let go."""
    panel, piece, edition = worksheet.panels[name], worksheet.pieces[name], worksheet.edition
    assert panel.released is not None
    canvas = canvas_of(size, style, f"released {name}")
    sketch_released(canvas, panel, piece.finished_along, edition)
    said = " and ".join(say_length(at, edition) for at in _told_stops(panel, piece.finished_along))
    widest = say_length(panel.released.widest, edition)
    alt = (
        "The panel from above: the stitched part of each tuck is hatched, with a bar where the stitching stops, "
        f"{said} below the top. There it is {say_length(panel.across.finished, edition)} wide; where the folds fall "
        f"open, {widest}."
    )
    return canvas.picture(alt, "")


def sketch_released(canvas: Canvas, panel: Panel, along: Fraction, edition: Edition) -> None:
    """Draw the panel, its tucks, the bars at the ends of their stitching and its two widths."""
    assert panel.released is not None
    plan, style, line = plan_released(panel, along), canvas.style, text_height(canvas.style.small)
    told = [say_length(at, edition) for at in _told_stops(panel, along)]
    room = max(text_width(words, style.small, bold=True, font=style.font) for words in told) + 0.35
    top, bottom = 1.5 * line, canvas.height - 1.5 * line
    middle, half = room + (canvas.width - room) / 2, (canvas.width - room) / 2 - 0.04
    outline = [(middle - half * float(wide), top + float(at) * (bottom - top)) for at, wide in plan.widths]
    canvas.area([*outline, *((2 * middle - x, y) for x, y in reversed(outline))], style.paper, style.outline)

    def across(place: Fraction) -> float:
        held = float(min(width for _, width in plan.widths))
        return middle + half * held * (2 * float(place) - 1)

    feet = [across(place) for place, _ in plan.tucks]
    flap = min([0.16, *(0.55 * (after - before) for before, after in pairwise(feet))])
    stops = {at / along for own in panel.released.stitched for stretch in own for at in stretch} - {0, 1}
    for place, stretches in plan.tucks:
        x = across(place)
        for first, last in stretches:
            upper, lower = (top + float(at) * (bottom - top) for at in (first, last))
            canvas.hatched([(x, upper), (x + flap, upper), (x + flap, lower), (x, lower)], style.outline)
            canvas.line(((x, upper), (x, lower)), style.stitch)
            for at, y, away in ((first, upper, -1), (last, lower, 1)):
                if at in stops:
                    beyond = min(_BAR, 0.3 * flap)
                    canvas.line(((x - beyond, y), (x + flap + beyond, y)), style.cut)
                    run = min(0.3, (bottom - lower if away > 0 else upper - top) * 0.6)
                    canvas.line(((x + flap, y), (x + flap + 0.05, y + away * run)), style.fold)
    _measures(canvas, (plan, panel), (top, bottom, middle, half), edition)
    for words, at in zip(told, _told_stops(panel, along), strict=True):
        y = top + float(at / along) * (bottom - top)
        canvas.arrow((room - 0.15, top), (room - 0.15, y), style.measure, both=True)
        canvas.text(words, room - 0.25, (top + y) / 2, hold="right", bold=True)


def _told_stops(panel: Panel, along: Fraction) -> list[Fraction]:
    """The places of tuck 1 at which its stitching stops, from the finished top [in]."""
    assert panel.released is not None
    return [at for stretch in panel.released.stitched[0] for at in stretch if at not in (0, along)]


def _measures(
    canvas: Canvas, told: tuple[ReleasedPlan, Panel], box: tuple[float, float, float, float], edition: Edition
) -> None:
    """Write how wide the panel is where it is stitched, above it, and where it is let go, below it or within."""
    assert told[1].released is not None
    (plan, panel), (top, bottom, middle, half), line = told, box, text_height(canvas.style.small)
    least, last = min(wide for _, wide in plan.widths), plan.widths[-1][1]
    for wide, length in ((least, panel.across.finished), (Fraction(1), told[1].released.widest)):
        at = next(float(height) for height, width in plan.widths if width == wide)
        y = top + at * (bottom - top) + line
        if at == 0:
            y = top - 0.75 * line
        elif last == wide:
            y = bottom + 0.75 * line
        ends = (middle - half * float(wide), middle + half * float(wide))
        canvas.arrow((ends[0], y), (ends[1], y), canvas.style.measure, both=True)
        canvas.text(say_length(length, edition), middle, y, bold=True, backing=canvas.style.paper)

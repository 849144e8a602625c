"""The check points of a panel: expected measures come in, a ladder of bars over one ruler goes out, and the words."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.worked import TuckSet
from generator.calculation.worked_checks import CheckPoint
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas
from generator.drawing.labels import text_height, text_lines, text_width
from generator.drawing.picture import Picture
from generator.drawing.style import Style
from generator.lengths import Edition, say_length, write_length

WIDTH, EDGE = 6.8, 0.3
STEPS = (1, 2, 5, 10, 20, 50, 100, 200, 500)
PAGE_HEIGHT = 7.5


@dataclass(frozen=True, slots=True)
class PanelBar:
    """One check point and where the tucks stitched so far lie, from the edge that is measured from [in on cloth]."""

    point: CheckPoint
    tucks: tuple[Fraction, ...]


@dataclass(frozen=True, slots=True)
class Ladder:
    """The bars of one picture, the scale (paper to cloth) and the ruler's step [in on cloth]."""

    bars: tuple[PanelBar, ...]
    scale: Fraction
    step: Fraction
    length: Fraction


def plan_check_points(
    tucks: TuckSet, points: Sequence[CheckPoint], edition: Edition, most: int = 20
) -> tuple[Ladder, ...]:
    """Return the ladders, all at one scale, with so many check points each at most."""
    if not points:
        return ()
    longest = max(point.expect + point.within for point in points)
    scale = min(Fraction(1), Fraction(WIDTH - 2 * EDGE).limit_denominator(100) / longest)
    step = next((size for size in STEPS if size * edition.unit_length * scale >= Fraction(2, 5)), STEPS[-1])
    bars = [PanelBar(point, stitched_places(tucks, point, points)) for point in points]
    return tuple(
        Ladder(tuple(bars[first : first + most]), scale, step * edition.unit_length, longest)
        for first in range(0, len(bars), most)
    )


def stitched_places(tucks: TuckSet, point: CheckPoint, points: Sequence[CheckPoint]) -> tuple[Fraction, ...]:
    """Return where the tucks stitched so far lie, from the edge that is measured from [in].

    The edge lies where the next fold mark, half a take-up beyond its own stitching, is as far off as expected. Without
    any point that measures to a fold mark the places are not told.
    """
    marked = [other for other in (point, *points) if other.mark]
    if not marked:
        return ()
    place = marked[0].mark - 1
    edge = tucks.stitching[place] + tucks.take_ups[place] / 2 - marked[0].expect
    return tuple(stitching - edge for stitching in tucks.stitching[: point.after])


def check_point_words(point: CheckPoint, edition: Edition) -> str:
    """Return what to measure at a check point, and how far off is fine."""
    return (
        f"from {point.start} to {point.end}: {say_length(point.expect, edition)}, "
        f"within {say_length(point.within, edition)} is fine"
    )


def draw_check_points(worksheet: Worksheet, name: str, style: Style) -> tuple[Picture, ...]:
    """Return the ladder of check points of a panel; nothing where it has none."""
    panel = worksheet.panels[name]
    return _pictures(panel.across, panel.checks.points, worksheet.edition, style, f"check points {name}")


def draw_cross_check_points(worksheet: Worksheet, name: str, style: Style) -> tuple[Picture, ...]:
    """Return the ladder of check points of the cross tucks of a panel; nothing where it has none."""
    panel = worksheet.panels[name]
    if panel.cross is None:
        return ()
    return _pictures(panel.cross, panel.cross_checks.points, worksheet.edition, style, f"cross check points {name}")


def _pictures(
    tucks: TuckSet, points: Sequence[CheckPoint], edition: Edition, style: Style, key: str
) -> tuple[Picture, ...]:
    canvases = sketch_check_points(tucks, points, edition, style, key)
    text = "\n".join(f"After tuck {point.after}: {check_point_words(point, edition)}." for point in points)
    alt = f"A ruler with {len(points)} bars, one a check point, from the edge to what is measured."
    caption = "Measure at each of these tucks before you go on. The short ticks are the tucks stitched so far."
    return tuple(canvas.picture(alt, caption, text if place == 0 else "") for place, canvas in enumerate(canvases))


def sketch_check_points(
    tucks: TuckSet, points: Sequence[CheckPoint], edition: Edition, style: Style, key: str
) -> tuple[Canvas, ...]:
    """Return the canvases of the ladders."""
    line = text_height(style.small)
    told = max((len(_told(point, edition, style)) for point in points), default=1)
    rung = (2.0 + 1.1 * told) * line
    canvases = []
    for page, ladder in enumerate(plan_check_points(tucks, points, edition, int((PAGE_HEIGHT - 3 * line) / rung)), 1):
        canvas = Canvas(WIDTH, rung * len(ladder.bars) + 3 * line, style, key + (f" {page}" if page > 1 else ""))
        for place, bar in enumerate(ladder.bars):
            _draw_bar(canvas, ladder, bar, (rung * place, rung), edition)
        _draw_ruler(canvas, ladder, rung * len(ladder.bars) + 0.5 * line, edition)
        canvases.append(canvas)
    return tuple(canvases)


def _told(point: CheckPoint, edition: Edition, style: Style) -> tuple[str, ...]:
    """Return the words of a check point in lines that stand to the right of its name."""
    room = WIDTH - 2 * EDGE - text_width(f"After tuck {point.after}  ", style.small, bold=True, font=style.font)
    return text_lines(check_point_words(point, edition), style.small, room, font=style.font)


def _draw_bar(canvas: Canvas, ladder: Ladder, bar: PanelBar, rung: tuple[float, float], edition: Edition) -> None:
    style, line = canvas.style, text_height(canvas.style.small)
    top, high = rung
    start = f"After tuck {bar.point.after}  "
    canvas.text(start, EDGE, top + 0.7 * line, hold="left", bold=True)
    after = EDGE + text_width(start, style.small, bold=True, font=style.font)
    for place, words in enumerate(_told(bar.point, edition, style)):
        canvas.text(words, after, top + (0.7 + 1.1 * place) * line, hold="left")
    y, end = top + high - line, _place(ladder, bar.point.expect)
    half = 0.55 * line
    canvas.rectangle((EDGE, y - half), (end, y + half), fill=style.cloth)
    canvas.line(((EDGE, y - half), (EDGE, y + half)), style.cut)
    canvas.lines(
        [((_place(ladder, at), y - half), (_place(ladder, at), y + 0.2 * half)) for at in bar.tucks], style.outline
    )
    canvas.line(((end, y - 1.3 * half), (end, y + 1.3 * half)), style.cut)
    fine = max(float(bar.point.within * ladder.scale), 0.03)
    canvas.line(((end - fine, y + half), (end + fine, y + half)), style.outline)
    canvas.lines(
        [((end + side, y + 0.6 * half), (end + side, y + 1.3 * half)) for side in (-fine, fine)], style.outline
    )


def _place(ladder: Ladder, at: Fraction) -> float:
    return EDGE + float(at * ladder.scale)


def _draw_ruler(canvas: Canvas, ladder: Ladder, y: float, edition: Edition) -> None:
    style, line = canvas.style, text_height(canvas.style.small)
    steps = int(ladder.length / ladder.step)
    canvas.line(((EDGE, y), (_place(ladder, ladder.length), y)), style.outline)
    for number in range(steps + 1):
        x = _place(ladder, number * ladder.step)
        canvas.line(((x, y), (x, y + 0.09)), style.outline)
        words = write_length(number * ladder.step, edition, unit=number == 0)
        canvas.text(words, x, y + 0.09 + 0.8 * line)
    halves = [_place(ladder, (number + Fraction(1, 2)) * ladder.step) for number in range(steps)]
    canvas.lines([((x, y), (x, y + 0.05)) for x in halves], style.measure)

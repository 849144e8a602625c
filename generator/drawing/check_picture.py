"""What is measured at a check point: tucks sewn so far come in, a section with the measure over them goes out."""

from __future__ import annotations

from collections.abc import Sequence

from generator.calculation.worked import Panel, TuckSet
from generator.calculation.worked_checks import CheckPoint
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.labels import text_height, text_width
from generator.drawing.picture import Picture
from generator.drawing.sizes import DrawnSize, Heights
from generator.drawing.style import Style

_MOST_DRAWN = 6
_FLAP_HIGH = 0.07


def heights_of_check(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the picture of what is measured can be."""
    line = text_height(style.small)
    least = 5.2 * line + 0.35
    return Heights.of_inches(least, least, least + 0.15)


def draw_check(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return what is measured at the first check point of a panel."""
    panel = worksheet.panels[name]
    canvas = canvas_of(size, style, f"checking {name}")
    return _picture(canvas, panel.across, panel.checks.points, _stitched_ends(panel))


def draw_cross_check(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return what is measured at the first check point of a panel's cross tucks."""
    panel = worksheet.panels[name]
    assert panel.cross is not None
    canvas = canvas_of(size, style, f"cross checking {name}")
    return _picture(canvas, panel.cross, panel.cross_checks.points, ("at the left edge", "at the right edge"))


def _stitched_ends(panel: Panel) -> tuple[str, str]:
    """Where a panel is measured: at both ends of its tucks, which are its edges where they are not let go."""
    first, last = "at the top edge", "at the bottom edge"
    if panel.released is None:
        return first, last
    from_top, stops = panel.released.stitched[0][0][0] == 0, panel.released.stops[0]
    if len(stops) > 1:
        return (first, last) if from_top else ("just below the upper line", "just above the lower line")
    return (first, "just above the line") if from_top else ("just below the line", last)


def _picture(canvas: Canvas, tucks: TuckSet, points: Sequence[CheckPoint], edges: tuple[str, str]) -> Picture:
    sketch_check(canvas, tucks, points[0], edges)
    point = points[0]
    alt = (
        f"The panel from its end after tuck {point.after}, the tucks flat and all one way: measure from {point.start} "
        f"to {point.end}, {edges[0]} and {edges[1]}."
    )
    return canvas.picture(alt, "")


def sketch_check(canvas: Canvas, tucks: TuckSet, point: CheckPoint, edges: tuple[str, str]) -> None:
    """Draw the cloth from its edge to what is measured, tucks laid all one way."""
    style, line = canvas.style, text_height(canvas.style.small)
    end_words = point.end.removeprefix("the ").removeprefix("fold ")
    left = max(0.12, text_width(point.start.removeprefix("the "), style.small, font=style.font) / 2 + 0.02)
    right = canvas.width - text_width(end_words, style.small, bold=True, font=style.font) / 2 - 0.35
    base = canvas.height - 2.5 * line
    canvas.line(((left, base), (right + 0.3, base)), style.outline)
    for x in (left, right):
        canvas.line(((x, base - 0.2 - 0.6 * line), (x, base + 1.2 * line)), style.cut)
    canvas.text(point.start.removeprefix("the "), left, base - 0.2 - 1.25 * line)
    canvas.text(end_words, right, base - 0.2 - 1.25 * line, bold=True)
    _draw_flaps(canvas, point.after, (left, right), base)
    canvas.arrow((left, base + 0.75 * line), (right, base + 0.75 * line), style.outline, both=True)
    words = "measure this, tucks flat, all one way"
    canvas.text(words, (left + right) / 2, base + 0.75 * line, bold=True, backing=style.paper)
    canvas.text(f"once {edges[0]}, once {edges[1]}", canvas.width / 2, base + 1.9 * line)


def _draw_flaps(canvas: Canvas, after: int, ends: tuple[float, float], base: float) -> None:
    """Draw the tucks sewn so far, both ends of them where they are many."""
    style, line = canvas.style, text_height(canvas.style.small)
    left, right = ends
    numbers: list[int | None] = list(range(1, after + 1))
    if after > _MOST_DRAWN:
        numbers = [1, 2, 3, None, after - 1, after]
    cell = (right - left) / (len(numbers) + 0.6)
    for place, number in enumerate(numbers):
        x = left + (place + 0.35) * cell
        if number is None:
            canvas.text("…", x + 0.3 * cell, base - _FLAP_HIGH - 0.6 * line)
            continue
        flap = ((x, base), (x, base - _FLAP_HIGH), (x + 0.62 * cell, base - _FLAP_HIGH), (x + 0.62 * cell, base - 0.02))
        canvas.line(flap, style.cut)
        canvas.line(((x, base - _FLAP_HIGH - 0.03), (x, base + 0.06)), style.stitch)
        canvas.text(str(number), x + 0.31 * cell, base - _FLAP_HIGH - 0.62 * line)

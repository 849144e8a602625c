"""What a drawing says must be seen in the second copy of a copy at 70 %: every solid line whole, every dot there."""

from __future__ import annotations

import pytest
from photocopy import COPIED_DOTS, photocopied
from room_setting import setting

from generator.drawing.canvas import Canvas
from generator.drawing.patterns import LEADER_DOT, PATTERN_DOT
from generator.drawing.style import Pen, Style, style_of
from generator.rendering.pdf import write_pdf

THEMES = ("plain", "harbour", "large-print")
# From where to where lines run [in]: level, upright and nearly level, at many places, for whether a thin line is kept
# depends on how it lies to the dots of the copy.
LINES = [
    line
    for place in (0.2 + 0.0413 * number for number in range(80))
    for line in (((0.1, place), (1.1, place)), ((place, 3.6), (place, 3.9)), ((1.3, place), (3.3, place + 0.07)))
]


def sheet(canvas: Canvas, theme: str) -> bytes:
    """A page of just one drawing, at its corner."""
    picture = canvas.picture("a drawing", "")
    html = (
        "<html lang=en><title>x</title><h1 style='position:absolute;top:8in'>x</h1>"
        f"<img src='mem:a.svg' alt='x' style='position:absolute;left:0;top:0;width:{canvas.width}in'>"
    )
    return write_pdf(html, "@page { size: 6in 9in; margin: 0 }", setting(theme).theme, {"a.svg": picture.svg})


def solid_pens(style: Style) -> dict[str, Pen]:
    """Every pen that draws without gaps."""
    pens = {name: getattr(style, name) for name in dir(Style) if isinstance(getattr(Style, name), property)}
    return {name: pen for name, pen in pens.items() if not pen.dashes}


@pytest.mark.parametrize("theme", THEMES)
def test_no_solid_line_breaks(theme: str) -> None:
    style = style_of(setting(theme).theme)
    assert {"cut", "outline", "hatch", "measure"} <= set(solid_pens(style))
    for name, pen in solid_pens(style).items():
        canvas = Canvas(4, 4, style, "lines")
        canvas.lines(LINES, pen)
        ink = photocopied(sheet(canvas, theme))
        for (left, top), (right, bottom) in LINES:
            steps = int(3 * COPIED_DOTS)
            for step in range(4, steps - 4):
                x, y = (int((a + (b - a) * step / steps) * COPIED_DOTS) for a, b in ((left, right), (top, bottom)))
                assert ink[y - 1 : y + 2, x - 1 : x + 2].any(), (name, step / steps)


@pytest.mark.parametrize("radius", [PATTERN_DOT, LEADER_DOT])
def test_no_dot_is_lost(radius: float) -> None:
    # Odd distances, so that no two dots lie alike on the dots of the copy.
    places = [(0.3 + 0.113 * across, 0.3 + 0.107 * down) for across in range(30) for down in range(30)]
    canvas = Canvas(4, 4, style_of(setting().theme), "dots")
    canvas.dots(places, radius)
    ink = photocopied(sheet(canvas, "plain"))
    lost = [
        (x, y)
        for x, y in places
        if not ink[
            int(y * COPIED_DOTS) - 2 : int(y * COPIED_DOTS) + 3, int(x * COPIED_DOTS) - 2 : int(x * COPIED_DOTS) + 3
        ].any()
    ]
    assert len(lost) == 0

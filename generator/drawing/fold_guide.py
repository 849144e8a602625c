"""The guide picture of fold marks: a panel comes in, its cloth under a ruler goes out, with the numbers of the marks.

Distances are in the table beside it. Marks stand where they are across the cloth; up and down is not drawn to scale.
"""

from __future__ import annotations

from collections.abc import Sequence

from generator.calculation.marked_edges import marked_edges
from generator.calculation.striped import PanelStripes
from generator.calculation.worked import BreadthJoin, TuckSet
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.cloth_colour import cloth_colour, pale
from generator.drawing.labels import text_height, text_width
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style
from generator.lengths import Edition, write_length

_LEAST_CLOTH, _BEST_CLOTH, _MOST_CLOTH = (high / MILLIMETRES for high in (13.0, 18.0, 34.0))
_EVERY = 5
_CLOSE = 0.045
_DIVISIONS = 24
_PALE, _MOST_BANDS = 0.62, 200
_ALWAYS, _RULER = "always from here", "ruler or tape"
# Told of a pair, the first of them that there is room for.
_OF_PAIR = ("always from here; the other of the pair from its right edge", "here; the other from its right edge")


def heights_of_fold_marks(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the guide picture can be."""
    fixed = _above(style) + _below(style)
    words = max(text_width(f"{side} cut edge", style.small, font=style.font) for side in ("left", "top")) + 0.1
    least = max(_LEAST_CLOTH, words - _ruler(style))
    return Heights.of_inches(fixed + least, fixed + max(_BEST_CLOTH, least), fixed + max(_MOST_CLOTH, least))


def _ruler(style: Style) -> float:
    """Return how high the ruler is drawn."""
    return 1.45 * text_height(style.small)


def _above(style: Style) -> float:
    return 1.3 * text_height(style.small) + _ruler(style)


def _below(style: Style) -> float:
    return 1.5 * text_height(style.small)


def draw_fold_marks(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return where a panel's fold marks stand, by their numbers."""
    panel, piece = worksheet.panels[name], worksheet.pieces[name]
    canvas = canvas_of(size, style, f"fold marks {name}")
    told = ("left", write_length(piece.along_at_marking, worksheet.edition))
    sketch_fold_marks(canvas, panel.across, told, worksheet.edition, panel.stripes, pair=piece.pair)
    _draw_joins(canvas, panel.joins, panel.across)
    edges = marked_edges(panel, worksheet.edition)
    other = " The other of the pair is marked alike from its right cut edge." if piece.pair else ""
    return canvas.picture(_alt(panel.across, piece.label, edges, "left cut edge") + other, "")


def draw_cross_fold_marks(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return where the marks of a panel's cross tucks stand, the panel turned a quarter with its first tucks sewn."""
    panel = worksheet.panels[name]
    assert panel.cross is not None
    canvas = canvas_of(size, style, f"cross fold marks {name}")
    told = ("top", write_length(panel.across.sewn, worksheet.edition))
    sketch_fold_marks(canvas, panel.cross, told, worksheet.edition)
    edges = marked_edges(panel, worksheet.edition, cross=True)
    return canvas.picture(_alt(panel.cross, worksheet.pieces[name].label, edges, "top cut edge"), "")


def _alt(tucks: TuckSet, label: str, edges: str, start: str) -> str:
    marks = "1 fold mark" if tucks.count == 1 else f"{tucks.count} fold marks, numbered from the {start}"
    return f"The {label} under a ruler whose end lies at the {start}: {marks}, on {edges}."


def sketch_fold_marks(
    canvas: Canvas,
    tucks: TuckSet,
    told: tuple[str, str],
    edition: Edition,
    stripes: PanelStripes | None = None,
    *,
    pair: bool = False,
) -> None:
    """Draw the cloth under its ruler; ``told`` are the edge that is measured from and how long the tucks are."""
    style, line = canvas.style, text_height(canvas.style.small)
    edge, along = told
    left, right = _ends(canvas)
    top, bottom = _above(style), canvas.height - _below(style)
    canvas.arrow((left, 0.6 * line), (left + 0.75, 0.6 * line), style.outline, size=0.09)
    canvas.text(_from_here(canvas, left + 0.82, pair=pair), left + 0.82, 0.6 * line, hold="left", bold=True)
    canvas.line(((left, 0.1 * line), (left, top)), style.outline)
    _draw_ruler(canvas, (left, right), top)
    canvas.rectangle((left, top), (right, bottom), fill=style.paper)
    if stripes is not None:
        _draw_stripes(canvas, stripes, tucks)
    canvas.rectangle((left, top), (right, bottom), pen=style.cut)
    _draw_marks(canvas, tucks, (left, right), (top, bottom))
    middle = (top - _ruler(style) + bottom) / 2
    canvas.text(f"{edge} cut edge", left - 0.75 * line, middle, turned=True)
    _measure(canvas, ((right + 0.75 * line, top), (right + 0.75 * line, bottom)), along)
    words = write_length(tucks.cut, edition, unit=True)
    _measure(canvas, ((left, bottom + 0.85 * line), (right, bottom + 0.85 * line)), words)


def _from_here(canvas: Canvas, start: float, *, pair: bool) -> str:
    """Return from where the marks are measured, and of a pair from where those of the other."""
    style = canvas.style
    words = _OF_PAIR if pair else (_ALWAYS,)
    wide = (one for one in words if text_width(one, style.small, bold=True, font=style.font) < canvas.width - start)
    return next(wide, words[-1])


def _ends(canvas: Canvas) -> tuple[float, float]:
    """Return where the cloth begins and ends from left to right on paper."""
    line = text_height(canvas.style.small)
    return 1.4 * line, canvas.width - 1.5 * line


def _draw_ruler(canvas: Canvas, ends: tuple[float, float], bottom: float) -> None:
    style, line = canvas.style, text_height(canvas.style.small)
    left, right = ends
    top, beyond = bottom - _ruler(style), min(0.15, canvas.width - right)
    canvas.rectangle((left, top), (right + beyond, bottom), fill=style.paper, pen=style.outline)
    step = (right - left) / _DIVISIONS
    canvas.lines(
        [
            ((left + number * step, bottom), (left + number * step, bottom - (0.09 if number % 4 == 0 else 0.05)))
            for number in range(1, _DIVISIONS + 1)
        ],
        style.measure,
    )
    canvas.text("0", left + 0.05, top + 0.55 * line, hold="left")
    canvas.text(_RULER, (left + right) / 2, top + 0.55 * line, backing=style.paper)


def _draw_marks(canvas: Canvas, tucks: TuckSet, ends: tuple[float, float], levels: tuple[float, float]) -> None:
    style, line = canvas.style, text_height(canvas.style.small)
    (left, right), (top, bottom) = ends, levels
    places = [left + float(mark / tucks.cut) * (right - left) for mark in tucks.marks]
    numbered = numbers_shown(places, text_width("00", style.small, bold=True, font=style.font), ends)
    close = len(places) > 1 and (places[-1] - places[0]) / (len(places) - 1) < _CLOSE
    tick = min(0.1, (bottom - top) / 5)
    middle = (top + bottom) / 2
    for number, x in enumerate(places, 1):
        canvas.lines([((x, top), (x, top + tick)), ((x, bottom - tick), (x, bottom))], style.cut)
        if not close or number in numbered:
            canvas.line(((x, top + tick + 0.03), (x, bottom - tick)), style.fold)
        if number in numbered:
            canvas.text(str(number), x, max(middle, top + tick + 0.6 * line), bold=True, backing=style.paper)


def numbers_shown(places: Sequence[float], width: float, ends: tuple[float, float]) -> set[int]:
    """Return which numbers of marks are written: the first, the last and every fifth that stands clear of the others.

    Examples
    --------
    >>> sorted(numbers_shown([1 + number / 4 for number in range(12)], 0.3, (0, 5)))
    [1, 5, 10, 12]
    """
    clear = 1.35 * width
    kept: list[int] = []
    order = [1, len(places), *range(_EVERY, len(places), _EVERY)] if places else []
    for number in dict.fromkeys(order):
        x = places[number - 1]
        inside = ends[0] + width * 0.6 <= x <= ends[1] - width * 0.6
        if inside and all(abs(x - places[other - 1]) >= clear for other in kept):
            kept.append(number)
    return set(kept)


def _draw_stripes(canvas: Canvas, found: PanelStripes, tucks: TuckSet) -> None:
    """Fill the stripes of the cloth, pale, so that marks and numbers stand out; too many are left out."""
    if tucks.cut * len(found.stripes) > _MOST_BANDS * found.repeat:
        return
    left, right = _ends(canvas)
    levels = (_above(canvas.style), canvas.height - _below(canvas.style))
    scale = (right - left) / float(tucks.cut)
    at = -(found.start % found.repeat)
    while at < tucks.cut:
        for stripe in found.stripes:
            sides = [min(max(left + float(place) * scale, left), right) for place in (at, at + stripe.width)]
            if sides[0] < sides[1]:
                colour = pale(cloth_colour(stripe.colour), _PALE)
                canvas.rectangle((sides[0], levels[0]), (sides[1], levels[1]), fill=colour)
            at += stripe.width


def _draw_joins(canvas: Canvas, joins: Sequence[BreadthJoin], tucks: TuckSet) -> None:
    """Draw the seams between breadths, told below the cloth's top edge."""
    left, right = _ends(canvas)
    top, bottom = _above(canvas.style), canvas.height - _below(canvas.style)
    for join in joins:
        x = left + float(join.at / tucks.cut) * (right - left)
        canvas.line(((x, top), (x, bottom)), canvas.style.join)


def _measure(canvas: Canvas, ends: tuple[tuple[float, float], tuple[float, float]], words: str) -> None:
    """Draw a measure between two places with its words in the middle."""
    (left, top), (right, bottom) = ends
    canvas.arrow(*ends, canvas.style.measure, both=True)
    upright = left == right
    paper = canvas.style.paper
    canvas.text(words, (left + right) / 2, (top + bottom) / 2, turned=upright, bold=True, backing=paper)

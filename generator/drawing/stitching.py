"""How a tuck is stitched: depth and pitch come in, the machine from above and tucks from their end go out."""

from __future__ import annotations

from generator.calculation.worked import TuckSet
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.cloth_edge import LIFT, PLY, draw_ply, standing_path
from generator.drawing.labels import text_height, text_width
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style
from generator.lengths import Edition, say_length

_LEAST, _BEST, _MOST = (high / MILLIMETRES for high in (26.0, 32.0, 42.0))
_TITLES = ("At the machine, from above", "Stitched, from the end")
_UNEQUAL = ("At the machine: tuck 1", "Stitched: tucks 1 and 2")


def heights_of_stitching(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the picture of the stitching can be."""
    least = max(_LEAST, 6.2 * text_height(style.small)) + 1.6 * text_height(style.small)
    return Heights.of_inches(least, _BEST, _MOST)


def draw_stitching(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return how the tucks of a panel are stitched beside a guide, and how they look from their end."""
    return _picture(worksheet.panels[name].across, worksheet.edition, canvas_of(size, style, f"stitching {name}"))


def draw_cross_stitching(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return the same of a panel's cross tucks."""
    tucks = worksheet.panels[name].cross
    assert tucks is not None
    return _picture(tucks, worksheet.edition, canvas_of(size, style, f"cross stitching {name}"))


def _picture(tucks: TuckSet, edition: Edition, canvas: Canvas) -> Picture:
    sketch_stitching(canvas, tucks, edition)
    depth = say_length(tucks.depths[0], edition)
    first = "a tuck" if equal_depths(tucks) else "tuck 1"
    alt = (
        f"At the machine, from above: a guide stands {depth} to the right of the needle, and the fold of {first} runs "
        f"along it. Stitched, from the end: the tuck stands {depth} high."
    )
    if tucks.count > 1:
        alt += f" From its stitching to that of tuck 2: {say_length(tucks.pitches[0], edition)}."
    return canvas.picture(alt, "")


def equal_depths(tucks: TuckSet) -> bool:
    """Return whether all tucks of a set are equally deep."""
    return len(set(tucks.depths)) == 1


def sketch_stitching(canvas: Canvas, tucks: TuckSet, edition: Edition) -> None:
    """Draw the machine at the left and the tucks at the right."""
    style, line = canvas.style, text_height(canvas.style.small)
    middle = canvas.width * 0.54
    halves = ((0.0, middle - 0.1), (middle + 0.1, canvas.width))
    for words, (left, right) in zip(_TITLES if equal_depths(tucks) else _UNEQUAL, halves, strict=True):
        wide = text_width(words, style.small, bold=True, font=style.font)
        x = min(max((left + right) / 2, wide / 2), canvas.width - wide / 2)
        canvas.text(words, x, 0.65 * line, bold=True)
    depth = say_length(tucks.depths[0], edition)
    _machine(canvas, (0.02, 1.5 * line), (halves[0][1], canvas.height - 0.03), depth)
    pitch = say_length(tucks.pitches[0], edition) if tucks.count > 1 else ""
    _from_the_end(canvas, halves[1], 1.5 * line, (depth, pitch))


def _machine(canvas: Canvas, corner: tuple[float, float], opposite: tuple[float, float], depth: str) -> None:
    """Draw the foot, the needle, the guide and the folded cloth that runs between them."""
    style, line = canvas.style, text_height(canvas.style.small)
    (left, top), (right, bottom) = corner, opposite
    canvas.rectangle(corner, opposite, fill=style.paper, pen=style.outline)
    wide, high = right - left, bottom - top
    needle, fold = left + wide * 0.42, left + wide * 0.72
    cloth_top = top + high * 0.42
    canvas.rectangle((left + wide * 0.12, cloth_top), (fold, bottom), fill=style.paper, pen=style.outline)
    canvas.line(((fold, cloth_top), (fold, bottom)), style.cut)
    canvas.line(((needle, cloth_top), (needle, cloth_top - 0.02 + high * 0.56)), style.stitch)
    sides, ends = (fold + 0.03, fold + 0.03 + wide * 0.16), (top + high * 0.3, bottom - 0.05)
    canvas.hatched([(sides[0], ends[0]), (sides[1], ends[0]), (sides[1], ends[1]), (sides[0], ends[1])], style.outline)
    canvas.text("guide", fold + 0.03 + wide * 0.08, top + high * 0.64, turned=True, backing=style.paper)
    foot = min(0.12, wide * 0.08)
    canvas.rectangle(
        (needle - foot, top + high * 0.2), (needle + foot, cloth_top + high * 0.12), fill=style.paper, pen=style.outline
    )
    canvas.dots([(needle, cloth_top + 0.02)], 0.03)
    _depth(canvas, (needle, fold + 0.015), (top, top + high * 0.2), depth)
    feeds = left + wide * 0.12 + 1.35 * line
    canvas.arrow((feeds, bottom - 0.12), (feeds, cloth_top + high * 0.1), style.cut, size=0.1)
    canvas.text(
        "feeds", feeds - 0.6 * line, (cloth_top + high * 0.1 + bottom - 0.12) / 2, turned=True, backing=style.paper
    )
    canvas.text("fold", fold - 0.05, cloth_top + high * 0.32, hold="right", backing=style.paper)


def _depth(canvas: Canvas, ends: tuple[float, float], levels: tuple[float, float], depth: str) -> None:
    """Write how far the guide stands from the needle, between the two or beside them."""
    style, line = canvas.style, text_height(canvas.style.small)
    needle, fold = ends
    y = levels[0] + 0.75 * line
    canvas.lines([((x, y - 0.3 * line), (x, levels[1])) for x in ends], style.measure)
    canvas.arrow((needle, y), (fold, y), style.measure, both=True)
    if text_width(depth, style.small, bold=True, font=style.font) + 0.25 < fold - needle:
        canvas.text(depth, (needle + fold) / 2, y, bold=True, backing=style.paper)
    else:
        canvas.text(depth, needle - 0.06, y, hold="right", bold=True)


def _from_the_end(canvas: Canvas, ends: tuple[float, float], top: float, told: tuple[str, str]) -> None:
    """Draw two tucks that stand on the cloth, with the depth of the first and the pitch between them."""
    style, line = canvas.style, text_height(canvas.style.small)
    depth, pitch = told
    left, right = ends
    base = canvas.height - (2.35 * line if pitch else 0.8 * line)
    tall = min(0.75, base - top - PLY - 0.1)
    apart = (right - left) * 0.42
    first = left + (right - left) * 0.3
    feet = [first, first + apart] if pitch else [first]
    points = [(left, base)]
    for foot in feet:
        points += standing_path(foot, base, tall, 0)[1:-1]
    draw_ply(canvas, [*points, (right, base)])
    for foot in feet:
        canvas.line(((foot - 0.14, base - PLY), (foot + 0.14, base - PLY)), style.stitch)
    x = first + LIFT + 0.09
    canvas.arrow((x, base - PLY), (x, base - PLY - tall), style.measure, both=True)
    canvas.text(depth, x + 0.05, base - PLY - tall * 0.55, hold="left", bold=True, backing=style.paper)
    if pitch:
        y = base + 0.8 * line
        canvas.arrow((feet[0], y), (feet[1], y), style.measure, both=True)
        canvas.text(pitch, sum(feet) / 2, y + 0.85 * line, bold=True)

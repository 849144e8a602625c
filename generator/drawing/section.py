"""Tucks seen from their ends: a worksheet comes in, sections of one tuck, a caught hem and of pairs go out."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.worked import Panel, TuckSet, Turn
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas
from generator.drawing.cloth_edge import LIFT, PLY, draw_ply, hem_path, standing_path, turned_path
from generator.drawing.labels import text_height
from generator.drawing.picture import Picture
from generator.drawing.section_plan import TuckPair, pair_words, plan_pairs
from generator.drawing.style import Style
from generator.lengths import Edition, say_length

WIDTH = 6.8


def draw_section(worksheet: Worksheet, name: str, style: Style) -> tuple[Picture, ...]:
    """Return all sections of a panel: one tuck, one of its cross tucks, its caught hem, its pairs."""
    drawn = (draw_tuck_section, draw_cross_tuck_section, draw_hem_section, draw_pair_section)
    return tuple(picture for draw in drawn for picture in draw(worksheet, name, style))


def draw_tuck_section(worksheet: Worksheet, name: str, style: Style) -> tuple[Picture, ...]:
    """Return one tuck flat, creased and stitched, with its depth and take-up; nothing for a plain panel."""
    return _tuck_section(worksheet.panels[name].across, worksheet.edition, style, f"tuck section {name}")


def draw_cross_tuck_section(worksheet: Worksheet, name: str, style: Style) -> tuple[Picture, ...]:
    """Return one cross tuck in the same way where it is unlike the others; else nothing."""
    panel = worksheet.panels[name]
    if not crosses_otherwise(panel):
        return ()
    assert panel.cross is not None
    return _tuck_section(panel.cross, worksheet.edition, style, f"cross tuck section {name}")


def crosses_otherwise(panel: Panel) -> bool:
    """Return whether a panel has cross tucks that are not as deep as the others, or take up more or less."""
    first, cross = panel.across, panel.cross
    if cross is None or not cross.count:
        return False
    return (cross.depths[0], cross.take_ups[0]) not in zip(first.depths, first.take_ups, strict=True)


def _tuck_section(tucks: TuckSet, edition: Edition, style: Style, key: str) -> tuple[Picture, ...]:
    if not tucks.count:
        return ()
    depth, take_up = (say_length(length, edition) for length in (tucks.depths[0], tucks.take_ups[0]))
    alt = (
        f"One tuck from its end, three times: flat with its fold mark, creased at the mark, and stitched {depth} "
        f"from the fold, so that {take_up} of cloth is hidden."
    )
    caption = f"Crease at the fold mark, then stitch {depth} from the fold. The dashed line is the stitching."
    return (sketch_tuck(tucks, edition, style, key).picture(alt, caption),)


def sketch_tuck(tucks: TuckSet, edition: Edition, style: Style, key: str) -> Canvas:
    """Return the canvas of one tuck in three stages; the first tuck stands for all."""
    depth, line = float(tucks.depths[0]), text_height(style.small)
    scale = max(0.5, min(0.9, depth * 2)) / depth
    tall = depth * scale
    base = 1.8 * line + tall + 0.1
    canvas = Canvas(WIDTH, base + 4.2 * line, style, key)
    for place, title in enumerate(("Flat", "Creased", "Stitched")):
        canvas.text(title, WIDTH * (2 * place + 1) / 6, 0.6 * line, bold=True, size=style.text)
    _flat_tuck(canvas, WIDTH / 6, base, tall, say_length(tucks.take_ups[0], edition))
    _creased_tuck(canvas, WIDTH / 2, base, tall)
    _stitched_tuck(canvas, WIDTH * 5 / 6, base, tall, say_length(tucks.depths[0], edition))
    return canvas


def _flat_tuck(canvas: Canvas, middle: float, base: float, tall: float, take_up: str) -> None:
    style, line = canvas.style, text_height(canvas.style.small)
    reach = min(tall + 0.2, WIDTH / 6 - 0.08)
    draw_ply(canvas, ((middle - reach, base), (middle + reach, base)))
    canvas.line(((middle, base - 0.14), (middle, base + 0.14)), style.outline)
    canvas.text("fold mark", middle, base - 0.14 - 0.7 * line)
    for foot in (middle - tall, middle + tall):
        canvas.line(((foot, base - 0.1), (foot, base + 0.1)), style.stitch)
    y = base + 1.6 * line
    canvas.arrow((middle - tall, y), (middle + tall, y), style.measure, both=True)
    canvas.text(f"take-up {take_up}", middle, y + line)


def _creased_tuck(canvas: Canvas, middle: float, base: float, tall: float) -> None:
    line = text_height(canvas.style.small)
    spread = tall * 0.55
    draw_ply(canvas, ((middle - spread, base), (middle, base - tall), (middle + spread, base)), radius=0.06)
    canvas.text("crease", middle + 0.16, base - tall + 0.02, hold="left")
    canvas.text("wrong sides together", middle, base + 1.6 * line)


def _stitched_tuck(canvas: Canvas, middle: float, base: float, tall: float, depth: str) -> None:
    style, line = canvas.style, text_height(canvas.style.small)
    reach = min(tall + 0.2, 0.75)
    draw_ply(canvas, standing_path(middle, base, tall, reach))
    canvas.line(((middle - 0.16, base - PLY), (middle + 0.16, base - PLY)), style.stitch)
    x = middle + 0.24
    canvas.arrow((x, base - PLY), (x, base - PLY - tall), style.measure, both=True)
    canvas.text(depth, x + 0.06, base - tall / 2 - 0.06, hold="left")
    canvas.text("depth", x + 0.06, base - tall / 2 - 0.06 - line, hold="left")
    canvas.text("stitching", middle, base + 1.6 * line)


def draw_hem_section(worksheet: Worksheet, name: str, style: Style) -> tuple[Picture, ...]:
    """Return the three stages of a caught hem, where the panel has one."""
    tucks, edition = worksheet.panels[name].across, worksheet.edition
    sides = [side for side, end in (("left", tucks.left), ("right", tucks.right)) if end.kind == "caught hem"]
    if not sides or not tucks.count:
        return ()
    allowance = tucks.left_allowance if sides[0] == "left" else tucks.right_allowance
    depth = tucks.depths[0 if sides[0] == "left" else -1]
    alt = (
        f"A caught hem in three stages: the first crease {say_length(2 * allowance, edition)} from the raw edge; "
        f"the raw edge folded to it, {say_length(allowance, edition)} deep; the crease folded again and stitched "
        f"{say_length(depth, edition)} from the fold, through the hem."
    )
    caption = "The stitching of the first tuck holds the hem: three plies in that tuck."
    return (sketch_hem(allowance, depth, edition, style, f"hem section {name}").picture(alt, caption),)


def sketch_hem(allowance: Fraction, depth: Fraction, edition: Edition, style: Style, key: str) -> Canvas:
    """Return the canvas of a caught hem of an allowance [in] at a tuck of a depth [in], drawn at the left edge."""
    line = text_height(style.small)
    scale = min(1.0, 1.5 / float(2 * allowance), 0.9 / float(depth))
    hem, tall = float(allowance) * scale, float(depth) * scale
    base = 2.4 * line + max(tall, 0.3) + 0.2
    canvas = Canvas(WIDTH, base + 4.2 * line, style, key)
    titles = ("Flat", "Folded in", "Stitched")
    for place, title in enumerate(titles):
        canvas.text(title, WIDTH * (2 * place + 1) / 6, 0.6 * line, bold=True, size=style.text)
    lefts = [WIDTH * place / 3 + 0.25 for place in range(3)]
    y = base + 1.6 * line
    draw_ply(canvas, ((lefts[0], base), (lefts[0] + 2 * hem + 0.3, base)))
    crease = lefts[0] + 2 * hem
    canvas.line(((crease, base - 0.12), (crease, base + 0.12)), style.outline)
    canvas.text("first crease", crease, base - 0.12 - 0.7 * line)
    _measure(canvas, (lefts[0], crease), y, say_length(2 * allowance, edition))
    start = lefts[1] + hem
    draw_ply(canvas, ((start, base), (start - hem, base), (start - hem, base - LIFT), (start + 0.5, base - LIFT)))
    canvas.line(((start, base - 0.2), (start, base + 0.08)), style.outline)
    canvas.text("crease", start, base - 0.2 - 0.7 * line)
    _measure(canvas, (start - hem, start), y, say_length(allowance, edition))
    draw_ply(canvas, hem_path(lefts[2], base, hem - tall, tall))
    foot = lefts[2] + hem - tall
    canvas.line(((foot - 0.14, base - LIFT - 0.03), (foot + 0.24, base - LIFT - 0.03)), style.stitch)
    _measure(canvas, (lefts[2], foot), y, f"margin {say_length(allowance - depth, edition)}")
    return canvas


def _measure(canvas: Canvas, ends: tuple[float, float], y: float, words: str) -> None:
    line = text_height(canvas.style.small)
    canvas.arrow((ends[0], y), (ends[1], y), canvas.style.measure, both=True, size=min(0.07, (ends[1] - ends[0]) / 3))
    canvas.text(words, sum(ends) / 2, y + line)


def draw_pair_section(worksheet: Worksheet, name: str, style: Style) -> tuple[Picture, ...]:
    """Return how neighbouring tucks lie at the rows: facing, one way, back to back; in true proportion."""
    panel, edition = worksheet.panels[name], worksheet.edition
    pairs = plan_pairs(panel)
    if not pairs:
        return ()
    told = ["{}, {}".format(*pair_words(pair, edition)).lower() for pair in pairs]
    alt = "Two neighbouring tucks from their ends, turned and held down: " + "; ".join(told) + "."
    caption = (
        "Seen from the near end of the tucks. Widths are in true proportion; the cloth is drawn thicker than it is."
    )
    return (sketch_pairs(panel, edition, style, f"pair section {name}").picture(alt, caption),)


def sketch_pairs(panel: Panel, edition: Edition, style: Style, key: str) -> Canvas:
    """Return the canvas of the pairs, two beside each other."""
    pairs = plan_pairs(panel)
    line = text_height(style.small)
    cell, pad = WIDTH / 2, 0.3
    extent = max(max(pair.pitch, *pair.folds) - min(Fraction(0), *pair.folds) for pair in pairs)
    scale = min(2.0, (cell - 2 * pad - 0.4) / float(extent))
    high = 8.6 * line + 6 * LIFT
    canvas = Canvas(WIDTH if len(pairs) > 1 else cell, high * ((len(pairs) + 1) // 2), style, key)
    for place, pair in enumerate(pairs):
        _pair(canvas, pair, (cell * (place % 2) + cell / 2, high * (place // 2)), scale, edition)
    return canvas


def _pair(canvas: Canvas, pair: TuckPair, at: tuple[float, float], scale: float, edition: Edition) -> None:
    style, line = canvas.style, text_height(canvas.style.small)
    middle, top = at
    name, shown = pair_words(pair, edition)
    canvas.text(name, middle, top + 0.7 * line, bold=True, size=style.text)
    canvas.text(shown, middle, top + 1.9 * line)
    base = top + 4.6 * line + 6 * LIFT
    low, high = min(Fraction(0), *pair.folds), max(pair.pitch, *pair.folds)
    left = middle - float(low + high) / 2 * scale
    feet = (left, left + float(pair.pitch) * scale)
    signs = {Turn.LEFT: -1, Turn.RIGHT: 1, Turn.UPRIGHT: 0}
    flaps = tuple(
        (foot, signs[turn] * float(depth) * scale, tuck == pair.top and pair.space < 0)
        for foot, turn, depth, tuck in zip(feet, pair.turns, pair.depths, pair.tucks, strict=True)
    )
    reach = (left + float(low) * scale - 0.2, left + float(high) * scale + 0.2)
    draw_ply(canvas, turned_path(flaps, reach, base))
    for foot, _, raised in flaps:
        canvas.line(((foot, base - LIFT * (5 if raised else 3)), (foot, base + 0.08)), style.stitch)
    _measure(canvas, feet, base + 1.4 * line, f"pitch {say_length(pair.pitch, edition)}")
    depth_y = base - LIFT * (5 if any(raised for *_, raised in flaps) else 3) - 1.6 * line
    foot, reach_of_flap, _ = flaps[0]
    ends = (min(foot, foot + reach_of_flap), max(foot, foot + reach_of_flap))
    canvas.arrow((ends[0], depth_y + line), (ends[1], depth_y + line), style.measure, both=True, size=0.06)
    canvas.text(f"depth {say_length(pair.depths[0], edition)}", sum(ends) / 2, depth_y)

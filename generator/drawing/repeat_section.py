"""One repeat of a row, or of pressed tucks, from the ends of the tucks: a panel comes in, a section goes out.

Widths are in true proportion; the cloth is drawn thicker than it is.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from generator.calculation.turning.pressed import pressed_words
from generator.calculation.worked import Panel, Row, Turn
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.cloth_edge import LIFT, draw_ply, turned_path
from generator.drawing.labels import spread, text_height, text_width
from generator.drawing.picture import Picture
from generator.drawing.section_plan import TuckPair, pair_of, pair_words
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style
from generator.drawing.turn_picture_plan import LETTERS
from generator.lengths import Edition

_MOST_TUCKS = 6
_SIGNS = {Turn.LEFT: -1, Turn.RIGHT: 1, Turn.UPRIGHT: 0}
_STANDING = 3.2 * LIFT
_TRUE_WIDTHS = "Widths are true to each other; the cloth is drawn thicker than it is."


def pressed_pairs(panel: Panel) -> tuple[TuckPair, ...]:
    """Return the pairs in the middle of a panel whose tucks are pressed; those at the left are pressed first."""
    turns = panel.pressed
    most = min(len(turns), _MOST_TUCKS - 2)
    first = (len(turns) - most) // 2
    return tuple(
        pair_of(panel.across, left + 1, (turns[left], turns[left + 1]), right_last=True)
        for left in range(first, first + most - 1)
    )


def has_pressed(panel: Panel) -> bool:
    """Return whether two tucks or more of a panel are pressed."""
    return len(panel.pressed) > 1


def repeat_pairs(panel: Panel, row: Row) -> tuple[TuckPair, ...]:
    """Return the pairs of neighbours in the shortest stretch of a row that has all sorts of pairs that the row has."""
    sorts = set(pairwise(row.turns))
    seen: set[tuple[Turn, Turn]] = set()
    for shown, turns in enumerate(pairwise(row.turns), 1):
        seen.add(turns)
        if seen == sorts or shown == _MOST_TUCKS - 1:
            break
    last = row.start == "left"
    return tuple(
        pair_of(panel.across, left, turns, right_last=last)
        for left, turns in enumerate(list(pairwise(row.turns))[: max(2, shown)], 1)
    )


def has_repeat(panel: Panel) -> bool:
    """Return whether a panel has rows that turn two tucks or more."""
    return panel.rows is not None and panel.across.count > 1


def heights_of_repeat(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the section can be."""
    panel = worksheet.panels[name]
    assert panel.rows is not None
    return _heights(repeat_pairs(panel, panel.rows.rows[0]), worksheet.edition, style, width)


def heights_of_pressing(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the section of pressed tucks can be."""
    return _heights(pressed_pairs(worksheet.panels[name]), worksheet.edition, style, width)


def _heights(pairs: Sequence[TuckPair], edition: Edition, style: Style, width: float) -> Heights:
    levels = max(_levels(pairs))
    line = text_height(style.small)
    lines = _lines_below(pairs, edition, style, width / MILLIMETRES)
    least = 1.4 * text_height(style.strong) + 1.3 * line + LIFT * (3 + 2 * levels) + (1.4 + 1.1 * lines) * line
    return Heights.of_inches(least, least + 0.05, least + 0.3)


def draw_repeat(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return one repeat of row 1 from the ends of its tucks, with a letter over each."""
    panel, edition = worksheet.panels[name], worksheet.edition
    assert panel.rows is not None
    row = panel.rows.rows[0]
    canvas = canvas_of(size, style, f"repeat {name}")
    pairs = repeat_pairs(panel, row)
    _draw(canvas, pairs, _letters(row, len(pairs) + 1), edition)
    alt = (
        f"Row 1 from the ends of its tucks, as they lie when they are sewn down, with a letter over each: "
        f"{', '.join(_letters(row, len(pairs) + 1))}. "
    )
    return canvas.picture(alt + _pairs_told(pairs, edition), _TRUE_WIDTHS)


def draw_pressing(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return tucks from their ends as they are pressed, with the number of each over it."""
    panel, edition = worksheet.panels[name], worksheet.edition
    canvas = canvas_of(size, style, f"pressing {name}")
    pairs = pressed_pairs(panel)
    numbers = [str(pairs[0].tucks[0] + place) for place in range(len(pairs) + 1)]
    _draw(canvas, pairs, numbers, edition)
    alt = (
        f"Tucks {numbers[0]} to {numbers[-1]} from their ends, seen from the bottom edge, the right side of the cloth "
        f"up, as they are pressed: {pressed_words(panel.pressed, worksheet.pieces[name].hangs_by)}. "
    )
    return canvas.picture(alt + _pairs_told(pairs, edition), _TRUE_WIDTHS)


def _pairs_told(pairs: Sequence[TuckPair], edition: Edition) -> str:
    """Return what each sort of pair shows, as a sentence."""
    told = dict.fromkeys(": ".join(pair_words(pair, edition)).lower() for pair in pairs if _lying(pair))
    return f"{'; '.join(told).capitalize()}." if told else ""


def _letters(row: Row, count: int) -> tuple[str, ...]:
    """Return the letters of the first tucks from the left, as the turn picture of the same row has them."""
    words = row.words if row.start == "left" else row.words[::-1]
    return tuple(LETTERS[word] for word in words[:count])


def _lying(pair: TuckPair) -> bool:
    return Turn.UPRIGHT not in pair.turns


def _levels(pairs: Sequence[TuckPair]) -> list[int]:
    """Return over how many others each tuck lies, from the left."""
    levels = [0] * (len(pairs) + 1)
    for _ in pairs:
        for pair in pairs:
            if pair.space < 0 and _lying(pair):
                below = sum(pair.tucks) - pair.top
                levels[pair.top - 1] = max(levels[pair.top - 1], levels[below - 1] + 1)
    return levels


def _words_below(pairs: Sequence[TuckPair], edition: Edition) -> tuple[str, ...]:
    """Return what each sort of pair that does not face shows."""
    told = (": ".join(pair_words(pair, edition)).lower() for pair in pairs if _lying(pair) and not pair.facing)
    return tuple(dict.fromkeys(told))


def _lines_below(pairs: Sequence[TuckPair], edition: Edition, style: Style, width: float) -> int:
    """Return on how many lines the words below stand: one, or one for each where they are too wide together."""
    widths = [text_width(words, style.small, font=style.font) + 0.12 for words in _words_below(pairs, edition)]
    return 1 if sum(widths) <= width else len(widths)


def _draw(canvas: Canvas, pairs: Sequence[TuckPair], letters: Sequence[str], edition: Edition) -> None:
    style, line = canvas.style, text_height(canvas.style.small)
    feet, folds = [0.0], [_fold(pairs[0], 0)]
    for pair in pairs:
        feet.append(feet[-1] + float(pair.pitch))
        folds.append(_fold(pair, 1))
    low = min(foot + min(fold, 0.0) for foot, fold in zip(feet, folds, strict=True))
    high = max(foot + max(fold, 0.0) for foot, fold in zip(feet, folds, strict=True))
    beyond = 0.25
    scale = min(1.6, (canvas.width - 2 * beyond) / (high - low))
    start = canvas.width / 2 - (low + high) / 2 * scale
    places = [start + foot * scale for foot in feet]
    levels = _levels(pairs)
    base = canvas.height - (1.35 + 1.1 * _lines_below(pairs, edition, style, canvas.width)) * line
    flaps = tuple((foot, fold * scale, level) for foot, fold, level in zip(places, folds, levels, strict=True))
    ends = (start + low * scale - beyond, start + high * scale + beyond)
    draw_ply(canvas, _cloth(flaps, ends, base))
    _stitches(canvas, flaps, base)
    top = base - LIFT * (3 + 2 * max(levels)) - 0.6 * text_height(style.strong)
    for letter, (foot, fold, _) in zip(letters, flaps, strict=True):
        canvas.text(letter, foot + fold / 2, top, size=style.strong, bold=True)
    _told(canvas, pairs, flaps, (top - 0.6 * text_height(style.strong) - 0.6 * line, base), edition)


def _fold(pair: TuckPair, place: int) -> float:
    return _SIGNS[pair.turns[place]] * float(pair.depths[place])


def _cloth(
    flaps: Sequence[tuple[float, float, int]], ends: tuple[float, float], base: float
) -> list[tuple[float, float]]:
    """Return the line of the cloth through turned and standing tucks."""
    points: list[tuple[float, float]] = [(ends[0], base)]
    for foot, fold, level in flaps:
        if fold:
            points += turned_path([(foot, fold, level)], ends, base)[1:-1]
        else:
            half, top = LIFT / 2, base - _STANDING
            points += [(foot - half, base), (foot - half, top), (foot + half, top), (foot + half, base)]
    return [*points, (ends[1], base)]


def _stitches(canvas: Canvas, flaps: Sequence[tuple[float, float, int]], base: float) -> None:
    canvas.lines(
        [
            ((foot, base - LIFT * (3 + 2 * level)), (foot, base + 0.07))
            if fold
            else ((foot - 0.12, base - LIFT / 2), (foot + 0.12, base - LIFT / 2))
            for foot, fold, level in flaps
        ],
        canvas.style.stitch,
    )


def _told(
    canvas: Canvas,
    pairs: Sequence[TuckPair],
    flaps: Sequence[tuple[float, float, int]],
    levels: tuple[float, float],
    edition: Edition,
) -> None:
    """Write what each sort of pair shows: facing pairs above, the others below with a measure of what shows."""
    style, line = canvas.style, text_height(canvas.style.small)
    above: list[tuple[str, float]] = []
    below: list[tuple[str, float]] = []
    for pair, (foot, fold, _), (after, after_fold, _) in zip(pairs, flaps, flaps[1:], strict=False):
        words = ": ".join(pair_words(pair, edition)).lower()
        if not _lying(pair) or any(words == told for told, _ in (*above, *below)):
            continue
        shown = (foot + max(fold, 0.0), after + min(after_fold, 0.0))
        (above if pair.facing else below).append((words, sum(shown) / 2))
        if not pair.facing and shown[1] - shown[0] > 0.06:
            y = levels[1] + 0.75 * line
            size = min(0.07, (shown[1] - shown[0]) / 3)
            canvas.arrow((shown[0], y), (shown[1], y), style.measure, both=True, size=size)
    for told, y in ((above, levels[0]), (below, levels[1] + 1.75 * line)):
        widths = [text_width(words, style.small, font=style.font) + 0.12 for words, _ in told]
        middles = spread([x for _, x in told], widths, 0.0, canvas.width)
        for number, (words, x) in enumerate(told):
            inside = min(max(x, widths[number] / 2), canvas.width - widths[number] / 2)
            canvas.text(words, *((middles[number], y) if middles else (inside, y + 1.1 * number * line)))

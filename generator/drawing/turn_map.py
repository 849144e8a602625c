"""The turn map: a worksheet's rows come in, pictures of every turn and the rows told in words go out."""

from __future__ import annotations

from generator.calculation.turning.turns import spoken_row
from generator.calculation.worked import RowSet, Turn
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas
from generator.drawing.labels import text_height, text_width
from generator.drawing.picture import Picture
from generator.drawing.style import Style
from generator.drawing.turn_map_plan import ROW_HEIGHT, MapBlock, MapRow, plan_turn_map

DOT = 0.26
LEGEND = "heavy frame: one repeat"
EVERY = 5
_SIGNS = {
    Turn.RIGHT: "a filled arrow turns right",
    Turn.LEFT: "an open arrow turns left",
    Turn.UPRIGHT: "an upright bar stays standing",
}


def draw_turn_map(worksheet: Worksheet, name: str, style: Style) -> tuple[Picture, ...]:
    """Return the turn map of a panel, in short first where it is too large for one picture; nothing without rows."""
    panel = worksheet.panels[name]
    if panel.rows is None or not panel.across.count:
        return ()
    count, rows = panel.across.count, panel.rows
    canvases = sketch_turn_map(rows, count, style, f"turn map {name}")
    alt = f"The turns of {count} tucks in {len(rows.rows)} rows, as seen on the right side: {rows.plan}."
    caption = f"Right side up. {_signs_in_words(rows)} Each row begins at its dot."
    short = "The map in short; the whole map follows. " if len(canvases) > 1 else ""
    pictures = [canvases[0].picture(alt, short + caption, map_in_words(rows))]
    for part, canvas in enumerate(canvases[1:], 1):
        pictures.append(canvas.picture(f"The whole turn map, part {part} of {len(canvases) - 1}.", caption))
    return tuple(pictures)


def _signs_in_words(rows: RowSet) -> str:
    """Return what the signs of the map mean, those that it has."""
    drawn = {turn for row in rows.rows for turn in row.turns} | {*rows.top, *rows.bottom}
    told = [words for turn, words in _SIGNS.items() if turn in drawn]
    sentence = ", ".join(told)
    return f"{sentence[:1].upper()}{sentence[1:]}."


def map_in_words(rows: RowSet) -> str:
    """Return every row in words, one a line, in the order of sewing."""
    return "\n".join(f"Row {row.number}, from the {row.start}: {spoken_row(row.words)}." for row in rows.rows)


def sketch_turn_map(rows: RowSet, count: int, style: Style, key: str) -> tuple[Canvas, ...]:
    """Return the canvases of the map, one a picture."""
    canvases = []
    for page, blocks in enumerate(plan_turn_map(rows, count), 1):
        line = text_height(style.small)
        gutter = _gutter(rows, style)
        legend = text_width(LEGEND, style.small, font=style.font)
        width = gutter + max(gutter, legend, *(gutter + float(block.cell) * len(block.tucks) for block in blocks))
        heights = [_block_height(block, line) for block in blocks]
        canvas = Canvas(width, sum(heights), style, key + (f" {page}" if page > 1 else ""))
        top = 0.0
        for block, height in zip(blocks, heights, strict=True):
            _draw_block(canvas, block, (gutter, top), rows)
            top += height
        canvases.append(canvas)
    return tuple(canvases)


def _gutter(rows: RowSet, style: Style) -> float:
    """Return the room on either side for a dot and a row's number, and for the name of an edge that holds the tucks."""
    number = text_width(str(len(rows.rows)), style.small, bold=True, font=style.font)
    edge = text_width("bottom", style.small, font=style.font) if rows.top or rows.bottom else 0.0
    return max(DOT + 0.08 + number, 0.08 + edge) + 0.02


def _block_height(block: MapBlock, line: float) -> float:
    return 3.2 * line + float(ROW_HEIGHT) * len(block.rows)


def _draw_block(canvas: Canvas, block: MapBlock, corner: tuple[float, float], rows: RowSet) -> None:
    line = text_height(canvas.style.small)
    left, top = corner[0], corner[1] + 1.5 * line
    cell, high = float(block.cell), float(ROW_HEIGHT)
    _draw_cloth(canvas, block, (left, top), rows)
    numbered = _numbered(block, canvas.style)
    for place, tuck in enumerate(block.tucks):
        if tuck in numbered:
            canvas.text(str(tuck), left + (place + 0.5) * cell, top - 0.7 * line)
    for place, row in enumerate(block.rows):
        y = top + (place + 0.5) * high
        if row is None:
            canvas.text("and so on", left + cell * len(block.tucks) / 2, y, backing=canvas.style.cloth)
        else:
            _draw_row(canvas, block, row, (left, y))


def _numbered(block: MapBlock, style: Style) -> set[int]:
    """Return which tuck numbers are written: the ends and every fifth that stands clear of them."""
    tucks = [tuck for tuck in block.tucks if tuck is not None]
    gap = [place for place, tuck in enumerate(block.tucks) if tuck is None]
    ends = {1, tucks[-1], tucks[0]}
    if gap:
        ends |= {tucks[gap[0] - 1], tucks[gap[0]]}
    clear = text_width("000", style.small, font=style.font) / float(block.cell)
    return ends | {tuck for tuck in tucks if tuck % EVERY == 0 and all(abs(tuck - end) > clear for end in ends)}


def _draw_cloth(canvas: Canvas, block: MapBlock, corner: tuple[float, float], rows: RowSet) -> None:
    left, top = corner
    cell, high = float(block.cell), float(ROW_HEIGHT)
    right, bottom = left + cell * len(block.tucks), top + high * len(block.rows)
    canvas.rectangle((left, top), (right, bottom), fill=canvas.style.cloth, pen=canvas.style.measure)
    for place in range(1, len(block.tucks)):
        if block.tucks[place - 1] is not None and (block.tucks[place - 1] or 0) % EVERY == 0:
            canvas.line(((left + place * cell, top), (left + place * cell, bottom)), canvas.style.measure)
    repeat = block.repeat_corner(rows)
    if repeat is not None and (repeat[0] < len(block.tucks) or repeat[1] < len(block.rows)):
        first = next(place for place, row in enumerate(block.rows) if row is not None and row.number == 1)
        start = top + first * high
        canvas.rectangle((left, start), (left + repeat[0] * cell, start + repeat[1] * high), pen=canvas.style.cut)
        canvas.text(LEGEND, left, bottom + 0.9 * text_height(canvas.style.small), hold="left")


def _draw_row(canvas: Canvas, block: MapBlock, row: MapRow, place: tuple[float, float]) -> None:
    left, y = place
    cell = float(block.cell)
    right = left + cell * len(block.tucks)
    for column, tuck in enumerate(block.tucks):
        if tuck is not None:
            _draw_turn(
                canvas, row.turns[tuck - 1], (left + (column + 0.5) * cell, y), min(cell, float(ROW_HEIGHT)) * 0.34
            )
    style = canvas.style
    if row.start is None:
        canvas.text(row.label, left - 0.08, y, hold="right", colour=style.quiet)
        return
    begins = block.tucks[0] == 1 if row.start == "left" else block.tucks[-1] == len(row.turns)
    if begins:
        dot, tip = (left - DOT, left - 0.05) if row.start == "left" else (right + DOT, right + 0.05)
        canvas.dots([(dot, y)], 0.035)
        canvas.arrow((dot, y), (tip, y), style.outline, size=0.07)
    for side in ("left", "right"):
        here = begins and side == row.start
        away = DOT + 0.08 if here else 0.08
        x = left - away if side == "left" else right + away
        canvas.text(row.label, x, y, hold="right" if side == "left" else "left", bold=here)


def _draw_turn(canvas: Canvas, turn: Turn, at: tuple[float, float], half: float) -> None:
    x, y = at
    style = canvas.style
    if turn is Turn.UPRIGHT:
        canvas.line(((x, y - half), (x, y + half)), style.cut)
    elif turn is Turn.RIGHT:
        canvas.shape(((x - half, y - half), (x + half, y), (x - half, y + half)), style.ink)
    else:
        canvas.line(((x + half, y - half), (x - half, y), (x + half, y + half)), style.outline, closed=True)

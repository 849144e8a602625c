"""The turn itself, the hardest act: the turns of a panel's rows come in, hands, awl and needle go out.

Seen from where the sewer sits. The awl lies with its side on the tuck; its point looks away from her and from her hand.
"""

from __future__ import annotations

import math

from generator.calculation.worked import RowSet
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.labels import Point
from generator.drawing.needle import draw_needle
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style
from generator.drawing.turn_picture_plan import turn_columns

_LEAST, _BEST, _MOST = (high / MILLIMETRES for high in (27.0, 38.0, 50.0))
_BETWEEN, _WIDEST = 0.12, 2.6
_TOWARD = "T: lay it toward you. Hold it with the awl’s side. Sew over it."
_AWAY = "A: stop, needle down. Lay it away from you. Hold it with the awl’s side. Sew on."
_MEETING = "A: stop at the fold of T, needle down. Lay A against it. Sew on."


def told_turns(rows: RowSet) -> tuple[tuple[str, str], ...]:
    """Return what is drawn, T or A, with its words: each that the rows have, A meeting T where two folds face."""
    columns = turn_columns(rows)
    letters = {letter for column in columns for letter in column.letters}
    meeting = any(
        pair == ("T", "A") for column in columns for pair in zip(column.letters, column.letters[1:], strict=False)
    )
    told = {"T": _TOWARD, "A": _MEETING if meeting else _AWAY}
    return tuple((letter, words) for letter, words in told.items() if letter in letters)


def has_turns(rows: RowSet | None) -> bool:
    """Return whether rows turn any tuck."""
    return rows is not None and bool(told_turns(rows))


def _rows(worksheet: Worksheet, name: str) -> RowSet:
    rows = worksheet.panels[name].rows
    assert rows is not None
    return rows


def _width(count: int, width: float) -> float:
    """Return how wide each of the drawings is [in]."""
    return min(_WIDEST, (width - _BETWEEN * (count - 1)) / count)


def heights_of_turning(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the picture of the turn can be."""
    return Heights.of_inches(_LEAST, _BEST, _MOST)


def draw_turning(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return how a tuck is turned under the needle."""
    rows = _rows(worksheet, name)
    canvas = canvas_of(size, style, f"turning {name}")
    sketch_turning(canvas, rows)
    told = " ".join(words for _, words in told_turns(rows))
    alt = (
        "The turn as you see it from your seat: the needle at the top, your left hand flat on the cloth and well away "
        f"from it, the awl in your right hand with its side on the tuck. {told}"
    )
    return canvas.picture(alt, told)


def sketch_turning(canvas: Canvas, rows: RowSet) -> None:
    """Draw each sort of turn beside the other."""
    told = told_turns(rows)
    wide = _width(len(told), canvas.width)
    start = (canvas.width - wide * len(told) - _BETWEEN * (len(told) - 1)) / 2
    meets = any(words == _MEETING for _, words in told)
    for place, (letter, _) in enumerate(told):
        left = start + place * (wide + _BETWEEN)
        _Turn(canvas, (left, 0.01), (wide, canvas.height - 0.02)).draw(letter, meets=meets)


class _Turn:
    """One turn on a canvas: places in its frame are shares of its width and height."""

    def __init__(self, canvas: Canvas, corner: Point, size: Point) -> None:
        self.canvas, self.style = canvas, canvas.style
        self.corner, self.size = corner, size

    def at(self, across: float, down: float) -> Point:
        """Return the place on paper of a place in the frame."""
        return self.corner[0] + across * self.size[0], self.corner[1] + down * self.size[1]

    def draw(self, letter: str, *, meets: bool) -> None:
        """Draw the frame, the row, the tucks, the needle, then awl and hand over them."""
        canvas, style = self.canvas, self.style
        canvas.rectangle(self.at(0, 0), self.at(1, 1), fill=style.paper, pen=style.outline)
        canvas.line((self.at(0.55, 0.36), self.at(0.55, 1)), style.tack)
        canvas.line((self.at(0.55, 0), self.at(0.55, 0.1)), style.stitch)
        standing = (0.74, 0.9)
        if letter == "T":
            self._flap("T", 0.4, 0.6, 0.37)
        else:
            if meets:
                self._flap("T", 0.16, 0.36, 0.2)
            self._flap("A", *((0.375, 0.58) if meets else (0.45, 0.65)), 0.37)
        for down in standing:
            canvas.lines([(self.at(0, y), self.at(1, y)) for y in (down - 0.012, down + 0.012)], style.outline)
        foot = self.size[1] * 0.3
        draw_needle(canvas, self.at(0.55, 0.38), foot)
        self._awl((0.7, 0.44), (0.93, 0.92))
        self._hand()

    def _flap(self, letter: str, high: float, low: float, told: float) -> None:
        """Draw a turned tuck between two levels: its stitching, its fold, its letter at ``told`` of the width."""
        canvas, style = self.canvas, self.style
        toward = letter == "T"
        canvas.rectangle(self.at(0.0, high), self.at(1, low), fill=style.paper, pen=style.outline)
        fold, seam = (low, high) if toward else (high, low)
        canvas.rectangle(self.at(0, fold - 0.012), self.at(1, fold + 0.012), fill=style.ink)
        inside = 0.03 if toward else -0.03
        canvas.line((self.at(0, seam + inside), self.at(1, seam + inside)), style.stitch)
        middle = (high + low) / 2 + inside / 3
        canvas.text(letter, *self.at(told, middle), size=style.text, bold=True, backing=style.paper)
        reach = (low - high) * 0.24 * (1 if toward else -1)
        canvas.arrow(
            self.at(told + 0.08, middle - reach), self.at(told + 0.08, middle + reach), style.outline, size=0.07
        )

    def _awl(self, point: Point, handle: Point) -> None:
        """Draw an awl: a thin tapered blade and a thick handle."""
        tip, end = self.at(*point), self.at(*handle)
        along = (end[0] - tip[0], end[1] - tip[1])
        length = math.hypot(*along)
        side = (-along[1] / length, along[0] / length)
        neck = (tip[0] + along[0] * 0.55, tip[1] + along[1] * 0.55)
        blade = [tip, *((neck[0] + side[0] * away, neck[1] + side[1] * away) for away in (0.022, -0.022))]
        self.canvas.area(blade, self.style.ink)
        self.canvas.area(capsule(neck, end, 0.055), self.style.paper, self.style.outline)

    def _hand(self) -> None:
        """Draw the left hand, flat, its fingers on the tuck and well away from the needle."""
        canvas, style = self.canvas, self.style
        unit = min(self.size)
        palm = (self.at(0, 0.93)[0] + 0.17 * unit, self.at(0, 0.88)[1])
        ends = [(-0.09, -0.34), (0.0, -0.38), (0.075, -0.36), (0.14, -0.28)]
        roots = [(-0.09, 0.0), (-0.03, -0.03), (0.03, -0.03), (0.08, 0.0)]
        wrist = self.at(0, 1)[1]
        canvas.area(_dome(palm, 0.115 * unit, wrist), style.paper, style.outline)
        thumb = capsule(
            (palm[0] + 0.06 * unit, palm[1] + 0.03 * unit), (palm[0] + 0.21 * unit, palm[1] - 0.08 * unit), 0.032 * unit
        )
        canvas.area(thumb, style.paper, style.outline)
        for root, end in zip(roots, ends, strict=True):
            start = (palm[0] + root[0] * unit, palm[1] + root[1] * unit)
            stop = (palm[0] + end[0] * unit * 0.9, palm[1] + end[1] * unit * 0.9)
            canvas.area(capsule(start, stop, 0.036 * unit), style.paper, style.outline)
        # The roots of the fingers are inside the hand.
        canvas.area(_dome((palm[0], palm[1] + 0.01 * unit), 0.1 * unit, wrist - 0.01), style.paper)


def _dome(centre: Point, radius: float, bottom: float, steps: int = 10) -> list[Point]:
    """Return the outline of the back of a hand: a half circle that goes on down to the wrist."""
    ways = [math.pi + math.pi * step / steps for step in range(steps + 1)]
    over = [(centre[0] + radius * math.cos(way), centre[1] + radius * math.sin(way)) for way in ways]
    return [(centre[0] - radius, bottom), *over, (centre[0] + radius, bottom)]


def capsule(start: Point, end: Point, radius: float, steps: int = 10) -> list[Point]:
    """Return the outline of a finger: a straight stretch with round ends."""
    angle = math.atan2(end[1] - start[1], end[0] - start[0])
    outline = []
    for centre, turn in ((end, angle - math.pi / 2), (start, angle + math.pi / 2)):
        for step in range(steps + 1):
            way = turn + math.pi * step / steps
            outline.append((centre[0] + radius * math.cos(way), centre[1] + radius * math.sin(way)))
    return outline

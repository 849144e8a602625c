"""Layers of cloth on paper: rectangles in inches of cloth and a scale come in, cloth with its two sides is drawn."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from generator.calculation.making_up.laid import opposite
from generator.drawing.canvas import Canvas
from generator.drawing.labels import Box, Point
from generator.drawing.seams.laid import Laid, is_hung
from generator.drawing.seams.lines import Line, at, length_of
from generator.drawing.style import Pen
from generator.drawing.tucked import draw_drawn_edge, draw_drawn_up, draw_tucks, gathered_share, gathers

# Nothing narrower than this can be read; what is too long for that is broken [in on paper].
LEAST, TEAR = 0.24, 0.12


@dataclass(frozen=True, slots=True)
class Paper:
    """Where cloth lies on paper: the corner of what is drawn, its scale, and what is left out of its length.

    ``gap`` is from where to where nothing is drawn [in on cloth], along x where ``upright`` is not set.
    """

    canvas: Canvas
    corner: Point
    origin: Point
    scale: float
    gap: tuple[float, float] = (0.0, 0.0)
    upright: bool = False

    def at(self, point: Point) -> Point:
        """Return the place of a point of the cloth on paper."""
        x, y = point[0] - self.origin[0], point[1] - self.origin[1]
        x, y = (x, self._torn(y)) if self.upright else (self._torn(x), y)
        return self.corner[0] + x * self.scale, self.corner[1] + y * self.scale

    def _torn(self, value: float) -> float:
        start, end = self.gap
        return value if value <= start else max(start, value - end + start)

    def shown(self, point: Point) -> Point | None:
        """Return the place of a point on paper, None in what is left out."""
        value = point[1] - self.origin[1] if self.upright else point[0] - self.origin[0]
        return None if self.gap[0] < value < self.gap[1] else self.at(point)

    def corners(self, box: Box) -> tuple[Point, Point, Point, Point]:
        """Return the corners of a rectangle on paper, from the upper left clockwise."""
        (left, top), (right, bottom) = self.at((box.left, box.top)), self.at((box.right, box.bottom))
        return (left, top), (right, top), (right, bottom), (left, bottom)

    def line(self, line: Sequence[Point]) -> Line:
        """Return a line on paper."""
        return tuple(self.at(point) for point in line)

    def cloth(self, laid: Laid, *, turned_corner: float = 0.0) -> None:
        """Draw a piece: the wrong side hatched, tucks on the right side; one corner turned back where wanted [in]."""
        canvas, outline = self.canvas, self.canvas.style.outline
        upper_left, upper_right, lower_right, lower_left = self.corners(laid.cut)
        shape = [upper_left, upper_right, lower_right, lower_left]
        if laid.outline is not None:
            shape, turned_corner = [*self.line(laid.outline.cut)], 0.0
        if turned_corner:
            x, y = lower_right
            before, after = (x, y - turned_corner), (x - turned_corner, y)
            shape[2:3] = [before, after]
        if laid.right_side_up:
            canvas.area(shape, canvas.style.paper)
            with canvas.clipped(shape):
                self._tucks(laid)
            canvas.line(shape, outline, closed=True)
        else:
            canvas.hatched(shape, outline)
            self._drawn_up(laid)
        if turned_corner:
            canvas.area([before, (x - turned_corner, y - turned_corner), after], canvas.style.paper, outline)

    def _tucks(self, laid: Laid) -> None:
        left, top, right = laid.finished.left, laid.finished.top, laid.cut.right
        draw_tucks(
            self.canvas,
            laid.piece,
            # Of a piece that is folded only the upper half is seen.
            lambda point: self.shown((left + point[0], top + point[1])) if left + point[0] <= right else None,
            self.scale,
        )
        self._drawn_up(laid)

    def _drawn_up(self, laid: Laid) -> None:
        """Draw gathers or pleats from the edge that is sewn: the side ``at`` of what is below, or its own top."""
        if laid.outline is not None:
            self._gathered_round(laid)
            return
        upper_left, upper_right, lower_right, lower_left = self.corners(laid.finished)
        edges = {
            "top": (upper_left, upper_right),
            "right": (upper_right, lower_right),
            "bottom": (lower_right, lower_left),
            "left": (lower_left, upper_left),
        }
        # The lowest layer is drawn up where it has been laid as wide as its edge then is.
        wide, high = laid.finished.right - laid.finished.left, laid.finished.bottom - laid.finished.top
        fitting = (one for one in laid.piece.drawn if not laid.own and float(one.to) in (wide, high))
        drawn = laid.piece.drawn_at(laid.own) or next(fitting, None)
        if drawn is not None:
            side = laid.at or drawn.side
            start, end = edges[side]
            far = edges[opposite(side)][1]
            draw_drawn_edge(self.canvas, drawn, (start, end), (far[0] - start[0], far[1] - start[1]))
            return
        side = laid.at if laid.own == "top" else "top"
        start, end = edges[side]
        far = edges[opposite(side)][1]
        draw_drawn_up(self.canvas, laid.piece, (start, end), (far[0] - start[0], far[1] - start[1]))

    def _gathered_round(self, laid: Laid) -> None:
        """Draw gathers or pleats along a line, each on its own straight piece of it."""
        if not is_hung(laid.piece):
            return
        edge, far = (self.line(laid.edges[name]) for name in (laid.own, ""))
        count = gathers(laid.piece, length_of(edge))
        for place in range(count):
            part = (place + 0.5) / count
            start, end = (at(line, length_of(line) * part) for line in (edge, far))
            share = gathered_share(laid.piece, place)
            near = start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share
            self.canvas.line((start, near), Pen(self.canvas.style.ink, self.canvas.style.hairline))

    def torn(self, box: Box) -> None:
        """Draw where the middle of what is too long is left out, through all layers."""
        start, end = self.gap
        if start == end:
            return
        (left, top), _, (right, bottom), _ = self.corners(box)
        x, y = self.at((self.origin[0] + start, self.origin[1] + start))
        over, half = 0.05, TEAR / 2
        waves = [-0.02, 0.02] * 3
        if self.upright:
            steps = [left - over + (right - left + 2 * over) * place / 5 for place in range(6)]
            sides = [
                [(along, y + side * half + wave) for along, wave in zip(steps, waves, strict=True)] for side in (-1, 1)
            ]
        else:
            steps = [top - over + (bottom - top + 2 * over) * place / 5 for place in range(6)]
            sides = [
                [(x + side * half + wave, along) for along, wave in zip(steps, waves, strict=True)] for side in (-1, 1)
            ]
        self.canvas.area([*sides[0], *reversed(sides[1])], self.canvas.style.paper)
        self.canvas.lines(sides, self.canvas.style.measure)


def fitted(canvas: Canvas, box: Box, room: Box, keep: tuple[float, float], most: float = math.inf) -> Paper:
    """Return paper on which a rectangle of cloth fills its room as far as its proportions let it, in its middle.

    ``most`` is the largest scale, so that parts of one picture can be alike.

    One that would come out too narrow to read is drawn at a larger scale with a part of its length left out; ``keep``
    is what stays, from where to where along its longer side [in on cloth].
    """
    wide, high = box.right - box.left, box.bottom - box.top
    room_wide, room_high = room.right - room.left, room.bottom - room.top
    scale = min(room_wide / wide, room_high / high, most)
    gap, upright = (0.0, 0.0), high > wide
    shorter, longer, length = (wide, high, room_high) if upright else (high, wide, room_wide)
    if shorter * scale < LEAST:
        scale = min(LEAST / shorter, (room_wide if upright else room_high) / shorter)
        left_out = longer - (length - TEAR) / scale
        start = max(keep[1], (longer - left_out) * 0.66)
        gap = (start, start + left_out) if start + left_out < longer else (0.0, 0.0)
        scale = scale if gap[1] else min(room_wide / wide, room_high / high)
    kept = longer - (gap[1] - gap[0])
    paper = (shorter * scale, kept * scale) if upright else (kept * scale, shorter * scale)
    corner = (
        (room.left + room.right - paper[0]) / 2,
        (room.top + room.bottom - paper[1]) / 2,
    )
    return Paper(canvas, corner, (box.left, box.top), scale, gap, upright)

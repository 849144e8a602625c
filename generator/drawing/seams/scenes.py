"""What is drawn in the parts of a picture of a seam: layers laid, layers sewn, the work opened out or turned out."""

from __future__ import annotations

import math
from dataclasses import replace

from generator.calculation.worked_project import Worksheet
from generator.drawing.labels import Box, Point, text_height
from generator.drawing.seams import words
from generator.drawing.seams.boxes import FLAT, around
from generator.drawing.seams.laid import Laid, is_hung
from generator.drawing.seams.lines import OUT, Line, at, length_of, moved, outwards
from generator.drawing.seams.paper import Paper
from generator.drawing.seams.plan import SeamPlan

LINE = 1.25  # from line to line of words, in heights of a line
CORNER = 0.26  # of the shorter side of what is turned back at a corner
TICK, TOOTH = 0.07, 0.05


def layer_points(paper: Paper, plan: SeamPlan) -> tuple[Point | None, Point | None]:
    """Return a place on the upper layer and one on the lower layer where that shows; none on what is folded."""
    if plan.joined.folded:
        return None, None
    return paper.at(_upper_point(plan.over[-1])), _lower_point(paper, plan)


def _upper_point(laid: Laid) -> Point:
    """A place on the upper layer; on a strip that goes round in the middle of it."""
    over = laid.cut
    if laid.outline is None or not is_hung(laid.piece):
        return (over.left + over.right) / 2, over.top + (over.bottom - over.top) * 0.2
    edge = min(
        (at(laid.edges[laid.own], 0.0), at(laid.edges[laid.own], length_of(laid.edges[laid.own]) / 2)),
        key=lambda point: point[1],
    )
    return edge[0], edge[1] + float(laid.piece.finished_along) / 2


def _lower_point(paper: Paper, plan: SeamPlan) -> Point | None:
    """A place where the lower layer shows: in the turned corner, or in the middle of what is not covered."""
    over, base = around(one.cut for one in plan.over), around(one.cut for one in plan.below)
    if plan.covered and plan.over[-1].outline is not None:
        return None
    if plan.over[-1].outline is not None and is_hung(plan.over[-1].piece):
        return paper.at(((base.left + base.right) / 2, (base.top + base.bottom) / 2))
    if plan.covered:
        x, y = paper.corners(plan.over[-1].cut)[2]
        back = _corner(paper, plan) / 4
        _, _, (right, bottom), _ = paper.corners(base)
        return (x - back, y - back) if x - back < right and y - back < bottom else None
    free = [
        (over.right, base.top, base.right, base.bottom),
        (base.left, base.top, over.left, base.bottom),
        (base.left, over.bottom, base.right, base.bottom),
        (base.left, base.top, base.right, over.top),
        *_between(plan),
    ]
    left, top, right, bottom = max(free, key=lambda box: max(box[2] - box[0], 0) * max(box[3] - box[1], 0))
    return paper.at(((left + right) / 2, (top + bottom) / 2))


def _between(plan: SeamPlan) -> list[tuple[float, float, float, float]]:
    """The room between two layers that lie at opposite sides of the lowest one."""
    sides = {one.at: one.cut for one in plan.over}
    base = plan.below[0].cut
    if {"left", "right"} <= set(sides):
        return [(sides["left"].right, base.top, sides["right"].left, base.bottom)]
    if {"top", "bottom"} <= set(sides):
        return [(base.left, sides["top"].bottom, base.right, sides["bottom"].top)]
    return []


def _corner(paper: Paper, plan: SeamPlan) -> float:
    if not plan.covered:
        return 0.0
    over = plan.over[-1].cut
    return CORNER * min(over.right - over.left, over.bottom - over.top) * paper.scale


def lay(paper: Paper, plan: SeamPlan, worksheet: Worksheet, *, corner: bool = True) -> None:
    """Draw the layers from below; the corner of the uppermost is turned back where it hides all."""
    for laid in plan.below:
        paper.cloth(laid)
    for place, laid in enumerate(plan.over, 1):
        last = corner and place == len(plan.over)
        paper.cloth(laid, turned_corner=_corner(paper, plan) if last else 0.0)


def sew(paper: Paper, plan: SeamPlan, worksheet: Worksheet) -> None:
    """Draw the layers with their seam, and the opening between two ticks."""
    lay(paper, plan, worksheet, corner=False)
    _seam(paper, plan, worksheet, 0.0)


def sew_and_show(paper: Paper, plan: SeamPlan, worksheet: Worksheet) -> None:
    """Draw the layers with their seam and with a corner turned back."""
    lay(paper, plan, worksheet)
    _seam(paper, plan, worksheet, _corner(paper, plan))


def _seam(paper: Paper, plan: SeamPlan, worksheet: Worksheet, corner: float) -> None:
    canvas = paper.canvas
    inset = 0.05 if words.is_basted(plan) else 0.0
    for _, part in plan.sewn:
        canvas.line(moved(_short(paper.line(part), corner, plan, paper), -inset), canvas.style.stitch)
    for _, gap in plan.gaps:
        _ticks(paper, gap)
    if plan.opening is not None:
        side, gap = plan.opening
        _opening(paper, plan)
        if words.opening_beside(plan):
            edge = paper.at((plan.whole.left if side == "left" else plan.whole.right, (gap[0][1] + gap[1][1]) / 2))
            out = LINE * text_height(canvas.style.small) * 0.55 + 0.05
            x = edge[0] - out if side == "left" else edge[0] + out
            canvas.text(words.opening_words(plan, worksheet), x, edge[1], turned=True)


def _opening(paper: Paper, plan: SeamPlan) -> None:
    """Draw both ends of the opening, and the teeth of its zip."""
    if plan.opening is None or plan.joined.opening is None:
        return
    gap = plan.opening[1]
    _ticks(paper, gap)
    if plan.joined.opening.zipped:
        canvas, line = paper.canvas, paper.line(gap)
        canvas.line(line, canvas.style.outline)
        teeth = max(2, round(length_of(line) / TOOTH))
        for place in (length_of(line) * tooth / teeth for tooth in range(1, teeth)):
            canvas.line(_across(line, place, TOOTH / 2), canvas.style.outline)


def _ticks(paper: Paper, gap: Line) -> None:
    """Draw both ends of an opening."""
    line = paper.line(gap)
    for place in (0.0, length_of(line)):
        paper.canvas.line(_across(line, place, TICK), paper.canvas.style.cut)


def _across(line: Line, place: float, half: float) -> Line:
    """A short line across another at a place along it."""
    (x, y), (right, down) = at(line, place), outwards(line, place)
    return (x - right * half, y - down * half), (x + right * half, y + down * half)


def _short(segment: Line, corner: float, plan: SeamPlan, paper: Paper) -> Line:
    """A line without what would run over the corner that is turned back."""
    if not corner or plan.over[-1].outline is not None:
        return segment
    x, y = paper.corners(plan.over[-1].cut)[2]
    (left, top), (right, bottom) = segment
    if abs(right - left) < abs(bottom - top) and x - right > corner / 2:
        return segment
    ends = []
    for end_x, end_y in segment:
        over = max(0.0, corner - (x - end_x) - (y - end_y))
        upright = abs(right - left) < abs(bottom - top)
        ends.append((end_x, end_y - over) if upright else (end_x - over, end_y))
    return ends[0], ends[1]


def done(paper: Paper, plan: SeamPlan) -> None:
    """Draw the work opened out, or turned out with an arrow through the place where it is turned."""
    if plan.tube:
        _ring(paper, plan)
        return
    for laid in plan.opened:
        paper.cloth(laid)
    if not plan.joined.turned:
        return
    halves = [laid for laid in plan.over if len(laid.piece.parts) > 1]
    if halves:
        _lap(paper, plan)
        return
    side, gap = plan.way_out
    line = paper.line(gap)
    _opening(paper, plan)
    _way_out(paper, side, at(line, length_of(line) / 2))


def _way_out(paper: Paper, side: str, middle: Point) -> None:
    """Draw an arrow from inside the work to outside, through the middle of the opening."""
    right, down = OUT[side]
    start, end = ((middle[0] + right * out, middle[1] + down * out) for out in (-0.22, 0.14))
    box = Box(min(start[0], end[0]), min(start[1], end[1]), max(start[0], end[0]), max(start[1], end[1])).grown(0.05)
    corners = ((box.left, box.top), (box.right, box.top), (box.right, box.bottom), (box.left, box.bottom))
    paper.canvas.area(corners, paper.canvas.style.paper)
    paper.canvas.arrow(start, end, replace(paper.canvas.style.outline, width=1.8), size=0.11)


def _lap(paper: Paper, plan: SeamPlan) -> None:
    """Draw a back in two halves, right side out, and the way out between them."""
    canvas, style = paper.canvas, paper.canvas.style
    whole = around(laid.finished for laid in plan.over)
    hidden, seen = sorted(plan.over, key=lambda laid: laid.finished.left)
    canvas.area(paper.corners(whole), style.paper, style.outline)
    inner, edge = seen.finished.left, hidden.finished.right
    canvas.line(paper.line(((inner, whole.top), (inner, whole.bottom))), style.finish)
    canvas.line(paper.line(((edge, whole.top), (edge, whole.bottom))), style.outline)
    at = paper.at((edge, (whole.top + whole.bottom) / 2))
    _way_out(paper, "right", at)


def _ring(paper: Paper, plan: SeamPlan) -> None:
    """Draw a ring standing, or lying where its seam runs from side to side; inside it the wrong side is seen."""
    canvas, laid = paper.canvas, plan.opened[0]
    box = laid.finished
    paper.cloth(replace(laid, cut=box))
    (left, top), (right, _), (_, bottom), _ = paper.corners(box)
    upright = plan.joined.sides[0] in FLAT
    if upright:
        middle, reach, flat = ((left + right) / 2, top), (right - left) / 2, min(0.09, (bottom - top) / 5)
        around_it = _ellipse(middle, reach, flat)
    else:
        middle, reach, flat = (right, (top + bottom) / 2), (bottom - top) / 2, min(0.09, (right - left) / 5)
        around_it = [(middle[0] + (y - 0.0), middle[1] + x) for x, y in _ellipse((0.0, 0.0), reach, flat)]
    canvas.hatched(around_it, canvas.style.outline)
    if plan.opening is not None and plan.joined.turned:
        _way_out(paper, plan.opening[0], paper.at(((box.left + box.right) / 2, getattr(box, plan.opening[0]))))


def _ellipse(middle: Point, wide: float, high: float) -> list[Point]:
    around_it = [math.tau * step / 40 for step in range(40)]
    return [(middle[0] + wide * math.cos(angle), middle[1] + high * math.sin(angle)) for angle in around_it]

"""The flat panel, ready to be marked: a worksheet comes in, pictures with every fold mark go out."""

from __future__ import annotations

import math
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

from generator.calculation.marked_edges import marked_edges
from generator.calculation.striped import PanelStripes
from generator.calculation.worked import Panel, TuckSet
from generator.calculation.worked_piece import Part, Piece, Straight
from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.row_bulk import row_ends
from generator.drawing.canvas import Canvas
from generator.drawing.cloth_colour import cloth_colour, pale
from generator.drawing.flat_cloth_plan import ARROW_GAP, FlatCloth, FlatPart, plan_flat_cloth, row_label
from generator.drawing.labels import spread, text_height, text_width
from generator.drawing.picture import Picture
from generator.drawing.style import Style
from generator.lengths import Edition, write_length

PAGE_HEIGHT = 8.8
TICK, LEADER = 0.1, 0.07
EVERY = 5
PALE_STRIPES, MOST_BANDS = 0.62, 500
FROM_LEFT, FROM_TOP = "the left cut edge", "the top cut edge"


def draw_flat_cloth(worksheet: Worksheet, name: str, style: Style) -> tuple[Picture, ...]:
    """Return the flat cloth of a tucked panel: cut edge, marks on two edges, rows, joins and grain."""
    panel, edition = worksheet.panels[name], worksheet.edition
    told = (marked_edges(panel, edition), FROM_LEFT)
    return _pictures(worksheet.pieces[name], panel, edition, style, told)


def draw_cross_folds(worksheet: Worksheet, name: str, style: Style) -> tuple[Picture, ...]:
    """Return the panel with its first tucks sewn and turned a quarter, as its cross tucks are marked; else nothing."""
    panel = worksheet.panels[name]
    if panel.cross is None or not panel.cross.count:
        return ()
    turned, crossed = turned_panel(worksheet.pieces[name], panel, panel.cross)
    told = (marked_edges(panel, worksheet.edition, cross=True), FROM_TOP)
    return _pictures(turned, crossed, worksheet.edition, style, told)


def turned_panel(piece: Piece, panel: Panel, cross: TuckSet) -> tuple[Piece, Panel]:
    """Return the panel with its first set of tucks sewn, turned so that the cross tucks run up and down."""
    quarter = {"left": "top", "right": "bottom", "top": "right", "bottom": "left"}
    edges = {side: piece.edges[before] for side, before in quarter.items() if before in piece.edges}
    grain = {"along": "across", "across": "along"}.get(piece.grain, piece.grain)
    part = Part(Straight(), cross.cut, panel.across.sewn, cross.finished, panel.across.finished, edges)
    turned = replace(piece, parts=(part,), edges=edges, grain=grain)  # type: ignore[arg-type]
    return turned, Panel(cross)


def _pictures(piece: Piece, panel: Panel, edition: Edition, style: Style, told: tuple[str, str]) -> tuple[Picture, ...]:
    """The pictures of one set of tucks; ``told`` are the edges that bear the marks and the one they are read from."""
    marked, edge = told
    tucks = panel.across
    canvases = sketch_flat_cloth(piece, panel, edition, style, edge=edge)
    size = f"{write_length(tucks.cut, edition)} by {write_length(piece.cut_along, edition, unit=True)}"
    state = "lying flat" if edge == FROM_LEFT else "with its first tucks sewn, turned a quarter"
    alt = f"The {piece.label} {state}, {size}, with {_marks_in_words(panel, edition, edge)}."
    caption = (
        f"Mark every fold on {marked}, always measuring from {edge}. "
        "Long dashes are folds"
        + (", dots the finished edge" if _has_finished_edge(piece, panel) else "")
        + (", dash-dot lines the tack rows." if panel.rows else ".")
        + (" The bands are the stripes of the cloth." if panel.stripes else "")
        + ("" if plan_flat_cloth(piece, panel, edition, style).to_scale else " Up and down is not drawn to scale.")
    )
    text = f"Fold marks from {edge}: " + ", ".join(write_length(at, edition) for at in tucks.marks) + "."
    return tuple(canvas.picture(alt, caption, text if place == 0 else "") for place, canvas in enumerate(canvases))


def _has_finished_edge(piece: Piece, panel: Panel) -> bool:
    """Whether a dotted line is drawn: where an allowance ends that no draw-in moves."""
    beside = panel.across.left_allowance or panel.across.right_allowance
    ends = [piece.edges[side].allowance for side in ("top", "bottom") if side in piece.edges]
    return bool(beside or (any(ends) and not panel.trim_along))


def _marks_in_words(panel: Panel, edition: Edition, edge: str) -> str:
    tucks = panel.across
    if not tucks.count:
        return "no fold marks"
    first = write_length(tucks.marks[0], edition, unit=True)
    if tucks.count == 1:
        return f"one fold mark {first} from {edge}"
    last = write_length(tucks.marks[-1], edition, unit=True)
    return f"{tucks.count} fold marks, the first {first} and the last {last} from {edge}"


def sketch_flat_cloth(
    piece: Piece, panel: Panel, edition: Edition, style: Style, *, edge: str = FROM_LEFT
) -> tuple[Canvas, ...]:
    """Return the canvases of the diagram, as many as pages are needed."""
    plan = plan_flat_cloth(piece, panel, edition, style)
    line = text_height(style.small)
    block = _block_height(plan, line)
    head = 1.6 * line
    each = max(1, math.floor((PAGE_HEIGHT - head) / block))
    canvases = []
    for page, first in enumerate(range(0, len(plan.parts), each), 1):
        shown = plan.parts[first : first + each]
        key = f"{'flat cloth' if edge == FROM_LEFT else 'cross folds'} {piece.name}" + (f" {page}" if page > 1 else "")
        canvas = Canvas(float(plan.width), head + block * len(shown), style, key)
        unit = {"in": "inches", "cm": "centimetres"}[edition.unit]
        canvas.text(f"{unit.capitalize()} from {edge}", float(plan.left), line / 2, hold="left")
        for place, part in enumerate(shown):
            _DrawnPart(canvas, plan, part, head + block * place).draw(piece, panel, edition)
        canvases.append(canvas)
    return tuple(canvases)


def _block_height(plan: FlatCloth, line: float) -> float:
    titled = 1.4 * line if len(plan.parts) > 1 else 0.0
    return titled + 2.4 * line + LEADER + float(plan.height) + 3.4 * line


class _DrawnPart:
    """One part of the cloth on a canvas, its block beginning at ``top``."""

    def __init__(self, canvas: Canvas, plan: FlatCloth, part: FlatPart, top: float) -> None:
        self.canvas, self.plan, self.part = canvas, plan, part
        self.style = canvas.style
        self.line = text_height(self.style.small)
        self.several = len(plan.parts) > 1
        self.block_top = top
        self.top = top + (1.4 * self.line if self.several else 0.0) + 2.4 * self.line + LEADER
        self.bottom = self.top + float(plan.height)
        self.left, self.right = self.x(part.start), self.x(part.end)

    def x(self, at: Fraction) -> float:
        """Return the place on paper of a place across the cloth."""
        return float(self.plan.x(self.part, at))

    def y(self, at: Fraction) -> float:
        """Return the place on paper of a place down the cloth."""
        return self.top + float(at * self.plan.scale_along)

    def draw(self, piece: Piece, panel: Panel, edition: Edition) -> None:
        """Draw everything, cloth first."""
        self.cloth(panel)
        self.finished_edges(piece, panel)
        self.rows(panel, edition)
        self.marks()
        self.joins(edition)
        self.grain(piece, panel)
        self.sizes(piece, panel, edition)
        if self.several:
            number = self.plan.parts.index(self.part) + 1
            self.canvas.text(
                f"Part {number} of {len(self.plan.parts)}",
                self.left,
                self.block_top + self.line * 0.6,
                hold="left",
                bold=True,
            )

    def cloth(self, panel: Panel) -> None:
        """Draw the cloth, with a torn edge where it goes on."""
        starts, ends = self.part.start == 0, self.part.end == panel.across.cut
        left = [(self.left, self.top), (self.left, self.bottom)] if starts else self._torn(self.left)
        right = [(self.right, self.top), (self.right, self.bottom)] if ends else self._torn(self.right)
        self.canvas.area([*left, *reversed(right)], self.style.cloth)
        if panel.stripes is not None:
            with self.canvas.clipped([*left, *reversed(right)]):
                self.stripes(panel.stripes)
        pen = self.style.cut
        self.canvas.lines([(left[0], right[0]), (left[-1], right[-1])], pen)
        self.canvas.line(left, pen if starts else self.style.measure)
        self.canvas.line(right, pen if ends else self.style.measure)

    def stripes(self, found: PanelStripes) -> None:
        """Fill the stripes of the cloth, pale, so that marks and words stand out; too many are left out."""
        if (self.part.end - self.part.start) * len(found.stripes) > MOST_BANDS * found.repeat:
            return
        at = self.part.start - (found.start + self.part.start) % found.repeat
        while at < self.part.end:
            for stripe in found.stripes:
                ends = [(self.x(at), self.top), (self.x(at + stripe.width), self.bottom)]
                self.canvas.rectangle(*ends, fill=pale(cloth_colour(stripe.colour), PALE_STRIPES))
                at += stripe.width

    def _torn(self, x: float) -> list[tuple[float, float]]:
        steps = 8
        height = (self.bottom - self.top) / steps
        return [(x + (0.04 if step % 2 else -0.04), self.top + step * height) for step in range(steps + 1)]

    def finished_edges(self, piece: Piece, panel: Panel) -> None:
        """Draw dotted lines where the allowances end; up and down only where no draw-in moves them."""
        tucks, pen = panel.across, self.style.finish
        for at, allowance in (
            (tucks.left_allowance, tucks.left_allowance),
            (tucks.right_edge, tucks.right_allowance),
        ):
            if allowance and self.part.start <= at <= self.part.end:
                self.canvas.line(((self.x(at), self.top), (self.x(at), self.bottom)), pen)
        if panel.trim_along:
            return
        for name in ("top", "bottom"):
            allowance = piece.edges[name].allowance if name in piece.edges else Fraction(0)
            if allowance:
                inset = self.y(allowance) - self.top
                y = self.top + inset if name == "top" else self.bottom - inset
                self.canvas.line(((self.left, y), (self.right, y)), pen)

    def rows(self, panel: Panel, edition: Edition) -> None:
        """Draw tack rows with their measures from the top cut edge, in the gutter on the left."""
        if panel.rows is None:
            return
        rows = panel.rows.rows
        first, last = (min(max(at, self.part.start), self.part.end) for at in row_ends(panel.across, edition))
        if first < last:
            levels = [self.y(row.ruled) for row in rows]
            self.canvas.lines([((self.x(first), y), (self.x(last), y)) for y in levels], self.style.tack)
        step = max(1, math.ceil(len(rows) * self.line / (self.bottom - self.top)))
        told = rows[::step]
        wanted = [self.y(row.ruled) for row in told]
        places = spread(wanted, [self.line] * len(told), self.top - self.line / 2, self.bottom + self.line / 2)
        for row, y in zip(told, places or wanted, strict=True):
            end = self.left - 0.1
            self.canvas.text(
                row_label(row.number, row.ruled, edition), end - 0.02, y, hold="right", colour=self.style.accent
            )
            self.canvas.line(((end, y), (self.left, self.y(row.ruled))), self.style.measure)

    def marks(self) -> None:
        """Draw fold lines, ticks on both edges, measures above and tuck numbers below."""
        canvas, style = self.canvas, self.style
        numbered = self._numbers_shown()
        for mark in self.part.marks:
            x = float(mark.x)
            canvas.line(((x, self.top), (x, self.bottom)), style.fold)
            pen = style.cut if mark.ends else style.outline
            canvas.lines([((x, y - TICK / 2), (x, y + TICK / 2)) for y in (self.top, self.bottom)], pen)
            y = self.top - LEADER - self.line * (0.6 + 1.2 * mark.level)
            canvas.line(((x, y + self.line * 0.6), (x, self.top - TICK / 2)), style.measure)
            canvas.text(mark.label, x, y, bold=mark.ends)
            if mark.tuck in numbered:
                canvas.text(str(mark.tuck), x, self.bottom + TICK / 2 + self.line * 0.6, bold=mark.ends)

    def _numbers_shown(self) -> set[int]:
        """Return all tuck numbers where they stand clear, else every fifth with the first and the last."""
        marks = self.part.marks
        widest = text_width("000", self.style.small, bold=True)
        close = any(float(after.x - before.x) < widest for before, after in pairwise(marks))
        if not close:
            return {mark.tuck for mark in marks}
        ends = {mark.tuck for mark in marks if mark.ends}
        return ends | {
            mark.tuck for mark in marks if mark.tuck % EVERY == 0 and all(abs(mark.tuck - end) > 2 for end in ends)
        }

    def joins(self, edition: Edition) -> None:
        """Draw joins between breadths with their measure along them."""
        for join in self.part.joins:
            x, middle = self.x(join.at), (self.top + self.bottom) / 2
            self.canvas.line(((x, self.top), (x, self.bottom)), self.style.join)
            words = f"join {write_length(join.at, edition)}"
            self.canvas.text(words, x, middle, turned=True, backing=self.style.cloth)

    def grain(self, piece: Piece, panel: Panel) -> None:
        """Draw an arrow with the grain, in the widest gap that no join crosses."""
        if piece.grain not in ("along", "across") or self.part is not self.plan.parts[0]:
            return
        tucks = panel.across
        edges = max(self.part.start, tucks.left_allowance), min(self.part.end, tucks.right_edge)
        places = [self.x(edges[0]), *(float(mark.x) for mark in self.part.marks), self.x(edges[1])]
        joins = [self.x(join.at) for join in panel.joins]
        gaps = [
            (round(after - before, 6), -place, (before + after) / 2)
            for place, (before, after) in enumerate(pairwise(places))
            if not any(before <= join <= after for join in joins)
        ]
        x = max(gaps)[2] if gaps else (self.left + self.right) / 2
        middle = self.top + (self.bottom - self.top) * 0.45
        half = min(0.45, (self.bottom - self.top) * 0.35)
        if piece.grain == "along":
            self.canvas.arrow((x, middle - half), (x, middle + half), self.style.outline, both=True)
        else:
            self.canvas.arrow((x - half, middle), (x + half, middle), self.style.outline, both=True)
        self.canvas.text("grain", x, middle, turned=piece.grain == "along", backing=self.style.cloth)

    def sizes(self, piece: Piece, panel: Panel, edition: Edition) -> None:
        """Write the cut size: across below the last part, along on the right of every part."""
        across = write_length(panel.across.cut, edition, unit=True)
        y = self.bottom + TICK / 2 + self.line * 2.1
        if not self.several:
            self.canvas.arrow((self.left, y), (self.right, y), self.style.measure, both=True)
            self.canvas.text(f"cut {across}", (self.left + self.right) / 2, y, backing=self.style.paper)
        elif self.part is self.plan.parts[-1]:
            self.canvas.text(f"cut {across} in all", self.right, y, hold="right")
        x, words = self.right + ARROW_GAP, f"cut {write_length(piece.cut_along, edition, unit=True)}"
        self.canvas.arrow((x, self.top), (x, self.bottom), self.style.measure, both=True)
        self.canvas.text(words, x, (self.top + self.bottom) / 2, turned=True, backing=self.style.paper)

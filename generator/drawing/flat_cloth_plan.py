"""Where everything lies in the diagram of a flat panel; a piece comes in, parts of the cloth with their marks go out.

A long panel is broken into parts, one below the other, all at one scale, until the measures of the fold marks stand
clear of each other on at most two levels. All places are exact; only the widths of words are measured.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from generator.calculation.worked import BreadthJoin, Panel
from generator.calculation.worked_piece import Piece
from generator.drawing.labels import levels, text_height, text_width
from generator.drawing.style import Style
from generator.lengths import Edition, write_length

WIDTH = Fraction(7)
SIXTEENTH = Fraction(1, 16)
LOW, HIGH_ALONE, HIGH_STACKED = Fraction(3, 5), Fraction(18, 5), Fraction(6, 5)
ARROW_GAP = 0.14


@dataclass(frozen=True, slots=True)
class PlacedMark:
    """A fold mark: its tuck, its place from the cut edge [in] and on paper [in], its label and level."""

    tuck: int
    at: Fraction
    x: Fraction
    label: str
    level: int
    ends: bool


@dataclass(frozen=True, slots=True)
class FlatPart:
    """A stretch of the cloth from ``start`` to ``end`` [in], with its marks and joins."""

    start: Fraction
    end: Fraction
    marks: tuple[PlacedMark, ...]
    joins: tuple[BreadthJoin, ...]


@dataclass(frozen=True, slots=True)
class FlatCloth:
    """The whole diagram: parts, scale across and along (paper to cloth), left end of the cloth and its height [in]."""

    parts: tuple[FlatPart, ...]
    scale: Fraction
    scale_along: Fraction
    left: Fraction
    right: Fraction
    height: Fraction

    @property
    def to_scale(self) -> bool:
        """Whether up and down is drawn at the same scale as across."""
        return self.scale == self.scale_along

    @property
    def width(self) -> Fraction:
        """The width of the picture [in]."""
        return self.left + max(part.end - part.start for part in self.parts) * self.scale + self.right

    def x(self, part: FlatPart, at: Fraction) -> Fraction:
        """Return the place on paper of a place on the cloth [in]."""
        return self.left + (at - part.start) * self.scale


def plan_flat_cloth(piece: Piece, panel: Panel, edition: Edition, style: Style) -> FlatCloth:
    """Return the diagram with the fewest parts whose measures stand clear."""
    left, right = _left_room(panel, edition, style), _right_room(panel, edition, style)
    room = WIDTH - left - right
    number = 1
    while True:
        cuts = part_cuts(panel.across.marks, panel.across.cut, number)
        scale = min(Fraction(1), room / max(end - start for start, end in cuts))
        parts = [_part(panel, cut, left, scale, (edition, style)) for cut in cuts]
        placed = tuple(part for part in parts if part is not None)
        if len(placed) == len(parts):
            break
        number += 1
    high = HIGH_ALONE if len(placed) == 1 else HIGH_STACKED
    height = min(max(piece.cut_along * scale, LOW), high)
    return FlatCloth(placed, scale, height / piece.cut_along, left, right, height)


def part_cuts(marks: Sequence[Fraction], cut: Fraction, number: int) -> tuple[tuple[Fraction, Fraction], ...]:
    """Return start and end of each part [in]: as even in marks as can be, broken midway between two marks.

    Examples
    --------
    >>> [[str(place) for place in part] for part in part_cuts((Fraction(1), Fraction(3), Fraction(5)), Fraction(6), 2)]
    [['0', '4'], ['4', '6']]
    """
    each = math.ceil(Fraction(len(marks), number)) if marks else 1
    breaks = [(marks[place - 1] + marks[place]) / 2 for place in range(each, len(marks), each)]
    places = [Fraction(0), *breaks, cut]
    return tuple(pairwise(places))


def mark_label(tuck: int, count: int, at: Fraction, edition: Edition) -> str:
    """Return the measure of a mark, with the first and the last called by name."""
    measure = write_length(at, edition)
    if tuck == 1:
        return f"first {measure}" if count > 1 else f"only fold {measure}"
    return f"last {measure}" if tuck == count else measure


def _part(
    panel: Panel, cut: tuple[Fraction, Fraction], left: Fraction, scale: Fraction, written: tuple[Edition, Style]
) -> FlatPart | None:
    edition, style = written
    start, end = cut
    tucks = panel.across
    inside = [(tuck, at) for tuck, at in enumerate(tucks.marks, 1) if start <= at < end]
    words = [mark_label(tuck, tucks.count, at, edition) for tuck, at in inside]
    at_end = [tuck in (1, tucks.count) for tuck, _ in inside]
    widths = [
        text_width(word, style.small, bold=bold, font=style.font) for word, bold in zip(words, at_end, strict=True)
    ]
    places = [left + (at - start) * scale for _, at in inside]
    found = levels([float(place) for place in places], widths, text_width("n", style.small, font=style.font))
    if found is None and len(inside) > 1:
        return None
    rows = zip(inside, places, words, found or (0,) * len(inside), at_end, strict=True)
    marks = tuple(PlacedMark(tuck, at, x, word, level, ends) for (tuck, at), x, word, level, ends in rows)
    return FlatPart(start, end, marks, tuple(join for join in panel.joins if start <= join.at < end))


def row_label(number: int, ruled: Fraction, edition: Edition) -> str:
    """Return what stands beside a tack row."""
    return f"row {number}: {write_length(ruled, edition)}"


def _left_room(panel: Panel, edition: Edition, style: Style) -> Fraction:
    """Return the room left of the cloth for the rows' labels, or the overhang of the first mark's label."""
    words = [row_label(row.number, row.ruled, edition) for row in panel.rows.rows] if panel.rows else []
    widths = [text_width(word, style.small, font=style.font) for word in words]
    rows = max(widths) + 1.5 * text_height(style.small) if widths else 0.0
    return round_to_sixteenth(max(rows, _overhang(panel, 0, edition, style), 1 / 8))


def _right_room(panel: Panel, edition: Edition, style: Style) -> Fraction:
    """Return the room right of the cloth for its length, or the overhang of the last mark's label."""
    measure = ARROW_GAP + text_height(style.small)
    return round_to_sixteenth(max(measure, _overhang(panel, -1, edition, style)))


def _overhang(panel: Panel, place: int, edition: Edition, style: Style) -> float:
    tucks = panel.across
    if not tucks.count:
        return 0.0
    words = mark_label(1 if place == 0 else tucks.count, tucks.count, tucks.marks[place], edition)
    return text_width(words, style.small, bold=True, font=style.font) / 2


def round_to_sixteenth(length: float) -> Fraction:
    """Return a measured room as the next whole sixteenth of an inch."""
    return math.ceil(length * 16) * SIXTEENTH

"""Where the flaps of a turned panel lie: a piece or a turn plan comes in, feet, angles and folds go out.

A tuck is a flap of its depth, hinged at its stitching. At every height its angle is counted from upright, to the right
positive. Rows and held edges hold it at a quarter turn; between two of them it swings evenly and smoothly; beyond the
last of them nothing holds it and it comes up to upright.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

import numpy as np
from numpy.typing import NDArray

from generator.calculation.shapes.released import Stretches
from generator.calculation.worked import Hand, Panel, Turn
from generator.calculation.worked_piece import Piece

Array = NDArray[np.float64]

QUARTER = np.pi / 2
# A half turn from side to side wants six depths of length, so a quarter turn to upright wants three.
FREE_RUN = 3
# How far a fold that is let go still shows, in depths; by eye.
FADE = 6
_SIGN = {Turn.LEFT: -1.0, Turn.UPRIGHT: 0.0, Turn.RIGHT: 1.0}


@dataclass(frozen=True, slots=True)
class HeldLine:
    """A line across the tucks that holds them: a tack row, or an edge (``sewn`` false) in which they are caught."""

    at: Fraction
    turns: tuple[Turn, ...]
    start: Hand
    sewn: bool = True


@dataclass(frozen=True, slots=True)
class Surface:
    """The finished panel as numbers [in]: its size, the foot and depth of every tuck, what holds them, from the top.

    ``cross`` holds (place from the top, depth) of tucks that run across the others and stand. ``stitched`` has where
    each tuck is stitched, from and to; empty where all are from edge to edge.
    """

    across: Fraction
    along: Fraction
    feet: tuple[Fraction, ...]
    depths: tuple[Fraction, ...]
    held: tuple[HeldLine, ...] = ()
    cross: tuple[tuple[Fraction, Fraction], ...] = ()
    stitched: tuple[Stretches, ...] = ()


def surface_of(piece: Piece) -> Surface:
    """Return the surface of a worked tucked panel; a row lies in the middle of the range in which it ends up."""
    if piece.panel is None:
        raise ValueError(f"'{piece.name}' has no tucks: it has no surface to draw")
    tucks, cross = piece.panel.across, piece.panel.cross
    return Surface(
        across=tucks.finished,
        along=piece.finished_along,
        feet=tucks.stitching,
        depths=tucks.depths,
        held=held_lines(piece.panel, piece.finished_along),
        cross=tuple(zip(cross.stitching, cross.depths, strict=True)) if cross else (),
        stitched=piece.panel.released.stitched if piece.panel.released is not None else (),
    )


def held_lines(panel: Panel, along: Fraction) -> tuple[HeldLine, ...]:
    """Return all that holds the tucks of a panel, from the top finished edge down; pressed ones lie from edge to edge.

    Of tucks that are pressed to each other those at the left are pressed first.
    """
    rows = panel.rows
    if rows is None:
        ends = (Fraction(0), along) if panel.pressed else ()
        return tuple(HeldLine(at, panel.pressed, "left", sewn=False) for at in ends)
    lines = [HeldLine((row.least + row.most) / 2, row.turns, row.start) for row in rows.rows]
    first, last = (rows.rows[0].start, rows.rows[-1].start) if rows.rows else ("right", "right")
    if rows.top:
        lines.insert(0, HeldLine(Fraction(0), rows.top, first, sewn=False))
    if rows.bottom:
        lines.append(HeldLine(along, rows.bottom, last, sewn=False))
    return tuple(lines)


def sample_surface(cell: Sequence[Sequence[Turn]], *, tucks: int = 12, rows: int = 6) -> Surface:
    """Return a small panel that shows a turn plan: tucks 3/8 in deep, 3/4 in from stitching to stitching.

    The rows stand six depths apart, the closest that swings without strain, the first half of that from the edge.
    """
    depth, pitch = Fraction(3, 8), Fraction(3, 4)
    spacing, margin = 6 * depth, Fraction(3, 4)
    lines = tuple(
        HeldLine(spacing / 2 + row * spacing, tuple(wanted[i % len(wanted)] for i in range(tucks)), "right")
        for row in range(rows)
        for wanted in (cell[row % len(cell)],)
    )
    feet = tuple(margin + number * pitch for number in range(tucks))
    return Surface(feet[-1] + margin, rows * spacing, feet, (depth,) * tucks, lines)


def held_share(surface: Surface, number: int, heights: Array) -> Array:
    """Return how far a tuck is still a fold at every height: 1 where it is stitched, less and less beyond its end."""
    if not surface.stitched:
        return np.ones_like(heights)
    fade = FADE * float(surface.depths[number])
    ends = ((float(first), float(last)) for first, last in surface.stitched[number])
    beyond = [np.maximum(np.maximum(first - heights, heights - last), 0) for first, last in ends]
    return np.asarray(np.clip(1 - np.min(beyond, axis=0) / fade, 0, 1))


def is_stitched(surface: Surface, number: int, pixels: float, lines: int) -> NDArray[np.bool_]:
    """Return on which lines of a grid of ``pixels`` an inch a tuck is stitched, from the top."""
    return held_share(surface, number, np.asarray((np.arange(lines) + 0.5) / pixels, dtype=np.float64)) >= 1


def angles(surface: Surface, heights: Array) -> Array:
    """Return the angle of every tuck (first axis) at every height from the top [in] (second axis), in radians."""
    found = [_angles_of_one(surface, number, heights) for number in range(len(surface.feet))]
    return np.array(found).reshape(len(surface.feet), len(heights))


def _angles_of_one(surface: Surface, number: int, heights: Array) -> Array:
    """Return the angle of one tuck at every height: even steps between what holds it, with soft ends."""
    if not surface.held:
        return np.zeros_like(heights)
    run = FREE_RUN * float(surface.depths[number])
    places = [float(line.at) for line in surface.held]
    held = [QUARTER * _SIGN[line.turns[number]] for line in surface.held]
    knots = np.array([places[0] - run, *places, places[-1] + run])
    turned = np.array([0.0, *held, 0.0])
    at = np.clip(heights, knots[0], knots[-1])
    before = np.clip(np.searchsorted(knots, at, side="right") - 1, 0, len(knots) - 2)
    share = (at - knots[before]) / (knots[before + 1] - knots[before])
    swing = share * share * (3 - 2 * share)
    return np.asarray(turned[before] + (turned[before + 1] - turned[before]) * swing)


def folds(surface: Surface, turned: Array) -> tuple[Array, Array]:
    """Return where each fold lies for the angles given: from the left edge, and above the panel [in].

    The fold of a flap of depth d, hinged at x and turned by phi, lies at (x + d sin phi, d cos phi).
    """
    feet = np.array([float(foot) for foot in surface.feet]).reshape(-1, 1)
    depths = np.array([float(depth) for depth in surface.depths]).reshape(-1, 1)
    return feet + depths * np.sin(turned), depths * np.cos(turned)


def order(surface: Surface, heights: Array, turned: Array) -> Array:
    """Return who lies on whom: of two flaps that cover each other the one with the larger number is on top.

    Of two turned to each other, the one turned last lies on top; a row begun at the right ends with the tucks at the
    left, which lie to the right. Of two turned the same way the one whose fold points at the other's foot lies on top.
    """
    count = len(surface.feet)
    number = np.arange(count, dtype=float).reshape(-1, 1)
    along = np.where(turned > 0, count - number, number)
    return np.asarray(along + 2 * count * ((turned > 0) == _begun_right(surface, heights)))


def _begun_right(surface: Surface, heights: Array) -> NDArray[np.bool_]:
    """Return for every height whether the nearest line that holds the tucks was begun at the right."""
    if not surface.held:
        return np.zeros(len(heights), dtype=bool)
    places = np.array([float(line.at) for line in surface.held])
    begun = np.array([line.start == "right" for line in surface.held])
    nearest = np.abs(heights[:, np.newaxis] - places).argmin(axis=1)
    return np.asarray(begun[nearest])

"""The values that pieces are worked into: plain, frozen, exact; no sums here.

All lengths are Fractions in inches, already rounded to what is printed. Tuck 1 is leftmost as seen on the right side,
row 1 is the top one; every index that is printed counts from 1.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction
from typing import Literal

from generator.calculation.shapes.released import Stretches
from generator.calculation.shapes.tuck_ends import TuckEnd
from generator.calculation.striped import PanelStripes
from generator.calculation.worked_checks import NO_CHECKS, Checks

EndKind = Literal["seam", "hem", "caught hem", "bound", "turnover", "fold", "selvage", "raw"]
EndWay = Literal[
    "", "casing", "rolled hem", "french seam", "felled seam", "faced", "stitched and trimmed", "sealed and trimmed"
]
Hand = Literal["left", "right"]
Start = Literal["left", "right", "by bulk"]


class Turn(Enum):
    """Which way a tuck lies at a tack row, as seen on the right side; the value is its sign in a drawn plan."""

    LEFT = "<"
    RIGHT = ">"
    UPRIGHT = "."


@dataclass(frozen=True, slots=True)
class End:
    """How one edge of a piece is finished.

    ``first`` [in] is the seam allowance, the first turn of a hem, the width of a binding or the turnover; ``second``
    [in] the second turn of a hem. A caught hem has neither: its depth follows from the margin. ``way`` tells a way of
    making it that is not the plain one: a 'casing' or a 'rolled hem', a 'french seam' or a 'felled seam', 'faced', or
    'stitched and trimmed' at the finished line, where its allowance is cut away.
    """

    kind: EndKind
    first: Fraction = Fraction(0)
    second: Fraction = Fraction(0)
    way: EndWay = ""

    @property
    def word(self) -> str:
        """How it is finished, in the word of a file."""
        return self.way or self.kind

    @property
    def shuts_in(self) -> bool:
        """Whether its seam is sewn twice and shuts in the raw edges."""
        return self.way in ("french seam", "felled seam")


@dataclass(frozen=True, slots=True)
class TuckSet:
    """One set of parallel tucks, worked out and rounded.

    ``marks`` are measured from the left cut edge of the flat cloth, ``stitching`` on the finished panel from its left
    finished edge. ``asked`` is the finished size that was wanted, ``finished`` the one that the marks give. ``wish`` is
    the spacing asked for. ``grid`` is the coarsest ruler division that holds every mark. A ring (closed on itself) has
    no ends: its ``finished`` is the way round.
    """

    depths: tuple[Fraction, ...]
    take_ups: tuple[Fraction, ...]
    marks: tuple[Fraction, ...]
    stitching: tuple[Fraction, ...]
    left_margin: Fraction
    right_margin: Fraction
    left: End
    right: End
    left_allowance: Fraction
    right_allowance: Fraction
    cut: Fraction
    finished: Fraction
    asked: Fraction
    wish: Fraction
    grid: Fraction
    ring: bool = False

    @property
    def count(self) -> int:
        """The number of tucks."""
        return len(self.marks)

    @property
    def take_up(self) -> Fraction:
        """The cloth hidden by all tucks [in]."""
        return sum(self.take_ups, Fraction(0))

    @property
    def sewn(self) -> Fraction:
        """How wide the cloth is when all tucks are sewn, its allowances with it [in]."""
        return self.cut - self.take_up

    @property
    def feet(self) -> tuple[Fraction, ...]:
        """Where the tucks stand on the sewn cloth, from its left cut edge [in]."""
        return tuple(self.left_allowance + foot for foot in self.stitching)

    @property
    def right_edge(self) -> Fraction:
        """Where the right finished edge lies on the flat cloth, from its left cut edge [in]."""
        return self.cut - self.right_allowance

    @property
    def spacings(self) -> tuple[Fraction, ...]:
        """From fold mark to fold mark on the flat cloth [in], one fewer than tucks."""
        return tuple(after - before for before, after in zip(self.marks, self.marks[1:], strict=False))

    @property
    def pitches(self) -> tuple[Fraction, ...]:
        """From stitching to stitching on the finished panel [in], one fewer than tucks."""
        return tuple(after - before for before, after in zip(self.stitching, self.stitching[1:], strict=False))


@dataclass(frozen=True, slots=True)
class Row:
    """One tack row.

    ``ruled`` is where to draw it, from the top cut edge; ``least`` and ``most`` say where it ends up, from the top
    finished edge. ``turns`` has one entry a tuck, from the left as seen on the right side; ``words`` the same in the
    order of sewing, beginning at ``start``: toward, away or upright.
    """

    number: int
    ruled: Fraction
    least: Fraction
    most: Fraction
    start: Hand
    turns: tuple[Turn, ...]
    words: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class RowSet:
    """The tack rows of a panel and what they do to its length.

    ``repeat`` is the plan's repeat cell, rows of turns. ``top`` and ``bottom`` are the turns in which those edges hold
    the tucks, empty where the edge leaves them free. ``extra`` is the length added to the cut for draw-in;
    ``draw_in_least`` and ``draw_in_most`` the range to expect over the whole length. ``layers`` is the thickest place.
    """

    plan: str
    repeat: tuple[tuple[Turn, ...], ...]
    rows: tuple[Row, ...]
    spacing: Fraction
    first: Fraction
    top: tuple[Turn, ...]
    bottom: tuple[Turn, ...]
    extra: Fraction
    draw_in_least: Fraction
    draw_in_most: Fraction
    layers: int
    measured: bool = False


@dataclass(frozen=True, slots=True)
class BreadthJoin:
    """A seam between two breadths of cloth at the foot of a tuck.

    ``at`` is its place on the flat joined cloth from the left cut edge. ``covered`` of ``rows`` rows hide it;
    ``hidden`` if all do. The text says how to sew it; ``in_tuck`` if its allowances lie inside the tuck.
    """

    tuck: int
    foot: Hand
    at: Fraction
    covered: int
    rows: int
    hidden: bool
    text: str
    in_tuck: bool = False


@dataclass(frozen=True, slots=True)
class Rods:
    """A rod in every tuck of a blind: its thickness, and where rings are sewn on along it, from one side [in]."""

    thick: Fraction
    rings: tuple[Fraction, ...] = ()


@dataclass(frozen=True, slots=True)
class Released:
    """Tucks that are let go: where each is stitched on the finished panel, from and to [in from its top].

    ``sewn`` are the same places as they are marked [in from the top cut edge], ``stops`` those of them that lie within
    the panel, where stitching begins or ends on a line. ``free`` has the edges at which tucks
    are let go, with how much longer each is for it [in], ``widest`` how wide the panel is there at the most [in].
    ``tied`` says whether the ends of the stitching are tied.
    """

    stitched: tuple[Stretches, ...]
    sewn: tuple[Stretches, ...]
    stops: tuple[tuple[Fraction, ...], ...]
    free: Mapping[str, Fraction]
    widest: Fraction
    tied: bool = True


@dataclass(frozen=True, slots=True)
class Panel:
    """What a tucked panel has beyond a plain piece: ``cross`` is a second set of tucks, from side to side.

    ``division`` is the coarsest division of the ruler that holds every fold mark and every ruled row [in].
    ``shaped_ends`` are the tucks of a panel that is cut to a shape, as that ends them. ``pressed`` is how tucks without
    rows lie for good, one turn a tuck; empty where they stand. Of ``released`` tucks a part is not stitched.
    """

    across: TuckSet
    cross: TuckSet | None = None
    rows: RowSet | None = None
    checks: Checks = NO_CHECKS
    cross_checks: Checks = NO_CHECKS
    breadths: tuple[Fraction, ...] = ()
    joins: tuple[BreadthJoin, ...] = ()
    join_allowance: Fraction = Fraction(0)
    sampled: bool = False
    division: Fraction = Fraction(0)
    stripes: PanelStripes | None = None
    shaped_ends: tuple[TuckEnd, ...] = ()
    pressed: tuple[Turn, ...] = ()
    rods: Rods | None = None
    released: Released | None = None

    @property
    def free(self) -> Mapping[str, Fraction]:
        """The edges at which tucks are let go, with how much longer each is for it [in]; none where all are held."""
        return self.released.free if self.released is not None else {}

    def held(self, side: str) -> tuple[Turn, ...]:
        """Return how the top or bottom edge holds the tucks: as pressed or as the rows say, empty if free.

        Edges that are hemmed before the tucks are stitched, so that rods slide in, hold nothing, nor those at which
        tucks are let go.
        """
        if self.rods is not None or side in self.free:
            return ()
        if self.rows is None:
            return self.pressed
        return {"top": self.rows.top, "bottom": self.rows.bottom}.get(side, ())

    @property
    def turned(self) -> tuple[tuple[Turn, ...], ...]:
        """Every line of turns that holds the tucks: rows and the edges beside them, or once as they are pressed."""
        if self.rows is None:
            return (self.pressed,) if self.pressed else ()
        return (*(row.turns for row in self.rows.rows), *(edge for edge in (self.rows.top, self.rows.bottom) if edge))

    def margin_at(self, side: str) -> Fraction | None:
        """Return the margin beside an edge along the tucks [in]; None at any other edge, or without tucks."""
        if side not in ("left", "right") or not self.across.count:
            return None
        return self.across.left_margin if side == "left" else self.across.right_margin

    def turned_over(self, side: str) -> Fraction:
        """Return how far the tuck beside the left or right edge lies over its margin where a line turns it out [in]."""
        place, outward = (0, Turn.LEFT) if side == "left" else (-1, Turn.RIGHT)
        return self.across.depths[place] if any(turns[place] is outward for turns in self.turned) else Fraction(0)

    @property
    def trim_along(self) -> Fraction:
        """Cloth at either end that was cut for the draw-in of the rows and is trimmed after it [in]."""
        return self.rows.extra / 2 if self.rows is not None else Fraction(0)

"""One worked piece of a project, told by what it is and not by its name; plain, frozen, exact; no sums here.

All lengths are Fractions in inches, already rounded to what is printed. A drawing, a list or a sum that needs to know
something of a piece finds it here as a fact; what kind the project file called it is kept for the figures only.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import ClassVar, Literal

from generator.calculation.drawn_up import DrawnUp
from generator.calculation.making_up.laid import CLOCKWISE, OnPiece
from generator.calculation.pieces.bias import PiecedBias
from generator.calculation.pieces.cut import Cut
from generator.calculation.pieces.grid import Blocks
from generator.calculation.shapes.notches import Notch
from generator.calculation.worked import End, Panel

Grain = Literal["along", "across", "either", "bias"]
GoesRound = Literal["nothing", "faces", "an edge", "a cord"]
NOTHING = Fraction(0)


@dataclass(frozen=True, slots=True)
class EdgeWork:
    """One edge of a worked piece: its finished length [in], its finish, and the cloth beyond the finished edge [in]."""

    name: str
    finished: Fraction
    end: End
    allowance: Fraction


@dataclass(frozen=True, slots=True)
class Straight:
    """The outline of a rectangle; it has an edge at each of its four sides."""

    one_measure: ClassVar[bool] = False
    sides: ClassVar[tuple[str, ...]] = ("left", "right", "top", "bottom")


@dataclass(frozen=True, slots=True)
class SeamLine:
    """One edge of a shape: its name and the points of its finished edge, close enough to be drawn as straight lines."""

    name: str
    spots: tuple[tuple[Fraction, Fraction], ...]


@dataclass(frozen=True, slots=True)
class Shaped:
    """The outline of any other shape: its finished edges, clockwise, and the line on which it is cut.

    ``notches`` are the marks by which it is matched. Places are across and along from the left and the highest point of
    the finished shape [in].
    """

    one_measure: ClassVar[bool] = False
    lines: tuple[SeamLine, ...]
    cut: tuple[tuple[Fraction, Fraction], ...]
    notches: tuple[Notch, ...] = ()

    @property
    def sides(self) -> tuple[str, ...]:
        """The names of its edges."""
        return tuple(line.name for line in self.lines)


@dataclass(frozen=True, slots=True)
class Round:
    """The outline of a circle, whose only edge is its rim; its diameter is the one measure that tells its size.

    ``shape`` has its lines, for paper on which it is cut.
    """

    one_measure: ClassVar[bool] = True
    sides: ClassVar[tuple[str, ...]] = ("rim",)
    shape: Shaped | None = field(default=None, compare=False)


Outline = Straight | Round | Shaped


@dataclass(frozen=True, slots=True)
class Part:
    """One shape of cloth that a piece is made from, as it lies before you: across left to right, along top to bottom.

    ``edges`` has what lies at each side of the outline. ``name`` tells the parts of one piece apart.
    """

    outline: Outline
    cut_across: Fraction
    cut_along: Fraction
    finished_across: Fraction
    finished_along: Fraction
    edges: Mapping[str, EdgeWork] = field(default_factory=dict)
    name: str = ""

    def __post_init__(self) -> None:
        """Hold that every edge lies at a side that the outline has; else it would be left out of every drawing."""
        strange = set(self.edges) - set(self.outline.sides)
        if strange:
            raise ValueError(f"{self.outline} has no side for the edges {sorted(strange)}")

    @property
    def shape(self) -> Shaped | None:
        """Its lines where it is no rectangle: then it is cut by paper."""
        outline = self.outline
        return outline if isinstance(outline, Shaped) else outline.shape if isinstance(outline, Round) else None


@dataclass(frozen=True, slots=True)
class Lengths:
    """Lengths of cloth that a long strip is joined from, or widths that are joined ``side_by_side``.

    ``number`` of them are equal, ``across`` is how long each is cut [in]; ``others`` are unlike [in]. Of a strip these
    go on after the first from the left; of widths one lies at the outer edge, two lie at both sides of the whole ones.
    ``slanting`` lengths are joined corner to corner; their seams are then trimmed to ``allowance``.
    """

    number: int
    across: Fraction
    along: Fraction
    allowance: Fraction
    slanting: bool
    others: tuple[Fraction, ...] = ()
    side_by_side: bool = False

    @property
    def count(self) -> int:
        """How many there are."""
        return self.number + len(self.others)

    @property
    def cuts(self) -> tuple[Cut, ...]:
        """What is cut, in the order in which it is joined from the left."""
        if not self.others:
            return (Cut(self.number, self.across, self.along),)
        if not self.side_by_side:
            return tuple(
                Cut(1, across, self.along, f"length {place}")
                for place, across in enumerate((self.across, *self.others), 1)
            )
        wholes = Cut(self.number, self.across, self.along, "whole width")
        sides = ("part width",) if len(self.others) == 1 else ("right part width", "left part width")
        after, *before = (Cut(1, across, self.along, side) for across, side in zip(self.others, sides, strict=True))
        return (*before, wholes, after)


@dataclass(frozen=True, slots=True)
class Made:
    """What is done to a piece by itself beside the finish of its edges.

    ``folds`` are the lines on which a strip is folded lengthwise, from its top cut edge [in]. ``stitched`` is the
    length of stitching that is neither a hem round the piece nor a gathering thread nor a join [in]. ``goes_round`` is
    what a strip is sewn round. ``lap`` is how far the two parts of a piece lie one over the other [in].
    """

    drawn_up: DrawnUp | None = None
    folds: tuple[Fraction, ...] = ()
    stitched: Fraction = NOTHING
    goes_round: GoesRound = "nothing"
    lap: Fraction = NOTHING

    @property
    def gathered(self) -> bool:
        """Whether a side is gathered on threads."""
        return self.drawn_up is not None and self.drawn_up.gathered

    @property
    def pleats(self) -> tuple[tuple[Fraction, Fraction], ...]:
        """The folds of a side that is laid in pleats."""
        return self.drawn_up.pleats if self.drawn_up is not None else ()


PLAIN = Made()


@dataclass(frozen=True, slots=True)
class Piece:
    """One worked piece of a project.

    ``parts`` are the shapes it is made from: none for what is bought ready, two for a back in halves, one for most.
    ``finished_across`` and ``finished_along`` are those of the whole, ``edges`` those that other pieces meet. ``grain``
    tells which direction of the piece runs with the selvage. ``measures`` holds what formulas may ask, by its name in
    the project file. ``after_panel`` marks a piece that is cut only when the sewn panel has been measured, ``shaped``
    one that is cut to its shape when it has been tucked; ``trimmed_to`` is that shape, where the tool knows it.
    ``matches`` marks one whose parts and copies show the pattern of their cloth at the same place. ``lengths`` and
    ``square`` tell what a strip is cut from that is not cut as it is: lengths to join, or the side of a square on the
    bias [in]; ``pieced`` is what takes the square's place where that buys less. ``fixed`` is how a copy is fixed to
    the piece that it ``lies_on``: 'fused', 'sewn in' or 'quilted'. ``hangs_by`` is the side, as the piece lies on the
    table, that is its top when it hangs. ``on_piece`` is where it is sewn on the face of another.
    ``blocks`` are those of a grid, ``bands`` what is cut for it. ``drawn`` are its edges that are gathered or pleated
    to what they meet. Of one ``on_fold`` the paper is half, from its middle line, and it is cut from folded cloth.
    """

    name: str
    label: str
    kind: str
    cloth: str
    quantity: int
    grain: Grain
    parts: tuple[Part, ...]
    finished_across: Fraction
    finished_along: Fraction
    edges: Mapping[str, EdgeWork] = field(default_factory=dict)
    measures: Mapping[str, Fraction] = field(default_factory=dict)
    note: str = ""
    panel: Panel | None = None
    after_panel: bool = False
    shaped: bool = False
    trimmed_to: Part | None = None
    matches: bool = False
    lengths: Lengths | None = None
    square: Fraction = NOTHING
    pieced: PiecedBias | None = None
    made: Made = PLAIN
    pair: bool = False
    fixed: str = ""
    lies_on: str = ""
    hangs_by: str = "top"
    on_piece: OnPiece | None = None
    blocks: Blocks | None = None
    bands: tuple[Cut, ...] = ()
    drawn: tuple[DrawnUp, ...] = ()
    on_fold: bool = False

    def drawn_at(self, side: str) -> DrawnUp | None:
        """Return how one of its edges is drawn up to a shorter one that it meets."""
        return next((one for one in self.drawn if one.side == side), None)

    @property
    def quarters(self) -> int:
        """How many quarter turns clockwise bring it from the table to where it hangs: one if it hangs by its left."""
        return -CLOCKWISE.index(self.hangs_by) % 4

    @property
    def along_at_marking(self) -> Fraction:
        """How long it is along its tucks when they are marked [in]: as cut, or hemmed where rods slide in."""
        return self.finished_along if self.panel is not None and self.panel.rods is not None else self.cut_along

    def said(self, side: str) -> str:
        """Return what a side is called as the piece hangs, and behind it as it lies on the table: 'top (left ...)'."""
        if not self.quarters or side not in CLOCKWISE:
            return side
        return f"{CLOCKWISE[(CLOCKWISE.index(side) + self.quarters) % 4]} ({side} on the table)"

    @property
    def shape(self) -> Shaped | None:
        """The lines of the finished piece where it is one that is no rectangle."""
        part = self.trimmed_to or (self.parts[0] if len(self.parts) == 1 else None)
        return part.shape if part is not None else None

    @property
    def cut_across(self) -> Fraction:
        """The cut size from left to right, of the widest part [in]; nothing for what is bought."""
        return max((part.cut_across for part in self.parts), default=NOTHING)

    @property
    def cut_along(self) -> Fraction:
        """The cut size from top to bottom, of the longest part [in]; nothing for what is bought."""
        return max((part.cut_along for part in self.parts), default=NOTHING)

    @property
    def cuts(self) -> tuple[Cut, ...]:
        """What is cut from the cloth for one piece: breadths, lengths to join, a square, or its parts as they are."""
        if self.bands:
            return self.bands
        if self.panel is not None and self.panel.breadths:
            along = self.cut_along
            return tuple(
                Cut(1, across, along, f"breadth {number}") for number, across in enumerate(self.panel.breadths, 1)
            )
        if self.pieced is not None:
            return (Cut(1, self.pieced.long, self.pieced.short),)
        if self.square:
            return (Cut(1, self.square, self.square),)
        if self.lengths is not None:
            return self.lengths.cuts
        if len({(part.cut_across, part.cut_along) for part in self.parts}) == 1:
            return (Cut(len(self.parts), self.cut_across, self.cut_along),)
        return tuple(Cut(1, part.cut_across, part.cut_along, part.name) for part in self.parts)

"""What a kind of piece works out for itself: parts, finishes and facts, as one value; lengths in inches."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction

from generator.calculation.pieces.plain_pieces import plain_allowance
from generator.calculation.worked import End
from generator.calculation.worked_piece import NOTHING, PLAIN, EdgeWork, Grain, Made, Outline, Part, Straight
from generator.calculation.worksheet.scope import Scope
from generator.definitions.piece_kind import SIDES
from generator.definitions.pieces.model import PieceModel
from generator.lengths import round_up

Size = tuple[Fraction, Fraction]
# How the edge of a name ends: as the piece itself says, or as a copy of it reaches.
Ends = Callable[[str], End]
_RAW = End("raw")
# The long edge of a strip as a whole, which other pieces meet; it is no side of its own.
_LONG_EDGE = "edge"


@dataclass(frozen=True, slots=True)
class Join:
    """How a piece that is longer than the cloth is wide is joined: straight across, or slanting; allowance [in].

    A strip is joined end to end from equal lengths, a plain piece from whole widths with ``parts`` part widths.
    """

    allowance: Fraction
    slanting: bool = False
    parts: int = 0

    @property
    def grains(self) -> tuple[Grain, ...]:
        """The ways of the grain of which such a join keeps the grain; a strip that may run either way is turned."""
        return ("along", "either") if self.parts else ("along",)


@dataclass(frozen=True, slots=True)
class PieceSizes:
    """What a kind of piece works out for itself, exact: cut sizes are rounded to the ruler afterwards [in].

    ``finished`` is (across, along) of the whole piece, ``square`` the side of the square that a strip on the bias is
    cut from. ``join`` stands where a long piece may be joined from lengths.
    """

    parts: tuple[Part, ...]
    finished: Size
    edges: Mapping[str, EdgeWork] = field(default_factory=dict)
    measures: Mapping[str, Fraction] = field(default_factory=dict)
    made: Made = PLAIN
    square: Fraction = NOTHING
    join: Join | None = None


def ends_of(scope: Scope, model: PieceModel) -> Ends:
    """Return how the edges of a piece are finished, as it says itself."""
    return lambda side: scope.end(model.finish(side))


def edge_ends(scope: Scope, model: PieceModel) -> dict[str, End]:
    """Return how the four edges of a piece are finished."""
    return four_ends(ends_of(scope, model))


def four_ends(ends: Ends) -> dict[str, End]:
    """Return how the four edges of a rectangle end."""
    return {side: ends(side) for side in SIDES}


def side_lengths(across: Fraction, along: Fraction) -> dict[str, Fraction]:
    """Return the finished length of each edge of a rectangle."""
    return {"left": along, "right": along, "top": across, "bottom": across}


def worked_edges(lengths: Mapping[str, Fraction], ends: Mapping[str, End]) -> dict[str, EdgeWork]:
    """Return the edges of a piece by name; one whose finish nobody says is raw."""
    return {side: _edge(side, length, ends.get(side, _RAW)) for side, length in lengths.items()}


def _edge(side: str, length: Fraction, end: End) -> EdgeWork:
    return EdgeWork(side, length, end, plain_allowance(end))


def whole(cut: Size, finished: Size, edges: Mapping[str, EdgeWork], outline: Outline | None = None) -> tuple[Part]:
    """Return the one part of a piece that is cut from one shape of cloth, with the edges that lie round it."""
    shape = outline or Straight()
    around = {side: edge for side, edge in edges.items() if side != _LONG_EDGE}
    return (Part(shape, *cut, *finished, around),)


def allowances(edges: Mapping[str, EdgeWork]) -> dict[str, Fraction]:
    """Return the allowance of each edge by the name that formulas ask it by [in]."""
    return {f"{side} allowance": edge.allowance for side, edge in edges.items()}


def on_ruler(part: Part, mark: Fraction) -> Part:
    """Return the same part with its cut sizes rounded up to what the ruler shows."""
    return replace(part, cut_across=round_up(part.cut_across, mark), cut_along=round_up(part.cut_along, mark))

"""Corners where a seam ends: the edges that meet of shapes come in, what makes a point in a joined edge is reported."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from generator.calculation.making_up.seams import facings_of
from generator.calculation.making_up.thing import Edge, Thing
from generator.calculation.shapes.corners import run_on
from generator.calculation.shapes.segments import Spot, minus
from generator.calculation.worked_piece import Piece, SeamLine
from generator.calculation.worksheet.scope import Scope

Corner = tuple[Spot, Spot]


def report_corners(scope: Scope, thing: Thing, pieces: Mapping[str, Piece]) -> None:
    """Report seams at whose ends the edges of the same name, as two halves of a neck, would make a point.

    Facings are traced from other pieces: what is wrong with their corners is wrong with those.
    """
    for seam in (one for one in thing.seams if not facings_of(one, thing)):
        for pair in seam.pairs:
            one, other = (dict(_ends(pieces[edge[0]], edge)) for edge in pair)
            for name in one.keys() & other.keys():
                if not run_on(one[name], other[name]) and not _sewn_together(thing, pair, name):
                    first, second = (f"{piece}.{edge}" for piece, edge in pair)
                    text = (
                        f"where '{first}' meets '{second}', the edge '{name}' does not run on over the seam: it makes "
                        "a point there. Change how one of the two arrives, until both corners add up to 180 degrees, "
                        "within 15; 'arriving across' or 'leaving across' of a curve is the usual way"
                    )
                    scope.report("warning", text, seam.place)


def _sewn_together(thing: Thing, pair: tuple[Edge, Edge], name: str) -> bool:
    """Whether the edges that go on at a corner are sewn to each other too: that is a corner that is turned out."""
    pieces = [piece for piece, _ in pair]
    return any(
        [piece for piece, _ in other] in (pieces, pieces[::-1])
        and all(_without_side(side) == name for _, side in other)
        for seam in thing.seams
        for other in seam.pairs
    )


def _ends(piece: Piece, edge: Edge) -> Iterator[tuple[str, Corner]]:
    """The corners at both ends of an edge of a shape, by the name of the edge that goes on there."""
    shape = piece.shape
    lines = shape.lines if shape is not None else ()
    for place, line in enumerate(lines):
        if line.name == edge[1] and len(lines) > 1:
            before, after = lines[place - 1], lines[(place + 1) % len(lines)]
            yield _bare(before), (_arriving(before), _leaving(line))
            yield _bare(after), (_arriving(line), _leaving(after))


def _bare(line: SeamLine) -> str:
    return _without_side(line.name)


def _without_side(name: str) -> str:
    return name.removeprefix("left ").removeprefix("right ")


def _leaving(line: SeamLine) -> Spot:
    return minus(line.spots[1], line.spots[0])


def _arriving(line: SeamLine) -> Spot:
    return minus(line.spots[-1], line.spots[-2])

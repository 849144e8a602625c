"""A facing cut to the shape of edges of another piece: its keys come in, its frozen definition and its edges go out."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Annotated, ClassVar

from generator.definitions.faults import Fault
from generator.definitions.fields import Length
from generator.definitions.nodes import Group, Node, Scalar, fold
from generator.definitions.piece_kind import RECTANGLE, PieceKind
from generator.definitions.pieces.model import PieceModel
from generator.definitions.readers import Leaf
from generator.definitions.reading import Reading
from generator.definitions.reading_edges import read_edges
from generator.definitions.values import EdgeRun, Finish

FREE = "free"
CLOCKWISE = ("top", "right", "bottom", "left")


def faced_run(around: Sequence[str], named: Sequence[str]) -> tuple[tuple[str, ...], str, str]:
    """Return edges one after the other as they lie round a shape, and the edges before and after them.

    Raises
    ------
    Fault
        If they do not follow each other, or no edge is left at which the facing could end.
    """
    if set(around) <= set(named):
        raise Fault(
            "a facing ends at the edges beside the one it faces, and here none is left; for a rim right round cut a "
            "second piece of the same outline, or bind it"
        )
    first = [place for place, edge in enumerate(around) if edge in named and around[place - 1] not in named]
    if len(first) != 1:
        raise Fault("the edges of one facing follow each other round the piece; write a facing for each of these")
    turned = (*around[first[0] :], *around[: first[0]])
    run = tuple(edge for edge in turned if edge in named)
    return run, around[first[0] - 1], turned[len(run)]


def end_names(around: Sequence[str], run: Sequence[str], before: str, after: str) -> tuple[str, str]:
    """Return what the ends of a facing are called: as the edges they lie on; of one that has both, left and right.

    A shape of two edges begins at its left, so the first of them ends at the right, and the other at the left.
    """
    if before != after:
        return before, after
    sides = ("left", "right") if run[0] == around[0] else ("right", "left")
    return f"{sides[0]} {before}", f"{sides[1]} {after}"


def facing_kind(found: Node, kinds: Mapping[str, PieceKind | None]) -> PieceKind:
    """Return the kind of a facing with its edges: those it faces, the ends beside them and the free one."""
    along = found.get("along") if isinstance(found, Group) else None
    named = _named(along.text if isinstance(along, Scalar) else "", kinds)
    around = _around(kinds.get(named[0][0])) if named else ()
    try:
        run, before, after = faced_run(around, [edge for _, edge in named])
    except Fault:
        return ShapedFacing.of_kind
    before, after = end_names(around, run, before, after)
    edges = (*run, after, FREE, before)
    halves = (edge.partition(" ")[2] for edge in edges if edge.startswith("right "))
    return ShapedFacing.of_kind.shaped(edges, tuple(one for one in halves if f"left {one}" in edges))


def _named(text: str, kinds: Mapping[str, PieceKind | None]) -> list[tuple[str, str]]:
    """The edges that a line names, as far as there are such."""
    found: list[tuple[str, str]] = []
    for part in re.split(r"\s+and\s+", text.strip()):
        piece, _, edge = (fold(word.strip()) for word in part.partition("."))
        kind = kinds.get(piece)
        found += [(piece, one) for one in kind.parts_of(edge)] if kind is not None else []
    return found


def _around(kind: PieceKind | None) -> tuple[str, ...]:
    """The edges of a kind of piece clockwise; none where it has no shape that the tool knows."""
    if kind is None or not kind.copied or "of blocks" in kind.nature:
        return ()
    return CLOCKWISE if kind.edges == RECTANGLE else tuple(edge for edge in kind.edges if edge not in kind.twice)


def _faced(words: Scalar, reading: Reading) -> EdgeRun:
    """Return the edges that a facing faces: all of one piece, one after the other."""
    run = read_edges(words, reading)
    piece = run.edges[0][0]
    if any(name != piece for name, _ in run.edges):
        raise Fault("a facing is traced from one piece; write one for each, and join their ends")
    kind = reading.kind_of(piece)
    around = _around(kind)
    if kind is not None and not around:
        raise Fault(f"'{piece}' is {kind.told}; a facing is traced from a tucked panel, a rectangle or a facing")
    if any(edge not in around for _, edge in run.edges):
        raise Fault(f"name the edge that is faced, one of: {', '.join(around)}")
    if FREE in around:
        raise Fault(f"'{piece}' has an edge '{FREE}', and so has every facing; give that edge another name")
    faced_run(around, [edge for _, edge in run.edges])
    return run


class ShapedFacing(PieceModel):
    """A facing traced from one or more edges of another piece, so wide all along, with a free edge inside."""

    names_edges: ClassVar[bool] = True
    of_kind: ClassVar = PieceKind("shaped facing", (FREE,), ("width",), nature=("along an edge",))
    along: Annotated[EdgeRun, Leaf(_faced, {"type": "string"})]
    width: Length

    def said(self, side: str) -> Finish | None:
        """Return how its own line says that an edge is finished; None where it says nothing."""
        both = side.removeprefix("left ").removeprefix("right ")
        return self.edges.get(side) or self.edges.get(both) or self.edges.get("all")

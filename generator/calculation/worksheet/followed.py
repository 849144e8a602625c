"""What a strip goes along: meeting edges and the name of a strip come in, whether its way has corners or an end go out.

A binding, a piping or a boxing is sewn to the edges of other pieces, one after the other.
"""

from __future__ import annotations

import re
from collections.abc import Container, Iterable, Mapping
from itertools import pairwise

from generator.definitions.closures import Meeting

EdgesInRow = tuple[tuple[str, str], ...]
_WAY_ROUND = {"all", "rim"}
_BESIDE = {"left": ("top", "bottom"), "right": ("top", "bottom"), "top": ("left", "right"), "bottom": ("left", "right")}


def edges_of(run: str) -> EdgesInRow:
    """Return the edges of a run as a file writes it, each as piece and side; no name of a piece holds an 'and'."""
    named = (part.partition(".") for part in re.split(r"\s+and\s+", run.strip()))
    return tuple((re.sub(r"[\s_-]+", " ", piece.strip()), side.strip()) for piece, _, side in named)


def followed(meetings: Iterable[tuple[EdgesInRow, EdgesInRow]], strip: str) -> tuple[EdgesInRow, ...]:
    """Return the runs of edges that a strip is sewn to along its length."""
    both_ways = [pair for join, to in meetings for pair in ((join, to), (to, join))]
    return tuple(other for own, other in both_ways if own == ((strip, "edge"),) and other != own)


def runs_of(meetings: Iterable[Meeting], strip: str) -> tuple[EdgesInRow, ...]:
    """Return the runs of edges that a strip is sewn to along its length, by the edges that meet in a project."""
    return followed(((one.join.edges, one.to.edges) for one in meetings), strip)


def round_corners(runs: Iterable[EdgesInRow]) -> bool:
    """Return whether a strip turns a corner on its way."""
    return any(
        side == "all" or (after[0] == name and after[1] in _BESIDE.get(side, ()))
        for run in runs
        for (name, side), after in pairwise((*run, ("", "")))
    )


def closed(runs: Iterable[EdgesInRow], rings: Container[str], ended: Container[str] = ()) -> bool:
    """Return whether a strip comes back to where it began, so that its ends meet.

    ``rings`` are panels without ends, ``ended`` pieces whose rim ends at a straight edge.
    """
    return any(_comes_round(run, rings, ended) for run in runs)


def _comes_round(run: EdgesInRow, rings: Container[str], ended: Container[str]) -> bool:
    sides = {side for piece, side in run if side != "rim" or piece not in ended}
    across_a_ring = run[0][0] in rings and run[0][1] in ("top", "bottom")
    return across_a_ring or bool(sides & _WAY_ROUND) or sides >= {*_BESIDE}


def closed_by_seams(
    run: EdgesInRow, beside: Mapping[tuple[str, str], Iterable[str]], meetings: Iterable[tuple[EdgesInRow, EdgesInRow]]
) -> bool:
    """Return whether edges of several shapes run on into each other at both their ends, as front and back of a neck do.

    ``beside`` has the two edges beside each edge of a shape. What meets edge by edge joins them.
    """
    names = {piece for piece, _ in run}
    joined = {frozenset(pair) for join, to in meetings if len(join) == len(to) for pair in zip(join, to, strict=True)}

    def runs_on(piece: str, edge: str) -> bool:
        return any((piece, edge) in pair and {name for name, _ in pair} <= names and len(pair) > 1 for pair in joined)

    return len(names) > 1 and all(
        edge in beside and all(runs_on(edge[0], other) for other in beside[edge]) for edge in run
    )


def straight(runs: Iterable[EdgesInRow]) -> bool:
    """Return whether all edges that a strip goes along are straight, so that it need not be cut on the bias."""
    sides = {side for run in runs for _, side in run}
    return bool(sides) and sides <= {*_BESIDE, "all", "edge"}

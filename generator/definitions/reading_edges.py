"""Edges by name: the words of a file come in, a run of edges goes out, or a fault."""

from __future__ import annotations

import re

from generator.definitions.faults import Fault, SilentFault
from generator.definitions.nodes import Scalar
from generator.definitions.reading import Reading, filled_words
from generator.definitions.values import EdgeRun


def read_edges(words: Scalar, reading: Reading) -> EdgeRun:
    """Return one edge or several that follow each other: 'flap.left and flap.bottom'."""
    text = filled_words(words)
    edges: list[tuple[str, str]] = []
    start = 0
    for part in re.split(r"(\s+and\s+)", text):
        if part.strip() != "and":
            edges += _edges(part.strip(), start + len(part) - len(part.lstrip()), reading)
        start += len(part)
    return EdgeRun(text.strip(), tuple(edges), words.at(0))


def _edges(written: str, start: int, reading: Reading) -> list[tuple[str, str]]:
    piece, point, edge = (part.strip() for part in written.partition("."))
    piece = re.sub(r"[\s_-]+", " ", piece)
    if not point:
        raise Fault(f"'{written}' names no edge; write the piece, a point and its edge, for example front.top", start)
    kind = reading.kind_of(piece, start)
    if kind is None:
        raise SilentFault
    if edge not in kind.edges:
        has = f"it has: {', '.join(kind.edges)}" if kind.edges else "it has none"
        raise Fault(f"{kind.told} has no edge '{edge}'; {has}", start)
    return [(piece, part) for part in kind.parts_of(edge)]

"""Raw edges kept from fraying: seams of a thing come in, their lengths by the way of neatening and findings go out."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from fractions import Fraction

from generator.calculation.making_up.items import free_edge, raw_seams, trimmed_edges
from generator.calculation.making_up.thing import Edge, Thing
from generator.calculation.worked_piece import Piece
from generator.calculation.worksheet.enclosed_seams import report_enclosed
from generator.calculation.worksheet.scope import Scope
from generator.calculation.worksheet.step_context import StepContext
from generator.calculation.worksheet.work import edge_stretch, stretch_of


def neatened(context: StepContext) -> Mapping[str, Fraction]:
    """Return how long the seams and free edges are that are neatened [in], by the way their pieces say."""
    lengths: dict[str, Fraction] = defaultdict(Fraction)
    if context.joiner is None:
        return lengths
    thing = context.joiner.book.thing
    for seam in raw_seams(thing):
        for way in dict.fromkeys(thing.parts[piece].neat_way(side) for (piece, side), _ in seam.pairs):
            pairs = [pair for pair in seam.pairs if thing.parts[pair[0][0]].neat_way(pair[0][1]) == way]
            stretch = stretch_of(seam, pairs, context.pieces)
            lengths[way] += stretch.times * stretch.length
    for part in thing.parts.values():
        for item in free_edge(part):
            stretch = edge_stretch(context.pieces, item)
            lengths[part.neat_way(item.edge)] += stretch.times * stretch.length
        for item in trimmed_edges(part):
            if part.ends[item.edge] == "stitched and trimmed":
                stretch = edge_stretch(context.pieces, item)
                lengths["stitched"] += stretch.times * stretch.length
    return lengths


def report_raw_edges(scope: Scope, thing: Thing, pieces: Mapping[str, Piece]) -> None:
    """Report edges that no seam can shut in as they say, and seams whose edges are to be neatened in different ways."""
    report_enclosed(scope, thing, pieces)
    for seam in raw_seams(thing):
        unlike = (pair for pair in seam.pairs if len({thing.parts[piece].neat_way(side) for piece, side in pair}) > 1)
        pair = next(unlike, None)
        if pair is not None:
            told = " and ".join(f"'{_named(thing, edge)}' {thing.parts[edge[0]].neat_way(edge[1])}" for edge in pair)
            text = f"both edges of a seam are neatened together, and here {told}; give both the same under 'neaten'"
            scope.report("error", text, seam.place)


def _named(thing: Thing, edge: Edge) -> str:
    """An edge as the file says how it is neatened: by its piece, or by itself where that names edges."""
    return edge[0] if set(thing.parts[edge[0]].neaten) <= {"all"} else ".".join(edge)

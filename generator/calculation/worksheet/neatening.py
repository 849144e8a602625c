"""Raw edges kept from fraying: seams of a thing come in, their lengths by the way of neatening and findings go out."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from fractions import Fraction

from generator.calculation.making_up.items import free_edge, raw_seams, trimmed_edges
from generator.calculation.making_up.thing import Thing
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
        stretch = stretch_of(seam, seam.pairs, context.pieces)
        lengths[thing.parts[seam.pieces[0]].neaten] += stretch.times * stretch.length
    for name, part in thing.parts.items():
        for item in free_edge(part):
            stretch = edge_stretch(context.pieces, item)
            lengths[thing.parts[name].neaten] += stretch.times * stretch.length
        for item in trimmed_edges(part):
            if part.ends[item.edge] == "stitched and trimmed":
                stretch = edge_stretch(context.pieces, item)
                lengths["stitched"] += stretch.times * stretch.length
    return lengths


def report_raw_edges(scope: Scope, thing: Thing, pieces: Mapping[str, Piece]) -> None:
    """Report edges that no seam can shut in as they say, and seams whose edges are to be neatened in different ways."""
    report_enclosed(scope, thing, pieces)
    for seam in raw_seams(thing):
        ways = {piece: thing.parts[piece].neaten for piece in seam.pieces}
        if len(set(ways.values())) > 1:
            told = " and ".join(f"'{piece}' {way}" for piece, way in ways.items())
            text = f"both edges of a seam are neatened together, and here {told}; give both the same under 'neaten'"
            scope.report("error", text, seam.place)

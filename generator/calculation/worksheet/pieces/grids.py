"""Grids of blocks: a grid of a project file comes in, its sizes, bands and blocks go out; lengths in inches."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.pieces.cut import Cut
from generator.calculation.pieces.grid import Blocks, shown, worked_grid
from generator.calculation.worked_piece import Made, Part, Straight
from generator.calculation.worksheet.pieces.sizes import PieceSizes, edge_ends, side_lengths, worked_edges
from generator.calculation.worksheet.scope import Scope
from generator.definitions.pieces.grid import Grid
from generator.errors import CalculationError
from generator.lengths import round_up

_WAYS = (("left", "right"), ("top", "bottom"))


def blocks_of(scope: Scope, model: Grid) -> Blocks:
    """Return the blocks of a grid, refused where they cannot be joined."""
    block = scope.piece(model.of)
    seam = scope.value(model.seam) if model.seam is not None else scope.seam
    band = scope.value(model.bands) if model.bands is not None else Fraction(0)
    number = (scope.count(model.blocks_across), scope.count(model.blocks_down))
    size = (block.finished_across, block.finished_along)
    blocks = worked_grid(Blocks(model.of, number, size, band, seam, model.turned is not None))
    odd = next((edge for edge in block.edges.values() if edge.allowance != seam), None)
    if odd is not None:
        raise CalculationError(
            f"the seams of this grid take {scope.say(seam)}, and '{model.of}' has {scope.say(odd.allowance)} at its "
            f"{odd.name}; make both alike, by 'edges' there or by 'seam' here"
        )
    return blocks


def grid_sizes(scope: Scope, name: str, model: Grid) -> PieceSizes:
    """Return the sizes of a grid: what its edges leave of it, and its bands."""
    blocks = blocks_of(scope, model)
    ends = edge_ends(scope, model)
    taken = {side: edge.allowance for side, edge in worked_edges(side_lengths(*blocks.raw), ends).items()}
    across, along = (raw - taken[near] - taken[far] for raw, (near, far) in zip(blocks.raw, _WAYS, strict=True))
    edges = worked_edges(side_lengths(across, along), ends)
    for way, block in zip(_WAYS, blocks.block, strict=True):
        for side in way:
            _report_outer(scope, name, model, block, blocks.seam, (side, ends[side].first, ends[side].kind))
    gone = 2 * blocks.seam
    parts = tuple(
        Part(Straight(), band.across, band.along, band.across - gone, band.along - gone, name=band.name)
        for band in blocks.bands
    )
    measures = {
        "edge": 2 * (across + along),
        "block": blocks.block[0],
        "cut block": blocks.block[0] + 2 * blocks.seam,
        "band": blocks.band,
        "raw across": blocks.raw[0],
        "raw along": blocks.raw[1],
        "joining seam": blocks.seam,
        "blocks across": Fraction(blocks.number[0]),
        "blocks down": Fraction(blocks.number[1]),
    }
    return PieceSizes(parts, (across, along), edges, measures, Made(stitched=blocks.seams))


def _report_outer(
    scope: Scope, name: str, model: Grid, block: Fraction, seam: Fraction, finish: tuple[str, Fraction, str]
) -> None:
    """Warn where the finish of an edge takes more or less of the outer blocks than a seam does of the others."""
    side, width, kind = finish
    seen = shown(block, seam, width)
    if kind in ("bound", "seam") and seen != block:
        told = (
            f"the blocks at the {side} show {scope.say(seen)} and the others {scope.say(block)}: the edge takes "
            f"{scope.say(width)}, the seams take {scope.say(seam)}; make both alike"
        )
        scope.report("warning", told, model.place, name)


def band_cuts(blocks: Blocks, mark: Fraction) -> tuple[Cut, ...]:
    """Return the bands of one grid as they are cut, on the ruler."""
    return tuple(
        Cut(one.number, round_up(one.across, mark), round_up(one.along, mark), one.name) for one in blocks.bands
    )

"""Facings cut to the shape of edges: a facing of a project file and the piece it faces come in, its sizes go out."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from generator.calculation.shapes.facing import FacedRun, facing_shape
from generator.calculation.shapes.segments import StraightLine
from generator.calculation.worked import End
from generator.calculation.worksheet.pieces.shaped import Edges, outline_of, sewn_sizes
from generator.calculation.worksheet.pieces.sizes import PieceSizes, ends_of
from generator.calculation.worksheet.scope import Scope
from generator.definitions.pieces.model import OutlinedModel
from generator.definitions.pieces.shaped_facing import CLOCKWISE, FREE, ShapedFacing, end_names, faced_run
from generator.errors import CalculationError


def facing_sizes(scope: Scope, name: str, model: ShapedFacing) -> PieceSizes:
    """Return the sizes of a facing: faced edges and ends have the allowances of the piece that it is traced from."""
    of = model.along.edges[0][0]
    other = scope.project.pieces[of]
    assert isinstance(other, OutlinedModel)
    lines = _lines(scope, of, other)
    edges, before, after = faced_run(tuple(lines), [edge for _, edge in model.along.edges])
    width = scope.value(model.width)
    with scope.reporting(model.along.place, name):
        shape = facing_shape(lines, FacedRun(edges, before, after), width, scope.edition)
    first, last = end_names(tuple(lines), edges, before, after)
    traced = {**shape.faced, last: shape.after, FREE: shape.free, first: shape.before}
    beside = {first: before, last: after}

    def end_of(side: str) -> End:
        said = model.said(side)
        if said is not None:
            return scope.end(said)
        if side == FREE:
            return End("raw")
        end = ends_of(scope, other)(beside.get(side, side))
        # Where the other piece is bound or hemmed the end of the facing lies raw inside that.
        return End("seam", end.first) if end.kind == "seam" else End("raw")

    for edge in edges:
        end = ends_of(scope, other)(edge)
        if end.kind != "seam":
            told = f"'{of}.{edge}' is finished by itself ({end.word}), and an edge that is faced has a seam"
            raise CalculationError(f"{told}; write a seam there, or take the facing out")
    sizes = sewn_sizes(scope, name, traced, end_of, model.along.place)
    return replace(sizes, measures={**sizes.measures, "width": width}, join=None)


def _lines(scope: Scope, of: str, other: OutlinedModel) -> Edges:
    """The lines of a piece, clockwise; a rectangle has four."""
    if other.outline is not None:
        return outline_of(scope, other)
    nothing = Fraction(0)
    across, along = scope.lookup(f"{of}.across"), scope.lookup(f"{of}.along")
    corners = [(nothing, nothing), (across, nothing), (across, along), (nothing, along)]
    ends = zip(corners, [*corners[1:], corners[0]], strict=True)
    return {side: (StraightLine(*line),) for side, line in zip(CLOCKWISE, ends, strict=True)}

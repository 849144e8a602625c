"""Pieces cut from one shape of cloth, and those of two: a piece of a project file comes in, its sizes go out."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import assert_never

from generator.calculation.pieces.envelope import EnvelopePart, gaping_overlap, worked_envelope_back
from generator.calculation.pieces.plain_pieces import plain_allowance, worked_circle, worked_rectangle
from generator.calculation.pieces.roll import circumference
from generator.calculation.shapes.by_word import oval
from generator.calculation.shapes.cut_line import SeamEdge
from generator.calculation.worked import End
from generator.calculation.worked_piece import EdgeWork, Made, Part, Round, Straight
from generator.calculation.worksheet.pieces.shaped import drawn_shape, shaped_sizes, told_size
from generator.calculation.worksheet.pieces.sizes import (
    Ends,
    Join,
    PieceSizes,
    Size,
    edge_ends,
    ends_of,
    four_ends,
    side_lengths,
    whole,
    worked_edges,
)
from generator.calculation.worksheet.scope import Scope
from generator.definitions.outlines import WordOutline
from generator.definitions.pieces.flat import Circle, EnvelopeBack, Facing, FlatPiece, Rectangle
from generator.definitions.pieces.grid import Grid
from generator.definitions.pieces.model import OutlinedModel
from generator.lengths import round_up


def flat_sizes(scope: Scope, name: str, model: FlatPiece) -> PieceSizes:
    """Return the sizes of a flat piece, each kind by its own sum."""
    match model:
        case Rectangle() | Facing():
            return _plain(scope, name, model, ends_of(scope, model))
        case EnvelopeBack():
            return _envelope_back(scope, name, model)
        case Circle():
            return _circle(scope, scope.value(model.diameter), scope.end(model.finish("rim")))
        case _:
            assert_never(model)


def copied_sizes(
    scope: Scope, name: str, copied: tuple[str, OutlinedModel | Circle | Grid], end_of: Ends
) -> PieceSizes:
    """Return the sizes of a plain copy of a flat piece, of the size that this has been worked or sewn to."""
    of, model = copied
    if isinstance(model, Circle):
        sizes = _circle(scope, scope.value(model.diameter), end_of("rim"))
        return replace(sizes, measures={**sizes.measures, "rim": sizes.edges["rim"].finished})
    if isinstance(model, OutlinedModel) and model.outline is not None:
        return _plain(scope, name, model, end_of)
    return _rectangle(scope, (scope.lookup(f"{of}.across"), scope.lookup(f"{of}.along")), end_of)


def _plain(scope: Scope, name: str, model: OutlinedModel, end_of: Ends) -> PieceSizes:
    """A plain piece by its outline: a circle has one measure, every other shape its own lines."""
    if model.outline is None:
        assert model.finished_across is not None
        assert model.finished_along is not None
        return _rectangle(scope, (scope.value(model.finished_across), scope.value(model.finished_along)), end_of)
    if isinstance(model.outline, WordOutline) and model.outline.word == "circle":
        sizes = _circle(scope, told_size(scope, model, model.outline)[0], end_of("rim"))
        rim = sizes.edges["rim"].finished
        return replace(sizes, measures={"edge": rim, "rim": rim})
    return shaped_sizes(scope, name, model, end_of)


def _rectangle(scope: Scope, finished: Size, end_of: Ends) -> PieceSizes:
    ends = four_ends(end_of)
    edges = worked_edges(side_lengths(*finished), ends)
    cut = worked_rectangle(*finished, ends)
    measures = {"edge": 2 * (finished[0] + finished[1])}
    return PieceSizes(whole(cut, finished, edges), finished, edges, measures, join=Join(scope.seam, parts=1))


def _envelope_back(scope: Scope, name: str, model: EnvelopeBack) -> PieceSizes:
    across, along = scope.value(model.finished_across), scope.value(model.finished_along)
    overlap, hem = scope.value(model.overlap), scope.value(model.hem)
    ends = edge_ends(scope, model)
    opening = EdgeWork("opening", along, End("hem", hem, hem), plain_allowance(End("hem", hem, hem)))
    left, right = worked_envelope_back(across, along, overlap, opening.end, ends)
    warning = gaping_overlap(overlap, scope.edition)
    if warning:
        scope.report("warning", warning, model.overlap.place, name)
    edges = worked_edges(side_lengths(across, along), ends)
    parts = (
        _half(left, along, {**edges, "right": opening}),
        _half(right, along, {**edges, "left": opening}),
    )
    widest = round_up(max(left.cut_across, right.cut_across), scope.edition.mark)
    measures = {"overlap": overlap, "hem": hem, "half across": widest - 2 * hem, "edge": 2 * (across + along)}
    # Each half is hemmed at the opening before its seams, so over its whole cut length.
    stitched = 2 * round_up(left.cut_along, scope.edition.mark)
    return PieceSizes(parts, (across, along), edges, measures, Made(lap=overlap, stitched=stitched))


def _half(half: EnvelopePart, along: Fraction, edges: dict[str, EdgeWork]) -> Part:
    cut, finished = (half.cut_across, half.cut_along), (half.finished_across, along)
    return Part(Straight(), *cut, *finished, edges, f"{half.name} half")


def _circle(scope: Scope, diameter: Fraction, rim: End) -> PieceSizes:
    cut = worked_circle(diameter, rim)
    length = circumference(diameter, scope.edition.wish_step)
    edges = worked_edges({"rim": length}, {"rim": rim})
    measures = {"diameter": diameter, "cut diameter": cut[0], "edge": length}
    size, join = (diameter, diameter), Join(scope.seam, parts=2)
    sewn = [SeamEdge("rim", oval(*size)["rim"], edges["rim"].allowance)]
    outline = Round(drawn_shape(sewn, scope.edition)[0])
    return PieceSizes(whole(cut, size, edges, outline), size, edges, measures, join=join)

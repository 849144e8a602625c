"""Bands, strips without ends of their own: a band of a project file comes in, its sizes and folds go out."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from generator.calculation.panel_ends import narrowest_seam
from generator.calculation.pieces.bands import worked_binding, worked_piping, worked_tie
from generator.calculation.pieces.bias import bias_square
from generator.calculation.worked_piece import Made
from generator.calculation.worksheet.pieces.sizes import Join, PieceSizes, Size, whole, worked_edges
from generator.calculation.worksheet.scope import Scope
from generator.definitions.pieces.strips import BiasStrip, Binding, Piping, StripPiece, Tie
from generator.lengths import read_length, round_up

# Common practice, no source: what a binding loses round the edge of a few layers, and what a square is cut larger so
# that a line ruled aslant costs no strip.
_ROOM_FOR_AN_EDGE = {"inch": read_length("1/8 in"), "metric": read_length("3 mm")}
SPARE_OF_A_SQUARE = {"inch": read_length("3/4 in"), "metric": read_length("2 cm")}


def binding(scope: Scope, model: Binding) -> PieceSizes:
    """Return a binding: four times its finished width and what the edge in it takes, and turned in at both ends."""
    length, width = scope.value(model.length), scope.value(model.width)
    cut_width, cut_length = worked_binding(length, width, scope.seam, _ROOM_FOR_AN_EDGE[scope.edition.name])
    far = round_up(cut_width, scope.edition.mark) - width
    made = Made(folds=(width, far), stitched=2 * length, goes_round="an edge")
    # A straight join would lie on itself in one lump where the strip is folded over an edge or a cord.
    join = strip_join(scope, model, slanting=True)
    return _band(scope, model, (length, width), (cut_length, cut_width), made, join)


def tie(scope: Scope, model: Tie) -> PieceSizes:
    """Return a tie sewn from a strip folded lengthwise and turned: twice its width and two allowances."""
    length, width = scope.value(model.length), scope.value(model.width)
    cut_width, cut_length = worked_tie(length, width, scope.seam)
    made = Made(folds=_folds(scope, cut_width, 2), stitched=2 * length)
    return _band(scope, model, (length, width), (cut_length, cut_width), made, strip_join(scope, model))


def piping(scope: Scope, model: Piping) -> PieceSizes:
    """Return piping, which covers a cord: the strip goes once round it and has an allowance at both edges."""
    length, cord = scope.value(model.length), scope.value(model.cord)
    width, cut_length = worked_piping(length, cord, scope.seam, scope.edition.mark)
    made = Made(folds=_folds(scope, width, 2), stitched=2 * length, goes_round="a cord")
    join = strip_join(scope, model, slanting=True)
    sizes = _band(scope, model, (length, width), (cut_length, width), made, join)
    return replace(sizes, measures={**sizes.measures, "cord": cord})


def bias_strip(scope: Scope, model: BiasStrip) -> PieceSizes:
    """Return a strip from the bias of a square."""
    size = scope.value(model.length), scope.value(model.width)
    return _on_the_bias(scope, model, _band(scope, model, size, size, Made(), strip_join(scope, model)))


def strip_join(scope: Scope, model: StripPiece, *, slanting: bool = False) -> Join:
    """How a strip is joined: as its file says, else with the project's seam, or a narrow one where it is slanting."""
    if model.join_allowance is not None:
        return Join(scope.value(model.join_allowance), slanting)
    return Join(narrowest_seam(scope.edition) if slanting else scope.seam, slanting)


def _band(scope: Scope, model: StripPiece, finished: Size, cut: Size, made: Made, join: Join) -> PieceSizes:
    """The sizes of a band; from the bias of a square where its grain says so."""
    length, width = finished
    edges = worked_edges({"edge": length}, {})
    measures = {"length": length, "width": width, "edge": length}
    sizes = PieceSizes(whole(cut, finished, edges), finished, edges, measures, made, join=join)
    return _on_the_bias(scope, model, sizes) if model.grain == "bias" else sizes


def _folds(scope: Scope, cut_width: Fraction, *quarters: int) -> tuple[Fraction, ...]:
    """Where a strip is folded lengthwise, in quarters of the width that the ruler shows [in]."""
    width = round_up(cut_width, scope.edition.mark)
    return tuple(width * quarter / 4 for quarter in quarters)


def _on_the_bias(scope: Scope, model: StripPiece, sizes: PieceSizes) -> PieceSizes:
    """The same strip from the bias of a square, a little larger than it must be."""
    if sizes.square:
        return sizes
    (part,) = sizes.parts
    join = strip_join(scope, model, slanting=True).allowance
    square = bias_square(part.cut_across, part.cut_along, join, scope.edition.wish_step)
    square += SPARE_OF_A_SQUARE[scope.edition.name]
    return replace(sizes, square=square, measures={**sizes.measures, "square": square}, join=None)

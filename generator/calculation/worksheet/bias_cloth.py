"""Strips on the bias in a layout: a cloth with its squares comes in, rectangles where they buy less go out.

A square gives one strip without joins to match, so it stays wherever nothing is saved.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

from generator.calculation.cutting.cloth import buy_text
from generator.calculation.cutting.layout import cutting_layout, length_bound
from generator.calculation.laid import CutItem
from generator.calculation.pieces.bias import PiecedBias, bias_rectangle, pieced_bias
from generator.calculation.worked_piece import NOTHING, Piece
from generator.calculation.worked_project import ClothUse
from generator.calculation.worksheet.followed import runs_of, straight
from generator.calculation.worksheet.pieces.bands import SPARE_OF_A_SQUARE, strip_join
from generator.calculation.worksheet.pieces.joined import joined_lengths
from generator.calculation.worksheet.pieces.sizes import Join
from generator.calculation.worksheet.scope import Scope
from generator.definitions.pieces.strips import StripPiece
from generator.lengths import CENTIMETRE, round_down, round_up

_STEPS = {
    "inch": (Fraction(1, 4), Fraction(2), Fraction(6)),
    "metric": (CENTIMETRE / 2, 10 * CENTIMETRE, 15 * CENTIMETRE),
}
"""In which steps the short side of a rectangle is tried, and the long one, and how short a strip may be [in].

A strip of many short bits is lumpy; how short is ours to say, no source."""
_LOOKS = 80_000
"""Among so many ways a layout is asked for quickly; what is chosen is laid anew with all looks."""
Using = Callable[[tuple[CutItem, ...]], ClothUse]


def pieced_where_cheaper(scope: Scope, use: ClothUse, pieces: Sequence[Piece], using: Using) -> ClothUse:
    """Return the use of a cloth with rectangles in place of squares, where that saves a step of the shop."""
    ways = {piece.name: tuple(_rectangles(scope, piece)) for piece in pieces if piece.square}
    if not any(ways.values()):
        return use
    free = [
        replace(item, instead=tuple((way.long, way.short) for way in ways.get(item.piece, ()))) for item in use.items
    ]
    layout = cutting_layout(free, use.layout.width, scope.edition, use.buying, _LOOKS)
    if use.buying.bought(layout.length) >= use.buy:
        return use
    sizes = {(placed.piece, frozenset((placed.across, placed.along))) for placed in layout.placed}
    chosen = {
        name: way
        for name, of_piece in ways.items()
        for way in of_piece
        if (name, frozenset((way.long, way.short))) in sizes
    }
    cheaper = using(tuple(_as_chosen(item, chosen.get(item.piece)) for item in use.items))
    return replace(cheaper, pieced=chosen) if cheaper.buy < use.buy else use


def _as_chosen(item: CutItem, way: PiecedBias | None) -> CutItem:
    return item if way is None else replace(item, across=way.long, along=way.short)


def _rectangles(scope: Scope, piece: Piece) -> Iterator[PiecedBias]:
    """Yield the rectangles of which a strip can be pieced, the longest first, each a little larger than it must be.

    Of those that take as much of the short side the shortest is enough: it lies wherever a longer one does.
    """
    step, coarse, _ = _STEPS[scope.edition.name]
    width = round_down(scope.washed_width(piece.cloth), step)
    shortest = round_up(piece.square, coarse)
    longs = (width, *(shortest + number * coarse for number in range(int((width - shortest) // coarse), -1, -1)))
    found = [way for long in longs if long > 0 for way in [rectangle_of(scope, piece, long)] if way is not None]
    for way, shorter in pairwise((*found, None)):
        if way is not None and (shorter is None or shorter.short > way.short):
            yield way


def rectangle_of(scope: Scope, piece: Piece, long: Fraction) -> PiecedBias | None:
    """Return the rectangle of a long side [in] of which a strip can be pieced; None where a square is too small."""
    step, _, least = _STEPS[scope.edition.name]
    join = _slanting(scope, piece).allowance
    found = bias_rectangle((piece.cut_across, piece.cut_along), join, long, step, least)
    if found is None or found.short + SPARE_OF_A_SQUARE[scope.edition.name] > long:
        return None
    sides = found.short + SPARE_OF_A_SQUARE[scope.edition.name], long
    return pieced_bias(sides, piece.cut_along, join, piece.cut_across, least)


def _slanting(scope: Scope, piece: Piece) -> Join:
    model = scope.project.pieces[piece.name]
    if not isinstance(model, StripPiece):
        raise TypeError(f"{piece.name} is no strip")
    return strip_join(scope, model, slanting=True)


def offer_straight_grain(scope: Scope, use: ClothUse, pieces: Sequence[Piece]) -> None:
    """Tell of every strip on the bias that goes along straight edges only, and cut along the thread would buy less."""
    for piece in pieces:
        if not piece.square or not straight(runs_of(scope.project.edges_that_meet, piece.name)):
            continue
        along = replace(piece, square=NOTHING, grain="along")
        lengths = joined_lengths(scope, along, _slanting(scope, piece))
        cuts = replace(along, lengths=lengths).cuts
        items = [item for item in use.items if item.piece != piece.name]
        items += [
            CutItem(
                piece.name, piece.label, cut.across, cut.along, piece.quantity * cut.number, later=piece.after_panel
            )
            for cut in cuts
        ]
        if use.buying.bought(length_bound(items, use.layout.width, scope.edition)) >= use.buy:
            continue
        layout = cutting_layout(items, use.layout.width, scope.edition, use.buying, _LOOKS)
        buy = use.buying.bought(layout.length)
        if buy < use.buy:
            text = (
                f"all edges that '{piece.name}' goes along are straight: cut along the thread ('grain: along') "
                f"{buy_text(buy, scope.edition)} of {use.label} would do in place of {use.buy_text}"
            )
            scope.report("note", text, scope.project.pieces[piece.name].place, piece.name)

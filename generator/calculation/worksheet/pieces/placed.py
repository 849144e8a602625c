"""A piece that is sewn on another, such as a pocket: its place comes in, where its edges lie goes out, in inches."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from fractions import Fraction

from generator.calculation.making_up.laid import OnPiece
from generator.calculation.worked_piece import Piece
from generator.calculation.worksheet.scope import Scope
from generator.definitions.pieces.model import PieceModel
from generator.definitions.pieces.sewn_on import SewnOn
from generator.errors import CalculationError
from generator.lengths import Edition, round_nearest, say_length
from generator.listed import listed

_WAYS = (("left", "right"), ("top", "bottom"))
_FOLDED = frozenset({"hem", "caught hem", "turnover", "fold", "selvage"})


def placed(scope: Scope, piece: Piece, model: PieceModel) -> Piece:
    """Return a piece with its place on the one that it is sewn on, the same where it is sewn on none.

    Parameters
    ----------
    scope : Scope
        The size and edition.
    piece : Piece
        The worked piece.
    model : PieceModel
        What its file says.

    Returns
    -------
    Piece
        With ``on_piece``, and with what formulas may ask: how far its left and its top edge lie from the edges that
        are seen when it is sewn on [in].

    Raises
    ------
    CalculationError
        If it does not lie within the other one, or over a lap that it would shut.
    """
    said = model.sewn_on
    if said is None:
        return piece
    under = scope.piece(said.piece)
    places = []
    for (near, far), whole, own in zip(
        _WAYS,
        (under.finished_across, under.finished_along),
        (piece.finished_across, piece.finished_along),
        strict=True,
    ):
        place = _near(scope, said, (near, far), whole - own)
        if place < 0 or place + own > whole:
            raise CalculationError(
                f"'{piece.name}' does not lie on '{under.name}': {scope.say(own)} and {scope.say(place)} to its {near} "
                f"want more than the {scope.say(whole)} that '{under.name}' has there; make it smaller or move it"
            )
        places.append(place)
    _leave_lap_open(scope, piece, under, places[0])
    sides = tuple(side for side in said.at)
    on = OnPiece(said.piece, places[0], places[1], sides)
    asked = {f"from {side}": distance(replace(piece, on_piece=on), under, side) for side in ("left", "top")}
    return replace(piece, on_piece=on, measures={**piece.measures, **asked})


def _leave_lap_open(scope: Scope, piece: Piece, under: Piece, left: Fraction) -> None:
    """Refuse a place over the lap in the middle of an envelope back, where the stitching goes through both parts."""
    lap = under.made.lap
    near, far = (under.finished_across - lap) / 2, (under.finished_across + lap) / 2
    if lap and left < far and left + piece.finished_across > near:
        raise CalculationError(
            f"'{piece.name}' lies over the lap of '{under.name}', {scope.say(near)} to {scope.say(far)} from its left, "
            "and sewn on there it would shut it; write after 'sewn on' how far from the left or the right, beside the "
            "lap, or take a smaller one"
        )


def _near(scope: Scope, said: SewnOn, way: tuple[str, str], spare: Fraction) -> Fraction:
    """How far the near edge lies from the finished near edge of what is below: as told from either, else the middle."""
    near, far = way
    if near in said.at:
        return scope.value(said.at[near])
    if far in said.at:
        return spare - scope.value(said.at[far])
    return round_nearest(spare / 2, scope.edition.mark)


def distance(piece: Piece, under: Piece, side: str) -> Fraction:
    """Return how far an edge of a piece lies from the like-named edge of what it is sewn on, as that is seen then.

    That is the cut edge where it lies raw, the finished one where it is hemmed by then.

    Parameters
    ----------
    piece, under : Piece
        The piece that is sewn on, and the one below it.
    side : str
        Left, right, top or bottom.

    Returns
    -------
    Fraction
        The distance [in].

    Raises
    ------
    CalculationError
        If it is sewn on nothing.

    Examples
    --------
    >>> from generator.calculation.worked import End
    >>> from generator.calculation.worked_piece import EdgeWork
    >>> half = Fraction(1, 2)
    >>> top = EdgeWork("top", Fraction(10), End("seam", half), half)
    >>> of = dict(label="", kind="rectangle", cloth="", quantity=1, grain="along", parts=())
    >>> back = Piece("back", finished_across=Fraction(10), finished_along=Fraction(12), edges={"top": top}, **of)
    >>> on = OnPiece("back", Fraction(2), Fraction(3))
    >>> pocket = Piece("pocket", finished_across=Fraction(6), finished_along=Fraction(5), on_piece=on, **of)
    >>> distance(pocket, back, "top"), distance(pocket, back, "left"), distance(pocket, back, "bottom")
    (Fraction(7, 2), Fraction(2, 1), Fraction(4, 1))
    """
    on = piece.on_piece
    if on is None:
        raise CalculationError(f"'{piece.name}' is sewn on nothing")
    finished = {
        "left": on.left,
        "top": on.top,
        "right": under.finished_across - on.left - piece.finished_across,
        "bottom": under.finished_along - on.top - piece.finished_along,
    }[side]
    return finished + (under.edges[side].allowance if lies_raw(under, side) else Fraction(0))


def lies_raw(under: Piece, side: str) -> bool:
    """Return whether a side of a piece is still a cut edge when something is sewn on it."""
    edge = under.edges.get(side)
    return edge is not None and edge.allowance > 0 and edge.end.kind not in _FOLDED


def measured_sides(piece: Piece) -> tuple[str, str]:
    """Return the sides from which a piece is pinned: those that its file names, else left and top."""
    named = piece.on_piece.sides if piece.on_piece is not None else ()
    across, along = (next((side for side in way if side in named), way[0]) for way in _WAYS)
    return across, along


def place_words(pieces: Sequence[Piece], of: Iterable[Piece], edition: Edition) -> str:
    """Return where pieces are pinned: 'its top edge 3 1/2 in from the top cut edge, its left edge ...'."""
    under = {piece.name: piece for piece in of}
    told = []
    for piece in pieces:
        if piece.on_piece is None:
            continue
        below = under[piece.on_piece.piece]
        across, along = measured_sides(piece)
        words = [
            f"its {side} edge {say_length(distance(piece, below, side), edition)} from the {side} "
            f"{'cut' if lies_raw(below, side) else 'finished'} edge"
            for side in (along, across)
        ]
        told.append((piece.label, f"{words[0]}, {words[1]}"))
    if len(told) == 1:
        return told[0][1]
    return "\n".join(f"- the {label}: {words}" for label, words in told)


def turned_under(piece: Piece, edition: Edition) -> str:
    """Return which edges of a piece are pressed under before it is sewn on: 'left, right and bottom edge by 1/2 in'."""
    raw = {side: edge.allowance for side, edge in piece.edges.items() if lies_raw(piece, side)}
    widths = dict.fromkeys(raw.values())
    parts = []
    for width in widths:
        sides = [side for side, own in raw.items() if own == width]
        parts.append(f"the {listed(sides)} edge{'s' if len(sides) > 1 else ''} by {say_length(width, edition)}")
    return ", ".join(parts)


def has_mouth(piece: Piece) -> bool:
    """Return whether an edge of a piece that is sewn on stays open, as that of a pocket: it is hemmed."""
    return piece.on_piece is not None and any(edge.end.kind in _FOLDED for edge in piece.edges.values())


def mouth(piece: Piece) -> str:
    """Return the edges that stay open when a piece is sewn on: 'top'."""
    return " and ".join(side for side, edge in piece.edges.items() if edge.end.kind in _FOLDED)

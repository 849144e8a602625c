"""An elastic in a casing: its keys in the project file come in, how long it is cut and what it says goes out."""

from __future__ import annotations

from collections.abc import Container, Mapping, Sequence
from fractions import Fraction

from generator.calculation.pieces.closings import elastic_length, least_casing
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import ClosureWork
from generator.calculation.worksheet.followed import edges_of
from generator.calculation.worksheet.lists import edge_words
from generator.calculation.worksheet.scope import Scope
from generator.definitions.closures import Closure
from generator.errors import CalculationError
from generator.lengths import MILLIMETRE, Edition, say_length

# A seam over the ends needs so much of both; common practice, no source.
_LEAST_LAP = {"inch": Fraction(1, 2), "metric": 12 * MILLIMETRE}


def worked_elastic(scope: Scope, model: Closure, edge: Fraction) -> ClosureWork:
    """Return an elastic for an edge of a finished length [in]; a casing that is too narrow for it is reported."""
    assert model.width is not None
    width, lap = scope.value(model.width), scope.value(model.lap)
    least = _LEAST_LAP[scope.edition.name]
    if 0 <= lap < least:
        raise CalculationError(
            f"the ends of the elastic lap by {scope.say(lap)}, too little to be sewn to each other; write a 'lap' of "
            f"{scope.say(least)} or more, or leave it out: 1 in or 2.5 cm is usual"
        )
    length = elastic_length(edge, model.shorter_by, lap, scope.edition)
    for piece, side in model.on.edges:
        _check_casing(scope, (piece, side), width)
    return ClosureWork(
        kind=model.kind,
        number=scope.count(model.number),
        on=str(model.on),
        onto=str(model.on),
        note=scope.text(model.note),
        length=length,
        width=width,
        lap=lap,
    )


def _check_casing(scope: Scope, edge: tuple[str, str], width: Fraction) -> None:
    edges = scope.piece(edge[0]).edges
    if edge[1] not in edges:
        told = f"an elastic runs in the casing of one edge, and '{edge[0]}.{edge[1]}' is several"
        raise CalculationError(f"{told}; write the one it runs in: on: {edge[0]}.{next(iter(edges), 'top')}")
    end = edges[edge[1]].end
    least = least_casing(width, scope.edition)
    first = "1/4 in" if scope.edition.name == "inch" else "6 mm"
    told = f"for an elastic {scope.say(width)} wide write 'casing {first} then {scope.say(least)}' or more"
    if end.way != "casing":
        raise CalculationError(f"an elastic runs in a casing, and '{edge[0]}.{edge[1]}' has none; {told}")
    if end.second < least:
        raise CalculationError(
            f"the casing of '{edge[0]}.{edge[1]}' is {scope.say(end.second)} deep, too narrow; {told}"
        )


def elastic_words(
    closures: Sequence[ClosureWork], pieces: Mapping[str, Piece], edition: Edition, on: Container[str]
) -> str:
    """Return how long each elastic is cut, for which edge, and how far its ends lap."""
    return "\n".join(
        f"- {edge_words(one.on, pieces)}: elastic {say_length(one.width, edition)} wide, "
        f"**{say_length(one.length, edition)} long**, its ends lapped by {say_length(one.lap, edition)}"
        for one in closures
        if one.kind == "elastic" and any(piece in on for piece, _ in edges_of(one.on))
    )

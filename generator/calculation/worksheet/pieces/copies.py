"""Copies of flat pieces: a copy of a project file comes in, its sizes and what it is fixed to go out."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from generator.calculation.worked import End
from generator.calculation.worksheet.pieces.flat import copied_sizes
from generator.calculation.worksheet.pieces.sizes import Ends, PieceSizes, ends_of
from generator.calculation.worksheet.scope import Scope
from generator.definitions.pieces.copy import Copy
from generator.definitions.pieces.flat import Circle
from generator.definitions.pieces.grid import Grid
from generator.definitions.pieces.model import OutlinedModel
from generator.errors import CalculationError

_HOW = {
    "fused": "fused to the wrong side of the",
    "sewn in": "basted to the wrong side of the",
    "quilted": "quilted to the wrong side of the",
}


def copy_sizes(scope: Scope, name: str, model: Copy) -> PieceSizes:
    """Return the sizes of a copy: as the other piece is finished, and beyond that as far as it reaches.

    One that is fixed lies in one piece; it is never joined from lengths with a seam.
    """
    other = scope.project.pieces[model.of]
    assert isinstance(other, OutlinedModel | Circle | Grid)
    _check(scope, name, model)
    sizes = copied_sizes(scope, name, (model.of, other), _ends(scope, model))
    return replace(sizes, join=None) if model.fixed else sizes


def _ends(scope: Scope, model: Copy) -> Ends:
    """How the edges of a copy end: as its own file says, else like those of the other piece, or so far beyond them."""
    other = scope.project.pieces[model.of]
    if model.fixed or not model.reaches.to_edge:
        return lambda side: _beyond(_reach(scope, model, side))
    return ends_of(scope, model if model.edges else other)


def _beyond(reach: Fraction) -> End:
    return End("seam", reach) if reach else End("raw")


def _reach(scope: Scope, model: Copy, side: str) -> Fraction:
    """How far a copy reaches beyond the finished edge of the other piece [in]."""
    if model.reaches.to_edge:
        return scope.piece(model.of).edges[side].allowance
    if model.reaches.beyond is None:
        return Fraction(0)
    reach = scope.value(model.reaches.beyond)
    if reach < 0:
        raise CalculationError(
            f"'reaches' comes to {scope.say(reach)}; write how far the copy reaches beyond the seam line, 0 or more"
        )
    return reach


def _check(scope: Scope, name: str, model: Copy) -> None:
    """Report a fixed copy that is sewn to something as well, and one of which there are too many or too few."""
    if not model.fixed:
        return
    for meeting in scope.project.edges_that_meet:
        if any(piece == name for run in (meeting.join, meeting.to) for piece, _ in run.edges):
            told = (
                f"'{name}' is {model.fixed} to '{model.lies_on}' and goes into its seams with it; take this line out, "
                "or take 'fixed' out"
            )
            scope.report("error", told, meeting.place, name)
    _check_glue(scope, name, model)
    below = scope.project.pieces[model.lies_on]
    own, others = scope.count(model.quantity), scope.count(below.quantity)
    if own != others:
        each = f"'{model.lies_on}', on which it lies, {others} times"
        told = f"'{name}' is cut {own} times and {each}; write quantity: {others}"
        scope.report("warning", told, model.quantity.place or model.place, name)


def _check_glue(scope: Scope, name: str, model: Copy) -> None:
    """Report a copy that is fused and reaches beyond the cloth it is fused to: its glue would melt on to the board."""
    if model.fixed != "fused" or model.reaches.beyond is None:
        return
    reach = scope.value(model.reaches.beyond)
    below = scope.piece(model.lies_on)
    beyond = [side for side, edge in below.edges.items() if reach > edge.allowance]
    if beyond:
        least = scope.say(min(below.edges[side].allowance for side in beyond))
        told = (
            f"'{name}' is fused and reaches {scope.say(reach)} beyond the seam line, and '{model.lies_on}' is cut only "
            f"{least} beyond it ({', '.join(beyond)}): its glue would melt on to the ironing board; write {least} or "
            "less"
        )
        scope.report("error", told, model.reaches.place, name)


def copy_note(scope: Scope, model: Copy) -> str:
    """Return what is done with a copy that is fixed, for the list of what to cut; empty for any other."""
    if not model.fixed:
        return ""
    return f"{_HOW[model.fixed]} {scope.project.pieces[model.lies_on].label or model.lies_on}"

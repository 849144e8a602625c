"""The finished thing of one size: a thing and the acts of its steps come in, the thing laid out as it hangs goes out.

Its size is what the project file says; else what its seams come to.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from generator.calculation.making_up.acts import Act
from generator.calculation.making_up.book import Book
from generator.calculation.making_up.laid import LaidOut
from generator.calculation.making_up.laying_out import laid_out
from generator.calculation.worksheet.scope import Scope
from generator.definitions.pieces.panel import TuckedPanel
from generator.lengths import on_ruler


def finished_thing(scope: Scope, book: Book, acts: Sequence[Act]) -> LaidOut:
    """Return the finished thing laid out, a curtain the way up that it hangs; what its file says of its size wins.

    A size that the seams do not come to is warned of, unless the panel came out otherwise than planned.
    """
    laid = laid_out(book.thing, _hangs_by(scope, book, acts))
    said = scope.project.finished_size
    if not said or (scope.sewn and not laid.shaped):
        return laid
    across, along, depth = (*(scope.value(length) for length in said), Fraction(0))[:3]
    told = replace(laid, across=across, along=along, depth=depth)
    if not (_smaller(told, laid) if laid.shaped else _in_words(told, scope) == _in_words(laid, scope)):
        text = (
            f"finished size says {_in_words(told, scope)}; from its seams the thing comes to {_in_words(laid, scope)}. "
            "Look which of the two is meant, or take the line out"
        )
        scope.report("warning", text, said[0].place)
    return told


def _smaller(told: LaidOut, laid: LaidOut) -> bool:
    return told.across <= laid.across and told.along <= laid.along and told.depth == laid.depth


def _in_words(laid: LaidOut, scope: Scope) -> str:
    """A size as a person says it: '14 by 14 by 2 in'."""
    lengths = [laid.across, laid.along, *([laid.depth] if laid.depth else [])]
    return " by ".join(on_ruler(length, scope.edition) for length in lengths) + f" {scope.edition.unit}"


def _hangs_by(scope: Scope, book: Book, acts: Sequence[Act]) -> str:
    """The side that the file says, else that of a curtain that the rod runs through or that is fastened up."""
    models = scope.project.pieces.values()
    said = next((model.hangs_by for model in models if isinstance(model, TuckedPanel)), "top")
    if said != "top" or "hung" not in book.thing.facts:
        return said
    cased = [act for act in acts if act.does in book.methods and "broad hem" in book.methods[act.does].kinds]
    rods = [item.edge for act in cased for item in book.gives(act)]
    loops = [side for closing in book.thing.closings if closing.kind == "hook and loop" for _, side in closing.on]
    return next((side for side in (*rods, *loops) if side != "all"), "top")

"""A zip: its keys in the project file come in, which to buy and how it is set goes out; faults are reported."""

from __future__ import annotations

from collections.abc import Container, Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from generator.calculation.making_up.seams import zip_linings
from generator.calculation.making_up.thing import Thing
from generator.calculation.pieces.closings import zip_to_buy
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import ClosureWork
from generator.calculation.worksheet.followed import edges_of
from generator.calculation.worksheet.lists import edge_words
from generator.calculation.worksheet.pieces.shaped import is_curved
from generator.calculation.worksheet.scope import Scope
from generator.definitions.closures import Closure
from generator.definitions.pieces.tabs import ZipTab
from generator.definitions.values import EdgeRun
from generator.errors import CalculationError
from generator.lengths import Edition, read_length, say_length

_LINED = frozenset({"plain", "lining", "tops", "laid", "facing"})
_ALLOWANCE = {"inch": read_length("5/8 in"), "metric": read_length("1.5 cm")}
_BESIDE = {"inch": read_length("1/2 in"), "metric": read_length("1.2 cm")}


def zipped(scope: Scope, model: Closure, closure: ClosureWork, edge: Fraction, onto: Fraction) -> ClosureWork:
    """Return a zip with its length and the one to buy, between two edges of finished lengths [in].

    Raises
    ------
    CalculationError
        If it is longer than its edge, or its tabs are not cut for it.
    """
    if abs(edge - onto) > scope.edition.wish_step:
        told = f"a zip lies between two edges of one length; '{model.on}' is {scope.say(edge)}, and"
        told += f" '{model.edges[1]}' {scope.say(onto)}; name the edges that meet at the zip"
        scope.report("warning", told, model.place)
    _check_edges(scope, model)
    if model.length is None:
        return closure
    length = scope.value(model.length)
    if length <= 0 or length > edge:
        raise CalculationError(
            f"a zip of {scope.say(length)} does not go into '{model.on}', which is {scope.say(edge)} long; take one of "
            f"{scope.say(edge)} at most, or another edge"
        )
    if model.tabs:
        _check_tabs(scope, model, edge, length)
    bought = zip_to_buy(length, map(scope.value, scope.room.zip_lengths))
    return replace(closure, length=length, bought=bought, positions=(), inset=(edge - length) / 2, tabs=model.tabs)


def report_lined_zips(scope: Scope, thing: Thing) -> None:
    """Warn of a zip, set by a standard step, of which one side alone is sewn to a lining: one seam must catch both."""
    for closing in (one for one in thing.closings if one.kind == "zip" and not zip_linings(one, thing)):
        own = {*closing.on, *closing.onto}
        pairs = [pair for seam in thing.seams if seam.sort in _LINED for pair in seam.pairs]
        lined = [one if one[0] in own else one[::-1] for one in pairs if (one[0] in own) is not (one[1] in own)]
        if lined:
            (piece, side), (lining, beside) = lined[0]
            told = f"'set zip' folds '{piece}.{side}' beside the zip, and it is sewn to '{lining}.{beside}' as well. "
            told += "Let the other side of the zip meet a lining too: then 'set lined zip' sews all of it. Or one seam "
            told += "catches both, in a step of your own:\ndoes:"
            told += "".join(f"\n  - {act}" for act in (f"set zip on {piece}", f"sew {piece} to {lining}"))
            scope.report("warning", told, closing.place)


def _check_tabs(scope: Scope, model: Closure, edge: Fraction, length: Fraction) -> None:
    """Refuse tabs that are cut for another edge or another zip [in], or are not two for every zip."""
    tabs = scope.project.pieces[model.tabs]
    if not isinstance(tabs, ZipTab):
        return
    own, zip_of_it = scope.value(tabs.edge), scope.value(tabs.zip)
    zips = sum(scope.count(one.number) for one in scope.project.closures if one.tabs == model.tabs)
    number = scope.piece(model.tabs).quantity
    told = ""
    if abs(own - edge) > scope.edition.mark and not scope.sewn:
        told = f"is for an edge of {scope.say(own)}, and that of this zip is {scope.say(edge)}; write edge: "
        told += scope.say(edge)
    elif zip_of_it != length:
        told = f"is for a zip of {scope.say(zip_of_it)}, and this one is {scope.say(length)} long; write zip: "
        told += scope.say(length)
    if told:
        raise CalculationError(f"'{model.tabs}' {told}")
    if number != 2 * zips:
        one = "a zip has two tabs" if zips == 1 else f"{zips} zips have {2 * zips} tabs"
        raise CalculationError(f"{one}, and {number} of '{model.tabs}' are cut; write quantity: {2 * zips}")


def _check_edges(scope: Scope, model: Closure) -> None:
    """Warn of edges that a zip does not lie well in: narrow allowances, tucks in its way, a curve."""
    for run in model.edges:
        for told in _faults(scope, run):
            scope.report("warning", told, model.place, run.edges[0][0])


def _faults(scope: Scope, run: EdgeRun) -> Iterator[str]:
    for name, side in run.edges:
        piece = scope.piece(name)
        edge = piece.edges.get(side)
        least = _ALLOWANCE[scope.edition.name]
        if edge is not None and edge.allowance < least:
            yield (
                f"the allowance of '{name}.{side}' is {scope.say(edge.allowance)}, and a zip is sewn to one of "
                f"{scope.say(least)}; write {side}: seam {scope.say(least)}"
            )
        if piece.panel is not None and side in ("top", "bottom") and piece.panel.across.count:
            yield f"a zip across the tucks of '{name}' jams on their folds; let it lie along them, or take another edge"
        if is_curved(piece, side):
            yield f"'{name}.{side}' is round, and a zip in it waves; take a straight edge"
        margin = piece.panel.margin_at(side) if piece.panel is not None else None
        if piece.panel is None or margin is None:
            continue
        wanted = _BESIDE[scope.edition.name] + piece.panel.turned_over(side)
        if margin < wanted:
            yield (
                f"beside the zip the margin of '{name}' at the {side} is {scope.say(margin)}, and the foot wants "
                f"{scope.say(wanted)}; write a wider {side} margin"
            )


def zip_words(
    closures: Sequence[ClosureWork], pieces: Mapping[str, Piece], edition: Edition, on: Container[str]
) -> str:
    """Return where each zip lies and how long it is, and how one that was bought longer is shortened."""
    return "\n".join(
        _told(one, pieces, edition)
        for one in closures
        if one.kind == "zip" and any(name in on for name in (*_carrying(one), one.tabs))
    )


def _carrying(one: ClosureWork) -> tuple[str, ...]:
    return tuple(name for run in (one.on, one.onto) for name, _ in edges_of(run))


def _told(one: ClosureWork, pieces: Mapping[str, Piece], edition: Edition) -> str:
    where = f"- Between {edge_words(one.on, pieces)} and {edge_words(one.onto, pieces)}"
    if not one.length:
        return f"{where}: the zip"
    length, inset = say_length(one.length, edition), say_length(one.inset, edition)
    told = f"{where}: **{length}** between its stops, {inset} from both ends"
    if one.bought <= one.length:
        return told
    return (
        f"{told}. It is bought {say_length(one.bought, edition)} long: sew a stop over the teeth at "
        f"{say_length(one.length, edition)}, six stitches on one place with doubled thread, and cut the zip off "
        f"{say_length(_STUB[edition.name], edition)} beyond it"
    )


_STUB = {"inch": read_length("1/2 in"), "metric": read_length("1.2 cm")}

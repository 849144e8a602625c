"""Ties and loops at places of an edge: their keys and a step come in, checked places and the words of it go out."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from itertools import pairwise
from types import MappingProxyType

from generator.calculation.making_up.items import HEMS
from generator.calculation.making_up.thing import Edge
from generator.calculation.worked_project import ClosureWork
from generator.calculation.worksheet.followed import edges_of
from generator.calculation.worksheet.lists import edge_words
from generator.calculation.worksheet.moment import Moment
from generator.calculation.worksheet.scope import Scope
from generator.definitions.closures import Closure
from generator.errors import CalculationError
from generator.lengths import on_ruler


def told_places(scope: Scope, model: Closure, length: Fraction) -> tuple[Fraction, ...]:
    """Return the places that a closure tells one by one, from the start of its edge [in].

    Parameters
    ----------
    scope : Scope
        The project in one size and edition.
    model : Closure
        With its places.
    length : Fraction
        Finished length of the edge [in].

    Raises
    ------
    CalculationError
        If a place lies beyond the edge, or not behind the one before it.
    """
    places = tuple(scope.value(one) for one in model.at)
    beyond = next((place for place in places if not 0 <= place <= length), None)
    if beyond is not None:
        told = f"{scope.say(beyond)} lies beyond '{model.on}', which is {scope.say(length)} long"
        raise CalculationError(f"{told}; the places after 'at' are measured from its start")
    wrong = next((pair for pair in pairwise(places) if pair[1] <= pair[0]), None)
    if wrong is not None:
        told = f"{scope.say(wrong[1])} stands behind {scope.say(wrong[0])}"
        raise CalculationError(f"{told}; write the places after 'at' in their order along the edge, each once")
    return places


def check_strips(scope: Scope, model: Closure, closure: ClosureWork, length: Fraction) -> None:
    """Hold that as many ties or loops are cut as are sewn on, and that they lie beside each other on their edge.

    Raises
    ------
    CalculationError
        If more or fewer are cut.
    """
    if not model.strips:
        return
    strip = scope.piece(model.strips)
    sewn = sum(
        (len(one.at) or scope.count(one.number)) * scope.count(one.each)
        for one in scope.project.closures
        if one.strips == model.strips
    )
    if strip.quantity != sewn:
        told = f"{sewn} of '{model.strips}' are sewn on, and {strip.quantity} are cut"
        raise CalculationError(f"{told}; write quantity: {sewn}")
    wide = closure.each * strip.measures.get("width", Fraction(0))
    if any(after - before < wide for before, after in pairwise(closure.positions)):
        told = f"the {closure.kind} on '{model.on}' lie over each other: at a place they are {scope.say(wide)} wide"
        scope.report("warning", f"{told}; take fewer, or places farther apart", model.place)
    ends = (closure.positions[0], length - closure.positions[-1]) if closure.positions else ()
    if any(end < wide / 2 for end in ends):
        told = f"the {closure.kind} at the end of '{model.on}' reach over it by {scope.say(wide / 2 - min(ends))}"
        scope.report("warning", f"{told}; move them inwards", model.place)


def _strips_here(moment: Moment) -> tuple[ClosureWork, ...]:
    return tuple(one for one in moment.context.closures if one.strips and one.strips in moment.act.pieces)


def _places(moment: Moment) -> str:
    """Return where the ties or loops of a step are sewn to which edge."""
    edition, pieces = moment.context.scope.edition, moment.context.pieces
    lines = []
    for one in _strips_here(moment):
        each = "" if one.each == 1 else f" {one.each} side by side"
        places = ", ".join(on_ruler(place, edition) for place in one.positions)
        where = f"their middles{each} at {places} {edition.unit} from its start, along the finished edge"
        lines.append(f"- {edge_words(one.on, pieces)}: {where}. {one.note}".rstrip())
    return "\n".join(lines)


def _edges(moment: Moment) -> list[Edge]:
    return [edge for one in _strips_here(moment) for edge in edges_of(one.on)]


def _hemmed(moment: Moment) -> bool:
    ends = [moment.context.pieces[piece].edges[side].end.kind for piece, side in _edges(moment)]
    return bool(ends) and all(end in HEMS for end in ends)


STRIP_CONDITIONS: Mapping[str, Callable[[Moment], bool]] = MappingProxyType(
    {
        "on a hem": _hemmed,
        "loops": lambda moment: any(one.kind == "loops" for one in _strips_here(moment)),
    }
)
STRIP_BRACKETS: Mapping[str, Callable[[Moment], str]] = MappingProxyType({"tie places": _places})

"""Embroidery on a sheet: its keys come in, where it lies, what it meets and what is bought for it goes out."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import SupplyLine
from generator.calculation.worksheet.moment import Moment
from generator.calculation.worksheet.scope import Scope
from generator.definitions.caution_rule import asked_names
from generator.definitions.cords import CHILDREN
from generator.definitions.embroidery import Embroidery
from generator.errors import CalculationError
from generator.lengths import Edition, read_length, say_length

_LARGER = {"inch": read_length("2 in"), "metric": read_length("5 cm")}


@dataclass(frozen=True, slots=True)
class Area:
    """An embroidered area: its size, and how far it lies from the left and the top finished edge [in]."""

    across: Fraction
    along: Fraction
    left: Fraction
    top: Fraction


def area_on(across: Fraction, along: Fraction, wanted: Area, edition: Edition) -> Area:
    """Return where an area lies on a piece of a finished size [in].

    Parameters
    ----------
    across, along : Fraction
        Finished size of the piece [in].
    wanted : Area
        Its size, and where it is wanted; less than nothing for the middle.
    edition : Edition
        For the words of a refusal.

    Raises
    ------
    CalculationError
        If it has no size, or reaches over an edge.

    Examples
    --------
    A design of 4 x 3 in in the middle of 16 x 12 in lies 6 in from the left and 4 1/2 in from the top.

    >>> from generator.lengths import INCH
    >>> area = area_on(Fraction(16), Fraction(12), Area(Fraction(4), Fraction(3), Fraction(-1), Fraction(-1)), INCH)
    >>> area.left, area.top
    (Fraction(6, 1), Fraction(9, 2))
    """
    if wanted.across == wanted.along == 0:
        raise CalculationError("an embroidery is an area or a line; write how large it is: across, along, or both")
    left = (across - wanted.across) / 2 if wanted.left < 0 else wanted.left
    top = (along - wanted.along) / 2 if wanted.top < 0 else wanted.top
    for start, size, whole, edge in ((left, wanted.across, across, "right"), (top, wanted.along, along, "bottom")):
        over = max(start + size - whole, -start)
        if over > 0:
            told = f"the embroidery reaches over the {edge} edge by {say_length(over, edition)}"
            raise CalculationError(f"{told}; make it smaller, or move it")
    return Area(wanted.across, wanted.along, left, top)


def tucks_under(piece: Piece, area: Area) -> tuple[int, ...]:
    """Return the numbers of the tucks whose flaps may lie under an area, whichever way they turn."""
    tucks = piece.panel.across if piece.panel is not None else None
    if tucks is None:
        return ()
    right = area.left + area.across
    return tuple(
        number
        for number, (foot, depth) in enumerate(zip(tucks.stitching, tucks.depths, strict=True), 1)
        if foot + depth > area.left and foot - depth < right
    )


def _area(scope: Scope, model: Embroidery) -> Area:
    piece = scope.piece(model.on)
    size = scope.value(model.across), scope.value(model.along)
    told = (scope.value(one) if one is not None else Fraction(-1) for one in (model.from_left, model.from_top))
    with scope.reporting(model.place):
        return area_on(piece.finished_across, piece.finished_along, Area(*size, *told), scope.edition)


def embroidery_supplies(scope: Scope) -> Iterator[SupplyLine]:
    """Give what is bought for embroidery: stabiliser, an inch larger all round, and its thread."""
    for model in scope.project.embroidery:
        area, more = _area(scope, model), _LARGER[scope.edition.name]
        size = " by ".join(scope.say(side + more) for side in (area.across, area.along))
        yield SupplyLine(f"Stabiliser for the embroidery, {size}", "1", number=Fraction(1))
        length = scope.value(model.length) if model.length is not None else Fraction(0)
        colour = f", {model.thread}" if model.thread else ""
        how = "" if length else ", as your design says"
        amount = scope.say(length) if length else "1"
        yield SupplyLine(f"Embroidery thread{colour}{how}", amount, number=Fraction(1), length=length)


def _here(moment: Moment) -> list[tuple[Embroidery, Piece, Area]]:
    scope = moment.context.scope
    models = [one for one in scope.project.embroidery if one.on in moment.act.pieces]
    return [(one, moment.context.pieces[one.on], _area(scope, one)) for one in models]


def _places(moment: Moment) -> str:
    scope = moment.context.scope
    lines = []
    for model, piece, area in _here(moment):
        size = f"an area {scope.say(area.across)} across and {scope.say(area.along)} along"
        if not area.across or not area.along:
            way = "along the tucks" if not area.across else "across"
            size = f"a line {scope.say(area.across + area.along)} long, {way}"
        left, top = (start + piece.edges[side].allowance for start, side in ((area.left, "left"), (area.top, "top")))
        met = tucks_under(piece, area)
        under = f"; {_tucks(met)} under it" if met else ""
        thread = f", thread {model.thread}" if model.thread else ""
        place = f"**{scope.say(left)}** from the left and **{scope.say(top)}** from the top"
        lines.append(f"- {size}, {place}{under}{thread}.")
    return "\n".join(lines)


def _tucks(numbers: tuple[int, ...]) -> str:
    return f"tuck {numbers[0]} lies" if len(numbers) == 1 else f"tucks {numbers[0]} to {numbers[-1]} lie"


def _small_child(moment: Moment) -> bool:
    return CHILDREN in asked_names(moment.context.scope.project.cautions)


EMBROIDERY_CONDITIONS: Mapping[str, Callable[[Moment], bool]] = MappingProxyType(
    {
        "over tucks": lambda moment: any(tucks_under(piece, area) for _, piece, area in _here(moment)),
        "for a small child": _small_child,
    }
)
EMBROIDERY_BRACKETS: Mapping[str, Callable[[Moment], str]] = MappingProxyType({"embroidery": _places})

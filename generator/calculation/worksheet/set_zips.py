"""How a zip is sewn beside what else lies in its seam, a lining or piping: a step comes in, its words go out."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType

from generator.calculation.making_up.seams import zip_linings, zip_of
from generator.calculation.making_up.thing import Closing, Edge
from generator.calculation.worksheet.lists import edge_words
from generator.calculation.worksheet.moment import Moment
from generator.lengths import Edition, read_length, say_length

# From the edge of a zip's tape to its seam, so that the seam lies as far from the teeth as a zip foot wants; common
# practice, no source: a tape is 1 1/4 in or 3 cm wide.
_ON_TAPE = {"inch": read_length("3/8 in"), "metric": read_length("9 mm")}


def tape_inset(allowance: Fraction, edition: Edition) -> Fraction:
    """Return how far inside the raw edge the tape of a zip lies, where its seam runs on the seam line [in].

    A seam 3/8 in or 9 mm from the edge of the tape lies 1/4 in or 6 mm beside the teeth: allowance - 3/8 in.

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> tape_inset(Fraction(5, 8), INCH), tape_inset(Fraction(1, 4), INCH)
    (Fraction(1, 4), Fraction(0, 1))
    """
    return max(allowance - _ON_TAPE[edition.name], Fraction(0))


def _zips_here(moment: Moment) -> Iterator[Closing]:
    places = {item.on for item in moment.gives if item.state == "set"}
    closings = moment.book.thing.closings if moment.book is not None else ()
    return (one for one in closings if "opens a seam" in one.facts and f"@{one.number}" in places)


def zip_layers(moment: Moment) -> str:
    """Return what lies in each of the two seams of a lined zip, from below, and where its tape and the seam lie."""
    if moment.book is None:
        return ""
    edition, pieces = moment.context.scope.edition, moment.context.pieces
    lines = []
    for closing in _zips_here(moment):
        for _, ((name, side), lining) in zip_linings(closing, moment.book.thing):
            allowance = pieces[name].edges[side].allowance
            inset = tape_inset(allowance, edition)
            tape = f"{say_length(inset, edition)} inside the raw edge" if inset else "level with the raw edge"
            layers = f"{edge_words(f'{name}.{side}', pieces)}, the zip, the {pieces[lining[0]].label}"
            lines.append(f"- {layers}: edge of the zip {tape}, seam **{say_length(allowance, edition)}** from it.")
    return "\n".join(lines)


def piped_side(moment: Moment) -> str:
    """Return which edge of a zip has piping sewn to it already; empty where none has."""
    thing = moment.book.thing if moment.book is not None else None
    for closing in _zips_here(moment):
        for edge in (*closing.on, *closing.onto):
            if thing is not None and _is_piped(moment, edge):
                words = edge_words(".".join(edge), moment.context.pieces)
                return f"{words[:1].upper()}{words[1:]}"
    return ""


def _is_piped(moment: Moment, edge: Edge) -> bool:
    seams = moment.book.thing.seams if moment.book is not None else ()
    return any(seam.sort == "piping" and edge in seam.edges for seam in seams)


def _zipped(moment: Moment) -> bool:
    """Whether a zip lies in a seam that the step sews or turns; when the work is filled, in any of its seams."""
    if moment.book is None:
        return False
    thing = moment.book.thing
    filled = any(item.state == "filled" for item in moment.gives)
    return any(zip_of(seam, thing) is not None for seam in (thing.seams if filled else moment.seams))


ZIP_CONDITIONS: Mapping[str, Callable[[Moment], bool]] = MappingProxyType(
    {
        "zipped": _zipped,
        "piped zip": lambda moment: bool(piped_side(moment)),
        "shortened": lambda moment: any(one.bought > one.length > 0 for one in moment.context.closures),
    }
)
ZIP_BRACKETS: Mapping[str, Callable[[Moment], str]] = MappingProxyType(
    {"zip layers": zip_layers, "piped side": piped_side}
)

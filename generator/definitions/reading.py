"""Values out of words: the words of a file come in, formulas, ranges, finishes and texts go out, or a fault.

A :class:`Reading` holds what the reading of one file knows: the names that formulas may use and the findings so far.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import partial
from typing import cast

from generator.definitions.conversion import Purpose, converted, edition_of
from generator.definitions.faults import Fault, Faults, SilentFault, meant
from generator.definitions.formula import Between, FormulaReader, Side
from generator.definitions.names import Names
from generator.definitions.nodes import Scalar
from generator.definitions.piece_kind import PieceKind
from generator.definitions.terms import Constant, Term, parts_of
from generator.definitions.values import CountWish, Finish, FinishKind, Formula, NumberRule, Range
from generator.definitions.vocabulary import EDITION_NAMES, FINISHES
from generator.errors import CalculationError, FaultyFileError, Finding, Place
from generator.lengths import EDITIONS, INCH, Edition

ANY_SORT = -1
_FAR_APART = (
    "are the two editions of one length? They differ by more than a quarter; look at both sides of 'or', and write the "
    "metric value that belongs to the inch value"
)
# Two plain lengths with a dash between them: for a range that is meant as one, whatever a formula would make of it.
_PLAIN = r"[\d½¼¾⅛⅜⅝⅞][\d ./⁄½¼¾⅛⅜⅝⅞]*(?:in|ft|yd|mm|cm|m)?\b"
_DASHED = re.compile(rf"(?:^|(?<=or ))\s*({_PLAIN})\s*[-–—−]\s*({_PLAIN})\s*(?=$|or )")
EMPTY = "nothing is written here; give a value, or take the line out"


@dataclass(slots=True)
class Reading:
    """What is known while one file is read.

    ``kinds`` has the kind of each piece, None where it is broken, ``kind`` that of the piece just read. ``sizes`` and
    ``measures`` are those read so far, ``cloths`` the names of the project's cloths, ``steps`` the standard steps,
    ``samples`` the room's own, ``cautions`` the names of all that the tool and the room have; ``broken`` are the
    sections that could not be read. ``marks`` are the finest marks of the room's rulers [in], by edition.
    """

    faults: Faults = field(default_factory=Faults)
    names: Names = field(default_factory=Names)
    editions: tuple[str, ...] = EDITION_NAMES
    kinds: Mapping[str, PieceKind | None] = field(default_factory=dict)
    kind: PieceKind | None = None
    sizes: Mapping[str, object] = field(default_factory=dict)
    measures: Mapping[str, Formula] = field(default_factory=dict)
    cloths: frozenset[str] = frozenset()
    steps: frozenset[str] = frozenset()
    samples: Mapping[str, object] = field(default_factory=dict)
    cautions: frozenset[str] = frozenset()
    broken: frozenset[str] = frozenset()
    marks: Mapping[str, Fraction] = field(default_factory=dict)

    def unknown(self, section: str, text: str, offset: int = 0) -> Fault:
        """Return the fault of a name that a section does not have; silent where the section itself is broken."""
        return SilentFault() if section in self.broken else Fault(text, offset)

    def kind_of(self, piece: str, offset: int = 0) -> PieceKind | None:
        """Return the kind of a piece of the file by its name; None where its own group is broken.

        Raises
        ------
        Fault
            If there is no such piece; silent where the section of pieces itself is broken.
        """
        if piece not in self.kinds:
            raise self.unknown("pieces", f"there is no piece '{piece}'{meant(piece, self.kinds)}", offset)
        return self.kinds[piece]

    def noter(self, words: Scalar, offset: int) -> Callable[[str], None]:
        """Return what takes a note about a length of one edition; only a project of both editions needs it."""
        place = words.at(offset)
        if len(self.editions) < 2:
            return lambda text: None
        return lambda text: self.faults.add(place, text, "note")


def filled_words(words: Scalar) -> str:
    """Return the text of words that must not be empty."""
    if not words.text.strip():
        raise Fault(EMPTY)
    return words.text


def read_terms(words: Scalar, reading: Reading, *, between: Between = "", skip: int = 0) -> list[Side]:
    """Return the sides and parts of a value, each with its offset."""
    filled_words(words)
    return FormulaReader(words.text, reading.names, skip).sides(between)


def formulas(
    words: Scalar, sides: list[Side], reading: Reading, wanted: int = 1, purpose: Purpose = "general"
) -> tuple[Formula, ...]:
    """Return one formula for each part, with a term for both editions."""
    if len({len(side) for side in sides}) > 1:
        raise Fault("the inch side and the metric side of 'or' differ in their number of parts", sides[1][0][1])
    _check_editions(sides)
    found = []
    for parts in zip(*sides, strict=True):
        start = parts[0][1]
        dimensions = [_sort(term, wanted, offset) for term, offset in parts]
        if len(set(dimensions)) > 1:
            raise Fault("one side of 'or' is a length, the other a plain number", parts[1][1])
        note = reading.noter(words, start)
        # The ends of a range are chosen for each ruler by itself and may well lie apart.
        if len(sides[0]) == 1 and _far_apart([term for term, _ in parts]):
            reading.faults.add(words.at(parts[1][1]), _FAR_APART, "warning")
        inch, metric = (
            converted(parts[min(place, len(parts) - 1)][0], EDITIONS[name], purpose, note)
            for place, name in enumerate(EDITION_NAMES)
        )
        found.append(Formula(words.text.strip(), words.at(start), dimensions[0], inch, metric))
    return tuple(found)


def _check_editions(sides: list[Side]) -> None:
    """Refuse inches on the metric side and the other way round, and both in one value."""
    for side, name in zip(sides, EDITION_NAMES, strict=False):
        for term, offset in side:
            used = dict.fromkeys(edition_of(unit) for unit in _units(term))
            if len(sides) == 1 and len(used) > 1:
                told = "inches and centimetres in one value; write the inch value, then 'or', then the metric value"
                raise Fault(told, offset)
            wrong = [unit for unit in _units(term) if edition_of(unit) != name]
            if len(sides) == 2 and wrong:
                told = f"the {name} side of 'or' is in {wrong[0]}; inches stand first, then centimetres"
                raise Fault(told, offset)


def _far_apart(terms: list[Term]) -> bool:
    """Whether two plain lengths stand on both sides of 'or' that differ by more than a quarter of the larger."""
    lengths = [term.value for term in terms if isinstance(term, Constant) and term.dimension == 1]
    return len(lengths) == 2 and 4 * abs(lengths[0] - lengths[1]) > max(lengths)


def _units(term: Term) -> list[str]:
    return [part.unit for part in parts_of(term) if isinstance(part, Constant) and part.unit]


def _sort(term: Term, wanted: int, offset: int) -> int:
    """Return the dimension of a term if it is the one that is wanted."""
    found = term.dimension
    if found is None:
        return max(wanted, 0)
    if found not in (0, 1):
        sort = "an area" if found == 2 else "neither a length nor a number"
        wish = {1: "a length", 0: "a plain number"}.get(wanted, "a length or a number")
        raise Fault(f"{wish} is wanted here, this is {sort}", offset)
    if wanted == 1 and found == 0:
        told = "a length is wanted here, this is a plain number; write its unit, as in 1/2 in or 1 cm"
        raise Fault(told, offset)
    if wanted == 0 and found == 1:
        raise Fault("a plain number is wanted here, this is a length", offset)
    return found


def read_value(words: Scalar, reading: Reading, *, wanted: int = 1, purpose: Purpose = "general") -> Formula:
    """Return a length (``wanted`` 1), a number (0) or either (``ANY_SORT``)."""
    return formulas(words, read_terms(words, reading), reading, wanted, purpose)[0]


def fixed(formula: Formula, edition: Edition = INCH) -> Fraction:
    """Return the value of a formula without names, lengths in inches; a division by nothing is a fault of the words."""
    try:
        return formula.fixed(edition)
    except CalculationError as refusal:
        raise Fault(str(refusal)) from None


def read_range(words: Scalar, reading: Reading, *, falling: bool = False, purpose: Purpose = "general") -> Range:
    """Return a range of lengths; ``falling`` allows the larger value first."""
    dash = _DASHED.search(words.text)
    if dash:
        raise Fault(f"a range is written with the word to: {dash[1].strip()} to {dash[2].strip()}", dash.start())
    sides = read_terms(words, reading, between="to")
    for side in sides:
        if len(side) > 2:
            raise Fault("a range has two ends: the smaller value, 'to', the larger value", side[2][1])
        ends = [term.value for term, _ in side if isinstance(term, Constant)]
        if not falling and len(ends) == 2 and ends[0] > ends[1]:
            raise Fault("the range runs downwards; write the smaller value first", side[0][1])
    found = formulas(words, sides, reading, 1, purpose)
    return Range(found[0], found[-1])


def read_finish(words: Scalar, reading: Reading) -> Finish:
    """Return how an edge is finished."""
    text = filled_words(words)
    kind = next((name for name in sorted(FINISHES, key=len, reverse=True) if re.match(rf"{name}\b", text)), None)
    if kind is None:
        first = re.split(r"\s+(?=\d)", text)[0]
        raise Fault(f"'{first}' is no way to finish an edge{meant(first, FINISHES)}")
    least, most = FINISHES[kind]
    rest = text[len(kind) :]
    if not rest.strip():
        if least:
            raise Fault(f"a {kind} needs its width, for example {kind} 1 in or 2.5 cm", len(kind))
        return Finish(cast(FinishKind, kind), (), words.at(0))
    if most == 0:
        raise Fault(f"nothing stands after '{kind}'", len(kind) + 1)
    sides = read_terms(words, reading, between="then", skip=len(kind))
    if len(sides[0]) > most:
        raise Fault(f"a {kind} has {most} width{'s' if most > 1 else ''} at most", sides[0][most][1])
    widths = formulas(words, sides, reading, 1, "seam" if kind == "seam" else "general")
    return Finish(cast(FinishKind, kind), widths, words.at(0))


def read_number(words: Scalar, reading: Reading) -> CountWish:
    """Return how many tucks or rows are wanted."""
    text = filled_words(words).strip()
    rules: dict[str, NumberRule] = {"any": "any", "even": "even", "odd": "odd"}
    if text in rules:
        return CountWish(rules[text])
    many = re.match(r"multiple of\b", text)
    skip = many.end() if many else 0
    sides = read_terms(words, reading, skip=skip)
    return CountWish("multiple" if many else "exactly", formulas(words, sides, reading, 0)[0])


def read_formula(text: str, place: Place, names: Names, *, wanted: int = 1) -> Formula:
    """Return a formula that stands in no file, for example on the command line.

    Raises
    ------
    FaultyFileError
        If it cannot be read; the column counts from ``place``.
    """
    words = Scalar(text, place)
    try:
        return read_value(words, Reading(names=names), wanted=wanted)
    except Fault as fault:
        raise FaultyFileError([Finding("error", fault.text, words.at(fault.offset))]) from fault


constant = partial(read_formula, place=Place(""), names=Names())

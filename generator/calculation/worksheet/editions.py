"""What changed between published editions of a project: figures come in, changed numbers go out; words do not count.

Of every sheet only its printed numbers are kept, each under a name that a person reads, so that the file in the
repository stays small and shows in plain text what changed.
"""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from generator.errors import CalculationError

Numbers = Mapping[str, str]
SheetName = tuple[str, str]

_SIDES = ("cut", "finished")
_TUCK_WORDS = {
    "count": "number of tucks",
    "depth": "depth",
    "spacing": "spacing",
    "take_up": "cloth hidden",
    "margins": "margins",
    "marks": "fold marks",
}
_CLOTH_WORDS = {"width": "cloth width", "length": "cloth used", "buy": "cloth to buy"}
_CLOSURE_WORDS = {"number": "number", "positions": "places", "buttonhole": "buttonhole"}
_LISTED = ", "
_LONGEST_MARK = 40
_FINGERPRINT = 12


@dataclass(frozen=True, slots=True)
class PublishedEdition:
    """The numbers of all sheets of a project as they were published under an edition mark.

    ``day`` is when, as ``2031-03-14``. ``sheets`` maps size and edition to the printed numbers: what they are, by
    piece, and how they read.
    """

    project: str
    mark: str
    day: str
    sheets: Mapping[SheetName, Numbers]


@dataclass(frozen=True, slots=True)
class ChangedNumber:
    """One number that reads otherwise: where it stands, what it is, what it was and what it is now.

    ``piece`` is empty for what belongs to the whole sheet. A number that was not there, or is no longer, is empty.
    """

    project: str
    size: str
    edition: str
    piece: str
    what: str
    was: str
    now: str


def printed_numbers(figures: Mapping[str, Any]) -> dict[str, str]:
    """Return the numbers of one sheet that a person cuts, marks, sews or buys by.

    Parameters
    ----------
    figures : Mapping
        The figures of a worksheet.

    Returns
    -------
    dict of str to str
        ``piece: what`` and how it reads; wording, times and findings are left out.

    Examples
    --------
    >>> printed_numbers({"pieces": {"back": {"quantity": 2, "cut": {"across": "10", "along": "13"}}}})
    {'back: how many': '2', 'back: cut across': '10', 'back: cut along': '13'}

    References
    ----------
    Derived above.
    """
    named = (*_own(figures), *_of_pieces(figures), *_of_closures(figures), *_of_cloths(figures))
    return {what: read for what, read in named if read}


def _own(figures: Mapping[str, Any]) -> Iterator[tuple[str, str]]:
    """The measures and plain numbers that a size gives itself: the text of a step may print them."""
    for group in ("measures", "numbers"):
        for name, value in figures.get(group, {}).items():
            yield f": {name}", str(value)


def _of_pieces(figures: Mapping[str, Any]) -> Iterator[tuple[str, str]]:
    for name, piece in figures.get("pieces", {}).items():
        yield f"{name}: how many", str(piece.get("quantity", ""))
        for side in _SIDES:
            for direction, length in piece.get(side, {}).items():
                yield f"{name}: {side} {direction}", length
        for group, words in (("tucks", ""), ("cross_tucks", "cross tucks, ")):
            for key, word in _TUCK_WORDS.items():
                yield f"{name}: {words}{word}", _read(piece.get(group, {}).get(key, ""))
        for what, read in (*_of_rows(piece.get("rows", {})), *_of_checks(piece), *_of_joins(piece)):
            yield f"{name}: {what}", read


def _of_rows(rows: Mapping[str, Any]) -> Iterator[tuple[str, str]]:
    yield "rows ruled at", _read(rows.get("ruled", ""))
    for number, (start, turns) in enumerate(zip(rows.get("start", ()), rows.get("turns", ()), strict=True), 1):
        yield f"turns of row {number}", f"from the {start}: {turns}"


def _of_checks(piece: Mapping[str, Any]) -> Iterator[tuple[str, str]]:
    for group, words in (("checkpoints", ""), ("cross_checkpoints", "cross tucks, ")):
        for point in piece.get(group, ()):
            yield f"{words}check after tuck {point['after']}", point["expect"]


def _of_joins(piece: Mapping[str, Any]) -> Iterator[tuple[str, str]]:
    yield "breadths", _read(piece.get("breadths", ""))
    yield "joins at", _read([join["at"] for join in piece.get("joins", ())])


def _of_closures(figures: Mapping[str, Any]) -> Iterator[tuple[str, str]]:
    for closure in figures.get("closures", ()):
        for key, word in _CLOSURE_WORDS.items():
            yield f": {closure['kind']} on {closure['on']}, {word}", _read(closure.get(key, ""))


def _of_cloths(figures: Mapping[str, Any]) -> Iterator[tuple[str, str]]:
    for name, cloth in figures.get("cloth", {}).items():
        for key, word in _CLOTH_WORDS.items():
            yield f": {name}, {word}", _read(cloth.get(key, ""))
    thread = figures.get("thread", {})
    yield ": thread", thread.get("length", "")
    yield ": spools of thread", str(thread.get("spools", ""))


def _read(value: object) -> str:
    return _LISTED.join(map(str, value)) if isinstance(value, list | tuple) else str(value)


def fingerprint(numbers: Numbers) -> str:
    """Return a short word that stands for the numbers of a sheet: the same numbers have the same, others another.

    Parameters
    ----------
    numbers : Mapping of str to str
        The printed numbers of one sheet; their order does not count.

    Examples
    --------
    >>> fingerprint({": girth": "20", ": lap": "3"}) == fingerprint({": lap": "3", ": girth": "20"})
    True
    >>> fingerprint({": girth": "20"}) == fingerprint({": girth": "20 1/8"})
    False

    References
    ----------
    SHA-256 (FIPS 180-4) of the numbers as JSON, its first 12 digits.
    """
    told = json.dumps(dict(numbers), sort_keys=True)
    return hashlib.sha256(told.encode()).hexdigest()[:_FINGERPRINT]


def checked_mark(mark: str) -> str:
    """Return an edition mark without spaces around it.

    Parameters
    ----------
    mark : str
        As a person wrote it.

    Raises
    ------
    CalculationError
        If it is empty, longer than 40 letters or more than one line, or would be taken for the word that sheets bear
        without a mark.

    Examples
    --------
    >>> checked_mark(" 2031-03 b ")
    '2031-03 b'
    """
    bare = mark.strip()
    if not bare:
        raise CalculationError("a published edition needs a mark; write for example '2031-03 b'")
    if len(bare) > _LONGEST_MARK or not bare.isprintable():
        raise CalculationError(
            f"an edition mark is one line of {_LONGEST_MARK} letters at most; write for example '2031-03 b'"
        )
    if bare.lower().startswith("draft"):
        raise CalculationError(
            f"'{bare}' cannot be an edition mark: sheets without one say draft; write for example '2031-03 b'"
        )
    return bare


def published_edition(
    project: str, mark: str, day: str, figures_of_sheets: Iterable[Mapping[str, Any]]
) -> PublishedEdition:
    """Return what is kept of the sheets of a project.

    Raises
    ------
    CalculationError
        If the mark is none or the day is no day.
    """
    mark = checked_mark(mark)
    if not re.fullmatch(r"\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])", day, re.ASCII):
        raise CalculationError(f"'{day}' is not a day; write year, month and day, for example 2031-03-14")
    sheets = {(sheet["size"], sheet["edition"]): printed_numbers(sheet) for sheet in figures_of_sheets}
    return PublishedEdition(project, mark, day, sheets)


def with_published(editions: Sequence[PublishedEdition], new: PublishedEdition) -> tuple[PublishedEdition, ...]:
    """Return all published editions with one more at the end; the numbers of the newest under its mark add nothing.

    Raises
    ------
    CalculationError
        If the mark was used before, for other numbers or for an edition that another has followed.
    """
    taken = next((edition for edition in editions if edition.mark == new.mark), None)
    if taken is None:
        return (*editions, new)
    again = "choose a new mark, so that a printed sheet can be told from this one"
    if taken.sheets != new.sheets:
        raise CalculationError(f"other numbers of '{new.project}' were published under the mark '{new.mark}'; {again}")
    if taken is not editions[-1]:
        raise CalculationError(
            f"'{new.project}' was published under '{editions[-1].mark}' since it bore the mark '{new.mark}'; {again}"
        )
    return tuple(editions)


def changed_numbers(older: PublishedEdition, newer: PublishedEdition) -> tuple[ChangedNumber, ...]:
    """Return every number of the older edition that reads otherwise in the newer one.

    Parameters
    ----------
    older, newer : PublishedEdition
        Two editions of one project.

    Returns
    -------
    tuple of ChangedNumber
        In the order of the older sheets. A sheet that is new has nothing to correct; one that is gone is told.

    References
    ----------
    Derived above.
    """
    changed: list[ChangedNumber] = []
    for (size, edition), was in older.sheets.items():
        now = newer.sheets.get((size, edition))
        if now is None:
            gone = ("", "this sheet", "published", "no longer published")
            changed.append(ChangedNumber(older.project, size, edition, *gone))
            continue
        for name in dict.fromkeys((*was, *now)):
            before, after = was.get(name, ""), now.get(name, "")
            if before != after:
                piece, _, what = name.partition(": ")
                changed.append(ChangedNumber(older.project, size, edition, piece, *_narrowed(what, before, after)))
    return tuple(changed)


def _narrowed(what: str, was: str, now: str) -> tuple[str, str, str]:
    """Of a list of numbers only those that changed, with their places in the list."""
    before, after = was.split(_LISTED), now.split(_LISTED)
    places = [place for place, pair in enumerate(zip(before, after, strict=False)) if pair[0] != pair[1]]
    if len(before) != len(after) or len(before) == 1 or len(places) == len(before):
        return what, was, now
    told = _LISTED.join(str(place + 1) for place in places)
    old, new = (_LISTED.join(numbers[place] for place in places) for numbers in (before, after))
    return f"{what} (number {told})", old, new

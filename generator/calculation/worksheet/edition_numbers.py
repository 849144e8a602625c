"""The printed numbers of a sheet: its figures come in, each number by a name that a person reads goes out."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator, Mapping
from typing import Any

Numbers = Mapping[str, str]
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
LISTED = ", "
_FINGERPRINT = 12


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
        if "length" in closure:
            yield f": {closure['kind']} on {closure['on']}, length", closure["length"]


def _of_cloths(figures: Mapping[str, Any]) -> Iterator[tuple[str, str]]:
    for name, cloth in figures.get("cloth", {}).items():
        for key, word in _CLOTH_WORDS.items():
            yield f": {name}, {word}", _read(cloth.get(key, ""))
    thread = figures.get("thread", {})
    yield ": thread", thread.get("length", "")
    yield ": spools of thread", str(thread.get("spools", ""))


def _read(value: object) -> str:
    return LISTED.join(map(str, value)) if isinstance(value, list | tuple) else str(value)


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

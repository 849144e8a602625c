"""What numbers a style sheet may hold: its text comes in, findings about numbers that would fill a machine go out.

A style sheet can ask for ten million columns in a few letters. It may come from a stranger, so it is judged before
anything is set with it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import prod
from typing import Any

import tinycss2

from generator.errors import Finding, Place
from generator.limits import LARGEST_STYLE_NUMBER, MOST_COLUMNS, MOST_REPEATS

_COLUMNS = ("column-count", "columns")
_DEEPEST = 30
_ABSOLUTE = {"in": 1.0, "cm": 1 / 2.54, "mm": 1 / 25.4, "q": 1 / 101.6, "pt": 1 / 72, "pc": 1 / 6, "px": 1 / 96}


def style_findings(text: str, file: str) -> list[Finding]:
    """Return what is wrong with the numbers of a style sheet, each at its line."""
    if _depth(text) > _DEEPEST:
        return [Finding("error", f"brackets inside each other, {_DEEPEST} deep at most", Place(file))]
    parts = tinycss2.parse_component_value_list(text, skip_comments=True)
    return [
        Finding("error", told, Place(file, part.source_line, part.source_column))
        for value, name in _declared(parts, "")
        for part, told in _faults(value, name)
    ]


def content_texts(text: str, file: str) -> Iterator[tuple[str, Place]]:
    """Give every text that a style sheet prints by ``content``, with its place."""
    for part, name in _declared(tinycss2.parse_component_value_list(text, skip_comments=True), ""):
        if part.type == "string" and name == "content":
            yield part.value, Place(file, part.source_line, part.source_column)


def _depth(text: str) -> int:
    """Return how deep brackets stand inside each other, at most; signs in comments and texts count as well."""
    deepest = depth = 0
    for sign in text:
        depth = max(0, depth + (sign in "([{") - (sign in ")]}"))
        deepest = max(deepest, depth)
    return deepest


def _declared(parts: Sequence[Any], name: str) -> Iterator[tuple[Any, str]]:
    """Every value of a style sheet with the property that it is declared for; ``name`` is that of the one around it."""
    for place, part in enumerate(parts):
        if part.type == "ident" and place + 1 < len(parts) and parts[place + 1] == ":":
            name = part.lower_value
        elif part == ";":
            name = ""
        else:
            yield part, name
        if part.type == "function":
            yield from _declared(part.arguments, name)
        elif part.type.endswith(" block"):
            yield from _declared(part.content, name if part.type != "{} block" else "")


def _faults(part: Any, name: str) -> Iterator[tuple[Any, str]]:
    """What is wrong with a value of a property, beside the part of it that is wrong."""
    if part.type in ("number", "percentage", "dimension"):
        told = _told(part, name)
        if told:
            yield part, told
    elif part.type == "function":
        yield from _repeats(part)
        yield from _products(part)


def _told(part: Any, property_name: str) -> str:
    size = abs(part.value)
    if property_name in _COLUMNS and part.type == "number" and size > MOST_COLUMNS:
        return f"'{property_name}' has {MOST_COLUMNS} columns at most, this is {_said(part)}"
    if property_name.startswith("grid") and part.type == "number" and size > MOST_REPEATS:
        return f"a grid has {MOST_REPEATS} lines at most, this is {_said(part)}"
    inches = _ABSOLUTE.get(part.lower_unit, 0) * size if part.type == "dimension" else 0
    if size > LARGEST_STYLE_NUMBER or inches > LARGEST_STYLE_NUMBER / 96:
        most = f"{LARGEST_STYLE_NUMBER}, and lengths of {LARGEST_STYLE_NUMBER}px"
        return f"a style sheet has numbers up to {most} at most, this is {_said(part)}"
    return ""


def _repeats(part: Any) -> Iterator[tuple[Any, str]]:
    if part.lower_name != "repeat":
        return
    times = next((one for one in part.arguments if one.type == "number"), None)
    if times is not None and abs(times.value) > MOST_REPEATS:
        yield times, f"'repeat' repeats {MOST_REPEATS} times at most, this is {_said(times)}"


def _products(part: Any) -> Iterator[tuple[Any, str]]:
    """Judge a sum that multiplies or divides by how large its numbers can make each other."""
    if not any(one == "*" or one == "/" for one in part.arguments):
        return
    numbers = [abs(one.value) for one, _ in _declared(part.arguments, "") if one.type in ("number", "dimension")]
    most = prod(max(number, 1 / number) for number in numbers if number)
    if most > LARGEST_STYLE_NUMBER >= max(numbers, default=0):
        yield part, f"'{part.name}' may come to {most:.0f} here, {LARGEST_STYLE_NUMBER} at most; write what it comes to"


def _said(part: Any) -> str:
    return str(part.serialize()[:40])

"""The file that keeps the published editions of a project: editions come in, its text goes out, and the other way.

It is JSON that a person can read, for it lies in the repository, and a change of it is looked at like any other.
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from generator.calculation.worksheet.edition_numbers import Numbers
from generator.calculation.worksheet.editions import PublishedEdition, SheetName, published_edition
from generator.errors import CalculationError

Nested = dict[str, dict[str, dict[str, str]]]


def write_editions(editions: Sequence[PublishedEdition]) -> str:
    """Return the text of the file that keeps the published editions of a project, the newest last."""
    kept = [
        {"mark": one.mark, "day": one.day, **({"about": one.about} if one.about else {}), "sheets": nested(one.sheets)}
        for one in editions
    ]
    return json.dumps(kept, ensure_ascii=False, indent=1) + "\n"


def nested(sheets: Mapping[SheetName, Numbers]) -> Nested:
    """Return the numbers of sheets by size, then edition, for a file."""
    found: Nested = {}
    for (size, edition), numbers in sheets.items():
        found.setdefault(size, {})[edition] = dict(numbers)
    return found


def flat(sheets: Mapping[str, Any]) -> dict[SheetName, Numbers]:
    """Return the numbers of sheets from their form in a file.

    Raises
    ------
    ValueError
        If they have another form.
    """
    found: dict[SheetName, Numbers] = {}
    for size, editions in _group(sheets, "sheets").items():
        for edition, numbers in _group(editions, f"size '{size}'").items():
            read = _group(numbers, f"{edition} edition of size '{size}'")
            found[_text(size), _text(edition)] = {_text(what): _text(number) for what, number in read.items()}
    return found


def read_editions(text: str, project: str) -> tuple[PublishedEdition, ...]:
    """Return the published editions of a project from the text of its file.

    Raises
    ------
    CalculationError
        If the text is not what :func:`write_editions` writes; its cause is a JSONDecodeError where it is no JSON.
    """
    try:
        found = json.loads(text)
        if not isinstance(found, list):
            raise ValueError("a list of editions is wanted")
        editions = tuple(_edition(_group(one, "an edition"), project) for one in found)
        marks = [one.mark for one in editions]
        if len(set(marks)) < len(marks):
            raise ValueError("two editions have the same mark")
    except (ValueError, KeyError, RecursionError) as fault:
        why = f"{fault} is missing" if isinstance(fault, KeyError) else fault
        raise CalculationError(
            f"the published editions of '{project}' cannot be read ({why}); take the file from the repository again"
        ) from fault
    return editions


def _edition(one: Mapping[str, Any], project: str) -> PublishedEdition:
    edition = published_edition(project, _text(one["mark"]), _text(one["day"]), ())
    return replace(edition, sheets=flat(one["sheets"]), about=_text(one.get("about", "")))


def _group(found: object, what: str) -> Mapping[str, Any]:
    if not isinstance(found, dict):
        raise ValueError(f"{what}: a group of names is wanted")
    return found


def _text(found: object) -> str:
    """A text that can be written again: half of a pair of signs cannot."""
    if not isinstance(found, str):
        raise ValueError(f"{found!r} is no text")
    found.encode()
    return found

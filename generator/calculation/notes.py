"""What is told of a piece in one line of a table: notes come in, one text goes out."""

from __future__ import annotations

from collections.abc import Iterable
from functools import reduce


def notes_in_turn(notes: Iterable[str]) -> str:
    """Return notes one after the other, those that are empty left out; one that begins a sentence follows a full stop.

    Examples
    --------
    >>> notes_in_turn(["cut to the paper", "", "quilted to the front", "Glue side down."])
    'cut to the paper; quilted to the front. Glue side down.'
    """
    return reduce(_after, filter(None, notes), "")


def _after(told: str, note: str) -> str:
    if not told:
        return note
    if told.endswith("."):
        return f"{told} {note}"
    return f"{told}. {note}" if note[:1].isupper() else f"{told}; {note}"

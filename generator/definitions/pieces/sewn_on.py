"""Where a piece is sewn on another: "back, 3 in from the top" comes in, the piece and its distances go out."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from generator.definitions.faults import Fault
from generator.definitions.nodes import Scalar, fold
from generator.definitions.reading import Reading, filled_words, read_value
from generator.definitions.values import Formula
from generator.errors import Place

_PARTED = re.compile(r",(?![^(]*\))")
_FROM = re.compile(r"\s+from(?:\s+the)?\s+(\w+)$")
_ACROSS = {"left": "right", "right": "left", "top": "bottom", "bottom": "top"}
_EXAMPLE = "write for example: back, 3 in or 7.5 cm from the top, 2 in or 5 cm from the left"


@dataclass(frozen=True, slots=True)
class SewnOn:
    """The piece on which another is sewn, and how far from which of its finished edges; in the middle where none is."""

    piece: str
    at: Mapping[str, Formula]
    place: Place


def read_sewn_on(words: Scalar, reading: Reading) -> SewnOn:
    """Return where a piece is sewn on."""
    text = filled_words(words)
    ends = [found.start() for found in _PARTED.finditer(text)]
    parts = [
        (begin, text[begin:end]) for begin, end in zip([0, *(end + 1 for end in ends)], [*ends, None], strict=True)
    ]
    (_, named), *told = parts
    at: dict[str, Formula] = {}
    for begin, part in told:
        found = _FROM.search(part.rstrip())
        start = begin + len(part) - len(part.lstrip())
        if found is None or found[1] not in _ACROSS:
            raise Fault(f"'{part.strip()}' says no distance from an edge; {_EXAMPLE}", start)
        side = found[1]
        if side in at or _ACROSS[side] in at:
            raise Fault(
                f"one distance from the {side} or the {_ACROSS[side]} is enough; take one of the two out", start
            )
        at[side] = read_value(Scalar(part[: found.start()].strip(), words.at(start)), reading)
    return SewnOn(_flat_piece(named, reading), at, words.at(0))


def _flat_piece(named: str, reading: Reading) -> str:
    name = fold(named.strip())
    kind = reading.kind_of(name)
    if kind is not None and "face" not in kind.nature:
        raise Fault(f"'{name}' is {kind.told}; a piece is sewn on a flat one")
    return name

"""The words of a sheet, kept with its numbers: a worksheet comes in, a fingerprint of each of its texts goes out.

Texts are long, and the file of editions lies in the repository, so a text is kept as a fingerprint: it shows that words
changed and where, and the project file says under ``changes`` what it was about.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from hashlib import sha256

from generator.calculation.worked_project import Worksheet

WORDS = ": words of "
_LETTERS = 8
_NUMBER = re.compile(r"\d+(?:[ ./\N{FRACTION SLASH}]?\d+)*")


def kept_words(worksheet: Worksheet) -> dict[str, str]:
    """Return what a sheet says in words, each text by its name and as a fingerprint.

    Times and prices are no part of it: they change with the room and move no scissors.
    """
    return {f"{WORDS}{name}": text_fingerprint(*said) for name, said in _texts(worksheet)}


def _texts(worksheet: Worksheet) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Every text of a sheet with its name."""
    pieces = (piece.label for piece in worksheet.pieces.values())
    cloths = (cloth.label for cloth in worksheet.cloths.values())
    head = (worksheet.title, worksheet.size_label, worksheet.size_note, worksheet.kind, worksheet.level)
    body = (worksheet.size_source,) if worksheet.size_source else ()
    yield "the first page", (*head, worksheet.summary, *pieces, *cloths, *body)
    yield "what to buy", tuple(f"{line.amount} {line.item} {line.note}" for line in worksheet.notions)
    yield "the order of steps", tuple(step.title for step in worksheet.steps)
    met: Counter[str] = Counter()
    for step in worksheet.steps:
        met[step.title] += 1
        again = f" ({met[step.title]})" if met[step.title] > 1 else ""
        yield f"{step.title}{again}", (step.printed, *step.tools, *step.cautions)
    for caution in worksheet.cautions.values():
        yield f"the caution {caution.short}", (caution.level, caution.text)


def text_fingerprint(*said: str) -> str:
    """Return two short words that other texts as good as never have: one of all of it, one of all but its numbers.

    Examples
    --------
    Spaces do not count, and a text with other numbers has the same second word.

    >>> text_fingerprint("Press  it.") == text_fingerprint("Press it.") != text_fingerprint("Press it!")
    True
    >>> same_but_for_numbers(text_fingerprint("Cut 2 1/2 in off."), text_fingerprint("Cut 3 in off."))
    True
    """
    words = "\n".join(" ".join(text.split()) for text in said)
    return " ".join(sha256(told.encode()).hexdigest()[:_LETTERS] for told in (words, _NUMBER.sub("#", words)))


def same_but_for_numbers(one: str, other: str) -> bool:
    """Return whether two texts differ by their numbers alone, told from their fingerprints."""
    return one.partition(" ")[2] == other.partition(" ")[2]

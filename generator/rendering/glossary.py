"""The glossary: a page of Markdown comes in, its introduction and one entry for each word go out.

Each word stands in bold at the start of a paragraph, then a colon and what it means: ``**tuck**: a fold of cloth``.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from generator.rendering import addresses

_ENTRY = re.compile(r"\*\*(?P<word>[^*]+)\*\*:\s+(?P<text>.+)", re.DOTALL)


@dataclass(frozen=True, slots=True)
class GlossaryEntry:
    """One word, the anchor that leads to it, and what it means (Markdown)."""

    word: str
    anchor: str
    text: str


def read_glossary(text: str) -> tuple[str, tuple[GlossaryEntry, ...]]:
    """Return what stands before the first word, without the title, and every word in the order of the page.

    A paragraph that begins no word goes on with the one before it.
    """
    introduction: list[str] = []
    entries: list[GlossaryEntry] = []
    for block in re.split(r"\n\s*\n", text.strip()):
        found = _ENTRY.fullmatch(block)
        if found:
            entries.append(GlossaryEntry(found["word"], anchor(found["word"]), found["text"]))
        elif entries:
            last = entries[-1]
            entries[-1] = GlossaryEntry(last.word, last.anchor, f"{last.text}\n\n{block}")
        elif not block.startswith("# "):
            introduction.append(block)
    return "\n\n".join(introduction), tuple(entries)


def anchor(word: str) -> str:
    """Return the name on the page that leads to a word.

    Examples
    --------
    >>> anchor("Tack row"), anchor("finished size, asked for")
    ('tack-row', 'finished-size-asked-for')
    """
    return re.sub(r"[^a-z0-9]+", "-", word.lower()).strip("-") or addresses.slug(word)

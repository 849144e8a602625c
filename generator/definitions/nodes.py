"""What a YAML file holds, before it means anything: words, groups of keys and lists, each with its place."""

from __future__ import annotations

import re
from dataclasses import dataclass

from generator.errors import Place


@dataclass(frozen=True, slots=True)
class Scalar:
    """A text as it was written; YAML's own ideas of numbers, days and yes or no do not touch it.

    ``place`` is where its first character stands; ``indent`` is how many columns stand before every further line.
    """

    text: str
    place: Place
    indent: int = 0

    def at(self, offset: int) -> Place:
        """Return the place of the character with ``offset`` characters before it."""
        before = self.text[:offset]
        lines = before.count("\n")
        if lines == 0:
            return Place(self.place.file, self.place.line, self.place.column + offset)
        return Place(self.place.file, self.place.line + lines, self.indent + offset - before.rfind("\n"))


@dataclass(frozen=True, slots=True)
class Key:
    """A key of a group: as it was written, and where."""

    text: str
    place: Place


@dataclass(frozen=True, slots=True)
class Group:
    """Keys and their values; ``entries`` is ordered and goes by the folded key."""

    entries: dict[str, tuple[Key, Node]]
    place: Place

    def get(self, key: str) -> Node | None:
        """Return the value of a folded key, or None."""
        entry = self.entries.get(key)
        return entry[1] if entry else None


@dataclass(frozen=True, slots=True)
class Listing:
    """The items of a list."""

    items: tuple[Node, ...]
    place: Place


Node = Scalar | Group | Listing


def fold(key: str) -> str:
    """Return a key with its words parted by one space: ``finished_across`` and ``finished-across`` are one key.

    Examples
    --------
    >>> fold("finished_across") == fold("finished-across") == "finished across"
    True
    """
    return re.sub(r"[\s_-]+", " ", key).strip()

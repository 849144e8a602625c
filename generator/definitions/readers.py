"""Who reads the values of a file: a node comes in, a checked value goes out; every fault goes to the reading.

A reader also says what an editor's JSON Schema should say about what it reads.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any, Protocol, TypeVar

from generator.definitions.faults import Fault, SilentFault, meant
from generator.definitions.nodes import Group, Listing, Node, Scalar, fold
from generator.definitions.reading import Reading, filled_words
from generator.definitions.values import CountWish, Formula, Range

Name = TypeVar("Name")
Schema = Mapping[str, Any]
Parts = dict[str, Schema]
NOTHING_LISTED = "nothing is listed here; list one at least, or take the line out"


class Reader(Protocol):
    """Reads one value of a file; its JSON Schema may refer to ``parts``, to which it adds what they lack."""

    def value(self, found: Node, reading: Reading) -> Any:
        """Return the value of a node, or report its faults and raise SilentFault."""

    def schema(self, parts: Parts) -> Schema:
        """Return the JSON Schema of what it reads."""


def read_each(given: Mapping[Name, tuple[Reader, Node]], reading: Reading) -> dict[Name, Any]:
    """Return the values by name.

    Raises
    ------
    SilentFault
        If one of them is broken, after all have been read.
    """
    values = {}
    for name, (reader, node) in given.items():
        try:
            values[name] = reader.value(node, reading)
        except SilentFault:
            continue
    if len(values) < len(given):
        raise SilentFault
    return values


@dataclass(frozen=True, eq=False)
class Leaf:
    """How one field is read from words, and what its JSON Schema is."""

    read: Callable[[Scalar, Reading], Any]
    form: Schema

    def value(self, found: Node, reading: Reading) -> Any:
        """Return the value of words."""
        if not isinstance(found, Scalar):
            sort = "a group of keys" if isinstance(found, Group) else "a list"
            reading.faults.refuse(found.place, f"one value is wanted here, this is {sort}")
        try:
            return self.read(found, reading)
        except SilentFault:
            raise
        except Fault as fault:
            reading.faults.refuse(found.at(fault.offset), fault.text)

    def schema(self, parts: Parts) -> Schema:
        """Return the JSON Schema of the words."""
        return dict(self.form)


@dataclass(frozen=True, eq=False)
class LeafList(Leaf):
    """A list of words, each read alike: on one line with commas, or one line each with a dash."""

    may_be_empty: bool = False

    def value(self, found: Node, reading: Reading) -> tuple[Any, ...]:
        """Return the values of all items."""
        if isinstance(found, Group):
            told = "a list is wanted here: words with commas, or one line each with a -"
            reading.faults.refuse(found.place, told)
        if self.may_be_empty and isinstance(found, Scalar) and not found.text.strip():
            return ()
        items = found.items if isinstance(found, Listing) else _parted(found)
        if not items and not self.may_be_empty:
            reading.faults.refuse(found.place, NOTHING_LISTED)
        item = Leaf(self.read, self.form)
        return tuple(read_each({place: (item, node) for place, node in enumerate(items)}, reading).values())


@dataclass(frozen=True, eq=False)
class LeafGroup:
    """A group of single values by name; ``known`` are the keys it may have, any where empty."""

    item: Leaf
    known: tuple[str, ...] = ()

    def value(self, found: Node, reading: Reading) -> dict[str, Any]:
        """Return the values by name."""
        if not isinstance(found, Group):
            reading.faults.refuse(found.place, "names are wanted here, each with its value behind a colon")
        given = {}
        for name, (key, node) in found.entries.items():
            if self.known and name not in self.known:
                reading.faults.add(key.place, f"unknown key '{key.text}'{meant(name, self.known)}")
            else:
                given[name] = (self.item, node)
        return read_each(given, reading)

    def schema(self, parts: Parts) -> Schema:
        """Return the JSON Schema of the group."""
        item = self.item.schema(parts)
        if not self.known:
            return {"type": "object", "additionalProperties": item}
        return {"type": "object", "properties": dict.fromkeys(self.known, item), "additionalProperties": False}


def _parted(words: Scalar) -> list[Scalar]:
    """Return the parts of words between commas, each with its own place."""
    parts = [found for found in re.finditer(r"[^,]+", words.text) if found.group().strip()]
    if not parts:
        return [words]
    return [
        Scalar(part.group().strip(), words.at(part.start() + len(part.group()) - len(part.group().lstrip())))
        for part in parts
    ]


def choice(words: Iterable[str], what: str) -> Leaf:
    """Return the reader of one of a few words."""
    known = tuple(words)

    def read(found: Scalar, reading: Reading) -> str:
        written = fold(filled_words(found))
        if written in known:
            return written
        near = {word.lower(): word for word in known}.get(written.lower())
        if near:
            return near
        raise Fault(f"'{found.text.strip()}' is no {what}{meant(found.text.strip(), known)}")

    return Leaf(read, {"enum": list(known)})


def choices(words: Iterable[str], what: str, *, may_be_empty: bool = False) -> LeafList:
    """Return the reader of a list of some of a few words."""
    item = choice(words, what)
    form = {"anyOf": [{"type": "string"}, {"type": "array", "items": item.form}]}
    return LeafList(item.read, form, may_be_empty)


def as_written(value: object) -> str:
    """Return how a file would write a value that holds without it; '' where it has no short form."""
    match value:
        case bool():
            return "yes" if value else "no"
        case Fraction():
            return f"{value * 100} %"
        case Formula():
            return value.text
        case Range():
            return value.least.text
        case CountWish(value=None):
            return value.rule
        case str() | int():
            return str(value)
    return ""

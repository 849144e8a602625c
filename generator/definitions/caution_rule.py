"""Cautions: a group of keys comes in; how grave one is and its words go out, and for a room's own when it is told.

A caution is a safety message in the order of ANSI Z535.6 and IEC/IEEE 82079-1: a signal word for its level, what can
happen, what comes of it, and what to do.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Annotated, Literal

from generator.definitions.faults import Fault, meant
from generator.definitions.fields import Label, Markdown
from generator.definitions.keyed import Located
from generator.definitions.nodes import Group, Listing, Node, Scalar, fold
from generator.definitions.readers import NOTHING_LISTED, Leaf, LeafList, Parts, Schema, choice, choices, read_each
from generator.definitions.reading import Reading, filled_words
from generator.definitions.values import Text
from generator.definitions.vocabulary import CAUTIONS, TOOLS

Grave = Literal["warning", "caution", "notice"]
GRAVE: tuple[Grave, ...] = ("warning", "caution", "notice")


class OwnCaution(Located):
    """A caution of a project or one of its steps: how grave it is, what can happen, what comes of it, what to do.

    ``short`` is what later steps call it; ``source`` says who advises it.
    """

    level: Annotated[Grave, choice(GRAVE, "level of a caution")] = "caution"
    hazard: Label
    consequence: Label
    avoid: Markdown
    short: Label = ""
    source: Label = ""
    when: tuple[str, ...] = ()

    @property
    def name(self) -> str:
        """What it is called: its short name, else its hazard."""
        return self.short or f"{self.hazard[:1].lower()}{self.hazard[1:]}"

    def told(self, fill: Callable[[Text], str]) -> str:
        """Return the whole caution as Markdown; ``fill`` fills the placeholders of a text."""
        return f"**{self.hazard}.** {self.consequence} {fill(self.avoid)}"


class CautionRule(OwnCaution):
    """A caution of the tool or of a room: it is told with the tools and places named by ``when``, or asked for."""

    when: Annotated[tuple[str, ...], choices((*TOOLS, *CAUTIONS), "tool or place")] = ()


def _known(words: Scalar, reading: Reading) -> str:
    name = fold(filled_words(words))
    if name not in reading.cautions:
        raise Fault(f"'{words.text.strip()}' is no caution{meant(name, reading.cautions)}")
    return name


_NAME: Schema = {"type": "string", "examples": list(CAUTIONS)}
_NAMES = LeafList(_known, _NAME)
Asked = str | OwnCaution


@dataclass(frozen=True)
class AskedCautions:
    """Cautions that are told without a tool: each by the name that it has in the room, or written out."""

    def value(self, found: Node, reading: Reading) -> tuple[Asked, ...]:
        """Return names and cautions in the order of the file."""
        if not isinstance(found, Listing):
            return _NAMES.value(found, reading)
        if not found.items:
            reading.faults.refuse(found.place, NOTHING_LISTED)
        name = Leaf(_known, _NAME)
        given = {place: (OwnCaution if isinstance(one, Group) else name, one) for place, one in enumerate(found.items)}
        return tuple(read_each(given, reading).values())

    def schema(self, parts: Parts) -> Schema:
        """Return the JSON Schema of the list."""
        items = {"anyOf": [dict(_NAME), OwnCaution.schema(parts)]}
        return {"anyOf": [dict(_NAME), {"type": "array", "items": items}]}


def asked_names(asked: Iterable[Asked]) -> tuple[str, ...]:
    """Return what each caution is called that a project or step asks for."""
    return tuple(one if isinstance(one, str) else one.name for one in asked)


def own_cautions(asked: Iterable[Asked]) -> tuple[OwnCaution, ...]:
    """Return those cautions that are written out."""
    return tuple(one for one in asked if isinstance(one, OwnCaution))

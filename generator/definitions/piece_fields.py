"""Fields that only pieces have: their edges, their cloth, their sample; nodes of the file come in, values go out."""

from __future__ import annotations

from typing import Any

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import CoreSchema, core_schema

from generator.definitions.faults import Fault, meant
from generator.definitions.fields import FINISH, Leaf, reading_of, reported
from generator.definitions.nodes import Group, Node, Words, fold
from generator.definitions.reading import Reading, filled_words
from generator.definitions.tucks import Sample
from generator.definitions.values import Finish
from generator.definitions.vocabulary import EDGES, a_kind


class EdgesOf:
    """The finishes of a piece's edges, by edge; one finish alone is that of all edges."""

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.with_info_plain_validator_function(self._read)

    def __get_pydantic_json_schema__(self, core: CoreSchema, handler: GetJsonSchemaHandler) -> dict[str, Any]:
        sides = ("all", *dict.fromkeys(side for sides in EDGES.values() for side in sides if side != "all"))
        keys = {side: dict(FINISH.schema) for side in sides}
        group = {"type": "object", "properties": keys, "additionalProperties": False}
        return {"anyOf": [dict(FINISH.schema), group]}

    def _read(self, found: Node, info: core_schema.ValidationInfo) -> dict[str, Finish]:
        reading = reading_of(info)
        if not isinstance(found, Group):
            return {"all": FINISH.value(found, reading)}
        sides = finished_sides(info.data.get("kind", ""))
        edges = {}
        for side, (key, node) in found.entries.items():
            if side in sides:
                edges[side] = FINISH.value(node, reading)
            else:
                told = f"{a_kind(info.data.get('kind', 'piece'))} has no edge '{key.text}'{meant(side, sides)}"
                reading.faults.add(key.place, told)
        return edges


def finished_sides(kind: str) -> tuple[str, ...]:
    """Return the edges of a kind of piece that can be finished each in its own way, and 'all'."""
    edges = EDGES.get(kind, ())
    sides = tuple(edge for edge in edges if edge not in ("all", "edge")) or edges
    return (*sides, "all") if sides else ()


def room_sample(words: Words, reading: Reading) -> object:
    """Return the room's sample of a name."""
    name = fold(filled_words(words))
    if name not in reading.samples:
        raise Fault(f"the room keeps no sample '{name}'{meant(name, reading.samples)}; they stand in site.yaml")
    return reading.samples[name]


def cloth_name(words: Words, reading: Reading) -> str:
    """Return the name of a cloth of the project."""
    name = fold(filled_words(words))
    if name not in reading.cloths:
        raise reading.unknown("cloths", f"there is no cloth '{name}'{meant(name, reading.cloths)}")
    return name


class SampleOf(Leaf):
    """A sample: written out, or the name of one that the room keeps."""

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.with_info_plain_validator_function(
            lambda found, info: self.value(found, reading_of(info)), json_schema_input_schema=handler(source)
        )

    def __get_pydantic_json_schema__(self, core: CoreSchema, handler: GetJsonSchemaHandler) -> dict[str, Any]:
        return {"anyOf": [dict(self.schema), handler(core)]}

    def value(self, found: Node, reading: Reading) -> Any:
        """Return the sample."""
        if isinstance(found, Group):
            sample = Sample.read(found, reading)
            if sample is None:
                raise reported()
            return sample
        return super().value(found, reading)

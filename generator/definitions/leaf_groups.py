"""Groups whose keys are names and whose values are single values: a group comes in, values by name go out."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from generator.definitions.faults import meant
from generator.definitions.fields import Leaf, reading_of, reported
from generator.definitions.nodes import Group, Node


@dataclass(frozen=True, eq=False)
class LeafGroup:
    """How a group of single values is read; ``known`` are the keys it may have, any where empty."""

    leaf: Leaf
    known: tuple[str, ...] = ()

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.with_info_plain_validator_function(self._read)

    def __get_pydantic_json_schema__(self, core: CoreSchema, handler: GetJsonSchemaHandler) -> dict[str, Any]:
        value = dict(self.leaf.schema)
        if not self.known:
            return {"type": "object", "additionalProperties": value}
        return {"type": "object", "properties": dict.fromkeys(self.known, value), "additionalProperties": False}

    def _read(self, found: Node, info: core_schema.ValidationInfo) -> dict[str, Any]:
        reading = reading_of(info)
        if not isinstance(found, Group):
            reading.faults.add(found.place, "names are wanted here, each with its value behind a colon")
            raise reported()
        values: dict[str, Any] = {}
        for name, (key, node) in found.entries.items():
            if self.known and name not in self.known:
                reading.faults.add(key.place, f"unknown key '{key.text}'{meant(name, self.known)}")
                continue
            try:
                values[name] = self.leaf.value(node, reading)
            except PydanticCustomError:
                continue
        return values

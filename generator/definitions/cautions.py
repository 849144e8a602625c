"""The cautions that the tool brings and those of the room: their file comes in, texts by name go out, in order.

A caution is told where a step uses one of the tools, or the project names one of the places, after its ``when``.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType

from generator.definitions.caution_rule import CautionRule
from generator.definitions.nodes import Group
from generator.definitions.reading import Reading
from generator.definitions.room import Room
from generator.definitions.yaml_text import read_yaml

_FILE = Path(__file__).with_name("cautions.yaml")


@cache
def _own() -> Mapping[str, CautionRule]:
    """Return the cautions of the tool's own file, read once."""
    tree, reading = read_yaml(_FILE, _FILE.name), Reading()
    rules: dict[str, CautionRule] = {}
    if isinstance(tree, Group):
        for key, node in tree.entries.values():
            rule = CautionRule.read(node, reading)
            if rule is not None:
                rules[key.text] = rule
    reading.faults.stop()
    return MappingProxyType(rules)


def cautions_of(room: Room) -> dict[str, CautionRule]:
    """Return the tool's cautions, then the room's; one of the same name takes the place of the tool's."""
    return {**_own(), **room.cautions}

"""The states of a thing in its making up: the tool's file comes in, states in the order of the work go out."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import Annotated, Literal

from generator.definitions.fields import Label
from generator.definitions.keyed import Keyed
from generator.definitions.nodes import Group
from generator.definitions.readers import choice
from generator.definitions.reading import Reading
from generator.definitions.yaml_text import read_yaml

_FILE = Path(__file__).with_name("states.yaml")
Of = Literal["piece", "edge", "seam", "closing", "work"]
_OF: tuple[Of, ...] = ("piece", "edge", "seam", "closing", "work")


class State(Keyed):
    """One state: what has it, and how a step that gives it and its having been given are told."""

    of: Annotated[Of, choice(_OF, "thing that has a state")]
    does: Label
    done: Label


@cache
def states() -> Mapping[str, State]:
    """Return the states by name, in the order of the work."""
    tree, reading = read_yaml(_FILE, _FILE.name), Reading()
    found: dict[str, State] = {}
    if isinstance(tree, Group):
        for name, (_, node) in tree.entries.items():
            state = State.read(node, reading)
            if state is not None:
                found[name] = state
    reading.faults.stop()
    return MappingProxyType(found)

"""The measures of a project: their group comes in, formulas go out, read in whatever order they stand."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from generator.definitions.faults import SilentFault
from generator.definitions.functions import FUNCTIONS
from generator.definitions.keyed import name_fault
from generator.definitions.nodes import Group, Key, Node
from generator.definitions.readers import Leaf, Parts, Schema
from generator.definitions.reading import ANY_SORT, Reading, read_value
from generator.definitions.values import Formula
from generator.limits import DEEPEST_MEASURES

MEASURE = Leaf(lambda words, reading: read_value(words, reading, wanted=ANY_SORT), {"type": ["string", "number"]})


class Measures(Mapping[str, int | None]):
    """The dimension of every size's value and measure; a measure is read when it is first asked for.

    A broken one has the dimension None, so that its fault is told once.
    """

    def __init__(self, given: Mapping[str, int | None], found: Group | None, reading: Reading) -> None:
        self.formulas: dict[str, Formula] = {}
        self._dimensions: dict[str, int | None] = dict(given)
        self._reading = replace(reading, names=replace(reading.names, measures=self))
        self._waiting: dict[str, tuple[Key, Node]] = {}
        self._under_way: list[str] = []
        for name, (key, node) in found.entries.items() if found else ():
            fault = self._name_fault(name)
            if fault:
                reading.faults.add(key.place, fault)
            else:
                self._waiting[name] = (key, node)

    def _name_fault(self, name: str) -> str:
        if name in self._dimensions:
            return f"'{name}' is given by the sizes already; choose another name"
        if name in FUNCTIONS:
            return f"'{name}' is a function; choose another name"
        return name_fault(name)

    def __getitem__(self, name: str) -> int | None:
        if name not in self._dimensions:
            self._read(name)
        return self._dimensions[name]

    def __iter__(self) -> Iterator[str]:
        yield from dict.fromkeys((*self._dimensions, *self._waiting))

    def __len__(self) -> int:
        return len(set(self))

    def __contains__(self, name: object) -> bool:
        return name in self._dimensions or name in self._waiting

    def _read(self, name: str) -> None:
        key, node = self._waiting[name]
        if name in self._under_way:
            way = " -> ".join([*self._under_way[self._under_way.index(name) :], name])
            self._reading.faults.add(node.place, f"'{name}' is worked out from itself: {way}")
            self._dimensions[name] = None
            return
        if len(self._under_way) >= DEEPEST_MEASURES:
            told = f"measures that follow from each other, {DEEPEST_MEASURES} deep at most"
            self._reading.faults.add(key.place, told)
            self._dimensions[name] = None
            return
        self._under_way.append(name)
        try:
            formula: Formula = MEASURE.value(node, self._reading)
        except SilentFault:
            self._dimensions[name] = None
        else:
            if name not in self._dimensions:
                self.formulas[name] = formula
                self._dimensions[name] = formula.dimension
        finally:
            self._under_way.pop()

    def all_formulas(self) -> dict[str, Formula]:
        """Return every measure's formula, in the order of the file."""
        for name in self._waiting:
            self[name]
        return {name: self.formulas[name] for name in self._waiting if name in self.formulas}


class MeasuresOf:
    """The measures field of a project: read when they were first needed."""

    def value(self, found: Node, reading: Reading) -> Mapping[str, Formula]:
        """Return the formulas that the reading has."""
        return reading.measures

    def schema(self, parts: Parts) -> Schema:
        """Return the JSON Schema of the measures."""
        return {"type": "object", "additionalProperties": MEASURE.schema(parts)}

"""The sizes of a project: their group comes in, each size with its lengths and numbers goes out."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from generator.definitions.faults import Fault, SilentFault
from generator.definitions.fields import DAY, LABEL, VALUE
from generator.definitions.keyed import name_fault
from generator.definitions.names import Names
from generator.definitions.nodes import Group, Key, Node, Scalar
from generator.definitions.readers import Leaf, Parts, Schema
from generator.definitions.reading import ANY_SORT, Reading, fixed, read_value
from generator.definitions.values import Formula
from generator.errors import Place
from generator.lengths import EDITIONS
from generator.limits import MOST_SIZES

_ABOUT = {"label": LABEL, "note": LABEL, "sewn": DAY, "source": LABEL}
ABOUT_SIZE = frozenset(_ABOUT)
_NO_NAMES = "a size holds plain lengths and numbers; what follows from them stands under measures"
_NAME = re.compile(r"\w[\w .+'’-]{0,39}")


@dataclass(frozen=True, slots=True)
class Size:
    """One size: its lengths and numbers by name; ``sewn`` is the day of its test sewing, '' if only computed.

    ``source`` tells where body measures come from, '' of any other size.
    """

    label: str
    note: str = ""
    sewn: str = ""
    source: str = ""
    values: Mapping[str, Formula] = field(default_factory=dict)
    place: Place = field(default=Place(""))


class SizesOf:
    """The sizes field of a project: they have been read before everything else, because all names come from them."""

    def value(self, found: Node, reading: Reading) -> Mapping[str, object]:
        """Return the sizes that the reading has."""
        return reading.sizes

    def schema(self, parts: Parts) -> Schema:
        """Return the JSON Schema of the sizes."""
        about = {key: leaf.schema(parts) for key, leaf in _ABOUT.items()}
        size = {"type": "object", "properties": about, "additionalProperties": VALUE}
        # A size as a group of its own, or one measure for all sizes of a series.
        each = {"anyOf": [size, VALUE, {"type": "array", "items": VALUE}]}
        return {"type": "object", "additionalProperties": each, "minProperties": 1, "maxProperties": MOST_SIZES}


def read_sizes(found: Node | None, reading: Reading) -> dict[str, Size]:
    """Return the sizes by the name as written; every size must give the same names."""
    if not isinstance(found, Group):
        if found is not None:
            reading.faults.add(found.place, "sizes are wanted here, each a name with its lengths below it")
        return {}
    entries = list(found.entries.values())[:MOST_SIZES]
    if len(entries) < len(found.entries):
        told = f"{len(found.entries)} sizes; a project has {MOST_SIZES} at most, so divide it into several projects"
        reading.faults.add(found.place, told)
    inside = replace(reading, names=Names(none=_NO_NAMES))
    sizes = {key.text.strip(): _size(key, node, inside) for key, node in entries}
    given = {key.text.strip(): _given(node) for key, node in entries if isinstance(node, Group)}
    _check_alike(sizes, given, reading)
    return sizes


def _given(found: Group) -> dict[str, None]:
    """Return the names that a size gives, in order, broken values included."""
    return dict.fromkeys(name for name in found.entries if name not in _ABOUT and not name_fault(name))


def size_dimensions(found: Node | None, sizes: Mapping[str, Size]) -> dict[str, int | None]:
    """Return the dimension of every name that the sizes give, None where all its values are broken."""
    groups = [node for _, node in found.entries.values()] if isinstance(found, Group) else []
    named = {name: None for node in groups if isinstance(node, Group) for name in _given(node)}
    return named | dimensions(sizes)


def _size(key: Key, found: Node, reading: Reading) -> Size:
    if not _NAME.fullmatch(key.text.strip()):
        told = f"'{key.text}' cannot name a size; use letters, digits, spaces and hyphens, 40 at most"
        reading.faults.add(key.place, told)
    if not isinstance(found, Group):
        told = "lengths are wanted here, each with its name: for example 'side: 16 in or 40 cm'"
        reading.faults.add(found.place, told)
        return Size(key.text.strip(), place=key.place)
    about: dict[str, Any] = {"label": key.text.strip()}
    values: dict[str, Formula] = {}
    for name, (inner, node) in found.entries.items():
        try:
            if name in _ABOUT:
                about[name] = str(_ABOUT[name].value(node, reading))
            elif _may_name(name, inner, reading):
                values[name] = _VALUE.value(node, reading)
        except SilentFault:
            values.pop(name, None)
    return Size(**about, values=values, place=key.place)


def _may_name(name: str, key: Key, reading: Reading) -> bool:
    fault = name_fault(name)
    if fault:
        reading.faults.add(key.place, fault)
    return not fault


def size_value(words: Scalar, reading: Reading) -> Formula:
    """Return one value of a size, a length or a number."""
    value = read_value(words, reading, wanted=ANY_SORT, purpose="finished")
    if not value.names and min(fixed(value, edition) for edition in EDITIONS.values()) < 0:
        raise Fault(f"'{words.text.strip()}' is less than nothing; a size is nothing or more")
    return value


_VALUE = Leaf(size_value, VALUE)


def _check_alike(sizes: Mapping[str, Size], given: Mapping[str, Iterable[str]], reading: Reading) -> None:
    """Hold that every size gives the same names, each always a length or always a number."""
    usual = _usual_names(given)
    for size, names in given.items():
        place = sizes[size].place
        own = [name for name in names if name not in usual]
        for name in [name for name in usual if name not in names]:
            owner = next(other for other, others in given.items() if name in others)
            hint = f"; is '{own[0]}' meant to be it?" if own else ""
            reading.faults.add(place, f"size '{size}' lacks '{name}', which '{owner}' has{hint}")
            own = own[1:]
        for name in own:
            reading.faults.add(place, f"only size '{size}' gives '{name}'; every size gives the same names")
    for name, dimension in dimensions(sizes).items():
        for model in sizes.values() if dimension is None else ():
            formula = model.values.get(name)
            if formula is not None and formula.dimension == 0:
                told = f"'{name}' is a plain number here and a length in another size; does it lack its unit?"
                reading.faults.add(formula.place, told)


def _usual_names(given: Mapping[str, Iterable[str]]) -> list[str]:
    """Return the names that most sizes give; where it is even, those of the first size count."""
    first = next(iter(given.values()), ())
    names = dict.fromkeys(name for names in given.values() for name in names)
    counts = {name: 2 * sum(name in others for others in given.values()) for name in names}
    return [name for name in names if counts[name] > len(given) or (counts[name] == len(given) and name in first)]


def dimensions(sizes: Mapping[str, Size]) -> dict[str, int | None]:
    """Return the dimension of every name that the sizes give; None where they differ or none has a sound value."""
    found: dict[str, int | None] = {}
    for size in sizes.values():
        for name, formula in size.values.items():
            found[name] = formula.dimension if found.get(name, formula.dimension) == formula.dimension else None
    return found

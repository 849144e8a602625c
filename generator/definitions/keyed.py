"""The base of all definitions: a group of keys comes in, a frozen definition goes out; every fault goes to the reading.

A definition names its keys as attributes. The annotation of each says who reads it: ``Annotated[Formula, LENGTH]``,
another definition, ``Items`` or ``NamedGroups`` of one. An attribute that nobody reads stands in no file.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import MISSING, Field, dataclass, field, fields, replace
from functools import cache
from inspect import getdoc
from types import UnionType
from typing import Annotated, Any, ClassVar, Generic, Self, TypeVar, Union, dataclass_transform, get_args, get_origin
from typing import get_type_hints as hints

from generator.definitions.faults import SilentFault, meant
from generator.definitions.nodes import Group, Listing, Node, Scalar
from generator.definitions.readers import NOTHING_LISTED, Parts, Reader, Schema, as_written, read_each
from generator.definitions.reading import EMPTY, Reading
from generator.definitions.tokens import RESERVED
from generator.errors import Place

Model = TypeVar("Model", bound="Keyed")


def _key(attribute: str) -> str:
    """Return the key of an attribute: a word of Python's own has an underscore behind it."""
    return attribute.rstrip("_").replace("_", " ")


@dataclass_transform(frozen_default=True, kw_only_default=True, field_specifiers=(field,))
class Keyed:
    """A group of keys with spaces; attributes are the keys with underscores. Every such class is a frozen dataclass."""

    __dataclass_fields__: ClassVar[dict[str, Field[Any]]]
    # Keys that are there when a group is read, and that a file may leave out all the same: what it says completes them.
    completed: ClassVar[tuple[str, ...]] = ()

    def __init_subclass__(cls) -> None:
        super().__init_subclass__()
        dataclass(frozen=True, kw_only=True)(cls)

    @classmethod
    @cache
    def readers(cls) -> Mapping[str, Reader]:
        """Return who reads each attribute that a file may give."""
        # Annotations are texts until somebody asks; asked once, here, because resolving them is slow.
        found = {name: _reader(hint) for name, hint in hints(cls, include_extras=True).items()}
        return {one.name: reader for one in fields(cls) if (reader := found[one.name]) is not None}

    @classmethod
    def keys(cls) -> tuple[str, ...]:
        """Return the keys that a file may use."""
        return tuple(map(_key, cls.readers()))

    @classmethod
    def required(cls) -> list[str]:
        """Return the keys that a file must give."""
        without = {one.name for one in fields(cls) if one.default is one.default_factory is MISSING}
        return [_key(name) for name in cls.readers() if name in without]

    @classmethod
    def check_keys(cls, found: Group, reading: Reading) -> None:
        """Report keys that do not go together; a definition with such keys overrides this."""

    @classmethod
    def value(cls, found: Node, reading: Reading) -> Self:
        """Return the definition in a group of keys; every key is read before a fault in one of them ends this.

        Raises
        ------
        SilentFault
            If it cannot be made; the reading has the faults.
        """
        if not isinstance(found, Group):
            reading.faults.refuse(found.place, _empty(found) or "a group of keys is wanted here, each on its own line")
        known, missing = cls.keys(), [key for key in cls.required() if key not in found.entries]
        unknown = {folded: meant(folded, known) for folded in found.entries if folded not in known}
        for folded, told in unknown.items():
            key = found.entries[folded][0]
            reading.faults.add(key.place, f"unknown key '{key.text}'{told}")
        for name in missing:
            # A slip in the name of a key is one fault, not two.
            if not any(told.endswith(f" '{name}'?") for told in unknown.values()):
                reading.faults.add(found.place, f"'{name}' is missing here")
        cls.check_keys(found, reading)
        given = {
            name: (reader, node)
            for name, reader in cls.readers().items()
            if (node := found.get(_key(name))) is not None
        }
        values = read_each(given, reading)
        if missing:
            raise SilentFault
        return cls(**values)

    @classmethod
    def read(cls, found: Node, reading: Reading) -> Self | None:
        """Return the definition in a group of keys, or None after reporting its faults."""
        try:
            return cls.value(found, reading)
        except SilentFault:
            return None

    @classmethod
    def schema(cls, parts: Parts) -> Schema:
        """Return the reference to its JSON Schema, which is put into ``parts``."""
        if cls.__name__ not in parts:
            # Its place is taken at once, for a definition may hold others of its own sort.
            parts[cls.__name__] = {}
            parts[cls.__name__] = cls.keys_schema(parts)
        return {"$ref": f"#/$defs/{cls.__name__}"}

    @classmethod
    def keys_schema(cls, parts: Parts) -> Schema:
        """Return the JSON Schema of its keys."""
        defaults = {one.name: as_written(one.default) for one in fields(cls)}
        return {
            "type": "object",
            "description": getdoc(cls),
            "properties": {
                _key(name): dict(reader.schema(parts)) | ({"default": told} if (told := defaults[name]) else {})
                for name, reader in cls.readers().items()
            },
            "required": [key for key in cls.required() if key not in cls.completed],
            "additionalProperties": False,
        }


class Located(Keyed):
    """A group of keys that knows where it stands in its file."""

    place: Place = Place("")

    @classmethod
    def value(cls, found: Node, reading: Reading) -> Self:
        """Return the definition in a group of keys, with its place."""
        return replace(super().value(found, reading), place=found.place)


@dataclass(frozen=True)
class ItemsOf(Generic[Model]):
    """A list of groups of keys."""

    model: type[Model]

    def value(self, found: Node, reading: Reading) -> tuple[Model, ...]:
        """Return the definitions of all items."""
        if not isinstance(found, Listing):
            told = _empty(found) or "a list is wanted here, each of its items with a - before it"
            reading.faults.refuse(found.place, told)
        if not found.items:
            reading.faults.refuse(found.place, NOTHING_LISTED)
        return tuple(read_each({place: (self.model, item) for place, item in enumerate(found.items)}, reading).values())

    def schema(self, parts: Parts) -> Schema:
        """Return the JSON Schema of the list."""
        return {"type": "array", "items": self.model.schema(parts)}


@dataclass(frozen=True)
class GroupsOf(Generic[Model]):
    """Groups of keys by names of the file's own."""

    model: type[Model]

    def value(self, found: Node, reading: Reading) -> dict[str, Model]:
        """Return the definitions by name."""
        return read_each({name: (self.model, node) for name, node in named(found, reading).items()}, reading)

    def schema(self, parts: Parts) -> Schema:
        """Return the JSON Schema of the groups."""
        return {"type": "object", "additionalProperties": self.model.schema(parts)}


Items = Annotated[tuple[Model, ...], ItemsOf]
NamedGroups = Annotated[dict[str, Model], GroupsOf]


def _reader(hint: Any) -> Reader | None:
    """Return who reads an attribute, None where nobody does."""
    if get_origin(hint) in (Union, UnionType):
        return next(filter(None, map(_reader, get_args(hint))), None)
    if get_origin(hint) is Annotated:
        reader: Any = hint.__metadata__[0]
        read_by: Reader = reader(_model(get_args(hint.__origin__))) if isinstance(reader, type) else reader
        return read_by
    return hint if isinstance(hint, type) and issubclass(hint, Keyed) else None


def _model(arguments: Iterable[Any]) -> type[Keyed]:
    return next(one for one in arguments if isinstance(one, type) and issubclass(one, Keyed))


def _empty(found: Node) -> str:
    """Return what is said of a key with nothing behind it, '' of any other."""
    return EMPTY if isinstance(found, Scalar) and not found.text.strip() else ""


def name_fault(name: str) -> str:
    """Return what is wrong with a name that formulas should use, or nothing."""
    words = name.split()
    if not words or not all(word.isalnum() and word == word.lower() for word in words) or not words[0][0].isalpha():
        return f"'{name}' is no name; a name has small letters, digits and spaces, and begins with a letter"
    taken = [word for word in words if word in RESERVED]
    if taken:
        return f"'{taken[0]}' cannot be part of a name; it has a meaning of its own in formulas"
    return ""


def named(found: Node, reading: Reading) -> dict[str, Node]:
    """Return the values of a group whose keys are names of the file's own; anything else is reported."""
    if not isinstance(found, Group):
        reading.faults.refuse(found.place, _empty(found) or "names are wanted here, each with its keys below it")
    for name, (key, _) in found.entries.items():
        fault = name_fault(name)
        if fault:
            reading.faults.add(key.place, fault)
    return {name: value for name, (_, value) in found.entries.items()}

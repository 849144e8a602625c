"""The base of all definitions: a group of keys comes in, a frozen model goes out; every fault goes to the reading."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Any, ClassVar, Self, TypeVar

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, ValidationError, model_validator
from pydantic.json_schema import SkipJsonSchema
from pydantic_core.core_schema import ValidationInfo

from generator.definitions.faults import meant
from generator.definitions.fields import NOTHING_LISTED, reading_of, reported
from generator.definitions.nodes import Group, Listing, Node, Scalar
from generator.definitions.reading import Reading
from generator.definitions.tokens import RESERVED
from generator.errors import Place

Model = TypeVar("Model", bound="Keyed")
_EMPTY = "nothing is written here; give a value, or take the line out"


def _key(attribute: str) -> str:
    """Return the key of an attribute: a word of Python's own has an underscore behind it."""
    return attribute.rstrip("_").replace("_", " ")


class Keyed(BaseModel):
    """A group of keys with spaces; attributes are the keys with underscores.

    ``inner`` are the attributes that stand in no file.
    """

    model_config = ConfigDict(
        frozen=True,
        extra="forbid",
        arbitrary_types_allowed=True,
        alias_generator=_key,
    )
    inner: ClassVar[frozenset[str]] = frozenset()

    @model_validator(mode="before")
    @classmethod
    def _open(cls, found: Node, info: ValidationInfo) -> Mapping[str, Any]:
        """Return the values by key; unknown and missing keys are reported, and the others still read."""
        reading = reading_of(info)
        if not isinstance(found, Group):
            empty = isinstance(found, Scalar) and not found.text.strip()
            reading.faults.add(found.place, _EMPTY if empty else "a group of keys is wanted here, each on its own line")
            raise reported()
        known = cls.keys()
        for folded, (key, _) in found.entries.items():
            if folded not in known:
                reading.faults.add(key.place, f"unknown key '{key.text}'{meant(folded, known)}")
        for attribute, field in cls.model_fields.items():
            if attribute not in cls.inner and field.is_required() and _key(attribute) not in found.entries:
                reading.faults.add(found.place, f"'{_key(attribute)}' is missing here")
        cls.check_keys(found, reading)
        values: dict[str, Any] = {key: value for key, (_, value) in found.entries.items() if key in known}
        return values | cls.beside(found)

    @classmethod
    def keys(cls) -> tuple[str, ...]:
        """Return the keys that a file may use."""
        return tuple(_key(name) for name in cls.model_fields if name not in cls.inner)

    @classmethod
    def check_keys(cls, found: Group, reading: Reading) -> None:
        """Report keys that do not go together; a model with such keys overrides this."""

    @classmethod
    def beside(cls, found: Group) -> dict[str, Any]:
        """Return the values of inner attributes that a reading fills."""
        return {}

    @classmethod
    def read(cls, found: Node, reading: Reading) -> Self | None:
        """Return the model of a group, or None after reporting its faults."""
        try:
            return cls.model_validate(found, context=reading)
        except ValidationError as error:
            for fault in error.errors():
                if fault["type"] not in ("reported", "missing"):
                    reading.faults.add(found.place, f"{'.'.join(map(str, fault['loc']))}: {fault['msg']}")
            if not reading.faults.errors:
                raise
            return None


class Located(Keyed):
    """A group of keys that knows where it stands in its file."""

    inner: ClassVar[frozenset[str]] = frozenset({"place"})
    place: SkipJsonSchema[Place] = Field(default=Place(""))

    @classmethod
    def beside(cls, found: Group) -> dict[str, Any]:
        """Return the place of the group."""
        return {"place": found.place}


def items(found: Node, info: ValidationInfo) -> list[Node]:
    """Return the items of a list; anything else is reported."""
    if isinstance(found, Listing):
        if not found.items:
            reading_of(info).faults.add(found.place, NOTHING_LISTED)
            raise reported()
        return list(found.items)
    empty = isinstance(found, Scalar) and not found.text.strip()
    told = _EMPTY if empty else "a list is wanted here, each of its items with a - before it"
    reading_of(info).faults.add(found.place, told)
    raise reported()


def name_fault(name: str) -> str:
    """Return what is wrong with a name that formulas should use, or nothing."""
    words = name.split()
    if not words or not all(word.isalnum() and word == word.lower() for word in words) or not words[0][0].isalpha():
        return f"'{name}' is no name; a name has small letters, digits and spaces, and begins with a letter"
    taken = [word for word in words if word in RESERVED]
    if taken:
        return f"'{taken[0]}' cannot be part of a name; it has a meaning of its own in formulas"
    return ""


def named(found: Node, info: ValidationInfo) -> dict[str, Node]:
    """Return the values of a group whose keys are names of the file's own; anything else is reported."""
    if not isinstance(found, Group):
        empty = isinstance(found, Scalar) and not found.text.strip()
        told = _EMPTY if empty else "names are wanted here, each with its keys below it"
        reading_of(info).faults.add(found.place, told)
        raise reported()
    for name, (key, _) in found.entries.items():
        fault = name_fault(name)
        if fault:
            reading_of(info).faults.add(key.place, fault)
    return {name: value for name, (_, value) in found.entries.items()}


Items = Annotated[tuple[Model, ...], BeforeValidator(items)]
NamedGroups = Annotated[dict[str, Model], BeforeValidator(named)]

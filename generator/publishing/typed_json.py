"""Frozen values in a file: what was written as JSON comes in with the type that it must have, that value goes out.

A file may have been damaged or made up, so nothing in it is believed: whatever has another form is refused.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from functools import cache
from types import NoneType, UnionType
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints


def to_plain(value: object) -> Any:
    """Return a value as JSON can hold it."""
    if is_dataclass(value):
        return {field.name: to_plain(getattr(value, field.name)) for field in fields(value)}
    if isinstance(value, Mapping):
        return {key: to_plain(inner) for key, inner in value.items()}
    if isinstance(value, list | tuple):
        return [to_plain(inner) for inner in value]
    return value


def from_plain(kind: Any, value: object) -> Any:
    """Return the value of a type that :func:`to_plain` made plain.

    Raises
    ------
    ValueError
        If it has another form.
    """
    origin, inner = get_origin(kind), get_args(kind)
    if origin in (Union, UnionType):
        return _first_of(inner, value)
    if (
        isinstance(kind, type)
        and is_dataclass(kind)
        and isinstance(value, dict)
        and value.keys() == _types(kind).keys()
    ):
        return kind(**{name: from_plain(of, value[name]) for name, of in _types(kind).items()})
    if origin is tuple and isinstance(value, list):
        return _row(inner, value)
    if origin in (dict, Mapping) and isinstance(value, dict):
        return {from_plain(inner[0], key): from_plain(inner[1], one) for key, one in value.items()}
    if origin is Literal and isinstance(value, str) and value in inner:
        return value
    if kind is NoneType and value is None:
        return None
    if kind in (str, int, float, bool) and type(value) is kind:
        return value
    raise ValueError(f"{kind} is wanted")


def _first_of(kinds: tuple[Any, ...], value: object) -> Any:
    for kind in kinds:
        try:
            return from_plain(kind, value)
        except ValueError:
            continue
    raise ValueError(f"one of {kinds} is wanted")


def _row(kinds: tuple[Any, ...], values: list[object]) -> tuple[Any, ...]:
    every = kinds[:1] * len(values) if kinds[1:] == (...,) else kinds
    return tuple(from_plain(kind, value) for kind, value in zip(every, values, strict=True))


@cache
def _types(kind: type) -> dict[str, Any]:
    return get_type_hints(kind)

"""Texts of a case become values: a text and a type come in, an exact value of that type goes out, and back."""

from __future__ import annotations

import types
from collections.abc import Mapping, Sequence
from dataclasses import fields, is_dataclass
from enum import Enum
from fractions import Fraction
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints

from generator.calculation.worked import End
from generator.lengths import EDITIONS, UNITS, Edition, read_length

EDGES = ("left", "right", "top", "bottom")


def number(text: str) -> Fraction:
    """Return a length, a plain number, a share ("20 %") or a number for each unit of length ("10 per in")."""
    if text.endswith("%"):
        return Fraction(text.removesuffix("%").strip()) / 100
    if " per " in text:
        amount, unit = text.split(" per ")
        return Fraction(amount) / UNITS[unit]
    return read_length(text, "in")


def end(text: str) -> End:
    """Return the finish of an edge, as in "raw", "seam 1/2 in" or "hem 1/2 in then 1 in"."""
    kind = text.rstrip("0123456789/ .").split(" ")[0] if " " in text else text
    widths = [number(width) for width in text.removeprefix(kind).split(" then ") if width.strip()]
    return End(kind, *widths)  # type: ignore[arg-type]


def value(hint: Any, given: Any) -> Any:
    """Return what a case gives for one parameter, as the type that the parameter has."""
    origin, inner = get_origin(hint), get_args(hint)
    if origin in (Union, types.UnionType):
        known = [one for one in inner if one is not type(None)]
        return value(next((one for one in known if _has_just(one, given)), known[0]), given)
    if origin is Literal:
        return given
    if origin in (tuple, list, Sequence):
        kinds = inner if origin is tuple and inner[-1] is not Ellipsis else inner[:1] * len(given)
        return tuple(value(kind, one) for kind, one in zip(kinds, given, strict=True))
    if origin is Mapping:
        named = given if isinstance(given, dict) else dict.fromkeys(EDGES, given)
        return {name: value(inner[1], one) for name, one in named.items()}
    return _plain(hint, given)


def _has_just(hint: Any, given: Any) -> bool:
    """Whether what is given names every field of a value, and no other."""
    return is_dataclass(hint) and isinstance(given, dict) and {one.name for one in fields(hint)} == given.keys()


def _plain(hint: Any, given: Any) -> Any:
    if hint is Edition:
        return EDITIONS[given]
    if hint is End:
        return end(given)
    if hint is Fraction:
        return number(given)
    if isinstance(hint, type) and issubclass(hint, Enum):
        return hint[given.upper()]
    if is_dataclass(hint):
        hints = get_type_hints(hint)
        return hint(**{name: value(hints[name], one) for name, one in given.items()})  # type: ignore[operator]
    return hint(given)


def like(result: Any, text: str) -> Any:
    """Return an expected text as a value of the sort that a result is."""
    if isinstance(result, tuple):
        texts = text.split(", ")
        return tuple(like(result[min(place, len(result) - 1)], one) for place, one in enumerate(texts))
    return text if isinstance(result, str) else number(text)


def written(result: Any, model: str) -> str:
    """Return a result as text, in the unit and the form of number of an expected text."""
    if isinstance(result, tuple):
        models = model.split(", ")
        return ", ".join(written(one, models[min(place, len(models) - 1)]) for place, one in enumerate(result))
    if not isinstance(result, Fraction):
        return str(result)
    unit = next((unit for unit in UNITS if model.endswith(f" {unit}") and " per " not in model), "")
    if model.endswith("%"):
        return f"{_figure(result * 100, decimal=True)} %"
    decimal = "." in model or unit in ("cm", "mm", "m")
    return f"{_figure(result / UNITS.get(unit, Fraction(1)), decimal=decimal)} {unit}".strip()


def _figure(amount: Fraction, *, decimal: bool) -> str:
    """A number as a decimal of two places at most, or as a mixed number where its parts are small."""
    if amount.denominator == 1:
        return str(amount)
    if decimal or amount.denominator > 64:
        return (
            f"{float(amount):.4f}".rstrip("0").rstrip(".")
            if 10_000 % amount.denominator == 0
            else f"{float(amount):.2f}"
        )
    whole, rest = divmod(amount, 1)
    return f"{whole} {rest}" if whole else str(rest)

"""What a worksheet says, as one key: a worksheet comes in, a text made from every value in it goes out as its hash.

Two worksheets have the same key exactly when they would give the same page and the same sheets. Where a finding stands
in its file is left out: a remark added above it changes no sheet.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass, replace
from enum import Enum
from fractions import Fraction

from generator.calculation.worked_project import Worksheet
from generator.publishing.inputs import key_of


def content_key(worksheet: Worksheet, *more: str) -> str:
    """Return the key of a worksheet, with whatever else its page says."""
    findings = tuple(replace(finding, place=None) for finding in worksheet.findings)
    return key_of("".join(_written(replace(worksheet, findings=findings))), *more)


def _written(value: object) -> Iterator[str]:
    """Every value in a form that is the same in every run; what has no such form is refused."""
    if value is None or isinstance(value, str | int):
        yield f"{value!r} "
    elif isinstance(value, Fraction):
        yield f"{value} "
    elif isinstance(value, Enum):
        yield f"{value.value!r} "
    elif isinstance(value, tuple):
        yield "("
        for inner in value:
            yield from _written(inner)
        yield ")"
    elif isinstance(value, Mapping):
        yield "{"
        for key, inner in value.items():
            yield from _written(key)
            yield from _written(inner)
        yield "}"
    elif is_dataclass(value):
        yield f"{type(value).__name__}("
        for field in fields(value):
            yield from _written(getattr(value, field.name))
        yield ")"
    else:
        raise TypeError(f"a worksheet cannot hold a {type(value).__name__}")

"""The parts of a formula once read: values and names come in, an exact value goes out.

A term knows its dimension: 0 a number, 1 a length, 2 an area, None a plain nought, which fits anything.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from generator.definitions.functions import FUNCTIONS, default_step
from generator.errors import CalculationError
from generator.lengths import Edition

Lookup = Callable[[str], Fraction]


@dataclass(frozen=True, slots=True)
class Constant:
    """A number or a length [in]; ``unit`` is the one it was written in."""

    value: Fraction
    dimension: int | None
    unit: str = ""
    text: str = ""


@dataclass(frozen=True, slots=True)
class Named:
    """A measure, or a piece's measure such as ``front.cut across``."""

    name: str
    dimension: int


@dataclass(frozen=True, slots=True)
class Sum:
    """Two terms with ``+ - *`` or ``/`` between them."""

    sign: str
    left: Term
    right: Term
    dimension: int | None


@dataclass(frozen=True, slots=True)
class Call:
    """A function and its values."""

    function: str
    values: tuple[Term, ...]
    dimension: int | None


Term = Constant | Named | Sum | Call


def worked_out(term: Term, edition: Edition, lookup: Lookup) -> Fraction:
    """Return the exact value of a term; names are asked of ``lookup``.

    Raises
    ------
    CalculationError
        If something is divided by nothing.
    """
    if isinstance(term, Constant):
        return term.value
    if isinstance(term, Named):
        return lookup(term.name)
    if isinstance(term, Call):
        return _called(term, edition, lookup)
    left, right = worked_out(term.left, edition, lookup), worked_out(term.right, edition, lookup)
    if term.sign == "/" and right == 0:
        raise CalculationError("something is divided by a value that comes to nothing")
    if term.sign == "/":
        return left / right
    return left * right if term.sign == "*" else left + right if term.sign == "+" else left - right


def _called(term: Call, edition: Edition, lookup: Lookup) -> Fraction:
    function = FUNCTIONS[term.function]
    values = [worked_out(value, edition, lookup) for value in term.values]
    if function.step:
        if len(values) == 1:
            values.append(default_step(edition, term.dimension or 0))
        if values[1] <= 0:
            raise CalculationError(f"the step of '{term.function}' must be more than nothing")
    return function.work(values)


def parts_of(term: Term) -> Iterator[Term]:
    """Yield a term and everything inside it, from left to right."""
    yield term
    inside = (term.left, term.right) if isinstance(term, Sum) else term.values if isinstance(term, Call) else ()
    for part in inside:
        yield from parts_of(part)


def names_in(*terms: Term) -> tuple[str, ...]:
    """Return every name that terms use, each once."""
    names = (part.name for term in terms for part in parts_of(term) if isinstance(part, Named))
    return tuple(dict.fromkeys(names))

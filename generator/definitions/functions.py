"""The functions that a formula may use: exact values come in, an exact value goes out."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from generator.lengths import MILLIMETRE, Edition, round_down, round_nearest, round_up

# Archimedes' finer bound; less than one part in ten million above pi, so a girth stays an exact fraction.
PI = Fraction(355, 113)


@dataclass(frozen=True, slots=True)
class Function:
    """A function: how many values it takes and what it makes of them.

    All values are of one sort, lengths or numbers, and so is what comes out. The second value of a rounding function
    (``step``) is its step; without it the step is the edition's.
    """

    least: int
    most: int
    work: Callable[[Sequence[Fraction]], Fraction]
    step: bool = False


def default_step(edition: Edition, dimension: int) -> Fraction:
    """Return the step of a rounding that names none: 1/8 in or 5 mm for a length [in], 1 for a number."""
    if dimension == 0:
        return Fraction(1)
    return Fraction(1, 8) if edition.name == "inch" else 5 * MILLIMETRE


FUNCTIONS: Mapping[str, Function] = MappingProxyType(
    {
        "around": Function(1, 1, lambda values: PI * values[0]),
        "larger": Function(2, 6, max),
        "smaller": Function(2, 6, min),
        "round up": Function(1, 2, lambda values: round_up(values[0], values[1]), step=True),
        "round down": Function(1, 2, lambda values: round_down(values[0], values[1]), step=True),
        "round to": Function(1, 2, lambda values: round_nearest(values[0], values[1]), step=True),
    }
)

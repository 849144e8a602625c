"""What a kind of piece works out for itself: sizes, finishes and measures, as one value; lengths in inches."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

from generator.calculation.worked import End
from generator.calculation.worksheet.scope import Scope

SIDES = ("left", "right", "top", "bottom")


@dataclass(frozen=True, slots=True)
class PieceSizes:
    """What a kind of piece works out for itself; lengths in inches, ``cut`` and ``finished`` are (across, along)."""

    cut: tuple[Fraction, Fraction]
    finished: tuple[Fraction, Fraction]
    ends: Mapping[str, End] = field(default_factory=dict)
    lengths: Mapping[str, Fraction] = field(default_factory=dict)
    measures: Mapping[str, Fraction] = field(default_factory=dict)
    shape: str = "rectangle"
    pleats: tuple[tuple[Fraction, Fraction], ...] = ()
    parts: int = 1
    part: tuple[Fraction, Fraction] = (Fraction(0), Fraction(0))


def edge_ends(scope: Scope, model: Any) -> dict[str, End]:
    """Return how the four edges of a piece are finished."""
    return {side: scope.end(model.finish(side)) for side in SIDES}


def side_lengths(across: Fraction, along: Fraction) -> dict[str, Fraction]:
    """Return the finished length of each edge of a rectangle."""
    return {"left": along, "right": along, "top": across, "bottom": across}

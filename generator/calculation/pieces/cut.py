"""What is cut from the cloth for one piece: plain, frozen, exact; no sums here."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Cut:
    """Rectangles of cloth that one piece is cut from, all alike; ``name`` tells unlike ones of a piece apart."""

    number: int
    across: Fraction
    along: Fraction
    name: str = ""

"""What is measured while a panel is sewn, and what can give where it is off: plain, frozen, exact; no sums here.

All lengths are Fractions in inches, on the finest mark of the room's ruler. Tucks count from 1, the leftmost (of cross
tucks the topmost) first.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

Others = Literal["wait", "cut", "none"]


@dataclass(frozen=True, slots=True)
class CheckPoint:
    """A measure to take while stitching, where an error can still be put right.

    After tuck ``after``, the distance from ``start`` (words) to ``end`` (words) should be ``expect`` within ``within``
    [in]. ``mark`` is the number of the fold mark measured to, 0 for the far edge. ``absorb`` [in] is how much the
    tucks that are left can still take up or give back.
    """

    after: int
    start: str
    end: str
    mark: int
    expect: Fraction
    within: Fraction
    absorb: Fraction


@dataclass(frozen=True, slots=True)
class Correction:
    """What to do at a check point when the panel is off by ``off`` [in] (narrow: less than expected).

    ``steps`` holds (tucks by number, change of depth [in], negative for shallower), dealt out over the tucks left;
    empty where those cannot absorb it. ``text`` says the rest.
    """

    after: int
    off: Fraction
    steps: tuple[tuple[tuple[int, ...], Fraction], ...]
    text: str


@dataclass(frozen=True, slots=True)
class Leeway:
    """What can give in a set of tucks that does not come out as planned; lengths in inches.

    ``changes`` is by how much each tuck may be stitched deeper or shallower without being seen: not at all where it
    covers a join, whose number is among ``joined``. ``leaves_out`` tells that one may be left out and no turn changes.
    ``keeps`` is what either end needs from its cut edge to the nearest stitching, ``trims`` what may be cut off there;
    at a ring the second of ``trims`` may be taken in at its closing. ``lets_out`` is what both allowances can give,
    ``hem`` what a caught hem at the far end can. ``others`` are the pieces that are sewn to these edges: they wait for
    the panel, are cut already, or there are none. ``sides`` names the two ends.
    """

    changes: tuple[Fraction, ...]
    joined: frozenset[int] = frozenset()
    leaves_out: bool = True
    keeps: tuple[Fraction, Fraction] = (Fraction(0), Fraction(0))
    trims: tuple[Fraction, Fraction] = (Fraction(0), Fraction(0))
    lets_out: Fraction = Fraction(0)
    hem: Fraction = Fraction(0)
    others: Others = "none"
    sides: tuple[str, str] = ("left", "right")

    @property
    def narrow(self) -> str:
        """What a panel is called that has too little between these ends."""
        return "narrow" if self.sides == ("left", "right") else "short"

    @property
    def wide(self) -> str:
        """What a panel is called that has too much between these ends."""
        return "wide" if self.sides == ("left", "right") else "long"


@dataclass(frozen=True, slots=True)
class Checks:
    """All check points of one set of tucks, what to do where one is off, and what can give."""

    points: tuple[CheckPoint, ...] = ()
    corrections: tuple[Correction, ...] = ()
    leeway: Leeway = Leeway(())


NO_CHECKS = Checks()

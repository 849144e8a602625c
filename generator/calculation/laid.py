"""The values of cutting layouts: what is cut, and where it lies on the cloth; plain, frozen, exact; no sums here.

All lengths are Fractions in inches.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import accumulate
from typing import Literal


@dataclass(frozen=True, slots=True)
class Match:
    """How the drops of a piece meet on cloth with a pattern: its ``repeat`` along the cloth, after washing [in].

    On cloth with a half drop every other breadth is ``shifted``: it begins half a repeat further on. Widths that are
    joined with the pattern going on across the seam are cut ``at_selvage``.
    """

    repeat: Fraction
    half_drop: bool = False
    shifted: bool = False
    at_selvage: bool = False


@dataclass(frozen=True, slots=True)
class CutItem:
    """A rectangle to be cut from cloth: ``across`` lies along the weft, ``along`` with the selvage [in].

    ``turnable`` where the grain may run either way; ``later`` where it is cut when the sewn panel has been measured.
    ``kit`` names the kit of a class that it is for. ``room`` is cloth beside it in which it is moved until it meets its
    stripe [in]; then it is never turned. ``match`` tells of drops that must match others of the piece. ``instead`` are
    other rectangles that it may be cut as, either way round [in]. What is ``alone`` shares no stack.
    """

    piece: str
    label: str
    across: Fraction
    along: Fraction
    quantity: int
    turnable: bool = False
    later: bool = False
    kit: str = ""
    room: Fraction = Fraction(0)
    match: Match | None = None
    instead: tuple[tuple[Fraction, Fraction], ...] = ()
    alone: bool = False


@dataclass(frozen=True, slots=True)
class PlacedItem:
    """A cut item as it lies, ``left`` from the left selvage, ``top`` from the straightened end [in]."""

    piece: str
    label: str
    copy: int
    left: Fraction
    top: Fraction
    across: Fraction
    along: Fraction
    turned: bool
    kit: str = ""


@dataclass(frozen=True, slots=True)
class LaidStack:
    """Pieces that are cut from a strip one below the other, from the left selvage [in]; all now or all later.

    It is as wide as its widest piece with the room that this needs to meet its stripe.
    """

    left: Fraction
    across: Fraction
    later: bool
    placed: tuple[PlacedItem, ...]


@dataclass(frozen=True, slots=True)
class LaidStrip:
    """A strip cut across the whole width: where it begins from the straightened end, its height [in], its stacks."""

    top: Fraction
    along: Fraction
    stacks: tuple[LaidStack, ...]

    @property
    def bottom(self) -> Fraction:
        """Where the strip ends, from the straightened end [in]."""
        return self.top + self.along

    @property
    def later(self) -> bool:
        """Whether nothing is cut from it before the panel is sewn."""
        return all(stack.later for stack in self.stacks)

    @property
    def placed(self) -> tuple[PlacedItem, ...]:
        """Its pieces, stack by stack from the left."""
        return tuple(placed for stack in self.stacks for placed in stack.placed)

    @property
    def across(self) -> Fraction:
        """The width that its stacks take [in]."""
        return self.stacks[-1].left + self.stacks[-1].across

    def moved(self, top: Fraction) -> LaidStrip:
        """Return the strip as it lies when it begins at a place [in]."""
        down = top - self.top
        stacks = (
            replace(stack, placed=tuple(replace(placed, top=placed.top + down) for placed in stack.placed))
            for stack in self.stacks
        )
        return replace(self, top=top, stacks=tuple(stacks))

    def is_like(self, other: LaidStrip) -> bool:
        """Return whether the same is cut from another strip, at the same cuts; only the copies differ."""
        return self._cuts() == other._cuts()

    def _cuts(self) -> tuple[object, ...]:
        return self.along, [
            (
                stack.left,
                stack.across,
                stack.later,
                [(one.label, one.across, one.along, one.kit) for one in stack.placed],
            )
            for stack in self.stacks
        ]


def below_each_other(strips: Sequence[LaidStrip]) -> tuple[LaidStrip, ...]:
    """Return strips one below the other in their order, those of which everything waits after the others."""
    ordered = sorted(strips, key=lambda strip: strip.later)
    tops = accumulate((strip.along for strip in ordered), initial=Fraction(0))
    return tuple(strip.moved(top) for strip, top in zip(ordered, tops, strict=False))


LayoutProof = Literal["shortest", "purchase", "open"]


@dataclass(frozen=True, slots=True)
class Layout:
    """A cutting layout: the cloth is cut across into strips, a strip down into stacks, a stack across into pieces.

    ``lower_bound`` is a length that no layout of any sort can beat, ``least`` one that no layout cut across, down and
    across can. ``proven`` tells what holds of all these: none is shorter than this one, none needs less from the shop,
    or neither is certain and at most ``steps_above`` steps of the shop could be saved. ``possible`` is the length of a
    shorter one that is known, but harder to cut and no cheaper; else that of this one. ``apart_costs`` are the steps
    that it costs to keep what waits for the sewn panel whole. ``narrowest`` is the narrowest usable width on which all
    pieces can be cut from what is bought.
    """

    width: Fraction
    length: Fraction
    strips: tuple[LaidStrip, ...]
    lower_bound: Fraction
    least: Fraction
    proven: LayoutProof
    narrowest: Fraction
    possible: Fraction
    steps_above: int = 0
    apart_costs: int = 0

    @property
    def runs(self) -> tuple[tuple[LaidStrip, ...], ...]:
        """The strips in their order, those that follow each other and are alike together."""
        runs: list[list[LaidStrip]] = []
        for strip in self.strips:
            if runs and runs[-1][0].is_like(strip):
                runs[-1].append(strip)
            else:
                runs.append([strip])
        return tuple(map(tuple, runs))

    @property
    def placed(self) -> tuple[PlacedItem, ...]:
        """All pieces, strip by strip."""
        return tuple(placed for strip in self.strips for placed in strip.placed)

"""The repeat cell of a turn plan: rows and tucks are counted in, every tuck's turn at every row comes out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from generator.calculation.count_rule import CountRule
from generator.calculation.panel_ends import Lie
from generator.calculation.worked import Turn

Cell = tuple[tuple[Turn, ...], ...]

OPPOSITE: Mapping[Turn, Turn] = MappingProxyType(
    {Turn.LEFT: Turn.RIGHT, Turn.RIGHT: Turn.LEFT, Turn.UPRIGHT: Turn.UPRIGHT}
)


@dataclass(frozen=True, slots=True)
class TurnPlan:
    """The turns of all tucks at all rows, as a repeat cell.

    ``facing`` plans have neighbours turned to each other. In such a plan an edge tuck that lies outward has lost its
    partner: ``lone`` says how to lay it instead. ``multiple`` is the number of tucks that must not be broken off.
    """

    name: str
    title: str
    cell: Cell
    facing: bool
    description: str
    lone: Lie = "out"
    multiple: int = 1

    @property
    def columns(self) -> int:
        """The number of tucks after which the plan repeats."""
        return len(self.cell[0])

    @property
    def rule(self) -> CountRule:
        """The numbers of tucks with which the plan is whole on a panel with two edges."""
        return CountRule(self.multiple)

    @property
    def ring_rule(self) -> CountRule:
        """The numbers of tucks with which the plan closes on itself."""
        return CountRule(self.columns)

    def turns(self, rows: int, count: int) -> Cell:
        """Return the turns of ``count`` tucks at ``rows`` rows, tuck 1 leftmost and row 1 at the top."""
        return tuple(self._row(self.cell[row % len(self.cell)], count) for row in range(rows))

    def lies(self, count: int) -> tuple[Lie, Lie]:
        """Return how the first and the last of ``count`` tucks lie where they need most room at their edge."""
        rows = self.turns(len(self.cell), count)
        return edge_lie(rows, at_left=True), edge_lie(rows, at_left=False)

    def _row(self, line: tuple[Turn, ...], count: int) -> tuple[Turn, ...]:
        row = [line[tuck % len(line)] for tuck in range(count)]
        if self.facing and self.lone != "out":
            for place, outward in ((0, Turn.LEFT), (-1, Turn.RIGHT)):
                if row and row[place] is outward:
                    row[place] = Turn.UPRIGHT if self.lone == "upright" else OPPOSITE[outward]
        return tuple(row)


def edge_lie(rows: Cell, *, at_left: bool) -> Lie:
    """Return how the tuck at one edge lies where it needs most room: out before in, in before upright.

    Parameters
    ----------
    rows : Cell
        Turns of all tucks at all rows that hold them.
    at_left : bool
        Whether the first tuck is asked for, else the last.

    Returns
    -------
    Lie
        ``out`` if the tuck lies over the edge's margin at any row.

    Examples
    --------
    >>> edge_lie(((Turn.RIGHT, Turn.RIGHT), (Turn.UPRIGHT, Turn.RIGHT)), at_left=True)
    'in'
    >>> edge_lie((), at_left=True)
    'upright'

    References
    ----------
    Derived in the docstring above.
    """
    place, outward = (0, Turn.LEFT) if at_left else (-1, Turn.RIGHT)
    found = {row[place] for row in rows if row}
    if outward in found:
        return "out"
    return "in" if OPPOSITE[outward] in found else "upright"

"""Top and bottom edges hold the tucks as a row does: wish and finish come in, the turns at that edge go out."""

from __future__ import annotations

from typing import Literal

from generator.calculation.panel_ends import Lie
from generator.calculation.turning.repeat import Cell, TurnPlan, edge_lie
from generator.calculation.worked import End, Turn

Held = Literal["as the next row", "left", "right", "free"]

SEWN_ACROSS = frozenset({"seam", "hem", "bound", "turnover"})


def held_turns(held: Held, end: End, next_row: tuple[Turn, ...]) -> tuple[Turn, ...]:
    """Return how an edge across the tucks lays them.

    A seam, a hem, a binding or a turnover lays every tuck one way or the other, so the edge is a row like any other.
    A fold, a selvage or a raw edge lays them only where the wish says which way.

    Parameters
    ----------
    held : Held
        The wish for this edge.
    end : End
        How the edge is finished.
    next_row : tuple[Turn, ...]
        Turns of the row next to the edge.

    Returns
    -------
    tuple[Turn, ...]
        One turn a tuck; empty where the edge leaves them free.

    Examples
    --------
    >>> row = (Turn.RIGHT, Turn.LEFT)
    >>> held_turns("as the next row", End("seam"), row) == row
    True
    >>> held_turns("as the next row", End("raw"), row)
    ()
    >>> [turn.value for turn in held_turns("left", End("hem"), row)]
    ['<', '<']

    References
    ----------
    Common practice, no source.
    """
    if held == "free" or (held == "as the next row" and end.kind not in SEWN_ACROSS):
        return ()
    if held == "as the next row":
        return next_row
    return (Turn.LEFT if held == "left" else Turn.RIGHT,) * len(next_row)


def edge_tucks_lie(plan: TurnPlan, count: int, holds: tuple[Held, Held]) -> tuple[Lie, Lie]:
    """Return how the first and the last tuck lie at worst, over all rows and the two edges that hold them.

    A tuck needs most room at its edge where it is turned outward, be it at a row or in the seam at the top.

    Parameters
    ----------
    plan : TurnPlan
        The turn plan.
    count : int
        Number of tucks, n [-].
    holds : tuple[Held, Held]
        The wishes for the top and the bottom edge.

    Returns
    -------
    tuple[Lie, Lie]
        For the left and the right edge: ``out``, ``in`` or ``upright``.

    Examples
    --------
    All lie to the right, so the last lies out; held to the left at the top, the first lies out there too.

    >>> from generator.calculation.turning.plans import turn_plan
    >>> edge_tucks_lie(turn_plan("one way"), 5, ("as the next row", "free"))
    ('in', 'out')
    >>> edge_tucks_lie(turn_plan("one way"), 5, ("left", "free"))
    ('out', 'out')

    References
    ----------
    Derived in the docstring above.
    """
    turned = {"left": Turn.LEFT, "right": Turn.RIGHT}
    edges: Cell = tuple((turned[held],) * count for held in holds if held in turned)
    rows = plan.turns(len(plan.cell), count) + edges
    return edge_lie(rows, at_left=True), edge_lie(rows, at_left=False)

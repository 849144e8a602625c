"""How many rows fit and where they lie: the wish and the depths come in, distances and draw-in go out, unrounded.

The rows stand as far apart as asked; what is left of the length after planned draw-in goes to the two edges in equal
parts. As many rows as the range of the first row allows are used.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from generator.calculation.turning.draw_in import ruled_for
from generator.calculation.turning.held import held_turns
from generator.calculation.turning.intervals import DrawIn, Swing, interval_draw_in, panel_swing, refuse_too_close
from generator.calculation.turning.repeat import Cell
from generator.calculation.turning.row_wish import RowWish
from generator.calculation.worked import Turn
from generator.errors import CalculationError
from generator.lengths import Edition, round_nearest, say_length
from generator.limits import MOST_ROWS

MOST_TURNS = 50_000


@dataclass(frozen=True, slots=True)
class RowSpread:
    """Rows laid out on the length of a panel.

    ``offsets`` are the rows from row 1 as ruled [in]. ``first`` is from a finished edge to the row next to it when all
    is sewn, ``first_ruled`` the same as ruled, at the top and at the bottom [in]. ``swings`` and ``draw_ins`` have one
    entry an interval from edge to edge: one more than rows.
    """

    turns: Cell
    top: tuple[Turn, ...]
    bottom: tuple[Turn, ...]
    offsets: tuple[Fraction, ...]
    first: Fraction
    first_ruled: tuple[Fraction, Fraction]
    swings: tuple[Swing, ...]
    draw_ins: tuple[DrawIn, ...]


@dataclass(frozen=True, slots=True)
class _RowFit:
    """A number of rows, and what it leaves from either finished edge to the row next to it [in]."""

    rows: int
    first: Fraction


def spread_rows(wish: RowWish, depths: tuple[Fraction, ...], edition: Edition) -> RowSpread:
    r"""Return the rows laid out: as many as fit, what is left divided between top and bottom.

    With N rows a finished distance S'_k apart, :math:`r_0 = (H - \sum S'_k) / 2` is left at either edge. Each row is
    ruled on a mark by itself, so no rounding adds up. An edge that holds the tucks otherwise than its row swings too.

    Parameters
    ----------
    wish : RowWish
        What is asked for.
    depths : tuple[Fraction, ...]
        Depth of each tuck, d [in].
    edition : Edition
        The ruler.

    Returns
    -------
    RowSpread
        The rows, unrounded but for their offsets.

    Raises
    ------
    CalculationError
        If no number of rows leaves a first row in its range; says which numbers come nearest.

    References
    ----------
    Derived in the docstring above.
    """
    cycle = wish.plan.turns(len(wish.plan.cell), len(depths))
    fits = [fit for fit in _fits(wish, cycle, depths, edition) if wish.number.allows(fit.rows)]
    least, most = wish.first
    good = [fit for fit in fits if least <= fit.first <= most]
    if not good:
        raise CalculationError(_nothing_fits(wish, fits, edition))
    if good[-1].rows * len(depths) > MOST_TURNS:
        raise CalculationError(
            f"{len(depths)} tucks in {_rows(good[-1].rows)} are more than {MOST_TURNS} turns, which is not worked out; "
            "rule the rows further apart, or space the tucks wider"
        )
    return _laid_out(wish, depths, good[-1], edition)


def _fits(wish: RowWish, cycle: Cell, depths: tuple[Fraction, ...], edition: Edition) -> Iterator[_RowFit]:
    """Every number of rows from one upward that leaves anything at the edges."""
    swings = [panel_swing(row, cycle[(number + 1) % len(cycle)], depths) for number, row in enumerate(cycle)]
    taken, rows = Fraction(0), 1
    while (left := wish.finished_along - taken) > 0:
        yield _RowFit(rows, left / 2)
        if rows == wish.number.exactly:
            return
        if rows == MOST_ROWS:
            raise CalculationError(f"more than {MOST_ROWS} rows would fit; rule them further apart")
        spacing = _offset(rows, wish, edition) - _offset(rows - 1, wish, edition)
        swings_here = swings[(rows - 1) % len(cycle)]
        _refuse(wish, spacing, swings_here, edition)
        taken += spacing - interval_draw_in(spacing, swings_here, wish.measured_draw_in).most
        rows += 1


def _offset(number: int, wish: RowWish, edition: Edition) -> Fraction:
    return round_nearest(number * wish.spacing, edition.mark)


def _refuse(wish: RowWish, spacing: Fraction, swings: Swing, edition: Edition) -> None:
    measured = wish.measured_draw_in
    what = f"rows {say_length(spacing, edition)} apart"
    refuse_too_close(what, spacing, swings, edition, measured=measured is not None)
    if measured is not None and measured >= spacing:
        raise CalculationError(
            f"if every interval loses {say_length(measured, edition)}, nothing is left of {what}; "
            "give the draw-in of one interval, not of the whole sample"
        )


def _laid_out(wish: RowWish, depths: tuple[Fraction, ...], fit: _RowFit, edition: Edition) -> RowSpread:
    turns = wish.plan.turns(fit.rows, len(depths))
    top = held_turns(wish.top_held, wish.ends[0], turns[0])
    bottom = held_turns(wish.bottom_held, wish.ends[1], turns[-1])
    held = (top, *turns, bottom)
    swings = tuple(panel_swing(one, other, depths) for one, other in pairwise(held))
    offsets = tuple(_offset(row, wish, edition) for row in range(fit.rows))
    at_top, at_bottom = (ruled_for(fit.first, edge.depth, edge.half_turns) for edge in (swings[0], swings[-1]))
    between = tuple(
        interval_draw_in(after - before, swings_here, wish.measured_draw_in)
        for (before, after), swings_here in zip(pairwise(offsets), swings[1:-1], strict=True)
    )
    draw_ins = (interval_draw_in(at_top, swings[0]), *between, interval_draw_in(at_bottom, swings[-1]))
    return RowSpread(turns, top, bottom, offsets, fit.first, (at_top, at_bottom), swings, draw_ins)


def _nothing_fits(wish: RowWish, fits: list[_RowFit], edition: Edition) -> str:
    least, most = (say_length(length, edition) for length in wish.first)
    near = [fit for fit in fits if fit.first > wish.first[1]][-1:] + [fit for fit in fits if fit.first < wish.first[0]][
        :1
    ]
    told = " and ".join(
        f"{_rows(fit.rows)} with the first {say_length(fit.first, edition)} from the edge" for fit in near
    )
    asked = str(wish.number) if wish.number.exactly is None else f"{wish.number} row" + "s" * (wish.number.exactly != 1)
    return (
        f"rows {say_length(wish.spacing, edition)} apart do not fit a finished length of "
        f"{say_length(wish.finished_along, edition)} (asked for: {asked}): "
        + (f"nearest {'is' if len(near) == 1 else 'are'} {told}; " if near else "no such number of rows has room; ")
        + f"the first row may be {least} to {most} from the edge; change that range, the spacing or the number"
    )


def _rows(number: int) -> str:
    return "1 row" if number == 1 else f"{number} rows"

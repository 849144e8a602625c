"""What rows cost in length, for tables: a plan or a depth and row spacings come in, shares and lengths lost go out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.irrational import PI_ABOVE
from generator.calculation.refused import more_than_nothing
from generator.calculation.turning.intervals import DrawIn, Swing, interval_draw_in, is_tight, panel_swing
from generator.calculation.turning.repeat import TurnPlan

SPACINGS_IN_DEPTHS = (6, 8, 12)
_SIDE_TO_SIDE = Fraction(1)


@dataclass(frozen=True, slots=True)
class PlanDrawIn:
    """What a plan loses of its length where rows are ``spacing`` depths apart: least and planning share [-].

    ``uneven`` tells that some tucks swing where others do not, so that the panel may ripple.
    """

    spacing: int
    least: Fraction
    most: Fraction
    uneven: bool


def plan_draw_in(plan: TurnPlan, spacing: int) -> PlanDrawIn:
    """Return the share of its length that a plan loses over one repeat of its rows.

    The plan repeats, so the last row of its cell is followed by the first. Each interval loses what its tucks' swings
    make it lose; the share is the loss of all intervals over their length.

    Parameters
    ----------
    plan : TurnPlan
        The plan; tucks at the edges of a panel are left out of account.
    spacing : int
        Between two rows as ruled, in depths of a tuck [-].

    Returns
    -------
    PlanDrawIn
        Least and planning share [-].

    Raises
    ------
    CalculationError
        If the rows are too close for the tucks to swing.

    Examples
    --------
    Tucks that all lie one way lose nothing. From side to side at 6 depths: 1 - sqrt(1 - (2/6)^2) = 0.0572 at least,
    1 - sqrt(1 - (pi/6)^2) = 0.1480 to plan with.

    >>> from generator.calculation.turning.plans import turn_plan
    >>> plan_draw_in(turn_plan("one way"), 6).most
    Fraction(0, 1)
    >>> lost = plan_draw_in(turn_plan("ripples"), 6)
    >>> round(lost.least, 4), round(lost.most, 4)
    (Fraction(143, 2500), Fraction(37, 250))

    References
    ----------
    Derived in :func:`~generator.calculation.turning.draw_in.planning_draw_in`; no published source.
    """
    depths = (Fraction(1),) * plan.columns
    swings = [panel_swing(*pair, depths) for pair in zip(plan.cell, plan.cell[1:] + plan.cell[:1], strict=True)]
    lost = [interval_draw_in(Fraction(spacing), swing) for swing in swings]
    length = Fraction(spacing * len(swings))
    return PlanDrawIn(
        spacing,
        sum((draw_in.least for draw_in in lost), Fraction(0)) / length,
        sum((draw_in.most for draw_in in lost), Fraction(0)) / length,
        any(swing.uneven for swing in swings),
    )


@dataclass(frozen=True, slots=True)
class RowLoss:
    """What one interval loses with tucks of a depth; nothing is known where ``lost`` is None: the rows are too close.

    ``tight`` tells that a sample should be sewn first.
    """

    lost: DrawIn | None
    tight: bool


def row_loss(depth: Fraction, spacing: Fraction) -> RowLoss:
    r"""Return the length that an interval loses where all tucks go over from side to side.

    Parameters
    ----------
    depth : Fraction
        Depth of the tucks, d [in].
    spacing : Fraction
        Between two rows as ruled, S [in].

    Returns
    -------
    RowLoss
        Least and planning loss [in]; none where S is not above :math:`\pi d`.

    Raises
    ------
    CalculationError
        If a length is not positive.

    Examples
    --------
    Rows 3 in apart and tucks of 1/2 in: 3 - sqrt(9 - 1) = 0.1716 to 3 - sqrt(9 - 2.4674) = 0.4441 in. At 1 1/2 in
    they are too close, for pi / 2 is more.

    >>> loss = row_loss(Fraction(1, 2), Fraction(3))
    >>> round(loss.lost.least, 4), round(loss.lost.most, 4), loss.tight
    (Fraction(429, 2500), Fraction(4441, 10000), False)
    >>> row_loss(Fraction(1, 2), Fraction(3, 2))
    RowLoss(lost=None, tight=True)

    References
    ----------
    Derived in :func:`~generator.calculation.turning.draw_in.planning_draw_in`; no published source.
    """
    way = (more_than_nothing(depth, "the depth of a tuck"), _SIDE_TO_SIDE)
    if more_than_nothing(spacing, "the distance between two rows") <= PI_ABOVE * depth:
        return RowLoss(None, tight=True)
    swings = Swing(*way, easiest=way)
    return RowLoss(interval_draw_in(spacing, swings), is_tight(spacing, swings))


def plan_rows(plan: TurnPlan, spacings: Sequence[int] = SPACINGS_IN_DEPTHS) -> tuple[PlanDrawIn, ...]:
    """Return what a plan loses at several distances between its rows.

    References
    ----------
    Derived in :func:`plan_draw_in`.
    """
    return tuple(plan_draw_in(plan, spacing) for spacing in spacings)

"""Draw-in of one interval between two rows: spacing, depth and swing come in, exact bounds of the lost length go out.

A *swing* is how far a tuck turns over between two rows, in half turns: 1 from side to side, 1/2 from standing, 0 if it
lies alike at both. Roots and pi are rounded so that the smaller bound is never too large nor the larger too small.
"""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.irrational import PI_ABOVE, root_above, root_below
from generator.calculation.worked import Turn
from generator.errors import CalculationError

COMFORT = 6


def swing(before: Turn, after: Turn) -> Fraction:
    """Return how far a tuck swings between two rows.

    Parameters
    ----------
    before, after : Turn
        How the tuck lies at the one row and at the next.

    Returns
    -------
    Fraction
        In half turns [-]: 1, 1/2 or 0.

    Examples
    --------
    >>> swing(Turn.LEFT, Turn.RIGHT), swing(Turn.UPRIGHT, Turn.RIGHT), swing(Turn.LEFT, Turn.LEFT)
    (Fraction(1, 1), Fraction(1, 2), Fraction(0, 1))

    References
    ----------
    Geometry: upright stands a quarter of a circle from either side.
    """
    if before is after:
        return Fraction(0)
    return Fraction(1, 2) if Turn.UPRIGHT in (before, after) else Fraction(1)


def least_draw_in(spacing: Fraction, depth: Fraction, half_turns: Fraction) -> Fraction:
    r"""Return the least length that an interval can lose.

    The fold keeps its length S while its far end moves sideways and upward on a circle of radius d: by the chord
    :math:`2 d \sin(\alpha/2)`. Nothing is shorter than the straight way, so :math:`S - \sqrt{S^2 - 4 d^2
    \sin^2(\alpha/2)}` is lost at least. For the swings of 0, 1/2 and 1 half turns the squared sine is the swing itself.

    Parameters
    ----------
    spacing : Fraction
        Between the two rows as ruled, S [in]; at least the chord.
    depth : Fraction
        Depth of the tuck, d [in].
    half_turns : Fraction
        Swing of the tuck, alpha / pi [-]: 0, 1/2 or 1.

    Returns
    -------
    Fraction
        Least draw-in of the interval [in], rounded downward.

    Raises
    ------
    CalculationError
        If the rows are closer than the chord: the fold cannot reach.

    Notes
    -----
    Derived for a fold that cannot stretch and cloth without thickness; pressed tucks draw in more.

    Examples
    --------
    Rows 5 in apart and tucks of 2 in from side to side: 5 - sqrt(25 - 16) = 2. Lying alike, nothing is lost.

    >>> least_draw_in(Fraction(5), Fraction(2), Fraction(1))
    Fraction(2, 1)
    >>> least_draw_in(Fraction(1), Fraction(2), Fraction(0))
    Fraction(0, 1)

    References
    ----------
    Derived in the docstring above; no published source.
    """
    left_over = spacing**2 - 4 * depth**2 * half_turns
    if left_over < 0:
        raise CalculationError("the rows are closer together than a tuck can swing; rule them further apart")
    return spacing - root_above(left_over)


def planning_draw_in(spacing: Fraction, depth: Fraction, half_turns: Fraction) -> Fraction:
    r"""Return the length that an interval loses if the tuck swings over evenly: the value to plan with.

    Swinging evenly the fold winds along a screw line: it goes the arc :math:`\alpha d` round while it goes S' down.
    Unrolled, that is a right triangle with the fold S as its long side: :math:`S - \sqrt{S^2 - (\alpha d)^2}`.

    Parameters
    ----------
    spacing : Fraction
        Between the two rows as ruled, S [in]; at least the arc.
    depth : Fraction
        Depth of the tuck, d [in].
    half_turns : Fraction
        Swing of the tuck, alpha / pi [-]: 0, 1/2 or 1.

    Returns
    -------
    Fraction
        Draw-in of the interval [in], rounded upward.

    Raises
    ------
    CalculationError
        If the rows are closer than the arc: the fold cannot go evenly round.

    Notes
    -----
    Between this and :func:`least_draw_in` lies what to expect. A sewn sample replaces both.

    Examples
    --------
    Rows 3 in apart and tucks of 1/2 in: 3 - sqrt(9 - 2.4674) = 0.44411, which the bound exceeds by a trifle.

    >>> drawn_in = planning_draw_in(Fraction(3), Fraction(1, 2), Fraction(1))
    >>> Fraction(44410, 100000) < drawn_in < Fraction(44412, 100000)
    True
    >>> planning_draw_in(Fraction(3), Fraction(1, 2), Fraction(0))
    Fraction(0, 1)

    References
    ----------
    Derived in the docstring above; no published source.
    """
    if half_turns == 0:
        return Fraction(0)
    # A rational above pi and a root below: the loss that is planned for is never told too small.
    left_over = spacing**2 - (half_turns * PI_ABOVE * depth) ** 2
    if left_over < 0:
        raise CalculationError("the rows are closer together than a tuck can swing evenly; rule them further apart")
    return spacing - root_below(left_over)


def ruled_for(finished_spacing: Fraction, depth: Fraction, half_turns: Fraction) -> Fraction:
    r"""Return how far apart to rule two rows that shall end up a given distance apart.

    The same triangle as in :func:`planning_draw_in`, solved for its long side: :math:`S = \sqrt{S'^2 + (\alpha d)^2}`.

    Parameters
    ----------
    finished_spacing : Fraction
        Between the two rows when all is sewn, S' [in].
    depth : Fraction
        Depth of the tuck, d [in].
    half_turns : Fraction
        Swing of the tuck, alpha / pi [-]: 0, 1/2 or 1.

    Returns
    -------
    Fraction
        Distance to rule, S [in], rounded upward.

    Examples
    --------
    To finish 3 in apart with tucks of 1/2 in: sqrt(9 + 2.4674) = 3.38636. Lying alike they are ruled as they finish.

    >>> ruled = ruled_for(Fraction(3), Fraction(1, 2), Fraction(1))
    >>> Fraction(338635, 100000) < ruled < Fraction(338637, 100000)
    True
    >>> ruled_for(Fraction(3), Fraction(1, 2), Fraction(0))
    Fraction(3, 1)

    References
    ----------
    Derived in the docstring above; no published source.
    """
    return root_above(finished_spacing**2 + (half_turns * PI_ABOVE * depth) ** 2)


def comfortable_spacing(depth: Fraction, half_turns: Fraction) -> Fraction:
    """Return the spacing below which an interval is tight: six depths for a tuck that swings from side to side.

    At that spacing an even swing costs a seventh of the length whatever the swing, so a smaller swing may be closer.

    Parameters
    ----------
    depth : Fraction
        Depth of the tuck, d [in].
    half_turns : Fraction
        Swing of the tuck [-]: 0, 1/2 or 1.

    Returns
    -------
    Fraction
        The least comfortable spacing, 6 d times the swing [in].

    Examples
    --------
    >>> comfortable_spacing(Fraction(1, 2), Fraction(1))
    Fraction(3, 1)

    References
    ----------
    Common practice, no source.
    """
    return COMFORT * half_turns * depth

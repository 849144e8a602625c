"""What happens between two rows, all tucks together: turns and spacing come in, the range of the draw-in goes out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.irrational import PI_ABOVE
from generator.calculation.turning.draw_in import comfortable_spacing, least_draw_in, planning_draw_in, swing
from generator.calculation.worked import Turn
from generator.errors import CalculationError
from generator.lengths import Edition, round_up, say_length


@dataclass(frozen=True, slots=True)
class Swing:
    """How the tucks of a panel swing between two rows.

    ``depth`` [in] and ``half_turns`` belong to the tuck that swings hardest, ``easiest`` the same of the tuck that
    swings least; ``half_turns`` is 0 where all lie alike at both rows.
    """

    depth: Fraction
    half_turns: Fraction
    easiest: tuple[Fraction, Fraction]

    @property
    def uneven(self) -> bool:
        """Whether some tucks swing and others do not, so that the panel may ripple."""
        return self.half_turns > 0 and self.easiest[1] == 0


@dataclass(frozen=True, slots=True)
class DrawIn:
    """The range of length that one interval loses [in]."""

    least: Fraction
    most: Fraction


NO_SWING = Swing(Fraction(0), Fraction(0), (Fraction(0), Fraction(0)))


def panel_swing(before: Sequence[Turn], after: Sequence[Turn], depths: Sequence[Fraction]) -> Swing:
    """Return how the tucks of a panel swing from one row to the next.

    The tuck with the longest way to go, depth times swing, decides how close the rows may be and how much is lost.

    Parameters
    ----------
    before, after : Sequence[Turn]
        Turns at the two rows, one a tuck; empty where nothing holds the tucks (a free edge).
    depths : Sequence[Fraction]
        Depth of each tuck, d [in].

    Returns
    -------
    Swing
        The hardest and the easiest swing.

    Examples
    --------
    The first tuck swings from side to side, the second lies alike.

    >>> left, right = Turn.LEFT, Turn.RIGHT
    >>> found = panel_swing((left, right), (right, right), (Fraction(1, 2), Fraction(1, 4)))
    >>> found.depth, found.half_turns, found.uneven
    (Fraction(1, 2), Fraction(1, 1), True)
    >>> panel_swing((), (right, right), (Fraction(1, 2), Fraction(1, 4))) == NO_SWING
    True

    References
    ----------
    Derived in the docstring above.
    """
    if not before or not after or not depths:
        return NO_SWING
    ways = {(depth, swing(one, other)) for one, other, depth in zip(before, after, depths, strict=True)}
    hardest = max(ways, key=lambda way: (way[0] * way[1], way))
    return Swing(*hardest, easiest=min(ways, key=lambda way: (way[0] * way[1], way)))


def interval_draw_in(spacing: Fraction, swings: Swing, measured: Fraction | None = None) -> DrawIn:
    """Return the range of length that one interval loses.

    The tuck that swings least is the last to be drawn in, so the range starts at its least value (nothing, where it
    lies alike); the tuck that swings hardest sets the value to plan with. A sewn sample overrides both.

    Parameters
    ----------
    spacing : Fraction
        Between the two rows as ruled, S [in].
    swings : Swing
        How the tucks swing.
    measured : Fraction, optional
        Draw-in of one such interval on a sewn sample [in].

    Returns
    -------
    DrawIn
        The least and the planning value [in].

    Examples
    --------
    >>> one = (Fraction(2), Fraction(1))
    >>> interval_draw_in(Fraction(5), Swing(*one, easiest=one), measured=Fraction(9, 4))
    DrawIn(least=Fraction(9, 4), most=Fraction(9, 4))
    >>> interval_draw_in(Fraction(5), NO_SWING, measured=Fraction(9, 4))
    DrawIn(least=Fraction(0, 1), most=Fraction(0, 1))

    References
    ----------
    Derived in the docstring above.
    """
    if swings.half_turns == 0:
        return DrawIn(Fraction(0), Fraction(0))
    if measured is not None:
        return DrawIn(measured, measured)
    least = least_draw_in(spacing, *swings.easiest)
    return DrawIn(least, planning_draw_in(spacing, swings.depth, swings.half_turns))


def is_tight(spacing: Fraction, swings: Swing) -> bool:
    """Return whether rows are so close that the sheet should advise a sample.

    Parameters
    ----------
    spacing : Fraction
        Between the two rows as ruled, S [in].
    swings : Swing
        How the tucks swing.

    Returns
    -------
    bool
        Whether the spacing is below six depths for a tuck that swings from side to side, in proportion otherwise.

    Examples
    --------
    >>> one = (Fraction(1, 2), Fraction(1))
    >>> [is_tight(spacing, Swing(*one, easiest=one)) for spacing in (Fraction(3), Fraction(23, 8))]
    [False, True]

    References
    ----------
    Common practice, no source.
    """
    return spacing < comfortable_spacing(swings.depth, swings.half_turns)


def refuse_too_close(what: str, spacing: Fraction, swings: Swing, edition: Edition, *, measured: bool) -> None:
    r"""Refuse rows so close that their tucks cannot swing over.

    With a swing of s half turns the fold cannot reach at all below the chord :math:`2 d \sqrt{s}`, and at the chord
    itself nothing would be left of the interval. It cannot go evenly round below the arc :math:`\pi s d`; between the
    two only a sewn sample can tell what happens.

    Parameters
    ----------
    what : str
        What lies too close, as the subject of the message: ``rows 1 in apart``.
    spacing : Fraction
        Between the two rows as ruled, S [in].
    swings : Swing
        How the tucks swing.
    edition : Edition
        The unit and the ruler of the message.
    measured : bool
        Whether a sewn sample gives the draw-in.

    Returns
    -------
    None
        Nothing: the spacing can be sewn.

    Raises
    ------
    CalculationError
        If the spacing is not above the arc, or with a sample not above the chord; says how much is needed.

    Examples
    --------
    Tucks of 3/8 in need more than 1.178 in without a sample and more than 3/4 in with one: 1 in is too close without.

    >>> from generator.lengths import INCH
    >>> one = (Fraction(3, 8), Fraction(1))
    >>> refuse_too_close("rows", Fraction(1), Swing(*one, easiest=one), INCH, measured=True)
    >>> refuse_too_close("rows", Fraction(19, 16), Swing(*one, easiest=one), INCH, measured=False)

    References
    ----------
    Derived in the docstring above.
    """
    reach = swings.depth * swings.half_turns
    if reach == 0:
        return
    beyond_chord = spacing**2 > 4 * swings.depth**2 * swings.half_turns
    arc = PI_ABOVE * reach
    if beyond_chord and (measured or spacing > arc):
        return
    needed = say_length(round_up(arc, edition.mark), edition)
    better = say_length(round_up(comfortable_spacing(swings.depth, swings.half_turns), edition.mark), edition)
    sample = ", or give the draw-in of a sewn sample" if beyond_chord else ""
    raise CalculationError(
        f"{what} are too close for tucks {say_length(swings.depth, edition)} deep: at least {needed} is needed and "
        f"{better} is better; rule the rows further apart, or make the tucks shallower{sample}"
    )

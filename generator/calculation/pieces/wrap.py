"""A wrap that laps over itself and buttons: girth, lap and button come in, its width and the room it needs go out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.pieces.buttons import HoleRun, hole_span
from generator.calculation.refused import more_than_nothing
from generator.lengths import MILLIMETRE, Edition, say_length

_LAP_BESIDE_BUTTON: Mapping[str, Fraction] = {"inch": Fraction(1, 2), "metric": 12 * MILLIMETRE}


@dataclass(frozen=True, slots=True)
class Lap:
    """The lap of a wrap: its width and what closes it [in].

    ``turned_out`` is the depth of the edge tuck beside the buttonholes where a row turns it out over the lap, else
    nothing.
    """

    width: Fraction
    diameter: Fraction
    thickness: Fraction
    run: HoleRun = "square"
    turned_out: Fraction = Fraction(0)


def least_lap(diameter: Fraction, edition: Edition) -> Fraction:
    """Return the narrowest lap that a row of buttons can close: D + 1/2 in (12 mm).

    The whole button must lie on the lap, with a little cloth beside it.

    Parameters
    ----------
    diameter : Fraction
        Of a button, D [in].
    edition : Edition
        Chooses the inch or the metric allowance.

    Returns
    -------
    Fraction
        Width of the lap [in].

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> least_lap(Fraction(7, 8), INCH)
    Fraction(11, 8)

    References
    ----------
    Common practice, no source.
    """
    return more_than_nothing(diameter, "the diameter of a button") + _LAP_BESIDE_BUTTON[edition.name]


def least_upper_margin(lap: Lap, edition: Edition) -> Fraction:
    """Return the least margin of the end with the buttonholes, from its edge to the first tuck's stitching.

    No button goes through a tuck, so the hole ends before the tuck does: 3 D / 2 + t + 3/8 in for a hole square to the
    edge, D / 2 + 1/2 in for one along it, and the depth of the edge tuck more where a row turns it out over the lap.

    Parameters
    ----------
    lap : Lap
        The lap and its button [in].
    edition : Edition
        Chooses the inch or the metric allowances.

    Returns
    -------
    Fraction
        Margin [in].

    Examples
    --------
    A button of 7/8 by 1/8 in: 21/16 + 2/16 + 6/16 = 29/16; along the edge 7/16 + 8/16 = 15/16.

    >>> from generator.lengths import INCH
    >>> least_upper_margin(Lap(Fraction(2), Fraction(7, 8), Fraction(1, 8)), INCH)
    Fraction(29, 16)
    >>> least_upper_margin(Lap(Fraction(2), Fraction(7, 8), Fraction(1, 8), "along"), INCH)
    Fraction(15, 16)

    References
    ----------
    Derived in ``hole_span``.
    """
    return hole_span(lap.diameter, lap.thickness, lap.run, edition)[1] + lap.turned_out


def lap_faults(lap: Lap, upper_margin: Fraction, under_margin: Fraction, edition: Edition) -> tuple[str, ...]:
    """Return everything that is wrong with the lap of a wrap.

    The under end lies wholly beneath the lap and is plain there, so its margin is at least the lap.

    Parameters
    ----------
    lap : Lap
        The lap and its button [in].
    upper_margin, under_margin : Fraction
        From the finished edge to the nearest tuck's stitching, at the end with the buttonholes and at the end with the
        buttons [in].
    edition : Edition
        Chooses the allowances; its unit is spoken.

    Returns
    -------
    tuple of str
        One sentence a fault; none if the lap works.

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> lap = Lap(Fraction(2), Fraction(7, 8), Fraction(1, 8))
    >>> lap_faults(lap, Fraction(2), Fraction(2), INCH)
    ()
    >>> lap_faults(lap, Fraction(2), Fraction(3, 2), INCH)
    ('the margin under the lap is 1 1/2 in and the lap 2 in: a tuck lies under the buttons; make that margin 2 in',)

    References
    ----------
    Derived in the docstrings above.
    """
    faults = []
    narrowest, upper = least_lap(lap.diameter, edition), least_upper_margin(lap, edition)
    if lap.width < narrowest:
        faults.append(
            f"a lap of {say_length(lap.width, edition)} is too narrow for buttons of"
            f" {say_length(lap.diameter, edition)}; make it {say_length(narrowest, edition)} or more"
        )
    if upper_margin < upper:
        faults.append(
            f"the margin with the buttonholes is {say_length(upper_margin, edition)} and a hole would run into the"
            f" first tuck; make that margin {say_length(upper, edition)} or more"
        )
    if under_margin < lap.width:
        width = say_length(lap.width, edition)
        faults.append(
            f"the margin under the lap is {say_length(under_margin, edition)} and the lap {width}: a tuck lies under"
            f" the buttons; make that margin {width}"
        )
    return tuple(faults)

"""Buttons on an edge: the edge and the button come in, places, buttonholes and their room go out."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from itertools import pairwise
from typing import Literal

from generator.calculation.refused import more_than_nothing, not_negative
from generator.errors import CalculationError
from generator.lengths import MILLIMETRE, Edition, say_length

HoleRun = Literal["square", "along"]
"""Whether a buttonhole runs square to the edge or along it."""

_BEYOND: Mapping[str, Fraction] = {"inch": Fraction(1, 2), "metric": 12 * MILLIMETRE}
_PAST_CENTRE: Mapping[str, Fraction] = {"inch": Fraction(1, 8), "metric": 3 * MILLIMETRE}


def from_lignes(lignes: Fraction) -> Fraction:
    """Return a length that the button trade gives in lignes: forty are an inch.

    Parameters
    ----------
    lignes : Fraction
        Diameter of a button [ligne].

    Returns
    -------
    Fraction
        The same [in].

    Examples
    --------
    >>> from_lignes(Fraction(20)), from_lignes(Fraction(36))
    (Fraction(1, 2), Fraction(9, 10))

    References
    ----------
    *Dictionary of Dry Goods*, "Line".
    """
    return more_than_nothing(lignes, "the size of a button") / 40


def buttonhole(diameter: Fraction, thickness: Fraction) -> Fraction:
    """Return the length of the opening that a flat button passes.

    The button goes through on edge: its width and its thickness, D + t.

    Parameters
    ----------
    diameter, thickness : Fraction
        Of the button, D and t [in].

    Returns
    -------
    Fraction
        Length of the cut opening [in]; the bars at its ends come beside it.

    Notes
    -----
    A domed or knobbed button is measured with a strip of paper round it instead; try the hole on a scrap first.

    Examples
    --------
    A button 7/8 in wide and 1/8 in thick: 1 in.

    >>> buttonhole(Fraction(7, 8), Fraction(1, 8))
    Fraction(1, 1)

    References
    ----------
    University of Minnesota Agricultural Extension, "Buttons and Buttonholes", 1965; M. H. Marshall, Virginia
    Polytechnic Institute Extension Publication 115, 1974.
    """
    across = more_than_nothing(diameter, "the diameter of a button")
    return across + not_negative(thickness, "the thickness of a button")


def even_inset(length: Fraction, number: int) -> Fraction:
    """Return the inset that leaves half an interval at both ends: L / (2 N).

    Parameters
    ----------
    length : Fraction
        Length of the edge, L [in].
    number : int
        Number of buttons, N [-].

    Returns
    -------
    Fraction
        From the end of the edge to the first button [in].

    Raises
    ------
    CalculationError
        If there is no button.

    Examples
    --------
    Three buttons on 18 in: intervals of 6 in, the first one 3 in from the end.

    >>> even_inset(Fraction(18), 3)
    Fraction(3, 1)

    References
    ----------
    Derived in the docstring above.
    """
    if number < 1:
        raise CalculationError("a closure has at least one button")
    return more_than_nothing(length, "the edge with the buttons") / (2 * number)


def button_positions(length: Fraction, number: int, inset: Fraction) -> tuple[Fraction, ...]:
    """Return where the centres of the buttons lie along an edge.

    The first and the last are placed, the rest divide the distance between them equally. One alone sits in the middle.

    Parameters
    ----------
    length : Fraction
        Length of the edge [in].
    number : int
        Number of buttons [-].
    inset : Fraction
        From each end of the edge to the first and the last button [in].

    Returns
    -------
    tuple of Fraction
        Distances from the start of the edge [in].

    Raises
    ------
    CalculationError
        If there is no button, or the first and the last one cross.

    Examples
    --------
    Four on 18 in, 2 in from the ends: 14 in are divided in three.

    >>> [str(place) for place in button_positions(Fraction(18), 4, Fraction(2))]
    ['2', '20/3', '34/3', '16']
    >>> button_positions(Fraction(9), 1, Fraction(2))
    (Fraction(9, 2),)

    References
    ----------
    *The New Dressmaker*, 1921: first and last hole marked, the rest by dividing the distance.
    """
    if number < 1:
        raise CalculationError("a closure has at least one button")
    edge = more_than_nothing(length, "the edge with the buttons")
    if number == 1:
        return (edge / 2,)
    between = edge - 2 * not_negative(inset, "the distance of the buttons from the ends")
    if between <= 0:
        raise CalculationError(
            "the first and the last button cross: they are set in by half the edge; set them in by less"
        )
    return tuple(inset + between * place / (number - 1) for place in range(number))


def crowded_buttons(positions: tuple[Fraction, ...], diameter: Fraction, edition: Edition) -> str:
    """Return what is wrong where neighbouring buttons touch, else an empty text.

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> crowded_buttons((Fraction(1), Fraction(2)), Fraction(1), INCH)
    'buttons of 1 in stand 1 in apart and touch; use fewer or smaller ones'
    >>> crowded_buttons((Fraction(1), Fraction(3)), Fraction(1), INCH)
    ''
    """
    gaps = [after - before for before, after in pairwise(positions)]
    if not gaps or min(gaps) > diameter:
        return ""
    found, apart = say_length(diameter, edition), say_length(min(gaps), edition)
    return f"buttons of {found} stand {apart} apart and touch; use fewer or smaller ones"


def button_line(diameter: Fraction, edition: Edition) -> Fraction:
    """Return how far from the edge of the upper lap the centres of the buttons lie.

    The lap reaches beyond the centre by half the button and a little cloth: D / 2 + 1/2 in (12 mm).

    Parameters
    ----------
    diameter : Fraction
        Of a button, D [in].
    edition : Edition
        Chooses the inch or the metric allowance.

    Returns
    -------
    Fraction
        From the finished edge to the line of centres [in].

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> button_line(Fraction(7, 8), INCH)
    Fraction(15, 16)

    References
    ----------
    University of Minnesota Agricultural Extension, "Buttons and Buttonholes", 1965 (half the diameter and 1/4 to
    1/2 in; the larger is used).
    """
    return more_than_nothing(diameter, "the diameter of a button") / 2 + _BEYOND[edition.name]


def hole_span(diameter: Fraction, thickness: Fraction, run: HoleRun, edition: Edition) -> tuple[Fraction, Fraction]:
    """Return where a buttonhole begins and ends, measured from the edge of the upper lap.

    Square to the edge it begins 1/8 in (3 mm) beyond the line of centres, toward the edge, because the button pulls to
    that end, and runs inward by its length. Along the edge it lies on the line of centres, so both are the same.

    Parameters
    ----------
    diameter, thickness : Fraction
        Of a button [in].
    run : {"square", "along"}
        Which way the hole runs.
    edition : Edition
        Chooses the inch or the metric allowances.

    Returns
    -------
    tuple of Fraction
        Nearest and farthest point of the hole from the finished edge [in].

    Examples
    --------
    A button of 1 in by 1/8: the line of centres lies at 1 in; square, the hole runs from 7/8 to 7/8 + 1 1/8 = 2.

    >>> from generator.lengths import INCH
    >>> hole_span(Fraction(1), Fraction(1, 8), "square", INCH)
    (Fraction(7, 8), Fraction(2, 1))
    >>> hole_span(Fraction(1), Fraction(1, 8), "along", INCH)
    (Fraction(1, 1), Fraction(1, 1))

    References
    ----------
    University of Minnesota Agricultural Extension, "Buttons and Buttonholes", 1965.
    """
    line = button_line(diameter, edition)
    if run == "along":
        return line, line
    begins = line - _PAST_CENTRE[edition.name]
    return begins, begins + buttonhole(diameter, thickness)

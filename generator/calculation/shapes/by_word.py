"""Outlines that one word tells: the word and the finished size come in, the lines of every edge go out, clockwise."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from generator.calculation.refused import more_than_nothing
from generator.calculation.shapes.segments import QuarterOval, Segment, Spot, StraightLine
from generator.errors import CalculationError
from generator.lengths import Edition, say_length

Edges = Mapping[str, tuple[Segment, ...]]
_NOTHING = Fraction(0)


def oval(across: Fraction, along: Fraction) -> Edges:
    """Return the rim of an oval, from its highest point round.

    Parameters
    ----------
    across, along : Fraction
        Finished size [in].

    Returns
    -------
    Mapping of str to tuple of Segment
        The lines of its one edge.

    Examples
    --------
    >>> oval(Fraction(14), Fraction(10))["rim"][0].end
    (Fraction(14, 1), Fraction(5, 1))
    """
    wide, high = more_than_nothing(across, "the finished size"), more_than_nothing(along, "the finished size")
    middle, level = wide / 2, high / 2
    return {
        "rim": (
            QuarterOval((middle, _NOTHING), (wide, level), "across"),
            QuarterOval((wide, level), (middle, high), "down"),
            QuarterOval((middle, high), (_NOTHING, level), "across"),
            QuarterOval((_NOTHING, level), (middle, _NOTHING), "down"),
        )
    }


def half_circle(across: Fraction, along: Fraction) -> Edges:
    """Return the edges of half a circle that stands on its straight edge; of half an oval where it is told higher.

    Parameters
    ----------
    across, along : Fraction
        Finished size: the straight edge, and how high the rim rises over its middle [in].

    Returns
    -------
    Mapping of str to tuple of Segment
        The lines of the rim and of the bottom.

    Examples
    --------
    >>> half_circle(Fraction(12), Fraction(6))["bottom"][0].end
    (Fraction(0, 1), Fraction(6, 1))
    """
    wide, high = more_than_nothing(across, "the finished size"), more_than_nothing(along, "the finished size")
    left, top, right = (_NOTHING, high), (wide / 2, _NOTHING), (wide, high)
    return {
        "rim": (QuarterOval(left, top, "down"), QuarterOval(top, right, "across")),
        "bottom": (StraightLine(right, left),),
    }


def rounded(size: tuple[Fraction, Fraction], radius: Fraction, corners: str, edition: Edition) -> Edges:
    """Return the edges of a rectangle with round corners.

    Parameters
    ----------
    size : tuple of Fraction
        Finished size across and along [in].
    radius : Fraction
        Of the corners [in].
    corners : str
        Which of them are round: ``top``, ``bottom``, or ``all``.
    edition : Edition
        Whose words a refusal uses.

    Returns
    -------
    Mapping of str to tuple of Segment
        The lines of the rim, and of the ``bottom`` or ``top`` that stays straight.

    Raises
    ------
    CalculationError
        If the corners have no room.

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> list(rounded((Fraction(10), Fraction(8)), Fraction(2), "top", INCH))
    ['rim', 'bottom']
    """
    wide, high = (more_than_nothing(one, "the finished size") for one in size)
    r = more_than_nothing(radius, "the radius of a round corner")
    most = min(wide / 2, high / 2 if corners == "all" else high)
    if r > most:
        raise CalculationError(
            f"round corners of {say_length(r, edition)} have no room in a piece of {say_length(wide, edition)} by "
            f"{say_length(high, edition)}; the most is {say_length(most, edition)}"
        )
    left_top, right_top = _top(wide, r)
    right_bottom, left_bottom = _bottom(wide, high, r)
    if corners == "top":
        rim = (*_lines((_NOTHING, high), left_top, right_top, (wide, high)),)
        return {"rim": rim, "bottom": (StraightLine((wide, high), (_NOTHING, high)),)}
    if corners == "bottom":
        rim = (*_lines((wide, _NOTHING), right_bottom, left_bottom, (_NOTHING, _NOTHING)),)
        return {"top": (StraightLine((_NOTHING, _NOTHING), (wide, _NOTHING)),), "rim": rim}
    middle = (wide / 2, _NOTHING)
    return {"rim": _lines(middle, right_top, right_bottom, left_bottom, left_top, middle)}


def _top(wide: Fraction, r: Fraction) -> tuple[QuarterOval, QuarterOval]:
    return (
        QuarterOval((_NOTHING, r), (r, _NOTHING), "down"),
        QuarterOval((wide - r, _NOTHING), (wide, r), "across"),
    )


def _bottom(wide: Fraction, high: Fraction, r: Fraction) -> tuple[QuarterOval, QuarterOval]:
    return (
        QuarterOval((wide, high - r), (wide - r, high), "down"),
        QuarterOval((r, high), (_NOTHING, high - r), "across"),
    )


def _lines(start: Spot, *through: QuarterOval | Spot) -> tuple[Segment, ...]:
    """Corners with straight lines between them, from a point round to a point; no line where they touch."""
    found: list[Segment] = []
    at = start
    for one in through:
        towards = one.start if isinstance(one, QuarterOval) else one
        if towards != at:
            found.append(StraightLine(at, towards))
        if isinstance(one, QuarterOval):
            found.append(one)
        at = one.end if isinstance(one, QuarterOval) else one
    return tuple(found)

"""Pleated strips: the finished edge and the pleats come in, the flat strip and the lines to mark on it go out.

A fold of a pleat hides twice its depth: the cloth runs back under itself and forward again. A knife pleat has one fold;
a box pleat has two, turned away from each other; an inverted pleat has two, turned to each other.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from generator.calculation.pieces.plain_pieces import cut_size, plain_allowance
from generator.calculation.refused import more_than_nothing
from generator.calculation.worked import End
from generator.errors import CalculationError

PleatStyle = Literal["knife", "box", "inverted"]
_FOLDS: Mapping[str, int] = {"knife": 1, "box": 2, "inverted": 2}


@dataclass(frozen=True, slots=True)
class Pleats:
    """Equal pleats: how they are folded, how many, and how deep [in] one fold reaches under the cloth."""

    style: PleatStyle
    number: int
    depth: Fraction


@dataclass(frozen=True, slots=True)
class PleatLine:
    """One fold of a pleat [in].

    On the flat cloth, from the left cut edge, the line ``fold`` is creased and laid on the line ``onto``. On the
    finished strip, from its left finished edge, the fold lies at ``finished`` and its inner crease at ``under``.
    """

    fold: Fraction
    onto: Fraction
    finished: Fraction
    under: Fraction


@dataclass(frozen=True, slots=True)
class PleatedSizes:
    """A pleated strip, worked out [in].

    ``width`` is the finished distance from pleat to pleat, ``flat`` the length between its finished ends before
    pleating. ``layers`` is the thickest place. ``beyond`` is how far an inner crease would reach past the finished end;
    more than nothing means that it is caught in the end's seam.
    """

    pleats: Pleats
    width: Fraction
    flat: Fraction
    cut_across: Fraction
    cut_along: Fraction
    lines: tuple[PleatLine, ...]
    layers: int
    beyond: Fraction


def pleated_length(section: Fraction, pleats: Pleats) -> Fraction:
    """Return the flat length of a section before it is pleated.

    Every fold hides twice its depth: L = F + 2 d n for knife pleats, L = F + 4 d n for box and inverted pleats.

    Parameters
    ----------
    section : Fraction
        Finished length that is pleated, F [in].
    pleats : Pleats
        Style, number n and depth d [in].

    Returns
    -------
    Fraction
        Flat length, L [in].

    Raises
    ------
    CalculationError
        If the number of pleats is less than nothing.

    Examples
    --------
    Eighteen knife pleats 4 deep on 92: 92 + 144 = 236. One box pleat 12 deep on 60: 60 + 48 = 108.

    >>> pleated_length(Fraction(92), Pleats("knife", 18, Fraction(4)))
    Fraction(236, 1)
    >>> pleated_length(Fraction(60), Pleats("box", 1, Fraction(12)))
    Fraction(108, 1)

    References
    ----------
    National Instructional Media Institute, *CITS Dress Making, Trade Practical*, vol. 2, pp. 203-205.
    """
    if pleats.number < 0:
        raise CalculationError("the number of pleats is less than nothing")
    finished = more_than_nothing(section, "the pleated edge")
    return finished + 2 * _FOLDS[pleats.style] * more_than_nothing(pleats.depth, "the depth of a pleat") * pleats.number


def pleat_layers(section: Fraction, pleats: Pleats) -> int:
    """Return how many layers of cloth lie at the thickest place of a pleated section.

    A fold lays two plies, d wide, under the face. There are folds enough to cover the section d f n / F times over, and
    as they repeat evenly the thickest place has that number rounded up: 1 + 2 ceil(f d / w), w = F / n.

    Parameters
    ----------
    section : Fraction
        Finished length that is pleated, F [in].
    pleats : Pleats
        Style (one fold or two, f), number n and depth d [in].

    Returns
    -------
    int
        Layers [-]; one where nothing is pleated.

    Examples
    --------
    Knife pleats 2 deep every 2 in: three layers everywhere. 3 deep every 2 in: five in places.

    >>> pleat_layers(Fraction(20), Pleats("knife", 10, Fraction(2)))
    3
    >>> pleat_layers(Fraction(20), Pleats("knife", 10, Fraction(3)))
    5

    References
    ----------
    Derived in the docstring above.
    """
    covered = _FOLDS[pleats.style] * pleats.depth * pleats.number / more_than_nothing(section, "the pleated edge")
    return 1 + 2 * math.ceil(covered)


def pleat_lines(section: Fraction, pleats: Pleats, allowance: Fraction) -> tuple[PleatLine, ...]:
    """Return the lines to mark for every fold of a pleated section, from left to right as they lie when finished.

    The pleats stand w = F / n apart. A knife pleat is turned to the right: its fold stands in the middle of its share,
    or further right so that the cloth under the first one stays inside the strip. A box pleat is twice its depth wide,
    so that its inner creases meet, but never wider than its share. Both folds of an inverted pleat meet in the middle.

    Parameters
    ----------
    section : Fraction
        Finished length that is pleated, F [in].
    pleats : Pleats
        Style, number n and depth d [in].
    allowance : Fraction
        Cloth beyond the finished left end [in].

    Returns
    -------
    tuple of PleatLine
        One a fold [in]; none where nothing is pleated.

    Examples
    --------
    One inverted pleat 2 deep in 10 in, seam 1/2: the middle is 5 in along, so the first fold is creased at 5 1/2 and
    laid on 5 1/2 + 4 = 9 1/2; the second comes back from 13 1/2 to the same line.

    >>> for line in pleat_lines(Fraction(10), Pleats("inverted", 1, Fraction(2)), Fraction(1, 2)):
    ...     print(line.fold, line.onto, line.finished, line.under)
    11/2 19/2 5 3
    27/2 19/2 5 7

    References
    ----------
    Derived in the docstring above.
    """
    share = more_than_nothing(section, "the pleated edge") / max(1, pleats.number)
    lines: list[PleatLine] = []
    flat = allowance
    for place in range(pleats.number):
        for finished, hand in _folds_of_one(pleats, share):
            at = place * share + finished
            near, far = flat + at, flat + at + 2 * pleats.depth
            fold, onto = (near, far) if hand > 0 else (far, near)
            lines.append(PleatLine(fold, onto, at, at - hand * pleats.depth))
            flat += 2 * pleats.depth
    return tuple(lines)


def _folds_of_one(pleats: Pleats, share: Fraction) -> tuple[tuple[Fraction, int], ...]:
    """Where the folds of the first pleat finish [in] and which way each is turned: 1 right, -1 left."""
    middle = share / 2
    if pleats.style == "knife":
        return ((min(max(middle, pleats.depth), share), 1),)
    if pleats.style == "inverted":
        return (middle, 1), (middle, -1)
    half_face = min(pleats.depth, middle)
    return (middle - half_face, -1), (middle + half_face, 1)


def worked_pleated_strip(edge: Fraction, drop: Fraction, pleats: Pleats, ends: Mapping[str, End]) -> PleatedSizes:
    """Return a pleated strip with its cut size and the lines to mark.

    Across, the flat strip gets the allowances of its two ends; along, the drop gets those of the pleated edge at the
    top and of the free edge at the bottom.

    Parameters
    ----------
    edge, drop : Fraction
        Finished length of the pleated edge, and finished depth of the strip [in].
    pleats : Pleats
        Style, number and depth [in].
    ends : Mapping of str to End
        Finish of ``left``, ``right``, ``top`` (pleated) and ``bottom``.

    Returns
    -------
    PleatedSizes
        Sizes and lines [in].

    Raises
    ------
    CalculationError
        If there is no pleat.

    Examples
    --------
    Five knife pleats 1 in deep on 10 in, drop 6 in, seams of 1/2 in: 20 in flat, 21 across, 7 along.

    >>> ends = dict.fromkeys(("left", "right", "top", "bottom"), End("seam", Fraction(1, 2)))
    >>> strip = worked_pleated_strip(Fraction(10), Fraction(6), Pleats("knife", 5, Fraction(1)), ends)
    >>> strip.width, strip.flat, strip.cut_across, strip.cut_along, strip.layers, strip.beyond
    (Fraction(2, 1), Fraction(20, 1), Fraction(21, 1), Fraction(7, 1), 3, Fraction(0, 1))

    References
    ----------
    Derived in the docstring above.
    """
    if pleats.number < 1:
        raise CalculationError("a pleated strip has at least one pleat; for a plain strip write kind: strip")
    left = plain_allowance(ends["left"])
    flat = pleated_length(edge, pleats)
    lines = pleat_lines(edge, pleats, left)
    reaches = [line.under for line in lines]
    return PleatedSizes(
        pleats=pleats,
        width=edge / pleats.number,
        flat=flat,
        cut_across=left + flat + plain_allowance(ends["right"]),
        cut_along=cut_size(drop, ends["top"], ends["bottom"]),
        lines=lines,
        layers=pleat_layers(edge, pleats),
        beyond=max(Fraction(0), -min(reaches), max(reaches) - edge),
    )

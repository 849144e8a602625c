"""Tables for the wall of a workroom: an edition comes in, what its usual tucks hide and how many fit goes out."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from generator.calculation.panel.tucks import pitch, tuck_take_up
from generator.calculation.panel_ends import least_margin
from generator.calculation.refused import more_than_nothing
from generator.calculation.worked import End
from generator.errors import CalculationError
from generator.lengths import CENTIMETRE, MILLIMETRE, Edition

COUNTS = (1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30)
_EIGHTH = Fraction(1, 8)
_DEPTHS: Mapping[str, tuple[Fraction, ...]] = MappingProxyType(
    {
        "in": tuple(eighths * _EIGHTH for eighths in (1, 2, 3, 4, 6, 8)),
        "cm": tuple(step * MILLIMETRE for step in (3, 6, 10, 12, 20, 25)),
    }
)
_SPACED: Mapping[str, tuple[tuple[Fraction, Fraction], ...]] = MappingProxyType(
    {
        "in": tuple(
            (eighths * _EIGHTH, Fraction(spacing)) for eighths, spacing in ((2, 1), (3, Fraction(3, 2)), (4, 2), (6, 3))
        ),
        "cm": tuple(
            (step * MILLIMETRE, apart * CENTIMETRE) for step, apart in ((6, Fraction(5, 2)), (10, 4), (12, 5), (20, 8))
        ),
    }
)
_WIDTHS: Mapping[str, tuple[Fraction, ...]] = MappingProxyType(
    {
        "in": tuple(Fraction(width) for width in (6, 8, 10, 12, 14, 16, 18, 20, 24, 30, 36)),
        "cm": tuple(width * CENTIMETRE for width in (15, 20, 25, 30, 35, 40, 45, 50, 60, 75, 90)),
    }
)


@dataclass(frozen=True, slots=True)
class TuckFit:
    """How many tucks fit a finished width: their number, the margin left on each side and the cloth between [in].

    ``cloth`` is the flat width without allowances.
    """

    count: int
    margin: Fraction
    cloth: Fraction


def usual_depths(edition: Edition) -> tuple[Fraction, ...]:
    """Return the depths that tables are made for.

    Parameters
    ----------
    edition : Edition
        Inches or centimetres.

    Returns
    -------
    tuple of Fraction
        Depths that are easily set beside a foot, from fine to deep [in].

    References
    ----------
    Common practice, no source.
    """
    return _DEPTHS[edition.unit]


def usual_spacings(edition: Edition) -> tuple[tuple[Fraction, Fraction], ...]:
    """Return pairs of depth and spacing that tables are made for; turned to each other, the folds meet or nearly meet.

    Parameters
    ----------
    edition : Edition
        Inches or centimetres.

    Returns
    -------
    tuple of pairs of Fraction
        Depth and spacing, mark to mark on the flat cloth [in].

    References
    ----------
    Common practice, no source.
    """
    return _SPACED[edition.unit]


def usual_widths(edition: Edition) -> tuple[Fraction, ...]:
    """Return the finished widths that tables are made for.

    Parameters
    ----------
    edition : Edition
        Inches or centimetres.

    Returns
    -------
    tuple of Fraction
        Widths [in].

    References
    ----------
    Common practice, no source.
    """
    return _WIDTHS[edition.unit]


def hidden_cloth(edition: Edition) -> tuple[tuple[Fraction, ...], ...]:
    """Return the cloth that the usual numbers of tucks hide, at each usual depth.

    Parameters
    ----------
    edition : Edition
        Inches or centimetres.

    Returns
    -------
    tuple of tuples of Fraction
        One line for each number in ``COUNTS``, one length for each of :func:`usual_depths` [in].

    Examples
    --------
    Five tucks of 3/8 in hide 5 x 3/4 = 15/4 in: fifth line, third depth.

    >>> from generator.lengths import INCH
    >>> hidden_cloth(INCH)[4][2]
    Fraction(15, 4)

    References
    ----------
    L. I. Baldt, *Clothing for Women*, Lippincott 1916, "Decoration: Self-Trimmings".
    """
    return tuple(tuple(tuck_take_up(count, depth) for depth in usual_depths(edition)) for count in COUNTS)


def tucks_in_width(finished: Fraction, depth: Fraction, spacing: Fraction, edition: Edition) -> TuckFit:
    r"""Return how many equal tucks fit a finished width between seams.

    On the finished panel they stand a pitch p apart, with at least the least margin e at both sides:
    :math:`n = \lfloor (F - 2 e) / p \rfloor + 1`. What is over goes to the margins, half to each.

    Parameters
    ----------
    finished : Fraction
        Finished width, F [in].
    depth : Fraction
        Depth of a tuck, d [in].
    spacing : Fraction
        Fold mark to fold mark on the flat cloth, m [in].
    edition : Edition
        The play beside a seam is a whole number of its unit.

    Returns
    -------
    TuckFit
        Number of tucks, margin on each side and flat width [in].

    Raises
    ------
    CalculationError
        If not even one tuck fits.

    Notes
    -----
    The margin leaves room for an edge tuck that is turned outward, beside a seam.

    Examples
    --------
    Tucks of 3/8 in marked 1 1/2 in apart have a pitch of 3/4 in and need margins of 1/2 in: (13 1/2 - 1) / (3/4) is
    16 2/3, so 17 tucks; 16 x 3/4 = 12 in stand between margins of 3/4 in, on 13 1/2 + 17 x 3/4 = 26 1/4 in of cloth.

    >>> from generator.lengths import INCH
    >>> tucks_in_width(Fraction(27, 2), Fraction(3, 8), Fraction(3, 2), INCH)
    TuckFit(count=17, margin=Fraction(3, 4), cloth=Fraction(105, 4))

    References
    ----------
    Derived in the docstring above; the same division for tucks between equal edges: National Instructional Media
    Institute (India), *CITS Dress Making, Trade Practical* vol. 2, p. 209.
    """
    apart = pitch(more_than_nothing(spacing, "the spacing"), 2 * depth)
    room = finished - 2 * least_margin(End("seam"), depth, "out", edition)
    if room < 0:
        raise CalculationError(
            "this width has no room for a tuck between its seams; make it wider or the tuck shallower"
        )
    count = math.floor(room / apart) + 1
    return TuckFit(count, (finished - (count - 1) * apart) / 2, finished + tuck_take_up(count, depth))

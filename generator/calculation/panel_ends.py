"""What the end of a tucked panel asks for: its finish comes in; allowance, first mark and least margin go out."""

from __future__ import annotations

from fractions import Fraction
from typing import Literal

from generator.calculation.refused import more_than_nothing, not_negative
from generator.calculation.worked import End
from generator.errors import CalculationError
from generator.lengths import CENTIMETRE, MILLIMETRE, Edition

Lie = Literal["out", "in", "upright"]


def end_allowance(end: End, margin: Fraction, take_up: Fraction) -> Fraction:
    r"""Return the cloth beyond the finished edge at one end of a panel.

    A seam or a turnover adds its own width, a hem turned twice both its turns, a bound, folded, selvage or raw edge
    nothing. A caught hem is folded to the first crease and held by that tuck's stitching, so it is as deep as the
    margin and half the tuck's cloth: :math:`A = h = e + u / 2`.

    Parameters
    ----------
    end : End
        How the edge is finished.
    margin : Fraction
        Finished edge to the nearest stitching, e [in].
    take_up : Fraction
        Cloth hidden by the tuck nearest this end, u [in]; nothing where there is no tuck.

    Returns
    -------
    Fraction
        Allowance, A [in].

    Raises
    ------
    CalculationError
        If a length is negative, or a caught hem has no tuck to hold it.

    Examples
    --------
    Folds 2 1/2 in from the raw edge, tucks 1/4 in deep, first stitching 1 in from the edge: the hem is 1 1/4 in deep.

    >>> end_allowance(End("caught hem"), Fraction(1), Fraction(1, 2))
    Fraction(5, 4)
    >>> end_allowance(End("hem", Fraction(1, 4), Fraction(1)), Fraction(2), Fraction(1, 2))
    Fraction(5, 4)
    >>> end_allowance(End("bound", Fraction(3, 8)), Fraction(2), Fraction(1, 2))
    Fraction(0, 1)

    References
    ----------
    Derived in the docstring above; the example of the caught hem: common practice, no source.
    """
    not_negative(margin, "a margin")
    not_negative(take_up, "the take-up of a tuck")
    if end.kind == "caught hem":
        if take_up == 0:
            raise CalculationError("a caught hem needs a tuck to hold it; write 'hem' or 'seam' for a plain panel")
        return margin + take_up / 2
    if end.kind in ("seam", "hem", "turnover"):
        return not_negative(end.first, f"the {end.kind}") + not_negative(end.second, f"the {end.kind}")
    return Fraction(0)


def first_mark(end: End, margin: Fraction, take_up: Fraction) -> Fraction:
    r"""Return the distance from the cut edge to the nearest fold mark at one end of a panel.

    Beyond the finished edge lies the allowance, then the margin to the stitching, then half the tuck's cloth to its
    fold: :math:`f_1 = A + e + u / 2`. For a caught hem of depth h that is 2 h.

    Parameters
    ----------
    end : End
        How the edge is finished.
    margin : Fraction
        Finished edge to the nearest stitching, e [in].
    take_up : Fraction
        Cloth hidden by the tuck nearest this end, u [in].

    Returns
    -------
    Fraction
        First mark from this end's cut edge, f_1 [in].

    Raises
    ------
    CalculationError
        If a length is negative or the take-up is nothing.

    Examples
    --------
    Seam 1/2 in, margin 3/4 in, tuck 3/8 in deep: 1/2 + 3/4 + 3/8 = 13/8 in.

    >>> first_mark(End("seam", Fraction(1, 2)), Fraction(3, 4), Fraction(3, 4))
    Fraction(13, 8)
    >>> first_mark(End("caught hem"), Fraction(1), Fraction(1, 2))
    Fraction(5, 2)

    References
    ----------
    Derived in the docstring above.
    """
    more_than_nothing(take_up, "the take-up of a tuck")
    return end_allowance(end, margin, take_up) + margin + take_up / 2


def least_margin(end: End, depth: Fraction, lies: Lie, edition: Edition) -> Fraction:
    r"""Return the smallest margin that can be sewn at one end of a panel.

    A tuck that stands or turns inward leaves room for the presser foot between its stitching and the edge: 3/8 in or
    1 cm. A tuck turned outward covers the margin with its depth and must end before what is sewn at the edge: a seam
    or a turnover with a play of 1/8 in or 3 mm, a binding, a hem that is sewn last. An edge that is ready before the
    tucks (caught hem, fold, selvage, raw) may be reached by the fold. A double hem lies in the margin, always:
    :math:`e \ge w` and the same play.

    Parameters
    ----------
    end : End
        How the edge is finished.
    depth : Fraction
        Depth of the tuck nearest this end, d [in].
    lies : {"out", "in", "upright"}
        How that tuck lies at worst over all rows.
    edition : Edition
        Foot room and play are whole numbers of its unit.

    Returns
    -------
    Fraction
        The least margin, e [in].

    Raises
    ------
    CalculationError
        If ``depth`` is not positive.

    Notes
    -----
    An outward fold may also be caught in the seam on purpose; that is left to the teacher.

    Examples
    --------
    A tuck 3/8 in deep turned out beside a seam: 3/8 + 1/8 = 1/2 in; beside a hem of 1/2 in: 7/8 in.

    >>> from generator.lengths import INCH
    >>> least_margin(End("seam", Fraction(1, 2)), Fraction(3, 8), "out", INCH)
    Fraction(1, 2)
    >>> least_margin(End("hem", Fraction(1, 2), Fraction(1, 2)), Fraction(3, 8), "out", INCH)
    Fraction(7, 8)
    >>> least_margin(End("raw"), Fraction(1, 8), "in", INCH)
    Fraction(3, 8)

    References
    ----------
    Common practice, no source.
    """
    more_than_nothing(depth, "the depth of a tuck")
    hem = (end.second or end.first) if end.kind == "hem" else Fraction(0)
    least = foot_room(edition)
    if lies == "out":
        beside = {"seam": edge_play(edition), "turnover": edge_play(edition), "bound": end.first, "hem": hem}
        least = depth + beside.get(end.kind, Fraction(0))
    return max(least, hem + edge_play(edition)) if hem else least


def foot_room(edition: Edition) -> Fraction:
    """Return the room that the presser foot needs beside a standing tuck.

    Parameters
    ----------
    edition : Edition
        The inch or the metric edition.

    Returns
    -------
    Fraction
        3/8 in or 1 cm [in].

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> foot_room(INCH)
    Fraction(3, 8)

    References
    ----------
    Common practice, no source.
    """
    return CENTIMETRE if edition.unit == "cm" else Fraction(3, 8)


def narrowest_seam(edition: Edition) -> Fraction:
    """Return the narrowest seam that still holds.

    Parameters
    ----------
    edition : Edition
        The inch or the metric edition.

    Returns
    -------
    Fraction
        1/4 in or 6 mm [in].

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> narrowest_seam(INCH)
    Fraction(1, 4)

    References
    ----------
    Common practice, no source.
    """
    return 6 * MILLIMETRE if edition.unit == "cm" else Fraction(1, 4)


def edge_play(edition: Edition) -> Fraction:
    """Return the play that keeps a fold clear of a seam.

    Parameters
    ----------
    edition : Edition
        The inch or the metric edition.

    Returns
    -------
    Fraction
        1/8 in or 3 mm [in].

    Examples
    --------
    >>> from generator.lengths import METRIC
    >>> edge_play(METRIC) / MILLIMETRE
    Fraction(3, 1)

    References
    ----------
    Common practice, no source.
    """
    return 3 * MILLIMETRE if edition.unit == "cm" else Fraction(1, 8)

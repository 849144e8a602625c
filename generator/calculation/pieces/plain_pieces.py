"""Plain pieces of cloth: finished sizes and the finish of each edge come in, cut sizes go out."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from generator.calculation.refused import more_than_nothing, not_negative
from generator.calculation.worked import End
from generator.errors import CalculationError


def plain_allowance(end: End) -> Fraction:
    """Return the cloth that one edge of a piece without tucks needs beyond its finished edge.

    A seam lies wholly beyond the finished edge. A hem is turned twice and both turns are folded back from it; a
    turnover is turned once. Binding wraps the edge, a fold and a selvage are the edge, and a raw edge is left as it is:
    these four add nothing.

    Parameters
    ----------
    end : End
        How the edge is finished; its widths [in].

    Returns
    -------
    Fraction
        Allowance [in], at least nothing.

    Raises
    ------
    CalculationError
        If the edge is a caught hem: the stitching of a tuck holds it, and a plain piece has no tuck.

    Examples
    --------
    A hem turned by 1/4 in, then by 1 in, takes 5/4 in; binding takes nothing.

    >>> plain_allowance(End("hem", Fraction(1, 4), Fraction(1)))
    Fraction(5, 4)
    >>> plain_allowance(End("bound", Fraction(1, 2)))
    Fraction(0, 1)

    References
    ----------
    Derived in the docstring above.
    """
    if end.kind == "caught hem":
        raise CalculationError(
            "a caught hem is held by the first tuck and this piece has no tucks; write a hem with its width"
        )
    first = not_negative(end.first, f"the width of a {end.kind}")
    second = not_negative(end.second, f"the second turn of a {end.kind}")
    if end.kind == "hem":
        return first + second
    return first if end.kind in ("seam", "turnover") else Fraction(0)


def cut_size(finished: Fraction, near: End, far: End) -> Fraction:
    """Return the cut size of a piece without tucks in one direction.

    Nothing is hidden inside, so the cloth is the finished size and what its two edges need: L = F + A_near + A_far.

    Parameters
    ----------
    finished : Fraction
        Finished size, F [in].
    near, far : End
        How the two edges are finished; their widths [in].

    Returns
    -------
    Fraction
        Cut size, L [in].

    Examples
    --------
    A flap of 10 in with a seam of 1/2 in and a hem of twice 1 in: 10 + 1/2 + 2 = 25/2.

    >>> cut_size(Fraction(10), End("seam", Fraction(1, 2)), End("hem", Fraction(1), Fraction(1)))
    Fraction(25, 2)
    >>> cut_size(Fraction(10), End("fold"), End("selvage"))
    Fraction(10, 1)

    References
    ----------
    Derived in the docstring above.
    """
    return more_than_nothing(finished, "the finished size") + plain_allowance(near) + plain_allowance(far)


def worked_rectangle(
    finished_across: Fraction, finished_along: Fraction, ends: Mapping[str, End]
) -> tuple[Fraction, Fraction]:
    """Return the cut size of a rectangle across and along.

    Each direction is worked by itself from its own two edges.

    Parameters
    ----------
    finished_across, finished_along : Fraction
        Finished sizes [in].
    ends : Mapping of str to End
        The finish of ``left``, ``right``, ``top`` and ``bottom``.

    Returns
    -------
    tuple of Fraction
        Cut across, cut along [in].

    Examples
    --------
    A lining 12 in by 16 in, seams of 1/2 in all round but a turnover of 3 in at the top: 13 in by 16 + 3 + 1/2 in.

    >>> seam = End("seam", Fraction(1, 2))
    >>> edges = {"left": seam, "right": seam, "top": End("turnover", Fraction(3)), "bottom": seam}
    >>> worked_rectangle(Fraction(12), Fraction(16), edges)
    (Fraction(13, 1), Fraction(39, 2))

    References
    ----------
    Derived in the docstring above.
    """
    across = cut_size(finished_across, ends["left"], ends["right"])
    return across, cut_size(finished_along, ends["top"], ends["bottom"])


def worked_circle(diameter: Fraction, rim: End) -> tuple[Fraction, Fraction]:
    """Return the diameter at which a circle is cut, across and along.

    The allowance of the rim lies on both sides of every diameter: D = d + 2 A.

    Parameters
    ----------
    diameter : Fraction
        Finished diameter, d [in].
    rim : End
        The finish of the rim; its width [in].

    Returns
    -------
    tuple of Fraction
        Cut diameter, D, twice [in]: a circle has it in both directions.

    Examples
    --------
    A bolster end of 9 in with seams of 1/2 in is cut as a circle of 10 in.

    >>> worked_circle(Fraction(9), End("seam", Fraction(1, 2)))
    (Fraction(10, 1), Fraction(10, 1))

    References
    ----------
    Derived in the docstring above.
    """
    cut = cut_size(diameter, rim, rim)
    return cut, cut

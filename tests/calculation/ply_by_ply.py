"""The second route: the marks of a panel come in, what the sewn panel measures goes out, folded ply by ply."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.worked import End, TuckSet
from generator.errors import CalculationError


def worked_forwards(tucks: TuckSet) -> tuple[Fraction, tuple[Fraction, ...]]:
    r"""Return what a panel measures when its cloth is folded at its marks, and where its stitching comes to lie.

    The cloth is walked from its left cut edge. A ply goes under at an edge (seam, hem; a caught hem up to halfway to
    the first mark, since its raw edge lies in the first crease), a tuck hides a ply on each side of its mark; what is
    left of each stretch shows.

    Parameters
    ----------
    tucks : TuckSet
        Only marks, take-ups, cut and the finish of the ends are read; no margin, pitch or finished width.

    Returns
    -------
    tuple of a Fraction and a tuple of Fractions
        Finished width and the stitching of every tuck from the left finished edge [in].

    Raises
    ------
    CalculationError
        If two tucks, or a tuck and an edge, need the same cloth.

    Examples
    --------
    A mark at 2 1/2 in from both raw edges of 5 in, both hems caught by one tuck 1/4 in deep: 5 in less twice 1 1/4 in
    of hem less 1/2 in of tuck leave 2 in, with the stitching in the middle.

    >>> from generator.calculation.panel.marks import laid_out
    >>> hem, inch = End("caught hem"), Fraction(1)
    >>> worked_forwards(laid_out((inch / 4,), (inch / 2,), (), (hem, hem), (inch, inch)))
    (Fraction(2, 1), (Fraction(1, 1),))

    References
    ----------
    Derived in the docstring above.
    """
    starts = _turned_under(tucks.left, tucks.marks[0] if tucks.marks else Fraction(0))
    stops = tucks.cut - _turned_under(tucks.right, tucks.cut - tucks.marks[-1] if tucks.marks else Fraction(0))
    stitching: list[Fraction] = []
    reached, shown = starts, Fraction(0)
    for mark, take_up in zip(tucks.marks, tucks.take_ups, strict=True):
        goes_under, comes_up = mark - take_up / 2, mark + take_up / 2
        if goes_under < reached:
            raise CalculationError(f"tuck {len(stitching) + 1} needs cloth that is already folded")
        shown += goes_under - reached
        stitching.append(shown)
        reached = comes_up
    if stops < reached:
        raise CalculationError("the last tuck needs cloth that lies beyond the finished edge")
    return shown + stops - reached, tuple(stitching)


def _turned_under(end: End, to_mark: Fraction) -> Fraction:
    """Return the cloth that goes under at one edge, with the distance from the raw edge to the nearest mark."""
    if end.kind == "caught hem":
        return to_mark / 2
    return end.first + end.second if end.kind in ("seam", "hem", "turnover") else Fraction(0)

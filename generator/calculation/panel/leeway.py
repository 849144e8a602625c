"""What can give where a panel does not come out as planned: a set of tucks comes in, its leeway goes out."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from generator.calculation.panel_ends import Lie, edge_play, least_margin, narrowest_seam
from generator.calculation.worked import End, TuckSet
from generator.calculation.worked_checks import Leeway, Others
from generator.lengths import Edition, round_down

_UNTRIMMED = ("caught hem", "fold", "selvage")


def allowed_change(depth: Fraction, edition: Edition) -> Fraction:
    """Return how much the depth of one tuck may be changed to win back an error without being seen.

    One mark of the ruler (1/16 in, 1 mm), or an eighth of the depth where that is more; of a shallow tuck never more
    than a quarter.

    Parameters
    ----------
    depth : Fraction
        Depth of the tuck, d [in].
    edition : Edition
        Its ``mark``.

    Returns
    -------
    Fraction
        The change, a whole number of marks [in]; nothing for tucks too shallow to be changed by one.

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> [str(allowed_change(Fraction(depth), INCH)) for depth in ("3/8", "1", "1/4", "1/8")]
    ['1/16', '1/8', '1/16', '0']

    References
    ----------
    Common practice, no source.
    """
    return round_down(min(max(edition.mark, depth / 8), depth / 4), edition.mark)


def spare_allowance(tucks: TuckSet, edition: Edition) -> Fraction:
    """Return how much of its allowances a panel can give while each still holds a seam.

    A caught hem, a casing, a bound or a raw edge gives nothing.

    Parameters
    ----------
    tucks : TuckSet
        A rounded set.
    edition : Edition
        Its unit tells how narrow a seam may be.

    Returns
    -------
    Fraction
        Of both ends together [in].

    References
    ----------
    Common practice, no source.
    """
    least = narrowest_seam(edition)
    ends = ((tucks.left, tucks.left_allowance), (tucks.right, tucks.right_allowance))
    return sum((max(Fraction(0), cut - least) for end, cut in ends if _gives(end)), Fraction(0))


def _gives(end: End) -> bool:
    """Whether an end may be made narrower: not where a tuck holds it, a rod runs through it or a seam shuts it in."""
    return end.kind != "caught hem" and not end.way


def leeway_of(
    tucks: TuckSet,
    edition: Edition,
    *,
    lies: tuple[Lie, Lie] = ("out", "out"),
    joined: Iterable[int] = (),
    leaves_out: bool = True,
    others: Others = "none",
    sides: tuple[str, str] = ("left", "right"),
) -> Leeway:
    r"""Return what can give in a set of tucks.

    An end keeps what its edge tuck needs to lie as it lies, its allowance :math:`A` and the least margin
    :math:`e_{min}`; the rest of its margin, :math:`e - e_{min}`, may be trimmed. A caught hem, a fold and a selvage are
    not trimmed. A tuck that covers a join is not changed, since the seam would come out from under it.

    Parameters
    ----------
    tucks : TuckSet
        A rounded set.
    edition : Edition
        Ruler and unit.
    lies : tuple of two of {"out", "in", "upright"}
        How the first and the last tuck lie at worst.
    joined : iterable of int
        Numbers of the tucks that cover a join.
    leaves_out : bool
        Whether a tuck may be left out without changing the turn of another.
    others : {"wait", "cut", "none"}
        The pieces sewn to these edges.
    sides : tuple of two str
        How the two ends are called.

    Returns
    -------
    Leeway
        What can give [in].

    Examples
    --------
    Margins of 3 in beside seams of 1/2 in, edge tucks 3/8 in deep turned out: they need 3/8 + 1/8 in and the seam, so
    1 in stays of 3 1/2 in and 2 1/2 in may go at either end.

    >>> from generator.calculation.panel.marks import laid_out, rounded
    >>> from generator.lengths import INCH
    >>> seam, depth, three = End("seam", Fraction(1, 2)), Fraction(3, 8), Fraction(3)
    >>> tucks = rounded(laid_out((depth,) * 2, (2 * depth,) * 2, (2 * depth,), (seam, seam), (three, three)), INCH)
    >>> room = leeway_of(tucks, INCH)
    >>> str(room.keeps[0]), str(room.trims[0]), str(room.lets_out)
    ('1', '5/2', '1/2')

    References
    ----------
    Derived from :func:`~generator.calculation.panel_ends.least_margin`; what is not trimmed is common practice, no
    source.
    """
    if not tucks.count:
        return Leeway((), others=others, sides=sides)
    kept = frozenset(joined)
    ends = (
        (tucks.left, tucks.left_margin, tucks.left_allowance, tucks.depths[0], lies[0]),
        (tucks.right, tucks.right_margin, tucks.right_allowance, tucks.depths[-1], lies[1]),
    )
    needed = tuple(_needed(end, margin, depth, lie, edition) for end, margin, _, depth, lie in ends)
    spare = tuple(
        round_down(max(Fraction(0), margin - least), edition.mark)
        for (_, margin, *_), least in zip(ends, needed, strict=True)
    )
    hem = tucks.right_allowance - tucks.depths[-1] - edge_play(edition) if tucks.right.kind == "caught hem" else 0
    return Leeway(
        changes=tuple(
            Fraction(0) if number in kept else allowed_change(depth, edition)
            for number, depth in enumerate(tucks.depths, 1)
        ),
        joined=kept,
        leaves_out=leaves_out,
        keeps=(tucks.left_allowance + needed[0], tucks.right_allowance + needed[1]),
        trims=(Fraction(0), _closing(tucks, lies, edition)) if tucks.ring else (spare[0], spare[1]),
        lets_out=spare_allowance(tucks, edition),
        hem=round_down(max(Fraction(0), Fraction(hem)), edition.mark),
        others=others,
        sides=sides,
    )


def _needed(end: End, margin: Fraction, depth: Fraction, lies: Lie, edition: Edition) -> Fraction:
    """What an end needs from its finished edge to the nearest stitching; what is not trimmed keeps its margin."""
    return margin if end.kind in _UNTRIMMED else least_margin(end, depth, lies, edition)


def _closing(tucks: TuckSet, lies: tuple[Lie, Lie], edition: Edition) -> Fraction:
    """What may be taken in at the closing of a ring: the space between the two folds beside it, less a play."""
    folds = [depth for depth, lie in zip((tucks.depths[0], tucks.depths[-1]), lies, strict=True) if lie == "out"]
    free = tucks.left_margin + tucks.right_margin - sum(folds, Fraction(0)) - edge_play(edition)
    return round_down(max(Fraction(0), free), edition.mark)

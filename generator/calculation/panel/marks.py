"""Where the marks of a panel fall: depths, pitches and ends come in, a TuckSet goes out; then rounded to the ruler."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import accumulate, pairwise

from generator.calculation.panel.tucks import cut_width, spacing_for
from generator.calculation.panel_ends import end_allowance, first_mark
from generator.calculation.refused import not_negative
from generator.calculation.worked import End, TuckSet
from generator.errors import CalculationError
from generator.lengths import Edition, coarsest_grid

_NOTHING = Fraction(0)


def laid_out(
    depths: Sequence[Fraction],
    take_ups: Sequence[Fraction],
    pitches: Sequence[Fraction],
    ends: tuple[End, End],
    margins: tuple[Fraction, Fraction],
) -> TuckSet:
    r"""Return one set of tucks laid out exactly, nothing rounded.

    From the left cut edge: allowance, margin and half the first tuck's cloth to the first mark, then from mark to
    mark half the one tuck's cloth, the pitch and half the other's; on the finished panel margin and pitches only:
    :math:`f_{i+1} = f_i + u_i / 2 + p_i + u_{i+1} / 2`, :math:`x_{i+1} = x_i + p_i`, :math:`L = F + T + A_l + A_r`.

    Parameters
    ----------
    depths : sequence of Fractions
        Depth of every tuck from the left, d [in]; empty for a plain panel.
    take_ups : sequence of Fractions
        Cloth hidden by every tuck, u [in].
    pitches : sequence of Fractions
        Stitching to stitching, p [in], one fewer than tucks.
    ends : tuple of two Ends
        How the left and the right edge are finished.
    margins : tuple of two Fractions
        Finished edge to the nearest stitching, left and right, e [in]; of a plain panel together its width.

    Returns
    -------
    TuckSet
        The set, with the size asked for taken as the one that comes out, and no ruler grid yet (0).

    Raises
    ------
    CalculationError
        If a length is negative, a caught hem is no deeper than its tuck, or the numbers of depths, take-ups
        and pitches do not belong together.

    Examples
    --------
    One tuck 3/8 in deep, seams 1/2 in, margins 2 in: the mark at 1/2 + 2 + 3/8, 5 3/4 in of cloth for 4 in.

    >>> seam = End("seam", Fraction(1, 2))
    >>> one = laid_out((Fraction(3, 8),), (Fraction(3, 4),), (), (seam, seam), (Fraction(2), Fraction(2)))
    >>> one.marks, one.cut, one.finished
    ((Fraction(23, 8),), Fraction(23, 4), Fraction(4, 1))

    References
    ----------
    Derived in the docstring above.
    """
    if len(take_ups) != len(depths) or len(pitches) != max(len(depths) - 1, 0):
        raise CalculationError("every tuck has one depth and one take-up, and between two tucks there is one pitch")
    left, right = (not_negative(margin, "a margin") for margin in margins)
    outer = (take_ups[0], take_ups[-1]) if take_ups else (_NOTHING, _NOTHING)
    allowances = (end_allowance(ends[0], left, outer[0]), end_allowance(ends[1], right, outer[1]))
    _refuse_shallow_hems(ends, allowances, depths)
    finished = left + sum(pitches, _NOTHING) + right
    steps = (spacing_for(gap, *pair) for gap, *pair in zip(pitches, take_ups, take_ups[1:], strict=False))
    marks = tuple(accumulate(steps, initial=first_mark(ends[0], left, outer[0]))) if take_ups else ()
    return TuckSet(
        depths=tuple(depths),
        take_ups=tuple(take_ups),
        marks=marks,
        stitching=tuple(accumulate(pitches, initial=left)) if take_ups else (),
        left_margin=left,
        right_margin=right,
        left=ends[0],
        right=ends[1],
        left_allowance=allowances[0],
        right_allowance=allowances[1],
        cut=cut_width(finished, sum(take_ups, _NOTHING), allowances),
        finished=finished,
        asked=finished,
        wish=marks[1] - marks[0] if len(marks) > 1 else _NOTHING,
        grid=_NOTHING,
    )


def rounded(tucks: TuckSet, edition: Edition) -> TuckSet:
    r"""Return a set of tucks with marks that a person finds on the ruler, and what comes of them.

    Each mark is rounded by itself, so that errors do not add up. A caught hem is half as deep as its first mark, so
    that mark falls on an even number of steps. The far end then gets the cloth that is its due: the cut is rounded so
    that the finished width is as near as a mark allows. Depths stay. Forwards from the rounded marks:
    :math:`x_i = f_i - \sum_{j<i} u_j - u_i / 2 - A_l` and :math:`F = L - A_l - A_r - \sum u`.

    Parameters
    ----------
    tucks : TuckSet
        A set laid out exactly.
    edition : Edition
        Its ``mark`` is the finest division to which marks are rounded.

    Returns
    -------
    TuckSet
        The set as it is printed; ``asked`` and ``wish`` are kept.

    Raises
    ------
    CalculationError
        If two marks fall together, one falls off the cloth, or a caught hem is no deeper than its tuck.

    Notes
    -----
    The finished width is off by half a mark at most, and not at all where everything lies on the ruler. Exactly
    between two divisions the upper one is taken.

    Examples
    --------
    Three tucks 3/8 in deep with a pitch of 0.7 in: marks at 1.625, 3.075 and 4.525 in, on the ruler 1 5/8, 3 1/16
    and 4 1/2 in; the cut of 6.15 in becomes 6 1/8 in, 1/40 in less.

    >>> from generator.lengths import INCH
    >>> seam, half = End("seam", Fraction(1, 2)), Fraction(3, 4)
    >>> three = laid_out((half / 2,) * 3, (half,) * 3, (Fraction(7, 10),) * 2, (seam, seam), (half, half))
    >>> on_ruler = rounded(three, INCH)
    >>> [str(mark) for mark in on_ruler.marks], str(on_ruler.cut), str(three.finished - on_ruler.finished)
    (['13/8', '49/16', '9/2'], '49/8', '1/40')

    References
    ----------
    Derived in the docstring above; the steps are common practice, no source.
    """
    step = edition.mark
    marks = _on_ruler(tucks, step)
    left = marks[0] / 2 if marks and tucks.left.kind == "caught hem" else tucks.left_allowance
    spent = left + tucks.take_up
    if marks and tucks.right.kind == "caught hem":
        right = _nearest(tucks.finished + spent - marks[-1], step)
        cut = marks[-1] + 2 * right
    else:
        right = tucks.right_allowance
        cut = _nearest(tucks.finished + spent + right, step)
    grid = coarsest_grid(marks, edition) if marks else 0
    on_ruler = replace(
        tucks,
        marks=marks,
        left_allowance=left,
        right_allowance=right,
        cut=cut,
        finished=cut - spent - right,
        grid=step if grid is None else edition.grids[grid],
    )
    return _forwards(on_ruler)


def _refuse_shallow_hems(
    ends: tuple[End, End], allowances: tuple[Fraction, Fraction], depths: Sequence[Fraction]
) -> None:
    """Refuse a caught hem whose raw edge would not lie beyond the stitching that is to hold it."""
    for end, hem, depth in zip(ends, allowances, (depths[0], depths[-1]) if depths else (), strict=False):
        if end.kind == "caught hem" and hem <= depth:
            raise CalculationError(
                f"a caught hem {hem} in deep is not deeper than the tuck of {depth} in that holds it: widen the margin"
            )


def _on_ruler(tucks: TuckSet, step: Fraction) -> tuple[Fraction, ...]:
    marks = [_nearest(mark, step) for mark in tucks.marks]
    if marks and tucks.left.kind == "caught hem":
        marks[0] = _nearest(tucks.marks[0], 2 * step)
    if any(after <= before for before, after in pairwise(marks)):
        raise CalculationError("two fold marks fall on one division of the ruler; space the tucks wider")
    return tuple(marks)


def _nearest(length: Fraction, step: Fraction) -> Fraction:
    """Return ``round_nearest`` in whole numbers, for speed: every plan that is tried may have a thousand marks."""
    over, under = length.numerator * step.denominator, length.denominator * step.numerator
    return Fraction((2 * over + under) // (2 * under) * step.numerator, step.denominator)


def _forwards(tucks: TuckSet) -> TuckSet:
    """Return a set with its stitching and margins worked again from its marks."""
    if not tucks.marks:
        return replace(tucks, left_margin=tucks.finished / 2, right_margin=tucks.finished / 2)
    hidden = accumulate(tucks.take_ups, initial=tucks.left_allowance)
    stitching = tuple(
        mark - before - take_up / 2 for mark, before, take_up in zip(tucks.marks, hidden, tucks.take_ups, strict=False)
    )
    margins = (stitching[0], tucks.finished - stitching[-1])
    _refuse_shallow_hems((tucks.left, tucks.right), (tucks.left_allowance, tucks.right_allowance), tucks.depths)
    if min(margins) < 0:
        raise CalculationError("the outermost tuck would be stitched beyond the edge of the panel")
    return replace(tucks, stitching=stitching, left_margin=margins[0], right_margin=margins[1])

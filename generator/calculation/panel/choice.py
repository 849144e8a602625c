"""Choosing the number of tucks: a wish comes in, plans that fit go out, rounded, checked again and ranked by cost."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from generator.calculation.panel.candidates import Candidate, candidates, least_pitch
from generator.calculation.panel.margins import least_margins, margins_keep
from generator.calculation.panel.marks import laid_out, rounded
from generator.calculation.panel.reasons import choice_reasons
from generator.calculation.panel.refusals import no_plan_fits, workable
from generator.calculation.panel.wish import Choice, TuckWish, spacings_near
from generator.calculation.worked import TuckSet
from generator.errors import CalculationError
from generator.lengths import Edition
from generator.limits import MOST_TUCKS

__all__ = ["MOST_TUCKS", "Choice", "TuckWish", "choice_cost", "choose_tucks", "ranked_among", "ranked_choices"]


def choose_tucks(wish: TuckWish, edition: Edition) -> TuckSet:
    """Return the best set of tucks for a wish, rounded to the ruler.

    Where margins or depth give, spacing and depth stay as asked for while any number of tucks fits with them; only then
    is a neighbouring spacing on the ruler, or a neighbouring depth, taken.

    Parameters
    ----------
    wish : TuckWish
        What is asked for; exactly no tucks is a plain panel.
    edition : Edition
        Ruler and steps.

    Returns
    -------
    TuckSet
        The set of least cost.

    Raises
    ------
    CalculationError
        If nothing fits; the message says which limit fails and what would fit.

    Examples
    --------
    13 1/2 in, tucks 3/8 in deep every 1 1/2 in, margins fixed at 3/4 in: (27/2 - 3/2) / (3/4) + 1 = 17 tucks.

    >>> from generator.calculation.worked import End
    >>> from generator.lengths import INCH
    >>> seam, fixed = End("seam", Fraction(1, 2)), (Fraction(3, 4), Fraction(3, 4))
    >>> wish = TuckWish(Fraction(27, 2), Fraction(3, 8), Fraction(3, 2), (seam, seam), fixed, fixed)
    >>> tucks = choose_tucks(wish, INCH)
    >>> tucks.count, str(tucks.marks[0]), str(tucks.cut)
    (17, '13/8', '109/4')

    References
    ----------
    Common practice, no source; the order derived from :func:`choice_cost`.
    """
    if wish.rule.exactly == 0:
        half = wish.finished / 2
        return replace(rounded(laid_out((), (), (), wish.ends, (half, half)), edition), wish=wish.spacing)
    kept = replace(wish, gives="margin") if wish.gives == "depth" else wish
    found = ranked_among(kept, (wish.spacing,), edition, 1) or ranked_choices(wish, edition, 1)
    if not found:
        raise CalculationError(no_plan_fits(wish, edition))
    return found[0].tucks


def ranked_choices(wish: TuckWish, edition: Edition, most: int = 12) -> tuple[Choice, ...]:
    """Return the plans that fit a wish, the best first, also those that change the spacing within its window.

    Parameters
    ----------
    wish : TuckWish
        What is asked for.
    edition : Edition
        Ruler and steps.
    most : int
        How many plans at most [-].

    Returns
    -------
    tuple of Choices
        Plans, rounded and checked; empty where nothing fits.

    Raises
    ------
    CalculationError
        If the wish cannot be worked at all: no depth, tucks that touch, an absurd size.

    Examples
    --------
    >>> from generator.calculation.worked import End
    >>> from generator.lengths import INCH
    >>> seam, margin = End("seam", Fraction(1, 2)), (Fraction(3, 4), Fraction(3, 2))
    >>> wish = TuckWish(Fraction(12), Fraction(3, 8), Fraction(3, 2), (seam, seam), margin, margin)
    >>> best, *others = ranked_choices(wish, INCH, 3)
    >>> best.tucks.count, str(best.tucks.left_margin), str(best.cost), len(others)
    (14, '9/8', '1', 2)

    References
    ----------
    Common practice, no source; the order derived from :func:`choice_cost`.
    """
    spacings = (wish.spacing,) if wish.gives == "depth" else spacings_near(wish.spacing, edition)
    return ranked_among(wish, spacings, edition, most)


def ranked_among(wish: TuckWish, spacings: Sequence[Fraction], edition: Edition, most: int) -> tuple[Choice, ...]:
    """Return the plans that fit a wish with one of the spacings given, the best first.

    Parameters
    ----------
    wish : TuckWish
        What is asked for.
    spacings : sequence of Fractions
        The spacings to try where the spacing does not give, m [in].
    edition : Edition
        Ruler and steps.
    most : int
        How many plans at most [-].

    Returns
    -------
    tuple of Choices
        Plans, rounded and checked; empty where nothing fits.

    Raises
    ------
    CalculationError
        If the wish cannot be worked at all.

    Notes
    -----
    Plans are tried in the order of the least that each can cost; no more are tried once none that is left can be among
    the best. Equal costs: nearer the spacing asked for, margins nearer the middle of their range, fewer tucks.

    References
    ----------
    Derived in the notes above.
    """
    found: list[tuple[tuple[Fraction, ...], Choice]] = []
    for plan in candidates(workable(wish, edition), spacings, edition):
        if len(found) == most and plan.least >= found[-1][0]:
            break
        tucks = _worked(wish, plan, edition)
        if tucks is None:
            continue
        cost = choice_cost(tucks, edition) + 2 * abs(plan.depth - wish.depth) / edition.wish_step
        choice = Choice(tucks, cost, choice_reasons(tucks, wish, edition))
        found.append(((cost, *plan.least[1:]), choice))
        found = sorted(found, key=lambda entry: entry[0])[:most]
    return tuple(choice for _, choice in found)


def choice_cost(tucks: TuckSet, edition: Edition) -> Fraction:
    r"""Return what a set of tucks costs the person who marks it: the better plan has the lower cost.

    Marks are found fast on a coarse division: c = 0 to 4 for the coarsest grid that holds every mark from the cut edge
    (1, 1/2, 1/4, 1/8, 1/16 in; 5 cm, 1 cm, 5 mm, 1 mm, 0.5 mm). Each 1/8 in (3 mm) away from the spacing asked for
    weighs as much as one step to a finer grid: :math:`c + |m - wish| / (1/8)`.

    Parameters
    ----------
    tucks : TuckSet
        A rounded set with the spacing asked for in ``wish``.
    edition : Edition
        Its ``grids`` and ``wish_step``.

    Returns
    -------
    Fraction
        The cost [-].

    Notes
    -----
    Uneven spacings count with their mean. A single tuck has no spacing to be wrong.

    Examples
    --------
    Marks at 1 7/8, 3 5/8 ... in (grid 1/8, c = 3) with the spacing asked for cost 3; see the tests for 4 and 7.

    >>> from generator.calculation.worked import End
    >>> from generator.lengths import INCH
    >>> seam, one = End("seam", Fraction(1, 2)), Fraction(1)
    >>> exact = laid_out((Fraction(3, 8),) * 17, (Fraction(3, 4),) * 17, (one,) * 16, (seam, seam), (one, one))
    >>> choice_cost(rounded(exact, INCH), INCH)
    Fraction(3, 1)

    References
    ----------
    Common practice, no source.
    """
    grid = edition.grids.index(tucks.grid) if tucks.grid in edition.grids else len(edition.grids)
    if tucks.count < 2:
        return Fraction(grid)
    mean = (tucks.marks[-1] - tucks.marks[0]) / (tucks.count - 1)
    return grid + abs(mean - tucks.wish) / edition.wish_step


def _worked(wish: TuckWish, plan: Candidate, edition: Edition) -> TuckSet | None:
    """Return a plan laid out and rounded, or None where the rounded one breaks a limit."""
    take_up = wish.take_up_at(plan.depth)
    pitches = (plan.spacing - take_up,) * (plan.count - 1)
    try:
        exact = laid_out((plan.depth,) * plan.count, (take_up,) * plan.count, pitches, wish.ends, plan.margins)
        tucks = replace(rounded(exact, edition), wish=wish.spacing, ring=wish.ring)
    except CalculationError:
        return None
    narrowest = min(tucks.pitches, default=None)
    if wish.ring:
        across_seam = tucks.left_margin + tucks.right_margin
        narrowest = across_seam if narrowest is None else min(narrowest, across_seam)
    if narrowest is not None and (narrowest <= 0 or narrowest < least_pitch(wish, plan.depth)):
        return None
    least = least_margins(wish, plan.count, (plan.depth, plan.depth), edition)
    margins = (tucks.left_margin, tucks.right_margin)
    return tucks if wish.ring or margins_keep(margins, wish, least, edition) else None

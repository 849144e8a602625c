"""Trying tuck plans: a finished size or a piece of cloth comes in, the plans that fit it go out, the best first."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from fractions import Fraction

from generator.calculation.panel.choice import Choice, TuckWish, choice_cost, ranked_among
from generator.calculation.panel.from_cloth import most_tucks, panel_from_cloth
from generator.calculation.panel.reasons import choice_reasons
from generator.calculation.panel.refusals import no_plan_fits, workable
from generator.calculation.panel.wish import spacings_near, steps_between
from generator.errors import CalculationError
from generator.lengths import MILLIMETRE, Edition, round_nearest, say_length
from generator.limits import MOST_TUCKS

_DEPTHS_INCH = tuple(Fraction(eighths, 8) for eighths in (1, 2, 3, 4, 6, 8))
_DEPTHS_METRIC = tuple(millimetres * MILLIMETRE for millimetres in (3, 6, 10, 12, 20, 25))
_EACH_SPACING = 3
_FEWER_TUCKS = 8


def plans_for_size(wish: TuckWish, edition: Edition, most: int = 12) -> tuple[Choice, ...]:
    """Return the tuck plans that fit a finished size, the best first.

    Wider than choosing: spacings from half to one and a half times the one asked for are tried, none so narrow that the
    tucks turn blind unless they were asked to, and the cost tells how far they are from it. A depth or spacing of
    nothing is open: depths that are usual, spacings that let the tucks meet or stand up to twice as far apart.

    Parameters
    ----------
    wish : TuckWish
        What is asked for; depth or spacing or both may be nothing.
    edition : Edition
        Ruler and steps.
    most : int
        How many plans at most [-].

    Returns
    -------
    tuple of Choices
        Plans, rounded and checked, the lowest cost first; at most three with the same depth and spacing.

    Raises
    ------
    CalculationError
        If nothing fits; the message says what would.

    Examples
    --------
    >>> from generator.calculation.worked import End
    >>> from generator.lengths import INCH
    >>> seam, margin = End("seam", Fraction(1, 2)), (Fraction(1, 2), Fraction(3, 2))
    >>> wish = TuckWish(Fraction(18), Fraction(3, 8), Fraction(7, 4), (seam, seam), margin, margin)
    >>> str(plans_for_size(wish, INCH, 1)[0].cost)
    '3'

    References
    ----------
    Common practice, no source; the order derived from the cost of a plan.
    """

    def fitting(concrete: TuckWish) -> tuple[Choice, ...]:
        if concrete.ring or concrete.gives == "spacing":
            return ranked_among(concrete, (concrete.spacing,), edition, most)
        spacings = _spacings(concrete, edition) if wish.spacing else (concrete.spacing,)
        each = min(most, _EACH_SPACING)
        return tuple(choice for near in spacings for choice in ranked_among(concrete, (near,), edition, each))

    found = _gathered(wish, edition, fitting)
    if not found and wish.depth and wish.spacing:
        raise CalculationError(no_plan_fits(wish, edition))
    if not found:
        raise CalculationError(_nothing(f"a finished size of {say_length(wish.finished, edition)}"))
    return tuple(sorted(found, key=lambda choice: choice.cost)[:most])


def plans_for_cloth(cloth: Fraction, wish: TuckWish, edition: Edition, most: int = 12) -> tuple[Choice, ...]:
    """Return the panels that a piece of cloth gives, the largest first.

    With a depth and a spacing the cloth holds a certain number of tucks; what is left goes to the margins. Plans with
    fewer tucks than the cloth holds come after all others.

    Parameters
    ----------
    cloth : Fraction
        Width of the cloth across the tucks, L [in].
    wish : TuckWish
        Ends, margins, rule, depth and spacing, of which either may be nothing; its finished size is not read.
    edition : Edition
        Ruler and steps.
    most : int
        How many plans at most [-].

    Returns
    -------
    tuple of Choices
        Plans, rounded and checked.

    Raises
    ------
    CalculationError
        If the cloth gives no panel.

    Examples
    --------
    >>> from generator.calculation.worked import End
    >>> from generator.lengths import INCH
    >>> seam, margin = End("seam", Fraction(1, 2)), (Fraction(3, 4), Fraction(2))
    >>> wish = TuckWish(Fraction(0), Fraction(3, 8), Fraction(3, 2), (seam, seam), margin, margin)
    >>> best = plans_for_cloth(Fraction(111, 4), wish, INCH)[0].tucks
    >>> best.count, str(best.finished)
    (17, '14')

    References
    ----------
    Derived in the docstring above.
    """
    if cloth <= 0:
        raise CalculationError("the piece of cloth must be more than nothing")
    found = _gathered(replace(wish, finished=cloth), edition, lambda concrete: _from(cloth, concrete, edition))
    if not found:
        raise CalculationError(_nothing(f"a piece of cloth {say_length(cloth, edition)} wide"))
    held = {(choice.tucks.depths[0], choice.tucks.wish): choice.tucks.count for choice in reversed(found)}

    def order(choice: Choice) -> tuple[int, Fraction, Fraction]:
        tucks = choice.tucks
        return held[tucks.depths[0], tucks.wish] - tucks.count, -tucks.finished, choice.cost

    return tuple(sorted(found, key=order)[:most])


def _gathered(wish: TuckWish, edition: Edition, fitting: Callable[[TuckWish], tuple[Choice, ...]]) -> list[Choice]:
    """Return what fits any of the wishes that a wish leaves open; a single one that cannot be worked is refused."""
    found: list[Choice] = []
    for concrete in _concrete(wish, edition):
        try:
            found += fitting(concrete)
        except CalculationError:
            if wish.depth and wish.spacing:
                raise
    return found


def _concrete(wish: TuckWish, edition: Edition) -> Iterator[TuckWish]:
    """Yield the wish with every depth and spacing that it leaves open."""
    usual = _DEPTHS_METRIC if edition.unit == "cm" else _DEPTHS_INCH
    on_marks = dict.fromkeys(max(round_nearest(depth, edition.mark), edition.mark) for depth in usual)
    for depth in (wish.depth,) if wish.depth else on_marks:
        meeting = (4 if wish.facing else 3) * depth
        spacings = (wish.spacing,) if wish.spacing else steps_between(meeting, 6 * depth, edition.grids[:3][-1])
        for spacing in spacings:
            if wish.depth or spacing >= meeting:
                yield replace(wish, depth=depth, spacing=spacing)


def _spacings(wish: TuckWish, edition: Edition) -> tuple[Fraction, ...]:
    meeting = min(3 * wish.depth, wish.spacing)
    wide = steps_between(max(wish.spacing / 2, meeting), wish.spacing * Fraction(3, 2), edition.cut_step)
    near = (spacing for spacing in spacings_near(wish.spacing, edition) if spacing >= meeting)
    return tuple(sorted({*wide, *near}))


def _from(cloth: Fraction, wish: TuckWish, edition: Edition) -> tuple[Choice, ...]:
    """Return the panels of one depth and spacing, the most tucks first."""
    if workable(wish, edition).ring:
        return _ring_from(cloth, wish, edition)
    most = most_tucks(cloth, wish, edition)
    if most > MOST_TUCKS:
        raise CalculationError(f"{say_length(cloth, edition)} of cloth would hold {most} tucks; is its unit right?")
    found: list[Choice] = []
    for count in range(most, 0, -1):
        if not wish.rule.allows(count):
            continue
        panel = panel_from_cloth(cloth, count, wish, edition)
        if panel is not None:
            reasons = choice_reasons(panel, wish, edition)
            found.append(Choice(panel, choice_cost(panel, edition), reasons))
        if len(found) > _FEWER_TUCKS or (found and panel is None):
            break
    return tuple(found)


def _ring_from(cloth: Fraction, wish: TuckWish, edition: Edition) -> tuple[Choice, ...]:
    """Return the largest ring that a piece of cloth gives; what is left of the cloth is not used."""
    seams = sum(end.first for end in wish.ends)
    for count in range(int((cloth - seams) / wish.spacing), 0, -1):
        if wish.rule.allows(count):
            way_round = count * (wish.spacing - wish.take_up_at(wish.depth))
            return ranked_among(replace(wish, finished=way_round), (wish.spacing,), edition, 1)
    return ()


def _nothing(what: str) -> str:
    return f"no tucks that can be marked on a ruler fit {what}; allow wider margins, or leave depth and spacing open"

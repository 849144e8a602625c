"""The plans that might fit: a wish comes in, exact plans not yet rounded go out, each with the least it can cost."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.panel.margins import Pair, dealt_margins, least_margins, margin_ranges, settled_margin
from generator.calculation.panel.wish import MOST_STEPS, TuckWish, spacing_window, steps_between
from generator.calculation.panel_ends import first_mark
from generator.lengths import Edition, on_step, round_nearest
from generator.limits import MOST_TUCKS

_NEAREST_COUNTS = 60


@dataclass(frozen=True, slots=True)
class Candidate:
    """A plan to try, exact. ``least`` is the least it can cost, then what decides between equals; smaller is better."""

    count: int
    depth: Fraction
    spacing: Fraction
    margins: Pair
    least: tuple[Fraction, ...]


def candidates(wish: TuckWish, spacings: Sequence[Fraction], edition: Edition) -> list[Candidate]:
    """Return the plans that might fit, the most promising first.

    What gives decides which are tried. Margin: every spacing given, every number of tucks whose margins fit. Spacing:
    the least margins that can be sewn, every number whose spacing lies in the window. Depth: as for margins, with every
    depth that can be sewn within 1/16 in (1 mm) or a tenth. A ring has only its spacing to give.

    Parameters
    ----------
    wish : TuckWish
        What is asked for.
    spacings : sequence of Fractions
        The spacings to try where the spacing does not give, m [in].
    edition : Edition
        Ruler and steps.

    Returns
    -------
    list of Candidates
        Plans not yet rounded or checked, in the order of the least they can cost.

    Examples
    --------
    12 in, tucks 3/8 in deep every 1 1/2 in, margins of 3/4 in to 1 1/2 in: 15 tucks leave 3/4 in each side, 14 leave
    1 1/8 in and 13 leave 1 1/2 in; with 14 the first mark falls on a half inch.

    >>> from generator.calculation.worked import End
    >>> from generator.lengths import INCH
    >>> seam, margin = End("seam", Fraction(1, 2)), (Fraction(3, 4), Fraction(3, 2))
    >>> wish = TuckWish(Fraction(12), Fraction(3, 8), Fraction(3, 2), (seam, seam), margin, margin)
    >>> [plan.count for plan in candidates(wish, (wish.spacing,), INCH)]
    [14, 13, 15]

    References
    ----------
    Common practice, no source; the order derived from the cost of a plan.
    """
    if wish.ring:
        found = _round_a_ring(wish, edition)
    elif wish.gives == "spacing":
        found = _spread_out(wish, edition)
    else:
        depths = _depths(wish, edition) if wish.gives == "depth" else (wish.depth,)
        found = (plan for depth in depths for spacing in spacings for plan in _beside(wish, depth, spacing, edition))
    return sorted(found, key=lambda plan: plan.least)


def least_pitch(wish: TuckWish, depth: Fraction) -> Fraction:
    """Return the least pitch of facing pairs, or nothing where no tucks face each other.

    Folds that meet or leave a gap as asked for never come to overlap: twice the depth. Where the teacher asks for
    overlapping pairs, a fold still may not lie over its partner's stitching: the depth.

    Parameters
    ----------
    wish : TuckWish
        What is asked for.
    depth : Fraction
        Depth of the tucks, d [in].

    Returns
    -------
    Fraction
        Least stitching to stitching, p [in].

    Examples
    --------
    >>> from generator.calculation.worked import End
    >>> ends, bounds = (End("raw"), End("raw")), (Fraction(1), Fraction(2))
    >>> wish = TuckWish(Fraction(9), Fraction(1, 4), Fraction(1), ends, bounds, bounds, facing=True)
    >>> least_pitch(wish, Fraction(1, 4))
    Fraction(1, 2)

    References
    ----------
    Derived in the docstring above.
    """
    if not wish.facing:
        return Fraction(0)
    overlaps = 0 < wish.spacing - wish.take_up_at(wish.depth) < 2 * wish.depth
    return depth if overlaps else 2 * depth


def _depths(wish: TuckWish, edition: Edition) -> tuple[Fraction, ...]:
    play = min(max(edition.mark, wish.depth / 10), MOST_STEPS * edition.mark)
    return steps_between(wish.depth - play, wish.depth + play, edition.mark)


def _beside(wish: TuckWish, depth: Fraction, spacing: Fraction, edition: Edition) -> Iterator[Candidate]:
    """Yield the plans of one depth and spacing whose margins take what is left."""
    take_up = wish.take_up_at(depth)
    pitch = spacing - take_up
    if pitch <= 0 or take_up <= 0 or pitch < least_pitch(wish, depth):
        return
    most = wish.finished - wish.left_margin[0] - wish.right_margin[0]
    least = wish.finished - wish.left_margin[1] - wish.right_margin[1]
    bottom, top = math.ceil(least / pitch) + 1, math.floor(most / pitch) + 1
    middle = math.floor((most + least) / 2 / pitch) + 1
    for count in _nearest_allowed(wish, bottom, top, middle):
        if count == 1 and spacing != wish.spacing:
            continue
        low = least_margins(wish, count, (depth, depth), edition)
        margins = dealt_margins(wish.finished - (count - 1) * pitch, wish, low, take_up, edition)
        if margins is not None:
            yield _candidate(wish, count, depth, spacing, margins, edition=edition)


def _nearest_allowed(wish: TuckWish, bottom: int, top: int, middle: int) -> Iterable[int]:
    """Return allowed counts, not too many of them: those whose margins come nearest to the middle of their range."""
    bottom, top = max(bottom, 1), min(top, MOST_TUCKS)
    if wish.rule.exactly is not None:
        return (wish.rule.exactly,) if bottom <= wish.rule.exactly <= top else ()
    start = bottom + (wish.rule.remainder - bottom) % wish.rule.multiple
    counts = range(start, top + 1, wish.rule.multiple)
    place = max((middle - start) // wish.rule.multiple - _NEAREST_COUNTS // 2, 0)
    place = min(place, max(len(counts) - _NEAREST_COUNTS, 0))
    return counts[place : place + _NEAREST_COUNTS]


def _spread_out(wish: TuckWish, edition: Edition) -> Iterator[Candidate]:
    """Yield the plans whose spacing takes what is left between the least margins that can be sewn."""
    take_up = wish.take_up_at(wish.depth)
    window = spacing_window(wish.spacing, edition)
    if wish.rule.allows(1):
        low = least_margins(wish, 1, (wish.depth, wish.depth), edition)
        alone = dealt_margins(wish.finished, wish, low, take_up, edition)
        if alone is not None:
            yield _candidate(wish, 1, wish.depth, wish.spacing, alone, edition=edition)
    for count in _spread_counts(wish, window, edition):
        low = least_margins(wish, count, (wish.depth, wish.depth), edition)
        (left, left_most), (right, right_most) = margin_ranges(wish, low)
        if left > left_most or right > right_most:
            continue
        margins = (
            settled_margin(left, wish.ends[0], take_up, edition),
            settled_margin(right, wish.ends[1], take_up, edition),
        )
        spacing = (wish.finished - sum(margins)) / (count - 1) + take_up
        if max(window[0], take_up) <= spacing <= window[1] and spacing > take_up:
            yield _candidate(wish, count, wish.depth, spacing, margins, edition=edition)


def _spread_counts(wish: TuckWish, window: Pair, edition: Edition) -> Iterator[int]:
    """Return the counts of two or more whose spacing can lie in its window, whatever their margins within the range."""
    take_up = wish.take_up_at(wish.depth)
    widest = wish.finished - wish.left_margin[0] - wish.right_margin[0]
    narrowest = wish.finished - wish.left_margin[1] - wish.right_margin[1] - 2 * edition.mark
    if widest <= 0 or window[1] <= take_up:
        return iter(())
    bottom = math.ceil(max(narrowest, Fraction(0)) / (window[1] - take_up)) + 1
    top = math.floor(widest / max(window[0] - take_up, edition.mark)) + 1
    return _allowed(wish, max(bottom, 2), top)


def _round_a_ring(wish: TuckWish, edition: Edition) -> Iterator[Candidate]:
    """Yield the plans of a ring: the pitch is the way round divided by the number of tucks, also across the seam."""
    take_up = wish.take_up_at(wish.depth)
    least, most = spacing_window(wish.spacing, edition)
    for count in _allowed(wish, 1, 1 + math.floor(wish.finished / max(least - take_up, edition.mark))):
        pitch = wish.finished / count
        if not least <= pitch + take_up <= most or pitch < least_pitch(wish, wish.depth):
            continue
        before = first_mark(wish.ends[0], pitch / 2, take_up)
        left = pitch / 2 + round_nearest(before, edition.mark) - before
        if 0 <= left <= pitch:
            yield _candidate(wish, count, wish.depth, pitch + take_up, (left, pitch - left), edition=edition)


def _allowed(wish: TuckWish, bottom: int, top: int) -> Iterator[int]:
    return (count for count in range(bottom, min(top, MOST_TUCKS) + 1) if wish.rule.allows(count))


def _candidate(
    wish: TuckWish, count: int, depth: Fraction, spacing: Fraction, margins: Pair, *, edition: Edition
) -> Candidate:
    first = first_mark(wish.ends[0], margins[0], wish.take_up_at(depth))
    off = _off(wish, count, depth, spacing)
    middles = (Fraction(sum(wish.left_margin)) / 2, Fraction(sum(wish.right_margin)) / 2)
    beside = sum((abs(margin - middle) for margin, middle in zip(margins, middles, strict=True)), Fraction(0))
    least = _least_grid(first, spacing, count, edition) + off / edition.wish_step
    return Candidate(count, depth, spacing, margins, (least, off, beside, Fraction(count)))


def _off(wish: TuckWish, count: int, depth: Fraction, spacing: Fraction) -> Fraction:
    """Return how far a plan is from the wish, measured as pitch: a deeper tuck takes its change twice."""
    between = abs(spacing - wish.spacing) if count > 1 else Fraction(0)
    return between + 2 * abs(depth - wish.depth)


def _least_grid(first: Fraction, spacing: Fraction, count: int, edition: Edition) -> int:
    """Return the place of the coarsest grid that could hold every mark once they are rounded."""
    start = round_nearest(first, edition.mark)
    for place, grid in enumerate(edition.grids):
        drifts = abs(spacing - round_nearest(spacing, grid)) * (count - 1)
        rounds = not on_step(spacing, edition.mark) and drifts <= 2 * edition.mark
        if grid <= edition.mark or (on_step(start, grid) and (drifts == 0 or rounds)):
            return place
    return len(edition.grids) - 1

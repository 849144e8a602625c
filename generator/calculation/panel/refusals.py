"""Why no plan fits: a wish comes in, a sentence goes out that names the limit and what would fit."""

from __future__ import annotations

import math
from fractions import Fraction

from generator.calculation.count_rule import say_tucks
from generator.calculation.panel.candidates import least_pitch
from generator.calculation.panel.margins import least_margins, margin_ranges
from generator.calculation.panel.tucks import finished_width
from generator.calculation.panel.wish import Range, TuckWish, sewable, spacing_window
from generator.calculation.panel_ends import foot_room
from generator.errors import CalculationError
from generator.lengths import Edition, round_down, round_up, say_length, write_length
from generator.limits import MOST_TUCKS


def workable(wish: TuckWish, edition: Edition) -> TuckWish:
    """Return a wish that some number of tucks could meet.

    Parameters
    ----------
    wish : TuckWish
        What is asked for.
    edition : Edition
        Steps that can be sewn, and how lengths are said.

    Returns
    -------
    TuckWish
        The same wish.

    Raises
    ------
    CalculationError
        If size, depth or spacing is nothing, the depth cannot be set, the tucks touch, facing folds lie over their
        partner's stitching, a ring is not closed by a seam, a margin range cannot be sewn, or the size is absurd.
    """
    _refuse_lengths(wish, edition)
    pitch = wish.spacing - wish.take_up_at(wish.depth)
    if pitch <= 0:
        take_up = say_length(wish.take_up_at(wish.depth), edition)
        raise CalculationError(
            f"tucks {say_length(wish.depth, edition)} deep take up {take_up} each, so a spacing of "
            f"{say_length(wish.spacing, edition)} leaves nothing between them; space them more than {take_up} apart"
        )
    if pitch < least_pitch(wish, wish.depth):
        raise CalculationError(
            f"tucks {say_length(wish.depth, edition)} deep that face each other need at least as much from stitching "
            f"to stitching, here it is {say_length(pitch, edition)}; space them at least "
            f"{say_length(wish.depth + wish.take_up_at(wish.depth), edition)} apart"
        )
    if wish.ring:
        if any(end.kind != "seam" for end in wish.ends):
            raise CalculationError("a panel closed to a ring is closed by a seam; give its left and right edge a seam")
    else:
        _refuse_margins(wish, edition)
    needed = math.floor((wish.finished - wish.left_margin[1] - wish.right_margin[1]) / pitch) + 1
    if needed > MOST_TUCKS or wish.finished / pitch > 100 * MOST_TUCKS:
        raise CalculationError(
            f"{say_length(wish.finished, edition)} would take about {needed} tucks; more than {MOST_TUCKS} are not "
            "worked out in one panel. Are finished size and spacing in the right units?"
        )
    return wish


def _refuse_lengths(wish: TuckWish, edition: Edition) -> None:
    for what, length in (("finished size", wish.finished), ("depth", wish.depth), ("spacing", wish.spacing)):
        if length <= 0:
            raise CalculationError(f"the {what} must be more than nothing, not {write_length(length, edition)}")
    if not sewable(wish.depth, edition):
        lower, upper = round_down(wish.depth, edition.mark), round_up(wish.depth, edition.mark)
        near = " or ".join(say_length(depth, edition) for depth in (lower, upper) if depth > 0)
        raise CalculationError(
            f"a depth of {write_length(wish.depth, edition, unit=True)} lies between two marks of the room's ruler, "
            f"whose finest is {say_length(edition.mark, edition)}; choose {near}, or give the ruler finer marks in "
            "site.yaml"
        )
    if wish.take_up_at(wish.depth) <= 0:
        raise CalculationError("the sample says that a tuck takes up no cloth; measure it again")


def _refuse_margins(wish: TuckWish, edition: Edition) -> None:
    count = wish.rule.exactly or wish.rule.remainder or wish.rule.multiple
    least = least_margins(wish, count, (wish.depth, wish.depth), edition)
    lies = wish.lies_at(count)
    for side, low, (fewest, most), way in zip(
        ("left", "right"), least, (wish.left_margin, wish.right_margin), lies, strict=True
    ):
        if fewest > most:
            raise CalculationError(f"the {side} margin runs downwards; give the smaller length first")
        if most + edition.mark <= low:
            how = "turned outward" if way == "out" else "beside which the presser foot runs"
            raise CalculationError(
                f"the {side} margin may be {say_length(most, edition)} at most, but a tuck "
                f"{say_length(wish.depth, edition)} deep {how} needs {say_length(low, edition)}; allow a wider margin"
                + (", or turn the edge tuck inward" if way == "out" and low > foot_room(edition) else "")
            )


def no_plan_fits(wish: TuckWish, edition: Edition) -> str:
    """Return why no number of tucks fits a wish that can be worked, and what would fit.

    Parameters
    ----------
    wish : TuckWish
        What is asked for.
    edition : Edition
        How lengths are said.

    Returns
    -------
    str
        One sentence, or two: the nearest numbers of tucks with what they would need, what is allowed, and the nearest
        finished sizes that fit.

    Examples
    --------
    >>> from generator.calculation.count_rule import CountRule
    >>> from generator.calculation.worked import End
    >>> from generator.lengths import INCH
    >>> seam, margin = End("seam", Fraction(1, 2)), (Fraction(3, 4), Fraction(7, 8))
    >>> wish = TuckWish(Fraction(12), Fraction(3, 8), Fraction(3, 2), (seam,) * 2, margin, margin, rule=CountRule(2))
    >>> print(no_plan_fits(wish, INCH))
    no number of tucks fits 12 in: nearest are 14 tucks with margins of 1 1/8 in and 16 tucks with margins of 3/8 in;
    the margins may be 3/4 in to 7/8 in, and an even number is wanted. Finished sizes that would fit: 11 1/2 in (14
    tucks) and 12 3/4 in (16 tucks)

    References
    ----------
    Derived from the limits.
    """
    if wish.ring or wish.gives == "spacing":
        return _spacing_fails(wish, edition)
    pitch = wish.spacing - wish.take_up_at(wish.depth)
    near = [count for count in _neighbours(wish, pitch) if wish.finished >= (count - 1) * pitch]
    parts = [_with_margins(wish, count, wish.finished - (count - 1) * pitch, edition) for count in near]
    sizes = [size for count in near if (size := _nearest_size(wish, count, pitch, edition))]
    text = _opening(wish, edition)
    if parts:
        text += f": nearest {'are' if len(parts) > 1 else 'is'} {' and '.join(parts)}"
    text += f"; {_allowed(wish, near[0] if near else 1, edition)}"
    return text + (
        f". Finished size{'s' if len(sizes) > 1 else ''} that would fit: {' and '.join(sizes)}" if sizes else ""
    )


def _opening(wish: TuckWish, edition: Edition) -> str:
    size = say_length(wish.finished, edition)
    if wish.rule.exactly is not None:
        return f"{say_tucks(wish.rule.exactly)} {'does' if wish.rule.exactly == 1 else 'do'} not fit {size}"
    return f"no number of tucks fits {size}"


def _neighbours(wish: TuckWish, pitch: Fraction) -> tuple[int, ...]:
    """Return the allowed counts just below and just above the one whose margins would lie in the middle."""
    if wish.rule.exactly is not None:
        return (wish.rule.exactly,)
    margins = Fraction(sum(wish.left_margin) + sum(wish.right_margin)) / 2
    middle = (wish.finished - margins) / pitch + 1
    below = wish.rule.remainder + math.floor((middle - wish.rule.remainder) / wish.rule.multiple) * wish.rule.multiple
    return tuple(count for count in (below, below + wish.rule.multiple) if count >= 1)


def _with_margins(wish: TuckWish, count: int, total: Fraction, edition: Edition) -> str:
    play = wish.left_margin[1] - wish.left_margin[0] + wish.right_margin[1] - wish.right_margin[0]
    share = (wish.left_margin[1] - wish.left_margin[0]) / play if play else Fraction(1, 2)
    left = wish.left_margin[0] + (total - wish.left_margin[0] - wish.right_margin[0]) * share
    left = min(max(left, Fraction(0)), total)
    said = [say_length(margin, edition) for margin in (left, total - left)]
    margins = said[0] if said[0] == said[1] else " and ".join(said)
    return f"{say_tucks(count)} with margins of {margins}"


def _nearest_size(wish: TuckWish, count: int, pitch: Fraction, edition: Edition) -> str:
    """Return the finished size nearest to the one asked for that a number of tucks gives, or nothing."""
    depths = (wish.depth, wish.depth)
    left, right = margin_ranges(wish, least_margins(wish, count, depths, edition))
    least, most = (finished_width(count, pitch, (left[place], right[place])) for place in (0, 1))
    size = round_up(least, edition.mark) if wish.finished < least else round_down(most, edition.mark)
    return f"{say_length(size, edition)} ({say_tucks(count)})" if least <= size <= most else ""


def _allowed(wish: TuckWish, count: int, edition: Edition) -> str:
    left, right = margin_ranges(wish, least_margins(wish, count, (wish.depth, wish.depth), edition))
    if left == right:
        allowed = f"the margins may be {_range(left, edition)}"
    else:
        allowed = f"the left margin may be {_range(left, edition)}, the right one {_range(right, edition)}"
    return allowed + _rule(wish)


def _spacing_fails(wish: TuckWish, edition: Edition) -> str:
    take_up = wish.take_up_at(wish.depth)
    window = spacing_window(wish.spacing, edition)
    ends = Fraction(0)
    if not wish.ring:
        left, right = margin_ranges(wish, least_margins(wish, wish.rule.multiple, (wish.depth,) * 2, edition))
        ends = left[0] + right[0]
    gaps = 0 if wish.ring else 1
    middle = (wish.finished - ends) / (wish.spacing - take_up) + gaps
    step = wish.rule.multiple
    below = wish.rule.remainder + math.floor((middle - wish.rule.remainder) / step) * step
    near = (wish.rule.exactly,) if wish.rule.exactly is not None else (below, below + step)
    parts = [
        f"{say_tucks(count)} {say_length((wish.finished - ends) / (count - gaps) + take_up, edition)} apart"
        for count in near
        if count > gaps and wish.finished > ends
    ]
    text = _opening(wish, edition)
    if parts:
        text += f": nearest {'are' if len(parts) > 1 else 'is'} {' and '.join(parts)}"
    room = "" if wish.ring else f" with margins of {say_length(ends / 2, edition)}"
    facing = f" and at least {say_length(least_pitch(wish, wish.depth) + take_up, edition)} where folds face each other"
    return f"{text}{room}; the spacing may be {_range(window, edition)}" + (facing if wish.facing else "") + _rule(wish)


def _rule(wish: TuckWish) -> str:
    if wish.rule.exactly is not None or wish.rule.multiple == 1:
        return ""
    return f", and {wish.rule} is wanted"


def _range(bounds: Range, edition: Edition) -> str:
    least, most = (say_length(bound, edition) for bound in bounds)
    return least if least == most else f"{least} to {most}"

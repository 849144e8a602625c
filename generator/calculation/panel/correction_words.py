"""What to do about a panel that is off, in words: a dealt-out change or a measure beyond it comes in, text goes out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import accumulate, groupby

from generator.calculation.worked import TuckSet
from generator.calculation.worked_checks import CheckPoint, Leeway
from generator.lengths import Edition, on_step, say_length
from generator.listed import listed

_CUT_LATER = "Cut the other pieces to the panel as sewn."
Steps = tuple[tuple[tuple[int, ...], Fraction], ...]


def said_tucks(numbers: Sequence[int]) -> str:
    """Return tucks by their numbers, three or more neighbours told by the first and the last.

    Examples
    --------
    >>> said_tucks((7,)), said_tucks((7, 8, 9, 12))
    ('tuck 7', 'tucks 7 to 9 and 12')
    """
    if len(numbers) == 1:
        return f"tuck {numbers[0]}"
    told: list[str] = []
    for _, run in groupby(enumerate(numbers), lambda pair: pair[1] - pair[0]):
        near = [number for _, number in run]
        told += [f"{near[0]} to {near[-1]}"] if len(near) > 2 else map(str, near)
    return f"tucks {listed(told)}"


def dealt_words(dealt: Steps, edition: Edition) -> str:
    """Return which tucks to stitch deeper or shallower, by their numbers.

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> dealt_words((((14, 15), Fraction(-1, 8)), ((16,), Fraction(-1, 16))), INCH)
    'Stitch tucks 14 and 15 shallower by 1/8 in and tuck 16 shallower by 1/16 in.'
    """
    parts = [
        f"{said_tucks(numbers)} {'deeper' if change > 0 else 'shallower'} by {say_length(abs(change), edition)}"
        for numbers, change in dealt
    ]
    return f"Stitch {' and '.join(parts)}."


def beyond_words(tucks: TuckSet, checkpoint: CheckPoint, off: Fraction, leeway: Leeway, edition: Edition) -> str:
    """Return what to do where the tucks that are left cannot absorb an error, what costs least first.

    Notes
    -----
    Leaving one tuck out gives its whole take-up; towards a caught hem at the far end a mark moved by x wins x / 2.
    """
    if checkpoint.after == tucks.count and abs(off) <= checkpoint.within:
        return "That is usual; ease it in when the panel is sewn to its neighbour."
    told = [_too_much(tucks, checkpoint, off, edition)] if checkpoint.after < tucks.count else []
    other = _wider if off < 0 else _narrower
    remedies = [
        *other(tucks, checkpoint, abs(off), leeway, edition),
        *_again(checkpoint, off, leeway, edition),
    ]
    told += [remedies[0], *(f"Or {text[0].lower()}{text[1:]}" for text in remedies[1:])] if remedies else []
    if not remedies:
        told.append(f"Let it be {say_length(abs(off), edition)} {'wider' if off > 0 else 'narrower'} than planned.")
    return " ".join(told)


def _too_much(tucks: TuckSet, checkpoint: CheckPoint, off: Fraction, edition: Edition) -> str:
    left = tucks.count - checkpoint.after
    few = "the 1 tuck" if left == 1 else f"the {left} tucks"
    if not checkpoint.absorb:
        return f"{few[0].upper()}{few[1:]} left cannot be changed without it being seen."
    size, absorbed = say_length(abs(off), edition), say_length(checkpoint.absorb, edition)
    return f"{size} is more than {few} left can absorb ({absorbed})."


def _again(checkpoint: CheckPoint, off: Fraction, leeway: Leeway, edition: Edition) -> Iterator[str]:
    """Which of the tucks sewn to stitch again, with those left changed as far as they may be; none where that is short.

    Of the sewn tucks as few as can be: those first that may be changed most.
    """
    rest = abs(off) - checkpoint.absorb
    gained = accumulate(sorted((2 * change for change in leeway.changes[: checkpoint.after]), reverse=True))
    number = next((number for number, gain in enumerate(gained, 1) if gain >= rest), 0)
    if not number:
        return
    by, whole = _shared(rest / 2, number, edition), not checkpoint.absorb
    which = (
        (f"{number} tucks" if number > 1 else "one tuck")
        if whole
        else f"{number if number > 1 else 'one'} of those sewn"
    )
    if off > 0:
        told = f"stitch {which} once more, deeper {by}, and take the old line{'s' if number > 1 else ''} out"
    else:
        told = f"unpick {which} and stitch {'it' if number == 1 else 'them'} again, shallower {by}"
    if not whole:
        others = sum(change > 0 for change in leeway.changes[checkpoint.after :])
        each = _shared(checkpoint.absorb / 2, others, edition)
        told = f"stitch those left {'deeper' if off > 0 else 'shallower'} {each}; {told}"
    covering = [number for number in sorted(leeway.joined) if number <= checkpoint.after]
    kept = f" Leave {said_tucks(covering)} as sewn: a join lies there." if covering else ""
    yield f"{told[0].upper()}{told[1:]}.{kept}"


def _shared(change: Fraction, number: int, edition: Edition) -> str:
    """By how much, of one tuck, of each where all take the same on the ruler, or of all together."""
    if number == 1:
        return f"by {say_length(change, edition)}"
    if on_step(change / number, edition.mark):
        return f"by {say_length(change / number, edition)} each"
    return f"by {say_length(change, edition)} together"


def _wider(
    tucks: TuckSet, checkpoint: CheckPoint, missing: Fraction, leeway: Leeway, edition: Edition
) -> Iterator[str]:
    """What else wins back what is missing: a tuck fewer, a hem, the allowances, the other pieces."""
    size, left = say_length(missing, edition), checkpoint.after < tucks.count
    yield from _one_fewer(tucks, checkpoint, missing, leeway, edition)
    if left and missing <= leeway.hem:
        yield (
            f"Move the last fold mark {say_length(2 * missing, edition)} towards the far edge: the hem there grows "
            f"narrower by {size}."
        )
    if missing <= leeway.lets_out:
        yield f"Take {size} from the allowances."
    if leeway.others == "wait":
        yield _CUT_LATER
    if leeway.others == "cut":
        yield f"Trim what will be sewn to it by {size}."


def _one_fewer(
    tucks: TuckSet, checkpoint: CheckPoint, missing: Fraction, leeway: Leeway, edition: Edition
) -> Iterator[str]:
    """Leaving a tuck out, where that brings the panel nearer and upsets no turn: the one that gives best."""
    left = checkpoint.after < tucks.count
    free = [
        (abs(take_up - missing), number, take_up)
        for number, take_up in enumerate(tucks.take_ups, 1)
        if number not in leeway.joined and (number > checkpoint.after or not left)
    ]
    if not free or not leeway.leaves_out or min(free)[0] >= missing:
        return
    _, number, take_up = min(free)
    which = "one tuck" if len({tucks.take_ups[other - 1] for _, other, _ in free}) == 1 else f"tuck {number}"
    done = f"Leave {which} out" if left else f"Unpick {which}"
    yield f"{done}: that gives back {say_length(take_up, edition)}."


def _narrower(tucks: TuckSet, checkpoint: CheckPoint, off: Fraction, leeway: Leeway, edition: Edition) -> Iterator[str]:
    """What else takes off what is too much: the closing of a ring, the margins, the other pieces."""
    size, half = say_length(off, edition), say_length(off / 2, edition)
    when = " when all tucks are sewn" if checkpoint.after < tucks.count else ""
    if tucks.ring:
        if off <= leeway.trims[1]:
            yield f"Make the closing seam wider: {size} more, both sides together."
    elif off / 2 <= min(leeway.trims):
        yield f"Trim {half} off at the {leeway.sides[0]} and at the {leeway.sides[1]}{when}."
    elif off <= max(leeway.trims):
        side = leeway.sides[leeway.trims.index(max(leeway.trims))]
        yield f"Trim {size} off at the {side}{when}."
    if leeway.others == "wait":
        yield _CUT_LATER

"""Unequal tucks: runs of tucks, graduated or mirrored, come in; the rounded set of tucks goes out."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from generator.calculation.count_rule import say_tucks
from generator.calculation.panel.margins import Pair, dealt_margins, least_margins, margins_keep
from generator.calculation.panel.marks import laid_out, rounded
from generator.calculation.panel.run_steps import RunWish, graduated_depths, graduated_pitches
from generator.calculation.panel.wish import TuckWish
from generator.calculation.worked import TuckSet
from generator.errors import CalculationError
from generator.lengths import Edition, say_length
from generator.limits import MOST_TUCKS

Plan = tuple[tuple[Fraction, ...], tuple[Fraction, ...]]
# What lies between two tucks, with its run where that says of it what shows.
Gap = tuple[Fraction, RunWish | None]


def work_runs(
    runs: Sequence[RunWish],
    wish: TuckWish,
    edition: Edition,
    *,
    mirror: bool = False,
    middle_pitch: Fraction | None = None,
) -> TuckSet:
    """Return a set of unequal tucks, rounded, whose open number and margins make the size come out.

    Runs follow each other from the left; mirrored, they go to the middle and the right half repeats them backwards.
    Depths and pitches are kept as asked for. The number of the open run and the margins take what is left: of the
    numbers that fit, the one whose marks fall on the coarsest grid, then the one with margins nearest the middle of
    their range.

    Parameters
    ----------
    runs : sequence of RunWishes
        From the left edge, mirrored from the left edge to the middle.
    wish : TuckWish
        Finished size, ends, margins, rule, how edge tucks lie; its depth and spacing are not read, except that a
        measured ``take_up`` belongs to its depth and carries over the difference from twice that depth.
    edition : Edition
        Ruler and steps.
    mirror : bool
        Whether the right half mirrors the left.
    middle_pitch : Fraction, optional
        Stitching to stitching across the middle [in]; without it the last run's pitch.

    Returns
    -------
    TuckSet
        The set; it has no one spacing, so its ``wish`` is 0.

    Raises
    ------
    CalculationError
        If no number of tucks fits, a depth cannot be set, or facing tucks lie over each other's stitching.

    Examples
    --------
    Two tucks of 1/4 and 1/2 in, 2 in apart when sewn, margins of 1 in to 2 in on 5 in: 3 in are left, 1 1/2 in each.

    >>> from generator.calculation.worked import End
    >>> from generator.lengths import INCH
    >>> raw, margin = End("raw"), (Fraction(1), Fraction(2))
    >>> wish = TuckWish(Fraction(5), Fraction(0), Fraction(0), (raw, raw), margin, margin)
    >>> tucks = work_runs((RunWish((Fraction(1, 4), Fraction(1, 2)), Fraction(2), number=2),), wish, INCH)
    >>> [str(mark) for mark in tucks.marks], str(tucks.cut)
    (['7/4', '9/2'], '13/2')

    References
    ----------
    Derived in the docstring above.
    """
    if sum(run.number is None for run in runs) > 1 or not runs:
        raise CalculationError("only one run may leave its number open; give the others a number")
    if wish.finished <= 0 or any(
        min(run.pitch, run.last) <= 0 or (run.number is not None and run.number < 1) for run in runs
    ):
        raise CalculationError("finished size, pitches and numbers of tucks must be more than nothing")
    middle: Gap = (runs[-1].last, runs[-1]) if middle_pitch is None else (middle_pitch, None)
    found: list[tuple[tuple[Fraction, ...], TuckSet]] = []
    tried: list[tuple[int, Fraction]] = []
    for open_number in _numbers(runs, wish, edition, middle if mirror else None):
        depths, pitches = _expanded(runs, open_number, edition, middle if mirror else None)
        left_over = wish.finished - sum(pitches)
        tried.append((len(depths), left_over))
        if wish.rule.allows(len(depths)) and len(depths) <= MOST_TUCKS:
            found += _worked(wish, (depths, pitches), left_over, edition)
    if not found:
        raise CalculationError(_nothing_fits(wish, tried, edition))
    return min(found, key=lambda entry: entry[0])[1]


def _numbers(runs: Sequence[RunWish], wish: TuckWish, edition: Edition, middle: Gap | None) -> Sequence[int]:
    """Return the numbers to try for the open run: those that fit and the nearest ones that do not.

    Where no run is open, the one number returned is read by nobody.
    """
    run = next((run for run in runs if run.number is None), None)
    if run is None:
        return (1,)
    if len(set(run.depths)) > 1:
        raise CalculationError("a graduated run needs its number of tucks; only a run of one depth may be open")
    if run.last != run.pitch:
        raise CalculationError("a run whose pitch grows needs its number of tucks; only one of even pitch may be open")
    _, pitches = _expanded(runs, 1, edition, middle)
    room = wish.finished - sum(pitches)
    each = run.apart(run.pitch, run.depths[0], run.depths[0]) * (1 if middle is None else 2)
    around = wish.rule.multiple
    fewest = math.ceil((room - wish.left_margin[1] - wish.right_margin[1]) / each) + 1 - around
    most = math.floor((room - wish.left_margin[0] - wish.right_margin[0]) / each) + 1 + around
    if fewest > MOST_TUCKS:
        raise CalculationError(_too_many(fewest))
    return range(max(fewest, 1), min(most, MOST_TUCKS) + 1)


def _expanded(runs: Sequence[RunWish], open_number: int, edition: Edition, middle: Gap | None) -> Plan:
    """Return every depth and every pitch of a panel, from the left."""
    depths: list[Fraction] = []
    gaps: list[Gap] = []
    for place, run in enumerate(runs):
        number = open_number if run.number is None else run.number
        depths += graduated_depths(run.depths, number, edition)
        gaps += [(pitch, run) for pitch in graduated_pitches(run, number, edition)]
        if place < len(runs) - 1:
            gaps.append((run.last, run) if run.pitch_after is None else (run.pitch_after, None))
    if middle is not None:
        depths += reversed(depths)
        gaps += [middle, *reversed(gaps)]
    pitches = (gap if run is None else run.apart(gap, depths[at], depths[at + 1]) for at, (gap, run) in enumerate(gaps))
    return tuple(depths), tuple(pitches)


def _worked(
    wish: TuckWish, plan: Plan, left_over: Fraction, edition: Edition
) -> Iterator[tuple[tuple[Fraction, ...], TuckSet]]:
    """Yield a plan rounded, with what decides between plans, if it keeps its limits."""
    depths, pitches = plan
    take_ups = tuple(wish.take_up_at(depth) for depth in depths)
    _refuse_covered_stitching(wish, depths, pitches, edition)
    least: Pair = least_margins(wish, len(depths), (depths[0], depths[-1]), edition)
    margins = dealt_margins(left_over, wish, least, take_ups[0], edition)
    if margins is None:
        return
    tucks = replace(rounded(laid_out(depths, take_ups, pitches, wish.ends, margins), edition), asked=wish.finished)
    if margins_keep((tucks.left_margin, tucks.right_margin), wish, least, edition):
        beside = Fraction(sum(wish.left_margin) + sum(wish.right_margin)) / 2
        grid = (
            Fraction(edition.grids.index(tucks.grid)) if tucks.grid in edition.grids else Fraction(len(edition.grids))
        )
        yield (grid, abs(left_over - beside), Fraction(len(depths))), replace(tucks, wish=Fraction(0))


def _refuse_covered_stitching(
    wish: TuckWish, depths: Sequence[Fraction], pitches: Sequence[Fraction], edition: Edition
) -> None:
    if not wish.facing:
        return
    for place, pitch in enumerate(pitches):
        deepest = max(depths[place], depths[place + 1])
        if pitch < deepest:
            raise CalculationError(
                f"tucks {place + 1} and {place + 2} face each other {say_length(pitch, edition)} from stitching to "
                f"stitching, but one is {say_length(deepest, edition)} deep; make the pitch at least as much"
            )


def _too_many(count: int) -> str:
    return (
        f"the runs come to {count} tucks or more; more than {MOST_TUCKS} are not worked out in one panel. Are finished "
        "size and pitch in the right units?"
    )


def _nothing_fits(wish: TuckWish, tried: Sequence[tuple[int, Fraction]], edition: Edition) -> str:
    size = say_length(wish.finished, edition)
    middle = Fraction(sum(wish.left_margin) + sum(wish.right_margin)) / 2
    room = [entry for entry in tried if entry[1] >= 0]
    if room and room[0][0] > MOST_TUCKS:
        return _too_many(room[0][0])
    allowed = [entry for entry in room if wish.rule.allows(entry[0])]
    if room and not allowed:
        return f"the runs come to {' or '.join(say_tucks(count) for count, _ in room)}, but {wish.rule} is wanted"
    near = sorted(sorted(allowed, key=lambda entry: abs(entry[1] - middle))[:2])
    if not near:
        return f"the runs are wider than {size}; take fewer tucks or smaller pitches"
    parts = [
        f"{say_tucks(count)} {'leaves' if count == 1 else 'leave'} {say_length(left_over, edition)}"
        for count, left_over in near
    ]
    least, most = (wish.left_margin[place] + wish.right_margin[place] for place in (0, 1))
    margins = f"{say_length(least, edition)} to {say_length(most, edition)}"
    return f"no number of tucks fits {size}: {' and '.join(parts)} for both margins together, which may be {margins}"

"""What goes wrong at the machine, and how to win it back: tucks come in, check points and corrections go out."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate

from generator.calculation.panel.correction_words import beyond_words, dealt_words
from generator.calculation.panel.leeway import leeway_of
from generator.calculation.refused import whole_number
from generator.calculation.worked import TuckSet
from generator.calculation.worked_checks import CheckPoint, Correction, Leeway
from generator.errors import CalculationError
from generator.lengths import Edition, round_down

_MOST_POINTS = 12
_MOST_MARKS_OFF = 4
_STEPS_OFF = (1, 2, 4)


@dataclass(frozen=True, slots=True)
class MeasuredWords:
    """How a set of tucks calls what is measured: its two cut edges, its two hem folds, its fold marks."""

    cut: tuple[str, str]
    hem: tuple[str, str]
    mark: str


ACROSS = MeasuredWords(
    cut=("the cut edge", "the far cut edge"),
    hem=("the hem fold", "the far hem fold"),
    mark="fold mark",
)
ALONG = MeasuredWords(
    cut=("the top cut edge", "the bottom cut edge"),
    hem=("the top hem fold", "the bottom hem fold"),
    mark="cross mark",
)


def check_points(
    tucks: TuckSet, edition: Edition, every: int = 6, leeway: Leeway | None = None, words: MeasuredWords = ACROSS
) -> tuple[CheckPoint, ...]:
    r"""Return where to measure while the tucks are being stitched, and what to expect.

    From the edge as it is then to the next fold mark lies what was marked less what the tucks already stitched hide:
    :math:`f_{i+1} - \sum_{j \le i} u_j`, less the hem where the first tuck has caught it. After the last tuck the
    whole width is measured.

    Parameters
    ----------
    tucks : TuckSet
        A rounded set.
    edition : Edition
        Its ``mark`` is the unit of what is usual: one for the first tuck, growing with the root of their number, four
        at most and never more than the tucks left can absorb, where they can absorb anything.
    every : int
        Tucks between check points [-]; a whole multiple where there would be more than twelve, half the tucks where
        they are few.
    leeway : Leeway, optional
        What can give; without it, what equal tucks without joins can.
    words : MeasuredWords
        How edges and marks are called.

    Returns
    -------
    tuple of CheckPoints
        In the order of sewing; none for a plain panel.

    Raises
    ------
    CalculationError
        If ``every`` is less than 1.

    Examples
    --------
    17 tucks of 3/8 in, first mark 1 5/8 in, 1 1/2 in apart: mark 7 is at 10 5/8 in, and 6 tucks hide 4 1/2 in.

    >>> from generator.calculation.panel.marks import laid_out, rounded
    >>> from generator.calculation.worked import End
    >>> from generator.lengths import INCH
    >>> seam, half = End("seam", Fraction(1, 2)), Fraction(3, 4)
    >>> tucks = rounded(laid_out((half / 2,) * 17, (half,) * 17, (half,) * 16, (seam, seam), (half, half)), INCH)
    >>> first, second, whole = check_points(tucks, INCH)
    >>> first.after, first.start, first.end, str(first.expect), str(first.within)
    (6, 'the cut edge', 'fold mark 7', '49/8', '1/8')
    >>> whole.after, whole.end, str(whole.expect)
    (17, 'the far cut edge', '29/2')

    References
    ----------
    Derived in the docstring above; what is usual: common practice, no source.
    """
    whole_number(every, "the number of tucks between check points", least=1)
    if not tucks.count:
        return ()
    leeway = leeway or leeway_of(tucks, edition)
    caught = tuple(end.kind == "caught hem" for end in (tucks.left, tucks.right))
    start, far = (hem if is_caught else cut for hem, cut, is_caught in zip(words.hem, words.cut, caught, strict=True))
    under = tucks.left_allowance if caught[0] else Fraction(0)
    hidden = tuple(accumulate(tucks.take_ups))
    points = [
        CheckPoint(
            after=after,
            start=start,
            end=f"{words.mark} {after + 1}",
            mark=after + 1,
            expect=tucks.marks[after] - hidden[after - 1] - under,
            within=_usual(leeway, after, edition),
            absorb=_absorbed(leeway, after),
        )
        for after in _stops(tucks.count, every)
    ]
    whole = tucks.cut - hidden[-1] - under - (tucks.right_allowance if caught[1] else 0)
    usual = _usual(leeway, tucks.count, edition)
    return (*points, CheckPoint(tucks.count, start, far, 0, whole, usual, Fraction(0)))


def _stops(count: int, every: int) -> tuple[int, ...]:
    """Return after which tucks to measure; the end of the panel, which is always measured, is not among them."""
    if count <= every + 1:
        return (count // 2,) if count >= 4 else ()
    apart = every * math.ceil(Fraction(count, every * _MOST_POINTS))
    return tuple(range(apart, count - 1, apart))


def _usual(leeway: Leeway, after: int, edition: Edition) -> Fraction:
    usual = min(math.isqrt(after), _MOST_MARKS_OFF) * edition.mark
    absorbed = round_down(_absorbed(leeway, after), edition.mark)
    return min(usual, absorbed) if absorbed else usual


def _absorbed(leeway: Leeway, after: int) -> Fraction:
    """What the tucks left can take up or give back: each its change, twice."""
    return 2 * sum(leeway.changes[after:], Fraction(0))


def corrections(
    tucks: TuckSet, checkpoint: CheckPoint, edition: Edition, leeway: Leeway | None = None
) -> tuple[Correction, ...]:
    r"""Return what to do at a check point when the panel is too narrow or too wide.

    A panel that is off by D needs its other tucks changed by D / 2 together, since a tuck takes cloth twice. That is
    dealt out in marks of the ruler, :math:`N = D / (2 \text{ marks})` in all, as :func:`dealt_steps` tells. What the
    tucks left cannot absorb costs or gives a whole tuck, or cloth at the edge. Moving marks wins nothing back, because
    the finished width does not contain them, except towards a caught hem at the far end: moved by x it wins x / 2.

    Parameters
    ----------
    tucks : TuckSet
        A rounded set.
    checkpoint : CheckPoint
        One of its check points.
    edition : Edition
        Its ``mark`` is the step: the panel is off by 2, 4 and 8 of them, 1/8 to 1/2 in or 2 to 8 mm.
    leeway : Leeway, optional
        What can give; without it, what equal tucks without joins can.

    Returns
    -------
    tuple of Corrections
        Too narrow first (``off`` negative), then too wide, the smallest first.

    Examples
    --------
    After tuck 13 of 17 the panel is 1/2 in too narrow: 1/4 in of depth over 4 tucks, each 1/16 in shallower.

    >>> from generator.calculation.panel.marks import laid_out, rounded
    >>> from generator.calculation.worked import End
    >>> from generator.lengths import INCH
    >>> seam, half = End("seam", Fraction(1, 2)), Fraction(3, 4)
    >>> tucks = rounded(laid_out((half / 2,) * 17, (half,) * 17, (half,) * 16, (seam, seam), (half, half)), INCH)
    >>> narrow = corrections(tucks, check_points(tucks, INCH, 13)[0], INCH)[2]
    >>> narrow.off, narrow.steps
    (Fraction(-1, 2), (((14, 15, 16, 17), Fraction(-1, 16)),))

    References
    ----------
    Derived in the docstring above.
    """
    room = leeway or leeway_of(tucks, edition)
    return tuple(_correction(tucks, checkpoint, way * steps, room, edition) for way in (-1, 1) for steps in _STEPS_OFF)


def _correction(tucks: TuckSet, checkpoint: CheckPoint, steps: int, leeway: Leeway, edition: Edition) -> Correction:
    """Return one correction for a panel whose depths must change by a number of marks, negative for narrow."""
    off = 2 * steps * edition.mark
    if abs(off) <= checkpoint.absorb:
        most = [int(change / edition.mark) for change in leeway.changes[checkpoint.after :]]
        shares = dealt_steps(abs(steps), most)
        mark = edition.mark if steps > 0 else -edition.mark
        dealt = tuple(
            (tuple(checkpoint.after + place for place, own in enumerate(shares, 1) if own == share), share * mark)
            for share in sorted({*shares} - {0}, reverse=True)
        )
        return Correction(checkpoint.after, off, dealt, dealt_words(dealt, edition))
    return Correction(checkpoint.after, off, (), beyond_words(tucks, checkpoint, off, leeway, edition))


def dealt_steps(steps: int, most: Sequence[int]) -> tuple[int, ...]:
    r"""Return how a change of depth is dealt out over the tucks left.

    One step after the other goes to the next tuck that may take one more: of q equal tucks each gets
    :math:`\lfloor N / q \rfloor` and the first N mod q one more.

    Parameters
    ----------
    steps : int
        Steps to deal out, N [-].
    most : sequence of int
        How many each tuck may take, in the order of sewing [-].

    Returns
    -------
    tuple of int
        Steps of each tuck [-].

    Raises
    ------
    CalculationError
        If the tucks cannot take so many.

    Examples
    --------
    3/4 in too narrow with 4 tucks left is 6 steps of 1/16 in: two tucks by 1/8 in, two by 1/16 in. A tuck that covers a
    join takes none.

    >>> dealt_steps(6, (2, 2, 2, 2)), dealt_steps(3, (1, 0, 1, 1))
    ((2, 2, 1, 1), (1, 0, 1, 1))

    References
    ----------
    Derived in the docstring above.
    """
    if steps > sum(most):
        raise CalculationError(f"the tucks left can take {sum(most)} steps, not {steps}")
    shares = [0] * len(most)
    while steps:
        for place in range(len(most)):
            if steps and shares[place] < most[place]:
                shares[place] += 1
                steps -= 1
    return tuple(shares)

"""What goes wrong at the machine, and how to win it back: tucks come in, check points and corrections go out."""

from __future__ import annotations

import math
from fractions import Fraction
from itertools import accumulate

from generator.calculation.panel.correction_words import allowed_change, beyond_words, dealt_words
from generator.calculation.panel.stitching_errors import random_error, systematic_error
from generator.calculation.refused import whole_number
from generator.calculation.worked import CheckPoint, Correction, TuckSet
from generator.lengths import Edition, round_down

__all__ = [
    "allowed_change",
    "check_points",
    "corrections",
    "dealt_steps",
    "random_error",
    "systematic_error",
]

_MOST_POINTS = 12
_MOST_MARKS_OFF = 4
_STEPS_OFF = (1, 2, 4, 8)


def check_points(tucks: TuckSet, edition: Edition, every: int = 6) -> tuple[CheckPoint, ...]:
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
        at most and never more than the tucks left can absorb.
    every : int
        Tucks between check points [-]; a whole multiple where there would be more than twelve, half the tucks where
        they are few.

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
    caught = tuple(end.kind == "caught hem" for end in (tucks.left, tucks.right))
    start = "the hem fold" if caught[0] else "the cut edge"
    under = tucks.left_allowance if caught[0] else Fraction(0)
    hidden = tuple(accumulate(tucks.take_ups))
    points = [
        CheckPoint(
            after=after,
            start=start,
            end=f"fold mark {after + 1}",
            mark=after + 1,
            expect=tucks.marks[after] - hidden[after - 1] - under,
            within=_usual(tucks, after, edition),
            absorb=_absorbed(tucks, after, edition),
        )
        for after in _stops(tucks.count, every)
    ]
    whole = tucks.cut - hidden[-1] - under - (tucks.right_allowance if caught[1] else 0)
    far = "the far hem fold" if caught[1] else "the far cut edge"
    return (*points, CheckPoint(tucks.count, start, far, 0, whole, _usual(tucks, tucks.count, edition), Fraction(0)))


def _stops(count: int, every: int) -> tuple[int, ...]:
    """Return after which tucks to measure; the end of the panel, which is always measured, is not among them."""
    if count <= every + 1:
        return (count // 2,) if count >= 4 else ()
    apart = every * math.ceil(Fraction(count, every * _MOST_POINTS))
    return tuple(range(apart, count - 1, apart))


def _usual(tucks: TuckSet, after: int, edition: Edition) -> Fraction:
    usual = min(math.isqrt(after), _MOST_MARKS_OFF) * edition.mark
    if after == tucks.count:
        return usual
    return max(min(usual, round_down(_absorbed(tucks, after, edition), edition.mark)), edition.mark)


def _absorbed(tucks: TuckSet, after: int, edition: Edition) -> Fraction:
    left = tucks.depths[after:]
    return 2 * len(left) * min(allowed_change(depth, edition) for depth in left)


def corrections(tucks: TuckSet, checkpoint: CheckPoint, edition: Edition) -> tuple[Correction, ...]:
    r"""Return what to do at a check point when the panel is too narrow or too wide.

    A panel that is off by D needs its other tucks changed by D / 2 together, since a tuck takes cloth twice. That is
    dealt out in steps that a hand can set: N = D / (2 steps) in all, :math:`\lfloor N / q \rfloor` for each of the q
    tucks left and one more for the first N mod q. What they cannot absorb costs or gives a whole tuck, or cloth at the
    edge. Moving marks wins nothing back, because the finished width does not contain them, except towards a caught hem
    at the far end: moved by x it wins x / 2.

    Parameters
    ----------
    tucks : TuckSet
        A rounded set.
    checkpoint : CheckPoint
        One of its check points.
    edition : Edition
        Its ``fine`` is the step: the panel is off by 2, 4, 8 and 16 of them, 1/16 to 1/2 in or 1 to 8 mm.

    Returns
    -------
    tuple of Corrections
        Too narrow first (``off`` negative), then too wide, the smallest first.

    Examples
    --------
    After tuck 13 of 17 the panel is 1/4 in too narrow: 1/8 in of depth over 4 tucks, each 1/32 in shallower.

    >>> from generator.calculation.panel.marks import laid_out, rounded
    >>> from generator.calculation.worked import End
    >>> from generator.lengths import INCH
    >>> seam, half = End("seam", Fraction(1, 2)), Fraction(3, 4)
    >>> tucks = rounded(laid_out((half / 2,) * 17, (half,) * 17, (half,) * 16, (seam, seam), (half, half)), INCH)
    >>> narrow = corrections(tucks, check_points(tucks, INCH, 13)[0], INCH)[2]
    >>> narrow.off, narrow.steps
    (Fraction(-1, 4), ((4, Fraction(-1, 32)),))

    References
    ----------
    Derived in the docstring above.
    """
    return tuple(_correction(tucks, checkpoint, way * steps, edition) for way in (-1, 1) for steps in _STEPS_OFF)


def _correction(tucks: TuckSet, checkpoint: CheckPoint, steps: int, edition: Edition) -> Correction:
    """Return one correction for a panel whose depths must change by a number of fine steps, negative for narrow."""
    off = 2 * steps * edition.fine
    left = tucks.count - checkpoint.after
    if left and abs(off) <= checkpoint.absorb:
        dealt = dealt_steps(abs(steps), left, edition.fine if steps > 0 else -edition.fine)
        return Correction(checkpoint.after, off, dealt, dealt_words(dealt, checkpoint.after, edition))
    return Correction(checkpoint.after, off, (), beyond_words(tucks, checkpoint, off, edition))


def dealt_steps(steps: int, tucks_left: int, step: Fraction) -> tuple[tuple[int, Fraction], ...]:
    r"""Return how a change of depth is dealt out over the tucks left.

    Each gets :math:`\lfloor N / q \rfloor` steps and the first N mod q one more.

    Parameters
    ----------
    steps : int
        Steps to deal out, N [-].
    tucks_left : int
        Tucks to deal them to, q [-].
    step : Fraction
        One step of depth [in], negative for shallower.

    Returns
    -------
    tuple of (int, Fraction)
        Number of tucks and the change of their depth [in], in the order of sewing; tucks that stay are left out.

    Raises
    ------
    CalculationError
        If no tuck is left.

    Examples
    --------
    3/8 in too narrow with 4 tucks left is 6 steps of 1/32 in: two tucks by 1/16 in, two by 1/32 in.

    >>> dealt_steps(6, 4, Fraction(-1, 32))
    ((2, Fraction(-1, 16)), (2, Fraction(-1, 32)))
    >>> dealt_steps(1, 4, Fraction(1, 32))
    ((1, Fraction(1, 32)),)

    References
    ----------
    Derived in the docstring above.
    """
    each, more = divmod(steps, whole_number(tucks_left, "the number of tucks left", least=1))
    shares = ((more, (each + 1) * step), (tucks_left - more, each * step))
    return tuple((count, change) for count, change in shares if count and change)

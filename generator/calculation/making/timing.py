"""How long the work takes: counts of work and the room's rates come in, minutes go out."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from generator.calculation.refused import more_than_nothing, not_negative
from generator.errors import CalculationError
from generator.lengths import round_nearest

FIVE_MINUTES = 5


def operation_minutes(
    counts: Mapping[str, Fraction], rates: Mapping[str, Fraction], pace: Fraction = Fraction(1)
) -> Fraction:
    """Return how long a piece of work takes.

    Each operation takes its number of units times the time of one unit; a slower hand takes all of them longer by the
    same factor: t = p (sum of n_i r_i) / 60.

    Parameters
    ----------
    counts : Mapping of str to Fraction
        How much of each operation there is, n_i, in the unit of its rate [-].
    rates : Mapping of str to Fraction
        Time of one unit of each operation, r_i [s].
    pace : Fraction
        How many times as long this hand takes, p [-].

    Returns
    -------
    Fraction
        Time [min].

    Raises
    ------
    CalculationError
        If an operation has no rate.

    Examples
    --------
    Two pieces at 4 minutes and 17 folds at 30 seconds: 480 + 510 s = 16 1/2 minutes; beginners take twice as long.

    >>> work = {"cut a piece": Fraction(2), "mark a fold": Fraction(17)}
    >>> rates = {"cut a piece": Fraction(240), "mark a fold": Fraction(30)}
    >>> operation_minutes(work, rates), operation_minutes(work, rates, Fraction(2))
    (Fraction(33, 2), Fraction(33, 1))

    References
    ----------
    Derived in the docstring above.
    """
    unknown = sorted(set(counts) - set(rates))
    if unknown:
        raise CalculationError(f"there is no rate for '{unknown[0]}'; the room has rates for: {', '.join(rates)}")
    seconds = sum(
        (
            not_negative(count, f"the amount of '{name}'") * not_negative(rates[name], f"'{name}'")
            for name, count in counts.items()
        ),
        Fraction(0),
    )
    return seconds * more_than_nothing(pace, "the pace") / 60


def printed_minutes(minutes: Fraction) -> int:
    """Return a time as a sheet prints it: to the nearest five minutes, and never nothing for some work.

    Rates are guesses of one hand; minutes to the second would pretend to more. Rounding to the nearest keeps the sum of
    many steps near the truth, which rounding up would not.

    Parameters
    ----------
    minutes : Fraction
        Time as worked out [min].

    Returns
    -------
    int
        Time [min], a multiple of five.

    Examples
    --------
    >>> [printed_minutes(Fraction(minutes)) for minutes in (0, 1, 7, 8, 33)]
    [0, 5, 5, 10, 35]

    References
    ----------
    Common practice, no source.
    """
    if not_negative(minutes, "the time") == 0:
        return 0
    return max(FIVE_MINUTES, int(round_nearest(minutes, Fraction(FIVE_MINUTES))))

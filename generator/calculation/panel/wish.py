"""What is asked of a set of equal tucks, and one answer to it: plain frozen values and the limits that they set."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from generator.calculation.count_rule import CountRule
from generator.calculation.panel_ends import Lie
from generator.calculation.worked import End, TuckSet
from generator.lengths import Edition, on_step, round_down, round_up

MOST_STEPS = 64
Range = tuple[Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class TuckWish:
    """A panel of equal tucks as a teacher asks for it; lengths in inches.

    ``left_margin`` and ``right_margin`` are ranges (least, most); both the same is a fixed margin. ``gives`` names what
    changes so that the size comes out. ``take_up`` is measured on a sample of this very depth; None is twice the
    depth. ``lies(count)`` says how the first and the last tuck lie at worst: "out", "in" or "upright"; None is upright.
    ``facing`` panels have neighbours turned to each other. A ``ring`` is closed on itself: its margins are not asked
    for. A depth or spacing of nothing is left open, for exploring only.
    """

    finished: Fraction
    depth: Fraction
    spacing: Fraction
    ends: tuple[End, End]
    left_margin: Range
    right_margin: Range
    gives: Literal["margin", "spacing", "depth"] = "margin"
    take_up: Fraction | None = None
    rule: CountRule = CountRule()  # noqa: RUF009 - frozen, so every wish may share it
    facing: bool = False
    lies: Callable[[int], tuple[str, str]] | None = None
    ring: bool = False

    def take_up_at(self, depth: Fraction) -> Fraction:
        """Return the cloth that a tuck of a depth hides; a sample carries over what it differs from twice its depth."""
        return 2 * depth + (self.take_up - 2 * self.depth if self.take_up is not None else 0)

    def lies_at(self, count: int) -> tuple[str, str]:
        """Return how the first and the last of a number of tucks lie at worst."""
        return self.lies(count) if self.lies is not None else ("upright", "upright")


@dataclass(frozen=True, slots=True)
class Choice:
    """One plan of tucks that fits, rounded and checked, what it costs and why it stands where it stands in the list."""

    tucks: TuckSet
    cost: Fraction
    reasons: tuple[str, ...]


def lie(word: str) -> Lie:
    """Return the word for how an edge tuck lies, as least margins know it.

    Examples
    --------
    >>> lie("out"), lie("")
    ('out', 'upright')
    """
    return "out" if word == "out" else "in" if word == "in" else "upright"


def spacing_window(spacing: Fraction, edition: Edition) -> Range:
    r"""Return how far the spacing may move from the one asked for.

    The larger of 1/8 in (3 mm) and a tenth: less cannot be found on a ruler, more is another design.

    Parameters
    ----------
    spacing : Fraction
        Fold mark to fold mark as asked for, m [in].
    edition : Edition
        Its ``wish_step`` is the 1/8 in or 3 mm.

    Returns
    -------
    tuple of two Fractions
        Least and most spacing [in].

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> spacing_window(Fraction(1), INCH)
    (Fraction(7, 8), Fraction(9, 8))
    >>> spacing_window(Fraction(5), INCH)
    (Fraction(9, 2), Fraction(11, 2))

    References
    ----------
    Common practice, no source.
    """
    play = max(edition.wish_step, spacing / 10)
    return spacing - play, spacing + play


def spacings_near(spacing: Fraction, edition: Edition) -> tuple[Fraction, ...]:
    """Return the spacings that may stand in for the one asked for: itself and those on the ruler, nearest first.

    Of a very wide spacing only the nearest are tried.

    Parameters
    ----------
    spacing : Fraction
        Fold mark to fold mark as asked for, m [in].
    edition : Edition
        Its ``mark`` is the finest division.

    Returns
    -------
    tuple of Fractions
        Spacings within the window [in].

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> [str(near) for near in spacings_near(Fraction(1), INCH)]
    ['1', '15/16', '17/16', '7/8', '9/8']

    References
    ----------
    Derived from :func:`spacing_window`.
    """
    least, most = spacing_window(spacing, edition)
    reach = MOST_STEPS * edition.mark
    least, most = max(least, spacing - reach), min(most, spacing + reach)
    near = steps_between(least, most, edition.mark)
    others = (step for step in near if step != spacing)
    return (spacing, *sorted(others, key=lambda other: (abs(other - spacing), other)))


def steps_between(least: Fraction, most: Fraction, step: Fraction) -> tuple[Fraction, ...]:
    """Return the whole numbers of a step from a least to a most length, both counted.

    Parameters
    ----------
    least, most : Fraction
        The bounds [in].
    step : Fraction
        The step [in].

    Returns
    -------
    tuple of Fractions
        The multiples that are more than nothing [in].

    Examples
    --------
    >>> steps_between(Fraction(1, 3), Fraction(1), Fraction(1, 4))
    (Fraction(1, 2), Fraction(3, 4), Fraction(1, 1))

    References
    ----------
    Derived in the docstring above.
    """
    first, last = max(round_up(least, step), step), round_down(most, step)
    return tuple(first + place * step for place in range(int((last - first) / step) + 1)) if last >= first else ()


def sewable(depth: Fraction, edition: Edition) -> bool:
    """Return whether a depth can be measured: whether it lies on the finest mark of the room's ruler.

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> sewable(Fraction(5, 16), INCH), sewable(Fraction(1, 3), INCH)
    (True, False)

    References
    ----------
    Common practice, no source.
    """
    return depth > 0 and on_step(depth, edition.mark)

"""One run of tucks, step by step: its first and last depth and pitch come in, every depth and every pitch goes out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from generator.calculation.panel.wish import sewable
from generator.errors import CalculationError
from generator.lengths import Edition, say_length


@dataclass(frozen=True, slots=True)
class RunWish:
    """A run of tucks; lengths in inches.

    ``depths`` holds one depth for all or the first and the last of a graduation. ``pitch`` is kept within the run,
    ``pitch_after`` to the next run (None: the same). ``number`` None leaves it open, in one run at most. With a
    ``last_pitch`` the pitch grows or falls evenly to it. Where tucks are pressed one way the pitch may be told as what
    shows of it: then ``covers`` says on which side of it the tuck stands that lies on it.
    """

    depths: tuple[Fraction, ...]
    pitch: Fraction
    pitch_after: Fraction | None = None
    number: int | None = None
    last_pitch: Fraction | None = None
    covers: Literal["", "left", "right"] = ""

    @property
    def last(self) -> Fraction:
        """The pitch before its last tuck, or what shows of it [in]."""
        return self.pitch if self.last_pitch is None else self.last_pitch

    def apart(self, gap: Fraction, left: Fraction, right: Fraction) -> Fraction:
        r"""Return the pitch between two neighbours: the gap itself, or what shows and the depth that lies on it.

        Examples
        --------
        A quarter shows after 1/4 and after 3/8 in, all pressed to the right: 1/2 and 5/8 in.

        >>> quarter, deeper = Fraction(1, 4), Fraction(3, 8)
        >>> run = RunWish((quarter,), quarter, covers="left")
        >>> run.apart(quarter, quarter, deeper), run.apart(quarter, deeper, quarter)
        (Fraction(1, 2), Fraction(5, 8))
        """
        return gap + {"": Fraction(0), "left": left, "right": right}[self.covers]


def graduated_depths(depths: Sequence[Fraction], number: int, edition: Edition) -> tuple[Fraction, ...]:
    r"""Return the depth of every tuck of a run.

    A graduation goes from the first to the last depth in equal steps: :math:`d_k = d_1 + (k - 1)(d_n - d_1)/(n - 1)`.

    Parameters
    ----------
    depths : sequence of Fractions
        One depth, or the first and the last [in].
    number : int
        Tucks in the run, n [-].
    edition : Edition
        Its ``fine`` is the step that can be set on a guide.

    Returns
    -------
    tuple of Fractions
        Depths [in].

    Raises
    ------
    CalculationError
        If a depth cannot be set on a guide; the message names a number of tucks whose depths can.

    Examples
    --------
    From 1/2 to 1 in in five tucks: steps of 1/8 in.

    >>> from generator.lengths import INCH
    >>> [str(depth) for depth in graduated_depths((Fraction(1, 2), Fraction(1)), 5, INCH)]
    ['1/2', '5/8', '3/4', '7/8', '1']
    >>> graduated_depths((Fraction(1, 2),), 2, INCH)
    (Fraction(1, 2), Fraction(1, 2))

    References
    ----------
    Derived in the docstring above; steps that can be set: common practice, no source.
    """
    if len(depths) not in (1, 2):
        raise CalculationError("a run has one depth, or a first and a last one")
    first, last = depths[0], depths[-1]
    if first != last and number < 2:
        raise CalculationError("a graduation needs at least two tucks; give the run a number of 2 or more")
    step = (last - first) / (number - 1) if number > 1 else Fraction(0)
    every = tuple(first + place * step for place in range(number))
    if all(sewable(depth, edition) for depth in every):
        return every
    if sewable(first, edition) and sewable(last, edition):
        fits = _fitting(last - first, number, 1, edition)
        raise CalculationError(
            f"{number} tucks from {say_length(first, edition)} to {say_length(last, edition)} would have depths "
            f"between two marks of the room's ruler; {fits} tucks go up in steps of "
            f"{say_length(abs(last - first) / (fits - 1), edition)}"
        )
    raise CalculationError(
        f"the depths of a run must be whole steps of {say_length(edition.mark, edition)}, more than nothing"
    )


def graduated_pitches(run: RunWish, number: int, edition: Edition) -> tuple[Fraction, ...]:
    r"""Return the pitch after every tuck of a run but its last.

    It goes from the first to the last in equal steps: :math:`p_k = p_1 + (k - 1)(p_{n-1} - p_1)/(n - 2)`, so all of
    them come to :math:`(n - 1)(p_1 + p_{n-1})/2`.

    Parameters
    ----------
    run : RunWish
        Its pitches.
    number : int
        Tucks in the run, n [-].
    edition : Edition
        Its ``mark`` is the finest step of a ruler, on which every pitch lies.

    Returns
    -------
    tuple of Fractions
        Pitches [in], one fewer than tucks.

    Raises
    ------
    CalculationError
        If a pitch lies between two marks of the ruler; the message names a number of tucks whose pitches do not.

    Examples
    --------
    Five tucks from 1 to 1 3/4 in apart: steps of 1/4 in, 5 1/2 in together.

    >>> from generator.lengths import INCH
    >>> run = RunWish((Fraction(1, 4),), Fraction(1), last_pitch=Fraction(7, 4))
    >>> [str(pitch) for pitch in graduated_pitches(run, 5, INCH)]
    ['1', '5/4', '3/2', '7/4']

    References
    ----------
    Derived in the docstring above; steps that a ruler shows: common practice, no source.
    """
    first, last = run.pitch, run.last
    if first == last:
        return (first,) * (number - 1)
    if number < 3:
        raise CalculationError("a pitch that grows needs at least three tucks; give the run a number of 3 or more")
    step = (last - first) / (number - 2)
    if step % edition.mark or first % edition.mark:
        fits = _fitting(last - first, number, 2, edition)
        raise CalculationError(
            f"the pitches of {number} tucks from {say_length(first, edition)} to {say_length(last, edition)} would lie "
            f"between two marks of the room's ruler; those of {fits} tucks go up in steps of "
            f"{say_length(abs(last - first) / (fits - 2), edition)}"
        )
    return tuple(first + place * step for place in range(number - 1))


def _fitting(span: Fraction, number: int, fewer: int, edition: Edition) -> int:
    """Return the number of tucks nearest to one whose steps, so many fewer than tucks, share a span on the ruler."""
    around = (near for away in range(1, number) for near in (number + away, number - away) if near > fewer)
    return next((near for near in around if not span / (near - fewer) % edition.mark), fewer + 1)

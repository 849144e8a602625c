"""Trimming to length after the rows: rows and a length come in, how long to leave the panel and what goes go out."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.worked import RowSet
from generator.lengths import Edition, say_length


@dataclass(frozen=True, slots=True)
class Trimming:
    """Trimming a panel after its rows are sewn: the length to leave, and what falls off at either end [in]."""

    leave: Fraction
    least: Fraction
    most: Fraction


def trimming(rows: RowSet, leave: Fraction) -> Trimming:
    r"""Return how a panel is trimmed after its rows, the same at the top and at the bottom.

    Of the extra E the draw-in D takes its part; half of the rest goes at either end: :math:`(E - D) / 2`.

    Parameters
    ----------
    rows : RowSet
        The rows as chosen.
    leave : Fraction
        Finished length and both allowances [in].

    Returns
    -------
    Trimming
        Length to leave, and the least and the most to cut off at either end [in].

    References
    ----------
    Derived in the docstring above.
    """
    least = max(Fraction(0), rows.extra - rows.draw_in_most) / 2
    return Trimming(leave, least, (rows.extra - rows.draw_in_least) / 2)


def trim_words(trimmed: Trimming, edition: Edition) -> str:
    """Return a sentence that tells how to trim.

    Parameters
    ----------
    trimmed : Trimming
        The trimming.
    edition : Edition
        The unit of the sentence.

    Returns
    -------
    str
        The sentence; empty where nothing is trimmed.

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> trim_words(Trimming(Fraction(17), Fraction(1, 16), Fraction(5, 8)), INCH)
    'Trim the panel to 17 in, the same at the top and at the bottom: between 1/16 in and 5/8 in at either end.'

    References
    ----------
    Common practice, no source.
    """
    if trimmed.most == 0:
        return ""
    least, most = say_length(trimmed.least, edition), say_length(trimmed.most, edition)
    either = most if least == most else f"between {least} and {most}" if trimmed.least else f"up to {most}"
    return (
        f"Trim the panel to {say_length(trimmed.leave, edition)}, the same at the top and at the bottom: "
        f"{either} at either end."
    )

"""Trimming to length after the rows: rows and a length come in, how long to leave the panel and what goes go out."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.worked import RowSet
from generator.lengths import Edition, round_down, round_up, say_length, say_range


@dataclass(frozen=True, slots=True)
class Trimming:
    """Trimming a panel after its rows are sewn: the length to leave, and what falls off at either end [in]."""

    leave: Fraction
    least: Fraction
    most: Fraction


def trimming(rows: RowSet, leave: Fraction, edition: Edition) -> Trimming:
    r"""Return how a panel is trimmed after its rows, the same at the top and at the bottom.

    Of the extra E the draw-in D takes its part; half of the rest goes at either end: :math:`(E - D) / 2`.

    Parameters
    ----------
    rows : RowSet
        The rows as chosen.
    leave : Fraction
        Finished length and both allowances [in].
    edition : Edition
        Its ``mark``.

    Returns
    -------
    Trimming
        Length to leave, and the least and the most to cut off at either end, rounded outward to the ruler [in].

    References
    ----------
    Derived in the docstring above.
    """
    least = max(Fraction(0), rows.extra - rows.draw_in_most) / 2
    most = (rows.extra - rows.draw_in_least) / 2
    return Trimming(leave, round_down(least, edition.mark), round_up(most, edition.mark))


def trim_words(trimmed: Trimming, edition: Edition) -> str:
    """Return a sentence that tells how to trim.

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> trim_words(Trimming(Fraction(17), Fraction(1, 16), Fraction(5, 8)), INCH)
    'Trim the panel to 17 in, the same at the top and at the bottom: between 1/16 and 5/8 in at either end.'

    References
    ----------
    Common practice, no source.
    """
    if trimmed.most == 0:
        return ""
    either = f"up to {say_length(trimmed.most, edition)}"
    if trimmed.least:
        between = "between " if trimmed.least < trimmed.most else ""
        either = f"{between}{say_range(trimmed.least, trimmed.most, edition, 'and')}"
    return (
        f"Trim the panel to {say_length(trimmed.leave, edition)}, the same at the top and at the bottom: "
        f"{either} at either end."
    )

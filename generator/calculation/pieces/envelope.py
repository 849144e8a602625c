"""The envelope back of a cushion: the finished cover and the overlap come in, its two parts go out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.pieces.plain_pieces import cut_size
from generator.calculation.refused import more_than_nothing
from generator.calculation.worked import End
from generator.errors import CalculationError
from generator.lengths import CENTIMETRE, Edition, say_length

LEAST_OVERLAP: Mapping[str, Fraction] = {"inch": Fraction(3), "metric": 8 * CENTIMETRE}
"""Below this an envelope gapes [in]; common practice, no source."""


@dataclass(frozen=True, slots=True)
class EnvelopePart:
    """One of the two parts of an envelope back: sizes [in] and the finish of its four edges.

    The edge at the opening keeps a hem; the three others are those of the whole back.
    """

    name: str
    finished_across: Fraction
    cut_across: Fraction
    cut_along: Fraction
    ends: Mapping[str, End]


def worked_envelope_back(
    finished_across: Fraction, finished_along: Fraction, overlap: Fraction, hem: End, ends: Mapping[str, End]
) -> tuple[EnvelopePart, EnvelopePart]:
    """Return the two parts of an envelope back, the left one first.

    Together they cover the width once and the overlap twice, so each finishes at (W + o) / 2. The opening runs from top
    to bottom: each part has the outer edge of the whole back on one side and a hem on the other. With a seam a outside
    and a hem turned twice by w the cut is (W + o) / 2 + a + 2 w.

    Parameters
    ----------
    finished_across, finished_along : Fraction
        Finished size of the whole back, W across [in].
    overlap : Fraction
        How far the parts lie one over the other, o [in].
    hem : End
        Finish of the two edges at the opening; its widths [in].
    ends : Mapping of str to End
        Finish of the whole back's ``left``, ``right``, ``top`` and ``bottom``.

    Returns
    -------
    tuple of EnvelopePart
        The left and the right part [in].

    Raises
    ------
    CalculationError
        If the overlap is not less than the width: then one part alone would cover the back.

    Examples
    --------
    A cover of 16 in, overlap 4, seams 1/2, hem twice 1 in: (16 + 4) / 2 + 1/2 + 2 = 12 1/2 wide, 16 + 1 = 17 long.

    >>> seam, hem = End("seam", Fraction(1, 2)), End("hem", Fraction(1), Fraction(1))
    >>> edges = dict.fromkeys(("left", "right", "top", "bottom"), seam)
    >>> left, right = worked_envelope_back(Fraction(16), Fraction(16), Fraction(4), hem, edges)
    >>> left.finished_across, left.cut_across, right.cut_along
    (Fraction(10, 1), Fraction(25, 2), Fraction(17, 1))
    >>> left.ends["right"] == hem, left.ends["left"] == seam
    (True, True)

    References
    ----------
    Derived in the docstring above.
    """
    if more_than_nothing(overlap, "the overlap of an envelope back") >= finished_across:
        raise CalculationError(
            "the overlap of an envelope back is as wide as the cover; make it less, a quarter will do"
        )
    each = (finished_across + overlap) / 2
    along = cut_size(finished_along, ends["top"], ends["bottom"])
    left_ends = {**ends, "right": hem}
    right_ends = {**ends, "left": hem}
    return (
        EnvelopePart("left", each, cut_size(each, ends["left"], hem), along, left_ends),
        EnvelopePart("right", each, cut_size(each, hem, ends["right"]), along, right_ends),
    )


def gaping_overlap(overlap: Fraction, edition: Edition) -> str:
    """Return a warning where an envelope back would gape, else an empty text.

    A full pad pulls the two parts aside; a small cushion needs as much overlap as a middling one.

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> gaping_overlap(Fraction(4), INCH)
    ''
    >>> gaping_overlap(Fraction(2), INCH)
    'an overlap of 2 in may gape when the cover is filled; 3 in or more is safer'

    References
    ----------
    Common practice, no source.
    """
    least = LEAST_OVERLAP[edition.name]
    if overlap >= least:
        return ""
    found, wanted = say_length(overlap, edition), say_length(least, edition)
    return f"an overlap of {found} may gape when the cover is filled; {wanted} or more is safer"

"""Tucks turned to each other: pitch and depths come in, the gap between their folds and its words go out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from generator.calculation.worked import Panel, TuckSet, Turn
from generator.errors import CalculationError
from generator.lengths import Edition, say_length


def facing_gap(pitch: Fraction, left_depth: Fraction, right_depth: Fraction) -> Fraction:
    r"""Return the gap between the folds of two tucks that are turned to each other.

    Each lies over the space between their stitchings by its whole depth: :math:`g = p - d_i - d_j`.

    Parameters
    ----------
    pitch : Fraction
        From stitching to stitching on the finished panel, p [in].
    left_depth, right_depth : Fraction
        Depths of the two tucks, d_i and d_j [in].

    Returns
    -------
    Fraction
        The gap, g [in]: more than nothing a gap, nothing where the folds meet, less than nothing an overlap.

    Raises
    ------
    CalculationError
        If one tuck is deeper than the pitch: it would lie over the stitching of the other, which stands in its way.

    Examples
    --------
    Tucks of 1/4 in marked 1 in apart have a pitch of 1/2 in: their folds just meet. Of 3/8 in, they overlap by 1/4 in.

    >>> facing_gap(Fraction(1, 2), Fraction(1, 4), Fraction(1, 4))
    Fraction(0, 1)
    >>> facing_gap(Fraction(1, 2), Fraction(3, 8), Fraction(3, 8))
    Fraction(-1, 4)

    References
    ----------
    Derived in the docstring above.
    """
    if pitch < max(left_depth, right_depth):
        raise CalculationError(
            "two tucks that are turned to each other have less room between them than one of them is deep; "
            "give them a wider spacing, or make them shallower"
        )
    return pitch - left_depth - right_depth


def facing_words(gap: Fraction, edition: Edition) -> str:
    """Return in words what the folds of a facing pair do.

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> facing_words(Fraction(0), INCH)
    'the folds meet'
    >>> facing_words(Fraction(1, 4), INCH)
    'the folds leave a gap of 1/4 in'
    """
    if gap == 0:
        return "the folds meet"
    if gap > 0:
        return f"the folds leave a gap of {say_length(gap, edition)}"
    return f"the folds overlap by {say_length(-gap, edition)}: five layers, and the tuck turned last lies on top"


def facing_gaps(tucks: TuckSet, rows: Sequence[Sequence[Turn]]) -> dict[tuple[int, int], Fraction]:
    """Return the gap between the folds of every pair that faces in some row.

    Parameters
    ----------
    tucks : TuckSet
        The sewn tucks.
    rows : Sequence[Sequence[Turn]]
        Turns of all tucks at all rows; a row that holds none may be empty.

    Returns
    -------
    dict of (int, int) to Fraction
        By the numbers of the two tucks, from the left, their gap [in]; empty where no pair faces.

    Raises
    ------
    CalculationError
        If a facing pair has no room; names the two tucks and their lengths.

    Notes
    -----
    On a ring the last tuck and the first are neighbours too.

    References
    ----------
    Derived in :func:`facing_gap`.
    """
    pitches = list(tucks.pitches)
    if tucks.ring and tucks.count > 1:
        pitches.append(tucks.finished - tucks.stitching[-1] + tucks.stitching[0])
    facing = {
        place
        for row in set(map(tuple, rows)) - {()}
        for place in range(len(pitches))
        if row[place] is Turn.RIGHT and row[(place + 1) % tucks.count] is Turn.LEFT
    }
    return {(place + 1, (place + 1) % tucks.count + 1): _gap(tucks, pitches[place], place) for place in sorted(facing)}


def panel_gaps(panel: Panel) -> dict[tuple[int, int], Fraction]:
    """Return the gap of every pair of tucks that faces in some row of a panel.

    Parameters
    ----------
    panel : Panel
        The worked panel.

    Returns
    -------
    dict of (int, int) to Fraction
        As of :func:`facing_gaps`; empty without rows.

    References
    ----------
    Derived in :func:`facing_gap`.
    """
    return facing_gaps(panel.across, [row.turns for row in panel.rows.rows]) if panel.rows else {}


def even_facing(gaps: Mapping[tuple[int, int], Fraction], edition: Edition) -> bool:
    """Return whether the gaps of all facing pairs look alike: marks are rounded, so one mark of the ruler may differ.

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> fold = Fraction(1, 4)
    >>> even_facing({(1, 2): fold, (3, 4): fold + INCH.mark}, INCH), even_facing({}, INCH)
    (True, False)

    References
    ----------
    Common practice, no source.
    """
    return bool(gaps) and max(gaps.values()) - min(gaps.values()) <= edition.mark


def _gap(tucks: TuckSet, pitch: Fraction, place: int) -> Fraction:
    partner = (place + 1) % tucks.count
    try:
        return facing_gap(pitch, tucks.depths[place], tucks.depths[partner])
    except CalculationError as refusal:
        raise CalculationError(f"tucks {place + 1} and {partner + 1}: {refusal}") from refusal

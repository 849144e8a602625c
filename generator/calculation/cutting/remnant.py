"""What a given piece of cloth is good for: pieces and a remnant come in, a layout on it or a width goes out."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from generator.calculation.cutting.layout import cutting_layout
from generator.calculation.cutting.layout_pieces import narrowest_usable, pieces_by_kind
from generator.calculation.worked import CutItem, Layout
from generator.errors import CalculationError
from generator.lengths import INCH, Edition, say_length


def fits_remnant(items: Sequence[CutItem], width: Fraction, length: Fraction) -> Layout | None:
    """Return how pieces can be cut from a remnant, or None where they cannot.

    Parameters
    ----------
    items : sequence of CutItem
        The pieces to cut [in].
    width, length : Fraction
        The remnant as it can be used: across and along its selvage [in].

    Returns
    -------
    Layout or None
        The layout; None where the pieces need a greater width or length. Beyond 20 pieces None says that no layout
        was found.

    Raises
    ------
    CalculationError
        If a size is not positive.

    Notes
    -----
    The remnant keeps its grain: it is never laid the other way round.

    Examples
    --------
    Two of 10 x 12 lie beside each other on 20 in, so 12 in of cloth will do and 11 in will not.

    >>> pocket = CutItem("pocket", "Pocket", Fraction(10), Fraction(12), 2)
    >>> fits_remnant([pocket], Fraction(20), Fraction(12)).length
    Fraction(12, 1)
    >>> fits_remnant([pocket], Fraction(20), Fraction(11)) is None
    True
    """
    if width > 0 and any(item.across > width and not (item.turnable and item.along <= width) for item in items):
        return None
    layout = cutting_layout(items, width)
    return layout if layout.length <= length else None


def narrowest_width(items: Sequence[CutItem], width: Fraction, length: Fraction, edition: Edition = INCH) -> Fraction:
    """Return the narrowest usable width on which pieces can be cut from a length of cloth.

    Parameters
    ----------
    items : sequence of CutItem
        The pieces to cut [in].
    width : Fraction
        A usable width that does [in].
    length : Fraction
        The length of cloth [in].
    edition : Edition
        The unit in which a fault is told.

    Returns
    -------
    Fraction
        The width [in]; 0 where nothing is to be cut.

    Raises
    ------
    CalculationError
        If the pieces cannot be cut from the length even at ``width``.

    Notes
    -----
    Exact up to 20 pieces; beyond, a width that does, perhaps not the narrowest.

    Examples
    --------
    Two of 10 x 12: from 12 in of length they must lie side by side, from 24 in one below the other.

    >>> pocket = CutItem("pocket", "Pocket", Fraction(10), Fraction(12), 2)
    >>> narrowest_width([pocket], Fraction(44), Fraction(12)), narrowest_width([pocket], Fraction(44), Fraction(24))
    (Fraction(20, 1), Fraction(10, 1))

    References
    ----------
    Derived in the modules of the layout.
    """
    layout = cutting_layout(items, width, edition)
    if layout.length > length:
        raise CalculationError(
            f"the pieces need {say_length(layout.length, edition)} of cloth {say_length(width, edition)} wide, "
            f"but only {say_length(length, edition)} is there; take a longer piece or fewer pieces"
        )
    pieces = pieces_by_kind(items, width, edition)
    if not pieces.kinds or length == layout.length:
        return layout.narrowest
    return narrowest_usable(pieces, layout.narrowest // pieces.unit, length // pieces.unit) * pieces.unit

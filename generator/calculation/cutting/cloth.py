"""Cloth as it is bought: widths, lengths and shrinkage come in, what to buy and how it is written go out."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from generator.errors import CalculationError
from generator.lengths import INCH, MILLIMETRE, UNITS, Edition, round_up, write_length, write_number


def washed_width(width: Fraction, shrinkage_across: Fraction) -> Fraction:
    r"""Return the usable width that is left when the cloth has been washed.

    The cloth loses a share of its own width, so what is left is :math:`W' = W (1 - s)`.

    Parameters
    ----------
    width : Fraction
        Usable width as sold, W [in].
    shrinkage_across : Fraction
        Share of the width lost in washing, s [-]; 3 % is 3/100.

    Returns
    -------
    Fraction
        Usable width after washing [in].

    Raises
    ------
    CalculationError
        If the shrinkage is less than 0, or 1 or more.

    Examples
    --------
    45 in that lose 2 %: 45 x 98/100 = 44 1/10.

    >>> washed_width(Fraction(45), Fraction(2, 100))
    Fraction(441, 10)

    References
    ----------
    Derived above.
    """
    return width * _left(shrinkage_across)


@dataclass(frozen=True, slots=True)
class Buying:
    """How cloth is bought: the shop's ``step``, the ``shrinkage`` along, what is kept to ``straighten`` it [in]."""

    step: Fraction
    shrinkage: Fraction = Fraction(0)
    straighten: Fraction = Fraction(0)

    def bought(self, length: Fraction) -> Fraction:
        """Return what a layout of a length needs from the shop [in]."""
        return length_to_buy(length, self.shrinkage, self.step, self.straighten)

    def washed(self, length: Fraction) -> Fraction:
        """Return what washing leaves of a length [in]."""
        return length * _left(self.shrinkage)

    def enough(self, bought: Fraction) -> Fraction:
        """Return the longest layout for which a length from the shop is enough [in]; less than 0 if it is for none."""
        return self.washed(bought) - self.straighten


def length_to_buy(
    layout_length: Fraction, shrinkage_along: Fraction, step: Fraction, straighten: Fraction = Fraction(0)
) -> Fraction:
    r"""Return the length to ask for in the shop, so that enough is left after washing.

    What is bought shrinks by a share of *itself*, so the length needed is divided by what is left of one:
    :math:`B \ge (L + A) / (1 - s)`, up to the next step that the shop cuts. Adding s L to L would be too little. An end
    that is cut off the grain by e costs e, and both ends cut alike cost it once: A is kept for that.

    Parameters
    ----------
    layout_length : Fraction
        Length of the cutting layout on washed cloth, L [in].
    shrinkage_along : Fraction
        Share of the length lost in washing, s [-].
    step : Fraction
        The step in which the shop cuts [in].
    straighten : Fraction
        What is kept to straighten the ends, A [in]; 0 where the shop tears its cloth.

    Returns
    -------
    Fraction
        Length to buy, B [in].

    Raises
    ------
    CalculationError
        If the shrinkage is less than 0, or 1 or more.

    Examples
    --------
    97 in from cloth that loses 3 %: 97 / (97/100) = 100 in, up to the next 4 1/2 in: 103 1/2 in, 2 7/8 yd.

    >>> eighth = Fraction(9, 2)
    >>> length_to_buy(Fraction(97), Fraction(3, 100), eighth)
    Fraction(207, 2)

    39 1/4 in with 1 in to straighten: 40 1/4 / (97/100) is a little less than 41 1/2 in, so 45 in. Without the inch 40
    1/2 in would do, and of 40 1/2 in just 39.285 in are left.

    >>> length_to_buy(Fraction(157, 4), Fraction(3, 100), eighth, Fraction(1))
    Fraction(45, 1)

    Without either a length on the step stays as it is:

    >>> length_to_buy(Fraction(36), Fraction(0), eighth)
    Fraction(36, 1)

    References
    ----------
    Derived above. That ends are straightened along a thread before anything is measured: *Hand Sewing Lessons*,
    "Cloth"; how much to keep for it is common practice, no source. Cloth is sold by 1/8 or 1/4 yd: K. F. Ball & M. E.
    West, *Household Arithmetic*, Lippincott 1920, p. 100.
    """
    return round_up((layout_length + straighten) / _left(shrinkage_along), step)


def _left(shrinkage: Fraction) -> Fraction:
    """Return the share that washing leaves."""
    if not 0 <= shrinkage < 1:
        raise CalculationError(
            f"a shrinkage of {write_number(100 * shrinkage)} % cannot be; give what washing takes, 0 % to 99 %"
        )
    return 1 - shrinkage


def width_to_ask_for(narrowest: Fraction, shrinkage_across: Fraction, edition: Edition) -> Fraction:
    r"""Return the usable width to ask for in the shop, so that a width is left after washing.

    As with the length, :math:`W \ge n / (1 - s)`, up to the next 1/4 in or 0.5 cm, as widths are told.

    Parameters
    ----------
    narrowest : Fraction
        The narrowest usable width that does, n [in].
    shrinkage_across : Fraction
        Share of the width lost in washing, s [-].
    edition : Edition
        Gives the unit in which the width is told.

    Returns
    -------
    Fraction
        Usable width as sold [in].

    Raises
    ------
    CalculationError
        If the shrinkage is less than 0, or 1 or more.

    Examples
    --------
    40 in are left of cloth that loses 2 % if it has 40 / 0.98 = 40.82 in: ask for 41 in.

    >>> width_to_ask_for(Fraction(40), Fraction(2, 100), INCH)
    Fraction(41, 1)

    References
    ----------
    Derived above.
    """
    step = Fraction(1, 4) if edition.unit == "in" else 5 * MILLIMETRE
    return round_up(narrowest / _left(shrinkage_across), step)


def buy_text(length: Fraction, edition: Edition) -> str:
    """Return a length as it is asked for in a shop.

    Parameters
    ----------
    length : Fraction
        Length to buy [in].
    edition : Edition
        Yards as mixed numbers for inches, metres as decimals for centimetres.

    Returns
    -------
    str
        For example ``1 3/8 yd`` or ``1.3 m``.

    Examples
    --------
    49 1/2 in are 49 1/2 / 36 = 1 3/8 yd; 20 in are exactly 50.8 cm.

    >>> buy_text(Fraction(99, 2), INCH)
    '1 3/8 yd'
    >>> from generator.lengths import METRIC
    >>> buy_text(Fraction(20), METRIC)
    '0.508 m'
    """
    number = length / UNITS[edition.buy_unit]
    # A number of yards is written like a number of inches: whole and a common fraction.
    text = write_length(number, INCH) if edition.unit == "in" else write_number(number)
    return f"{text} {edition.buy_unit}"

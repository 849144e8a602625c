"""Cloth as it is bought: widths, lengths and shrinkage come in, what to buy and how it is written go out."""

from __future__ import annotations

from fractions import Fraction

from generator.errors import CalculationError
from generator.lengths import INCH, UNITS, Edition, round_up, write_length, write_number


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


def length_to_buy(
    layout_length: Fraction, shrinkage_along: Fraction, edition: Edition, step: Fraction | None = None
) -> Fraction:
    r"""Return the length to ask for in the shop, so that enough is left after washing.

    What is bought shrinks by a share of *itself*, so the length needed is divided by what is left of one:
    :math:`B \ge L / (1 - s)`, up to the next step that the shop cuts. Adding s L to L would be too little.

    Parameters
    ----------
    layout_length : Fraction
        Length of the cutting layout on washed cloth, L [in].
    shrinkage_along : Fraction
        Share of the length lost in washing, s [-].
    edition : Edition
        Gives the shop's step: 1/8 yd or 10 cm.
    step : Fraction, optional
        Another step [in].

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

    >>> length_to_buy(Fraction(97), Fraction(3, 100), INCH)
    Fraction(207, 2)

    Without shrinkage a length on the step stays as it is:

    >>> length_to_buy(Fraction(36), Fraction(0), INCH)
    Fraction(36, 1)

    References
    ----------
    Derived above. Cloth is sold by 1/8 or 1/4 yd: K. F. Ball & M. E. West, *Household Arithmetic*, Lippincott 1920,
    p. 100.
    """
    return round_up(layout_length / _left(shrinkage_along), edition.buy_step if step is None else step)


def _left(shrinkage: Fraction) -> Fraction:
    """Return the share that washing leaves."""
    if not 0 <= shrinkage < 1:
        raise CalculationError(
            f"a shrinkage of {write_number(100 * shrinkage)} % cannot be; give what washing takes, 0 % to 99 %"
        )
    return 1 - shrinkage


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

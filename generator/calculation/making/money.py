"""The room's money: prices come in as text or whole minor units, exact sums and their texts go out."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.refused import not_negative
from generator.errors import CalculationError

# A mark may hold points ("Fr."), but none that a digit follows: "£.50" must never be read as fifty pounds.
_MARK = r"[^\d\s.,-]+(?:\.(?!\d)[^\d\s.,-]*)*"
_AMOUNT = re.compile(
    rf"\s*(?P<before>{_MARK})?(?P<gap_before>\s?)(?P<whole>\d{{1,9}})(?:\.(?P<part>\d{{1,3}}))?"
    rf"(?P<gap_after>\s?)(?P<after>{_MARK})?\s*",
    re.ASCII,
)


@dataclass(frozen=True, slots=True)
class Currency:
    """How the room writes its money: a mark, before or after the number, with or without a space, and its decimals."""

    mark: str
    before: bool
    space: bool
    places: int


@dataclass(frozen=True, slots=True)
class Money:
    """An amount in whole minor units (pence, cents) of the room's money."""

    minor: int
    currency: Currency

    @property
    def number(self) -> str:
        """The amount without its sign and its mark, with the decimals of the room's money."""
        whole, part = divmod(abs(self.minor), 10**self.currency.places)
        return f"{whole}.{part:0{self.currency.places}d}" if self.currency.places else str(whole)

    def __str__(self) -> str:
        gap = " " if self.currency.space else ""
        sign = "-" if self.minor < 0 else ""
        if self.currency.before:
            return f"{sign}{self.currency.mark}{gap}{self.number}"
        return f"{sign}{self.number}{gap}{self.currency.mark}"


def read_money(text: str, places: int = 2) -> Money:
    """Return the amount that a price names, and how the room writes its money.

    The mark is whatever stands before or after the number. The room's money has the same number of decimals in every
    price, written or not: 8 and 8.00 are the same.

    Parameters
    ----------
    text : str
        A number with a point before its decimals and a mark on one side of it.
    places : int
        Decimals of the room's money [-]: 2 where a hundred coins make one, 0 where there is no smaller coin.

    Returns
    -------
    Money
        The amount, in minor units, with its currency.

    Raises
    ------
    CalculationError
        If the text is anything else, or has more decimals than the money.

    Examples
    --------
    Four and a half in hundredths is 450; where there is no smaller coin 120 is 120.

    >>> read_money("£4.50").minor, str(read_money("4.5 kr")), read_money("¥120", 0).minor
    (450, '4.50 kr', 120)

    References
    ----------
    Derived in the docstring above.
    """
    found = _AMOUNT.fullmatch(text)
    if found is None or bool(found["before"]) == bool(found["after"]):
        raise CalculationError(
            f"'{text.strip()}' is not a price; write a number and one mark, for example '£4.50' or '4.50 kr'"
        )
    part = found["part"] or ""
    if len(part) > places:
        raise CalculationError(f"'{text.strip()}' is finer than the room's money, which has {places} decimals")
    before = bool(found["before"])
    gap = found["gap_before"] if before else found["gap_after"]
    currency = Currency(found["before"] or found["after"], before, bool(gap), places)
    return Money(int(found["whole"] + part.ljust(places, "0")), currency)


def priced(price: Money, amount: Fraction) -> Money:
    """Return what an amount costs at the price of one, to the nearest minor unit.

    A line of a bill is rounded once, when it is written; exactly half a unit is rounded up, as a till does.

    Parameters
    ----------
    price : Money
        Price of one unit.
    amount : Fraction
        Number of units [-].

    Returns
    -------
    Money
        Cost, in minor units.

    Examples
    --------
    1 3/8 yd at 8.50 a yard is 11.6875, so 11.69.

    >>> str(priced(read_money("£8.50"), Fraction(11, 8)))
    '£11.69'
    >>> str(priced(read_money("£0.01"), Fraction(1, 2)))
    '£0.01'

    References
    ----------
    Common practice, no source.
    """
    exact = price.minor * not_negative(amount, "the amount")
    return Money(math.floor(exact + Fraction(1, 2)), price.currency)


def total(lines: Iterable[Money]) -> Money | None:
    """Return the sum of the lines of a bill.

    The lines are already rounded, so a person who adds them up finds the same sum.

    Parameters
    ----------
    lines : iterable of Money
        Amounts in one currency.

    Returns
    -------
    Money or None
        Their sum, in minor units, written as the first line is; None where there is no line.

    Raises
    ------
    CalculationError
        If the lines are in different currencies.

    Examples
    --------
    >>> str(total([read_money("£11.69"), read_money("£2")]))
    '£13.69'
    >>> total([]) is None
    True

    References
    ----------
    Derived in the docstring above.
    """
    amounts = list(lines)
    marks = sorted({amount.currency.mark for amount in amounts})
    if len(marks) > 1:
        raise CalculationError(f"prices in {' and '.join(marks)} cannot be added; give all prices in one currency")
    if not amounts:
        return None
    if len({amount.currency.places for amount in amounts}) > 1:
        raise CalculationError("prices with different numbers of decimals cannot be added; read them all alike")
    return Money(sum(amount.minor for amount in amounts), amounts[0].currency)

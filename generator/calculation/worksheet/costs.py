"""What a kit or a class costs: things to buy and the room's prices come in, a bill goes out.

A price belongs to a thing by its name: that of a cloth, 'thread', a kind of closure, or what stands before the first
comma of a supply's item. A line of the bill is rounded once, and the lines add up to the sum.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.making.money import Currency, Money, priced, read_money, total
from generator.calculation.worked_project import ClosureWork, ClothUse, SupplyLine
from generator.calculation.worked_thread import ThreadUse
from generator.calculation.worksheet.scope import Scope
from generator.definitions.room_file import Price
from generator.errors import CalculationError

_PLAIN = re.compile(r"\d{1,9}(?:\.\d{1,3})?", re.ASCII)
_LEAST_PLACES = 2


@dataclass(frozen=True, slots=True)
class Purchase:
    """One thing to buy: how many, and their length in all where it has one [in]; ``amount`` says it in words.

    ``cloth`` is sold by length only.
    """

    name: str
    amount: str
    number: Fraction
    length: Fraction = Fraction(0)
    cloth: bool = False


@dataclass(frozen=True, slots=True)
class BillLine:
    """A thing with its amount and what it costs."""

    item: str
    amount: str
    cost: Money


@dataclass(frozen=True, slots=True)
class Bill:
    """What can be priced and its sum; what has no price, by its first words; prices that cannot be used, and why."""

    lines: tuple[BillLine, ...] = ()
    whole: Money | None = None
    unpriced: tuple[str, ...] = ()
    faults: tuple[str, ...] = ()

    def __str__(self) -> str:
        """Return the bill as one running text, empty where nothing has a price."""
        if self.whole is None:
            return ""
        lines = [f"{_within(line.item)} ({line.amount}) {line.cost}" for line in self.lines]
        missing = f"; without {', '.join(map(_within, self.unpriced))}" if self.unpriced else ""
        return f"{self.whole}: {', '.join(lines)}{missing}"


def _within(item: str) -> str:
    """What a list calls a thing, as it stands in the middle of a sentence; a word of capitals or figures stays."""
    return f"{item[:1].lower()}{item[1:]}" if item[1:2].islower() else item


def wanted_things(
    cloths: Iterable[ClothUse], supplies: Iterable[SupplyLine], closures: Iterable[ClosureWork], thread: ThreadUse
) -> tuple[Purchase, ...]:
    """Return everything of a sheet or a class that is bought, in the order of a shopping list."""
    spools = f"{thread.spools} spool{'' if thread.spools == 1 else 's'}"
    return (
        *(Purchase(use.name, use.buy_text, Fraction(1), use.buy, cloth=True) for use in cloths),
        *([Purchase("thread", spools, Fraction(thread.spools), thread.length)] if thread.spools else []),
        *(
            Purchase(one.kind, str(one.number), Fraction(one.number), one.number * one.length)
            for one in closures
            if one.kind not in ("ties", "loops")
        ),
        *(Purchase(line.item, line.amount, line.number, line.number * line.length) for line in supplies),
    )


def names_thing(name: str, item: str) -> bool:
    """Return whether a short name means an item: the words before the item's first comma, singular or plural.

    Examples
    --------
    >>> names_thing("button", "Buttons, 2 cm across"), names_thing("button", "Button to cover, for the ends")
    (True, False)
    """
    return _own_name(name) == _own_name(item)


def _own_name(item: str) -> list[str]:
    """What a thing is called, word by word in the singular: what follows the first comma describes it."""
    return [word.removesuffix("s") for word in item.partition(",")[0].casefold().split()]


def bill(wanted: Sequence[Purchase], prices: Mapping[str, Price], currency: str = "") -> Bill:
    """Return what things cost at the room's prices; a room without prices gives an empty bill.

    ``currency`` is the mark of the room's money, for prices that bear none.
    """
    if not prices:
        return Bill()
    places = _places(prices)
    lines, unpriced, faults = [], [], []
    for thing in wanted:
        name = _name_of_price(thing, prices)
        if name is None:
            unpriced.append(thing.name.partition(",")[0])
            continue
        try:
            lines.append(BillLine(thing.name, thing.amount, _cost(thing, name, prices[name], (currency, places))))
        except CalculationError as fault:
            faults.append(str(fault))
    try:
        whole = total(line.cost for line in lines)
    except CalculationError as fault:
        return Bill(unpriced=tuple(dict.fromkeys(unpriced)), faults=(*faults, str(fault)))
    return Bill(tuple(lines), whole, tuple(dict.fromkeys(unpriced)), tuple(faults))


def sheet_cost(scope: Scope, wanted: Sequence[Purchase]) -> str:
    """Return the bill of a sheet as one text; prices that cannot be used are reported."""
    found = bill(wanted, scope.room.prices, scope.room.currency)
    for fault in found.faults:
        scope.report("warning", f"prices in site.yaml: {fault}")
    return str(found)


def room_money(amount: str, prices: Mapping[str, Price], currency: str = "") -> Money:
    """Return an amount as written, in the money of a price list.

    Raises
    ------
    CalculationError
        If it is no amount of money.
    """
    return _money(amount, currency, _places(prices))


def _places(prices: Mapping[str, Price]) -> int:
    return max((_LEAST_PLACES, *(_decimals(price.amount) for price in prices.values())))


def _decimals(amount: str) -> int:
    found = re.search(r"\d\.(\d+)", amount)
    return len(found[1]) if found else 0


def _name_of_price(thing: Purchase, prices: Mapping[str, Price]) -> str | None:
    """The name in the price list that means a thing: its own, in the singular or the plural."""
    if thing.name in prices:
        return thing.name
    if thing.cloth:
        return None
    return next((name for name in prices if names_thing(name, thing.name)), None)


def _cost(thing: Purchase, name: str, price: Price, room_money: tuple[str, int]) -> Money:
    money = _money(price.amount, *room_money)
    if price.per is None:
        if thing.cloth:
            raise CalculationError(f"the price of '{name}' names no length; write for example 14.80 a yard")
        return priced(money, thing.number)
    if not thing.length:
        raise CalculationError(f"the price of '{name}' is for a length, but '{thing.name}' is counted; write it each")
    return priced(money, thing.length / price.per)


def _money(amount: str, mark: str, places: int) -> Money:
    """The amount of a price; one without a mark has that of the room's money: a sign before it, a word after it."""
    if _PLAIN.fullmatch(amount):
        whole, _, part = amount.partition(".")
        word = mark.isalpha()
        return Money(int(whole + part.ljust(places, "0")), Currency(mark, before=not word, space=word, places=places))
    return read_money(amount, places)

"""What a class costs who comes: its fee, its kits and the room's prices come in, a price for each size goes out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from generator.calculation.making.money import Money, total
from generator.calculation.worksheet.class_kits import KitWork
from generator.calculation.worksheet.class_shopping import kit_supplies
from generator.calculation.worksheet.costs import bill, room_money, wanted_things
from generator.definitions.room import Room


@dataclass(frozen=True, slots=True)
class ClassPrice:
    """What one size costs in all, fee and kit; ``kit`` is None where the room has no prices."""

    size_label: str
    edition: str
    whole: Money
    kit: Money | None = None


def class_prices(fee: str, kits: Sequence[KitWork], there: Sequence[str], room: Room) -> tuple[ClassPrice, ...]:
    """Return the price of each size of a class: the fee and what is packed into its kit.

    Sizes of a student's own measures are told to nobody else. Without a fee there are no prices.

    Parameters
    ----------
    fee : str
        What a class costs without its kit, as written; empty where the room does not say.
    kits : sequence of KitWork
        The kits of the class.
    there : sequence of str
        What students bring and the room lends: no kit holds it.
    room : Room
        The room with its prices and its money.

    Raises
    ------
    CalculationError
        If the fee is no amount, or not in the money of the prices.
    """
    if not fee:
        return ()
    paid = room_money(fee, room.prices, room.currency)
    found = []
    for work in kits:
        if work.own:
            continue
        sheet = work.worksheet
        wanted = wanted_things(sheet.cloths.values(), kit_supplies(sheet, there), (), sheet.thread)
        kit = bill(wanted, room.prices, room.currency).whole
        whole = total([paid, *([kit] if kit else [])])
        found.append(ClassPrice(sheet.size_label, sheet.edition.name, whole or paid, kit))
    return tuple(found)

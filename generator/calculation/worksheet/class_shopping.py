"""What a class buys beside cloth: kits come in, thread and one shopping list for all of them go out."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from generator.calculation.making.classes import class_amounts
from generator.calculation.making.thread import spools
from generator.calculation.worked_project import SupplyLine, ThreadUse, Worksheet
from generator.calculation.worksheet.class_kits import KitWork, is_there
from generator.calculation.worksheet.supplies import supply_amount
from generator.calculation.worksheet.threads import written_thread
from generator.definitions.room import Room
from generator.lengths import Edition


def kit_supplies(worksheet: Worksheet, there: Sequence[str]) -> tuple[SupplyLine, ...]:
    """Return everything beside cloth and thread that goes into one kit: closures first, then supplies.

    ``there`` names what students bring and the room lends.
    """
    return tuple(line for line in worksheet.notions if not is_there(line.item, there))


def class_supplies(kits: Sequence[KitWork], there: Sequence[str]) -> tuple[SupplyLine, ...]:
    """Return one shopping list for a class, equal lines added up; what is there already is left out."""
    lines: dict[str, tuple[SupplyLine, Edition]] = {}
    amounts: dict[object, dict[str, Fraction]] = {}
    for work in kits:
        for line in kit_supplies(work.worksheet, there):
            key = f"{line.item}|{line.length}"
            lines.setdefault(key, (line, work.worksheet.edition))
            of_kit = amounts.setdefault(work.kit, {})
            of_kit[key] = of_kit.get(key, Fraction(0)) + line.number
    totals = class_amounts(
        [work.count for work in kits],
        {work.kit: amounts.get(work.kit, {}) for work in kits},
        own_cloth_too=True,
    )
    return tuple(_line(*lines[key], number) for key, number in totals.items())


def _line(line: SupplyLine, edition: Edition, number: Fraction) -> SupplyLine:
    return SupplyLine(line.item, supply_amount(number, line.length, edition), line.note, number, line.length)


def class_thread(kits: Sequence[KitWork], room: Room, edition: Edition) -> ThreadUse:
    """Return the thread of all kits packed; whole spools are counted once, for the class."""
    amounts = {work.kit: {"thread": work.worksheet.thread.length} for work in kits}
    length = class_amounts([work.count for work in kits], amounts, own_cloth_too=True).get("thread", Fraction(0))
    if not length:
        return ThreadUse(length, "none", 0)
    # The lengths of the worksheets have their waste already.
    return ThreadUse(length, written_thread(length, edition), spools(length, room.spool.fixed(edition), Fraction(0)))

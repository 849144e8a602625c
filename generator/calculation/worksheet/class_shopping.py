"""What a class buys beside cloth: kits come in, thread and one shopping list for all of them go out."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from generator.calculation.making.classes import class_amounts
from generator.calculation.making.thread import spools
from generator.calculation.worked_project import SupplyLine, Worksheet
from generator.calculation.worked_thread import ThreadColour, ThreadUse
from generator.calculation.worksheet.class_kits import KitWork, is_there
from generator.calculation.worksheet.supplies import supply_amount
from generator.calculation.worksheet.threads import written_thread
from generator.definitions.nodes import fold
from generator.definitions.room import Room
from generator.definitions.vocabulary import tool_name
from generator.lengths import Edition

TOOLS = "tools"


def kit_supplies(worksheet: Worksheet, there: Sequence[str]) -> tuple[SupplyLine, ...]:
    """Return everything beside cloth and thread that goes into one kit: closures first, then supplies.

    ``there`` names what students bring and the room lends. What several students share lies on the table.
    """
    return tuple(line for line in wanted_supplies(worksheet, there) if line.shared_by == 1)


def wanted_supplies(worksheet: Worksheet, there: Sequence[str]) -> tuple[SupplyLine, ...]:
    """Return everything beside cloth and thread that is bought for one kit, shared or not."""
    return tuple(line for line in worksheet.notions if not is_there(line.item, there))


def things_brought(kits: Sequence[KitWork], bring: Sequence[str], lends: Sequence[str]) -> tuple[str, ...]:
    """Return what students bring: as their class says it, 'tools' being every tool of the steps that nobody lends."""
    others = (*bring, *lends)
    return tuple(
        dict.fromkeys(thing for word in bring for thing in (_tools(kits, others) if fold(word) == TOOLS else [word]))
    )


def tools_of_nobody(kits: Sequence[KitWork], bring: Sequence[str], lends: Sequence[str]) -> tuple[str, ...]:
    """Return the tools of the steps that nobody lends or brings, so that somebody says who does."""
    return () if TOOLS in map(fold, bring) else tuple(_tools(kits, (*bring, *lends)))


def _tools(kits: Sequence[KitWork], there: Sequence[str]) -> list[str]:
    """The tools of all steps as sheets call them, without those that are named already."""
    tools = dict.fromkeys(tool for work in kits for tool in work.worksheet.tools)
    return [tool_name(tool) for tool in tools if not is_there(tool, there) and not is_there(tool_name(tool), there)]


def class_supplies(kits: Sequence[KitWork], there: Sequence[str]) -> tuple[SupplyLine, ...]:
    """Return one shopping list for a class, equal lines added up; what is there already is left out.

    A thing that students share is bought once for so many of them, whatever their sizes.
    """
    lines: dict[str, tuple[SupplyLine, Edition]] = {}
    amounts: dict[object, dict[str, Fraction]] = {}
    for work in kits:
        for line in wanted_supplies(work.worksheet, there):
            key = f"{line.item}|{line.length}|{line.shared_by}"
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
    """A line for the class: ``number`` is what all kits would need if nobody shared."""
    if line.shared_by != 1:
        groups = math.ceil(number / line.number / line.shared_by) if line.shared_by else 1
        number = line.number * groups
    return replace(line, amount=supply_amount(number, line.length, edition), number=number)


def class_thread(kits: Sequence[KitWork], room: Room, edition: Edition) -> ThreadUse:
    """Return the thread of all kits packed; whole spools are counted once, for the class.

    Whoever sews at the same time needs a spool of her own, so there are no fewer than places.
    """
    whole = {work.kit: {"": work.worksheet.thread.length} for work in kits}
    apart = {work.kit: {one.name: one.length for one in work.worksheet.thread.colours} for work in kits}
    counts = [work.count for work in kits]
    lengths = class_amounts(counts, whole, own_cloth_too=True)
    length = lengths.get("", Fraction(0))
    if not length:
        return ThreadUse(length, "none", 0)

    def bought(length: Fraction, users: int) -> int:
        # The lengths of the worksheets have their waste already.
        return max(spools(length, room.spool.fixed(edition), Fraction(0)), users)

    colours = []
    for name, used in class_amounts(counts, apart, own_cloth_too=True).items():
        having = [(work, one) for work in kits for one in work.worksheet.thread.colours if one.name == name]
        users = sum(work.count.places for work, _ in having)
        longest = max((one.work for _, one in having), key=len)
        colours.append(ThreadColour(name, longest, used, written_thread(used, edition), bought(used, users)))
    at_once = sum(work.count.places for work in kits if work.worksheet.thread.spools)
    number = sum(one.spools for one in colours) or bought(length, at_once)
    return ThreadUse(length, written_thread(length, edition), number, tuple(colours))

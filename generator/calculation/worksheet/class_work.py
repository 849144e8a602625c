"""A class worked out: its file and its project come in, a ClassSheet with everything that the class comes to goes out.

Commands and class packs read the ClassSheet and compute nothing of their own.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from generator.calculation.making.class_paper import KitSlip, kit_slips
from generator.calculation.making.classes import mixed_editions
from generator.calculation.making.timetable import Timetable
from generator.calculation.worked_project import SupplyLine
from generator.calculation.worked_thread import ThreadUse
from generator.calculation.worksheet.class_cloth import ClassClothUse, class_cloths, short_remnants
from generator.calculation.worksheet.class_days import class_timetable, slowest_kit
from generator.calculation.worksheet.class_kits import (
    KitWork,
    bookings_of,
    cut_otherwise,
    cut_too_early,
    kit_works,
    preparation_minutes,
    spare_of,
)
from generator.calculation.worksheet.class_prices import ClassPrice, class_prices
from generator.calculation.worksheet.class_shopping import (
    class_supplies,
    class_thread,
    kit_supplies,
    things_brought,
    tools_of_nobody,
)
from generator.calculation.worksheet.costs import Bill, bill, wanted_things
from generator.calculation.worksheet.sheet import RoomContext
from generator.definitions.class_plan import ClassPlan
from generator.definitions.nodes import fold
from generator.definitions.project import Project
from generator.definitions.room import Room
from generator.errors import CalculationError, FaultyFileError, Finding
from generator.lengths import Edition
from generator.limits import MOST_CLASS_PARTS


@dataclass(frozen=True, slots=True)
class ClassSheet:
    """Everything that one class comes to.

    ``kits`` are the sizes and editions that occur, ``slips`` one for each bag. ``cloths``, ``thread``, ``supplies`` and
    ``bill`` are for the whole class. ``slowest`` is the kit that the timetable goes by, at the beginners' pace;
    ``preparation`` is how long the room cuts before the class [min]. ``bring`` and ``lent`` need not be bought;
    ``of_nobody`` are tools of the steps that stand on neither list. ``prices`` are what each size costs who comes;
    ``changed`` is when the days or hours were last changed.
    """

    name: str
    title: str
    note: str
    project: str
    project_title: str
    edition: Edition
    paper: str
    kits: tuple[KitWork, ...]
    slips: tuple[KitSlip, ...]
    cloths: Mapping[str, ClassClothUse]
    thread: ThreadUse
    supplies: tuple[SupplyLine, ...]
    bill: Bill
    timetable: Timetable
    slowest: KitWork
    preparation: int
    bring: tuple[str, ...] = ()
    lent: tuple[str, ...] = ()
    of_nobody: tuple[str, ...] = ()
    prices: tuple[ClassPrice, ...] = ()
    changed: date | None = None
    findings: tuple[Finding, ...] = ()

    def packed(self, work: KitWork) -> tuple[SupplyLine, ...]:
        """Return what is packed into one kit beside its pieces and thread."""
        return kit_supplies(work.worksheet, (*self.bring, *self.lent))


def class_sheet(plan: ClassPlan, project: Project, shared: RoomContext) -> ClassSheet:
    """Return everything that a class comes to.

    Raises
    ------
    FaultyFileError
        If a size cannot be worked on the cloth of the class, or a session has no time to sew.
    """
    room = shared.room
    edition = room.edition(plan.edition)
    project = project.with_sizes(plan.own_sizes)
    kits = kit_works(plan, project, shared)
    _refuse_too_many(plan, kits)
    cloths = class_cloths(kits, [fold(name) for name in plan.bring], edition)
    bring = things_brought(kits, plan.bring, room.lends)
    supplies, thread = class_supplies(kits, (*bring, *room.lends)), class_thread(kits, room, edition)
    wanted = wanted_things((cloth.use for cloth in cloths.values()), supplies, (), thread)
    costs = bill(wanted, room.prices, room.currency)
    slowest = slowest_kit(kits, room)
    days = class_timetable(plan, slowest, room)
    prices, wrong_fee = _prices(plan, kits, (*bring, *room.lends), room)
    told = (*cut_too_early(plan, kits), *short_remnants(cloths, edition), *costs.faults, *wrong_fee, *days.findings)
    return ClassSheet(
        name=plan.name,
        title=plan.title,
        note=plan.note.filled(edition, _no_name) if plan.note else "",
        project=project.name,
        project_title=project.title,
        edition=edition,
        paper=plan.paper,
        kits=kits,
        slips=kit_slips(bookings_of(plan), spare_of(plan, project)),
        cloths=cloths,
        thread=thread,
        supplies=supplies,
        bill=costs,
        timetable=days,
        slowest=slowest,
        preparation=preparation_minutes(kits, room),
        bring=bring,
        lent=room.lends,
        prices=prices,
        changed=plan.changed,
        of_nobody=tools_of_nobody(kits, plan.bring, room.lends),
        findings=_findings(plan, kits, project, shared, told),
    )


def _prices(
    plan: ClassPlan, kits: Sequence[KitWork], there: Sequence[str], room: Room
) -> tuple[tuple[ClassPrice, ...], tuple[str, ...]]:
    """The prices of the class, or why there are none."""
    try:
        return class_prices(plan.fee, kits, there, room), ()
    except CalculationError as fault:
        return (), (f"the fee cannot be used: {fault}",)


def _findings(
    plan: ClassPlan, kits: Sequence[KitWork], project: Project, shared: RoomContext, told: Sequence[str]
) -> tuple[Finding, ...]:
    mixed = mixed_editions([work.count for work in kits])
    return (
        *([Finding("warning", mixed)] if mixed else []),
        *(cut_otherwise(kits, project, shared) if plan.cloths else ()),
        *(Finding("warning", text) for text in told),
    )


def _refuse_too_many(plan: ClassPlan, kits: Sequence[KitWork]) -> None:
    parts = sum(work.count.cut * item.quantity for work in kits for _, items in work.pieces for item in items)
    if parts > MOST_CLASS_PARTS:
        told = (
            f"{parts} parts are cut for this class; more than {MOST_CLASS_PARTS} are not laid out together, so divide "
            "it into several classes"
        )
        raise FaultyFileError([Finding("error", told, plan.places[0].place)])


def _no_name(name: str) -> Fraction:
    """A class is of many sizes, so its texts name no measure."""
    raise KeyError(name)

"""The kits of a class: a class and its project come in, one worksheet for each size and edition goes out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from generator.calculation.laid import CutItem
from generator.calculation.making.classes import Booking, Kit, KitCount, kit_counts
from generator.calculation.making.timing import operation_minutes, printed_minutes
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.cloths import cut_items
from generator.calculation.worksheet.costs import names_thing
from generator.calculation.worksheet.sheet import RoomContext, worked_sheet
from generator.calculation.worksheet.times import WORK
from generator.calculation.worksheet.work import Work
from generator.definitions.class_plan import ClassPlan
from generator.definitions.nodes import fold
from generator.definitions.project import Project
from generator.definitions.room import Room
from generator.errors import FaultyFileError, Finding


@dataclass(frozen=True, slots=True)
class KitWork:
    """One kit of a class: how often it is needed, and its worksheet on the cloth of the class.

    ``beforehand`` names the pieces that the room cuts before the class; none of them waits for a sewn panel.
    ``own`` tells that it is of a student's own measures, so that no handout of it is published.
    """

    count: KitCount
    worksheet: Worksheet
    beforehand: tuple[str, ...]
    own: bool = False

    @property
    def kit(self) -> Kit:
        """The size and edition of the kit."""
        return self.count.kit

    @property
    def pieces(self) -> tuple[tuple[Piece, tuple[CutItem, ...]], ...]:
        """The pieces that are cut from cloth, each with its parts of cloth as they lie."""
        one_way = {name: use.one_way for name, use in self.worksheet.cloths.items()}
        laid = [
            (piece, cut_items(piece, one_way=one_way.get(piece.cloth, False)))
            for piece in self.worksheet.pieces.values()
        ]
        return tuple((piece, items) for piece, items in laid if items)


def bookings_of(plan: ClassPlan) -> tuple[Booking, ...]:
    """Return the places of a class; a place without an edition has that of the class."""
    return tuple(
        Booking(Kit(seat.size, seat.edition or plan.edition), seat.number, seat.student, seat.own_cloth)
        for seat in plan.places
    )


def spare_of(plan: ClassPlan, project: Project) -> dict[Kit, int]:
    """Return the spare kits, all in the edition of the class."""
    sizes = {fold(size): size for size in project.sizes}
    return {Kit(sizes[fold(size)], plan.edition): number for size, number in plan.spare_kits.items()}


def kit_works(plan: ClassPlan, project: Project, shared: RoomContext) -> tuple[KitWork, ...]:
    """Return every kit of a class, worked on the cloth of the class.

    Raises
    ------
    FaultyFileError
        If a size cannot be worked on that cloth.
    """
    on_class_cloth = _with_class_cloths(plan, project)
    own = {size.label for size in plan.own_sizes}
    beforehand = tuple(fold(name) for name in plan.cut_beforehand)
    works: list[KitWork] = []
    faults: list[Finding] = []
    for count in kit_counts(bookings_of(plan), spare_of(plan, project)):
        if not count.packed:
            continue
        try:
            edition = shared.room.edition(count.kit.edition)
            worksheet = worked_sheet(on_class_cloth, count.kit.size, edition, shared)
            ready = tuple(name for name in beforehand if not worksheet.pieces[name].after_panel)
            works.append(KitWork(count, worksheet, ready, count.kit.size in own))
        except FaultyFileError as fault:
            if count.kit.size in own:
                faults.append(_unworkable(plan, count.kit.size))
            faults += fault.findings
    if faults:
        raise FaultyFileError(dict.fromkeys(faults))
    return tuple(works)


def _unworkable(plan: ClassPlan, size: str) -> Finding:
    """What is said of the place whose own measures cannot be worked, before the reasons."""
    seat = next(seat for seat in plan.places if seat.size == size)
    told = "the project cannot be worked in these measures, as told below; measure again, or ask for a nearby size"
    return Finding("error", told, seat.place, size=size)


def _with_class_cloths(plan: ClassPlan, project: Project) -> Project:
    """The project with the widths of the class, and its faults told at the place where the class gives them."""
    cloths = dict(project.cloths)
    for name, cloth in plan.cloths.items():
        cloths[name] = replace(cloths[name], width=cloth.width, place=cloth.place)
    return replace(project, cloths=cloths)


def cut_otherwise(kits: Sequence[KitWork], project: Project, shared: RoomContext) -> list[Finding]:
    """Return a warning for every kit whose pieces the cloth of the class changes: its handout says otherwise.

    Handouts of own measures are made for the class, on its cloth.
    """
    findings = []
    for work in [work for work in kits if not work.own]:
        kit = work.kit
        usual = KitWork(work.count, worked_sheet(project, kit.size, work.worksheet.edition, shared), ())
        changed = [
            piece.label
            for (piece, items), (_, wonted) in zip(work.pieces, usual.pieces, strict=True)
            if items != wonted
        ]
        if changed:
            told = (
                f"on the cloth of this class {' and '.join(changed)} of size {kit.size} is cut otherwise than its "
                "handout says, because the cloth has another width: go by the kit slips"
            )
            findings.append(Finding("warning", told, size=kit.size, edition=kit.edition))
    return findings


def cut_too_early(plan: ClassPlan, kits: Sequence[KitWork]) -> list[str]:
    """Return a sentence for every piece that the class wants cut beforehand though it waits for the sewn panel."""
    waiting = {
        name: work.worksheet.pieces[name].label
        for work in kits
        for name in map(fold, plan.cut_beforehand)
        if work.worksheet.pieces[name].after_panel
    }
    return [f"{label} is cut to the sewn panel, so it cannot be cut beforehand" for label in waiting.values()]


def is_there(item: str, there: Sequence[str]) -> bool:
    """Return whether a thing need not be bought or packed: ``there`` names what students bring and the room lends."""
    return any(names_thing(name, item) for name in there)


def cutting_minutes(work: KitWork, names: Sequence[str], room: Room) -> Fraction:
    """Return how long it takes to cut some pieces of one kit [min]."""
    pieces = tuple(piece for piece, _ in work.pieces if piece.name in names)
    return operation_minutes(WORK["cut pieces"](Work(pieces)), room.rates) if pieces else Fraction(0)


def preparation_minutes(kits: Sequence[KitWork], room: Room) -> int:
    """Return how long the room cuts before the class, for all kits whose cloth it cuts [min]."""
    minutes = (work.count.cut * cutting_minutes(work, work.beforehand, room) for work in kits)
    return printed_minutes(sum(minutes, Fraction(0)))

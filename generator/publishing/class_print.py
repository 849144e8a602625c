"""The paper of a class, outside of any site: a class worked out comes in, its sheets in the order of printing go out.

They name students, so they are for whoever teaches. Handouts of students' own measures stand here and nowhere else.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, replace
from pathlib import Path

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.class_kits import KitWork
from generator.calculation.worksheet.class_work import ClassSheet
from generator.calculation.worksheet.editions import changed_numbers
from generator.calculation.worksheet.sheet import RoomContext, refuse_unsewable, worked_sheet
from generator.definitions.class_plan import ClassPlan, load_class
from generator.definitions.project import Project
from generator.definitions.theme import load_theme
from generator.drawing.style import style_of
from generator.errors import FaultyFileError
from generator.publishing.editions import kept_editions
from generator.publishing.memory import bounded
from generator.publishing.room import room_setting, stamped
from generator.publishing.room_files import class_files
from generator.publishing.single import stamp_of_sheet
from generator.rendering.class_pack import HANDOUT, LastClass, render_class_pack, render_class_slips
from generator.rendering.handout.pictures import Drawer
from generator.rendering.handout.sheet import render_handout
from generator.rendering.joined import PrintedPaper
from generator.rendering.setting import Setting
from generator.rendering.sheet_kinds import SHEETS, size_orders


@dataclass(frozen=True, slots=True)
class TaughtClass:
    """A class with what its sheets are made from; ``paper`` is Letter or A4."""

    sheet: ClassSheet
    project: Project
    shared: RoomContext
    folder: Path
    theme_folder: Path
    paper: str


def class_papers(taught: TaughtClass, *, everything: bool) -> list[PrintedPaper]:
    """Return the sheets of a class in the order of printing: the pack, the slips, the handouts of own measures.

    With ``everything`` the handouts of all other kits are among them, a marking strip and a rescue sheet for each kit,
    and for each edition a teacher's copy of the sizes of this class and a machine card.

    Raises
    ------
    FaultyFileError
        With the faults of the theme, or of a recipe that cannot be sewn.
    PublishError
        If a sheet cannot be set: a letter or a font is missing.
    """
    setting = room_setting(taught.shared.room, load_theme(taught.theme_folder))
    printed = [work for work in taught.sheet.kits if work.own or everything]
    # Worked once: to know whether a sheet is a draft, all sizes of its project are worked.
    bearing = {
        own: stamped(setting, stamp_of_sheet(taught.project, taught.shared, taught.folder, own=own))
        for own in {work.own for work in printed}
    }
    enclosed = [paper for work in printed for paper in _of_kit(taught, work, bearing[work.own], everything=everything)]
    if everything:
        enclosed += _of_editions(taught, bearing[max(bearing)])
    with bounded():
        slips = PrintedPaper("Kit slips", render_class_slips(taught.sheet, setting, taught.paper), cut=True)
    with bounded():
        pack = render_class_pack(taught.sheet, setting, taught.paper, (slips, *enclosed), last_class(taught))
    return [PrintedPaper("Class pack", pack), slips, *enclosed]


def last_class(taught: TaughtClass) -> LastClass | None:
    """Return the last class before this one that made its project, with what was corrected since; None if none did."""
    first_day = taught.sheet.timetable.sessions[0].session.day
    former = [
        (last, plan.title)
        for plan in _plans(taught.folder)
        if plan.project == taught.project.name
        and (last := max(session.day for session in plan.sessions).isoformat()) < first_day
    ]
    if not former:
        return None
    day, title = max(former)
    told = [
        f"{change.day}: {' '.join(change.text.text.split())}"
        for change in taught.project.changes
        if change.day.isoformat() > day
    ]
    return LastClass(title, day, (*told, *_kept_since(day, taught)))


def _plans(folder: Path) -> Iterator[ClassPlan]:
    """The classes of a room; one that cannot be read is told when it is asked for."""
    for path in class_files(folder).values():
        with suppress(FaultyFileError):
            yield load_class(path, root=folder)


def _kept_since(day: str, taught: TaughtClass) -> Iterator[str]:
    """What has changed between the edition that a day had and the newest, in a sentence."""
    kept = kept_editions(taught.folder, taught.project.name)
    given = [edition for edition in kept if edition.day <= day]
    if not given or given[-1] is kept[-1]:
        return
    changed = changed_numbers(given[-1], kept[-1])
    texts = sum(change.of_words for change in changed)
    labels = {name: size.label or name for name, size in taught.project.sizes.items()}
    sizes = dict.fromkeys(labels.get(change.size, change.size) for change in changed)
    counted = f"Changed numbers: {len(changed) - texts}; changed texts: {texts}"
    where = f"; sizes: {', '.join(sizes)}" if sizes else ""
    taken = f"Edition mark {kept[-1].mark} has taken the place of {given[-1].mark}"
    yield f"{taken}. {counted}{where}. Hand out no older sheet."


def _of_kit(taught: TaughtClass, work: KitWork, bearing: Setting, *, everything: bool) -> Iterator[PrintedPaper]:
    """The handouts of a kit: of own measures one for each student, on the cloth of the class; else as on the site."""
    worksheet = work.worksheet
    if not work.own:
        worksheet = worked_sheet(taught.project, work.kit.size, worksheet.edition, taught.shared)
    refuse_unsewable(worksheet)
    about, paper = (worksheet.size_label, work.kit.edition), taught.paper
    with bounded() as again:
        drawer = Drawer(worksheet, style_of(bearing.theme))
        students = [slip.student for slip in taught.sheet.slips if slip.kit == work.kit] if work.own else [""]
        for student in students:
            again()
            pdf = render_handout(worksheet, replace(bearing, student=student), paper, drawer)
            yield PrintedPaper(HANDOUT, pdf, *about, student, copies=1 if work.own else work.count.packed)
        for order in size_orders(worksheet) if everything else ():
            again()
            yield PrintedPaper(order.kind.title, order.render(bearing, paper), *about, cut=order.kind.cut_out)


def _of_editions(taught: TaughtClass, bearing: Setting) -> Iterator[PrintedPaper]:
    """What is printed once for each edition, on the sizes of this class."""
    editions: dict[str, list[Worksheet]] = {}
    for work in taught.sheet.kits:
        editions.setdefault(work.kit.edition, []).append(work.worksheet)
    for edition, worksheets in editions.items():
        for name in ("teacher's copy", "machine card"):
            with bounded():
                pdf = SHEETS[name].render(worksheets, bearing, taught.paper)
            yield PrintedPaper(SHEETS[name].title, pdf, edition=edition)

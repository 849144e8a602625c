"""Paper outside of any site: worksheets or a class worked out come in, one sheet or all that a class prints goes out.

The sheets of a class name students, so they are for whoever teaches. Handouts of students' own measures stand here and
nowhere else.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
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
from generator.definitions.room import Room
from generator.definitions.theme import load_theme
from generator.drawing.style import style_of
from generator.errors import FaultyFileError, PublishError
from generator.publishing.editions import against_editions, kept_editions
from generator.publishing.jobs import Stamp
from generator.publishing.memory import bounded
from generator.publishing.room import room_setting, stamped
from generator.publishing.room_files import class_files
from generator.rendering.class_pack import HANDOUT, LastClass, render_class_pack, render_class_slips
from generator.rendering.handout.pictures import Drawer
from generator.rendering.handout.sheet import render_handout
from generator.rendering.printed_paper import PrintedPaper
from generator.rendering.setting import Setting
from generator.rendering.sheet_kinds import SHEETS, SheetOrder, project_orders, room_orders, size_orders


def one_sheet(
    kind: str, projects: Mapping[str, Sequence[Worksheet]], room: Room, theme_folder: Path, paper: str, stamp: Stamp
) -> bytes:
    """Return one sheet on one paper; the stamp tells what it says of its edition.

    Parameters
    ----------
    kind : str
        Its name as in the room's file, or ``handout``.
    projects : mapping of str to sequence of Worksheet
        What it is about: one size of a project, all its sizes, or those of all projects.
    room, theme_folder, paper, stamp
        How it is set: ``Letter`` or ``A4``.

    Returns
    -------
    bytes
        A tagged PDF.

    Raises
    ------
    FaultyFileError
        With the faults of the theme, or of a recipe that cannot be sewn.
    PublishError
        If a letter, a font or a picture is missing, or if there is nothing that a sheet of this kind could tell.
    """
    for worksheets in projects.values():
        for worksheet in worksheets:
            refuse_unsewable(worksheet)
    setting = stamped(room_setting(room, load_theme(theme_folder)), stamp)
    with bounded():
        if kind not in SHEETS:
            [[worksheet]] = projects.values()
            return render_handout(worksheet, setting, paper)
        order = next(_orders(kind, projects), None)
        if order is None:
            raise PublishError(f"there is no {kind} here: {SHEETS[kind].where_none}")
        return order.render(setting, paper)


def _orders(kind: str, projects: Mapping[str, Sequence[Worksheet]]) -> Iterator[SheetOrder]:
    if SHEETS[kind].needs == "room":
        return room_orders(projects, (kind,))
    [worksheets] = projects.values()
    return size_orders(worksheets[0], (kind,)) if SHEETS[kind].needs == "size" else project_orders(worksheets, (kind,))


def stamp_of_sheet(project: Project, shared: RoomContext, folder: Path, *, own: bool) -> Stamp:
    """Return what a sheet of a project says of its edition.

    A size of the file bears the mark where all numbers of the project are those kept under it, as on the site. A size
    of one's ``own``, or one worked for cloth or a panel at hand, only says after which mark it was made.
    """
    kept = kept_editions(folder, project.name)
    if own or not kept:
        return Stamp(kept[-1].mark if kept else "", "own" if own else "draft")
    editions = [shared.room.edition(name) for name in project.editions]
    worksheets = [worked_sheet(project, size, one, shared) for one in editions for size in project.sizes]
    return against_editions(folder, worksheets)[0].stamp


def stamp_of_sheets(projects: Sequence[Project], shared: RoomContext, folder: Path) -> Stamp:
    """Return what a sheet about several projects says of its edition: nothing where they differ, as on the site."""
    stamps = {stamp_of_sheet(project, shared, folder, own=False) for project in projects}
    return stamps.pop() if len(stamps) == 1 else Stamp()


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

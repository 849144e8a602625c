"""The paper of a class, outside of any site: a class worked out comes in, its sheets in the order of printing go out.

They name students, so they are for whoever teaches. Handouts of students' own measures stand here and nowhere else.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.class_kits import KitWork
from generator.calculation.worksheet.class_work import ClassSheet
from generator.calculation.worksheet.sheet import RoomContext, refuse_unsewable, worked_sheet
from generator.definitions.project import Project
from generator.definitions.theme import load_theme
from generator.drawing.style import style_of
from generator.publishing.make.sheets import drawn
from generator.publishing.memory import bounded
from generator.publishing.room import room_setting, stamped
from generator.publishing.single import stamp_of_sheet
from generator.rendering.class_pack import HANDOUT, render_class_pack, render_class_slips
from generator.rendering.handout import render_handout
from generator.rendering.joined import PrintedPaper
from generator.rendering.setting import Setting
from generator.rendering.sheet_kinds import SHEETS
from generator.rendering.strip import render_strip


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
        pack = render_class_pack(taught.sheet, setting, taught.paper, (slips, *enclosed))
    return [PrintedPaper("Class pack", pack), slips, *enclosed]


def _of_kit(taught: TaughtClass, work: KitWork, bearing: Setting, *, everything: bool) -> Iterator[PrintedPaper]:
    """The handouts of a kit: of own measures one for each student, on the cloth of the class; else as on the site."""
    worksheet = work.worksheet
    if not work.own:
        worksheet = worked_sheet(taught.project, work.kit.size, worksheet.edition, taught.shared)
    refuse_unsewable(worksheet)
    about, paper = (worksheet.size_label, work.kit.edition), taught.paper
    with bounded() as again:
        pictures = drawn(worksheet, style_of(bearing.theme))
        students = [slip.student for slip in taught.sheet.slips if slip.kit == work.kit] if work.own else [""]
        for student in students:
            again()
            pdf = render_handout(worksheet, pictures, replace(bearing, student=student), paper)
            yield PrintedPaper(HANDOUT, pdf, *about, student, copies=1 if work.own else work.count.packed)
        if not everything:
            return
        again()
        strip = render_strip(worksheet, pictures, bearing, paper)
    if strip is not None:
        yield PrintedPaper("Marking strip", strip, *about, cut=True)
        yield PrintedPaper(SHEETS["rescue"].title, SHEETS["rescue"].render(worksheet, bearing, paper), *about)


def _of_editions(taught: TaughtClass, bearing: Setting) -> Iterator[PrintedPaper]:
    """What is printed once for each edition, on the sizes of this class."""
    editions: dict[str, list[Worksheet]] = {}
    for work in taught.sheet.kits:
        editions.setdefault(work.kit.edition, []).append(work.worksheet)
    for edition, worksheets in editions.items():
        for name in ("teacher", "machine"):
            with bounded():
                pdf = SHEETS[name].render(worksheets, bearing, taught.paper)
            yield PrintedPaper(SHEETS[name].title, pdf, edition=edition)

"""The class pack: a ClassSheet comes in, a PDF with everything that a class needs on paper goes out.

What to buy, the cutting layouts over all kits, the timetable, what to print and prepare; a slip for each kit is a sheet
of its own, for slips are cut from their paper.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from generator.calculation.laid import CutItem
from generator.calculation.making.class_paper import KitSlip
from generator.calculation.making.timetable import clock
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import SupplyLine
from generator.calculation.worksheet.class_kits import KitWork
from generator.calculation.worksheet.class_work import ClassSheet
from generator.drawing.layout import draw_cutting
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES
from generator.drawing.style import style_of
from generator.rendering.addresses import handout_file
from generator.rendering.figures import sheet_image
from generator.rendering.one_page import sheet_html, sheet_paper
from generator.rendering.pdf import write_fitting_pdf, write_pdf
from generator.rendering.printed_paper import PrintedPaper
from generator.rendering.setter import Document
from generator.rendering.setting import Setting
from generator.rendering.styles import PAPERS, SHEET_MARGINS
from generator.rendering.tables import two_way
from generator.rendering.typeset import said, typeset

_ROOM_BESIDE = 3.0
_USUAL_PAGES, _TRIES = 4, 3
HANDOUT = "Handout"


@dataclass(frozen=True, slots=True)
class SlipLine:
    """One thing in a bag; ``when`` tells when a piece is cut, empty for what is packed as it is."""

    thing: Markup
    when: str = ""


@dataclass(frozen=True, slots=True)
class PrintedSlip:
    """The slip of one kit: what it is, for whom, and what belongs into it."""

    slip: KitSlip
    size: str
    lines: tuple[SlipLine, ...]
    cloths: tuple[Markup, ...]


@dataclass(frozen=True, slots=True)
class PrintedFile:
    """A published handout to print: its file, and how often."""

    file: str
    size: str
    edition: str
    copies: int


@dataclass(frozen=True, slots=True)
class PackPart:
    """One part of a print run: how often, how many pages each, and how many sheets of paper all of them take."""

    title: str
    size: str
    edition: str
    copies: int
    pages: int
    both_sides: int
    one_side: int


@dataclass(frozen=True, slots=True)
class PrintRun:
    """Everything that is printed for a class, in the order of printing."""

    parts: tuple[PackPart, ...]

    @property
    def pages(self) -> int:
        """How many printed pages there are in all."""
        return sum(part.copies * part.pages for part in self.parts)

    @property
    def both_sides(self) -> int:
        """How many sheets of paper it takes when both sides are printed."""
        return sum(part.both_sides for part in self.parts)

    @property
    def one_side(self) -> int:
        """How many sheets of paper it takes when one side is printed."""
        return sum(part.one_side for part in self.parts)


@dataclass(frozen=True, slots=True)
class LastClass:
    """The last class before this one that made the same project, and what was changed since, a sentence each."""

    title: str
    day: str
    changes: tuple[str, ...]


def render_class_pack(
    sheet: ClassSheet,
    setting: Setting,
    paper: str,
    enclosed: Sequence[PrintedPaper] = (),
    last_class: LastClass | None = None,
) -> bytes:
    """Return the class pack without its slips; it tells what is ``enclosed`` behind it, and what is not."""
    memory: dict[str, str] = {}
    width, height = PAPERS[paper]
    values = {
        "pack": sheet,
        "edition_words": f"{sheet.edition.name} edition",
        "say": lambda length: said(length, sheet.edition),
        "clock": clock,
        "layouts": cutting_pictures(sheet, setting),
        "printed": _printed(sheet, enclosed),
        "enclosed": enclosed,
        "last_class": last_class,
        "image": sheet_image(memory, (width - SHEET_MARGINS[0] / MILLIMETRES, height - _ROOM_BESIDE), 1.0),
    }
    told: list[int] = []

    def tells_its_pages(document: Document) -> bool:
        told.append(len(document.pages))
        return told[-1] == told[-2]

    def versions() -> Iterator[str]:
        """The pack tells its own pages among those of all parts, so it is set until it tells them right."""
        told.append(_USUAL_PAGES)
        for _ in range(_TRIES):
            yield sheet_html("class_pack", setting, {**values, "run": print_run(told[-1], enclosed)})

    return write_fitting_pdf(versions(), tells_its_pages, sheet_paper(setting, paper, memory))


def print_run(pack_pages: int, enclosed: Sequence[PrintedPaper]) -> PrintRun:
    """Return what is printed: the pack, the parts behind it, and what they come to.

    Examples
    --------
    A pack of 3 pages takes 2 sheets of paper printed on both sides, 3 on one:

    >>> run = print_run(3, [])
    >>> run.pages, run.both_sides, run.one_side
    (3, 2, 3)
    """
    pack = PackPart("This pack", "", "", 1, pack_pages, (pack_pages + 1) // 2, pack_pages)
    parts = [
        PackPart(
            f"{one.title} for {one.student}" if one.student else one.title,
            one.size,
            one.edition,
            one.copies,
            one.pages,
            one.paper(both_sides=True),
            one.paper(both_sides=False),
        )
        for one in enclosed
    ]
    return PrintRun((pack, *parts))


def render_class_slips(sheet: ClassSheet, setting: Setting, paper: str) -> bytes:
    """Return the slips of all kits, to be cut apart."""
    html = sheet_html("class_slips", setting, {"pack": sheet, "slips": slips(sheet)})
    page = sheet_paper(setting, paper)
    return write_pdf(html, page.style, page.theme, page.memory)


def cutting_pictures(sheet: ClassSheet, setting: Setting) -> dict[str, tuple[Picture, ...]]:
    """Return the cutting layouts over all kits, by the name of their cloth."""
    style = style_of(setting.theme)
    return {
        name: draw_cutting(cloth.use, sheet.edition, style, key=f"layout {name}")
        for name, cloth in sheet.cloths.items()
    }


def slips(sheet: ClassSheet) -> tuple[PrintedSlip, ...]:
    """Return the slip of every kit, with what belongs into its bag."""
    works = {work.kit: work for work in sheet.kits}
    return tuple(_slip(slip, works[slip.kit], sheet.packed(works[slip.kit])) for slip in sheet.slips)


def _slip(slip: KitSlip, work: KitWork, packed: Sequence[SupplyLine]) -> PrintedSlip:
    sheet = work.worksheet
    cloths = tuple(
        Markup("{} {}, {} wide").format(use.name, typeset(use.buy_text), said(use.width, sheet.edition))
        for use in sheet.cloths.values()
    )
    return PrintedSlip(slip, sheet.size_label, tuple(_lines(slip, work, packed)), cloths if slip.own_cloth else ())


def _lines(slip: KitSlip, work: KitWork, packed: Sequence[SupplyLine]) -> Iterator[SlipLine]:
    sheet = work.worksheet
    for piece, items in work.pieces:
        for item in items:
            size = typeset(two_way(item.across, item.along, sheet.edition))
            yield SlipLine(
                Markup("{} × {}, {}").format(item.quantity, item.label, size), _when(piece, item, slip, work)
            )
    for line in packed:
        yield SlipLine(typeset(f"{line.amount} {line.item}"))
    yield from (SlipLine(typeset(f"thread{words}, {length}")) for words, length, _ in sheet.thread.lines)
    yield SlipLine(Markup("the handout, {} edition").format(sheet.edition.name))


def _when(piece: Piece, item: CutItem, slip: KitSlip, work: KitWork) -> str:
    if piece.after_panel:
        return "cut after the panel"
    if slip.own_cloth:
        return "from own cloth"
    return "cut beforehand" if item.piece in work.beforehand else "cut in the class"


def _printed(sheet: ClassSheet, enclosed: Sequence[PrintedPaper]) -> tuple[PrintedFile, ...]:
    """The handouts that are printed from the site: those that are not enclosed."""
    there = {(paper.size, paper.edition) for paper in enclosed if paper.title == HANDOUT}
    return tuple(
        PrintedFile(
            file=handout_file(sheet.project, work.kit.size, work.kit.edition, sheet.paper).rpartition("/")[2],
            size=work.worksheet.size_label,
            edition=work.kit.edition,
            copies=work.count.packed,
        )
        for work in sheet.kits
        if (work.worksheet.size_label, work.kit.edition) not in there
    )

"""Every kind of sheet beside the handout by its name in the room's file: what it is made from, and where its file lies.

Worksheets of a room and its classes come in, the sheets to make go out. A new kind is one entry in ``SHEETS``.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Any, Literal

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.class_work import ClassSheet
from generator.definitions.vocabulary import SHEETS_BESIDE
from generator.drawing.paper_pattern import papers_of
from generator.rendering import addresses
from generator.rendering.buying_table import render_buying_table
from generator.rendering.cards import SheetLink
from generator.rendering.class_pack import render_class_pack
from generator.rendering.forms import (
    render_care_sheet,
    render_machine_card,
    render_measuring_guide,
    render_sample_form,
    render_sign_up_form,
)
from generator.rendering.paper_pattern import render_paper_pattern
from generator.rendering.rescue import render_rescue
from generator.rendering.setting import Setting
from generator.rendering.strip import render_strip
from generator.rendering.teacher_copy import render_teacher_copy
from generator.rendering.wall_card import render_wall_card

Need = Literal["room", "project", "size", "class"]
Projects = Mapping[str, Sequence[Worksheet]]
Subject = Projects | Sequence[Worksheet] | Worksheet | ClassSheet


def _is_tucked(worksheet: Worksheet) -> bool:
    return any(panel.across.count for panel in worksheet.panels.values())


def _has_shapes(worksheet: Worksheet) -> bool:
    return bool(papers_of(worksheet))


@dataclass(frozen=True, slots=True)
class SheetKind:
    """A kind of sheet.

    ``needs`` tells what ``render`` takes: for a room the worksheets of each project by its name, for a project its
    worksheets, for a size one worksheet, for a class its ClassSheet. With ``each_edition`` they are of one edition, and
    a CalculationError is raised where two come together. What is rendered is a tagged PDF on a paper, ``Letter`` or
    ``A4``; a PublishError is raised where a letter or a font is missing. ``file`` is its word in names of files,
    ``of_size`` tells of which sizes there is one, ``where_none`` why there is none of others. What is ``cut_out`` of
    its paper is printed on one side of it.
    """

    title: str
    file: str
    needs: Need
    render: Callable[[Any, Setting, str], bytes]
    each_edition: bool = True
    of_size: Callable[[Worksheet], bool] = _is_tucked
    where_none: str = "nothing is tucked"
    cut_out: bool = False


@dataclass(frozen=True, slots=True)
class SheetOrder:
    """One sheet to make: its kind, what it is made from, and the path of its file on a paper."""

    name: str
    subject: Subject
    address: Callable[[str], str]

    @property
    def kind(self) -> SheetKind:
        """What is told of its kind."""
        return SHEETS[self.name]

    @property
    def edition(self) -> str:
        """Its edition, empty where one sheet tells all editions."""
        found = next(iter(self.subject.values())) if isinstance(self.subject, Mapping) else self.subject
        first = found[0] if isinstance(found, Sequence) else found
        return first.edition.name if self.kind.each_edition else ""

    def render(self, setting: Setting, paper: str) -> bytes:
        """Return the sheet as PDF."""
        return self.kind.render(self.subject, setting, paper)

    def links(self, papers: Sequence[str]) -> list[SheetLink]:
        """Return what leads to it, on each paper."""
        return [SheetLink(self.kind.title, self.edition, paper, self.address(paper)) for paper in papers]


SHEETS: dict[str, SheetKind] = {
    "wall card": SheetKind("Wall card: all projects on one page", "wall", "room", render_wall_card),
    "buying table": SheetKind("Buying table", "buying", "room", render_buying_table),
    "sample form": SheetKind("Sample form", "sample", "room", render_sample_form),
    "teacher's copy": SheetKind("Teacher's copy", "teacher", "project", render_teacher_copy),
    "measuring guide": SheetKind("How to measure", "measuring", "project", render_measuring_guide),
    "machine card": SheetKind("Machine card", "machine", "project", render_machine_card),
    "sign up form": SheetKind("Sign-up form", "sign up", "project", render_sign_up_form, each_edition=False),
    "care sheet": SheetKind("Care sheet", "care", "project", render_care_sheet, each_edition=False),
    "paper pattern": SheetKind(
        "Paper pattern, true size",
        "pattern",
        "size",
        render_paper_pattern,
        of_size=_has_shapes,
        where_none="no piece has a shape of its own",
        cut_out=True,
    ),
    "marking strip": SheetKind("Marking strip, true size", "strip", "size", render_strip, cut_out=True),
    "rescue sheet": SheetKind("Rescue sheet: when something goes wrong", "rescue", "size", render_rescue),
    "class pack": SheetKind("Class pack", "class", "class", render_class_pack, each_edition=False),
}


def room_orders(projects: Projects, names: Collection[str] = SHEETS_BESIDE) -> Iterator[SheetOrder]:
    """Return the sheets of a room, one of each kind named for each edition."""
    editions = dict.fromkeys(worksheet.edition.name for worksheets in projects.values() for worksheet in worksheets)
    for edition in editions:
        kept = {project: _of_edition(sizes, edition) for project, sizes in projects.items()}
        subject = {project: sizes for project, sizes in kept.items() if sizes}
        for name in _kinds("room", names):
            yield SheetOrder(name, subject, partial(addresses.room_sheet_file, SHEETS[name].file, edition))


def project_orders(worksheets: Sequence[Worksheet], names: Collection[str] = SHEETS_BESIDE) -> Iterator[SheetOrder]:
    """Return the sheets about all sizes of a project, those of the kinds named."""
    editions = dict.fromkeys(worksheet.edition.name for worksheet in worksheets)
    for name in _kinds("project", names):
        for edition in editions if SHEETS[name].each_edition else [""]:
            address = partial(addresses.project_sheet_file, worksheets[0].project, SHEETS[name].file, edition)
            yield SheetOrder(name, _of_edition(worksheets, edition), address)


def size_orders(worksheet: Worksheet, names: Collection[str] = SHEETS_BESIDE) -> Iterator[SheetOrder]:
    """Return the sheets about one size, those of the kinds named that it has something for."""
    about = (worksheet.project, worksheet.size)
    for name in _kinds("size", names):
        if SHEETS[name].of_size(worksheet):
            address = partial(addresses.size_sheet_file, *about, SHEETS[name].file, worksheet.edition.name)
            yield SheetOrder(name, worksheet, address)


def class_orders(sheet: ClassSheet) -> Iterator[SheetOrder]:
    """Return the sheets for a class."""
    for name in _kinds("class", SHEETS):
        yield SheetOrder(name, sheet, partial(addresses.class_sheet_file, sheet.name, SHEETS[name].file))


def _kinds(need: Need, names: Collection[str]) -> list[str]:
    return [name for name, kind in SHEETS.items() if kind.needs == need and name in names]


def _of_edition(worksheets: Sequence[Worksheet], edition: str) -> tuple[Worksheet, ...]:
    """The worksheets of an edition, or all where none is named."""
    return tuple(worksheet for worksheet in worksheets if edition in ("", worksheet.edition.name))

"""Every further kind of sheet by name: what it is made from, how it is rendered, and where its file lies.

Worksheets of a room and its classes come in, the sheets to make go out. A new kind is one entry in ``SHEETS``.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Any, Literal

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.class_work import ClassSheet
from generator.rendering import addresses
from generator.rendering.buying_table import render_buying_table
from generator.rendering.class_pack import render_class_pack
from generator.rendering.forms import (
    render_care_sheet,
    render_machine_card,
    render_measuring_guide,
    render_sample_form,
    render_sign_up_form,
)
from generator.rendering.rescue import render_rescue
from generator.rendering.setting import Setting
from generator.rendering.teacher_copy import render_teacher_copy
from generator.rendering.wall_card import render_wall_card

Need = Literal["room", "project", "size", "class"]
Projects = Mapping[str, Sequence[Worksheet]]
Subject = Projects | Sequence[Worksheet] | Worksheet | ClassSheet


@dataclass(frozen=True, slots=True)
class SheetKind:
    """A kind of sheet.

    ``needs`` tells what ``render`` takes: for a room the worksheets of each project by its name, for a project its
    worksheets, for a size one worksheet, for a class its ClassSheet. With ``each_edition`` they are of one edition, and
    a CalculationError is raised where two come together. What is rendered is a tagged PDF on a paper, ``Letter`` or
    ``A4``; a PublishError is raised where a letter or a font is missing.
    """

    title: str
    needs: Need
    render: Callable[[Any, Setting, str], bytes]
    each_edition: bool = True


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

    def render(self, setting: Setting, paper: str) -> bytes:
        """Return the sheet as PDF."""
        return self.kind.render(self.subject, setting, paper)


SHEETS: dict[str, SheetKind] = {
    "wall": SheetKind("Wall card: all projects on one page", "room", render_wall_card),
    "buying": SheetKind("Buying table", "room", render_buying_table),
    "sample": SheetKind("Sample form", "room", render_sample_form),
    "teacher": SheetKind("Teacher's copy", "project", render_teacher_copy),
    "measuring": SheetKind("How to measure", "project", render_measuring_guide),
    "machine": SheetKind("Machine card", "project", render_machine_card),
    "sign up": SheetKind("Sign-up form", "project", render_sign_up_form, each_edition=False),
    "care": SheetKind("Care sheet", "project", render_care_sheet, each_edition=False),
    "rescue": SheetKind("When something goes wrong", "size", render_rescue),
    "class": SheetKind("Class pack", "class", render_class_pack, each_edition=False),
}


def room_orders(projects: Projects) -> Iterator[SheetOrder]:
    """Return the sheets of a room, one of each kind for each edition."""
    editions = dict.fromkeys(worksheet.edition.name for sizes in projects.values() for worksheet in sizes)
    for edition in editions:
        kept = {name: _of_edition(sizes, edition) for name, sizes in projects.items()}
        subject = {name: sizes for name, sizes in kept.items() if sizes}
        for name in _kinds("room"):
            yield SheetOrder(name, subject, partial(addresses.room_sheet_file, name, edition))


def project_orders(worksheets: Sequence[Worksheet]) -> Iterator[SheetOrder]:
    """Return the sheets about all sizes of a project."""
    editions = dict.fromkeys(worksheet.edition.name for worksheet in worksheets)
    for name in _kinds("project"):
        for edition in editions if SHEETS[name].each_edition else [""]:
            address = partial(addresses.project_sheet_file, worksheets[0].project, name, edition)
            yield SheetOrder(name, _of_edition(worksheets, edition), address)


def size_orders(worksheet: Worksheet) -> Iterator[SheetOrder]:
    """Return the sheets about one size; there is none to rescue where nothing is tucked."""
    if any(panel.across.count for panel in worksheet.panels.values()):
        for name in _kinds("size"):
            address = partial(
                addresses.size_sheet_file, worksheet.project, worksheet.size, name, worksheet.edition.name
            )
            yield SheetOrder(name, worksheet, address)


def class_orders(sheet: ClassSheet) -> Iterator[SheetOrder]:
    """Return the sheets for a class."""
    for name in _kinds("class"):
        yield SheetOrder(name, sheet, partial(addresses.class_sheet_file, sheet.name, name))


def _kinds(need: Need) -> list[str]:
    return [name for name, kind in SHEETS.items() if kind.needs == need]


def _of_edition(worksheets: Sequence[Worksheet], edition: str) -> tuple[Worksheet, ...]:
    """The worksheets of an edition, or all where none is named."""
    return tuple(worksheet for worksheet in worksheets if edition in ("", worksheet.edition.name))

"""What is handed to a worker and what comes back: plain values, so that they can be sent to another process.

Worksheets travel packed; only a worker opens them. A job has a ``label`` that a person knows it by, a ``weight`` that
is the greater the longer it takes against others of its kind, and is ``quick`` if it needs no drawing and setting.
"""

from __future__ import annotations

import json
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, ClassVar, Literal

from generator.errors import Finding
from generator.publishing.inputs import Inputs
from generator.publishing.page_jobs import PageJob, QuickJob


@dataclass(frozen=True, slots=True)
class Workshop:
    """What all jobs of a run share: the room's folder, the theme asked for, the keys of the tool and common inputs."""

    folder: Path
    theme: str
    tool: str
    common: str

    @property
    def name(self) -> str:
        """What it is named by in the environment of a process."""
        return json.dumps([str(self.folder), self.theme, self.tool, self.common])


def named_workshop(name: str) -> Workshop:
    """Return the workshop that has a name."""
    folder, *others = json.loads(name)
    return Workshop(Path(folder), *others)


def workshop_of(folder: Path, theme: str, inputs: Inputs) -> Workshop:
    """Return what the jobs of a run share, from the keys of its inputs."""
    return Workshop(folder, theme, inputs.tool, inputs.common)


@dataclass(frozen=True, slots=True)
class Stamp:
    """What a sheet says of its edition: the newest mark, and whether it is ``kept``, a ``draft`` or ``own``."""

    mark: str = ""
    standing: Literal["kept", "draft", "own"] = "kept"


@dataclass(frozen=True, slots=True)
class ProjectJob(QuickJob):
    """Read a project and work it in every size and edition; with a mark, its numbers are to be kept under it."""

    project: str
    path: Path
    mark: str = ""
    day: str = ""

    @property
    def label(self) -> str:
        """How a person names it."""
        return self.project


@dataclass(frozen=True, slots=True)
class Sheet:
    """One worked size and edition: the key of what it says, its worksheet and its fellow sizes, packed.

    ``leads`` tells the sheet whose pictures stand for the whole project, ``stamp`` what it says of its edition.
    """

    size: str
    edition: str
    content: str
    leads: bool
    worksheet: bytes
    links: bytes
    stamp: Stamp = Stamp()


def by_edition(projects: Mapping[str, Sequence[Sheet]]) -> tuple[Mapping[str, Sequence[bytes]], ...]:
    """Return for each edition the worksheets of each project that has it, from the sheets of each project."""
    editions: defaultdict[str, defaultdict[str, list[bytes]]] = defaultdict(lambda: defaultdict(list))
    for project, sheets in projects.items():
        for sheet in sheets:
            editions[sheet.edition][project].append(sheet.worksheet)
    return tuple(map(dict, editions.values()))


@dataclass(frozen=True, slots=True)
class SheetJob:
    """Draw a worksheet, and write its page, its handouts and its marking strips below ``out``."""

    quick: ClassVar[bool] = False
    project: str
    sheet: Sheet
    out: Path

    @property
    def label(self) -> str:
        """How a person names it."""
        return f"{self.project}, size {self.sheet.size}, {self.sheet.edition}"

    @property
    def weight(self) -> int:
        """Roughly how long it takes: the more a worksheet holds, the longer."""
        return len(self.sheet.worksheet)


@dataclass(frozen=True, slots=True)
class FurtherJob:
    """Write the sheets about all sizes of a project below ``out``."""

    quick: ClassVar[bool] = False
    project: str
    worksheets: tuple[bytes, ...]
    stamp: Stamp
    out: Path

    @property
    def label(self) -> str:
        """How a person names it."""
        return f"{self.project}, sheets about all sizes"

    @property
    def weight(self) -> int:
        """Roughly how long it takes, against sheets of single sizes."""
        return sum(map(len, self.worksheets))


@dataclass(frozen=True, slots=True)
class RoomJob:
    """Write the sheets of the whole room below ``out``.

    ``editions`` are as ``by_edition`` returns them.
    """

    quick: ClassVar[bool] = False
    label: ClassVar[str] = "sheets of the room"
    editions: tuple[Mapping[str, Sequence[bytes]], ...]
    stamp: Stamp
    out: Path

    @property
    def weight(self) -> int:
        """Roughly how long it takes, against other sheets."""
        return sum(len(packed) for projects in self.editions for sizes in projects.values() for packed in sizes)


@dataclass(frozen=True, slots=True)
class ReferenceJob:
    """Write the turn plans and the reference below ``out``.

    ``cards`` say which project uses which plan, ``glossary`` whether the room has one.
    """

    quick: ClassVar[bool] = False
    weight: ClassVar[int] = 1
    label: ClassVar[str] = "turn plans and reference"
    cards: tuple[Mapping[str, Any], ...]
    glossary: bool
    out: Path


@dataclass(frozen=True, slots=True)
class OverviewJob(QuickJob):
    """Write the page of a project below ``out``.

    ``pictures`` say what its leading sheet drew, ``sheets`` what else there is to print, ``standing`` how its numbers
    stand to the kept editions.
    """

    project: str
    worksheets: tuple[bytes, ...]
    pictures: Mapping[str, Any]
    sheets: Sequence[Mapping[str, str]]
    standing: Mapping[str, Any]
    out: Path

    @property
    def label(self) -> str:
        """How a person names it."""
        return f"{self.project}, overview"


Job = ProjectJob | SheetJob | FurtherJob | RoomJob | ReferenceJob | OverviewJob | PageJob


@dataclass(frozen=True, slots=True)
class Outcome:
    """What came of a job: sheets or files, or else findings or a fault in words. ``seconds`` are by kind of work."""

    looks: str = ""
    sheets: tuple[Sheet, ...] = ()
    files: Mapping[str, int] = field(default_factory=dict)
    card: Mapping[str, Any] = field(default_factory=dict)
    findings: tuple[Finding, ...] = ()
    fault: str = ""
    seconds: Mapping[str, float] = field(default_factory=dict)

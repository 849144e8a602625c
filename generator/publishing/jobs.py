"""What is asked of a run and of a worker, and what they answer: plain values, so that they can be sent elsewhere.

Worksheets travel packed; only a worker opens them.
"""

from __future__ import annotations

import json
from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Literal, Protocol

from generator.calculation.worksheet.edition_files import Nested
from generator.calculation.worksheet.editions import ChangedNumber, SheetName
from generator.errors import Finding
from generator.publishing.write import FileState
from generator.rendering.cards import ClassCard, ProjectCard, SheetEditions, SheetLink, SheetTold, ThingPictures


@dataclass(frozen=True, slots=True)
class RoomVersion:
    """A room as it is now: its folder, the theme asked for, the keys of the tool and of what all projects share."""

    folder: Path
    theme: str
    tool: str
    common: str

    @property
    def name(self) -> str:
        """What it is named by in the environment of a process."""
        return json.dumps([str(self.folder), self.theme, self.tool, self.common])


def named_version(name: str) -> RoomVersion:
    """Return the version that has a name."""
    folder, *others = json.loads(name)
    return RoomVersion(Path(folder), *others)


@dataclass(frozen=True, slots=True)
class Job:
    """One thing to do: a function of the tool, ``made_by`` "package.module:function", and what it is told.

    It is called with the open room, a place to write and the ``arguments``. ``name`` is that of its entry in the
    manifest, ``label`` what a person knows it by, ``key`` that of what it says. ``weight`` is the greater the longer it
    takes against others of its kind; it is ``quick`` if it needs no drawing and no setting on paper.
    """

    name: str
    label: str
    made_by: str
    arguments: tuple[Any, ...] = ()
    key: str = ""
    weight: int = 1
    quick: bool = True


@dataclass(frozen=True, slots=True)
class Stamp:
    """What a sheet says of its edition: the newest mark, and whether it is kept, or why it is not."""

    mark: str = ""
    standing: Literal["kept", "draft", "own", "between"] = "kept"


@dataclass(frozen=True, slots=True)
class WorkedSize:
    """One worked size and edition: the key of what it says, its worksheet and its fellow sizes, packed.

    ``pictures`` is the key of what the pictures of the whole project show, empty but for the size that they show.
    ``stamp`` tells what its sheets say of their edition, ``editions`` what is otherwise since
    each mark under which it was given out, ``wordless`` is the key of its worksheet without the texts of its steps.
    """

    size: str
    edition: str
    key: str
    pictures: str
    worksheet: bytes
    links: bytes
    stamp: Stamp = Stamp()
    editions: SheetEditions | None = None
    wordless: str = ""


@dataclass(frozen=True, slots=True)
class LeftOut:
    """A size between the named ones that cannot be sewn: what it is called, its edition, and the reason."""

    size: str
    edition: str
    reason: str


@dataclass(frozen=True, slots=True)
class AgainstEditions:
    """How the sheets of a project stand to its kept editions.

    ``changed`` and ``added`` tell what is otherwise than in the newest one, ``numbers`` what the sheets of a draft say,
    ``about`` the days of corrections and what each was about.
    """

    stamp: Stamp
    changed: tuple[ChangedNumber, ...] = ()
    added: tuple[SheetName, ...] = ()
    numbers: Nested = field(default_factory=dict)
    about: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class WorkedProject:
    """A project worked in every size and edition; ``kept`` is a new text of the file of its editions, or empty.

    ``between`` are the sizes between the named ones, ``left_out`` those of them that cannot be sewn.
    """

    sizes: tuple[WorkedSize, ...]
    against: AgainstEditions
    kept: str = ""
    between: tuple[WorkedSize, ...] = ()
    left_out: tuple[LeftOut, ...] = ()


@dataclass(frozen=True, slots=True)
class SizeTold:
    """What the sheets about all sizes need of one: the key of its worksheet without the texts of its steps."""

    wordless: str


@dataclass(frozen=True, slots=True)
class SheetLinks:
    """Further sheets to print."""

    sheets: tuple[SheetLink, ...]


@dataclass(frozen=True, slots=True)
class ProjectTold:
    """What the page of a project tells other pages: its card, the turn plans that it uses, its editions and sheets."""

    card: ProjectCard
    plans: tuple[str, ...]
    against: AgainstEditions
    sheets: tuple[SheetTold, ...] = ()


Card = ThingPictures | SheetLinks | ProjectTold | ClassCard | SizeTold


@dataclass(frozen=True, slots=True)
class Outcome:
    """What came of a job: files and what it tells other jobs, or else findings, or a fault in words.

    ``looks`` is the key of how it looks, ``seconds`` are by kind of work.
    """

    looks: str = ""
    files: Mapping[str, FileState] = field(default_factory=dict)
    told: Card | WorkedProject | None = None
    findings: tuple[Finding, ...] = ()
    fault: str = ""
    seconds: Mapping[str, float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Order:
    """The room to publish.

    Without ``projects`` all of them, without ``theme`` the room's own, without ``workers`` one for each core. With a
    ``mark`` the numbers of what is published are kept under it, as of a ``day`` (2031-03-14). Where it is
    ``profiled``, the run also tells the seconds of each ``function``.
    """

    folder: Path
    theme: str = ""
    projects: tuple[str, ...] = ()
    workers: int = 0
    mark: str = ""
    day: str = ""
    profiled: bool = False

    @property
    def site(self) -> Path:
        """The folder of the published site."""
        return self.folder / "site" / "public"


class Report(Protocol):
    """Whoever wants to know how far a run is."""

    def expect(self, number: int, what: str) -> None:
        """So many more things are to be done."""

    def done(self, label: str) -> None:
        """One of them is done."""


@dataclass(slots=True)
class Published:
    """What a run did: the entries that it made and took over, and the seconds of each kind of work.

    ``drafts`` tell of projects whose numbers are not those of their newest edition, ``marked`` are those whose numbers
    were kept now, ``strays`` names under which editions are kept without a project.
    """

    made: list[str] = field(default_factory=list)
    kept: list[str] = field(default_factory=list)
    projects: int = 0
    current: bool = False
    seconds: dict[str, float] = field(default_factory=lambda: defaultdict(float))

    drafts: dict[str, AgainstEditions] = field(default_factory=dict)
    marked: list[str] = field(default_factory=list)
    strays: list[str] = field(default_factory=list)
    functions: Mapping[str, float] = field(default_factory=dict)

    def tell(self, told: Iterable[ProjectTold], marked: Iterable[str] = (), strays: Iterable[str] = ()) -> None:
        """Tell how the numbers of projects, by what their pages tell, stand to the editions that the room keeps."""
        against = {one.card.project: one.against for one in told}
        self.drafts = {name: one for name, one in against.items() if one.stamp.mark and one.stamp.standing == "draft"}
        self.marked, self.strays = list(marked), list(strays)

    def count(self, seconds: Mapping[str, float]) -> None:
        """Add the times of one job."""
        for work, spent in seconds.items():
            self.seconds[work] += spent

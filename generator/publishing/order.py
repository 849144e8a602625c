"""What is asked of a run and what it answers: plain values, and how a run tells how far it is."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Protocol

from generator.publishing.jobs import AgainstEditions, ProjectTold


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

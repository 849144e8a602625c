"""What is asked of a run and what it answers: plain values, and how a run tells how far it is."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Protocol


@dataclass(frozen=True, slots=True)
class Order:
    """The room to publish.

    Without ``projects`` all of them, without ``theme`` the room's own, without ``workers`` one for each core.
    """

    folder: Path
    theme: str = ""
    projects: tuple[str, ...] = ()
    workers: int = 0

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
    """What a run did: the entries that it made and took over, and the seconds of each kind of work."""

    made: list[str] = field(default_factory=list)
    kept: list[str] = field(default_factory=list)
    projects: int = 0
    current: bool = False
    seconds: dict[str, float] = field(default_factory=lambda: defaultdict(float))

    def count(self, seconds: Mapping[str, float]) -> None:
        """Add the times of one job."""
        for work, spent in seconds.items():
            self.seconds[work] += spent

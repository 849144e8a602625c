"""How far a run is, as a bar on the terminal: what is expected and what is done comes in, one line moves."""

from __future__ import annotations

from types import TracebackType
from typing import Self

from rich.console import Console
from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn, TimeElapsedColumn


class ProgressBar:
    """Tells how far a run is by one bar for all its work; it goes when the work is done."""

    def __init__(self) -> None:
        columns = (BarColumn(), MofNCompleteColumn(), TimeElapsedColumn(), TextColumn("{task.description}"))
        self._progress = Progress(*columns, console=Console(stderr=True), transient=True)
        self._task = self._progress.add_task("", total=0)

    def __enter__(self) -> Self:
        """Begin to show the bar."""
        self._progress.start()
        return self

    def __exit__(
        self, kind: type[BaseException] | None, fault: BaseException | None, trace: TracebackType | None
    ) -> None:
        """Take the bar away."""
        self._progress.stop()

    def expect(self, number: int, what: str) -> None:
        """Make the bar longer."""
        total = (self._progress.tasks[0].total or 0) + number
        self._progress.update(self._task, total=total, description=what)

    def done(self, label: str) -> None:
        """Move on by one."""
        self._progress.update(self._task, advance=1, description=label)

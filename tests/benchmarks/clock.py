"""A clock that goes as fast as the machine: times of different minutes can be compared by it.

On a shared machine the same work takes half as long again a minute later. So a process beside the measured ones does
the same small piece of work again and again, and where that takes twice as long, this clock goes half as fast. It is
set so that it agrees with other clocks while a piece takes ``USUAL`` seconds. That costs about a hundredth of a core.
"""

from __future__ import annotations

import multiprocessing
import statistics
import time
from collections.abc import Callable
from multiprocessing.sharedctypes import SynchronizedArray
from types import TracebackType
from typing import Self

import tinycss2

from generator.publishing.room_files import OWN_THEMES

EVERY = 0.25
USUAL = 0.002
PIECES = 3
STYLE = (OWN_THEMES / "plain" / "css" / "handout.css").read_text(encoding="utf-8")[:2500]


def pace() -> float:
    """Return how fast the machine is now: 1 where a processor reads a piece of a style sheet in the usual time."""
    return USUAL / statistics.median(_piece() for _ in range(PIECES))


def _piece() -> float:
    start = time.process_time()
    tinycss2.parse_stylesheet(STYLE)
    return time.process_time() - start


class Clock:
    """A clock that goes while its context is open."""

    def __init__(self) -> None:
        # The moment of another clock, what this one showed then, and the pace since.
        self._seen: SynchronizedArray[float] = multiprocessing.Array("d", [time.perf_counter(), 0.0, pace()])
        self._process = multiprocessing.Process(target=_keep, args=(self._seen,), daemon=True)

    def __enter__(self) -> Self:
        """Let it go."""
        self._process.start()
        return self

    def __exit__(
        self, kind: type[BaseException] | None, fault: BaseException | None, trace: TracebackType | None
    ) -> None:
        """Stop it."""
        self._process.terminate()
        self._process.join()

    def __call__(self) -> float:
        """Return what it shows [s]."""
        return _shown(self._seen, time.perf_counter())

    def right(self, measure: Callable[[], float]) -> float:
        """Return a time that ``measure`` took by another clock as it would be by this one [s]."""
        start, shown = time.perf_counter(), self()
        seconds = measure()
        return seconds * (self() - shown) / (time.perf_counter() - start)


def _keep(seen: SynchronizedArray[float]) -> None:
    while True:
        now_pace, now = pace(), time.perf_counter()
        seen[:] = [now, _shown(seen, now), now_pace]
        time.sleep(EVERY)


def _shown(seen: SynchronizedArray[float], now: float) -> float:
    moment, shown, since = seen[:]
    return shown + since * (now - moment)

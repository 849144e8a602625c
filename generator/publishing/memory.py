"""How much a process may take: the bound of one sheet in memory and time, and what a worker gives back after it.

A project, a theme or a picture may ask for more than any sheet needs, out of malice or by mistake. Such a sheet is
given up and named; without a bound it would take the machine with it.
"""

from __future__ import annotations

import ctypes
import gc
import os
import resource
import signal
import sys
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from types import FrameType

from generator.errors import PublishError

SECONDS, MEBIBYTES = "TUCKWRIGHT_SECONDS", "TUCKWRIGHT_MEBIBYTES"
_MOST = {SECONDS: 180, MEBIBYTES: 1024}
_BEAT = 0.25
# Work in the libraries that does not look up is ended by the system itself, so much later.
_GRACE = 60
# What a worker does before another one takes over: so many jobs, or fewer where its memory [MiB] has grown beyond this,
# or beyond so much before it looks for what it can give back.
_JOBS = 8
_ENOUGH = 150
_FAR_TOO_MUCH = 165
_LOOK = (
    "Look for a loop without end in a template, thousands of columns or rows in a style sheet, a picture inside "
    "itself, or very many pieces"
)


class TakesTooMuch(BaseException):
    """One sheet took more than its bound; not an ordinary fault, so that no library takes it for one of its own."""


@contextmanager
def bounded() -> Iterator[Callable[[], None]]:
    """Give up the block where it takes more memory or time of a processor than one sheet may.

    The time begins anew whenever the function that the block is given is called. Only the main thread can be given up.

    Raises
    ------
    PublishError
        If it took too much, with what to do.
    """
    since, before = [time.process_time()], resident()

    def look(_number: int, _frame: FrameType | None) -> None:
        if time.process_time() - since[0] > most(SECONDS):
            raise TakesTooMuch(too_long())
        if resident() - before > most(MEBIBYTES):
            raise TakesTooMuch(too_large())

    def again() -> None:
        since[0] = time.process_time()

    if threading.current_thread() is not threading.main_thread():
        yield again
        return
    handler = signal.signal(signal.SIGALRM, look)
    signal.setitimer(signal.ITIMER_REAL, _BEAT, _BEAT)
    try:
        yield again
    except TakesTooMuch as fault:
        raise PublishError(str(fault)) from None
    except MemoryError:
        raise PublishError(too_large()) from None
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0)
        signal.signal(signal.SIGALRM, handler)


def most(bound: str) -> int:
    """Return a bound: that of the environment, or the usual one."""
    written = os.environ.get(bound, "")
    return int(written) if written.isascii() and written.isdigit() else _MOST[bound]


def too_long() -> str:
    """Return in words that a sheet took too long."""
    return (
        f"it took a processor more than {most(SECONDS)} s. {_LOOK}; on a slow machine set {SECONDS} to a larger number"
    )


def too_large() -> str:
    """Return in words that a sheet took too much memory."""
    return f"it took more than {most(MEBIBYTES)} MiB of memory. {_LOOK}; where it is meant, set {MEBIBYTES} to more"


def end_at_the_bound() -> None:
    """Let the system end this process where the next job goes far beyond its bound without ever looking up."""
    _limit(resource.RLIMIT_CPU, int(time.process_time()) + most(SECONDS) + _GRACE)
    if sys.platform == "linux":
        # This counts what is set apart, and libraries set far more apart than they ever use.
        _limit(resource.RLIMIT_AS, _reserved() + 2 * most(MEBIBYTES) * 2**20)


def _limit(kind: int, wanted: int) -> None:
    with suppress(OSError, ValueError):
        hard = resource.getrlimit(kind)[1]
        resource.setrlimit(kind, (wanted if hard == resource.RLIM_INFINITY else min(wanted, hard), hard))


def has_done_enough(jobs: int) -> bool:
    """Give memory back that is free, and return whether another worker should take over from this one."""
    if jobs >= _JOBS or resident() > _FAR_TOO_MUCH:
        return True
    gc.collect()
    trim = getattr(ctypes.CDLL(None), "malloc_trim", None)
    if trim:
        trim(0)
    return resident() > _ENOUGH


def resident() -> float:
    """Return how much memory of this process is resident [MiB]; where the system does not tell, the most so far."""
    try:
        return _pages(1) / 2**20
    except OSError:
        return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 2**20


def _reserved() -> int:
    """Return how much memory this process has set apart [bytes], used or not."""
    return _pages(0)


def _pages(field: int) -> int:
    return int(Path("/proc/self/statm").read_text(encoding="ascii").split()[field]) * os.sysconf("SC_PAGE_SIZE")

"""A worker: a job comes in, it is done, and what came of it goes out, also when it went wrong.

What makes a job is loaded with the first job of its kind: reading files needs no drawing, drawing no reading. Worker
processes have everything loaded before they are split off.
"""

from __future__ import annotations

import gc
import os
import signal
import tempfile
import traceback
from collections import defaultdict
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, suppress
from multiprocessing import parent_process
from multiprocessing.connection import Connection
from pathlib import Path
from pkgutil import resolve_name
from threading import Thread
from types import FrameType

from generator.errors import FaultyFileError, TuckwrightError
from generator.publishing.jobs import Job, Outcome, RoomVersion
from generator.publishing.memory import bounded, end_at_the_bound, has_done_enough
from generator.publishing.room import open_room
from generator.publishing.write import Output, not_read

THINGS_BETWEEN_COLLECTIONS = 50_000
_A_MOMENT = 5.0
_BEAT = 0.01


def done(version: RoomVersion, out: Path, job: Job) -> Outcome:
    """Do a job and return what came of it; a fault comes back in words, with the name of the job."""
    try:
        return _done(version, out, job)
    except FaultyFileError as fault:
        return Outcome(findings=fault.findings)
    except TuckwrightError as fault:
        return Outcome(fault=f"{job.label}: {fault}")
    except OSError as fault:
        return Outcome(fault=f"{job.label}: {not_read(fault, version.folder)}")
    except Exception as fault:
        if os.environ.get("TUCKWRIGHT_TRACE"):
            traceback.print_exc()
        told = f"{job.label}: a fault of the tool itself ({type(fault).__name__}: {fault})"
        return Outcome(fault=f"{told}; please report it with the output of the same command after TUCKWRIGHT_TRACE=1")


def _done(version: RoomVersion, out: Path, job: Job) -> Outcome:
    with bounded() as again:
        room, output = open_room(version), Output(out, again)
        told = resolve_name(job.made_by)(room, output, *job.arguments)
        return Outcome(room.looks, output.files, told, seconds=output.seconds)


def timed(version: RoomVersion, out: Path, job: Job, *, profiled: bool) -> tuple[Outcome, dict[str, float]]:
    """Do a job; return what came of it and, where it is profiled, the seconds that each function took by its name."""
    if not profiled:
        return done(version, out, job), {}
    with sampled() as functions:
        outcome = done(version, out, job)
    return outcome, dict(functions)


def serve(jobs: Connection, version: RoomVersion, out: Path, aside: Path, *, profiled: bool = False) -> None:
    """Do jobs as they come, until None comes: that ends a worker.

    With what came of a job goes whether this worker has done enough: another one should do the next. The libraries put
    fonts aside in files, which would outlive a worker; so they get a folder of its own below the run's, ``aside``.
    """
    # A sheet is some hundred thousand small things, nearly all of which go without the collector's help.
    gc.set_threshold(THINGS_BETWEEN_COLLECTIONS)
    leaving = Thread(target=_leave_with_the_run, args=(aside,), daemon=True)
    leaving.start()
    if not aside.is_dir():
        return  # The run ended, and cleared away, before this worker had begun.
    with tempfile.TemporaryDirectory(dir=aside, ignore_cleanup_errors=True) as tempfile.tempdir:
        try:
            for number, job in enumerate(iter(jobs.recv, None), 1):
                end_at_the_bound()
                outcome, functions = timed(version, out, job, profiled=profiled)
                jobs.send((outcome, functions, has_done_enough(number)))
        except (EOFError, BrokenPipeError, ConnectionResetError):
            # The run has died, which ends this process in a moment, or nobody wants to know any more.
            leaving.join(_A_MOMENT)


def _leave_with_the_run(aside: Path) -> None:
    """Stop in the middle of a job when the run has died: whatever is written then is in the way of the next run.

    One worker clears away what was put aside, the one that moves it; it becomes the process that removes it, so that
    nothing of it can go on adding to that, and two of them would be in each other's way.
    """
    run = parent_process()
    if run:
        run.join()
        moved = aside.with_name(f"{aside.name}-left")
        with suppress(OSError):
            aside.rename(moved)
            os.execl("/bin/rm", "rm", "-rf", str(moved))  # noqa: S606 -- the folder has an absolute path of this run
        os._exit(1)


@contextmanager
def sampled() -> Iterator[Mapping[str, float]]:
    """Count, while the block runs, how long a processor works at each function itself, by its name.

    To look now and then costs next to nothing; to follow every call would double the time and shift it. Only the main
    thread of a process can be looked at so.
    """
    seconds: defaultdict[str, float] = defaultdict(float)

    def look(_number: int, frame: FrameType | None) -> None:
        if frame is not None:
            seconds[f"{frame.f_globals.get('__name__', '')}.{frame.f_code.co_qualname}"] += _BEAT

    before = signal.signal(signal.SIGPROF, look)
    signal.setitimer(signal.ITIMER_PROF, _BEAT, _BEAT)
    try:
        yield seconds
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)

"""A pair of hands: a job comes in, it is done, and what came of it goes out, also when it went wrong.

What a kind of job needs is loaded with the first job of that kind: reading files needs no drawing, drawing no reading.
Worker processes have everything loaded before they are split off.
"""

from __future__ import annotations

import ctypes
import gc
import os
import tempfile
import traceback
from collections.abc import Mapping
from contextlib import suppress
from multiprocessing import parent_process
from multiprocessing.connection import Connection
from pathlib import Path
from threading import Thread

from generator.errors import FaultyFileError, TuckwrightError
from generator.publishing.jobs import (
    FurtherJob,
    Job,
    Outcome,
    OverviewJob,
    ProjectJob,
    ReferenceJob,
    RoomJob,
    SheetJob,
    Workshop,
)
from generator.publishing.later import (
    CLASS_PAGES,
    CORRECTING,
    FURTHER,
    LOOKUP,
    OVERVIEWS,
    ROOM_PAGES,
    SHEETS,
    WORKING,
    later,
)
from generator.publishing.opened import open_room
from generator.publishing.page_jobs import ClassesJob, ClassJob, CorrectionsJob, GuidesJob, HomeJob, WordsJob
from generator.publishing.sampled import sampled

THINGS_BETWEEN_COLLECTIONS = 50_000
# What a worker does before another one takes over: so many jobs, or fewer where its memory [MiB] has grown beyond this,
# or beyond so much before it looks for what it can give back.
_A_SHIFT = 8
_ENOUGH = 150
_FAR_TOO_MUCH = 165
_A_MOMENT = 5.0
_DOERS: Mapping[type[Job], tuple[str, str]] = {
    ProjectJob: (WORKING, "work_project"),
    SheetJob: (SHEETS, "make_sheet"),
    FurtherJob: (FURTHER, "make_further"),
    RoomJob: (FURTHER, "make_room"),
    ReferenceJob: (LOOKUP, "make_reference"),
    OverviewJob: (OVERVIEWS, "make_overview"),
    HomeJob: (ROOM_PAGES, "make_home"),
    WordsJob: (ROOM_PAGES, "make_words"),
    GuidesJob: (ROOM_PAGES, "make_guides"),
    CorrectionsJob: (CORRECTING, "make_corrections"),
    ClassJob: (CLASS_PAGES, "make_class"),
    ClassesJob: (CLASS_PAGES, "make_classes"),
}


def done(workshop: Workshop, job: Job) -> Outcome:
    """Do a job and return what came of it; a fault comes back in words, with the name of the job."""
    try:
        return _done(workshop, job)
    except FaultyFileError as fault:
        return Outcome(findings=fault.findings)
    except TuckwrightError as fault:
        return Outcome(fault=f"{job.label}: {fault}")
    except OSError as fault:
        return Outcome(fault=f"{job.label}: {fault.filename or 'a file'}: {fault.strerror or fault}")
    except Exception as fault:
        if os.environ.get("TUCKWRIGHT_TRACE"):
            traceback.print_exc()
        told = f"{job.label}: a fault of the tool itself ({type(fault).__name__}: {fault})"
        return Outcome(fault=f"{told}; please report it with the output of the same command after TUCKWRIGHT_TRACE=1")


def _done(workshop: Workshop, job: Job) -> Outcome:
    module, function = _DOERS[type(job)]
    outcome: Outcome = getattr(later(module), function)(open_room(workshop), job)
    return outcome


def timed(workshop: Workshop, job: Job, *, profiled: bool) -> tuple[Outcome, dict[str, float]]:
    """Do a job; return what came of it and, where it is profiled, the seconds that each function took by its name."""
    if not profiled:
        return done(workshop, job), {}
    with sampled() as functions:
        outcome = done(workshop, job)
    return outcome, dict(functions)


def serve(jobs: Connection, workshop: Workshop, aside: Path, *, profiled: bool = False) -> None:
    """Do jobs as they come, until None comes: that sends a worker home.

    With what came of a job goes whether this worker has had enough: another one should do the next. The libraries put
    fonts aside in files, which would outlive a worker; so they get a folder of its own below the run's, ``aside``.
    """
    # A sheet is some hundred thousand small things, nearly all of which go without the collector's help.
    gc.set_threshold(THINGS_BETWEEN_COLLECTIONS)
    leaving = Thread(target=_leave_with_the_run, args=(aside,), daemon=True)
    leaving.start()
    with tempfile.TemporaryDirectory(dir=aside, ignore_cleanup_errors=True) as tempfile.tempdir:
        try:
            for number, job in enumerate(iter(jobs.recv, None), 1):
                outcome, functions = timed(workshop, job, profiled=profiled)
                jobs.send((outcome, functions, number == _A_SHIFT or _has_enough()))
        except (EOFError, BrokenPipeError, ConnectionResetError):
            # The run has died, which ends this process in a moment, or nobody wants to know any more.
            leaving.join(_A_MOMENT)


def _has_enough() -> bool:
    """Give memory back that is free, and return whether too much is left."""
    if _resident() > _FAR_TOO_MUCH:
        return True
    gc.collect()
    _give_back()
    return _resident() > _ENOUGH


def _give_back() -> None:
    """Give memory that is free in small pieces back to the system, where its C library knows how."""
    trim = getattr(ctypes.CDLL(None), "malloc_trim", None)
    if trim:
        trim(0)


def _resident() -> float:
    """Return how much memory of this process is resident [MiB]; 0 where the system does not tell."""
    try:
        return int(Path("/proc/self/statm").read_text(encoding="ascii").split()[1]) * os.sysconf("SC_PAGE_SIZE") / 2**20
    except OSError:
        return 0


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
            os.execlp("rm", "rm", "-rf", str(moved))  # noqa: S606, S607 -- the folder has an absolute path of this run
        os._exit(1)

"""A pair of hands: a job comes in, it is done, and what came of it goes out, also when it went wrong.

Everything heavy is loaded with this module: drawing, setting, reading of files. Worker processes load it once, before
they are split off.
"""

from __future__ import annotations

import gc
import os
import signal
import traceback
from contextlib import suppress
from multiprocessing.connection import Connection

from generator.errors import FaultyFileError, TuckwrightError
from generator.publishing.jobs import HomeJob, Job, Outcome, OverviewJob, ProjectJob, Workshop
from generator.publishing.opened import open_room
from generator.publishing.overviews import make_home, make_overview
from generator.publishing.sheets import make_sheet
from generator.publishing.working import work_project


def done(workshop: Workshop, job: Job) -> Outcome:
    """Do a job and return what came of it; a fault comes back in words, with the name of the job."""
    try:
        return _done(workshop, job)
    except FaultyFileError as fault:
        return Outcome(findings=fault.findings)
    except (TuckwrightError, OSError) as fault:
        return Outcome(fault=f"{job.label}: {fault}")
    except Exception as fault:
        if os.environ.get("TUCKWRIGHT_TRACE"):
            traceback.print_exc()
        told = f"{job.label}: a fault of the tool itself ({type(fault).__name__}: {fault})"
        return Outcome(fault=f"{told}; please report it with the output of the same command after TUCKWRIGHT_TRACE=1")


def _done(workshop: Workshop, job: Job) -> Outcome:
    room = open_room(workshop)
    if isinstance(job, ProjectJob):
        return work_project(room, job)
    if isinstance(job, OverviewJob):
        return make_overview(room, job)
    if isinstance(job, HomeJob):
        return make_home(room, job)
    return make_sheet(room, job)


def serve(jobs: Connection, workshop: Workshop) -> None:
    """Do jobs as they come, until nobody is left to send any: that ends a worker whose run was killed, too."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    # What is loaded now stays for good: the garbage collector need not look through it after every few pages.
    gc.collect()
    gc.freeze()
    with suppress(EOFError, BrokenPipeError, ConnectionResetError):
        while True:
            jobs.send(done(workshop, jobs.recv()))

"""Several workers: jobs come in, what came of each goes out as soon as it is done.

A few quick jobs are done here, in this process, while the libraries are still being loaded for the workers; and so is
a little work for one worker alone. Other jobs go to worker processes, the longest first, each to whoever is free. A
worker has a line of its own to this process: when one dies, it is known over which job, and the others go on. The
libraries lose some memory with every sheet, so a worker that has done enough ends, and another one comes. What
workers put aside lies in a folder of the run, which goes at its end however the workers ended.
"""

from __future__ import annotations

import multiprocessing
import os
import signal
from collections import defaultdict, deque
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from multiprocessing import forkserver, resource_tracker
from multiprocessing.connection import Connection, wait
from multiprocessing.process import BaseProcess
from pathlib import Path
from pkgutil import resolve_name
from tempfile import TemporaryDirectory
from types import TracebackType
from typing import Self

from generator.publishing.jobs import Job, Outcome, RoomVersion
from generator.publishing.memory import too_long
from generator.publishing.preload import MODULE, ROOM

_FEW = 4
_A_LITTLE = 8
_DIED = "the worker died over it (was the machine out of memory?); run the command again, with --workers 1 if it recurs"


class Pool:
    """Does jobs that write below ``out``, in worker processes where there are several; a context that ends them.

    Where it is ``profiled``, ``functions`` holds the seconds that each function of the program took by its name. What
    workers put aside lies in a folder ``beside`` others, that of the system without it.
    """

    def __init__(
        self, version: RoomVersion, out: Path, most: int = 0, *, profiled: bool = False, beside: Path | None = None
    ) -> None:
        self.functions: defaultdict[str, float] = defaultdict(float)
        self._profiled = profiled
        self._version = version
        self._out = out
        self._most = most or _cores()
        self._idle: list[Connection] = []
        self._processes: dict[Connection, BaseProcess] = {}
        self._aside: TemporaryDirectory[str] | None = None
        self._stopped = False
        self._beside = beside

    def __enter__(self) -> Self:
        """Return the pool; no worker has been started yet."""
        return self

    def __exit__(
        self, kind: type[BaseException] | None, fault: BaseException | None, trace: TracebackType | None
    ) -> None:
        """End the workers; after a fault or Ctrl-C without waiting for what they are at."""
        for line, process in self._processes.items():
            self._send(line, None)
            line.close()
            if kind is not None:
                process.terminate()
        for process in self._processes.values():
            process.join()
        if self._aside:
            self._aside.cleanup()

    def stop(self) -> None:
        """End the workers at once; whoever waits for what they are at is told that they died. For another thread."""
        self._stopped = True
        for process in list(self._processes.values()):
            process.terminate()

    def prepare(self) -> None:
        """Begin to load what the workers will need, in a process of its own that they are split off from."""
        if self._most > 1:
            _prepare(self._version)

    def outcomes(self, jobs: Sequence[Job]) -> Iterator[tuple[int, Outcome]]:
        """Do jobs and give what came of each with its place among them, in the order in which they are done."""
        workers = min(self._most, len(jobs))
        # A worker takes as long to start as a few sheets take to set; so little is done here.
        little = self._most == 1 and len(jobs) <= _A_LITTLE
        few = len(jobs) <= _FEW and all(job.quick for job in jobs)
        if not self._processes and (little or few):
            timed = resolve_name("generator.publishing.worker:timed")
            for number, job in enumerate(jobs):
                yield number, self._counted(*timed(self._version, self._out, job, profiled=self._profiled))
            return
        # The longest first: one that came last would be waited for alone.
        waiting = deque(sorted(range(len(jobs)), key=lambda number: jobs[number].weight, reverse=True))
        busy: dict[Connection, int] = {}
        while waiting or busy:
            while waiting and len(busy) < max(workers, 1):
                line = self._idle.pop() if self._idle else self._started()
                busy[line] = waiting.popleft()
                self._send(line, jobs[busy[line]])
            ready = set(wait(list(busy)))
            for line in [line for line in busy if line in ready]:
                number = busy.pop(line)
                yield number, self._received(line, jobs[number])

    def _send(self, line: Connection, job: Job | None) -> None:
        try:
            line.send(job)
        except OSError:
            # The worker died while it was idle; the line tells so when it is read.
            return

    def _received(self, line: Connection, job: Job) -> Outcome:
        try:
            outcome, functions, enough = line.recv()
        except (EOFError, OSError):
            return Outcome(fault=f"{job.label}: {too_long() if self._ended(line) == -signal.SIGXCPU else _DIED}")
        if enough:
            self._ended(line)
        else:
            self._idle.append(line)
        return self._counted(outcome, functions)

    def _counted(self, outcome: Outcome, functions: Mapping[str, float]) -> Outcome:
        for name, seconds in functions.items():
            self.functions[name] += seconds
        return outcome

    def _ended(self, line: Connection) -> int | None:
        """End a worker and return its exit code."""
        self._send(line, None)
        line.close()
        process = self._processes.pop(line)
        process.join()
        return process.exitcode

    def _started(self) -> Connection:
        """Start one more worker and return the line to it."""
        _prepare(self._version)
        self._aside = self._aside or TemporaryDirectory(
            prefix="tuckwright-", dir=self._beside, ignore_cleanup_errors=True
        )
        context = multiprocessing.get_context("forkserver")
        here, there = context.Pipe()
        shared = (self._version, self._out, self._aside.name, self._profiled)
        process = context.Process(target=_serve, args=(there, *shared), daemon=True)
        process.start()
        there.close()
        self._processes[here] = process
        if self._stopped:
            # It was started while the others were ended.
            process.terminate()
        return here


def _serve(line: Connection, version: RoomVersion, out: Path, aside: str, profiled: bool) -> None:
    resolve_name("generator.publishing.worker:serve")(line, version, out, Path(aside), profiled=profiled)


def _prepare(version: RoomVersion) -> None:
    """Start the process that loads what workers need, if it does not run yet."""
    multiprocessing.get_context("forkserver").set_forkserver_preload([MODULE])
    with _without_the_working_folder({ROOM: version.name}):
        # The tracker lifts the bar on Ctrl-C when it starts, so it must start first.
        resource_tracker.ensure_running()
        with _ctrl_c_held_back():
            forkserver.ensure_running()


@contextmanager
def _without_the_working_folder(more: Mapping[str, str]) -> Iterator[None]:
    """Start processes with further variables, and so that none of them loads a file of the working folder as code."""
    places = os.environ.get("PYTHONPATH", "").split(os.pathsep)
    safe = {"PYTHONSAFEPATH": "1", "PYTHONPATH": os.pathsep.join(filter(os.path.isabs, places))}
    before = {name: os.environ.get(name) for name in (*safe, *more)}
    os.environ.update({**safe, **more})
    try:
        yield
    finally:
        for name, value in before.items():
            if value is None:
                del os.environ[name]
            else:
                os.environ[name] = value


def _cores() -> int:
    """Return how many cores this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


@contextmanager
def _ctrl_c_held_back() -> Iterator[None]:
    """Start processes that leave Ctrl-C to this one, which stops them in good order; here it is only put off."""
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)

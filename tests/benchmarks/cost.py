"""What a command and the processes that it starts take: a command comes in, mebibytes and seconds go out.

Linux only: it looks into /proc while the command runs.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import tempfile
import time
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from tests.benchmarks.clock import Clock

BEAT = 0.05
TICKS = os.sysconf("SC_CLK_TCK")


@dataclass(frozen=True, slots=True)
class Cost:
    """What a command took.

    The most that was resident [MiB] in the process that was called and in the largest of those below it; how long a
    person waited and how long processors worked, of all processes together [s].
    """

    parent: int
    worker: int
    waited: float
    worked: float


def mean(costs: Sequence[Cost]) -> Cost:
    """Return the mean of times, and the most of memories."""
    return Cost(
        max(cost.parent for cost in costs),
        max(cost.worker for cost in costs),
        statistics.fmean(cost.waited for cost in costs),
        statistics.fmean(cost.worked for cost in costs),
    )


def cost_of(command: list[str], folder: Path, clock: Clock) -> Cost:
    """Run a command, which must end well, and return what it took by the clock."""
    with tempfile.TemporaryFile() as said:
        start, shown = time.perf_counter(), clock()
        process = subprocess.Popen(command, cwd=folder, stdout=subprocess.DEVNULL, stderr=said)
        most, worked = watched(process)
        waited, by_clock = time.perf_counter() - start, clock() - shown
        if process.returncode:
            said.seek(0)
            raise SystemExit(f"{' '.join(command)} in {folder} failed:\n{said.read().decode()}")
    below = max((most[number] for number in most if number != process.pid), default=0)
    return Cost(most.get(process.pid, 0), below, by_clock, sum(worked.values()) * by_clock / waited)


def watched(process: subprocess.Popen[bytes]) -> tuple[dict[int, int], dict[int, float]]:
    """Look at a process until it ends; return the most memory and the time of it and all below it, by number."""
    most: defaultdict[int, int] = defaultdict(int)
    worked: dict[int, float] = {}
    while process.poll() is None:
        for number in family(process.pid):
            most[number] = max(most[number], resident(number))
            worked[number] = max(worked.get(number, 0.0), processor_time(number))
        time.sleep(BEAT)
    return most, worked


def family(number: int) -> set[int]:
    """Return a process and all below it."""
    found, waiting = {number}, [number]
    while waiting:
        children = {int(child) for task in tasks(waiting.pop()) for child in read(task / "children").split()}
        waiting += children - found
        found |= children
    return found


def tasks(number: int) -> list[Path]:
    try:
        return list(Path(f"/proc/{number}/task").iterdir())
    except OSError:
        return []


def processor_time(number: int) -> float:
    """Return how long processors have worked for a process so far [s]."""
    fields = read(Path(f"/proc/{number}/stat")).rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / TICKS if fields else 0.0


def resident(number: int) -> int:
    """Return how much memory of a process is resident [MiB]."""
    lines = read(Path(f"/proc/{number}/status")).splitlines()
    return next((int(line.split()[1]) // 1024 for line in lines if line.startswith("VmRSS:")), 0)


def read(file: Path) -> str:
    """Return what stands in a file, nothing where its process has gone."""
    try:
        return file.read_text()
    except OSError:
        return ""

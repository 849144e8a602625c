"""How much memory a command and the processes that it starts take at most: a command comes in, mebibytes go out.

Linux only: it looks into /proc while the command runs.
"""

from __future__ import annotations

import subprocess
import time
from dataclasses import dataclass
from pathlib import Path

BEAT = 0.05


@dataclass(frozen=True, slots=True)
class Peak:
    """The most that was resident [MiB]: in the process that was called, and in the largest of those below it."""

    parent: int
    worker: int


def peak_memory(command: list[str], folder: Path) -> Peak:
    """Run a command and return the most memory that it and any process below it took."""
    process = subprocess.Popen(command, cwd=folder, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    own = below = 0
    while process.poll() is None:
        for number in family(process.pid):
            if number == process.pid:
                own = max(own, resident(number))
            else:
                below = max(below, resident(number))
        time.sleep(BEAT)
    return Peak(own, below)


def family(number: int) -> set[int]:
    """Return a process and all below it."""
    parents = {int(path.name): parent(path) for path in Path("/proc").iterdir() if path.name.isdigit()}
    found, more = {number}, True
    while more:
        grown = found | {child for child, above in parents.items() if above in found}
        found, more = grown, grown != found
    return found


def parent(process: Path) -> int:
    try:
        return int((process / "stat").read_text().rpartition(")")[2].split()[1])
    except OSError:
        return 0


def resident(number: int) -> int:
    try:
        lines = Path(f"/proc/{number}/status").read_text().splitlines()
    except OSError:
        return 0
    return next((int(line.split()[1]) // 1024 for line in lines if line.startswith("VmRSS:")), 0)

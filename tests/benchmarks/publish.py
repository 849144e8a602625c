"""How long publishing takes, as ratios that hold on any machine: ``python -m tests.benchmarks.publish``.

A room with one project of the demo room is published under several conditions, and one with ten copies of it. What
every time is compared with was measured in the same run. Not a test: nothing fails.
"""

from __future__ import annotations

import os
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

import click

from tests.benchmarks.floor import floor
from tests.benchmarks.memory import Peak, peak_memory

ROOT = Path(__file__).resolve().parents[2]
PROJECT = "quay-cushion"
TOOL = [sys.executable, "-m", "generator"]
REPEATS = 5


def room_of(folder: Path, copies: int) -> Path:
    """Make a room with so many copies of one project, and themes of its own that can be changed."""
    (folder / "projects").mkdir(parents=True)
    (folder / "site").mkdir()
    shutil.copy(ROOT / "site" / "site.yaml", folder / "site")
    shutil.copytree(ROOT / "themes", folder / "themes")
    for number in range(copies):
        shutil.copy(ROOT / "projects" / f"{PROJECT}.yaml", folder / "projects" / f"cushion-{number}.yaml")
    return folder


def timed(command: list[str], folder: Path) -> float:
    start = time.perf_counter()
    subprocess.run(command, cwd=folder, check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    return time.perf_counter() - start


def published(room: Path, *words: str) -> float:
    return timed([*TOOL, "publish", *words], room)


def cold(room: Path, *words: str) -> float:
    shutil.rmtree(room / "site" / "public", ignore_errors=True)
    return published(room, *words)


def after(room: Path, file: str, change: Callable[[str], str]) -> float:
    """Publish after a change of one file, and put the file back."""
    path = room / file
    before = path.read_text(encoding="utf-8")
    path.write_text(change(before), encoding="utf-8")
    taken = published(room)
    path.write_text(before, encoding="utf-8")
    published(room)
    return taken


def interleaved(one: Callable[[], float], other: Callable[[], float]) -> tuple[float, float]:
    """Return the medians of two things measured in turn, so that both see the same machine."""
    pairs = [(one(), other()) for _ in range(REPEATS)]
    first, second = zip(*pairs, strict=True)
    return statistics.median(first), statistics.median(second)


def line(what: str, seconds: float, against: str, other: float) -> None:
    click.echo(f"{what:<44} {seconds:8.2f} s  {seconds / other:6.2f} x  {against} ({other:.2f} s)")


def small_room(folder: Path) -> float:
    """Measure a room of one project, and return how long it takes from nothing."""
    room, project = room_of(folder, 1), "projects/cushion-0.yaml"
    one, several = cold(room, "--workers", "1"), cold(room)
    hands = len(os.sched_getaffinity(0))
    line("from nothing, one worker", one, "drawing and setting alone", floor(room))
    line(f"from nothing, {hands} workers", several, "one worker", one)
    nothing, bare = interleaved(lambda: published(room), lambda: timed([sys.executable, "-c", "pass"], room))
    line("nothing changed", nothing, "a bare interpreter", bare)
    remark = after(room, project, lambda text: f"# A remark.\n{text}")
    line("a remark", remark, "from nothing", several)
    size = after(room, project, lambda text: text.replace("side: 20 in", "side: 21 in"))
    line("one line that reaches one size", size, "from nothing", several)
    title = after(room, project, lambda text: text.replace("title: Quay", "title: Lee"))
    line("one line that reaches every size", title, "from nothing", several)
    screen = after(room, "themes/plain/css/screen.css", lambda text: f"{text}\n/* */")
    line("a style sheet that pages link to", screen, "from nothing", several)
    paper = after(room, "themes/plain/css/handout.css", lambda text: f"{text}\n/* */")
    line("a style sheet of the sheets", paper, "from nothing", several)
    return several


def large_room(folder: Path, small: float) -> Peak:
    """Measure a room of ten projects, and return how much memory it takes."""
    room = room_of(folder, 10)
    start = time.perf_counter()
    peak = peak_memory([*TOOL, "publish"], room)
    line("ten projects from nothing", time.perf_counter() - start, "ten times one", 10 * small)
    nothing, bare = interleaved(lambda: published(room), lambda: timed([sys.executable, "-c", "pass"], room))
    line("ten projects, nothing changed", nothing, "a bare interpreter", bare)
    return peak


def main() -> None:
    """Measure and print."""
    with tempfile.TemporaryDirectory() as folder:
        small = small_room(Path(folder) / "small")
        peak = large_room(Path(folder) / "large", small)
    click.echo(f"memory at its highest: {peak.parent} MiB where it was called, {peak.worker} MiB in a worker")


if __name__ == "__main__":
    main()

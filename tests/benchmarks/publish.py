"""How long publishing takes, as ratios that hold on any machine: ``python -m tests.benchmarks.publish``.

A room with some projects of the demo room is published under several conditions, and one with ten times as many. What
every time is compared with was measured in the same run, by a clock that goes as fast as the machine. Lines that begin
with "work" count what processors did. Not a test: nothing fails, a goal missed is marked.
"""

from __future__ import annotations

import operator
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

from generator.publishing.manifest import OWN_FOLDER
from tests.benchmarks.clock import Clock
from tests.benchmarks.cost import Cost, cost_of, mean
from tests.benchmarks.rooms import change, room_of

PROJECTS = ("quay-cushion", "pier-bolster", "pincushion-sample")
EDITED = "quay-cushion"
COPIED = ("pincushion-sample",)
TOOL = [sys.executable, "-m", "generator", "publish"]
REPEATS = 9
SIGNS = {"<": operator.lt, "<=": operator.le, ">=": operator.ge}
HANDS = len(os.sched_getaffinity(0))


def line(what: str, measured: float, against: str, other: float, goal: str = "") -> None:
    """Print one line of the table; a goal is '<= 1.2' or '>= 1.8'."""
    ratio = measured / other
    click.echo(f"{what:<42}{measured:9.2f} s {ratio:8.2f} x  {against} ({other:.2f} s){told_goal(ratio, goal)}")


def told_goal(value: float, goal: str) -> str:
    if not goal:
        return ""
    sign, bound = goal.split()
    met = SIGNS[sign](value, float(bound))
    return f"; goal {goal}: {'met' if met else 'MISSED'}"


def waited(command: list[str], folder: Path, clock: Callable[[], float] = time.perf_counter) -> float:
    start = clock()
    subprocess.run(command, cwd=folder, check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    return clock() - start


def cold(room: Path, clock: Clock, *words: str) -> Cost:
    for made in (room / "site" / "public", room / OWN_FOLDER):
        shutil.rmtree(made, ignore_errors=True)
    return cost_of([*TOOL, *words], room, clock)


def after(room: Path, file: str, changed: Callable[[str], str], clock: Clock) -> float:
    """Publish after a change of one file, which must change."""
    assert change(room / file, changed) != (room / file).read_text(encoding="utf-8")
    return waited(TOOL, room, clock)


def apart(module: str, room: Path, what: str = "") -> float:
    """Return what a measure of a room tells [s], taken in a process of its own, which remembers nothing."""
    what = what or module
    told = f"from tests.benchmarks.{module} import {what}; from pathlib import Path; print({what}(Path({str(room)!r})))"
    return float(subprocess.run([sys.executable, "-c", told], check=True, capture_output=True, text=True).stdout)


def nothing_changed(room: Path, what: str) -> None:
    """Compare the medians of two things measured in turn, so that both see the same machine."""
    bare = [sys.executable, "-c", "pass"]
    pairs = [(waited(TOOL, room), waited(bare, room)) for _ in range(REPEATS)]
    nothing, other = (statistics.median(times) for times in zip(*pairs, strict=True))
    line(what, nothing, "a bare interpreter", other, "<= 12")


def from_nothing(room: Path, clock: Clock) -> Cost:
    """Publish a room from nothing with all hands and with one, and compare both with its floor.

    The floor is measured between two runs with all hands: where the machine grows faster or slower meanwhile, their
    mean does so too.
    """
    before = cold(room, clock)
    least = clock.right(lambda: apart("floor", room))
    libraries = clock.right(lambda: apart("bare", room))
    several = mean((before, cold(room, clock)))
    # Rendered pictures of finished things are no drawing and no setting; they have a bound of their own.
    drawn = clock.right(lambda: apart("floor", room, "pictures"))
    click.echo(f"pictures of {len(PROJECTS)} finished things and all plans, counted apart: {drawn:.2f} s of work")
    one = cold(room, clock, "--workers", "1")
    waited_for = several.waited * HANDS - drawn
    line("from nothing: waited, all hands together", waited_for, "drawing and setting", least, "<= 1.2")
    line("work from nothing", several.worked - drawn, "drawing and setting", least, "<= 1.2")
    line("work from nothing", several.worked - drawn, "bare setting and drawing", libraries, "<= 1.5")
    line("from nothing, one worker", one.waited, f"{HANDS} workers", several.waited, ">= 1.8")
    return several


def after_changes(room: Path, cold_time: float, clock: Clock) -> None:
    """Publish after one change after the other."""
    project = f"projects/{EDITED}.yaml"
    line("a remark", after(room, project, lambda text: f"# A remark.\n{text}", clock), "from nothing", cold_time)
    size = after(room, project, lambda text: text.replace("side: 20 in", "side: 21 in"), clock)
    line("one line that reaches one size", size, "from nothing", cold_time)
    title = after(room, project, lambda text: text.replace("title: Quay", "title: Lee"), clock)
    alone = waited([sys.executable, "-m", "tests.benchmarks.alone", str(room), EDITED], Path.cwd(), clock)
    line("one line that reaches every size", title, "its handouts alone", alone, "<= 1.5")
    screen = after(room, "themes/plain/css/screen.css", lambda text: f"{text}\n/* */", clock)
    line("a style sheet that pages link to", screen, "from nothing", cold_time)
    paper = after(room, "themes/plain/css/handout.css", lambda text: f"{text}\n/* */", clock)
    line("a style sheet of the sheets", paper, "from nothing", cold_time)


def ten_times(folder: Path, clock: Clock) -> Cost:
    """Compare one project with ten copies of it."""
    one = cold(room_of(folder / "one", COPIED), clock)
    room = room_of(folder / "ten", COPIED, 10)
    ten = cold(room, clock)
    line("ten projects from nothing", ten.waited, "ten times one", 10 * one.waited, "<= 1.1")
    line("work for ten projects from nothing", ten.worked, "ten times one", 10 * one.worked, "<= 1.1")
    nothing_changed(room, "ten projects, nothing changed")
    return ten


def main() -> None:
    """Measure and print."""
    with tempfile.TemporaryDirectory() as folder, Clock() as clock:
        room = room_of(Path(folder) / "room", PROJECTS)
        several = from_nothing(room, clock)
        waited(TOOL, room)
        nothing_changed(room, "nothing changed")
        after_changes(room, several.waited, clock)
        ten = ten_times(Path(folder), clock)
    parent, worker = max(several.parent, ten.parent), max(several.worker, ten.worker)
    click.echo(f"memory where it was called, at its highest: {parent} MiB{told_goal(parent, '< 150')}")
    click.echo(f"memory in a worker, at its highest: {worker} MiB{told_goal(worker, '< 200')}")


if __name__ == "__main__":
    main()

"""A sewing room with two small projects, so that a whole site is published in a moment; and ways to look at a site."""

from __future__ import annotations

import hashlib
import os
import signal
import subprocess
import sys
import tempfile
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import Any

from generator.publishing.inputs import read_inputs
from generator.publishing.jobs import Order, Published, RoomVersion
from generator.publishing.publish import publish
from generator.publishing.room import OpenRoom, open_room
from tests.room import edit as edit
from tests.room import write_room

ROOM = """\
room:
  name: The Test Loft
  welcome: Come in.
editions: inch
papers: A4
"""
FLAG = """\
title: Signal flag
kind: other
summary: One hemmed square of cloth.
sizes:
  small:
    side: 8 in
  large:
    side: 12 in
cloths:
  face:
    label: bunting
    width: 36 in
pieces:
  field:
    kind: rectangle
    finished across: side
    finished along: side
    edges:
      all: hem 1/4 in
steps:
  - use: cut, hem
  - title: Look at it
    on: field
    text: Hold it up to the light.
"""
TABLET = """\
title: Tucked tablet
kind: sample
summary: Three tucks to begin with.
sizes:
  only:
    side: 6 in
cloths:
  face:
    label: calico
    width: 36 in
pieces:
  front:
    kind: tucked panel
    finished across: side
    finished along: side
    tucks:
      depth: 1/4 in
      spacing: 2 in
      number: 3
      margin: 1 in to 2 in
    edges:
      all: seam 1/2 in
supplies:
  - item: A handful of filling
steps:
  - use: cut
  - use: mark folds, crease, stitch tucks, measure sample
    on: front
  - use: fill
"""
PAGE = "# How to measure\n\nLay the tape flat.\n"

Speech = Callable[..., tuple[int, str, str]]


class Silent:
    """Does not want to know how far a run is."""

    def expect(self, number: int, what: str) -> None:
        """Take no notice."""

    def done(self, label: str) -> None:
        """Take no notice."""


def made_room(folder: Path, projects: Mapping[str, str] | None = None) -> Path:
    """Write a room with both projects, or with those given, and return its folder."""
    texts = {f"projects/{name}.yaml": text for name, text in (projects or {"flag": FLAG, "tablet": TABLET}).items()}
    return write_room(folder, {"site/site.yaml": ROOM, "site/pages/how-to-measure.md": PAGE, **texts})


def published(room: Path, *projects: str, theme: str = "", workers: int = 1) -> Published:
    """Publish in this process."""
    return publish(Order(room, theme, projects, workers), Silent())


def version_of(room: Path, theme: str = "") -> RoomVersion:
    """Return what workers know a room by."""
    inputs = read_inputs(room, theme)
    return RoomVersion(room, theme, inputs.tool, inputs.common)


def opened(room: Path) -> OpenRoom:
    return open_room(version_of(room))


def site_of(room: Path) -> Path:
    return room / "site" / "public"


def lose_pages(room: Path) -> None:
    """Take the page of one sheet of each project away, so that the next run makes these two sheets and nothing else."""
    for size in ("flag/small", "tablet/only"):
        (site_of(room) / "projects" / size / "inch.html").unlink()


def bytes_of(room: Path) -> dict[str, str]:
    """Return a hash of every file of the published site by its path."""
    site = site_of(room)
    return {
        str(path.relative_to(site)): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(site.rglob("*"))
        if path.is_file()
    }


def _hear_interrupts() -> None:
    """Undo that a shell lets what it starts in the background hear no Ctrl-C."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)


def started(room: Path, *words: str, **options: Any) -> subprocess.Popen[str]:
    """Start the command line in a room, as a person does; what it says is lost unless ``options`` say otherwise."""
    quiet: dict[str, Any] = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL, "preexec_fn": _hear_interrupts}
    return subprocess.Popen([sys.executable, "-m", "generator", *words], cwd=room, text=True, **{**quiet, **options})


def ran(room: Path, *words: str, environment: Mapping[str, str] | None = None, **options: Any) -> tuple[int, str, str]:
    """Run the command line in a room and return its exit code and what it printed, and what it complained of.

    It speaks into files, so that nobody waits for processes that it may have left behind.
    """
    with tempfile.TemporaryFile("w+") as out, tempfile.TemporaryFile("w+") as complaints:
        options = {"stdout": out, "stderr": complaints, "env": {**os.environ, **(environment or {})}, **options}
        code = started(room, *words, **options).wait(timeout=300)
        out.seek(0)
        complaints.seek(0)
        return code, out.read(), complaints.read()


def left_over(room: Path) -> Sequence[str]:
    """Return what lies beside the published site that is not an input."""
    return sorted(entry.name for entry in (room / "site").iterdir() if entry.name.startswith(".public-"))

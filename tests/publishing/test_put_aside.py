"""The libraries put fonts aside in files while they set a sheet: after a run, however it ended, none is left."""

from __future__ import annotations

import os
import signal
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from small_room import lose_pages, ran, started

SOCKETS = "pymp-"
"""Where the language's own processes meet; it clears this away itself, but not when it is killed."""


def put_aside(folder: Path) -> list[str]:
    return sorted(entry.name for entry in folder.iterdir() if not entry.name.startswith(SOCKETS))


def fonts(folder: Path) -> list[str]:
    """Return the files put aside; folders may vanish while they are looked through."""
    return [name for place, _, names in os.walk(folder) if "weasyprint-" in place for name in names]


@pytest.fixture
def temporary() -> Iterator[Path]:
    """A folder with a short name, for the path of a socket in it must be short."""
    with tempfile.TemporaryDirectory() as folder:
        yield Path(folder)


@pytest.mark.parametrize("workers", ["1", "2"])
def test_a_run_leaves_nothing_where_temporary_files_lie(room: Path, temporary: Path, workers: str) -> None:
    lose_pages(room)
    code, said, _ = ran(room, "publish", "--workers", workers, environment={"TMPDIR": str(temporary)})
    assert code == 0
    assert "2 projects published, 2 sheets made" in said
    assert put_aside(temporary) == []


def test_a_killed_run_leaves_no_fonts_there_once_its_workers_have_noticed(room: Path, temporary: Path) -> None:
    lose_pages(room)
    process = started(room, "publish", "--workers", "2", env={"TMPDIR": str(temporary)})
    ends = time.monotonic() + 60
    while not fonts(temporary):
        assert process.poll() is None
        assert time.monotonic() < ends
        time.sleep(0.01)
    process.kill()
    assert process.wait() == -signal.SIGKILL
    while fonts(temporary):
        assert time.monotonic() < ends
        time.sleep(0.05)

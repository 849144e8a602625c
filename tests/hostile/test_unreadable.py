"""Files and folders that nobody may read or write are told with what to do, never as a fault of the tool."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from .checked_room import room

# The superuser reads everything, unless this right is taken away.
AS_ANYBODY = ["setpriv", "--bounding-set=-dac_override,-dac_read_search"] if os.geteuid() == 0 else []
PLACES = (
    *("projects/cushion.yaml", "projects", "site/site.yaml", "site", "site/pages/care.md", "site/pages"),
    *("site/classes", "site/techniques", "themes", "themes/quay", "."),
)


def ran(folder: Path, *words: str) -> str:
    """What the real command complains of when it is refused."""
    command = [*AS_ANYBODY, sys.executable, "-m", "generator", *words]
    done = subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False)
    assert done.returncode == 1
    assert "Traceback" not in done.stderr + done.stdout
    assert "fault of its own" not in done.stderr
    return done.stdout + done.stderr


def whole_room(folder: Path) -> Path:
    for name in ("site/pages", "site/classes", "site/techniques", "themes/quay"):
        (folder / name).mkdir(parents=True)
    (folder / "site/site.yaml").write_text("room:\n  name: The loft\n", encoding="utf-8")
    (folder / "site/pages/care.md").write_text("# Care\n", encoding="utf-8")
    return room(folder)


@pytest.mark.parametrize("place", PLACES)
def test_what_may_not_be_read_is_told_by_name(tmp_path: Path, place: str) -> None:
    folder = whole_room(tmp_path / "room")
    closed = folder / place
    mode = closed.stat().st_mode
    closed.chmod(0)
    try:
        told = ran(folder, "check")
    finally:
        closed.chmod(mode)
    assert (place if place != "." else "projects") in told
    assert "read" in told


@pytest.mark.parametrize(
    "words",
    [("start", "new-cushion"), ("sheet", "cushion", "small", "-o", "projects/sheet.pdf")],
    ids=["start", "sheet"],
)
def test_a_folder_that_may_not_be_written_is_told(tmp_path: Path, words: tuple[str, ...]) -> None:
    folder = whole_room(tmp_path / "room")
    (folder / "projects").chmod(0o555)
    try:
        told = ran(folder, *words)
    finally:
        (folder / "projects").chmod(0o755)
    assert "could not be written: the folder may not be written; check whose it is" in told
    assert [path.name for path in (folder / "projects").iterdir()] == ["cushion.yaml"]

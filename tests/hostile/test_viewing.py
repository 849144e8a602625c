"""The room that is shown while one writes: no address, no file and no end of the command brings it out of order."""

from __future__ import annotations

import http.client
import os
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from .checked_room import GOOD, room

SHEET = "/projects/cushion/small/inch.html"


class Shown:
    """The command at work; what it puts aside lies in a folder of its own, what it says in a file."""

    def __init__(self, folder: Path) -> None:
        self.room, self.aside = folder, folder.parent / f"{folder.name}-aside"
        self.aside.mkdir()
        self._said = folder.parent / f"{folder.name}-said"
        with self._said.open("w", encoding="utf-8") as said:
            self.process = subprocess.Popen(
                [sys.executable, "-m", "generator", "view", "--port", "0"],
                cwd=folder,
                env={**os.environ, "TMPDIR": str(self.aside)},
                stdout=subprocess.PIPE,
                stderr=said,
                text=True,
            )
        assert self.process.stdout is not None
        self.port = int(self.process.stdout.readline().rsplit(":", 1)[1].strip().rstrip("/"))

    @property
    def said(self) -> str:
        return self._said.read_text(encoding="utf-8")

    def hears(self, words: str) -> None:
        end = time.monotonic() + 60
        while words not in self.said:
            assert time.monotonic() < end, f"{words} was never said, but: {self.said}"
            time.sleep(0.05)

    def asked(self, path: str) -> tuple[int, str]:
        line = http.client.HTTPConnection("127.0.0.1", self.port, timeout=120)
        line.putrequest("GET", path, skip_host=True)
        line.putheader("Host", f"127.0.0.1:{self.port}")
        line.endheaders()
        answer = line.getresponse()
        found = answer.status, answer.read().decode(errors="replace")
        line.close()
        return found

    def end(self, by: signal.Signals = signal.SIGINT) -> int:
        assert self.process.stdout is not None
        self.process.send_signal(by)
        try:
            return self.process.wait(timeout=30)
        finally:
            self.process.kill()
            self.process.stdout.close()


@pytest.fixture(scope="module")
def shown(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Shown]:
    folder = room(tmp_path_factory.mktemp("shown") / "room")
    public = folder / "site/public"
    public.mkdir(parents=True)
    (public / "loop.html").symlink_to("loop.html")
    (folder.parent / "secret.html").write_text("swordfish", encoding="utf-8")
    with (public / "large.webp").open("wb") as large:
        large.truncate(3_000_000_000)
    (public / "out.html").symlink_to(folder.parent / "secret.html")
    found = Shown(folder)
    yield found
    found.end()


@pytest.mark.parametrize(
    "path",
    ["/%00", "/projects/%00/", f"/{'a' * 300}", "/loop.html", "/out.html", "http://[x/", "/..%2f..%2fsecret.html"],
)
def test_an_address_that_plays_tricks_has_nothing_there(shown: Shown, path: str) -> None:
    status, page = shown.asked(path)
    assert status == 404
    assert "swordfish" not in page
    assert "Traceback" not in shown.said


def test_a_published_file_that_is_too_large_for_the_memory_is_told_and_not_read(shown: Shown) -> None:
    status, page = shown.asked("/large.webp")
    assert status == 200
    assert "large.webp" in page
    assert "is larger than 50 MB and is not shown; open it where it lies" in page
    assert most_memory(shown.process.pid) < 1_000_000


def most_memory(process: int) -> int:
    """How much memory [kB] a process has had at most; 0 where the system does not tell."""
    status = Path(f"/proc/{process}/status")
    lines = status.read_text(encoding="utf-8").splitlines() if status.exists() else []
    return next((int(line.split()[1]) for line in lines if line.startswith("VmHWM")), 0)


def test_a_published_site_that_is_a_link_out_of_the_room_is_not_shown(tmp_path: Path) -> None:
    folder = room(tmp_path / "room")
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "elsewhere/secret.html").write_text("swordfish", encoding="utf-8")
    (folder / "site").mkdir()
    shown = Shown(folder)
    (folder / "site/public").symlink_to(tmp_path / "elsewhere")
    try:
        assert "swordfish" not in shown.asked("/secret.html")[1]
    finally:
        shown.end()


def a_folder(path: Path) -> None:
    path.unlink()
    path.mkdir()


def a_broken_link(path: Path) -> None:
    path.unlink()
    path.symlink_to("nowhere.yaml")


def a_huge_file(path: Path) -> None:
    path.write_bytes(b"title: x\n" * 10_000_000)


def no_project_at_all(path: Path) -> None:
    shutil.rmtree(path.parent)


@pytest.mark.parametrize("becomes", [a_folder, a_broken_link, a_huge_file, no_project_at_all])
def test_a_project_that_becomes_something_else_is_told_and_comes_back(
    tmp_path: Path, becomes: Callable[[Path], None]
) -> None:
    path = room(tmp_path / "room") / "projects/cushion.yaml"
    shown = Shown(path.parents[1])
    try:
        assert "Good cushion" in shown.asked(SHEET)[1]
        becomes(path)
        time.sleep(1)
        status, page = shown.asked(SHEET)
        assert "fault of its own" not in page
        assert status == 404 or "projects" in page
        assert shown.process.poll() is None
        if path.is_dir():
            path.rmdir()
        path.unlink(missing_ok=True)
        path.parent.mkdir(exist_ok=True)
        path.write_text(GOOD.replace("Good cushion", "Better cushion"), encoding="utf-8")
        end = time.monotonic() + 20
        while "Better cushion" not in shown.asked(SHEET)[1]:
            assert time.monotonic() < end
        assert "Traceback" not in shown.said
    finally:
        assert shown.end() == 130


@pytest.mark.parametrize("by", [signal.SIGINT, signal.SIGTERM, signal.SIGHUP])
def test_an_end_while_a_sheet_is_begun_leaves_nothing_behind(tmp_path: Path, by: signal.Signals) -> None:
    shown = Shown(room(tmp_path / "room"))
    assert shown.asked(SHEET)[0] == 200
    assert shown.end(by) == 130
    assert list(shown.aside.iterdir()) == []
    assert "Traceback" not in shown.said
    assert [path.name for path in shown.room.rglob("*")] == ["projects", "cushion.yaml"]

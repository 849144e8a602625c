from __future__ import annotations

import signal
import subprocess
import time
from pathlib import Path

import pytest
from small_room import bytes_of, edit, left_over, published, ran, started


def wait_until_done(room: Path, things: int, process: subprocess.Popen[str]) -> None:
    """Wait until a run has told that so many things are done."""
    while process.poll() is None and (room / "told").read_text(encoding="utf-8").count("\n") < things:
        time.sleep(0.02)


@pytest.mark.parametrize("things", [0, 1, 3, 5])
def test_a_run_that_is_killed_leaves_the_old_site_whole_and_the_next_one_mends(room: Path, things: int) -> None:
    before = bytes_of(room)
    edit(room / "projects/flag.yaml", "Signal flag", "Storm flag")
    with (room / "told").open("w+", encoding="utf-8") as told:
        process = started(room, "publish", "--workers", "2", stderr=told)
        wait_until_done(room, things, process)
        process.kill()
        assert process.wait() == -signal.SIGKILL
    assert bytes_of(room) == before
    published(room, "flag")
    assert left_over(room) == []
    assert "Storm flag" in (room / "site/public/projects/flag/small/inch.html").read_text(encoding="utf-8")


@pytest.mark.parametrize("things", [1, 2])
def test_ctrl_c_is_answered_politely_and_leaves_nothing_behind(room: Path, things: int) -> None:
    before = bytes_of(room)
    edit(room / "projects/flag.yaml", "Signal flag", "Storm flag")
    with (room / "told").open("w+", encoding="utf-8") as told:
        process = started(room, "publish", "--workers", "2", stderr=told)
        wait_until_done(room, things, process)
        process.send_signal(signal.SIGINT)
        assert process.wait(timeout=20) == 130
    words = (room / "told").read_text(encoding="utf-8")
    assert "Stopped. What was published before still stands." in words
    assert "Traceback" not in words
    assert (bytes_of(room), left_over(room)) == (before, [])


def test_of_two_runs_at_once_one_publishes_and_the_other_says_so(room: Path) -> None:
    edit(room / "projects/flag.yaml", "Signal flag", "Storm flag")
    with (room / "told").open("w+", encoding="utf-8") as told:
        runs = [started(room, "publish", stderr=told) for _ in range(2)]
        assert sorted(run.wait(timeout=60) for run in runs) == [0, 1]
    words = (room / "told").read_text(encoding="utf-8")
    assert words.count("is being published by another run; wait until it is done") == 1
    assert ran(room, "publish")[1].startswith("Nothing has changed")

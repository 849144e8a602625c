from __future__ import annotations

import signal
import time
from pathlib import Path

import pytest
from small_room import bytes_of, edit, left_over, published, ran, started


@pytest.mark.parametrize("moment", [0.3, 0.9, 1.5])
def test_a_run_that_is_killed_leaves_the_old_site_whole_and_the_next_one_mends(room: Path, moment: float) -> None:
    before = bytes_of(room)
    edit(room / "projects/flag.yaml", "Signal flag", "Storm flag")
    process = started(room, "publish", "--workers", "2")
    time.sleep(moment)
    process.kill()
    process.wait()
    assert bytes_of(room) == before
    published(room)
    assert left_over(room) == []
    assert "Storm flag" in (room / "site/public/projects/flag/small/inch.html").read_text(encoding="utf-8")


@pytest.mark.parametrize("moment", [0.0, 0.6])
def test_ctrl_c_is_answered_politely_and_leaves_nothing_behind(room: Path, moment: float) -> None:
    before = bytes_of(room)
    edit(room / "projects/flag.yaml", "Signal flag", "Storm flag")
    with (room / "told").open("w+", encoding="utf-8") as told:
        process = started(room, "publish", "--workers", "2", stderr=told)
        while not (room / "told").stat().st_size and process.poll() is None:
            time.sleep(0.05)
        time.sleep(moment)
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

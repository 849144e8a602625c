from __future__ import annotations

import re
import signal
import time
from pathlib import Path

from small_room import edit, site_of, started

PATIENCE = 40.0


def wait_for(said: Path, words: str) -> None:
    """Wait until some words have been said, which must come."""
    end = time.monotonic() + PATIENCE
    while words not in said.read_text(encoding="utf-8") and time.monotonic() < end:
        time.sleep(0.1)
    assert words in said.read_text(encoding="utf-8")


def test_watching_publishes_what_is_saved_tells_faults_and_goes_on(room: Path) -> None:
    path, said = room / "projects/flag.yaml", room / "said"
    with said.open("w", encoding="utf-8") as file:
        process = started(room, "publish", "--watch", stdout=file, stderr=file)
    try:
        wait_for(said, "Nothing has changed")
        edit(path, "side: 12 in", "side: 12 inn")
        wait_for(said, "projects/flag.yaml:8:")
        edit(path, "side: 12 inn", "side: 13 in")
        wait_for(said, "2 projects published, 1 sheet made, 2 kept")
        process.send_signal(signal.SIGINT)
        assert process.wait(timeout=20) == 130
    finally:
        process.kill()
        process.wait()
    assert "Traceback" not in said.read_text(encoding="utf-8")
    page = (site_of(room) / "projects/flag/large/inch.html").read_text(encoding="utf-8")
    assert "13 × 13 in" in re.sub("<[^>]+>", "", page)

"""A room that somebody is writing, shown by the command that serves it on this machine, and what it says."""

from __future__ import annotations

import os
import re
import signal
import subprocess
import sys
import time
from pathlib import Path

_PATIENCE = 60.0


class WrittenRoom:
    """The command at work in a room's folder; it puts its own files into a folder beside it."""

    def __init__(self, room: Path, *words: str) -> None:
        self.room, self.aside = room, room.parent / "aside"
        self.aside.mkdir()
        self._said = room.parent / "said"
        with self._said.open("w", encoding="utf-8") as said:
            self._process = subprocess.Popen(
                [sys.executable, "-m", "generator", "view", *words],
                cwd=room,
                stdout=said,
                stderr=said,
                env={**os.environ, "TMPDIR": str(self.aside)},
            )
        found = self._wait(r"http://127\.0\.0\.1:(\d+)/\S*")
        self.first, self.port = found[0], int(found[1])
        self.address = f"http://127.0.0.1:{self.port}/"

    @property
    def said(self) -> str:
        return self._said.read_text(encoding="utf-8")

    def hears(self, words: str) -> None:
        """Wait until some words have been said, which must come."""
        self._wait(re.escape(words))

    def _wait(self, pattern: str) -> re.Match[str]:
        end = time.monotonic() + _PATIENCE
        while time.monotonic() < end:
            if found := re.search(pattern, self.said):
                return found
            assert self._process.poll() is None, self.said
            time.sleep(0.05)
        raise AssertionError(f"{pattern} was never said, but: {self.said}")

    def end(self) -> int:
        """Press Ctrl-C and return the exit code."""
        self._process.send_signal(signal.SIGINT)
        try:
            return self._process.wait(timeout=30)
        finally:
            self._process.kill()

"""What a job writes and how long it takes: bytes come in, files go out below one folder, with their sizes."""

from __future__ import annotations

import time
from collections import defaultdict
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path


class Written:
    """Writes files below a folder and remembers the size [bytes] of each."""

    def __init__(self, out: Path) -> None:
        self._out = out
        self.files: dict[str, int] = {}

    def add(self, address: str, content: bytes) -> None:
        """Write one file. The site's folder itself must be there: it goes when the run that made it has died."""
        path = self._out / address
        for folder in (*reversed(path.relative_to(self._out).parents[:-1]),):
            (self._out / folder).mkdir(exist_ok=True)
        path.write_bytes(content)
        self.files[address] = len(content)


class Stopwatch:
    """Measures kinds of work [s]."""

    def __init__(self) -> None:
        self.seconds: dict[str, float] = defaultdict(float)

    @contextmanager
    def on(self, work: str) -> Iterator[None]:
        """Count what the block takes to a kind of work."""
        start = time.perf_counter()
        try:
            yield
        finally:
            self.seconds[work] += time.perf_counter() - start

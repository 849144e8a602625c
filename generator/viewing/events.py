"""What browsers that look at the room are told: one thread tells, each browser's own thread takes and sends it on."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from queue import SimpleQueue
from threading import Lock


class Events:
    """A line to every browser that has a page open."""

    def __init__(self) -> None:
        self._lock = Lock()
        self._lines: list[SimpleQueue[str | None]] = []

    @contextmanager
    def line(self) -> Iterator[SimpleQueue[str | None]]:
        """Give a line of one's own, on which come names of what happened, and None at the end."""
        own: SimpleQueue[str | None] = SimpleQueue()
        with self._lock:
            self._lines.append(own)
        try:
            yield own
        finally:
            with self._lock:
                self._lines.remove(own)

    def tell(self, what: str | None) -> None:
        """Tell every browser what happened; None ends their lines."""
        with self._lock:
            for line in self._lines:
                line.put(what)

"""What a job writes and how long it takes: bytes come in, files go out below one folder, with their sizes."""

from __future__ import annotations

import errno
import os
import time
from collections import defaultdict
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path, PurePath

from generator.errors import PublishError

_REASONS = {
    errno.ENOSPC: "the disk is full; make room and run the command again",
    errno.EDQUOT: "your share of the disk is full; make room and run the command again",
    errno.EFBIG: "a file is larger than the disk or your account allows",
    errno.EACCES: "the folder may not be written; check whose it is",
    errno.EPERM: "the folder may not be written; check whose it is",
    errno.EROFS: "the disk is read-only",
}


class Written:
    """Writes files below a folder and remembers the size [bytes] of each."""

    def __init__(self, out: Path) -> None:
        self._out = out
        self.files: dict[str, int] = {}

    def add(self, address: str, content: bytes) -> None:
        """Write one file. The site's folder itself must be there: it goes when the run that made it has died."""
        try:
            for folder in reversed(PurePath(address).parents[:-1]):
                (self._out / folder).mkdir(exist_ok=True)
            (self._out / address).write_bytes(content)
        except OSError as fault:
            raise PublishError(f"{address} {not_written(fault)}") from fault
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


def put_whole(path: Path, content: bytes) -> None:
    """Write a file beside its place and put it there in one step; after a fault nothing of it is left.

    Raises
    ------
    OSError
        If it cannot be written; what stood there before still does.
    """
    part = path.with_name(f".{path.name}.{os.getpid()}")
    try:
        part.write_bytes(content)
        part.replace(path)
    finally:
        with suppress(OSError):
            part.unlink()


def not_written(fault: OSError) -> str:
    """Return in words that something could not be written, and why."""
    return f"could not be written: {_REASONS.get(fault.errno or 0, fault.strerror or str(fault))}"

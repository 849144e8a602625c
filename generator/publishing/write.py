"""Files that are written: bytes come in, files go out below one folder, and how each can be known again later."""

from __future__ import annotations

import errno
import hashlib
import os
import stat
import time
from collections import defaultdict
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, replace
from pathlib import Path, PurePath

from generator.errors import PublishError

_REASONS = {
    errno.ENOSPC: "the disk is full; make room and run the command again",
    errno.EDQUOT: "your share of the disk is full; make room and run the command again",
    errno.EFBIG: "a file is larger than the disk or your account allows",
    errno.EACCES: "the folder may not be written; check whose it is",
    errno.EPERM: "the folder may not be written; check whose it is",
    errno.EROFS: "the disk is read-only",
    errno.ENAMETOOLONG: "the name is too long; choose a shorter one",
}
_UNREAD = {
    errno.EACCES: "you may not read it; check whose it is, or take it out of the room",
    errno.EPERM: "you may not read it; check whose it is, or take it out of the room",
    errno.ENOENT: "it has gone meanwhile; run the command again",
    errno.EIO: "the disk does not give it; look whether the disk is sound",
}


def key_of(*parts: str) -> str:
    """Return one key for several texts."""
    return hashlib.sha256("\0".join(parts).encode()).hexdigest()[:32]


def key_of_bytes(content: bytes) -> str:
    """Return the key of the content of a file."""
    return hashlib.sha256(content).hexdigest()[:32]


@dataclass(frozen=True, slots=True)
class FileState:
    """How a file was written: the key of its content, its size [bytes], and time of change [ns] and number on disk."""

    key: str
    size: int
    changed: int
    number: int

    def holds(self, path: Path) -> bool:
        """Return whether a file is as it was written; it is read where its size, time or number tell nothing."""
        try:
            found = path.lstat()
            if not stat.S_ISREG(found.st_mode) or found.st_size != self.size:
                return False
            same = (found.st_mtime_ns, found.st_ino) == (self.changed, self.number)
            return same or key_of_bytes(path.read_bytes()) == self.key
        except OSError:
            return False

    def of(self, path: Path) -> FileState:
        """Return the state of a file with the same content."""
        found = path.lstat()
        return replace(self, changed=found.st_mtime_ns, number=found.st_ino)


class Output:
    """Writes files below a folder, knows the state of each, and measures kinds of work [s].

    After each file it calls ``written``.
    """

    def __init__(self, folder: Path, written: Callable[[], None] = lambda: None) -> None:
        self.folder = folder
        self._written = written
        self.files: dict[str, FileState] = {}
        self.seconds: dict[str, float] = defaultdict(float)

    def add(self, address: str, content: bytes) -> None:
        """Write one file. The site's folder itself must be there: it goes when the run that made it has died."""
        path = self.folder / address
        try:
            for folder in reversed(PurePath(address).parents[:-1]):
                (self.folder / folder).mkdir(exist_ok=True)
            path.write_bytes(content)
            self.files[address] = FileState(key_of_bytes(content), len(content), 0, 0).of(path)
        except OSError as fault:
            raise PublishError(f"{address} {not_written(fault)}") from fault
        self._written()

    @contextmanager
    def timed(self, work: str) -> Iterator[None]:
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
    with _beside(path, content) as part:
        part.replace(path)


def put_new(path: Path, content: bytes) -> None:
    """Write a file that is not there yet, whole or not at all.

    Raises
    ------
    FileExistsError
        If something stands there; it stays as it is.
    OSError
        If it cannot be written.
    """
    with _beside(path, content) as part:
        # A link is made only where nothing stands, which no renaming promises.
        os.link(part, path)


@contextmanager
def _beside(path: Path, content: bytes) -> Iterator[Path]:
    """Give the content as a whole file beside a place; it is gone in the end."""
    part = path.with_name(f".tuckwright-{os.getpid()}")
    try:
        part.write_bytes(content)
        yield part
    finally:
        with suppress(OSError):
            part.unlink()


def not_read(fault: OSError, room: Path) -> str:
    """Return in words that a file or folder could not be read, and what to do."""
    place = Path(fault.filename or room)
    shown = place.relative_to(room) if place.is_relative_to(room) else place
    return f"{shown} could not be read: {_UNREAD.get(fault.errno or 0, fault.strerror or str(fault))}"


def not_written(fault: OSError) -> str:
    """Return in words that something could not be written, and why."""
    return f"could not be written: {_REASONS.get(fault.errno or 0, fault.strerror or str(fault))}"

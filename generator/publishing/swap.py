"""Writing a new folder and putting it in the place of the old one: at every moment one whole site stands there.

A folder is staged beside its place and exchanged with it in one step of the file system. Killed before that step, the
old site stands untouched; killed after it, the new one does, and the next run clears away what is left over.
"""

from __future__ import annotations

import ctypes
import fcntl
import os
import shutil
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from generator.errors import PublishError
from generator.publishing.write import not_written

_HERE = -100 if sys.platform == "linux" else -2  # "relative to the working folder", as the two systems number it
_EXCHANGE = 2


@contextmanager
def staged(target: Path, settle: Callable[[], None] = lambda: None) -> Iterator[Path]:
    """Give an empty folder to fill; when the block ends well, it takes the place of ``target``.

    What else must follow in that moment is done by ``settle``.

    Raises
    ------
    PublishError
        If another run is under way, or the folder cannot be written.
    """
    try:
        target = target.absolute()
        if target.is_symlink():
            raise PublishError(f"{target} is a link; remove it, publish, and copy the folder to where it is served")
        if target.exists() and not target.is_dir():
            raise PublishError(f"{target} is a file; the site needs a folder there, so move it away")
        target.parent.mkdir(parents=True, exist_ok=True)
        with _alone(target):
            _clear_left_over(target)
            staging = target.parent / f"{_staging_name(target)}{os.getpid()}"
            staging.mkdir()
            try:
                yield staging
                _put_in_place(staging, target)
                settle()
            finally:
                # Once more: a worker of a killed run may have been writing while its folder was cleared away.
                _clear_left_over(target)
    except OSError as fault:
        raise PublishError(_words(fault, target)) from fault


@contextmanager
def _alone(target: Path) -> Iterator[None]:
    """Hold the lock of a target; a second run is told to wait for the first."""
    lock = target.parent / f".{target.name}.lock"
    with open(lock, "a", opener=_without_links) as file:
        try:
            fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            raise PublishError(f"{target} is being published by another run; wait until it is done") from None
        yield


def _without_links(path: str, flags: int) -> int:
    return os.open(path, flags | os.O_NOFOLLOW, 0o666)


def _clear_left_over(target: Path) -> None:
    """Remove what a killed run left behind; put the old site back if it was caught between two renames."""
    old = target.parent / f".{target.name}-old"
    if old.is_dir() and not old.is_symlink() and not target.exists():
        old.rename(target)
    for left in (old, *target.parent.glob(f"{_staging_name(target)}*")):
        shutil.rmtree(left, ignore_errors=True)


def _staging_name(target: Path) -> str:
    """How the names of staged folders begin; each run has its own, for workers of a killed one may still write."""
    return f".{target.name}-new-"


def _put_in_place(staging: Path, target: Path) -> None:
    if not target.exists():
        staging.rename(target)
        return
    if _exchanged(staging, target):
        return
    old = target.parent / f".{target.name}-old"
    target.rename(old)
    staging.rename(target)
    shutil.rmtree(old, ignore_errors=True)


def _exchanged(one: Path, other: Path) -> bool:
    """Exchange two folders in one step where the system can; False where it cannot."""
    library = ctypes.CDLL(None, use_errno=True)
    name = "renameat2" if sys.platform == "linux" else "renameatx_np"
    rename = getattr(library, name, None)
    if rename is None:
        return False
    done: int = rename(_HERE, os.fsencode(one), _HERE, os.fsencode(other), _EXCHANGE)
    return done == 0


def _words(fault: OSError, target: Path) -> str:
    return f"{target} {not_written(fault)}. What was published before still stands."

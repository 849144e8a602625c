"""What many tests ask for, made once in a run: sheets that were set, pictures that were drawn, for all of its workers.

A test does not notice it: a function is changed into one that looks first whether what it is asked for was made from
the same values before. What is made of files has their state among its values, so that a changed file is seen.
"""

from __future__ import annotations

import fcntl
import hashlib
import os
import pickle
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any

import pytest

from generator.definitions.theme import Theme


class Made:
    """What was made in this run, each value in a file of a folder that all of its workers share."""

    def __init__(self, tmp_path_factory: pytest.TempPathFactory) -> None:
        own = tmp_path_factory.getbasetemp()
        self._folder = (own.parent if "PYTEST_XDIST_WORKER" in os.environ else own) / "made"
        self._folder.mkdir(exist_ok=True)

    def once(
        self, function: Callable[..., Any], values_of: Callable[..., tuple[object, ...]] = lambda *values: values
    ) -> Callable[..., Any]:
        """Return the function, which makes only once what comes of the same values; a fault is never kept.

        ``values_of`` returns what decides about the result, from what the function is called with.
        """

        def remembered(*values: object, **named: object) -> object:
            asked = (function.__module__, function.__qualname__, values_of(*values, **named))
            kept = self._folder / hashlib.sha256(pickle.dumps(asked)).hexdigest()
            if kept.exists():
                return pickle.loads(kept.read_bytes())  # noqa: S301 -- written by this run
            made = function(*values, **named)
            # Two workers may make the same at the same time; each puts a whole file in its place.
            written = kept.with_suffix(f".{os.getpid()}")
            written.write_bytes(pickle.dumps(made))
            written.replace(kept)
            return made

        return remembered

    def folder(self, name: str, fill: Callable[[Path], object]) -> Path:
        """Return a folder that the first worker who asks for it fills; the others wait, and nobody changes it."""
        place = self._folder / name
        with self._folder.joinpath(f"{name}.lock").open("w") as lock:
            fcntl.flock(lock, fcntl.LOCK_EX)
            if not place.exists():
                # Where it cannot be filled, the next worker begins anew and says so as well.
                begun = place.with_suffix(f".{os.getpid()}")
                fill(begun)
                begun.rename(place)
        return place


def state_of(theme: Theme) -> tuple[tuple[str, int, int], ...]:
    """Return what tells whether a file of a theme was changed: its path, its time and its size."""
    return tuple(_states(sorted(path for folder in theme.folders for path in folder.rglob("*"))))


def _states(paths: Iterable[Path]) -> Iterable[tuple[str, int, int]]:
    for path in paths:
        found = path.stat()
        yield str(path), found.st_mtime_ns, found.st_size

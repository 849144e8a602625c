"""A room that has been published once, to be copied by every test that changes something in it."""

from __future__ import annotations

import pickle
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from small_room import Speech, made_room, published

from generator.publishing.make import pictures, reference
from tests.room import run


def once_for_all(function: Callable[..., Any]) -> Callable[..., Any]:
    """The function, which works out only once what comes of the same values."""
    known: dict[bytes, Any] = {}

    def remembered(*values: object) -> object:
        key = pickle.dumps(values)
        if key not in known:
            known[key] = function(*values)
        return known[key]

    return remembered


@pytest.fixture(scope="session", autouse=True)
def pictures_drawn_once() -> Iterator[None]:
    """Cloth that looks the same in many rooms is drawn once; it was half of what it takes to publish a small one."""
    with pytest.MonkeyPatch.context() as patch:
        for module, name in ((pictures, "thing_files"), (pictures, "near_file"), (reference, "plan_file")):
            patch.setattr(module, name, once_for_all(getattr(module, name)))
        yield


@pytest.fixture(scope="session")
def published_once(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A room of two projects with its site, which no test may change."""
    room = made_room(tmp_path_factory.mktemp("once") / "room")
    published(room)
    return room


@pytest.fixture
def room(published_once: Path, tmp_path: Path) -> Path:
    """A copy of that room, to be changed."""
    return Path(shutil.copytree(published_once, tmp_path / "room"))


@pytest.fixture
def speak() -> Speech:
    """Give the command line in this process: a folder and words in, the exit code and both outputs out."""

    def spoken(folder: Path, *words: str) -> tuple[int, str, str]:
        answer = run(folder, *words)
        return answer.code, answer.out, answer.err

    return spoken

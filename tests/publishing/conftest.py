"""A room that has been published once, to be copied by every test that changes something in it."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from small_room import Speech, made_room, published

from tests.room import run


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

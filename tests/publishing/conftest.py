"""A room that has been published once, to be copied by every test that changes something in it."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from small_room import made_room, published


@pytest.fixture(autouse=True)
def surroundings(monkeypatch: pytest.MonkeyPatch) -> None:
    """Put the environment back after a test that publishes in this process."""
    for name in ("MPLCONFIGDIR", "SOURCE_DATE_EPOCH"):
        monkeypatch.delenv(name, raising=False)


@pytest.fixture(scope="session")
def published_once(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A room of two projects with its site, which no test may change."""
    with pytest.MonkeyPatch.context() as environment:
        for name in ("MPLCONFIGDIR", "SOURCE_DATE_EPOCH"):
            environment.setenv(name, "")
        room = made_room(tmp_path_factory.mktemp("once") / "room")
        published(room)
    return room


@pytest.fixture
def room(published_once: Path, tmp_path: Path) -> Path:
    """A copy of that room, to be changed."""
    return Path(shutil.copytree(published_once, tmp_path / "room"))

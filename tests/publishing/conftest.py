"""A room that has been published once, to be copied by every test that changes something in it."""

from __future__ import annotations

import shutil
import sys
from pathlib import Path

import pytest
from small_room import Speech, made_room, published

from generator.cli import main


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
def speak(capfd: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Speech:
    """Give the command line in this process: a folder and words in, the exit code and both outputs out."""

    def spoken(folder: Path, *words: str) -> tuple[int, str, str]:
        monkeypatch.chdir(folder)
        monkeypatch.setattr(sys, "argv", ["tuckwright", *words])
        capfd.readouterr()
        with pytest.raises(SystemExit) as end:
            main()
        out, complaints = capfd.readouterr()
        return int(end.value.code or 0), out, complaints

    return spoken

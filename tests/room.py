"""What all folders of tests do with rooms: write their files, change them, open them and run the command in them."""

from __future__ import annotations

import contextlib
import io
import sys
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

import pytest

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import RoomContext, load_room_context, worked_sheet
from generator.cli import main
from generator.definitions.project import Project, load_project
from generator.definitions.room import load_room

ROOT = Path(__file__).resolve().parents[1]


def put(text: str, *changes: tuple[str, str]) -> str:
    """The text with each first part changed into its second; a part that is not there fails the test."""
    for old, new in changes:
        assert old in text, f"{old!r} is not in the text"
        text = text.replace(old, new, 1)
    return text


def edit(path: Path, old: str, new: str) -> None:
    """Change a text in a file, wherever it stands; it must be there."""
    text = path.read_text(encoding="utf-8")
    assert old in text, f"{old!r} is not in {path.name}"
    path.write_text(text.replace(old, new), encoding="utf-8")


def write_room(folder: Path, files: Mapping[str, str | bytes]) -> Path:
    """Write files by their path inside a room, and return its folder; it has a folder of projects in any case."""
    (folder / "projects").mkdir(parents=True, exist_ok=True)
    for name, content in files.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes(content if isinstance(content, bytes) else content.encode())
    return folder


def part_of_demo(folder: Path, *parts: str) -> Path:
    """Make a room of parts of the demo room, files or whole folders by their path in it, and return its folder."""
    for part in parts:
        found = [path for path in (ROOT / part).rglob("*") if path.is_file()] or [ROOT / part]
        write_room(folder, {path.relative_to(ROOT).as_posix(): path.read_bytes() for path in found})
    return folder


@dataclass(frozen=True, eq=False)
class OpenedRoom:
    """A room that has been read, and its projects as they are asked for, each of them worked once."""

    folder: Path
    shared: RoomContext
    _worked: dict[str, tuple[Worksheet, ...]] = field(default_factory=dict, repr=False)

    def project(self, name: str) -> Project:
        return load_project(self.folder / "projects" / f"{name}.yaml", self.shared.room, self.folder)

    def worksheet(self, name: str, size: str, edition: str) -> Worksheet:
        return worked_sheet(self.project(name), size, self.shared.room.edition(edition), self.shared)

    def worksheets(self, name: str) -> tuple[Worksheet, ...]:
        """A project in every size of every edition."""
        if name not in self._worked:
            self._worked[name] = demo_sizes(name) if self.folder == ROOT else self.sizes(name)
        return self._worked[name]

    def sizes(self, name: str) -> tuple[Worksheet, ...]:
        """The same, worked now."""
        project = self.project(name)
        return tuple(
            worked_sheet(project, size, self.shared.room.edition(edition), self.shared)
            for edition in project.editions
            for size in project.sizes
        )


def opened_room(folder: Path) -> OpenedRoom:
    return OpenedRoom(folder, load_room_context(load_room(folder / "site" / "site.yaml", folder), folder))


@cache
def demo_room() -> OpenedRoom:
    """The room of this project, read once."""
    return opened_room(ROOT)


def demo_sizes(name: str) -> tuple[Worksheet, ...]:
    """A project of the demo room in every size of every edition; ``conftest.py`` has it worked once for all workers."""
    return demo_room().sizes(name)


@dataclass(frozen=True)
class Answer:
    """What the command line said, and its exit code; ``said`` is all of it, in order."""

    code: int
    out: str
    err: str
    said: str

    @property
    def lines(self) -> list[str]:
        return self.out.splitlines()


class _Both(io.StringIO):
    """Writes what is said into another text as well."""

    def __init__(self, other: io.StringIO) -> None:
        super().__init__()
        self.other = other

    def write(self, words: str) -> int:
        self.other.write(words)
        return super().write(words)


def run(folder: Path, *words: str) -> Answer:
    """Run tuckwright in a folder with these words, in this process; it must not break."""
    said = io.StringIO()
    out, err = _Both(said), _Both(said)
    with pytest.MonkeyPatch.context() as patch:
        patch.chdir(folder)
        patch.setattr(sys, "argv", ["tuckwright", *words])
        with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
            try:
                main()
                code: int | str | None = 0
            except SystemExit as left:
                code = left.code
    assert code is None or isinstance(code, int)
    assert "Traceback" not in said.getvalue()
    assert "fault of its own" not in said.getvalue()
    return Answer(code or 0, out.getvalue(), err.getvalue(), said.getvalue())

"""A room in a folder of its own, checked by the real command: files come in, what the command did goes out."""

from __future__ import annotations

import json
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

from tests.room import write_room

HERE = Path(__file__).parent
GOOD = (HERE / "good-cushion.yaml").read_text(encoding="utf-8")


@dataclass(frozen=True)
class Checked:
    """What one run did: exit code, everything printed, time, most memory, and whether all files stayed as they were."""

    code: int
    printed: str
    seconds: float
    megabytes: float
    untouched: bool

    def of(self, name: str) -> list[str]:
        """Return the lines that name a place in one project."""
        return [line for line in self.printed.splitlines() if line.startswith(f"projects/{name}.yaml:")]


def spoilt(old: str, new: str) -> str:
    """Return the good project with one change."""
    assert GOOD.count(old) == 1, f"the good project has {old!r} {GOOD.count(old)} times"
    return GOOD.replace(old, new)


def room(folder: Path, content: str | bytes = GOOD, name: str = "cushion.yaml") -> Path:
    """Return a folder with one project in it."""
    return write_room(folder, {f"projects/{name}": content})


def checked(folder: Path, *words: str) -> Checked:
    """Run ``tuckwright check`` in a folder."""
    before = _contents(folder)
    taken, printed = (folder.parent / f"{folder.name}-{what}" for what in ("taken", "printed"))
    command = [sys.executable, "-m", "generator", "check", *words]
    with printed.open("wb") as out:
        subprocess.run(
            [sys.executable, str(HERE / "measured.py"), str(taken), *command],
            cwd=folder,
            stdout=out,
            stderr=subprocess.STDOUT,
            check=True,
        )
    told = json.loads(taken.read_text(encoding="utf-8"))
    return Checked(
        code=told["code"],
        printed=printed.read_text(encoding="utf-8", errors="replace"),
        seconds=told["seconds"],
        megabytes=told["kilobytes"] / 1024,
        untouched=_contents(folder) == before,
    )


def _contents(folder: Path) -> dict[str, bytes | str]:
    """Every ordinary file below a folder with its bytes; of everything else only that it is there."""
    return {
        str(path.relative_to(folder)): path.read_bytes() if path.is_file() and not path.is_symlink() else "no file"
        for path in sorted(folder.rglob("*"))
    }

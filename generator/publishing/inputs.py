"""What a site is built from, as keys of raw bytes: files are read and hashed, none is parsed.

A theme may stand on another, so all themes count together; so do the tool's own files and the versions of the
libraries, because a new tool or library may draw and set differently.
"""

from __future__ import annotations

import hashlib
import platform
import site
import sys
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

TOOL = Path(__file__).resolve().parents[1]
OWN_THEMES = TOOL.parent / "themes"


@dataclass(frozen=True, slots=True)
class Inputs:
    """Keys of everything that a site is built from; ``projects`` and ``pages`` map names to keys of their bytes."""

    common: str
    projects: dict[str, str]
    pages: dict[str, str]


def read_inputs(folder: Path, theme: str) -> Inputs:
    """Return the keys of all inputs of the room in ``folder`` for one theme."""
    files = [
        *_files(TOOL, (".py", ".yaml")),
        *_files(OWN_THEMES),
        *(_files(folder / "themes") if folder / "themes" != OWN_THEMES else ()),
        *_files(folder / "site" / "techniques"),
    ]
    room = folder / "site" / "site.yaml"
    common = _key([theme, platform.python_version(), *_libraries(), *_hashed(files), *_hashed([room])])
    return Inputs(common, _named(folder / "projects", "*.yaml"), _named(folder / "site" / "pages", "*.md"))


def key_of(*parts: str) -> str:
    """Return one key for several texts."""
    return _key(parts)


def _key(parts: Iterable[str]) -> str:
    return hashlib.sha256("\0".join(parts).encode()).hexdigest()[:32]


def _files(folder: Path, endings: tuple[str, ...] = ()) -> list[Path]:
    """All files below a folder in a stable order, without what the interpreter leaves there."""
    found = sorted(path for path in folder.rglob("*") if path.is_file() and "__pycache__" not in path.parts)
    return [path for path in found if not endings or path.suffix in endings]


def _hashed(files: Iterable[Path]) -> list[str]:
    return [f"{path.name}:{hashlib.sha256(path.read_bytes()).hexdigest()}" for path in files if path.is_file()]


def _named(folder: Path, pattern: str) -> dict[str, str]:
    return {path.stem: hashlib.sha256(path.read_bytes()).hexdigest()[:32] for path in sorted(folder.glob(pattern))}


def _libraries() -> list[str]:
    """The installed libraries with their versions, read off the names of their folders."""
    folders = {Path(sys.prefix), *map(Path, site.getsitepackages())}
    return sorted(entry.name for folder in folders if folder.is_dir() for entry in folder.glob("*.dist-info"))

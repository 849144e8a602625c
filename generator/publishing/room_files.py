"""The files that a room is made of: its folder comes in, the files of each sort go out, none of them from elsewhere.

A room may come from a stranger, so a link in it that leads out of it is never followed; one that stays inside is. The
room's themes may also lead to those of the tool.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterator
from pathlib import Path

from generator.errors import FaultyFileError, Finding, Place

TOOL = Path(__file__).resolve().parents[1]
OWN_THEMES = TOOL.parent / "themes"
THEMES = "themes"
_FOLDERS = ("projects", "site/pages", "site/techniques", "site/classes", "site/editions", THEMES)
_LONE = ("site", "site/site.yaml")
_PROJECT = re.compile(r"^project\s*:\s*[\"']?([^\s\"'#]+)", re.MULTILINE)
_OUT = "the file is a link that leads out of the room; put the file itself here"
_RING = "the file is a link that leads to itself; put the file itself here"


def refuse_links_out(room: Path, folders: tuple[str, ...] = (*_LONE, *_FOLDERS)) -> None:
    """Refuse a room with links that lead out of it.

    Raises
    ------
    FaultyFileError
        With every such link.
    """
    faults = [
        Finding("error", fault, Place(str(path.relative_to(room))))
        for name in folders
        for path, fault in _faulty_links(room / name, _homes(room, name), below=name not in _LONE)
    ]
    if faults:
        raise FaultyFileError(faults)


def theme_folders(room: Path) -> dict[str, Path]:
    """Return the folders of all themes by name, those of the tool and the room's own, which win."""
    refuse_links_out(room, (THEMES,))
    return {
        entry.name: entry
        for themes in (OWN_THEMES, room / THEMES)
        if themes.is_dir()
        for entry in sorted(themes.iterdir())
        if (entry / "theme.yaml").is_file()
    }


def project_file(room: Path, project: str) -> Path:
    """Return where the file of a project lies."""
    return room / "projects" / f"{project}.yaml"


def project_files(room: Path) -> dict[str, Path]:
    """Return the files of the room's projects by their names."""
    return _named(room / "projects", "*.yaml")


def page_files(room: Path) -> dict[str, Path]:
    """Return the room's pages of words by their names."""
    return _named(room / "site" / "pages", "*.md")


def page_title(path: Path) -> str:
    """Return the first heading of a page, its name where it has none."""
    for line in path.read_text(encoding="utf-8-sig", errors="replace").splitlines():
        if line.startswith("# "):
            return line[2:].strip()
    return path.stem.replace("-", " ").capitalize()


def class_files(room: Path) -> dict[str, Path]:
    """Return the files of the room's classes by their names."""
    return _named(room / "site" / "classes", "*.yaml")


def project_of_class(path: Path) -> str:
    """Return the project that the file of a class names, as far as that can be seen without reading it whole."""
    found = _PROJECT.search(path.read_text(encoding="utf-8-sig", errors="replace"))
    return found[1] if found else ""


def edition_file(room: Path, project: str) -> Path:
    """Return where the kept editions of a project lie."""
    return room / "site" / "editions" / f"{project}.json"


def edition_files(room: Path) -> dict[str, Path]:
    """Return the files of kept editions by the names of their projects."""
    return _named(room / "site" / "editions", "*.json")


def files_below(folder: Path, endings: tuple[str, ...] = ()) -> list[Path]:
    """Return all files below a folder in a stable order, without what the interpreter leaves there."""
    found = [path for path in _below(folder) if path.is_file() and "__pycache__" not in path.parts]
    return sorted(path for path in found if not endings or path.suffix in endings)


def _named(folder: Path, pattern: str) -> dict[str, Path]:
    return {path.stem: path for path in sorted(folder.glob(pattern)) if path.is_file()}


def _homes(room: Path, name: str) -> tuple[Path, ...]:
    return (room.resolve(), OWN_THEMES) if name == THEMES else (room.resolve(),)


def _faulty_links(start: Path, homes: tuple[Path, ...], *, below: bool) -> Iterator[tuple[Path, str]]:
    """Links at a place, and below it where that is asked, that lead out of all homes; with what is wrong."""
    for path in _below(start) if below else [start]:
        if not path.is_symlink():
            continue
        try:
            target = path.resolve()
        except (OSError, RuntimeError):
            yield path, _RING
            continue
        if not any(target.is_relative_to(home) for home in homes):
            yield path, _OUT


def _below(start: Path) -> Iterator[Path]:
    """A place and everything below it, through links too."""
    yield start
    if start.is_dir():
        yield from _inside(start, frozenset())


def _inside(folder: Path, passed: frozenset[str]) -> Iterator[Path]:
    """Everything in a folder; ``passed`` are the links behind it, so that a folder inside itself comes to an end."""
    with os.scandir(folder) as found:
        entries = sorted(found, key=lambda entry: entry.name)
    for entry in entries:
        path = Path(entry.path)
        yield path
        target = os.path.realpath(path) if entry.is_symlink() else ""
        if path.is_dir() and target not in passed and entry.name != "__pycache__":
            yield from _inside(path, passed | {target} if target else passed)

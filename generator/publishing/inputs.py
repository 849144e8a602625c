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

from generator.errors import PublishError

TOOL = Path(__file__).resolve().parents[1]
OWN_THEMES = TOOL.parent / "themes"
# These reach a site only as files of their own, which pages link to: a change of them makes no page and no sheet stale.
_LINKED_FILES = ("screen.css", "print.css", "machine.css", "reference.css")
_LINKED_KINDS = (".js", ".woff2")


@dataclass(frozen=True, slots=True)
class Inputs:
    """Keys of everything that a site is built from.

    ``tool`` is that of the tool and its libraries, ``common`` that of everything which all projects share, the tool
    included; ``inside`` leaves out what pages only link to. ``projects`` and ``pages`` map names to keys of their
    bytes, ``titles`` pages to their first headings.
    """

    tool: str
    common: str
    inside: str
    projects: dict[str, str]
    pages: dict[str, str]
    titles: dict[str, str]

    def of_project(self, name: str) -> str:
        """Return the key of one project's file with everything that all projects share."""
        return key_of(self.common, self.projects[name])

    @property
    def of_pages(self) -> str:
        """The key of the pages of words with everything that all pages share."""
        return key_of(self.common, *(f"{name}:{key}" for name, key in self.pages.items()))


def read_inputs(folder: Path, theme: str) -> Inputs:
    """Return the keys of all inputs of the room in ``folder`` for one theme; no name means the room's own theme."""
    tool = key_of(platform.python_version(), *_libraries(), *_hashed(_files(TOOL, (".py", ".yaml"))))
    shared = [
        *_files(OWN_THEMES),
        *(_files(folder / "themes") if folder / "themes" != OWN_THEMES else ()),
        *_files(folder / "site" / "techniques"),
        folder / "site" / "site.yaml",
    ]
    pages = _named(folder / "site" / "pages", "*.md")
    titles = {name: _title(path) for name, path in pages.items()}
    rest = (tool, theme, *(f"{name}:{title}" for name, title in titles.items()))
    common, inside = key_of(*rest, *_hashed(shared)), key_of(*rest, *_hashed(_inside(shared)))
    projects = _named(folder / "projects", "*.yaml")
    return Inputs(tool, common, inside, _keys(projects), _keys(pages), titles)


def key_of(*parts: str) -> str:
    """Return one key for several texts."""
    return hashlib.sha256("\0".join(parts).encode()).hexdigest()[:32]


def theme_folder(folder: Path, name: str) -> Path:
    """Return the folder of a theme: the room's own, else the tool's.

    Raises
    ------
    PublishError
        If there is no such theme; the message names those that there are.
    """
    known = {
        entry.name: entry
        for themes in (OWN_THEMES, folder / "themes")
        if themes.is_dir()
        for entry in sorted(themes.iterdir())
        if (entry / "theme.yaml").is_file()
    }
    if name not in known:
        raise PublishError(f"there is no theme '{name}'; there are: {', '.join(sorted(known))}")
    return known[name]


def theme_key(folders: Iterable[Path]) -> str:
    """Return the key of what the folders of a theme put into pages and sheets themselves."""
    return key_of(*_hashed(_inside(file for folder in folders for file in _files(folder))))


def page_files(folder: Path) -> dict[str, Path]:
    """Return the room's pages of words by their names."""
    return _named(folder / "site" / "pages", "*.md")


def _files(folder: Path, endings: tuple[str, ...] = ()) -> list[Path]:
    """All files below a folder in a stable order, without what the interpreter leaves there."""
    found = sorted(path for path in folder.rglob("*") if path.is_file() and "__pycache__" not in path.parts)
    return [path for path in found if not endings or path.suffix in endings]


def _inside(files: Iterable[Path]) -> list[Path]:
    """Those files that pages and sheets hold something of, rather than link to."""
    return [file for file in files if file.name not in _LINKED_FILES and file.suffix not in _LINKED_KINDS]


def _hashed(files: Iterable[Path]) -> list[str]:
    return [f"{path.parent.name}/{path.name}:{_hash(path)}" for path in files if path.is_file()]


def _named(folder: Path, pattern: str) -> dict[str, Path]:
    return {path.stem: path for path in sorted(folder.glob(pattern)) if path.is_file()}


def _keys(files: dict[str, Path]) -> dict[str, str]:
    return {name: _hash(path) for name, path in files.items()}


def _hash(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest()[:32]


def _title(path: Path) -> str:
    """The first heading of a page, its name where it has none."""
    for line in path.read_text(encoding="utf-8", errors="replace").splitlines():
        if line.startswith("# "):
            return line[2:].strip()
    return path.stem.replace("-", " ").capitalize()


def _libraries() -> list[str]:
    """The installed libraries with their versions, read off the names of their folders."""
    folders = {Path(sys.prefix), *map(Path, site.getsitepackages())}
    return sorted(entry.name for folder in folders if folder.is_dir() for entry in folder.glob("*.dist-info"))

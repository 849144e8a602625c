"""What a site is built from, as keys of raw bytes: files are read and hashed, none is parsed.

A theme may stand on another, so all themes count together; so do the tool's own files and the versions of the
libraries, because a new tool or library may draw and set differently.
"""

from __future__ import annotations

import platform
import site
import sys
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from generator.errors import PublishError
from generator.publishing.room_files import (
    OWN_THEMES,
    THEMES,
    TOOL,
    as_is_files,
    class_files,
    edition_files,
    files_below,
    page_files,
    project_files,
    refuse_large_files,
    refuse_links_out,
    theme_folders,
    walked,
)
from generator.publishing.write import key_of, key_of_bytes, not_read
from generator.rendering.addresses import ROBOTS

# These reach a site only as files of their own, which pages link to: a change of them makes no page and no sheet stale.
_LINKED_FILES = ("screen.css", "print.css", "machine.css", "reference.css", "icon.svg", "icon-180.png")
_LINKED_KINDS = (".js", ".woff2")


@dataclass(frozen=True, slots=True)
class Inputs:
    """Keys of everything that a site is built from.

    ``tool`` is that of the tool and its libraries, ``common`` that of everything which all projects share, the tool
    included; ``inside`` leaves out what pages only link to. ``projects``, ``pages``, ``classes``, ``editions`` and
    ``as_is`` map names to keys of their bytes.
    """

    tool: str
    common: str
    inside: str
    projects: dict[str, str]
    pages: dict[str, str]
    classes: dict[str, str]
    editions: dict[str, str]
    as_is: dict[str, str]

    def of_project(self, name: str) -> str:
        """Return the key of one project's file and kept editions with everything that all projects share."""
        return key_of(self.common, self.projects[name], self.editions.get(name, ""))

    def with_editions(self, texts: Mapping[str, str]) -> Inputs:
        """Return the keys as they will be when some kept editions have new texts."""
        return replace(
            self, editions={**self.editions, **{name: key_of_bytes(text.encode()) for name, text in texts.items()}}
        )

    @property
    def strays(self) -> list[str]:
        """The names under which editions are kept without a project."""
        return [name for name in self.editions if name not in self.projects]

    @property
    def own_robots(self) -> bool:
        """Whether the room has a robots.txt of its own."""
        return any(name.casefold() == ROBOTS for name in self.as_is)

    @property
    def rest(self) -> str:
        """The key of everything that belongs to no single project."""
        named = (self.pages, self.classes, {name: self.editions[name] for name in self.strays}, self.as_is)
        return key_of(
            self.common, *(f"{number}:{name}:{key}" for number, sort in enumerate(named) for name, key in sort.items())
        )


def read_inputs(folder: Path, theme: str) -> Inputs:
    """Return the keys of all inputs of the room in ``folder`` for one theme; no name means the room's own theme.

    Raises
    ------
    FaultyFileError
        If a link leads out of the room.
    PublishError
        If a file cannot be read.
    """
    try:
        return _read(folder, theme)
    except OSError as fault:
        raise PublishError(not_read(fault, folder)) from fault


def _read(folder: Path, theme: str) -> Inputs:
    refuse_links_out(folder)
    refuse_large_files(folder)
    tool = key_of(platform.python_version(), *_libraries(), *_hashed(files_below(TOOL, (".py", ".yaml", ".conf"))))
    shared = [
        *files_below(OWN_THEMES),
        *(files_below(folder / "themes") if folder / "themes" != OWN_THEMES else ()),
        *files_below(folder / "site" / "techniques"),
        *files_below(folder / "site" / "body"),
        folder / "site" / "site.yaml",
    ]
    links = [f"{path.name}:{path.readlink()}" for path in walked(folder / THEMES) if path.is_symlink()]
    common, inside = (key_of(tool, theme, *links, *_hashed(files)) for files in (shared, _inside(shared)))
    sorts = (project_files, page_files, class_files, edition_files, as_is_files)
    return Inputs(tool, common, inside, *(_keys(files(folder)) for files in sorts))


def theme_folder(folder: Path, name: str) -> Path:
    """Return the folder of a theme: the room's own, else the tool's.

    Raises
    ------
    PublishError
        If there is no such theme; the message names those that there are.
    """
    known = theme_folders(folder)
    if name not in known:
        raise PublishError(f"there is no theme '{name}'; there are: {', '.join(sorted(known))}")
    return known[name]


def theme_key(folders: Iterable[Path]) -> str:
    """Return the key of what the folders of a theme put into pages and sheets themselves."""
    return key_of(*_hashed(_inside(file for folder in folders for file in files_below(folder))))


def _inside(files: Iterable[Path]) -> list[Path]:
    """Those files that pages and sheets hold something of, rather than link to."""
    return [file for file in files if file.name not in _LINKED_FILES and file.suffix not in _LINKED_KINDS]


def _hashed(files: Iterable[Path]) -> list[str]:
    return [f"{path.parent.name}/{path.name}:{_hash(path)}" for path in files if path.is_file()]


def _keys(files: dict[str, Path]) -> dict[str, str]:
    return {name: _hash(path) for name, path in files.items()}


def _hash(path: Path) -> str:
    return key_of_bytes(path.read_bytes())


def _libraries() -> list[str]:
    """The installed libraries with their versions, read off the names of their folders."""
    folders = {Path(sys.prefix), *map(Path, site.getsitepackages())}
    return sorted(entry.name for folder in folders if folder.is_dir() for entry in folder.glob("*.dist-info"))

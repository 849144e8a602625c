"""The files that a room is made of: its folder comes in, the files of each sort go out, each of a fair size."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from generator.definitions.text_file import size_fault
from generator.errors import FaultyFileError, Finding, Place
from generator.limits import MOST_FILES
from generator.publishing.links import OWN_THEMES, THEMES, refuse_links_out, walked
from generator.rendering.addresses import TAKEN

TOOL = Path(__file__).resolve().parents[1]
AS_IS = "site/as-is"
GLOSSARY = "glossary"
_PROJECT = re.compile(r"^project\s*:\s*[\"']?([^\s\"'#]+)", re.MULTILINE)
_YAML = (".yaml", ".yml")
_MEASURED = ("projects", "themes", "site/pages", "site/techniques", "site/classes", "site/editions")
_SORTS = {"projects": _YAML, "site/pages": (".md", ".markdown"), "site/classes": _YAML, "site/techniques": _YAML}


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


def as_is_files(room: Path) -> dict[str, Path]:
    """Return the files that are copied into the site as they are, by their paths in it."""
    folder = room / AS_IS
    return {path.relative_to(folder).as_posix(): path for path in files_below(folder)}


def stop_on_taken_names(room: Path) -> None:
    """Refuse files to be copied as they are that would lie where the tool writes, or whose names no server can serve.

    Raises
    ------
    FaultyFileError
        With every such file.
    """
    faults = []
    for address in as_is_files(room):
        first = address.partition("/")[0]
        if not address.isprintable():
            told = "the name holds a sign that cannot be seen; give the file another name"
            faults.append(Finding("error", told, Place(ascii(f"{AS_IS}/{address}"))))
        elif first.casefold() in TAKEN:
            told = f"the tool writes '{first}' itself; give the file another name"
            faults.append(Finding("error", told, Place(f"{AS_IS}/{address}")))
    if faults:
        raise FaultyFileError(faults)


def passed_over(room: Path) -> tuple[Finding, ...]:
    """Return a warning for each file that looks like one of the room's but does not end as these do."""
    return tuple(
        Finding(
            "warning", f"this file is not read: its name must end in {ending}; rename it", Place(f"{name}/{path.name}")
        )
        for name, (ending, *others) in _SORTS.items()
        for path in sorted((room / name).glob("[!.]*"))
        if path.suffix != ending and path.suffix.lower() in (ending, *others) and path.is_file()
    )


def files_below(folder: Path, endings: tuple[str, ...] = ()) -> list[Path]:
    """Return all files below a folder in a stable order, without what the interpreter leaves there."""
    found = [path for path in walked(folder) if path.is_file() and "__pycache__" not in path.parts]
    return sorted(path for path in found if not endings or path.suffix in endings)


def _named(folder: Path, pattern: str) -> dict[str, Path]:
    """Files by their names; a name that begins with a dot is one that a system or an editor has left."""
    found = sorted(folder.glob(pattern))
    return {path.stem: path for path in found if not path.name.startswith(".") and path.is_file()}


def refuse_large_files(room: Path) -> None:
    """Refuse a room with files that are too large or too many to be read.

    Raises
    ------
    FaultyFileError
        With every such file and folder.
    """
    faults = list(_faults(room))
    if faults:
        raise FaultyFileError(faults)


def _faults(room: Path) -> Iterator[Finding]:
    counted: Counter[Path] = Counter()
    for path in (room / "site" / "site.yaml", *(path for name in _MEASURED for path in files_below(room / name))):
        try:
            fault = size_fault(path.stat().st_size, path.suffix)
        except OSError:
            continue
        if fault:
            yield Finding("error", fault, Place(str(path.relative_to(room))))
        counted[path.parent] += 1
    for folder, number in counted.items():
        if number > MOST_FILES:
            told = f"{number} files; a folder of a room has {MOST_FILES} at most, so divide the room"
            yield Finding("error", told, Place(str(folder.relative_to(room))))

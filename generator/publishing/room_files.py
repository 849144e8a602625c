"""The files of a room by what they are, and the one rule on links: a room's folder comes in, paths and refusals go out.

A room may come from a stranger, so a link in it that leads out of it is never followed; one that stays inside is. The
room's themes may also lead to those of the tool. What the tool writes into, and what is copied into the site as it is,
may be no link at all.
"""

from __future__ import annotations

import os
import re
from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path

from generator.definitions.text_file import size_fault
from generator.errors import FaultyFileError, Finding, Place, PublishError
from generator.limits import MOST_FILES
from generator.publishing.write import not_read
from generator.rendering.addresses import TAKEN

OWN_THEMES = Path(__file__).resolve().parents[2] / "themes"
THEMES = "themes"
_LONE = ("site", "site/site.yaml")
_FOLDERS = ("projects", "site/pages", "site/techniques", "site/body", "site/classes", "site/editions", THEMES)
_WHOLE = (".tuckwright", "site/as-is")
_OUT = "the file is a link that leads out of the room; put the file itself here"
_RING = "the file is a link that leads to itself; put the file itself here"
_NO_LINK = {
    "site/as-is": "a link is not copied into the site; put the file itself here",
    "site/public": "the published site may be no link, for every run puts a new folder in its place; remove the link, "
    "publish, and copy site/public to where it is served",
}
_OWN = "the tool writes here, so this may be no link; remove it, and the tool makes it anew"
TOOL = Path(__file__).resolve().parents[1]
AS_IS = "site/as-is"
GLOSSARY = "glossary"
_PROJECT = re.compile(r"^project\s*:\s*[\"']?([^\s\"'#]+)", re.MULTILINE)
_YAML = (".yaml", ".yml")
_MEASURED = ("projects", "themes", "site/pages", "site/techniques", "site/body", "site/classes", "site/editions")
_SORTS = {
    "projects": _YAML,
    "site/pages": (".md", ".markdown"),
    "site/classes": _YAML,
    "site/techniques": _YAML,
    "site/body": _YAML,
}


def refuse_links_out(room: Path, folders: tuple[str, ...] = _FOLDERS) -> None:
    """Refuse a room with links that lead out of it, or that lie where the tool writes.

    Raises
    ------
    FaultyFileError
        With every such link.
    PublishError
        If a folder cannot be read.
    """
    try:
        found = [*_faulty(room, _LONE, _itself), *_faulty(room, folders, walked)]
        found += [(path, _no_link(room, path)) for path in _where_no_link_may_lie(room) if path.is_symlink()]
    except OSError as fault:
        raise PublishError(not_read(fault, room)) from fault
    if found:
        shown = ((str(path.relative_to(room)), fault) for path, fault in dict(found).items())
        raise FaultyFileError(Finding("error", fault, Place(place)) for place, fault in shown)


def walked(start: Path, homes: tuple[Path, ...] = ()) -> Iterator[Path]:
    """Give a place and everything below it, through links that stay inside the homes, if there are any.

    A folder that is met twice is gone through once, and so a folder inside itself comes to an end.
    """
    yield start
    if start.is_dir() and _leads_home(start, homes):
        yield from _inside(start, homes, {os.path.realpath(start)})


def _inside(folder: Path, homes: tuple[Path, ...], passed: set[str]) -> Iterator[Path]:
    with os.scandir(folder) as found:
        entries = sorted(found, key=lambda entry: entry.name)
    for entry in entries:
        path = Path(entry.path)
        yield path
        if entry.name != "__pycache__" and path.is_dir() and _leads_home(path, homes):
            real = os.path.realpath(path)
            if real not in passed:
                passed.add(real)
                yield from _inside(path, homes, passed)


def _leads_home(path: Path, homes: tuple[Path, ...]) -> bool:
    """Return whether a place is no link, or one that stays inside; without homes every place does."""
    return not homes or not path.is_symlink() or _fault(path, homes) == ""


def _fault(path: Path, homes: tuple[Path, ...]) -> str:
    """Return what is wrong with a link, nothing where it stays inside."""
    try:
        target = path.resolve()
    except (OSError, RuntimeError):
        return _RING
    return "" if any(target.is_relative_to(home) for home in homes) else _OUT


def _faulty(
    room: Path, names: tuple[str, ...], below: Callable[[Path, tuple[Path, ...]], Iterator[Path]]
) -> Iterator[tuple[Path, str]]:
    for name in names:
        homes = (room.resolve(), OWN_THEMES) if name == THEMES else (room.resolve(),)
        for path in below(room / name, homes):
            if path.is_symlink() and (fault := _fault(path, homes)):
                yield path, fault


def _itself(start: Path, _homes: tuple[Path, ...]) -> Iterator[Path]:
    yield start


def _where_no_link_may_lie(room: Path) -> Iterator[Path]:
    yield room / "site/public"
    yield from sorted((room / "site").glob(".public*"))
    for name in _WHOLE:
        yield room / name
        for folder, folders, files in os.walk(room / name) if not (room / name).is_symlink() else ():
            yield from (Path(folder, one) for one in sorted((*folders, *files)))


def _no_link(room: Path, path: Path) -> str:
    name = path.relative_to(room).as_posix()
    return next((told for place, told in _NO_LINK.items() if name == place or name.startswith(f"{place}/")), _OWN)


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
    faults = list(_too_large(room))
    if faults:
        raise FaultyFileError(faults)


def _too_large(room: Path) -> Iterator[Finding]:
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

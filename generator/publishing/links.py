"""The one rule on links for all commands: a room's folder comes in, every link that leads astray is refused.

A room may come from a stranger, so a link in it that leads out of it is never followed; one that stays inside is. The
room's themes may also lead to those of the tool. What the tool writes into, and what is copied into the site as it is,
may be no link at all.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from pathlib import Path

from generator.errors import FaultyFileError, Finding, Place, PublishError
from generator.publishing.write import not_read

OWN_THEMES = Path(__file__).resolve().parents[2] / "themes"
THEMES = "themes"
_LONE = ("site", "site/site.yaml")
_FOLDERS = ("projects", "site/pages", "site/techniques", "site/classes", "site/editions", THEMES)
_WHOLE = (".tuckwright", "site/as-is")
_OUT = "the file is a link that leads out of the room; put the file itself here"
_RING = "the file is a link that leads to itself; put the file itself here"
_NO_LINK = {
    "site/as-is": "a link is not copied into the site; put the file itself here",
    "site/public": "the published site may be no link, for every run puts a new folder in its place; remove the link, "
    "publish, and copy site/public to where it is served",
}
_OWN = "the tool writes here, so this may be no link; remove it, and the tool makes it anew"


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

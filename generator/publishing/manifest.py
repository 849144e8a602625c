"""The manifest of a published site: what was made from which inputs; read before a run, written with a new site.

It lies beside the site, in the tool's own folder of the room: what is served tells nothing of how it was made. It is
never believed: a file counts as kept only where its content is what was written, and no name in it leads anywhere but
below the site. A manifest that cannot be read counts as none.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, fields, is_dataclass
from functools import cache
from pathlib import Path, PurePosixPath
from types import NoneType, UnionType
from typing import Any, Literal, TypeVar, Union, get_args, get_origin, get_type_hints

from generator.publishing.jobs import Card
from generator.publishing.write import FileState, put_whole

OWN_FOLDER = ".tuckwright"
NAME = "published.json"
# Written before a new site takes its place: a run may be killed before the manifest could take its own.
_NEXT = "published-next.json"
DAMAGED = (
    f"{OWN_FOLDER}/{NAME}, which tells what was published, is damaged; remove it and the folder site/public, "
    "then publish again"
)
# Where the manifest of an older tool lay, inside the site.
_FORMER = ".manifest.json"
_FORM = 5
_LARGEST = 200_000_000
_Read = TypeVar("_Read")
_Held = TypeVar("_Held")
_CONTROLS = re.compile(r"[\x00-\x1f\x7f-\x9f\\]")


@dataclass(frozen=True, slots=True)
class Entry:
    """What one job made: the key of how it looks, that of what it says, and the state of each file.

    ``told`` is what other jobs need of this one, such as the card of a project.
    """

    looks: str
    key: str
    files: Mapping[str, FileState]
    told: Card | None = None

    def missing(self, site: Path) -> tuple[str, ...]:
        """Return the files that are not there as they were written."""
        return tuple(name for name, state in self.files.items() if not state.holds(site / name))


@dataclass(frozen=True, slots=True)
class Manifest:
    """What a site was made from.

    ``projects`` maps each project to the key of its file (with all that projects share), ``rest`` is that of what
    belongs to no project. ``entries`` are what was made, by the name of the job; those of a project begin with its
    name and a slash.
    """

    rest: str = ""
    projects: Mapping[str, str] = field(default_factory=dict)
    entries: Mapping[str, Entry] = field(default_factory=dict)

    @property
    def of_room(self) -> dict[str, Entry]:
        """The entries that belong to no project by their names."""
        return {name: entry for name, entry in self.entries.items() if "/" not in name}

    def of_project(self, project: str) -> dict[str, Entry]:
        """Return the entries of one project by their names."""
        return {name: entry for name, entry in self.entries.items() if name.startswith(f"{project}/")}


def size_entry(project: str, size: str, edition: str) -> str:
    """Return the name of the entry of one size in one edition."""
    return f"{project}/{edition}/{size}"


def pictures_entry(project: str) -> str:
    """Return the name of the entry of the pictures of a project's finished thing."""
    return f"{project}/pictures"


def is_size(entry: str) -> bool:
    """Return whether an entry is that of a size."""
    return entry.count("/") > 1


def page_entry(project: str) -> str:
    """Return the name of the entry of a project's page."""
    return f"{project}/overview"


def read_manifest(room: Path) -> Manifest:
    """Return the manifest of a room's site; an empty one where there is none or it is damaged."""
    return _read(room / OWN_FOLDER / NAME, _manifest) or Manifest()


def own_files(room: Path, site: Path) -> frozenset[str]:
    """Return the names of the files in the site that a run has written, as far as manifests tell."""
    places = (room / OWN_FOLDER / NAME, room / OWN_FOLDER / _NEXT, site / _FORMER)
    return frozenset(name for place in places for name in _read(place, _names) or ()) | {_FORMER}


def write_manifest(manifest: Manifest, room: Path) -> None:
    """Write the manifest of a site that will take its place in the next moment."""
    entries = {
        name: [
            entry.looks,
            entry.key,
            {file: [state.key, state.size, state.changed, state.number] for file, state in entry.files.items()},
            entry.told,
        ]
        for name, entry in manifest.entries.items()
    }
    whole = {"form": _FORM, "rest": manifest.rest, "projects": manifest.projects, "entries": entries}
    text = json.dumps(to_plain(whole), indent=1, sort_keys=True, ensure_ascii=False) + "\n"
    (room / OWN_FOLDER).mkdir(exist_ok=True)
    put_whole(room / OWN_FOLDER / _NEXT, text.encode())


def settle_manifest(room: Path) -> None:
    """Let the manifest that was written last be the one of the site."""
    (room / OWN_FOLDER / _NEXT).replace(room / OWN_FOLDER / NAME)


def complete(entries: Iterable[Entry], site: Path) -> bool:
    """Return whether every file of the entries is there as it was written."""
    return not any(entry.missing(site) for entry in entries)


def _read(path: Path, reader: Callable[[Any], _Read | None]) -> _Read | None:
    """Return what stands in a manifest, None where nothing does or it is not what this tool writes."""
    try:
        if path.is_symlink() or not path.is_file() or path.stat().st_size > _LARGEST:
            return None
        return reader(json.loads(path.read_bytes()))
    except (OSError, ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return None


def _manifest(found: Any) -> Manifest | None:
    if found["form"] != _FORM:
        return None
    entries = {name: _entry(*entry) for name, entry in found["entries"].items()}
    return Manifest(from_plain(str, found["rest"]), from_plain(dict[str, str], found["projects"]), entries)


def _entry(looks: object, key: object, files: Mapping[str, Any], told: object) -> Entry:
    states = {_address(name): _state(*state) for name, state in files.items()}
    return Entry(from_plain(str, looks), from_plain(str, key), states, from_plain(Card | None, told))


def _state(key: object, *numbers: object) -> FileState:
    if isinstance(key, str) and all(type(number) is int for number in numbers):
        return FileState(key, *numbers)  # type: ignore[arg-type]  # looked at in the line above
    raise ValueError("the state of a file is a key and three numbers")


def _names(found: Any) -> list[str]:
    """The names of files in a manifest of this tool or an older one."""
    groups = (entry["files"] if isinstance(entry, dict) else entry[2] for entry in found["entries"].values())
    return [_address(name) for group in groups for name in group]


def _address(name: str) -> str:
    """Return a name of a file below the site.

    Raises
    ------
    ValueError
        If it leads anywhere else.
    """
    path = PurePosixPath(name)
    if not name or name != str(path) or path.is_absolute() or ".." in path.parts or _CONTROLS.search(name):
        raise ValueError("a file lies below the site")
    return name


def to_plain(value: object) -> Any:
    """Return a value as JSON can hold it."""
    if is_dataclass(value):
        return {field.name: to_plain(getattr(value, field.name)) for field in fields(value)}
    if isinstance(value, Mapping):
        return {key: to_plain(inner) for key, inner in value.items()}
    if isinstance(value, list | tuple):
        return [to_plain(inner) for inner in value]
    return value


def from_plain(kind: Any, value: object) -> Any:
    """Return the value of a type that :func:`to_plain` made plain.

    Raises
    ------
    ValueError
        If it has another form.
    """
    by_origin = _FORMS.get(get_origin(kind))
    if by_origin is not None:
        return by_origin(get_args(kind), value)
    if is_dataclass(kind):
        return _record(kind, value)
    if kind in _PLAIN and type(value) is kind:
        return value
    raise ValueError(f"{kind} is wanted")


def _first_of(kinds: tuple[Any, ...], value: object) -> Any:
    for kind in kinds:
        try:
            return from_plain(kind, value)
        except ValueError:
            continue
    raise ValueError(f"one of {kinds} is wanted")


def _row(kinds: tuple[Any, ...], value: object) -> tuple[Any, ...]:
    values = _held(value, list)
    every = kinds[:1] * len(values) if kinds[1:] == (...,) else kinds
    return tuple(from_plain(kind, one) for kind, one in zip(every, values, strict=True))


def _pairs(kinds: tuple[Any, ...], value: object) -> dict[Any, Any]:
    return {from_plain(kinds[0], key): from_plain(kinds[1], one) for key, one in _held(value, dict).items()}


def _word(words: tuple[Any, ...], value: object) -> str:
    word = _held(value, str)
    if word not in words:
        raise ValueError(f"one of {words} is wanted")
    return word


def _record(kind: Any, value: object) -> Any:
    values, types = _held(value, dict), _types(kind)
    if values.keys() != types.keys():
        raise ValueError(f"{kind} is wanted")
    return kind(**{name: from_plain(of, values[name]) for name, of in types.items()})


def _held(value: object, kind: type[_Held]) -> _Held:
    if not isinstance(value, kind):
        raise ValueError(f"{kind} is wanted")
    return value


_PLAIN = (str, int, float, bool, NoneType)
_FORMS: dict[Any, Callable[[tuple[Any, ...], object], Any]] = {
    Union: _first_of,
    UnionType: _first_of,
    tuple: _row,
    dict: _pairs,
    Mapping: _pairs,
    Literal: _word,
}


@cache
def _types(kind: type) -> dict[str, Any]:
    return get_type_hints(kind)

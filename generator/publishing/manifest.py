"""The manifest of a built site: what was built from which inputs; read before a run, written with the new site.

It lies inside the site, so that both change in the same step. A manifest that cannot be read counts as none.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import asdict, dataclass, field
from pathlib import Path
from typing import Any

NAME = ".manifest.json"
_FORM = 3


@dataclass(frozen=True, slots=True)
class Entry:
    """What one job built: the key of how it looks, that of what it says, and the size [bytes] of each file.

    ``card`` holds what other jobs need of this one, such as the home page of a project.
    """

    looks: str
    content: str
    files: Mapping[str, int]
    card: Mapping[str, Any] = field(default_factory=dict)

    def missing(self, site: Path) -> tuple[str, ...]:
        """Return the files that are not there as they were written."""
        return tuple(name for name, size in self.files.items() if not _has(site / name, size))


@dataclass(frozen=True, slots=True)
class Manifest:
    """What a site was built from.

    ``projects`` maps each project to the key of its file (with all that projects share), ``rest`` is that of what
    belongs to no project. ``entries`` are what was built, by the name of the job; those of a project begin with its
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


def read_manifest(site: Path) -> Manifest:
    """Return the manifest of a built site; an empty one where there is none or it is damaged."""
    try:
        found = json.loads((site / NAME).read_text(encoding="utf-8"))
        if found["form"] != _FORM:
            return Manifest()
        entries = {name: Entry(**entry) for name, entry in found["entries"].items()}
        return Manifest(found["rest"], found["projects"], entries)
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return Manifest()


def write_manifest(manifest: Manifest, site: Path) -> None:
    """Write a manifest into a site that is being built; equal sites have equal manifests."""
    whole = {
        "form": _FORM,
        "rest": manifest.rest,
        "projects": dict(manifest.projects),
        "entries": {name: asdict(entry) for name, entry in manifest.entries.items()},
    }
    text = json.dumps(whole, indent=1, sort_keys=True, ensure_ascii=False) + "\n"
    (site / NAME).write_text(text, encoding="utf-8")


def complete(entries: Iterable[Entry], site: Path) -> bool:
    """Return whether every file of the entries is there as it was written."""
    return not any(entry.missing(site) for entry in entries)


def _has(path: Path, size: int) -> bool:
    try:
        return path.stat().st_size == size
    except OSError:
        return False

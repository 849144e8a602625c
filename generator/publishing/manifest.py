"""The manifest of a built site: what was built from which inputs; read before a run, written with the new site.

It lies inside the site, so that both change in the same step. A manifest that cannot be read counts as none.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict, dataclass, field
from pathlib import Path
from typing import Any

NAME = ".manifest.json"
_FORM = 1


@dataclass(frozen=True, slots=True)
class Entry:
    """What one task built: the key of its inputs, of its worksheet, and the size [bytes] of each file it wrote.

    ``card`` holds what the home page needs of a project, empty for other tasks.
    """

    key: str
    content: str
    files: Mapping[str, int]
    card: Mapping[str, Any] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Manifest:
    """Everything that a site was built from: ``projects`` maps a project to the key of its file and its tasks."""

    common: str = ""
    projects: Mapping[str, Mapping[str, Any]] = field(default_factory=dict)
    entries: Mapping[str, Entry] = field(default_factory=dict)


def read_manifest(site: Path) -> Manifest:
    """Return the manifest of a built site; an empty one where there is none or it is damaged."""
    try:
        found = json.loads((site / NAME).read_text(encoding="utf-8"))
        if found["form"] != _FORM:
            return Manifest()
        entries = {name: Entry(**entry) for name, entry in found["entries"].items()}
        return Manifest(found["common"], found["projects"], entries)
    except (OSError, ValueError, KeyError, TypeError):
        return Manifest()


def write_manifest(manifest: Manifest, site: Path) -> None:
    """Write a manifest into a site that is being built."""
    whole = {
        "form": _FORM,
        "common": manifest.common,
        "projects": dict(manifest.projects),
        "entries": {name: asdict(entry) for name, entry in sorted(manifest.entries.items())},
    }
    text = json.dumps(whole, indent=1, sort_keys=True, ensure_ascii=False) + "\n"
    (site / NAME).write_text(text, encoding="utf-8")

"""What a run has to look at: keys of inputs and the manifest come in, the projects to keep and to work again go out.

This is the first of two looks, at raw bytes only. A project that must be worked again may still come to the same
numbers; its sheets are then kept by the second look, at what they say.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from pathlib import Path

from generator.publishing.inputs import Inputs
from generator.publishing.manifest import Manifest, complete

# Entries of the room have no slash in their names, those of a project begin with its name and one.
SITE_ENTRY = "site"
ROOM_ENTRY = "sheets of the room"
REFERENCE_ENTRY = "reference"
GUIDES_ENTRY = "guides"
CLASSES_ENTRY = "classes"
CORRECTIONS_ENTRY = "corrections"
GLOSSARY = "glossary"


@dataclass(frozen=True, slots=True)
class Plan:
    """Names of the projects that stay as they are and of those to work again; ``current`` where nothing is to do."""

    kept: tuple[str, ...]
    stale: tuple[str, ...]
    current: bool


def planned(
    inputs: Inputs, manifest: Manifest, site: Path, wanted: Collection[str] = (), *, work_again: bool = False
) -> Plan:
    """Return what to do so that a site matches its inputs.

    With ``wanted`` only those projects are brought up to date: the others stay as they were last published, and one
    that never was stays out. With ``work_again`` they are worked, whatever the manifest says of them.
    """
    kept: list[str] = []
    stale: list[str] = []
    for name in inputs.projects:
        asked = not wanted or name in wanted
        published = name in manifest.projects
        if not asked and not published:
            continue
        again = asked and (work_again or manifest.projects.get(name) != inputs.of_project(name))
        (kept if published and not again and complete(manifest.of_project(name).values(), site) else stale).append(name)
    return Plan(tuple(kept), tuple(stale), current=not stale and _rest_is_current(inputs, manifest, site, kept))


def _rest_is_current(inputs: Inputs, manifest: Manifest, site: Path, kept: list[str]) -> bool:
    """Return whether the pages of the room stand as they are and no project is on the site that has gone."""
    same = manifest.rest == inputs.rest and set(manifest.projects) == set(kept)
    return same and complete(manifest.of_room.values(), site)


def sheet_entry(project: str, size: str, edition: str) -> str:
    """Return the name under which the manifest keeps one size in one edition."""
    return f"{project}/{edition}/{size}"


def overview_entry(project: str) -> str:
    """Return the name under which the manifest keeps the page of a project."""
    return f"{project}/overview"


def further_entry(project: str) -> str:
    """Return the name under which the manifest keeps the sheets about all sizes of a project."""
    return f"{project}/further"


def words_entry(page: str) -> str:
    """Return the name under which the manifest keeps a page of words."""
    return f"page: {page}"


def class_entry(name: str) -> str:
    """Return the name under which the manifest keeps the page of a class."""
    return f"class: {name}"


def is_sheet(entry: str) -> bool:
    """Return whether an entry of the manifest is that of a size."""
    return entry.count("/") > 1

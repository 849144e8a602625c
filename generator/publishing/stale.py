"""What a run has to look at: keys of inputs and the manifest come in, the projects to keep and to work again go out.

This is the first of two looks, at raw bytes only. A project that must be worked again may still come to the same
numbers; its sheets are then kept by the second look, at what they say. Here is also told why a sheet is kept or not.
"""

from __future__ import annotations

import os
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from pathlib import Path
from pkgutil import resolve_name

from generator.errors import FaultyFileError, PublishError
from generator.publishing.inputs import Inputs, read_inputs
from generator.publishing.jobs import Order, Outcome, WorkedProject, WorkedSize
from generator.publishing.manifest import (
    NAME,
    OWN_FOLDER,
    Entry,
    Manifest,
    complete,
    own_files,
    read_manifest,
    size_entry,
)

_KEPT = "is kept"
_LOOKS = ("the tool or one of its libraries", "the theme", "the room's name, place, address or papers")
# What the windows of a machine leave in every folder that they show.
_LITTER = (".DS_Store", "Thumbs.db", "desktop.ini")
_MOST_NAMED = 5


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


def stop_on_foreign_files(room: Path, site: Path) -> None:
    """Stop before anything in the site that no run has written would vanish with the folder.

    Raises
    ------
    PublishError
        With what lies there, and what to do.
    """
    own = own_files(room, site)
    folders = {str(parent) for name in own for parent in Path(name).parents}
    found = list(_foreign(site, "", own, folders))
    if not found:
        return
    lost = f" What was published before is not known: {OWN_FOLDER}/{NAME} is missing or damaged."
    told = "" if len(own) > 1 else lost
    more = f" and {len(found) - _MOST_NAMED} more" if len(found) > _MOST_NAMED else ""
    raise PublishError(
        f"{site} holds what was not published from here: {', '.join(found[:_MOST_NAMED])}{more}.{told} Every run puts "
        "a new folder in its place. Files for the web move to site/as-is, whose files are copied into every site; move "
        "others away. If nothing there is yours, remove the folder. Then publish again"
    )


def _foreign(folder: Path, inside: str, own: Collection[str], folders: Collection[str]) -> Iterator[str]:
    """Give what no run has written; a folder that holds nothing of a run is told as a whole."""
    if not folder.is_dir():
        return
    with os.scandir(folder) as found:
        entries = sorted(found, key=lambda entry: entry.name)
    for entry in entries:
        name = f"{inside}{entry.name}"
        if entry.is_dir(follow_symlinks=False):
            if name in folders:
                yield from _foreign(Path(entry.path), f"{name}/", own, folders)
            else:
                yield f"{name}/"
        elif not (name in own and entry.is_file(follow_symlinks=False)) and entry.name not in _LITTER:
            yield name


def reasons(order: Order, project: str, size: str) -> dict[str, str]:
    """Return what the next run will do with one size of a project, and why, by edition.

    Raises
    ------
    FaultyFileError
        If the project cannot be worked.
    PublishError
        If there is no such project or size.
    """
    inputs, manifest = read_inputs(order.folder, order.theme), read_manifest(order.folder)
    if project not in inputs.projects:
        raise PublishError(f"there is no project '{project}'; there are: {', '.join(inputs.projects)}")
    outcome: Outcome = resolve_name("generator.publishing.build:worked_alone")(order, inputs, project)
    if outcome.findings:
        raise FaultyFileError(outcome.findings)
    if not isinstance(outcome.told, WorkedProject):
        raise PublishError(outcome.fault)
    sizes = [worked for worked in outcome.told.sizes if worked.size == size]
    if not sizes:
        known = dict.fromkeys(worked.size for worked in outcome.told.sizes)
        raise PublishError(f"'{project}' has no size '{size}'; it has: {', '.join(known)}")
    unchanged = manifest.projects.get(project) == inputs.of_project(project)
    entries = {worked: manifest.entries.get(size_entry(project, size, worked.edition)) for worked in sizes}
    return {
        worked.edition: _reason(entry, worked, outcome.looks, order.site, unchanged=unchanged)
        for worked, entry in entries.items()
    }


def _reason(entry: Entry | None, worked: WorkedSize, looks: str, site: Path, *, unchanged: bool) -> str:
    if entry is None:
        return "is made: it was never published"
    changed = list(_changes(entry, worked, looks, site))
    if changed:
        return f"is made again: {'; '.join(changed)}"
    return f"{_KEPT}: nothing has changed" if unchanged else f"{_KEPT}: what has changed does not reach it"


def _changes(entry: Entry, worked: WorkedSize, looks: str, site: Path) -> Iterator[str]:
    parts = zip(_LOOKS, entry.looks.split("-"), looks.split("-"), strict=False)
    yield from (f"{name} changed" for name, before, now in parts if before != now)
    if entry.key != worked.key:
        yield "its numbers or words changed"
    missing = entry.missing(site)
    if missing:
        yield f"missing or altered in the site: {', '.join(missing)}"

"""Why a sheet is made again or kept: an order, a project and a size come in, a reason for each edition goes out."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from generator.errors import FaultyFileError, PublishError
from generator.publishing.crew import Crew
from generator.publishing.inputs import Inputs, read_inputs
from generator.publishing.jobs import Outcome, ProjectJob, Sheet, workshop_of
from generator.publishing.manifest import Entry, Manifest, read_manifest
from generator.publishing.order import Order
from generator.publishing.plan import sheet_entry

_KEPT = "is kept"
_LOOKS = ("the tool or one of its libraries", "the theme", "the room's name, place, address or papers")


def reasons(order: Order, project: str, size: str) -> dict[str, str]:
    """Return what the next run will do with one size of a project, and why, by edition.

    Raises
    ------
    FaultyFileError
        If the project cannot be worked.
    PublishError
        If there is no such project or size.
    """
    inputs, manifest = read_inputs(order.folder, order.theme), read_manifest(order.site)
    if project not in inputs.projects:
        raise PublishError(f"there is no project '{project}'; there are: {', '.join(inputs.projects)}")
    outcome = _worked(order, inputs, project)
    sheets = [sheet for sheet in outcome.sheets if sheet.size == size]
    if not sheets:
        sizes = dict.fromkeys(sheet.size for sheet in outcome.sheets)
        raise PublishError(f"'{project}' has no size '{size}'; it has: {', '.join(sizes)}")
    unchanged = manifest.projects.get(project) == inputs.of_project(project)
    return {
        sheet.edition: _reason(_entry(manifest, project, sheet), sheet, outcome.looks, order.site, unchanged=unchanged)
        for sheet in sheets
    }


def _worked(order: Order, inputs: Inputs, project: str) -> Outcome:
    job = ProjectJob(project, order.folder / "projects" / f"{project}.yaml")
    with Crew(workshop_of(order.folder, order.theme, inputs), 1) as crew:
        ((_, outcome),) = crew.outcomes([job])
    if outcome.findings:
        raise FaultyFileError(outcome.findings)
    if outcome.fault:
        raise PublishError(outcome.fault)
    return outcome


def _entry(manifest: Manifest, project: str, sheet: Sheet) -> Entry | None:
    return manifest.entries.get(sheet_entry(project, sheet.size, sheet.edition))


def _reason(entry: Entry | None, sheet: Sheet, looks: str, site: Path, *, unchanged: bool) -> str:
    if entry is None:
        return "is made: it was never published"
    changed = list(_changes(entry, sheet, looks, site))
    if changed:
        return f"is made again: {'; '.join(changed)}"
    return f"{_KEPT}: nothing has changed" if unchanged else f"{_KEPT}: what has changed does not reach it"


def _changes(entry: Entry, sheet: Sheet, looks: str, site: Path) -> Iterator[str]:
    parts = zip(_LOOKS, entry.looks.split("-"), looks.split("-"), strict=False)
    yield from (f"{name} changed" for name, before, now in parts if before != now)
    if entry.content != sheet.content:
        yield "its numbers or words changed"
    missing = entry.missing(site)
    if missing:
        yield f"missing or altered in the site: {', '.join(missing)}"

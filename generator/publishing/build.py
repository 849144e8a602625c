"""Building a site in a new folder: what is stale is made, what still holds is taken over, then it takes its place.

First all projects are worked, so that every finding comes at once and before anything is drawn. Then follow the sheets,
the page of each project, and the pages of the room, each from what came before it.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from generator.errors import FaultyFileError, Finding, PublishError
from generator.publishing.editions import keep
from generator.publishing.inputs import Inputs
from generator.publishing.jobs import (
    Job,
    Order,
    Outcome,
    ProjectTold,
    Published,
    Report,
    RoomVersion,
    SizeTold,
    Stamp,
    WorkedProject,
)
from generator.publishing.kept_files import sweep
from generator.publishing.manifest import (
    Entry,
    Manifest,
    is_size,
    page_entry,
    read_manifest,
    settle_manifest,
    size_entry,
    write_manifest,
)
from generator.publishing.pool import Pool
from generator.publishing.room_files import stop_on_taken_names
from generator.publishing.stale import planned, stop_on_foreign_files
from generator.publishing.swap import staged
from generator.publishing.tasks import (
    PAGES,
    ROOM_ENTRY,
    Known,
    Page,
    between_jobs,
    further_job,
    page_job,
    pictures_job,
    project_job,
    room_job,
    size_jobs,
)
from generator.publishing.write import key_of, not_written
from generator.rendering.cards import ClassCard


def build(order: Order, inputs: Inputs, report: Report) -> Published:
    """Build the site of an order and put it in its place."""
    stop_on_taken_names(order.folder)
    stop_on_foreign_files(order.folder, order.site)
    with staged(order.site, lambda: settle_manifest(order.folder)) as staging:
        run = _Run(order, inputs, staging, report)
        with Pool(_version(order, inputs), staging, order.workers, profiled=order.profiled) as pool:
            run.fill(pool)
            run.published.functions = pool.functions
        # Somebody may have put a file there while the run was at work.
        stop_on_foreign_files(order.folder, order.site)
    keep(order.folder, run.pending)
    sweep(order.folder)
    return run.published


def worked_alone(order: Order, inputs: Inputs, project: str) -> Outcome:
    """Return what comes of working one project, outside of a run."""
    with Pool(_version(order, inputs), order.folder, 1) as pool:
        ((_, outcome),) = pool.outcomes([project_job(order.folder, project)])
    return outcome


def _version(order: Order, inputs: Inputs) -> RoomVersion:
    return RoomVersion(order.folder, order.theme, inputs.tool, inputs.common)


class _Run:
    """One run: the old site and its manifest, the new folder, and what has been made so far."""

    def __init__(self, order: Order, inputs: Inputs, staging: Path, report: Report) -> None:
        self._order = order
        self._inputs = inputs
        self._staging = staging
        self._report = report
        self._old = read_manifest(order.folder)
        self._plan = planned(inputs, self._old, order.site, order.projects, work_again=bool(order.mark))
        self._projects = sorted((*self._plan.kept, *self._plan.stale))
        self._entries: dict[str, Entry] = {}
        self.pending: dict[str, str] = {}
        self.published = Published(projects=len(self._projects))

    def fill(self, pool: Pool) -> None:
        """Make or take over everything that the site consists of, and write its manifest."""
        if self._plan.stale:
            pool.prepare()
        outcomes = self._worked(pool, self._plan.stale)
        worked = {project: _worked_project(outcome) for project, outcome in outcomes.items()}
        self.pending = {project: one.kept for project, one in worked.items() if one.kept}
        self._inputs = self._inputs.with_editions(self.pending)
        for project in self._plan.kept:
            for name, entry in self._old.of_project(project).items():
                self._take_over(name, entry)
        # A project whose looks changed has every sheet made again, whatever it says.
        looks = {project: outcome.looks for project, outcome in outcomes.items()}
        sheets = [
            job
            for project, one in worked.items()
            for job in self._stale(
                [*size_jobs(project, one), further_job(project, one), *between_jobs(project, one)], looks[project]
            )
        ]
        pictures = [pictures_job(project, one, self._inputs.tool) for project, one in worked.items()]
        self._make(pool, [*_sizes_first(sheets), *self._stale(pictures), *self._room_sheets(pool, worked)], "sheets")
        pages = [self._stale([page_job(project, one, self._known)], looks[project]) for project, one in worked.items()]
        self._make(pool, [job for jobs in pages for job in jobs], "project pages")
        for row in PAGES:
            self._make(pool, [job for page in row for job in self._of_page(page)], "pages of the room")
        self._write_manifest()
        self.published.tell(self._known.pages_of_projects, self.pending, self._inputs.strays)

    def _worked(self, pool: Pool, projects: Sequence[str]) -> dict[str, Outcome]:
        """Work projects in every size; nothing is drawn unless all of them can be sewn."""
        order = self._order
        jobs = [project_job(order.folder, name, order.mark, order.day) for name in projects]
        return dict(zip(projects, self._outcomes(pool, jobs, "projects"), strict=True))

    def _room_sheets(self, pool: Pool, worked: Mapping[str, WorkedProject]) -> list[Job]:
        """Return the sheets of the room if they must be made: they tell of all projects, so the kept are worked too."""
        stamp = self._stamp_of_all(worked)
        keys = {name: self._known.told(SizeTold, name).wordless for name in self._entries if is_size(name)}
        keys |= {
            size_entry(project, size.size, size.edition): size.wordless
            for project, one in worked.items()
            for size in one.sizes
        }
        said = (part for size in sorted(keys.items()) for part in size)
        key = key_of(self._inputs.inside, stamp.mark, stamp.standing, *said)
        if self._same(ROOM_ENTRY, key):
            return []
        kept = {name: _worked_project(one) for name, one in self._worked(pool, self._plan.kept).items()}
        sizes = {project: {**worked, **kept}[project].sizes for project in self._projects}
        return [room_job(sizes, stamp, key)]

    def _stamp_of_all(self, worked: Mapping[str, WorkedProject]) -> Stamp:
        """What a sheet about all projects says of its edition: nothing where they differ."""
        stamps = {one.against.stamp for one in worked.values()}
        stamps |= {self._known.told(ProjectTold, page_entry(name)).against.stamp for name in self._plan.kept}
        return stamps.pop() if len(stamps) == 1 else Stamp()

    def _of_page(self, page: Page) -> list[Job]:
        """Return what must be made of a page; where single projects are published, some stay as they were."""
        jobs = list(page.jobs(self._known))
        if not (page.whole_room and self._order.projects):
            return self._stale(jobs)
        for job in jobs:
            old = self._old.entries.get(job.name)
            of_here = old and isinstance(old.told, ClassCard) and old.told.project in self._projects
            if old and of_here and not old.missing(self._order.site):
                self._take_over(job.name, old)
        return []

    def _write_manifest(self) -> None:
        keys = {name: self._old.projects[name] for name in self._plan.kept}
        keys |= {name: self._inputs.of_project(name) for name in self._plan.stale}
        jobs = [job for row in PAGES for page in row if page.whole_room for job in page.jobs(self._known)]
        whole = all(job.name in self._entries and self._entries[job.name].key == job.key for job in jobs)
        try:
            write_manifest(Manifest(self._inputs.rest if whole else "", keys, self._entries), self._order.folder)
        except OSError as fault:
            raise PublishError(f"{fault.filename} {not_written(fault)}") from fault

    @property
    def _known(self) -> Known:
        return Known(self._order.folder, self._inputs, self._projects, self._entries, self.pending)

    def _stale(self, jobs: Iterable[Job], looks: str | None = None) -> list[Job]:
        """Take over what would come out the same, and return the rest."""
        return [job for job in jobs if not self._same(job.name, job.key, looks)]

    def _make(self, pool: Pool, jobs: Sequence[Job], what: str) -> None:
        for job, outcome in zip(jobs, self._outcomes(pool, jobs, what), strict=True):
            assert not isinstance(outcome.told, WorkedProject)
            self._entries[job.name] = Entry(outcome.looks, job.key, outcome.files, outcome.told)
            self.published.made.append(job.name)

    def _outcomes(self, pool: Pool, jobs: Sequence[Job], what: str) -> list[Outcome]:
        """Have jobs done, all of them even where one fails, and return their outcomes in the order of the jobs.

        Raises
        ------
        FaultyFileError, PublishError
            With everything that went wrong.
        """
        self._report.expect(len(jobs), what)
        outcomes: dict[int, Outcome] = {}
        for number, outcome in pool.outcomes(jobs):
            outcomes[number] = outcome
            self.published.count(outcome.seconds)
            self._report.done(jobs[number].label)
        in_order = [outcomes[number] for number in range(len(jobs))]
        _stop_on_faults(in_order)
        return in_order

    def _same(self, name: str, key: str, looks: str | None = None) -> bool:
        """Take an entry over if it would come out the same; return whether it was."""
        entry = self._old.entries.get(name)
        if entry is None or entry.key != key or looks not in (None, entry.looks) or entry.missing(self._order.site):
            return False
        self._take_over(name, entry)
        return True

    def _take_over(self, name: str, entry: Entry) -> None:
        """Put the files of an entry into the new folder: as further links to the same bytes, else as copies."""
        states = {}
        for file, state in entry.files.items():
            old, new = self._order.site / file, self._staging / file
            new.parent.mkdir(parents=True, exist_ok=True)
            try:
                os.link(old, new)
            except OSError:
                shutil.copy2(old, new)
            states[file] = state.of(new)
        self._entries[name] = replace(entry, files=states)
        self.published.kept.append(name)


def _sizes_first(jobs: Iterable[Job]) -> list[Job]:
    return sorted(jobs, key=lambda job: not is_size(job.name))


def _worked_project(outcome: Outcome) -> WorkedProject:
    assert isinstance(outcome.told, WorkedProject)
    return outcome.told


def _stop_on_faults(outcomes: Sequence[Outcome]) -> None:
    findings = dict.fromkeys(finding for outcome in outcomes for finding in outcome.findings)
    faults = tuple(dict.fromkeys(outcome.fault for outcome in outcomes if outcome.fault))
    if findings:
        raise FaultyFileError((*findings, *(Finding("error", fault) for fault in faults)))
    if faults:
        raise PublishError("\n".join((*faults, "Nothing was published; what was published before still stands.")))

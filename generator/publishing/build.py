"""Building a site in a new folder: what is stale is made, what still holds is taken over, then it takes its place.

First all projects are worked, so that every finding comes at once and before anything is drawn. Then follow the sheets,
the page of each project, and the home page, each from what came before it.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from generator.errors import FaultyFileError, Finding, PublishError
from generator.publishing.crew import Crew
from generator.publishing.inputs import Inputs, key_of
from generator.publishing.jobs import (
    FurtherJob,
    Job,
    Outcome,
    OverviewJob,
    ProjectJob,
    ReferenceJob,
    RoomJob,
    SheetJob,
    Stamp,
    by_edition,
    workshop_of,
)
from generator.publishing.keeping import keep, stamp_of
from generator.publishing.manifest import NAME, Entry, Manifest, read_manifest, write_manifest
from generator.publishing.order import Order, Published, Report
from generator.publishing.page_tasks import (
    Task,
    class_tasks,
    classes_task,
    corrections_task,
    home_task,
    words_tasks,
    written,
)
from generator.publishing.plan import (
    GLOSSARY,
    REFERENCE_ENTRY,
    ROOM_ENTRY,
    further_entry,
    is_sheet,
    overview_entry,
    planned,
    sheet_entry,
)
from generator.publishing.room_files import project_file
from generator.publishing.swap import staged


def build(order: Order, inputs: Inputs, report: Report) -> Published:
    """Build the site of an order and put it in its place."""
    _stop_on_strangers(order.site)
    with staged(order.site) as staging:
        run = _Run(order, inputs, staging, report)
        with Crew(workshop_of(order.folder, order.theme, inputs), order.workers, profiled=order.profiled) as crew:
            run.fill(crew)
            run.published.functions = crew.functions
    keep(order.folder, run.pending)
    return run.published


class _Run:
    """One run: the old site and its manifest, the new folder, and what has been made so far."""

    def __init__(self, order: Order, inputs: Inputs, staging: Path, report: Report) -> None:
        self._order = order
        self._inputs = inputs
        self._staging = staging
        self._report = report
        self._old = read_manifest(order.site)
        self._plan = planned(inputs, self._old, order.site, order.projects, work_again=bool(order.mark))
        self._entries: dict[str, Entry] = {}
        self.pending: dict[str, str] = {}
        self.published = Published(projects=len(self._plan.kept) + len(self._plan.stale))

    def fill(self, crew: Crew) -> None:
        """Make or take over everything that the site consists of, and write its manifest."""
        if self._plan.stale:
            crew.expect()
        worked = self._worked(crew, self._plan.stale)
        self.pending = {name: outcome.card["kept"] for name, outcome in worked.items() if outcome.card["kept"]}
        self._inputs = self._inputs.with_editions(self.pending)
        for project in self._plan.kept:
            for name, entry in self._old.of_project(project).items():
                self._take_over(name, entry)
        sheets, further = self._sheets(worked), self._further(worked)
        self._make(crew, [*sheets, *further, *self._room_sheets(crew, worked)], "sheets")
        self._make(crew, self._overviews(worked), "project pages")
        words = words_tasks(self._order.folder, self._inputs, self._staging)
        self._make(crew, [*self._reference(), *self._changed(words)], "reference and pages")
        classes = class_tasks(self._order.folder, self._inputs, self._staging)
        self._classes(crew, classes)
        self._bring(crew, [self._corrections()], "corrections")
        self._bring(crew, [self._home()], "home page")
        keys = {name: self._old.projects[name] for name in self._plan.kept}
        keys |= {name: self._inputs.of_project(name) for name in self._plan.stale}
        known = all(task.name in self._entries and self._entries[task.name].content == task.content for task in classes)
        write_manifest(Manifest(self._inputs.rest if known else "", keys, self._entries), self._staging)
        self.published.tell(self._cards, self.pending, self._inputs.strays)

    def _worked(self, crew: Crew, projects: Sequence[str]) -> dict[str, Outcome]:
        """Work projects in every size; nothing is drawn unless all of them can be sewn."""
        order = self._order
        jobs = [ProjectJob(name, project_file(order.folder, name), order.mark, order.day) for name in projects]
        return dict(zip(projects, self._outcomes(crew, jobs, "projects"), strict=True))

    def _sheets(self, worked: Mapping[str, Outcome]) -> list[Task]:
        """Return the sheets that must be made; those that would come out the same are taken over."""
        return [
            Task(
                sheet_entry(project, sheet.size, sheet.edition), sheet.content, SheetJob(project, sheet, self._staging)
            )
            for project, outcome in worked.items()
            for sheet in outcome.sheets
            if not self._same(sheet_entry(project, sheet.size, sheet.edition), sheet.content, outcome.looks)
        ]

    def _further(self, worked: Mapping[str, Outcome]) -> list[Task]:
        """Return the sheets about all sizes of a project that must be made."""
        return [
            Task(
                further_entry(project),
                _all_sizes(outcome),
                FurtherJob(project, _packed(outcome), stamp_of(outcome.card), self._staging),
            )
            for project, outcome in worked.items()
            if not self._same(further_entry(project), _all_sizes(outcome), outcome.looks)
        ]

    def _overviews(self, worked: Mapping[str, Outcome]) -> list[Task]:
        """Return the pages of projects that must be made; each shows what the project's leading sheet drew."""
        tasks = []
        for project, outcome in worked.items():
            standing = _without_text(outcome.card)
            name, content = overview_entry(project), key_of(_all_sizes(outcome), written(standing))
            if not self._same(name, content, outcome.looks):
                leading, further = self._card(_leading_entry(project, outcome)), self._card(further_entry(project))
                job = OverviewJob(project, _packed(outcome), leading, further["sheets"], standing, self._staging)
                tasks.append(Task(name, content, job))
        return tasks

    def _room_sheets(self, crew: Crew, worked: Mapping[str, Outcome]) -> list[Task]:
        """Return the sheets of the room if they must be made: they tell of all projects, so the kept are worked too."""
        sheets = {name: entry.content for name, entry in self._entries.items() if is_sheet(name)}
        for project, outcome in worked.items():
            sheets |= {sheet_entry(project, sheet.size, sheet.edition): sheet.content for sheet in outcome.sheets}
        content = key_of(self._inputs.inside, *(part for sheet in sorted(sheets.items()) for part in sheet))
        if self._same(ROOM_ENTRY, content):
            return []
        every = {**worked, **self._worked(crew, self._plan.kept)}
        editions = by_edition({name: every[name].sheets for name in self._projects})
        told = [outcome.card for outcome in worked.values()]
        told += [self._card(overview_entry(project))["standing"] for project in self._plan.kept]
        stamps = {stamp_of(one) for one in told}
        stamp = stamps.pop() if len(stamps) == 1 else Stamp()
        return [Task(ROOM_ENTRY, content, RoomJob(editions, stamp, self._staging))]

    def _reference(self) -> list[Task]:
        """Return the turn plans and the reference if they must be made."""
        cards = tuple(self._cards)
        used = (f"{card['project']} {card['title']} {' '.join(card['plans'])}" for card in cards)
        glossary = GLOSSARY in self._inputs.pages
        content = key_of(self._inputs.inside, *used, str(glossary))
        if self._same(REFERENCE_ENTRY, content):
            return []
        return [Task(REFERENCE_ENTRY, content, ReferenceJob(cards, glossary, self._staging))]

    def _classes(self, crew: Crew, tasks: Sequence[Task]) -> None:
        """Make the pages of classes and their list; where single projects are published, classes stay as they were."""
        if self._order.projects:
            for task in tasks:
                old = self._old.entries.get(task.name)
                if old and old.card["project"] in self._projects and not old.missing(self._order.site):
                    self._take_over(task.name, old)
        else:
            self._bring(crew, tasks, "classes")
        cards = [self._card(task.name) for task in tasks if task.name in self._entries]
        self._bring(crew, [classes_task(self._inputs, cards, self._staging)], "classes")

    def _corrections(self) -> Task:
        return corrections_task(self._inputs, self._cards, self.pending, self._staging)

    def _home(self) -> Task:
        pages = sorted(file for entry in self._entries.values() for file in entry.files if file.endswith(".html"))
        return home_task(self._inputs, self._cards, self._card(ROOM_ENTRY)["sheets"], pages, self._staging)

    @property
    def _projects(self) -> list[str]:
        return sorted((*self._plan.kept, *self._plan.stale))

    @property
    def _cards(self) -> list[Mapping[str, Any]]:
        """What the pages of all projects tell."""
        return [self._card(overview_entry(project)) for project in self._projects]

    def _card(self, entry: str) -> Mapping[str, Any]:
        """What an entry that is made or taken over tells other jobs."""
        return self._entries[entry].card

    def _bring(self, crew: Crew, tasks: Sequence[Task], what: str) -> None:
        """Take over what would come out the same, and make the rest."""
        self._make(crew, self._changed(tasks), what)

    def _changed(self, tasks: Sequence[Task]) -> list[Task]:
        """Take over what would come out the same, and return the rest."""
        return [task for task in tasks if not self._same(task.name, task.content)]

    def _make(self, crew: Crew, tasks: Sequence[Task], what: str) -> None:
        outcomes = self._outcomes(crew, [task.job for task in tasks], what)
        for task, outcome in zip(tasks, outcomes, strict=True):
            self._entries[task.name] = Entry(outcome.looks, task.content, outcome.files, outcome.card)
            self.published.made.append(task.name)

    def _outcomes(self, crew: Crew, jobs: Sequence[Job], what: str) -> list[Outcome]:
        """Have jobs done, all of them even where one fails, and return their outcomes in the order of the jobs.

        Raises
        ------
        FaultyFileError, PublishError
            With everything that went wrong.
        """
        self._report.expect(len(jobs), what)
        outcomes: dict[int, Outcome] = {}
        for number, outcome in crew.outcomes(jobs):
            outcomes[number] = outcome
            self.published.count(outcome.seconds)
            self._report.done(jobs[number].label)
        in_order = [outcomes[number] for number in range(len(jobs))]
        _stop_on_faults(in_order)
        return in_order

    def _same(self, name: str, content: str, looks: str | None = None) -> bool:
        """Take an entry over if it would come out the same; return whether it was."""
        entry = self._old.entries.get(name)
        if entry is None or entry.content != content or looks not in (None, entry.looks):
            return False
        if entry.missing(self._order.site):
            return False
        self._take_over(name, entry)
        return True

    def _take_over(self, name: str, entry: Entry) -> None:
        """Put the files of an entry into the new folder: as further links to the same bytes, else as copies."""
        for file in entry.files:
            old, new = self._order.site / file, self._staging / file
            new.parent.mkdir(parents=True, exist_ok=True)
            try:
                os.link(old, new)
            except OSError:
                shutil.copy2(old, new)
        self._entries[name] = entry
        self.published.kept.append(name)


def _stop_on_strangers(site: Path) -> None:
    """Refuse to put a site in the place of files that no run has written."""
    if site.is_dir() and any(site.iterdir()) and not (site / NAME).exists():
        raise PublishError(f"{site} holds files that were not published from here; move them away, then publish again")


def _stop_on_faults(outcomes: Sequence[Outcome]) -> None:
    findings = dict.fromkeys(finding for outcome in outcomes for finding in outcome.findings)
    faults = tuple(dict.fromkeys(outcome.fault for outcome in outcomes if outcome.fault))
    if findings:
        raise FaultyFileError((*findings, *(Finding("error", fault) for fault in faults)))
    if faults:
        raise PublishError("\n".join((*faults, "Nothing was published; what was published before still stands.")))


def _leading_entry(project: str, outcome: Outcome) -> str:
    leading = outcome.sheets[0]
    return sheet_entry(project, leading.size, leading.edition)


def _all_sizes(outcome: Outcome) -> str:
    """The key of what all sizes of a project say."""
    return key_of(*(sheet.content for sheet in outcome.sheets))


def _packed(outcome: Outcome) -> tuple[bytes, ...]:
    return tuple(sheet.worksheet for sheet in outcome.sheets)


def _without_text(told: Mapping[str, Any]) -> dict[str, Any]:
    """How a project stands to its kept editions, without the text that is written to their file."""
    return {name: value for name, value in told.items() if name != "kept"}

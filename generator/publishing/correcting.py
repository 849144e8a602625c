"""The page of corrections: the editions that a room keeps come in, the page and its feed are written."""

from __future__ import annotations

from generator.calculation.worksheet.edition_files import flat, read_editions
from generator.calculation.worksheet.editions import PublishedEdition
from generator.publishing.jobs import Outcome
from generator.publishing.keeping import kept_editions
from generator.publishing.opened import OpenRoom
from generator.publishing.page_jobs import CorrectionsJob
from generator.publishing.written import Stopwatch, Written
from generator.rendering import addresses
from generator.rendering.corrections import corrections_feed, render_corrections


def make_corrections(room: OpenRoom, job: CorrectionsJob) -> Outcome:
    """Write what is otherwise since each mark, and what each edition changed as a feed."""
    watch, written = Stopwatch(), Written(job.out)
    with watch.on("pages"):
        editions = {project: _editions(room, job, project) for project in job.projects}
        drafts = {project: PublishedEdition(project, "", "", flat(numbers)) for project, numbers in job.drafts.items()}
        page = render_corrections(editions, job.titles, room.setting, drafts, job.about)
        written.add(addresses.CORRECTIONS, page.encode())
        feed = corrections_feed(editions, job.titles, room.setting)
        if feed is not None:
            written.add(addresses.FEED, feed)
    return Outcome(looks=room.looks, files=written.files, seconds=watch.seconds)


def _editions(room: OpenRoom, job: CorrectionsJob, project: str) -> tuple[PublishedEdition, ...]:
    if project in job.pending:
        return read_editions(job.pending[project], project)
    return kept_editions(room.folder, project)

"""The page of a project: its worksheets and what its leading sheet drew come in, the page is written."""

from __future__ import annotations

import pickle
from typing import Any

from generator.calculation.worked_project import Worksheet
from generator.drawing.picture import Picture
from generator.publishing.jobs import Outcome, OverviewJob
from generator.publishing.keeping import stamp_of
from generator.publishing.opened import OpenRoom, stamped
from generator.publishing.written import Stopwatch, Written
from generator.rendering import addresses
from generator.rendering.gallery import plans_used
from generator.rendering.pages import render_project
from generator.rendering.setting import SheetLink, summarised

ON_CARD = ("project", "title", "kind", "level", "summary", "least_minutes", "most_minutes")


def make_overview(room: OpenRoom, job: OverviewJob) -> Outcome:
    """Write the page of a project, and return what was written with what the home page tells of it."""
    watch, written = Stopwatch(), Written(job.out)
    worksheets: list[Worksheet] = [pickle.loads(packed) for packed in job.worksheets]  # noqa: S301 -- packed by this run
    with watch.on("pages"):
        setting = stamped(room.setting, stamp_of(job.standing))
        page = render_project(worksheets, _surface(job), setting, [SheetLink(**sheet) for sheet in job.sheets])
        written.add(addresses.project_page(job.project), page.encode())
    summary = summarised(worksheets)
    card: dict[str, Any] = {name: getattr(summary, name) for name in ON_CARD}
    return Outcome(
        looks=room.looks,
        files=written.files,
        card={**card, "card": job.pictures.get("card"), "plans": plans_used(worksheets), "standing": job.standing},
        seconds=watch.seconds,
    )


def _surface(job: OverviewJob) -> Picture | None:
    """The picture that the leading sheet has drawn and filed."""
    told = job.pictures.get("surface")
    if told is None:
        return None
    svg = (job.out / told["address"]).read_text(encoding="utf-8")
    words = {name: value for name, value in told.items() if name != "address"}
    return Picture(svg=svg, **words)

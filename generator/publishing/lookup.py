"""Pages to look things up in: cards of projects come in, the turn plans and the reference are written."""

from __future__ import annotations

from generator.drawing.plan_samples import draw_plan_samples
from generator.publishing.jobs import Outcome, ReferenceJob
from generator.publishing.opened import OpenRoom
from generator.publishing.written import Stopwatch, Written
from generator.rendering import addresses
from generator.rendering.gallery import gallery_files, render_gallery
from generator.rendering.reference import render_reference, sourced_cautions
from generator.rendering.setting import PageLink


def make_reference(room: OpenRoom, job: ReferenceJob) -> Outcome:
    """Write the turn plans with their pictures, and the pages of the reference."""
    watch, written = Stopwatch(), Written(job.out)
    with watch.on("pictures"):
        plans = draw_plan_samples(room.style)
    with watch.on("pages"):
        for address, page in _reference(room, glossary=job.glossary).items():
            written.add(address, page.encode())
        written.add(addresses.GALLERY, render_gallery(plans, _used_in(job), room.setting).encode())
        for address, content in gallery_files(plans).items():
            written.add(address, content)
    return Outcome(looks=room.looks, files=written.files, seconds=watch.seconds)


def _reference(room: OpenRoom, *, glossary: bool) -> dict[str, str]:
    editions = [room.shared.room.edition(name) for name in room.setting.editions]
    cautions = sourced_cautions(room.shared.cautions, editions[0])
    return render_reference(editions, cautions, room.setting, glossary=glossary)


def _used_in(job: ReferenceJob) -> dict[str, list[PageLink]]:
    """The projects that use each turn plan."""
    used: dict[str, list[PageLink]] = {}
    for card in job.cards:
        for plan in card["plans"]:
            used.setdefault(plan, []).append(PageLink(card["title"], addresses.project_page(card["project"])))
    return used

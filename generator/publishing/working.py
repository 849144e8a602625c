"""First the numbers: a project's file comes in, its worksheets in every size and edition go out, or all its faults."""

from __future__ import annotations

import pickle
from dataclasses import replace

from generator.calculation.worked_project import Worksheet
from generator.definitions.project import Project, load_project
from generator.errors import Finding
from generator.publishing.checking import worked_sizes
from generator.publishing.content import content_key
from generator.publishing.jobs import Outcome, ProjectJob, Sheet, Stamp
from generator.publishing.keeping import stamp_of, stood
from generator.publishing.opened import OpenRoom
from generator.publishing.written import Stopwatch
from generator.rendering.setting import SizeLink, size_link


def work_project(room: OpenRoom, job: ProjectJob) -> Outcome:
    """Return the worksheets of a project, packed; the findings instead where anything is wrong."""
    watch = Stopwatch()
    with watch.on("numbers"):
        project = load_project(job.path, room.shared.room, room.folder)
        worksheets, findings = _worked(project, room)
    if findings:
        return Outcome(findings=findings)
    # A size's page names the others and leads to them; what they come to is theirs to tell, and changes without it.
    links = tuple(replace(size_link(worksheet), finished="", minutes=0) for worksheet in worksheets)
    packed = pickle.dumps(links)
    with watch.on("numbers"):
        about = [[change.day.isoformat(), change.text.text] for change in project.changes]
        told = {**stood(room.folder, worksheets, job.mark, job.day), "about": about}
    sheets = (
        _packed(worksheet, links, packed, stamp_of(told), leads=not number)
        for number, worksheet in enumerate(worksheets)
    )
    return Outcome(looks=room.looks, sheets=tuple(sheets), card=told, seconds=watch.seconds)


def _worked(project: Project, room: OpenRoom) -> tuple[list[Worksheet], tuple[Finding, ...]]:
    worksheets, faults = [], list[Finding]()
    for worksheet, findings in worked_sizes(project, room.shared, room.folder, room.theme):
        if worksheet is None:
            faults += findings
        else:
            worksheets.append(worksheet)
    return worksheets, tuple(dict.fromkeys(faults))


def _packed(
    worksheet: Worksheet, links: tuple[SizeLink, ...], packed_links: bytes, stamp: Stamp, *, leads: bool
) -> Sheet:
    """Return a worksheet for the way to whoever draws it; the first one leads, for it draws for the whole project."""
    beside = (*(f"{link.label} {link.page}" for link in links), "leads" if leads else "", stamp.mark, stamp.standing)
    said = content_key(worksheet, *beside)
    return Sheet(worksheet.size, worksheet.edition.name, said, leads, pickle.dumps(worksheet), packed_links, stamp)

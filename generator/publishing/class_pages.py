"""Pages of classes: a class file comes in, the page that students may read is written, or the list of classes."""

from __future__ import annotations

from generator.publishing.checking import worked_class
from generator.publishing.jobs import Outcome
from generator.publishing.opened import OpenRoom
from generator.publishing.page_jobs import ClassesJob, ClassJob
from generator.publishing.written import Stopwatch, Written
from generator.rendering import addresses
from generator.rendering.class_pages import ClassLink, render_class, render_classes


def make_class(room: OpenRoom, job: ClassJob) -> Outcome:
    """Write the page of a class, and return what the list of classes tells of it."""
    watch, written = Stopwatch(), Written(job.out)
    with watch.on("numbers"):
        sheet = worked_class(job.name, room.folder, room.shared, room.theme)
    with watch.on("pages"):
        written.add(addresses.class_page(job.name), render_class(sheet, room.setting).encode())
    days = [plan.session.day for plan in sheet.timetable.sessions]
    card = {
        "name": job.name,
        "title": sheet.title,
        "days": days,
        "project": sheet.project,
        "about": sheet.project_title,
    }
    return Outcome(looks=room.looks, files=written.files, card=card, seconds=watch.seconds)


def make_classes(room: OpenRoom, job: ClassesJob) -> Outcome:
    """Write the list of classes, the one that begins first at its top."""
    watch, written = Stopwatch(), Written(job.out)
    with watch.on("pages"):
        links = [
            ClassLink(card["title"], addresses.class_page(card["name"]), card["about"], tuple(card["days"]))
            for card in sorted(job.cards, key=lambda card: (card["days"], card["name"]))
        ]
        written.add(addresses.CLASSES, render_classes(links, room.setting).encode())
    return Outcome(looks=room.looks, files=written.files, seconds=watch.seconds)

"""Pages of classes: a class file comes in, the page that students may read is written, or the list of classes."""

from __future__ import annotations

from generator.calculation.worksheet.class_work import ClassSheet, class_sheet
from generator.definitions.class_plan import load_class
from generator.definitions.faults import meant
from generator.definitions.nodes import Group
from generator.definitions.project import load_project
from generator.definitions.yaml_text import read_yaml, shown_path
from generator.errors import FaultyFileError, Finding, Place
from generator.publishing.jobs import Outcome
from generator.publishing.opened import OpenRoom
from generator.publishing.page_jobs import ClassesJob, ClassJob
from generator.publishing.room_files import class_files, project_files
from generator.publishing.written import Stopwatch, Written
from generator.rendering import addresses
from generator.rendering.class_pages import ClassLink, render_class, render_classes


def make_class(room: OpenRoom, job: ClassJob) -> Outcome:
    """Write the page of a class, and return what the list of classes tells of it."""
    watch, written = Stopwatch(), Written(job.out)
    with watch.on("numbers"):
        sheet = _worked(room, job.name)
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


def _worked(room: OpenRoom, name: str) -> ClassSheet:
    """Return a class worked out.

    Raises
    ------
    FaultyFileError
        With the faults of its file, or of its project.
    """
    path, known = class_files(room.folder)[name], project_files(room.folder)
    wanted = load_class(path, root=room.folder).project
    if wanted not in known:
        shown = shown_path(path, room.folder)
        tree = read_yaml(path, shown, room.folder)
        written = tree.get("project") if isinstance(tree, Group) else None
        told = f"there is no project '{wanted}'{meant(wanted, known)}"
        raise FaultyFileError([Finding("error", told, written.place if written else Place(shown))])
    project = load_project(known[wanted], room.shared.room, room.folder)
    return class_sheet(load_class(path, project, room.folder), project, room.shared)

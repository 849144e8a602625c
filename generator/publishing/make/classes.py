"""Pages of classes: a class file comes in, the page that students may read is written, or the list of classes."""

from __future__ import annotations

from collections.abc import Iterable

from generator.publishing.checking import worked_class
from generator.publishing.room import OpenRoom
from generator.publishing.write import Output
from generator.rendering import addresses
from generator.rendering.cards import ClassCard
from generator.rendering.class_pages import render_class, render_classes


def make_class(room: OpenRoom, output: Output, name: str) -> ClassCard:
    """Write the page of a class, and return what the list of classes tells of it."""
    with output.timed("numbers"):
        sheet = worked_class(name, room.folder, room.shared, room.theme)
    with output.timed("pages"):
        output.add(addresses.class_page(name), render_class(sheet, room.setting).encode())
    days = tuple(plan.session.day for plan in sheet.timetable.sessions)
    return ClassCard(name, sheet.title, sheet.project, sheet.project_title, days)


def make_classes(room: OpenRoom, output: Output, classes: Iterable[ClassCard]) -> None:
    """Write the list of classes, the one that begins first at its top."""
    with output.timed("pages"):
        in_order = sorted(classes, key=lambda card: (card.days, card.name))
        output.add(addresses.CLASSES, render_classes(in_order, room.setting).encode())

"""A class written to disk beside its project, and the class worked out."""

from __future__ import annotations

from pathlib import Path

from rooms_on_disk import CUSHION, project, put, room_shared

from generator.calculation.worksheet.class_work import ClassSheet, class_sheet
from generator.definitions.class_plan import load_class

CLASS = """\
title: Two mornings
project: jetty
edition: inch
paper: A4
note: |
  Doors at nine.
sessions:
  - day: 2031-03-08
    starts: 9:30
    ends: 12:30
    breaks: 15 minutes
  - day: 2031-03-15
    starts: 9:30
    ends: 12:00
places:
  - size: medium
    number: 3
    student: Ines, Ode
  - size: small
    own cloth: yes
"""
PRICES = "prices:\n  face: £12 a yard\n  thread: £2 each\n  square cushion pad: £6.50\n"
# Every step with its own time, so that the timetable can be followed by hand.
TIMED = put(
    CUSHION,
    ("  - use: cut\n", "  - use: cut\n    minutes: 15\n"),
    ("stitch tucks\n    on: front\n", "stitch tucks\n    on: front\n    minutes: 60\n"),
    ("trim\n    on: front\n", "trim\n    on: front\n    minutes: 40\n"),
    ("back\n    on: back\n", "back\n    on: back\n    minutes: 10\n"),
)

# A cushion with a long strip, so that the pieces of a kit are of many shapes.
BANDED = put(
    CUSHION,
    (
        "  back:\n",
        "  band:\n    kind: strip\n    length: 4 * side\n    width: 3 in or 7 cm\n"
        "    edges:\n      all: seam\n  back:\n",
    ),
)


def the_class(folder: Path, text: str = CLASS, of: str = CUSHION, site: str = "") -> ClassSheet:
    room = room_shared(folder, site)
    made = project(folder, of, room)
    path = folder / "site" / "classes" / "mornings.yaml"
    path.parent.mkdir(exist_ok=True)
    path.write_text(text, encoding="utf-8")
    return class_sheet(load_class(path, made, folder), made, room)

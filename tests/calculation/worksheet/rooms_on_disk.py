"""Project files written to disk as a teacher would, and worksheets and messages that come of them."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.pieces.piece import worked_piece
from generator.calculation.worksheet.scope import Scope
from generator.calculation.worksheet.sheet import RoomContext, worked_sheet
from generator.definitions.project import Project
from generator.errors import FaultyFileError
from generator.lengths import read_length
from tests.room import OpenedRoom, opened_room, write_room
from tests.room import put as put

CUSHION = """\
title: Jetty cushion
kind: cushion
summary: |
  A square cushion with an envelope back.
sizes:
  small:
    side: 12 in or 30 cm
  medium:
    label: Sofa
    side: 16 in or 40 cm
measures:
  lap: larger(side / 4, 3 in) or larger(side / 4, 8 cm)
cloths:
  face:
    label: cotton
    width: 44 in or 112 cm
pieces:
  front:
    kind: tucked panel
    finished across: side
    finished along: side
    tucks:
      depth: 3/8 in or 1 cm
      spacing: 1 1/2 in or 4 cm
      margin: 3/4 in to 1 1/2 in or 2 cm to 3 cm
    rows:
      plan: linked cells
      spacing: 3 in or 7.5 cm
      first: 1 in to 3 in or 3 cm to 7 cm
      start: right
    edges:
      all: seam 1/2 in or 1.5 cm
  back:
    kind: envelope back
    finished across: front.across
    finished along: side
    overlap: lap
    hem: 1 in or 2.5 cm
    edges:
      all: seam 1/2 in or 1.5 cm
edges that meet:
  - join: front.all
    to: back.all
supplies:
  - item: Square cushion pad, {{ side }} each way
steps:
  - use: cut
  - use: mark folds, crease, stitch tucks
    on: front
  - use: rule rows, sew rows, trim
    on: front
    session ends: yes
  - use: envelope back
    on: back
  - title: Close the cover
    does: sew front to back, neaten front, turn out front, put the pad in front
    minutes: 20
    text: |
      The backs lie {{ lap }} one over the other.
"""

WRAP = """\
title: Lock-keeper bolster
kind: bolster
summary: |
  A wrap that buttons round a form.
sizes:
  neck:
    form: 5 in or 13 cm
    length: 14 in or 36 cm
measures:
  girth: round up(around(form))
  wrap round: girth + 2 1/2 in or girth + 6.5 cm
cloths:
  face:
    label: cotton
    width: 44 in or 112 cm
pieces:
  wrap:
    kind: tucked panel
    grain: across
    finished across: wrap round
    finished along: length
    tucks:
      depth: 3/8 in or 1 cm
      spacing: 1 1/2 in or 4 cm
      left margin: 2 1/4 in or 6 cm
      right margin: 2 in to 3 in or 5 cm to 8 cm
    rows:
      plan: ripples
      spacing: 3 in or 8 cm
      first: 1 in to 2 in or 2 cm to 6 cm
      start: left
      back and forth: yes
    edges:
      left: caught hem
      right: caught hem
      top: seam
      bottom: seam
closures:
  - kind: buttons
    number: 3
    diameter: 7/8 in or 22 mm
    overlap: 2 in or 5 cm
    on: wrap.left
    onto: wrap.right
    from ends: 2 in or 5 cm
steps:
  - use: cut
"""


# The back's lap makes seven layers in the seam of the cushion; only tests of layers are to hear of them.
SEVEN = "layers:\n  warn over: 7\n  refuse over: 9\n"
AS_USUAL = "layers:\n  warn over: 5\n  refuse over: 9\n"


def room_shared(folder: Path, site: str = "") -> RoomContext:
    """What the projects of a room share; ``site`` is the text of its site.yaml below the room's name."""
    layers = "" if "layers:" in site else SEVEN
    return opened_room(write_room(folder, {"site/site.yaml": f"room:\n  name: Test room\n{site}{layers}"})).shared


def project(folder: Path, text: str, of: RoomContext, name: str = "jetty") -> Project:
    return OpenedRoom(write_room(folder, {f"projects/{name}.yaml": text}), of).project(name)


def sheet(folder: Path, text: str, size: str, edition: str = "inch", site: str = "", **sewn: str) -> Worksheet:
    """The worksheet of a project text; ``sewn`` are measures of the panel 'front' as sewn, in the edition's unit."""
    of = room_shared(folder, site)
    unit = of.room.edition(edition).unit
    measured = {f"front.{side}": read_length(length, unit) for side, length in sewn.items()}
    return worked_sheet(project(folder, text, of), size, of.room.edition(edition), of, measured)


def scope_of(folder: Path, text: str, size: str = "medium", edition: str = "inch") -> Scope:
    """What the names of a project text mean in one size and edition."""
    of = room_shared(folder)
    return Scope(project(folder, text, of), size, of.room.edition(edition), of.room, worked_piece)


def faults(folder: Path, text: str, size: str, edition: str = "inch") -> list[str]:
    """Every error of a project text in one size, as it is printed."""
    with pytest.raises(FaultyFileError) as refused:
        sheet(folder, text, size, edition)
    return [str(finding) for finding in refused.value.findings if finding.level == "error"]


def warnings(found: Worksheet) -> list[str]:
    """Every warning of a worksheet, as it is printed."""
    return [str(finding) for finding in found.findings if finding.level == "warning"]


def inches(text: str) -> list[Fraction]:
    return [read_length(part, "in") for part in text.split(",")]

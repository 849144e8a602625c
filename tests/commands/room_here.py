"""A small room on disk, for the command line to be run in."""

from __future__ import annotations

from pathlib import Path

from tests.room import write_room

CUSHION = """\
title: Slip cushion
kind: cushion
summary: |
  A square cushion with an envelope back.
sizes:
  small:
    side: 12 in or 30 cm
  medium:
    side: 16 in or 40 cm
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
    edges:
      all: seam 1/2 in or 1.5 cm
  back:
    kind: envelope back
    finished across: front.across
    finished along: side
    overlap: 4 in or 10 cm
    hem: 1 in or 2.5 cm
    edges:
      all: seam 1/2 in or 1.5 cm
steps:
  - use: as usual
edges that meet:
  - join: front.all
    to: back.all
supplies:
  - item: Cushion pad
"""


# The back's lap makes seven layers in the seam of the cushion; that is not what tests of the command line are about.
SITE = "room:\n  name: Test room\nlayers:\n  warn over: 7\n  refuse over: 9\n"


def room(folder: Path, **projects: str) -> Path:
    """A room with these projects; a name's underscores stand for hyphens."""
    files = {f"projects/{name.replace('_', '-')}.yaml": text for name, text in projects.items()}
    return write_room(folder, {"site/site.yaml": SITE, **files})

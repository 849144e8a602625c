"""A project of shapes: a round top, a mirrored yoke, and a pocket that is round below, for tests of paper patterns."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from generator.calculation.worked_project import Worksheet
from tests.room import opened_room, write_room

PROJECT = """\
title: Shapes
kind: other
summary: |
  Shapes.
sizes:
  small:
    wide: 14 in or 35 cm
cloths:
  face:
    label: cotton
    width: 44 in or 112 cm
pieces:
  top:
    kind: rectangle
    outline: circle
    finished across: wide
  yoke:
    kind: rectangle
    grain: across
    outline:
      mirror: yes
      start: 0, 4 in or 0, 10 cm
      edges:
        - neck: quarter oval across to 5 in, 0 or 12.5 cm, 0
        - shoulder: line to 7 1/2 in, 1 in or 19 cm, 2.5 cm
        - armhole: curve arriving across through 7 1/4 in, 6 in then 11 in, 10 in or 18.4 cm, 15 cm then 28 cm, 25 cm
        - side: line to 11 in, 20 in or 28 cm, 50 cm
        - bottom: line to 0, 20 in or 0, 50 cm
    edges:
      neck: bound 1/4 in or 6 mm
      armhole: bound 1/4 in or 6 mm
      shoulder: seam 5/8 in or 1.5 cm
      side: seam 5/8 in or 1.5 cm
      bottom: hem 1/4 in then 1 in or 6 mm then 2.5 cm
  pocket:
    kind: rectangle
    grain: bias
    outline: rounded bottom 2 in or 5 cm
    finished across: 5 in or 12.5 cm
    finished along: 6 in or 15 cm
steps:
  - use: cut
  - title: Baste them
    does: baste top on yoke, baste pocket on yoke
    on: yoke
    minutes: 2
    text: Baste.
  - use: hem
    on: yoke
"""


@cache
def shapes(edition: str) -> Worksheet:
    with TemporaryDirectory() as folder:
        room = write_room(
            Path(folder), {"site/site.yaml": "room:\n  name: Net loft\n", "projects/shapes.yaml": PROJECT}
        )
        return opened_room(room).worksheet("shapes", "small", edition)

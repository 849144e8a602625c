"""Every measure that the language offers of a piece has a value."""

from __future__ import annotations

import pytest

from generator.calculation.worked_project import Worksheet
from generator.definitions.pieces.kinds import PIECES
from tests.room import opened_room, write_room

PROJECT = """
title: One of each
kind: other
summary: One piece of every kind.
editions: inch
sizes:
  only:
    side: 12 in
cloths:
  face:
    label: cotton
    width: 60 in
pieces:
  crossed:
    kind: tucked panel
    finished across: side
    finished along: side
    tucks:
      depth: 1/4 in
      spacing: 1 1/2 in
      margin: 1/2 in to 2 in
      rod: 1/16 in
    cross tucks:
      depth: 1/4 in
      spacing: 1 1/2 in
      margin: 1/2 in to 2 in
  turned:
    kind: tucked panel
    finished across: side
    finished along: side
    tucks:
      depth: 1/4 in
      spacing: 1 in
    rows:
      plan: ripples
      spacing: 2 1/2 in
  rectangle:
    kind: rectangle
    finished across: side
    finished along: side
  facing:
    kind: facing
    finished across: side
    finished along: side
  shaped facing:
    kind: shaped facing
    along: rectangle.top
    width: 2 in
  envelope back:
    kind: envelope back
    finished across: side
    finished along: side
    overlap: 4 in
    hem: 1 in
  circle:
    kind: circle
    diameter: 9 in
  copy:
    kind: copy
    of: rectangle
  grid:
    kind: grid
    of: rectangle
    blocks across: 2
    blocks down: 1
    seam: 1/2 in
  strip:
    kind: strip
    length: 2 * side
    width: 2 in
  bias strip:
    kind: bias strip
    length: 2 * side
    width: 2 in
  gathered strip:
    kind: gathered strip
    edge: side
    fullness: 2
    drop: 3 in
  pleated strip:
    kind: pleated strip
    edge: side
    pleats: 4
    pleat depth: 1 in
    drop: 3 in
  gathered end:
    kind: gathered end
    edge: side
    radius: 2 in
  binding:
    kind: binding
    length: 2 * side
    width: 3/8 in
  tie:
    kind: tie
    length: side
    width: 1 in
  piping:
    kind: piping
    length: 2 * side
    cord: 1/4 in
  boxing:
    kind: boxing
    edge: 4 * side
    depth: 3 in
  zip tab:
    kind: zip tab
    edge: side
    zip: side - 2 in
steps:
  - use: cut
"""


@pytest.fixture(scope="module")
def one_of_each(tmp_path_factory: pytest.TempPathFactory) -> Worksheet:
    folder = tmp_path_factory.mktemp("one of each")
    room = opened_room(write_room(folder, {"projects/one-of-each.yaml": PROJECT}))
    return room.worksheets("one-of-each")[0]


@pytest.mark.parametrize("kind", [kind for kind, model in PIECES.items() if model.of_kind.of_cloth])
def test_every_measure_of_a_kind_of_piece_has_a_value(kind: str, one_of_each: Worksheet) -> None:
    worked = {name for piece in one_of_each.pieces.values() if piece.kind == kind for name in piece.measures}
    assert set(PIECES[kind].of_kind.dimensions) - worked == set()

"""Every measure that the language offers of a piece has a value."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.calculation.worksheet.sheet import load_room_context, worked_sheet
from generator.definitions.pieces.kinds import PIECES
from generator.definitions.project import load_project
from generator.definitions.room import Room

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
  envelope back:
    kind: envelope back
    finished across: side
    finished along: side
    overlap: 4 in
    hem: 1 in
  circle:
    kind: circle
    diameter: 9 in
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
steps:
  - use: cut
"""


@pytest.mark.parametrize("kind", [kind for kind, model in PIECES.items() if model.of_kind.of_cloth])
def test_every_measure_of_a_kind_of_piece_has_a_value(kind: str, tmp_path: Path) -> None:
    path = tmp_path / "projects" / "one-of-each.yaml"
    path.parent.mkdir()
    path.write_text(PROJECT, encoding="utf-8")
    room = Room()
    worksheet = worked_sheet(load_project(path, room), "only", room.edition("inch"), load_room_context(room, tmp_path))
    worked = {name for piece in worksheet.pieces.values() if piece.kind == kind for name in piece.measures}
    assert set(PIECES[kind].of_kind.dimensions) - worked == set()

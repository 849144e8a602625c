"""Projects that strangers write in a few lines, made as usual: their steps, read one after the other, can be done."""

from __future__ import annotations

from pathlib import Path

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import worked_sheet
from generator.definitions.project import load_project
from tests.making_up.demo_recipes import room

HEAD = """
title: A thing
kind: {kind}
summary: A thing for the harbour.
sizes:
  one:
    wide: 14 in or 36 cm
    high: 15 in or 38 cm
cloths:
  face: 54 in or 140 cm
  other: 90 in or 228 cm
pieces:
  front:
    kind: tucked panel
    finished across: wide
    finished along: high
    tucks:
      depth: 1/4 in or 5 mm
      spacing: 1 1/2 in or 3.5 cm
      margin: 1 in to 3 in or 2.5 cm to 8 cm
      pressed: right
"""
QUILT = """
    edges: seam 1/4 in or 6 mm
  quilt:
    kind: grid
    of: front
    blocks across: 1
    blocks down: 3
    seam: 1/4 in or 6 mm
    edges: bound 1/4 in or 6 mm
  padding:
    kind: copy
    of: quilt
    cloth: other
    fixed: quilted
  backing:
    kind: copy
    of: quilt
    cloth: other
    fixed: quilted
  binding:
    kind: binding
    length: quilt.edge
    width: 1/4 in or 6 mm
edges that meet:
  - join: quilt.all
    to: binding.edge
"""
BOUND = """
    edges: bound 1/4 in or 6 mm
  binding:
    kind: binding
    length: front.edge
    width: 1/4 in or 6 mm
edges that meet:
  - join: front.all
    to: binding.edge
"""


def sheet(folder: Path, text: str, kind: str = "other") -> Worksheet:
    path = folder / "thing.yaml"
    path.write_text(HEAD.format(kind=kind).lstrip() + text.lstrip("\n"), encoding="utf-8")
    return worked_sheet(load_project(path, room().room, folder), "one", room().room.edition("inch"), room())


def standard(told: Worksheet) -> list[str]:
    return [step.standard for step in told.steps]


def text_of(told: Worksheet, name: str) -> str:
    return next(step.text for step in told.steps if step.standard == name)


def test_all_that_lies_under_a_quilt_is_quilted_at_once(tmp_path: Path) -> None:
    told = sheet(tmp_path, QUILT)
    assert standard(told).count("quilt") == 1
    assert text_of(told, "quilt").index("- padding, on the quilt") < text_of(told, "quilt").index("- backing, on the")


def test_wadding_and_backing_count_as_layers_at_a_bound_edge(tmp_path: Path) -> None:
    # A pressed tuck lies threefold, with wadding and backing under it 5; the binding brings 4.
    assert "up to 9 layers" in text_of(sheet(tmp_path, QUILT), "bind")


def test_a_sample_that_is_only_bound_is_not_filled(tmp_path: Path) -> None:
    assert "fill" not in standard(sheet(tmp_path, BOUND, "sample"))

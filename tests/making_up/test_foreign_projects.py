"""Projects that strangers write in a few lines, made as usual: their steps, read one after the other, can be done."""

from __future__ import annotations

from pathlib import Path

import pytest

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


CASE = """
    edges:
      top: hem 1/2 in or 1 cm
      all: {finish}
  back:
    kind: rectangle
    finished across: wide
    finished along: high
    edges:
      top: hem 1/2 in or 1 cm
      all: {finish}
edges that meet:
"""
ONCE = "  - join: front.left and front.bottom and front.right\n    to: back.left and back.bottom and back.right\n"
IN_TURN = "".join(f"  - join: front.{side}\n    to: back.{side}\n" for side in ("left", "bottom", "right"))
FRENCH, PLAIN = "french seam 5/8 in or 1.5 cm", "seam 5/8 in or 1.5 cm"


@pytest.mark.parametrize(("finish", "meetings"), [(FRENCH, ONCE), (FRENCH, IN_TURN), (PLAIN, IN_TURN)])
def test_a_bag_that_is_sewn_from_inside_is_turned_out_at_last(tmp_path: Path, finish: str, meetings: str) -> None:
    names = standard(sheet(tmp_path, CASE.format(finish=finish) + meetings, "bag"))
    sewn = next(place for place, name in enumerate(names) if name in ("french seam", "join pieces"))
    assert names.count("turn out") == 1
    assert names.index("turn out") > sewn
    if finish == PLAIN:
        assert sewn < names.index("neaten") < names.index("turn out")


def test_a_bag_that_no_step_turns_out_is_told(tmp_path: Path) -> None:
    steps = "steps:\n  - use: cut\n  - use: mark folds, crease, stitch tucks, press tucks\n    on: front\n"
    steps += "  - use: french seam\n    on: front, back\n  - use: hem\n    on: front\n  - use: hem\n    on: back\n"
    told = [one.text for one in sheet(tmp_path, CASE.format(finish=FRENCH) + ONCE + steps).findings]
    assert any("turn out" in one for one in told), told


def test_two_side_seams_leave_nothing_to_turn(tmp_path: Path) -> None:
    sides = IN_TURN.replace("  - join: front.bottom\n    to: back.bottom\n", "")
    text = CASE.format(finish=PLAIN) + sides
    assert "turn out" not in standard(sheet(tmp_path, text, "garment"))


def test_a_french_seam_round_corners_tells_how_they_are_turned(tmp_path: Path) -> None:
    text = text_of(sheet(tmp_path, CASE.format(finish=FRENCH) + ONCE), "french seam")
    assert text.index("Sew the first line") < text.index("At each corner") < text.index("Trim the corners")
    assert text.index("Trim the corners") < text.index("push the corners out") < text.index("Sew the second line")
    one = IN_TURN[: IN_TURN.index("  - join: front.bottom")]
    plain = CASE.format(finish=FRENCH).replace("all: french", "left: french")
    assert "corner" not in text_of(sheet(tmp_path, plain + one), "french seam")

"""Projects that strangers write in a few lines, made as usual: their steps, read one after the other, can be done."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import worked_sheet
from generator.definitions.project import load_project
from generator.errors import FaultyFileError
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


ENVELOPE = """
    edges: seam 1/2 in or 1.5 cm
  back:
    kind: envelope back
    finished across: wide
    finished along: high
    overlap: 4 in or 10 cm
    hem: 1 in or 2.5 cm
  patch:
    kind: rectangle
    finished across: 3 in or 8 cm
    finished along: 3 in or 8 cm
    sewn on: back
edges that meet:
  - join: front.all
    to: back.all
"""


def test_a_patch_that_would_shut_the_lap_of_a_back_is_refused(tmp_path: Path) -> None:
    # 14 in with a lap of 4 in: both halves lie over each other from 5 to 9 in.
    with pytest.raises(FaultyFileError, match="'patch' lies over the lap of 'back', 5 in to 9 in from its left, and"):
        sheet(tmp_path, ENVELOPE, "cushion")
    beside = ENVELOPE.replace("sewn on: back", "sewn on: back, 2 in or 4 cm from the left")
    assert "sew on" in standard(sheet(tmp_path, beside, "cushion"))
    over = ENVELOPE.replace("sewn on: back", "sewn on: back, 3 in or 4 cm from the right")
    with pytest.raises(FaultyFileError, match="lies over the lap"):
        sheet(tmp_path, over, "cushion")


LINED = """
    edges: seam 5/8 in or 1.5 cm
  back:
    kind: rectangle
    finished across: wide
    finished along: high
    edges: seam 5/8 in or 1.5 cm
  front lining:
    kind: copy
    of: back
    cloth: other
  back lining:
    kind: copy
    of: back
    cloth: other
edges that meet:
  - join: front.left
    to: front lining.left
  - join: back.left
    to: back lining.left
  - join: front.right and front.top and front.bottom
    to: back.right and back.top and back.bottom
  - join: front lining.right and front lining.top and front lining.bottom
    to: back lining.right and back lining.top and back lining.bottom
closures:
  - kind: zip
    on: front.left
    onto: back.left
"""


def test_a_zip_lined_on_one_side_needs_a_step_that_catches_both(tmp_path: Path) -> None:
    one = LINED.replace("  - join: back.left\n    to: back lining.left\n", "")
    told = [one.text for one in sheet(tmp_path, one, "bag").findings if one.level == "warning"]
    said = "'set zip' folds 'front.left' beside the zip, and it is sewn to 'front lining.left' as well"
    assert [said in one for one in told].count(True) == 1
    assert any("  - set zip on front\n  - sew front to front lining" in one for one in told)
    plain = one.replace("  - join: front.left\n    to: front lining.left\n", "")
    assert not any("beside the zip, and it" in one.text for one in sheet(tmp_path, plain, "bag").findings)


def test_a_zip_lined_on_both_sides_is_set_with_its_linings_in_one_step(tmp_path: Path) -> None:
    """The allowance is 5/8 in and the seam lies 3/8 in from the edge of the tape: that lies 1/4 in inside the edge."""
    found = sheet(tmp_path, LINED, "bag")
    assert not any("beside the zip, and it" in one.text for one in found.findings)
    names = standard(found)
    assert "set zip" not in names
    assert names.index("set lined zip") < min(names.index(one) for one in names if one in ("bag", "line and turn"))
    (zip_step,) = (one for one in found.steps if one.standard == "set lined zip")
    said = (
        "the left edge of the front, the zip, the front lining: edge of the zip 1/4 in inside the raw edge, seam **5/8"
    )
    assert said in zip_step.text
    assert "the left edge of the back, the zip, the back lining" in zip_step.text
    assert zip_step.figures == ("assembly lined zip front",)
    # Its own picture shows the layers, so no picture of a seam stands beside it.
    assert zip_step.joined == ()
    sewn = [one.layers for step in found.steps for one in step.joined]
    assert not any({layer.pieces[0] for layer in layers} == {"front", "front lining"} for layers in sewn)


PIPED = """
    edges: seam 5/8 in or 1.5 cm
  back:
    kind: rectangle
    finished across: wide
    finished along: high
    edges: seam 5/8 in or 1.5 cm
  piping:
    kind: piping
    length: front.edge
    cord: 1/4 in or 6 mm
edges that meet:
  - join: front.all
    to: piping.edge
  - join: front.all
    to: back.all
closures:
  - kind: zip
    on: front.bottom
    onto: back.bottom
"""


def test_piping_is_sewn_on_before_the_zip_in_its_edge(tmp_path: Path) -> None:
    found = sheet(tmp_path, PIPED, "cushion")
    names = standard(found)
    assert names.index("sew on piping") < names.index("set zip") < names.index("line and turn")
    words = text_of(found, "set zip")
    assert "The bottom edge of the front has the piping on it already." in words
    assert "along the stitching of the piping, close to the cord" in words
    assert "Press the allowance of both edges" not in words
    plain = PIPED.replace("  - join: front.all\n    to: piping.edge\n", "")
    assert "Press the allowance of both edges" in text_of(sheet(tmp_path, plain, "cushion"), "set zip")


def test_a_zip_that_is_set_before_its_piping_is_told(tmp_path: Path) -> None:
    steps = "steps:\n  - use: cut\n  - use: mark folds, crease, stitch tucks\n    on: front\n"
    steps += "  - use: set zip\n    on: front\n  - use: as usual\n"
    told = [one.text for one in sheet(tmp_path, PIPED + steps, "cushion").findings if one.level == "error"]
    assert "'set zip' needs 'sew on piping' before it: sews 'front' to 'piping'. Move line 46 up here" in told

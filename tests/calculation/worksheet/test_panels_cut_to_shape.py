"""Panels that are tucked first and cut to their outline after, worked by hand in both editions."""

from __future__ import annotations

from pathlib import Path

import pytest
from rooms_on_disk import faults, inches, put, sheet

from generator.calculation.worked_project import Worksheet
from generator.lengths import CENTIMETRE

STOOL = """\
title: Capstan stool top
kind: cushion
summary: |
  A round cover.
sizes:
  stool:
    diameter: 14 in or 35 cm
cloths:
  face:
    label: cotton
    width: 54 in or 137 cm
pieces:
  top:
    kind: tucked panel
    outline: circle
    finished across: diameter
    room around: 1 in or 2.5 cm
    tucks:
      depth: 3/8 in or 1 cm
      spacing: 1 3/4 in or 4.5 cm
      number: odd
      margin: 3/4 in to 1 1/4 in or 2 cm to 3 cm
    rows:
      plan: ripples
      spacing: 3 in or 7.5 cm
      first: 1 in to 2 1/2 in or 2.5 cm to 6.5 cm
      start: right
    edges: seam 1/2 in or 1.5 cm
  skirt:
    kind: boxing
    edge: top.rim
    depth: 3 in or 8 cm
    edges:
      left: seam 1/2 in or 1.5 cm
      right: seam 1/2 in or 1.5 cm
      top: seam 1/2 in or 1.5 cm
      bottom: hem 1/4 in then 1/2 in or 6 mm then 12 mm
edges that meet:
  - join: top.rim
    to: skirt.edge
steps:
  - use: cut
  - use: mark folds, crease, stitch tucks
    on: top
  - use: rule rows, sew rows
    on: top
  - use: cut to shape
    on: top
  - use: make boxing
    on: skirt, top
  - use: hem
    on: skirt
  - use: fill
    on: top
"""


def stool(folder: Path, edition: str = "inch", *changes: tuple[str, str]) -> Worksheet:
    return sheet(folder, put(STOOL, *changes), "stool", edition)


def test_a_round_top_of_14_is_cut_26_3_4_by_18(tmp_path: Path) -> None:
    # Pitch 1 3/4 - 3/4 = 1; 14 = 1 + 12 x 1 + 1: 13 tucks. Around it 1/2 + 1 = 1 1/2.
    # Across 14 + 13 x 3/4 + 3 = 26 3/4.
    # First mark 1 1/2 + 1 + 3/8. Along 14 + 3 and 4 spaces that draw in 0.241: 17.964, so 18. Rim pi x 14 = 43.98: 44.
    worked = stool(tmp_path)
    top = worked.pieces["top"]
    assert top.panel is not None
    assert [top.cut_across, top.cut_along, top.finished_across, top.finished_along] == inches("26 3/4, 18, 14, 14")
    assert [top.panel.across.marks[0], top.panel.across.marks[-1]] == inches("2 7/8, 23 7/8")
    assert [row.ruled for row in top.panel.rows.rows] == inches("3, 6, 9, 12, 15")  # type: ignore[union-attr]
    assert {name: edge.finished for name, edge in top.edges.items()} == {"rim": 44}
    assert [top.edges["rim"].allowance, worked.pieces["skirt"].cut_across] == inches("1/2, 45")
    assert (top.shaped, len(top.panel.shaped_ends)) == (True, 13)
    assert [worked.laid_out.across, worked.laid_out.along, worked.laid_out.depth] == inches("14, 14, 3")


def test_the_metric_top_is_worked_anew(tmp_path: Path) -> None:
    # Pitch 2.5; 35 = 2.5 + 12 x 2.5 + 2.5. Around it 1.5 + 2.5 = 4. Across 35 + 13 x 2 + 8 = 69. Along 35 + 8 and
    # 4 x 0.690: 45.758, so 46. Rim pi x 35 = 109.96, to 3 mm: 110.1.
    top = stool(tmp_path, "metric").pieces["top"]
    assert [top.cut_across, top.cut_along] == [69 * CENTIMETRE, 46 * CENTIMETRE]
    assert top.edges["rim"].finished * 10 == 1101 * CENTIMETRE


def test_the_paper_of_a_panel_is_its_shape(tmp_path: Path) -> None:
    top = stool(tmp_path).pieces["top"]
    assert top.trimmed_to is not None
    assert [top.trimmed_to.cut_across, top.trimmed_to.cut_along] == inches("15, 15")


def test_the_steps_say_how_it_is_held_and_cut(tmp_path: Path) -> None:
    text = next(step.text for step in stool(tmp_path).steps if step.title.startswith("Cut to shape"))
    assert "its middle line on the stitching of tuck 7, and as much cloth above it as below" in text
    assert "Baste on the seam line, all round" in text
    assert text.index("Baste on the seam line") < text.index("Only then cut, along the outer line")
    assert "Catch it by hand" not in text


NARROW = (
    ("number: odd", "number: even"),
    ("margin: 3/4 in to 1 1/4 in or 2 cm to 3 cm", "margin: 1/8 in to 1/2 in or 2 cm to 3 cm"),
)


def test_tucks_near_the_edge_are_caught_by_hand(tmp_path: Path) -> None:
    # 14 tucks with margins of 1/2: tuck 1 lies 6 1/2 from the middle, 2 x root of (49 - 42.25) = 5.196 long. Its fold
    # at 6 7/8 ends root of (49 - 47.27) = 1.317 from the middle and not 2.598: 1.281 lower, more than 3/4.
    narrow = stool(tmp_path, "inch", *NARROW)
    panel = narrow.pieces["top"].panel
    assert panel is not None
    caught = [one.tuck for one in panel.shaped_ends if one.catch_top and one.catch_bottom]
    assert (len(panel.shaped_ends), caught) == (14, [1, 14])
    text = next(step.text for step in narrow.steps if step.title.startswith("Cut to shape"))
    assert "- Tuck 1, 5 3/16 in long: both ends." in text
    assert "in the middle between tucks 7 and 8" in text


def test_tucks_cut_too_short_to_hold_are_refused(tmp_path: Path) -> None:
    # The same with tucks 1 1/2 deep: 5.196 is less than 4 x 1 1/2.
    deep = (("depth: 3/8 in", "depth: 1 1/2 in"), ("spacing: 1 3/4 in", "spacing: 4 in"))
    plain = put(STOOL, *NARROW, *deep, ("rule rows, sew rows", "measure sample"))
    i, j = plain.index("    rows:"), plain.index("    edges: seam 1/2")
    plain = put(plain[:i] + plain[j:], ("  - use: measure sample\n    on: top\n", ""))
    told = [one.split(": ", 1)[1].split(" when")[0] for one in faults(tmp_path, plain, "stool")]
    assert told == ["tuck 1 is stitched over only 5 3/16 in", "tuck 14 is stitched over only 5 3/16 in"]


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ([("room around: 1 in or 2.5 cm", "room around: 0 - 1 in or 0 - 2 cm")], "'room around' comes to -1 in"),
        ([("outline: circle", "outline: oval")], "'finished along' is missing here"),
        (
            [("edges: seam 1/2 in or 1.5 cm\n  skirt", "edges:\n      left: seam\n  skirt")],
            "a tucked panel has no edge 'left'",
        ),
    ],
)
def test_what_a_panel_with_an_outline_refuses(tmp_path: Path, changes: list[tuple[str, str]], says: str) -> None:
    assert says in "".join(faults(tmp_path, put(STOOL, *changes), "stool"))

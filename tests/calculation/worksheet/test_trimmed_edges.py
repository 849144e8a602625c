"""Edges that are faced, or finished and trimmed at their finished line: cut, step and thread; what is refused."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from rooms_on_disk import faults, inches, put, sheet, warnings

MAT = """\
title: Mooring mat
kind: mats
summary: |
  A mat with its edges trimmed.
sizes:
  medium:
    wide: 12 in or 30 cm
cloths:
  face:
    label: cotton
    width: 44 in or 112 cm
pieces:
  mat:
    kind: tucked panel
    finished across: wide
    finished along: 8 in or 20 cm
    tucks:
      depth: 1/4 in or 6 mm
      spacing: 1 1/2 in or 4 cm
      margin: 3/4 in to 1 1/2 in or 2 cm to 4 cm
      pressed: outward
    edges: WAY 1/2 in or 1.2 cm
"""
STITCHED, SEALED = (MAT.replace("WAY", way) for way in ("stitched and trimmed", "sealed and trimmed"))


@pytest.mark.parametrize(
    ("text", "tools", "words"),
    [
        (STITCHED, {"machine", "starch"}, "once more over them with a narrow zigzag"),
        (SEALED, {"hot knife"}, "only cloth of man-made fibre melts"),
    ],
)
def test_what_is_trimmed_away_is_cut_and_the_step_finishes_it_last(
    tmp_path: Path, text: str, tools: set[str], words: str
) -> None:
    found = sheet(tmp_path, text, "medium")
    mat = found.pieces["mat"]
    # 12 and 11 tucks of 1/2 in at a pitch of 1 in; 1/2 in is cut away at every edge: 12 + 5 1/2 + 1 by 8 + 1.
    assert [mat.cut_across, mat.cut_along] == inches("18 1/2, 9")
    step = found.steps[-1]
    assert step.title == "Finish and trim the edges: mat"
    assert words in step.text
    assert "- mat, top: " in step.text
    assert "1/2 in cut away" in step.text
    assert tools <= set(step.tools)
    assert not [one for one in warnings(found) if "raw" in one or "never sewn" in one]


def test_a_hot_knife_brings_its_warning(tmp_path: Path) -> None:
    told = sheet(tmp_path, SEALED, "medium").cautions
    assert "hot knife" in str(told["hot knife"])
    assert "hot knife" not in sheet(tmp_path / "sewn", STITCHED, "medium").cautions


def test_stitching_takes_eight_times_its_edge_in_thread(tmp_path: Path) -> None:
    # A straight line of 2 1/2 times and a zigzag of 5 1/2 over it, along 2 x (12 + 8) = 40 in; a fifth for waste.
    lengths = [
        sheet(tmp_path / str(place), text, "medium").thread.length for place, text in enumerate((STITCHED, SEALED))
    ]
    assert lengths[0] - lengths[1] == 40 * 8 * Fraction(6, 5)


def test_a_trimmed_edge_that_is_sewn_to_something_is_refused(tmp_path: Path) -> None:
    back = (
        "  back:\n    kind: rectangle\n    finished across: wide\n    finished along: 8 in or 20 cm\nedges that meet:\n"
    )
    text = f"{STITCHED}{back}  - join: mat.top\n    to: back.top\n"
    told = "'mat.top' is stitched and trimmed and is sewn to something as well; write a seam there"
    assert any(told in one for one in faults(tmp_path, text, "medium"))


FACED = put(
    MAT.replace("    edges: WAY 1/2 in or 1.2 cm\n", "    edges:\n      top: faced 3/8 in or 1 cm\n"),
    ("pieces:\n", "pieces:\n  strip:\n    kind: facing\n    finished across: wide\n    finished along: 2 in or 5 cm\n"),
)


def test_a_faced_edge_has_its_allowance_and_meets_a_facing(tmp_path: Path) -> None:
    text = f"{FACED}edges that meet:\n  - join: mat.top\n    to: strip.top\n"
    text = text.replace(
        "    finished along: 2 in or 5 cm\n",
        "    finished along: 2 in or 5 cm\n    edges:\n      top: seam 3/8 in or 1 cm\n",
    )
    found = sheet(tmp_path, text, "medium")
    assert found.pieces["mat"].edges["top"].allowance == inches("3/8")[0]
    assert any(step.title.startswith("Face the edge") for step in found.steps)
    told = "'mat.top' is faced and meets no facing; write under 'edges that meet' the facing that is sewn to it"
    assert any(told in one for one in faults(tmp_path / "alone", FACED, "medium"))


def test_the_same_edge_of_two_copies_is_told_as_that_of_one_and_of_the_other(tmp_path: Path) -> None:
    text = put(
        MAT.replace("WAY", "seam"),
        ("    kind: tucked panel\n", "    kind: tucked panel\n    quantity: 2\n"),
    )
    found = sheet(tmp_path, f"{text}edges that meet:\n  - join: mat.top\n    to: mat.top\n", "medium")
    assert any("the top edge of one mat, to that of the other: 12 in" in step.text for step in found.steps)

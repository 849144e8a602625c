"""What hangs by another edge than its top: which edge becomes which, and how lists and the finished thing tell it."""

from __future__ import annotations

from pathlib import Path

import pytest
from rooms_on_disk import put, sheet

from generator.calculation.worksheet import lists
from generator.calculation.worksheet.casings import casing_words
from generator.calculation.worksheet.figures import figures

CURTAIN = """\
title: Lookout curtain
kind: curtain
summary: |
  A curtain with tucks across.
sizes:
  small:
    drop: 18 in or 45 cm
cloths:
  face:
    label: cotton
    width: 44 in or 112 cm
pieces:
  curtain:
    kind: tucked panel
    hangs by: left
    finished across: drop
    finished along: 30 in or 75 cm
    tucks:
      depth: 1/2 in or 1.2 cm
      spacing: 2 in or 5 cm
      number: 3
      left margin: 4 in to 15 in or 10 cm to 40 cm
      right margin: 4 in or 10 cm
      pressed: down
    edges:
      left: casing 1/2 in then 1 1/2 in or 1 cm then 4 cm
      right: hem 1/2 in then 2 in or 1 cm then 5 cm
      top: hem 1/2 in or 1 cm
      bottom: hem 1/2 in or 1 cm
"""


def turned_round(side: str, quarters: int) -> tuple[int, int]:
    """The second route: the middle of a side of a square about (0, 0), y down, turned clockwise by quarter turns."""
    x, y = {"top": (0, -1), "right": (1, 0), "bottom": (0, 1), "left": (-1, 0)}[side]
    for _ in range(quarters):
        x, y = -y, x
    return x, y


@pytest.mark.parametrize("hangs_by", ["top", "left", "right", "bottom"])
def test_each_edge_has_the_name_of_where_a_turn_of_the_table_brings_it(tmp_path: Path, hangs_by: str) -> None:
    text = put(CURTAIN, ("hangs by: left", f"hangs by: {hangs_by}"), ("pressed: down", "pressed: left"))
    piece = sheet(tmp_path, text, "small").pieces["curtain"]
    assert turned_round(hangs_by, piece.quarters) == turned_round("top", 0)
    for side in ("left", "right", "top", "bottom"):
        name = piece.said(side).partition(" (")[0]
        assert turned_round(side, piece.quarters) == turned_round(name, 0)
        assert ("on the table" in piece.said(side)) == (hangs_by != "top")
    assert (piece.said("rim"), piece.said("all")) == ("rim", "all")


def test_the_finished_thing_is_as_wide_and_long_as_it_hangs(tmp_path: Path) -> None:
    laid = sheet(tmp_path, CURTAIN, "small").laid_out
    assert (laid.across, laid.along) == (30, 18)
    assert laid.pieces[0].turned == 1
    other = put(CURTAIN, ("kind: curtain\nsummary", "kind: other\nsummary"), ("hangs by: left", "hangs by: right"))
    assert sheet(tmp_path, other, "small").laid_out.pieces[0].turned == 3


def test_hems_and_casing_are_told_as_it_hangs_with_the_table_behind(tmp_path: Path) -> None:
    found = sheet(tmp_path, CURTAIN, "small")
    piece = found.pieces["curtain"]
    assert casing_words(piece, "left") == "at the top edge (left on the table)"
    assert (
        lists.edge_words("curtain.bottom", {"curtain": piece}) == "the left edge of the curtain (bottom on the table)"
    )
    hems = {step.title: step.printed for step in found.steps if step.standard == "hem"}
    assert any("right (top on the table) and left (bottom on the table): turn 1/2 in" in text for text in hems.values())
    assert any("bottom (right on the table): turn 1/2 in, then 2 in" in text for text in hems.values())


def test_the_first_step_gives_both_names_of_every_edge_and_marking_those_of_the_table(tmp_path: Path) -> None:
    found = sheet(tmp_path, CURTAIN, "small")
    first, marking = (next(step for step in found.steps if step.standard == name) for name in ("cut", "mark folds"))
    assert first.number == 1
    told = "the left edge becomes the top, the right edge the lower edge, the top edge the right side, the bottom edge"
    assert f"The curtain, on the table: {told} the left side." in first.printed
    assert "the bright thread, at what becomes the top, is at the left" in marking.printed
    upright = put(CURTAIN, ("    hangs by: left\n", ""), ("pressed: down", "pressed: left"))
    assert "on the table" not in " ".join(step.printed for step in sheet(tmp_path, upright, "small").steps)


def test_tucks_are_pressed_down_in_the_words_of_the_table_and_as_it_hangs(tmp_path: Path) -> None:
    found = sheet(tmp_path, CURTAIN, "small")
    (step,) = (step for step in found.steps if step.standard == "press tucks")
    assert "all to the right, which is down as it hangs" in step.printed
    told = figures(found)["pieces"]["curtain"]
    assert told["hangs_by"] == "left"
    assert told["pressed"]["turns"] == ">>>"

"""Tucks without rows that are pressed: margins, layers, joins, measures, steps and refusals of a whole sheet."""

from __future__ import annotations

from pathlib import Path

import pytest
from rooms_on_disk import faults, put, sheet, warnings

from generator.calculation.worksheet.figures import figures
from generator.lengths import read_length

RUNNER = """\
title: Pilot runner
kind: runner
summary: |
  A runner with plain tucks.
sizes:
  small:
    side: 12 in or 30 cm
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
      depth: 1/2 in or 1.2 cm
      spacing: 2 in or 5 cm
      number: 5
      margin: 1/2 in to 6 in or 1 cm to 15 cm
      pressed: outward
    edges:
      left: seam 1/2 in or 1.5 cm
      right: seam 1/2 in or 1.5 cm
      top: hem 1/4 in then 1/2 in or 6 mm then 1.2 cm
      bottom: bound 3/8 in or 1 cm
  lining:
    kind: rectangle
    finished across: front.across
    finished along: side
    edges:
      all: seam 1/2 in or 1.5 cm
edges that meet:
  - join: front.left and front.right
    to: lining.left and lining.right
"""


def runner(*changes: tuple[str, str]) -> str:
    return put(RUNNER, *changes)


def test_the_worked_panel_knows_how_its_tucks_lie_and_loses_no_length(tmp_path: Path) -> None:
    # Five tucks of 1/2 in, 2 in apart: pitch 1, four pitches, margins (12 - 4) / 2 = 4. Cut 12 + 5 + 1 = 18.
    found = sheet(tmp_path, RUNNER, "small")
    panel = found.panels["front"]
    assert "".join(turn.value for turn in panel.pressed) == "<<>>>"
    assert panel.held("top") == panel.held("bottom") == panel.pressed
    assert (panel.across.left_margin, panel.across.cut) == (4, 18)
    assert found.pieces["front"].measures["extra"] == 0
    # What a file can compute with says the same: 12 + 1/4 + 1/2 of hem, nothing for the binding, nothing for draw-in.
    assert found.pieces["front"].cut_along == read_length("12 3/4 in")


def test_numbers_for_machines_say_how_they_lie_and_what_shows(tmp_path: Path) -> None:
    # To the left and right of the middle: 1 - 1/2 of each pitch, back to back between tucks 2 and 3 the whole inch.
    told = figures(sheet(tmp_path, RUNNER, "small"))["pieces"]["front"]["pressed"]
    assert told == {"turns": "<<>>>", "shown": ["1/2", "1", "1/2", "1/2"]}


@pytest.mark.parametrize(
    ("way", "left", "right"), [("left", "5/8", "3/8"), ("right", "3/8", "5/8"), ("outward", "5/8", "5/8")]
)
def test_a_tuck_pressed_over_a_margin_needs_its_depth_and_an_eighth(
    tmp_path: Path, way: str, left: str, right: str
) -> None:
    """d + 1/8 = 5/8 in beside a seam where it lies outward, the 3/8 in of the foot where it lies inward."""
    for side, least in (("left", left), ("right", right)):
        narrow = runner(
            (
                "      margin: 1/2 in to 6 in or 1 cm to 15 cm\n",
                f"      margin: 1/4 in to 11 in\n      {side} margin: 1/4 in to 5/16 in\n",
            ),
            ("pressed: outward", f"pressed: {way}"),
        )
        assert any(f"{least} in" in text and f"the {side} margin" in text for text in faults(tmp_path, narrow, "small"))


def test_edges_that_hold_pressed_tucks_are_counted_in_layers(tmp_path: Path) -> None:
    # Flat tucks are three layers; the top hem folds them three times: nine, which is more than five.
    found = sheet(tmp_path, RUNNER, "small")
    assert found.thickest["front"].layers == 9
    assert found.thickest["front"].where == "at the top"
    standing = sheet(tmp_path, runner(("pressed: outward", "pressed: standing")), "small")
    assert standing.thickest.get("front") is None or standing.thickest["front"].layers < 9


def test_the_recipe_presses_them_after_they_are_stitched(tmp_path: Path) -> None:
    steps = [step.standard for step in sheet(tmp_path, RUNNER, "small").steps]
    assert steps.index("press tucks") == steps.index("stitch tucks") + 1
    standing = sheet(tmp_path, runner(("      pressed: outward\n", "")), "small")
    assert "press tucks" not in [step.standard for step in standing.steps]


def test_the_step_says_which_way_and_what_shows(tmp_path: Path) -> None:
    (step,) = (step for step in sheet(tmp_path, RUNNER, "small").steps if step.standard == "press tucks")
    assert "tucks 1 and 2 to the left, tucks 3 to 5 to the right" in step.printed
    # What is rare is told by its tucks, what is usual of the others.
    shown = "1 in of the ground shows between tucks 2 and 3. 1/2 in of the ground shows between the others."
    assert shown in step.printed
    assert "pressing front" in step.figures


def test_an_own_step_that_leaves_them_standing_is_told_that_pressing_is_missing(tmp_path: Path) -> None:
    tail = "steps:\n  - use: cut\n  - use: mark folds, crease, stitch tucks\n    on: front\n"
    tail += "  - use: join pieces\n    on: front, lining\n"
    told = [str(found) for found in sheet(tmp_path, RUNNER + tail, "small").findings]
    missing = ":41:5: no step presses the tucks of 'front'; 'join pieces' needs it. Write above line 41:"
    assert any(missing in text for text in told), told


def test_a_join_of_breadths_is_hidden_by_tucks_that_lie_over_it(tmp_path: Path) -> None:
    # 18 in from cloth of 15 in: the foot that the tuck lies over hides the seam, whatever rows there are not.
    narrow = runner(("width: 44 in or 112 cm", "width: 15 in or 38 cm"), ("pressed: outward", "pressed: right"))
    (join,) = sheet(tmp_path, narrow, "small").panels["front"].joins
    assert join.foot == "right"
    assert join.hidden
    assert join.text.startswith(f"Join at the right foot of tuck {join.tuck}, which hides the seam. ")


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        (
            [
                (
                    "    edges:\n      left:",
                    "    rows:\n      plan: one way\n      spacing: 3 in\n    edges:\n      left:",
                )
            ],
            ":22:7: the rows on line 23 turn these tucks; take 'pressed' out, or the rows",
        ),
        (
            [("      number: 5\n", "      ring: yes\n      number: 5\n")],
            ":23:16: a ring has no middle that tucks could face or leave; write 'pressed: left' or 'pressed: right'",
        ),
        (
            [
                (
                    "    edges:\n      left:",
                    "    cross tucks:\n      depth: 1/4 in\n      spacing: 1 in\n      pressed: left\n"
                    "    edges:\n      left:",
                )
            ],
            ":26:7: cross tucks stand when they are sewn; take 'pressed' out, or write it under 'tucks'",
        ),
        (
            [("pressed: outward", "pressed: down")],
            ":22:16: tucks run up and down on the table, so they are pressed to the left or right; up and down are for "
            "what hangs by its left or right edge: write 'hangs by: left', or press them left or right",
        ),
        (
            [("pressed: outward", "pressed: sideways")],
            ":22:16: 'sideways' is no way to press tucks; there is: down, inward, left, outward, right, standing, up",
        ),
    ],
)
def test_what_cannot_be_is_refused_at_its_line(tmp_path: Path, changes: list[tuple[str, str]], told: str) -> None:
    found = faults(tmp_path, runner(*changes), "small")
    assert any(told in text for text in found), found


def test_tucks_pressed_to_each_other_too_close_are_refused_at_their_line(tmp_path: Path) -> None:
    close = runner(("spacing: 2 in or 5 cm", "spacing: 1 3/8 in"), ("pressed: outward", "pressed: inward"))
    found = faults(tmp_path, close, "small")
    assert any("tucks 3 and 4: two tucks that are turned to each other have less room" in text for text in found), found


def test_standing_tucks_may_have_rows(tmp_path: Path) -> None:
    rows = runner(
        ("pressed: outward", "pressed: standing"),
        ("    edges:\n      left:", "    rows:\n      plan: one way\n      spacing: 3 in\n    edges:\n      left:"),
    )
    assert sheet(tmp_path, rows, "small").panels["front"].rows is not None
    assert warnings(sheet(tmp_path, rows, "small")) is not None


RUNS = (
    "      depth: 1/2 in or 1.2 cm\n      spacing: 2 in or 5 cm\n      number: 5\n",
    "      runs:\n        - number: 3\n          depth: 1/4 in to 1/2 in or 6 mm to 1.2 cm\n"
    "          visible space: 1/4 in or 5 mm\n",
)


@pytest.mark.parametrize(
    ("way", "edition", "pitches"),
    [
        # 1/4 and 1/4, 1/4 and 3/8; pressed to the left the right one of each pair lies on it.
        ("right", "inch", "1/2 in, 5/8 in"),
        ("left", "inch", "5/8 in, 3/4 in"),
        ("right", "metric", "1.1 cm, 1.4 cm"),
    ],
)
def test_what_shows_may_be_told_in_place_of_the_pitch(tmp_path: Path, way: str, edition: str, pitches: str) -> None:
    found = sheet(tmp_path, runner(RUNS, ("pressed: outward", f"pressed: {way}")), "small", edition)
    assert list(found.panels["front"].across.pitches) == [read_length(pitch) for pitch in pitches.split(", ")]


def test_marks_that_do_not_stand_evenly_are_told_so(tmp_path: Path) -> None:
    # The first pitch and two depths: 1 + 1/2, and 2.5 + 1.2.
    growing = "      runs:\n        - number: 5\n          depth: 1/4 in or 6 mm\n"
    growing += "          pitch: 1 in to 1 3/4 in or 2.5 cm to 4 cm\n"
    for edition, apart in (("inch", "1 1/2 in"), ("metric", "3.7 cm")):
        found = sheet(tmp_path, runner((RUNS[0], growing)), "small", edition)
        (step,) = (step for step in found.steps if step.standard == "mark folds")
        assert "they do not stand evenly" in step.printed
        assert "apart" not in step.printed
        assert found.panels["front"].across.spacings[0] == read_length(apart)
    (step,) = (step for step in sheet(tmp_path, RUNNER, "small").steps if step.standard == "mark folds")
    assert "the marks stand 2 in apart" in step.printed


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        (
            [RUNS],
            ":21:11: what shows beside a tuck is known where all are pressed one way; write 'pressed: right' or "
            "'pressed: left' under 'tucks', or give the pitch",
        ),
        (
            [RUNS, ("          visible space: 1/4 in or 5 mm\n", "")],
            ":19:11: 'pitch' is missing here; or tell what shows by 'visible space'",
        ),
        (
            [RUNS, ("visible space: 1/4 in or 5 mm\n", "visible space: 1/4 in\n          pitch: 1 in\n")],
            ":21:11: 'pitch' and 'visible space' exclude each other; take one of the two out",
        ),
    ],
)
def test_what_lies_between_tucks_is_told_in_one_way(tmp_path: Path, changes: list[tuple[str, str]], told: str) -> None:
    found = faults(tmp_path, runner(*changes), "small")
    assert any(told in text for text in found), found

"""Elastic in the casing of a skirt: its length, its place in the work, and what `check` refuses."""

from __future__ import annotations

from pathlib import Path

import pytest
from rooms_on_disk import faults, inches, sheet

from generator.calculation.worksheet.figures import figures

STOOL = """\
title: Hatch stool
kind: other
summary: A round cover with a skirt.
sizes:
  medium:
    diameter: 14 in or 35 cm
cloths:
  face:
    label: cotton
    width: 54 in or 137 cm
pieces:
  top:
    kind: circle
    diameter: diameter
  skirt:
    kind: boxing
    edge: top.edge
    depth: 3 in or 8 cm
    edges:
      left: seam
      right: seam
      top: seam
      bottom: casing 1/4 in then 5/8 in or 6 mm then 1.6 cm
edges that meet:
  - join: skirt.left
    to: skirt.right
  - join: top.rim
    to: skirt.top
closures:
  - kind: elastic
    on: skirt.bottom
    width: 3/8 in or 1 cm
"""


def test_an_elastic_is_cut_for_the_finished_edge_and_bought_by_its_length(tmp_path: Path) -> None:
    found = sheet(tmp_path, STOOL, "medium")
    # pi x 14 = 43.98, to 1/8: 44; 44 x 9/10 + 1 = 40.6, to 1/8: 40 5/8.
    (closure,) = found.closures
    assert [closure.length, closure.width, closure.lap] == inches("40 5/8, 3/8, 1")
    assert [(line.item, line.amount) for line in found.notions] == [("elastic, 3/8 in wide", "40 5/8 in")]
    # 3 + 1/2 + 1/4 + 5/8 = 4 3/8.
    assert found.pieces["skirt"].cut_along == inches("4 3/8")[0]
    told = figures(found)["closures"][0]
    assert (told["kind"], told["length"], told["width"]) == ("elastic", "40 5/8", "3/8")


@pytest.mark.parametrize("lap", ["0 in", "1/4 in or 6 mm"])
def test_an_elastic_whose_ends_cannot_be_sewn_to_each_other_is_refused(tmp_path: Path, lap: str) -> None:
    found = faults(tmp_path, STOOL.replace("    width: 3/8", f"    lap: {lap}\n    width: 3/8"), "medium")
    said = lap.partition(" or")[0]
    told = (
        f"the ends of the elastic lap by {said}, too little to be sewn to each other; write a 'lap' of 1/2 in or more"
    )
    assert any(told in one for one in found), found


def test_the_casing_is_made_when_the_ring_is_closed_and_the_elastic_goes_in_last(tmp_path: Path) -> None:
    steps = sheet(tmp_path, STOOL, "medium").steps
    names = [step.standard for step in steps]
    assert names == ["cut", "join pieces", "casing", "make boxing", "thread elastic"]
    casing, boxing, elastic = (steps[names.index(name)] for name in ("casing", "make boxing", "thread elastic"))
    assert "Mark a gap of 2 in" in casing.text
    assert "rod" not in casing.text
    assert "Sew the ends of the" not in boxing.text
    # The other edge is a hem by then: no notch may be cut into it.
    assert "notch the edge for the top at the folds" in boxing.text
    assert "both edges" not in boxing.text
    assert "Fold it in four too" in boxing.text
    # It is told by its name in the project.
    assert boxing.title == "Sew in the skirt"
    assert "Sew round with the skirt uppermost" in boxing.text
    assert "boxing" not in boxing.text
    assert "elastic 3/8 in wide, **40 5/8 in long**, its ends lapped by 1 in" in elastic.text


def test_an_elastic_that_no_step_threads_is_told_with_its_line(tmp_path: Path) -> None:
    steps = (
        "steps:\n  - use: cut\n  - use: join pieces, casing\n    on: skirt\n  - use: make boxing\n    on: skirt, top\n"
    )
    told = [str(one) for one in sheet(tmp_path, STOOL + steps, "medium").findings if one.level == "error"]
    assert len(told) == 1
    assert "- use: thread elastic\n    on: skirt" in told[0]


@pytest.mark.parametrize(
    ("line", "other", "told"),
    [
        (
            "casing 1/4 in then 5/8 in or 6 mm then 1.6 cm",
            "casing 1/4 in then 1/2 in or 6 mm then 1.2 cm",
            "the casing of 'skirt.bottom' is 1/2 in deep, too narrow; for an elastic 3/8 in wide write "
            "'casing 1/4 in then 5/8 in' or more",
        ),
        (
            "casing 1/4 in then 5/8 in or 6 mm then 1.6 cm",
            "hem 1/4 in then 5/8 in or 6 mm then 1.6 cm",
            "an elastic runs in a casing, and 'skirt.bottom' has none; for an elastic 3/8 in wide write "
            "'casing 1/4 in then 5/8 in' or more",
        ),
        ("    on: skirt.bottom\n", "    on: skirt.bottom\n    onto: top.rim\n", "take 'onto' out"),
        ("    width: 3/8 in or 1 cm\n", "", "'width' is missing here: how wide the elastic is"),
        ("kind: elastic", "kind: buttons", "'onto' is missing here"),
        (
            "kind: elastic",
            "kind: snaps\n    onto: top.rim\n    lap: 2 in",
            "'lap' goes with an elastic; take it out",
        ),
    ],
)
def test_what_an_elastic_cannot_be_is_refused_where_it_stands(tmp_path: Path, line: str, other: str, told: str) -> None:
    (found,) = faults(tmp_path, STOOL.replace(line, other), "medium")
    assert told in found
    assert found.startswith("projects/jetty.yaml:")


def test_an_elastic_in_all_edges_of_a_piece_is_refused(tmp_path: Path) -> None:
    lid = "  lid:\n    kind: rectangle\n    finished across: 9 in\n    finished along: 9 in\n  skirt:\n"
    text = STOOL.replace("  skirt:\n", lid).replace("on: skirt.bottom", "on: lid.all")
    told = "an elastic runs in the casing of one edge, and 'lid.all' is several; write the one it runs in: on: lid.left"
    assert any(told in one for one in faults(tmp_path, text, "medium"))

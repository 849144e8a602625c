"""Strips on the bias in a layout: the square where it buys the same, a rectangle where that buys less."""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path

from rooms_on_disk import put, sheet

from generator.calculation.worksheet.figures import figures
from generator.calculation.worksheet.threads import plain_stitching

TRAY = """\
title: Pantry tray cloth
kind: mats
summary: |
  A cloth with a bound edge.
sizes:
  usual:
    side: 20 in or 50 cm
cloths:
  face:
    label: cotton
    width: 44 in or 112 cm
pieces:
  cloth:
    kind: rectangle
    finished across: 40 in or 100 cm
    finished along: side
    edges:
      all: raw
  trim:
    kind: binding
    length: cloth.edge
    width: 3/8 in or 1 cm
    grain: bias
edges that meet:
  - join: trim.edge
    to: cloth.all
steps:
  - use: cut
  - use: cut bias
    on: trim
"""
ROUND = (
    "kind: rectangle\n    finished across: 40 in or 100 cm\n    finished along: side\n    edges:\n      all: raw",
    "kind: circle\n    diameter: 40 in or 100 cm\n    edges:\n      rim: raw",
)


def test_a_rectangle_takes_the_place_of_the_square_where_it_saves_a_step(tmp_path: Path) -> None:
    found = sheet(tmp_path, TRAY, "usual")
    trim, use = found.pieces["trim"], found.cloths["face"]
    # 120 and two ends of 1/2, 1 5/8 wide, are 197 square inches at least. A square has no room beside the 40 on 44.
    assert trim.square**2 > 197
    assert trim.pieced is not None
    assert trim.pieced.gives >= trim.cut_across == 121
    assert [(placed.across, placed.along) for placed in use.layout.placed if placed.piece == "trim"] == [
        (trim.pieced.long, trim.pieced.short)
    ]
    assert use.layout.length == 20 + trim.pieced.short
    assert use.buy < use.buying.bought(20 + trim.square)
    assert [(cut.across, cut.along) for cut in trim.cuts] == [(trim.pieced.long, trim.pieced.short)]
    # Joins are sewn over the slant of the strip: at least its width times the root of two.
    assert plain_stitching(trim) >= trim.made.stitched + (trim.pieced.strips - 1) * trim.cut_along * Fraction(141, 100)


def test_the_sheet_tells_how_it_is_pieced_and_nothing_of_the_square(tmp_path: Path) -> None:
    found = sheet(tmp_path, TRAY, "usual")
    pieced = found.pieces["trim"].pieced
    assert pieced is not None
    [step] = [step for step in found.steps if step.standard == "cut bias"]
    assert f"Its {pieced.strips} longest strips give" in step.text
    assert "Fold one short side down onto the long side" in step.text
    assert "an A on the wrong side" not in step.text
    [told] = json.loads(json.dumps(figures(found)["cloth"]["face"]["bias"]))
    assert (told["piece"], told["strips"], told["joins"]) == ("trim", pieced.strips, pieced.strips - 1)


def test_the_square_stays_where_nothing_is_saved(tmp_path: Path) -> None:
    # Beside a cloth of 20 in the square lies on 44 in: no rectangle is shorter.
    found = sheet(tmp_path, put(TRAY, ("40 in or 100 cm", "20 in or 50 cm")), "usual")
    assert found.pieces["trim"].pieced is None
    assert found.cloths["face"].pieced == {}
    [step] = [step for step in found.steps if step.standard == "cut bias"]
    assert "from corner to corner" in step.text
    assert "Fold one short side" not in step.text


def test_cloth_along_the_thread_is_offered_where_all_edges_are_straight(tmp_path: Path) -> None:
    longer = put(TRAY, ("20 in or 50 cm", "21 in or 50 cm"))
    notes = [one.text for one in sheet(tmp_path, longer, "usual").findings if one.level == "note"]
    # 123 in of 1 5/8 are three lengths, 4 7/8 in of cloth: 21 + 4 7/8 + 1 = 26 7/8, six eighths. A rectangle as long
    # as the cloth is wide holds 123 x 1 5/8 / 44 = 4 1/2 without joins, and 3/4 to spare; its joins take the seventh.
    assert notes == [
        "all edges that 'trim' goes along are straight: cut along the thread ('grain: along') 3/4 yd of cotton would "
        "do in place of 7/8 yd"
    ]


def test_nothing_is_offered_along_the_thread_round_a_curve_or_where_nothing_is_saved(tmp_path: Path) -> None:
    for text in (
        put(TRAY, ("40 in or 100 cm", "20 in or 50 cm")),
        put(TRAY, ROUND, ("to: cloth.all", "to: cloth.rim")),
    ):
        assert not any("along the thread" in one.text for one in sheet(tmp_path, text, "usual").findings)

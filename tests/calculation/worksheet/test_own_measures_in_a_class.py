"""A class in which two of eight have their own measures: every total by hand, and what is said of wrong measures."""

from __future__ import annotations

from pathlib import Path

import pytest
from class_on_disk import the_class
from rooms_on_disk import inches, project, put, room_shared

from generator.calculation.making.classes import Kit
from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.class_figures import class_figures
from generator.calculation.worksheet.figures import figures
from generator.calculation.worksheet.sheet import worked_sheet
from generator.definitions.own_size import own_size
from generator.errors import FaultyFileError
from generator.lengths import EDITIONS

# Cloth so narrow that no two pieces lie side by side: every piece is a strip of its own.
MAT = """\
title: Gangway mat
kind: mats
summary: |
  A mat with four tucks in its middle.
sizes:
  small:
    side: 12 in or 30 cm
  medium:
    side: 16 in or 40 cm
cloths:
  face:
    label: cotton
    width: 22 in or 56 cm
pieces:
  front:
    kind: tucked panel
    finished across: side
    finished along: side
    grain: along
    tucks:
      depth: 3/8 in or 1 cm
      spacing: 1 1/2 in or 4 cm
      number: 4
      margin: 3 in to 12 in or 7 cm to 30 cm
    edges:
      all: seam 1/2 in or 1.5 cm
  back:
    kind: rectangle
    finished across: side
    finished along: side
    grain: along
    edges:
      all: seam 1/2 in or 1.5 cm
edges that meet:
  - join: front.all
    to: back.all
supplies:
  - item: Felt, {{ side }} each way
  - item: Button
    quantity: 2
steps:
  - use: cut
  - use: mark folds, crease, stitch tucks, trim
    on: front
  - title: Close the mat
    does: sew front to back, turn out front
    text: |
      Sew round, and leave an opening.
"""
CLASS = """\
title: Mats to measure
project: jetty
edition: inch
paper: A4
sessions:
  - day: 2031-03-08
    starts: 9:30
    ends: 16:30
places:
  - size: medium
    number: 3
  - size: small
    number: 3
  - with:
      side: 14 in
    student: Ines
  - with:
      side: 18
    student: Bram
"""
PRICES = "prices:\n  face: £12 a yard\n  thread: £2 each\n  felt: £1.50\n  button: £0.25 each\n"
INES, BRAM = Kit("side 14 in", "inch"), Kit("side 18 in", "inch")


def own_sheet(folder: Path, side: str, edition: str = "inch") -> Worksheet:
    """What ``sheet --with side=...`` works."""
    room = room_shared(folder, "")
    listed = project(folder, MAT, room)
    size = own_size(listed.sizes, {"side": side}, EDITIONS[edition])
    return worked_sheet(listed.with_sizes([size]), size.label, EDITIONS[edition], room)


def test_a_place_with_own_measures_is_a_kit_of_its_own(tmp_path: Path) -> None:
    found = the_class(tmp_path, CLASS, of=MAT)
    assert [(work.kit, work.own, work.count.packed, work.count.cut) for work in found.kits] == [
        (Kit("medium", "inch"), False, 3, 3),
        (Kit("small", "inch"), False, 3, 3),
        (INES, True, 1, 1),
        (BRAM, True, 1, 1),
    ]
    assert [(slip.kit, slip.student) for slip in found.slips][-2:] == [(INES, "Ines"), (BRAM, "Bram")]
    told = class_figures(found, {})
    assert [kit["own_measures"] for kit in told["kits"]] == [False, False, True, True]


def test_every_number_of_an_own_kit_is_that_of_a_sheet_with_these_measures(tmp_path: Path) -> None:
    kits = {work.kit: work for work in the_class(tmp_path, CLASS, of=MAT).kits}
    for kit, side in ((INES, "14 in"), (BRAM, "18")):
        assert figures(kits[kit].worksheet) == figures(own_sheet(tmp_path, side))
    # Four tucks of 3/8 in hide 4 x 3/4 = 3 in, and two seams take 1 in: 14 + 3 + 1 = 18, along 14 + 1 = 15.
    front = kits[INES].pieces[0][1][0]
    assert [front.across, front.along] == inches("18, 15")


def test_what_the_class_buys_counts_own_measures(tmp_path: Path) -> None:
    found = the_class(tmp_path, CLASS, of=MAT, site=PRICES)
    cloth = found.cloths["face"]
    # A kit of side S takes two strips of S + 1: 3 x 2 x 17 + 3 x 2 x 13 + 2 x 15 + 2 x 19 = 102 + 78 + 30 + 38 = 248.
    assert [cloth.use.layout.length, cloth.apart] == inches("248, 248")
    assert len(cloth.use.layout.placed) == 16
    # With 1 in to straighten 249 in, up to the next 1/8 yd of 4 1/2 in: 252 in, which is 7 yd.
    assert cloth.use.buy_text == "7 yd"
    assert {line.item: line.amount for line in found.supplies} == {
        "Felt, 16 in each way": "3",
        "Button": "16",
        "Felt, 12 in each way": "3",
        "Felt, 14 in each way": "1",
        "Felt, 18 in each way": "1",
    }
    # A spool for each of eight who sew at once.  84 + 16 + 8 x 1.50 + 16 x 0.25 = 116.
    assert found.thread.spools == 8
    assert str(found.bill.whole) == "£116.00"
    each = {work.kit: work.worksheet.thread.length for work in found.kits}
    assert found.thread.length == 3 * each[Kit("medium", "inch")] + 3 * each[Kit("small", "inch")] + sum(
        each[kit] for kit in (INES, BRAM)
    )


def test_the_class_waits_for_own_measures_that_take_longest(tmp_path: Path) -> None:
    found = the_class(tmp_path, put(CLASS, ("      side: 18\n", "      side: 26\n")), of=MAT)
    assert found.slowest.kit == Kit("side 26 in", "inch")


def test_two_with_the_same_measures_share_a_kit_and_metric_ones_take_their_unit(tmp_path: Path) -> None:
    changed = put(
        CLASS, ("    student: Bram\n", "    student: Bram\n    edition: metric\n"), ("side: 18\n", "side: 44\n")
    )
    found = the_class(
        tmp_path, put(changed, ("    student: Ines\n", "    number: 2\n    student: Ines, Ode\n")), of=MAT
    )
    assert [(work.kit, work.count.packed) for work in found.kits][2:] == [(INES, 2), (Kit("side 44 cm", "metric"), 1)]
    assert figures(found.kits[3].worksheet) == figures(own_sheet(tmp_path, "44", "metric"))


def test_on_cloth_of_another_width_an_own_handout_is_made_for_that_cloth(tmp_path: Path) -> None:
    found = the_class(tmp_path, CLASS + "cloths:\n  face:\n    width: 60 in\n", of=MAT)
    assert {str(work.worksheet.cloths["face"].width) for work in found.kits} == {"60"}


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ("side: 18\n", "sid: 18\n", "17:5: 'side' is missing; add for example side: 17"),
        (
            "side: 18\n",
            "side: wide\n",
            "18:13: 'wide': only a length or a number can stand here",
        ),
        ("side: 18\n", "side: 18 in\n      lap: 3\n", "19:12: the sizes of this project give no 'lap'; there is: side"),
        (
            "  - with:\n      side: 18\n",
            "  - number: 1\n",
            "17:5: 'size' is missing here; a place has a 'size', or its own measures 'with'",
        ),
        (
            "    student: Bram\n",
            "    size: small\n",
            "17:5: 'with' does not go with 'size'; take one of the two out",
        ),
    ],
)
def test_wrong_measures_are_told_at_their_place(tmp_path: Path, old: str, new: str, message: str) -> None:
    with pytest.raises(FaultyFileError) as refused:
        the_class(tmp_path, put(CLASS, (old, new)), of=MAT)
    assert f"site/classes/mornings.yaml:{message}" in [str(finding) for finding in refused.value.findings]


@pytest.mark.parametrize("side", [" + ".join(["1 in"] * 20), "12 in", "1000000 in"])
def test_measures_that_have_no_name_on_a_sheet_or_no_end_are_refused(tmp_path: Path, side: str) -> None:
    # The second is called as a size of the file would be, were it called so.
    named = put(MAT, ("  small:\n", "  side 12 in:\n")) if side == "12 in" else MAT
    text = put(CLASS, ("side: 18\n", f"side: {side}\n"), ("size: small", "size: medium"))
    with pytest.raises(FaultyFileError) as refused:
        the_class(tmp_path, text, of=named)
    assert str(refused.value.findings[0]).startswith("site/classes/mornings.yaml:17:5: ")


def test_measures_that_cannot_be_worked_name_their_place(tmp_path: Path) -> None:
    # A margin has 3 in at least, and three pitches of 3/4 in lie between: 6 in is too little for 8 1/4 in.
    with pytest.raises(FaultyFileError) as refused:
        the_class(tmp_path, put(CLASS, ("side: 18\n", "side: 6\n")), of=MAT)
    told = [str(finding) for finding in refused.value.findings]
    assert told[0] == (
        "site/classes/mornings.yaml:17:5: the project cannot be worked in these measures, as told below; measure "
        "again, or ask for a nearby size (size side 6 in)"
    )
    assert len(told) > 1
    assert "projects/jetty.yaml" in told[1]

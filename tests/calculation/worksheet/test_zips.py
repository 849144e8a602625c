"""Zips of a told length on a worksheet: which to buy, tabs, where they do not go; laps of other fasteners."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from rooms_on_disk import faults, inches, sheet, warnings

from generator.calculation.pieces.closings import zip_tab
from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.figures import figures
from generator.errors import CalculationError
from generator.lengths import CENTIMETRE, INCH, METRIC

POUCH = """\
title: Chart pouch
kind: bag
summary: A pouch with a zip.
sizes:
  small:
    wide: 9 in or 23 cm
    zip: 7 in or 18 cm
cloths:
  face:
    label: cotton
    width: 44 in or 112 cm
pieces:
  front:
    kind: tucked panel
    finished across: 6 in or 16.5 cm
    finished along: wide
    tucks:
      depth: 1/4 in or 6 mm
      spacing: 1 in or 2.7 cm
      left margin: 1 1/4 in or 3 cm
      right margin: 3/4 in or 1.5 cm
      pressed: right
    edges:
      left: seam 5/8 in or 1.5 cm
      all: seam 1/2 in or 1.5 cm
  back:
    kind: rectangle
    finished across: 6 in or 16.5 cm
    finished along: wide
    edges:
      left: seam 5/8 in or 1.5 cm
      all: seam 1/2 in or 1.5 cm
  zip tab:
    kind: zip tab
    quantity: 2
    edge: wide
    zip: zip
edges that meet:
  - join: front.all
    to: back.all
closures:
  - kind: zip
    on: front.left
    onto: back.left
    length: zip
    tabs: zip tab
"""
SHOP = "zip lengths: 6 in or 15 cm, 8 in or 20 cm, 10 in or 25 cm\n"


def pouch(folder: Path, *changes: tuple[str, str], site: str = "", edition: str = "inch") -> Worksheet:
    text = POUCH
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    return sheet(folder, text, "small", edition, site)


def told(found: Worksheet) -> list[str]:
    """What is warned of about zips and laps."""
    return [one for one in warnings(found) if "zip" in one or "lap" in one]


def test_tabs_fill_the_edge_up_and_are_cut_folded(tmp_path: Path) -> None:
    # 9 - 7 = 2, so each tab shows 1; cut 2 x (1 + 1/2) = 3 long and 1 1/4 wide.
    tab = pouch(tmp_path).pieces["zip tab"]
    assert [tab.cut_across, tab.cut_along, tab.finished_across, tab.finished_along] == inches("1 1/4, 3, 1 1/4, 1")
    # 23 - 18 = 5: 2.5, cut 2 x (2.5 + 1.5) = 8 by 3.
    tab = pouch(tmp_path, edition="metric").pieces["zip tab"]
    assert [tab.cut_across / CENTIMETRE, tab.cut_along / CENTIMETRE, tab.measures["shown"] / CENTIMETRE] == [
        3,
        8,
        Fraction(5, 2),
    ]


@pytest.mark.parametrize(("edge", "long"), [(9, 7), (12, 10), (9, 8)])
def test_sewn_up_again_a_zip_with_its_tabs_is_as_long_as_its_edge(edge: int, long: int) -> None:
    # The other way: both folded tabs less their allowances, and the zip between them.
    seam = Fraction(1, 2)
    _, cut = zip_tab(Fraction(edge), Fraction(long), seam, INCH)
    assert 2 * (cut / 2 - seam) + long == edge


def test_a_tab_that_would_hardly_show_is_refused_with_the_zip_to_take() -> None:
    with pytest.raises(CalculationError, match="leaves 1/4 in for each tab, less than 1/2 in; take a zip of 8 in"):
        zip_tab(Fraction(9), Fraction(17, 2), Fraction(1, 2), INCH)
    with pytest.raises(CalculationError, match=r"leaves 0 cm for each tab, less than 1\.2 cm; take a zip of 20\.6 cm"):
        zip_tab(23 * CENTIMETRE, 25 * CENTIMETRE, Fraction(3, 2) * CENTIMETRE, METRIC)


def test_the_next_longer_zip_of_the_shop_is_bought_and_shortened(tmp_path: Path) -> None:
    found = pouch(tmp_path, site=SHOP)
    (closure,) = found.closures
    assert [closure.length, closure.bought, closure.inset] == inches("7, 8, 1")
    assert [(line.item, line.amount) for line in found.notions] == [("zip", "8 in")]
    assert (figures(found)["closures"][0]["length"], figures(found)["closures"][0]["bought"]) == ("7", "8")
    steps = {step.standard: step.text for step in found.steps}
    for name in ("make zip tabs", "set zip"):
        assert "**7 in** between its stops, 1 in from both ends. It is bought 8 in long" in steps[name]
        assert "cut the zip off 1/2 in beyond it" in steps[name]
        assert "The new stop is sewn by hand" in steps[name]
    assert all("needle" in step.tools for step in found.steps if step.standard in ("make zip tabs", "set zip"))
    # 7 in of zip and two tabs of 1 in, and in the seams 1/2 in at both ends: 10 in.
    assert "From raw end to raw end zip and tabs are 10 in long" in steps["make zip tabs"]


def test_without_lengths_of_a_shop_a_zip_is_bought_as_long_as_it_is(tmp_path: Path) -> None:
    found = pouch(tmp_path)
    assert [(line.item, line.amount) for line in found.notions] == [("zip", "7 in")]
    assert all("bought" not in step.text and "new stop" not in step.text for step in found.steps)
    assert all("needle" not in step.tools for step in found.steps if step.standard in ("make zip tabs", "set zip"))


def test_tabs_and_zip_come_before_the_seam_that_shuts_them_in(tmp_path: Path) -> None:
    names = [step.standard for step in pouch(tmp_path).steps]
    assert names.index("make zip tabs") < names.index("set zip")
    assert names.index("set zip") < min(names.index(one) for one in ("line and turn", "join pieces") if one in names)
    assert "close opening" not in names


def test_a_zip_longer_than_its_edge_is_refused(tmp_path: Path) -> None:
    text = POUCH.replace("    length: zip\n    tabs: zip tab\n", "    length: 10 in or 25 cm\n")
    (found,) = faults(tmp_path, text, "small")
    assert "a zip of 10 in does not go into 'front.left', which is 9 in long; take one of 9 in at most" in found
    assert found.startswith(f"projects/jetty.yaml:{text.splitlines().index('  - kind: zip') + 1}:")


def test_a_zip_that_lies_well_is_not_warned_of(tmp_path: Path) -> None:
    assert told(pouch(tmp_path)) == []


def test_a_narrow_allowance_is_told(tmp_path: Path) -> None:
    found = told(pouch(tmp_path, ("left: seam 5/8 in or 1.5 cm", "left: seam 1/2 in or 1.2 cm")))
    assert len(found) == 2
    assert "the allowance of 'front.left' is 1/2 in, and a zip is sewn to one of 5/8 in; write left: seam" in found[0]


def test_tucks_beside_a_zip_leave_room_for_the_foot_and_for_the_one_that_lies_over_it(tmp_path: Path) -> None:
    # A margin of 1/2 is enough beside a tuck that is pressed away, and 1/4 too little beside one that lies over it.
    near = ("left margin: 1 1/4 in or 3 cm", "left margin: 1/2 in or 1.5 cm")
    wide = ("finished across: 6 in or 16.5 cm", "finished across: 5 1/4 in or 15 cm")
    assert told(pouch(tmp_path, near, wide)) == []
    (found,) = told(pouch(tmp_path, near, wide, ("pressed: right", "pressed: left")))
    assert "beside the zip the margin of 'front' at the left is 1/2 in, and the foot wants 3/4 in" in found


def test_a_zip_across_tucks_and_one_in_a_round_edge_are_told(tmp_path: Path) -> None:
    keys = "on: front.left\n    onto: back.left\n    length: zip\n    tabs: zip tab"
    across = told(pouch(tmp_path, (keys, "on: front.top\n    onto: back.top")))
    assert any("a zip across the tucks of 'front' jams on their folds" in one for one in across)
    round_one = ("  zip tab:\n", "  lid:\n    kind: circle\n    diameter: wide\n  zip tab:\n")
    on = ("onto: back.left\n    length: zip\n    tabs: zip tab", "onto: lid.rim")
    assert any("'lid.rim' is round, and a zip in it waves" in one for one in told(pouch(tmp_path, round_one, on)))


@pytest.mark.parametrize(
    ("keys", "least"),
    [
        ("kind: hook and loop\n    width: 3/4 in or 2 cm\n    overlap: 3/4 in or 2 cm", "1 in"),
        ("kind: snaps\n    diameter: 1/2 in or 12 mm\n    overlap: 5/8 in or 1.5 cm", "3/4 in"),
        ("kind: magnet\n    diameter: 1/2 in or 12 mm\n    overlap: 5/8 in or 1.5 cm", "3/4 in"),
    ],
)
def test_a_lap_holds_what_closes_it(tmp_path: Path, keys: str, least: str) -> None:
    zip_keys = "kind: zip\n    on: front.left\n    onto: back.left\n    length: zip\n    tabs: zip tab"
    other = f"{keys}\n    on: front.left\n    onto: back.left"
    (found,) = told(pouch(tmp_path, (zip_keys, other)))
    assert f"want {least}; write a wider 'overlap', or take smaller ones" in found
    wider = other.replace("overlap: 3/4 in", "overlap: 1 in").replace("overlap: 5/8 in", "overlap: 3/4 in")
    assert told(pouch(tmp_path, (zip_keys, wider.replace("or 1.5 cm\n    on", "or 2 cm\n    on")))) == []


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("tabs: zip tab", "tabs: back", "'back' is a rectangle; the tabs of a zip are a piece of the kind 'zip tab'"),
        ("tabs: zip tab", "tabs: tab", "there is no piece 'tab'"),
        ("onto: back.left", "onto: front.left", "'front.left' cannot close onto itself; write under 'onto' the edge"),
        (
            "edge: wide",
            "edge: wide + 1 in or wide + 2 cm",
            "'zip tab' is for an edge of 10 in, and that of this zip is",
        ),
        ("zip: zip\n", "zip: 6 in or 15 cm\n", "'zip tab' is for a zip of 6 in, and this one is 7 in long; write zip:"),
        ("quantity: 2", "quantity: 3", "a zip has two tabs, and 3 of 'zip tab' are cut; write quantity: 2"),
        ("kind: zip\n", "kind: snaps\n", "'length' goes with a zip; take it out"),
    ],
)
def test_what_a_zip_cannot_say_is_refused_where_it_stands(tmp_path: Path, old: str, new: str, says: str) -> None:
    assert any(says in one for one in faults(tmp_path, POUCH.replace(old, new), "small"))

"""Blinds: rods, the order of their steps, what is refused of cords, and the blind of the demo room by hand."""

from __future__ import annotations

from pathlib import Path

import pytest
from rooms_on_disk import faults, put, sheet, warnings

from generator.calculation.panel.remedies import remedy
from generator.calculation.worksheet.figures import figures
from generator.drawing.finished import thing_names
from generator.drawing.things.views import back_shapes
from generator.lengths import INCH, read_length
from tests.room import demo_room

BLIND = """\
title: Quayside blind
kind: curtain
summary: |
  A blind with rods.
sizes:
  small:
    width: 30 in or 75 cm
cloths:
  face:
    label: cotton
    width: 44 in or 112 cm
pieces:
  blind:
    kind: tucked panel
    hangs by: left
    grain: across
    finished across: 48 in or 120 cm
    finished along: width
    tucks:
      depth: 3/4 in or 2 cm
      spacing: 9 1/2 in or 24 cm
      number: 5
      left margin: 12 in or 30 cm
      right margin: 4 in or 10 cm
      pressed: down
      rod: 3/8 in or 9 mm
    edges:
      left: hem 1/2 in then 1 in or 1 cm then 2.5 cm
      right: hem 1/2 in then 1 1/2 in or 1 cm then 4 cm
      top: hem 1 in or 2.5 cm
      bottom: hem 1 in or 2.5 cm
supplies:
  - item: Rods
    quantity: 5
"""
RINGS = ("      rod: 3/8 in or 9 mm\n", "      rod: 3/8 in or 9 mm\n      rings:\n        from sides: 3 in or 8 cm\n")
HEADRAIL = ("3 in or 8 cm\n", "3 in or 8 cm\n        headrail: bought with all its safety parts\n")
CAUTION = ("kind: curtain\n", "kind: curtain\ncautions: blind cords\n")


def test_the_sides_are_hemmed_before_the_folds_are_marked_and_rods_go_in_last(tmp_path: Path) -> None:
    told = [(step.standard, step.title) for step in sheet(tmp_path, BLIND, "small").steps]
    assert [name for name, _ in told] == [
        *("cut", "hem", "mark folds", "crease", "stitch tucks", "press tucks", "hem", "put in rods")
    ]
    assert told[1][1] == "Hem the left and right edges: blind"
    assert told[6][1] == "Hem the top and bottom edges: blind"


def test_steps_in_the_order_of_other_panels_are_refused(tmp_path: Path) -> None:
    own = "steps:\n  - use: cut\n  - use: mark folds, crease, stitch tucks, press tucks\n    on: blind\n"
    own += "  - use: hem\n    on: blind\n  - use: put in rods\n    on: blind\n"
    told = [str(found) for found in sheet(tmp_path, BLIND + own, "small").findings]
    assert any("'mark folds' needs" in text and "the hems of 'blind'" in text for text in told), told


def test_marks_are_made_on_hemmed_edges_and_nothing_hides_them(tmp_path: Path) -> None:
    found = sheet(tmp_path, BLIND, "small")
    assert (found.pieces["blind"].cut_along, found.pieces["blind"].along_at_marking) == (34, 30)
    (marking,) = (step for step in found.steps if step.standard == "mark folds")
    assert "No seam hides it: it must come out." in marking.printed
    assert "30 in from top to bottom" in marking.text
    (pressing,) = (step for step in found.steps if step.standard == "press tucks")
    assert "Baste" not in pressing.printed
    hems = [step.printed for step in found.steps if step.standard == "hem"]
    assert not any("Where a hem crosses tucks" in text for text in hems)


def test_tucks_are_stitched_through_hems_of_three_layers(tmp_path: Path) -> None:
    thickest = sheet(tmp_path, BLIND, "small").thickest["blind"]
    assert (thickest.layers, thickest.where) == (6, "at the right (top on the table)")


@pytest.mark.parametrize(
    ("depth", "refused"),
    [("3/4 in", False), ("11/16 in", True), ("1/2 in", True)],
)
def test_tucks_too_shallow_for_the_rod_are_refused_at_its_line(tmp_path: Path, depth: str, refused: bool) -> None:
    # pi x 3/8 / 2 + 1/8 = 0.714: 11/16 = 0.6875 is less, 3/4 is more.
    text = put(BLIND, ("depth: 3/4 in or 2 cm", f"depth: {depth} or 2 cm"))
    if not refused:
        assert warnings(sheet(tmp_path, text, "small")) is not None
        return
    told = (
        f":26:12: tucks {depth} deep hold no rod 3/8 in thick: half way round it and room to slide it in take 3/4 in; "
        "make them 3/4 in deep, or take a thinner rod"
    )
    assert any(told in fault for fault in faults(tmp_path, text, "small"))


def test_a_panel_that_came_out_wrong_is_not_mended_by_tucks_too_shallow_for_rods(tmp_path: Path) -> None:
    # 3/4 - 0.714 is less than a mark of the ruler, so no tuck may be shallower; 7/8 gives two of them.
    for depth, spacing, change in (("3/4", "9 1/2", "0"), ("7/8", "9 3/4", "1/16")):
        text = put(BLIND, ("depth: 3/4 in", f"depth: {depth} in"), ("spacing: 9 1/2 in", f"spacing: {spacing} in"))
        leeway = sheet(tmp_path, text, "small").panels["blind"].checks.leeway
        assert set(leeway.changes) == {read_length(f"{change} in")}
        assert not leeway.leaves_out


def test_a_blind_keeps_its_hems_and_its_head_where_it_came_out_wrong(tmp_path: Path) -> None:
    # At the left hangs its top; below the last tuck, 3/4 deep and lying out, 4 - 3/4 - 1/8 in may go, the hem kept.
    panel = sheet(tmp_path, BLIND, "small").panels["blind"]
    leeway = panel.checks.leeway
    assert leeway.lets_out == leeway.trims[0] == 0 < leeway.trims[1] < read_length("4 in")
    assert remedy(panel.across, panel.checks.points[-1], panel.checks, INCH) == (
        "Too wide: trim the right edge. Too narrow: leave it so"
    )


def test_rings_on_a_bought_headrail_are_told_with_a_warning(tmp_path: Path) -> None:
    found = sheet(tmp_path, put(BLIND, RINGS, HEADRAIL, CAUTION), "small")
    assert figures(found)["pieces"]["blind"]["rods"] == {"thick": "3/8", "rings": ["3", "15", "27"]}
    assert any("cords hang on these rings: with nothing but the bought headrail" in text for text in warnings(found))
    (step,) = (step for step in found.steps if step.standard == "put in rods")
    assert "at 3, 15, 27 in from its left end" in step.printed
    assert "by its maker's text" in step.printed
    assert "blind cords" in step.cautions
    assert "blind cords" in found.cautions


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        (
            [RINGS, CAUTION],
            ":29:9: rings are for cords, and a child caught in the cord of a blind can strangle. Take the",
        ),
        ([RINGS, HEADRAIL], ":28:9: cords hang on these rings; write 'cautions: blind cords' at the head of the file"),
        (
            [RINGS, HEADRAIL, CAUTION, ("bought with all its safety parts", "my own")],
            ":30:19: 'my own' is no headrail that cords may hang on; there is: bought with all its safety parts",
        ),
        (
            [RINGS, HEADRAIL, CAUTION, ("      rod: 3/8 in or 9 mm\n", "")],
            ":27:7: rings are sewn on along rods; say under 'rod' how thick those are, or take the rings out",
        ),
        (
            [("  - item: Rods", "  - item: Blind cord, 4 m\n  - item: Rods")],
            ":33:5: 'cord' is bought for a blind, and a child caught in it can strangle. Take it out: rods lift on to",
        ),
    ],
)
def test_no_cord_without_the_bought_safety_parts(tmp_path: Path, changes: list[tuple[str, str]], told: str) -> None:
    found = faults(tmp_path, put(BLIND, *changes), "small")
    assert any(told in text for text in found), found


def test_a_blind_is_drawn_from_the_back_with_its_rods(tmp_path: Path) -> None:
    plain = put(BLIND, ("      rod: 3/8 in or 9 mm\n", ""))
    assert thing_names(sheet(tmp_path, plain, "small")) == ("front",)
    rodded = sheet(tmp_path, BLIND, "small")
    assert thing_names(rodded) == ("front", "back")
    ringed = sheet(tmp_path, put(BLIND, RINGS, HEADRAIL, CAUTION), "small")
    for found, rings in ((rodded, 0), (ringed, 5 * 3)):
        behind = back_shapes(found)[0]
        assert len(behind.buttons) == rings
        # A rod in every tuck, 3/16 in above its fold, level, from side to side; its ends are seen beyond them.
        levels = sorted(start[1] for start, _ in behind.hidden)
        assert levels == pytest.approx([12.5625 + 8 * number for number in range(5)])
        assert {x for line in behind.hidden for x, _ in line} == {0, 30}
        assert sum(x < 0 for line in behind.edges for x, _ in line) == 5
        assert sum(x > 30 for line in behind.edges for x, _ in line) == 5


@pytest.mark.parametrize(
    ("size", "edition", "cut", "first", "last", "beyond"),
    [
        # fold (48 - 4) / 5 1/2 = 8; across 48 + 5 x 1 1/2 + 1 1/2 + 2 = 59; first 1 1/2 + 12 + 3/4, last + 4 x 9 1/2.
        ("middle", "inch", "59 in", "14 1/4 in", "52 1/4 in", "6 3/4 in"),
        # fold (56 - 4) / 6 1/2 = 8; 56 + 6 x 1 1/2 + 3 1/2 = 68 1/2; last 14 1/4 + 47 1/2.
        ("high", "inch", "68 1/2 in", "14 1/4 in", "61 3/4 in", "6 3/4 in"),
        # fold (40 - 4) / 4 1/2 = 8; 40 + 4 x 1 1/2 + 3 1/2 = 49 1/2; last 14 1/4 + 28 1/2; 2 + 4 + 3/4 beyond it.
        ("low", "inch", "49 1/2 in", "14 1/4 in", "42 3/4 in", "6 3/4 in"),
        # fold (120 - 10) / 5.5 = 20; 120 + 5 x 4 + 3.5 + 5 = 148.5; first 3.5 + 30 + 2, last + 4 x 24; 5 + 10 + 2.
        ("middle", "metric", "148.5 cm", "35.5 cm", "131.5 cm", "17 cm"),
        ("low", "metric", "124.5 cm", "35.5 cm", "107.5 cm", "17 cm"),
    ],
)
def test_the_fairway_blind_by_hand(size: str, edition: str, cut: str, first: str, last: str, beyond: str) -> None:
    found = demo_room().worksheet("fairway-blind", size, edition)
    tucks = found.panels["blind"].across
    assert [tucks.cut, tucks.marks[0], tucks.marks[-1], tucks.cut - tucks.marks[-1]] == [
        read_length(length) for length in (cut, first, last, beyond)
    ]
    # Worked forwards: what is cut less hems and tucks is the drop.
    assert tucks.cut - tucks.take_up - tucks.left_allowance - tucks.right_allowance == found.laid_out.along
    assert found.pieces["blind"].cut_along - found.laid_out.across == read_length(
        "4 in" if edition == "inch" else "10 cm"
    )
    assert not [finding for finding in found.findings if finding.level == "error"]

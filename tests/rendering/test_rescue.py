from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from functools import cache

import pytest
from mooring_room import worksheets
from opened_pdf import page_count, whole_text
from room_setting import setting

from generator.calculation.panel.leeway import leeway_of
from generator.calculation.panel.tolerance import ALONG, check_points, corrections
from generator.calculation.worked import End
from generator.calculation.worked_checks import Checks, Others
from generator.rendering.rescue import panel_trouble, render_rescue, row_groups
from tests.room import demo_room

SMALL = worksheets("inch")[0]


@cache
def told() -> str:
    return whole_text(render_rescue(SMALL, setting(), "Letter"))


TROUBLES = (
    "Too narrow",
    "Too wide",
    "Too short",
    "Crooked",
    "A tuck left out",
    "A wrong turn in a row",
    "A fold caught in a seam",
)


def with_across(**changes: object):
    """The small size with other values in its tucks."""
    front = SMALL.pieces["front"]
    assert front.panel is not None
    across = replace(front.panel.across, **changes)
    leeway = leeway_of(across, SMALL.edition, others=front.panel.checks.leeway.others)
    panel = replace(front.panel, across=across, checks=replace(front.panel.checks, leeway=leeway))
    return replace(SMALL, pieces={**SMALL.pieces, "front": replace(front, panel=panel)})


def test_every_trouble_is_told() -> None:
    large = whole_text(render_rescue(SMALL, setting("large-print"), "A4"))
    for trouble in TROUBLES:
        assert trouble in told()
        assert trouble in large


def test_the_numbers_are_those_of_this_size() -> None:
    # 14 tucks of 3/8 in hide 3/4 in each; the margin is (12 - 13 x 3/4) / 2 = 1 1/8; the whole is 13 in.
    assert "Front: 14 tucks, 3/8 in deep" in told()
    assert "The panel is 3/4 in too wide at the next check point" in told()
    # Linked cells take turns tuck by tuck: with one left out every other one would be told the wrong way.
    assert "gives back" not in told()
    assert "in margins of 1 1/8 in" in told()
    assert "14 13 in 3/16 in nothing" in told()


def test_rows_that_are_sewn_alike_are_told_together() -> None:
    panel = SMALL.panels["front"]
    assert panel.rows is not None
    # Linked cells repeat after two rows, and all begin at the right.
    assert [(group.numbers, group.start) for group in row_groups(panel.rows)] == [("1, 3", "right"), ("2, 4", "right")]
    assert "Rows 1, 3, from the right: toward, away and so on" in told()


def test_corrections_are_those_of_the_middle_check_point() -> None:
    (checked,) = panel_trouble(SMALL, "front").checked
    assert {one.after for one in checked.corrections} == {12}
    assert "For example, off after tuck 12" in told()


def test_caught_hems_cannot_be_trimmed() -> None:
    caught = with_across(left=End("caught hem"), right=End("caught hem"))
    text = whole_text(render_rescue(caught, setting(), "A4"))
    assert "nothing can be trimmed" in text
    assert "Trim both sides" not in text
    assert "except the last one, towards the caught hem" in text


def test_a_ring_has_no_edge_tucks() -> None:
    text = whole_text(render_rescue(with_across(ring=True), setting(), "A4"))
    assert "closing seam" in text
    assert "edge tucks" not in text


def test_a_panel_without_rows_tells_nothing_of_rows() -> None:
    front = SMALL.pieces["front"]
    assert front.panel is not None
    plain = replace(SMALL, pieces={"front": replace(front, panel=replace(front.panel, rows=None))})
    text = whole_text(render_rescue(plain, setting(), "A4"))
    assert "wrong turn" not in text
    assert "unpick every row" not in text


def test_no_more_is_trimmed_than_leaves_the_edge_tucks_their_depth_and_the_seam() -> None:
    # Margins of 1 1/8 and seams of 1/2; a tuck 3/8 deep turned out needs 1/2 beside the seam, so 5/8 may go.
    assert "Trim both sides alike, by 5/8 in at most" in told()
    assert "the edge tucks need 1 in." in told()
    # A margin of 12 in is no reason to keep 12 in.
    wide = with_across(left_margin=Fraction(12), right_margin=Fraction(12))
    text = whole_text(render_rescue(wide, setting(), "Letter"))
    assert "by 11 1/2 in at most" in text
    assert "the edge tucks need 1 in." in text


@pytest.mark.parametrize(
    ("others", "told_then"),
    [("wait", "Or cut the other pieces to the panel."), ("cut", "Or trim what will be sewn to it."), ("none", "")],
)
def test_other_pieces_are_cut_to_the_panel_only_where_they_wait(others: Others, told_then: str) -> None:
    front = SMALL.pieces["front"]
    assert front.panel is not None
    leeway = replace(front.panel.checks.leeway, others=others)
    panel = replace(front.panel, checks=replace(front.panel.checks, leeway=leeway))
    text = whole_text(render_rescue(replace(SMALL, pieces={"front": replace(front, panel=panel)}), setting(), "A4"))
    assert told_then in text
    assert ("cut the other pieces" in text) == (others == "wait")


def test_a_blind_with_rods_leaves_its_hems_and_its_head_alone() -> None:
    sheet = demo_room().worksheets("fairway-blind")[0]
    text = whole_text(render_rescue(sheet, setting(), "Letter"))
    assert "Left and right, top and bottom, narrow and short: all as it lies on the table." in text
    assert "Both hems are sewn and the tucks stitched through them: leave it so." in text
    # Its top lies at the left.
    assert "Trim the right side, by" in text
    assert "Trim the left side" not in text
    assert "allowances" not in text


def test_cross_tucks_have_check_points_of_their_own() -> None:
    front = SMALL.pieces["front"]
    assert front.panel is not None
    cross = front.panel.across
    points = check_points(cross, SMALL.edition, words=ALONG)
    leeway = leeway_of(cross, SMALL.edition, sides=("top", "bottom"))
    told = tuple(one for point in points for one in corrections(cross, point, SMALL.edition))
    panel = replace(front.panel, rows=None, cross=cross, cross_checks=Checks(points, told, leeway))
    text = whole_text(render_rescue(replace(SMALL, pieces={"front": replace(front, panel=panel)}), setting(), "A4"))
    assert "Check points of the cross tucks" in text
    assert "From the top cut edge to the next mark; after the last tuck to the bottom cut edge." in text
    assert "too short" in text


@pytest.mark.parametrize("number", [1, 2])
def test_each_panel_has_a_page(number: int) -> None:
    front = SMALL.pieces["front"]
    panels = {f"front {place}": replace(front, label=f"front {place}") for place in range(number)}
    assert page_count(render_rescue(replace(SMALL, pieces=panels), setting(), "Letter")) == number

"""A panel that came out otherwise than planned: what each waiting piece is then cut, by its own way of following."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, put, sheet

from generator.calculation.worked_project import Worksheet

WAITING = """\
  base:
    kind: rectangle
    cut: after the panel
    finished across: front.across
    finished along: front.along
    edges: seam 1/2 in or 1.5 cm
  boxing:
    kind: boxing
    cut: after the panel
    edge: 2 * front.across + 2 * front.along
    depth: 2 in or 5 cm
    edges: seam 1/2 in or 1.5 cm
  pocket:
    kind: rectangle
    cut: after the panel
    finished across: 6 in or 15 cm
    finished along: 6 in or 15 cm
edges that meet:
"""
WIDE = ("width: 44 in or 112 cm", "width: 90 in or 230 cm")
BOXED = put(CUSHION, WIDE, ("edges that meet:\n", WAITING), ("steps:\n", "steps:\n  - use: cut later\n"))


def table_of(found: Worksheet, head: str) -> list[list[str]]:
    """The rows of the table whose first column is headed so, without its heads."""
    (text,) = (step.text for step in found.steps if step.standard == "cut later")
    lines = text[text.index(head) :].split("\n\n")[0].splitlines()
    return [[cell.strip() for cell in line.strip("| ").split("|")] for line in lines]


def test_a_base_grows_as_the_panel_does_and_a_boxing_by_twice_as_much(tmp_path: Path) -> None:
    # Planned 16: base 17 x 17; boxing 64 and two seams of 1/2: 65 x 3. At 16 1/8: 17 1/8, and 65 1/4.
    heads, _, *rows = table_of(sheet(tmp_path, BOXED, "medium"), "front from left to right (in)")
    assert heads == ["front from left to right (in)", "base: cut", "boxing: cut"]
    told = {row[0]: row[1:] for row in rows}
    assert told["**16**"] == ["**17 × 17**", "**65 × 3**"]
    assert told["16 1/8"] == ["17 1/8 × 17", "65 1/4 × 3"]
    assert told["15 1/2"] == ["16 1/2 × 17", "64 × 3"]
    assert [row[0] for row in rows][::4] == ["15 1/2", "**16**", "16 1/2"]


def test_a_panel_three_millimetres_wider_needs_a_boxing_six_longer(tmp_path: Path) -> None:
    # Planned 40: base 43 x 43, boxing 160 + 3 = 163; at 40.3 cm 43.3 and 163.6.
    _, _, *rows = table_of(sheet(tmp_path, BOXED, "medium", "metric"), "front from left to right (cm)")
    told = {row[0]: row[1:] for row in rows}
    assert (told["**40**"], told["40.3"]) == (["**43 × 43**", "**163 × 8**"], ["43.3 × 43", "163.6 × 8"])


def test_both_directions_have_a_table_and_what_follows_neither_has_no_column(tmp_path: Path) -> None:
    found = sheet(tmp_path, BOXED, "medium")
    heads, _, *rows = table_of(found, "front from top to bottom (in)")
    assert heads[1:] == ["base: cut", "boxing: cut"]
    assert ["16 1/4", "17 × 17 1/4", "65 1/2 × 3"] in rows


@pytest.mark.parametrize(("off", "at"), [("16 3/8", "16 3/8"), ("15 3/4", "15 3/4")])
def test_a_row_is_what_a_sheet_worked_to_that_measure_cuts(tmp_path: Path, off: str, at: str) -> None:
    """The second route: the same measure given as sewn."""
    _, _, *rows = table_of(sheet(tmp_path, BOXED, "medium"), "front from left to right (in)")
    (told,) = (row for row in rows if row[0] == at)
    again = sheet(tmp_path, BOXED, "medium", across=off).pieces
    across = [Fraction(again[name].cut_across) for name in ("base", "boxing")]
    assert [sum(Fraction(part) for part in cell.split(" × ")[0].split()) for cell in told[1:]] == across


def test_two_measures_that_are_off_are_added_up(tmp_path: Path) -> None:
    # Both 1/8 in more: 65 + 1/4 + 1/4, as a sheet worked to both says.
    found = sheet(tmp_path, BOXED, "medium")
    (text,) = (step.text for step in found.steps if step.standard == "cut later")
    assert "Are two measures off? Begin with the first table." in text
    more = []
    for side in ("from left to right", "from top to bottom"):
        _, _, *rows = table_of(found, f"front {side} (in)")
        told = {row[0].strip("*"): row[2].strip("*").split(" × ")[0] for row in rows}
        more.append(sum(Fraction(part) for part in told["16 1/8"].split()) - Fraction(told["16"]))
    both = sheet(tmp_path, BOXED, "medium", across="16 1/8", along="16 1/8")
    assert 65 + sum(more) == both.pieces["boxing"].cut_across


def test_pieces_that_follow_no_panel_are_told_to_be_asked_about(tmp_path: Path) -> None:
    alone = put(BOXED, (WAITING[: WAITING.index("  pocket")], ""))
    (text,) = (step.text for step in sheet(tmp_path, alone, "medium").steps if step.standard == "cut later")
    assert "These pieces do not follow it: ask before you cut them." in text
    assert "|" not in text


def test_measures_with_the_same_cuts_share_a_row(tmp_path: Path) -> None:
    # A base rounded up to whole inches: 15 1/2 to 16 give 16 and two seams of 1/2, what is wider 17 and these.
    stepped = put(
        BOXED,
        (
            "across: front.across\n    finished along: front",
            "across: round up(front.across, 1 in)\n    finished along: front",
        ),
    )
    alone = put(stepped, (WAITING[WAITING.index("  boxing") : WAITING.index("  pocket")], ""))
    _, _, *rows = table_of(sheet(tmp_path, alone, "medium"), "front from left to right (in)")
    assert rows == [["**15 1/2 to 16**", "**17 × 17**"], ["16 1/8 to 16 1/2", "18 × 17"]]

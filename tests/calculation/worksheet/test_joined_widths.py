"""Plain pieces wider than their cloth, and pleated strips, as a sheet cuts and joins them."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

from rooms_on_disk import put, sheet, warnings

from generator.calculation.pieces.cut import Cut
from generator.calculation.worked_piece import Lengths
from generator.calculation.worksheet.cut_order import cut_order
from generator.calculation.worksheet.lists import length_words
from generator.calculation.worksheet.threads import plain_stitching
from generator.lengths import INCH

CURTAINS = """\
title: Boathouse curtains
kind: curtain
summary: |
  A pair, wider than the cloth.
sizes:
  usual:
    drop: 90 in or 230 cm
cloths:
  face:
    label: cotton
    width: 45 in or 114 cm
pieces:
  curtain:
    kind: rectangle
    finished across: 110 in or 280 cm
    finished along: drop
    quantity: 2
    edges:
      all: raw
steps:
  - use: cut, join lengths
"""
ROUND = (
    "kind: rectangle\n    finished across: 110 in or 280 cm\n    finished along: drop",
    "kind: circle\n    diameter: 60 in or 150 cm",
)


def test_a_pair_of_curtains_shares_the_width_of_its_parts(tmp_path: Path) -> None:
    found = sheet(tmp_path, CURTAINS, "usual")
    curtain = found.pieces["curtain"]
    # 110 on 45 with 1/2 in seams: two wholes make 89, and the part is 22; 22 + 22 = 44 come from one width.
    assert curtain.cuts == (
        Cut(2, Fraction(45), Fraction(90), "whole width"),
        Cut(1, Fraction(22), Fraction(90), "part width"),
    )
    assert found.cloths["face"].layout.length == 5 * 90
    # Two joins over the whole drop.
    assert plain_stitching(curtain) == 2 * 90
    assert warnings(found) == []


def test_the_sheet_says_where_the_narrow_width_lies(tmp_path: Path) -> None:
    found = sheet(tmp_path, CURTAINS, "usual")
    [join] = [step for step in found.steps if step.standard == "join lengths"]
    assert (
        "The curtain is cut in 2 widths of 45 in and 1 of 22 in. Join them along their long edges, right sides "
        "together, with seams of 1/2 in, and press the seams open. The narrow one lies at the outer edge: where two "
        "hang side by side, at the left of the left one and at the right of the right one. It should then be 110 in "
        "wide."
    ) in join.text


def test_a_round_has_no_seam_through_its_middle(tmp_path: Path) -> None:
    curtain = sheet(tmp_path, put(CURTAINS, ROUND), "usual").pieces["curtain"]
    assert [(cut.number, cut.across, cut.name) for cut in curtain.cuts] == [
        (1, Fraction(17, 2), "left part width"),
        (1, Fraction(45), "whole width"),
        (1, Fraction(17, 2), "right part width"),
    ]
    assert "A narrow one lies at each side, so that no seam runs through the middle." in length_words(curtain, INCH)


def test_widths_that_are_joined_match_on_a_pattern(tmp_path: Path) -> None:
    text = put(CURTAINS, ("width: 45", "pattern repeat: 36 in or 90 cm\n    half drop: yes\n    width: 45"))
    found = sheet(tmp_path, text, "usual")
    layout = found.cloths["face"].layout
    # Each: first whole width and part at one place, second whole width half a repeat on. One strip holds both parts.
    # 90 is two repeats and a half, so from one sort to the other nothing is lost: three of one change with two.
    assert layout.length == 5 * 90
    [shared] = [strip for strip in layout.strips if len(strip.placed) == 2]
    # One begins at the left selvage and the other ends at the right one, so that both go on where they are joined.
    assert [(one.label, one.left, one.across) for one in shared.placed] == [
        ("curtain, part width", 0, 22),
        ("curtain, part width", 23, 22),
    ]
    assert "curtain, part width, 22 by 90 in, trimmed at the left to 22 in wide." in cut_order(
        found.cloths["face"], INCH
    )
    [join] = [step for step in found.steps if step.standard == "join lengths"]
    assert join.text.endswith(
        "Lay the edges so that the pattern goes on across the seam: a width that was cut half a repeat on lies between "
        "two that were not."
    )
    assert [strip.placed[0].label for strip in layout.strips if strip.placed[0].label.endswith("on")] == [
        "curtain, whole width, half a repeat on"
    ] * 2


def test_a_rectangle_that_may_be_turned_is_not_joined(tmp_path: Path) -> None:
    text = put(CURTAINS, ("quantity: 2", "grain: either"), ("drop: 90 in", "drop: 40 in"))
    assert sheet(tmp_path, text, "usual").pieces["curtain"].lengths is None


def test_a_pleated_strip_is_joined_at_its_inner_folds(tmp_path: Path) -> None:
    pleated = (
        "kind: rectangle\n    finished across: 110 in or 280 cm\n    finished along: drop\n    quantity: 2",
        "kind: pleated strip\n    edge: 40 in or 100 cm\n    pleats: 10\n    pleat depth: 1 in or 2.5 cm\n"
        "    drop: 6 in",
    )
    strip = sheet(tmp_path, put(CURTAINS, pleated), "usual").pieces["curtain"]
    # 40 + 2 x 10 = 60. Pleats every 6; a join of two allowances of 1/2.
    assert isinstance(strip.lengths, Lengths)
    first, (second,) = strip.lengths.across, strip.lengths.others
    assert first + second == 61
    join = first - Fraction(1, 2)
    assert join in {(fold + onto) / 2 for fold, onto in strip.made.pleats}
    assert abs(first - second) <= 6
    assert "in this order from the left" in length_words(strip, INCH)
    assert "Each seam lies at an inner fold of the pleats" in length_words(strip, INCH)

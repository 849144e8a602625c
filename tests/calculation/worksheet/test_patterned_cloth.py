"""Cloth with a pattern that repeats along it: breadths and copies match, what is bought is never short."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, put, sheet

from generator.calculation.worksheet.cut_order import cut_order, proof_words
from generator.calculation.worksheet.figures import figures
from generator.errors import FaultyFileError
from generator.lengths import INCH

CURTAINS = """\
title: Boathouse curtains
kind: curtain
summary: |
  Nine plain lengths.
sizes:
  usual:
    drop: 94 1/2 in or 240 cm
cloths:
  face:
    label: printed cotton
    width: 54 in or 137 cm
    pattern repeat: 27 in or 68 cm
pieces:
  curtain:
    kind: rectangle
    finished across: 50 in or 127 cm
    finished along: drop
    quantity: 9
    edges:
      all: raw
  tie:
    kind: rectangle
    finished across: 3 in or 8 cm
    finished along: 20 in or 50 cm
    edges:
      all: raw
steps:
  - use: cut
"""


def test_copies_begin_at_the_same_place_of_the_pattern(tmp_path: Path) -> None:
    use = sheet(tmp_path, CURTAINS, "usual").cloths["face"]
    # Eight times four repeats, one drop of 94 1/2, and below it what need not match.
    tops = [strip.top for strip in use.layout.strips]
    assert tops == [*(108 * number for number in range(9)), Fraction(1917, 2)]
    assert (use.layout.length, use.buy_text) == (Fraction(1957, 2), "27 1/4 yd")
    assert [strip.along for strip in use.layout.strips[7:]] == [108, Fraction(189, 2), 20]


def test_the_repeat_is_told_as_sold_and_shrinks_with_the_cloth(tmp_path: Path) -> None:
    text = put(CURTAINS, ("    pattern repeat", "    shrinkage: 4 %\n    pattern repeat"))
    use = sheet(tmp_path, text, "usual").cloths["face"]
    # 27 less 4 % are 25.92: four of them are 103.68. 8 x 103.68 + 94.5 + 20 + 1 = 944.94, / 0.96 = 984.3125 in.
    assert use.layout.strips[8].top == 8 * Fraction(10368, 100)
    assert use.buy == Fraction(9, 2) * 219
    assert use.left_over >= 0


def test_a_half_drop_takes_every_other_breadth_half_a_repeat_further_on(tmp_path: Path) -> None:
    front = (
        "label: cotton\n    width: 44 in",
        "label: cotton\n    pattern repeat: 8 in or 20 cm\n    half drop: yes\n    width: 24 in",
    )
    use = sheet(tmp_path, put(CUSHION, front), "medium").cloths["face"]
    # The front, 32 x 18 1/4, is joined from two breadths; 18 1/4 is between 16 and 20, which is two repeats and a half.
    drops = [strip for strip in use.layout.strips if strip.placed[0].piece == "front"]
    assert [strip.top for strip in drops] == [0, 20]
    assert [strip.placed[0].label for strip in drops] == [
        "front, breadth 1",
        "front, breadth 2, half a repeat on",
    ]
    assert drops[1].bottom == 20 + Fraction(73, 4)
    order = cut_order(use, INCH).splitlines()
    assert order[1] == (
        "- The pattern repeats every 8 in along the cloth. These strips follow it: strip 1 and strip 2. All strips of "
        "one piece begin at the same place of the pattern, or just half a repeat further on where it says so. Look "
        "before you cut: where pattern and ruler do not agree, cut by the pattern and measure on from there."
    )


def test_what_is_proven_is_said_with_what_it_leaves_out(tmp_path: Path) -> None:
    use = sheet(tmp_path, CURTAINS, "usual").cloths["face"]
    assert proof_words(use, INCH) == (
        "No layout cut across, down and across, with what must match in strips of its own and no strip higher than 60 "
        "in or the longest piece, is shorter."
    )
    assert "strips 1 to 8 and strip 9" in cut_order(use, INCH)


def test_the_figures_have_the_repeat_as_it_is_when_washed(tmp_path: Path) -> None:
    told = figures(sheet(tmp_path, CURTAINS, "usual"))["cloth"]["face"]
    assert told["pattern_repeat"] == "27"
    plain = figures(sheet(tmp_path, put(CURTAINS, ("    pattern repeat: 27 in or 68 cm\n", "")), "usual"))
    assert plain["cloth"]["face"]["pattern_repeat"] == ""


def test_one_piece_alone_matches_nothing(tmp_path: Path) -> None:
    text = put(CURTAINS, ("quantity: 9", "quantity: 1"))
    use = sheet(tmp_path, text, "usual").cloths["face"]
    assert use.pattern is None
    assert "pattern" not in cut_order(use, INCH)


@pytest.mark.parametrize(
    ("cloth", "told"),
    [
        (
            "    pattern repeat: 1 in - 3 in\n",
            "projects/jetty.yaml:12:21: 'pattern repeat' comes to -2 in; measure along the cloth from one place of the "
            "pattern to the next like it (size usual, inch)",
        ),
        (
            "    half drop: yes\n",
            "projects/jetty.yaml:12:5: a half drop is half of a 'pattern repeat'; write how far the pattern repeats "
            "along the cloth too",
        ),
    ],
)
def test_a_repeat_that_cannot_be_is_refused(tmp_path: Path, cloth: str, told: str) -> None:
    with pytest.raises(FaultyFileError) as refusal:
        sheet(tmp_path, put(CURTAINS, ("    pattern repeat: 27 in or 68 cm\n", cloth)), "usual")
    assert told in [str(finding) for finding in refusal.value.findings]

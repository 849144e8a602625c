"""Cloth as it is bought: room to straighten its ends, shrinkage both ways, the width to ask for.

The medium cushion: front 32 x 18 1/4, halves 12 1/2 x 17; on 44 in 18 1/4 + 17 = 35 1/4 in, at least 32 in wide.
"""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, put, sheet

from generator.errors import FaultyFileError


@pytest.mark.parametrize(
    ("site", "cloth", "kept", "buy"),
    [
        ("", "", "1", "1 1/8 yd"),  # 36 1/4: the ninth eighth
        ("straighten: 3/4 in\n", "", "3/4", "1 yd"),  # 36 exactly
        ("straighten: 6 in or 15 cm\n", "", "6", "1 1/4 yd"),  # 41 1/4: the tenth eighth
        ("straighten: 6 in or 15 cm\n", "    straighten: 0 in\n", "0", "1 yd"),
        ("", "    straighten: side / 8\n", "2", "1 1/8 yd"),  # side 16: 37 1/4
    ],
)
def test_what_straightening_takes_is_bought_too(tmp_path: Path, site: str, cloth: str, kept: str, buy: str) -> None:
    text = put(CUSHION, ("    label: cotton\n", f"    label: cotton\n{cloth}"))
    use = sheet(tmp_path, text, "medium", site=site).cloths["face"]
    assert (use.buying.straighten, use.buy_text, use.layout.length) == (Fraction(kept), buy, Fraction(141, 4))
    assert use.left_over == use.buy - use.layout.length - use.buying.straighten >= 0


def test_less_than_nothing_cannot_be_kept(tmp_path: Path) -> None:
    text = put(CUSHION, ("    label: cotton\n", "    label: cotton\n    straighten: 1 in - 2 in\n"))
    with pytest.raises(FaultyFileError) as refusal:
        sheet(tmp_path, text, "medium")
    assert [str(finding) for finding in refusal.value.findings if finding.level == "error"] == [
        "projects/jetty.yaml:16:17: 'straighten' comes to -1 in; write what straightening takes off, 0 or more "
        "(size medium, inch)"
    ]


def test_the_room_is_told_where_it_keeps_less_than_nothing(tmp_path: Path) -> None:
    with pytest.raises(FaultyFileError, match=r"site/site\.yaml:\d+:13: 'straighten' comes to -1 in"):
        sheet(tmp_path, CUSHION, "medium", site="straighten: -1 in\n")


def test_shrinkage_acts_both_ways(tmp_path: Path) -> None:
    text = put(CUSHION, ("label: cotton", "label: cotton\n    shrinkage: 3 %\n    shrinkage across: 2 %"))
    use = sheet(tmp_path, text, "medium").cloths["face"]
    # 44 x 0.98 = 43.12. (35 1/4 + 1) / 0.97 = 37.37, so 40 1/2. 40 1/2 x 0.97 = 39.285: 3.035 left over.
    assert use.layout.width == Fraction(4312, 100)
    assert (use.buy, use.left_over) == (Fraction(81, 2), Fraction(3035, 1000))
    # 39.285 less 1 hold 38.285: fronts and halves still lie below each other. 32 / 0.98 = 32.65: ask for 32 3/4.
    assert use.narrowest == Fraction(131, 4)


def test_no_wider_cloth_is_asked_for_than_there_is(tmp_path: Path) -> None:
    # The front is as wide as the washed cloth: 32 of 32.65; up to quarters it would be 32 3/4.
    narrow = ("44 in or 112 cm", "32.66 in or 112 cm")
    text = put(CUSHION, narrow, ("label: cotton", "label: cotton\n    shrinkage across: 2 %"))
    use = sheet(tmp_path, text, "medium").cloths["face"]
    assert use.narrowest == Fraction(3266, 100)

"""The card beside the machine: what is said of each weight of cloth, as its table has it."""

from __future__ import annotations

import pytest

from generator.calculation.making.needles import NEEDLES, needle_words, stitch_words


@pytest.mark.parametrize(
    ("weight", "needles", "stitches"),
    [
        # 25.4 mm in an inch: 12.7 stitches of 2 mm, 10.16 of 2.5 mm, 8.47 of 3 mm.
        ("sheer", "60 or 70", "2 mm, about 13 to the inch"),
        ("light", "70 or 80", "2 to 2.5 mm, 10 to 13 to the inch"),
        ("medium", "80 or 90", "2.5 mm, about 10 to the inch"),
        ("heavy", "90 or 100", "3 mm, about 8 to the inch"),
    ],
)
def test_each_weight_has_its_needles_and_stitches(weight: str, needles: str, stitches: str) -> None:
    (choice,) = [one for one in NEEDLES if one.weight == weight]
    assert (needle_words(choice), stitch_words(choice)) == (needles, stitches)
    assert choice.shortest <= choice.longest

"""A striped cloth sets the spacing, and a sewn sample sets take-up and draw-in, all the way to the sheet."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

from rooms_on_disk import CUSHION, put, sheet

STRIPED = put(
    put(CUSHION, ("label: cotton", "label: cotton\n    repeat: 1 in or 2.5 cm\n    fold on: dark")),
    ("spacing: 1 1/2 in or 4 cm", "spacing: 1 3/4 in or 4.4 cm"),
)
SAMPLED = put(
    CUSHION,
    (
        "    rows:\n      plan: linked cells",
        "    sample:\n      tucks: 10\n      depth: 3/8 in\n      flat: 17 in\n      finished: 9 in\n"
        "      rows before: 3 in\n      rows after: 2 7/8 in\n    rows:\n      plan: linked cells",
    ),
)


def step(worksheet, standard: str) -> str:
    return next(one.text for one in worksheet.steps if one.standard == standard)


def test_folds_of_a_striped_cloth_lie_whole_repeats_apart(tmp_path: Path) -> None:
    # Repeat 1 in, wish 1 3/4: 2 is nearer than 1.
    panel = sheet(tmp_path, STRIPED, "medium").pieces["front"].panel
    assert panel is not None
    assert set(panel.across.spacings) == {Fraction(2)}


def test_the_sheet_names_the_stripe_that_the_folds_lie_on(tmp_path: Path) -> None:
    text = put(STRIPED, ("  - use: cut\n", "  - use: cut, mark folds\n"))
    assert "the first mark falls on the dark stripe" in step(sheet(tmp_path, text, "medium"), "mark folds")


def test_a_sample_sets_the_take_up_of_every_tuck(tmp_path: Path) -> None:
    # (17 - 9) / 10 = 4/5 in a tuck, 1/20 in more than twice 3/8.
    panel = sheet(tmp_path, SAMPLED, "medium").pieces["front"].panel
    assert panel is not None
    assert set(panel.across.take_ups) == {Fraction(4, 5)}
    assert panel.across.cut == panel.across.finished + 1 + panel.across.count * Fraction(4, 5)


def test_the_sheet_says_what_the_sample_changed(tmp_path: Path) -> None:
    # 20 tucks of 16 in: 20 x 1/20 = 1 in more.
    text = put(SAMPLED, ("  - use: cut\n", "  - use: cut, stitch tucks\n"))
    said = step(sheet(tmp_path, text, "medium"), "stitch tucks")
    assert "On it the 20 tucks take up 1 in more than twice their depth." in said


def test_a_sample_sets_the_draw_in_of_every_interval(tmp_path: Path) -> None:
    # An interval of 3 in came out 2 7/8: 1/8 lost in each of the intervals between the rows.
    rows = sheet(tmp_path, SAMPLED, "medium").pieces["front"].panel.rows
    assert rows is not None
    assert rows.draw_in_most == (len(rows.rows) - 1) * Fraction(1, 8)

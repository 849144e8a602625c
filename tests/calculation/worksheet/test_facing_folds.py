"""What lies between the folds of facing tucks: told once where it is alike, pair by pair where depths differ."""

from __future__ import annotations

from pathlib import Path

from rooms_on_disk import CUSHION, put, sheet

from generator.calculation.worked_project import Worksheet

# Eight equal tucks, then five that grow; the right half mirrors them. All stand 2 in apart on the finished panel.
GROWING = put(
    CUSHION,
    ("side: 16 in or 40 cm", "side: 54 in or 135 cm"),
    (
        "      depth: 3/8 in or 1 cm\n      spacing: 1 1/2 in or 4 cm\n      margin: 3/4 in to 1 1/2 in",
        "      runs:\n"
        "        - number: 8\n          depth: 1/2 in or 1.2 cm\n          pitch: 2 in or 5 cm\n"
        "        - number: 5\n          depth: 1/2 in to 1 in or 1.2 cm to 2.4 cm\n          pitch: 2 in or 5 cm\n"
        "      mirror: yes\n      middle pitch: 2 in or 5 cm\n      margin: 1 in to 4 in",
    ),
    ("or 2 cm to 3 cm", "or 2 cm to 9 cm"),
    ("plan: linked cells", "plan: bands\n      group: 2"),
    ("spacing: 3 in or 7.5 cm\n      first: 1 in to 3 in", "spacing: 6 in or 15 cm\n      first: 1 in to 6 in"),
    ("or 3 cm to 7 cm", "or 3 cm to 15 cm"),
)


def told_while_turning(found: Worksheet) -> str:
    return next(step.text for step in found.steps if step.standard == "sew rows")


def test_folds_that_leave_different_gaps_are_told_pair_by_pair(tmp_path: Path) -> None:
    # Depths from the left: 1/2 eight times, 1/2, 5/8, 3/4, 7/8, 1, and back. In bands of two, tuck 2 faces 3, 4 faces 5
    # and so on. 2 - 1/2 - 1/2 = 1; 2 - 5/8 - 3/4 = 5/8; 2 - 7/8 - 1 = 1/8; the pairs on the right mirror them.
    said = told_while_turning(sheet(tmp_path, GROWING, "medium"))
    assert "alike" not in said
    lines = [line for line in said.splitlines() if line.startswith("- Tucks")]
    assert lines == [
        "- Tucks 2 and 3, 4 and 5, 6 and 7, 8 and 9, 18 and 19, 20 and 21, 22 and 23, 24 and 25: "
        "the folds leave a gap of 1 in.",
        "- Tucks 10 and 11, 16 and 17: the folds leave a gap of 5/8 in.",
        "- Tucks 12 and 13, 14 and 15: the folds leave a gap of 1/8 in.",
    ]


def test_folds_that_all_do_the_same_are_told_once(tmp_path: Path) -> None:
    # 1 1/2 apart less twice 3/8 is a pitch of 3/4, which two depths of 3/8 just fill.
    said = told_while_turning(sheet(tmp_path, CUSHION, "medium"))
    assert "should be alike all along the row. In each facing pair the folds meet." in said
    assert "- Tucks" not in said


def test_gaps_that_differ_by_one_mark_of_the_ruler_are_alike(tmp_path: Path) -> None:
    # Marks 1 13/16 in and 1 7/8 in apart in turn: what lies between the folds differs by 1/16 in and looks alike.
    text = put(CUSHION, ("spacing: 1 1/2 in or 4 cm", "spacing: 59/32 in or 4.15 cm\n      gives: margin"))
    panel = sheet(tmp_path, text, "medium").pieces["front"].panel
    assert panel is not None
    assert len(set(panel.across.spacings)) > 1
    assert "should be alike" in told_while_turning(sheet(tmp_path, text, "medium"))

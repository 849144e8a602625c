"""What a roll, a joined strip, tucks that cross and a trimmed panel come to on a worksheet, each worked by hand."""

from __future__ import annotations

from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, faults, inches, put, sheet, warnings

ROLL = put(
    CUSHION,
    (
        "edges that meet:\n  - join: front.all\n    to: back.all\n",
        "edges that meet:\n  - join: front.top\n    to: end.rim\n",
    ),
    ("  back:\n", "  end:\n    kind: circle\n    diameter: 5 in or 13 cm\n    quantity: 2\n  back:\n"),
)
ACROSS = "    cross tucks:\n      depth: 1/4 in or 6 mm\n      spacing: 2 in or 5 cm\n"
CROSSED = put(
    CUSHION,
    ("    rows:\n      plan: linked cells\n      spacing: 3 in or 7.5 cm\n", ACROSS),
    ("      first: 1 in to 3 in or 3 cm to 7 cm\n      start: right\n", ""),
    ("  - use: rule rows, sew rows, trim\n    on: front\n    session ends: yes\n", ""),
)


def binding(length: str) -> str:
    rim = f"  rim:\n    kind: binding\n    length: {length}\n    width: 1/2 in or 1.2 cm\n"
    return put(CUSHION, ("edges that meet:", f"{rim}edges that meet:"))


def test_a_panel_that_does_not_go_round_its_end_is_told_both_remedies(tmp_path: Path) -> None:
    # 3.14159 x 5 = 15.708, to 1/8 in 15 3/4; the panel is 12 in: 3 3/4 apart. 12 / 3.14159 = 3.82, 3 13/16 in.
    assert (
        "'front.top' is 12 in and 'end.rim' is 15 3/4 in: 3 3/4 in apart; an end 5 in across is 15 3/4 in round: make "
        "what goes round it as long, or the end 3 13/16 in across, or say 'ease' if that much is eased in"
    ) in faults(tmp_path, ROLL, "small")[0]


def test_a_binding_is_joined_with_slanting_seams_that_take_its_width(tmp_path: Path) -> None:
    # 100 in bound, ends of 1/2 in: 101 in of strip 2 in wide. Three lengths lose 2 x 2 in: (101 + 4) / 3 = 35 in;
    # two would be (101 + 2) / 2 = 51 1/2 in, and the cloth is 44 in wide.
    rim = sheet(tmp_path, binding("100 in or 250 cm"), "medium").pieces["rim"]
    assert (rim.parts, rim.part_across, rim.part_along, rim.diagonal) == (3, *inches("35, 2"), True)


def test_a_boxing_is_joined_with_straight_seams_that_take_both_allowances(tmp_path: Path) -> None:
    # 100 in round and two seams of 1/2 in: 101. Three lengths lose 2 x 1 in: 103 / 3 = 34 1/3, up to 34 3/8 in.
    box = "  band:\n    kind: boxing\n    edge: 100 in or 250 cm\n    depth: 3 in or 8 cm\n"
    band = sheet(tmp_path, put(CUSHION, ("edges that meet:", f"{box}edges that meet:")), "medium").pieces["band"]
    assert (band.parts, band.part_across, band.diagonal) == (3, inches("34 3/8")[0], False)


def test_cross_tucks_are_warned_of_with_what_the_needle_meets(tmp_path: Path) -> None:
    # Flat tucks lie three deep. A cross tuck is stitched through two plies of that, 6; crossing flat tucks are 3 x 3.
    told = warnings(sheet(tmp_path, CROSSED, "medium"))
    assert any(
        "the cross tucks are stitched through up to 6 layers of cloth, and where both sets lie flat there are 9; use a "
        "longer stitch and a stronger needle, turn the wheel by hand over each tuck, and press the first set flat "
        "before" in text
        for text in told
    )


def test_a_room_that_sews_more_layers_hears_nothing_of_them(tmp_path: Path) -> None:
    site = "layers:\n  warn over: 6\n  refuse over: 9\n"
    assert not any("cross tucks" in text for text in warnings(sheet(tmp_path, CROSSED, "medium", site=site)))


def test_cross_tucks_over_tucks_that_lie_two_deep_are_refused(tmp_path: Path) -> None:
    # Tucks 3/8 in deep every 1 in finish 1/4 in apart: two lie over each point, five layers, ten under the needle.
    close = put(CROSSED, ("spacing: 1 1/2 in or 4 cm", "spacing: 1 in or 2.6 cm"))
    assert any(
        "the stitching of the cross tucks goes through 10 layers of cloth and the most is 9; give the tucks a wider "
        "spacing" in text
        for text in faults(tmp_path, close, "medium")
    )


@pytest.mark.parametrize(("limit", "warned"), [(2, True), (3, False)])
def test_the_room_says_from_how_many_layers_a_row_is_warned_of(tmp_path: Path, limit: int, warned: bool) -> None:
    # Facing pairs whose folds meet: three layers at a row, and a seam at the edge adds its partner: four.
    site = f"layers:\n  warn over: {limit + 1}\n  refuse over: 9\n"
    told = warnings(sheet(tmp_path, CUSHION, "medium", site=site))
    assert any("there are up to 4 layers of cloth under the needle" in text for text in told) is warned


def test_the_step_of_trimming_says_how_much_falls_off(tmp_path: Path) -> None:
    panel = sheet(tmp_path, CUSHION, "medium")
    step = next(step for step in panel.steps if step.title.startswith("Trim"))
    rows = panel.pieces["front"].panel.rows
    assert rows is not None
    # 16 in and two seams of 1/2 in stay; of the extra, what did not draw in falls off, half at either end.
    assert "Trim the panel to 17 in, the same at the top and at the bottom: " in step.text
    assert rows.extra - rows.draw_in_least > 0

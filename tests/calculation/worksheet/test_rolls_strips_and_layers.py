"""What a roll, a joined strip, tucks that cross and a trimmed panel come to on a worksheet, each worked by hand."""

from __future__ import annotations

from pathlib import Path

import pytest
from rooms_on_disk import AS_USUAL, CUSHION, WRAP, faults, inches, put, sheet, warnings

from generator.calculation.worked_piece import Lengths

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
        "what goes round it as long, or the end 3 13/16 in across, or name the longer one first under 'join'"
    ) in faults(tmp_path, ROLL, "small")[0]


def tube(around: str, diameter: str) -> str:
    """A tube as long as told where it goes round an end."""
    pieces = (
        f"  tube:\n    kind: rectangle\n    finished across: {around}\n    finished along: 9 in or 23 cm\n"
        f"  end:\n    kind: circle\n    diameter: {diameter}\n"
    )
    return put(CUSHION, ("edges that meet:\n", f"{pieces}edges that meet:\n  - join: tube.top\n    to: end.rim\n"))


@pytest.mark.parametrize(
    ("around", "diameter"),
    [
        # The rim of 20 cm is 62.83 cm; to whole steps of 3 mm it is 62.7, which is more than a mark away.
        ("around(8 in) or around(20 cm)", "8 in or 20 cm"),
        # 50.5 / 3.14159 = 16.07, to a mark 16.1 cm: the end that is asked for where a tube is 50.5 cm long.
        ("20 in or 50.5 cm", "6 3/8 in or 16.1 cm"),
    ],
)
def test_what_goes_round_an_end_fits_the_end_that_the_remedy_asks_for(
    tmp_path: Path, around: str, diameter: str
) -> None:
    for edition in ("inch", "metric"):
        found = sheet(tmp_path, tube(around, diameter), "medium", edition)
        assert [told for told in warnings(found) if "raw cloth will show" not in told] == []
        meeting = found.meetings[-1] if found.meetings[-1].to == "end.rim" else found.meetings[0]
        assert meeting.join_length == meeting.to_length


def test_an_end_a_mark_too_large_is_still_told(tmp_path: Path) -> None:
    # 3.14159 x 6 7/16 = 20.22, to 1/8 in 20 1/4.
    told = faults(tmp_path, tube("20 in or 50.5 cm", "6 7/16 in or 16.2 cm"), "medium")
    assert "'tube.top' is 20 in and 'end.rim' is 20 1/4 in" in told[0]
    assert "or the end 6 3/8 in across" in told[0]


@pytest.mark.parametrize(
    "keys", ["boxing\n    edge: 100 in\n    depth: 3 in", "strip\n    length: 100 in\n    width: 3 in"]
)
def test_the_join_of_a_strip_can_be_given(tmp_path: Path, keys: str) -> None:
    # 101 in of strip; two joins of 1/4 lose 1 in in all: 102 / 3 = 34 in each.
    text = put(
        CUSHION,
        ("edges that meet:", f"  band:\n    kind: {keys}\n    join allowance: 1/4 in or 6 mm\nedges that meet:"),
    )
    band = sheet(tmp_path, text, "medium").pieces["band"]
    assert band.lengths == Lengths(3, *inches("34, 4, 1/4"), slanting=False)


def test_a_binding_is_joined_with_slanting_seams_that_take_its_width(tmp_path: Path) -> None:
    # 100 in bound, ends of 1/2 in: 101 in of strip 2 1/8 in wide. Three lengths lose 2 x 2 1/8 in:
    # (101 + 4 1/4) / 3 = 35 1/12, up to 35 1/8 in; two would be (101 + 2 1/8) / 2 = 51 9/16 in of cloth 44 in wide.
    rim = sheet(tmp_path, binding("100 in or 250 cm"), "medium").pieces["rim"]
    assert rim.lengths == Lengths(3, *inches("35 1/8, 2 1/8, 1/4"), slanting=True)


def test_a_boxing_is_joined_with_straight_seams_that_take_both_allowances(tmp_path: Path) -> None:
    # 100 in round and two seams of 1/2 in: 101. Three lengths lose 2 x 1 in: 103 / 3 = 34 1/3, up to 34 3/8 in.
    box = "  band:\n    kind: boxing\n    edge: 100 in or 250 cm\n    depth: 3 in or 8 cm\n"
    band = sheet(tmp_path, put(CUSHION, ("edges that meet:", f"{box}edges that meet:")), "medium").pieces["band"]
    assert band.lengths == Lengths(3, *inches("34 3/8, 4, 1/2"), slanting=False)


def test_cross_tucks_are_warned_of_with_what_the_needle_meets(tmp_path: Path) -> None:
    # Flat tucks lie three deep. A cross tuck is stitched through two plies of that, 6; crossing flat tucks are 3 x 3.
    told = warnings(sheet(tmp_path, CROSSED, "medium", site=AS_USUAL))
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


def test_the_step_of_trimming_says_how_much_falls_off(tmp_path: Path) -> None:
    panel = sheet(tmp_path, CUSHION, "medium")
    step = next(step for step in panel.steps if step.title.startswith("Trim"))
    rows = panel.pieces["front"].panel.rows
    assert rows is not None
    # 16 in and two seams of 1/2 in stay; of the extra, what did not draw in falls off, half at either end.
    assert "Trim the panel to 17 in, the same at the top and at the bottom: " in step.text
    assert rows.extra - rows.draw_in_least > 0


def pleats(style: str, number: int, depth: str, ends: str = "hem 1/4 in or 6 mm") -> str:
    lines = (
        f"  skirt:\n    kind: pleated strip\n    edge: 10 in or 25 cm\n    pleats: {number}\n    pleat depth: {depth}\n"
        f"    drop: 6 in or 15 cm\n    style: {style}\n    edges:\n      left: {ends}\n      right: {ends}\n"
    )
    step = ("  - title: Close the cover\n", "  - use: pleat\n    on: skirt\n  - title: Close the cover\n")
    return put(CUSHION, ("edges that meet:", f"{lines}edges that meet:"), step)


@pytest.mark.parametrize(
    ("style", "ends", "folds"),
    [
        # 2 pleats 1 in deep on 10 in stand 5 in apart. Knife: folds in the middle of their shares, 2 1/2 and 7 1/2; the
        # first crease lies at 2 1/2 and is laid 2 in on, the second at 7 1/2 + 2 = 9 1/2 because of the 2 in used up.
        ("knife", "hem 1/4 in or 6 mm", "from the left hemmed edge): 1: 2 1/2 on 4 1/2 · 2: 9 1/2 on 11 1/2"),
        # Inverted: both folds meet in the middle of the share. 2 1/2 is laid on 4 1/2, and 6 1/2 comes back to it; the
        # next pleat begins 4 in later.
        (
            "inverted",
            "seam 1/2 in or 1.5 cm",
            "from the left cut edge): 1: 3 on 5 · 2: 7 on 5 · 3: 12 on 14 · 4: 16 on 14",
        ),
        # Box: the folds finish 1 in to either side of the middle and turn away from each other. The left one goes back:
        # 1 1/2 + 2 is laid on 1 1/2; the right one forward, 3 1/2 + 2 on 5 1/2 + 2.
        (
            "box",
            "hem 1/4 in or 6 mm",
            "from the left hemmed edge): 1: 3 1/2 on 1 1/2 · 2: 5 1/2 on 7 1/2 · 3: 12 1/2 on 10 1/2 · 4: 14 1/2 on "
            "16 1/2",
        ),
    ],
)
def test_the_folds_of_pleats_are_listed_for_their_style(tmp_path: Path, style: str, ends: str, folds: str) -> None:
    steps = sheet(tmp_path, pleats(style, 2, "1 in or 2.5 cm", ends), "medium").steps
    assert folds in next(step.text for step in steps if step.title.startswith("Fold the pleats"))


def test_pleats_caught_in_the_ends_of_their_strip_are_warned_of(tmp_path: Path) -> None:
    # One inverted pleat 6 in deep on 10 in reaches from -1 to 11; its two folds lie over each other in the middle:
    # 1 + 2 x ceil(2 x 6 / 10) = 5 layers, and the edge that it is sewn to is the sixth.
    told = " ".join(warnings(sheet(tmp_path, pleats("inverted", 1, "6 in or 15 cm"), "medium", site=AS_USUAL)))
    assert "the outermost pleats reach 1 in past the ends of the strip and are caught there; make them" in told
    assert "the seam of the pleats goes through up to 6 layers of cloth; make them shallower or fewer" in told


def test_pleats_too_thick_for_the_room_are_refused(tmp_path: Path) -> None:
    # Ten knife pleats 5 in deep on 10 in: 1 + 2 x 5 = 11 layers and the edge, 12.
    assert any(
        "the seam of the pleats goes through 12 layers of cloth and the most is 9" in text
        for text in faults(tmp_path, pleats("knife", 10, "5 in or 12.5 cm"), "medium")
    )


def test_the_margin_beside_buttonholes_has_room_for_the_tuck_that_turns_out_over_it(tmp_path: Path) -> None:
    # Buttons 7/8 by 1/8 in: 21/16 + 2/16 + 6/16 = 1 13/16, and ripples turn the tuck beside it out: 3/8 more, 2 3/16.
    narrow = put(WRAP, ("left margin: 2 1/4 in", "left margin: 2 in"))
    assert any("make that margin 2 3/16 in or more" in text for text in warnings(sheet(tmp_path, narrow, "neck")))
    assert not any("make that margin" in text for text in warnings(sheet(tmp_path, WRAP, "neck")))

"""What a worksheet refuses or warns of: each message whole, at its line of the file."""

from __future__ import annotations

from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, WRAP, faults, put, sheet, warnings

CROSS = "    cross tucks:\n      depth: 1/4 in or 6 mm\n      spacing: 2 in or 5 cm\n    rows:\n"
NOTHING = "side / ((side - side) / 1 in)"


def line_of(text: str, part: str) -> int:
    """The line on which a part of a text stands, so that a case does not count lines by hand."""
    assert text.count(part) == 1, f"{part!r} stands {text.count(part)} times"
    return text[: text.index(part)].count("\n") + 1


def at(text: str, part: str, column: int) -> str:
    return f"projects/jetty.yaml:{line_of(text, part)}:{column}:"


@pytest.mark.parametrize(
    ("change", "where", "column", "says"),
    [
        pytest.param(
            ("finished across: front.across", "finished across: side - 1 in or side - 2 cm"),
            "join: front.all",
            5,
            "'front.all' is 64 in and 'back.all' is 62 in: 2 in apart; make them equal, or write 'ease: 2 in' if that "
            "much is eased in",
            id="edges that meet are unequal",
        ),
        pytest.param(
            ("finished across: side\n", "finished across: back.across\n"),
            "finished across: front.across",
            22,
            "'front' is worked out from itself: front -> back -> front",
            id="two pieces ask for each other",
        ),
        pytest.param(
            ("    rows:\n", CROSS),
            "margin: 3/4",
            15,
            "'front' has rows and cross tucks; cross tucks hold the first set down by themselves: take one out",
            id="rows and cross tucks",
        ),
        pytest.param(
            ("width: 44 in", "width: 10 in"),
            "label: cotton",
            5,
            "back is 12 1/2 in across, but the cloth is only 10 in wide; take a wider cloth, or "
            "write it as two pieces that meet in a seam",
            id="the cloth is too narrow for a plain piece",
        ),
        pytest.param(
            ("3/4 in to 1 1/2 in", "3/4 in to 13/16 in"),
            "margin: 3/4",
            15,
            # 20 tucks: 19 x 3/4 + 2 x 13/16 = 15 7/8 at most; 21: 20 x 3/4 + 2 x 3/4 = 16 1/2 at least.
            "no number of tucks fits 16 in: nearest are 20 tucks with margins of 7/8 in and 21 tucks with margins of "
            "1/2 in; the margins may be 3/4 in to 13/16 in. Finished sizes that would fit: 15 7/8 in (20 tucks) and "
            "16 1/2 in (21 tucks)",
            id="no number of tucks fits",
        ),
        pytest.param(
            ("spacing: 3 in", "spacing: 1 in"),
            "spacing: 1 in",
            16,
            "rows 1 in apart are too close for tucks 3/8 in deep: at least 1 3/16 in is needed and 2 1/4 in is better; "
            "rule the rows further apart, or make the tucks shallower, or give the draw-in of a sewn sample",
            id="rows too close",
        ),
        pytest.param(
            ("lap: larger(side / 4, 3 in)", f"lap: {NOTHING}"),
            "lap: side",
            8,
            "something is divided by a value that comes to nothing",
            id="a measure divides by nothing",
        ),
        pytest.param(
            ("  lap:", f"  spare: {NOTHING}\n  lap:"),
            "spare: side",
            10,
            "something is divided by a value that comes to nothing",
            id="a measure that nothing uses divides by nothing",
        ),
        pytest.param(
            ("{{ lap }}", f"{{{{ {NOTHING} }}}}"),
            "title: Close",
            5,
            "something is divided by a value that comes to nothing",
            id="a placeholder in a step divides by nothing",
        ),
        pytest.param(
            ("each way\n", "each way\n    quantity: side / (side - side)\n"),
            "quantity: side",
            15,
            "something is divided by a value that comes to nothing",
            id="the quantity of a supply divides by nothing",
        ),
        pytest.param(
            ("    overlap: lap", "    quantity: side / 3 in\n    overlap: lap"),
            "kind: envelope",
            5,
            "'side / 3 in' comes to 16/3; a whole number is needed",
            id="five and a third backs",
        ),
        pytest.param(
            ("    overlap: lap", "    quantity: 0 - 1\n    overlap: lap"),
            "kind: envelope",
            5,
            "'0 - 1' comes to -1; a whole number is needed",
            id="one back less than none",
        ),
        pytest.param(
            ("overlap: lap", "overlap: side"),
            "kind: envelope",
            5,
            "the overlap of an envelope back is as wide as the cover; make it less, a quarter will do",
            id="an overlap as wide as the cover",
        ),
    ],
)
def test_a_cushion_that_cannot_be_sewn_is_refused(
    tmp_path: Path, change: tuple[str, str], where: str, column: int, says: str
) -> None:
    text = put(CUSHION, change)
    assert faults(tmp_path, text, "medium") == [f"{at(text, where, column)} {says} (size medium, inch)"]


@pytest.mark.parametrize(
    ("plan", "number", "says"),
    [
        (
            "bands",
            "odd",
            "the number of tucks for the plan 'Bands' must be an even number; the file asks for an odd number",
        ),
        (
            "diamonds",
            "18",
            "the number of tucks for the plan 'Diamonds' must be a multiple of 4; the file asks for exactly 18",
        ),
    ],
)
def test_a_number_that_the_plan_does_not_allow_is_refused(tmp_path: Path, plan: str, number: str, says: str) -> None:
    text = put(
        CUSHION, ("plan: linked cells", f"plan: {plan}"), ("      margin:", f"      number: {number}\n      margin:")
    )
    assert faults(tmp_path, text, "medium") == [f"{at(text, 'margin: 3/4', 15)} {says} (size medium, inch)"]


def test_a_wrap_on_a_cloth_that_is_too_narrow_is_refused(tmp_path: Path) -> None:
    text = put(WRAP, ("width: 44 in", "width: 15 in"))
    assert faults(tmp_path, text, "neck") == [
        f"{at(text, 'label: cotton', 5)} wrap is 16 in across, but the cloth is only 15 in wide; "
        "take a wider cloth, or write it as two pieces that meet in a seam (size neck, inch)"
    ]


def test_one_fault_is_told_once_and_not_by_all_that_needs_it(tmp_path: Path) -> None:
    # The lap goes into the back, the edges that meet and a step; only the measure itself is told.
    text = put(
        CUSHION, ("lap: larger(side / 4, 3 in)", f"lap: {NOTHING}"), ("{{ lap }}", "{{ lap }} or {{ back.across }}")
    )
    assert len(faults(tmp_path, text, "medium")) == 1


def test_several_faults_are_told_together(tmp_path: Path) -> None:
    text = put(
        CUSHION, ("spacing: 3 in", "spacing: 1 in"), ("front.across\n", "side\n"), ("overlap: lap", "overlap: side")
    )
    told = faults(tmp_path, text, "medium")
    assert [fault.split(":")[1] for fault in told] == [
        str(line_of(text, "spacing: 1 in")),
        str(line_of(text, "kind: envelope")),
    ]


@pytest.mark.parametrize(
    ("change", "says"),
    [
        # 13 buttons between 2 and 12: 10 / 12 = 0.833 apart, on the ruler 13/16, less than 7/8.
        (("number: 3", "number: 13"), "buttons of 7/8 in stand 13/16 in apart and touch; use fewer or smaller ones"),
        # The lap holds the button and half an inch: 7/8 + 1/2 = 1 3/8.
        (
            ("overlap: 2 in or 5 cm", "overlap: 1 in or 2.5 cm"),
            "a lap of 1 in is too narrow for buttons of 7/8 in; make it 1 3/8 in or more",
        ),
        # The margin at the far end is 2 1/2 in.
        (
            ("overlap: 2 in or 5 cm", "overlap: 3 in or 7.5 cm"),
            "the margin under the lap is 2 1/2 in and the lap 3 in: a tuck lies under the buttons; make that margin "
            "3 in",
        ),
    ],
)
def test_buttons_without_room_are_a_warning_at_their_closure(
    tmp_path: Path, change: tuple[str, str], says: str
) -> None:
    text = put(WRAP, change)
    assert warnings(sheet(tmp_path, text, "neck")) == [
        f"{at(text, 'kind: buttons', 5)} warning: {says} (size neck, inch)"
    ]


def test_an_envelope_that_gapes_is_a_warning(tmp_path: Path) -> None:
    text = put(CUSHION, ("overlap: lap", "overlap: 2 in or 5 cm"))
    assert warnings(sheet(tmp_path, text, "medium")) == [
        f"{at(text, 'overlap: 2 in', 14)} warning: an overlap of 2 in may gape when the cover is "
        "filled; 3 in or more is safer (size medium, inch)"
    ]


def test_a_remnant_that_is_too_short_is_a_warning(tmp_path: Path) -> None:
    # Front 18 1/4 and backs 17, one below the other, are 35 1/4; 18 in are there, 17 when straightened: 18 1/4 lack.
    text = put(CUSHION, ("label: cotton", "label: cotton\n    length: 1/2 yd"))
    assert warnings(sheet(tmp_path, text, "medium")) == [
        f"{at(text, 'label: cotton', 5)} warning: the piece of 'face' is 18 1/4 in too short when it "
        "is washed and straightened: the layout needs 35 1/4 in; take a smaller size, a wider cloth, or cut a piece "
        "from another cloth (size medium, inch)"
    ]


def test_edges_apart_by_no_more_than_a_ruler_shows_are_let_be(tmp_path: Path) -> None:
    # Twice 1/32 in less than 64 is within 1/16; twice 1/16 is 1/8 and a warning.
    near = put(CUSHION, ("front.across\n", "side - 1/32 in or side - 0.5 mm\n"))
    off = put(CUSHION, ("front.across\n", "side - 1/16 in or side - 1 mm\n"))
    assert warnings(sheet(tmp_path, near, "medium")) == []
    assert warnings(sheet(tmp_path, off, "medium")) == [
        f"{at(off, 'join: front.all', 5)} warning: 'front.all' is 64 in and 'back.all' is 63 7/8 in: "
        "1/8 in apart; make them equal, or write 'ease: 1/8 in' if that much is eased in (size medium, inch)"
    ]

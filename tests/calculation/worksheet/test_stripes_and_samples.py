"""A striped cloth sets the spacing, and a sewn sample sets take-up and draw-in, all the way to the sheet."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, faults, inches, put, sheet, warnings

from generator.calculation.worksheet.figures import figures
from generator.errors import FaultyFileError

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
    found = sheet(tmp_path, text, "medium")
    assert "Every fold falls on the dark stripe." in step(found, "mark folds")
    assert " to the left of the dark stripe." in step(found, "cut")


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


def told(stripes: str, fold_on: str = "white") -> str:
    cloth = f"label: cotton\n    stripes: {stripes}\n    fold on: {fold_on}"
    return put(put(CUSHION, ("label: cotton", cloth)), ("  - use: cut\n", "  - use: cut, mark folds\n"))


def test_the_stripes_say_which_colour_lies_on_the_fold_and_where_to_cut(tmp_path: Path) -> None:
    # Navy 3/4, white 1/4, sand 1/2: repeat 1 1/2, the spacing asked for. The middle of the white is 7/8 along. Tucks
    # take up 3/4: from 1/2 to 1 1/4. So left of the fold navy, then white; right of it white, then sand; the space goes
    # on to 2, which is 1/2 in the next navy. 20 tucks on 16 in: first mark 1 3/4; 7/8 - 1 3/4 = -7/8, that is 5/8.
    found = sheet(tmp_path, told("navy 3/4 in, white 1/4 in, sand 1/2 in"), "medium")
    assert figures(found)["pieces"]["front"]["stripes"] == {
        "repeat": "1 1/2",
        "left_cut_edge": "5/8",
        "fold": ["white"],
        "turned_right": ["navy", "white"],
        "turned_left": ["white", "sand"],
        "space": ["sand", "navy"],
    }
    assert (
        "Every fold falls on the white stripe. A tuck turned to the right shows navy and "
        "white, one turned to the left shows white and sand; the cloth between two tucks is sand and navy."
    ) in step(found, "mark folds")
    assert "- front: its left cut edge lies 1 3/4 in to the left of the middle of one white stripe.\n" in step(
        found, "cut"
    )
    assert warnings(found) == []


def test_a_tuck_of_one_stripe_shows_it_on_either_side(tmp_path: Path) -> None:
    # Take-up 3/4: as wide as the navy stripe, whose middle the fold lies on.
    found = sheet(tmp_path, told("navy 3/4 in, white 3/4 in", "navy"), "medium")
    assert "A tuck turned to either side shows navy; the cloth between two tucks is white." in step(found, "mark folds")


def test_a_cloth_too_narrow_to_meet_the_stripe_is_warned_of(tmp_path: Path) -> None:
    # The front is cut 32 in wide: 16 + 1 + 20 x 3/4. A cloth of 33 in leaves 1 in; the repeat is 1 1/2 in. One of
    # 33 1/2 in leaves as much as that.
    text = told("navy 3/4 in, white 3/4 in", "navy")
    full, fitting = (put(text, ("width: 44 in or 112 cm", f"width: {wide} in")) for wide in ("33", "33 1/2"))
    assert [warning.split("warning: ")[1] for warning in warnings(sheet(tmp_path, full, "medium"))] == [
        "front may not meet its stripe: the cloth has 1 in to spare beside it, and finding the stripe may take 1 1/2 "
        "in; take wider cloth (size medium, inch)"
    ]
    assert warnings(sheet(tmp_path, fitting, "medium")) == []


def test_the_layout_keeps_room_beside_a_panel_to_find_its_stripe(tmp_path: Path) -> None:
    # The front of 32 in takes 33 1/2. On 46 in 12 1/2 are left, just enough for the halves beside it, one below the
    # other; on 45 3/4 in they would lie where the front must be moved to.
    for width, beside in (("46", {"front", "back"}), ("45 3/4", {"front"})):
        text = put(told("navy 3/4 in, white 3/4 in", "navy"), ("width: 44 in or 112 cm", f"width: {width} in"))
        strips = sheet(tmp_path, text, "medium").cloths["face"].layout.strips
        strip = next(strip for strip in strips if "front" in {placed.piece for placed in strip.placed})
        assert {placed.piece for placed in strip.placed} == beside
        assert {stack.across for stack in strip.stacks if stack.placed[0].piece == "front"} == {Fraction(67, 2)}


@pytest.mark.parametrize("width", ["44", "46", "70"])
def test_wherever_the_stripes_lie_a_panel_meets_its_own_within_its_room(tmp_path: Path, width: str) -> None:
    """Stripes that begin at every sixteenth of a repeat from the selvage; the panel is moved right until they meet."""
    text = put(told("navy 3/4 in, white 3/4 in", "navy"), ("width: 44 in or 112 cm", f"width: {width} in"))
    found = sheet(tmp_path, text, "medium")
    panel = found.pieces["front"].panel
    assert panel is not None
    [stack] = [
        stack
        for strip in found.cloths["face"].layout.strips
        for stack in strip.stacks
        if stack.placed[0].piece == "front"
    ]
    repeat = Fraction(3, 2)
    for begins in range(24):
        # A navy stripe has its middle so far from the selvage, and every repeat from there.
        middle = Fraction(begins, 16)
        moved = next(
            Fraction(sixteenths, 16)
            for sixteenths in range(1000)
            if (stack.left + Fraction(sixteenths, 16) + panel.across.marks[0] - middle) % repeat == 0
        )
        assert moved + stack.placed[0].across <= stack.across


PAIR = ("  front:\n", "  front:\n    quantity: 2\n")
PLAIN_BACK = (
    "pieces:\n",
    "  plain:\n    label: plain cotton\n    width: 44 in or 112 cm\npieces:\n",
)


def test_two_panels_that_begin_on_the_same_stripe_lie_closer(tmp_path: Path) -> None:
    """The front is 32 in wide, 21 1/3 repeats of 1 1/2, and takes 33; alone each would take 33 1/2."""
    narrow, wide = (
        sheet(
            tmp_path,
            put(
                told("navy 3/4 in, white 3/4 in", "navy"),
                ("width: 44 in", f"width: {width} in"),
                *(PAIR, PLAIN_BACK, ("kind: envelope back\n", "kind: envelope back\n    cloth: plain\n")),
            ),
            "medium",
        )
        for width in ("66 1/4", "66 1/2")
    )
    # Wherever the stripe comes up: 1 1/2 + 33 + 32 = 66 1/2, where two by themselves would take 67.
    strip = next(strip for strip in wide.cloths["face"].layout.strips if strip.placed[0].piece == "front")
    assert [(stack.left, stack.across) for stack in strip.stacks[:2]] == [(0, 33), (33, 33)]
    assert wide.cloths["face"].layout.width == Fraction(133, 2)
    assert wide.cloths["face"].narrowest <= Fraction(133, 2)
    assert (
        "- The striped pieces of strip 1 begin on the same stripe. Find the first place, no more than 1 1/2 in from "
        "the left selvage, where their left edge lies as it should. Measure the cuts down from there, not from the "
        "selvage."
    ) in step(wide, "cut")
    fronts = [strip for strip in narrow.cloths["face"].layout.strips if strip.placed[0].piece == "front"]
    assert len(fronts) == 2
    assert "begin on the same stripe" not in step(narrow, "cut")


def test_stripes_set_the_spacing_as_their_repeat_does(tmp_path: Path) -> None:
    # 3/4 + 1/4 = 1; 1 1/2 lies between 1 and 2, and the wider is taken.
    panel = sheet(tmp_path, told("navy 3/4 in, white 1/4 in"), "medium").pieces["front"].panel
    assert panel is not None
    assert set(panel.across.spacings) == set(inches("2"))


def test_a_fold_on_a_colour_that_the_cloth_does_not_have_is_refused(tmp_path: Path) -> None:
    assert any(
        "no stripe of this cloth is 'red', so no fold can lie on it; there are: navy, white" in text
        for text in faults(tmp_path, told("navy 1 in, white 1/2 in", "red"), "medium")
    )


def test_a_stripe_of_no_width_is_refused(tmp_path: Path) -> None:
    assert any(
        "every stripe must be 1/16 in wide or more; measure it on the cloth, or take it out" in text
        for text in faults(tmp_path, told("navy 1 in, white 0 in"), "medium")
    )


@pytest.mark.parametrize(
    ("stripes", "says"),
    [
        ("navy, white 1 in", "'navy' is no stripe; write its colour and its width, for example 'navy 1/2 in'"),
        ("a[b](x) 1 in", "'a[b](x) 1 in' is no stripe; write its colour and its width, for example 'navy 1/2 in'"),
        ("1 in, white 1 in", "'1 in' is no stripe; write its colour and its width, for example 'navy 1/2 in'"),
        ("navy 1 in\n    repeat: 1 in", "the repeat follows from the stripes; take 'repeat' or 'stripes' out"),
    ],
)
def test_stripes_that_cannot_be_read_are_refused_where_they_stand(tmp_path: Path, stripes: str, says: str) -> None:
    with pytest.raises(FaultyFileError) as refused:
        sheet(tmp_path, told(stripes), "medium")
    assert [finding.text for finding in refused.value.findings] == [says]


def test_folds_that_leave_their_stripe_are_warned_of(tmp_path: Path) -> None:
    # A repeat of 3/8 in: 1 1/2 is four of them. Fifteen tucks on 16 in cannot keep it: with margins fixed the spacing
    # gives, and then the marks drift from the stripe.
    text = put(
        told("navy 1/4 in, white 1/8 in"),
        ("margin: 3/4 in to 1 1/2 in or 2 cm to 3 cm", "margin: 1 in or 2.5 cm\n      gives: spacing"),
    )
    found = sheet(tmp_path, text, "medium")
    panel = found.pieces["front"].panel
    assert panel is not None
    assert any(spacing % inches("3/8")[0] for spacing in panel.across.spacings)
    assert any("not all folds lie on the same stripe: they are off by up to" in text for text in warnings(found))

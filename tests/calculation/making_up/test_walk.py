"""The walk through a recipe: what lacks, what stands in the wrong place, what is done twice, what does not fit."""

from __future__ import annotations

from dataclasses import replace

import pytest
from things import (
    CUSHION,
    CUSHION_RECIPE,
    FRILL,
    FRILLED,
    METHODS,
    STATES,
    act,
    closing,
    own,
    panel,
    part,
    recipe,
    thing,
    use,
)

from generator.calculation.making_up.acts import Doing
from generator.calculation.making_up.findings import recipe_findings
from generator.calculation.making_up.thing import Thing
from generator.calculation.making_up.walk import walk

SOUND = CUSHION_RECIPE.strip().splitlines()


def told(made: Thing, steps: tuple[Doing, ...], level: str = "") -> list[str]:
    """Every finding as it is printed, without the name of the file."""
    found = recipe_findings(walk(made, METHODS, steps), STATES)
    return [str(one).removeprefix("it.yaml:") for one in found if not level or one.level == level]


def test_a_sound_recipe_has_no_findings() -> None:
    assert told(CUSHION, recipe(CUSHION_RECIPE)) == []


def test_a_step_that_is_left_out_is_told_with_the_lines_to_paste() -> None:
    lines = [line for line in SOUND if not line.startswith("rule rows")]
    assert told(CUSHION, recipe("\n".join(lines))) == [
        "3:5: no step rules the rows of 'front', turns the tucks of 'front' and trims 'front'; 'cut later' needs it. "
        "Write above line 3:\n  - use: rule rows, sew rows, trim\n    on: front"
    ]


def test_one_technique_that_is_left_out_of_a_step_is_told_where_it_is_needed() -> None:
    steps = recipe(CUSHION_RECIPE.replace("crease, ", ""))
    assert told(CUSHION, steps) == [
        "2:5: no step creases the folds of 'front'; 'stitch tucks' needs it. Write in line 2 before 'stitch tucks', or "
        "as steps above it:\n  - use: crease\n    on: front"
    ]


def test_steps_in_the_wrong_order_are_told_once() -> None:
    lines = [*SOUND[:1], SOUND[2], SOUND[1], *SOUND[3:]]
    assert told(CUSHION, recipe("\n".join(lines))) == [
        "2:5: 'rule rows' needs 'mark folds', 'crease' and 'stitch tucks' before it: marks the folds of 'front', "
        "creases the folds of 'front' and stitches the tucks of 'front'. Move line 3 up here"
    ]


def test_a_step_that_stands_twice_is_told() -> None:
    lines = [*SOUND[:2], SOUND[1], *SOUND[2:]]
    assert told(CUSHION, recipe("\n".join(lines))) == [
        f"3:5: {done} in line 2 already. Take one of the two out"
        for done in (
            "the folds of 'front' are marked",
            "the folds of 'front' are creased",
            "the tucks of 'front' are stitched",
        )
    ]


def test_a_step_on_a_piece_that_it_is_not_for_is_told() -> None:
    steps = (*recipe(CUSHION_RECIPE), use("gather", "front", 9))
    assert told(CUSHION, steps) == [
        "9:5: 'gather' is for a gathered strip or a gathered end; 'front' is a tucked panel. Name another piece, or "
        "take it out"
    ]


def test_what_is_never_done_is_told_where_it_is_due() -> None:
    lines = [line for line in SOUND if not line.startswith("close")]
    assert told(CUSHION, recipe("\n".join(lines))) == [
        "6:5: no step closes the opening of 'front' to 'back'. Write below line 5:\n"
        "  - use: close opening\n    on: back"
    ]


def test_filling_after_the_opening_is_closed_is_told_once() -> None:
    steps = recipe("\n".join([*SOUND[:5], SOUND[6], SOUND[5]]))
    assert told(CUSHION, steps) == ["6:5: 'close opening' needs 'fill' before it: fills the work. Move line 7 up here"]


def test_a_step_of_which_nobody_knows_what_it_does_is_asked_and_nothing_is_refused() -> None:
    steps = (*recipe("\n".join(SOUND[:4])), own(on="front and back", line=5), use("fill", line=6))
    assert told(CUSHION, steps, "error") == []
    assert told(CUSHION, steps) == [
        "5:5: note: nothing else sews 'front' to 'back' and turns 'front' to 'back' out. If this step does: does:\n"
        "  - sew front to back\n  - turn out front"
    ]


def test_the_acts_of_a_step_of_ones_own_are_held_like_standard_steps() -> None:
    acts = (act("sew", "front", "back"), act("leave open", "front.bottom"), act("turn out", "front"))
    steps = (*recipe("\n".join(SOUND[:4])), own(*acts, line=5), *recipe("fill\nclose opening: back"))
    assert told(CUSHION, steps) == []
    early = (*steps[:1], steps[4], *steps[1:4], *steps[5:])
    assert told(CUSHION, early, "error")


@pytest.mark.parametrize(
    ("steps", "lacking"),
    [
        ("gather: frill\njoin pieces: frill, front", "the ring"),
        ("join pieces: frill, front", "the gathers"),
    ],
)
def test_a_frill_is_closed_and_gathered_before_it_is_sewn_on(steps: str, lacking: str) -> None:
    begun = "cut\nmark folds, crease, stitch tucks, rule rows, sew rows, trim: front\njoin lengths: frill\n"
    found = told(FRILLED, recipe(begun + steps), "error")
    wanted = {"the ring": "'frill.left' to 'frill.right'", "the gathers": "gathers 'frill'"}[lacking]
    assert any(wanted in one for one in found)


def test_a_plain_piece_that_another_size_joins_from_widths_may_be_named_where_it_is_cut_whole() -> None:
    steps = (*recipe("cut\njoin lengths: lining"),)
    assert [one for one in told(thing(part("lining"), kind="other"), steps, "error") if "join lengths" in one] == []


def test_an_edge_is_there_before_anything_is_gathered_to_it() -> None:
    # The edge is divided like the frill, and both are pinned to each other.
    made = thing(
        part("strap", "tie", ends={}),
        part("frill", "gathered strip", ends=FRILL),
        seams="strap.edge / frill.top",
        kind="garment",
    )
    steps = recipe("cut\nhem, gather: frill\nmake straps: strap\njoin pieces: strap, frill")
    assert told(made, steps, "error") == [
        "2:5: 'gather' needs 'make straps' before it: makes 'strap'. Move line 3 up here"
    ]
    assert told(made, (steps[0], steps[2], steps[1], steps[3]), "error") == []


def test_a_frill_is_sewn_on_before_the_seam_that_catches_it() -> None:
    steps = recipe(
        """cut
        mark folds, crease, stitch tucks, rule rows, sew rows, trim: front
        cut later: back
        join lengths: frill
        join pieces: frill
        hem, gather: frill
        line and turn: back
        join pieces: front, frill
        fill
        close opening: back"""
    )
    assert told(FRILLED, steps, "error") == [
        "7:5: 'line and turn' needs 'join pieces' before it: sews 'front' to 'frill'. Move line 8 up here"
    ]


def test_a_fastener_is_set_before_its_wrong_side_is_shut_in() -> None:
    snap = closing("snaps", ("lining", "top"), ("lining", "top"))
    made = thing(
        panel(), part("lining", cloth="print"), seams="front.all / lining.all", kind="runner", closings=(snap,)
    )
    steps = recipe(
        """cut
        mark folds, crease, stitch tucks, rule rows, sew rows, trim: front
        line and turn: lining
        close opening: lining"""
    )
    late = (*steps, own(act("set", "lining", word="snaps"), line=9))
    assert told(made, late) == [
        "3:5: 'line and turn' needs 'set' before it: sets the snaps of 'lining'. Move line 9 up here"
    ]
    unseen = (*steps[:2], own(on="lining", line=3), *steps[2:], own(act("set", "lining", word="snaps"), line=9))
    assert told(made, unseen, "error") == [
        "9:5: 'set' comes too late: the wrong side of 'front' to 'lining' is shut in in line 3. Move this step above "
        "line 3"
    ]


def test_a_piece_that_nothing_names_is_a_warning() -> None:
    made = thing(panel(), part("loop", "tie", ends={"edge": "raw"}), kind="curtain")
    steps = recipe("cut\nmark folds, crease, stitch tucks, rule rows, sew rows, trim: front\nmake straps: loop")
    assert [one for one in told(made, steps) if "warning" in one] == [
        "3:5: warning: 'loop' is cut and never sewn on. Say it at the step that does it: does: baste loop on front"
    ]


def test_a_lining_that_meets_nothing_cannot_be_sewn_in() -> None:
    made = thing(panel(), part("lining"), kind="runner")
    found = told(
        made, recipe("cut\nmark folds, crease, stitch tucks, rule rows, sew rows, trim: front\nline and turn: lining")
    )
    assert found[0] == (
        "3:5: 'lining' meets nothing; 'line and turn' cannot tell what it is sewn to. Write under 'edges that meet':\n"
        "  - join: front.all\n    to: lining.all"
    )


def test_of_two_hems_that_a_rod_could_run_through_the_file_must_choose() -> None:
    hems = {"left": "hem", "right": "hem", "top": "seam", "bottom": "seam"}
    curtain = part("curtain", "tucked panel", "tucks", ends=hems, broad=("left", "right"))
    begun = "cut\nmark folds, crease, stitch tucks: curtain\n"
    assert told(thing(curtain, kind="other"), recipe(f"{begun}casing: curtain"))[0] == (
        "3:5: 'curtain' has 2 such hems; say which: on: curtain.left"
    )
    assert told(thing(curtain, kind="other"), recipe(f"{begun}casing: curtain.left\nhem: curtain")) == []


PANELS = "cut\nmark folds, crease, stitch tucks, rule rows, sew rows, trim: front\n"


def test_a_seam_that_stays_raw_is_told_where_it_is_sewn() -> None:
    band = part("band", "gathered strip", ends=FRILL)
    made = thing(panel(), band, kind="garment", seams="front.bottom / band.top")
    steps = f"{PANELS}hem, gather: band\njoin pieces: front, band"
    assert told(made, recipe(steps)) == [
        "4:5: warning: this seam stays raw: 'front' to 'band'. Write where it can still be reached:\n"
        "  - use: neaten\n    on: front, band"
    ]
    assert told(made, recipe(f"{steps}\nneaten: front, band")) == []
    # What does not fray needs nothing, and neither does what a lining shuts in.
    felt = thing(
        replace(panel(), frays=False), replace(band, frays=False), kind="garment", seams="front.bottom / band.top"
    )
    assert told(felt, recipe(steps)) == []
    lined = thing(
        panel(),
        band,
        part("lining", cloth="print"),
        kind="other",
        seams="front.bottom / band.top\nfront.all / lining.all",
    )
    begun = f"{steps}\nline and turn: lining\nclose opening: lining"
    assert told(lined, recipe(begun)) == []


def test_a_piece_on_its_like_of_another_cloth_lines_it() -> None:
    made = thing(panel(), part("lining", cloth="print"), kind="other", seams="front.top / lining.top")
    assert told(made, recipe(f"{PANELS}join pieces: front, lining")) == []
    beside = thing(panel(), part("border", cloth="print"), kind="other", seams="front.bottom / border.top")
    assert "stays raw" in told(beside, recipe(f"{PANELS}join pieces: front, border"))[0]


@pytest.mark.parametrize("on", ["", "front"])
def test_a_step_of_ones_own_hides_no_marking_and_no_turning(on: str) -> None:
    # It may have sewn the seam, and is asked whether it does; folds are marked by the tool's own step alone.
    steps = (*recipe("cut"), own(on=on, line=2), *recipe("\n\ntrim: front")[-1:])
    found = told(CUSHION, steps)
    lacking = "no step marks the folds of 'front', creases the folds of 'front', stitches the tucks of 'front'"
    assert [one for one in found if lacking in one] != []


def test_a_step_of_ones_own_that_names_no_piece_is_asked_what_it_does() -> None:
    steps = (*recipe(CUSHION_RECIPE)[:-3], own(line=9))
    assert [one for one in told(CUSHION, steps) if "If this step does" in one] != []
    assert told(CUSHION, steps, "error") == []


BAND = thing(panel("band"), part("lining", cloth="lining"), kind="curtain", seams="band.all / lining.all")
FOR_GOOD = replace(act("leave open", "band.left"), for_good=True)
LINED = (
    *recipe("cut\nmark folds, crease, stitch tucks: band\nrule rows, sew rows, trim: band"),
    own(act("sew", "band", "lining"), FOR_GOOD, replace(FOR_GOOD, what=(("band", "right"),)), line=4),
    own(act("turn out", "band"), line=5),
)


def test_an_opening_for_good_is_never_closed() -> None:
    assert told(BAND, LINED) == []
    assert told(BAND, (*LINED, use("close opening", "band", 6))) == [
        "6:5: 'close opening' has nothing to close: no step leaves an opening in the seams of 'band'"
    ]
    ordinary = replace(LINED[3], acts=(LINED[3].acts[0], act("leave open", "band.left")))
    assert told(BAND, (*LINED[:3], ordinary, *LINED[4:])) == [
        "5:5: no step closes the opening of 'band' to 'lining'. Write below line 5, or 'for good' behind 'leave open' "
        "where it stays open:\n  - use: close opening\n    on: lining"
    ]

"""The steps of a worksheet: their order, figures, times, cautions and added words, each as a hand would write it."""

from __future__ import annotations

from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, WRAP, faults, put, sheet

from generator.calculation.worked_project import SheetStep

RATES = "rates:\n  buttonhole: 10 minutes each\n  sew a button: 5 minutes each\n"


def steps(folder: Path, text: str, size: str = "medium", site: str = "") -> tuple[SheetStep, ...]:
    return sheet(folder, text, size, site=site).steps


def test_the_steps_of_a_cushion_stand_in_order_with_their_pieces(tmp_path: Path) -> None:
    told = steps(tmp_path, CUSHION)
    assert [(one.number, one.standard, one.pieces) for one in told] == [
        (1, "cut", ("front", "back")),
        (2, "mark folds", ("front",)),
        (3, "crease", ("front",)),
        (4, "stitch tucks", ("front",)),
        (5, "rule rows", ("front",)),
        (6, "sew rows", ("front",)),
        (7, "trim", ("front",)),
        (8, "envelope back", ("back",)),
        (9, "", ()),
    ]
    # A session ends after the last of the three standard steps that one line of the file names.
    assert [one.number for one in told if one.session_ends] == [7]


def test_a_step_of_the_file_has_its_own_time_and_words(tmp_path: Path) -> None:
    last = steps(tmp_path, CUSHION)[-1]
    assert (last.title, last.minutes, last.figures, last.text.strip()) == (
        "Close the cover",
        20,
        ("seam 9-1",),
        "The backs lie 4 in one over the other.",
    )
    # Without a time it is counted from its acts: 64 in with four corners are 30 + 80 + 213 + 213 + 160 s, and 30
    # + 80 + 213 to neaten, 240 to turn out and 120 for the pad.
    untimed = steps(tmp_path, put(CUSHION, ("    minutes: 20\n", "")))[-1]
    assert untimed.minutes == 25
    looks = put(
        CUSHION,
        (
            "does: sew front to back, neaten front, turn out front, put the pad in front\n    minutes: 20\n",
            "does: nothing\n",
        ),
    )
    assert steps(tmp_path, looks)[-1].minutes == 0


def test_a_step_for_other_sizes_is_left_out_and_those_after_it_are_not(tmp_path: Path) -> None:
    text = put(CUSHION, ("  - use: envelope back\n", "  - use: envelope back\n    only for: small\n"))
    assert [one.title for one in steps(tmp_path, text)][-1] == "Close the cover"
    assert [len(steps(tmp_path, text, size)) for size in ("small", "medium")] == [9, 8]
    assert [one.number for one in steps(tmp_path, text)] == list(range(1, 9))


def test_added_words_stand_at_the_last_and_own_minutes_at_the_first_of_one_line(tmp_path: Path) -> None:
    added = (
        "rule rows, sew rows, trim\n    minutes: 40\n    uses: starch\n    add: Rest after {{ lap }}.\n"
        "    begin with: Sit down with {{ lap }}.\n"
    )
    told = steps(tmp_path, put(CUSHION, ("rule rows, sew rows, trim\n", added)))[4:7]
    assert [one.minutes for one in told] == [40, 0, 0]
    # 16 / 4 = 4.
    assert [one.text.rstrip().endswith("\n\nRest after 4 in.") for one in told] == [False, False, True]
    for words in ("text", "printed"):
        begun = [getattr(one, words).startswith("Sit down with 4 in.\n\n") for one in told]
        assert begun == [True, False, False]
    # The tools that a line adds are for its added words.
    assert ["starch" in one.tools for one in told] == [False, False, True]


def test_a_tool_named_twice_is_listed_once(tmp_path: Path) -> None:
    twice = put(CUSHION, ("  - use: cut\n", "  - use: cut\n    uses: iron, awl\n"))
    # The standard step uses scissors, iron, ruler, tape and pins.
    assert steps(tmp_path, twice)[0].tools == ("scissors", "iron", "ruler", "tape", "pins", "awl")


def test_the_figures_of_a_step_are_its_cloths_or_its_pieces(tmp_path: Path) -> None:
    pad = "  pad:\n    kind: bought\nedges that meet:"
    lining = "  spare:\n    label: felt\n    width: 44 in or 112 cm\npieces:"
    text = put(
        CUSHION,
        ("edges that meet:", pad),
        ("pieces:", lining),
        ("envelope back\n", "envelope back\n    cloth: spare\n"),
    )
    # Front of one cloth, back of the other; what is bought lies on none.
    assert steps(tmp_path, text)[0].figures == ("layout face", "layout spare")
    assert steps(tmp_path, CUSHION)[0].figures == ("layout face",)


@pytest.mark.parametrize(
    ("use", "minutes"),
    # Three buttons: 3 x 10 minutes of buttonholes, 3 x 5 of sewing on.
    [("buttonholes", 30), ("sew buttons", 15)],
)
def test_buttons_are_timed_by_their_number(tmp_path: Path, use: str, minutes: int) -> None:
    told = steps(tmp_path, put(WRAP, ("  - use: cut\n", f"  - use: {use}\n    on: wrap\n")), "neck", RATES)
    assert [(one.standard, one.minutes) for one in told] == [(use, minutes)]


def test_a_step_takes_the_rate_of_its_work_so_many_times(tmp_path: Path) -> None:
    # The front and both parts of the back: three cuts of 20 minutes.
    assert steps(tmp_path, CUSHION, site="rates:\n  cut a piece: 20 minutes each\n")[0].minutes == 60


def test_other_closures_are_not_sewn_on_as_buttons(tmp_path: Path) -> None:
    snaps = put(WRAP, ("kind: buttons", "kind: snaps"), ("  - use: cut\n", "  - use: sew buttons\n    on: wrap\n"))
    assert [one.minutes for one in steps(tmp_path, snaps, "neck", RATES)] == [0]


def test_a_standard_step_names_the_places_of_buttons(tmp_path: Path) -> None:
    # 14 long, 2 from both ends: 2, 7, 12; a hole is 7/8 + 1/8.
    both = put(WRAP, ("  - use: cut\n", "  - use: buttonholes, sew buttons\n    on: wrap\n"))
    holes, buttons = (one.text for one in steps(tmp_path, both, "neck"))
    assert "- 3 on the left edge of the wrap: each 1 in long, at 2, 7, 12 in along the finished edge." in holes
    assert "- 3 on the right edge of the wrap: at 2, 7, 12 in along the finished edge." in buttons


def test_the_order_of_cutting_keeps_whole_what_waits_for_the_panel(tmp_path: Path) -> None:
    waits = put(
        CUSHION,
        ("kind: envelope back\n", "kind: envelope back\n    label: cover back\n    cut: after the panel\n"),
        ("  - use: envelope back\n", "  - use: cut later\n  - use: envelope back\n"),
    )
    told = {one.standard: one.text for one in steps(tmp_path, waits)}
    # Front 32 by 18 1/4; the halves side by side in a strip of 17: 18 1/4 + 17 = 35 1/4. 44 - 2 x 12 1/2 = 19.
    assert told["cut"].split("Cut in this order:\n\n")[1].split("\n\n")[0].splitlines() == [
        "- Measure along the shorter selvage, from the straightened end: is the cloth 35 1/4 in long at least? If not, "
        "stop, and cut nothing.",
        "- **Cut 1** across at 18 1/4 in.",
        "  - **1a** down at 32 in from the left selvage: front, 32 by 18 1/4 in.",
        "- **Strip 2**, from 18 1/4 to 35 1/4 in from the straightened end, stays whole: 2 × cover back, 12 1/2 by 17 "
        "in. There is room for 19 in more across.",
    ]
    back = "- cover back: cut 2, 12 1/2 in across the cloth by 17 in along it, from the cotton"
    assert ("- front: cut" in told["cut later"], back in told["cut later"]) == (False, True)
    assert "Do not cut these yet: **cover back**." in told["cut"]


def test_cautions_stand_where_their_tool_is_used_and_at_the_last_step_what_the_project_asks(tmp_path: Path) -> None:
    text = put(CUSHION, ("sizes:\n", "cautions: lamp\nsizes:\n"))
    found = sheet(tmp_path, text, "medium")
    # Of what cutting uses only the iron and the pins have a caution; the last step is the project's own.
    assert found.steps[0].cautions == ("iron", "pins")
    assert found.steps[-1].cautions == ("lamp",)
    assert [one.number for one in found.steps if "lamp" in one.cautions] == [9]
    used = {name for one in found.steps for name in one.cautions}
    assert set(found.cautions) == used
    assert "lamp" not in sheet(tmp_path, CUSHION, "medium").cautions


def test_the_time_of_a_sheet_is_that_of_its_steps(tmp_path: Path) -> None:
    text = put(
        CUSHION,
        ("  - use: cut\n", "  - use: cut\n    minutes: 15\n"),
        ("stitch tucks\n    on: front\n", "stitch tucks\n    on: front\n    minutes: 60\n"),
        ("trim\n    on: front\n", "trim\n    on: front\n    minutes: 40\n"),
        ("back\n    on: back\n", "back\n    on: back\n    minutes: 10\n"),
    )
    # 15 + 60 + 40 + 10 + 20.
    assert sheet(tmp_path, text, "medium").minutes == 145


def test_a_sheet_names_its_size_and_what_was_sewn(tmp_path: Path) -> None:
    noted = put(CUSHION, ("    label: Sofa\n", "    label: Sofa\n    note: For a deep seat.\n"))
    medium, small = sheet(tmp_path, noted, "medium"), sheet(tmp_path, noted, "small")
    assert (medium.size_label, medium.size_note, medium.sewn) == ("Sofa", "For a deep seat.", "")
    assert (small.size_label, small.size_note) == ("small", "")
    again = sheet(tmp_path, noted, "medium", across="15 7/8 in")
    assert again.size_note == "For a deep seat. Worked again to what was sewn: front 15 7/8 in across."


def test_lengths_and_plain_numbers_are_kept_apart(tmp_path: Path) -> None:
    counted = put(CUSHION, ("measures:\n", "measures:\n  times: side / 4 in or side / 10 cm\n"))
    found = sheet(tmp_path, counted, "medium")
    assert (dict(found.measures), dict(found.numbers), found.own) == ({"side": 16, "lap": 4}, {"times": 4}, ("side",))


def test_a_step_that_tells_a_measure_its_piece_has_not_is_refused(tmp_path: Path) -> None:
    text = put(CUSHION, ("  - use: envelope back\n    on: back\n", "  - use: envelope back\n    on: front\n"))
    line = text.splitlines().index("  - use: envelope back") + 1
    assert faults(tmp_path, text, "medium") == [
        f"projects/jetty.yaml:{line}:5: the step 'envelope back' tells the hem of a piece, and 'front' has none; "
        "name the piece that it is done on with 'on' (size medium, inch)"
    ]


def test_the_hems_of_an_envelope_back_take_their_time(tmp_path: Path) -> None:
    # At the rates that a room begins with: two hems of 16 in turned twice are 64 in at 90 s a foot, 480 s; 32 in are
    # stitched in 107 s, begun in 60 s; a lap of 4 in is pinned and basted twice, 27 + 40 s. 714 s: 10 minutes.
    (back,) = (step for step in steps(tmp_path, CUSHION) if step.standard == "envelope back")
    assert back.minutes == 10

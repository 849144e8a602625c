"""Acts: what a step of one's own does, in a few short forms that name pieces and edges."""

from __future__ import annotations

import pytest

from generator.definitions.acts import WrittenAct, read_act
from generator.definitions.faults import Fault
from generator.definitions.nodes import Scalar
from generator.definitions.pieces.kinds import PIECES
from generator.definitions.reading import Reading
from generator.errors import Place
from generator.lengths import INCH, METRIC

PANEL, STRIP, TIE = (PIECES[kind].of_kind for kind in ("tucked panel", "gathered strip", "tie"))


def act(text: str) -> WrittenAct:
    kinds = {"front": PANEL, "end panel": PANEL, "back": PANEL, "frill": STRIP, "strap": TIE}
    steps = frozenset({"hem", "sew buttons", "stitch tucks", "set fasteners", "make straps"})
    return read_act(Scalar(text, Place("it.yaml", 7, 9)), Reading(kinds=kinds, steps=steps))


def fault(text: str) -> tuple[str, int]:
    with pytest.raises(Fault) as told:
        act(text)
    return told.value.text, told.value.offset


def edges(one: WrittenAct) -> tuple[object, object]:
    return one.what.edges, one.onto.edges if one.onto else None


@pytest.mark.parametrize(
    ("text", "does", "what", "onto"),
    [
        ("sew front to back", "sew", (("front", ""),), (("back", ""),)),
        (
            "sew front.top and end panel.top to frill.top",
            "sew",
            (("front", "top"), ("end panel", "top")),
            (("frill", "top"),),
        ),
        ("baste strap on front.top", "baste", (("strap", ""),), (("front", "top"),)),
        ("lay back on end panel", "lay", (("back", ""),), (("end panel", ""),)),
        ("turn out end panel", "turn out", (("end panel", ""),), None),
        ("fasten front.all", "fasten", (("front", "all"),), None),
        ("hem front.top", "hem", (("front", "top"),), None),
        ("sew buttons on front and strap", "sew buttons", (("front", ""), ("strap", "")), None),
        ("make straps on strap", "make straps", (("strap", ""),), None),
        ("nothing", "nothing", (), None),
    ],
)
def test_an_act_names_what_is_done_to_which_edges(text: str, does: str, what: object, onto: object) -> None:
    read = act(text)
    assert (read.does, *edges(read)) == (does, what, onto)


def test_an_opening_has_its_length_in_both_editions() -> None:
    read = act("leave open 8 in or 20 cm of front.bottom")
    assert read.does == "leave open"
    assert read.length is not None
    assert (read.length.fixed(INCH), read.length.fixed(METRIC) * 254 / 100) == (8, 20)
    assert read.what.edges == (("front", "bottom"),)


def test_what_is_put_in_set_and_looked_at_is_kept_as_a_word() -> None:
    assert (act("put the pad in front").does, act("put the pad in front").word) == ("put in", "pad")
    assert (act("set snaps on back").does, act("set snaps on back").word) == ("set", "snaps")
    looked = act("look at front after stitch tucks")
    assert (looked.does, looked.word, looked.what.edges) == ("look", "stitch tucks", (("front", ""),))


def test_seams_are_sewn_right_sides_together_unless_the_act_says_otherwise() -> None:
    assert act("sew front to back").right_sides
    wrong = act("sew front to back wrong sides together")
    assert not wrong.right_sides
    assert wrong.onto is not None
    assert wrong.onto.edges == (("back", ""),)
    assert act("sew frill on front").word == "on"


@pytest.mark.parametrize(
    ("text", "says", "offset"),
    [
        ("sew front to bak", "there is no piece 'bak'; did you mean 'back'?", 13),
        ("sew front.tpo to back", "a tucked panel has no edge 'tpo'; it has: left, right, top, bottom, all", 4),
        ("sew front", "say what is sewn to what: sew front to back, or sew pocket on back", 4),
        ("baste strap", "say on what: baste strap on front.top", 6),
        ("leave open 8 in", "say how much and where: leave open 8 in or 20 cm of front.bottom", 11),
        (
            "look at front after stich tucks",
            "there is no standard step 'stich tucks'; did you mean 'stitch tucks'?",
            20,
        ),
    ],
)
def test_a_slip_in_an_act_is_told_at_its_place(text: str, says: str, offset: int) -> None:
    assert fault(text) == (says, offset)


def test_a_word_that_is_no_act_is_told_with_examples() -> None:
    told, offset = fault("glue front to back")
    assert told.startswith("'glue front to back' is no act")
    assert "sew front to back; sew pocket on back" in told
    assert offset == 0


def test_an_opening_may_stay_for_good_and_lie_at_one_end_of_its_edge() -> None:
    read = act("leave open 2 in or 5 cm of front.left at the top for good")
    assert (read.for_good, read.end, edges(read)[0]) == (True, "top", (("front", "left"),))
    assert (act("leave open 2 in of front.left for good").for_good, act("leave open 2 in of front.left").for_good) == (
        True,
        False,
    )
    assert fault("leave open 2 in of front.left at the right for good") == (
        "an opening in the left edge lies at the top or at the bottom of it",
        37,
    )

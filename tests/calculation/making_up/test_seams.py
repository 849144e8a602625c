"""The sort of a seam follows from its pieces and the finishes of their edges; nobody writes it."""

from __future__ import annotations

from dataclasses import replace

import pytest
from things import CUSHION, FRILL, FRILLED, panel, part, sort_of, thing

from generator.calculation.making_up.seams import encloses, lining_of
from generator.calculation.making_up.thing import Thing

BOUND = dict.fromkeys(("left", "right", "top", "bottom"), "bound")
BAG = thing(
    panel(),
    part("back", cloth="face"),
    part("lining", cloth="print", quantity=2),
    kind="bag",
    seams="""
    front.left and front.bottom and front.right / back.left and back.bottom and back.right
    front.top and back.top / lining.top and lining.top
    """,
)
CASES = {
    "piping": thing(panel(), part("cord", "piping", ends={"edge": "raw"}), seams="front.all / cord.edge"),
    "binding": thing(panel(ends=BOUND), part("band", "binding", ends={"edge": "raw"}), seams="front.all / band.edge"),
    "laid": thing(panel(ends=BOUND), part("backing", ends=BOUND), seams="front.all / backing.all"),
    "box": thing(panel(), part("boxing", "boxing"), seams="front.all / boxing.edge"),
    "ring of a panel": thing(panel(), part("other"), seams="front.left / front.right"),
    "ring": thing(part("tube"), seams="tube.top / tube.bottom"),
    "facing": thing(panel(), part("yoke facing", "facing"), seams="front.top / yoke facing.top"),
    "lining": CUSHION,
    "three sides": BAG,
    "all round": thing(panel(), panel("back"), seams="front.all / back.all"),
    "plain": thing(panel(), part("frill", "gathered strip", ends=FRILL), seams="front.bottom / frill.top"),
}


@pytest.mark.parametrize("sort", CASES)
def test_a_seam_is_of_the_sort_that_its_pieces_make_it(sort: str) -> None:
    assert sort_of(CASES[sort]) == sort


def test_the_tops_of_a_bag_meet_those_of_its_lining() -> None:
    assert sort_of(BAG, 1) == "tops"
    assert lining_of(BAG.seams[1], BAG) == "lining"


def test_a_flap_that_is_sewn_to_a_bag_is_no_lining() -> None:
    made = thing(
        panel("flap"),
        part("bag", quantity=2),
        kind="bag",
        seams="bag.left and bag.bottom and bag.right / bag.left and bag.bottom and bag.right\nflap.top / bag.top",
    )
    assert [seam.sort for seam in made.seams] == ["three sides", "plain"]


@pytest.mark.parametrize(("back", "sort"), [("rectangle", "lining"), ("envelope back", "plain")])
def test_a_plain_back_is_turned_through_an_opening_and_an_envelope_through_itself(back: str, sort: str) -> None:
    made = thing(panel(), part("back", back), seams="front.all / back.all")
    assert sort_of(made) == sort
    assert encloses(made.seams[0], made)


def test_two_halves_of_a_skirt_are_sewn_side_by_side_and_a_frill_that_goes_round_is_a_ring() -> None:
    ends = {"top": "seam", "left": "seam", "right": "seam", "bottom": "hem"}
    skirt = part("skirt", "gathered strip", ends=ends, quantity=2)
    beside = thing(part("yoke", quantity=2), skirt, seams="skirt.left / skirt.right\nyoke.bottom / skirt.top")
    assert sort_of(beside) == "plain"
    ring = thing(part("yoke"), skirt, seams="skirt.left / skirt.right\nyoke.all / skirt.top")
    assert sort_of(ring) == "ring"
    assert sort_of(FRILLED) == "ring"


def test_an_edge_that_goes_round_lies_on_each_side_in_turn() -> None:
    pairs = FRILLED.seams[1].pairs
    assert [one for one, _ in pairs] == [("front", side) for side in ("left", "right", "top", "bottom")]
    assert {other for _, other in pairs} == {("frill", "top")}


@pytest.mark.parametrize("cloth", ["back", "face"])
def test_a_lining_of_several_pieces_is_one_lining(cloth: str) -> None:
    """Of the same cloth too: it meets each of them by edges that are named alike."""
    made = thing(
        panel("end", cloth="face"),
        part("middle", cloth="face"),
        part("lining", cloth=cloth),
        kind="runner",
        seams="""
        end.right / middle.left
        end.top and middle.top and end.top / lining.top
        end.bottom and middle.bottom and end.bottom / lining.bottom
        end.left / lining.left
        end.left / lining.right
        """,
    )
    assert [seam.sort for seam in made.seams] == ["plain", "lining", "lining", "lining", "lining"]


@pytest.mark.parametrize(
    "seams",
    [
        "one.all / other.all",
        "one.left and one.right / other.left and other.right\none.top / other.top\none.bottom / other.bottom",
        "one.left and one.top / other.left and other.top\none.right / other.right\none.bottom / other.bottom",
    ],
)
def test_seams_that_close_two_faces_all_round_are_turned_when_the_last_of_them_is_sewn(seams: str) -> None:
    made: Thing = thing(part("one"), part("other"), seams=seams)
    assert {seam.sort for seam in made.seams} == {"all round"}
    assert [encloses(seam, made) for seam in made.seams] == [seam is made.seams[-1] for seam in made.seams]


def test_two_of_an_outline_sewn_round_their_curve_make_a_bag_and_along_a_straight_edge_none() -> None:
    half = part("half", quantity=2, ends={"rim": "seam", "bottom": "seam"})
    half = replace(half, facts=half.facts | {"own edges"}, curved=("rim",))
    for edge, bag in (("rim", True), ("bottom", False)):
        made = thing(half, seams=f"half.{edge} / half.{edge}")
        assert encloses(made.seams[0], made) is bag


def test_two_of_one_panel_are_closed_all_round_too() -> None:
    made = thing(panel(quantity=2), seams="front.all / front.all")
    assert sort_of(made) == "all round"


@pytest.mark.parametrize(
    ("back", "seams"),
    [
        ({"kind": "envelope back"}, "one.all / other.all"),
        ({"ends": {"left": "seam", "right": "seam", "top": "hem", "bottom": "seam"}}, "one.left / other.left"),
        ({}, "one.left / other.left\none.right / other.right\none.bottom / other.bottom"),
    ],
)
def test_what_opens_or_has_an_edge_left_is_not_closed_all_round(back: dict[str, object], seams: str) -> None:
    made = thing(part("one"), part("other", **back), seams=seams)  # type: ignore[arg-type]
    assert {seam.sort for seam in made.seams} == {"plain"}


def test_a_strip_of_another_cloth_between_two_blocks_is_no_lining() -> None:
    made = thing(
        panel("block"),
        part("between", cloth="print"),
        part("border"),
        part("backing", cloth="print"),
        kind="other",
        seams="""
        block.right / between.left
        between.right / block.left
        block.bottom and between.bottom / border.top
        block.top and between.top / backing.top
        """,
    )
    assert [sort_of(made, number) for number in (0, 1)] == ["plain", "plain"]


def test_a_facing_sewn_on_all_round_is_turned_like_a_lining() -> None:
    cuff = thing(panel("cuff"), part("facing", "facing"), kind="garment", seams="cuff.all / facing.all")
    assert (sort_of(cuff), lining_of(cuff.seams[0], cuff), encloses(cuff.seams[0], cuff)) == ("lining", "facing", True)
    yoke = thing(panel("yoke"), part("facing", "facing"), kind="garment", seams="yoke.top / facing.top")
    assert (sort_of(yoke), encloses(yoke.seams[0], yoke)) == ("facing", False)

"""Recipes written from a thing alone, and between the steps of one's own."""

from __future__ import annotations

import pytest
from things import CUSHION, FRILLED, METHODS, act, closing, panel, part, thing

from generator.calculation.making_up.acts import Act
from generator.calculation.making_up.thing import Thing
from generator.calculation.making_up.writing import Writer, lines_of


def written(made: Thing, acts: tuple[Act, ...] = ()) -> list[str]:
    """The lines of a recipe, each on one line."""
    lines = lines_of(Writer(made, METHODS, acts).written())
    return [" ".join(text.strip() for text in line.written()).removeprefix("- use: ") for line in lines]


def test_a_cushion_is_cut_tucked_backed_turned_filled_and_closed() -> None:
    assert written(CUSHION) == [
        "cut",
        "mark folds, crease, stitch tucks, rule rows, sew rows, trim on: front",
        "cut later, line and turn on: back",
        "fill",
        "close opening on: back",
    ]


def test_a_frill_is_finished_before_it_is_sewn_on_and_caught_by_the_back() -> None:
    assert written(FRILLED) == [
        "cut",
        "mark folds, crease, stitch tucks, rule rows, sew rows, trim on: front",
        "join lengths on: frill",
        "cut later on: back",
        "join pieces, neaten, hem, gather on: frill",
        "join pieces on: front, frill",
        "line and turn on: back",
        "fill",
        "close opening on: back",
    ]


def test_a_fastener_is_set_before_its_bag_is_lined() -> None:
    snap = closing("snaps", ("lining", "top"), ("lining", "top"))
    bag = thing(
        panel(),
        part("back", cloth="face"),
        part("lining", cloth="print", quantity=2),
        kind="bag",
        closings=(snap,),
        seams="""
        front.left and front.bottom and front.right / back.left and back.bottom and back.right
        front.top and back.top / lining.top and lining.top
        """,
    )
    recipe = written(bag)
    assert recipe.index("set fasteners on: lining") < recipe.index("bag on: front, back")
    assert recipe[-1] == "line bag, close opening on: lining"


def test_a_knotted_tie_is_closed_at_its_end_and_a_strap_is_not() -> None:
    tie = part("tie", "tie", ends={"edge": "raw"})
    ties = closing("ties", ("tie", "edge"), ("front", "top"))
    assert "make straps on: tie" in written(thing(panel(), tie, kind="bag"))
    assert "make ties on: tie" in written(thing(panel(), tie, kind="bag", closings=(ties,)))


def test_what_frays_is_neatened_before_it_is_turned_out_and_what_does_not_is_left() -> None:
    fraying = thing(panel(), part("back", "envelope back"), seams="front.all / back.all")
    assert written(fraying)[-2:] == ["join pieces, neaten, turn out on: front, back", "fill"]
    felt = thing(panel(frays=False), part("back", "envelope back", frays=False), seams="front.all / back.all")
    assert written(felt)[-2:] == ["join pieces, turn out on: front, back", "fill"]


@pytest.mark.parametrize(
    "seams",
    [
        "front.all / back.all",
        "front.left and front.right / back.left and back.right\nfront.top and front.bottom / back.top and back.bottom",
    ],
)
def test_a_cushion_closed_all_round_has_an_opening_through_which_it_is_turned_and_filled(seams: str) -> None:
    """Two tucked panels: nothing of it is a lining."""
    made = thing(panel(), panel("back"), seams=seams)
    assert written(made)[-3:] == ["sew and turn on: front, back", "fill", "close opening on: front, back"]


def test_a_hood_of_two_outlines_is_turned_out_and_with_its_lining_only_once() -> None:
    ends = {"rim": "seam", "bottom": "seam"}
    outline = {"quantity": 2, "ends": ends, "curved": ("rim",)}
    hood, inner = (part(name, "rectangle", "own edges", cloth=name, **outline) for name in ("hood", "inner"))  # type: ignore[arg-type]
    alone = thing(hood, seams="hood.rim / hood.rim", kind="other")
    assert written(alone) == ["cut", "join pieces, neaten, turn out on: hood"]
    seams = "hood.rim / hood.rim\ninner.rim / inner.rim\nhood.bottom / inner.bottom"
    assert written(thing(hood, inner, seams=seams, kind="other")) == [
        "cut",
        "join pieces on: hood",
        "join pieces, line and turn, close opening on: inner",
    ]


def test_only_what_is_wanted_is_written_with_all_that_it_needs() -> None:
    writer = Writer(CUSHION, METHODS)
    tucked = writer.book.gives(act("stitch tucks", "front"))
    assert [one.does for one in writer.written(wanted=tucked)] == ["cut", "mark folds", "crease", "stitch tucks"]


def test_a_seam_that_a_step_of_ones_own_sews_is_not_written() -> None:
    own = act("sew", "front", "frill")
    writer = Writer(FRILLED, METHODS, (own,))
    left = Writer(FRILLED, METHODS, (own,), left=writer.book.gives(own))
    assert not any(one.does == "join pieces" and set(one.pieces) == {"front", "frill"} for one in left.written())


def test_an_opening_is_closed_before_buttonholes_are_made_beside_it() -> None:
    buttons = closing("buttons", ("cuff", "left"), ("cuff", "right"))
    cuff = thing(
        panel("cuff"),
        part("facing", "facing"),
        kind="garment",
        closings=(buttons,),
        seams="cuff.all / facing.all",
    )
    assert written(cuff)[-2:] == ["line and turn, close opening on: facing", "buttonholes, sew buttons on: cuff"]

"""What lies on what under the needle: which piece below, which side up, which edges sewn, where an opening stays."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from things import METHODS, act, edges, own, panel, part, thing, use

from generator.calculation.making_up.acts import Act, Doing
from generator.calculation.making_up.book import book_of
from generator.calculation.making_up.joined import Joined, Opening
from generator.calculation.making_up.joining import Joiner
from generator.calculation.making_up.thing import Thing

USUAL = Fraction(5)
SQUARE = (16, 16)
STRIP = {"top": "seam", "left": "hem", "right": "hem", "bottom": "hem"}


def joined(made: Thing, *steps: Doing, step: int = -1, **sizes: tuple[int, int]) -> tuple[Joined, ...]:
    """What one step of a recipe joins; pieces are 16 square where no other size is told."""
    acts = [one for doing in steps for one in doing.acts]
    told = dict.fromkeys(made.parts, SQUARE) | sizes
    parts = {
        name: replace(one, across=Fraction(told[name][0]), along=Fraction(told[name][1]))
        for name, one in made.parts.items()
    }
    joiner = Joiner(book_of(replace(made, parts=parts), METHODS, acts), lambda part: USUAL)
    return joiner.joined(steps[step].acts)


def layers(one: Joined) -> list[tuple[str, str]]:
    """The layers from below, each with the side of the cloth that is seen."""
    return [(" + ".join(layer.pieces), "right" if layer.right_side_up else "wrong") for layer in one.layers]


CUSHION = thing(part("back"), panel(), seams="back.all / front.all")


def test_a_back_lies_on_the_panel_with_right_sides_together_and_is_sewn_all_round() -> None:
    (one,) = joined(CUSHION, own(act("sew", "back", "front"), act("turn out", "front")))
    assert layers(one) == [("front", "right"), ("back", "wrong")]
    assert (set(one.sides), one.turned, one.opening) == ({"left", "right", "top", "bottom"}, True, None)


def test_an_opening_has_the_length_and_the_edge_that_the_act_says() -> None:
    left_open = replace(act("leave open", "back.bottom"), length=Fraction(8))
    (one,) = joined(CUSHION, own(act("sew", "front", "back"), left_open))
    assert one.opening == Opening(("front", "bottom"), Fraction(8))


def test_a_standard_step_leaves_the_usual_opening_in_a_side_that_no_tuck_runs_into() -> None:
    made = thing(panel(), part("back"), seams="front.all / back.all", kind="sample")
    (one,) = joined(made, use("line and turn", "back"), front=(30, 10), back=(30, 10))
    assert one.opening == Opening(("front", "left"), USUAL)


def test_the_larger_piece_lies_below_and_what_shares_its_seam_is_sewn_in_one_go() -> None:
    made = thing(
        panel(), part("back"), part("lining", cloth="lining"), seams="front.bottom / back.bottom\nback.all / lining.all"
    )
    acts = (act("sew", "front.bottom", "back.bottom"), act("sew", "back", "lining"), act("turn out", "back"))
    (one,) = joined(made, own(*acts), front=(12, 9), back=(12, 13), lining=(12, 13))
    assert layers(one) == [("back", "right"), ("front", "wrong"), ("lining", "wrong")]
    assert [(layer.at, layer.own) for layer in one.layers] == [("", ""), ("bottom", "bottom"), ("left", "left")]


def test_two_copies_at_two_sides_of_one_piece_are_two_layers() -> None:
    made = thing(panel("end", quantity=2), part("middle"), seams="end.right / middle.left\nend.right / middle.right")
    (one,) = joined(made, use("join pieces", "end and middle"), end=(12, 16), middle=(40, 16))
    assert layers(one) == [("middle", "right"), ("end", "wrong"), ("end", "wrong")]
    assert [layer.at for layer in one.layers] == ["", "left", "right"]


def test_pieces_in_a_row_lie_below_the_lining_that_goes_over_all_of_them() -> None:
    seams = """
        end.right / middle.left
        end.right / middle.right
        end.top and middle.top and end.top / lining.top
        end.bottom and middle.bottom and end.bottom / lining.bottom
        end.left / lining.left
        end.left / lining.right"""
    made = thing(
        panel("end", quantity=2), part("middle"), part("lining", cloth="lining"), seams=seams.strip(), kind="runner"
    )
    (one,) = joined(made, use("line and turn", "lining"), end=(12, 16), middle=(40, 16), lining=(64, 16))
    assert layers(one) == [("end + middle + end", "right"), ("lining", "wrong")]
    assert set(one.sides) == {"top", "bottom", "left", "right"}
    assert one.opening is not None
    assert one.opening.edge[0] == "middle"


def test_a_frill_lies_on_what_it_is_sewn_to_whichever_is_larger() -> None:
    made = thing(part("frill", "gathered strip", ends=STRIP), panel(), seams="frill.top / front.bottom")
    (one,) = joined(made, use("join pieces", "front and frill"), frill=(16, 40), front=(16, 5))
    assert layers(one) == [("front", "right"), ("frill", "wrong")]


def test_a_ring_is_one_piece_folded() -> None:
    made = thing(panel("sleeve"), seams="sleeve.left / sleeve.right", kind="lampshade")
    (one,) = joined(made, use("close ring", "sleeve"))
    assert (one.folded, layers(one)) == (True, [("sleeve", "right"), ("sleeve", "wrong")])


def test_two_copies_of_a_piece_are_sewn_at_both_of_the_edges_that_meet() -> None:
    made = thing(part("skirt", quantity=2), seams="skirt.left / skirt.right", kind="garment")
    (one,) = joined(made, use("join pieces", "skirt"))
    assert (one.folded, set(one.sides)) == (False, {"left", "right"})


def test_the_lining_of_a_bag_has_its_opening_in_its_own_bottom() -> None:
    seams = "front.left and front.bottom and front.right / back.left and back.bottom and back.right\n"
    made = thing(
        panel(),
        part("back"),
        part("inside", cloth="lining", quantity=2),
        seams=seams + "front.top and back.top / inside.top and inside.top",
        kind="bag",
    )
    (one,) = joined(made, use("line bag", "inside"))
    assert one.opening == Opening(("inside", "bottom"), USUAL)


def test_edges_sewn_with_wrong_sides_together_show_the_wrong_side_below() -> None:
    wrong = replace(act("sew", "front.left", "back.left"), right_sides=False)
    (one,) = joined(CUSHION, own(wrong))
    assert layers(one) == [("front", "wrong"), ("back", "right")]


def test_what_is_sewn_with_right_sides_and_with_wrong_sides_together_is_not_sewn_in_one_go() -> None:
    made = thing(panel(), part("back"), seams="front.top / back.top\nfront.left / back.left")
    wrong = replace(act("sew", "front.left", "back.left"), right_sides=False)
    assert len(joined(made, own(act("sew", "front.top", "back.top"), wrong))) == 2


def test_wadding_is_laid_on_the_wrong_side() -> None:
    (one,) = joined(CUSHION, own(act("lay", "back", "front")))
    assert (one.does, layers(one)) == ("lay", [("front", "wrong"), ("back", "right")])


def test_a_step_that_only_turns_out_tells_what_was_sewn_before() -> None:
    (one,) = joined(CUSHION, use("join pieces", "front and back"), use("turn out", "front"))
    assert (one.does, one.turned, layers(one)) == ("turn out", True, [("front", "right"), ("back", "wrong")])


@pytest.mark.parametrize(
    ("seams", "acts"),
    [
        # Sewn on its face, wherever that is; along the edge of a band; nothing that the file knows of.
        ("front.top / back.top", (act("sew", "front.top", "back.top", "on"),)),
        ("front.all / band.edge", (Act("bind", edges("band")),)),
        ("front.all / back.all", (act("look", "front"),)),
    ],
)
def test_what_has_no_layers_is_not_told(seams: str, acts: tuple[Act, ...]) -> None:
    made = thing(panel(), part("back"), part("band", "binding", ends={}), seams=seams)
    assert joined(made, own(*acts)) == ()


def test_a_grid_is_joined_row_by_row_before_its_rows_are() -> None:
    seams = "one.right / two.left\none.bottom and two.bottom / two.bottom and one.bottom"
    made = thing(panel("one", quantity=2), part("two", quantity=2), seams=seams, kind="mats")
    within, between = joined(made, use("join pieces", "one and two"))
    assert layers(within) == [("one", "right"), ("two", "wrong")]
    assert layers(between) == [("one + two", "right"), ("two + one", "wrong")]


def test_an_opening_in_an_edge_that_another_step_sews_lies_in_what_this_one_sews() -> None:
    """The seam has four edges, of which this step sews one; it says nothing of where else its opening could be."""
    left_open = replace(act("leave open", "front.top"), length=Fraction(3))
    (one,) = joined(CUSHION, own(act("sew", "front.left", "back.left"), left_open))
    assert one.opening == Opening(("front", "left"), Fraction(3))


def test_what_is_sewn_after_turning_out_is_sewn_by_hand_and_has_no_layers() -> None:
    made = thing(panel(), part("back"), seams="front.all / back.all")
    three = "front.left and front.top and front.right", "back.left and back.top and back.right"
    acts = (act("sew", *three), act("turn out", "front"), act("sew", "front.bottom", "back.bottom"))
    (one,) = joined(made, own(*acts))
    assert set(one.sides) == {"left", "top", "right"}


def test_openings_for_good_lie_where_the_acts_say_beside_the_one_that_is_closed() -> None:
    gap = replace(act("leave open", "back.left"), length=Fraction(2), for_good=True, end="top")
    other = replace(gap, what=(("front", "right"),), end="")
    open_now = replace(act("leave open", "back.bottom"), length=Fraction(8))
    (one,) = joined(CUSHION, own(act("sew", "front", "back"), gap, other, open_now))
    assert one.opening == Opening(("front", "bottom"), Fraction(8))
    assert one.gaps == (Opening(("front", "left"), Fraction(2), "top"), Opening(("front", "right"), Fraction(2)))


def test_edges_of_an_outline_are_sewn_by_their_own_names() -> None:
    hood = replace(part("hood"), quantity=2, ends={"crown": "seam", "lower": "seam"}, facts=frozenset({"own edges"}))
    made = thing(hood, seams="hood.crown / hood.crown")
    (one,) = joined(made, own(act("sew", "hood", "hood")))
    assert one.sides == ("crown",)
    assert [layer.own for layer in one.layers] == ["", "crown"]


def test_two_copies_beside_a_panel_lie_at_either_side_of_it() -> None:
    """The left piece of a runner and the right one: the same piece, by opposite edges."""
    made = thing(panel(), part("side", quantity=2), seams="side.right / front.left\nfront.right / side.left")
    (one,) = joined(made, use("join pieces", "front and side"), front=(20, 10), side=(4, 10))
    assert [(layer.pieces, layer.at, layer.own) for layer in one.layers[1:]] == [
        (("side",), "left", "right"),
        (("side",), "right", "left"),
    ]
    whole = thing(panel(), part("side"), seams="side.right / front.left\nfront.right / side.left")
    (one,) = joined(whole, use("join pieces", "front and side"), front=(20, 10), side=(20, 10))
    assert len(one.layers) == 2


def test_what_several_seams_of_a_step_close_is_turned_out_with_the_last_of_them() -> None:
    """A box of two faces: the first of them cannot be turned before the second is sewn."""
    seams = "front.all / boxing.edge\nback.all / boxing.edge"
    round_ends = {"ends": {"rim": "seam"}}
    made = thing(
        part("front", "circle", **round_ends),  # type: ignore[arg-type]
        part("back", "circle", **round_ends),  # type: ignore[arg-type]
        part("boxing", "boxing"),
        seams=seams.replace("all", "rim")
        .replace("back.rim / boxing.edge", "back.rim / boxing.bottom")
        .replace(".edge", ".top"),
    )
    found = joined(made, use("make boxing", "boxing"), front=(14, 14), back=(14, 14), boxing=(44, 2))
    assert [one.turned for one in found if one.does == "sew"][-1]
    assert sum(one.turned for one in found) == 1

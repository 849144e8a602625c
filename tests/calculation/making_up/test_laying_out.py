"""A finished thing laid out from its seams: where each piece lies, which way up, and how large the whole is."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.making_up.laid import LaidOut, Lying
from generator.calculation.making_up.laying_out import laid_out
from generator.calculation.making_up.thing import Component
from tests.calculation.making_up.things import FRILL, closing, panel, part, thing

RIM = {"rim": "seam"}


def sized(one: Component, across: int, along: int) -> Component:
    """A piece with its finished size in inches."""
    return Component(
        one.name, one.kind, one.quantity, ends=one.ends, facts=one.facts, across=Fraction(across), along=Fraction(along)
    )


def size(laid: LaidOut) -> tuple[Fraction, Fraction]:
    return laid.across, laid.along


def places(laid: LaidOut, name: str) -> list[tuple[int, int, int, int, int, str]]:
    """Left, top, across, along, quarter turns and layer of every copy of a piece."""
    return [
        (int(one.left), int(one.top), int(one.across), int(one.along), one.turned, one.layer)
        for one in laid.pieces
        if one.piece == name
    ]


def test_like_named_edges_lie_one_behind_the_other() -> None:
    cushion = thing(sized(panel(), 12, 10), sized(part("back"), 12, 10), seams="front.all / back.all")
    laid = laid_out(cushion)
    assert size(laid) == (12, 10)
    assert places(laid, "front") == [(0, 0, 12, 10, 0, "front")]
    assert places(laid, "back") == [(0, 0, 12, 10, 0, "behind")]


def test_a_frill_stands_out_by_its_drop_on_every_side() -> None:
    frill = sized(part("frill", "gathered strip", ends=FRILL), 88, 2)
    laid = laid_out(
        thing(
            sized(panel(), 12, 10),
            frill,
            sized(part("back"), 12, 10),
            seams="frill.left / frill.right\nfront.all / frill.top\nfront.all / back.all",
        )
    )
    assert size(laid) == (16, 14)
    # Its gathered edge looks at the front: to the right of it, say, it is turned so that its top lies at the left.
    assert places(laid, "frill") == [
        (-2, 0, 2, 10, 1, "front"),
        (12, 0, 2, 10, 3, "front"),
        (0, -2, 12, 2, 2, "front"),
        (0, 10, 12, 2, 0, "front"),
    ]


def test_opposite_edges_lie_side_by_side_and_a_second_copy_is_turned_by_half() -> None:
    end = part("end", "tucked panel", quantity=2, ends=panel().ends, across=Fraction(8), along=Fraction(12))
    laid = laid_out(
        thing(
            end,
            sized(part("middle"), 20, 12),
            sized(part("lining"), 36, 12),
            kind="runner",
            seams="""
            end.right / middle.left
            end.right / middle.right
            end.top and middle.top and end.top / lining.top
            end.bottom and middle.bottom and end.bottom / lining.bottom
            end.left / lining.left
            end.left / lining.right
            """,
        )
    )
    assert size(laid) == (36, 12)
    assert places(laid, "end") == [(0, 0, 8, 12, 0, "front"), (28, 0, 8, 12, 2, "front")]
    assert places(laid, "middle") == [(8, 0, 20, 12, 0, "front")]
    assert places(laid, "lining")[0][:4] == (0, 0, 36, 12)
    assert not laid.round


def test_a_row_sewn_to_a_row_of_the_same_pieces_is_doubled() -> None:
    tucked = part("tucked", "tucked panel", quantity=2, ends=panel().ends, across=Fraction(6), along=Fraction(6))
    plain = part("plain", "rectangle", quantity=2, ends=panel().ends, across=Fraction(6), along=Fraction(6))
    laid = laid_out(
        thing(
            tucked,
            plain,
            kind="mats",
            seams="tucked.right / plain.left\ntucked.bottom and plain.bottom / plain.bottom and tucked.bottom",
        )
    )
    assert size(laid) == (12, 12)
    assert places(laid, "tucked") == [(0, 0, 6, 6, 0, "front"), (6, 6, 6, 6, 2, "front")]
    assert places(laid, "plain") == [(6, 0, 6, 6, 0, "front"), (0, 6, 6, 6, 2, "front")]
    assert laid.number == 1


def test_a_boxing_gives_the_depth() -> None:
    laid = laid_out(
        thing(
            sized(panel(), 14, 14),
            sized(part("bottom"), 14, 14),
            sized(part("band", "boxing", ends={**panel().ends, "edge": "seam"}), 56, 2),
            seams="front.all / band.edge\nbottom.all / band.edge",
        )
    )
    assert (*size(laid), laid.depth) == (14, 14, 2)
    assert places(laid, "bottom") == [(0, 0, 14, 14, 0, "behind")]


def test_what_is_closed_to_a_ring_is_measured_round() -> None:
    sleeve = thing(sized(panel("sleeve"), 18, 8), kind="lampshade", seams="sleeve.left / sleeve.right")
    assert (*size(laid_out(sleeve)), laid_out(sleeve).round) == (18, 8, "across")


def test_a_lap_is_taken_off_a_ring_that_buttons_close() -> None:
    buttons = closing("buttons", ("wrap", "left"), ("wrap", "right"), overlap=Fraction(2))
    wrap = thing(sized(panel("wrap"), 18, 14), kind="bolster", closings=(buttons,))
    assert (*size(laid_out(wrap)), laid_out(wrap).round) == (16, 14, "across")


def test_a_flap_that_closes_over_the_front_adds_nothing() -> None:
    parts = sized(panel(), 7, 8), sized(part("back"), 7, 11)
    seams = "front.bottom / back.bottom"
    tie = closing("ties", ("tie", "edge"), ("back", "top"))
    assert size(laid_out(thing(*parts, seams=seams, closings=(tie,)))) == (7, 8)
    assert size(laid_out(thing(*parts, seams=seams))) == (7, 11)


def test_two_halves_of_a_skirt_hang_below_two_yokes() -> None:
    yoke = part("yoke", "tucked panel", quantity=2, ends=panel().ends, across=Fraction(12), along=Fraction(5))
    skirt = part("skirt", "gathered strip", quantity=2, ends=FRILL, across=Fraction(24), along=Fraction(12))
    laid = laid_out(thing(yoke, skirt, kind="garment", seams="yoke.bottom / skirt.top\nskirt.left / skirt.right"))
    assert (*size(laid), laid.number) == (12, 17, 1)


def test_a_curtain_hangs_by_the_side_that_the_rod_runs_through() -> None:
    curtain = part("curtain", "tucked panel", quantity=2, ends=panel().ends, across=Fraction(18), along=Fraction(27))
    laid = laid_out(thing(curtain, kind="curtain"), "left")
    # A quarter turn clockwise brings the left edge to the top; there are two curtains.
    assert (*size(laid), laid.number) == (27, 18, 2)
    (lying,) = laid.pieces
    assert (lying.turned, lying.lies_at("left"), lying.side_at("top"), lying.lies_at("bottom")) == (
        1,
        "top",
        "left",
        "left",
    )


def test_what_is_only_sewn_on_adds_nothing() -> None:
    pocket = sized(panel("pocket"), 6, 5)
    bag = part("bag", "rectangle", quantity=2, ends=panel().ends, across=Fraction(12), along=Fraction(14))
    strap = sized(part("strap", "tie", ends={"edge": "raw"}), 40, 1)
    laid = laid_out(
        thing(
            pocket,
            bag,
            strap,
            kind="bag",
            seams="bag.left and bag.bottom and bag.right / bag.left and bag.bottom and bag.right",
        )
    )
    assert (*size(laid), laid.number) == (12, 14, 1)
    assert places(laid, "bag") == [(0, 0, 12, 14, 0, "front"), (0, 0, 12, 14, 0, "behind")]


def test_a_lining_larger_than_what_it_lines_adds_nothing() -> None:
    mat = part(
        "mat",
        "tucked panel",
        quantity=4,
        ends=dict.fromkeys(panel().ends, "bound"),
        across=Fraction(16),
        along=Fraction(12),
    )
    backing = part("backing", "rectangle", quantity=4, ends=mat.ends, across=Fraction(17), along=Fraction(13))
    laid = laid_out(thing(mat, backing, kind="mats", seams="backing.all / mat.all"))
    assert (*size(laid), laid.number) == (16, 12, 4)
    assert laid.pieces[1] == Lying("backing", Fraction(-1, 2), Fraction(-1, 2), Fraction(17), Fraction(13), 0, "inside")


def test_a_round_cushion_has_its_frill_all_round() -> None:
    top = part("top", "circle", ends=RIM, across=Fraction(14), along=Fraction(14))
    under = part("under", "circle", ends=RIM, across=Fraction(14), along=Fraction(14))
    frill = sized(part("frill", "gathered strip", ends=FRILL), 88, 2)
    laid = laid_out(
        thing(top, under, frill, seams="frill.left / frill.right\ntop.rim / frill.top\ntop.rim / under.rim")
    )
    assert size(laid) == (18, 18)
    assert places(laid, "frill") == [(-2, -2, 18, 18, 0, "front")]
    assert places(laid, "under") == [(0, 0, 14, 14, 0, "behind")]


def test_pieces_sewn_round_in_a_row_are_a_ring() -> None:
    laid = laid_out(
        thing(
            sized(panel(), 12, 10),
            sized(part("side"), 4, 10),
            kind="other",
            seams="front.right / side.left\nside.right / front.left",
        )
    )
    assert (*size(laid), laid.round) == (16, 10, "across")


def test_four_squares_in_a_row_lie_side_by_side_where_nothing_is_double() -> None:
    square = part("square", "tucked panel", quantity=4, ends=panel().ends, across=Fraction(6), along=Fraction(6))
    seams = "square.right / square.left"
    assert size(laid_out(thing(square, kind="runner", seams=seams))) == (24, 6)
    assert size(laid_out(thing(square, kind="bag", seams=seams))) == (6, 6)


def test_a_piece_with_an_outline_is_as_large_or_smaller() -> None:
    # One of which nobody knows the shape is drawn as it is before; one with an outline is drawn as it is cut.
    assert laid_out(thing(sized(panel("cosy", "outline", "shape unknown"), 13, 11))).shaped
    assert not laid_out(thing(sized(panel("cosy", "outline"), 13, 11))).shaped
    assert not laid_out(thing(sized(panel(), 13, 11))).shaped


def test_a_row_of_blocks_has_a_strip_between_each_two() -> None:
    block = part("block", "tucked panel", quantity=3, ends=panel().ends, across=Fraction(12), along=Fraction(14))
    strip = part("between", "rectangle", quantity=2, ends=panel().ends, across=Fraction(2), along=Fraction(14))
    laid = laid_out(
        thing(
            block,
            strip,
            sized(part("border"), 40, 4),
            kind="other",
            seams="""
            block.right / between.left
            between.right / block.left
            block.bottom and between.bottom and block.bottom and between.bottom and block.bottom / border.top
            """,
        )
    )
    # 3 x 12 and 2 x 2; 14 and 4.
    assert (*size(laid), laid.round, laid.number) == (40, 18, "", 1)
    assert [one[0] for one in places(laid, "block")] == [0, 14, 28]
    assert [one[0] for one in places(laid, "between")] == [12, 26]
    assert places(laid, "border") == [(0, 14, 40, 4, 0, "front")]

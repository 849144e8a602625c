"""Pictures of seams: what lies where, the seam at its allowance, the opening, words; which seams have none."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

import pytest
from panels import panel_of, piece_of, worksheet_of
from pieces import HEM, SEAM, circle_cut, envelope_back, piece_cut, shape_cut, straight
from shapely.geometry import LineString

from generator.calculation.drawn_up import DrawnUp
from generator.calculation.making_up.joined import Joined, JoinLayer, Opening
from generator.calculation.shapes.by_word import half_circle
from generator.calculation.worked import End
from generator.calculation.worked_piece import Made, Piece
from generator.calculation.worked_project import SheetStep, Worksheet
from generator.drawing.canvas import Canvas
from generator.drawing.labels import Box
from generator.drawing.seam import draw_seam, heights_of_seam, seam_names, sketch_seam
from generator.drawing.seams.lines import length_of
from generator.drawing.seams.paper import fitted
from generator.drawing.seams.plan import SeamPlan, plan_seam
from generator.drawing.seams.round_end import plan_round_end
from generator.drawing.seams.words import told
from generator.drawing.sizes import DrawnSize
from generator.drawing.style import Style

ALL = ("left", "right", "top", "bottom")
FRONT = piece_of(panel_of(9))  # 9 tucks: 2 * 3/4 + 8 * 3/4 = 7 1/2 in wide, 15 in long, seams of 1/2 in
BACK = piece_cut("rectangle", Fraction(17, 2), 16, name="back")
FRILL = piece_cut(
    "gathered strip",
    31,
    4,
    {"top": SEAM, "left": HEM, "right": HEM, "bottom": HEM},
    name="frill",
    finished_across=Fraction(30),
    finished_along=Fraction(3),
    made=Made(DrawnUp("top", Fraction(15, 2))),
)


def lying(*layers: JoinLayer, **more: object) -> Joined:
    return Joined(("plain",), layers, **more)  # type: ignore[arg-type]


def layer(*pieces: str, up: bool, at: str = "", own: str = "") -> JoinLayer:
    return JoinLayer(pieces, up, at, own)


ROUND = lying(layer("front", up=True), layer("back", up=False, at="left", own="left"), sides=ALL)


def sheet(joined: Joined, *pieces: Piece) -> Worksheet:
    """A worksheet whose only step joins these pieces."""
    step = SheetStep(1, "", "", joined.pieces, "", (), (), (), 5, session_ends=False, joined=(joined,))
    return replace(worksheet_of(*(pieces or (FRONT, BACK, FRILL))), steps=(step,))


def planned(joined: Joined, *pieces: Piece) -> SeamPlan:
    plan = plan_seam(sheet(joined, *pieces), joined)
    assert plan is not None
    return plan


def words_of(joined: Joined, *pieces: Piece, width: float = 93.0) -> list[str]:
    worksheet = sheet(joined, *pieces)
    height = heights_of_seam(worksheet, "1-1", Style(), width).natural
    return [label.words for label in sketch_seam(worksheet, "1-1", Style(), DrawnSize(width, height)).labels]


def corners(box: Box) -> tuple[float, ...]:
    return box.left, box.top, box.right, box.bottom


def test_both_layers_lie_with_their_edges_level_and_the_seam_at_its_allowance() -> None:
    """Cut 8 1/2 by 16; the seam lines lie 1/2 in inside, where the finished panel of 7 1/2 by 15 begins."""
    plan = planned(ROUND)
    assert [corners(laid.cut) for laid in (*plan.below, *plan.over)] == [(-0.5, -0.5, 8.0, 15.5)] * 2
    assert plan.seams["left"] == ((0.0, 15.0), (0.0, 0.0))
    assert plan.seams["bottom"] == ((7.5, 15.0), (0.0, 15.0))


def test_the_opening_is_as_long_as_the_act_says_and_lies_in_the_middle_of_its_edge() -> None:
    plan = planned(replace(ROUND, opening=Opening(("front", "left"), Fraction(6)), turned=True))
    assert plan.opening == ("left", ((0.0, 4.5), (0.0, 10.5)))


@pytest.mark.parametrize(
    ("at", "own", "lies"),
    [
        ("top", "top", (0.0, 0.0, 7.5, 3.0)),
        ("bottom", "top", (0.0, 12.0, 7.5, 15.0)),
        ("bottom", "left", (2.25, 7.5, 5.25, 15.0)),
        ("left", "right", (0.0, 6.0, 7.5, 9.0)),
        ("right", "top", (4.5, 3.75, 7.5, 11.25)),
    ],
)
def test_a_piece_lies_level_with_the_side_it_is_sewn_to_in_its_middle(
    at: str, own: str, lies: tuple[float, ...]
) -> None:
    """A band 7 1/2 by 3 on a panel 7 1/2 by 15."""
    band = piece_cut("rectangle", Fraction(17, 2), 4, name="band")
    joined = lying(layer("front", up=True), layer("band", up=False, at=at, own=own), sides=(at,))
    (over,) = planned(joined, FRONT, band).over
    assert corners(over.finished) == lies


def test_a_seam_opened_out_has_the_upper_piece_beside_the_lower_one_right_side_up() -> None:
    joined = lying(layer("front", up=True), layer("frill", up=False, at="bottom", own="top"), sides=("bottom",))
    front, frill = planned(joined).opened
    assert corners(front.cut) == (-0.5, -0.5, 8.0, 15.0)
    assert (corners(frill.finished), frill.right_side_up) == ((0.0, 15.0, 7.5, 18.0), True)


def test_a_frill_sewn_all_round_lies_inwards_and_stands_out_when_it_is_opened() -> None:
    joined = lying(layer("front", up=True), layer("frill", up=False, at="left", own="top"), sides=ALL)
    plan = planned(joined)
    assert {corners(laid.finished) for laid in plan.over} == {
        (0.0, 0.0, 3.0, 15.0),
        (4.5, 0.0, 7.5, 15.0),
        (0.0, 0.0, 7.5, 3.0),
        (0.0, 12.0, 7.5, 15.0),
    }
    assert (-3.0, 0.0, 0.0, 15.0) in {corners(laid.finished) for laid in plan.opened}


def test_the_halves_of_an_envelope_back_lie_face_down_over_each_other_by_their_lap() -> None:
    """16 and 4: halves of 10, so the one at the left ends at 10 and the one at the right begins at 6."""
    square = piece_cut("rectangle", 17, 17, name="front")
    plan = planned(ROUND, square, envelope_back())
    spans = sorted((laid.finished.left, laid.finished.right) for laid in plan.over)
    assert spans == [(0.0, 10.0), (6.0, 16.0)]
    # The hemmed edges in the middle have no cloth beyond them, the outer ones have their seam.
    assert sorted((laid.cut.left, laid.cut.right) for laid in plan.over) == [(-0.5, 10.0), (6.0, 16.5)]


def test_pieces_in_a_row_lie_beside_each_other_below_what_goes_over_all() -> None:
    end, middle = (piece_cut("rectangle", wide + 1, 11, name=name) for wide, name in ((10, "end"), (30, "middle")))
    lining = piece_cut("rectangle", 51, 11, name="lining")
    row = layer("end", "middle", "end", up=True)
    plan = planned(lying(row, layer("lining", up=False, at="top", own="top"), sides=ALL), end, middle, lining)
    assert [(laid.finished.left, laid.finished.right) for laid in plan.below] == [(0, 10), (10, 40), (40, 50)]
    # Only the ends of the row have cloth beyond them.
    assert [(laid.cut.left, laid.cut.right) for laid in plan.below] == [(-0.5, 10), (10, 40), (40, 50.5)]


def test_a_ring_is_folded_in_half_and_its_fold_has_no_allowance() -> None:
    both = (layer("front", up=True), layer("front", up=False, at="left", own="right"))
    plan = planned(lying(*both, sides=("left",), folded=True))
    assert corners(plan.below[0].cut) == (-0.5, -0.5, 3.75, 15.5)
    assert plan.tube


@pytest.mark.parametrize(
    ("joined", "named"),
    [
        (ROUND, ["1 Lay", "back, wrong side up", "front, right side up", "2 Sew", "1/2 in from the edge"]),
        (
            replace(ROUND, turned=True, opening=Opening(("front", "left"), Fraction(6))),
            ["3 Turn out", "open 6 in", "through the", "opening"],
        ),
        (
            lying(layer("front", up=False), layer("back", up=True, at="left", own="left"), sides=ALL),
            ["front, wrong side up", "back, right side up", "2 Baste", "close to the edge"],
        ),
        (lying(layer("front", up=False), layer("back", up=True), does="lay"), ["Lay", "back, right side up"]),
        (replace(ROUND, does="turn out", turned=True), ["Turn out", "through the open edge"]),
    ],
)
def test_a_picture_names_its_layers_with_the_side_that_is_up_and_what_is_done(
    joined: Joined, named: Sequence[str]
) -> None:
    assert set(named) <= set(words_of(joined))


def test_what_stays_wrong_side_out_is_not_shown_opened() -> None:
    assert [words for words in words_of(ROUND) if words[0].isdigit() and words[1] == " "] == ["1 Lay", "2 Sew"]


def test_long_work_has_its_parts_one_below_the_other_and_lays_and_sews_in_one() -> None:
    long, lining = (piece_cut("rectangle", 61, 13, name=name) for name in ("front", "back"))
    assert words_of(replace(ROUND, turned=True), long, lining)[0] == "1 Lay, sew 1/2 in from the edge"


@pytest.mark.parametrize(
    "piece",
    [
        piece_cut("tie", 3, 20, name="back", made=Made(folds=(Fraction(3, 2),))),
        piece_cut("gathered end", 20, 4, name="back", made=Made(DrawnUp("top", Fraction(0)))),
        piece_cut("bought", 3, 3, name="back", parts=()),
        piece_cut("tucked panel", 9, 16, name="back", shaped=True),
    ],
)
def test_what_is_not_flat_or_of_a_shape_that_nobody_knows_has_no_picture(piece: Piece) -> None:
    worksheet = sheet(ROUND, FRONT, piece)
    assert seam_names(worksheet) == ()
    with pytest.raises(KeyError, match="no flat rectangle"):
        draw_seam(worksheet, "1-1", Style(), DrawnSize(93, 40))


def test_cloth_keeps_its_proportions_on_paper() -> None:
    canvas = Canvas(4, 4, Style(), "trial")
    paper = fitted(canvas, Box(-0.5, -0.5, 8.0, 15.5), Box(0, 0, 2, 2), (0, 0))
    (left, top), (right, _), (_, bottom), _ = paper.corners(Box(0.0, 0.0, 7.5, 15.0))
    assert (right - left) / (bottom - top) == pytest.approx(7.5 / 15)
    assert bottom - top == pytest.approx(2 * 15 / 16)


def test_a_long_strip_is_broken_beyond_what_must_be_seen_and_keeps_its_ends_true() -> None:
    """60 by 1 in 3 in of paper: 1/4 in high at least, so most of its length is left out."""
    canvas = Canvas(4, 4, Style(), "trial")
    paper = fitted(canvas, Box(0.0, 0.0, 60.0, 1.0), Box(0, 0, 3, 2), (0.0, 5.0))
    start, end = paper.gap
    assert start >= 5.0
    assert paper.at((60.0, 0.0))[0] - paper.at((end, 0.0))[0] == pytest.approx((60.0 - end) * paper.scale)
    assert paper.shown(((start + end) / 2, 0.5)) is None


def test_the_picture_is_exactly_as_large_as_it_is_asked_to_be_and_tells_the_act() -> None:
    worksheet = sheet(replace(ROUND, turned=True, opening=Opening(("front", "left"), Fraction(6))))
    picture = draw_seam(worksheet, "1-1", Style(), DrawnSize(93, 50))
    assert (picture.width * 25.4, picture.height * 25.4) == (pytest.approx(93), pytest.approx(50))
    assert picture.alt == (
        "Back, wrong side up, lies on front, right side up, edges level. Sewn all round, 1/2 in from the edge. "
        "Open 6 in at the left. Turned out: through the opening."
    )


def test_seams_of_two_widths_are_not_told_as_one() -> None:
    wider = {**dict.fromkeys(ALL, SEAM), "top": End("seam", Fraction(1))}
    uneven = piece_cut("rectangle", 9, 16, wider, name="front")
    assert not [words for words in words_of(ROUND, uneven, BACK) if words.endswith("from the edge")]


TUBE, END = piece_cut("rectangle", 19, 23, name="tube"), circle_cut(8, name="end")
CLOSED = lying(
    layer("tube", up=True),
    layer("end", up=False, at="left", own="rim"),
    layer("end", up=False, at="right", own="rim"),
    sides=("left", "right"),
)


def test_a_round_end_is_as_wide_as_its_ring_and_sewn_at_the_allowance_of_its_rim() -> None:
    """Cut 8 through with seams of 1/2: 7 through. The ring is 18 long; of that 4/5 of the width is shown."""
    plan = plan_round_end(sheet(CLOSED, TUBE, END), CLOSED)
    assert plan is not None
    assert (plan.wide, plan.allowance, plan.ends) == (7.0, 0.5, 2)
    assert plan.high == pytest.approx(5.6)


def test_a_round_end_is_told_with_its_quarters_and_the_other_end() -> None:
    written = words_of(CLOSED, TUBE, END)
    assert {"end, wrong side up", "quarters meet", "1/2 in from the edge", "the other end alike"} <= set(written)
    assert "3 Turn out" not in written
    assert "3 Turn out" in words_of(replace(CLOSED, turned=True), TUBE, END)


def test_two_rounds_lie_on_each_other_and_their_opening_is_measured_along_the_rim() -> None:
    """15 cut is 14 through. Half of the opening of 5 takes 5/2 / 7 of an arc to each side of the lowest place."""
    lower, upper = (circle_cut(15, name=name) for name in ("front", "back"))
    joined = lying(
        layer("front", up=True),
        layer("back", up=False, at="rim", own="rim"),
        sides=("rim",),
        opening=Opening(("front", "rim"), Fraction(5)),
        turned=True,
    )
    plan = planned(joined, lower, upper)
    assert corners(plan.over[0].cut) == pytest.approx((-0.5, -0.5, 14.5, 14.5))
    assert plan.opening is not None
    side, line = plan.opening
    assert (side, plan.way_out[0]) == ("rim", "bottom")
    for end, way in ((line[0], 1), (line[-1], -1)):
        assert math.asin((end[0] - 7) / 7) * 7 == pytest.approx(way * 5 / 2, abs=0.02)
        assert math.hypot(end[0] - 7, end[1] - 7) == pytest.approx(7, abs=0.01)
    assert sum(length_of(part) for _, part in plan.sewn) == pytest.approx(math.pi * 14 - 5, abs=0.05)
    assert "Sewn all round, 1/2 in from the edge." in told(plan, sheet(joined, lower, upper))


HOOD = shape_cut(name="hood", **half_circle(Fraction(12), Fraction(8)))  # type: ignore[arg-type]
HOODS = lying(layer("hood", up=True), layer("hood", up=False, at="rim", own="rim"), sides=("rim",))


def test_two_of_an_outline_lie_on_each_other_and_are_sewn_along_it_but_for_the_opening() -> None:
    """Half an oval, 12 by 8: the middle of its rim is its highest place, where 4 in stay open.

    There it bends like a circle of 6 * 6 / 8 = 4 1/2 in: 2 in of arc reach 4 1/2 sin(2 / 4 1/2) = 1.93 in to each side.
    """
    plan = planned(replace(HOODS, opening=Opening(("hood", "rim"), Fraction(4))), HOOD)
    assert plan.over[0].outline is not None
    assert plan.below[0].outline is not None
    lines = [LineString(laid.edges["rim"]) for laid in (plan.below[0], plan.over[0])]
    assert lines[0].hausdorff_distance(lines[1]) < 0.01
    assert plan.opening is not None
    assert length_of(plan.opening[1]) == pytest.approx(4)
    assert [round(x, 3) for x, _ in (plan.opening[1][0], plan.opening[1][-1])] == [
        pytest.approx(6 - 1.93, abs=0.02),
        pytest.approx(6 + 1.93, abs=0.02),
    ]
    assert len(plan.sewn) == 2
    assert plan.inside_out
    assert "Open 4 in at the rim." in told(plan, sheet(HOODS, HOOD))


def test_an_outline_is_turned_out_through_the_edge_that_is_not_sewn() -> None:
    plan = planned(replace(HOODS, turned=True), HOOD)
    assert plan.way_out[0] == "bottom"
    (out,) = plan.opened
    # The rim lies inside; the raw edge at the bottom is still 1/2 in beyond its seam line.
    assert (out.cut.left, out.cut.top, out.cut.right, out.cut.bottom) == pytest.approx((0, 0, 12, 8.5), abs=0.05)
    assert words_of(replace(HOODS, turned=True), HOOD)[-3:] == ["3 Turn out", "through the open", "edge"]


# A corner of 6 by 4 in, its right angle at the lower left; its slope is the long edge.
CORNER = shape_cut(
    name="corner",
    side=straight((0, 4), (0, 0)),
    slope=straight((0, 0), (6, 4)),
    foot=straight((6, 4), (0, 4)),
)


def test_a_piece_that_lies_face_down_is_turned_over_and_lies_edge_on_edge() -> None:
    """Sewn to its like at the upright side, its slope runs the same way; at the foot of another, it lies above it."""
    joined = lying(layer("corner", up=True), layer("other", up=False, at="side", own="side"), sides=("side",))
    plan = planned(joined, CORNER, replace(CORNER, name="other"))
    # Face down its right angle is at the lower right; turned by half it lies on the side with its point below.
    assert plan.over[0].edges["side"] == (pytest.approx((0, 4)), pytest.approx((0, 0)))
    assert plan.over[0].edges["foot"][0] == pytest.approx((0, 0))
    assert {(round(x), round(y)) for x, y in plan.over[0].edges["slope"]} == {(0, 4), (6, 0)}
    # Opened out, it lies at the other side of its seam.
    assert {(round(x), round(y)) for x, y in plan.opened[1].edges["slope"]} == {(0, 4), (-6, 0)}


def test_a_rectangle_lies_in_the_middle_of_a_straight_edge_of_an_outline() -> None:
    """A band 2 by 1 on the foot, 6 long: from 2 to 4, above the foot; the seam is as long as the band."""
    band = piece_cut("rectangle", 3, 2, name="band")
    joined = lying(layer("corner", up=True), layer("band", up=False, at="foot", own="top"), sides=("foot",))
    plan = planned(joined, CORNER, band)
    assert corners(plan.over[0].finished) == pytest.approx((2, 3, 4, 4))
    assert plan.seams["foot"] == (pytest.approx((4, 4)), pytest.approx((2, 4)))


def test_a_frill_lies_inwards_along_a_rim_and_stands_out_when_it_is_opened() -> None:
    """Round 14 in: a frill with a drop of 3 lies between it and a round of 8, then between it and one of 20."""
    frill = replace(FRILL, made=Made(DrawnUp("top", Fraction(44))))
    joined = lying(layer("front", up=True), layer("frill", up=False, at="rim", own="top"), sides=("rim",))
    plan = planned(joined, circle_cut(15, name="front"), frill)
    assert corners(plan.over[0].finished) == pytest.approx((0, 0, 14, 14))
    for laid, radius in ((plan.over[0], 4), (plan.opened[1], 10)):
        assert {round(math.hypot(x - 7, y - 7), 1) for x, y in laid.edges[""]} == {radius}


def test_what_does_not_lie_on_an_edge_all_along_it_has_no_picture_of_layers() -> None:
    """A rim of half an oval does not lie on a straight edge as long as it."""
    joined = lying(layer("corner", up=True), layer("hood", up=False, at="foot", own="rim"), sides=("foot",))
    assert plan_seam(sheet(joined, CORNER, HOOD), joined) is None


def test_a_round_on_a_rectangle_has_no_picture() -> None:
    assert seam_names(sheet(ROUND, FRONT, circle_cut(9, name="back"))) == ()


@pytest.mark.parametrize("joined", [CLOSED, replace(CLOSED, turned=True)])
def test_no_words_cross_in_the_picture_of_a_round_end(joined: Joined) -> None:
    worksheet = sheet(joined, TUBE, END)
    for width in (80.0, 93.0, 180.0):
        found = heights_of_seam(worksheet, "1-1", Style(), width)
        for height in (found.least, found.natural):
            assert sketch_seam(worksheet, "1-1", Style(), DrawnSize(width, height)).crossings() == ()


def test_openings_for_good_are_left_out_of_the_seam_and_told() -> None:
    """The panel is 7 1/2 by 15: 2 in from the top of its left edge, and 3 in in the middle of its right one."""
    gaps = (Opening(("front", "left"), Fraction(2), "top"), Opening(("front", "right"), Fraction(3)))
    joined = replace(ROUND, gaps=gaps, turned=True, opening=Opening(("front", "bottom"), Fraction(4)))
    plan = planned(joined)
    assert plan.gaps == (("left", ((0.0, 0.0), (0.0, 2.0))), ("right", ((7.5, 6.0), (7.5, 9.0))))
    worksheet = sheet(joined)
    assert "2 in at the top of the left and 3 in at the right stay open for good." in told(plan, worksheet)
    assert [(side, line) for side, line in plan.sewn if side == "left"] == [("left", ((0.0, 15.0), (0.0, 2.0)))]
    assert {line for side, line in plan.sewn if side == "right"} == {
        ((7.5, 0.0), (7.5, 6.0)),
        ((7.5, 9.0), (7.5, 15.0)),
    }
    assert len([side for side, _ in plan.sewn if side == "bottom"]) == 2
    assert " ".join(words_of(joined)).count("stay open for good") == 1
    # Where laying and sewing are one part, its title is no longer than its room.
    long, lining = (piece_cut("rectangle", 61, 13, name=name) for name in ("front", "back"))
    assert words_of(joined, long, lining)[0] == "1 Lay, sew 1/2 in from the edge, open 4 in"

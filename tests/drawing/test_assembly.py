"""Drawings of making up: which apply to which piece, the measures they tell, words that stand clear."""

from dataclasses import replace
from fractions import Fraction

import pytest
from panels import joined, panel_of, piece_of, worksheet_of
from pieces import SIDES, envelope_back, piece_cut

from generator.calculation.making_up.thing import Closing, Component, Seam, Thing
from generator.calculation.pieces.bias import PiecedBias
from generator.calculation.worked import End
from generator.calculation.worked_project import ClosureWork, MeetingWork
from generator.drawing.assemblies.marks import arc, note, wave
from generator.drawing.assemblies.stage_canvas import BELOW, Stage, StageCanvas, Subject, in_rows, set_up
from generator.drawing.assembly import (
    ASSEMBLIES,
    applying,
    assembly_names,
    draw_assembly,
    heights_of_assembly,
    sketch_assembly,
)
from generator.drawing.sizes import DrawnSize
from generator.drawing.style import SMALLEST_TEXT, Style


def buttons(on="wrap.left", onto="wrap.right"):
    """Four buttons on 14 in, the first and the last 2 in from the ends: 10 in between, 10/3 in apart."""
    places = tuple(Fraction(2) + place * Fraction(10, 3) for place in range(4))
    return ClosureWork(
        "buttons", 4, on, onto, Fraction(2), Fraction(7, 8), Fraction(1, 8), places, Fraction(1), Fraction(2), ""
    )


def _seams(way):
    return dict.fromkeys(SIDES, End("seam", Fraction(5, 8), way=way))


GATHERED = {"edge": Fraction(26), "fullness": Fraction(7, 4), "length": Fraction(91, 2)}
PIECED = PiecedBias(Fraction(8), Fraction(20), 8, Fraction(63))
PIECES = (
    piece_of(joined(panel_of(9), 4, foot="right"), name="wrap", along=Fraction(14)),
    envelope_back(),
    piece_cut("gathered end", 20, 4, measures={"edge": Fraction(19), "radius": Fraction(3)}),
    piece_cut("gathered strip", 47, 3, name="frill", measures=GATHERED),
    piece_cut("boxing", 60, 3, measures={"depth": Fraction(2)}),
    piece_cut("binding", 40, Fraction(3, 2), {}, measures={"width": Fraction(3, 8), "square": Fraction(9)}),
    piece_cut("bias strip", 60, 2, {}, name="pieced", measures={"square": Fraction(13)}, pieced=PIECED),
    piece_cut("rectangle", 60, 30, dict.fromkeys(SIDES, End("turnover", Fraction(3))), name="cover"),
    piece_cut("rectangle", 10, 10, name="plain"),
    piece_cut("rectangle", 10, 10, _seams("french seam"), name="slip"),
    piece_cut("rectangle", 10, 10, _seams("felled seam"), name="apron"),
    piece_cut("rectangle", 9, 6, dict.fromkeys(SIDES, End("seam", Fraction(5, 8))), name="pouch"),
)
ZIPPED = Thing(
    frozenset({"two sided"}),
    {name: Component(name, "rectangle") for name in ("pouch", "other side", "lining", "other lining")},
    (
        Seam(0, (), (), ((("pouch", "top"), ("lining", "top")),), "lining"),
        Seam(1, (), (), ((("other side", "top"), ("other lining", "top")),), "lining"),
    ),
    (Closing(0, "zip", (("pouch", "top"),), (("other side", "top"),), facts=frozenset({"opens a seam"})),),
)
WORKSHEET = replace(
    worksheet_of(*PIECES),
    thing=ZIPPED,
    closures=(buttons(),),
    meetings=(
        MeetingWork("cover.left and cover.bottom", "binding.edge", Fraction(90), Fraction(90), Fraction(0)),
        MeetingWork("plain.all", "boxing.edge", Fraction(36), Fraction(36), Fraction(0)),
        MeetingWork("slip.left", "slip.right", Fraction(10), Fraction(10), Fraction(0), lines=2),
        MeetingWork("apron.left", "apron.right", Fraction(10), Fraction(10), Fraction(0), lines=2),
    ),
)
SIZE = DrawnSize(93, 120)
AS_LAID_OUT = Style(small=7.0, text=8.0, strong=9.0)
EXPECTED = {
    "wrap": ["breadths", "roll"],
    "back": ["envelope back"],
    "gathered end": ["gathered end"],
    "frill": ["frill"],
    "boxing": ["boxing"],
    "binding": ["binding", "binding corner", "bias"],
    "pieced": ["pieced bias"],
    "cover": ["board"],
    "plain": [],
    "slip": ["french seam"],
    "apron": ["felled seam"],
    "pouch": ["lined zip"],
}


def sketches(style=None):
    for piece in PIECES:
        subject = Subject(WORKSHEET, piece)
        for name in applying(subject):
            yield name, sketch_assembly(name, subject, style or AS_LAID_OUT)


def words_of(name):
    return [label.words for kind, canvas in sketches() for label in canvas.labels if kind == name]


@pytest.mark.parametrize("piece", EXPECTED)
def test_the_drawings_that_apply_follow_from_the_kind_of_piece_its_edges_closures_and_steps(piece):
    assert list(applying(Subject(WORKSHEET, WORKSHEET.pieces[piece]))) == EXPECTED[piece]


def test_every_kind_of_making_up_is_drawn_in_these_tests():
    assert {kind for kind, _ in sketches()} == set(ASSEMBLIES)


def test_pieces_without_a_drawing_are_not_named():
    assert assembly_names(WORKSHEET) == tuple(f"{kind} {name}" for name, kinds in EXPECTED.items() for kind in kinds)


@pytest.mark.parametrize("name", ["board", "cover", "board pocket", "roll cover"])
def test_a_name_of_no_kind_that_applies_to_a_piece_is_refused(name):
    with pytest.raises(KeyError, match=f"'{name}'"):
        draw_assembly(WORKSHEET, name, Style(), SIZE)


@pytest.mark.parametrize("width", [93.0, 180.0])
@pytest.mark.parametrize("name", assembly_names(WORKSHEET))
def test_no_words_cross_at_the_width_of_a_column_and_of_a_page(name, width):
    height = heights_of_assembly(WORKSHEET, name, Style(), width).natural
    kind = max((kind for kind in ASSEMBLIES if name.startswith(f"{kind} ")), key=len)
    subject = Subject(WORKSHEET, WORKSHEET.pieces[name.removeprefix(f"{kind} ")])
    canvas = sketch_assembly(kind, subject, Style(), DrawnSize(width, height))
    assert canvas.crossings() == ()
    assert (canvas.width * 25.4, canvas.height * 25.4) == (pytest.approx(width), pytest.approx(height))
    assert min(label.size for label in canvas.labels) >= 9


def test_buttons_from_one_piece_to_another_are_no_wrap():
    worksheet = replace(WORKSHEET, closures=(buttons(onto="plain.right"),))
    assert applying(Subject(worksheet, worksheet.pieces["wrap"])) == ("breadths",)


@pytest.mark.parametrize(
    ("kind", "told"),
    [
        ("envelope back", ["overlap 4 in", "16 in"]),
        ("roll", ["lap 2 in", "2 in", "14 in"]),
        ("gathered end", ["3 in"]),
        ("frill", ["26 in", "45 1/2 in"]),
        ("boxing", ["2 in"]),
        ("binding", ["3/8 in shows"]),
        ("binding corner", ["3/8 in"]),
        ("bias", ["9 in", "lines 1 1/2 in apart"]),
        ("lined zip", ["5/8 in", "lining, wrong side up", "zip, right side down", "cloth, right side up", "teeth"]),
        ("pieced bias", ["20 in", "2 in apart", "fold"]),
        ("breadths", ["first join: tuck 4, right foot", "covered in 2 of 4 rows"]),
    ],
)
def test_a_drawing_tells_the_measures_of_its_piece(kind, told):
    assert set(told) <= set(words_of(kind))


def test_the_overlap_of_an_envelope_back_is_drawn_in_its_true_share_of_the_width():
    """Overlap 4 of 16: halves of 10/16 of the width, so the overlap is a quarter of it."""
    (canvas,) = (canvas for kind, canvas in sketches() if kind == "envelope back")
    level = [segment for segment in canvas.segments if segment[0][1] == segment[1][1]]
    (wide,) = {abs(end[0] - start[0]) for start, end in level if start[1] > 1.2}
    overlap = [abs(end[0] - start[0]) for start, end in level if start[1] == pytest.approx(0.13)]
    assert overlap == [pytest.approx(wide / 4)]


def test_two_pieces_alike_that_close_on_each_other_are_no_roll():
    linings = piece_cut("rectangle", 11, 12, name="bag lining")
    worksheet = replace(worksheet_of(linings), closures=(buttons("bag lining.top", "bag lining.top"),))
    assert applying(Subject(worksheet, linings)) == ()


def test_buttons_stand_on_the_roll_where_the_closure_says():
    """2, 16/3, 26/3 and 12 of 14 in on 2.8 in of paper from 2.75: 3.15, 3.8167, 4.4833, 5.15."""
    (canvas,) = (canvas for kind, canvas in sketches() if kind == "roll")
    drawn = {round(start[0], 4) for start, end in canvas.segments if start[0] == end[0] and start[0] > 2.8}
    holes = {
        round(place + side * 0.07 / 3, 4) for place in (3.15, 3.15 + 2 / 3, 3.15 + 4 / 3, 5.15) for side in (-1, 1)
    }
    assert holes <= drawn


@pytest.mark.parametrize("size", [7.0, 8.5, 12.0, 14.0])
def test_no_words_cross_in_any_drawing(size):
    assert {
        kind: canvas.crossings()
        for kind, canvas in sketches(Style(small=size, text=size + 1, strong=size + 2))
        if canvas.crossings()
    } == {}


def test_all_words_are_at_least_nine_points_and_every_drawing_fits_a_page():
    for size in (9.0, 10.5, 12.0):
        for _, canvas in sketches(Style(small=size)):
            assert min(label.size for label in canvas.labels) >= SMALLEST_TEXT
            assert canvas.width <= 7.5


def test_the_same_piece_gives_the_same_bytes():
    for name in assembly_names(WORKSHEET):
        assert draw_assembly(WORKSHEET, name, Style(), SIZE) == draw_assembly(WORKSHEET, name, Style(), SIZE)


def test_a_drawing_without_measures_still_stands():
    bare = (
        piece_cut("boxing", 60, 3),
        piece_cut("gathered strip", 40, 3),
    )
    round_it = MeetingWork("face.all", "boxing.edge", Fraction(60), Fraction(60), Fraction(0))
    worksheet = replace(worksheet_of(*bare), meetings=(round_it,))
    assert assembly_names(worksheet) == ("boxing boxing", "frill gathered strip")
    assert all(draw_assembly(worksheet, name, Style(), SIZE).svg for name in assembly_names(worksheet))


def test_an_arc_runs_clockwise_on_paper_from_the_right():
    """From 0 to 90 degrees about (1, 1) with radius 1: from (2, 1) to (1, 2), which lies below."""
    points = arc((1.0, 1.0), 1.0, 0, 90)
    assert points[0] == pytest.approx((2, 1))
    assert points[-1] == pytest.approx((1, 2))


def test_a_wave_begins_and_ends_on_its_middle_height():
    points = wave(0, 3, 1, waves=3, high=0.1)
    assert points[0] == (0, 1)
    assert points[-1] == pytest.approx((3, 1))
    assert max(y for _, y in points) == pytest.approx(1.1)


def test_a_leader_leaves_its_words_on_the_side_that_looks_to_the_point():
    canvas = StageCanvas(4, 2, AS_LAID_OUT, "trial")
    note(canvas, "seam", (1.0, 1.0), (3.0, 1.5))
    box = canvas.labels[0].box.grown(0.02)
    assert canvas.segments[0] == (pytest.approx((box.right, 1.0)), (3.0, 1.5))
    assert canvas.crossings() == ()


def test_stages_stand_side_by_side_where_the_page_is_wide_enough_and_else_one_below_the_other():
    """Two stages of 3 and a gap of 1/4 are 6.25 in at 7 pt, but 12.25 in at 14 pt, more than the page: 2 and 4 high."""
    stages = (Stage("", 3.0, 1.0, lambda canvas: None), Stage("", 3.0, 2.0, lambda canvas: None))
    beside, stacked = (in_rows(stages, Style(small=size)) for size in (7.0, 14.0))
    assert (beside.width, beside.height) == (6.25, 2.0)
    assert (stacked.width, stacked.height) == (6.0, pytest.approx(2.0 + 4.0 + BELOW))


def test_larger_words_enlarge_the_stage_with_them():
    def draw(canvas):
        canvas.line(((1.0, 0.5), (2.0, 0.5)), canvas.style.outline)

    style = Style(small=14.0)
    canvas = set_up(in_rows((Stage("", 3.0, 1.0, draw),), style), style, "trial")
    assert canvas.segments == [((2.0, 1.0), (4.0, 1.0))]


def test_boxing_round_a_face_without_corners_is_not_drawn_as_a_box_with_some():
    worksheet = replace(
        WORKSHEET, meetings=(MeetingWork("plain.rim", "boxing.edge", Fraction(36), Fraction(36), Fraction(0)),)
    )
    assert applying(Subject(worksheet, worksheet.pieces["boxing"])) == ()


def test_a_binding_that_turns_no_corner_has_no_drawing_of_one():
    along_one_edge = MeetingWork("cover.left", "binding.edge", Fraction(30), Fraction(30), Fraction(0))
    worksheet = replace(WORKSHEET, meetings=(along_one_edge,))
    assert "binding corner" not in applying(Subject(worksheet, worksheet.pieces["binding"]))


def test_the_halves_of_a_bias_square_are_drawn_joined_as_they_were_cut():
    """Beside the square two triangles on each other make a slanting piece: two upright ends, two slanting edges."""
    (canvas,) = (canvas for kind, canvas in sketches() if kind == "bias")
    square, joined_halves = (1.75, 1.75 + 0.25 + 1.8)
    second = [pair for pair in canvas.segments if all(square < x < joined_halves for x, _ in pair)]
    upright = {a[0]: abs(a[1] - b[1]) for a, b in second if a[0] == b[0]}
    slanting = [pair for pair in second if abs(pair[0][0] - pair[1][0]) > 0.5 and pair[0][1] != pair[1][1]]
    side = 0.85
    assert (upright[min(upright)], upright[max(upright)]) == (pytest.approx(side), pytest.approx(side))
    assert max(upright) - min(upright) == pytest.approx(side)
    # The two edges that were cut corner to corner, and three lines parallel to them.
    assert len(slanting) == 5
    assert all(abs(a[1] - b[1]) == pytest.approx(abs(a[0] - b[0])) == pytest.approx(side) for a, b in slanting)


def test_the_ends_of_a_bias_tube_are_drawn_moved_by_one_strip():
    (canvas,) = (canvas for kind, canvas in sketches() if kind == "bias")
    middle = 1.75 + 0.25 + 1.8 + 0.25 + 0.95
    seams = sorted(abs(a[1] - b[1]) for a, b in canvas.segments if a[0] == b[0] == pytest.approx(middle))
    # The seam is one strip shorter than the side, and one strip stands out at its head and at its foot.
    assert seams == [pytest.approx(0.85 / 4), pytest.approx(0.85 / 4), pytest.approx(0.85 * 3 / 4)]


def test_the_stitching_of_a_bound_corner_stops_where_the_next_line_begins():
    """The last stitch lies as far from the end as from the edge; folded down, the next line runs through that place."""
    (canvas,) = (canvas for kind, canvas in sketches() if kind == "binding corner")
    head = min(y for a, b in canvas.segments for _, y in (a, b))
    assert head >= 0
    level = [(a, b) for a, b in canvas.segments if a[1] == b[1] and a[0] < 1.3 and 0.9 < b[0] < 1.3]
    turn = {(round(b[0], 5), round(b[1], 5)) for a, b in level if b[0] - a[0] > 0.8}
    corner = (1.2, min(y for _, y in turn))
    assert any((round(corner[0] - x, 3), round(y - corner[1], 3)) == (0.17, 0.17) for x, y in turn)


def test_a_seam_that_shuts_in_its_edges_tells_both_its_lines():
    # French: 5/8 - 1/4 = 3/8 from the raw edges, then 1/4 from the fold. Felled: on the seam line, one side cut to 1/4.
    assert {"3/8 in", "1/4 in", "1 Wrong sides together"} <= set(words_of("french seam"))
    assert {"5/8 in", "1/4 in", "1 Right sides together"} <= set(words_of("felled seam"))

"""The finished thing drawn from its own numbers: its form, its tucks at their places, the right way up, both sides."""

from __future__ import annotations

import math
from dataclasses import replace
from fractions import Fraction
from functools import cache

import pytest
from panels import worksheet_of
from pieces import circle_cut

from generator.calculation.making_up.laid import LaidOut, Lying
from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import worked_sheet
from generator.definitions.project import load_project
from generator.drawing.finished import draw_thing, extent, heights_of_thing, in_the_thing, sketch_thing, thing_names
from generator.drawing.labels import Box
from generator.drawing.sizes import DrawnSize
from generator.drawing.style import Style
from generator.drawing.things.forms import DRAWN_IN, form_of
from generator.drawing.things.shapes import Shape
from generator.drawing.things.views import back_shapes, front_shapes, shapes_of
from tests.room import ROOT, demo_room

PROJECTS = sorted(path.stem for path in (ROOT / "projects").glob("*.yaml"))
OTHERS = ROOT / "tests" / "making_up" / "projects"
SIZE = DrawnSize(60, 45)
FORMS = {
    "quay-cushion": "pillow",
    "pincushion-sample": "pillow",
    "bosun-seat-pad": "box",
    "pier-bolster": "roll",
    "lantern-sleeve": "tube",
    "gull-window-curtain": "hung",
    "fairway-blind": "hung",
    "galley-valance": "hung",
    "breakwater-runner": "over an edge",
    "ferry-runner": "over an edge",
    "customs-tote": "flat",
    "net-loft-pinafore": "flat",
    "nine-moorings": "flat",
    "logbook-sleeve": "flat",
    "harbour-headboard": "flat",
    "tide-table-mats": "flat",
}
BACKS = {"fairway-blind", "awning-cushion", "quay-cushion", "pier-bolster", "customs-tote"}


@cache
def sheets(name: str) -> tuple[Worksheet, ...]:
    """The smallest and the largest size of a project of the room, in every edition."""
    found = demo_room().worksheets(name)
    return tuple(one for one in found if one.size in (found[0].size, found[-1].size))


@cache
def other(name: str) -> Worksheet:
    """A project beside those of the room."""
    room = demo_room().shared
    project = load_project(OTHERS / f"{name}.yaml", room.room, ROOT)
    return worked_sheet(project, next(iter(project.sizes)), room.room.edition("inch"), room)


def covered(shapes: list[Shape], piece: str) -> list[tuple[float, ...]]:
    """The rectangles that a piece covers in a drawing."""
    boxes = [extent([shape]) for shape in shapes if shape.lying is not None and shape.lying.piece == piece]
    return [(box.left, box.top, box.right, box.bottom) for box in boxes]


@pytest.mark.parametrize("name", FORMS)
def test_the_form_follows_from_what_the_thing_is(name: str) -> None:
    assert form_of(sheets(name)[0]).name == FORMS[name]


@pytest.mark.parametrize("name", PROJECTS)
def test_a_thing_is_drawn_from_the_front_and_from_the_back_where_that_tells_more(name: str) -> None:
    for sheet in sheets(name):
        assert thing_names(sheet) == (("front", "back") if name in BACKS else ("front",))
        for side in thing_names(sheet):
            picture = draw_thing(sheet, side, Style(), SIZE)
            assert (picture.width * 25.4, picture.height * 25.4) == (pytest.approx(60), pytest.approx(45))
            assert picture.alt.startswith("The finished ")
            assert side in picture.alt


@pytest.mark.parametrize("name", PROJECTS)
def test_everything_lies_on_the_paper_and_no_line_is_thinner_than_a_copy_keeps(name: str) -> None:
    for sheet in sheets(name):
        for side in thing_names(sheet):
            canvas = sketch_thing(sheet, side, Style(), SIZE)
            points = [point for segment in canvas.segments for point in segment]
            assert min(x for x, _ in points) >= 0
            assert min(y for _, y in points) >= 0
            assert max(x for x, _ in points) <= canvas.width
            assert max(y for _, y in points) <= canvas.height


def test_a_side_without_anything_of_its_own_is_refused() -> None:
    sheet = sheets("breakwater-runner")[0]
    with pytest.raises(KeyError, match="shows nothing of its own"):
        draw_thing(sheet, "back", Style(), SIZE)


def test_the_corners_of_a_filled_cover_stay_and_the_middles_of_its_sides_come_in() -> None:
    """A cover of 12 by 12: corners where they were, the middle of a side 5 % of half of it further in."""
    place = form_of(sheets("quay-cushion")[0]).seen
    assert place((0.0, 0.0)) == pytest.approx((0, 0))
    assert place((0.0, 6.0)) == pytest.approx((6 * DRAWN_IN, 6))
    assert place((6.0, 6.0)) == pytest.approx((6, 6))


def test_half_of_the_way_round_a_roll_is_seen_and_its_length_is_true() -> None:
    """Girth 16 1/4: seen from a quarter to three quarters of it; the ends lie 14 apart."""
    form = form_of(sheets("pier-bolster")[0])
    girth = float(sheets("pier-bolster")[0].laid_out.across)
    assert form.place((girth / 8, 0.0)) is None
    assert form.seen((girth / 2, 14.0))[0] - form.seen((girth / 2, 0.0))[0] == pytest.approx(14)
    assert form.seen((girth / 2, 0.0))[1] == pytest.approx(0)


@pytest.mark.parametrize("name", FORMS)
def test_a_form_turns_a_thing_and_never_shows_it_as_in_a_mirror(name: str) -> None:
    """Right and down on the cloth stay a right-hand corner in the drawing: else tucks would lie to the other side."""
    sheet = sheets(name)[0]
    form, first = form_of(sheet), sheet.laid_out.seen[0]
    x, y = float(first.left + first.right) / 2, float(first.top + first.bottom) / 2
    here, right, down = (form.seen(point) for point in ((x, y), (x + 0.1, y), (x, y + 0.1)))
    across, along = ((end[0] - here[0], end[1] - here[1]) for end in (right, down))
    assert across[0] * along[1] - across[1] * along[0] > 0


def test_the_buttons_of_a_roll_stand_where_the_closure_says_at_the_back() -> None:
    sheet = sheets("pier-bolster")[0]
    (closure,) = sheet.closures
    (buttons,) = (shape.buttons for shape in back_shapes(sheet) if shape.buttons)
    assert [middle[0] for middle, _ in buttons] == pytest.approx([float(place) for place in closure.positions])
    assert not [shape for shape in front_shapes(sheet) if shape.buttons]


def test_a_curtain_hangs_from_its_casing_and_its_tucks_lie_across_at_their_places() -> None:
    """It was sewn lying on its side: its left edge hangs at the top, and its tucks lie as far down as from there."""
    sheet = sheets("gull-window-curtain")[0]
    tucks = sheet.panels["curtain"].across
    canvas = sketch_thing(sheet, "front", Style(), DrawnSize(90, 60))
    (whole, *_) = covered(front_shapes(sheet), "curtain")
    # Nothing stands out above or below the curtains, so they reach from the highest line to the lowest.
    heights = [y for segment in canvas.segments for _, y in segment]
    top, bottom = min(heights), max(heights)
    scale = (bottom - top) / (whole[3] - whole[1])
    level = {round((start[1] - top) / scale, 3) for start, end in canvas.segments if abs(start[1] - end[1]) < 1e-9}
    assert {round(float(place), 3) for place in tucks.stitching} <= level


def test_a_pair_hangs_side_by_side() -> None:
    sheet = sheets("gull-window-curtain")[0]
    left, right = covered(front_shapes(sheet), "curtain")
    assert left[2] < right[0]
    assert (left[1], left[3]) == (right[1], right[3])


def test_the_second_panel_of_a_runner_is_turned_half_round() -> None:
    """The first tuck of the near panel lies nearest to the end that hangs, that of the far one to the far end."""
    sheet = sheets("ferry-runner")[0]
    form = form_of(sheet)
    wide = float(sheet.laid_out.across)
    assert form.seen((0.0, 0.0))[1] > 0 > form.seen((wide, 0.0))[1]
    assert [lying.turned for lying in sheet.laid_out.seen if lying.piece == "end panel"] == [0, 2]


def test_a_grid_of_blocks_has_its_tucked_squares_in_two_corners() -> None:
    first, second = covered(front_shapes(other("pot-mat")), "tucked square")
    assert first == pytest.approx((0, 0, 6, 6))
    assert second == pytest.approx((6, 6, 12, 12))


def test_the_lap_of_an_envelope_back_is_drawn_where_its_halves_end() -> None:
    sheet = sheets("quay-cushion")[0]
    back = sheet.pieces["back"]
    reach = float(back.parts[0].finished_across)
    (lap,) = (shape for shape in back_shapes(sheet) if shape.hidden)
    middle = [point for line in lap.edges for point in line if abs(point[1] - 6) < 0.01]
    # In the middle of the height the form has moved it by 5 % of its distance from the middle.
    assert middle[0][0] == pytest.approx(6 + (reach - 6) * (1 - DRAWN_IN), abs=1e-6)


def test_a_pocket_on_the_back_is_shown_there_and_not_in_front() -> None:
    sheet = sheets("customs-tote")[0]
    assert not covered(front_shapes(sheet), "pocket")
    (left, top, right, bottom) = covered(back_shapes(sheet), "pocket")[0]
    pocket = sheet.pieces["pocket"]
    assert (right - left, bottom - top) == (
        pytest.approx(float(pocket.finished_across)),
        pytest.approx(float(pocket.finished_along)),
    )


@pytest.mark.parametrize(
    ("sheet", "number"),
    [
        (lambda: sheets("customs-tote")[0], 1),
        (lambda: sheets("net-loft-pinafore")[0], 2),
        (lambda: sheets("bosun-seat-pad")[0], 4),
        (lambda: other("pilot-house-curtain"), 5),
        (lambda: sheets("quay-cushion")[0], 0),
    ],
)
def test_handles_straps_ties_and_loops_stand_out_at_the_top(sheet: object, number: int) -> None:
    """A bag's strap on each of two edges is a handle; two straps, four ties and five loops stand one by one."""
    made: Worksheet = sheet()  # type: ignore[operator]
    form = form_of(made)
    top = form.seen((form.flat.left, form.flat.top))[1]
    bands = [one for one in front_shapes(made) if one.lying is None and one.covers and extent([one]).top < top - 0.5]
    bands = [one for one in bands if abs(extent([one]).bottom - top) < 0.01]
    assert len(bands) == number


def test_the_flat_part_of_a_drawing_keeps_its_proportions() -> None:
    sheet = sheets("tide-table-mats")[0]
    (left, top, right, bottom) = covered(front_shapes(sheet), "mat")[0]
    laid = sheet.laid_out
    assert (right - left) / (bottom - top) == pytest.approx(float(laid.across / laid.along))


@pytest.mark.parametrize("name", PROJECTS)
@pytest.mark.parametrize("width", [30.0, 60.0, 93.0])
def test_heights_are_in_order_and_no_higher_than_the_thing(name: str, width: float) -> None:
    for sheet in sheets(name):
        for side in thing_names(sheet):
            found = heights_of_thing(sheet, side, Style(), width)
            assert 0 < found.least <= found.natural <= found.greatest


def test_what_is_cut_to_a_shape_says_that_it_is_not_drawn_so() -> None:
    cosy = sheets("pilot-tea-cosy")[0]
    assert draw_thing(cosy, "front", Style(), SIZE).caption == "front"
    unknown = replace(cosy, laid_out=replace(cosy.laid_out, shaped=True))
    assert draw_thing(unknown, "front", Style(), SIZE).caption == "front, before it is cut to its shape"


def test_a_panel_with_an_outline_is_drawn_as_it_is_cut() -> None:
    # The crown is highest in the middle, and at the sides two thirds of the height down; 11 by 9 in.
    cosy = sheets("pilot-tea-cosy")[0]
    (shape,) = (one for one in shapes_of(cosy, form_of(cosy)) if one.lying and one.lying.piece == "panel")
    top = min(shape.covers, key=lambda point: point[1])
    assert (round(top[0], 3), round(top[1], 3)) == (5.5, 0)
    assert {round(max(y for x, y in shape.covers if abs(x - side) < 1e-6), 3) for side in (0, 11)} == {9}
    assert {round(min(y for x, y in shape.covers if abs(x - side) < 1e-6), 3) for side in (0, 11)} == {6}


def test_an_extent_holds_all_that_is_drawn() -> None:
    shape = Shape(covers=((0.0, 0.0), (2.0, 1.0)), lines=(((3.0, -1.0), (1.0, 1.0)),))
    assert extent([shape]) == Box(0.0, -1.0, 3.0, 1.0)


def test_a_round_is_drawn_round() -> None:
    """A lid of 14 through, laid out as a square: every place of its edge lies 7 from its middle."""
    lid = circle_cut(15, name="lid")
    laid = LaidOut((Lying("lid", Fraction(0), Fraction(0), Fraction(14), Fraction(14)),), Fraction(14), Fraction(14))
    (shape,) = front_shapes(replace(worksheet_of(lid), laid_out=laid))
    assert {round(math.dist(point, (7, 7)), 6) for line in shape.edges for point in line} == {7.0}


@pytest.mark.parametrize(
    ("turned", "corner", "beside"),
    [(0, (1, 2), (4, 2)), (1, (11, 2), (11, 5)), (2, (11, 7), (8, 7)), (3, (1, 7), (1, 4))],
)
def test_a_piece_turned_clockwise_has_its_upper_left_corner_and_its_top_where_they_come_to_lie(
    turned: int, corner: tuple[float, float], beside: tuple[float, float]
) -> None:
    """It covers 10 by 5 from (1, 2); ``beside`` is 3 along its own upper edge from that corner."""
    lying = Lying("front", Fraction(1), Fraction(2), Fraction(10), Fraction(5), turned=turned)
    assert in_the_thing(lying)((0, 0)) == corner
    assert in_the_thing(lying)((3, 0)) == beside


def test_a_ring_that_is_not_filled_has_no_back_of_its_own() -> None:
    assert thing_names(other("cook-cuff")) == ("front",)


def test_a_round_box_cushion_stands_as_a_drum_as_deep_as_its_boxing() -> None:
    """Its top is 12 in across and seen half as high as wide; the boxing of 2 in stands below its near half."""
    sheet = other("capstan-pad")
    assert form_of(sheet).name == "drum"
    top, side = (shape for shape in front_shapes(sheet) if shape.covers)
    across = [x for x, _ in top.covers]
    up = [y for _, y in top.covers]
    assert (max(across) - min(across), max(up) - min(up)) == (pytest.approx(12), pytest.approx(6, abs=0.05))
    assert max(y for _, y in side.covers) - max(up) == pytest.approx(2, abs=0.05)
    # A line beside each edge that is piped.
    assert len(side.lines) == 2

"""Pictures of cloth: where flaps lie and what colour a place has, asked of the numbers and of single dots."""

from __future__ import annotations

import dataclasses
import io
from fractions import Fraction

import numpy as np
import pytest
from panels import panel_of, piece_of, worksheet_of
from PIL import Image as Raster

from generator.calculation.making_up.laid import LaidOut, Lying
from generator.calculation.striped import PanelStripes, Stripe, TuckColours
from generator.calculation.worked import Turn
from generator.calculation.worked_project import Worksheet
from generator.drawing.labels import Box
from generator.drawing.renders.bends import Bend, cushion, flat, hung, pillow, roll, tube, twice
from generator.drawing.renders.cameras import Camera, Face, faces
from generator.drawing.renders.cloths import tucked_cloth
from generator.drawing.renders.colours import dyed, stored
from generator.drawing.renders.files import near_file, side_by_side, thing_files
from generator.drawing.renders.grids import blurred, chance, doubled, halved
from generator.drawing.renders.lamp import lit, shadow
from generator.drawing.renders.near import NEAR, cut_out, near_view, near_window, plan_view
from generator.drawing.renders.scenes import picture_of
from generator.drawing.renders.stage import HIGH, WIDE
from generator.drawing.renders.tucked import sewn
from generator.drawing.renders.weave import threads_to_an_inch, woven
from generator.drawing.renders.words import SHARED, height_of, near_panel, picture_words, shown_alone
from generator.drawing.surface_geometry import HeldLine, Surface, sample_surface

LEFT, UPRIGHT, RIGHT = Turn.LEFT, Turn.UPRIGHT, Turn.RIGHT
PIXELS = 60.0
WHOLE = Box(0, 0, 10, 8)


def one_tuck(turn: Turn) -> Surface:
    """A tuck 1/2 in deep in the middle of 4 in by 4 in, turned at a row at 2 in."""
    return Surface(
        Fraction(4), Fraction(4), (Fraction(2),), (Fraction(1, 2),), (HeldLine(Fraction(2), (turn,), "left"),)
    )


def at(grid: np.ndarray, across: float, along: float) -> float:
    return float(grid[int(along * PIXELS), int(across * PIXELS)])


def thing(kind: str = "other", count: int = 5, rows: int = 3) -> Worksheet:
    """A worksheet of one panel that lies by itself."""
    return shown(dataclasses.replace(worksheet_of(piece_of(panel_of(count, rows=rows))), kind=kind))


def shown(worksheet: Worksheet) -> Worksheet:
    found = shown_alone(worksheet)
    assert found is not None
    return found


@pytest.mark.parametrize(("turn", "side"), [(LEFT, -1), (RIGHT, 1)])
def test_a_flap_lies_on_the_side_to_which_its_row_turns_it(turn: Turn, side: int) -> None:
    cloth, _ = sewn(one_tuck(turn), PIXELS)
    # At the row the fold is half an inch from the foot: there the cloth stands over the bare side.
    assert at(cloth.height, 2 + side * 0.4, 1.8) > 0.05
    assert abs(at(cloth.height, 2 - side * 0.4, 1.8)) < 0.02


@pytest.mark.parametrize(("turn", "side"), [(LEFT, -1), (RIGHT, 1)])
def test_a_flap_shows_the_side_of_its_tuck_that_lies_above(turn: Turn, side: int) -> None:
    cloth, _ = sewn(one_tuck(turn), PIXELS)
    # The tuck takes 1 in of cloth from 2 in to 3 in; the panel goes on at 3 in. Turned right it shows its left half.
    assert at(cloth.across, 1, 1.9) == pytest.approx(1, abs=0.02)
    assert at(cloth.across, 3, 1.9) == pytest.approx(4, abs=0.02)
    fold = 2.5
    assert at(cloth.across, 2 + side * 0.25, 1.95) == pytest.approx(fold - side * 0.25, abs=0.04)


def test_thread_lies_along_the_bare_side_of_a_foot_and_over_the_flaps_at_a_row() -> None:
    cloth, seen = sewn(one_tuck(RIGHT), PIXELS)
    near = range(int(1.9 * PIXELS), int(2.0 * PIXELS))
    assert cloth.thread[int(1.0 * PIXELS) : int(1.8 * PIXELS), near].max() > 0.5
    assert cloth.thread[int(1.5 * PIXELS) : int(1.8 * PIXELS), int(2.1 * PIXELS) : int(2.3 * PIXELS)].max() == 0
    row = cloth.thread[int(2.0 * PIXELS) - 2 : int(2.0 * PIXELS) + 2]
    assert all(row[:, int(place * PIXELS) :][:, : int(0.2 * PIXELS)].max() > 0.5 for place in (0.5, 2.2, 3.4))
    assert seen.pixels == PIXELS


def test_a_row_is_not_sewn_over_the_foot_of_a_tuck_that_it_leaves_upright() -> None:
    cloth, _ = sewn(one_tuck(UPRIGHT), PIXELS)
    row = cloth.thread[int(2.0 * PIXELS) - 2 : int(2.0 * PIXELS) + 2]
    assert row[:, int(1.9 * PIXELS) : int(2.1 * PIXELS)].max() == 0
    assert row[:, : int(1.5 * PIXELS)].max() > 0.5


def test_stripes_lie_where_they_come_to_lie_on_the_panel() -> None:
    # Blue from the left cut edge to the middle of tuck 3, white beyond: the left half of the picture is blue.
    piece = piece_of(panel_of(5, rows=0))
    tucks = piece.panel.across
    half = (Stripe("blue", tucks.marks[2]), Stripe("white", tucks.cut))
    stripes = PanelStripes(half, Fraction(0), TuckColours((), (), (), ()))
    striped = dataclasses.replace(piece, panel=dataclasses.replace(piece.panel, stripes=stripes))
    whole = near_view(striped, "", (160, 120))
    left, right = whole[:, :40].mean(axis=(0, 1)), whole[:, -40:].mean(axis=(0, 1))
    assert left[2] > 2 * left[0]
    assert right[0] > 0.8 * right[2]


def test_light_from_the_left_leaves_the_right_of_what_stands_in_shadow() -> None:
    height = np.zeros((120, 120), dtype=np.float32)
    height[:, 58:62] = 0.3
    dark = shadow(height, PIXELS)
    assert dark[60, 66] > 0.6
    assert dark[60, 50] < 0.05


def test_a_flat_sheet_keeps_its_own_colour_in_the_light() -> None:
    colour = np.broadcast_to(dyed("sea blue"), (40, 40, 3)).astype(np.float32)
    assert np.allclose(lit(np.zeros((40, 40), dtype=np.float32), colour, PIXELS), colour, rtol=0.01)


@pytest.mark.parametrize("pixels", [4.0, 26.0, 75.0, 200.0, 427.0])
def test_threads_are_whole_places_wide_and_three_at_least(pixels: float) -> None:
    wide = pixels / threads_to_an_inch(pixels)
    assert wide == pytest.approx(round(wide))
    assert wide >= 3
    assert threads_to_an_inch(pixels) <= 32


def test_a_plain_weave_goes_over_and_under() -> None:
    number = threads_to_an_inch(60.0)
    middle = ((np.arange(4) + 0.5) / number).astype(np.float32)
    across, along = (np.ascontiguousarray(one) for one in np.broadcast_arrays(middle, middle[:, np.newaxis]))
    _, tone = woven(across, along, 60.0)
    # A thread keeps its tone wherever it is on top, which is every second place; there the others are hidden.
    assert tone[0, 1] == tone[2, 1]
    assert tone[0, 0] == tone[0, 2]
    assert tone[1, 1] == tone[1, 3]
    assert len({tone[0, 1], tone[0, 0], tone[1, 1]}) == 3


def test_chance_is_spread_and_always_the_same() -> None:
    drawn = chance(np.arange(10_000), 3)
    assert (drawn.min() >= 0, drawn.max() < 1) == (True, True)
    assert abs(float(drawn.mean()) - 0.5) < 0.01
    # A single number and numbers in a grid are stirred alike, also below nothing.
    assert float(chance(0)) == float(chance(np.zeros(1, dtype=np.int64))[0])
    assert float(chance(-3, -14)) == float(chance(np.array([-3]), -14)[0])


def test_a_row_just_beyond_a_close_view_puckers_it() -> None:
    cloth, _ = sewn(dataclasses.replace(one_tuck(LEFT), held=(HeldLine(Fraction(-1, 4), (LEFT,), "left"),)), PIXELS)
    assert cloth.thread[:20].max() > 0


def test_a_blurred_grid_keeps_its_sum_and_a_halved_one_comes_back() -> None:
    grid = np.zeros((21, 21), dtype=np.float32)
    grid[10, 10] = 1
    assert float(blurred(grid, 3).sum()) == pytest.approx(1, abs=1e-5)
    even = np.full((7, 9), 0.25, dtype=np.float32)
    assert np.array_equal(doubled(halved(even), even.shape), even)


BENDS = {
    "flat": flat(WHOLE),
    "pillow": pillow(WHOLE),
    "cushion": cushion(WHOLE),
    "roll": roll(WHOLE, (0.0, 10.0), 4.0, 8.0),
    "tube": tube(WHOLE, 10.0),
    "hung": hung(WHOLE),
    "twice": twice(flat(WHOLE), 1.0),
    "camera": faces(Camera(0.7, 40.0), [Face(WHOLE, (-5, 0, -4), (1, 0, 0), (0, 0, 1))]),
}


@pytest.mark.parametrize("name", BENDS)
def test_a_form_shows_places_of_its_thing_only_and_fills_its_box(name: str) -> None:
    bend: Bend = BENDS[name]
    x = np.linspace(bend.box.left, bend.box.right, 81, dtype=np.float32)
    y = np.linspace(bend.box.top, bend.box.bottom, 61, dtype=np.float32)
    bent = bend.at(*(np.ascontiguousarray(one) for one in np.broadcast_arrays(x, y[:, np.newaxis])))
    inside = bent.inside > 0
    assert inside.mean() > 0.5
    assert inside.any(axis=0).mean() > 0.9
    for places, least, most in ((bent.across, 0, 10), (bent.along, 0, 8)):
        assert places[inside].min() >= least - 0.05
        assert places[inside].max() <= most + 0.05
    assert np.isfinite(bent.light[inside]).all()
    # What lies to the right on the thing is seen to the right, and what lies lower is seen lower.
    middle = bent.across[30][inside[30]]
    assert (np.diff(middle) > -0.15).mean() > 0.97


def test_a_roll_shows_the_half_of_its_way_round_that_faces_you() -> None:
    bent = BENDS["roll"].at(*(np.array([[5.0]], dtype=np.float32), np.array([[0.0]], dtype=np.float32)))
    assert float(bent.along[0, 0]) == pytest.approx(4.0)
    radius = 8.0 / (2 * np.pi)
    top = BENDS["roll"].at(np.array([[5.0]], dtype=np.float32), np.array([[-radius * 0.999]], dtype=np.float32))
    assert float(top.along[0, 0]) == pytest.approx(2.0, abs=0.1)  # a quarter of the way round above the middle


@pytest.mark.parametrize("kind", ["other", "mats", "curtain", "headboard"])
def test_every_kind_of_thing_has_a_picture_in_the_colour_of_its_cloth(kind: str) -> None:
    picture = stored(picture_of(thing(kind)))
    assert picture.shape == (HIGH, WIDE, 3)
    assert len(np.unique(picture.reshape(-1, 3), axis=0)) > 100


@pytest.mark.parametrize(("count", "rows"), [(1, 0), (1, 1), (120, 2)])
def test_few_and_many_tucks_have_pictures(count: int, rows: int) -> None:
    worksheet = thing(count=count, rows=rows)
    panel = near_panel(worksheet)
    assert panel is not None
    assert near_view(panel, "", (160, 120)).shape == (120, 160, 3)
    assert picture_of(worksheet).shape == (HIGH, WIDE, 3)


@pytest.mark.parametrize(("across", "along"), [(100_000, 1), (1, 100_000), (1_000_000, 1_000_000)])
def test_hostile_sizes_stay_within_the_picture(across: int, along: int) -> None:
    worksheet = worksheet_of(piece_of(panel_of(2, rows=0)))
    lying = Lying("front", Fraction(0), Fraction(0), Fraction(across), Fraction(along))
    huge = dataclasses.replace(worksheet, laid_out=LaidOut((lying,), lying.across, lying.along))
    assert picture_of(huge).shape == (HIGH, WIDE, 3)


def test_the_same_numbers_give_the_same_bytes_in_the_sizes_asked_for() -> None:
    worksheet = thing("mats")
    sizes, share = thing_files(worksheet, (320, 480))
    assert (sizes, share) == thing_files(worksheet, (320, 480))
    for width, content in sizes.items():
        with Raster.open(io.BytesIO(content)) as picture:
            assert (picture.format, picture.size) == ("WEBP", (width, height_of(width)))
        assert len(content) < 40_000
    with Raster.open(io.BytesIO(share)) as picture:
        assert (picture.format, picture.size) == ("JPEG", SHARED)
    with Raster.open(io.BytesIO(side_by_side([sizes[320]] * 4))) as picture:
        assert picture.size == SHARED
    with Raster.open(io.BytesIO(near_file(worksheet.pieces["front"], "red"))) as picture:
        assert picture.size == NEAR


def test_a_close_view_shows_a_part_of_the_panel_as_the_whole_shows_it() -> None:
    surface = sample_surface(((RIGHT, LEFT), (LEFT, RIGHT)))
    window = Box(3.0, 4.5, 6.0, 6.75)
    part, hidden = cut_out(surface, window)
    whole, _ = sewn(surface, PIXELS)
    close, _ = sewn(part, PIXELS)
    inner = (slice(20, -20), slice(30, -30))
    rows, columns = slice(270, 405), slice(180, 360)
    assert np.allclose(close.height[inner], whole.height[rows, columns][inner], atol=0.06)
    assert np.allclose(close.across[inner] + 3.0 + hidden, whole.across[rows, columns][inner], atol=0.02)


def test_a_close_view_lies_within_its_panel() -> None:
    for surface in (sample_surface(((RIGHT,),)), one_tuck(LEFT)):
        window = near_window(surface, 0.75)
        assert window.left >= 0
        assert window.top >= 0
        assert window.right <= float(surface.across) + 1e-9
        assert window.bottom <= float(surface.along) + 1e-9


def test_a_plan_in_which_a_tuck_stays_upright_looks_otherwise() -> None:
    standing, lying = (plan_view(cell, 80) for cell in (((UPRIGHT, LEFT),), ((RIGHT, LEFT),)))
    assert standing.shape == lying.shape
    assert np.abs(standing - lying).max() > 0.1


def test_cross_tucks_stand_over_the_others_in_cloth_too() -> None:
    quarter = Fraction(1, 4)
    surface = Surface(Fraction(3), Fraction(3), (Fraction(1),), (quarter,), (), ((Fraction(2), quarter),))
    height = tucked_cloth(surface, dyed(""), PIXELS).height
    assert at(height, 2.5, 2.0) > 0.2
    assert at(height, 2.5, 1.0) < 0.02


def test_what_is_seen_is_told_in_words() -> None:
    alt, caption = picture_words(thing("cushion"))
    assert alt.startswith("The finished cushion from the front, lying flat: 4 1/2 in by 15 in, 5 tucks. ")
    assert alt.endswith("Its tucks are turned at 3 rows of stitching.")
    assert caption == "medium, drawn from its numbers"


def test_a_thing_of_which_nothing_is_known_has_no_picture() -> None:
    assert shown_alone(worksheet_of()) is None


@pytest.mark.parametrize("beside", [1.05, 1.12, 1.18, 1.25, 1.4])
@pytest.mark.parametrize("side", [-1, 1])
def test_a_tuck_beside_a_close_view_is_left_out_or_reaches_into_it(beside: float, side: int) -> None:
    # The tuck stands at 2 in and is 1/2 in deep; the view begins or ends so many depths beside it.
    start = 2 + beside / 2 if side > 0 else 2 - beside / 2 - 1
    part, hidden = cut_out(one_tuck(LEFT), Box(start, 1.0, start + 1, 2.0))
    assert sewn(part, 300.0)[0].height.shape == (300, 300)
    assert hidden == (1.0 if side > 0 and not part.feet else 0.0)

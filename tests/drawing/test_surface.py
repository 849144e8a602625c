"""The picture of the surface: its light and cover as numbers, its size, words and bytes."""

import base64
import io
import re
from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest
from panels import panel_of, piece_of, worksheet_of
from PIL import Image

from generator.calculation.worked import Turn
from generator.drawing.cloth_colour import IN_LIGHT, SHADES, cloth_colour, shades, thread_colour
from generator.drawing.style import Style
from generator.drawing.surface import draw_surface, sketch_surface
from generator.drawing.surface_geometry import HeldLine, Surface, sample_surface, surface_of
from generator.drawing.surface_light import CROSS, PANEL, light, relief

LEFT, RIGHT, UPRIGHT = Turn.LEFT, Turn.RIGHT, Turn.UPRIGHT


def two_facing(start):
    """Two tucks 1/2 in deep, 3/4 in apart, turned to each other: they overlap from 2.25 to 2.5 in."""
    row = HeldLine(Fraction(2), (RIGHT, LEFT), start)
    half = Fraction(1, 2)
    return Surface(Fraction(5), Fraction(4), (Fraction(2), Fraction(11, 4)), (half, half), (row,))


def sheet(count=7, rows=3):
    return worksheet_of(piece_of(panel_of(count, rows=rows), along=Fraction(10)))


@pytest.mark.parametrize(("start", "upper"), [("right", 0), ("left", 1)])
def test_where_two_facing_tucks_overlap_the_one_turned_last_is_seen(start, upper):
    seen = relief(two_facing(start), 80)
    assert set(seen.owner[160, round(2.28 * 80) : round(2.47 * 80)].tolist()) == {upper}


def test_a_turned_tuck_covers_the_panel_from_its_foot_to_its_fold_and_no_further():
    """Turned right from its foot at 2 with a depth of 1/2, it is seen from 2 to 2.5 in; a pixel is 1/80 in."""
    row = HeldLine(Fraction(2), (RIGHT,), "right")
    surface = Surface(Fraction(5), Fraction(4), (Fraction(2),), (Fraction(1, 2),), (row,))
    covered = np.flatnonzero(relief(surface, 80).owner[160] == 0) / 80
    assert covered[0] == pytest.approx(2, abs=2 / 80)
    assert covered[-1] == pytest.approx(2.5, abs=2 / 80)


def test_a_standing_tuck_is_as_high_as_it_is_deep():
    surface = Surface(Fraction(3), Fraction(2), (Fraction(3, 2),), (Fraction(1, 2),))
    assert relief(surface, 100).height.max() == pytest.approx(0.5, abs=0.01)


@pytest.mark.parametrize("foot", [-3, 7])
def test_a_tuck_beside_the_part_that_is_seen_leaves_nothing_there(foot: int) -> None:
    surface = Surface(Fraction(4), Fraction(2), (Fraction(foot),), (Fraction(1, 2),))
    seen = relief(surface, 80)
    assert seen.height.max() == 0
    assert (seen.owner == PANEL).all()


def test_a_standing_tuck_casts_its_shadow_away_from_the_light_at_the_left():
    surface = Surface(Fraction(4), Fraction(2), (Fraction(2),), (Fraction(1, 2),))
    bright = light(relief(surface, 80), 0.5)[80]
    assert bright[round(2.3 * 80)] < 0.75 * bright[round(1.5 * 80)]


def test_a_flat_panel_is_lit_nearly_as_its_own_colour():
    surface = Surface(Fraction(3), Fraction(3), (), ())
    bright = light(relief(surface, 50), 0.1)
    assert abs(float(np.median(bright)) - IN_LIGHT) < 0.02
    nearest = shades((0.2, 0.4, 0.6))[round(IN_LIGHT * (SHADES - 1))]
    assert np.abs(nearest - np.array([51, 102, 153])).max() <= 12


def test_cross_tucks_stand_over_the_others():
    surface = Surface(Fraction(3), Fraction(3), (Fraction(1),), (Fraction(1, 4),), (), ((Fraction(2), Fraction(1, 4)),))
    assert set(relief(surface, 60).owner[120].tolist()) == {CROSS}


def test_left_and_right_turned_tucks_differ_in_grey_where_they_rise_from_a_row():
    seen = relief(sample_surface(((RIGHT, LEFT), (LEFT, RIGHT))), 60)
    bright = light(seen, 0.375)
    line = round((1.125 + 0.3 * 2.25) * 60)
    right, left = (bright[line, seen.owner[line] == number].mean() for number in (0, 1))
    assert right - left > 0.08


@pytest.mark.parametrize(("count", "rows"), [(1, 1), (2, 1), (17, 5), (60, 3)])
def test_the_picture_has_the_proportions_of_the_panel(count, rows):
    worksheet = sheet(count, rows)
    (picture,) = draw_surface(worksheet, "front", Style())
    image = Image.open(io.BytesIO(base64.b64decode(re.search(r"base64,([^\"]+)", picture.svg)[1])))
    front = worksheet.pieces["front"]
    assert image.width / image.height == pytest.approx(float(front.finished_across / front.finished_along), rel=0.01)
    assert image.width <= 5 * 160
    assert picture.width <= 5.5


def test_the_picture_tells_its_measures_and_what_is_seen():
    (picture,) = draw_surface(sheet(7, 3), "front", Style())
    assert ">6 in<" in picture.svg  # 6 pitches of 3/4 and two margins of 3/4
    assert ">10 in<" in picture.svg
    assert picture.alt == (
        "The front seen from above: 7 tucks run from top to bottom, turned at 3 rows of stitching; "
        "between the rows each fold swings over to its next turn."
    )


@pytest.mark.parametrize("size", [7.0, 12.0])
def test_the_measures_stand_clear_of_the_cloth_and_inside_the_picture(size):
    worksheet = sheet(7, 3)
    surface = surface_of(worksheet.pieces["front"])
    canvas = sketch_surface(worksheet, "front", Style(small=size))
    assert canvas.crossings() == ()
    scale = 6 / 10  # 10 in along on 6 in of paper
    assert min(label.box.top for label in canvas.labels if not label.turned) > float(surface.along) * scale
    assert min(label.box.left for label in canvas.labels if label.turned) > float(surface.across) * scale


def test_the_same_panel_gives_the_same_bytes():
    first, second = (draw_surface(sheet(), "front", Style())[0].svg for _ in range(2))
    assert first == second


def test_thread_shows_on_pale_and_on_dark_cloth():
    for words in ("linen", "navy", "black", "white", "#7f7f7f", "charcoal"):
        colour = cloth_colour(words)
        thread = [int(thread_colour(colour)[place : place + 2], 16) / 255 for place in (1, 3, 5)]
        assert max(abs(part - own) for part, own in zip(thread, colour, strict=True)) > 0.2


def test_what_no_tuck_covers_is_panel():
    assert set(relief(Surface(Fraction(2), Fraction(2), (), ()), 40).owner.ravel().tolist()) == {PANEL}


@pytest.mark.parametrize(("hangs_by", "quarters"), [("left", 1), ("bottom", 2), ("right", 3)])
def test_a_panel_is_seen_as_it_hangs_and_lit_from_the_upper_left_there(hangs_by, quarters):
    """Second route: a tuck pressed down is lit like one that runs across and is seen after its turn."""
    plain = piece_of(panel_of(5), along=Fraction(10))
    across, along = float(plain.finished_across), float(plain.finished_along)
    turned = replace(plain, hangs_by=hangs_by)
    picture = sketch_surface(worksheet_of(turned), "front", Style())
    upright = sketch_surface(worksheet_of(plain), "front", Style())
    shape = (along, across) if quarters % 2 else (across, along)
    seen, before = (image_of(canvas) for canvas in (picture, upright))
    assert seen.width / seen.height == pytest.approx(shape[0] / shape[1], rel=0.02)
    assert seen.width / seen.height != pytest.approx(before.width / before.height, rel=0.02) or quarters == 2
    # Standing tucks throw their shadow away from the lamp, to the right of them or below them, however it hangs.
    grey = np.asarray(seen.convert("L"), dtype=float).mean(axis=0 if quarters == 2 else 1)
    lines = np.flatnonzero(np.diff(grey) < -4)
    assert len(lines) > 0
    assert grey[int(lines[0]) + 3] < grey[max(int(lines[0]) - 3, 0)]


def test_the_words_of_the_picture_are_those_of_how_it_hangs():
    piece = replace(piece_of(panel_of(5), along=Fraction(10)), hangs_by="left")
    (picture,) = draw_surface(worksheet_of(piece), "front", Style())
    assert picture.alt.startswith("The front seen from above: 5 tucks run from side to side, turned at 4 rows")
    plain = replace(piece, panel=replace(panel_of(5), rows=None))
    (picture,) = draw_surface(worksheet_of(plain), "front", Style())
    assert picture.alt == "The front seen from above: 5 tucks stand one below the other from side to side."


def image_of(canvas):
    data = re.search(r"data:image/[a-z]+;base64,([^\"]+)", canvas.picture("", "").svg)
    return Image.open(io.BytesIO(base64.b64decode(data[1])))

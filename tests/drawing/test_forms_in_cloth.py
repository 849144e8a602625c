"""The forms of things in cloth: what is thick, what stands, what has a zip or rods, asked of numbers and of dots."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest

from generator.calculation.worked_project import Worksheet
from generator.drawing.labels import Box
from generator.drawing.renders.bends import Bend, rodded, standing
from generator.drawing.renders.colours import stored
from generator.drawing.renders.padding import risen, thickened
from generator.drawing.renders.round_things import SINE, face, side, whole_of
from generator.drawing.renders.scenes import picture_of
from generator.drawing.renders.stage import WIDE
from generator.drawing.renders.standing import can_stand, thickness
from generator.drawing.renders.thing_grid import FlatThing
from generator.drawing.renders.words import picture_words
from generator.drawing.renders.zips import tape
from generator.drawing.things.forms import form_of
from generator.drawing.things.views import front_shapes
from tests.room import demo_room

WHOLE = Box(0, 0, 10, 8)


def demo(name: str, size: str) -> Worksheet:
    return demo_room().worksheet(name, size, "inch")


def spot(bend: Bend, x: float, y: float) -> tuple[float, float, bool]:
    """What is seen at one place of a form: where on the thing, and whether anything."""
    bent = bend.at(np.array([[x]], dtype=np.float32), np.array([[y]], dtype=np.float32))
    return float(bent.across[0, 0]), float(bent.along[0, 0]), bool(bent.inside[0, 0])


def test_a_round_top_with_a_skirt_is_drawn_as_deep_as_the_skirt_though_it_was_tucked_square() -> None:
    stool = demo("capstan-stool", "middle")
    form = form_of(stool)
    assert (form.name, form.sizes) == ("drum", (3.0,))
    assert ", with its side: 14 in by 14 in" in picture_words(stool)[0]
    assert form_of(demo("pilot-tea-cosy", "four cups")).name == "flat"


def test_a_round_thing_is_seen_as_an_ellipse_with_half_its_way_round_below() -> None:
    """Radius 5: its rim is 10 wide and 10 sin e high; the middle of its side is a quarter of the way round, 7.85 in."""
    top, around = face(Box(0, 0, 10, 10)), side(5.0, 2.0)
    assert spot(top, 0.0, 0.0) == (5.0, 5.0, True)
    across, along, inside = spot(top, 0.0, 4.99 * SINE)
    assert (across, along, inside) == (5.0, pytest.approx(9.99, abs=1e-4), True)
    assert not spot(top, 0.0, 5.1 * SINE)[2]
    across, along, inside = spot(around, 0.0, whole_of(5.0, 2.0).bottom - 0.001)
    assert (across, along) == (pytest.approx(7.854, abs=1e-3), pytest.approx(2.0, abs=0.01))
    assert inside
    # Half way to the right, 30 degrees round from the middle: a sixth of half the way round.
    assert spot(around, 2.5, 5 * SINE)[0] == pytest.approx(7.854 + 5 * np.pi / 6, abs=1e-3)


def test_a_skirt_that_is_drawn_in_is_narrower_below() -> None:
    low = whole_of(5.0, 2.0).bottom - 1.6
    assert spot(side(5.0, 2.0), 4.6, low)[2]
    assert not spot(side(5.0, 2.0, 0.2), 4.6, low)[2]


def test_a_skin_blown_up_over_a_round_stands_as_a_loaded_membrane_does() -> None:
    """Over a round of radius 1 the membrane is 1 - r r high (Timoshenko, Theory of Elasticity); here its root."""
    number = 121
    place = np.linspace(-1.05, 1.05, number, dtype=np.float32)
    away = np.hypot(place[np.newaxis], place[:, np.newaxis])
    found = risen((away <= 1).astype(np.float32))
    middle = number // 2
    for share in (0.25, 0.5, 0.75):
        column = middle + round(share / 1.05 * middle)
        radius = float(place[column])
        assert found[middle, column] == pytest.approx(np.sqrt(1 - radius * radius), abs=0.05)
    assert found[0, 0] == 0


def test_what_is_thick_is_bright_towards_the_lamp_and_dark_away_from_it() -> None:
    square = np.ones((200, 200), dtype=np.float32)
    colour = np.full((200, 200, 3), 0.4, dtype=np.float32)
    lit = thickened(FlatThing(0.0, 0.0, 20.0, np.zeros_like(square), colour.copy(), square), 0.2).colour
    assert lit[10, 10, 0] > lit[100, 100, 0] > lit[190, 190, 0]
    assert lit[100, 100, 0] == pytest.approx(0.4, abs=0.02)
    flat = thickened(FlatThing(0.0, 0.0, 20.0, np.zeros_like(square), colour.copy(), square), 0.0).colour
    assert np.array_equal(flat, colour)


def test_a_thing_of_two_faces_is_thick_one_with_wadding_more_and_one_layer_not_at_all() -> None:
    mats, sleeve, cosy = (
        demo("tide-table-mats", "supper"),
        demo("logbook-sleeve", "tablet"),
        demo("pilot-tea-cosy", "four cups"),
    )
    assert thickness(replace(mats, laid_out=replace(mats.laid_out, pieces=mats.laid_out.seen))) == 0
    assert 0 < thickness(sleeve) < thickness(cosy)
    assert [can_stand(one) for one in (sleeve, cosy)] == [False, True]
    assert ", standing: 13 in by 10 in" in picture_words(cosy)[0]


def test_a_zip_is_as_long_as_it_is_and_ends_in_tabs() -> None:
    """The middle pouch is 10 in wide and its zip 8 in long: 1 in of tab is left at each end."""
    shapes = tape(demo("purser-pouch", "middle"))
    runs = [(shape.covers[0][0], shape.covers[1][0], shape.cloth) for shape in shapes]
    assert runs == [(0.0, 1.0, "lining"), (1.0, 9.0, "face"), (9.0, 10.0, "lining")]
    assert tape(demo("customs-tote", "papers")) == []


def test_a_blind_bulges_over_its_rods_whose_ends_stand_out() -> None:
    bend = rodded(WHOLE, [4.0], 0.5)
    lights = bend.at(
        *(
            np.ascontiguousarray(one)
            for one in np.broadcast_arrays(
                np.array([5.0], dtype=np.float32), np.linspace(0, 8, 161, dtype=np.float32)[:, np.newaxis]
            )
        )
    ).light[:, 0]
    # The lamp stands above: what rises to a rod from above is bright, what falls from it is dark.
    assert lights[72] > lights[40] > lights[90]
    picture = stored(picture_of(demo("fairway-blind", "middle"))).astype(int)
    wooden = (picture[..., 0] - picture[..., 2] > 55).any(axis=1)
    rods = int((np.diff(wooden.astype(int)) == 1).sum())
    assert rods == 5


def test_what_stands_bows_toward_you_below_and_keeps_its_highest_place() -> None:
    bend = standing(WHOLE)
    assert bend.box.bottom > 8
    assert spot(bend, 5.0, bend.box.bottom - 0.001)[2]
    assert not spot(bend, 0.05, bend.box.bottom - 0.001)[2]
    assert spot(bend, 5.0, 0.001)[1] == pytest.approx(0, abs=0.01)


def test_a_stool_has_legs_below_its_seat() -> None:
    picture = stored(picture_of(demo("capstan-stool", "middle"))).astype(int)
    row = picture[415, WIDE // 2 - 250 : WIDE // 2 + 250]
    # Wood is darker than the wall between the legs.
    dark = (row.sum(axis=1) < 0.8 * np.median(row.sum(axis=1))).astype(int)
    assert int((np.diff(dark) == 1).sum()) == 4


@pytest.mark.parametrize("size", ["small", "large"])
def test_the_skirt_is_drawn_in_by_what_its_elastic_is_shorter(size: str) -> None:
    stool = demo("capstan-stool", size)
    (elastic,) = (one for one in stool.closures if one.kind == "elastic")
    girth = Fraction(22, 7) * stool.laid_out.across
    assert 1 - (elastic.length - elastic.lap) / girth == pytest.approx(0.1, abs=0.01)


def test_the_handle_of_a_bag_with_a_drawn_mouth_begins_on_it_one_on_each_face() -> None:
    bag = demo("cockle-bag", "market")
    (mouth,) = (line for line in bag.pieces["panel"].shape.lines if line.name == "mouth")  # type: ignore[union-attr]
    spots = sorted((float(x), float(y)) for x, y in mouth.spots)
    handles = [shape for shape in front_shapes(bag) if shape.cloth and shape.lying is None]
    (handle,) = handles
    for line in handle.edges:
        for x, y in (line[0], line[-1]):
            assert y == pytest.approx(float(np.interp(x, *zip(*spots, strict=True))), abs=1e-6)
    assert min(y for line in handle.edges for _, y in line) < 0

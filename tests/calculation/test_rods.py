"""Rods in tucks and rings along them: by hand, by a general geometry library, and by trying."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as draw
from shapely.geometry import Point

from generator.calculation.panel.rods import ring_places, rod_depth
from generator.errors import CalculationError
from generator.lengths import INCH, METRIC, read_length


def test_a_rod_of_three_eighths_wants_a_tuck_of_three_quarters_by_hand() -> None:
    # 3.1416 x 0.375 / 2 = 0.58905, and 0.125: 0.71405.
    assert float(rod_depth(Fraction(3, 8), INCH)) == pytest.approx(0.71405, abs=0.00001)
    # 3.1416 x 9 / 2 = 14.137, and 3: 17.137 mm.
    assert float(rod_depth(read_length("9 mm"), METRIC)) * 25.4 == pytest.approx(17.137, abs=0.001)


@given(eighths=draw.integers(1, 24))
def test_the_two_plies_go_once_round_the_rod_as_a_library_measures_it(eighths: int) -> None:
    """Second route: the way round a circle of many corners; a loop of two plies as deep as the tuck less its play."""
    rod = Fraction(eighths, 8)
    around = Point(0, 0).buffer(float(rod) / 2, quad_segs=2000).length
    assert 2 * (float(rod_depth(rod, INCH)) - 0.125) == pytest.approx(around, rel=0.000001)


@pytest.mark.parametrize(
    ("length", "from_sides", "places"),
    [
        ("30 in", "3 in", "3 in, 15 in, 27 in"),
        ("24 in", "3 in", "3 in, 12 in, 21 in"),
        ("18 in", "3 in", "3 in, 15 in"),
        ("10 in", "0 in", "0 in, 10 in"),
    ],
)
def test_rings_lie_evenly_no_farther_than_a_foot_apart_by_hand(length: str, from_sides: str, places: str) -> None:
    # 24 in between are two spaces of 12, 18 in two of 9, 12 in one.
    found = ring_places(read_length(length), read_length(from_sides), INCH)
    assert list(found) == [read_length(place) for place in places.split(", ")]


@given(eighths=draw.integers(17, 1200), side=draw.integers(0, 8))
def test_rings_are_as_few_as_may_be(eighths: int, side: int) -> None:
    """Second route: numbers of spaces are tried one after the other until none is wider than a foot."""
    length, from_sides = Fraction(eighths, 8), Fraction(side, 8)
    spaces = next(number for number in range(1, 99) if (length - 2 * from_sides) / number <= 12)
    found = ring_places(length, from_sides, INCH)
    assert len(found) == spaces + 1
    assert (found[0], found[-1]) == (from_sides, length - from_sides)
    apart = [after - before for before, after in pairwise(found)]
    assert len(set(apart)) == 1


def test_rods_and_rings_that_cannot_be_are_refused() -> None:
    with pytest.raises(CalculationError, match="the thickness of a rod"):
        rod_depth(Fraction(0), INCH)
    with pytest.raises(CalculationError) as refusal:
        ring_places(Fraction(6), Fraction(3), INCH)
    assert (
        str(refusal.value)
        == "rings 3 in from both sides leave nothing between them on 6 in; put them nearer to the sides"
    )

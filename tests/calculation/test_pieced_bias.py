"""Bias strips pieced from a rectangle: ruled and cut as shapes, and every narrower rectangle tried."""

from __future__ import annotations

import math
import random
from fractions import Fraction

import pytest
from shapely.geometry import LineString, Polygon, box

from generator.calculation.pieces.bias import bias_rectangle, pieced_bias

QUARTER = Fraction(1, 4)


def strips_by_shape(short: float, long: float, width: float) -> list[float]:
    """How much of the short side each strip goes over at its full width, ruled from the fold to both sides."""
    cloth, apart = box(0, 0, long, short), width * math.sqrt(2)
    found = []
    for place in range(-int(short / apart) - 1, int(long / apart) + 2):
        foot = short + place * apart
        # Lines run up to the left from the long side at the bottom; the strip lies between two of them.
        strip = Polygon([(foot, 0), (foot + apart, 0), (foot + apart - short, short), (foot - short, short)])
        inside = strip.intersection(cloth)
        # Where the strip is whole, a line along the long side crosses it over its full width.
        steps = 400
        whole = 0
        for step in range(steps):
            level = short * (step + 0.5) / steps
            whole += inside.intersection(LineString([(-1, level), (long + 1, level)])).length > apart - 1e-7
        found.append(short * whole / steps)
    return sorted((extent for extent in found if extent > 0), reverse=True)


@pytest.mark.parametrize("seed", range(8))
def test_the_strips_are_those_that_can_be_ruled_on_the_rectangle(seed: int) -> None:
    chance = random.Random(seed)  # noqa: S311
    short = Fraction(chance.randint(16, 60), 4)
    long, width = short + Fraction(chance.randint(0, 120), 4), Fraction(chance.randint(4, 12), 4)
    found = pieced_bias((short, long), width, QUARTER)
    used = [extent for extent in strips_by_shape(float(short), float(long), float(width)) if extent > 0.5]
    assert found.strips == len(used)
    given = math.sqrt(2) * (sum(used) - 0.5 * (len(used) - 1))
    assert float(found.gives) == pytest.approx(given, abs=0.005 * len(used) * float(short))
    assert found.gives * width <= short * long


@pytest.mark.parametrize("seed", range(40))
def test_no_narrower_rectangle_gives_the_strip_and_no_fewer_strips_do(seed: int) -> None:
    chance = random.Random(seed)  # noqa: S311
    length, width = Fraction(chance.randint(20, 400)), Fraction(chance.randint(4, 12), 4)
    long, least = Fraction(chance.randint(10, 54)), chance.choice([Fraction(0), Fraction(6)])
    found = bias_rectangle((length, width), QUARTER, long, QUARTER, least)
    shorts = [QUARTER * number for number in range(1, int(long / QUARTER) + 1)]
    enough = [short for short in shorts if pieced_bias((short, long), width, QUARTER, None, least).gives >= length]
    if found is None:
        assert not enough
        return
    assert found.short == enough[0]
    assert found.gives >= length
    longest = [extent for extent in strips_by_shape(float(found.short), float(long), float(width)) if extent > 0.5]
    fewer = longest[: found.strips - 1]
    assert math.sqrt(2) * (sum(fewer) - 0.5 * (len(fewer) - 1)) < float(length) + 0.01


def test_short_strips_are_left() -> None:
    # The strips of 8 x 20: four of 8, then 5.86, 5.17, 3.03, 2.34 of the 8 in. 6 in of strip are 4.24 of it.
    assert pieced_bias((Fraction(8), Fraction(20)), Fraction(2), QUARTER, None, Fraction(6)).strips == 6


def test_a_long_narrow_rectangle() -> None:
    # 9 x 40 of 1 1/2 in strip with joins of 1/4: by area 240, in truth 212 1/2.
    assert round(float(pieced_bias((Fraction(9), Fraction(40)), Fraction(3, 2), QUARTER).gives), 1) == 212.5

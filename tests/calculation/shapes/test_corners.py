"""Corners of two shapes that are sewn to each other, beside the angles that a library finds."""

from __future__ import annotations

from fractions import Fraction
from math import atan2, degrees

from hypothesis import assume, given
from hypothesis import strategies as draw

from generator.calculation.shapes.corners import run_on
from generator.calculation.shapes.segments import Spot

WAYS = (
    draw.tuples(draw.integers(-40, 40), draw.integers(-40, 40))
    .filter(any)
    .map(lambda way: (Fraction(way[0]), Fraction(way[1])))
)


def turn(arriving: Spot, leaving: Spot) -> float:
    """By how much a walker turns to the right, y growing down."""
    return degrees(atan2(float(leaving[1]), float(leaving[0])) - atan2(float(arriving[1]), float(arriving[0])))


@given(first=WAYS, second=WAYS, third=WAYS, fourth=WAYS)
def test_corners_run_on_when_they_make_half_a_turn(first: Spot, second: Spot, third: Spot, fourth: Spot) -> None:
    # The angle of the cloth is 180 less the turn; two of them make 180 where the turns do.
    off = abs((turn(first, second) + turn(third, fourth) - 180 + 180) % 360 - 180)
    assume(abs(off - 15) > 0.01)
    assert run_on((first, second), (third, fourth)) is (off < 15)

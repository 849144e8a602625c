"""Lengths of lines lie between their bounds: beside an elliptic integral and beside sums by a general library."""

from __future__ import annotations

import itertools
from fractions import Fraction
from math import hypot, pi

import pytest
from hypothesis import given, settings
from hypothesis import strategies as draw
from scipy.integrate import quad
from scipy.special import ellipe
from shapes_drawn import sides, spot

from generator.calculation.shapes.by_word import half_circle, oval, rounded
from generator.calculation.shapes.curve import curve_through
from generator.calculation.shapes.line_lengths import fitted_length, length_bounds
from generator.calculation.shapes.segments import Cubic, QuarterOval
from generator.errors import CalculationError
from generator.lengths import INCH

LENGTHS = draw.integers(4, 400).map(lambda eighths: Fraction(eighths, 8))


def ellipse(a: float, b: float) -> float:
    """The way round an ellipse of two half axes, by the complete elliptic integral of the second kind."""
    wide, narrow = max(a, b), min(a, b)
    return float(4 * wide * ellipe(1 - (narrow / wide) ** 2))


@settings(max_examples=40, deadline=None)
@given(across=LENGTHS, along=LENGTHS)
def test_an_oval_is_as_long_as_the_elliptic_integral_says(across: Fraction, along: Fraction) -> None:
    less, more = length_bounds(oval(across, along)["rim"])
    theirs = ellipse(float(across) / 2, float(along) / 2)
    assert float(less) < theirs + 1e-9
    assert theirs < float(more) + 1e-9
    assert more - less <= Fraction(1, 100)


def test_an_oval_of_14_by_10_by_hand() -> None:
    # In 64 parts a quarter the chords are 37.960 and the tangents 37.964 long; the integral says 37.961. To 1/8: 38.
    less, more = length_bounds(oval(Fraction(14), Fraction(10))["rim"])
    assert (round(float(less), 3), round(float(more), 3)) == (37.960, 37.964)
    assert round(ellipse(7, 5), 3) == 37.961
    assert fitted_length(oval(Fraction(14), Fraction(10))["rim"], Fraction(1, 8)) == 38


def test_round_corners_and_half_a_circle_are_straight_lines_and_parts_of_circles() -> None:
    # 10 by 8 with corners of 2: 2 x 6 + 2 x 4 straight, and one whole circle of radius 2. Half of one of 12: 6 pi.
    less, more = length_bounds(rounded((Fraction(10), Fraction(8)), Fraction(2), "all", INCH)["rim"])
    assert float(less) < 20 + 4 * pi < float(more)
    half = half_circle(Fraction(12), Fraction(6))
    less, more = length_bounds(half["rim"])
    assert float(less) < 6 * pi < float(more)
    assert fitted_length(half["bottom"], Fraction(1, 8)) == 12


def along(cubic: Cubic, t: float) -> float:
    """How fast a cubic goes on, from its four points, by the rule for its derivative."""
    points = [(float(x), float(y)) for x, y in (cubic.start, cubic.first, cubic.second, cubic.end)]
    weights = (3 * (1 - t) ** 2, 6 * (1 - t) * t, 3 * t * t)
    ways = [(b[0] - a[0], b[1] - a[1]) for a, b in itertools.pairwise(points)]
    return hypot(*(sum(w * way[axis] for w, way in zip(weights, ways, strict=True)) for axis in (0, 1)))


def test_a_curve_is_as_long_as_an_integral_along_it_says() -> None:
    armhole = curve_through([spot(7.5, 1), spot(7.25, 6), spot(11, 10)])
    less, more = length_bounds(armhole)
    theirs = sum(quad(lambda t, one=one: along(one, t), 0, 1)[0] for one in armhole)
    assert float(less) < theirs < float(more)


def test_a_curve_goes_through_its_points_and_turns_nowhere_sharply() -> None:
    points = [spot(0, 0), spot(3, 1), spot(4, 5), spot(9, 6)]
    stretches = curve_through(points, "across", "down")
    assert [one.start for one in stretches] + [stretches[-1].end] == points
    for one, other in itertools.pairwise(stretches):
        (x, y), (to_x, to_y) = one.walked(1)[-1].ahead, other.walked(1)[0].ahead
        assert x * to_y == y * to_x
        assert x * to_x + y * to_y > 0
    assert stretches[0].walked(1)[0].ahead[1] == 0
    assert stretches[-1].walked(1)[-1].ahead[0] == 0


def test_a_curve_on_a_parabola_stays_on_it() -> None:
    # Points of y = x squared one inch apart across: the direction at the middle one is that of the parabola, 2.
    (_, after) = curve_through([spot(0, 0), spot(1, 1), spot(2, 4)])
    x, y = after.walked(1)[0].ahead
    # Its chords are root 2 and root 10, not equal, so it is the parabola of the chords: (d1 h2 + d2 h1) / (h1 + h2).
    h1, h2 = round(2**0.5 * 64) / 64, round(10**0.5 * 64) / 64
    wanted = ((1 / h1) * h2 + (3 / h2) * h1) / ((1 / h1) * h2 + (1 / h2) * h1)
    assert float(y / x) == pytest.approx(wanted, abs=0.02)


def test_a_straight_edge_that_is_exact_stays_exact_and_another_goes_to_the_ruler() -> None:
    assert fitted_length(sides((0, 0), (3, 4)), Fraction(1, 8)) == 5
    # Root of 1 + 6.25 = 2.693, to 1/8: 2 3/4.
    assert fitted_length(sides((5, 0), (7.5, 1)), Fraction(1, 8)) == Fraction(11, 4)


def test_two_points_that_are_one_are_refused() -> None:
    with pytest.raises(CalculationError, match="two points of a curve that follow each other are one point"):
        curve_through([spot(0, 0), spot(0, 0), spot(1, 1)])


def test_a_quarter_oval_sets_out_and_arrives_as_it_says() -> None:
    for leaving, still in (("across", 1), ("down", 0)):
        steps = QuarterOval(spot(0, 0), spot(5, 3), leaving).walked(8)  # type: ignore[arg-type]
        assert steps[0].ahead[still] == 0
        assert steps[-1].ahead[1 - still] == 0
        assert (steps[0].spot, steps[-1].spot) == (spot(0, 0), spot(5, 3))
        # Every point lies on the ellipse: the squares of its shares of the half axes add up to one.
        middle = (0, 3) if leaving == "across" else (5, 0)
        assert {((x - middle[0]) / 5) ** 2 + ((y - middle[1]) / 3) ** 2 for x, y in (one.spot for one in steps)} == {1}

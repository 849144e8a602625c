"""Where flaps and folds lie, against positions worked by hand and against the length of the fold."""

from fractions import Fraction
from math import cos, pi, radians, sin, sqrt

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculation.worked import Turn
from generator.drawing.surface_geometry import HeldLine, Surface, angles, folds, order, sample_surface

LEFT, RIGHT, UPRIGHT = Turn.LEFT, Turn.RIGHT, Turn.UPRIGHT
HALF = Fraction(1, 2)


def panel(feet, rows, *, depth=HALF, along=12, start="right"):
    """Return a surface with equal tucks at ``feet``, held at ``rows`` (place, turns)."""
    held = tuple(HeldLine(Fraction(at), tuple(turns), start) for at, turns in rows)
    places = tuple(Fraction(foot) for foot in feet)
    return Surface(places[-1] + 1, Fraction(along), places, (Fraction(depth),) * len(places), held)


def fold_at(surface, number, height):
    across, above = folds(surface, angles(surface, np.array([float(height)])))
    return float(across[number, 0]), float(above[number, 0])


def test_a_fold_lies_a_depth_beside_its_foot_in_a_row_and_a_depth_above_it_when_upright():
    surface = panel((2, 5), [(3, (LEFT, RIGHT)), (9, (RIGHT, LEFT))])
    assert fold_at(surface, 0, 3) == pytest.approx((1.5, 0))
    assert fold_at(surface, 1, 3) == pytest.approx((5.5, 0))
    assert fold_at(surface, 0, 6) == pytest.approx((2, 0.5))


@pytest.mark.parametrize("degrees", [-90, -37, 0, 30, 90])
def test_a_fold_lies_at_foot_plus_depth_times_sine_and_at_depth_times_cosine(degrees):
    surface = panel((2,), [])
    across, above = folds(surface, np.array([[radians(degrees)]]))
    assert across[0, 0] == pytest.approx(2 + 0.5 * sin(radians(degrees)))
    assert above[0, 0] == pytest.approx(0.5 * cos(radians(degrees)))


@pytest.mark.parametrize(
    ("pitch", "gap"),
    [
        ("3/4", "-1/4"),  # 3/4 - 1/2 - 1/2: they overlap by a quarter
        ("1", "0"),  # 1 - 1/2 - 1/2: they meet
        ("1 1/4", "1/4"),  # 5/4 - 1/2 - 1/2: a quarter is left between them
    ],
)
def test_two_facing_tucks_overlap_meet_or_leave_a_gap_as_the_pitch_less_both_depths_says(pitch, gap):
    apart = sum(Fraction(part) for part in pitch.split())
    surface = panel((2, 2 + apart), [(3, (RIGHT, LEFT))])
    left_fold, right_fold = fold_at(surface, 0, 3)[0], fold_at(surface, 1, 3)[0]
    assert right_fold - left_fold == pytest.approx(float(Fraction(gap)))


def test_a_tuck_stands_upright_halfway_between_rows_that_turn_it_opposite_ways():
    surface = panel((2,), [(3, (LEFT,)), (9, (RIGHT,))])
    assert angles(surface, np.array([6.0]))[0, 0] == pytest.approx(0)


def test_a_tuck_stays_as_it_is_between_rows_that_turn_it_alike():
    surface = panel((2,), [(3, (LEFT,)), (9, (LEFT,))])
    assert angles(surface, np.linspace(3, 9, 13))[0] == pytest.approx(-pi / 2)


def test_a_tuck_left_out_of_a_row_stands_upright_in_it():
    surface = panel((2, 4), [(3, (LEFT, RIGHT)), (6, (UPRIGHT, LEFT)), (9, (RIGHT, RIGHT))])
    assert angles(surface, np.array([6.0]))[:, 0] == pytest.approx([0, -pi / 2])


def test_beyond_the_last_row_a_tuck_is_upright_after_three_depths():
    surface = panel((2,), [(4, (RIGHT,))])
    assert angles(surface, np.array([2.5, 2.6, 4.0, 5.5, 11.0]))[0] == pytest.approx(
        [0, 0.0205, pi / 2, 0, 0], abs=2e-3
    )


def test_a_panel_without_rows_stands_upright_all_over():
    assert not angles(panel((2, 3, 4), []), np.linspace(0, 12, 25)).any()


@given(spacing=st.integers(4, 20), eighths=st.integers(1, 8))
def test_a_fold_between_opposed_rows_is_never_shorter_than_the_even_swing(spacing, eighths):
    """On the cylinder round the foot the even swing is the shortest way: sqrt(S'^2 + (pi d)^2)."""
    depth = Fraction(eighths, 8)
    surface = panel((2,), [(1, (LEFT,)), (1 + spacing, (RIGHT,))], depth=depth, along=30)
    heights = np.linspace(1, 1 + spacing, 4001)
    across, above = folds(surface, angles(surface, heights))
    length = np.hypot(np.hypot(np.diff(across[0]), np.diff(above[0])), np.diff(heights)).sum()
    even = sqrt(spacing**2 + (pi * float(depth)) ** 2)
    assert even - 1e-4 <= length <= even * 1.06


@pytest.mark.parametrize(("start", "upper"), [("right", 0), ("left", 1)])
def test_of_two_facing_tucks_the_one_turned_last_lies_on_top(start, upper):
    """Begun at the right the row ends with the left tuck, begun at the left with the right one."""
    surface = panel((2, Fraction(11, 4)), [(3, (RIGHT, LEFT))], start=start)
    heights = np.array([3.0])
    ranks = order(surface, heights, angles(surface, heights))[:, 0]
    assert int(np.argmax(ranks)) == upper


@pytest.mark.parametrize("start", ["left", "right"])
def test_of_blind_tucks_turned_alike_each_lies_over_the_foot_that_its_fold_points_to(start):
    feet = (2, Fraction(9, 4), Fraction(5, 2))
    heights = np.array([3.0])
    for turn, from_top in ((RIGHT, [0, 1, 2]), (LEFT, [2, 1, 0])):
        surface = panel(feet, [(3, (turn,) * 3)], start=start)
        ranks = order(surface, heights, angles(surface, heights))[:, 0]
        assert list(np.argsort(-ranks)) == from_top


def test_the_sample_of_a_plan_has_twelve_tucks_and_six_rows_six_depths_apart():
    """11 pitches of 3/4 and two margins of 3/4 are 9 3/4; six rows of 2 1/4 are 13 1/2."""
    surface = sample_surface(((RIGHT, LEFT), (LEFT, RIGHT)))
    assert (surface.across, surface.along) == (Fraction(39, 4), Fraction(27, 2))
    assert len(surface.feet) == 12
    assert [line.at for line in surface.held] == [Fraction(9, 8) + row * Fraction(9, 4) for row in range(6)]
    assert surface.held[1].turns[:3] == (LEFT, RIGHT, LEFT)

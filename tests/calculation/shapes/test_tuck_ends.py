"""Tucks as a shape ends them: a circle by hand, and any shape beside a general library."""

from __future__ import annotations

from fractions import Fraction
from math import sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as draw
from shapely.geometry import LineString
from shapes_drawn import polygon, sewn, sides

from generator.calculation.shapes.by_word import oval
from generator.calculation.shapes.cut_line import seam_line
from generator.calculation.shapes.tuck_ends import tuck_ends

DEPTH = Fraction(3, 8)
(CIRCLE,) = sewn(oval(Fraction(14), Fraction(14)))


def test_a_tuck_6_from_the_middle_of_a_circle_of_14_needs_no_catching() -> None:
    # 2 x root of (49 - 36) = 7.211 long. Its fold, 3/8 further out, ends root of 13 - root of (49 - 40.64) = 0.714
    # lower: less than 3/4.
    (tuck,) = tuck_ends(seam_line(CIRCLE), [Fraction(1)], [DEPTH])
    assert float(tuck.length) == pytest.approx(2 * sqrt(13), abs=0.005)
    assert (tuck.tuck, tuck.catch_top, tuck.catch_bottom) == (1, False, False)


def test_a_tuck_nearer_to_the_edge_is_caught_and_one_outside_is_not_there() -> None:
    # 6 1/4 out: root of (49 - 39.06) = 3.152; at 6 5/8 root of (49 - 43.89) = 2.260: 0.892 lower, more than 3/4.
    near, none = (tuck_ends(seam_line(CIRCLE), [at], [DEPTH]) for at in (Fraction(3, 4), Fraction(-1)))
    assert (near[0].catch_top, near[0].catch_bottom) == (True, True)
    # At 6 7/8 out the fold lies beyond the shape, so the edge does not reach it.
    assert tuck_ends(seam_line(CIRCLE), [Fraction(1, 8)], [DEPTH])[0].catch_top
    assert none == ()


def test_in_a_hollow_shape_a_tuck_may_be_there_twice() -> None:
    # A U of 6 by 6 that is open to the right between 2 and 4.
    (u,) = sewn({"all": sides((0, 0), (6, 0), (6, 2), (2, 2), (2, 4), (6, 4), (6, 6), (0, 6), (0, 0))})
    found = tuck_ends(seam_line(u), [Fraction(1), Fraction(5)], [DEPTH, DEPTH])
    assert [(one.tuck, one.top, one.bottom) for one in found] == [(1, 0, 6), (2, 0, 2), (2, 4, 6)]


@settings(max_examples=60, deadline=None)
@given(
    across=draw.integers(40, 160).map(lambda n: Fraction(n, 8)),
    along=draw.integers(40, 160).map(lambda n: Fraction(n, 8)),
    share=draw.fractions(Fraction(1, 20), Fraction(19, 20)),
)
def test_a_tuck_is_as_long_as_a_general_library_finds_it(across: Fraction, along: Fraction, share: Fraction) -> None:
    (rim,) = sewn(oval(across, along))
    at = across * share
    (tuck,) = tuck_ends(seam_line(rim), [at], [DEPTH])
    inside = polygon(seam_line(rim)).intersection(LineString([(float(at), -1), (float(at), float(along) + 1)]))
    assert float(tuck.length) == pytest.approx(inside.length, abs=1e-9)

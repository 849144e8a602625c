"""Cut lines beside a general library's buffer, by hand at corners, and what is refused."""

from __future__ import annotations

import random
from fractions import Fraction
from itertools import pairwise
from math import pi, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as draw
from shapely.geometry import LinearRing, Point
from shapes_drawn import HALF, cut, fine, polygon, sewn, sides, spot

from generator.calculation.shapes.by_word import half_circle, oval, rounded
from generator.calculation.shapes.crossing import crosses_itself
from generator.calculation.shapes.curve import curve_through
from generator.calculation.shapes.cut_line import SeamEdge, cut_line, seam_line
from generator.calculation.shapes.mirrored import mirrored
from generator.calculation.shapes.segments import QuarterOval, Spot
from generator.errors import CalculationError
from generator.lengths import INCH

SHAPES = {
    "circle": oval(Fraction(14), Fraction(14)),
    "oval": oval(Fraction(14), Fraction(10)),
    "half circle": half_circle(Fraction(12), Fraction(6)),
    "rounded": rounded((Fraction(10), Fraction(8)), Fraction(2), "all", INCH),
    "rounded top": rounded((Fraction(10), Fraction(8)), Fraction(2), "top", INCH),
    "rounded bottom": rounded((Fraction(10), Fraction(8)), Fraction(3), "bottom", INCH),
}
SMOCK = mirrored(
    {
        "neck": (QuarterOval(spot(0, 4), spot(5, 0), "across"),),
        "shoulder": sides((5, 0), (7.5, 1)),
        "armhole": curve_through([spot(7.5, 1), spot(7.25, 6), spot(11, 10)], arriving="across"),
        "side": sides((11, 10), (11, 30)),
        "bottom": sides((11, 30), (0, 30)),
    }
)


@pytest.mark.parametrize("name", SHAPES)
def test_the_cut_line_lies_where_the_buffer_of_a_general_library_lies(name: str) -> None:
    edges = sewn(SHAPES[name])
    theirs = fine(edges).buffer(0.5, quad_segs=1024, join_style="mitre")
    ours = cut_line(edges, INCH)
    # Every corner of our line lies on theirs, to a hundred-thousandth of an inch.
    ring = LinearRing(theirs.exterior.coords)
    assert max(ring.distance(one) for one in map(_point, ours)) < 0.00001
    # And between two corners ours leaves a curve by less than 1/500 in.
    assert polygon(ours).hausdorff_distance(theirs) < 1 / 500


def _point(place: Spot) -> Point:
    return Point(float(place[0]), float(place[1]))


@settings(max_examples=30, deadline=None)
@given(
    across=draw.integers(16, 160).map(lambda n: Fraction(n, 8)),
    along=draw.integers(16, 160).map(lambda n: Fraction(n, 8)),
    allowance=draw.integers(0, 8).map(lambda n: Fraction(n, 8)),
)
def test_a_smooth_round_shape_is_cut_2_pi_a_longer_than_its_seam(
    across: Fraction, along: Fraction, allowance: Fraction
) -> None:
    # Steiner's formula for a convex shape: L + 2 pi a.
    edges = sewn(oval(across, along), allowance)
    assert cut(edges).length == pytest.approx(fine(edges).length + 2 * pi * float(allowance), abs=0.01)


def test_a_circle_of_14_with_half_an_inch_is_cut_47_12_round() -> None:
    assert round(cut(sewn(SHAPES["circle"])).length, 2) == 47.12


def test_every_edge_has_its_own_allowance() -> None:
    # A square of 4: top 1, right nothing, bottom 1/2, left 1/4. Cut from -1/4 to 4 across and from -1 to 4 1/2 along.
    corners = [(0, 0), (4, 0), (4, 4), (0, 4), (0, 0)]
    wide = (1, 0, HALF, Fraction(1, 4))
    edges = [
        SeamEdge(name, sides(*ends), Fraction(out))
        for name, ends, out in zip("abcd", pairwise(corners), wide, strict=True)
    ]
    assert cut_line(edges, INCH) == (spot(4, -1), spot(4, 4.5), spot(-0.25, 4.5), spot(-0.25, -1))


def test_a_sharp_corner_is_cut_blunt_at_twice_the_allowance() -> None:
    # A point of 2 x atan(1/4): its cut lines would meet 1/2 / sin(14.04) = 2.06 in out; at 1 in they are cut across.
    spike = sewn({"a": sides((0, 0), (8, 2)), "b": sides((8, 2), (0, 4)), "c": sides((0, 4), (0, 0))})
    assert max(x for x, _ in cut_line(spike, INCH)) == 9
    tips = [y for x, y in cut_line(spike, INCH) if x == 9]
    assert len(tips) == 2
    assert sum(tips) / 2 == 2
    # Where the wider of two allowances is 1, it reaches out to 2.
    wide = [SeamEdge(one.name, one.segments, Fraction(1)) for one in spike]
    assert max(x for x, _ in cut_line(wide, INCH)) == 10


def test_a_hollow_corner_is_trimmed_where_its_cut_lines_cross() -> None:
    # An L: at the corner that goes in, both lines stop at (4 1/2, 3 1/2) in the cloth of the seams.
    ell = [(0, 0), (4, 0), (4, 4), (8, 4), (8, 8), (0, 8), (0, 0)]
    edges = [SeamEdge(name, sides(*ends), HALF) for name, ends in zip("abcdef", pairwise(ell), strict=True)]
    assert spot(4.5, 3.5) in cut_line(edges, INCH)
    assert cut(edges).area == pytest.approx(5 * 9 + 4 * 5 + 0)


def test_a_hem_mirrors_the_sides_above_its_fold() -> None:
    # A skirt whose sides spread by 1 in 2, with a hem of 2 at the bottom and nothing at the sides: folded up along
    # y = 10, the hem must lie on the skirt, so it narrows by 1 beyond the fold.
    flare = {"top": sides((5, 0), (7, 0)), "r": sides((7, 0), (12, 10)), "l": sides((0, 10), (5, 0))}
    edges = [
        SeamEdge("top", flare["top"], Fraction(0)),
        SeamEdge("r", flare["r"], Fraction(0)),
        SeamEdge("bottom", sides((12, 10), (0, 10)), Fraction(2), turned=True),
        SeamEdge("l", flare["l"], Fraction(0)),
    ]
    found = cut_line(edges, INCH)
    rim = sorted(float(x) for x, y in found if y == 12)
    assert rim == pytest.approx([1, 11], abs=1e-5)
    assert sorted(float(x) for x, y in found if abs(y - 10) < Fraction(1, 10**5)) == pytest.approx([0, 12], abs=1e-5)


def test_on_a_smooth_join_the_cut_line_takes_a_step() -> None:
    top = [SeamEdge("a", sides((0, 0), (4, 0)), HALF), SeamEdge("b", sides((4, 0), (8, 0)), Fraction(0))]
    rest = [SeamEdge("c", sides((8, 0), (8, 4), (0, 4), (0, 0)), HALF)]
    found = cut_line([*top, *rest], INCH)
    assert spot(4, -0.5) in found
    assert spot(4, 0) in found


def test_a_smock_is_cut_whole_and_alike_on_both_sides() -> None:
    wide = {"bottom": Fraction(5, 4), "neck": Fraction(0), "right armhole": Fraction(0), "left armhole": Fraction(0)}
    edges = [SeamEdge(n, s, wide.get(n, Fraction(5, 8)), n == "bottom") for n, s in SMOCK.items()]
    ours = cut(edges)
    assert ours.is_valid
    left, top, right, bottom = ours.bounds
    # Half of it 11 and a seam of 5/8; the hem 1 1/4 below 30; the shoulder falls 1 in 2 1/2, so its 5/8 reach
    # 5/8 x root of (1 + 4/25) = 0.673 above the highest point.
    assert (-left, right, bottom) == pytest.approx((11.625, 11.625, 31.25))
    assert -top == pytest.approx(0.625 * sqrt(1 + 4 / 25), abs=1e-6)
    # Only the points at which its curves are drawn differ.
    assert ours.hausdorff_distance(polygon((-x, y) for x, y in cut_line(edges, INCH))) < 1 / 500


def test_an_outline_that_crosses_itself_is_refused() -> None:
    bow = sewn({"all": sides((0, 0), (4, 4), (4, 0), (0, 4), (0, 0))})
    told = "the outline crosses itself, about 2 in from its left and 2 in from its highest point"
    with pytest.raises(CalculationError, match=told):
        cut_line(bow, INCH)


def scoop(depth: object) -> list[SeamEdge]:
    """A square of 8 with half an oval, 2 across, let into its top."""
    hollow = (
        QuarterOval(spot(3, 0), spot(4, depth), "down"),
        QuarterOval(spot(4, depth), spot(5, 0), "across"),
    )
    return [
        SeamEdge("scoop", hollow, Fraction(3, 8)),
        SeamEdge("rest", sides((5, 0), (8, 0), (8, 8), (0, 8), (0, 0), (3, 0)), Fraction(3, 8)),
    ]


def test_a_hollow_tighter_than_its_allowance_is_refused() -> None:
    # Half axes 1 and 4 3/4: least radius 1 x 1 / 4 3/4 = 0.21 in, less than 3/8. Half axes 1 and 1: radius 1, wide
    # enough.
    told = r"the edge 'scoop' is hollow, and somewhere rounder than its allowance of 3/8 in is wide"
    with pytest.raises(CalculationError, match=told):
        cut_line(scoop("4.75"), INCH)
    assert cut(scoop(1)).is_valid


def test_a_cut_line_that_crosses_itself_is_refused() -> None:
    # A keyhole 3/4 in wide: with 1/2 in on both sides of it the cut lines lie over each other.
    keyhole = [(0, 0), (4, 0), (4, 5), ("4.75", 5), ("4.75", 0), (9, 0), (9, 9), (0, 9), (0, 0)]
    narrow = [SeamEdge(f"e{k}", sides(*ends), HALF) for k, ends in enumerate(pairwise(keyhole))]
    with pytest.raises(CalculationError, match=r"the cut line.*crosses itself|do not meet"):
        cut_line(narrow, INCH)


def test_crossings_are_found_as_a_general_library_finds_them() -> None:
    dice = random.Random(7)  # noqa: S311 - shapes, no secrets
    both = set()
    for _ in range(300):
        corners = [(dice.randrange(40), dice.randrange(40)) for _ in range(dice.randrange(4, 8))]
        if len(set(corners)) < len(corners):
            continue
        ring = LinearRing(corners)
        ours = crosses_itself(corners) is not None
        if ring.is_simple:
            assert not ours, corners
        both.add((ours, ring.is_simple))
    assert both >= {(True, False), (False, True)}


def test_the_seam_line_is_drawn_with_no_point_twice() -> None:
    (rim,) = sewn(SHAPES["rounded"])
    spots = seam_line(rim)
    assert all(one != other for one, other in pairwise(spots))
    assert polygon(spots).hausdorff_distance(fine([rim])) < 1 / 500

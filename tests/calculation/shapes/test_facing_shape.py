"""Facings traced from edges: beside a general library's buffer, worked by hand, and what is refused."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from math import hypot, pi

import pytest
from hypothesis import given, settings
from hypothesis import strategies as draw
from shapely.geometry import LineString, Polygon
from shapely.ops import unary_union
from shapes_drawn import fine, polygon, sewn, sides, spot

from generator.calculation.shapes.by_word import half_circle
from generator.calculation.shapes.curve import curve_through
from generator.calculation.shapes.cut_line import SeamEdge, seam_line
from generator.calculation.shapes.facing import FacedRun, FacingShape, facing_shape
from generator.calculation.shapes.line_lengths import length_bounds
from generator.calculation.shapes.mirrored import mirrored
from generator.calculation.shapes.segments import QuarterOval, Segment
from generator.errors import CalculationError
from generator.lengths import INCH

Edges = Mapping[str, tuple[Segment, ...]]
SMOCK = mirrored(
    {
        "neck": (QuarterOval(spot(0, 4), spot(5, 0), "across"),),
        "shoulder": sides((5, 0), (9, 1)),
        "armhole": curve_through([spot(9, 1), spot(8.75, 6), spot(12, 10)], arriving="across"),
        "side": sides((12, 10), (12, 30)),
        "bottom": sides((12, 30), (0, 30)),
    }
)
SQUARE_NECK = mirrored(
    {
        "neck": sides((0, 4), (3, 4), (3, 0)),
        "shoulder": sides((3, 0), (7, 0)),
        "side": sides((7, 0), (7, 12)),
        "bottom": sides((7, 12), (0, 12)),
    }
)
BAG = mirrored(
    {
        "mouth": (QuarterOval(spot(0, 2), spot(6, 0), "across"),),
        "round": curve_through([spot(6, 0), spot(7, 6), spot(0, 11)], arriving="across"),
    }
)
NECK = FacedRun(("neck",), "left shoulder", "right shoulder")


def facing(edges: Edges, run: FacedRun, width: Fraction) -> FacingShape:
    return facing_shape(edges, run, width, INCH)


def lines_of(found: FacingShape) -> dict[str, tuple[Segment, ...]]:
    return {**found.faced, "after": found.after, "free": found.free, "before": found.before}


def ours(found: FacingShape) -> Polygon:
    edges = [SeamEdge(name, lines, Fraction(0)) for name, lines in lines_of(found).items()]
    return polygon(one for edge in edges for one in seam_line(edge)[:-1])


def by_library(edges: Edges, faced: Sequence[str], width: Fraction) -> Polygon:
    """The cloth within a width of the faced edges, each carried on straight at its ends, by a general library."""
    whole = fine(sewn(edges))
    met = unary_union([_band(edges[name], width).intersection(whole) for name in faced])
    return max(getattr(met, "geoms", [met]), key=lambda one: one.area)


def _band(segments: Sequence[Segment], width: Fraction) -> Polygon:
    spots = [one for segment in segments for one in _floats(segment, 512)]
    spots = [one for place, one in enumerate(spots) if place == 0 or one != spots[place - 1]]

    def beyond(end: tuple[float, float], before: tuple[float, float]) -> tuple[float, float]:
        run, rise = end[0] - before[0], end[1] - before[1]
        return end[0] + 40 * run / hypot(run, rise), end[1] + 40 * rise / hypot(run, rise)

    line = LineString([beyond(spots[0], spots[1]), *spots, beyond(spots[-1], spots[-2])])
    # Walked clockwise with y growing downward, what is inside lies at the left hand of the library's plane.
    return line.buffer(float(width), single_sided=True, join_style="mitre", mitre_limit=20)


CASES = {
    "a round neck": (SMOCK, NECK),
    "an armhole": (SMOCK, FacedRun(("right armhole",), "right shoulder", "right side")),
    "a bottom": (SMOCK, FacedRun(("bottom",), "right side", "left side")),
    "neck and shoulders": (
        SMOCK,
        FacedRun(("left shoulder", "neck", "right shoulder"), "left armhole", "right armhole"),
    ),
    "a square neck": (SQUARE_NECK, FacedRun(("neck",), "left shoulder", "right shoulder")),
    "the mouth of a bag": (BAG, FacedRun(("mouth",), "round", "round")),
    "half a circle": (half_circle(Fraction(12), Fraction(6)), FacedRun(("bottom",), "rim", "rim")),
    "the rim of half a circle": (half_circle(Fraction(12), Fraction(6)), FacedRun(("rim",), "bottom", "bottom")),
}


@pytest.mark.parametrize("case", CASES)
def test_a_facing_lies_where_the_buffer_of_a_general_library_lies(case: str) -> None:
    edges, run = CASES[case]
    for width in (Fraction(1, 2), Fraction(3, 2), Fraction(2)):
        theirs = by_library(edges, run.edges, width)
        assert ours(facing(edges, run, width)).hausdorff_distance(theirs) < 1 / 250, width


def test_the_smock_of_a_neck_is_as_wide_everywhere_and_ends_on_its_shoulders() -> None:
    found = facing(SMOCK, NECK, Fraction(2))
    neck = LineString([one for step in found.faced["neck"] for one in _floats(step, 512)])
    free = [(float(x), float(y)) for x, y in seam_line(SeamEdge("free", found.free, Fraction(0)))]
    # In the middle, straight below the neck's lowest point at 4, it lies at 6.
    assert min(abs(x) + abs(y - 6) for x, y in free) < 0.02
    near = [neck.distance(LineString([one, (one[0], one[1] + 1e-9)])) for one in free]
    assert min(near) > 2 - 1 / 250
    # A shoulder falls 1 in 4, and both ends lie on it.
    assert all(abs(y - (abs(x) - 5) / 4) < 1e-5 for x, y in (free[0], free[-1]))
    assert free[0][0] == pytest.approx(-free[-1][0], abs=1 / 500)


def _floats(segment: Segment, parts: int) -> list[tuple[float, float]]:
    return [(float(step.spot[0]), float(step.spot[1])) for step in segment.walked(parts)]


def test_a_square_neck_has_square_corners_in_its_free_edge() -> None:
    # Neck 6 wide and 4 deep, 2 wide: the free edge goes down from (5, 0) to (5, 6), across to (-5, 6) and up.
    (free,) = facing(SQUARE_NECK, CASES["a square neck"][1], Fraction(2)).free
    corners = LineString([(float(x), float(y)) for x, y in (step.spot for step in free.walked(1))]).simplify(0)
    assert list(corners.coords) == [(5, 0), (5, 6), (-5, 6), (-5, 0)]


@settings(max_examples=25, deadline=None)
@given(
    across=draw.integers(32, 160).map(lambda n: Fraction(n, 8)),
    width=draw.integers(2, 8).map(lambda n: Fraction(n, 8)),
)
def test_round_half_a_circle_the_free_edge_is_shorter_by_half_a_turn_of_its_width(
    across: Fraction, width: Fraction
) -> None:
    # A rim of half a turn, walked by its inner side: pi r becomes pi (r - w), less what is cut off at both ends by the
    # straight edge, which the free edge meets squarely: nothing.
    run = CASES["the rim of half a circle"][1]
    found = facing(half_circle(across, across / 2), run, width)
    less, more = length_bounds(found.free)
    assert float(less) - 0.001 < pi * float(across / 2 - width) < float(more) + 0.001


@pytest.mark.parametrize(
    ("edges", "run", "width", "told"),
    [
        # Half axes 7 and 5: at its ends least radius 25/7 = 3.57 in.
        (
            {**half_circle(Fraction(14), Fraction(5))},
            FacedRun(("rim",), "bottom", "bottom"),
            "4",
            "the edge 'rim' bends outward, somewhere rounder than the facing of 4 in is wide, so no free edge lies "
            "beside it: make the facing narrower, or the curve flatter",
        ),
        (
            SMOCK,
            NECK,
            "4 1/2",
            "the free edge of a facing 4 1/2 in wide does not meet 'right shoulder', at which it should end: make the "
            "facing narrower, or face the edge behind 'right shoulder' too",
        ),
        (
            SQUARE_NECK,
            FacedRun(("bottom",), "right side", "left side"),
            "9",
            "a facing 9 in wide has no room here: its free edge would leave the piece or cross itself; "
            "make it narrower",
        ),
        (SMOCK, NECK, "0", "a facing 0 in wide is none; write how wide it is finished"),
    ],
)
def test_a_facing_that_has_no_room_is_refused(edges: Edges, run: FacedRun, width: str, told: str) -> None:
    with pytest.raises(CalculationError) as fault:
        facing(edges, run, sum(map(Fraction, width.split()), Fraction(0)))
    assert str(fault.value) == told

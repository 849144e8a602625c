"""What no case can say: paper, and our sums beside a second route through general-purpose libraries."""

from __future__ import annotations

import math
from fractions import Fraction
from functools import cache
from math import ceil, floor

import numpy
import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as draw
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.stats import binom
from shapely.geometry import LineString, Point, box

from generator.calculation.cutting.layout import cutting_layout
from generator.calculation.laid import CutItem
from generator.calculation.panel.stitching_errors import random_error
from generator.calculation.panel.tucks import cut_width, finished_width, tuck_take_up
from generator.calculation.pieces.envelope import worked_envelope_back
from generator.calculation.pieces.pleats import Pleats, pleated_length
from generator.calculation.pieces.roll import circumference_bounds
from generator.calculation.worked import End
from generator.lengths import CENTIMETRE, METRIC, UNITS, read_length, write_length
from generator.rendering.styles import PAPERS

EIGHTHS = draw.integers(1, 480).map(lambda eighths: Fraction(eighths, 8))


@cache
def units() -> pint.UnitRegistry:
    return pint.UnitRegistry()


def test_a4_is_210_by_297_millimetres() -> None:
    # ISO 216:2007; sides of 150 to 600 mm within 2 mm (tolerance from secondary sources)
    width, height = PAPERS["A4"]
    assert abs(width * 25.4 - 210) < 0.01
    assert abs(height * 25.4 - 297) < 0.01
    # Sixteen sheets of A4 make A0, one square metre; the sides are as 1 to the root of 2. Both within the tolerance.
    assert 208 * 295 < 1_000_000 / 16 < 212 * 299
    assert (295 / 212) ** 2 < 2 < (299 / 208) ** 2


def test_us_letter_is_8_1_2_by_11_inches() -> None:
    # ANSI/ASME Y14.1 size A (from memory)
    assert PAPERS["Letter"] == (8.5, 11.0)


@pytest.mark.parametrize("unit", UNITS)
@given(thousandths=draw.integers(1, 99_999_999))
def test_every_unit_is_that_of_a_library_of_units(unit: str, thousandths: int) -> None:
    text = f"{thousandths // 1000}.{thousandths % 1000:03d}"
    full_name = {"in": "inch", "ft": "foot", "yd": "yard"}.get(unit, unit)
    theirs = units().Quantity(float(text), full_name).to("inch").magnitude
    assert float(read_length(text, unit)) == pytest.approx(theirs, rel=1e-12)


@given(EIGHTHS)
def test_inches_written_in_centimetres_are_those_of_a_library_of_units(length: Fraction) -> None:
    written = Fraction(write_length(length, METRIC))
    assert float(written) == pytest.approx(units().Quantity(float(length), "inch").to("cm").magnitude, rel=1e-12)


@given(EIGHTHS)
def test_the_way_round_a_circle_lies_within_its_bounds(diameter: Fraction) -> None:
    least, most = circumference_bounds(diameter)
    assert float(least) <= math.pi * float(diameter) * (1 + 1e-15)
    assert math.pi * float(diameter) * (1 - 1e-15) <= float(most)
    # A polygon of 4 x 4096 corners is shorter than its circle by less than one part in ten million.
    drawn = Point(0, 0).buffer(float(diameter) / 2, quad_segs=4096).exterior.length
    assert float(least) == pytest.approx(drawn, rel=1e-7)


def test_an_end_of_23_cm_needs_a_panel_of_74_3_cm() -> None:
    around = units().Quantity(float(circumference_bounds(23 * CENTIMETRE)[0]), "inch").to("centimetre").magnitude
    assert around + 2 == pytest.approx(74.26, abs=0.005)


@given(count=draw.integers(1, 40), depth=EIGHTHS, pitch=EIGHTHS, margin=EIGHTHS)
def test_the_cut_width_is_the_way_along_the_cloth_up_and_down_every_tuck(
    count: int, depth: Fraction, pitch: Fraction, margin: Fraction
) -> None:
    feet = [float(margin + place * pitch) for place in range(count)]
    tucks = [point for foot in feet for point in ((foot, 0.0), (foot, float(depth)), (foot, 0.0))]
    cloth = LineString([(0.0, 0.0), *tucks, (feet[-1] + float(margin), 0.0)])
    finished = finished_width(count, pitch, (margin, margin))
    cut = cut_width(finished, tuck_take_up(count, depth), (Fraction(0), Fraction(0)))
    assert float(cut) == pytest.approx(cloth.length)


@given(number=draw.integers(1, 40), depth=EIGHTHS, width=EIGHTHS)
def test_a_knife_pleated_strip_is_the_way_forward_back_and_forward(
    number: int, depth: Fraction, width: Fraction
) -> None:
    folds = [float(width * place) for place in range(1, number + 1)]
    cloth = LineString([(0.0, 0.0), *((x, 0.0) for fold in folds for x in (fold, fold - float(depth), fold))])
    strip = pleated_length(width * number, Pleats("knife", number, depth))
    assert float(strip) == pytest.approx(cloth.length)


@given(across=EIGHTHS, share=draw.integers(1, 9))
def test_the_parts_of_an_envelope_back_cover_it_once_and_lap_as_asked(across: Fraction, share: int) -> None:
    overlap = across * share / 10
    ends = dict.fromkeys(("left", "right", "top", "bottom"), End("raw"))
    left, right = worked_envelope_back(across, Fraction(10), overlap, End("hem", Fraction(1, 2), Fraction(1, 2)), ends)
    on_left = box(0, 0, float(left.finished_across), 10)
    on_right = box(float(across - right.finished_across), 0, float(across), 10)
    assert on_left.union(on_right).area == pytest.approx(float(across) * 10)
    assert on_left.intersection(on_right).area == pytest.approx(float(overlap) * 10)


@given(count=draw.integers(1, 60), thirty_seconds=draw.integers(1, 8))
def test_errors_of_single_lines_add_up_as_statistics_has_it(count: int, thirty_seconds: int) -> None:
    # Each line is off by one step, this way or that: so many heads of a coin, twice the step apart. A line holds two
    # plies, so the panel is off by twice the sum.
    step = Fraction(thirty_seconds, 32)
    spread = 2 * float(step) * binom(count, 0.5).std()
    assert float(random_error(count, step)) == pytest.approx(2 * spread, rel=1e-6)


@given(across=draw.integers(1, 176), along=draw.integers(1, 200), number=draw.integers(1, 200))
def test_pieces_across_the_width_are_rounded_down_and_rows_up(across: int, along: int, number: int) -> None:
    # Arithmetic: in quarters of an inch on 44 in of cloth, and never less than the area alone would say.
    item = CutItem("mat", "Mat", Fraction(across, 4), Fraction(along, 4), number)
    layout = cutting_layout([item], Fraction(44))
    rows = ceil(Fraction(number, floor(Fraction(176, across))))
    assert layout.length == rows * Fraction(along, 4)
    assert layout.length >= number * item.across * item.along / 44


@settings(max_examples=25)
@given(draw.lists(draw.integers(4, 44), min_size=1, max_size=7))
def test_pieces_of_one_length_fill_the_fewest_strips(widths: list[int]) -> None:
    # Bin packing as a whole-number programme: x[piece, strip] puts a piece on a strip, y[strip] opens it.
    count = len(widths)
    placed = numpy.kron(numpy.eye(count), numpy.ones(count))
    filled = numpy.kron(numpy.array(widths), numpy.eye(count))
    constraints = [
        LinearConstraint(numpy.hstack([placed, numpy.zeros((count, count))]), 1, 1),
        LinearConstraint(numpy.hstack([filled, -44 * numpy.eye(count)]), -numpy.inf, 0),
    ]
    cost = numpy.concatenate([numpy.zeros(count * count), numpy.ones(count)])
    fewest = milp(cost, constraints=constraints, bounds=Bounds(0, 1), integrality=numpy.ones_like(cost))
    items = [CutItem(f"p{place}", "Piece", Fraction(width), Fraction(5), 1) for place, width in enumerate(widths)]
    assert cutting_layout(items, Fraction(44)).length == 5 * round(fewest.fun)

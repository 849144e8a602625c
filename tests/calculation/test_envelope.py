"""Envelope backs: worked by hand, and laid over each other again as shapes."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import box

from generator.calculation.pieces.envelope import gaping_overlap, worked_envelope_back
from generator.calculation.worked import End
from generator.errors import CalculationError
from generator.lengths import CENTIMETRE, INCH, METRIC, MILLIMETRE

SEAM = End("seam", Fraction(1, 2))
HEM = End("hem", Fraction(1), Fraction(1))
EDGES = dict.fromkeys(("left", "right", "top", "bottom"), SEAM)


def test_each_part_is_half_the_width_and_half_the_overlap() -> None:
    # (16 + 4) / 2 = 10 finished; 10 + 1/2 + 2 x 1 = 12 1/2 cut; 16 + 2 x 1/2 = 17 long
    for part in worked_envelope_back(Fraction(16), Fraction(16), Fraction(4), HEM, EDGES):
        assert (part.finished_across, part.cut_across, part.cut_along) == (10, Fraction(25, 2), 17)


def test_a_metric_back_is_worked_from_metric_sizes() -> None:
    # (40 + 10) / 2 + 1.5 + 2 x 2.5 = 31.5 cm wide; 40 + 2 x 1.5 = 43 cm long
    edges = dict.fromkeys(EDGES, End("seam", 15 * MILLIMETRE))
    hem = End("hem", 25 * MILLIMETRE, 25 * MILLIMETRE)
    left, right = worked_envelope_back(40 * CENTIMETRE, 40 * CENTIMETRE, 10 * CENTIMETRE, hem, edges)
    assert left.cut_across == right.cut_across == 315 * MILLIMETRE
    assert left.cut_along == 43 * CENTIMETRE


def test_only_the_edge_at_the_opening_keeps_the_hem() -> None:
    left, right = worked_envelope_back(Fraction(16), Fraction(16), Fraction(4), HEM, EDGES)
    assert [side for side, end in left.ends.items() if end == HEM] == ["right"]
    assert [side for side, end in right.ends.items() if end == HEM] == ["left"]
    assert left.ends["left"] == right.ends["right"] == left.ends["top"] == right.ends["bottom"] == SEAM


def test_unlike_outer_edges_make_unlike_parts() -> None:
    # 10 + 0 + 2 at the fold, 10 + 2 + 1/2 at the seam
    left, right = worked_envelope_back(Fraction(16), Fraction(16), Fraction(4), HEM, {**EDGES, "left": End("fold")})
    assert (left.cut_across, right.cut_across) == (12, Fraction(25, 2))


@given(
    st.fractions(min_value=4, max_value=40, max_denominator=16),
    st.fractions(min_value=4, max_value=40, max_denominator=16),
    st.fractions(min_value=Fraction(1, 16), max_value=Fraction(63, 16), max_denominator=16),
)
def test_the_parts_laid_over_each_other_cover_the_back(width: Fraction, length: Fraction, overlap: Fraction) -> None:
    left, right = worked_envelope_back(width, length, overlap, HEM, EDGES)
    left_part = box(0, 0, float(left.finished_across), float(length))
    right_part = box(float(width - right.finished_across), 0, float(width), float(length))
    assert left_part.union(right_part).symmetric_difference(box(0, 0, float(width), float(length))).area < 1e-9
    assert left_part.intersection(right_part).area == pytest.approx(float(overlap * length))


@pytest.mark.parametrize(
    ("overlap", "message"),
    [
        (Fraction(0), "the overlap of an envelope back must be more than nothing, not 0"),
        (
            Fraction(16),
            "the overlap of an envelope back is as wide as the cover; make it less, a quarter will do",
        ),
    ],
)
def test_an_overlap_that_makes_no_envelope_is_refused(overlap: Fraction, message: str) -> None:
    with pytest.raises(CalculationError) as refusal:
        worked_envelope_back(Fraction(16), Fraction(16), overlap, HEM, EDGES)
    assert str(refusal.value) == message


def test_a_narrow_overlap_is_told_in_the_unit_of_the_edition() -> None:
    assert gaping_overlap(Fraction(3), INCH) == ""
    assert gaping_overlap(8 * CENTIMETRE, METRIC) == ""
    assert gaping_overlap(6 * CENTIMETRE, METRIC) == (
        "an overlap of 6 cm may gape when the cover is filled; 8 cm or more is safer"
    )

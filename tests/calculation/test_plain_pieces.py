"""Cut sizes of plain pieces, worked by hand and laid out again from edge to edge."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import box

from generator.calculation.pieces.plain_pieces import (
    cut_size,
    plain_allowance,
    worked_circle,
    worked_rectangle,
)
from generator.calculation.worked import End
from generator.errors import CalculationError
from generator.lengths import CENTIMETRE, MILLIMETRE

HALF = Fraction(1, 2)
LENGTHS = st.fractions(min_value=Fraction(1, 16), max_value=200, max_denominator=64)
WIDTHS = st.fractions(min_value=0, max_value=4, max_denominator=32)
ENDS = st.builds(
    End, st.sampled_from(["seam", "hem", "bound", "turnover", "fold", "selvage", "raw"]), first=WIDTHS, second=WIDTHS
)


@pytest.mark.parametrize(
    ("end", "allowance"),
    [
        (End("seam", HALF), HALF),
        (End("hem", Fraction(1, 4), Fraction(1)), Fraction(5, 4)),
        (End("turnover", Fraction(3)), Fraction(3)),
        (End("bound", HALF), Fraction(0)),
        (End("fold"), Fraction(0)),
        (End("selvage"), Fraction(0)),
        (End("raw"), Fraction(0)),
    ],
    ids=lambda value: value.kind if isinstance(value, End) else str(value),
)
def test_each_finish_needs_its_own_allowance(end: End, allowance: Fraction) -> None:
    assert plain_allowance(end) == allowance


def test_a_caught_hem_is_refused_on_a_piece_without_tucks() -> None:
    with pytest.raises(CalculationError) as refusal:
        cut_size(Fraction(10), End("caught hem"), End("raw"))
    assert str(refusal.value) == (
        "a caught hem is held by the first tuck and this piece has no tucks; write a hem with its width"
    )


def test_a_piece_of_no_size_is_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        cut_size(Fraction(0), End("raw"), End("raw"))
    assert str(refusal.value) == "the finished size must be more than nothing, not 0"


def test_a_negative_seam_is_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        plain_allowance(End("seam", -HALF))
    assert str(refusal.value) == "the width of a seam cannot be less than nothing, it is -1/2"


def test_a_float_is_refused() -> None:
    with pytest.raises(TypeError):
        cut_size(10.5, End("raw"), End("raw"))  # type: ignore[arg-type]


@given(LENGTHS, LENGTHS, st.tuples(ENDS, ENDS, ENDS, ENDS))
def test_folding_the_allowances_back_leaves_the_finished_piece(
    across: Fraction, along: Fraction, ends: tuple[End, End, End, End]
) -> None:
    left, right, top, bottom = ends
    cut_across, cut_along = worked_rectangle(
        across, along, {"left": left, "right": right, "top": top, "bottom": bottom}
    )
    cloth = box(0, 0, float(cut_across), float(cut_along))
    inside = box(
        float(plain_allowance(left)),
        float(plain_allowance(bottom)),
        float(cut_across - plain_allowance(right)),
        float(cut_along - plain_allowance(top)),
    )
    assert cloth.buffer(1e-9).contains(inside)
    assert inside.area == pytest.approx(float(across * along))


def test_a_rectangle_has_its_own_allowance_on_each_side() -> None:
    # across 10 + 1/2 + 2 x 1/4 = 11; along 20 + 3 + 0 = 23
    ends = {
        "left": End("seam", HALF),
        "right": End("hem", Fraction(1, 4), Fraction(1, 4)),
        "top": End("turnover", Fraction(3)),
        "bottom": End("selvage"),
    }
    assert worked_rectangle(Fraction(10), Fraction(20), ends) == (11, 23)


def test_a_metric_circle_gets_its_seam_all_round() -> None:
    # 18 cm and twice 1.5 cm
    cut = worked_circle(18 * CENTIMETRE, End("seam", 15 * MILLIMETRE))
    assert cut == (21 * CENTIMETRE, 21 * CENTIMETRE)

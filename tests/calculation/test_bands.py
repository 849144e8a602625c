"""Bands: worked by hand, and folded up again from the cut cloth."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculation.irrational import PI_BELOW
from generator.calculation.pieces.bands import worked_binding, worked_piping, worked_tie
from generator.errors import CalculationError

HALF, EIGHTH = Fraction(1, 2), Fraction(1, 8)
LENGTHS = st.fractions(min_value=Fraction(1, 4), max_value=100, max_denominator=32)
SEAMS = st.fractions(min_value=0, max_value=1, max_denominator=32)


@given(LENGTHS, LENGTHS, SEAMS)
def test_a_tie_folds_in_half_to_its_width(length: Fraction, width: Fraction, seam: Fraction) -> None:
    cut_across, cut_along = worked_tie(length, width, seam)
    assert cut_across / 2 - seam == width
    assert cut_along - 2 * seam == length


def test_a_binding_goes_over_an_edge_and_covers_the_stitching_on_the_other_side() -> None:
    # Sewn on 1/2 in from its edge, 1/2 in up to the edge of the work, 1/8 in round it, 1/2 in turned in at the end:
    # 2 1/8 in less these are the 1/2 in that reach the stitching again.
    across, along = worked_binding(Fraction(40), HALF, HALF, EIGHTH)
    assert across - (HALF + HALF + EIGHTH + HALF) == HALF
    assert along == 41


@given(
    st.fractions(min_value=Fraction(1, 16), max_value=2, max_denominator=32),
    st.fractions(min_value=Fraction(1, 4), max_value=1, max_denominator=16),
)
def test_a_piping_strip_always_goes_round_its_cord(cord: Fraction, seam: Fraction) -> None:
    across, _ = worked_piping(Fraction(48), cord, seam, EIGHTH)
    assert across - 2 * seam > cord * PI_BELOW
    assert across - 2 * seam - cord * PI_BELOW < EIGHTH + Fraction(1, 10**9)
    assert (across / EIGHTH).denominator == 1


@pytest.mark.parametrize(
    ("work", "message"),
    [
        (lambda: worked_tie(Fraction(0), HALF, HALF), "the length of a tie must be more than nothing, not 0"),
        (lambda: worked_tie(HALF, Fraction(0), HALF), "the width of a tie must be more than nothing, not 0"),
        (
            lambda: worked_binding(HALF, -HALF, HALF, EIGHTH),
            "the width of a binding must be more than nothing, not -1/2",
        ),
        (
            lambda: worked_piping(HALF, Fraction(0), HALF, EIGHTH),
            "the thickness of a cord must be more than nothing, not 0",
        ),
        (
            lambda: worked_binding(HALF, HALF, HALF, -HALF),
            "the room for an edge cannot be less than nothing, it is -1/2",
        ),
        (lambda: worked_tie(HALF, HALF, -HALF), "the allowance cannot be less than nothing, it is -1/2"),
    ],
)
def test_a_band_of_no_size_is_refused(work: Callable[[], object], message: str) -> None:
    with pytest.raises(CalculationError) as refusal:
        work()
    assert str(refusal.value) == message

"""Intervals: the hardest swing decides, a sample overrides, and rows too close are refused."""

from __future__ import annotations

from fractions import Fraction

import pytest
from row_panels import signed

from generator.calculation.turning.draw_in import least_draw_in, planning_draw_in
from generator.calculation.turning.intervals import (
    NO_SWING,
    DrawIn,
    Swing,
    interval_draw_in,
    is_tight,
    panel_swing,
    refuse_too_close,
)
from generator.errors import CalculationError
from generator.lengths import INCH, METRIC, MILLIMETRE

DEPTHS = (Fraction(1, 4), Fraction(1, 2), Fraction(3, 8))
HALF, WHOLE = Fraction(1, 2), Fraction(1)


def swinging(depth: Fraction, half_turns: Fraction = WHOLE) -> Swing:
    return Swing(depth, half_turns, (depth, half_turns))


def test_the_deepest_tuck_that_swings_over_decides() -> None:
    swings = panel_swing(signed("<<<"), signed(">>>"), DEPTHS)
    assert (swings.depth, swings.half_turns) == (Fraction(1, 2), WHOLE)
    assert swings.easiest == (Fraction(1, 4), WHOLE)
    assert not swings.uneven


def test_a_shallow_tuck_from_side_to_side_goes_further_than_a_deep_one_from_standing() -> None:
    # 3/8 x 1 is more than 1/2 x 1/2.
    swings = panel_swing(signed("<.<"), signed("<>>"), DEPTHS)
    assert (swings.depth, swings.half_turns) == (Fraction(3, 8), WHOLE)
    assert swings.uneven


def test_a_free_edge_swings_nothing() -> None:
    assert panel_swing((), signed("<><"), DEPTHS) == NO_SWING
    assert panel_swing(signed("<><"), (), DEPTHS) == NO_SWING
    assert interval_draw_in(Fraction(3), NO_SWING) == DrawIn(Fraction(0), Fraction(0))


def test_where_all_swing_the_range_runs_from_the_easiest_to_the_hardest() -> None:
    drawn = interval_draw_in(Fraction(3), panel_swing(signed("<<<"), signed(">>>"), DEPTHS))
    assert drawn.least == least_draw_in(Fraction(3), Fraction(1, 4), WHOLE)
    assert drawn.most == planning_draw_in(Fraction(3), Fraction(1, 2), WHOLE)


def test_where_only_some_swing_the_range_begins_at_nothing() -> None:
    drawn = interval_draw_in(Fraction(3), panel_swing(signed("<<<"), signed("<>>"), DEPTHS))
    assert drawn == DrawIn(Fraction(0), planning_draw_in(Fraction(3), Fraction(1, 2), WHOLE))


def test_a_sample_overrides_what_is_computed_but_only_where_tucks_swing() -> None:
    measured = Fraction(5, 16)
    assert interval_draw_in(Fraction(3), swinging(HALF), measured) == DrawIn(measured, measured)
    assert interval_draw_in(Fraction(3), NO_SWING, measured) == DrawIn(Fraction(0), Fraction(0))


@pytest.mark.parametrize(("spacing", "tight"), [(Fraction(3), False), (Fraction(47, 16), True)])
def test_less_than_six_depths_is_tight(spacing: Fraction, tight: bool) -> None:
    assert is_tight(spacing, swinging(HALF)) is tight
    assert not is_tight(spacing, NO_SWING)


def test_rows_no_further_than_the_arc_are_refused_with_three_ways_out() -> None:
    # pi x 3/8 = 1.178: the next mark is 1 3/16.
    with pytest.raises(CalculationError) as refusal:
        refuse_too_close("rows 1 in apart", Fraction(1), swinging(Fraction(3, 8)), INCH, measured=False)
    assert str(refusal.value) == (
        "rows 1 in apart are too close for tucks 3/8 in deep: at least 1 3/16 in is needed and 2 1/4 in is better; "
        "rule the rows further apart, or make the tucks shallower, or give the draw-in of a sewn sample"
    )


def test_the_refusal_speaks_centimetres_to_a_metric_class() -> None:
    # pi x 10 mm = 31.4 mm: the next mark is 3.2 cm.
    with pytest.raises(CalculationError) as refusal:
        refuse_too_close("rows", 25 * MILLIMETRE, swinging(10 * MILLIMETRE), METRIC, measured=False)
    assert str(refusal.value) == (
        "rows are too close for tucks 1 cm deep: at least 3.2 cm is needed and 6 cm is better; "
        "rule the rows further apart, or make the tucks shallower, or give the draw-in of a sewn sample"
    )


def test_at_twice_the_depth_no_sample_helps() -> None:
    with pytest.raises(CalculationError) as refusal:
        refuse_too_close("rows 3/4 in apart", Fraction(3, 4), swinging(Fraction(3, 8)), INCH, measured=True)
    assert str(refusal.value) == (
        "rows 3/4 in apart are too close for tucks 3/8 in deep: at least 1 3/16 in is needed and 2 1/4 in is better; "
        "rule the rows further apart, or make the tucks shallower"
    )


@pytest.mark.parametrize(
    ("spacing", "half_turns", "measured"),
    [
        (Fraction(25, 32), WHOLE, True),  # 2 x 3/8 = 3/4 is less
        (Fraction(19, 16), WHOLE, False),  # pi x 3/8 = 1.178 is less
        (Fraction(19, 32), HALF, False),  # pi/2 x 3/8 = 0.589 is less
    ],
)
def test_just_above_a_limit_the_rows_are_taken(spacing: Fraction, half_turns: Fraction, measured: bool) -> None:
    assert refuse_too_close("rows", spacing, swinging(Fraction(3, 8), half_turns), INCH, measured=measured) is None


def test_tucks_that_never_swing_may_have_rows_at_any_distance() -> None:
    assert refuse_too_close("rows", Fraction(1, 16), NO_SWING, INCH, measured=False) is None


def test_depth_and_swing_together_decide_what_is_hard_and_what_is_easy() -> None:
    # 1 in from standing is 1/2, 1/4 in from side to side 1/4.
    swings = panel_swing(signed(">>"), signed(".<"), (Fraction(1), Fraction(1, 4)))
    assert (swings.depth, swings.half_turns, swings.easiest) == (Fraction(1), HALF, (Fraction(1, 4), WHOLE))
    # 3/8 in from standing is 3/16, less than 1/4 in from side to side.
    easier = panel_swing(signed(">>"), signed(".<"), (Fraction(3, 8), Fraction(1, 4)))
    assert (easier.depth, easier.easiest) == (Fraction(1, 4), (Fraction(3, 8), HALF))


def test_tucks_an_inch_deep_need_their_room_as_well() -> None:
    with pytest.raises(
        CalculationError, match=r"^rows are too close for tucks 1 in deep: at least 3 3/16 in is needed"
    ):
        refuse_too_close("rows", Fraction(2), swinging(WHOLE), INCH, measured=False)

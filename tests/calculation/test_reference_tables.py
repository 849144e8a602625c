from __future__ import annotations

from fractions import Fraction

import pytest

from generator.calculation.panel_ends import least_margin
from generator.calculation.reference_rows import plan_draw_in, row_loss
from generator.calculation.reference_tables import (
    COUNTS,
    hidden_cloth,
    tucks_in_width,
    usual_depths,
    usual_spacings,
    usual_widths,
)
from generator.calculation.turning.plans import drawn_plan, turn_plan
from generator.calculation.worked import End
from generator.errors import CalculationError
from generator.lengths import CENTIMETRE, INCH, METRIC, MILLIMETRE, Edition


def test_thirty_two_quarter_inch_tucks_would_hide_sixteen_inches_so_thirty_hide_fifteen() -> None:
    # 30 x 2 x 1/4 = 15.
    assert hidden_cloth(INCH)[COUNTS.index(30)][usual_depths(INCH).index(Fraction(1, 4))] == 15


def test_twelve_metric_tucks_of_a_centimetre_hide_24_cm() -> None:
    assert hidden_cloth(METRIC)[COUNTS.index(12)][usual_depths(METRIC).index(CENTIMETRE)] == 24 * CENTIMETRE


@pytest.mark.parametrize("edition", [INCH, METRIC], ids=["inch", "metric"])
def test_every_cell_holds_as_many_tucks_as_can_be_laid_out_one_by_one(edition: Edition) -> None:
    for width in usual_widths(edition):
        for depth, spacing in usual_spacings(edition):
            edge, place, laid = least_margin(End("seam"), depth, "out", edition), Fraction(0), 0
            place = edge
            while place + edge <= width:
                laid, place = laid + 1, place + spacing - 2 * depth
            fit = tucks_in_width(width, depth, spacing, edition)
            assert fit.count == laid
            assert fit.margin >= edge
            assert 2 * fit.margin + (fit.count - 1) * (spacing - 2 * depth) == width
            assert fit.cloth == width + 2 * fit.count * depth


def test_a_width_for_one_tuck_has_one_in_its_middle() -> None:
    # Margins of 1/4 + 1/8 at both sides: 3/4 in holds one tuck, 2 x 3/8 in beside it.
    fit = tucks_in_width(Fraction(3, 4), Fraction(1, 4), Fraction(1), INCH)
    assert (fit.count, fit.margin, fit.cloth) == (1, Fraction(3, 8), Fraction(5, 4))


def test_a_width_without_room_is_refused() -> None:
    with pytest.raises(CalculationError, match="no room for a tuck between its seams; make it wider"):
        tucks_in_width(Fraction(1, 2), Fraction(1, 4), Fraction(1), INCH)


def test_rows_are_too_close_up_to_the_arc_and_tight_up_to_six_depths() -> None:
    depth = 10 * MILLIMETRE
    losses = [row_loss(depth, spacing * MILLIMETRE) for spacing in (31, 32, 59, 60)]
    assert [loss.lost is None for loss in losses] == [True, False, False, False]
    assert [loss.tight for loss in losses] == [True, True, True, False]


def test_a_plan_is_uneven_where_one_of_its_intervals_is() -> None:
    # Rows 1 and 2 swing every tuck, rows 2 and 3 half of them.
    assert plan_draw_in(drawn_plan("><\n<>\n>>"), 6).uneven
    assert not plan_draw_in(turn_plan("ripples"), 6).uneven


@pytest.mark.parametrize("edition", [INCH, METRIC], ids=["inch", "metric"])
def test_every_row_of_a_table_can_be_cut_and_runs_upward(edition: Edition) -> None:
    widths, depths = usual_widths(edition), usual_depths(edition)
    assert list(COUNTS) == sorted(set(COUNTS))
    assert list(widths) == sorted(set(widths))
    assert list(depths) == sorted(set(depths))
    # What shows beside a tuck that lies flat is about its own depth, so folds that face each other have room.
    for depth, spacing in usual_spacings(edition):
        assert depth in depths
        assert 4 * depth <= spacing <= Fraction(9, 2) * depth


def test_the_columns_and_lines_are_those_of_the_card_on_the_wall() -> None:
    # Common practice, no source: what a foot, a guide or the lines of a throat plate set without measuring.
    assert list(COUNTS) == [*range(1, 7), 8, 10, 12, 15, 20, 25, 30]
    assert [str(depth) for depth in usual_depths(INCH)] == ["1/8", "1/4", "3/8", "1/2", "3/4", "1"]
    assert [depth / MILLIMETRE for depth in usual_depths(METRIC)] == [3, 6, 10, 12, 20, 25]
    assert [f"{depth} at {apart}" for depth, apart in usual_spacings(INCH)] == [
        "1/4 at 1",
        "3/8 at 3/2",
        "1/2 at 2",
        "3/4 at 3",
    ]
    assert [(depth / MILLIMETRE, apart / MILLIMETRE) for depth, apart in usual_spacings(METRIC)] == [
        (6, 25),
        (10, 40),
        (12, 50),
        (20, 80),
    ]
    assert usual_widths(INCH) == (*range(6, 21, 2), 24, 30, 36)
    assert [width / CENTIMETRE for width in usual_widths(METRIC)] == [*range(15, 51, 5), 60, 75, 90]

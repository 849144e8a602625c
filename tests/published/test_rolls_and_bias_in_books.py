"""Bolsters, covers and bias strips as printed sources work them; a printed slip is held as one."""

from __future__ import annotations

from fractions import Fraction

import pint
import pytest

from generator.calculation.bias import area_bound, bias_square, continuous_bias_length
from generator.calculation.plain_pieces import worked_circle, worked_rectangle
from generator.calculation.roll import circumference, circumference_bounds, girth_fits
from generator.calculation.strips import joined_length, lost_in_diagonal_join, lost_in_straight_join, strips_needed
from generator.calculation.worked import End
from generator.errors import CalculationError
from generator.lengths import CENTIMETRE, METRIC

QUARTER, HALF, EIGHTH = Fraction(1, 4), Fraction(1, 2), Fraction(1, 8)


def test_a_bolster_of_9_by_14_in_is_cut_as_printed() -> None:
    # D. Colgrove, "Sew a round bolster pillow": two circles of 10 in and one rectangle of 15 by 29 1/4 in, seams 1/2 in
    seam = End("seam", HALF)
    assert worked_circle(Fraction(9), seam) == (10, 10)
    edges = dict.fromkeys(("left", "right", "top", "bottom"), seam)
    assert worked_rectangle(Fraction(14), circumference(Fraction(9), EIGHTH), edges) == (15, Fraction(117, 4))


def test_a_panel_of_65_cm_does_not_go_round_an_end_of_23_cm() -> None:
    # Geometry; a book's project has this pair of sizes: a printed slip
    with pytest.raises(CalculationError, match=r"it needs 74\.3 cm"):
        girth_fits(65 * CENTIMETRE, CENTIMETRE, 23 * CENTIMETRE, METRIC)
    units = pint.UnitRegistry()
    around = units.Quantity(float(circumference_bounds(23 * CENTIMETRE)[0]), "inch").to("centimetre").magnitude
    assert around + 2 == pytest.approx(74.26, abs=0.005)


def test_a_square_of_23_in_falls_short_of_250_in_of_bias() -> None:
    # The customary rule (root of length times width, rounded up) says 23 in for 250 in of 2 in strip: a printed slip.
    # Geometry: 8 rounds of 1.41421 (23 - 1) = 248.9 in with joins of 1/4 in, so 24 in.
    assert area_bound(Fraction(23), Fraction(23), Fraction(2)) == Fraction("264.5")
    assert round(continuous_bias_length(Fraction(23), Fraction(2), QUARTER), 1) == Fraction("248.9")
    assert bias_square(Fraction(250), Fraction(2), QUARTER, Fraction(1)) == 24


def test_950_in_of_straight_strip_need_18_or_19_strips_by_their_joins() -> None:
    # Upholstery trade forum, forum.upholster.com topic 10184: 18 strips of 1 1/2 in from 54 in cloth, 27 in of it.
    # Geometry: diagonal joins lose 1 1/2 in each, 18 x 54 - 17 x 1 1/2 = 946 1/2; straight ones 1/2 in, 963 1/2.
    width, cloth = Fraction(3, 2), Fraction(54)
    diagonal, straight = lost_in_diagonal_join(width), lost_in_straight_join(QUARTER)
    assert joined_length(18, cloth, diagonal) == Fraction("946.5")
    assert joined_length(18, cloth, straight) == Fraction("963.5")
    assert strips_needed(Fraction(950), cloth, diagonal) == 19
    assert strips_needed(Fraction(950), cloth, straight) == 18
    assert 18 * width == 27


def test_true_bias_crosses_a_square_from_corner_to_corner() -> None:
    # School Sewing, par. 143: true bias is exactly 45 degrees, so one round without joins is the diagonal of the square
    one_round = continuous_bias_length(Fraction(20), Fraction(14), Fraction(0))
    assert one_round**2 == pytest.approx(20**2 + 20**2)

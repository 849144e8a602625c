"""Buttons as extension bulletins and trade books place them; the source stands beside each check."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.buttons import button_line, button_positions, buttonhole, from_lignes, hole_span
from generator.lengths import INCH

DIAMETER, THICKNESS = Fraction(7, 8), Fraction(1, 8)


def test_a_buttonhole_is_the_diameter_and_the_thickness() -> None:
    # University of Minnesota Agricultural Extension, "Buttons and Buttonholes", 1965; also M. H. Marshall, Virginia
    # Polytechnic Institute Extension Publication 115, 1974
    assert buttonhole(DIAMETER, THICKNESS) == 1


def test_the_lap_reaches_beyond_the_centre_by_half_the_button_and_a_quarter_to_half_an_inch() -> None:
    # University of Minnesota Agricultural Extension, "Buttons and Buttonholes", 1965
    beyond = button_line(DIAMETER, INCH) - DIAMETER / 2
    assert Fraction(1, 4) <= beyond <= Fraction(1, 2)


def test_a_hole_square_to_the_edge_begins_an_eighth_beyond_the_centre() -> None:
    # University of Minnesota Agricultural Extension, "Buttons and Buttonholes", 1965
    begins, _ = hole_span(DIAMETER, THICKNESS, "square", INCH)
    assert button_line(DIAMETER, INCH) - begins == Fraction(1, 8)


def test_the_first_and_last_hole_are_marked_and_the_rest_divide_the_distance() -> None:
    # The New Dressmaker, 1921. Five on 20 in, 2 in from the ends: 16 in in four, 4 in each
    assert button_positions(Fraction(20), 5, Fraction(2)) == (2, 6, 10, 14, 18)


def test_forty_lignes_are_an_inch() -> None:
    # Dictionary of Dry Goods, "Line": 40 lignes are 1 in, 20 lignes 1/2 in
    assert from_lignes(Fraction(40)) == 1
    assert from_lignes(Fraction(20)) == Fraction(1, 2)

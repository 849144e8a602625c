"""Panels worked by hand, with the working shown, and the numbers that come out of it."""

from __future__ import annotations

from fractions import Fraction

import pytest

from generator.calculation.panel.marks import laid_out, rounded
from generator.calculation.worked import End, TuckSet
from generator.lengths import INCH, METRIC, read_length
from tests.calculation.ply_by_ply import worked_forwards


def lengths(text: str, unit: str = "in") -> list[Fraction]:
    return [read_length(part, unit) for part in text.split(",")]


def panel(count: int, depth: Fraction, pitch: Fraction, ends: tuple[End, End], margins: list[Fraction]) -> TuckSet:
    equal = (depth,) * count
    return laid_out(equal, tuple(2 * deep for deep in equal), (pitch,) * max(count - 1, 0), ends, tuple(margins))


def test_seventeen_tucks_between_seams() -> None:
    # p = 1 1/2 - 2 x 3/8 = 3/4.  F = 3/4 + 16 x 3/4 + 3/4 = 13 1/2.  f_1 = 1/2 + 3/4 + 3/8 = 1 5/8.
    # L = 13 1/2 + 17 x 3/4 + 2 x 1/2 = 13 1/2 + 12 3/4 + 1 = 27 1/4.  f_17 = 1 5/8 + 16 x 1 1/2 = 25 5/8.
    depth, pitch, margin = lengths("3/8, 3/4, 3/4")
    tucks = rounded(panel(17, depth, pitch, (End("seam", Fraction(1, 2)),) * 2, [margin, margin]), INCH)
    assert [tucks.finished, tucks.cut] == lengths("13 1/2, 27 1/4")
    assert [tucks.marks[0], tucks.marks[1], tucks.marks[16]] == lengths("1 5/8, 3 1/8, 25 5/8")
    assert list(tucks.stitching[:2]) == lengths("3/4, 1 1/2")
    assert tucks.grid == Fraction(1, 8)


def test_thirty_seven_tucks_that_catch_both_hems() -> None:
    # Folds from 2 1/2 in inside each raw end, every inch, 1/4 in deep.  h = 2 1/2 / 2 = 1 1/4; first stitching
    # 2 1/2 - 1/4 = 2 1/4 from the raw edge, so 2 1/4 - 1 1/4 = 1 from the finished edge.
    # L = 2 1/2 + 36 x 1 + 2 1/2 = 41.  F = 41 - 2 x 1 1/4 - 37 x 1/2 = 20.
    depth, pitch, margin = lengths("1/4, 1/2, 1")
    tucks = rounded(panel(37, depth, pitch, (End("caught hem"),) * 2, [margin, margin]), INCH)
    assert [tucks.marks[0], tucks.left_allowance, tucks.stitching[0]] == lengths("2 1/2, 1 1/4, 1")
    assert [tucks.cut, tucks.finished, tucks.right_margin] == lengths("41, 20, 1")
    assert tucks.grid == Fraction(1, 2)


def test_one_tuck_caught_at_both_ends() -> None:
    # e_l 1 1/2, e_r 2, d 1/2: h_l = 1 1/2 + 1/2 = 2, h_r = 2 + 1/2 = 2 1/2.  F = 1 1/2 + 2 = 3 1/2.
    # f_1 = 2 h_l = 4.  L = 2 h_l + 2 h_r = 4 + 5 = 9.
    depth, left, right = lengths("1/2, 1 1/2, 2")
    tucks = panel(1, depth, Fraction(1), (End("caught hem"),) * 2, [left, right])
    assert [tucks.finished, tucks.marks[0], tucks.cut] == lengths("3 1/2, 4, 9")
    assert tucks.spacings == ()
    assert tucks.pitches == ()


def test_a_hem_turned_twice_on_the_left_and_a_binding_on_the_right() -> None:
    # Hem 1/4 then 1, e_l 1 1/4, d 3/8: f_1 = 1/4 + 1 + 1 1/4 + 3/8 = 2 7/8.  p = 1: F = 1 1/4 + 2 x 1 + 3/4 = 4.
    # Bound, A_r = 0: L = 4 + 3 x 3/4 + 1 1/4 + 0 = 7 1/2.  f_3 = 2 7/8 + 2 x 1 3/4 = 6 3/8; 7 1/2 - 6 3/8 = 3/4 + 3/8.
    depth, pitch, left, right = lengths("3/8, 1, 1 1/4, 3/4")
    ends = (End("hem", *lengths("1/4, 1")), End("bound", Fraction(3, 8)))
    tucks = rounded(panel(3, depth, pitch, ends, [left, right]), INCH)
    assert [tucks.finished, tucks.cut] == lengths("4, 7 1/2")
    assert list(tucks.marks) == lengths("2 7/8, 4 5/8, 6 3/8")


def test_a_plain_panel_has_only_its_allowances() -> None:
    # No tuck: L = 6 + 1/2 + 3 = 9 1/2.
    ends = (End("seam", Fraction(1, 2)), End("turnover", Fraction(3)))
    tucks = rounded(panel(0, Fraction(3, 8), Fraction(1), ends, lengths("2, 4")), INCH)
    assert [tucks.finished, tucks.cut] == lengths("6, 9 1/2")
    assert (tucks.marks, tucks.stitching, tucks.count) == ((), (), 0)


def test_a_metric_panel_is_worked_in_centimetres() -> None:
    # d 1, m 4, so p = 2.  n 13, e 3: F = 3 + 12 x 2 + 3 = 30.  Seams 1.5: f_1 = 1.5 + 3 + 1 = 5.5.
    # L = 30 + 13 x 2 + 3 = 59.
    depth, pitch, margin = lengths("1, 2, 3", "cm")
    tucks = rounded(panel(13, depth, pitch, (End("seam", read_length("1.5 cm")),) * 2, [margin, margin]), METRIC)
    assert [tucks.finished, tucks.marks[0], tucks.cut] == lengths("30, 5.5, 59", "cm")
    assert tucks.grid == read_length("5 mm")


def test_tucks_from_a_half_to_a_whole_inch_and_back() -> None:
    # Depths 1/2, 3/4, 1, 3/4, 1/2, pitch 2, margins 2, turnover 3: from mark to mark d_i + 2 + d_j = 3 1/4, 3 3/4,
    # 3 3/4, 3 1/4.  f_1 = 3 + 2 + 1/2 = 5 1/2, then 8 3/4, 12 1/2, 16 1/4, 19 1/2.  F = 2 + 4 x 2 + 2 = 12.
    # Hidden 2 x 3 1/2 = 7: L = 12 + 7 + 6 = 25, and 25 - 19 1/2 = 5 1/2 as on the left.
    depths = lengths("1/2, 3/4, 1, 3/4, 1/2")
    two = Fraction(2)
    ends = (End("turnover", Fraction(3)),) * 2
    tucks = rounded(laid_out(depths, [2 * depth for depth in depths], (two,) * 4, ends, (two, two)), INCH)
    assert list(tucks.marks) == lengths("5 1/2, 8 3/4, 12 1/2, 16 1/4, 19 1/2")
    assert [tucks.finished, tucks.cut] == lengths("12, 25")
    assert list(tucks.stitching) == lengths("2, 4, 6, 8, 10")


def test_a_measured_take_up_moves_the_marks_but_not_the_depth() -> None:
    # u = 7/16 instead of 1/2 (d 1/4), m 1, e 1, n 3, raw edges: p = 9/16.  f_1 = 1 + 7/32 = 39/32, rounded 1 1/4
    # (40/32); f_2 = 71/32 to 2 1/4, f_3 = 103/32 to 3 1/4.  F = 2 + 2 x 9/16 = 3 1/8; L = 3 1/8 + 21/16 = 4 7/16.
    # Forwards: x_1 = 1 1/4 - 7/32 = 33/32; F = 4 7/16 - 21/16 = 3 1/8; e_r = 3 1/8 - (33/32 + 18/16) = 31/32.
    depth, pitch = Fraction(1, 4), Fraction(9, 16)
    exact = laid_out((depth,) * 3, (Fraction(7, 16),) * 3, (pitch,) * 2, (End("raw"),) * 2, (Fraction(1),) * 2)
    tucks = rounded(exact, INCH)
    assert list(tucks.marks) == lengths("1 1/4, 2 1/4, 3 1/4")
    assert [tucks.cut, tucks.finished] == lengths("4 7/16, 3 1/8")
    assert [tucks.left_margin, tucks.right_margin] == [Fraction(33, 32), Fraction(31, 32)]
    assert tucks.depths == (depth,) * 3


def test_a_caught_hem_rounds_its_first_mark_to_an_even_number_of_steps() -> None:
    # e 1 1/32, d 1/4: h = 41/32, f_1 = 41/16, an odd number of sixteenths, so 42/16 = 2 5/8 and h' = 1 5/16.
    # f_2 = 41/16 + 1 = 3 9/16.  F = 2 x 33/32 + 1/2 = 41/16 = 2 9/16.
    # Far end: h_r = F + h' + 1 - f_2 = 41/16 + 21/16 + 16/16 - 57/16 = 21/16, so L = 57/16 + 42/16 = 6 3/16.
    # Forwards: F = 6 3/16 - 1 5/16 - 1 5/16 - 1 = 2 9/16.
    margin = Fraction(33, 32)
    tucks = rounded(panel(2, Fraction(1, 4), Fraction(1, 2), (End("caught hem"),) * 2, [margin, margin]), INCH)
    assert list(tucks.marks) == lengths("2 5/8, 3 9/16")
    assert [tucks.left_allowance, tucks.right_allowance, tucks.cut] == lengths("1 5/16, 1 5/16, 6 3/16")
    assert tucks.finished == read_length("2 9/16 in")


@pytest.mark.parametrize("count", [0, 1, 2, 3, 300])
def test_one_two_and_hundreds_of_tucks_come_out_forwards(count: int) -> None:
    # F = 1 + (n - 1) x 3/4 + 1, and 2 with one tuck or none.
    ends = (End("seam", Fraction(1, 2)), End("hem", Fraction(1, 4), Fraction(1, 2)))
    tucks = panel(count, Fraction(3, 8), Fraction(3, 4), ends, [Fraction(1), Fraction(1)])
    assert worked_forwards(tucks)[0] == 2 + max(count - 1, 0) * Fraction(3, 4)

"""Values of tucks from books and bulletins; the source stands beside each check."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from generator.calculation.choice import TuckWish, choose_tucks
from generator.calculation.findings import blind_finding
from generator.calculation.marks import laid_out
from generator.calculation.tucks import cut_width, finished_width, pitch, spacing_for, tuck_take_up, visible_space
from generator.calculation.visible import visible_between
from generator.calculation.worked import End, Turn
from generator.lengths import CENTIMETRE, INCH, METRIC, MILLIMETRE

QUARTER, HALF, ONE = Fraction(1, 4), Fraction(1, 2), Fraction(1)


def test_extra_cloth_is_twice_the_depth_for_every_tuck() -> None:
    # L. I. Baldt, Clothing for Women, Lippincott 1916, "Decoration: Self-Trimmings": 2 x depth x number.
    assert tuck_take_up(12, QUARTER) == 6
    assert tuck_take_up(5, Fraction(3, 8)) == Fraction(15, 4)


def test_a_touching_tuck_takes_its_depth_three_times() -> None:
    # Home and School Sewing, ch. XXI "Tucking": twice in the tuck, once to rest on.
    depth = Fraction(3, 8)
    assert visible_space(depth, depth) == 0
    assert spacing_for(depth, 2 * depth, 2 * depth) == 3 * depth


def test_thirty_six_centimetres_between_the_edges_take_thirty_one_tucks() -> None:
    # National Instructional Media Institute (India), CITS Dress Making, Trade Practical vol. 2, p. 209 of the PDF:
    # tucked width 39 cm, 1.2 cm from tuck to tuck, first and last 1.5 cm from the edges: 36 / 1.2 = 30 gaps, 31 tucks.
    edge = Fraction(3, 2) * CENTIMETRE
    assert finished_width(31, 12 * MILLIMETRE, (edge, edge)) == 39 * CENTIMETRE
    wish = TuckWish(39 * CENTIMETRE, 2 * MILLIMETRE, 16 * MILLIMETRE, (End("raw"),) * 2, (edge, edge), (edge, edge))
    assert choose_tucks(wish, METRIC).count == 31


def test_sixteen_tucks_of_two_millimetres_need_34_4_centimetres() -> None:
    # The same page: tucked width 28 cm, edges 2, 15 gaps, 16 tucks, pitch 24/15 = 1.6 cm, 16 x 4 mm = 6.4, flat 34.4.
    edge, depth, between = 2 * CENTIMETRE, 2 * MILLIMETRE, 16 * MILLIMETRE
    hidden = tuck_take_up(16, depth)
    assert finished_width(16, between, (edge, edge)) == 28 * CENTIMETRE
    assert hidden == 64 * MILLIMETRE
    assert cut_width(28 * CENTIMETRE, hidden, (Fraction(0), Fraction(0))) == 344 * MILLIMETRE


def test_the_pitch_of_that_page_is_not_the_gap_it_is_called() -> None:
    # Printed slip, same page: 1.6 cm is from stitching to stitching; beside a flat tuck of 2 mm only 1.4 cm show.
    assert visible_space(16 * MILLIMETRE, 2 * MILLIMETRE) == 14 * MILLIMETRE


def test_half_inch_tucks_half_an_inch_apart_meet() -> None:
    # Hand Sewing Lessons, Model 6: 1/2 in tucks, 1/2 in from stitching to stitching; each fold meets the next line.
    assert visible_space(HALF, HALF) == 0
    assert visible_between(HALF, (HALF, HALF), (Turn.RIGHT, Turn.RIGHT)) == 0


def test_a_fold_may_reach_the_next_stitching_but_not_cover_it() -> None:
    # A Sewing Course for Teachers, no. 34.
    raw = (End("raw"), End("raw"))
    reaching = laid_out((HALF, HALF), (ONE, ONE), (HALF,), raw, (ONE, ONE))
    covering = laid_out((HALF, HALF), (ONE, ONE), (HALF - Fraction(1, 16),), raw, (ONE, ONE))
    assert blind_finding(reaching, INCH) == ""
    assert "1/16 in" in blind_finding(covering, INCH)


def test_the_space_beside_wide_and_narrow_tucks_sets_their_pitch() -> None:
    # A Sewing Course for Teachers, no. 34: wide tucks show 1/3 to 1/2 of their depth, narrow ones as much as it.
    # 1 1/2 in deep with 1/2 in showing: 2 in from stitching to stitching; 1/8 in deep with 1/8: 1/4.
    assert visible_space(Fraction(2), Fraction(3, 2)) == HALF
    assert visible_space(QUARTER, Fraction(1, 8)) == Fraction(1, 8)


def test_the_second_notch_of_a_marking_gauge_finds_the_next_fold() -> None:
    # Home and School Sewing, ch. XXI: notches at depth and at 2 x depth + space, laid to the stitching: the first finds
    # this fold, the second the next. Depth 3/8, space 1/4: 1 in.
    depth, space = Fraction(3, 8), QUARTER
    raw = (End("raw"), End("raw"))
    tucks = laid_out((depth,) * 2, (2 * depth,) * 2, (depth + space,), raw, (ONE, ONE))
    stitching_on_cloth = tucks.marks[0] + depth
    assert tucks.marks[1] - stitching_on_cloth == 2 * depth + space == ONE


def test_equal_cross_tucks_make_squares() -> None:
    # Butterick, The New Dressmaker, 1921, ch. 20: nun's tucks of 2 in or more; equal cross tucks make squares.
    two, five = Fraction(2), Fraction(5)
    wish = TuckWish(Fraction(12), two, five, (End("raw"),) * 2, (ONE, Fraction(3)), (ONE, Fraction(3)))
    across, along = choose_tucks(wish, INCH), choose_tucks(replace(wish, finished=Fraction(9)), INCH)
    assert set(across.pitches) == set(along.pitches) == {ONE}


def test_quarter_inch_tucks_every_inch_hide_half_the_cloth() -> None:
    # Common practice, no source.
    assert tuck_take_up(1, QUARTER) == ONE / 2
    assert pitch(ONE, tuck_take_up(1, QUARTER)) == ONE / 2


def test_quarter_inch_tucks_every_inch_just_meet_when_they_face_each_other() -> None:
    # Common practice, no source.
    assert visible_between(pitch(ONE, HALF), (QUARTER, QUARTER), (Turn.RIGHT, Turn.LEFT)) == 0

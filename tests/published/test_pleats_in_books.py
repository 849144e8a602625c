"""Pleats as printed sources work them; the source stands beside each check, and a printed slip is held as one."""

from __future__ import annotations

from fractions import Fraction

import pytest

from generator.calculation.plain_pieces import worked_rectangle
from generator.calculation.pleats import Pleats, PleatStyle, pleat_number, pleated_length, worked_pleated_strip
from generator.calculation.strips import strips_needed
from generator.calculation.worked import End
from generator.lengths import CENTIMETRE, METRE


def test_a_section_of_92_cm_takes_18_pleats_and_236_cm() -> None:
    # NIMI, Trade Practical, vol. 2, p. 203: section 92, width 5, depth 4: 18 pleats of 5.1, 2 x 4 x 18 + 92 = 236
    section = 92 * CENTIMETRE
    number = pleat_number(section, 5 * CENTIMETRE)
    assert number == 18
    assert round(section / number / CENTIMETRE, 1) == Fraction("5.1")
    assert pleated_length(section, Pleats("knife", number, 4 * CENTIMETRE)) == 236 * CENTIMETRE


def test_the_printed_234_cm_is_not_repeated() -> None:
    # NIMI, Trade Practical, vol. 2, p. 203, part c, carries the 236 cm of its own sum on as 2.34 m: a printed slip
    assert pleated_length(92 * CENTIMETRE, Pleats("knife", 18, 4 * CENTIMETRE)) == Fraction("2.36") * METRE


def test_236_cm_come_from_three_strips_and_45_cm_of_cloth() -> None:
    # NIMI, Trade Practical, vol. 2, p. 203: cloth 90 cm wide, each strip less 2 cm: 3 strips; 15 cm long each: 45 cm
    strips = strips_needed(236 * CENTIMETRE, 90 * CENTIMETRE, 2 * CENTIMETRE)
    assert strips == 3
    raw = dict.fromkeys(("left", "right", "top", "bottom"), End("raw"))
    _, along = worked_rectangle(90 * CENTIMETRE, 15 * CENTIMETRE, raw)
    assert strips * along == 45 * CENTIMETRE


@pytest.mark.parametrize("width", [1, 2, Fraction(5, 2), 5, 10])
def test_knife_pleats_as_deep_as_wide_take_three_times_50_cm(width: Fraction) -> None:
    # NIMI, Trade Practical, vol. 2, pp. 204-205: 150 cm whatever the width
    number = pleat_number(50 * CENTIMETRE, width * CENTIMETRE)
    assert pleated_length(50 * CENTIMETRE, Pleats("knife", number, width * CENTIMETRE)) == 150 * CENTIMETRE


@pytest.mark.parametrize(
    ("style", "section", "depth", "flat"),
    [
        # NIMI, Trade Practical, vol. 2, pp. 204-205: one box pleat, one inverted pleat
        ("box", 60, Fraction(12), 108),
        ("inverted", 66, Fraction(13, 2), 92),
    ],
)
def test_a_pleat_of_two_folds_takes_four_depths(style: PleatStyle, section: int, depth: Fraction, flat: int) -> None:
    pleats = Pleats(style, 1, depth * CENTIMETRE)
    assert pleated_length(section * CENTIMETRE, pleats) == flat * CENTIMETRE


def test_side_pleating_takes_three_times_the_finished_length() -> None:
    # Butterick, The New Dressmaker, 1921, ch. 28: close side pleating, where each pleat reaches to the next
    ends = dict.fromkeys(("left", "right", "top", "bottom"), End("raw"))
    strip = worked_pleated_strip(Fraction(36), Fraction(6), Pleats("knife", 36, Fraction(1)), ends)
    assert strip.flat == 3 * 36
    assert strip.layers == 3

"""How a waiting piece follows from the panel as sewn, told as a sum in words."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, put, sheet
from test_own_measure import BOXED

from generator.calculation.worksheet.new_cuts import sum_words
from generator.lengths import INCH, METRIC


def told(tmp_path: Path, edition: str) -> dict[tuple[str, str], str]:
    return {(cut.piece, cut.side): cut.words for cut in sheet(tmp_path, BOXED, "medium", edition).new_cuts}


def test_a_base_is_the_measure_and_two_seams_and_a_boxing_goes_round_it(tmp_path: Path) -> None:
    # Seams of 1/2 in: the base is 16 + 1; the boxing 2 x 16 + 2 x 16 + 1 = 65, as planned.
    found = told(tmp_path, "inch")
    assert found["base", "across"] == "mine + 1"
    assert found["boxing", "across"] == "twice mine across + twice mine along + 1"
    assert found["boxing", "along"] == found["pocket", "across"] == ""


def test_the_same_sums_speak_centimetres(tmp_path: Path) -> None:
    # Seams of 1.5 cm.
    found = told(tmp_path, "metric")
    assert (found["base", "along"], found["boxing", "across"]) == (
        "mine + 3",
        "twice mine across + twice mine along + 3",
    )


def test_a_measure_that_is_off_gives_the_cut_of_a_sheet_worked_to_it(tmp_path: Path) -> None:
    # mine 16 1/4: 16 1/4 + 1 = 17 1/4.
    other = sheet(tmp_path, BOXED, "medium", across="16 1/4")
    assert other.pieces["base"].cut_across == Fraction(65, 4) + 1


def test_without_waiting_pieces_there_is_nothing_to_work(tmp_path: Path) -> None:
    assert sheet(tmp_path, put(CUSHION), "medium").new_cuts == ()


@pytest.mark.parametrize(
    ("cuts", "words"),
    [
        ({16: "12 1/2", 17: "13"}, "half of mine + 4 1/2"),
        ({16: "35", 17: "33"}, "67 \N{MINUS SIGN} twice mine"),
        ({16: "16", 17: "17"}, "mine"),
        ({16: "15", 17: "16"}, "mine \N{MINUS SIGN} 1"),
        ({16: "20", 17: "20 1/3"}, ""),
        ({16: "20", 17: "21", 18: "24"}, ""),
    ],
)
def test_a_sum_is_told_where_the_cut_grows_evenly(cuts: dict[int, str], words: str) -> None:
    sums = {Fraction(at): sum((Fraction(part) for part in cut.split()), Fraction(0)) for at, cut in cuts.items()}
    assert sum_words(sums[Fraction(16)], [("across", Fraction(16), sums)], INCH) == words


def test_half_a_mark_of_the_ruler_may_be_rounded_away() -> None:
    # Half of 40.3 cm and 10.5 is 30.65; the ruler says 30.7. Half of 41.2 and 10.5 is 31.1.
    cm = Fraction(50, 127)
    sums = {40 * cm: 30.5, Fraction(403, 10) * cm: 30.7, Fraction(412, 10) * cm: 31.1}
    sums = {at: Fraction(str(cut)) * cm for at, cut in sums.items()}
    assert sum_words(sums[40 * cm], [("across", 40 * cm, sums)], METRIC) == "half of mine + 10.5"

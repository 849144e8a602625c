"""What is said to be certain of a layout is what is proven of it, and no more."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, sheet

from generator.calculation.worked_project import ClothUse
from generator.calculation.worksheet.cut_order import proof_words
from generator.lengths import INCH, METRIC


@pytest.fixture
def use(tmp_path: Path) -> ClothUse:
    return sheet(tmp_path, CUSHION, "medium").cloths["face"]


def test_the_three_sentences_are_those_of_what_is_proven(use: ClothUse) -> None:
    layout = replace(use.layout, least=Fraction(30), steps_above=2)
    told = {
        proven: proof_words(replace(use, layout=replace(layout, proven=proven)), INCH)
        for proven in ("shortest", "purchase", "open")
    }
    assert told == {
        "shortest": "No layout cut across, down and across is shorter.",
        "purchase": "No layout cut across, down and across needs less from the shop.",
        # Two steps of 4 1/2 in are 9 in, a quarter of a yard.
        "open": "A good layout; no layout cut across, down and across is shorter than 30 in: at most 1/4 yd less.",
    }


def test_a_harder_layout_and_what_waiting_costs_are_told_too(use: ClothUse) -> None:
    layout = replace(use.layout, proven="purchase", possible=Fraction(33), apart_costs=1)
    assert proof_words(replace(use, layout=layout), INCH) == (
        "No layout cut across, down and across needs less from the shop. 33 in is possible, harder to cut, and buys "
        "the same. That what waits for the sewn panel stays whole costs 1/8 yd."
    )


def test_the_height_that_a_strip_may_have_is_told_where_a_layout_is_higher(use: ClothUse) -> None:
    long = replace(use, layout=replace(use.layout, length=Fraction(61), possible=Fraction(61)))
    assert proof_words(long, INCH) == (
        "No layout cut across, down and across, with no strip higher than 60 in or the longest piece, is shorter."
    )
    assert "no strip higher than 150 cm" in proof_words(long, METRIC)
    low = replace(use, layout=replace(use.layout, length=Fraction(60), possible=Fraction(60)))
    assert "higher" not in proof_words(low, INCH)

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction
from functools import cache

import pytest
from mooring_room import worksheets
from opened_pdf import page_count, whole_text
from room_setting import setting

from generator.calculation.worked_project import DecidingMeasure
from generator.definitions.vocabulary import KINDS, WEIGHTS
from generator.rendering.environment import template
from generator.rendering.forms import (
    guide_lines,
    mark_tests,
    render_care_sheet,
    render_machine_card,
    render_measuring_guide,
    render_sample_form,
    render_sign_up_form,
)


@cache
def sample_text(edition: str) -> str:
    return whole_text(render_sample_form({"mooring": worksheets(edition)}, setting(), "A4"))


@pytest.mark.parametrize(("edition", "unit"), [("inch", "in"), ("metric", "cm")])
def test_the_sample_form_asks_for_everything_that_a_sample_says(edition: str, unit: str) -> None:
    text = sample_text(edition)
    for box in ("Depth", "Flat", "Finished", "Rows before", "Rows after", "Before the wash, length"):
        assert f"{box} {unit}" in text
    assert "Tucks, how many" in text
    assert "Each tuck hides flat less finished, divided by the number of tucks." in text


def test_the_measuring_guide_shows_the_sizes_with_their_own_measures() -> None:
    text = whole_text(render_measuring_guide(worksheets("inch"), setting(), "Letter"))
    assert "Pad across" in text
    assert "Chair 16 in 16 × 16 in" in text
    assert "worked out from this measure: side." in text


def test_a_thing_of_no_kind_is_measured_as_its_project_says() -> None:
    said = DecidingMeasure("diameter", Fraction(12), "of the seat, across its middle")
    sheets = [replace(sheet, kind="other", deciding=said) for sheet in worksheets("inch")]
    text = whole_text(render_measuring_guide(sheets, setting(), "Letter"))
    assert "Diameter Of the seat, across its middle." in text
    # A kind of its own has its own way of measuring.
    assert "Of the seat" not in whole_text(
        render_measuring_guide([replace(sheet, kind="cushion") for sheet in sheets], setting(), "Letter")
    )


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_of_project_has_its_own_guide_to_measuring(kind: str) -> None:
    told = template(setting().theme, "sheets/measuring.html").module.measuring[kind]
    assert told["first"]
    assert told["measures"]
    assert told["then"]


@pytest.mark.parametrize("kind", KINDS)
def test_guide_and_care_sheet_of_every_kind_are_one_page(kind: str) -> None:
    sheets = [replace(sheet, kind=kind) for sheet in worksheets("metric")]
    assert page_count(render_measuring_guide(sheets, setting(), "Letter")) == 1
    assert page_count(render_care_sheet(sheets, setting(), "Letter")) == 1


def test_the_machine_card_tells_the_guide_and_what_the_marks_come_out_at() -> None:
    text = whole_text(render_machine_card(worksheets("inch"), setting(), "Letter"))
    assert "3/8 in front, every size" in text
    # Small: first mark 1/2 + 1 1/8 + 3/8 = 2, last 2 + 13 x 1 1/2 = 21 1/2, cut 23 1/2.
    assert "Stool front 14 2 in 21 1/2 in 23 1/2 in" in text


def test_each_depth_is_told_once_with_where_it_is_used() -> None:
    small, *others = worksheets("inch")
    front = small.pieces["front"]
    assert front.panel is not None
    deeper = replace(front.panel.across, depths=tuple(2 * depth for depth in front.panel.across.depths))
    changed = replace(small, pieces={"front": replace(front, panel=replace(front.panel, across=deeper))})
    lines = guide_lines([changed, *others])
    assert [line.where for line in lines] == ["front, Chair, Bench", "front, Stool"]
    assert len(mark_tests([changed, *others])) == 3


@pytest.mark.parametrize("weight", WEIGHTS)
def test_the_machine_card_knows_a_needle_for_every_weight_of_cloth(weight: str) -> None:
    sheets = [
        replace(sheet, cloths={name: replace(use, weight=weight) for name, use in sheet.cloths.items()})
        for sheet in worksheets("inch")[:1]
    ]
    assert re.search(r"\d+ mm, (about )?\d+", whole_text(render_machine_card(sheets, setting(), "A4")))


@pytest.mark.parametrize(("theme", "paper"), [("plain", "Letter"), ("plain", "A4"), ("large-print", "Letter")])
def test_the_sign_up_form_has_as_many_lines_as_its_page_holds(theme: str, paper: str) -> None:
    pdf = render_sign_up_form(worksheets(), setting(theme), paper)
    assert page_count(pdf) == 1
    text = whole_text(pdf)
    assert "12 × 12 in or 30 × 30 cm" in text
    assert "(side)" in text
    for column in ("Inch", "Metric"):
        assert column in text
    least = 4 if theme == "large-print" else 12
    assert f" {least} " in text.split("Name")[1]


def test_one_edition_needs_no_choice_between_editions() -> None:
    text = whole_text(render_sign_up_form(worksheets("metric"), setting(), "A4"))
    assert "Metric" not in text
    assert "Choose inch or metric" not in text


def test_the_care_sheet_tells_of_shrinkage_and_of_rows() -> None:
    text = whole_text(render_care_sheet(worksheets(), setting(), "A4"))
    assert "Room for one wash was counted in when it was cut." in text
    assert "Never press the tucks flat." in text
    assert "Take the pad out." in text

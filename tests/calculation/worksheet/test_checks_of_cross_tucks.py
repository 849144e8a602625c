"""A second set of tucks has check points, corrections and a strip as the first has, worked out by hand."""

from __future__ import annotations

from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, inches, put, sheet

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.edition_numbers import printed_numbers
from generator.calculation.worksheet.figures import figures
from generator.commands.figures_text import figures_text
from generator.drawing.catalogue import figure_keys
from generator.rendering.machine import stops

ROWS = """\
    rows:
      plan: linked cells
      spacing: 3 in or 7.5 cm
      first: 1 in to 3 in or 3 cm to 7 cm
      start: right
"""
CROSS = """\
    cross tucks:
      depth: 3/8 in or 1 cm
      spacing: 1 1/2 in or 4 cm
      number: 15
      margin: 3/4 in to 3 in or 2 cm to 8 cm
"""
STEPS = """\
  - use: rule rows, sew rows, trim
    on: front
    session ends: yes
"""
CROSSED = put(
    CUSHION, (ROWS, CROSS), (STEPS, "  - use: mark cross folds, crease cross, stitch cross tucks\n    on: front\n")
)


@pytest.fixture(name="crossed")
def cushion_with_cross_tucks(tmp_path: Path) -> Worksheet:
    return sheet(tmp_path, CROSSED, "medium")


def test_check_points_are_measured_from_the_top_edge(crossed: Worksheet) -> None:
    # 16 in, 15 tucks 3/4 in from stitching to stitching: margins (16 - 10 1/2) / 2 = 2 3/4. The first mark lies at
    # 1/2 + 2 3/4 + 3/8 = 3 5/8, the seventh at 3 5/8 + 9 = 12 5/8, the thirteenth at 21 5/8. Six tucks hide 4 1/2,
    # twelve 9: 8 1/8 and 12 5/8. All hide 11 1/4 of 28 1/4: 17.
    panel = crossed.panels["front"]
    assert panel.cross is not None
    assert panel.cross.marks[0] == inches("3 5/8")[0]
    told = [(point.after, point.start, point.end, point.expect) for point in panel.cross_checks.points]
    assert told == [
        (6, "the top cut edge", "cross mark 7", inches("8 1/8")[0]),
        (12, "the top cut edge", "cross mark 13", inches("12 5/8")[0]),
        (15, "the top cut edge", "the bottom cut edge", 17),
    ]


def test_what_is_off_is_dealt_out_over_the_cross_tucks_left(crossed: Worksheet) -> None:
    told = {(one.after, one.off): one.text for one in crossed.panels["front"].cross_checks.corrections}
    # 1/4 short after six tucks: 1/8 of depth, in two tucks.
    assert told[6, -inches("1/4")[0]] == "Stitch tucks 7 and 8 shallower by 1/16 in."
    # Margins of 2 3/4 need 1/2.
    assert "Trim 1/4 in off at the top and at the bottom" in told[15, inches("1/2")[0]]


def test_the_step_the_figures_and_the_kept_numbers_tell_them(crossed: Worksheet) -> None:
    step = next(step for step in crossed.steps if step.standard == "stitch cross tucks")
    assert "- After tuck 6: from the top cut edge to cross mark 7, **8 1/8 in**" in step.text
    assert "cross checking front" in step.figures
    front = figures(crossed)["pieces"]["front"]
    assert [point["expect"] for point in front["cross_checkpoints"]] == ["8 1/8", "12 5/8", "17"]
    assert printed_numbers(figures(crossed))["front: cross tucks, check after tuck 6"] == "8 1/8"
    assert "check after tuck 6: the top cut edge to cross mark 7 = 8 1/8 in" in figures_text(crossed)


def test_there_is_a_picture_of_them_and_a_strip(crossed: Worksheet) -> None:
    assert {"cross checking front", "cross marking strip front"} <= set(figure_keys(crossed))


def test_at_the_machine_each_step_has_the_check_points_of_its_own_tucks(crossed: Worksheet) -> None:
    panel = crossed.panels["front"]
    checked = [(stop.step.standard, stop.check.point) for stop in stops(crossed) if stop.check]
    assert checked == [
        *(("stitch tucks", point) for point in panel.checks.points),
        *(("stitch cross tucks", point) for point in panel.cross_checks.points),
    ]
    assert {step for step, _ in checked} == {"stitch tucks", "stitch cross tucks"}

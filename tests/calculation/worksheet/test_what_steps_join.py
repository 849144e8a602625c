"""What the steps of a sheet join: in a file as it is written, with the lengths of its size and edition."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, faults, put, sheet

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.figures import figures
from generator.errors import Finding

CLOSED = ("put the pad in front\n", "put the pad in front, close front\n")
SEWN = "sew front to back, "


def closing(folder: Path, opening: str) -> Worksheet:
    """The cushion of 16 in by 16 in, its last step with an opening that is sewn up again."""
    return sheet(folder, put(CUSHION, (SEWN, f"{SEWN}leave open {opening} of front.left, "), CLOSED), "medium")


def test_a_step_of_ones_own_tells_its_layers_and_the_opening_in_the_measure_of_its_size(tmp_path: Path) -> None:
    """The lap of this size is 16 / 4 = 4 in."""
    (one,) = closing(tmp_path, "lap or 11 cm").steps[-1].joined
    assert [layer.pieces for layer in one.layers] == [("front",), ("back",)]
    assert one.opening is not None
    assert (one.opening.edge, one.opening.length) == (("front", "left"), Fraction(4))


def test_its_picture_is_named_by_the_number_of_the_step(tmp_path: Path) -> None:
    step = closing(tmp_path, "8 in or 20 cm").steps[-1]
    assert step.figures == (f"seam {step.number}-1",)


def test_the_figures_hold_what_is_joined(tmp_path: Path) -> None:
    (told,) = figures(closing(tmp_path, "8 1/2 in or 20 cm"))["joined"]
    assert told["opening"] == {"edge": "front.left", "length": "8 1/2"}
    assert [(layer["pieces"], layer["right_side_up"]) for layer in told["layers"]] == [
        (["front"], True),
        (["back"], False),
    ]


def test_an_opening_that_cannot_be_worked_is_told_once_at_its_line(tmp_path: Path) -> None:
    nothing = "1 in / ((lap - lap) / 1 in)"
    text = put(CUSHION, (SEWN, f"{SEWN}leave open {nothing} of front.left, "), CLOSED)
    (told,) = faults(tmp_path, text, "medium")
    line = text[: text.index(SEWN)].count("\n") + 1
    assert told.startswith(f"projects/jetty.yaml:{line}:")
    assert "divided by a value that comes to nothing" in told


@pytest.mark.parametrize(
    ("opening", "told"),
    [
        ("16 in", "an opening of 16 in leaves nothing to sew of 'front.left', which is 16 in; leave less open"),
        ("0 in", "an opening of 0 in is none; write how much stays open, or take the line out"),
    ],
)
def test_an_opening_as_long_as_its_edge_or_none_at_all_is_refused(tmp_path: Path, opening: str, told: str) -> None:
    text = put(CUSHION, (SEWN, f"{SEWN}leave open {opening} of front.left, "), CLOSED)
    found = closing_findings(tmp_path, text)
    assert [finding.text for finding in found] == [told]


def test_an_opening_shorter_than_its_edge_is_not(tmp_path: Path) -> None:
    text = put(CUSHION, (SEWN, f"{SEWN}leave open 15 15/16 in of front.left, "), CLOSED)
    assert closing_findings(tmp_path, text) == []


def closing_findings(folder: Path, text: str) -> list[Finding]:
    """The errors of the recipe of the cushion of 16 in by 16 in."""
    return [finding for finding in sheet(folder, text, "medium").findings if finding.level == "error"]

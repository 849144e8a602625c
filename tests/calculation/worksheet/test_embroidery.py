"""Embroidery on a sheet: its place from the raw edges, the tucks under it, when it is its turn, what is bought."""

from __future__ import annotations

from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, put, sheet

from generator.calculation.worked_project import SheetStep, Worksheet
from generator.errors import FaultyFileError

DESIGN = """\
embroidery:
  - on: front
    across: 4 in or 10 cm
    along: 3 in or 7.5 cm
    thread: rust
    length: 4 yd or 4 m
steps:
  - use: as usual
"""
EMBROIDERED = CUSHION[: CUSHION.index("steps:\n")] + DESIGN


def step(worksheet: Worksheet) -> SheetStep:
    return next(one for one in worksheet.steps if one.standard == "embroider")


def test_a_design_lies_in_the_middle_where_nothing_is_said(tmp_path: Path) -> None:
    """Medium is 16 in square with seams of 1/2 in: (16 - 4) / 2 + 1/2 = 6 1/2, (16 - 3) / 2 + 1/2 = 7.

    Twenty tucks of 3/8 in from 7/8 in on, 3/4 in apart: number i stands at 7/8 + (i - 1) 3/4. Under 6 to 10 in lie
    those from 6 - 3/8 to 10 + 3/8: number 8 at 6 1/8 to number 13 at 9 7/8 (7 stands at 5 3/8, 14 at 10 5/8).
    """
    told = step(sheet(tmp_path, EMBROIDERED, "medium")).text
    where = "an area 4 in across and 3 in along, **6 1/2 in** from the left and **7 in** from the top"
    assert f"- {where}; tucks 8 to 13 lie under it, thread rust." in told
    assert "put the stabiliser alone into the hoop" in told
    assert "Use a hoop on the plain cloth" not in told


def test_a_place_and_a_line_are_measured_from_the_edges(tmp_path: Path) -> None:
    """1 in and 2 in from the finished edges are 1 1/2 and 2 1/2 in from the raw ones; a line has one length."""
    line = put(
        EMBROIDERED,
        ("    along: 3 in or 7.5 cm\n", "    from left: 1 in or 2.5 cm\n    from top: 2 in or 5 cm\n"),
    )
    told = step(sheet(tmp_path, line, "medium")).text
    assert "a line 4 in long, across, **1 1/2 in** from the left and **2 1/2 in** from the top" in told
    metric = step(sheet(tmp_path, line, "medium", "metric")).text
    assert "a line 10 cm long, across, **4 cm** from the left and **6.5 cm** from the top" in metric


def test_it_is_embroidered_when_the_rows_are_sewn_and_before_the_seams(tmp_path: Path) -> None:
    names = [one.standard for one in sheet(tmp_path, EMBROIDERED, "medium").steps]
    assert names.index("sew rows") < names.index("trim") < names.index("embroider") < names.index("join pieces")


def test_stabiliser_and_thread_are_bought(tmp_path: Path) -> None:
    """An inch more all round: 4 + 2 by 3 + 2 in."""
    lines = [(one.amount, one.item) for one in sheet(tmp_path, EMBROIDERED, "medium").notions]
    assert ("1", "Stabiliser for the embroidery, 6 in by 5 in") in lines
    assert ("144 in", "Embroidery thread, rust") in lines
    free = put(EMBROIDERED, ("    length: 4 yd or 4 m\n", ""))
    lines = [(one.amount, one.item) for one in sheet(tmp_path, free, "medium").notions]
    assert ("1", "Embroidery thread, rust, as your design says") in lines


def test_on_a_plain_piece_nothing_is_said_of_tucks_and_for_a_child_beads_are_refused(tmp_path: Path) -> None:
    plain = put(EMBROIDERED, ("embroidery:\n  - on: front", "embroidery:\n  - on: patch"))
    patch = "  patch:\n    kind: rectangle\n    finished across: side\n    finished along: side\n"
    plain = put(plain, ("edges that meet:", f"{patch}edges that meet:"))
    told = step(sheet(tmp_path, plain, "medium")).text
    assert "under it" not in told
    assert "Use a hoop on the plain cloth" in told
    assert "beads" not in told
    child = put(plain, ("kind: cushion\n", "kind: cushion\ncautions: small children\n"))
    assert "no beads, sequins or buttons" in step(sheet(tmp_path, child, "medium")).text


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("across: 4 in", "across: 17 in", "the embroidery reaches over the right edge by 1/2 in; make it smaller"),
        ("    thread: rust", "    from top: 14 in or 35 cm\n    thread: rust", "reaches over the bottom edge by 1 in"),
        (
            "    across: 4 in or 10 cm\n    along: 3 in or 7.5 cm\n",
            "",
            "an embroidery is an area or a line; write how large it is",
        ),
        ("on: front\n    across", "on: back\n    across", "'back' is an envelope back; a tucked panel or a rectangle"),
    ],
)
def test_what_does_not_lie_on_its_piece_is_refused(tmp_path: Path, old: str, new: str, told: str) -> None:
    text = put(EMBROIDERED, (old, new))
    with pytest.raises(FaultyFileError) as fault:
        sheet(tmp_path, text, "medium")
    (found,) = {str(one) for one in fault.value.findings if one.level == "error"}
    line = 2 + text[: text.index("embroidery:")].count("\n")
    assert found.startswith(f"projects/jetty.yaml:{line}:")
    assert told in found

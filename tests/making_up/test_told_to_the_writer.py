"""What only the writer of a file can mend is told by check, with lines to paste, and stands on no sheet."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import worked_sheet
from generator.definitions.project import load_project
from tests.making_up.demo_recipes import ROOT, room

CUSHION = (ROOT / "tests" / "making_up" / "projects" / "gig-cushion.yaml").read_text(encoding="utf-8")
SUPPLIES = CUSHION[CUSHION.index("supplies:") :]
LOOP = "  loop:\n    kind: tie\n    length: 6 in or 15 cm\n    width: 1/2 in or 1.2 cm\n"


def worked(folder: Path, text: str) -> Worksheet:
    path = folder / "it.yaml"
    path.write_text(text, encoding="utf-8")
    project = load_project(path, room().room, folder)
    return worked_sheet(project, "small", room().room.edition("inch"), room())


@pytest.mark.parametrize(
    ("supplies", "told"),
    [
        ("", ["'fill' fills it, and nothing is bought to fill it with; write it down, so that it is on the list:"]),
        (SUPPLIES, []),
    ],
)
def test_a_filling_that_nobody_buys_is_told_with_the_lines_to_paste(
    tmp_path: Path, supplies: str, told: list[str]
) -> None:
    sheet = worked(tmp_path, CUSHION.replace(SUPPLIES, supplies))
    warned = [one.text for one in sheet.findings if one.level == "warning"]
    assert [text.partition("\n")[0] for text in warned] == told
    assert all(text.endswith("supplies:\n  - item: Cushion pad") for text in warned)


def test_what_is_mended_in_the_file_is_not_printed(tmp_path: Path) -> None:
    sheet = worked(tmp_path, CUSHION.replace("edges that meet:", f"{LOOP}edges that meet:"))
    (told,) = (one for one in sheet.findings if one.level == "warning")
    assert "'loop' is cut and never sewn on" in told.text
    assert not told.printed


def test_what_a_student_should_know_is_printed() -> None:
    path = ROOT / "projects" / "bosun-seat-pad.yaml"
    sheet = worked_sheet(load_project(path, room().room, ROOT), "stool", room().room.edition("inch"), room())
    assert [one.printed for one in sheet.findings if "layers of cloth" in one.text] == [True]


APRON = """
title: Sail apron
kind: garment
summary: An apron.
sizes:
  small:
    wide: 20 in or 50 cm
cloths:
  face: 54 in or 140 cm
pieces:
  skirt:
    kind: tucked panel
    finished across: wide
    finished along: wide
    tucks:
      depth: 1/4 in or 6 mm
      spacing: 1 1/4 in or 3 cm
      margin: 1/2 in to 2 in or 1.5 cm to 5 cm
    edges:
      all: hem 1/2 in or 1 cm
      top: {top}
  waistband:
    kind: strip
    length: skirt.across
    width: 2 in or 5 cm
{edges}
edges that meet:
  - join: skirt.top
    to: waistband.{edge}
"""
HEMS = "    edges:\n      all: hem 1/4 in or 6 mm\n      top: seam"


@pytest.mark.parametrize(
    ("top", "edge", "edges", "raw"),
    [
        ("seam", "edge", "", ["waistband.left", "waistband.right", "waistband.bottom"]),
        ("seam", "top", HEMS, []),
        ("bound 1/2 in or 1.2 cm", "edge", "", []),
    ],
)
def test_an_edge_that_is_sewn_to_nothing_and_has_no_finish_is_told(
    tmp_path: Path, top: str, edge: str, edges: str, raw: list[str]
) -> None:
    """A strip joined by one long edge has its other one and both ends left; one that binds goes over the edge."""
    sheet = worked(tmp_path, APRON.format(top=top, edge=edge, edges=edges))
    told = [one.text for one in sheet.findings if "nothing is sewn to" in one.text]
    assert [name for text in told for name in re.findall(r"'(waistband\.\w+)'", text)] == raw
    for text in told:
        assert "let it go over the edge ('kind: binding'), or give a finish" in text
        assert text.endswith("\n  bottom: hem 1/4 in then 1/4 in or 6 mm then 6 mm")

"""A zip in a seam is the opening of the work: nothing is left open for turning and nothing closed by hand."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.calculation.making_up.joined import Opening
from generator.calculation.worked_project import SheetStep, Worksheet
from generator.calculation.worksheet.sheet import worked_sheet
from generator.definitions.project import load_project
from generator.drawing.seams.plan import plan_seam
from generator.drawing.seams.words import told
from tests.making_up.demo_recipes import ROOT, recipe_in, room

CUSHION = Path(__file__).with_name("projects") / "cabin-door-cushion.yaml"
OWN = """
steps:
  - use: as usual
  - title: Close the cover
    does:
      - sew front to back
      - leave open 4 in or 10 cm of front.bottom
      - turn out front
    on: front, back
    text: Sew it.
  - use: as usual
"""


def sheet_of(path: Path, edition: str = "inch") -> Worksheet:
    return worked_sheet(load_project(path, room().room, ROOT), "one", room().room.edition(edition), room())


def step(sheet: Worksheet, standard: str) -> SheetStep:
    return next(one for one in sheet.steps if one.standard == standard)


def test_no_opening_is_asked_for_and_none_is_closed() -> None:
    does = [act.does for act in recipe_in(CUSHION).acts]
    assert does[-2:] == ["line and turn", "fill"]
    assert does.index("set zip") < does.index("line and turn")


@pytest.mark.parametrize("edition", ["inch", "metric"])
@pytest.mark.parametrize("medium", ["text", "printed"])
def test_the_zip_is_opened_before_the_work_is_turned_and_closed_when_it_is_filled(edition: str, medium: str) -> None:
    sheet = sheet_of(CUSHION, edition)
    sewn = getattr(step(sheet, "line and turn"), medium)
    assert "**Open the zip**" in sewn
    assert sewn.index("Open the zip") < sewn.index("Sew") < sewn.index("draw the work out")
    assert "opening" not in sewn
    assert "Close the zip" in getattr(step(sheet, "fill"), medium)


def test_the_picture_shows_the_zip_where_it_lies() -> None:
    sheet = sheet_of(CUSHION)
    sewn = step(sheet, "line and turn")
    (joined,) = sewn.joined
    assert joined.opening == Opening(("front", "bottom"), sheet.pieces["front"].finished_across, zipped=True)
    plan = plan_seam(sheet, joined)
    assert plan is not None
    assert "Open the zip at the bottom." in told(plan, sheet)
    assert "Turned out: through the zip." in told(plan, sheet)


def test_a_gap_in_a_seam_that_has_its_zip_is_told(tmp_path: Path) -> None:
    path = tmp_path / "cushion.yaml"
    path.write_text(CUSHION.read_text(encoding="utf-8") + OWN, encoding="utf-8")
    sheet = sheet_of(path)
    (found,) = (one for one in sheet.findings if "through the zip" in one.text)
    assert found.level == "warning"
    assert "turn the work through the zip, and take this line out" in found.text
    assert found.place is not None
    line = path.read_text(encoding="utf-8").splitlines()[found.place.line - 1]
    assert line.strip() == "- leave open 4 in or 10 cm of front.bottom"

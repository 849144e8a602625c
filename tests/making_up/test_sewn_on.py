"""A pocket or patch says where it is sewn on: step, picture and finished thing tell the same place."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import worked_sheet
from generator.definitions.project import load_project
from generator.drawing.catalogue import draw_for_page
from generator.drawing.style import Style
from generator.drawing.things.forms import form_of
from generator.drawing.things.views import shapes_of
from generator.errors import FaultyFileError
from tests.making_up.demo_recipes import room

APRON = """
title: Baker's panel
kind: other
summary: A tucked panel with a pocket.
seam: 1/2 in or 1 cm
sizes:
  one:
    width: 12 in or 30 cm
cloths:
  face: 44 in or 112 cm
pieces:
  front:
    kind: tucked panel
    finished across: width
    finished along: 16 in or 40 cm
    tucks:
      depth: 1/4 in or 5 mm
      spacing: 1 1/4 in or 3 cm
      margin: 1/2 in to 2 in or 1 cm to 5 cm
  back:
    kind: rectangle
    finished across: width
    finished along: 16 in or 40 cm
  pocket:
    kind: rectangle
    finished across: 5 in or 13 cm
    finished along: 6 in or 15 cm
    sewn on: back, 3 in or 8 cm from the top, 2 in or 5 cm from the left
    edges:
      all: seam
      top: hem 1/2 in or 1 cm
edges that meet:
  - join: front.all
    to: back.all
"""
LINE = "back, 3 in or 8 cm from the top, 2 in or 5 cm from the left"


def sheet(folder: Path, text: str = APRON, edition: str = "inch") -> Worksheet:
    path = folder / "panel.yaml"
    path.write_text(text, encoding="utf-8")
    return worked_sheet(load_project(path, room().room, folder), "one", room().room.edition(edition), room())


def test_the_usual_steps_sew_it_on_before_its_piece_is_sewn_to_anything(tmp_path: Path) -> None:
    told = sheet(tmp_path)
    names = [step.standard for step in told.steps]
    assert names.index("hem") < names.index("sew on") < names.index("line and turn")
    assert [one.text for one in told.findings if one.level != "note"] == []


@pytest.mark.parametrize(
    ("edition", "top", "left", "under"),
    # Half an inch or 1 cm of allowance lies beyond the finished edges: 3 + 1/2, 2 + 1/2; 8 + 1, 5 + 1.
    [("inch", "3 1/2 in", "2 1/2 in", "1/2 in"), ("metric", "9 cm", "6 cm", "1 cm")],
)
def test_the_step_tells_both_distances_from_the_cut_edges(
    tmp_path: Path, edition: str, top: str, left: str, under: str
) -> None:
    told = sheet(tmp_path, edition=edition)
    (step,) = (step for step in told.steps if step.standard == "sew on")
    assert f"Press the left, right and bottom edges by {under} to the wrong side." in step.text
    assert f"its top edge {top} from the top cut edge, its left edge {left} from the left cut edge" in step.text
    assert "from one end of the top edge round to the other; that edge stays open" in step.text
    assert step.figures == ("placed pocket",)
    assert {"machine", "pins", "ruler", "iron"} <= set(step.tools)


def test_a_way_of_which_nothing_is_said_is_the_middle(tmp_path: Path) -> None:
    told = sheet(tmp_path, APRON.replace(LINE, "back, 1 in or 2 cm from the bottom"))
    on = told.pieces["pocket"].on_piece
    # (12 - 5) / 2 = 3 1/2 from the left; 16 - 6 - 1 = 9 from the top.
    assert on is not None
    assert (on.left, on.top) == (Fraction(7, 2), 9)
    (step,) = (step for step in told.steps if step.standard == "sew on")
    assert "its bottom edge 1 1/2 in from the bottom cut edge, its left edge 4 in from the left cut edge" in step.text


def test_the_picture_has_both_distances_and_the_thing_shows_it_there(tmp_path: Path) -> None:
    told = sheet(tmp_path, APRON.replace("sewn on: back", "sewn on: front"))
    picture = draw_for_page(told, "placed pocket", Style())
    assert "its top edge 3 1/2 in from the top cut edge" in picture.alt
    (shape,) = (one for one in shapes_of(told, form_of(told)) if one.lying and one.lying.piece == "pocket")
    assert shape.lying is not None
    assert (shape.lying.left, shape.lying.top, shape.lying.across, shape.lying.along) == (2, 3, 5, 6)


OWN = """
steps:
  - use: as usual
  - title: Sew on the pocket
    does: sew pocket on back
    on: pocket, back
    text: Pin it {{ pocket.from top }} below the top cut edge.
  - use: as usual
"""


def test_an_own_step_has_the_picture_and_may_ask_for_the_distances(tmp_path: Path) -> None:
    told = sheet(tmp_path, APRON + OWN)
    (step,) = (step for step in told.steps if step.title == "Sew on the pocket")
    assert step.text == "Pin it 3 1/2 in below the top cut edge."
    assert "placed pocket" in step.figures
    assert not [step for step in told.steps if step.standard == "sew on"]
    wrong = sheet(tmp_path, APRON + OWN.replace("sew pocket on back", "sew pocket on front"))
    told_wrong = [one.text for one in wrong.findings if one.level == "error"]
    assert "'pocket' is sewn on 'back' as its own line says, and here on 'front'; change one of the two" in told_wrong


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("back, 11 in or 28 cm from the top", "does not lie on 'back'"),
        ("back, 3 in or 8 cm from the top, 2 in or 5 cm from the bottom", "one distance from the bottom or the top"),
        ("back, 3 in or 8 cm", "'3 in or 8 cm' says no distance from an edge; write for example"),
        ("bag, 3 in or 8 cm from the top", "there is no piece 'bag'"),
        ("pocket", "is worked out from itself"),
        ("back, 8,5 cm from the top", "says no distance from an edge"),
    ],
)
def test_a_place_that_cannot_be_is_refused_in_its_words(tmp_path: Path, line: str, said: str) -> None:
    try:
        found = sheet(tmp_path, APRON.replace(LINE, line)).findings
    except FaultyFileError as error:
        found = tuple(error.findings)
    errors = [one for one in found if one.level == "error"]
    assert any(said in one.text for one in errors), errors
    assert all(one.place is not None for one in errors)

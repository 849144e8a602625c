"""What a short project file leaves out: it is completed from its sizes and its panel, and every completion is told."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml
from test_schema_and_starter import SCHEMA, refusals

from generator.calculation.worksheet.sheet import worked_sheet
from generator.definitions.project import Project, load_project
from generator.errors import FaultyFileError
from tests.making_up.demo_recipes import room

# Sixteen lines: nothing in them can be derived from the others.
CUSHION = """\
title: Slip cushion
kind: cushion
sizes:
  small:
    side: 12 in or 30 cm
cloths:
  plain cotton: 44 in or 112 cm
pieces:
  front:
    kind: tucked panel
    tucks:
      depth: 3/8 in or 1 cm
      spacing: 1 1/2 in or 4 cm
    rows: ripples
  back:
    kind: envelope back
"""
# The same with everything said.
WHOLE = """\
title: Slip cushion
kind: cushion
summary: A cushion with a tucked front and a lapped back.
cautions: pillows near babies
sizes:
  small:
    side: 12 in or 30 cm
cloths:
  plain cotton:
    label: plain cotton
    width: 44 in or 112 cm
pieces:
  front:
    kind: tucked panel
    finished across: side
    finished along: side
    tucks:
      depth: 3/8 in or 1 cm
      spacing: 1 1/2 in or 4 cm
    rows:
      plan: ripples
      spacing: 3 in or 8 cm
  back:
    kind: envelope back
    cut: after the panel
    finished across: front.across
    finished along: front.along
    overlap: larger(front.across / 4, 3 in) or larger(front.across / 4, 8 cm)
    hem: 1 in or 2.5 cm
edges that meet:
  - join: front.all
    to: back.all
supplies:
  - item: |
      Cushion pad, {{ front.across + 1 in or front.across + 2 cm }} by {{ front.along + 1 in or front.along + 2 cm }}
    note: A pad a little larger than the cover keeps the corners full.
"""
FRILL = """\
  frill:
    kind: gathered strip
    drop: 2 in or 5 cm
"""


def loaded(folder: Path, text: str) -> Project:
    path = folder / "slip-cushion.yaml"
    path.write_text(text, encoding="utf-8")
    return load_project(path, room().room, folder)


@pytest.mark.parametrize("edition", ["inch", "metric"])
def test_a_cushion_of_sixteen_lines_is_the_cushion_with_everything_said(tmp_path: Path, edition: str) -> None:
    assert len(CUSHION.splitlines()) == 16
    short, whole = (
        worked_sheet(loaded(tmp_path, text), "small", room().room.edition(edition), room()) for text in (CUSHION, WHOLE)
    )
    assert [(step.title, step.text, step.minutes) for step in short.steps] == [
        (step.title, step.text, step.minutes) for step in whole.steps
    ]
    assert [(name, piece.cut_across, piece.cut_along) for name, piece in short.pieces.items()] == [
        (name, piece.cut_across, piece.cut_along) for name, piece in whole.pieces.items()
    ]
    assert (short.summary, short.supplies, short.told_first) == (whole.summary, whole.supplies, whole.told_first)
    assert [one.standard for one in short.steps][-3:] == ["neaten", "turn out", "fill"]


def test_every_completion_is_told_as_the_lines_that_it_stands_for(tmp_path: Path) -> None:
    notes = {
        one.place.line: one.text for one in loaded(tmp_path, CUSHION).findings if one.level == "note" and one.place
    }
    led = "so it is taken as if it said:"
    across, along = (f"{{{{ front.{way} + 1 in or front.{way} + 2 cm }}}}" for way in ("across", "along"))
    lap = "larger(front.across / 4, 3 in) or larger(front.across / 4, 8 cm)"
    assert {line: text.splitlines() for line, text in notes.items()} == {
        1: [
            f"left out, {led}",
            "summary: A cushion with a tucked front and a lapped back.",
            "cautions: pillows near babies",
            "supplies:",
            f"  - item: Cushion pad, {across} by {along}",
            "    note: A pad a little larger than the cover keeps the corners full.",
            "edges that meet:",
            "  - join: front.all",
            "    to: back.all",
        ],
        9: [
            f"left out of 'front', {led}",
            "finished across: side",
            "finished along: side",
            "rows:",
            "  plan: ripples",
            "  spacing: 3 in or 8 cm",
        ],
        15: [
            f"left out of 'back', {led}",
            "finished across: front.across",
            "finished along: front.along",
            "cut: after the panel",
            f"overlap: {lap}",
            "hem: 1 in or 2.5 cm",
        ],
    }


def test_a_frill_goes_round_the_panel_and_is_caught_by_the_back(tmp_path: Path) -> None:
    # A back in halves would lie with its hems where the gathers meet a tuck: ten layers, and nine go under the foot.
    text = CUSHION.replace("envelope back", "rectangle") + FRILL
    assert len(text.splitlines()) == 19
    project = loaded(tmp_path, text)
    met = [(one.join.text, one.to.text) for one in project.edges_that_meet]
    assert met == [("frill.left", "frill.right"), ("front.all", "frill.top"), ("front.all", "back.all")]
    sheet = worked_sheet(project, "small", room().room.edition("inch"), room())
    # Twelve inches on each of four sides, once and a half as long.
    assert sheet.pieces["frill"].finished_across == 72
    assert [one.level for one in sheet.findings if one.level == "error"] == []
    order = [one.standard for one in sheet.steps]
    assert order.index("hem") < order.index("gather") < order.index("line and turn") < order.index("fill")
    assert str(sheet.summary) == "A cushion with a tucked front, a plain back and a gathered frill."


def test_a_boxing_and_a_piping_go_between_the_panel_and_its_back(tmp_path: Path) -> None:
    text = CUSHION.replace("envelope back", "rectangle") + (
        "  band:\n    kind: boxing\n    depth: 2 in or 5 cm\n"
        "  piping:\n    kind: piping\n    grain: bias\n    cord: 1/4 in or 6 mm\n"
    )
    met = [(one.join.text, one.to.text) for one in loaded(tmp_path, text).edges_that_meet]
    assert met == [("front.all", "piping.edge"), ("front.all", "band.edge"), ("back.all", "band.edge")]


def test_what_is_said_is_never_changed(tmp_path: Path) -> None:
    said = CUSHION.replace(
        "    kind: envelope back\n", "    kind: envelope back\n    finished along: side\n    hem: 1 in\n"
    )
    project = loaded(tmp_path, said + "edges that meet:\n  - join: front.top\n    to: back.top\n")
    assert [(one.join.text, one.to.text) for one in project.edges_that_meet] == [("front.top", "back.top")]
    back = project.pieces["back"]
    assert (back.finished_along.text, back.hem.text, back.cut) == ("side", "1 in", "after the panel")  # type: ignore[union-attr]


def test_a_panel_has_the_first_two_lengths_of_its_sizes(tmp_path: Path) -> None:
    two = CUSHION.replace(
        "    side: 12 in or 30 cm\n",
        "    label: The small one\n    places: 4\n    wide: 12 in or 30 cm\n    high: 9 in or 22 cm\n",
    )
    front = loaded(tmp_path, two).pieces["front"]
    assert (front.finished_across.text, front.finished_along.text) == ("wide", "high")  # type: ignore[union-attr]


def test_where_nothing_tells_a_size_it_is_asked_for(tmp_path: Path) -> None:
    alone = CUSHION.replace("    kind: tucked panel\n", "    kind: rectangle\n").replace(
        "    tucks:\n      depth: 3/8 in or 1 cm\n      spacing: 1 1/2 in or 4 cm\n    rows: ripples\n", ""
    )
    with pytest.raises(FaultyFileError) as refused:
        loaded(tmp_path, alone)
    assert {one.text for one in refused.value.findings} >= {
        "'finished across' is missing here",
        "'finished along' is missing here",
    }


@pytest.mark.parametrize("text", [CUSHION, CUSHION + FRILL])
def test_an_editor_that_has_the_schema_takes_a_short_file(text: str) -> None:
    assert refusals(yaml.safe_load(text), SCHEMA) == []


@pytest.mark.parametrize("name", ["back!", "a.b", "back and front", "12", "in", "12 in"])
@pytest.mark.parametrize("where", ["  front:", "  back:", "    side:"])
def test_a_faulty_name_is_told_where_it_stands_and_nowhere_else(tmp_path: Path, where: str, name: str) -> None:
    # What goes with a piece or a length of that name is put in by the tool, so nobody has written it there.
    lines = CUSHION.splitlines()
    number = next(place for place, line in enumerate(lines) if line.startswith(where))
    lines[number] = lines[number].replace(where.strip(" :"), name)
    with pytest.raises(FaultyFileError) as error:
        loaded(tmp_path, "\n".join(lines))
    told = [(one.place.line, one.text.partition(";")[0]) for one in error.value.findings if one.place]
    assert len(told) == 1, told
    assert told[0][0] == number + 1
    assert "name" in told[0][1]


@pytest.mark.parametrize(
    ("width", "said"),
    [
        ("44", "a length is wanted here, this is a plain number; write its unit, as in 1/2 in or 1 cm"),
        ("navy", "a group of keys is wanted here, each on its own line"),
    ],
)
def test_a_cloth_that_is_told_by_a_number_without_a_unit_is_asked_for_it(tmp_path: Path, width: str, said: str) -> None:
    with pytest.raises(FaultyFileError) as error:
        loaded(tmp_path, CUSHION.replace("44 in or 112 cm", width))
    assert [(one.place.line, one.place.column, one.text) for one in error.value.findings if one.place] == [
        (7, 17, said)
    ]

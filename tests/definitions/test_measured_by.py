from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from generator.calculation.worked_project import DecidingMeasure
from generator.errors import FaultyFileError
from tests.room import OpenedRoom, opened_room, put, write_room

CLOTH = """\
title: Tray cloth
kind: mats
summary: One hemmed square of cloth.
sizes:
  cup:
    number of cups: 1
    side: 8 in or 20 cm
  pot:
    number of cups: 6
    side: 12 in or 30 cm
measures:
  tray: side - 1 in or side - 2 cm
cloths:
  face:
    label: linen
    width: 36 in or 90 cm
pieces:
  field:
    kind: rectangle
    finished across: side
    finished along: side
    edges:
      all: hem 1/4 in or 5 mm
steps:
  - use: cut, hem
"""
SAID = """\
measured by:
  shown: tray
  how: from rim to rim
measures:
"""


def room(folder: Path, text: str) -> OpenedRoom:
    return opened_room(write_room(folder, {"site/site.yaml": "room:\n  name: The Loft\n", "projects/tray.yaml": text}))


def deciding(folder: Path, text: str) -> list[DecidingMeasure | None]:
    return [sheet.deciding for sheet in room(folder, text).worksheets("tray") if sheet.edition.name == "inch"]


def test_without_a_word_the_first_length_of_a_size_decides_not_a_plain_number(tmp_path: Path) -> None:
    assert deciding(tmp_path, CLOTH) == [DecidingMeasure("side", Fraction(8)), DecidingMeasure("side", Fraction(12))]


def test_a_project_says_by_which_measure_its_sizes_are_chosen_and_how_it_is_taken(tmp_path: Path) -> None:
    found = deciding(tmp_path, put(CLOTH, ("measures:\n", SAID)))
    assert found == [
        DecidingMeasure("tray", Fraction(7), "from rim to rim"),
        DecidingMeasure("tray", Fraction(11), "from rim to rim"),
    ]


def test_what_it_is_called_may_be_said_and_it_may_be_a_formula_of_its_own(tmp_path: Path) -> None:
    said = SAID.replace("shown: tray", "shown: 2 * tray\n  called: way round half of it")
    (cup, _) = deciding(tmp_path, put(CLOTH, ("measures:\n", said)))
    assert cup == DecidingMeasure("way round half of it", Fraction(14), "from rim to rim")


@pytest.mark.parametrize(
    ("said", "told"),
    [
        (SAID.replace("shown: tray", "shown: try"), "there is no measure 'try'"),
        (SAID.replace("  shown: tray\n", ""), "'shown' is missing"),
        (SAID.replace("shown: tray", "shown: 3"), "a length is wanted here"),
        (SAID.replace("how:", "howe:"), "'howe'"),
    ],
)
def test_what_cannot_decide_is_refused_with_its_line(said: str, told: str, tmp_path: Path) -> None:
    with pytest.raises(FaultyFileError) as refused:
        room(tmp_path, put(CLOTH, ("measures:\n", said))).worksheets("tray")
    assert any(told in str(finding) and "tray.yaml:" in str(finding) for finding in refused.value.findings)

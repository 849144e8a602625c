"""Sizes from a table of body measures: its rows are the sizes, its source is told, its faults stand at its lines."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from generator.calculation.worked_project import Worksheet
from generator.definitions.own_size import own_size
from generator.definitions.project import Project, load_project
from generator.errors import FaultyFileError
from generator.lengths import CENTIMETRE, EDITIONS, INCH, METRIC
from tests.room import opened_room, put, run, write_room

TABLE = """\
title: Sailors of the harbour school
source: Invented, to try the tool.
taken:
  chest: round the fullest part, the tape level
sizes:
  named: 3 to 4, 5 to 6, 7 to 8
  chest: 22 in, 24 in, 26 in or 56 cm, 61 cm, 66 cm
  height: 40 in, 45 in, 50 in or 102 cm, 114 cm, 127 cm
  head: 20 in by 1/2 in or 51 cm by 1 cm
"""
APRON = """\
title: Deck apron
kind: garment
summary: One hemmed rectangle, tied behind.
sizes from: sailors
measures:
  ease: 4 in or 10 cm
  wide: (chest + ease) / 2
cloths:
  face:
    label: cotton
    width: 44 in or 112 cm
pieces:
  front:
    kind: rectangle
    finished across: wide
    finished along: height / 2
    edges: hem 1/2 in or 1.5 cm
steps:
  - use: cut, hem
"""
LINE = 1 + APRON[: APRON.index("sizes from")].count("\n")


def room(folder: Path, apron: str = APRON, table: str = TABLE) -> Path:
    site = "room:\n  name: Loft\n"
    files = {"projects/apron.yaml": apron, "site/body/sailors.yaml": table, "site/site.yaml": site}
    return write_room(folder, files)


def read(folder: Path, apron: str = APRON, table: str = TABLE) -> Project:
    return load_project(room(folder, apron, table) / "projects" / "apron.yaml", root=folder)


def sheet(folder: Path, size: str, edition: str) -> Worksheet:
    return opened_room(room(folder)).worksheet("apron", size, edition)


def refused(folder: Path, apron: str = APRON, table: str = TABLE) -> list[str]:
    with pytest.raises(FaultyFileError) as fault:
        read(folder, apron, table)
    return [str(finding) for finding in fault.value.findings]


def test_formulas_go_over_the_row_of_a_size(tmp_path: Path) -> None:
    """Chest 24 and ease 4: (24 + 4) / 2 = 14 wide, 45 / 2 = 22 1/2 long; 61 + 10 = 71, half of it 35.5 cm; 57 long.

    Cut with hems of 1/2 in turned twice: 14 + 2 = 16; 22 1/2 + 2 = 24 1/2; with 1.5 cm: 35.5 + 6 = 41.5; 57 + 6 = 63.
    """
    inch = sheet(tmp_path, "5 to 6", "inch").pieces["front"]
    assert (inch.finished_across, inch.finished_along) == (14, Fraction(45, 2))
    assert (inch.cut_across, inch.cut_along) == (16, Fraction(49, 2))
    metric = sheet(tmp_path, "5 to 6", "metric").pieces["front"]
    assert (metric.cut_across / CENTIMETRE, metric.cut_along / CENTIMETRE) == (Fraction(83, 2), 63)


def test_the_first_column_decides_and_is_taken_as_the_table_says_and_the_source_is_told(tmp_path: Path) -> None:
    told = sheet(tmp_path, "7 to 8", "inch")
    assert told.deciding is not None
    assert (told.deciding.name, told.deciding.length) == ("chest", 26)
    assert told.deciding.how == "round the fullest part, the tape level"
    assert told.size_source == (
        "Sailors of the harbour school: Invented, to try the tool. Between two sizes take the larger."
    )
    assert told.own == ("chest", "height", "head")


def test_a_project_may_take_some_rows_and_columns_and_say_more_of_a_size(tmp_path: Path) -> None:
    some = """\
sizes from:
  table: sailors
  sizes: 5 to 6, 7 to 8
  measures: height, chest
sizes:
  7 to 8:
    note: Let the hem down.
    height: 51 in or 130 cm
"""
    project = read(tmp_path, put(APRON, ("sizes from: sailors\n", some)))
    assert list(project.sizes) == ["5 to 6", "7 to 8"]
    assert [list(size.values) for size in project.sizes.values()] == [["chest", "height"]] * 2
    assert project.sizes["7 to 8"].note == "Let the hem down."
    assert [size.values["height"].fixed(INCH) for size in project.sizes.values()] == [45, 51]
    assert project.sizes["7 to 8"].values["height"].fixed(METRIC) == 130 * CENTIMETRE


def test_what_a_project_says_of_its_deciding_measure_itself_stands(tmp_path: Path) -> None:
    own = "measured by:\n  shown: chest + ease\n  called: garment\n  how: over the vest\nsizes from: sailors\n"
    said = read(tmp_path, put(APRON, ("sizes from: sailors\n", own))).measured_by
    assert said is not None
    assert (said.called, said.how) == ("garment", "over the vest")
    shown = "measured by:\n  shown: chest\nsizes from: sailors\n"
    said = read(tmp_path, put(APRON, ("sizes from: sailors\n", shown))).measured_by
    assert said is not None
    assert said.how == "round the fullest part, the tape level"


def test_a_size_of_ones_own_is_no_row_and_tells_no_source(tmp_path: Path) -> None:
    words = ("figures", "apron", "--with", "chest=23", "--with", "height=42", "--with", "head=20", "--edition", "inch")
    answer = run(room(tmp_path), *words, "--json")
    assert answer.code == 0, answer.said
    assert '"wide": "13 1/2"' in answer.out
    assert "larger" not in answer.out


def test_the_deciding_measure_finds_the_others_between_two_rows_and_none_beyond(tmp_path: Path) -> None:
    """Chest 23 is half way from 22 to 24 in: height 40 + 5/2 = 42 1/2, head 20 + 1/4 in; 60 cm is 4/5 of 56 to 61.

    102 + 12 x 4/5 = 111.6 cm, to the nearest 5 mm 111.5; 51 + 4/5 = 51.8, so 52. What is given itself stands.
    """
    project = read(tmp_path)
    assert own_size(project.sizes, {"chest": "23"}, INCH).label == "height 42 1/2 in, head 20 1/4 in, chest 23 in"
    metric = own_size(project.sizes, {"chest": "60"}, METRIC)
    assert {name: value.fixed(METRIC) / CENTIMETRE for name, value in metric.values.items()} == {
        "chest": 60,
        "height": Fraction(223, 2),
        "head": 52,
    }
    own = own_size(project.sizes, {"chest": "23", "head": "21"}, INCH)
    assert [own.values[name].fixed(INCH) for name in ("chest", "height", "head")] == [23, Fraction(85, 2), 21]
    row = own_size(project.sizes, {"chest": "26"}, INCH)
    assert row.values["height"].fixed(INCH) == 50
    for beyond in ("21", "27"):
        with pytest.raises(FaultyFileError, match="'height' is missing"):
            own_size(project.sizes, {"chest": beyond}, INCH)


@pytest.mark.parametrize(
    ("apron", "table", "told"),
    [
        (
            ("sizes from: sailors", "sizes from: sailers"),
            ("", ""),
            f"projects/apron.yaml:{LINE}:13: 'sizes from: NAME' reads site/body/NAME.yaml, and there is no 'sailers'; "
            "did you mean 'sailors'?",
        ),
        (
            ("sizes from: sailors", "sizes from: ../../sailors"),
            ("", ""),
            f"projects/apron.yaml:{LINE}:13: 'sizes from: NAME' reads site/body/NAME.yaml, and there is no "
            "'../../sailors'; did you mean 'sailors'?",
        ),
        (
            ("sizes from: sailors", "sizes from:\n  table: sailors\n  sizes: 3 to 5"),
            ("", ""),
            f"projects/apron.yaml:{LINE + 1}:3: the table 'sailors' has no size '3 to 5'; did you mean '3 to 4'?",
        ),
        (
            ("sizes from: sailors", "sizes from:\n  table: sailors\n  measures: chest, hight"),
            ("", ""),
            f"projects/apron.yaml:{LINE + 1}:3: the table 'sailors' has no measure 'hight'; did you mean 'height'?",
        ),
        (
            ("measures:", "sizes:\n  9 to 10:\n    note: More.\nmeasures:"),
            ("", ""),
            f"projects/apron.yaml:{LINE + 2}:3: the table has no size '9 to 10'; there is: 3 to 4, 5 to 6, 7 to 8",
        ),
        (
            ("", ""),
            ("source: Invented, to try the tool.\n", ""),
            "site/body/sailors.yaml:1:1: 'source' is missing here",
        ),
        (
            ("", ""),
            ("chest: 22 in, 24 in, 26 in", "chest: 22 in, 24 in"),
            "site/body/sailors.yaml:7:17: 2 values for 3 sizes; write one for each, or one that holds for all",
        ),
        (
            ("", ""),
            ("chest: 22 in, 24 in, 26 in or 56 cm, 61 cm, 66 cm", "chest: 22 in, 28 in, 26 in or 56 cm, 71 cm, 66 cm"),
            "site/body/sailors.yaml:7:10: from size '5 to 6' to '7 to 8' 'chest' becomes less; the sizes of a series "
            "stand in order, the smallest first",
        ),
        (
            ("", ""),
            ("title: Sailors", "titel: Sailors"),
            "site/body/sailors.yaml:1:1: unknown key 'titel'; did you mean 'title'?",
        ),
    ],
)
def test_a_slip_is_told_once_at_its_place_in_the_project_or_the_table(
    tmp_path: Path, apron: tuple[str, str], table: tuple[str, str], told: str
) -> None:
    assert refused(tmp_path, put(APRON, apron), put(TABLE, table)) == [told]


def test_a_table_that_leads_out_of_the_room_is_refused(tmp_path: Path) -> None:
    outside = write_room(tmp_path / "elsewhere", {"sailors.yaml": TABLE})
    inside = room(tmp_path / "room")
    (inside / "site/body/sailors.yaml").unlink()
    (inside / "site/body/sailors.yaml").symlink_to(outside / "sailors.yaml")
    with pytest.raises(FaultyFileError, match="a link that leads out of the room"):
        load_project(inside / "projects" / "apron.yaml", root=inside)


def test_one_edition_of_a_row_follows_the_rule_of_every_length(tmp_path: Path) -> None:
    """A finished size goes to whole centimetres: 22, 24 and 26 in are 56, 61 and 66 cm (55.88, 60.96, 66.04)."""
    project = read(tmp_path, table=put(TABLE, (" or 56 cm, 61 cm, 66 cm", "")))
    chests = [size.values["chest"].fixed(EDITIONS["metric"]) / CENTIMETRE for size in project.sizes.values()]
    assert chests == [56, 61, 66]

"""What is printed to be measured lies on the finest mark of the room's ruler, on every sheet of the demo room."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, put, sheet, warnings

from generator.calculation.worked_project import Worksheet
from generator.lengths import INCH, METRIC, UNITS, Edition
from generator.rendering.tables import key_numbers
from tests.room import demo_room

PROJECTS = sorted(path.stem for path in (demo_room().folder / "projects").glob("*.yaml"))
LENGTH = re.compile(r"(?<![\w.])(?:(\d+) )?(\d+)/(\d+)(?: (in|cm|mm))?\b|(?<![\w./])(\d+(?:\.\d+)?)(?: (in|cm|mm))\b")


def printed(worksheet: Worksheet) -> Iterator[str]:
    """Every text of a sheet that tells lengths to be measured."""
    yield from (step.text for step in worksheet.steps)
    yield from (closure.text for closure in worksheet.closures)
    yield from (line.amount for line in worksheet.notions)
    yield from (finding.text for finding in worksheet.findings)
    for panel in worksheet.panels.values():
        yield from (one.text for one in (*panel.checks.corrections, *panel.cross_checks.corrections))
        yield from (re.sub("<[^>]*>", "", str(value)) for _, value in key_numbers(panel, worksheet.edition))


def told(text: str, edition: Edition) -> Iterator[tuple[str, Fraction]]:
    """Every length in a text [in]; a bare fraction is one of an edition in inches."""
    for found in LENGTH.finditer(text):
        whole, over, under, unit, plain, plain_unit = found.groups()
        value = Fraction(plain) if plain else int(whole or 0) + Fraction(int(over), int(under))
        yield found[0], value * UNITS[plain_unit or unit or edition.unit]


@pytest.mark.parametrize("name", PROJECTS)
def test_no_length_on_a_sheet_is_finer_than_the_ruler(name: str) -> None:
    lengths = 0
    for worksheet in demo_room().worksheets(name):
        mark = worksheet.edition.mark
        for text in printed(worksheet):
            # A stitch is set on the machine, not measured.
            for words, length in told(re.sub(r"stitch of [\d./ to]+(?:mm|in)", "", text), worksheet.edition):
                assert (length / mark).denominator == 1, f"{worksheet.size}: '{words}' in: {text}"
                lengths += 1
    assert lengths > 100


def test_a_length_between_two_marks_would_be_found() -> None:
    for text in ("up to 1/32 in at either end", "1 3/32", "0.25 cm", "0.5 mm"):
        edition = METRIC if "m" in text.rpartition(" ")[2] else INCH
        assert any((length / edition.mark).denominator != 1 for _, length in told(text, edition))


def test_a_finish_that_the_ruler_does_not_show_is_told(tmp_path: Path) -> None:
    text = put(CUSHION, ("all: seam 1/2 in or 1.5 cm", "all: seam 7/32 in or 1.5 cm"))
    assert [one for one in warnings(sheet(tmp_path, text, "medium")) if "between two marks" in one] == [
        "projects/jetty.yaml:32:17: warning: a seam of 7/32 in lies between two marks of the room's ruler, so sheets "
        "say 1/4 in; write a width that the ruler shows, or give the ruler finer marks in site.yaml (size medium, inch)"
    ]


@pytest.mark.parametrize(("finest", "depth"), [("1/3 in", "1/3 in"), ("1/10 in", "3/10 in")])
def test_a_depth_may_be_any_that_the_ruler_shows(tmp_path: Path, finest: str, depth: str) -> None:
    text = put(CUSHION, ("depth: 3/8 in", f"depth: {depth}"), ("margin: 3/4 in to 1 1/2 in", "margin: 1 in to 3 in"))
    text = text.replace("seam 1/2 in", "seam 1 in")
    site = f"rulers:\n  inch:\n    marks: 1 in\n    finest: {finest}\n"
    tucks = sheet(tmp_path, text, "medium", site=site).panels["front"].across
    mark = Fraction(1, 3) if finest == "1/3 in" else Fraction(1, 10)
    assert all((place / mark).denominator == 1 for place in (*tucks.marks, *tucks.depths, tucks.cut))


def test_the_division_that_a_sheet_names_holds_the_rows_too(tmp_path: Path) -> None:
    # Marks 1 3/4, 3 1/4 ... lie on quarters. The first row is ruled where the length leaves it.
    worksheet = sheet(tmp_path, CUSHION, "medium")
    panel = worksheet.panels["front"]
    assert panel.rows is not None
    assert panel.across.grid == Fraction(1, 4)
    places = [*panel.across.marks, *(row.ruled for row in panel.rows.rows)]
    assert all((place / panel.division).denominator == 1 for place in places)
    coarser = [grid for grid in worksheet.edition.grids if grid > panel.division]
    assert all(any((place / grid).denominator != 1 for place in places) for grid in coarser)
    assert panel.division < panel.across.grid

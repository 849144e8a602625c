"""Thread in colours by the work: what each takes, what is bought, and which step tells it."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, WRAP, put, sheet

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.figures import figures
from generator.definitions.technique_names import step_names
from generator.definitions.thread_work import THREAD_WORK
from generator.errors import FaultyFileError
from tests.room import run, write_room

COLOURS = "thread:\n  tucks: rust\n  rows: rust\n  topstitching: navy\nsteps:\n"
COLOURED = put(CUSHION, ("steps:\n", COLOURS))


def lengths(worksheet: Worksheet) -> dict[str, Fraction]:
    return {one.name: one.length for one in worksheet.thread.colours}


def test_each_colour_has_the_thread_of_its_work(tmp_path: Path) -> None:
    """Medium: 20 tucks of 18 1/4 in are 365, six rows of 16 are 96; the back's two hems are 34 in.

    A lockstitch takes 2 1/2 times that, ends and waste a fifth more: (365 + 96) x 5/2 x 6/5 = 1383 in, 34 x 3 = 102.
    1383 in are 38 5/12 yd, so 39; 102 are 2 5/6, so 3; each on a spool of its own.
    """
    told = sheet(tmp_path, COLOURED, "medium").thread
    rust, rest, navy = told.colours
    assert (rust.name, rust.work, rust.length) == ("rust", "tucks and rows", 1383)
    assert (rust.length_text, rust.spools) == ("39 yd", 1)
    assert (navy.name, navy.work, navy.length, navy.length_text) == ("navy", "topstitching", 102, "3 yd")
    assert (rest.name, rest.work) == ("to match the cloth", "seams and neatening")
    assert told.spools == 3


def test_colours_take_together_what_one_thread_takes(tmp_path: Path) -> None:
    """Second route: the same cushion sewn in one colour, in every size and edition."""
    for size in ("small", "medium"):
        for edition in ("inch", "metric"):
            one = sheet(tmp_path, CUSHION, size, edition).thread
            many = sheet(tmp_path, COLOURED, size, edition).thread
            assert one.colours == ()
            assert sum(one.length for one in many.colours) == many.length == one.length


def test_the_step_tells_its_thread(tmp_path: Path) -> None:
    steps = {step.standard: step for step in sheet(tmp_path, COLOURED, "medium").steps if step.standard}
    assert steps["stitch tucks"].text.startswith("Thread: rust.\n\n")
    assert steps["stitch tucks"].printed.startswith("Thread: rust.\n\n")
    assert steps["sew rows"].text.startswith("Thread: rust.\n\n")
    assert steps["envelope back"].text.startswith("Thread: navy.\n\n")
    assert "Thread:" not in steps["cut"].text + steps["crease"].text + steps["trim"].text
    assert not any("Thread:" in step.text for step in sheet(tmp_path, CUSHION, "medium").steps)


def test_the_rest_has_the_colour_that_it_is_given(tmp_path: Path) -> None:
    told = put(COLOURED, ("  tucks: rust\n", "  tucks: rust\n  rest: oatmeal\n"))
    assert set(lengths(sheet(tmp_path, told, "medium"))) == {"rust", "navy", "oatmeal"}


def test_buttonholes_take_a_yard_each_where_they_have_a_colour_of_their_own(tmp_path: Path) -> None:
    """Common practice, no source: a yard of thread each, and a fifth more; without a colour they are not counted."""
    plain = sheet(tmp_path, WRAP, "neck")
    number = sum(one.number for one in plain.closures if one.kind == "buttons")
    told = put(WRAP, ("steps:\n", "thread:\n  buttonholes: gold\nsteps:\n"))
    assert number > 0
    assert lengths(sheet(tmp_path, told, "neck"))["gold"] == number * 36 * Fraction(6, 5)


def test_lists_and_figures_tell_every_colour(tmp_path: Path) -> None:
    worksheet = sheet(tmp_path, COLOURED, "medium")
    assert figures(worksheet)["thread"]["colours"][0] == {
        "colour": "rust",
        "for": "tucks and rows",
        "length": "39 yd",
        "spools": 1,
    }
    assert "colours" not in figures(sheet(tmp_path, CUSHION, "medium"))["thread"]
    room = write_room(tmp_path / "room", {"projects/jetty.yaml": COLOURED})
    said = run(room, "figures", "jetty", "medium", "--edition", "inch").out
    assert "Thread, rust, for tucks and rows  39 yd, spools: 1" in said
    assert "Thread, navy, for topstitching  3 yd, spools: 1" in said


def test_work_that_there_is_not_is_refused_at_its_place(tmp_path: Path) -> None:
    told = put(COLOURED, ("  rows: rust", "  row: rust"))
    with pytest.raises(FaultyFileError, match=r"unknown key 'row'; did you mean 'rows'\?"):
        sheet(tmp_path, told, "medium")


def test_every_step_of_a_work_is_a_standard_step_and_of_one_work_only() -> None:
    named = [step for steps in THREAD_WORK.values() for step in steps]
    assert set(named) <= step_names(None)
    assert len(named) == len(set(named))

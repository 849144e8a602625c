"""Sizes given as a series or as a table: they are those that a person would have written one by one."""

from __future__ import annotations

import json
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from generator.calculation.worksheet.figures import figures
from generator.calculation.worksheet.sheet import load_room_context, worked_sheet
from generator.definitions.project import Project, load_project
from generator.definitions.room import Room, load_room
from generator.errors import FaultyFileError
from generator.lengths import EDITIONS, INCH, METRIC
from tests.room import ROOT, put

SOUND = (Path(__file__).parent / "trap-cushion.yaml").read_text(encoding="utf-8")
ONE_BY_ONE = SOUND[SOUND.index("sizes:\n") : SOUND.index("measures:\n")]
SERIES = """\
sizes:
  named: small, medium, large
  side: 12 in by 2 in or 30 cm by 5 cm
"""
LINE = 1 + SOUND[: SOUND.index("sizes:")].count("\n")


def read(folder: Path, sizes: str, room: Room | None = None) -> Project:
    path = folder / "cushion.yaml"
    path.write_text(put(SOUND, (ONE_BY_ONE, sizes)), encoding="utf-8")
    return load_project(path, room, folder)


def values(project: Project, name: str, edition: str) -> list[Fraction]:
    unit = EDITIONS[edition].unit_length
    return [size.values[name].fixed(EDITIONS[edition]) / unit for size in project.sizes.values()]


def refused(folder: Path, sizes: str, room: Room | None = None) -> list[str]:
    with pytest.raises(FaultyFileError) as fault:
        read(folder, sizes, room)
    return [str(finding).removeprefix("cushion.yaml:") for finding in fault.value.findings]


def test_a_base_and_a_step_give_every_size(tmp_path: Path) -> None:
    """12, 12 + 2, 12 + 4 in; 30, 30 + 5, 30 + 10 cm."""
    project = read(tmp_path, SERIES)
    assert list(project.sizes) == ["small", "medium", "large"]
    assert values(project, "side", "inch") == [12, 14, 16]
    assert values(project, "side", "metric") == [30, 35, 40]


def test_a_table_has_a_value_for_each_size_one_for_all_or_a_first_a_last_and_a_step(tmp_path: Path) -> None:
    table = f"""\
{SERIES}  height: 8 in, 8 1/2 in, 10 in or 20 cm, 21 cm, 25 cm
  hem: 1 in or 2.5 cm
  places: 2, 4, 4
  length: 24 in to 30 in by 3 in or 60 cm to 75 cm by 7.5 cm
  step: 0 by 1
"""
    project = read(tmp_path, table)
    assert values(project, "height", "inch") == [8, Fraction(17, 2), 10]
    assert values(project, "height", "metric") == [20, 21, 25]
    assert values(project, "hem", "inch") == [1, 1, 1]
    assert values(project, "length", "inch") == [24, 27, 30]
    assert values(project, "length", "metric") == [60, Fraction(135, 2), 75]
    assert [size.values["places"].fixed(INCH) for size in project.sizes.values()] == [2, 4, 4]
    assert [size.values["step"].fixed(METRIC) for size in project.sizes.values()] == [0, 1, 2]


def test_a_size_of_a_series_says_more_of_itself_below_its_name(tmp_path: Path) -> None:
    own = f"""\
{SERIES}  Medium:
    label: Sofa
    note: The usual one.
    sewn: 2031-03-08
    side: 13 in or 33 cm
"""
    project = read(tmp_path, own.replace("Medium", "medium"))
    assert values(project, "side", "inch") == [12, 13, 16]
    assert values(project, "side", "metric") == [30, 33, 40]
    assert (project.sizes["medium"].label, project.sizes["medium"].note) == ("Sofa", "The usual one.")
    assert str(project.sizes["medium"].sewn) == "2031-03-08"
    assert project.sizes["small"].label == "small"


def test_names_may_be_ages_a_list_or_numbers_by_a_step(tmp_path: Path) -> None:
    ages = put(SERIES, ("small, medium, large", "2 to 3, 4 to 5, 6 to 7"))
    assert list(read(tmp_path, ages).sizes) == ["2 to 3", "4 to 5", "6 to 7"]
    listed = put(SERIES, (" small, medium, large", "\n    - small\n    - large"))
    assert list(read(tmp_path, listed).sizes) == ["small", "large"]
    numbered = put(SERIES, ("small, medium, large", "2 to 14 by 2"))
    assert list(read(tmp_path, numbered).sizes) == ["2", "4", "6", "8", "10", "12", "14"]


def test_one_ruler_is_enough_and_the_other_edition_takes_what_is_found_there(tmp_path: Path) -> None:
    """A finished size goes to whole centimetres: 30.48, 35.56 and 40.64 cm are 30, 36 and 41, written out or not."""
    series = read(tmp_path, put(SERIES, (" or 30 cm by 5 cm", "")))
    written = read(
        tmp_path, "sizes:\n  small:\n    side: 12 in\n  medium:\n    side: 14 in\n  large:\n    side: 16 in\n"
    )
    assert values(series, "side", "metric") == values(written, "side", "metric") == [30, 36, 41]


def test_every_sheet_is_that_of_sizes_written_one_by_one(tmp_path: Path) -> None:
    """Second route: the cushion of the demo room, whose three sizes are written by hand, beside the same as a series.

    Every number of every sheet, as it is printed and as ``figures --json`` gives it, is the same, byte by byte.
    """
    room = load_room(ROOT / "site" / "site.yaml", ROOT)
    shared = load_room_context(room, ROOT)
    by_hand = (ROOT / "projects" / "quay-cushion.yaml").read_text(encoding="utf-8")
    sizes = by_hand[by_hand.index("sizes:\n") : by_hand.index("# A size is chosen")]
    series = """\
sizes:
  named: small, medium, large
  side: 12 in to 20 in by 4 in or 30 cm by 10 cm
  small:
    label: Window seat
  medium:
    label: Sofa
  large:
    label: Floor
"""
    path = tmp_path / "quay-cushion.yaml"
    told = []
    for text in (by_hand, put(by_hand, (sizes, series.replace("30 cm by", "30 cm to 50 cm by")))):
        path.write_text(text, encoding="utf-8")
        project = load_project(path, room, tmp_path)
        sheets = [(size, EDITIONS[one]) for size in project.sizes for one in ("inch", "metric")]
        told.append([json.dumps(figures(worked_sheet(project, *sheet, shared))) for sheet in sheets])
    assert len(set(told[0])) == 6
    assert told[0] == told[1]


@pytest.mark.parametrize(
    ("old", "new", "place", "told"),
    [
        (
            "12 in by 2 in or 30 cm by 5 cm",
            "12 in, 14 in or 30 cm, 35 cm",
            f"{LINE + 2}:16",
            "2 values for 3 sizes; write one for each, or one that holds for all",
        ),
        (
            "12 in by 2 in",
            "12 in by 0 in",
            f"{LINE + 2}:18",
            "the step of a series is more than nothing; where values stay or fall, write one for each size",
        ),
        (
            "30 cm by 5 cm",
            "30 cm to 41 cm by 5 cm",
            f"{LINE + 2}:15",
            "'by' does not belong here; one value is wanted",
        ),
        (
            "12 in by 2 in or 30 cm by 5 cm",
            "12 in to 17 in by 2 in or 30 cm to 40 cm by 5 cm",
            f"{LINE + 2}:27",
            "these steps do not end at the last value; change the step or one of the ends",
        ),
        (
            "12 in by 2 in or 30 cm by 5 cm",
            "12 in to 18 in by 2 in or 30 cm to 45 cm by 5 cm",
            f"{LINE + 2}:27",
            "these steps make 4 values, and 3 sizes are named",
        ),
        (
            "12 in by 2 in",
            "12 in by 2",
            f"{LINE + 2}:18",
            "a length is wanted here, this is a plain number; write its unit, as in 1/2 in or 1 cm",
        ),
        (
            "12 in by 2 in or 30 cm by 5 cm",
            "12 in by 5 cm",
            f"{LINE + 2}:9",
            "inches and centimetres in one value; write the inch value, then 'or', then the metric value",
        ),
        (
            "12 in by 2 in or 30 cm by 5 cm",
            "12 in by lap",
            f"{LINE + 2}:18",
            "'lap': a series gives plain lengths and numbers; what follows from them stands under measures",
        ),
        (
            "12 in by 2 in or 30 cm by 5 cm",
            "12 in, 17 in, 16 in or 30 cm, 43 cm, 40 cm",
            f"{LINE + 2}:9",
            "from size 'medium' to 'large' 'side' becomes less; the sizes of a series stand in order, "
            "the smallest first",
        ),
        (
            "12 in by 2 in or 30 cm by 5 cm",
            "12 in, 14 in, 14 in or 30 cm, 35 cm, 40 cm",
            f"{LINE + 2}:9",
            "sizes 'medium' and 'large' both have a side of 14 in; a size is chosen by it, so it must "
            "be another in every size",
        ),
        (
            "12 in by 2 in",
            "12 in by 1/3 in",
            f"{LINE + 2}:9",
            "'side' of size 'medium' is 12 1/3 in, which no ruler of this room has (1/16 in is its finest mark); "
            "choose a first value and a step on its marks",
        ),
        (
            "5 cm",
            "5.25 cm",
            f"{LINE + 2}:9",
            "'side' of size 'medium' is 35.25 cm, which no ruler of this room has (0.1 cm is its finest mark); "
            "choose a first value and a step on its marks",
        ),
        ("small, medium", "small, small", f"{LINE + 1}:10", "'small' stands twice; give every size a name of its own"),
        (
            "small, medium, large",
            "1 to 6 by 2",
            f"{LINE + 1}:10",
            "no step of 2 leads from 1 to 6; write for example '2 to 14 by 2'",
        ),
        (
            "small, medium, large",
            "1 to 41 by 1",
            f"{LINE + 1}:10",
            "41 sizes; a project has 40 at most, so divide it into several projects",
        ),
        (
            "small, medium, large",
            "small, , large",
            f"{LINE + 1}:10",
            "the names of the sizes are wanted here, with a comma between: small, medium, large",
        ),
        (
            "  side:",
            "  huge:\n    note: More.\n  side:",
            f"{LINE + 2}:3",
            "'huge' is none of the sizes; write its name behind 'named' too, or take it out",
        ),
        (
            "  side:",
            "  hem:\n    - 1 in\n  side:",
            f"{LINE + 3}:5",
            "one line is wanted here: a first value and 'by' a step, or a value for each size with commas",
        ),
    ],
)
def test_a_slip_in_a_series_is_told_once_at_its_place(
    tmp_path: Path, old: str, new: str, place: str, told: str
) -> None:
    assert refused(tmp_path, put(SERIES, (old, new))) == [f"{place}: {told}"]


def test_a_value_is_held_to_the_finest_mark_of_the_room_s_own_ruler(tmp_path: Path) -> None:
    """A step of 1/16 in is on the usual ruler, and not on one whose finest mark is 1/8 in: 12 1/16 in is refused."""
    fine = put(SERIES, ("12 in by 2 in", "12 in by 1/16 in"))
    assert values(read(tmp_path, fine), "side", "inch") == [12, Fraction(193, 16), Fraction(97, 8)]
    room = Room(own_editions={**EDITIONS, "inch": replace(INCH, mark=Fraction(1, 8))})
    (told,) = refused(tmp_path, fine, room)
    assert "'side' of size 'medium' is 12 1/16 in, which no ruler of this room has (1/8 in is its finest mark)" in told


def test_a_measure_that_falls_all_the_way_is_kept_and_one_that_turns_back_is_not(tmp_path: Path) -> None:
    falling = f"{SERIES}  ease: 3 in, 2 in, 1 in or 8 cm, 5 cm, 3 cm\n"
    assert values(read(tmp_path, falling), "ease", "inch") == [3, 2, 1]
    turning = f"{SERIES}  ease: 3 in, 1 in, 2 in or 8 cm, 3 cm, 5 cm\n"
    (told,) = refused(tmp_path, turning)
    assert "from size 'medium' to 'large' 'ease' becomes more" in told

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from generator.definitions.between import sizes_between, steps_between
from generator.definitions.project import Project, load_project
from generator.errors import FaultyFileError
from generator.lengths import CENTIMETRE, EDITIONS, INCH, METRIC
from tests.room import put

RUNNER = """\
title: Runner
kind: runner
summary: One hemmed strip of cloth.
sizes:
  side table:
    width: 12 in or 30 cm
    length: 36 in or 90 cm
    places: 2
  kitchen:
    width: 14 in or 35 cm
    length: 54 in or 140 cm
    places: 5
between:
  every: 1/2 in or 1 cm
cloths:
  face:
    label: linen
    width: 54 in or 140 cm
pieces:
  field:
    kind: rectangle
    finished across: width
    finished along: length
    edges:
      all: hem 1/4 in or 5 mm
steps:
  - use: cut, hem
"""
EVERY = "  every: 1/2 in or 1 cm\n"
LINE = 1 + RUNNER[: RUNNER.index("between:")].count("\n") + 1


def read(folder: Path, *changes: tuple[str, str]) -> Project:
    path = folder / "runner.yaml"
    path.write_text(put(RUNNER, *changes), encoding="utf-8")
    return load_project(path, root=folder)


def labels(project: Project, edition: str) -> list[str]:
    return [size.label for _, size in sizes_between(project.between, project.sizes, EDITIONS[edition])]


def test_every_step_between_the_named_sizes_in_both_editions_the_rest_in_proportion(tmp_path: Path) -> None:
    """12 to 14 in is 4 halves: 36 + 18/4 = 40 1/2, 45, 49 1/2; 2 + 3/4 places are 3, 3 1/2 are 4, 4 1/4 are 4.

    30 to 35 cm is 5 steps of a centimetre: 90 + 50/5 = 100 and so on; 2 + 3/5 are 3, 3 1/5 are 3, 3 4/5 are 4.
    """
    project = read(tmp_path)
    assert labels(project, "inch") == [
        "width 12 1/2 in, length 40 1/2 in, places 3",
        "width 13 in, length 45 in, places 4",
        "width 13 1/2 in, length 49 1/2 in, places 4",
    ]
    assert labels(project, "metric") == [
        "width 31 cm, length 100 cm, places 3",
        "width 32 cm, length 110 cm, places 3",
        "width 33 cm, length 120 cm, places 4",
        "width 34 cm, length 130 cm, places 4",
    ]


def test_they_may_go_on_by_another_length_and_what_follows_lies_on_an_eighth_or_on_five_millimetres(
    tmp_path: Path,
) -> None:
    """From 36 in by 5 in: 2 x 5/18 = 5/9, and 12 5/9 is nearest to 12 4/8; 2 x 10/18 = 1 1/9: 13 1/8; 1 2/3: 13 5/8.

    From 90 cm by 12 cm: 5 x 12/50 = 1.2, so 31; 2.4: 32.5; 3.6: 33.5; 4.8: 35, which is as wide as the kitchen's.
    """
    project = read(tmp_path, (EVERY, "  every: 5 in or 12 cm\n  of: length\n"))
    assert project.between is not None
    inches = [(one["length"], one["width"]) for one in steps_between(project.between, project.sizes, INCH)]
    assert inches == [
        (41, Fraction(25, 2)),
        (46, Fraction(105, 8)),
        (51, Fraction(109, 8)),
    ]
    metric = [(one["length"], one["width"]) for one in steps_between(project.between, project.sizes, METRIC)]
    assert [(long / CENTIMETRE, wide / CENTIMETRE) for long, wide in metric] == [
        (102, 31),
        (114, Fraction(65, 2)),
        (126, Fraction(67, 2)),
        (138, 35),
    ]


def test_each_is_named_by_the_length_that_they_go_on_by(tmp_path: Path) -> None:
    project = read(tmp_path)
    names = [name for name, _ in sizes_between(project.between, project.sizes, INCH)]
    assert names == ["width 12 1/2 in", "width 13 in", "width 13 1/2 in"]


def test_a_named_size_is_not_worked_twice_and_the_steps_are_counted_from_the_least(tmp_path: Path) -> None:
    three = "  hall:\n    width: 12 3/4 in or 32 cm\n    length: 40 in or 100 cm\n    places: 2\nbetween:\n"
    project = read(tmp_path, ("between:\n", three))
    assert [one.split(",")[0] for one in labels(project, "inch")] == [
        "width 12 1/2 in",
        "width 13 in",
        "width 13 1/2 in",
    ]
    assert [one.split(",")[0] for one in labels(project, "metric")] == ["width 31 cm", "width 33 cm", "width 34 cm"]


def test_a_number_that_is_no_whole_one_somewhere_stays_exact(tmp_path: Path) -> None:
    project = read(tmp_path, ("places: 2", "places: 1 1/2"), ("places: 5", "places: 2"))
    assert [one.split(", ")[2] for one in labels(project, "inch")] == ["places 1.625", "places 1.75", "places 1.875"]


def test_without_the_key_nothing_lies_between(tmp_path: Path) -> None:
    project = read(tmp_path, (f"between:\n{EVERY}", ""))
    assert labels(project, "inch") == []


@pytest.mark.parametrize(
    ("changes", "line", "told"),
    [
        ([(EVERY, "  of: width\n")], LINE, "'every' is missing here"),
        ([(EVERY, f"{EVERY}  from: 12 in\n")], LINE + 1, "unknown key 'from'"),
        (
            [(EVERY, f"{EVERY}  of: widht\n")],
            LINE,
            "'widht' is no length that the sizes give; did you mean 'width'?",
        ),
        ([(EVERY, f"{EVERY}  of: places\n")], LINE, "'places' is no length that the sizes give"),
        ([(EVERY, "  every: width\n")], LINE, "'width': a step from size to size is a plain length"),
        ([(EVERY, "  every: 0\n")], LINE, "a step from size to size is more than nothing; write for example"),
        ([(EVERY, "  every: 2\n")], LINE, "a length is wanted here, this is a plain number"),
        (
            [(EVERY, "  every: 1/32 in or 1 cm\n")],
            LINE,
            "64 steps of 1/32 in from 12 in to 14 in; a project has 40 at most, so take a longer step",
        ),
        (
            [(EVERY, "  every: 1/2 in or 5 cm\n")],
            LINE,
            "no step of 5 cm lies between 30 cm and 35 cm; take a shorter one",
        ),
        (
            [("  kitchen:", "  width 13 in:")],
            LINE,
            "a size is called 'width 13 in' already, as one between would be; give it another name",
        ),
        (
            [("width: 14 in or 35 cm", "width: 12 in or 35 cm")],
            LINE,
            "two sizes have a width of 12 in; sizes between go on by it, so it must be another in every size",
        ),
        (
            [("length: 54 in or 140 cm", "length: 54 in or 80 cm")],
            LINE,
            "from a width of 30 cm to one of 35 cm 'length' becomes less; what lies between follows its neighbours, so "
            "everything else must stay or grow with it",
        ),
        (
            [("  kitchen:\n    width: 14 in or 35 cm\n    length: 54 in or 140 cm\n    places: 5\n", "")],
            LINE - 4,
            "there is one size only, so nothing lies between; name the least and the largest",
        ),
    ],
)
def test_what_cannot_lie_between_is_refused_with_its_line(
    changes: list[tuple[str, str]], line: int, told: str, tmp_path: Path
) -> None:
    with pytest.raises(FaultyFileError) as refused:
        read(tmp_path, *changes)
    (found,) = [str(finding) for finding in refused.value.findings if finding.level == "error"]
    assert found.startswith(f"runner.yaml:{line}:")
    assert told in found


def test_sizes_without_a_length_have_nothing_to_go_on_by(tmp_path: Path) -> None:
    plain = [(f"    {name}\n", "") for name in ("width: 12 in or 30 cm", "length: 36 in or 90 cm")]
    plain += [(f"    {name}\n", "") for name in ("width: 14 in or 35 cm", "length: 54 in or 140 cm")]
    fixed = [
        ("finished across: width", "finished across: 9 in or 22 cm"),
        ("finished along: length", "finished along: 1 ft or 30 cm"),
    ]
    with pytest.raises(FaultyFileError, match="sizes between need a length that every size gives"):
        read(tmp_path, *plain, *fixed)

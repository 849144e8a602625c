"""``tuckwright explore`` and ``tuckwright sample``, by hand."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from generator.lengths import read_length
from tests.room import Answer, run, write_room


def table(told: Answer) -> list[list[str]]:
    """The rows of the table, in order, split into cells."""
    rows = [line.split("  ") for line in told.lines if line.startswith("  ") and line[2:3].isdigit()]
    return [[cell.strip() for cell in row if cell.strip()] for row in rows if len(row) > 8]


def test_marks_on_whole_inches_stand_first(tmp_path: Path) -> None:
    # p = 1/2.  A first mark of 1/2 + e + 1/4 is whole for e = 1/4, 1 1/4 ...; within 1/2 to 2 only 1 1/4:
    # n = (20 - 2 1/2) / (1/2) + 1 = 36.  L = 20 + 36 x 1/2 + 1 = 39.  Marks 2, 3, ... 37.
    told = run(tmp_path, "explore", "--finished", "20", "--depth", "1/4", "--spacing", "1")
    assert told.code == 0
    assert table(told)[0] == ["1", "36", "1/4", "1", "1/2", "1 1/4", "39", "20", "1", "0"]
    assert " ".join(told.out.split("marks of 1, from the cut edge:")[1].split("\n\n")[0].split()) == ", ".join(
        map(str, range(2, 38))
    )


def test_every_plan_listed_gives_the_finished_size(tmp_path: Path) -> None:
    told = run(tmp_path, "explore", "--finished", "20", "--depth", "1/4", "--spacing", "1", "--most", "12")
    rows = table(told)
    assert len(rows) == 12
    costs = []
    for _, tucks, depth, spacing, pitch, margin, cut, finished, _, cost in rows:
        count = int(tucks)
        deep, apart, between, edge, flat = (read_length(text, "in") for text in (depth, spacing, pitch, margin, cut))
        assert finished == "20"
        assert between == apart - 2 * deep
        assert 2 * edge + (count - 1) * between == 20
        assert flat == 20 + count * 2 * deep + 1
        costs.append(int(cost))
    assert costs == sorted(costs)


def test_the_largest_panel_from_a_piece_of_cloth(tmp_path: Path) -> None:
    # n = floor((22 - 1 - 2 x 1/2 - 1/2) / 1) + 1 = 20.  F = 22 - 1 - 20 x 1/2 = 11; margins (11 - 19 x 1/2) / 2 = 3/4.
    told = run(tmp_path, "explore", "--cloth", "22", "--depth", "1/4", "--spacing", "1")
    assert table(told)[0][:8] == ["1", "20", "1/4", "1", "1/2", "3/4", "22", "11"]


PASTED = """\
title: Tried
kind: sample
editions: {edition}
summary: A panel.
sizes:
  one:
    along: 10 in or 25 cm
cloths:
  face:
    label: cotton
    width: 90 in or 230 cm
pieces:
  front:
    kind: tucked panel
    finished along: along
{lines}
      top: raw
      bottom: raw
"""


@pytest.mark.parametrize(
    "words",
    [
        ("--finished", "20", "--depth", "1/4", "--spacing", "1"),
        ("--finished", "16", "--depth", "3/8", "--spacing", "1 1/2", "--edges", "hem 1/2"),
        ("--finished", "16", "--depth", "3/8", "--spacing", "1 1/2", "--edges", "caught hem"),
        ("--cloth", "22", "--depth", "1/4", "--spacing", "1", "--edges", "bound 3/8"),
        ("--finished", "40", "--depth", "1", "--spacing", "4", "--edition", "metric", "--edges", "raw"),
    ],
)
def test_the_lines_to_paste_give_the_plan_that_stands_first(tmp_path: Path, words: tuple[str, ...]) -> None:
    told = run(tmp_path, "explore", *words)
    lines = told.out.split("For the project file, plan 1 under a tucked panel:\n")[1].rstrip()
    edition = "metric" if "metric" in words else "inch"
    text = PASTED.format(edition=edition, lines=lines)
    here = write_room(tmp_path / "tried", {"projects/tried.yaml": text, "site/site.yaml": "room:\n  name: A\n"})
    figures = json.loads(run(here, "figures", "tried", "one", "--json").out)
    front = figures["pieces"]["front"]
    first = table(told)[0]
    assert [str(front["tucks"]["count"]), front["cut"]["across"]] == [first[1], first[6]]
    assert told.out.split("marks of 1, from the cut edge: ")[1].split("\n\n")[0].split() == [
        *" ".join(f"{mark}," for mark in front["tucks"]["marks"]).removesuffix(",").split()
    ]


def test_explore_speaks_centimetres_where_asked(tmp_path: Path) -> None:
    # p = 2; 17 intervals of 2 and twice 3 are 40.
    told = run(
        tmp_path, "explore", "--finished", "40", "--depth", "1", "--spacing", "4", "--edition", "metric", "--most", "9"
    )
    assert told.lines[0] == "Edges: seam 1.5 cm. Margins: 1 to 5 cm. The ruler reads to 1 mm."
    assert "Lengths in centimetres" in told.lines[1]
    assert ["18", "1", "4", "2", "3"] in [row[1:6] for row in table(told)]


def test_caught_hems_need_no_seam(tmp_path: Path) -> None:
    # Worked in the hand cases: folds from 2 1/2 in from each raw end, every inch, 37 of them: 41 in flat, 20 finished.
    told = run(
        tmp_path,
        *("explore", "--finished", "20", "--depth", "1/4", "--spacing", "1", "--edges", "caught hem", "--margin", "1"),
    )
    assert table(told)[0][:8] == ["1", "37", "1/4", "1", "1/2", "1", "41", "20"]


def test_a_sample_says_what_a_tuck_takes_up(tmp_path: Path) -> None:
    # (10 - 6 1/16) / 8 = 63/16 / 8 = 63/128; twice 1/4 is 64/128: 1/128 less, 8/128 = 1/16 less in all.
    told = run(tmp_path, "sample", "--depth", "1/4", "--flat", "10", "--tucks", "8", "--finished", "6 1/16")
    assert told.code == 0
    assert told.lines[0] == "Each tuck takes up 63/128 in; twice its depth is 1/2 in."
    assert told.lines[1].startswith("That is 1/128 in less a tuck, 1/16 in less on these 8")
    assert told.lines[-5:] == [
        "    sample:",
        "      tucks: 8",
        "      depth: 1/4 in",
        "      flat: 10 in",
        "      finished: 6 1/16 in",
    ]


def test_a_sample_tells_draw_in_and_shrinkage_too(tmp_path: Path) -> None:
    # Rows 3 apart before and 2 7/8 after: 1/8 lost.  10 in washed to 9 3/4: 1/4 of 10 is 2 1/2 %.
    told = run(
        tmp_path,
        *("sample", "--depth", "1/4", "--flat", "10", "--tucks", "8", "--finished", "6"),
        *("--rows-before", "3", "--rows-after", "2 7/8", "--washed", "9 3/4"),
    )
    assert "The cloth does exactly what the ruler says." in told.lines
    assert "From row to row the turned tucks draw in by 1/8 in." in told.lines
    assert "The cloth shrinks by 2.5 %; write 'shrinkage: 2.5 %' under the cloth." in told.lines
    assert told.lines[-2:] == ["      rows before: 3 in", "      rows after: 2 7/8 in"]


@pytest.mark.parametrize(
    ("words", "code", "says"),
    [
        (
            ("explore",),
            2,
            "Error: name a finished size with --finished, or a piece of cloth with --cloth: one of the two",
        ),
        (
            ("explore", "--finished", "20", "--cloth", "22"),
            2,
            "Error: name a finished size with --finished, or a piece of cloth with --cloth: one of the two",
        ),
        (
            ("explore", "--finished", "20", "--depth", "fat"),
            2,
            "Error: Invalid value for --depth: 'fat' is not a length; write for example '1 3/8 in', '3/8 in', '3.5 cm' "
            "or '6 mm'",
        ),
        (
            ("explore", "--finished", "20", "--plan", "bands", "--number", "odd"),
            2,
            "Error: Invalid value for --number: the plan 'bands' needs an even number",
        ),
        (
            ("explore", "--finished", "20", "--number", "some"),
            2,
            "Error: Invalid value for --number: 'some': write any, even, odd, or a number",
        ),
        (
            ("explore", "--finished", "20", "--margin", "2 to 1"),
            2,
            "Error: Invalid value for --margin: '2 to 1' runs downwards; write the smaller length first",
        ),
        (
            ("explore", "--finished", "20", "--edges", "glue"),
            2,
            "Error: Invalid value for --edges: 'glue' is no finish; write one of: seam, hem, caught hem, bound, "
            "turnover, fold, selvage, raw",
        ),
        (
            ("explore", "--finished", "20", "--edges", "hem"),
            2,
            "Error: Invalid value for --edges: 'hem': 'hem' has a width, or two with 'then' between them",
        ),
        (
            ("sample", "--depth", "1/4", "--flat", "6", "--tucks", "8", "--finished", "10"),
            1,
            "a sample grows shorter when it is tucked: 6 in flat cannot finish at 10 in; were the two measures "
            "exchanged?",
        ),
        (
            ("sample", "--depth", "1/4", "--flat", "10", "--tucks", "8", "--finished", "6", "--rows-before", "3"),
            2,
            "Error: --rows-before and --rows-after belong together; give both",
        ),
    ],
)
def test_a_slip_on_the_command_line_is_told(tmp_path: Path, words: tuple[str, ...], code: int, says: str) -> None:
    told = run(tmp_path, *words)
    assert (told.code, told.out, told.err.splitlines()[-1]) == (code, "", says)


def test_explore_works_with_the_seam_and_the_ruler_of_the_room_and_says_so(tmp_path: Path) -> None:
    site = "room:\n  name: Test room\nseam: 2/5 in or 1 cm\nrulers:\n  inch:\n    marks: 1 in\n    finest: 1/10 in\n"
    here = write_room(tmp_path, {"site/site.yaml": site})
    told = run(here, "explore", "--finished", "20", "--depth", "3/10", "--spacing", "1", "--margin", "1", "--most", "1")
    assert told.lines[0] == "Edges: seam 2/5 in. Margins: 1 in. The ruler reads to 1/10 in."
    # Pitch 4/10; 18 in between the margins are 45 of them, 46 tucks: 20 + 46 x 6/10 + 2 x 4/10 = 48 2/5.
    [best] = table(told)
    assert best[1:4] == ["46", "3/10", "1"], told.out
    assert best[6] == "48 2/5"


@pytest.mark.parametrize("finest", ["1/3 in", "1/10 in", "1 in"])
def test_explore_tries_depths_that_the_ruler_of_the_room_shows(tmp_path: Path, finest: str) -> None:
    site = f"room:\n  name: Test room\nrulers:\n  inch:\n    marks: 1 in\n    finest: {finest}\n"
    here = write_room(tmp_path, {"site/site.yaml": site})
    told = run(here, "explore", "--finished", "24", "--margin", "1 to 6")
    assert told.code == 0
    mark = read_length(finest)
    depths = [read_length(row[2], "in") for row in table(told)]
    assert depths
    assert all((depth / mark).denominator == 1 for depth in depths)

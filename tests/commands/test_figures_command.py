"""``tuckwright figures`` as text, JSON and table, by hand."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

from room_here import CUSHION, room

from tests.room import run


def test_the_text_tells_the_numbers_of_one_size(tmp_path: Path) -> None:
    # 20 tucks, p 3/4: (16 - 19 x 3/4) / 2 = 7/8; f_1 = 1/2 + 7/8 + 3/8 = 1 3/4; L = 16 + 15 + 1 = 32.
    told = run(room(tmp_path, slip_cushion=CUSHION), "figures", "slip-cushion", "medium")
    assert told.code == 0
    assert told.lines[:2] == ["Slip cushion, size medium", "inch edition, lengths in inches"]
    [front] = [line.split() for line in told.lines if line.startswith("  front ")]
    assert front == ["front", "1", "32", "17", "16", "16", "face"]
    facts = {line[:32].strip(): line[32:].strip() for line in told.lines if line.startswith("  ")}
    assert (facts["number"], facts["depth"], facts["margins, left and right"]) == ("20", "3/8", "7/8 and 7/8")
    assert facts["fold marks from the cut edge"].startswith("1 3/4, 3 1/4, 4 3/4")


def test_no_mixed_number_is_broken_between_lines(tmp_path: Path) -> None:
    told = run(room(tmp_path, slip_cushion=CUSHION), "figures", "slip-cushion", "medium")
    marks = told.lines[next(place for place, line in enumerate(told.lines) if "fold marks" in line) :]
    assert len([line for line in marks[:4] if "/" in line]) > 1, "the marks no longer fill a line; take a larger panel"
    assert [line for line in told.lines if line.strip().startswith(("1/", "3/", "5/", "7/"))] == []


def test_the_json_is_the_same_for_a_program(tmp_path: Path) -> None:
    told = run(
        room(tmp_path, slip_cushion=CUSHION), "figures", "slip-cushion", "medium", "--edition", "metric", "--json"
    )
    found = json.loads(told.out)
    assert (found["project"], found["size"], found["edition"], found["unit"]) == (
        "slip-cushion",
        "medium",
        "metric",
        "cm",
    )
    # (40 + 10) / 2 + 1.5 + 2 x 2.5 = 31.5 by 40 + 3.
    assert found["pieces"]["back"]["cut"] == {"across": "31.5", "along": "43"}


def test_the_table_has_one_line_a_number(tmp_path: Path) -> None:
    told = run(room(tmp_path, slip_cushion=CUSHION), "figures", "slip-cushion", "medium", "--csv")
    head, *rows = csv.reader(io.StringIO(told.out))
    assert head == ["project", "size", "edition", "unit", "figure", "value"]
    values = {row[4]: row[5] for row in rows}
    assert len(values) == len(rows)
    assert values["pieces: front: cut: across"] == "32"
    assert values["pieces: front: tucks: marks 20"] == "30 1/4"  # 1 3/4 + 19 x 1 1/2
    assert {tuple(row[:4]) for row in rows} == {("slip-cushion", "medium", "inch", "in")}


def test_the_table_holds_every_number_of_the_json(tmp_path: Path) -> None:
    here = room(tmp_path, slip_cushion=CUSHION)
    found = json.loads(run(here, "figures", "slip-cushion", "small", "--json").out)
    rows = list(csv.reader(io.StringIO(run(here, "figures", "slip-cushion", "small", "--csv").out)))

    def leaves(value: object) -> int:
        inner = value.values() if isinstance(value, dict) else value if isinstance(value, list) else None
        return 1 if inner is None else sum(leaves(part) for part in inner)

    assert len(rows) - 1 == leaves(found) - 4  # the head; project, size, edition and unit stand in every row


def test_a_panel_as_sewn_changes_the_back(tmp_path: Path) -> None:
    # The front measures 15 7/8: (15 7/8 + 4) / 2 + 2 1/2 = 12 7/16.
    here = room(tmp_path, slip_cushion=CUSHION)
    told = run(here, "figures", "slip-cushion", "medium", "--json", "--sewn", "front.across=15 7/8")
    assert json.loads(told.out)["pieces"]["back"]["cut"]["across"] == "12 7/16"


def test_a_project_may_be_named_by_its_file(tmp_path: Path) -> None:
    here = room(tmp_path, slip_cushion=CUSHION)
    by_name = run(here, "figures", "slip-cushion", "small")
    assert run(here, "figures", "projects/slip-cushion.yaml", "small") == by_name
    assert run(here / "projects", "figures", "slip-cushion.yaml", "small") == by_name


FRILL = """\
  frill:
    kind: gathered strip
    edge: 4 * side
    drop: 2 in or 5 cm
    fullness: 1 1/2
    edges:
      all: seam 1/2 in or 1.5 cm
"""


def test_a_piece_in_parts_is_told_as_it_is_cut(tmp_path: Path) -> None:
    # Back: (16 + 4) / 2 + 1/2 + 2 x 1 = 12 1/2 by 17. Frill: 64 x 1 1/2 = 96, cut 97; three lengths of 44 at most lose
    # 1 in at each of two joins, (97 + 2) / 3 = 33.
    here = room(tmp_path, slip_cushion=CUSHION.replace("steps:", f"{FRILL}steps:"))
    lines = run(here, "figures", "slip-cushion", "medium").lines
    told = {line.strip().split("  ")[0]: line.split()[-6:] for line in lines if " parts)" in line}
    assert told == {
        "back (in 2 parts)": ["12", "1/2", "17", "16", "16", "face"],
        "frill (in 3 parts)": ["3", "33", "3", "96", "2", "face"],
    }
    pieces = json.loads(run(here, "figures", "slip-cushion", "medium", "--json").out)["pieces"]
    assert pieces["back"]["parts"] == {"count": 2, "across": "12 1/2", "along": "17"}
    assert pieces["frill"]["parts"] == {"count": 3, "across": "33", "along": "3"}
    assert (pieces["frill"]["cut"], pieces["frill"]["quantity"]) == ({"across": "97", "along": "3"}, 1)
    assert "parts" not in pieces["front"]


def test_the_text_tells_what_the_sheet_tells_and_the_json_the_exact_value(tmp_path: Path) -> None:
    # A third of 16 in is 5 1/3, on a ruler of sixteenths 5 5/16. Cut with two seams, 6 1/3 is rounded up: 6 3/8.
    label = (
        "  loop:\n    kind: rectangle\n    finished across: side / 3\n    finished along: 2 in or 5 cm\n"
        "    edges:\n      all: seam 1/2 in or 1.5 cm\n"
    )
    here = room(tmp_path, slip_cushion=CUSHION.replace("  back:\n", f"{label}  back:\n", 1))
    told = run(here, "figures", "slip-cushion", "medium")
    [loop] = [line.split() for line in told.lines if line.startswith("  loop ")]
    assert " ".join(loop) == "loop 1 6 3/8 3 5 5/16 2 face"
    found = json.loads(run(here, "figures", "slip-cushion", "medium", "--json").out)
    assert found["pieces"]["loop"]["finished"]["across"] == "5 1/3"


def test_a_size_of_ones_own_has_the_numbers_of_a_listed_one_of_the_same_measures(tmp_path: Path) -> None:
    folder = room(tmp_path, slip_cushion=CUSHION)
    own = json.loads(run(folder, "figures", "slip-cushion", "--with", "side=16", "--json").out)
    listed = json.loads(run(folder, "figures", "slip-cushion", "medium", "--json").out)
    assert own.pop("size") == "side 16 in"
    assert listed.pop("size") == "medium"
    differ = [key for key in own if own[key] != listed[key]]
    assert differ == [key for key in differ if key in ("label", "size label", "size_label")]


def test_a_size_is_named_or_given_and_not_both(tmp_path: Path) -> None:
    folder = room(tmp_path, slip_cushion=CUSHION)
    for words in ((), ("medium", "--with", "side=16")):
        told = run(folder, "figures", "slip-cushion", *words)
        assert told.code == 2
        assert "name one size (" in told.err
        assert "or give a size of your own: --with NAME=VALUE" in told.err

"""Sizes between the named ones: their pages, what is told of them, and that they are what ``sheet --with`` makes."""

from __future__ import annotations

import html
import json
import re
import shlex
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest
from small_room import Speech, bytes_of, made_room, published, site_of

from generator.calculation.worksheet.sheet import worked_sheet
from generator.commands.working import with_own_size
from generator.publishing.checking import worked_between
from generator.rendering.between import SizesBetween, steps, typed
from tests.room import ROOT, demo_room, edit, put, run

TABLET = """\
title: Tucked tablet
kind: sample
summary: Tucks to begin with, turned to and fro.
sizes:
  narrow:
    label: Bedside
    side: 6 in
  wide:
    label: Window seat
    side: 8 in
measured by:
  shown: side + 1 in
  called: board
between:
  every: 1/2 in
cloths:
  face:
    label: calico
    width: 36 in
pieces:
  front:
    kind: tucked panel
    finished across: side
    finished along: side
    tucks:
      depth: 1/4 in
      spacing: 3/4 in
      margin: 1 in to 2 in
    rows:
      plan: one way
      spacing: 2 in
      first: 1 in to 3 in
    edges:
      all: seam 1/2 in
steps:
  - use: cut
  - use: mark folds, crease, stitch tucks, measure sample, rule rows, sew rows
    on: front
  - title: Line it
    on: front
    text: Cut a board {{ side + 1 in }} each way.
"""
OWN = ("side-6-1_2-in", "side-7-in", "side-7-1_2-in")

TEXTS = {file.stem: file.read_text(encoding="utf-8") for file in sorted((ROOT / "projects").glob("*.yaml"))}
WITH_SIZES_BETWEEN = [name for name, text in TEXTS.items() if "\nbetween:\n" in text]


@pytest.fixture(scope="module")
def once(tmp_path_factory: pytest.TempPathFactory) -> Path:
    room = made_room(tmp_path_factory.mktemp("between") / "room", {"tablet": TABLET})
    published(room)
    return room


def page(room: Path, size: str, kind: str = "inch") -> str:
    return (site_of(room) / f"projects/tablet/{size}/{kind}.html").read_text(encoding="utf-8")


def words(text: str) -> str:
    """What a page says, on one line."""
    plain = html.unescape(re.sub(r"<[^>]*>", "", re.sub(r"<(style|script).*?</\1>", "", text, flags=re.DOTALL)))
    return " ".join(plain.replace("\u2044", "/").split())


def test_every_step_has_its_page_and_the_one_for_the_machine_and_no_paper(once: Path) -> None:
    folder = site_of(once) / "projects/tablet"
    found = sorted(path.name for path in folder.iterdir() if path.is_dir())
    assert found == sorted((*OWN, "narrow", "wide"))
    for size in OWN:
        assert sorted(path.name for path in (folder / size).iterdir()) == ["inch-at-the-machine.html", "inch.html"]


def test_the_page_of_the_project_leads_to_each_by_the_measure_that_decides(once: Path) -> None:
    overview = (site_of(once) / "projects/tablet/index.html").read_text(encoding="utf-8")
    chips = re.findall(r'<a href="([^"]*)" data-number="([^"]*)"', overview)
    assert chips == [
        ("narrow/inch.html", "7"),
        ("side-6-1_2-in/inch.html", "7.5"),
        ("side-7-in/inch.html", "8"),
        ("side-7-1_2-in/inch.html", "8.5"),
        ("wide/inch.html", "9"),
    ]
    assert "Another board?" in overview


def test_all_numbers_on_its_pages_are_those_of_the_command_that_the_page_names(once: Path) -> None:
    """By hand: 7 in, p 1/4: 17 tucks leave margins of (7 - 16/4) / 2 = 1 1/2 in, the middle of what is wished.

    They take up 8 1/2: cut 7 + 8 1/2 + 1 = 16 1/2; first mark 1/2 + 1 1/2 + 1/4 = 2 1/4, last 16 1/2 - 2 1/4 = 14 1/4.
    """
    told = re.search(r"<code>(tuckwright sheet [^<]*)</code>", page(once, "side-7-in"))
    assert told is not None
    command = shlex.split(html.unescape(told[1]))
    assert command == [
        *("tuckwright", "sheet", "tablet", "--with", "side=7 in", "--edition", "inch", "-o", "sheet.pdf"),
    ]
    answer = run(once, "figures", *command[2:-2], "--json")
    figures = json.loads(answer.out)
    marks = figures["pieces"]["front"]["tucks"]["marks"]
    assert (len(marks), marks[0], marks[-1]) == (17, "2 1/4", "14 1/4")
    for kind in ("inch", "inch-at-the-machine"):
        said = words(page(once, "side-7-in", kind))
        assert [mark for mark in marks if mark not in said] == []
        assert "Cut a board 8 in each way" in said
        assert "16 1/2" in said


def test_its_own_numbers_are_drawn_on_both_pages(once: Path) -> None:
    """As above the panel is cut 16 1/2 in wide with the first of 17 marks 2 1/4 in from its edge; rows from the top."""
    for kind in ("inch", "inch-at-the-machine"):
        drawings = re.findall(
            r'<svg[^>]* aria-label="([^"]*)"[^>]*>(.*?)</svg>', page(once, "side-7-in", kind), re.DOTALL
        )
        told = {label: words(re.sub(r"</?text[^>]*>", "", body)) for label, body in drawings}
        (marking,) = (body for label, body in told.items() if "under a ruler" in label)
        # A built fraction is drawn letter by letter, without a space.
        assert "161/2in" in marking.replace(" ", "")
        assert any("measured from the top" in label for label in told)
        assert not any("as you see it" in label for label in told)


def test_its_pages_call_it_by_the_measure_and_say_that_nobody_has_sewn_it(once: Path) -> None:
    sheet = words(page(once, "side-6-1_2-in"))
    assert "Tucked tablet: 7 1/2 in board" in sheet
    assert "nobody has sewn it yet. Its measures: side 6 1/2 in." in sheet
    assert "the sheet of Bedside (smaller) and Window seat (larger)" in sheet
    assert "7 1/2 in board" in words(page(once, "side-6-1_2-in", "inch-at-the-machine"))


def test_it_can_be_asked_whether_it_is_the_newest_and_is_found_by_its_measure(once: Path) -> None:
    newest = json.loads((site_of(once) / "sheets.json").read_text(encoding="utf-8"))
    assert {f"tablet/{size}/inch" for size in OWN} < set(newest)
    (numbers,) = re.findall(r'data-numbers="([^"]*)"', page(once, "side-7-in"))
    assert newest["tablet/side-7-in/inch"][1] == numbers
    assert "Tucked tablet, 8 in board" in (site_of(once) / "assets/words.js").read_text(encoding="utf-8")


def test_a_step_that_cannot_be_sewn_is_left_out_and_told(tmp_path: Path, speak: Speech) -> None:
    """Eights of tucks, p 1/4, e 1 to 1 1/8: 16 fit from 3 3/4 + 2 = 5 3/4 to 6 in, 24 from 5 3/4 + 2 = 7 3/4 to 8 in.

    For 6 1/2 and 7 in another spacing helps, which is told once; not so for 7 1/2 in.
    """
    text = put(TABLET, ("margin: 1 in to 2 in", "number: multiple of 8\n      margin: 1 in to 1 1/8 in"))
    room = made_room(tmp_path / "room", {"tablet": text})
    code, out, _ = speak(room, "check")
    assert code == 0
    told = [line for line in out.splitlines() if "left out of the sizes between: " in line]
    assert [line.partition(": left out")[0] for line in told] == ["projects/tablet.yaml:29:15: warning"]
    assert [line.rpartition("(")[2] for line in told] == ["side 7 1/2 in, inch)"]
    assert out.count("the spacing is 11/16 in") == 1
    published(room)
    folder = site_of(room) / "projects/tablet"
    assert sorted(path.name for path in folder.glob("side-*")) == list(OWN[:2])
    overview = words((folder / "index.html").read_text(encoding="utf-8"))
    assert "There is no sheet for side 7 1/2 in: no number of tucks fits 7 1/2 in" in overview


def test_a_longer_step_takes_pages_away_and_makes_no_other_sheet_again(once: Path, tmp_path: Path) -> None:
    room = made_room(tmp_path / "room", {"tablet": TABLET})
    published(room)
    before = bytes_of(room)
    assert before == bytes_of(once)
    edit(room / "projects/tablet.yaml", "every: 1/2 in", "every: 1 in")
    made = published(room).made
    assert "tablet/between inch" in made
    assert [name for name in made if name.startswith("tablet/inch/")] == []
    after = bytes_of(room)
    assert sorted(name for name in before if name not in after) == sorted(
        f"projects/tablet/{size}/{kind}.html" for size in (OWN[0], OWN[2]) for kind in ("inch", "inch-at-the-machine")
    )
    edit(room / "projects/tablet.yaml", "between:\n  every: 1 in\n", "")
    published(room)
    assert [name for name in bytes_of(room) if OWN[1] in name] == []


def test_some_projects_of_the_demo_room_have_sizes_between() -> None:
    assert len(WITH_SIZES_BETWEEN) >= 3


@pytest.mark.parametrize("name", WITH_SIZES_BETWEEN)
def test_every_size_between_is_what_the_command_on_its_page_makes(name: str) -> None:
    room = demo_room()
    project = room.project(name)
    found = worked_between(project, room.shared, room.folder, None)
    assert found.left_out == ()
    assert len(found.worksheets) > 10
    for worksheet in found.worksheets:
        command = shlex.split(typed(worksheet))
        own = tuple(value for word, value in pairwise(command) if word == "--with")
        listed, size = with_own_size(project, None, own, worksheet.edition)
        made = worked_sheet(listed, size, worksheet.edition, room.shared)
        # The one is named by all its measures, the other by the one that it is chosen by.
        assert worksheet.size in made.size.split(", ")
        findings = tuple(replace(one, size=one.size and worksheet.size) for one in made.findings)
        assert replace(made, size=worksheet.size, findings=findings) == worksheet


def test_the_table_of_all_sizes_has_no_column_for_what_one_size_alone_buys() -> None:
    """Each size of the cushion buys a pad named by its side: thirty of them would stand beside each other."""
    room = demo_room()
    project = room.project("quay-cushion")
    found = worked_between(project, room.shared, room.folder, None)
    inch = [
        [one for one in sheets if one.edition.name == "inch"]
        for sheets in (room.worksheets("quay-cushion"), found.worksheets)
    ]
    table = steps(inch[0], SizesBetween(tuple(inch[1]))).table
    rows = (*table.supplies, *table.rows)
    assert [name for name, _ in rows if "pad" in name] == []
    assert "Thread" in [name for name, _ in rows]
    assert all(all(cells) for _, cells in rows)

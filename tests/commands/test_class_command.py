"""``tuckwright class`` as a teacher reads it, and what it says of slips."""

from __future__ import annotations

import json
from pathlib import Path

import pdfplumber
import pikepdf
import pytest
from room_here import CUSHION, room

from tests.room import run

CLASS = """\
title: One morning
project: slip-cushion
edition: inch
paper: Letter
sessions:
  - day: 2031-03-08
    starts: 9:30
    ends: 12:30
places:
  - size: medium
    number: 3
    student: Ines, Ode
  - size: small
    edition: metric
    own cloth: yes
spare kits:
  small: 1
cut beforehand: front
"""


def class_room(folder: Path, text: str = CLASS) -> Path:
    here = room(folder, slip_cushion=CUSHION)
    (here / "site" / "classes").mkdir(parents=True)
    (here / "site" / "classes" / "morning.yaml").write_text(text, encoding="utf-8")
    return here


def part(lines: list[str], head: str) -> list[str]:
    """The lines below a head, up to the next empty one."""
    begin = next(place for place, line in enumerate(lines) if line.startswith(head)) + 1
    end = next((place for place in range(begin, len(lines)) if not lines[place]), len(lines))
    return [line.strip() for line in lines[begin:end]]


def test_a_class_is_told_part_by_part(tmp_path: Path) -> None:
    told = run(class_room(tmp_path), "class", "morning")
    assert (told.code, told.err) == (0, "")
    assert told.lines[0] == "One morning: Slip cushion"
    assert [row.split() for row in part(told.lines, "Kits")[2:]] == [
        ["medium", "inch", "3", "0", "0", "3", "3"],
        ["small", "metric", "1", "1", "0", "1", "0"],
        ["small", "inch", "0", "0", "1", "1", "1"],
    ]
    assert part(told.lines, "Bags") == [
        "1 of 5  medium, inch: Ines",
        "2 of 5  medium, inch: Ode",
        "3 of 5  medium, inch: ........................",
        "4 of 5  small, metric: brings own cloth",
        "5 of 5  small, inch: spare",
    ]
    assert [row.split() for row in part(told.lines, "To print")[2:5]] == [
        ["slip-cushion-medium-inch-letter.pdf", "medium", "inch", "Letter", "3", "?", "?", "?"],
        ["slip-cushion-small-metric-letter.pdf", "small", "metric", "Letter", "1", "?", "?", "?"],
        ["slip-cushion-small-inch-letter.pdf", "small", "inch", "Letter", "1", "?", "?", "?"],
    ]
    assert "how many pages a handout has is not known before 'tuckwright publish' has made it" in " ".join(
        told.out.split()
    )
    assert "this class mixes editions: 4 kits inch, 1 kit metric" in " ".join(told.out.split())


def test_a_bag_tells_its_pieces_and_where_they_are_cut(tmp_path: Path) -> None:
    # Medium: front 32 by 16 + 1, two halves (16 + 4) / 2 + 2 1/2 = 12 1/2 by 17.
    bags = part(run(class_room(tmp_path), "class", "morning").lines, "In each bag")
    assert bags[:3] == [
        "medium, inch (3)",
        "front: 1 of 32 x 17 in (across the cloth x along it), cut beforehand",
        "back: 2 of 12 1/2 x 17 in (across the cloth x along it), cut in the class",
    ]


def test_the_json_of_a_class_holds_every_slip(tmp_path: Path) -> None:
    told = run(class_room(tmp_path), "class", "morning", "--json")
    found = json.loads(told.out)
    assert (found["class"], found["project"], len(found["slips"])) == ("morning", "slip-cushion", 5)
    assert [kit["packed"] for kit in found["kits"]] == [3, 1, 1]


def test_a_class_may_be_named_by_its_file(tmp_path: Path) -> None:
    here = class_room(tmp_path)
    by_name = run(here, "class", "morning")
    assert run(here, "class", "site/classes/morning.yaml") == by_name
    assert run(here, "class", "morning.yaml") == by_name


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        (
            "size: medium",
            "size: meduim",
            "site/classes/morning.yaml:10:5: the project has no size 'meduim'; did you mean 'medium'?",
        ),
        (
            "project: slip-cushion",
            "project: slip-cushon",
            "morning.yaml: there is no project 'slip-cushon'; did you mean 'slip-cushion'?",
        ),
        ("paper: Letter", "paper: A5", "site/classes/morning.yaml:4:8: 'A5' is no paper; there is: A4, Letter"),
        (
            "ends: 12:30",
            "ends: 12:30\n    breaks: 200 minutes",
            "site/classes/morning.yaml:6:5: the session on 2031-03-08 has no time to sew: 9:30 to 12:30 with a break "
            "of 200 minutes",
        ),
    ],
)
def test_a_slip_in_a_class_file_is_told_at_its_line(tmp_path: Path, old: str, new: str, says: str) -> None:
    assert old in CLASS
    told = run(class_room(tmp_path, CLASS.replace(old, new)), "class", "morning")
    assert (told.code, told.out, told.err) == (1, "", f"{says}\n")


def test_a_class_that_is_not_there_is_told_with_the_nearest(tmp_path: Path) -> None:
    here = class_room(tmp_path)
    told = run(here, "class", "mornings")
    assert told.code == 1
    assert told.err == f"there is no class 'mornings' in {here / 'site' / 'classes'}; did you mean 'morning'?\n"


def test_the_pages_of_published_handouts_are_counted(tmp_path: Path) -> None:
    here = class_room(tmp_path)
    for size, pages in (("medium", 7), ("small", 4)):
        folder = here / "site" / "public" / "projects" / "slip-cushion" / size
        folder.mkdir(parents=True)
        sheet = pikepdf.new()
        for _ in range(pages):
            sheet.add_blank_page()
        edition = "inch" if size == "medium" else "metric"
        packed = pikepdf.ObjectStreamMode.generate
        sheet.save(folder / f"slip-cushion-{size}-{edition}-letter.pdf", object_stream_mode=packed)
    lines = part(run(here, "class", "morning").lines, "To print")
    # Three copies of 7 pages: 4 sheets each on both sides, 7 on one. One of 4. The spare one has not been published.
    assert [" ".join(row.split()[4:]) for row in lines[2:5]] == ["3 7 12 21", "1 4 2 4", "1 ? ? ?"]


def test_the_pack_of_a_class_names_the_students_and_tells_the_whole_class(tmp_path: Path) -> None:
    here = class_room(tmp_path)
    told = run(here, "class", "morning", "-o", "pack.pdf", "--paper", "a4")
    assert (told.code, told.err) == (0, "")
    assert told.out.startswith("Wrote pack.pdf: the pack of One morning, on A4; ")
    assert told.out.endswith(" printed on both sides. It names your students: keep it to yourself.\n")
    with pdfplumber.open(here / "pack.pdf") as pack:
        words = " ".join(" ".join(page.extract_text().split()) for page in pack.pages)
        assert (round(pack.pages[0].width / 72, 2), round(pack.pages[0].height / 72, 2)) == (8.27, 11.69)
    for part_of_it in ("To buy", "To print", "Timetable", "Cutting out, all kits together", "Kit slips", "Ines", "Ode"):
        assert part_of_it in words
    assert not (here / "site" / "public").exists()


@pytest.mark.parametrize(
    ("words", "code", "says"),
    [
        (["--json", "-o", "pack.pdf"], 2, "--json is printed and -o writes a PDF; choose one"),
        (["--paper", "A4"], 2, "--everything and --one-sided belong to the class pack; name its file with -o"),
        (["-o", "pack.pdf", "--paper", "A5"], 2, "'A5' is no paper of the room; it has: Letter, A4"),
        (["-o", "nowhere/pack.pdf"], 1, "there is no folder nowhere; make it, or name another"),
        (["-o", "site/classes/morning.yaml"], 1, "is there already and is no PDF; it stays as it is"),
    ],
)
def test_a_pack_that_cannot_be_written_is_told_so(tmp_path: Path, words: list[str], code: int, says: str) -> None:
    told = run(class_room(tmp_path), "class", "morning", *words)
    assert (told.code, told.out) == (code, "")
    assert says in " ".join(told.err.split())

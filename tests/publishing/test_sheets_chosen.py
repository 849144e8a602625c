"""A room chooses which sheets beside the handout are on its site; everything that leads to sheets follows."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from small_room import ROOM, Speech, bytes_of, made_room, published, site_of
from test_class_pages import CLASS, with_classes

from generator.definitions.vocabulary import SHEETS_BESIDE, SHEETS_OF_PROJECT, SHEETS_OF_ROOM, SHEETS_OF_SIZE
from generator.rendering.sheet_kinds import SHEETS

FILES = {
    "wall card": "sheets/wall-inch-a4.pdf",
    "buying table": "sheets/buying-inch-a4.pdf",
    "sample form": "sheets/sample-inch-a4.pdf",
    "teacher's copy": "projects/tablet/tablet-teacher-inch-a4.pdf",
    "measuring guide": "projects/tablet/tablet-measuring-inch-a4.pdf",
    "machine card": "projects/tablet/tablet-machine-inch-a4.pdf",
    "sign up form": "projects/tablet/tablet-sign-up-a4.pdf",
    "care sheet": "projects/tablet/tablet-care-a4.pdf",
    "marking strip": "projects/tablet/only/tablet-only-inch-a4-strip.pdf",
    "rescue sheet": "projects/tablet/only/tablet-only-inch-a4-rescue.pdf",
}
USUAL = {"wall card", "buying table", "sample form", "measuring guide", "sign up form", "care sheet"}


def room_with(folder: Path, sheets: str) -> Path:
    room = made_room(folder)
    (room / "site/site.yaml").write_text(f"{ROOM}{sheets}", encoding="utf-8")
    return with_classes(room, flags=CLASS)


def sheets_of(room: Path) -> set[str]:
    """The kinds of sheets of which the site has files."""
    files = bytes_of(room)
    return {kind for kind, file in FILES.items() if file in files}


def dead_links(room: Path) -> set[str]:
    site = site_of(room)
    found = set()
    for page in site.rglob("*.html"):
        for target in re.findall(r'href="([^"#]+\.pdf)', page.read_text(encoding="utf-8")):
            if not (page.parent / target).is_file():
                found.add(target)
    return found


def linked(room: Path) -> set[str]:
    """The PDFs that pages lead to."""
    site = site_of(room)
    return {
        str((page.parent / target).resolve().relative_to(site.resolve()))
        for page in site.rglob("*.html")
        for target in re.findall(r'href="([^"#]+\.pdf)', page.read_text(encoding="utf-8"))
    }


def test_the_names_in_a_rooms_file_are_those_of_the_kinds() -> None:
    assert {*SHEETS_BESIDE, "class pack"} == set(SHEETS)
    for need, names in (("room", SHEETS_OF_ROOM), ("project", SHEETS_OF_PROJECT), ("size", SHEETS_OF_SIZE)):
        assert {name for name, kind in SHEETS.items() if kind.needs == need} == set(names)


def test_without_the_line_a_room_has_the_sheets_that_every_room_needs(room: Path) -> None:
    assert sheets_of(room) == USUAL


@pytest.mark.parametrize(
    ("line", "wanted"),
    [
        ("sheets: marking strip, rescue sheet, machine card\n", {"marking strip", "rescue sheet", "machine card"}),
        ("sheets:\n  - sign-up form\n  - Teacher's copy\n", {"sign up form", "teacher's copy"}),
        ("sheets:\n", set()),
    ],
)
def test_a_site_has_the_sheets_that_its_room_names_and_its_pages_lead_to_them(
    tmp_path: Path, line: str, wanted: set[str]
) -> None:
    room = room_with(tmp_path / "room", line)
    published(room)
    assert sheets_of(room) == wanted
    assert dead_links(room) == set()
    assert {file for file in linked(room) if file in FILES.values()} == {FILES[kind] for kind in wanted}


def test_another_choice_makes_the_sheets_and_the_pages_anew(tmp_path: Path) -> None:
    room = room_with(tmp_path / "room", "sheets: wall card\n")
    published(room)
    (room / "site/site.yaml").write_text(f"{ROOM}sheets: rescue sheet\n", encoding="utf-8")
    published(room)
    assert sheets_of(room) == {"rescue sheet"}
    assert dead_links(room) == set()
    assert published(room).current


def test_a_class_offers_its_form_only_where_there_is_one(tmp_path: Path) -> None:
    texts = []
    for name, line in (("with", ""), ("without", "sheets: wall card\n")):
        room = room_with(tmp_path / name, line)
        published(room)
        texts.append((site_of(room) / "classes/flags.html").read_text(encoding="utf-8"))
    assert ["Sign up" in text for text in texts] == [True, False]


def test_a_name_that_is_no_sheet_is_refused_with_its_place(tmp_path: Path, speak: Speech) -> None:
    room = room_with(tmp_path / "room", "sheets: wall card, rescue sheets\n")
    code, _, told = speak(room, "check")
    assert code == 1
    assert (
        "site/site.yaml:6:20: 'rescue sheets' is no sheet beside the handout; did you mean 'rescue sheet'?"
        in " ".join(told.split())
    )


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("tablet", "only", "--kind", "marking strip"), "marking strip, Tucked tablet, only, inch edition, on A4"),
        (("tablet", "only", "--kind", "rescue-sheet"), "rescue sheet, Tucked tablet, only, inch edition, on A4"),
        (("tablet", "--kind", "Teacher's copy"), "teacher's copy, Tucked tablet, inch edition, on A4"),
        (("tablet", "--kind", "sign-up form"), "sign up form, Tucked tablet, inch edition, on A4"),
        (("--kind", "wall card"), "wall card, inch edition, on A4"),
    ],
)
def test_every_kind_can_be_had_when_it_is_asked_for(
    tmp_path: Path, speak: Speech, words: tuple[str, ...], told: str
) -> None:
    room = room_with(tmp_path / "room", "sheets:\n")
    assert speak(room, "sheet", *words, "-o", "x.pdf")[:2] == (0, f"Wrote x.pdf: {told}\n")
    assert (room / "x.pdf").read_bytes().startswith(b"%PDF-")


@pytest.mark.parametrize("kind", sorted(USUAL))
def test_a_sheet_that_is_asked_for_is_the_one_of_the_site(room: Path, speak: Speech, kind: str) -> None:
    about = ("tablet",) if kind in SHEETS_OF_PROJECT else ()
    assert speak(room, "sheet", *about, "--kind", kind, "-o", "x.pdf")[0] == 0
    assert (room / "x.pdf").read_bytes() == (site_of(room) / FILES[kind]).read_bytes()


@pytest.mark.parametrize(
    ("words", "code", "told"),
    [
        (("--kind", "wallcard"), 2, "'wallcard' is no kind of sheet; did you mean 'wall card'?"),
        (("tablet", "--kind", "wall card"), 2, "the wall card is of the whole room; name no project"),
        (("--kind", "machine card"), 2, "the machine card is of one project; name it"),
        (
            ("tablet", "--with", "side=9", "--kind", "machine card"),
            2,
            "the machine card is about all sizes of a project; leave out --with, --sewn and --cloth",
        ),
        (("tablet", "only", "--kind", "care sheet"), 2, "the care sheet is not about one size; leave out 'only'"),
        (("--kind", "marking strip"), 2, "name a project and a size; without them there are sheets of the whole room"),
        (("flag", "small", "--kind", "rescue sheet"), 1, "there is no rescue sheet here: nothing is tucked"),
        (
            ("tablet", "only", "--kind", "paper pattern"),
            1,
            "there is no paper pattern here: no piece has a shape of its own",
        ),
        (("tablet", "--kind", "care sheet", "--edition", "metric"), 2, "'tablet' has no metric edition; it has: inch"),
        (("--kind", "wall card", "--edition", "metric"), 1, "no project has a metric edition"),
    ],
)
def test_what_cannot_be_had_is_told_and_nothing_is_written(
    room: Path, speak: Speech, words: tuple[str, ...], code: int, told: str
) -> None:
    found, out, complaint = speak(room, "sheet", *words, "-o", "x.pdf")
    assert (found, out) == (code, "")
    assert told in " ".join(complaint.split())
    assert "Traceback" not in complaint
    assert not (room / "x.pdf").exists()

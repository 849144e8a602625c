"""A class of eight, two with their own measures, from its file to one PDF: every own sheet, every copy, every leaf."""

from __future__ import annotations

import io
import re
from functools import cache
from pathlib import Path

import pikepdf
import pypdfium2
import pytest

from generator.calculation.worksheet.class_work import class_sheet
from generator.definitions.class_plan import load_class
from generator.publishing.editions import against_editions, keep
from generator.publishing.printing import TaughtClass, last_class
from generator.rendering.joined import joined, pages_of
from generator.rendering.printed_paper import PrintedPaper
from tests.room import Answer, opened_room, put, run, write_room

PROJECT = """\
title: Gangway mat
kind: mats
summary: |
  A mat with four tucks in its middle.
editions: inch
sizes:
  small:
    side: 12 in
  medium:
    side: 16 in
cloths:
  face:
    label: cotton
    width: 44 in
pieces:
  front:
    kind: tucked panel
    finished across: side
    finished along: side
    tucks:
      depth: 3/8 in
      spacing: 1 1/2 in
      number: 4
      margin: 3 in to 12 in
    edges:
      all: hem 1/2 in
steps:
  - use: as usual
"""
CLASS = """\
title: Mats to measure
project: mat
edition: inch
paper: A4
sessions:
  - day: 2031-03-08
    starts: 9:30
    ends: 16:30
places:
  - size: medium
    number: 3
    student: Ada
  - size: small
    number: 3
  - with:
      side: 14 in
    student: Ines
  - with:
      side: 18 1/2
    student: Bram
"""
CHANGES = """\
changes:
  - day: 2031-01-20
    text: Old.
  - day: 2031-02-20
    text: |
      Wider
      mats.
"""


@pytest.fixture(scope="module")
def taught(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A room with a class of eight, with its pack, everything for it, and the two sheets that --with makes."""
    files = {
        "site/site.yaml": "room:\n  name: Gangway\n",
        "projects/mat.yaml": PROJECT,
        "site/classes/mats.yaml": CLASS,
    }
    return write_room(tmp_path_factory.mktemp("taught"), files)


@pytest.fixture(scope="module")
def packed(taught: Path) -> Answer:
    return run(taught, "class", "mats", "-o", "pack.pdf")


@pytest.fixture(scope="module")
def whole(taught: Path) -> Answer:
    return run(taught, "class", "mats", "--everything", "-o", "all.pdf")


@cache
def pages(path: Path) -> list[str]:
    with pypdfium2.PdfDocument(path) as pdf:
        return [page.get_textpage().get_text_bounded() for page in pdf]


def begins_a_handout(text: str) -> bool:
    about_the_class = "Kit slips" in text or "Class pack" in text
    return "Name" in text and "page 1 of" in text and not about_the_class


def plain(text: str, student: str = "") -> str:
    """A page without its student, however its words stand."""
    return " ".join(text.replace(student, "").split())


def test_the_pack_ends_with_the_own_handouts_and_their_numbers_are_those_of_sheet_with(
    taught: Path, packed: Answer
) -> None:
    assert (packed.code, packed.err) == (0, "")
    found = pages(taught / "pack.pdf")
    for student, side in (("Ines", "14 in"), ("Bram", "18 1/2")):
        assert run(taught, "sheet", "mat", "--with", f"side={side}", "--paper", "A4", "-o", f"{student}.pdf").code == 0
        own = pages(taught / f"{student}.pdf")
        begin = next(place for place, text in enumerate(found) if begins_a_handout(text) and student in text)
        mine = found[begin : begin + len(own)]
        assert [plain(text, student) for text in mine] == [plain(text) for text in own]
        # It begins on the front of a sheet of paper.
        assert begin % 2 == 0


def test_names_stand_in_the_pack_and_nowhere_in_what_is_published(taught: Path) -> None:
    assert run(taught, "publish", "--workers", "1").code == 0
    public = taught / "site" / "public"
    assert (public / "classes" / "mats.html").is_file()
    read = 0
    for path in filter(Path.is_file, public.rglob("*")):
        # Pages and PDFs, but also the words of the search, feeds, calendars and what every page may fetch.
        whole = path.suffix == ".pdf" or path.suffix in (".html", ".js", ".json", ".xml", ".ics", ".txt", ".svg")
        text = "\n".join(pages(path)) if path.suffix == ".pdf" else path.read_bytes().decode("utf-8", "ignore")
        assert not whole or re.search(r"\b(Ines|Bram|Ada)\b|[Ss]ide 1[48]", text) is None, path.name
        read += whole
    assert read > 20
    assert (public / "words.js").is_file() or list(public.rglob("*words*.js"))
    assert not list(public.rglob("*side*"))


def test_everything_is_one_file_in_order_with_the_copies_of_every_handout(taught: Path, whole: Answer) -> None:
    assert (whole.code, whole.err) == (0, "")
    found = pages(taught / "all.pdf")
    heads = [plain(text) for text in found if begins_a_handout(text)]
    sizes = [re.search(r"(Medium|Small|Side [\d /]+ in) inch edition", head) for head in heads]
    assert [size[1] for size in sizes if size] == ["Medium"] * 3 + ["Small"] * 3 + ["Side 14 in", "Side 18 1/2 in"]
    told = " ".join(plain(text) for text in found)
    for title in ("Kit slips", "Teacher's copy", "Machine card"):
        assert title in told


def test_how_much_paper_it_takes_is_told_and_true(taught: Path, whole: Answer) -> None:
    with pikepdf.open(taught / "all.pdf") as pdf:
        assert len(pdf.pages) % 2 == 0
        leaves = len(pdf.pages) // 2
        assert pdf.Root.ViewerPreferences.PrintScaling == "/None"
    assert f"{leaves} sheets of paper printed on both sides" in " ".join(whole.out.split())
    one = run(taught, "class", "mats", "--everything", "--one-sided", "-o", "one.pdf")
    with pikepdf.open(taught / "one.pdf") as pdf:
        assert f"{len(pdf.pages)} pages, {len(pdf.pages)} sheets of paper printed on one side" in " ".join(
            one.out.split()
        )
        assert len(pdf.pages) < 2 * leaves


def test_the_pack_tells_the_pages_and_the_paper_of_each_part_and_of_all(taught: Path, whole: Answer) -> None:
    told = re.search(r"(\d+) pages, (\d+) sheets of paper printed on both sides", " ".join(whole.out.split()))
    assert told
    text = " ".join(plain(page) for page in pages(taught / "all.pdf")[:4])
    total = re.search(r"In all – – (\d+) (\d+) pages (\d+) (\d+)", text)
    assert total
    assert (total[2], total[3]) == (told[1], told[2])
    run = text[text.index("Printed with this pack") : total.start()]
    parts = re.findall(r"(\d+) (\d+) (\d+) (\d+)(?= [A-Z]| ?$)", run)
    assert len(parts) > 3
    # Of each part: copies, pages of one, sheets of paper printed on both sides, on one.
    assert sum(int(copies) * int(each) for copies, each, _, _ in parts) == int(total[2])
    assert sum(int(both) for _, _, both, _ in parts) == int(total[3])
    assert sum(int(one) for _, _, _, one in parts) == int(total[4])


def test_nothing_stands_on_the_back_of_what_is_cut_from_its_paper(taught: Path, whole: Answer) -> None:
    found = pages(taught / "all.pdf")
    cut = [place for place, text in enumerate(found) if "Kit slips" in text or "Marking strip" in text.title()]
    assert cut
    for place in cut:
        assert place % 2 == 1 or found[place + 1] == "" or "Printed with this pack" in found[place]


@pytest.mark.parametrize("content", [b"garbage", b"%PDF-1.7 cut off", b"%PDF-1.7\n1 0 obj<<>>endobj\n%%EOF"])
def test_a_file_that_is_no_sheet_has_no_pages_and_nothing_is_said(
    tmp_path: Path, content: bytes, caplog: pytest.LogCaptureFixture
) -> None:
    assert pages_of(tmp_path / "missing.pdf") is None
    (tmp_path / "spoilt.pdf").write_bytes(content)
    assert pages_of(tmp_path / "spoilt.pdf") is None
    assert caplog.records == []


@pytest.mark.parametrize("option", ["--everything", "--one-sided"])
def test_what_is_about_the_pack_wants_its_file(taught: Path, option: str) -> None:
    told = run(taught, "class", "mats", option)
    assert told.code == 2
    assert "--everything and --one-sided belong to the class pack; name its file with -o" in " ".join(told.err.split())


def test_a_pdf_is_read_as_it_was_joined() -> None:
    made = io.BytesIO()
    with pikepdf.new() as pdf:
        for _ in range(3):
            pdf.add_blank_page(page_size=(595, 842))
        pdf.save(made)
    three = PrintedPaper("Leaf", made.getvalue(), copies=2)
    strip = PrintedPaper("Strip", made.getvalue(), cut=True)
    # Two copies of three pages, each filled up to four; three pages that are cut from their paper, each with its back.
    with pikepdf.open(io.BytesIO(joined([three, strip], both_sides=True))) as both:
        assert len(both.pages) == 2 * 4 + 3 * 2
    with pikepdf.open(io.BytesIO(joined([three, strip], both_sides=False))) as single:
        assert len(single.pages) == 2 * 3 + 3
    assert three.paper(both_sides=True) + strip.paper(both_sides=True) == 7


def taught_in(folder: Path) -> TaughtClass:
    """The class of the mats, opened in its room."""
    room = opened_room(folder)
    project = room.project("mat")
    plan = load_class(folder / "site/classes/mats.yaml", project, folder)
    return TaughtClass(class_sheet(plan, project, room.shared), project, room.shared, folder, Path(), "A4")


def test_what_changed_since_the_last_class_of_the_project_is_told(tmp_path: Path) -> None:
    def former(day: str, title: str, project: str = "mat") -> str:
        text = CLASS.replace("2031-03-08", day).replace("Mats to measure", title)
        return text.replace("project: mat", f"project: {project}")

    files = {
        "site/site.yaml": "room:\n  name: Gangway\n",
        "projects/mat.yaml": PROJECT,
        "site/classes/mats.yaml": CLASS,
        "site/classes/first.yaml": former("2031-01-11", "First mats"),
        "site/classes/winter.yaml": former("2031-02-01", "Winter mats"),
        "site/classes/later.yaml": former("2031-05-01", "Later mats"),
        "site/classes/other.yaml": former("2031-03-01", "Bags", "bag"),
        "site/classes/broken.yaml": "title: Broken\n",
    }
    here = write_room(tmp_path, files)
    found = last_class(taught_in(here))
    assert found is not None
    assert (found.title, found.day, found.changes) == ("Winter mats", "2031-02-01", ())
    keep(here, {"mat": against_editions(here, opened_room(here).worksheets("mat"), "2031-01", "2031-01-05")[1]})
    text = put(
        PROJECT,
        ("    side: 16 in\n", "    label: Sofa\n    side: 17 in\n"),
        (
            "steps:",
            f"{CHANGES}steps:",
        ),
    )
    (here / "projects/mat.yaml").write_text(text, encoding="utf-8")
    keep(here, {"mat": against_editions(here, opened_room(here).worksheets("mat"), "2031-02", "2031-02-21")[1]})
    found = last_class(taught_in(here))
    assert found is not None
    told, edition = found.changes
    assert told == "2031-02-20: Wider mats."
    assert edition.startswith("Edition mark 2031-02 has taken the place of 2031-01. Changed numbers: ")
    assert edition.endswith("; sizes: Sofa. Hand out no older sheet.")


def test_the_first_class_of_a_project_has_none_before_it(taught: Path) -> None:
    assert last_class(taught_in(taught)) is None

from __future__ import annotations

import re
from pathlib import Path

import pytest
from small_room import ROOM, Speech, bytes_of, edit, made_room, opened, published, site_of

from generator.errors import FaultyFileError
from generator.publishing.inputs import read_inputs
from generator.publishing.jobs import Job
from generator.publishing.make.pages import make_class, make_classes
from generator.publishing.room_files import project_of_class
from generator.publishing.tasks import PAGES, Known
from generator.publishing.write import Output
from generator.rendering.class_pages import day_words

CLASS = """\
title: An evening of flags
project: flag
edition: inch
paper: A4
note: Ines owes us for the cloth.
sessions:
  - day: 2031-03-08
    starts: 18:00
    ends: 20:30
    breaks: 10 minutes
  - day: 2031-03-15
    starts: 18:00
    ends: 20:30
places:
  - size: small
    number: 3
    student: Ines, Ode
  - size: large
bring: scissors, bunting of your own
"""
LATER = CLASS.replace("An evening of flags", "Flags again").replace("2031-0", "2032-0")


def with_classes(room: Path, **classes: str) -> Path:
    folder = room / "site/classes"
    folder.mkdir(exist_ok=True)
    for name, text in classes.items():
        (folder / f"{name}.yaml").write_text(text, encoding="utf-8")
    return room


def jobs_of_pages(room: Path, kind: str) -> list[Job]:
    """Return the jobs for pages of a kind, before anything was made."""
    known = Known(room, read_inputs(room, ""), (), {}, {})
    pages = [page for page in PAGES[0] if page.made_by.startswith(kind)]
    return [job for page in pages for job in page.jobs(known)]


def words(page: Path) -> str:
    text = page.read_text(encoding="utf-8")
    main = text[text.index("<main") : text.index("</main>")]
    return " ".join(re.sub("<[^>]+>", " ", main).split())


@pytest.fixture
def bare(tmp_path: Path) -> Path:
    room = made_room(tmp_path / "bare")
    (room / "site/site.yaml").write_text(f"{ROOM}lends: iron, awl\n", encoding="utf-8")
    return with_classes(room, flags=CLASS)


def test_the_page_of_a_class_tells_when_what_and_what_to_bring(bare: Path) -> None:
    make_class(opened(bare), Output(bare), "flags")
    text = words(bare / "classes/flags.html")
    for told in (
        "An evening of flags We sew: Signal flag",
        "Saturday, 8 March 2031, 18:00 to 20:30",
        "Saturday, 15 March 2031, 18:00 to 20:30",
        "Bring Scissors Bunting of your own The room lends Iron Awl",
        "Timetable",
        "18:00 Cut",
    ):
        assert told in text
    page = (bare / "classes/flags.html").read_text(encoding="utf-8")
    assert 'href="../projects/flag/index.html"' in page
    assert 'href="../projects/flag/flag-sign-up-a4.pdf"' in page


def test_the_page_of_a_class_tells_no_student_no_size_and_no_note(bare: Path) -> None:
    make_class(opened(bare), Output(bare), "flags")
    page = (bare / "classes/flags.html").read_text(encoding="utf-8")
    for secret in ("Ines", "Ode", "small", "large", "Small", "Large", "owes", "8 in", "12 in"):
        assert secret not in page


def test_classes_are_listed_by_their_first_day(bare: Path) -> None:
    room = opened(with_classes(bare, aaa=LATER))
    cards = tuple(make_class(room, Output(bare), name) for name in ("aaa", "flags"))
    make_classes(room, Output(bare), cards)
    assert words(bare / "classes/index.html") == (
        "Classes An evening of flags Signal flag. Saturday, 8 March 2031 and 1 more day "
        "Flags again Signal flag. Monday, 8 March 2032 and 1 more day"
    )
    make_classes(room, Output(bare), ())
    assert words(bare / "classes/index.html") == "Classes There are no classes at the moment."


def test_days_are_told_in_english_whatever_the_machine_speaks() -> None:
    # 2000-01-01 was a Saturday; 31 x 365 + 8 = 11323 days later, 1617 weeks and 4 days, 2031 began on a Wednesday.
    assert day_words("2031-01-01") == "Wednesday, 1 January 2031"
    assert day_words("2031-12-31") == "Wednesday, 31 December 2031"


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("project: flag", "project: flagg", "2:10: there is no project 'flagg'; did you mean 'flag'?"),
        ("size: large", "size: huge", "18:5: the project has no size 'huge'"),
        ("starts: 18:00", "starts: late", "8:13: 'late' is no time of day"),
    ],
)
def test_a_fault_of_a_class_is_told_with_its_place(bare: Path, old: str, new: str, told: str) -> None:
    with_classes(bare, flags=CLASS.replace(old, new, 1))
    with pytest.raises(FaultyFileError) as refusal:
        make_class(opened(bare), Output(bare), "flags")
    assert str(refusal.value).startswith(f"site/classes/flags.yaml:{told}")


@pytest.mark.parametrize(
    "written", ["project: flag", "project:   'flag' # ours", 'PROJECT: "flag"', "project:\n  flag", "{project: flag}"]
)
def test_a_class_is_made_again_whenever_its_project_may_have_changed(bare: Path, written: str) -> None:
    with_classes(bare, flags=CLASS.replace("project: flag", written))
    seen = project_of_class(bare / "site/classes/flags.yaml")
    assert seen in ("flag", "")
    before = jobs_of_pages(bare, "pages:make_class")
    edit(bare / "projects/flag.yaml", "side: 8 in", "side: 9 in")
    after = jobs_of_pages(bare, "pages:make_class")
    assert [job.name for job in after] == ["class: flags"]
    assert after[0].key != before[0].key


def test_a_class_that_comes_changes_or_goes_makes_only_its_own_pages_again(room: Path, speak: Speech) -> None:
    with_classes(room, flags=CLASS)
    assert published(room).made == ["class: flags", "classes", "search", "site"]
    edit(room / "site/classes/flags.yaml", "An evening of flags", "Flags")
    assert published(room).made == ["class: flags", "classes", "search", "site"]
    before = bytes_of(room)
    edit(room / "site/classes/flags.yaml", "size: large", "size: huge")
    code, out, told = speak(room, "publish")
    assert (code, out) == (1, "")
    assert "site/classes/flags.yaml:18:5: the project has no size 'huge'" in told
    assert "Nothing was published; what was published before still stands." in told
    assert bytes_of(room) == before
    (room / "site/classes/flags.yaml").unlink()
    assert published(room).made == ["classes", "search", "site"]
    assert not (site_of(room) / "classes/flags.html").exists()


def test_a_class_stays_as_it_was_when_another_project_is_published_alone(room: Path) -> None:
    with_classes(room, flags=CLASS)
    published(room)
    edit(room / "site/classes/flags.yaml", "An evening of flags", "Flags")
    assert "class: flags" not in published(room, "tablet").made
    assert "An evening of flags" in words(site_of(room) / "classes/flags.html")
    assert published(room).made == ["class: flags", "classes", "search", "site"]

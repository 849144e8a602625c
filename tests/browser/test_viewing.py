"""While one writes: what is saved is seen at once, wrong files are told, and nothing of it is published."""

from __future__ import annotations

import http.client
import io
import time
from collections.abc import Iterator
from pathlib import Path

import pypdf
import pytest
from corrected_room import ROOM, TABLET
from playwright.sync_api import Browser, Page, expect
from written_room import WrittenRoom

from tests.room import edit, write_room

SUMMARY = "Six tucks to begin with, turned to and fro."
SHEET = "projects/tablet/wide/inch.html"
HANDOUT = "projects/tablet/wide/tablet-wide-inch-a4.pdf"


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> Iterator[WrittenRoom]:
    files = {
        "site/site.yaml": ROOM,
        "projects/tablet.yaml": TABLET,
        "site/pages/loft.md": "# The loft\n\nBy the slip.\n",
    }
    room = write_room(tmp_path_factory.mktemp("written") / "room", files)
    (room.parent / "secret.html").write_text("not for the site")
    shown = WrittenRoom(room, "tablet")
    yield shown
    shown.end()


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    context = browser.new_context(service_workers="block")
    yield context.new_page()
    context.close()


def asked(written: WrittenRoom, path: str, host: str = "", method: str = "GET") -> tuple[int, bytes]:
    line = http.client.HTTPConnection("127.0.0.1", written.port, timeout=120)
    line.putrequest(method, path, skip_host=True)
    line.putheader("Host", host or f"127.0.0.1:{written.port}")
    line.endheaders()
    answer = line.getresponse()
    found = answer.status, answer.read()
    line.close()
    return found


def test_what_is_saved_is_seen_in_the_open_page_by_itself(written: WrittenRoom, page: Page) -> None:
    page.goto(written.first)
    expect(page.locator("main")).to_contain_text(SUMMARY)
    edit(written.room / "projects/tablet.yaml", "to begin with", "for a windy day")
    try:
        expect(page.locator("main")).to_contain_text("Six tucks for a windy day", timeout=20_000)
    finally:
        edit(written.room / "projects/tablet.yaml", "for a windy day", "to begin with")
    expect(page.locator("main")).to_contain_text(SUMMARY, timeout=20_000)


def test_a_wrong_file_is_told_in_its_place_and_the_page_comes_back(written: WrittenRoom, page: Page) -> None:
    path = written.room / "projects/tablet.yaml"
    page.goto(written.address + SHEET)
    expect(page.locator("h1")).to_contain_text("Tucked tablet")
    edit(path, "depth: 1/4 in", "depth: 1/4 inn")
    try:
        expect(page.locator("h1")).to_have_text("To mend", timeout=20_000)
        expect(page.locator(".finding")).to_contain_text("projects/tablet.yaml:")
        written.hears("projects/tablet.yaml:")
    finally:
        edit(path, "depth: 1/4 inn", "depth: 1/4 in")
    expect(page.locator("h1")).to_contain_text("Tucked tablet", timeout=20_000)


def test_a_room_that_cannot_be_opened_is_told_too(written: WrittenRoom, page: Page) -> None:
    path = written.room / "site/site.yaml"
    page.goto(written.address + "pages/loft.html")
    expect(page.locator("h1")).to_have_text("The loft")
    edit(path, "editions: inch", "editions: ell")
    try:
        expect(page.locator(".finding")).to_contain_text("site/site.yaml:", timeout=20_000)
    finally:
        edit(path, "editions: ell", "editions: inch")
    expect(page.locator("h1")).to_have_text("The loft", timeout=20_000)


def test_the_handout_says_what_was_saved_last(written: WrittenRoom) -> None:
    path = written.room / "projects/tablet.yaml"
    edit(path, "Tucked tablet", "Tucked tile")
    try:
        while b"Tucked tile" not in asked(written, f"/{SHEET}")[1]:
            time.sleep(0.05)
        status, content = asked(written, f"/{HANDOUT}")
    finally:
        edit(path, "Tucked tile", "Tucked tablet")
    assert status == 200
    assert "Tucked tile" in pypdf.PdfReader(io.BytesIO(content)).pages[0].extract_text()


@pytest.mark.parametrize(
    ("path", "host", "method", "status"),
    [
        ("/", "", "GET", 200),
        ("/", "elsewhere.example", "GET", 403),
        ("/", "", "POST", 501),
        ("/../secret.html", "", "GET", 404),
        ("/projects/%2e%2e/%2e%2e/secret.html", "", "GET", 404),
        ("/assets/../../secret.html", "", "GET", 404),
        ("//etc/passwd", "", "GET", 404),
        ("/offline.js", "", "GET", 404),
    ],
)
def test_only_pages_of_the_room_are_given_and_to_this_machine_only(
    written: WrittenRoom, path: str, host: str, method: str, status: int
) -> None:
    found, content = asked(written, path, host, method)
    assert found == status
    assert b"not for the site" not in content


def test_nothing_is_published_and_nothing_is_left(tmp_path: Path) -> None:
    room = write_room(tmp_path / "room", {"site/site.yaml": ROOM, "projects/tablet.yaml": TABLET})
    written = WrittenRoom(room)
    assert asked(written, f"/{SHEET}")[0] == 200
    assert written.end() == 130
    assert sorted(path.relative_to(room).as_posix() for path in room.rglob("*") if path.is_file()) == [
        "projects/tablet.yaml",
        "site/site.yaml",
    ]
    assert list(written.aside.iterdir()) == []
    assert "Traceback" not in written.said

"""How pages look: by day and in the dark, in the device's own colours, and printed from the browser."""

from __future__ import annotations

import gzip
import io
import re
import threading
from collections.abc import Iterator
from functools import partial
from http.server import ThreadingHTTPServer
from typing import Literal
from urllib.parse import urlsplit

import pypdfium2
import pytest
from looking import LOOKS, Examiner, overflow
from playwright.sync_api import Browser, Page, ViewportSize
from served_site import QuietHandler, Site

from tests.built_site import KINDS

# A phone, a tablet, a desk, and what is left of a window of 1280 px at 400 %.
SIZES = ((360, 740), (768, 900), (1280, 900), (320, 256))
SMALL = KINDS["size"]
PHONE: ViewportSize = {"width": 360, "height": 740}
# What comes before anything is scrolled or touched, words compressed [kB].
FIRST_VIEWS = {"home": 100, "project": 100, "size": 100, "machine": 100, "gallery": 150}
WORDS = (".html", ".css", ".js", ".json", ".webmanifest", ".svg", "/")
LEAST_LETTERS = 12  # in figures on a phone [px]

# The letters of drawings in the page, as large as they come out there [px], and what they say.
LETTERS = """() => Array.from(document.querySelectorAll("main svg text"))
    .filter(text => text.checkVisibility() && text.textContent.trim())
    .map(text => {
        const there = text.getScreenCTM();
        return [parseFloat(getComputedStyle(text).fontSize) * Math.hypot(there.a, there.b), text.textContent];
    })"""
# What is drawn in ink, and the ground that it lies on, as colours that the browser paints.
_STROKES = """() => Array.from(document.querySelectorAll("main svg .line-ink"))
    .map(line => [getComputedStyle(line).stroke, getComputedStyle(document.documentElement).backgroundColor])"""

LEAST_GAP = 3  # between words of different sorts on one line [px]
# Headings of sections in which nothing else is to be seen.
_ALONE = """() => Array.from(document.querySelectorAll("main section > h2"))
    .filter(heading => heading.checkVisibility() && heading.parentElement.innerText.trim() === heading.innerText.trim()
        && !heading.parentElement.querySelector("svg, img"))
    .map(heading => heading.innerText)"""
# How far the name of a size stands from the measure before it, and what is told of it from the name.
_TOGETHER = """() => Array.from(document.querySelectorAll(".choices .label, .choices .facts"))
    .filter(part => part.checkVisibility())
    .map(part => {
        const before = document.createRange();
        before.setStart(part.closest("li"), 0);
        before.setEndBefore(part);
        const seen = Array.from(before.getClientRects()).filter(box => box.width > 1);
        const [own] = part.getClientRects();
        const same = seen.filter(box => box.top < own.bottom && box.bottom > own.top);
        return same.length ? own.left - Math.max(...same.map(box => box.right)) : 99;
    })"""


@pytest.fixture(params=LOOKS)
def looked(request: pytest.FixtureRequest, browser: Browser) -> Iterator[Page]:
    context = browser.new_context(color_scheme=request.param, service_workers="block")
    yield context.new_page()
    context.close()


def one_of_each_kind(site: Site) -> dict[str, str]:
    """The page of every kind that a room has, by what it is; a class and a size between are the first there are."""
    others = ("all.html", "corrections.html", "classes/index.html", "pages/index.html")
    classes = [page for page in site.built.pages if page.startswith("classes/") and page != "classes/index.html"]
    between = [page for page in site.built.pages if re.fullmatch(r"projects/quay-cushion/side-[^/]*/inch\.html", page)]
    return KINDS | {page: page for page in (*others, *classes[:1], *between[:1])}


def test_axe_finds_nothing_by_day_and_in_the_dark_at_four_sizes(looked: Page, site: Site) -> None:
    faults = []
    examiner = Examiner()
    pages = one_of_each_kind(site)
    assert len(pages) >= len(KINDS) + 5
    for kind, page in pages.items():
        looked.goto(site.address + page)
        for width, height in SIZES:
            looked.set_viewport_size({"width": width, "height": height})
            # On every page axe looks at words; what is drawn is looked at here, on the widest.
            found = examiner.faults(looked, drawings=width == 1280)
            faults += [f"{kind} at {width}: {fault}" for fault in found]
            faults += [f"{kind} scrolls sideways at {width}"] if overflow(looked) > 0 else []
    assert faults == []


def test_the_reader_chooses_the_look_of_all_pages(site: Site, browser: Browser) -> None:
    context = browser.new_context(color_scheme="light", service_workers="block")
    page = context.new_page()
    ground = "getComputedStyle(document.documentElement).backgroundColor"
    page.goto(site.address)
    by_day = page.evaluate(ground)
    page.select_option("#look-of", "dark")
    in_the_dark = page.evaluate(ground)
    assert in_the_dark != by_day
    page.goto(site.address + SMALL)
    assert page.evaluate(ground) == in_the_dark
    page.select_option("#look-of", "")
    assert page.evaluate(ground) == by_day
    context.close()


@pytest.mark.parametrize("forced", ["none", "active"])
@pytest.mark.parametrize("look", LOOKS)
def test_lines_of_drawings_differ_from_their_ground(
    look: Literal["light", "dark"], forced: Literal["none", "active"], site: Site, browser: Browser
) -> None:
    context = browser.new_context(color_scheme=look, forced_colors=forced, service_workers="block")
    page = context.new_page()
    page.goto(site.address + SMALL)
    found = page.evaluate(_STROKES)
    assert len(found) > 50
    assert [stroke for stroke, ground in found if stroke == ground] == []
    context.close()


def printed(page: Page) -> int:
    """How many pages of Letter a page takes, printed from the browser."""
    return len(pypdfium2.PdfDocument(io.BytesIO(page.pdf(format="Letter"))))


def test_pages_are_printed_from_the_browser_on_few_pages(site: Site, browser: Browser) -> None:
    page = browser.new_page(service_workers="block")
    most = {KINDS["size"]: 5, KINDS["home"]: 3, KINDS["gallery"]: 2, KINDS["project"]: 3}
    found = {}
    for address in most:
        page.goto(site.address + address)
        found[address] = printed(page)
    assert {address: pages for address, pages in found.items() if pages > most[address]} == {}
    assert min(found.values()) > 0
    page.close()


def test_on_paper_no_heading_stands_alone_and_no_words_run_together(site: Site, browser: Browser) -> None:
    page = browser.new_page(service_workers="block")
    page.emulate_media(media="print")
    alone, together = {}, {}
    for kind, address in one_of_each_kind(site).items():
        page.goto(site.address + address)
        alone[kind], together[kind] = page.evaluate(_ALONE), page.evaluate(_TOGETHER)
    page.close()
    assert together["project"] != []
    assert {kind: found for kind, found in alone.items() if found} == {}
    assert [gap for found in together.values() for gap in found if gap < LEAST_GAP] == []


@pytest.mark.parametrize("kind", FIRST_VIEWS)
def test_the_first_view_on_a_phone_is_light(kind: str, site: Site, browser: Browser) -> None:
    page = browser.new_page(viewport=PHONE, service_workers="block")
    came: dict[str, bytes] = {}
    page.on("response", lambda answer: came.setdefault(answer.url, answer.body()))
    page.goto(site.address + KINDS[kind], wait_until="networkidle")
    # Servers compress words; pictures and fonts are so already.
    sent = sum(len(gzip.compress(body) if url.endswith(WORDS) else body) for url, body in came.items())
    assert len(came) > 6
    assert sent / 1000 <= FIRST_VIEWS[kind]
    page.close()


def test_the_home_page_is_as_long_as_five_screens_of_a_phone_for_two_dozen_projects(
    site: Site, browser: Browser
) -> None:
    # The page of two dozen itself is written and measured in test_finding.py; this room may have more.
    page = browser.new_page(viewport=PHONE, service_workers="block")
    page.goto(site.address)
    projects = page.locator("#cards > li").count()
    assert page.evaluate("document.documentElement.scrollHeight") <= 5 * PHONE["height"] * max(1, projects / 24)
    page.close()


@pytest.mark.parametrize("address", [SMALL, KINDS["machine"], KINDS["project"]])
def test_letters_of_figures_can_be_read_on_a_phone(address: str, site: Site, browser: Browser) -> None:
    page = browser.new_page(viewport=PHONE, service_workers="block")
    page.goto(site.address + address)
    # At the machine only what is shown can be measured, so all is shown.
    page.evaluate("document.documentElement.classList.remove('one-at-a-time')")
    found = page.evaluate(LETTERS)
    assert (len(found) > 20) == (address != KINDS["project"])
    assert [(size, words) for size, words in found if size < LEAST_LETTERS] == []
    page.close()


def test_a_lost_address_shows_the_page_for_it_with_its_styles_and_ways_back(site: Site, browser: Browser) -> None:
    base = urlsplit(site.built.address).path

    class Losing(QuietHandler):
        """A server that has the site where the room says, and shows its page where there is nothing."""

        def translate_path(self, path: str) -> str:
            return super().translate_path("/" + path.removeprefix(base) if path.startswith(base) else "/nothing")

        def send_error(self, code: int, message: str | None = None, explain: str | None = None) -> None:
            page = (site.built.folder / "404.html").read_bytes()
            self.send_response(code)
            self.send_header("Content-Type", "text/html; charset=utf-8")
            self.send_header("Content-Length", str(len(page)))
            self.end_headers()
            self.wfile.write(page)

    with ThreadingHTTPServer(("127.0.0.1", 0), partial(Losing, directory=str(site.built.folder))) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        page = browser.new_page(service_workers="block")
        home = f"http://127.0.0.1:{server.server_port}{base}"
        answer = page.goto(f"{home}projects/no-such/thing/inch.html")
        assert answer is not None
        assert answer.status == 404
        assert page.evaluate("getComputedStyle(document.querySelector('.skip')).position") == "absolute"
        page.get_by_role("link", name="All projects").click()
        assert page.url == f"{home}index.html"
        page.close()
        server.shutdown()

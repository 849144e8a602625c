"""What the pages of a built site weigh, take and show, beside what they are held to: one table, measured in one run.

``PYTHONPATH=. python tests/browser/goals.py`` looks at the demo site, or at the one that ``TUCKWRIGHT_SITE`` names. Not
a test: the tests hold the lines one by one. A value that misses is marked.
"""

from __future__ import annotations

import gzip
import re
import threading
from collections import Counter
from functools import partial
from http.server import ThreadingHTTPServer
from itertools import product
from pathlib import Path
from typing import Literal
from urllib.parse import unquote, urlsplit

import click
from conftest import CHROMIUM, QUIET
from looking import Examiner, overflow
from playwright.sync_api import Browser, Page, sync_playwright
from served_site import QuietHandler, Site
from test_at_the_machine import MACHINE, names, shown, tap_next
from test_look import FIRST_VIEWS, LETTERS, LOOKS, PHONE, SIZES, WORDS, one_of_each_kind, printed

from tests.built_site import KINDS, built_site

FROM_FOLDER = {**dict.fromkeys(FIRST_VIEWS, 130), "gallery": 190}
PRINTED = {"size": 5, "home": 3, "gallery": 2}
SCREENS, PROJECTS = 5, 24
SORTS = {"styles": ".css", "scripts": ".js", "fonts": ".woff2", "pictures": ".webp", "lists": ".json"}
Forced = Literal["none", "active"]

# The least contrast of words on their ground, and of words and lines in figures, as the browser paints them.
CONTRASTS = """() => {
    const brush = document.createElement("canvas").getContext("2d", { willReadFrequently: true });
    const known = new Map();
    const painted = colour => {
        if (!known.has(colour)) {
            brush.clearRect(0, 0, 1, 1); brush.fillStyle = colour; brush.fillRect(0, 0, 1, 1);
            const [red, green, blue, share] = brush.getImageData(0, 0, 1, 1).data;
            known.set(colour, [red, green, blue, share / 255]);
        }
        return known.get(colour);
    };
    const light = colour => colour.slice(0, 3).map(part => part / 255)
        .map(part => part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4)
        .reduce((sum, part, place) => sum + part * [0.2126, 0.7152, 0.0722][place], 0);
    const over = (above, below) => [0, 1, 2].map(one => above[one] * above[3] + below[one] * (1 - above[3]));
    const ground = element => {
        if (!element) return painted(getComputedStyle(document.documentElement).backgroundColor)[3]
            ? painted(getComputedStyle(document.documentElement).backgroundColor) : painted("Canvas");
        const own = painted(getComputedStyle(element).backgroundColor);
        return own[3] === 1 ? own : own[3] === 0 ? ground(element.parentElement)
            : [...over(own, ground(element.parentElement)), 1];
    };
    const ratio = (colour, below) => {
        const [one, other] = [light(over(painted(colour), below)), light(below)].sort((a, b) => b - a);
        return (one + 0.05) / (other + 0.05);
    };
    const least = { words: [99, ""], figures: [99, ""] };
    const meet = (kind, found, what) => { if (found < least[kind][0]) least[kind] = [found, what]; };
    for (const element of document.querySelectorAll("body *:not(svg *, script, option)")) {
        const speaks = Array.from(element.childNodes).some(node => node.nodeType === 3 && node.data.trim());
        if (!speaks || !element.checkVisibility() || element.closest(".unseen, .skip, :disabled")) continue;
        meet("words", ratio(getComputedStyle(element).color, ground(element)), element.textContent.trim().slice(0, 30));
    }
    for (const line of document.querySelectorAll("main svg :is(text, .line-ink, .line-accent)")) {
        if (!line.checkVisibility()) continue;
        const style = getComputedStyle(line);
        const colour = line.matches("text") ? style.fill : style.stroke;
        // Words in the colour of paper stand on what is filled with ink.
        const dark = line.matches(".fill-paper") && line.closest("svg").querySelector(".fill-ink:not(text)");
        const below = dark ? painted(getComputedStyle(dark).fill) : ground(line.closest("svg").parentElement);
        meet("figures", ratio(colour, below), line.outerHTML.slice(0, 40));
    }
    return least;
}"""


class Quiet(ThreadingHTTPServer):
    """A server that says nothing where a page is left while a picture is on its way."""

    def handle_error(self, request: object, client_address: object) -> None:
        """Take no notice."""


def tell(what: str, value: float, hold: float | None = None, *, least: bool = False, more: str = "") -> None:
    """Print one line of the table."""
    missed = hold is not None and (value < hold if least else value > hold)
    held = "" if hold is None else f"hold {hold:g}{'  MISSED' if missed else ''}"
    click.echo(f"{what:<52}{value:8.1f}  {held:<18}{more}")


def sort_of(address: str) -> str:
    return next((sort for sort, end in SORTS.items() if address.endswith(end)), "page")


def weigh(site: Site, browser: Browser) -> None:
    """What comes before anything is scrolled: compressed from a server, and as it is from a folder."""
    for kind, folder in product(FIRST_VIEWS, (False, True)):
        page = browser.new_page(viewport=PHONE, service_workers="block")
        asked = set[str]()
        page.on("requestfinished", lambda request, asked=asked: asked.add(request.url))  # type: ignore[misc]
        page.goto(site.from_folder(KINDS[kind]) if folder else site.address + KINDS[kind], wait_until="networkidle")
        weights: Counter[str] = Counter()
        for url in asked:
            path = unquote(urlsplit(url).path)
            file = Path(path) if folder else site.built.folder / path.lstrip("/")
            content = (file / "index.html" if path.endswith("/") else file).read_bytes()
            if sort_of(path) == "page" and folder:
                drawn = sum(len(one) for one in re.findall(rb"(?s)<svg.*?</svg>", content))
                weights["figures"] += drawn
                weights["words"] += len(content) - drawn
            else:
                weights[sort_of(path)] += len(
                    gzip.compress(content) if path.endswith(WORDS) and not folder else content
                )
        made_of = ", ".join(f"{sort} {weight / 1000:.0f}" for sort, weight in weights.most_common())
        where, hold = ("from a folder", FROM_FOLDER) if folder else ("first view, compressed", FIRST_VIEWS)
        tell(f"{kind}: {where}, kB", weights.total() / 1000, hold[kind], more=made_of)
        page.close()


def show(site: Site, browser: Browser) -> None:
    """How long the home page is, how many taps lead to one's numbers, how large letters are, how much is printed."""
    page = browser.new_page(viewport=PHONE, service_workers="block")
    page.goto(site.address)
    projects = page.locator("#cards > li").count()
    screens = page.evaluate("document.documentElement.scrollHeight") / PHONE["height"]
    tell(f"home: screens of a phone, {projects} projects", screens, SCREENS * max(1.0, projects / PROJECTS))
    taps = 0
    for link in (
        page.get_by_role("link", name="Quay cushion", exact=True),
        page.locator(".choices:visible .size").first,
    ):
        link.click()
        page.wait_for_load_state()
        taps += 1
    assert page.locator(".marks td").count() > 0, "there are no numbers on the page that was found"
    tell("taps from home to the numbers of one's size", taps, 2)
    for kind in ("size", "machine"):
        page.goto(site.address + KINDS[kind])
        page.evaluate("document.documentElement.classList.remove('one-at-a-time')")
        tell(f"{kind}: least letters in a figure, px", min(size for size, _ in page.evaluate(LETTERS)), 12, least=True)
    for kind, hold in PRINTED.items():
        page.goto(site.address + KINDS[kind])
        tell(f"{kind}: printed pages, Letter", printed(page), hold)
    page.close()


def use(site: Site, browser: Browser) -> None:
    """How many taps lead through a sheet at the machine, and whether any pass over words below the bar."""
    for size, letters in (("small", "1"), ("medium", "1"), ("small", "3")):
        context = browser.new_context(viewport={"width": 360, "height": 640}, has_touch=True, service_workers="block")
        page = context.new_page()
        page.add_init_script(f"localStorage.setItem('letters /', '{letters}')")
        page.goto(site.address + MACHINE.replace("small", size))
        taps, hidden, stops = 0, 0, len(names(page)) - 1
        now = shown(page)
        while now.next:
            tap_next(page, now)
            taps += 1
            before, now = now, shown(page)
            hidden += bool(before.unseen) and now.stop != before.stop
        if letters == "1":
            tell(f"taps at the machine, {size}: {stops} stops", taps, 1.1 * stops)
        tell(f"stops of it with words that Next skips, letters {letters}", hidden, 0)
        context.close()


def look(site: Site, browser: Browser) -> None:
    """Contrast, what axe finds, and what scrolls sideways, on a page of every kind."""
    pages = one_of_each_kind(site)
    for scheme, forced in (("light", "none"), ("dark", "none"), ("light", "active"), ("dark", "active")):
        page = _page(browser, scheme, forced)
        worst = {"words": (99.0, ""), "figures": (99.0, "")}
        for kind, address in pages.items():
            page.goto(site.address + address)
            page.evaluate("document.documentElement.classList.remove('one-at-a-time')")
            for sort, (ratio, what) in page.evaluate(CONTRASTS).items():
                worst[sort] = min(worst[sort], (ratio, f"{kind}: {what}"))
        for sort, hold in (("words", 7), ("figures", 4.5)):
            told = f"{scheme}{', forced colours' if forced == 'active' else ''}"
            tell(f"contrast of {sort}, {told}", worst[sort][0], hold, least=True, more=worst[sort][1])
        page.context.close()
    faults, sideways = list[str](), 0
    for scheme in LOOKS:
        page, examiner = _page(browser, scheme, "none"), Examiner()
        for address, (width, height) in product(pages.values(), SIZES):
            page.set_viewport_size({"width": width, "height": height})
            page.goto(site.address + address)
            faults += examiner.faults(page, drawings=width == SIZES[1][0])
            sideways += overflow(page) > 0
        page.context.close()
    tell(f"axe: faults, {len(pages)} kinds of page, 2 looks, 3 sizes", len(faults), 0, more="; ".join(faults[:3]))
    tell("pages that scroll sideways there", sideways, 0)


def _page(browser: Browser, scheme: str, forced: str) -> Page:
    context = browser.new_context(color_scheme=scheme, forced_colors=forced, service_workers="block")  # type: ignore[arg-type]
    return context.new_page()


def main() -> None:
    """Measure and print."""
    built = built_site()
    handler = partial(QuietHandler, directory=str(built.folder))
    with Quiet(("127.0.0.1", 0), handler) as server, sync_playwright() as driver:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        site = Site(built, f"http://127.0.0.1:{server.server_port}/")
        browser = driver.chromium.launch(executable_path=CHROMIUM, args=list(QUIET))
        for part in (weigh, show, use, look):
            part(site, browser)
        browser.close()
        server.shutdown()


if __name__ == "__main__":
    main()

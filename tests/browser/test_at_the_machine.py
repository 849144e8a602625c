from __future__ import annotations

import os
import shutil
import threading
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial
from http.server import ThreadingHTTPServer
from itertools import product
from pathlib import Path

import pytest
from looking import LOOKS, axe_finds, overflow
from playwright.sync_api import Browser, Error, Locator, Page, expect
from served_site import QuietHandler, Site, Watched

MACHINE = "projects/quay-cushion/small/inch-at-the-machine.html"
# A phone upright, one on its side, and what is left of a window of 1280 px at 400 %.
WINDOWS = ((360, 640), (740, 320), (320, 256))
VOICES = """Object.defineProperty(window, "speechSynthesis", { value: {
    getVoices: () => %s,
    addEventListener() {}, cancel() {}, speak(telling) { (window.spoken ??= []).push(telling.text); },
} });"""


def opened(watched: Watched, site: Site, stop: str = "") -> Page:
    watched.page.goto(site.address + MACHINE + (f"#{stop}" if stop else ""))
    return watched.page


def on(page: Page) -> Locator:
    return page.locator(".stop.on")


def name(page: Page) -> str:
    found = on(page).get_attribute("id")
    assert found
    return found


def names(page: Page) -> list[str]:
    found: list[str] = page.locator(".stop").evaluate_all("stops => stops.map(stop => stop.id)")
    return found


def progress(page: Page) -> str:
    return page.locator("#progress").inner_text()


def test_one_instruction_is_shown_at_a_time_and_the_next_one_gets_the_focus(site: Site, watched: Watched) -> None:
    page = opened(watched, site)
    assert page.locator(".stop:visible").count() == 1
    assert page.locator("#back").is_disabled()
    page.keyboard.press("ArrowRight")
    while name(page) == names(page)[0]:
        page.keyboard.press("ArrowRight")
    assert name(page) == names(page)[1]
    assert page.evaluate("document.activeElement.id") == f"{name(page)}-title"
    assert progress(page).startswith("Step 1 of ")


# Which stop is shown; its words that have not been in sight, from its top to where the page stands now; where the
# button to go on is, nowhere while it can do nothing.
_SHOWN = """() => {
    const moves = document.getElementById("moves"), bar = moves.getBoundingClientRect();
    const covers = getComputedStyle(moves).position === "fixed" && bar.left < innerWidth / 2;
    const floor = covers ? bar.top : innerHeight;
    const unseen = Array.from(document.querySelectorAll(".stop.on h2, .stop.on .say > *"))
        .filter(one => one.getBoundingClientRect().height > 0 && one.getBoundingClientRect().bottom > floor + 9)
        .map(one => one.textContent.trim().slice(0, 60));
    const next = document.getElementById("next"), box = next.getBoundingClientRect();
    const there = [box.left + box.width / 2, box.top + box.height / 2];
    const [stop] = document.querySelectorAll(".stop.on");
    return [stop.id, unseen, next.disabled ? null : there];
}"""


@dataclass(frozen=True)
class Shown:
    """What a page at the machine shows, and where on the screen it is tapped to go on [px]."""

    stop: str
    unseen: list[str]
    next: tuple[float, float] | None


def shown(page: Page) -> Shown:
    return Shown(*page.evaluate(_SHOWN))


def tap_next(page: Page, seen: Shown) -> None:
    """Put a finger on the button to go on; where it rests below the words, scroll to it first."""
    assert seen.next
    if seen.next[1] < (page.viewport_size or {"height": 0})["height"]:
        page.touchscreen.tap(*seen.next)
    else:
        page.locator("#next").tap()


@pytest.mark.parametrize("letters", ["1", "3"])
@pytest.mark.parametrize("window", WINDOWS)
@pytest.mark.parametrize("way", ["tap", "key"])
def test_nothing_is_passed_over_that_has_not_been_in_sight(
    way: str, window: tuple[int, int], letters: str, site: Site, watched: Watched
) -> None:
    page = watched.page
    page.set_viewport_size({"width": window[0], "height": window[1]})
    page.add_init_script(f"localStorage.setItem('letters /', '{letters}')")
    opened(watched, site)
    passed, taps = [], 0
    wanted = names(page)
    now = shown(page)
    seen = [now.stop]
    rests = page.evaluate("getComputedStyle(document.getElementById('moves')).position") == "static"
    while now.stop != wanted[-1]:
        if way == "tap":
            tap_next(page, now)
        else:
            page.keyboard.press("PageDown")
        taps += 1
        assert taps < 1000
        before, now = now, shown(page)
        if now.stop != before.stop:
            # Who taps a bar that rests below the words has come past them.
            passed += [] if rests and way == "tap" else before.unseen
            seen.append(now.stop)
    assert passed == []
    assert seen == wanted


@pytest.mark.parametrize("window", WINDOWS[:2])
@pytest.mark.parametrize("size", ["small", "medium"])
def test_as_many_taps_as_stops_and_a_tenth_more_where_the_letters_are_small(
    size: str, window: tuple[int, int], site: Site, watched: Watched
) -> None:
    page = watched.page
    page.set_viewport_size({"width": window[0], "height": window[1]})
    page.goto(site.address + MACHINE.replace("small", size))
    taps: Counter[str] = Counter()
    while (now := shown(page)).next:
        taps[now.stop] += 1
        tap_next(page, now)
    stops = len(names(page)) - 1
    assert name(page) == names(page)[-1]
    assert taps.total() <= 1.1 * stops, (taps.total(), stops, [one for one in taps if taps[one] > 1])
    # Ticks, checks and rows never go on below what is seen.
    working = page.locator(".stop:is(.lengths, .check, .row)").evaluate_all("all => all.map(one => one.id)")
    assert [one for one in working if taps[one] > 1] == []


def test_the_keys_lead_through_all_stops_and_back(site: Site, watched: Watched) -> None:
    page = opened(watched, site)
    last = names(page)[-1]
    for key in (" ", "PageDown", "ArrowRight", "Enter"):
        before = name(page)
        while name(page) == before:
            page.keyboard.press(key)
    for _ in range(400):
        if name(page) == last:
            break
        page.keyboard.press("ArrowRight")
    assert name(page) == last
    for key in ("Shift+Space", "PageUp", "ArrowLeft"):
        before = names(page).index(name(page))
        page.keyboard.press(key)
        assert names(page).index(name(page)) == before - 1
    page.locator("#back").focus()
    before = names(page).index(name(page))
    page.keyboard.press("Enter")
    assert names(page).index(name(page)) == before - 1


def test_a_stroke_turns_the_page(site: Site, watched: Watched) -> None:
    page = opened(watched, site, "front-marks-top")
    stroke(page, 300, 80)
    while name(page) == "front-marks-top":
        stroke(page, 300, 80)
    assert name(page) == "front-marks-bottom"
    stroke(page, 80, 300)
    assert name(page) == "front-marks-top"
    stroke(page, 300, 270)
    assert name(page) == "front-marks-top"


def stroke(page: Page, start: int, end: int) -> None:
    """Draw a finger across the page, as the browser itself is told by a touch screen."""
    session = page.context.new_cdp_session(page)
    for kind, points in (
        ("touchStart", [{"x": start, "y": 300}]),
        ("touchMove", [{"x": end, "y": 302}]),
        ("touchEnd", []),
    ):
        session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})
    page.wait_for_timeout(50)


def test_checks_and_rows_are_stops_and_the_place_in_a_row_is_kept(site: Site, watched: Watched) -> None:
    page = opened(watched, site, "front-check-6")
    assert on(page).locator(".big").inner_text() == "6 1/2 in"
    assert on(page).locator(".right").inner_text() == "6 3/8 to 6 5/8 in is right."
    page.goto(site.address + MACHINE + "#front-row-2")
    assert "Begin at the right" in on(page).locator(".begin").inner_text()
    on(page).locator(".turns button").nth(4).tap()
    assert on(page).locator("[aria-pressed=true]").get_attribute("aria-label") == "5: away"
    on(page).locator(".turns button").nth(6).tap()
    page.goto(site.address + MACHINE)
    assert name(page) == "front-row-2"
    assert on(page).locator("[aria-pressed=true]").get_attribute("aria-label") == "7: away"


def test_ticks_are_kept_over_a_reload_and_belong_to_their_edge(site: Site, watched: Watched) -> None:
    page = opened(watched, site, "front-marks-top")
    boxes = on(page).locator("input")
    assert boxes.count() == 14
    for place in (0, 1, 3):
        boxes.nth(place).check()
    boxes.nth(1).uncheck()
    page.reload()
    found = on(page).locator("input").evaluate_all("boxes => boxes.map(box => box.checked)")
    assert [place for place, done in enumerate(found) if done] == [0, 3]
    assert page.locator("#front-marks-bottom input:checked").count() == 0


@pytest.mark.parametrize("stop", ["front-marks-top", "front-check-6", "front-row-1"])
@pytest.mark.parametrize("window", WINDOWS[:2])
def test_everything_to_touch_is_large_enough(window: tuple[int, int], stop: str, site: Site, watched: Watched) -> None:
    watched.page.set_viewport_size({"width": window[0], "height": window[1]})
    page = opened(watched, site, stop)
    small = page.evaluate(
        """Array.from(document.querySelectorAll("#machine :is(a, button, summary, label)"))
            .filter(one => one.checkVisibility()).map(one => [one.textContent.trim(), one.getBoundingClientRect()])
            .filter(([, box]) => box.width > 0 && Math.min(box.height, 44) < 40)
            .map(([text, box]) => `${text}: ${box.height}`)"""
    )
    assert [one for one in small if not one.startswith("Edition mark") and not one.startswith("Draft")] == []


def test_axe_finds_nothing_at_any_kind_of_stop(site: Site, watched: Watched) -> None:
    page, faults = opened(watched, site), []
    for stop in (names(page)[0], "front-marks-top", "front-check-6", "front-row-1"):
        page.goto(site.address + MACHINE + f"#{stop}")
        assert name(page) == stop
        for (width, height), look in product(WINDOWS, LOOKS):
            page.set_viewport_size({"width": width, "height": height})
            page.emulate_media(color_scheme=look)
            faults += [f"{stop}, {look}, at {width}: {fault}" for fault in axe_finds(page)]
            faults += [f"{stop} scrolls sideways at {width}"] if overflow(page) > 0 else []
    assert faults == []


@pytest.mark.parametrize("way", ["http", "file"])
def test_the_place_is_kept_over_a_reload(way: str, site: Site, watched: Watched) -> None:
    page = watched.page
    page.goto(site.address + MACHINE if way == "http" else site.from_folder(MACHINE))
    page.locator("#places summary").click()
    page.locator("#places a").nth(3).click()
    expect(page.locator("#progress")).to_contain_text("Step 4 of")
    before = progress(page), name(page)
    page.goto((site.address + MACHINE) if way == "http" else site.from_folder(MACHINE))
    assert (progress(page), name(page)) == before
    assert page.locator(".stop:visible").count() == 1
    assert watched.said == []


def test_letters_come_in_three_sizes_and_stay_so(site: Site, watched: Watched) -> None:
    page = opened(watched, site)
    sizes = []
    for _ in range(3):
        sizes.append(on(page).evaluate("stop => parseFloat(getComputedStyle(stop).fontSize)"))
        page.tap("#larger")
    assert sizes == sorted(set(sizes))
    assert on(page).evaluate("stop => parseFloat(getComputedStyle(stop).fontSize)") == sizes[0]
    page.tap("#larger")
    page.reload()
    assert on(page).evaluate("stop => parseFloat(getComputedStyle(stop).fontSize)") == sizes[1]


@pytest.mark.parametrize(
    ("voices", "offered"),
    [
        ("[]", False),
        ("[{ lang: 'en-GB', localService: false, name: 'far away' }]", False),
        ("[{ lang: 'fr-FR', localService: true, name: 'of another language' }]", False),
        ("[{ lang: 'fr-FR', localService: true }, { lang: 'en-GB', localService: true, name: 'here' }]", True),
    ],
)
def test_only_a_voice_of_this_device_and_language_reads(
    voices: str, offered: bool, site: Site, watched: Watched
) -> None:
    watched.page.add_init_script(VOICES % voices)
    page = opened(watched, site)
    assert page.locator("#aloud").is_visible() is offered


def test_what_is_read_aloud_has_its_fractions_in_words(site: Site, watched: Watched) -> None:
    watched.page.add_init_script(VOICES % "[{ lang: 'en-GB', localService: true, name: 'here' }]")
    watched.page.add_init_script("window.SpeechSynthesisUtterance = function (text) { this.text = text; };")
    page = opened(watched, site, "front-check-6")
    page.tap("#aloud")
    (told,) = page.evaluate("window.spoken")
    assert told.startswith("Sew tucks 1 to 6, then measure.")
    assert "6 and a half inches" in told
    assert "6 and 3 eighths to 6 and 5 eighths inches is right." in told
    page.keyboard.press("ArrowRight")
    page.keyboard.press("ArrowRight")
    assert len(page.evaluate("window.spoken")) > 1
    page.tap("#aloud")
    assert page.locator("#aloud").get_attribute("aria-pressed") == "false"


def test_a_browser_that_stores_nothing_still_shows_the_stops(site: Site, watched: Watched) -> None:
    watched.page.add_init_script(
        "Object.defineProperty(window, 'localStorage', { get() { throw new Error('refused'); } })"
    )
    page = opened(watched, site, "front-marks-top")
    on(page).locator("input").first.check()
    page.keyboard.press("ArrowLeft")
    assert name(page) != "front-marks-top"
    assert watched.said == []


def test_without_a_script_the_whole_sheet_stands_in_order(site: Site, browser: Browser) -> None:
    context = browser.new_context(java_script_enabled=False, viewport={"width": 360, "height": 700})
    page = context.new_page()
    page.goto(site.address + MACHINE)
    stops = page.locator(".stop")
    assert stops.count() > 10
    assert all(stop.is_visible() for stop in stops.all())
    assert page.locator(".row .turns li").first.is_visible()
    assert not page.locator("#next").is_visible()
    assert not page.locator("#larger").is_visible()
    page.locator("#places summary").click()
    page.locator("#places a").nth(2).click()
    assert page.locator(":target").get_attribute("data-step") == "3"
    context.close()


def test_printed_from_the_browser_every_stop_is_there(site: Site, watched: Watched) -> None:
    page = opened(watched, site)
    page.emulate_media(media="print")
    assert page.locator(".stop:visible").count() == page.locator(".stop").count()
    assert not page.locator("#next").is_visible()


def test_forced_colours_keep_every_cell_and_button_apart_from_its_ground(site: Site, watched: Watched) -> None:
    watched.page.emulate_media(forced_colors="active")
    page = opened(watched, site, "front-row-1")
    found = page.evaluate(
        """Array.from(document.querySelectorAll(".stop.on .turns button, #moves button"), one => {
            const style = getComputedStyle(one);
            return [style.color, style.backgroundColor, style.borderTopColor, style.borderTopWidth];
        })"""
    )
    assert len(found) == 16
    for letters, ground, edge, width in found:
        assert letters != ground
        assert edge != ground or letters != ground
        assert width != "0px"


@pytest.mark.parametrize("where", ["as a whole server", "below a path"])
def test_once_open_the_page_and_its_sheet_work_without_a_network(where: str, site: Site, watched: Watched) -> None:
    page = watched.page
    page.goto((site.below if where == "below a path" else site.address) + MACHINE)
    expect(page.locator("#kept")).to_contain_text("is kept on this device", timeout=10_000)
    page.locator("#places summary").click()
    page.locator("#places a").nth(1).click()
    page.context.set_offline(True)
    page.reload()
    assert progress(page).startswith("Step 2 of")
    page.keyboard.press("ArrowRight")
    assert page.evaluate("document.fonts.check('16px \"Fira Sans\"')")
    page.click(".leave")
    expect(page.locator("h1")).to_contain_text("Quay cushion")
    assert page.evaluate("Array.from(document.styleSheets, sheet => sheet.cssRules.length > 0)") == [True] * 4
    page.context.set_offline(False)


def test_what_was_not_kept_is_not_promised_without_a_network(site: Site, watched: Watched) -> None:
    page = opened(watched, site)
    expect(page.locator("#kept")).to_contain_text("is kept on this device", timeout=10_000)
    page.context.set_offline(True)
    with pytest.raises(Error, match="ERR_"):
        page.goto(site.address + MACHINE.replace("small", "large"))
    page.context.set_offline(False)


@pytest.fixture
def copied(site: Site, tmp_path: Path) -> Iterator[tuple[str, Path]]:
    """A copy of the page with what it needs, which a test may change, and where it is served."""
    for found in ("assets", "offline.js", "sheets.json", MACHINE, MACHINE.replace("-at-the-machine", "")):
        source, target = site.built.folder / found, tmp_path / found
        target.parent.mkdir(parents=True, exist_ok=True)
        if source.is_dir():
            shutil.copytree(source, target)
        else:
            shutil.copy2(source, target)
    with ThreadingHTTPServer(("127.0.0.1", 0), partial(QuietHandler, directory=str(tmp_path))) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_port}/{MACHINE}", tmp_path / MACHINE
        server.shutdown()


def test_a_page_that_was_kept_is_replaced_when_the_site_has_a_newer_one(
    copied: tuple[str, Path], watched: Watched
) -> None:
    page, (address, newer) = watched.page, copied
    page.goto(address)
    expect(page.locator("#kept")).to_contain_text("is kept on this device", timeout=10_000)
    newer.write_text(newer.read_text(encoding="utf-8").replace("</h1>", " once more</h1>"), encoding="utf-8")
    # The server tells the age of a file in whole seconds; a second edit within one would count as the same file.
    os.utime(newer, (newer.stat().st_atime, newer.stat().st_mtime + 5))
    page.reload()
    expect(page.locator("h1")).to_contain_text("once more")
    expect(page.locator("#kept")).to_contain_text("is kept on this device", timeout=10_000)
    page.context.set_offline(True)
    page.reload()
    expect(page.locator("h1")).to_contain_text("once more")
    page.context.set_offline(False)


def test_the_screen_stays_on_while_the_page_is_shown(site: Site, watched: Watched) -> None:
    watched.page.context.grant_permissions(["screen-wake-lock"])
    page = opened(watched, site)
    expect(page.locator("#awake")).to_be_visible()
    assert watched.said == []

from __future__ import annotations

import os
import shutil
import threading
from functools import partial
from http.server import ThreadingHTTPServer
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Error, Page, expect
from served_site import QuietHandler, Site, Watched

MACHINE = "projects/quay-cushion/small/inch-at-the-machine.html"


def opened(watched: Watched, site: Site) -> Page:
    watched.page.goto(site.address + MACHINE)
    return watched.page


def whole_page(site: Site) -> str:
    return (site.built.folder / MACHINE).read_text(encoding="utf-8")


def progress(page: Page) -> str:
    return page.locator("#progress").inner_text()


def now(page: Page) -> str:
    return " ".join(page.locator(".stop:not([hidden]) .tuck").inner_text().split())


def rows_step(page: Page) -> str:
    """The name of the first row's stop."""
    found = page.locator(".stop.row").first.get_attribute("id")
    assert found
    return found


def test_one_step_is_shown_at_a_time_and_the_next_one_gets_the_focus(site: Site, watched: Watched) -> None:
    page = opened(watched, site)
    assert page.locator(".stop:visible").count() == 1
    assert page.locator("#back").is_disabled()
    page.click("#next")
    assert page.locator(".stop:visible").get_attribute("id") == "step-2"
    assert progress(page).startswith("Step 2 of ")
    assert page.evaluate("document.activeElement.id") == "step-2-title"


def test_the_turns_of_a_row_are_told_tuck_by_tuck_as_the_sheet_lists_them(site: Site, watched: Watched) -> None:
    page = opened(watched, site)
    first = rows_step(page)
    listed = page.locator(f"#{first} .tucks li").all_text_contents()
    page.select_option("#go", first)
    told = []
    for number in range(1, len(listed) + 1):
        text = now(page)
        assert text.startswith(f"Tuck {number} of {len(listed)} from the right: ")
        told.append(text.split(": ")[1].split()[0])
        assert page.locator(f"#{first} [aria-current]").inner_text().strip() == told[-1]
        page.click("#next")
    assert told == [word.strip() for word in listed]
    assert "row 2 of" in progress(page)
    page.click("#back")
    assert now(page).startswith(f"Tuck {len(listed)} of {len(listed)}")


def test_the_keyboard_alone_leads_through_all_stops_and_back(site: Site, watched: Watched) -> None:
    page = opened(watched, site)
    stops, tucks = page.locator(".stop").count(), page.locator(".stop.row .tucks li").count()
    rows = page.locator(".stop.row").count()
    for _ in range(stops - rows + tucks - 1):
        page.keyboard.press("ArrowRight")
    assert page.locator("#next").is_disabled()
    assert progress(page) == f"Step {stops - rows} of {stops - rows}"
    page.keyboard.press("ArrowRight")
    for _ in range(stops - rows + tucks - 1):
        page.keyboard.press("ArrowLeft")
    assert page.locator("#back").is_disabled()


def test_enter_and_space_turn_the_page_and_still_work_the_buttons_once(site: Site, watched: Watched) -> None:
    page = opened(watched, site)
    for key, step in (("Enter", 2), (" ", 3), ("Shift+Space", 2)):
        page.keyboard.press(key)
        assert progress(page).startswith(f"Step {step} of")
    page.locator("#next").focus()
    page.keyboard.press("Enter")
    assert progress(page).startswith("Step 3 of")


def test_a_tap_and_a_stroke_turn_the_page(site: Site, watched: Watched) -> None:
    page = opened(watched, site)
    page.tap("#next")
    assert progress(page).startswith("Step 2 of")
    stroke(page, 300, 80)
    assert progress(page).startswith("Step 3 of")
    stroke(page, 80, 300)
    assert progress(page).startswith("Step 2 of")
    stroke(page, 300, 270)
    assert progress(page).startswith("Step 2 of")


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


def test_everything_to_touch_is_large_enough_and_nothing_covers_the_heading(site: Site, watched: Watched) -> None:
    page = opened(watched, site)
    page.select_option("#go", rows_step(page))
    for found in page.locator("#back, #next, #go, .machine .back a").all():
        box = found.bounding_box()
        assert box
        assert min(box["width"], box["height"]) >= 44
    title = page.locator(".stop:visible h2").bounding_box()
    assert title
    assert title["y"] >= 0
    assert title["y"] + title["height"] < page.locator("#moves").bounding_box()["y"]  # type: ignore[index]


@pytest.mark.parametrize("stop", ["step-4", "row"])
def test_axe_finds_nothing_at_a_step_and_at_a_row(stop: str, site: Site, watched: Watched) -> None:
    page = opened(watched, site)
    page.select_option("#go", rows_step(page) if stop == "row" else stop)
    found = Axe().run(page)
    assert found.violations_count == 0, found.generate_report()


@pytest.mark.parametrize("way", ["http", "file"])
def test_the_place_is_kept_over_a_reload(way: str, site: Site, watched: Watched) -> None:
    page = watched.page
    page.goto(site.address + MACHINE if way == "http" else site.from_folder(MACHINE))
    page.select_option("#go", rows_step(page))
    page.click("#next")
    before = progress(page), now(page)
    page.reload()
    assert (progress(page), now(page)) == before
    assert page.locator(".stop:visible").count() == 1
    assert page.evaluate("localStorage.length") == 1
    assert watched.said == []


def test_a_browser_that_stores_nothing_still_shows_the_steps(site: Site, watched: Watched) -> None:
    watched.page.add_init_script(
        "Object.defineProperty(window, 'localStorage', { get() { throw new Error('refused'); } })"
    )
    page = opened(watched, site)
    page.click("#next")
    assert progress(page).startswith("Step 2 of")
    assert watched.said == []


def test_without_a_script_the_whole_sheet_stands_in_order(site: Site, browser: Browser) -> None:
    context = browser.new_context(java_script_enabled=False, viewport={"width": 360, "height": 700})
    page = context.new_page()
    page.goto(site.address + MACHINE)
    stops = page.locator(".stop")
    assert all(stop.is_visible() for stop in stops.all())
    assert page.locator(".row .tucks li").first.is_visible()
    assert not page.locator("#next").is_visible()
    assert not page.locator("#go").is_visible()
    context.close()


def test_printed_from_the_browser_every_step_is_there(site: Site, watched: Watched) -> None:
    page = opened(watched, site)
    page.emulate_media(media="print")
    assert page.locator(".stop:visible").count() == page.locator(".stop").count()
    assert not page.locator("#next").is_visible()


@pytest.mark.parametrize("where", ["as a whole server", "below a path"])
def test_once_open_the_page_and_its_sheet_work_without_a_network(where: str, site: Site, watched: Watched) -> None:
    page = watched.page
    page.goto((site.below if where == "below a path" else site.address) + MACHINE)
    expect(page.locator("#kept")).to_be_visible(timeout=10_000)
    page.click("#next")
    page.context.set_offline(True)
    page.reload()
    assert progress(page).startswith("Step 2 of")
    page.click("#next")
    assert progress(page).startswith("Step 3 of")
    assert page.evaluate("document.fonts.check('16px \"Fira Sans\"')")
    page.click(".back a")
    expect(page.locator("h1")).to_contain_text("Quay cushion")
    assert page.evaluate("Array.from(document.styleSheets, sheet => sheet.cssRules.length > 0)") == [True] * 4
    page.context.set_offline(False)


def test_what_was_not_kept_is_not_promised_without_a_network(site: Site, watched: Watched) -> None:
    page = opened(watched, site)
    expect(page.locator("#kept")).to_be_visible(timeout=10_000)
    page.context.set_offline(True)
    with pytest.raises(Error, match="ERR_"):
        page.goto(site.address + MACHINE.replace("small", "large"))
    page.context.set_offline(False)


def test_a_page_that_was_kept_is_replaced_when_the_site_has_a_newer_one(
    site: Site, watched: Watched, tmp_path: Path
) -> None:
    for name in ("assets", "offline.js", MACHINE, MACHINE.replace("-at-the-machine", "")):
        copy(site.built.folder / name, tmp_path / name)
    page, newer = watched.page, tmp_path / MACHINE
    with ThreadingHTTPServer(("127.0.0.1", 0), partial(QuietHandler, directory=str(tmp_path))) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        page.goto(f"http://127.0.0.1:{server.server_port}/{MACHINE}")
        expect(page.locator("#kept")).to_be_visible(timeout=10_000)
        newer.write_text(newer.read_text(encoding="utf-8").replace("Step 1 of", "First of"), encoding="utf-8")
        # The server tells the age of a file in whole seconds; a second edit within one would count as the same file.
        os.utime(newer, (newer.stat().st_atime, newer.stat().st_mtime + 5))
        page.reload()
        assert progress(page).startswith("First of")
        page.context.set_offline(True)
        page.reload()
        assert progress(page).startswith("First of")
        page.context.set_offline(False)
        server.shutdown()


def copy(source: Path, target: Path) -> None:
    target.parent.mkdir(parents=True, exist_ok=True)
    if source.is_dir():
        shutil.copytree(source, target)
    else:
        shutil.copy2(source, target)


def test_the_screen_stays_on_while_the_page_is_shown(site: Site, watched: Watched) -> None:
    page = opened(watched, site)
    expect(page.locator("#awake")).to_be_visible()
    assert watched.said == []


def test_at_four_times_its_size_the_buttons_leave_room_for_the_step(site: Site, watched: Watched) -> None:
    watched.page.set_viewport_size({"width": 320, "height": 256})
    page = opened(watched, site)
    page.click("#next")
    page.evaluate("window.scrollTo({ top: document.documentElement.scrollHeight, behavior: 'instant' })")
    moves, step = page.evaluate(
        """["#moves", ".stop:not([hidden])"].map(found => {
            const box = document.querySelector(found).getBoundingClientRect();
            return { top: box.top, bottom: box.bottom };
        })"""
    )
    assert moves["bottom"] - moves["top"] <= 256 / 2
    assert step["bottom"] <= moves["top"]

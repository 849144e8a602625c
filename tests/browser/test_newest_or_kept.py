"""A correction reaches whoever is online, and whoever is not is told that nobody has looked: case by case.

The server does not say how long its answers may be kept, so browsers keep old files for weeks; the site lies below a
path.
"""

from __future__ import annotations

import re
import time
from pathlib import Path

import pytest
from corrected_room import FORMER, NEWER, Server
from playwright.sync_api import Browser, BrowserContext, Page, expect

WIDE = "projects/tablet/wide/inch-at-the-machine.html"
NARROW = "projects/tablet/narrow/inch-at-the-machine.html"
SHEET = "projects/tablet/wide/inch.html"


def mark(page: Page) -> str:
    """The edition mark that the page itself bears, whatever it says of it."""
    found = re.search(r"20\d\d-\d\d", page.locator("#state a").inner_text())
    assert found
    return found[0]


def kept(phone: BrowserContext, server: Server, name: str = WIDE) -> Page:
    """Open a page at the machine, and wait until it is kept on the device."""
    page = phone.new_page()
    page.goto(server.page(name))
    expect(page.locator("#kept")).to_contain_text("is kept on this device", timeout=10_000)
    expect(page.locator("#told")).to_have_text("Newest, checked just now.")
    assert mark(page) == FORMER
    return page


def go_on(page: Page) -> None:
    """Go to the next stop, however far down this one goes on."""
    shown = page.locator(".stop.on").get_attribute("id")
    while page.locator(".stop.on").get_attribute("id") == shown:
        page.keyboard.press("ArrowRight")


def told(page: Page, words: str, timeout: int = 10_000) -> None:
    expect(page.locator("#told")).to_contain_text(words, timeout=timeout)


def correct(server: Server, sites: dict[str, Path]) -> None:
    server.folder = sites[NEWER]


def test_every_visit_after_a_correction_shows_the_corrected_sheet(
    phone: BrowserContext, server: Server, sites: dict[str, Path]
) -> None:
    page = kept(phone, server)
    correct(server, sites)
    for _ in range(3):
        page.goto("about:blank")
        page.goto(server.page(WIDE))
        assert mark(page) == NEWER
        told(page, "Newest, checked just now.")


def test_without_a_network_the_kept_copy_says_so_and_has_the_last_correction(
    phone: BrowserContext, server: Server, sites: dict[str, Path]
) -> None:
    page = kept(phone, server)
    phone.set_offline(True)
    page.reload()
    told(page, "Kept copy of ")
    told(page, "not checked: no network.")
    assert mark(page) == FORMER
    phone.set_offline(False)
    told(page, "Newest, checked just now.")
    correct(server, sites)
    page.reload()
    expect(page.locator("#kept")).to_contain_text("is kept on this device")
    phone.set_offline(True)
    page.reload()
    told(page, "not checked")
    assert mark(page) == NEWER
    page.goto(server.page(SHEET))
    assert mark(page) == NEWER
    assert page.evaluate("Array.from(document.styleSheets, sheet => sheet.cssRules.length > 0)") == [True] * 4
    phone.set_offline(False)


def test_a_slow_answer_is_waited_for_three_seconds_and_what_comes_late_is_kept_and_told(
    phone: BrowserContext, server: Server, sites: dict[str, Path]
) -> None:
    page = kept(phone, server)
    correct(server, sites)
    server.slowness = 5.0
    server.befalls = lambda path: "slow" if path == WIDE or path == "sheets.json" else ""
    began = time.monotonic()
    page.reload(wait_until="domcontentloaded")
    waited = time.monotonic() - began
    assert 2.9 < waited < 4.5
    assert mark(page) == FORMER
    told(page, "Corrected since")
    server.befalls = lambda _path: ""
    phone.set_offline(True)
    page.reload()
    assert mark(page) == NEWER
    phone.set_offline(False)


@pytest.mark.parametrize("befallen", ["503", "portal", "half"])
def test_what_is_no_page_of_the_room_counts_as_no_answer(
    befallen: str, phone: BrowserContext, server: Server, sites: dict[str, Path]
) -> None:
    page = kept(phone, server)
    correct(server, sites)
    server.befalls = lambda path: befallen if path in (WIDE, "sheets.json") else ""
    for _ in range(2):
        page.reload()
        assert mark(page) == FORMER
        told(page, "Kept copy of ")
        told(page, "not checked: the site does not answer.")
    server.befalls = lambda _path: ""
    page.reload()
    assert mark(page) == NEWER


def test_what_is_gone_is_gone(phone: BrowserContext, server: Server) -> None:
    page = kept(phone, server)
    server.befalls = lambda path: "404" if path == WIDE else ""
    answer = page.reload()
    assert answer
    assert answer.status == 404


def test_a_site_that_is_only_half_there_never_leaves_a_new_page_with_old_parts(
    phone: BrowserContext, server: Server, sites: dict[str, Path]
) -> None:
    page = kept(phone, server)
    correct(server, sites)
    server.befalls = lambda path: "404" if path == "assets/machine.js" else ""
    page.reload()
    assert mark(page) == NEWER
    page.wait_for_timeout(500)
    phone.set_offline(True)
    page.reload()
    assert mark(page) == FORMER
    expect(page.locator(".stop:visible")).to_have_count(1)
    phone.set_offline(False)


def test_a_second_tab_finds_out_as_well(phone: BrowserContext, server: Server, sites: dict[str, Path]) -> None:
    first = kept(phone, server)
    second = phone.new_page()
    second.goto(server.page(SHEET))
    told(second, "Newest, checked just now.")
    correct(server, sites)
    second.reload()
    assert mark(second) == NEWER
    assert mark(first) == FORMER
    first.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    told(first, "Corrected since: this sheet has changed.")


def test_a_sheet_corrected_while_it_is_open_says_so_and_shows_the_newest_at_a_tap(
    phone: BrowserContext, server: Server, sites: dict[str, Path]
) -> None:
    page = kept(phone, server)
    correct(server, sites)
    page.evaluate("window.dispatchEvent(new Event('online'))")
    told(page, "Corrected since: this sheet has changed.")
    phone.set_offline(True)
    page.evaluate("window.dispatchEvent(new Event('online'))")
    page.wait_for_timeout(300)
    told(page, "Corrected since")
    phone.set_offline(False)
    page.tap("#show-newest")
    told(page, "Newest, checked just now.")
    assert mark(page) == NEWER


def test_without_a_worker_the_list_of_the_newest_still_tells_a_correction(
    browser: Browser, server: Server, sites: dict[str, Path]
) -> None:
    context = browser.new_context(service_workers="block")
    page = context.new_page()
    page.goto(server.page(WIDE))
    told(page, "Newest, checked just now.")
    correct(server, sites)
    page.goto("about:blank")
    page.goto(server.page(WIDE))
    # The browser has kept the old page, as it may; only the list says otherwise.
    assert mark(page) == FORMER
    told(page, "Corrected since: this sheet has changed.")
    page.click("#show-newest")
    told(page, "Newest, checked just now.")
    assert mark(page) == NEWER
    context.close()


def test_a_new_mark_with_the_same_numbers_says_nothing(
    phone: BrowserContext, server: Server, sites: dict[str, Path]
) -> None:
    page = kept(phone, server, NARROW)
    go_on(page)
    correct(server, sites)
    page.evaluate("window.dispatchEvent(new Event('online'))")
    told(page, "Newest, checked just now.")
    page.reload()
    assert mark(page) == NEWER
    assert page.locator("#corrected").is_hidden()
    expect(page.locator(".stop:visible")).to_have_attribute(
        "id", page.locator(".stop").nth(1).get_attribute("id") or ""
    )


def test_where_there_is_no_room_the_newest_is_shown_and_the_kept_copy_stays_whole(
    phone: BrowserContext, server: Server, sites: dict[str, Path]
) -> None:
    page = kept(phone, server)
    session = phone.new_cdp_session(page)
    used = page.evaluate("navigator.storage.estimate().then(found => found.usage)")
    stores = page.evaluate("caches.keys()")
    origin = re.sub(r"(?<=\d)/.*", "", server.address)
    session.send("Storage.overrideQuotaForOrigin", {"origin": origin, "quotaSize": used + 1000})
    correct(server, sites)
    page.reload()
    assert mark(page) == NEWER
    page.wait_for_timeout(1500)
    # What was begun and found no room is taken away again, however slow the machine is.
    page.wait_for_function("async stores => (await caches.keys()).join() === stores", arg=",".join(stores))
    phone.set_offline(True)
    page.reload()
    assert mark(page) == FORMER
    told(page, "Kept copy of ")
    expect(page.locator(".stop:visible")).to_have_count(1)
    phone.set_offline(False)


def test_where_nothing_can_be_kept_the_page_says_so(phone: BrowserContext, server: Server) -> None:
    page = phone.new_page()
    page.goto(server.page("sheets.json"))
    session = phone.new_cdp_session(page)
    origin = re.sub(r"(?<=\d)/.*", "", server.address)
    session.send("Storage.overrideQuotaForOrigin", {"origin": origin, "quotaSize": 2000})
    page.goto(server.page(WIDE))
    expect(page.locator("#kept")).to_contain_text("could not be kept", timeout=10_000)
    expect(page.locator(".stop:visible")).to_have_count(1)


def test_a_worker_that_is_replaced_while_a_page_is_open_loses_nothing(
    phone: BrowserContext, server: Server, sites: dict[str, Path], tmp_path: Path
) -> None:
    page = kept(phone, server)
    go_on(page)
    before = page.locator("#progress").inner_text()
    newer = tmp_path / "offline.js"
    newer.write_text((sites[FORMER] / "offline.js").read_text(encoding="utf-8") + "// newer\n", encoding="utf-8")
    server.replaced = {"offline.js": newer}
    changed = page.evaluate(
        """async () => {
            const worker = navigator.serviceWorker;
            const changed = new Promise(resolve => worker.addEventListener("controllerchange", resolve));
            const registration = await worker.getRegistration();
            await registration.update();
            await Promise.race([changed, new Promise(resolve => setTimeout(resolve, 8000, "waited in vain"))]);
            return registration.waiting === null && registration.active.state;
        }"""
    )
    assert changed in ("activating", "activated")
    assert server.asked.count("/sewing/room/offline.js") > 1
    go_on(page)
    page.click("#back")
    phone.set_offline(True)
    page.reload()
    told(page, "Kept copy of ")
    assert page.locator("#progress").inner_text() == before
    phone.set_offline(False)
    correct(server, sites)
    page.reload()
    assert mark(page) == NEWER


def test_what_was_corrected_since_the_work_began_is_told_with_its_numbers_before_a_stitch_more(
    phone: BrowserContext, server: Server, sites: dict[str, Path]
) -> None:
    page = kept(phone, server)
    go_on(page)
    go_on(page)
    place = page.locator(".stop:visible").get_attribute("id")
    correct(server, sites)
    page.reload()
    expect(page.locator("#corrected")).to_be_visible()
    assert page.locator(".stop:visible").count() == 0
    assert page.locator("#began").inner_text() == f"You began by a sheet with the edition mark {FORMER}. Since then:"
    assert page.locator("#changes li").all_inner_texts() == ["lap: 2 is now 2 1/2"]
    page.reload()
    expect(page.locator("#corrected")).to_be_visible()
    page.tap("#go-on")
    assert page.locator(".stop:visible").get_attribute("id") == place
    page.reload()
    expect(page.locator("#corrected")).to_be_hidden()
    assert page.locator(".stop:visible").get_attribute("id") == place


def test_the_work_can_be_begun_again_after_a_correction(
    phone: BrowserContext, server: Server, sites: dict[str, Path]
) -> None:
    page = kept(phone, server)
    go_on(page)
    correct(server, sites)
    page.reload()
    page.tap("#begin-again")
    assert page.locator(".stop:visible").get_attribute("id") == page.locator(".stop").first.get_attribute("id")


def test_numbers_that_no_kept_edition_has_are_told_to_be_others(phone: BrowserContext, server: Server) -> None:
    page = phone.new_page()
    page.goto(server.page(WIDE))
    go_on(page)
    page.evaluate(
        """() => { const [key] = Object.keys(localStorage), place = JSON.parse(localStorage.getItem(key));
            localStorage.setItem(key, JSON.stringify({ ...place, numbers: "of a draft" })); }"""
    )
    page.reload()
    expect(page.locator("#corrected")).to_be_visible()
    assert page.locator("#began").inner_text().startswith("The sheet was worked again since.")


def test_a_place_that_is_there_no_longer_is_told_and_the_one_in_its_place_is_shown(
    phone: BrowserContext, server: Server
) -> None:
    page = phone.new_page()
    page.goto(server.page(WIDE))
    go_on(page)
    page.evaluate(
        """() => { const [key] = Object.keys(localStorage), place = JSON.parse(localStorage.getItem(key));
            localStorage.setItem(key, JSON.stringify({ ...place, stop: "taken-out", number: 2 })); }"""
    )
    page.reload()
    expect(page.locator("#moved")).to_be_visible()
    assert page.locator(".stop:visible").get_attribute("id") == page.locator(".stop").nth(2).get_attribute("id")


@pytest.mark.parametrize(
    ("typed", "kind", "words"),
    [
        ("tablet wide 2031-02", "changed", "Tucked tablet, Window seat, inch, 2031-02: it has changed."),
        ("Tucked tablet, window seat inch edition Edition mark 2031-02", "changed", "it has changed"),
        ("tablet bedside in 2031-02", "good", "Tucked tablet, Bedside, inch, 2031-02: nothing on it has changed."),
        ("TABLET 2031-03", "good", "that is the newest. Your sheet is good."),
        ("tablet 2031-02", "asked", "Which sheet: Bedside, inch; Window seat, inch?"),
        ("tablet", "asked", "now type the edition mark"),
        ("pillow 2031-02", "asked", "Type the name of the project as it is printed"),
        ("2031-02", "asked", "Type the name of the project"),
        ("tablet window 2030-01", "asked", "now type the edition mark"),
    ],
)
def test_the_foot_of_a_printed_sheet_is_answered(
    typed: str, kind: str, words: str, phone: BrowserContext, server: Server, sites: dict[str, Path]
) -> None:
    correct(server, sites)
    page = phone.new_page()
    page.goto(server.page("corrections.html"))
    page.fill("#foot", typed)
    verdict = page.locator("#verdict")
    expect(verdict).to_have_attribute("data-is", kind)
    assert words in verdict.inner_text()
    if kind == "changed":
        assert " ".join(verdict.locator("tbody tr").inner_text().split()) == "The whole sheet lap 2 2 1/2"


def test_the_code_of_a_printed_sheet_leads_to_what_is_otherwise_on_it(
    phone: BrowserContext, server: Server, sites: dict[str, Path]
) -> None:
    correct(server, sites)
    page = phone.new_page()
    page.goto(server.page(f"{SHEET}#mark-{FORMER}"))
    assert page.locator(".given:visible").count() == 1
    assert "lap: 2 is now 2 1/2" in page.locator(".given:visible").inner_text().lower()
    page.goto(server.page(f"{SHEET}#mark-{NEWER}"))
    assert "It is good." in page.locator(".given:visible").inner_text()
    page.goto(server.page(SHEET))
    assert page.locator(".given:visible").count() == 0
    page.click("#state a")
    assert page.locator(":target").get_attribute("id") == "project-tablet"

"""A student with a measure of her own: from the home page to the first mark, a finished row and through a correction.

The site of a small room is corrected while she works.
"""

from __future__ import annotations

from itertools import product
from pathlib import Path

import pytest
from corrected_room import NEWER, Server
from looking import LOOKS, axe_finds, overflow
from playwright.sync_api import Browser, BrowserContext, Page, expect

OWN = "projects/tablet/side-7-in/inch.html"
PROJECT = "projects/tablet/index.html"
WINDOWS = ((360, 640), (1280, 800), (320, 256))


def next_stop(page: Page, wanted: str) -> int:
    """Go on to a stop by the button, and return how many taps that took."""
    taps = 0
    while page.locator(".stop.on").get_attribute("id") != wanted:
        page.locator("#next").tap()
        taps += 1
        assert taps < 200
    return taps


def test_a_student_finds_her_numbers_in_two_taps_sews_a_row_and_hears_of_a_correction(
    phone: BrowserContext, server: Server, sites: dict[str, Path]
) -> None:
    page = phone.new_page()
    page.goto(server.page("index.html"))
    page.locator("#cards a").first.tap()
    page.locator(".steps-between a", has_text="7").tap()
    page.wait_for_url("**/" + OWN)
    expect(page.locator("h1")).to_have_text("Tucked tablet: 7 in side")
    # By hand: 17 tucks, p 1/4: margins (7 - 16/4)/2 = 1 1/2; first mark 1/2 + 1 1/2 + 1/4 = 2 1/4 in.
    expect(page.locator(".marks td").first).to_have_text("1 2 1/4")
    expect(page.locator("#told")).to_have_text("Newest, checked just now.")
    page.get_by_role("link", name="At the machine").tap()
    next_stop(page, "front-marks-top")
    boxes = page.locator(".stop.on input")
    boxes.first.check()
    next_stop(page, "front-row-1")
    page.locator(".stop.on .turns button").nth(2).tap()
    server.folder = sites[NEWER]
    page.reload()
    expect(page.locator("#corrected")).to_contain_text("Corrected since you began")
    # What lies between follows: half way from 2 in to the corrected 2 1/2 in.
    expect(page.locator("#changes li")).to_have_text(["lap: 2 is now 2 1/4"])
    page.locator("#go-on").tap()
    assert page.locator(".stop.on").get_attribute("id") == "front-row-1"
    expect(page.locator(".stop.on [aria-pressed=true]")).to_have_attribute("aria-label", "3: away")
    expect(page.locator("#next")).to_have_text("Row finished")
    assert next_stop(page, "front-row-2") == 1
    page.locator("#places summary").tap()
    page.locator("#places a", has_text="Lap the back").tap()
    expect(page.locator(".stop.on")).to_contain_text("Let the halves lap by 2 1/4 in")
    page.goto(server.page("index.html"))
    expect(page.locator("#left")).to_contain_text("7 in side")


@pytest.mark.parametrize(
    ("typed", "said", "leads"),
    [
        ("7", "It is worked out: 7 in side", [OWN]),
        ("7.0 in", "It is worked out: 7 in side", [OWN]),
        ("6", "There is a sheet for it: 6 in side", ["projects/tablet/narrow/inch.html"]),
        ("7 1/2", "It lies between 7 in side", [OWN, "projects/tablet/wide/inch.html"]),
        ("7\u00bd", "It lies between 7 in side", [OWN, "projects/tablet/wide/inch.html"]),
        ("7,5", "It lies between 7 in side", [OWN, "projects/tablet/wide/inch.html"]),
        ("9", "The sizes go from 6 in side", ["projects/tablet/narrow/inch.html", "projects/tablet/wide/inch.html"]),
        ("seven", "Write it as 14 1/2 or 14.5.", []),
        ("", "", []),
    ],
)
def test_a_measure_that_is_typed_is_answered_with_the_sizes_that_fit(
    typed: str, said: str, leads: list[str], phone: BrowserContext, server: Server
) -> None:
    page = phone.new_page()
    page.goto(server.page(PROJECT))
    page.fill(".typed input", typed)
    answer = page.locator(".typed [role=status]")
    words = " ".join(answer.inner_text().split())
    assert words.startswith(said)
    assert (words == "") == (said == "")
    hrefs = answer.locator("a").evaluate_all("all => all.map(one => one.href)")
    assert hrefs == [server.page(address) for address in leads]


def test_without_a_script_every_size_is_a_link_and_there_is_no_field(browser: Browser, server: Server) -> None:
    context = browser.new_context(java_script_enabled=False, viewport={"width": 360, "height": 700})
    page = context.new_page()
    page.goto(server.page(PROJECT))
    assert page.locator(".typed").is_hidden()
    assert [link.inner_text().split()[1] for link in page.locator(".steps-between a").all()] == ["6", "7", "8"]
    page.locator(".steps-between a").nth(1).click()
    assert page.url == server.page(OWN)
    context.close()


def test_its_pages_are_for_everybody_and_no_wider_than_the_window(phone: BrowserContext, server: Server) -> None:
    page, faults = phone.new_page(), []
    for address in (PROJECT, OWN, OWN.replace(".html", "-at-the-machine.html")):
        page.goto(server.page(address))
        for (width, height), look in product(WINDOWS, LOOKS):
            page.set_viewport_size({"width": width, "height": height})
            page.emulate_media(color_scheme=look)
            faults += [f"{address}, {look}, at {width}: {fault}" for fault in axe_finds(page)]
            faults += [f"{address} scrolls sideways at {width}"] if overflow(page) > 0 else []
    assert faults == []

"""Every page of the whole built demo site, in a real browser."""

from __future__ import annotations

from collections import defaultdict

import pytest
from looking import PHONE, WIDTHS, Examiner, overflow, too_wide
from playwright.sync_api import Browser
from served_site import Site, Watched

from generator.rendering.addresses import MISSING
from tests.built_site import PARTS, ROOM, BuiltSite

SMALL = "projects/quay-cushion/small/inch.html"
# A panel of several breadths: the largest cutting layout, the most turns.
WIDE = "projects/harbour-headboard/wide/metric.html"


def one_of_every_kind(built: BuiltSite) -> list[str]:
    """All pages of the room, a project, a small and a wide size, and the pages for the machine of both."""
    machines = [page.replace(".html", "-at-the-machine.html") for page in (SMALL, WIDE)]
    return [*built.files_of(ROOM, ".html"), "projects/quay-cushion/index.html", SMALL, WIDE, *machines]


@pytest.mark.parametrize("part", PARTS)
def test_every_page_fits_every_width_asks_for_nothing_elsewhere_and_axe_finds_nothing(
    part: str, site: Site, sweeping: Watched, examiner: Examiner
) -> None:
    faults, widths = defaultdict(list), list(WIDTHS)
    sweeping.page.set_viewport_size({"width": WIDTHS[0], "height": 900})
    # What is shown for a lost address links from where the room says that its site lies; test_look serves it there.
    for page in (one for one in site.built.pages_of(part) if one != MISSING):
        sweeping.forget()
        sweeping.page.goto(site.below + page)
        for width in widths:
            faults[page] += too_wide(sweeping.page, width)
            faults[page] += examiner.faults(sweeping.page) if width == PHONE else []
        # The next page is opened at the width at which this one is left.
        widths.reverse()
        if page.endswith("-at-the-machine.html") and sweeping.page.locator(".stop:visible").count() != 1:
            faults[page].append("does not show one step at a time")
        faults[page] += sweeping.faults(site.below)
        assert len(sweeping.asked) > 4
    assert {page: found for page, found in faults.items() if found} == {}
    assert faults


def test_one_page_of_every_kind_opens_from_its_folder_without_a_server(site: Site, sweeping: Watched) -> None:
    faults = defaultdict(list)
    # A server shows what is for lost addresses; in a folder nothing leads there.
    for page in (one for one in one_of_every_kind(site.built) if one != MISSING):
        sweeping.forget()
        sweeping.page.set_viewport_size({"width": 320, "height": 256})
        sweeping.page.goto(site.from_folder(page))
        fonts = sweeping.page.evaluate("document.fonts.ready.then(fonts => Array.from(fonts, font => font.status))")
        if "loaded" not in fonts or "error" in fonts:
            faults[page].append(f"its fonts are {fonts}")
        if overflow(sweeping.page) > 0:
            faults[page].append("scrolls sideways")
        faults[page] += sweeping.faults("file:")
    assert {page: found for page, found in faults.items() if found} == {}


def test_tables_told_on_a_phone_are_still_tables_to_those_who_hear_them(site: Site, watched: Watched) -> None:
    page = watched.page
    page.goto(site.address + SMALL)
    tree = page.context.new_cdp_session(page).send("Accessibility.getFullAXTree")["nodes"]
    roles = [node["role"]["value"] for node in tree if not node["ignored"]]
    rows, cells = page.locator("tr").count(), page.locator("td").count()
    assert page.evaluate("getComputedStyle(document.querySelector('.told')).display") == "block"
    assert roles.count("row") == rows
    assert roles.count("cell") + roles.count("gridcell") == cells
    assert roles.count("columnheader") == page.locator("th[scope=col]").count()


def test_every_page_reads_without_a_script(site: Site, browser: Browser) -> None:
    context = browser.new_context(java_script_enabled=False, viewport={"width": 360, "height": 700})
    page = context.new_page()
    for name in one_of_every_kind(site.built):
        page.goto(site.address + name)
        # Measures in the other unit, notes on older marks and what a small screen leaves out wait to be asked for.
        waiting = "details *, [hidden], [hidden] *, [data-in=metric], [data-in=metric] *, .given *, .card .about *"
        waiting += ", .pictured .near, .next li ~ li"
        told = page.locator(f"main :is(h1, h2, h3, p, li, td, figure):not({waiting})")
        assert told.count() > 1
        assert told.filter(visible=False).count() == 0, name
    context.close()

"""One switch for inches and centimetres, kept on every page."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, Page
from served_site import Site, Watched

PROJECT = "projects/quay-cushion/index.html"
PAGES = (
    *("index.html", PROJECT, "gallery.html", "corrections.html", "reference/index.html", "reference/tucks.html"),
    *(
        "reference/shop.html",
        "reference/cautions.html",
        "pages/index.html",
        "pages/glossary.html",
        "classes/index.html",
    ),
)


def seen(page: Page, unit: str) -> int:
    return page.locator(f"[data-in={unit}]").filter(visible=True).count()


@pytest.mark.parametrize("way", ["http", "file"])
def test_the_unit_that_is_chosen_is_kept_on_every_page(way: str, site: Site, watched: Watched) -> None:
    page = watched.page
    address = (lambda name: site.address + name) if way == "http" else site.from_folder
    page.goto(address(PROJECT))
    assert (seen(page, "inch") > 0, seen(page, "metric")) == (True, 0)
    page.check("#unit-metric", force=True)
    assert (seen(page, "inch"), seen(page, "metric") > 0) == (0, True)
    for name in PAGES:
        page.goto(address(name))
        assert page.locator("html").get_attribute("data-unit") == "metric"
        assert page.locator("#unit-metric").is_checked()
        assert seen(page, "inch") == 0, name
    assert len(PAGES) > 10
    page.check("#unit-inch", force=True)
    page.goto(address("reference/tucks.html"))
    assert (seen(page, "inch") > 0, seen(page, "metric")) == (True, 0)
    assert watched.said == []


def test_the_unit_is_known_before_anything_of_the_page_stands_there(site: Site, watched: Watched) -> None:
    page = watched.page
    page.add_init_script("localStorage.setItem('unit', 'metric')")
    page.add_init_script(
        """new MutationObserver(() => {
            if (document.body && window.unitAtFirst === undefined) {
                window.unitAtFirst = document.documentElement.dataset.unit || "none";
            }
        }).observe(document, { childList: true, subtree: true });"""
    )
    page.goto(site.address + PROJECT)
    assert page.evaluate("window.unitAtFirst") == "metric"
    assert seen(page, "metric") > 0


def test_without_a_script_the_switch_holds_for_the_page(site: Site, browser: Browser) -> None:
    context = browser.new_context(java_script_enabled=False, viewport={"width": 360, "height": 740})
    page = context.new_page()
    page.goto(site.address + PROJECT)
    assert (seen(page, "inch") > 0, seen(page, "metric")) == (True, 0)
    page.check("#unit-metric", force=True)
    assert (seen(page, "inch"), seen(page, "metric") > 0) == (0, True)
    context.close()


def test_a_sheet_is_one_edition_and_its_switch_leads_to_the_other(site: Site, watched: Watched) -> None:
    page = watched.page
    page.goto(site.address + "projects/quay-cushion/small/inch.html")
    links = page.locator(".units a")
    assert links.all_inner_texts() == ["in", "cm"]
    assert links.first.get_attribute("aria-current") == "page"
    links.nth(1).click()
    page.wait_for_url("**/small/metric.html")


def test_a_size_is_found_by_the_measure_that_decides_in_two_taps_from_the_home_page(
    site: Site, watched: Watched
) -> None:
    page = watched.page
    page.goto(site.address)
    page.get_by_role("link", name="Quay cushion", exact=True).tap()
    first = page.locator(".choices:visible .size").first
    assert " ".join(first.inner_text().split()).startswith("13 in pad")
    assert "from seam to seam, without pulling" in page.locator(".how:visible").inner_text()
    first.tap()
    page.wait_for_url("**/quay-cushion/small/inch.html")

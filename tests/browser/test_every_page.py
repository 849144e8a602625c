from __future__ import annotations

from collections import defaultdict

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page
from served_site import Site, Watched

WIDTHS = (360, 768, 1280)
KINDS = {
    "home": "index.html",
    "project": "projects/quay-cushion/index.html",
    "size": "projects/quay-cushion/small/inch.html",
    "machine": "projects/quay-cushion/small/inch-at-the-machine.html",
    "gallery": "gallery.html",
    "reference": "reference/index.html",
    "tuck tables": "reference/tucks.html",
    "shop tables": "reference/shop.html",
    "cautions": "reference/cautions.html",
    "glossary": "pages/glossary.html",
    "corrections": "corrections.html",
}


def overflow(page: Page) -> int:
    found: int = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
    return found


@pytest.mark.parametrize("kind", KINDS)
def test_a_page_fits_every_width_and_axe_finds_nothing(kind: str, site: Site, watched: Watched) -> None:
    page = watched.page
    page.goto(site.address + KINDS[kind])
    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 900})
        assert overflow(page) <= 0, f"scrolls sideways at {width}"
    for width in WIDTHS[::2]:
        page.set_viewport_size({"width": width, "height": 900})
        found = Axe().run(page)
        assert found.violations_count == 0, found.generate_report()
    assert watched.said == []
    assert all(address.startswith((site.address, "data:")) for address in watched.asked)


@pytest.mark.parametrize("kind", KINDS)
def test_a_page_opens_from_its_folder_and_reflows_at_four_times_its_size(
    kind: str, site: Site, watched: Watched
) -> None:
    # 1280 px at 400 % are 320 px wide and, on a screen of 1024 px, 256 px high.
    page = watched.page
    page.set_viewport_size({"width": 320, "height": 256})
    page.goto((site.folder / KINDS[kind]).as_uri())
    assert overflow(page) <= 0
    assert "Fira Sans" in page.evaluate("getComputedStyle(document.documentElement).fontFamily")
    assert watched.said == []
    assert all(address.startswith(("file:", "data:")) for address in watched.asked)


def test_every_link_between_pages_leads_somewhere(site: Site, watched: Watched) -> None:
    broken = defaultdict(set)
    for name in site.pages:
        watched.page.goto((site.folder / name).as_uri())
        for address in watched.page.eval_on_selector_all("a[href]", "links => links.map(link => link.href)"):
            path, _, fragment = address.removeprefix("file://").partition("#")
            if path.endswith(".pdf"):
                continue
            file = site.folder / path
            if not file.is_file() or (fragment and f'id="{fragment}"' not in file.read_text(encoding="utf-8")):
                broken[name].add(address)
    assert broken == {}

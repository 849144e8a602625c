"""What looks at pages in the browser finds what it looks for."""

from __future__ import annotations

import pytest
from looking import NARROWEST, WIDTHS, Examiner, too_wide
from playwright.sync_api import Browser, Page

PAGE = """<!DOCTYPE html><html lang="en"><head><title>Samples</title><style>
body {{ color: #222; background: #fff }}
{style}
</style></head><body><main><h1>Samples</h1><ul><li>calico</li><li>lawn</li><li>silk</li></ul>{more}</main></body></html>"""


@pytest.fixture
def page(browser: Browser) -> Page:
    return browser.new_page(viewport={"width": 360, "height": 700})


def shown(page: Page, style: str = "", more: str = "") -> Page:
    page.set_content(PAGE.format(style=style, more=more))
    return page


def test_a_good_page_has_no_faults(page: Page) -> None:
    assert Examiner().faults(shown(page)) == []
    assert [fault for width in WIDTHS for fault in too_wide(page, width)] == []


@pytest.mark.parametrize(
    "style",
    [
        "li { color: #bbb }",
        "li:nth-child(3) { color: #bbb }",
        "ul { background: #444 }",
        "main { opacity: 0.4 }",
    ],
)
def test_words_that_are_hard_to_see_are_found_after_many_good_pages(page: Page, style: str) -> None:
    examiner = Examiner()
    assert examiner.faults(shown(page)) == []
    assert examiner.faults(shown(page, more="<p>Another page.</p>")) == []
    found = examiner.faults(shown(page, style))
    assert {fault.partition(":")[0] for fault in found} == {"color-contrast"}


def test_a_page_has_its_other_faults_however_many_pages_came_before(page: Page) -> None:
    examiner = Examiner()
    for _ in range(2):
        [found] = examiner.faults(shown(page, more='<img src="data:,x">'))
        assert found.startswith("image-alt:")


def test_what_is_inside_a_drawing_is_left_alone_until_it_is_asked_for_and_stays_on_the_page(page: Page) -> None:
    drawing = '<svg role="img" aria-label="A tuck" width="9" height="9"><g role="img" id="tuck"></g></svg>'
    opened, examiner = shown(page, more=drawing), Examiner()
    assert examiner.faults(opened) == []
    assert opened.locator("svg > #tuck").count() == 1
    [found] = examiner.faults(opened, drawings=True)
    assert found.startswith("svg-img-alt:")


def test_what_is_too_wide_or_cut_off_is_found(page: Page) -> None:
    assert too_wide(shown(page, "h1 { width: 600px }"), 360) == ["scrolls sideways at 360 px"]
    cut = shown(page, "h1 { width: 90px; overflow: hidden; white-space: nowrap; font-size: 60px }")
    assert too_wide(cut, NARROWEST) == ["cuts off <h1>Samples</h1>"]

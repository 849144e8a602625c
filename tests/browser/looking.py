"""What is looked at on a page in the browser: an open page comes in, what is wrong with it goes out as sentences."""

from __future__ import annotations

from collections.abc import Iterable

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page

# The last is what is left of a window of 1280 px at 400 %.
WIDTHS = (1280, 768, 360, 320)
# The words of a drawing stand in a picture that is told as one; they are looked at on one page of every kind.
WITHOUT_DRAWINGS = {"include": [["html"]], "exclude": [["svg[role=img] > *"]]}

_CUT_OFF = """() => Array.from(document.querySelectorAll("body *:not(svg *)"))
    .filter(found => ["hidden", "clip"].includes(getComputedStyle(found).overflowX))
    .filter(found => found.clientWidth > 1 && found.scrollWidth > found.clientWidth + 1)
    .map(found => found.outerHTML.slice(0, 80))"""


def overflow(page: Page) -> int:
    """How far [px] a page can be scrolled sideways."""
    found: int = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
    return found


def too_wide(page: Page, widths: Iterable[int] = WIDTHS) -> list[str]:
    """Where the page scrolls sideways or cuts something off; it is left as wide as the last of the widths."""
    faults = []
    for width in widths:
        page.set_viewport_size({"width": width, "height": 900 if width > 320 else 256})
        if overflow(page) > 0:
            faults.append(f"scrolls sideways at {width} px")
    return [*faults, *(f"cuts off {element}" for element in page.evaluate(_CUT_OFF))]


def found_by_axe(page: Page, axe: Axe, *, drawings: bool = False) -> list[str]:
    """Everything that axe finds by any of its rules: those of WCAG 2.2 A and AA, and what it calls best practice."""
    result = axe.run(page, context=None if drawings else WITHOUT_DRAWINGS)
    assert len(result.response["testEngine"]["version"].split(".")) == 3, "axe has not run"
    return [
        f"{found['id']}: {found['help']}: {node['html'][:120]}"
        for found in result.response["violations"]
        for node in found["nodes"][:3]
    ]

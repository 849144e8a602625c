"""What is looked at on a page in the browser: an open page comes in, what is wrong with it goes out as sentences."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any, Literal

from axe_playwright_python.base import AXE_SCRIPT
from playwright.sync_api import Page

# 320 px are what is left of a window of 1280 px at 400 %.
NARROWEST, PHONE = 320, 360
LOOKS: tuple[Literal["light", "dark"], ...] = ("light", "dark")
WIDTHS = (1280, 768, NARROWEST, PHONE)
# The words of a drawing stand in a picture that is told as one; they are looked at on one page of every kind.
DRAWINGS = "svg[role=img] > *"
# What is inside a drawing is taken out while axe looks, and put back: axe compares every element of the page with every
# one that it is told to leave alone, which takes longer than all of its rules.
_TAKEN_OUT = """() => { window.takenOut = Array.from(document.querySelectorAll("svg[role=img]"), drawing => {
    const inside = Array.from(drawing.childNodes);
    drawing.replaceChildren();
    return [drawing, inside];
}) }"""
_PUT_BACK = "() => window.takenOut.forEach(([drawing, inside]) => drawing.replaceChildren(...inside))"
CONTRAST = "color-contrast"
_ASKED = """async ([where, options]) => {
    const found = await axe.run(where ?? document, options);
    const told = found.violations.flatMap(rule => rule.nodes.slice(0, 3)
        .map(node => [rule.id, rule.help, node.html.slice(0, 120)]));
    return [found.testEngine.version, told];
}"""

_CUT_OFF = """() => Array.from(document.querySelectorAll("body *:not(svg *)"))
    .filter(found => ["hidden", "clip"].includes(getComputedStyle(found).overflowX))
    .filter(found => found.clientWidth > 1 && found.scrollWidth > found.clientWidth + 1)
    .map(found => found.outerHTML.slice(0, 80))"""

# Marks one element for each way in which words stand on their ground that has not been met before, and returns these
# ways: the colour and kind of the letters, and everything that all elements round them paint.
_NEW_GROUNDS = """([known, drawings]) => {
    document.querySelectorAll("[data-new-ground]").forEach(one => one.removeAttribute("data-new-ground"));
    const met = new Set(known), found = [], grounds = new Map([[null, ""]]);
    const ground = element => {
        if (!grounds.has(element)) {
            const style = getComputedStyle(element);
            const own = [style.backgroundColor, style.backgroundImage, style.opacity, style.filter, style.mixBlendMode];
            const paints = own.join(" ") !== "rgba(0, 0, 0, 0) none 1 none normal";
            grounds.set(element, ground(element.parentElement) + (paints ? own.join(" ") + "/" : ""));
        }
        return grounds.get(element);
    };
    for (const element of document.querySelectorAll("body *")) {
        const speaks = element.matches("input, select, textarea")
            || Array.from(element.childNodes).some(node => node.nodeType === 3 && node.data.trim());
        if (!speaks || !element.checkVisibility() || (drawings && element.closest(drawings))) continue;
        const style = getComputedStyle(element);
        const letters = [style.color, style.fill, style.fontSize, style.fontWeight, style.textShadow, style.position];
        const way = letters.join(" ") + " on " + ground(element);
        if (met.has(way)) continue;
        met.add(way);
        found.push(way);
        element.setAttribute("data-new-ground", "");
    }
    return found;
}"""


def overflow(page: Page) -> int:
    """How far [px] a page can be scrolled sideways."""
    found: int = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
    return found


def too_wide(page: Page, width: int) -> list[str]:
    """Where the page scrolls sideways at a width, and what it cuts off at the narrowest."""
    page.set_viewport_size({"width": width, "height": 900 if width > NARROWEST else 256})
    sideways = [f"scrolls sideways at {width} px"] if overflow(page) > 0 else []
    cut_off = page.evaluate(_CUT_OFF) if width == NARROWEST else []
    return [*sideways, *(f"cuts off {element}" for element in cut_off)]


def axe_finds(page: Page, where: dict[str, Any] | None = None, **options: object) -> list[str]:
    """Everything that axe finds on a page or in a part of it; each page takes axe in once, however often it is asked.

    Only what is wrong is told, and without the paths to it: to find a path for each element that is well takes axe a
    third of its time.
    """
    if not page.evaluate("'axe' in window"):
        page.evaluate(f"{AXE_SCRIPT};0")
    brief = {"resultTypes": ["violations"], "reporter": "no-passes", "selectors": False, "elementRef": True}
    version, found = page.evaluate(_ASKED, [where, {**brief, **options}])
    assert len(version.split(".")) == 3, "axe has not run"
    return [f"{rule}: {told}: {element}" for rule, told, element in found]


@dataclass
class Examiner:
    """Asks axe about page after page by all of its rules: those of WCAG 2.2 A and AA, and what it calls best practice.

    Contrast takes axe longer than everything else, and is the same wherever words of one colour and size stand on the
    same ground. So it is asked about once for each such way of standing, and about everything else on every page.
    """

    grounds: set[str] = field(default_factory=set)

    def faults(self, page: Page, *, drawings: bool = False) -> list[str]:
        """Everything that axe finds on a page, in its drawings as well where wanted."""
        if not drawings:
            page.evaluate(_TAKEN_OUT)
        found = axe_finds(page, rules={CONTRAST: {"enabled": False}})
        if not drawings:
            page.evaluate(_PUT_BACK)
        new = page.evaluate(_NEW_GROUNDS, [sorted(self.grounds), "" if drawings else DRAWINGS])
        if new:
            self.grounds.update(new)
            marked = {"include": [["[data-new-ground]"]]}
            found += axe_finds(page, marked, runOnly={"type": "rule", "values": [CONTRAST]})
        return found

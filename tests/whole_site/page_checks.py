"""What every page must hold to: a page comes in, its faults go out as sentences.

The rules are those of the HTML standard and of ARIA in HTML, and the house's own: nothing runs inside the page, nothing
leads to another host, and a policy in the head says so to the browser.
"""

from __future__ import annotations

import json
import re
from collections import Counter
from collections.abc import Callable, Iterator
from itertools import pairwise
from xml.etree.ElementTree import Element

from page_reading import ReadPage, words

HEADINGS = ("h1", "h2", "h3", "h4", "h5", "h6")
# Elements that hold running text only, and elements that may not stand in running text.
RUNNING = ("p", "span", "a", "b", "i", "em", "strong", "small", "label", "button", "summary", *HEADINGS)
BLOCKS = ("p", "div", "ul", "ol", "dl", "table", "figure", "section", "details", "form", "nav", "header", "footer")
# ARIA in HTML: what says by its element what it is may not say it again.
SPOKEN = {
    "table": "table",
    "thead": "rowgroup",
    "tbody": "rowgroup",
    "tr": "row",
    "td": "cell",
    "main": "main",
    "nav": "navigation",
    "button": "button",
    "ul": "list",
    "li": "listitem",
}
TWICE = re.compile(r"\b(a|an|the|of|and|from) \1\b", re.IGNORECASE)
# What schema.org asks of each sort of thing that is told.
TOLD: dict[str, tuple[str, ...]] = {
    "HowTo": ("name",),
    "WebSite": ("name", "url"),
    "ItemList": ("itemListElement",),
    "BreadcrumbList": ("itemListElement",),
    "EducationEvent": ("name", "startDate", "endDate", "location", "organizer"),
}
NAMING = ("aria-labelledby", "aria-describedby", "aria-controls", "aria-owns", "for", "headers", "list")


def grumbles(page: ReadPage) -> Iterator[str]:
    yield from (f"is no valid HTML: {grumble}" for grumble in page.grumbles)
    if not page.text.startswith("<!DOCTYPE html>"):
        yield "does not begin with the doctype"


def head(page: ReadPage) -> Iterator[str]:
    if not page.root.attrib.get("lang"):
        yield "does not say its language"
    told = {element.attrib.get("name"): element.attrib.get("content", "") for element in page.all("meta")}
    if not told.get("description"):
        yield "has no description"
    zoom = told.get("viewport", "")
    if "width=device-width" not in zoom or "maximum-scale" in zoom or "user-scalable" in zoom:
        yield f"its viewport hinders zooming: {zoom!r}"
    titles = [words(title) for title in page.root.findall("head/title")]
    if len(titles) != 1 or not titles[0]:
        yield f"has the titles {titles}"


def policy(page: ReadPage) -> Iterator[str]:
    """The policy stands before anything that it is for, refuses what it does not name, and lets nothing run inline."""
    in_head = [element for element in page.root.iter() if element.tag in ("meta", "link", "script", "style")]
    places = [place for place, element in enumerate(in_head) if element.attrib.get("http-equiv")]
    if len(places) != 1 or any(element.tag != "meta" for element in in_head[: places[0]]):
        yield "has no policy before its first link"
        return
    content = in_head[places[0]].attrib.get("content", "")
    rules = dict((*rule.split(maxsplit=1), "")[:2] for rule in content.split(";") if rule.strip())
    if rules.get("default-src") != "'none'":
        yield "its policy allows what it does not name"
    for rule, sources in rules.items():
        if not set(sources.split()) <= {"'none'", "'self'", "data:"}:
            yield f"its policy allows {rule} {sources}"


def nothing_inline(page: ReadPage) -> Iterator[str]:
    for element in page.elements:
        handlers = [name for name in element.attrib if name.startswith("on") or name == "style"]
        if handlers:
            yield f"<{element.tag}> has {handlers}"
    for element in page.all("script", "style", "base", "iframe", "object", "embed"):
        if element.tag != "script" or not (element.attrib.get("src") or "json" in element.attrib.get("type", "")):
            yield f"holds an inline <{element.tag}>"


def headings(page: ReadPage) -> Iterator[str]:
    found = list(page.all(*HEADINGS))
    firsts = [words(heading) for heading in found if heading.tag == "h1"]
    if len(firsts) != 1:
        yield f"has {len(firsts)} headings of the first rank: {firsts}"
    for before, after in pairwise([int(heading.tag[1]) for heading in found]):
        if after > before + 1:
            yield f"a heading of rank {after} follows one of rank {before}"
    yield from (f"has an empty <{heading.tag}>" for heading in found if not words(heading))


def landmarks(page: ReadPage) -> Iterator[str]:
    body = page.root.find("body")
    assert body is not None
    for tag in ("header", "footer"):
        if len(body.findall(tag)) != 1:
            yield f"has {len(body.findall(tag))} <{tag}>"
    mains = [f"#{main.attrib.get('id')}" for main in page.all("main")]
    if len(mains) != 1:
        yield f"has {len(mains)} <main>"
    navigations = list(page.all("nav"))
    if not navigations or any(not nav.attrib.keys() & {"aria-label", "aria-labelledby"} for nav in navigations):
        yield "has no <nav>, or one without a name"
    first = next(iter(body), None)
    if first is None or first.tag != "a" or first.attrib.get("href") not in mains:
        yield "does not begin with a link past the navigation to its <main>"


def names(page: ReadPage) -> Iterator[str]:
    yield from (f"has the id {name!r} {times} times" for name, times in Counter(page.ids).items() if times > 1)
    known = set(page.ids)
    for element in page.elements:
        for attribute in NAMING:
            strange = set(element.attrib.get(attribute, "").split()) - known
            yield from (
                f"{attribute} of <{element.tag}> names {name!r}, which is not there" for name in sorted(strange)
            )


def pictures(page: ReadPage) -> Iterator[str]:
    """Every picture is told in words, and keeps its place on the page before it is there."""
    for element in page.elements:
        tag, told = element.tag.rpartition("}")[2], element.attrib
        if tag == "img" and "alt" not in told:
            yield f"the picture {told.get('src')} has no alternative text"
        if tag == "svg" and not (told.get("role") == "img" and told.get("aria-label")):
            yield "a drawing is not told in words"
        if tag in ("img", "svg") and not (told.get("width", "").isdigit() and told.get("height", "").isdigit()):
            yield f"a picture has no width and height: {told.get('src') or told.get('aria-label')}"


def content(page: ReadPage) -> Iterator[str]:
    """Elements stand where the standard lets them stand, as far as the parser does not see to it."""
    for element in page.elements:
        if element.tag in RUNNING and element.tag != "a":
            inside = {child.tag for child in element.iter() if child is not element} & {*BLOCKS}
            yield from (f"<{tag}> stands in running text, <{element.tag}>" for tag in sorted(inside))
        if element.tag == "figure":
            told = [child.tag for child in element]
            if "figcaption" in told[1:-1]:
                yield f"the caption of a figure stands between {told}"
        if SPOKEN.get(element.tag, "") == element.attrib.get("role", " "):
            yield f"<{element.tag}> says its own role again"


def tables(page: ReadPage) -> Iterator[str]:
    for table in page.all("table"):
        heads = [cell for cell in table.iter() if cell.tag == "th"]
        if any(cell.attrib.get("scope") not in ("col", "row", "colgroup", "rowgroup") for cell in heads):
            yield f"a table does not say what its heads are for: {words(table)[:40]!r}"
        if not heads and not table.attrib.get("aria-label"):
            yield f"a table has neither heads nor a name: {words(table)[:40]!r}"


def forms(page: ReadPage) -> Iterator[str]:
    """Whatever can be filled in or pressed has a name."""
    labelled = {element.attrib.get("for") for element in page.all("label")}
    wrapped = {id(inside) for label in page.all("label") for inside in label.iter()}
    for element in page.all("input", "select", "textarea"):
        named = element.attrib.get("id") in labelled or id(element) in wrapped or element.attrib.get("aria-label")
        if not named:
            yield f"<{element.tag}> has no label"
    for element in page.all("button", "a", "summary"):
        if not (words(element) or element.attrib.get("aria-label") or _pictured(element)):
            yield f"<{element.tag}> has no words"


def _pictured(element: Element) -> bool:
    return any(child.attrib.get("alt") or child.attrib.get("aria-label") for child in element.iter())


def instructions(page: ReadPage) -> Iterator[str]:
    """What search engines are told is readable, and has what the vocabulary asks of a HowTo."""
    for script in page.all("script"):
        if "json" not in script.attrib.get("type", ""):
            continue
        try:
            told = json.loads(script.text or "")
        except ValueError as fault:
            yield f"its JSON-LD cannot be read: {fault}"
            continue
        # Other values are for the page's own scripts.
        if script.attrib["type"] != "application/ld+json":
            continue
        if told.get("@context") != "https://schema.org":
            yield f"its JSON-LD is in the words of {told.get('@context')}"
        parts = told.get("@graph", [told])
        strange = [part.get("@type") for part in parts if part.get("@type") not in TOLD]
        lacking = [
            f"{part['@type']} {term}"
            for part in parts
            for term in TOLD.get(part.get("@type"), ())
            if not part.get(term)
        ]
        offered = [offer for part in parts for offer in part.get("offers", ())]
        yield from (f"it offers {offer} without a price in a money" for offer in offered if not _priced(offer))
        if strange or lacking:
            yield f"its JSON-LD is of type {strange}, or lacks {lacking}"
        if told.get("@type") != "HowTo":
            continue
        empty = [term for term in ("name", "description", "step", "totalTime", "supply", "tool") if not told.get(term)]
        steps = [step for step in told.get("step", ()) if not (step.get("name") and step.get("text"))]
        named = [thing for term in ("supply", "tool") for thing in told.get(term, ()) if not thing.get("name")]
        if empty or steps or named:
            yield f"its JSON-LD lacks {empty}, or words in {steps + named}"


def _priced(offer: dict[str, str]) -> bool:
    """Whether an offer is one of schema.org: a number with a point, and the code of its money as ISO 4217 writes it."""
    money = re.fullmatch("[A-Z]{3}", offer.get("priceCurrency", ""))
    price = re.fullmatch(r"\d+(\.\d+)?", offer.get("price", ""))
    return bool(offer.get("@type") == "Offer" and offer.get("name") and money and price)


def wording(page: ReadPage) -> Iterator[str]:
    """Where words of a project are set into a sentence, no little word stands there twice."""
    for element in page.root.iter():
        if element.tag in ("p", "li", "td"):
            yield from (f"says a word twice: {found[0]!r}" for found in TWICE.finditer(words(element)))


PageCheck = Callable[[ReadPage], Iterator[str]]
CHECKS: tuple[PageCheck, ...] = (
    grumbles,
    head,
    policy,
    nothing_inline,
    headings,
    landmarks,
    names,
    pictures,
    content,
    tables,
    forms,
    instructions,
    wording,
)


def faults(page: ReadPage) -> list[str]:
    return [fault for check in CHECKS for fault in check(page)]

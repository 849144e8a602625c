"""What search engines and sharers of a page are told: worksheets and paths come in, JSON-LD and a site map go out."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Mapping
from urllib.parse import quote, urljoin
from xml.etree import ElementTree

from markupsafe import Markup

from generator.calculation.worked_project import SheetStep, Worksheet
from generator.rendering import addresses
from generator.rendering.setting import Setting, size_link
from generator.rendering.words import read_words

_SITEMAP = "http://www.sitemaps.org/schemas/sitemap/0.9"
_LONGEST = 155
# A script element ends at the first "</script", wherever that stands, so these signs are never written as they are.
_HIDDEN = {ord(sign): f"\\u{ord(sign):04x}" for sign in "<>&\u2028\u2029"}


def as_data(told: object) -> Markup:
    """Return a value as JSON, to stand in a script element that is not run."""
    return Markup(json.dumps(told, ensure_ascii=False).translate(_HIDDEN))  # noqa: S704 -- no sign of markup is left


def absolute(address: str, setting: Setting) -> str:
    """Return the whole address of a page or file; empty where nobody knows where the site lies."""
    if not setting.site_address:
        return ""
    own = address.removesuffix("index.html") if address.endswith("/index.html") or address == "index.html" else address
    return urljoin(setting.site_address.rstrip("/") + "/", quote(own))


def plain_words(text: str) -> str:
    """Return Markdown as plain text on one line."""
    return str(read_words(text).striptags())


def description(worksheet: Worksheet) -> str:
    """Return a sentence or two on a size, short enough for a list of results."""
    link = size_link(worksheet)
    told = f"{worksheet.title}, {worksheet.size_label}: {link.finished} finished."
    return shortened(f"{told} {plain_words(worksheet.summary)}")


def shortened(about: str) -> str:
    """Return a text, or its beginning, short enough for a list of results."""
    if len(about) <= _LONGEST:
        return about
    return about[: _LONGEST - 1].rsplit(" ", 1)[0].rstrip(".,;:") + " …"


def how_to(worksheet: Worksheet, setting: Setting) -> Markup:
    """Return a sheet as a HowTo in JSON-LD, to stand in a script element that is not run.

    Parameters
    ----------
    worksheet : Worksheet
        One size in one edition.
    setting : Setting
        The room; addresses are only told where it knows its own.
    """
    address = absolute(size_link(worksheet).page, setting)
    told: dict[str, object] = {
        "@context": "https://schema.org",
        "@type": "HowTo",
        "name": f"{worksheet.title}, {worksheet.size_label}, {worksheet.edition.name} edition",
        "description": plain_words(worksheet.summary),
        "inLanguage": setting.language,
        "totalTime": _duration(worksheet.minutes),
        "supply": [_named("HowToSupply", item) for item in _supplies(worksheet)],
        "tool": [_named("HowToTool", tool) for tool in worksheet.tools],
        "step": [_step(step, address) for step in worksheet.steps],
    }
    if address:
        told["url"] = address
    return as_data(told)


def _supplies(worksheet: Worksheet) -> list[str]:
    cloths = [f"{cloth.label}, {cloth.buy_text}" for cloth in worksheet.cloths.values()]
    lines = [f"{line.item}, {line.amount}" for line in worksheet.notions]
    return [*cloths, *lines, *(f"thread{words}, {length}" for words, length, _ in worksheet.thread.lines)]


def _named(kind: str, name: str) -> Mapping[str, str]:
    return {"@type": kind, "name": name}


def _step(step: SheetStep, address: str) -> Mapping[str, str]:
    # Whoever wants more than its first sentence finds it at its place on the page.
    told = {"@type": "HowToStep", "name": step.title, "text": _first_sentence(plain_words(step.text))}
    return {**told, "url": f"{address}#step-{step.number}"} if address else told


def _first_sentence(words: str) -> str:
    return re.split(r"(?<=[.!?])\s", words, maxsplit=1)[0]


def _duration(minutes: int) -> str:
    hours, rest = divmod(minutes, 60)
    return f"PT{f'{hours}H' if hours else ''}{f'{rest}M' if rest or not hours else ''}"


def sitemap(pages: Iterable[str], setting: Setting) -> bytes | None:
    """Return the site map of some pages, by their paths inside the site; None where the site has no address."""
    if not setting.site_address:
        return None
    root = ElementTree.Element("urlset", xmlns=_SITEMAP)
    for page in sorted(set(pages)):
        if page.endswith(".html"):
            ElementTree.SubElement(ElementTree.SubElement(root, "url"), "loc").text = absolute(page, setting)
    ElementTree.indent(root, " ")
    written: bytes = ElementTree.tostring(root, encoding="utf-8", xml_declaration=True)
    return written + b"\n"


def robots(setting: Setting) -> bytes | None:
    """Return what search engines may read (RFC 9309), all, and where the map is; None where the site has no address."""
    if not setting.site_address:
        return None
    return f"User-agent: *\nAllow: /\n\nSitemap: {absolute(addresses.SITEMAP, setting)}\n".encode()


def sharing(title: str, about: str, address: str, setting: Setting) -> Mapping[str, str]:
    """Return what a page tells those who share it, by property; without an address only what needs none."""
    told = {"og:type": "article", "og:title": title, "og:description": about, "og:site_name": setting.room}
    whole = absolute(address, setting)
    return {**told, "og:url": whole} if whole else told


def size_sharing(worksheet: Worksheet, setting: Setting) -> Mapping[str, object]:
    """Return what the head of a size's page needs: ``canonical``, ``shared`` and ``how_to``."""
    address = addresses.size_page(worksheet.project, worksheet.size, worksheet.edition.name)
    title = f"{worksheet.title}, {worksheet.size_label}, {worksheet.edition.name} edition"
    return {
        "canonical": absolute(address, setting),
        "shared": sharing(title, description(worksheet), address, setting),
        "how_to": how_to(worksheet, setting),
        "about": description(worksheet),
    }

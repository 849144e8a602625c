"""What the built demo site tells those who come from outside: search engines, readers of feeds, sharers of a page."""

from __future__ import annotations

import json
import re
from pathlib import Path
from urllib.robotparser import RobotFileParser
from xml.etree import ElementTree
from xml.etree.ElementTree import Element

from links import resolved
from page_reading import ReadPage, read_tags

from tests.built_site import BuiltSite

SITEMAP = "{http://www.sitemaps.org/schemas/sitemap/0.9}"
ATOM = "{http://www.w3.org/2005/Atom}"
SIZE = "projects/quay-cushion/small/inch.html"


def read_xml(path: Path) -> Element:
    return ElementTree.parse(path).getroot()  # noqa: S314 -- written by this tool


def file_at(site: BuiltSite, address: str) -> str:
    """The file of the site that lies at a whole address; empty where there is none."""
    inside = address.removeprefix(site.address).partition("#")[0]
    file = resolved("index.html", inside or "index.html")
    return file if address.startswith(site.address) and file in site.names else ""


def test_the_demo_room_tells_where_its_site_lies_at_an_address_that_nobody_has(demo_site: BuiltSite) -> None:
    assert re.fullmatch(r"https://[a-z.-]+\.example/([a-z-]+/)*", demo_site.address)


def test_the_map_of_the_site_lists_every_page_once_and_nothing_else(demo_site: BuiltSite) -> None:
    root = read_xml(demo_site.folder / "sitemap.xml")
    assert root.tag == f"{SITEMAP}urlset"
    listed = [file_at(demo_site, str(place.text)) for place in root.iterfind(f"{SITEMAP}url/{SITEMAP}loc")]
    assert sorted([*listed, "404.html"]) == sorted(demo_site.pages)


def test_search_engines_may_read_every_page_and_find_the_map(demo_site: BuiltSite) -> None:
    read = RobotFileParser()
    read.parse((demo_site.folder / "robots.txt").read_text(encoding="utf-8").splitlines())
    assert read.site_maps() == [f"{demo_site.address}sitemap.xml"]
    assert [page for page in demo_site.pages if not read.can_fetch("anyone", demo_site.address + page)] == []


def test_a_class_with_a_fee_offers_every_price_of_its_page(demo_site: BuiltSite) -> None:
    page = ReadPage((demo_site.folder / "classes/saturday-cushions.html").read_text(encoding="utf-8"))
    [data] = [json.loads(str(script.text)) for script in page.all("script") if "json" in script.get("type", "")]
    told = [[offer["price"] for offer in event["offers"]] for event in data["@graph"]]
    shown = re.findall(r"<li><b>£([\d.]+)</b>", page.text)
    assert shown
    assert told == [shown] * len(data["@graph"])


def test_every_page_that_names_its_own_address_names_the_right_one(demo_site: BuiltSite) -> None:
    named = {}
    for page in demo_site.pages:
        found = [link.target for link in read_tags(demo_site.folder / page).links if link.relation == "canonical"]
        assert len(found) <= 1, page
        if found:
            named[page] = file_at(demo_site, found[0])
    assert {page: file for page, file in named.items() if page != file} == {}
    assert SIZE in named


def test_what_is_shared_of_a_size_tells_its_whole_address(demo_site: BuiltSite) -> None:
    page = ReadPage((demo_site.folder / SIZE).read_text(encoding="utf-8"))
    shared = {meta.attrib.get("property"): meta.attrib.get("content", "") for meta in page.all("meta")}
    [how_to] = [json.loads(str(script.text)) for script in page.all("script") if "json" in script.get("type", "")]
    assert file_at(demo_site, shared["og:url"]) == file_at(demo_site, how_to["url"]) == SIZE
    assert shared["og:title"]
    assert shared["og:description"]
    assert re.fullmatch(r"PT(\d+H)?(\d+M)?", how_to["totalTime"])
    assert {file_at(demo_site, step["url"]) for step in how_to["step"]} == {SIZE}


def test_there_is_a_feed_that_the_page_of_corrections_leads_to_once_editions_are_kept(demo_site: BuiltSite) -> None:
    kept = any((demo_site.folder.parent / "editions").glob("*.json"))
    page = ReadPage((demo_site.folder / "corrections.html").read_text(encoding="utf-8"))
    found = [link for link in page.all("link") if link.get("rel") == "alternate"]
    told = [(link.get("type"), link.get("href")) for link in found]
    assert told == ([("application/atom+xml", "corrections.xml")] if kept else [])
    assert ("corrections.xml" in demo_site.files) == kept


def test_every_feed_is_what_its_standard_asks_for(demo_site: BuiltSite) -> None:
    feeds = [file for file in demo_site.files if file.endswith(".xml") and file != "sitemap.xml"]
    assert {*feeds} <= {"corrections.xml"}
    assert [fault for file in feeds for fault in feed_faults(demo_site, read_xml(demo_site.folder / file))] == []


def test_a_spoilt_feed_is_found_out(demo_site: BuiltSite) -> None:
    bare = ElementTree.Element(f"{ATOM}feed")
    entry = ElementTree.SubElement(bare, f"{ATOM}entry")
    for told in (bare, entry):
        ElementTree.SubElement(told, f"{ATOM}id").text = "the same"
        ElementTree.SubElement(told, f"{ATOM}updated").text = "2031-02-01"
        ElementTree.SubElement(told, f"{ATOM}link", href="https://elsewhere.example/")
    assert feed_faults(demo_site, bare) == [
        "feed has 0 title",
        "feed: 2031-02-01 is no moment",
        "feed leads to https://elsewhere.example/",
        "entry has 0 title",
        "entry: 2031-02-01 is no moment",
        "entry leads to https://elsewhere.example/",
        "nobody has written it",
        "it does not say where it lies",
        "two things have one id",
    ]


def feed_faults(site: BuiltSite, feed: Element) -> list[str]:
    """What the Atom standard (RFC 4287) asks for and a feed or one of its entries lacks."""
    entries = feed.findall(f"{ATOM}entry")
    faults = [fault for told in (feed, *entries) for fault in _faults_of_part(site, told)]
    if not feed.findtext(f"{ATOM}author/{ATOM}name"):
        faults.append("nobody has written it")
    own = [link.attrib["href"] for link in feed.findall(f"{ATOM}link") if link.get("rel") == "self"]
    if own != [f"{site.address}corrections.xml"]:
        faults.append("it does not say where it lies")
    ids = [told.findtext(f"{ATOM}id") for told in (feed, *entries)]
    return [*faults, "two things have one id"] if len({*ids}) < len(ids) else faults


def _faults_of_part(site: BuiltSite, told: Element) -> list[str]:
    name = told.tag.removeprefix(ATOM)
    numbers = {part: len(told.findall(ATOM + part)) for part in ("id", "title", "updated")}
    faults = [f"{name} has {number} {part}" for part, number in numbers.items() if number != 1]
    moment = str(told.findtext(f"{ATOM}updated"))
    if not re.fullmatch(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(Z|[+-]\d\d:\d\d)", moment):
        faults.append(f"{name}: {moment} is no moment")
    leading = [link.attrib["href"] for link in told.findall(f"{ATOM}link")]
    return [*faults, *(f"{name} leads to {address}" for address in leading if not file_at(site, address))]

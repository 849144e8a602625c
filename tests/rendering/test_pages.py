from __future__ import annotations

import dataclasses
import json
import re
from collections import Counter
from fractions import Fraction
from itertools import pairwise
from xml.etree import ElementTree

import pytest
from cushion_sheet import cushion
from placeholder_pictures import light_placeholders
from room_setting import setting
from tinyhtml5.parser import HTMLParser

from generator.calculation.worked_project import DecidingMeasure, Worksheet
from generator.lengths import INCH, METRIC
from generator.rendering.cards import ClassCard, PageLink, SitePicture, ThingPictures
from generator.rendering.pages import render_home, render_project, render_size, render_words
from generator.rendering.setting import SizeLink, project_card, size_link

HOSTILE = "<script>alert('1')</script> \"Q\" & {{ 7 * 7 }} 🧵"

SMALLER = tuple((f"projects/cushion/picture-{width}.webp", width) for width in (320, 480))
THING = SitePicture("projects/cushion/picture-720.webp", 720, 640, "The finished cushion.", "small", SMALLER)
NEAR = SitePicture("projects/cushion/near.webp", 640, 480, "Close to.", "its tucks close to")
SHARE = SitePicture("projects/cushion/share.jpg", 1200, 630, "The finished cushion.")


def sheets(title: str = "Slack Tide cushion") -> list[Worksheet]:
    return [cushion(edition, title=title) for edition in (INCH, METRIC)]


def every_page(title: str = "Slack Tide cushion") -> dict[str, str]:
    worksheets, pictures = sheets(title), light_placeholders()
    room = dataclasses.replace(setting(), links=(PageLink("Reference", "pages/reference.html"),))
    links: list[SizeLink] = [size_link(worksheet) for worksheet in worksheets]
    return {
        "home": render_home([project_card(worksheets, THING)], room),
        "empty home": render_home([], room),
        "project": render_project(worksheets, ThingPictures(THING, NEAR, SHARE), room),
        "size": render_size(worksheets[0], pictures, room, links),
        "words": render_words("reference", title, "# Yards\n\nA yard is 36 in.", room),
    }


PAGES = every_page()


def test_a_page_of_a_size_and_of_a_project_say_to_buy_what_closes_the_work() -> None:
    one = cushion()
    worksheet = dataclasses.replace(
        one, closures=(dataclasses.replace(one.closures[0], kind="buttons", number=3, diameter=Fraction(7, 8)),)
    )
    size = render_size(worksheet, light_placeholders(), setting(), [size_link(worksheet)])
    assert "3 buttons, 7/8 in across" in words_of(size)
    project = render_project([worksheet], ThingPictures(), setting())
    assert "Buttons, 7/8 in across" in words_of(project)


@pytest.mark.parametrize(("how", "told"), [("from seam to seam", True), ("", False)])
def test_a_page_of_a_size_says_the_measure_that_it_is_made_for_where_it_is_said_how_it_is_taken(
    how: str, *, told: bool
) -> None:
    worksheet = dataclasses.replace(cushion(), deciding=DecidingMeasure("pad", Fraction(29, 2), how))
    page = words_of(render_size(worksheet, light_placeholders(), setting(), [size_link(worksheet)]))
    assert (f"Made for: pad 14 1/2 in, {how}" in page) is told


def words_of(html: str) -> str:
    return " ".join(re.sub(r"<[^>]+>", "", html).split())


def tree(html: str) -> ElementTree.Element:
    """Read a page as a browser does and insist that nothing had to be mended."""
    parser = HTMLParser(namespace_html_elements=False)
    page: ElementTree.Element = parser.parse(html)
    assert parser.errors == []
    return page


@pytest.mark.parametrize("name", PAGES)
def test_a_page_is_valid_html_with_one_heading_and_landmarks(name: str) -> None:
    page = tree(PAGES[name])
    found = Counter(element.tag for element in page.iter())
    assert found["h1"] == found["main"] == found["title"] == 1
    assert found["header"] >= 1
    assert found["footer"] == 1
    assert page.get("lang") == "en"


@pytest.mark.parametrize("name", PAGES)
def test_every_id_is_the_only_one_and_every_reference_finds_it(name: str) -> None:
    page = tree(PAGES[name])
    ids = [element.get("id") for element in page.iter() if element.get("id")]
    assert len(ids) == len(set(ids))
    wanted = {element.get("aria-labelledby") for element in page.iter() if element.get("aria-labelledby")}
    wanted |= {element.get("for") for element in page.iter("label")}
    wanted |= {href[1:] for element in page.iter("a") if (href := element.get("href", "")).startswith("#")}
    assert wanted <= set(ids)


def is_description(element: ElementTree.Element) -> bool:
    """Whether a script element is data that is not run, and holds nothing that could end it."""
    text = element.text or ""
    return element.get("type") == "application/ld+json" and "<" not in text and "@type" in json.loads(text)


@pytest.mark.parametrize("name", PAGES)
def test_a_page_asks_no_other_host_and_runs_no_inline_code(name: str) -> None:
    for element in tree(PAGES[name]).iter():
        for attribute, value in element.attrib.items():
            assert attribute in ("http-equiv",) or not attribute.startswith("on")
            assert attribute != "style"
            if attribute in ("href", "src"):
                assert not value.startswith(("http:", "https:", "//", "/"))
        if element.tag == "script":
            assert element.get("src") or is_description(element)
    assert "default-src 'none'" in PAGES[name]


@pytest.mark.parametrize("name", PAGES)
def test_headings_leave_out_no_level(name: str) -> None:
    levels = [int(element.tag[1]) for element in tree(PAGES[name]).iter() if element.tag in ("h1", "h2", "h3", "h4")]
    assert levels[0] == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))


def test_hostile_titles_are_only_text() -> None:
    for html in every_page(HOSTILE).values():
        page = tree(html)
        assert all(element.get("src") or is_description(element) for element in page.iter("script"))
        assert "49" not in "".join(page.itertext()) or "{{ 7 * 7 }}" in "".join(page.itertext())


def test_the_page_of_a_size_holds_the_numbers_of_the_sheet() -> None:
    # Mark 17 lies at 1 5/8 + 16 x 1 1/2 = 25 5/8; check point 6 expects 10 5/8 - 6 x 3/4 = 6 1/8.
    text = " ".join(" ".join(tree(PAGES["size"]).itertext()).split())
    for words in (
        "17 25 5/8",
        "27 1/4 × 16 1/4 in",
        "1 yd",
        "6 the left cut edge fold mark 7 6 1/8 in",
        "inch edition",
    ):
        assert words in text


def test_every_diagram_of_a_page_has_a_name() -> None:
    drawn = [element for element in tree(PAGES["size"]).iter() if str(element.tag).endswith("svg")]
    # The surface, which is large, is on the page of the project alone.
    assert len(drawn) == 6
    assert all(element.get("role") == "img" and element.get("aria-label") for element in drawn)


def test_a_figure_that_is_named_twice_is_shown_once() -> None:
    assert PAGES["size"].count("<b>Figure 3.</b>") == 1
    assert "See figure 3." in PAGES["size"]


def test_the_page_of_a_project_sets_its_sizes_side_by_side() -> None:
    page = tree(PAGES["project"])
    rows = {" ".join("".join(row.itertext()).split()) for row in page.iter("tr")}
    assert "Front, cut 27 1/4 × 16 1/4 in" in rows
    assert "Front, cut 73 × 41.5 cm" in rows
    links = {element.get("href") for element in page.iter("a")}
    assert "14-inch/metric.html" in links
    assert "14-inch/slack-tide-cushion-14-inch-inch-letter.pdf" in links


def test_a_card_of_the_home_page_tells_what_to_find_it_by() -> None:
    card = next(element for element in tree(PAGES["home"]).iter("li") if element.get("class") == "card")
    assert (card.get("data-kind"), card.get("data-level"), card.get("data-minutes")) == (
        "cushion",
        "2",
        "265",
    )


def test_the_home_page_shows_the_classes_the_first_before_all_others() -> None:
    days = {"autumn": ("2031-09-06",), "spring": ("2031-03-08", "2031-03-15")}
    classes = [ClassCard(name, name.title(), "cushion", "Cushion", found) for name, found in days.items()]
    page = tree(render_home([], setting(), classes=classes))
    shown = next(element for element in page.iter("ul") if element.get("id") == "next-classes")
    told = [" ".join(" ".join(item.itertext()).split()) for item in shown.iter("li")]
    assert told == ["8 March Spring Cushion", "6 September Autumn Cushion"]
    # A script leaves out those that are over by the clock of the device: a class is over after its last day.
    assert [item.get("data-day") for item in shown.iter("li")] == ["2031-03-15", "2031-09-06"]

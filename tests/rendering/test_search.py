from __future__ import annotations

import json
from xml.etree import ElementTree

from room_setting import setting
from tinyhtml5.parser import HTMLParser

from generator.definitions.vocabulary import KINDS
from generator.rendering.cards import ClassCard, ProjectCard, SheetTold
from generator.rendering.search import ALSO_CALLED, findables, render_all, search_index

CARD = ProjectCard("pier-bolster", "Pier bolster", "bolster", "experienced", "A *tucked* wrap.", 60, 90)
SHEET = SheetTold("pier-bolster/small/metric", "small", "Day bed", "metric", "2031-03", "abc", "70 cm form")
CLASS = ClassCard("saturdays", "Saturday cushions", "pier-bolster", "Pier bolster", ("2031-03-08",))
WORDS = "# Words\n\n**Épure**: a drawing.\n\n**apron**: what is tied on.\n"
FOUND = findables([CARD], [SHEET], {"care": "Care & <washing>"}, [CLASS], WORDS)


def test_everything_has_its_kind_and_leads_to_its_place() -> None:
    places = {one.title: (one.kind, one.address) for one in FOUND}
    assert places["Pier bolster"] == ("Project", "projects/pier-bolster/index.html")
    assert places["Pier bolster, Day bed"] == ("Sheet, metric edition", "projects/pier-bolster/small/metric.html")
    assert places["Saturday cushions"] == ("Class", "classes/saturdays.html")
    assert places["Épure"][0] == "Word"
    assert places["Linked cells"] == ("Surface", "gallery.html#linked-cells")


def test_a_sheet_is_found_by_the_measure_that_its_size_is_chosen_by() -> None:
    (sheet,) = (one for one in FOUND if one.kind.startswith("Sheet"))
    assert sheet.words == "70 cm form metric centimetres cm"


def test_the_index_is_a_script_that_sets_one_value() -> None:
    text = search_index(FOUND).decode()
    assert text.startswith("window.roomWords = [")
    entries = json.loads(text.removeprefix("window.roomWords = ").rstrip(";\n"))
    assert entries[0] == [
        "Pier bolster",
        "projects/pier-bolster/index.html",
        "Project",
        "bolster experienced A tucked wrap. neck roll pillow cushion",
    ]
    assert len(entries) == len(FOUND)


def test_the_page_from_a_to_z_has_everything_but_single_sheets_in_order_whatever_the_accents() -> None:
    parser = HTMLParser(namespace_html_elements=False)
    page: ElementTree.Element = parser.parse(render_all(FOUND, setting()))
    assert parser.errors == []
    listed = [found for found in page.iter("ul") if found.get("class") == "from-a-to-z"]
    links = [link for one in listed for link in one.iter("a")]
    told = ["".join(link.itertext()) for link in links]
    assert "Pier bolster, Day bed" not in told
    assert "Care & <washing>" in told
    assert told.index("Apron") < told.index("Épure") < told.index("Pier bolster")
    assert len(links) == len(FOUND) - 1


def test_a_thing_is_found_by_what_else_its_kind_is_called() -> None:
    assert set(ALSO_CALLED) == set(KINDS) - {"other"}
    (project,) = (one for one in FOUND if one.kind == "Project")
    assert "pillow" in project.words

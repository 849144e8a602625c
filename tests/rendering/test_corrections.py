from __future__ import annotations

import html
import json
import re
from xml.etree import ElementTree

from room_setting import setting
from tinyhtml5.parser import HTMLParser

from generator.calculation.worksheet.editions import PublishedEdition
from generator.rendering.corrections import corrections_feed, render_corrections

ATOM = "{http://www.w3.org/2005/Atom}"
TITLES = {"neck-roll": "Neck roll & <ends>", "quay-cushion": "Quay cushion"}
LED = ["project-neck-roll", "project-quay-cushion"]
TURNS = "from the left: " + " ".join(["toward", "away"] * 6)


def edition(project: str, mark: str, day: str, **numbers: str) -> PublishedEdition:
    return PublishedEdition(project, mark, day, {("bed", "inch"): numbers})


EDITIONS = {
    "quay-cushion": (edition("quay-cushion", "2031-02", "2031-02-01", **{"front: cut across": "20"}),),
    "neck-roll": (
        edition(
            "neck-roll", "2031-03 a", "2031-03-01", **{"band: cut across": "27 1/4", "band: turns of row 1": TURNS}
        ),
        edition(
            "neck-roll", "2031-03 b", "2031-03-14", **{"band: cut across": "27 1/2", "band: turns of row 1": TURNS}
        ),
        edition("neck-roll", "2031-05", "2031-05-02", **{"band: cut across": "27 1/2"}),
    ),
}


def page_text(editions: dict[str, tuple[PublishedEdition, ...]]) -> str:
    parser = HTMLParser(namespace_html_elements=False)
    page = parser.parse(render_corrections(editions, TITLES, setting()))
    assert parser.errors == []
    return " ".join(" ".join(page.find("body").itertext()).split())


def test_an_old_sheet_is_compared_with_the_newest_whatever_lies_between() -> None:
    text = page_text(EDITIONS)
    oldest = text[text.index("Your sheet says 2031-03 a") :]
    assert "Band cut across 27 1/4 27 1/2" in oldest
    assert (
        "Band turns of row 1 from the left: toward, away and so on in turn for 12 tucks, ending with away –" in oldest
    )


def test_the_youngest_old_edition_comes_first() -> None:
    text = page_text(EDITIONS)
    assert text.index("Your sheet says 2031-03 b") < text.index("Your sheet says 2031-03 a")


def test_a_sheet_without_changes_is_said_to_be_good() -> None:
    same = (*EDITIONS["quay-cushion"], edition("quay-cushion", "2031-04", "2031-04-01", **{"front: cut across": "20"}))
    assert "No number has changed since 2031-02-01. You can use it." in page_text({"quay-cushion": same})


def test_a_project_with_one_edition_and_a_room_with_none_say_so() -> None:
    text = page_text({"quay-cushion": EDITIONS["quay-cushion"]})
    assert text.endswith(
        "Nothing to correct There is no older edition of these: a sheet with the mark is good. "
        "Project Edition mark Of Quay cushion 2031-02 2031-02-01 " + text.split("2031-02-01 ")[-1]
    )
    assert "No sheets have been published under an edition mark yet." in page_text({})


def test_projects_with_something_to_tell_come_before_those_with_nothing() -> None:
    text = page_text(EDITIONS)
    text = text[text.index("The newest edition mark") :]
    assert text.index("2031-05") < text.index("Nothing to correct") < text.index("Quay cushion")


def test_whoever_cannot_type_the_foot_finds_the_project_in_a_list_above() -> None:
    both = {**EDITIONS, "quay-cushion": (*EDITIONS["quay-cushion"], edition("quay-cushion", "2031-04", "2031-04-01"))}
    for editions, led in (
        (both, LED),
        ({**both, "flag": (edition("flag", "2031-02", "2031-02-01"),)}, [*LED, "settled"]),
        (EDITIONS, []),
    ):
        page = render_corrections(editions, {**TITLES, "flag": "Flag"}, setting())
        listed = re.findall(r'<nav class="contents" aria-label="On this page">(.*?)</nav>', page, re.S)
        assert re.findall(r'href="#([^"]+)"', "".join(listed)) == led
        assert [place for place in led if f'id="{place}"' not in page] == []


def test_what_was_corrected_is_told_in_words_the_youngest_first() -> None:
    about = {"quay-cushion": [("2031-02-03", "The lap is *wider*."), ("2031-04-01", "One tuck fewer.")]}
    page = render_corrections({"quay-cushion": EDITIONS["quay-cushion"]}, TITLES, setting(), about=about)
    told = page[page.index("What was corrected") :]
    assert told.index("2031-04-01") < told.index("One tuck fewer.") < told.index("2031-02-03")
    assert "The lap is <em>wider</em>." in told
    assert "Nothing to correct" not in page


def test_there_is_no_feed_without_an_address_or_without_editions() -> None:
    assert corrections_feed(EDITIONS, TITLES, setting()) is None
    somewhere = setting(site_address="https://ropewalk.example/")
    assert corrections_feed({}, TITLES, somewhere) is None
    assert "corrections.xml" not in render_corrections({}, TITLES, somewhere)
    assert "corrections.xml" in render_corrections(EDITIONS, TITLES, somewhere)
    assert "corrections.xml" not in render_corrections(EDITIONS, TITLES, setting())
    assert 'href="corrections.xml"' in render_corrections(
        EDITIONS, TITLES, setting(site_address="https://ropewalk.example")
    )


def test_the_feed_has_an_entry_for_every_edition_that_changed_numbers() -> None:
    feed = corrections_feed(EDITIONS, TITLES, setting(site_address="https://ropewalk.example/sheets"))
    assert feed is not None
    tree = ElementTree.fromstring(feed)  # noqa: S314 -- written above
    entries = tree.findall(f"{ATOM}entry")
    assert [entry.findtext(f"{ATOM}title") for entry in entries] == [
        "Neck roll & <ends>: edition mark 2031-05",
        "Neck roll & <ends>: edition mark 2031-03 b",
    ]
    assert entries[1].findtext(f"{ATOM}content") == "bed, inch edition: band, cut across: 27 1/4 is now 27 1/2"
    assert tree.findtext(f"{ATOM}updated") == "2031-05-02T00:00:00Z"
    assert tree.findtext(f"{ATOM}id") == "https://ropewalk.example/sheets/corrections.html"
    ids = [entry.findtext(f"{ATOM}id") for entry in entries]
    assert len(set(ids)) == 2


def test_the_feed_is_the_same_in_every_run_and_has_everything_that_the_standard_wants() -> None:
    room = setting(site_address="https://ropewalk.example", room="Rope & \x01walk")
    feed = corrections_feed(EDITIONS, TITLES, room)
    assert feed == corrections_feed(dict(reversed(EDITIONS.items())), TITLES, room)
    tree = ElementTree.fromstring(feed or b"")  # noqa: S314 -- written above
    assert tree.findtext(f"{ATOM}author/{ATOM}name") == "Rope & walk"
    for element in (tree, *tree.findall(f"{ATOM}entry")):
        for name in ("id", "title", "updated"):
            assert element.findtext(f"{ATOM}{name}")


def test_what_the_page_links_to_in_the_feed_is_there() -> None:
    feed = (corrections_feed(EDITIONS, TITLES, setting(site_address="https://ropewalk.example")) or b"").decode()
    assert 'href="https://ropewalk.example/corrections.html#project-neck-roll"' in feed
    assert 'id="project-neck-roll"' in render_corrections(EDITIONS, TITLES, setting())


def test_texts_that_changed_alike_stand_in_one_line_of_a_sheet_and_of_the_feed() -> None:
    was = {
        "band: cut across": "27",
        ": words of Cut it": "1 a",
        ": words of Hem it": "1 b",
        ": words of Fold it": "1 c",
    }
    now = {
        "band: cut across": "28",
        ": words of Cut it": "2 d",
        ": words of Hem it": "2 e",
        ": words of Turn it": "2 f",
    }
    found = {
        "neck-roll": tuple(edition("neck-roll", f"2031-0{m}", f"2031-0{m}-01", **n) for m, n in ((3, was), (4, now)))
    }
    text = page_text(found)
    told = "as printed then"
    assert "Band cut across 27 28" in text
    assert f"The whole sheet words of Cut it; Hem it {told} reworded" in text
    assert f"The whole sheet words of Fold it {told} –" in text
    assert "The whole sheet words of Turn it – reworded" in text
    feed = corrections_feed(found, TITLES, setting(site_address="https://ropewalk.example/sheets")) or b""
    assert f"bed, inch edition: words of Cut it; Hem it: {told} is now reworded" in feed.decode()


def test_what_changed_alike_on_several_sheets_is_told_once_with_their_sizes() -> None:
    """The lap and a text changed in both sizes, the width in one; the numbers of the metric edition are others."""

    def printed(mark: str, *, late: bool) -> PublishedEdition:
        sheets = {}
        for size, edition in (("bed", "inch"), ("cot", "inch"), ("bed", "metric"), ("cot", "metric")):
            sheets[size, edition] = {
                "band: lap": ("3" if late else "2") if edition == "inch" else ("8" if late else "5"),
                "band: cut across": ("28" if late else "27") if (size, edition) == ("bed", "inch") else "20",
                ": words of Cut it": "2 d" if late else "1 a",
            }
        return PublishedEdition("neck-roll", mark, f"{mark}-01", sheets)

    found = {"neck-roll": (printed("2031-03", late=False), printed("2031-04", late=True))}
    labels = {"neck-roll": {"bed": "wide bed", "cot": "cot"}}
    page = render_corrections(found, TITLES, setting(), labels=labels)
    told = re.findall(r'data-sheets="([^"]*)".*?<caption>(.*?)</caption>(.*?)</table>', page, re.DOTALL)
    assert [(caption, lines.count("<tr>") - 1) for _, caption, lines in told] == [
        ("Wide bed and cot, inch edition (in)", 1),
        ("Wide bed, inch edition (in)", 1),
        ("Wide bed and cot, inch and metric edition", 1),
        ("Wide bed and cot, metric edition (cm)", 1),
    ]
    # Whoever types the foot of a sheet is shown what it has, from every table that names it.
    named = [json.loads(html.unescape(sheets)) for sheets, *_ in told]
    assert [["bed", "inch"] in sheets for sheets in named] == [True, True, True, False]
    feed = corrections_feed(found, TITLES, setting(site_address="https://ropewalk.example/sheets")) or b""
    assert "bed and cot, inch edition: band, lap: 2 is now 3" in feed.decode()

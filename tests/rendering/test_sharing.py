from __future__ import annotations

import dataclasses
import json
import re
from fractions import Fraction
from urllib.robotparser import RobotFileParser
from xml.etree import ElementTree

import pytest
from cushion_sheet import cushion
from room_setting import setting

from generator.calculation.making_up.laid import LaidOut, Lying
from generator.lengths import METRIC
from generator.rendering.cards import SitePicture, ThingPictures
from generator.rendering.environment import template
from generator.rendering.guides import render_guides
from generator.rendering.pages import render_between, render_home, render_project, render_size, render_words
from generator.rendering.setting import Setting, project_card, size_link
from generator.rendering.sharing import absolute, description, how_to, robots, sitemap, size_sharing

KNOWN = setting(site_address="https://ropewalk.example/sheets/")
LOC = "{http://www.sitemaps.org/schemas/sitemap/0.9}url/{http://www.sitemaps.org/schemas/sitemap/0.9}loc"


def test_a_sheet_is_told_as_a_how_to_with_its_time_supplies_and_steps() -> None:
    worksheet = cushion()
    told = json.loads(how_to(worksheet, KNOWN))
    # 265 minutes are 4 hours and 25 minutes.
    assert (told["@type"], told["totalTime"]) == ("HowTo", "PT4H25M")
    assert told["name"] == "Slack Tide cushion, Pad of 14 in, inch edition"
    assert [step["name"] for step in told["step"]] == [step.title for step in worksheet.steps]
    assert {"@type": "HowToSupply", "name": "thread, 67 yd"} in told["supply"]
    assert told["url"] == "https://ropewalk.example/sheets/projects/slack-tide-cushion/14-inch/inch.html"


def test_words_of_a_how_to_are_plain() -> None:
    assert json.loads(how_to(cushion(), setting()))["description"].startswith(
        "A cushion whose front is drawn into linked cells, with a back"
    )


def test_no_address_is_told_where_none_is_known() -> None:
    assert "://" not in how_to(cushion(), setting()).replace("https://schema.org", "")
    assert absolute("index.html", setting()) == ""
    assert sitemap(["index.html"], setting()) is None
    assert size_sharing(cushion(), setting())["canonical"] == ""


def test_no_title_ends_the_element_that_a_how_to_stands_in() -> None:
    hostile = dataclasses.replace(cushion(), title="</script><script>alert(1)</script>\u2028&")
    written = how_to(hostile, KNOWN)
    assert not set("<>&\u2028") & set(written)
    assert json.loads(written)["name"].startswith("</script><script>alert(1)</script>\u2028&, ")


def test_a_site_map_has_every_page_once_in_order_and_no_other_files() -> None:
    pages = ["projects/b/index.html", "index.html", "assets/screen.css", "index.html", "projects/b/é.html"]
    written = sitemap(pages, KNOWN)
    tree = ElementTree.fromstring(written or b"")  # noqa: S314 -- written above
    assert [found.text for found in tree.findall(LOC)] == [
        "https://ropewalk.example/sheets/",
        "https://ropewalk.example/sheets/projects/b/",
        "https://ropewalk.example/sheets/projects/b/%C3%A9.html",
    ]


def test_search_engines_may_read_all_and_are_told_where_the_map_is() -> None:
    # RFC 9309, 2.2: groups begin with User-agent; sitemaps.org: "Sitemap:" with the whole address, wherever it stands.
    read = RobotFileParser()
    read.parse((robots(KNOWN) or b"").decode().splitlines())
    assert read.can_fetch("anyone", "https://ropewalk.example/sheets/projects/b/")
    assert read.site_maps() == ["https://ropewalk.example/sheets/sitemap.xml"]
    assert robots(setting()) is None


def test_a_description_fits_a_list_of_results_and_ends_with_a_whole_word() -> None:
    long = dataclasses.replace(cushion(METRIC), summary="A cushion " + "with many fine tucks " * 20)
    assert len(description(long)) <= 155
    assert description(long).endswith(("tucks …", "fine …", "many …", "with …"))
    assert description(cushion(METRIC)).startswith("Slack Tide cushion, Pad of 35 cm: 36 × 37 cm finished. ")


def test_the_head_of_a_page_tells_how_it_is_shared() -> None:
    head = template(KNOWN.theme, "parts/sharing.html").render(size_sharing(cushion(), KNOWN))
    assert '<link rel="canonical" href="https://ropewalk.example/sheets/projects/' in head
    assert '<meta property="og:title" content="Slack Tide cushion, Pad of 14 in, inch edition">' in head
    assert '<script type="application/ld+json">{' in head


ONE = LaidOut((Lying("front", Fraction(0), Fraction(0), Fraction(15), Fraction(15)),), Fraction(15), Fraction(15))
SHARE = SitePicture("projects/slack-tide-cushion/share.jpg", 1200, 630, "The finished cushion.")


def test_a_page_with_a_picture_for_sharing_tells_it_with_its_size_and_its_words() -> None:
    html, _ = pages(KNOWN)["project"]
    assert f'content="https://ropewalk.example/sheets/{SHARE.address}"' in html
    assert '<meta property="og:image:width" content="1200">' in html
    assert '<meta property="og:image:alt" content="The finished cushion.">' in html
    assert "og:image" not in pages(KNOWN)["words"][0]


def test_the_page_of_a_size_shows_the_finished_thing_of_its_project() -> None:
    worksheet = dataclasses.replace(cushion(), laid_out=ONE)
    page = render_size(worksheet, {}, KNOWN)
    address = "https://ropewalk.example/sheets/projects/slack-tide-cushion/share.jpg"
    assert f'<meta property="og:image" content="{address}">' in page
    assert 'srcset="../picture-320.webp 320w, ../picture-480.webp 480w"' in page


def test_the_page_of_a_size_between_named_ones_shows_it_too_and_one_of_nothing_shows_none() -> None:
    between = dataclasses.replace(cushion(), own=("side",), measures={"side": Fraction(15)})
    assert "picture-480.webp 480w" in render_between(between, {}, KNOWN, [size_link(cushion())])
    nothing = dataclasses.replace(cushion(), pieces={}, laid_out=LaidOut((), Fraction(0), Fraction(0)))
    assert "webp" not in render_size(nothing, {}, KNOWN)


@pytest.mark.parametrize(("kind", "facts"), [("other", "Some practice"), ("mats", "Mats · some practice")])
def test_a_project_of_any_kind_is_described_in_good_english(kind: str, facts: str) -> None:
    sheet = dataclasses.replace(cushion(), kind=kind, level="some practice")
    page = render_project([sheet], ThingPictures(), KNOWN)
    assert '<meta name="description" content="Slack Tide cushion in hand-turned tucks. A cushion whose front ' in page
    assert f'<p class="facts">{facts} · ' in page


def test_the_home_page_names_no_kind_before_what_has_none_and_chooses_it_last() -> None:
    sheets = [dataclasses.replace(cushion(), kind=kind) for kind in ("runner", "other", "mats")]
    page = render_home([project_card([sheet]) for sheet in sheets], KNOWN)
    assert "sheets for 3 projects in hand-turned tucks, in every size" in page
    assert re.findall(r'id="kind-\d" value="(\w+)"', page) == ["mats", "runner", "other"]
    cards = re.findall(r'data-kind="(\w+)".*?<p class="facts">(.*?)\n', page, re.S)
    assert [(kind, "Other" in facts) for kind, facts in cards] == [("runner", False), ("other", False), ("mats", False)]


@pytest.mark.parametrize("page", ["home", "project", "words", "guides"])
def test_every_page_tells_its_whole_address_where_the_room_has_one(page: str) -> None:
    html, address = pages(KNOWN)[page]
    assert f'<link rel="canonical" href="{address}">' in html
    assert f'<meta property="og:url" content="{address}">' in html
    assert html.count('<meta property="og:title" content=') == 1
    assert "canonical" not in pages(setting())[page][0]
    assert "og:" not in pages(setting())[page][0]


def pages(room: Setting) -> dict[str, tuple[str, str]]:
    """Some pages with what their whole addresses should be."""
    site, shown = "https://ropewalk.example/sheets/", ThingPictures(share=SHARE)
    return {
        "home": (render_home([], room), site),
        "project": (
            render_project([cushion()], shown, room),
            f"{site}projects/slack-tide-cushion/",
        ),
        "words": (render_words("care", 'Care & "love"', "Fold it.", room), f"{site}pages/care.html"),
        "guides": (render_guides([], room), f"{site}pages/"),
    }


def test_a_title_with_quotation_marks_stays_inside_its_attribute() -> None:
    html, _ = pages(KNOWN)["words"]
    assert '<meta property="og:title" content="Care &amp; &#34;love&#34; – The Ropewalk Sewing Room">' in html

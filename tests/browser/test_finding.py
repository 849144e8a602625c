"""Finding a project on the home page by its kind, level and time, and anything on the site by words."""

from __future__ import annotations

import json
import re
from itertools import product
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from served_site import Site, Watched

from generator.definitions import vocabulary
from generator.definitions.theme import OWN_THEMES, load_theme
from generator.definitions.vocabulary import LEVELS
from generator.rendering import addresses
from generator.rendering.cards import ProjectCard, SheetTold, SitePicture
from generator.rendering.pages import render_home
from generator.rendering.search import findables, search_index
from generator.rendering.setting import SITE_LINKS, Setting
from generator.rendering.styles import shared_files

SCREEN = 740
KINDS = tuple(vocabulary.KINDS)
GLOSSARY = "# Words\n\n**Take-up**: the cloth that a tuck hides.\n\n**Dévoré**: cloth with a pattern burnt out.\n"


def room_of(folder: Path, count: int) -> Path:
    """Write the home page of a room with so many projects, with all that it needs, and return its file."""
    cards, sheets = [], []
    for number in range(count):
        name, kind = f"pier-{number}", KINDS[number % len(KINDS)]
        picture = SitePicture(f"projects/{name}/picture-320.webp", 320, 284, f"Pier {number}.")
        minutes = 60 + 45 * (number % 9)
        summary = "A square of tucks that are turned to each other in pairs, with a plain back."
        level = LEVELS[number % len(LEVELS)]
        cards.append(ProjectCard(name, f"Pier {kind} {number}", kind, level, summary, minutes, minutes + 60, picture))
        for edition in ("inch", "metric"):
            sheet = addresses.sheet_name(name, "small", edition)
            sheets.append(SheetTold(sheet, "small", "Window seat", edition, "2031-03", "abc", f"{12 + number} in pad"))
    between = addresses.sheet_name("pier-0", "other", "inch")
    sheets.append(SheetTold(between, "other", "19 1/2 in pad", "inch", "2031-03", "abc", "19 1/2 in pad"))
    setting = Setting("The Test Loft", load_theme(OWN_THEMES / "plain"), "by the harbour", "Come in.", links=SITE_LINKS)
    index = search_index(findables(cards, sheets, {"how-to-measure": "How to measure"}, [], GLOSSARY))
    files = {addresses.asset(name): content for name, content in shared_files(setting.theme).items()}
    files |= {addresses.HOME: render_home(cards, setting).encode(), addresses.asset("words.js"): index}
    for address, content in files.items():
        (folder / address).parent.mkdir(parents=True, exist_ok=True)
        (folder / address).write_bytes(content)
    return folder / addresses.HOME


@pytest.fixture(scope="module")
def home(tmp_path_factory: pytest.TempPathFactory) -> str:
    return room_of(tmp_path_factory.mktemp("home"), 17).as_uri()


def opened(watched: Watched, address: str) -> Page:
    watched.page.goto(address)
    return watched.page


def choose(page: Page, name: str, value: str) -> None:
    if name == "kind":
        page.locator(f'[name=kind][value="{value}"]').check(force=True)
    else:
        page.select_option(f"#{name}", value)


def cards(page: Page) -> list[dict[str, str]]:
    found: list[dict[str, str]] = page.locator("#cards > li").evaluate_all("all => all.map(one => ({...one.dataset}))")
    return found


def test_every_choice_shows_the_projects_that_it_names_and_says_how_many(home: str, watched: Watched) -> None:
    page = opened(watched, home)
    every = cards(page)
    assert len(every) == 17
    alone = [(kind, "", "") for kind in ("", *KINDS)]
    for kind, level, time in [*alone, *product(["", "bag"], ["", "1", "2", "3"], ["", "120", "480"])]:
        for name, value in (("kind", kind), ("level", level), ("time", time)):
            choose(page, name, value)
        wanted = [
            card
            for card in every
            if kind in ("", card["kind"])
            and int(card["level"]) <= int(level or 9)
            and int(card["minutes"]) <= int(time or 10**6)
        ]
        assert page.locator("#cards > li:visible").count() == len(wanted), (kind, level, time)
        told = "17 projects" if len(wanted) == 17 else f"{len(wanted)} of 17 projects"
        assert page.locator("#found").inner_text() == told
    # Pictures of this room were not drawn.
    assert [
        words for words in watched.said if "picture-320.webp" not in words and "ERR_FILE_NOT_FOUND" not in words
    ] == []


def test_the_choice_stands_in_the_address_and_back_and_a_shared_link_keep_it(home: str, watched: Watched) -> None:
    page = opened(watched, home)
    choose(page, "kind", "bag")
    choose(page, "level", "2")
    assert page.url == f"{home}#?kind=bag&level=2"
    shown = page.locator("#cards > li:visible").count()
    page.goto("about:blank")
    page.go_back()
    assert page.locator("#cards > li:visible").count() == shown < 17
    assert page.locator("[name=kind]:checked").get_attribute("value") == "bag"
    page.goto("about:blank")
    page.goto(f"{home}#?kind=curtain")
    assert page.locator("[name=kind]:checked").get_attribute("value") == "curtain"
    choose(page, "kind", "")
    assert "#" not in page.url
    page.goto(f"{home}#?kind=nothing-like-it&level=9")
    page.reload()
    assert page.locator("#cards > li:visible").count() == 17


def test_kinds_are_chosen_without_a_script_too(home: str, browser: Browser) -> None:
    context = browser.new_context(java_script_enabled=False, viewport={"width": 360, "height": SCREEN})
    page = context.new_page()
    page.goto(home)
    assert not page.locator("#search").is_visible()
    assert not page.locator("#level").is_visible()
    for kind in KINDS:
        choose(page, "kind", kind)
        shown = [
            card["kind"] for card in cards(page) if page.locator(f'[data-kind="{card["kind"]}"]').first.is_visible()
        ]
        assert set(shown) == {kind}
    choose(page, "kind", "")
    assert page.locator("#cards > li:visible").count() == 17
    context.close()


@pytest.mark.parametrize(("projects", "screens"), [(24, 5), (100, 17)])
def test_the_home_page_is_read_in_few_screens(projects: int, screens: float, watched: Watched, tmp_path: Path) -> None:
    watched.page.set_viewport_size({"width": 360, "height": SCREEN})
    page = opened(watched, room_of(tmp_path, projects).as_uri())
    assert page.evaluate("document.documentElement.scrollHeight") <= screens * SCREEN
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    page.fill("#asked", f"pier {projects - 1}")
    expect(page.locator("#hits a").first).to_have_text(re.compile(rf"{projects - 1}$"))


@pytest.mark.parametrize(
    ("asked", "first", "address"),
    [
        ("pier cushion 0", "Pier cushion 0", "projects/pier-0/index.html"),
        ("TAKE", "Take-up", "pages/glossary.html#take-up"),
        ("devore", "Dévoré", "pages/glossary.html#"),
        ("measure", "How to measure", "pages/how-to-measure.html"),
        ("linked cells", "Linked cells", "gallery.html#linked-cells"),
        ("19 in", f"Pier {KINDS[7 % len(KINDS)]} 7, Window seat", "projects/pier-7/small/inch.html"),
        ("19 1/2", "Pier cushion 0, 19 1/2 in pad", "projects/pier-0/other/inch.html"),
        ("pier 3 window metric", "Pier mats 3, Window seat", "projects/pier-3/small/metric.html"),
        ("pillow", "Pier cushion 0", "projects/pier-0/index.html"),
        ("hides", "Take-up", "pages/glossary.html#take-up"),
    ],
)
def test_words_find_what_begins_with_them(asked: str, first: str, address: str, home: str, watched: Watched) -> None:
    page = opened(watched, home)
    assert not any("words.js" in one for one in watched.asked)
    page.fill("#asked", asked)
    link = page.locator("#hits a").first
    expect(link).to_have_text(first)
    assert address in (link.get_attribute("href") or "")
    assert any("words.js" in one for one in watched.asked)


def test_what_is_not_there_is_said_not_to_be(home: str, watched: Watched) -> None:
    page = opened(watched, home)
    page.fill("#asked", "trebuchet")
    expect(page.locator("#hits-told")).to_have_text("Nothing has these words.")
    assert "unseen" not in (page.locator("#hits-told").get_attribute("class") or "")
    assert page.locator("#hits").is_hidden()
    page.fill("#asked", "")
    expect(page.locator("#hits-told")).to_have_text("")


def test_the_work_left_at_the_machine_last_is_offered_again(home: str, watched: Watched) -> None:
    page = opened(watched, home)
    assert page.locator("#left").is_hidden()
    page.evaluate(
        """() => {
            const site = new URL(".", location.href).pathname;
            const place = (title, when, number) => JSON.stringify({
                stop: "front-row-2", number, step: "7", of: "12", heading: "Row 2 of 4", title, size: "Window seat",
                edition: "inch", page: "projects/pier-1/small/inch-at-the-machine.html", when });
            localStorage.setItem(`place ${site} a`, place("Pier bag", "2031-03-01T10:00:00Z", 9));
            localStorage.setItem(`place ${site} b`, place("Pier cushion", "2031-03-04T10:00:00Z", 4));
            localStorage.setItem(`place ${site} c`, place("Only looked at", "2031-03-05T10:00:00Z", 0));
            localStorage.setItem("place /elsewhere/ d", place("Of another room", "2031-03-06T10:00:00Z", 4));
        }"""
    )
    page.reload()
    assert page.locator("#go-on").inner_text() == "Go on with Pier cushion, Window seat"
    assert page.locator("#go-on-where").inner_text() == "inch edition, step 7 of 12: Row 2 of 4"


def test_every_project_size_and_glossary_word_of_the_site_is_found_by_its_title(site: Site, watched: Watched) -> None:
    text = (site.built.folder / "assets/words.js").read_text(encoding="utf-8")
    entries = json.loads(text.partition("=")[2].strip().rstrip(";"))
    addressed = {entry[1].partition("#")[0] for entry in entries}
    sheets = set(json.loads((site.built.folder / "sheets.json").read_text(encoding="utf-8")))
    assert {f"projects/{sheet}.html" for sheet in sheets} <= addressed
    assert {page for page in site.built.pages if re.fullmatch(r"projects/[^/]+/index\.html", page)} <= addressed
    assert addressed - set(site.built.files) == set()
    page = opened(watched, site.address)
    for entry in entries[:: max(1, len(entries) // 25)]:
        page.fill("#asked", entry[0])
        expect(page.locator(f'#hits a[href="{entry[1]}"]')).to_have_count(1)
    assert watched.said == []

"""Finding a project on the home page by its kind, its level and its time."""

from __future__ import annotations

from itertools import product

from playwright.sync_api import Page
from served_site import Site, Watched


def offered(page: Page, name: str) -> list[str]:
    """What can be chosen, without the line that leaves all in."""
    values = page.locator(f"#find-{name} option").evaluate_all("options => options.map(option => option.value)")
    return [value for value in values if value]


def cards(page: Page) -> list[dict[str, str]]:
    found: list[dict[str, str]] = page.locator("#cards > li").evaluate_all("all => all.map(one => ({...one.dataset}))")
    return found


def test_every_choice_shows_the_projects_that_it_names_and_says_how_many(site: Site, watched: Watched) -> None:
    page = watched.page
    page.goto(site.address)
    every = cards(page)
    assert len(every) > 2
    kinds, levels = offered(page, "kind"), offered(page, "level")
    alone = [("", "", ""), *((kind, "", "") for kind in kinds)]
    for kind, level, time in [*alone, *product(["", kinds[0]], ["", *levels], ["", "120", "480"])]:
        for name, value in (("kind", kind), ("level", level), ("time", time)):
            page.select_option(f"#find-{name}", value)
        wanted = [
            card
            for card in every
            if kind in ("", card["kind"])
            and level in ("", card["level"])
            and int(card["minutes"]) <= int(time or 10**6)
        ]
        assert page.locator("#cards > li:visible").count() == len(wanted), (kind, level, time)
        told = "1 project" if len(wanted) == 1 else f"{len(wanted)} projects"
        assert page.locator("#found").inner_text() == told


def test_what_is_offered_is_what_the_projects_are(site: Site, watched: Watched) -> None:
    page = watched.page
    page.goto(site.address)
    for name in ("kind", "level"):
        assert set(offered(page, name)) == {card[name] for card in cards(page)}
    assert watched.said == []


def test_without_a_script_all_projects_stand_there_and_nothing_to_choose(site: Site, watched: Watched) -> None:
    context = watched.page.context.browser.new_context(java_script_enabled=False)  # type: ignore[union-attr]
    page = context.new_page()
    page.goto(site.address)
    assert not page.locator("#finding").is_visible()
    assert page.locator("#cards > li:visible").count() == page.locator("#cards > li").count() > 2
    context.close()

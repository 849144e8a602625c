"""The HTML of the whole built demo site: valid, whole, and nothing on it leads nowhere."""

from __future__ import annotations

from collections import defaultdict

import pytest
from links import faulty_links, unreachable
from page_checks import faults
from page_reading import ReadPage, read_tags

from tests.built_site import PARTS, BuiltSite

LARGEST = 1_500_000  # bytes of a page without its style sheets and fonts, which pages share


def read_page(site: BuiltSite, page: str) -> ReadPage:
    return ReadPage((site.folder / page).read_text(encoding="utf-8"))


@pytest.mark.parametrize("part", PARTS)
def test_every_page_is_valid_and_has_what_every_page_must_have(part: str, demo_site: BuiltSite) -> None:
    pages = demo_site.pages_of(part)
    assert pages
    assert [f"{page}: {fault}" for page in pages for fault in faults(read_page(demo_site, page))] == []


@pytest.mark.parametrize("part", PARTS)
def test_every_link_is_relative_and_leads_to_a_file_and_a_place_in_it(part: str, demo_site: BuiltSite) -> None:
    files = [file for file in demo_site.files_of(part) if file.endswith((".html", ".css"))]
    assert [fault for file in files for fault in faulty_links(demo_site, file, demo_site.address)] == []


def test_every_file_can_be_reached_from_the_home_page(demo_site: BuiltSite) -> None:
    assert unreachable(demo_site) == []


def test_no_two_pages_have_the_same_title(demo_site: BuiltSite) -> None:
    titles = defaultdict(list)
    for page in demo_site.pages:
        titles[read_tags(demo_site.folder / page).title].append(page)
    assert {title: pages for title, pages in titles.items() if len(pages) > 1} == {}


def test_no_page_is_heavy(demo_site: BuiltSite) -> None:
    sizes = sorted(((demo_site.folder / page).stat().st_size, page) for page in demo_site.pages)
    assert [page for size, page in sizes if size > LARGEST] == []


def test_no_two_pages_tell_the_same_of_themselves(demo_site: BuiltSite) -> None:
    told = defaultdict(list)
    for page in demo_site.pages:
        [about] = read_tags(demo_site.folder / page).descriptions
        told[about].append(page)
    assert {about: pages for about, pages in told.items() if len(pages) > 1} == {}
    assert len(told) == len(demo_site.pages)

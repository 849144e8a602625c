"""What a site has beside its pages: its name for a device, and the page for addresses where there is none."""

from __future__ import annotations

import json
import re
from dataclasses import replace

from room_setting import setting

from generator.rendering.further_files import web_manifest
from generator.rendering.pages import render_missing
from generator.rendering.styles import shared_files


def test_a_device_is_told_the_name_the_start_and_icons_that_are_there() -> None:
    room = setting()
    told = json.loads(web_manifest(room))
    # Web App Manifest (W3C): a name, a start inside the scope, and icons with their sizes and sorts.
    assert told["name"] == room.room
    assert told["start_url"].startswith(told["scope"])
    assert {icon["src"].removeprefix("assets/") for icon in told["icons"]} <= set(shared_files(room.theme))
    assert {icon["sizes"] for icon in told["icons"]} == {"any", "180x180"}


def links(page: str) -> set[str]:
    return set(re.findall(r'(?:href|src|data-manifest)="([^"#]+)"', page))


def test_the_page_for_lost_addresses_leads_from_the_root_of_the_host_wherever_it_is_shown() -> None:
    found = links(render_missing(replace(setting(), site_address="https://loft.example/our/sheets/")))
    assert {link for link in found if not link.startswith("/our/sheets/")} == set()
    assert {"/our/sheets/index.html", "/our/sheets/all.html", "/our/sheets/assets/screen.css"} <= found


def test_a_site_that_does_not_say_where_it_lies_is_taken_to_lie_at_the_root() -> None:
    found = links(render_missing(replace(setting(), site_address="")))
    assert {"/index.html", "/assets/theme.css"} <= found
    assert {link for link in found if not link.startswith("/")} == set()


def test_search_engines_leave_the_page_for_lost_addresses_out() -> None:
    page = render_missing(replace(setting(), site_address="https://loft.example/"))
    assert '<meta name="robots" content="noindex">' in page
    assert "canonical" not in page

"""The page of a class: what the teacher wants all to know, and what programs are told of its days and its prices."""

from __future__ import annotations

import json
import re
from dataclasses import replace

import pytest
from mooring_room import mooring, two_mornings
from room_setting import setting

from generator.calculation.worksheet.class_prices import class_prices
from generator.calculation.worksheet.class_work import ClassSheet
from generator.rendering.class_pages import render_class
from generator.rendering.setting import Setting
from generator.rendering.structured import class_data

KNOWN = setting(site_address="https://ropewalk.example/sheets/")
PAGE = "https://ropewalk.example/sheets/classes/two-mornings.html"


def with_prices(sheet: ClassSheet) -> ClassSheet:
    return replace(sheet, prices=class_prices("20.00", sheet.kits, sheet.lent, mooring().shared.room))


def offers(sheet: ClassSheet, room: Setting) -> list[list[dict[str, str]] | None]:
    """What each session offers."""
    return [event.get("offers") for event in json.loads(class_data(sheet, room))["@graph"]]


def test_what_the_teacher_wants_all_to_know_stands_on_the_page_above_the_days() -> None:
    page = render_class(replace(two_mornings(), note="Doors at 9:15. Bring *your own* <b>tea</b>."), KNOWN)
    told = "<p>Doors at 9:15. Bring <em>your own</em> &lt;b&gt;tea&lt;/b&gt;.</p>"
    assert told in page
    assert page.index("<h1>") < page.index(told) < page.index('<h2 id="when">')


def test_a_heading_in_the_note_of_a_class_is_below_that_of_the_page() -> None:
    page = render_class(replace(two_mornings(), note="# Before you come\n\nWash the cloth."), KNOWN)
    assert re.findall(r"<(h\d)[^>]*>Before you come", page) == ["h2"]


def test_each_session_offers_each_size_at_its_price() -> None:
    """Terms of schema.org: Event.offers, Offer.price, a number with a point, and Offer.priceCurrency, from ISO 4217."""
    sheet = with_prices(two_mornings())
    small, large = sheet.prices
    told = [
        {
            "@type": "Offer",
            "name": f"{price.size_label}, {price.edition} edition",
            "price": f"{price.whole.minor // 100}.{price.whole.minor % 100:02d}",
            "priceCurrency": "GBP",
            "url": PAGE,
        }
        for price in (small, large)
    ]
    assert offers(sheet, replace(KNOWN, currency_code="GBP")) == [told, told]
    one = replace(sheet, prices=(small,))
    [alone, _] = offers(one, replace(KNOWN, currency_code="GBP"))
    assert [offer["name"] for offer in alone or ()] == [small.size_label]


@pytest.mark.parametrize("code", ["", "GBP"])
def test_nothing_is_offered_without_a_price_or_without_the_code_of_its_money(code: str) -> None:
    sheet = two_mornings() if code else with_prices(two_mornings())
    assert offers(sheet, replace(KNOWN, currency_code=code)) == [None, None]


def test_a_project_of_no_kind_tells_its_level_alone() -> None:
    sheet = two_mornings()
    other = replace(sheet.slowest, worksheet=replace(sheet.slowest.worksheet, kind="other", level="experienced"))
    assert '<p class="facts">Experienced</p>' in render_class(replace(sheet, slowest=other), KNOWN)

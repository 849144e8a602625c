"""The page of a class: what the teacher wants all to know, and what programs are told of its days and its prices."""

from __future__ import annotations

import json
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


def test_the_note_of_a_class_stays_in_its_pack() -> None:
    page = render_class(replace(two_mornings(), note="Ines owes us for the cloth."), KNOWN)
    assert "owes" not in page


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

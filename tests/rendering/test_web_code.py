from __future__ import annotations

import re
from functools import cache

import pypdfium2
import pytest
import zxingcpp
from cushion_sheet import cushion
from opened_pdf import opened, told_figures, whole_text
from room_setting import setting

from generator.rendering.addresses import mark_anchor
from generator.rendering.handout.sheet import render_handout
from generator.rendering.web_code import web_place

SITE = "https://ropewalk.example/sheets/"
ADDRESS = "https://ropewalk.example/sheets/projects/slack-tide-cushion/14-inch/inch.html"
MILLIMETRE = 72 / 25.4
SHEETS = (("plain", "A4"), ("large-print", "Letter"))


@cache
def rendered(theme: str, paper: str) -> bytes:
    return render_handout(cushion(), setting(theme, site_address=SITE), paper)


def read_by_a_phone(pdf: bytes, dots_per_inch: int) -> list[zxingcpp.Barcode]:
    """What another library reads off the first page."""
    with pypdfium2.PdfDocument(pdf) as read:
        return list(zxingcpp.read_barcodes(read[0].render(scale=dots_per_inch / 72).to_numpy()))


@pytest.mark.parametrize("dots_per_inch", [150, 300])
@pytest.mark.parametrize("sheet", SHEETS)
def test_the_code_on_a_handout_leads_to_the_page_of_its_size(sheet: tuple[str, str], dots_per_inch: int) -> None:
    (found,) = read_by_a_phone(rendered(*sheet), dots_per_inch)
    note = mark_anchor("2031-03 b")
    assert (found.text, found.format) == (f"{ADDRESS}#{note}", zxingcpp.BarcodeFormat.QRCode)


@pytest.mark.parametrize("sheet", SHEETS)
def test_the_code_with_its_quiet_zone_is_25_millimetres_wide(sheet: tuple[str, str]) -> None:
    # Version 6 has 41 modules, with four at either side 49: the dark part is 25 x 41 / 49 = 20.9 mm wide.
    (found,) = read_by_a_phone(rendered(*sheet), 300)
    place = found.position
    wide = (place.top_right.x - place.top_left.x) / 300 * 25.4
    assert wide == pytest.approx(25 * 41 / 49, abs=0.5)


def test_around_the_code_four_modules_stay_empty_as_the_standard_asks() -> None:
    place = web_place("projects/slack-tide-cushion/14-inch/inch.html", setting(site_address=SITE))
    assert place is not None
    size = re.search(r'viewBox="0 0 (\d+) (\d+)"', place.code.svg)
    start = re.search(r'stroke="#000" d="M(\d+) (\d+)\.5', place.code.svg)
    assert size
    assert start
    # ISO/IEC 18004: a symbol of version v has 17 + 4 v modules a side, and a quiet zone of 4 around it.
    assert (int(size[1]) - 8 - 17) % 4 == 0
    assert (start[1], start[2]) == ("4", "4")


def test_the_code_is_told_in_words_and_its_address_is_printed_and_live() -> None:
    sheet = rendered("plain", "A4")
    assert f"Code to point a phone at: it opens {ADDRESS}#{mark_anchor('2031-03 b')}" in told_figures(sheet)
    assert ADDRESS.removeprefix("https://") in whole_text(sheet).replace(" ", "")
    with opened(sheet) as read:
        assert {
            str(note.A.URI) for page in read.pages for note in page.get("/Annots", ()) if note.Subtype == "/Link"
        } == {ADDRESS}


def test_without_an_address_a_sheet_says_nothing_of_the_web() -> None:
    sheet = render_handout(cushion(), setting(), "A4")
    assert web_place("index.html", setting()) is None
    assert read_by_a_phone(sheet, 150) == []
    assert "web" not in whole_text(sheet).lower()
    assert not any("phone" in told for told in told_figures(sheet))


def test_the_home_page_is_led_to_by_its_folder() -> None:
    place = web_place("index.html", setting(site_address=SITE))
    assert place is not None
    assert (place.address, place.shown) == (SITE, "ropewalk.example/sheets/")

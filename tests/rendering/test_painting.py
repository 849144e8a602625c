"""Pictures are painted in fewer steps than the library takes, and every line and letter stays where it puts it."""

from __future__ import annotations

import io
from collections.abc import Iterator
from contextlib import contextmanager
from decimal import Decimal

import pdfplumber
import pytest

from generator.drawing.catalogue import draw_for_page
from generator.drawing.style import style_of
from generator.rendering import painting
from generator.rendering.pdf import write_pdf
from generator.rendering.setter import SVG, TAGS, images
from generator.rendering.styles import paper_style
from tests.rendering.room_setting import setting
from tests.room import demo_room

FINE = 0.03
CURVED = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 40" font-family="Fira Sans">'
    '<path d="M5 5C10 0 20 10 30 5L30 30z"/><path d="m40 5h10v10z"/><path d="M60,5 70,5 70,15"/>'
    '<text x="50" y="30" font-size="8px" text-anchor="middle">One <tspan font-weight="bold">two</tspan></text>'
    '<text x="5" y="38" font-size="8" dx="3">Three</text></svg>'
)


@contextmanager
def painted_by_the_library(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    with monkeypatch.context() as patch:
        patch.setattr(images, "SVG", SVG)
        patch.setitem(TAGS, "path", painting._library_path)
        yield


def paper(svgs: dict[str, str]) -> bytes:
    theme = setting().theme
    shown = "".join(f'<p><img src="mem:{name}" alt="drawn"></p>' for name in svgs)
    html = f'<html lang="en"><head><title>Pictures</title></head><body>{shown}</body></html>'
    return write_pdf(html, paper_style(theme, "Letter", "sheets"), theme, svgs)


def letters(pdf: bytes) -> list[tuple[str, str, float, float, float]]:
    """Every letter with its font, its place and its size; blanks are not painted."""
    with pdfplumber.open(io.BytesIO(pdf)) as opened:
        return sorted(
            (one["text"], one["fontname"], one["x0"], page.page_number * 1000 + one["top"], one["size"])
            for page in opened.pages
            for one in page.chars
            if one["text"].strip()
        )


def lines(pdf: bytes) -> list[tuple[int, str, tuple[Decimal | float, ...]]]:
    with pdfplumber.open(io.BytesIO(pdf)) as opened:
        return [
            (page.page_number, str(one["stroking_color"]), tuple(number for point in one["pts"] for number in point))
            for page in opened.pages
            for one in (*page.lines, *page.rects, *page.curves)
        ]


@pytest.mark.parametrize("key", ["layout face", "fold marks front", "turns front", "thing back"])
def test_every_line_and_letter_stays_where_the_library_puts_it(key: str, monkeypatch: pytest.MonkeyPatch) -> None:
    worksheet = demo_room().worksheets("quay-cushion")[0].wordless
    svgs = {"1.svg": draw_for_page(worksheet, key, style_of(setting().theme)).svg}
    with painted_by_the_library(monkeypatch):
        theirs = paper(svgs)
    ours = paper(svgs)
    assert len(ours) < len(theirs)
    assert [one[:2] for one in letters(ours)] == [one[:2] for one in letters(theirs)]
    for one, other in zip(letters(ours), letters(theirs), strict=True):
        assert one[2:] == pytest.approx(other[2:], abs=FINE)
    assert len(lines(ours)) == len(lines(theirs)) > 3
    for (page, colour, places), (their_page, their_colour, their_places) in zip(
        lines(ours), lines(theirs), strict=True
    ):
        assert (page, colour) == (their_page, their_colour)
        assert places == pytest.approx(their_places, abs=FINE)


def test_words_of_a_picture_are_written_whole() -> None:
    svg = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 20"><text x="5" y="9" font-size="9px"' + (
        " font-family=\"'Fira Sans'\">AVAIL flat cloth</text></svg>"
    )
    with pdfplumber.open(io.BytesIO(paper({"1.svg": svg}))) as opened:
        # The library leaves the blanks out, and whoever searches the sheet must guess them.
        assert "AVAIL flat cloth" in "".join(one["text"] for one in opened.pages[0].chars)


def test_what_is_no_plain_drawing_the_library_paints(monkeypatch: pytest.MonkeyPatch) -> None:
    with painted_by_the_library(monkeypatch):
        theirs = paper({"1.svg": CURVED})
    assert paper({"1.svg": CURVED}) == theirs

"""The letters of pictures in a sheet: pictures of some projects are set in each theme and the fonts are read."""

from __future__ import annotations

import io

import pikepdf
import pypdfium2
import pytest
from room_setting import THEMES

from generator.definitions.theme import load_theme
from generator.drawing.catalogue import draw, figure_keys
from generator.drawing.style import style_of
from generator.rendering.pdf import write_pdf
from generator.rendering.styles import paper_style
from tests.room import demo_room

# A panel with a caught hem, one with cross tucks, one on stripes with pieces and all sorts of making up.
PROJECTS = ("pier-bolster", "chandlery-flap", "customs-tote")
FAMILIES = {"plain": "Fira-Sans", "large-print": "Fira-Sans", "harbour": "Alegreya-Sans"}


@pytest.fixture(scope="module", params=sorted(FAMILIES))
def sheet(request: pytest.FixtureRequest) -> tuple[str, bytes]:
    """The name of a theme and a PDF with nothing but pictures."""
    theme = load_theme(THEMES / request.param)
    style = style_of(theme)
    worksheets = [next(iter(demo_room().worksheets(name))) for name in PROJECTS]
    svgs = [
        picture.svg
        for sheet in worksheets
        for key in figure_keys(sheet)
        if not key.startswith("surface ")
        for picture in draw(sheet, key, style)
    ]
    memory = {f"{number}.svg": svg for number, svg in enumerate(svgs)}
    body = "".join(f'<p><img src="mem:{name}" alt="A picture." style="max-width:7in"></p>' for name in memory)
    html = f'<!DOCTYPE html><html lang="en"><head><title>Pictures</title></head><body>{body}</body></html>'
    return request.param, write_pdf(html, paper_style(theme, "Letter", "handout"), theme, memory)


def test_pictures_have_no_letters_but_those_of_their_themes_text(sheet: tuple[str, bytes]) -> None:
    name, pdf = sheet
    with pikepdf.Pdf.open(io.BytesIO(pdf)) as read:
        found = {
            str(item.FontName).split("+")[1]
            for item in read.objects
            if isinstance(item, pikepdf.Dictionary) and item.get("/Type") == "/FontDescriptor"
        }
    # The foot of a page is set in the text's own face, pictures in one with lining digits where the theme has one.
    assert any(font.endswith("Bold") for font in found)
    assert all(font.startswith(FAMILIES[name]) for font in found), found


def test_fractions_stay_words_that_can_be_found(sheet: tuple[str, bytes]) -> None:
    told = "".join(page.get_textpage().get_text_range() for page in pypdfium2.PdfDocument(sheet[1]))
    assert "⁄" in told
    assert "/" not in told

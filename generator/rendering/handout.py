"""The handout: a worksheet, its pictures and a paper come in, the bytes of a PDF go out."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from typing import Any

from generator.calculation.worked_project import Worksheet
from generator.rendering.environment import sheet_words, template
from generator.rendering.figures import Pictures, arranged, sheet_image
from generator.rendering.page_fill import FigurePlaces, better_places, wasted
from generator.rendering.pdf import SheetResources, page_of, write_fitting_pdf
from generator.rendering.setter import Document
from generator.rendering.setting import Setting, size_link
from generator.rendering.styles import PAPERS, paper_style
from generator.rendering.web_code import web_place
from generator.rendering.words import printed_words

_LARGE = 14.0
# How the sheet for the cutting table is set: roomy, tight where it would spill, and where even that spills without a
# page of its own, so that the steps follow at once.
_FITS = ("", "tight", "tight flowing")
# How much smaller a figure of large letters may be drawn where it would leave its page half empty.
_SMALLER = (1.0, 0.9, 0.8)


def render_handout(worksheet: Worksheet, pictures: Pictures, setting: Setting, paper: str) -> bytes:
    """Return the handout of one worksheet: the sheet for the cutting table, then the steps with their pictures."""
    memory: dict[str, str] = {}
    values = _values(worksheet, pictures, setting, paper, memory)
    sheet = template(setting.theme, "handout.html")
    used: list[str] = []

    def versions() -> Iterator[str]:
        for fit in _FITS:
            used.append(fit)
            yield sheet.render(fit=fit, places=FigurePlaces(), **values)

    def settled(document: Document, set_on_pages: Callable[[str], Document]) -> Document:
        places = better_places(document, _SMALLER if _text_size(setting) >= _LARGE else _SMALLER[:1])
        if places is None:
            return document
        other = set_on_pages(sheet.render(fit=used[-1], places=places, **values))
        return min(document, other, key=wasted)

    with_pictures = SheetResources(_style(setting, paper), setting.theme, memory)
    return write_fitting_pdf(versions(), _begins_work_on_page_2, with_pictures, settled)


def _text_size(setting: Setting) -> float:
    return float(setting.theme.measures["text"].removesuffix("pt"))


def _style(setting: Setting, paper: str) -> str:
    return paper_style(setting.theme, paper, "handout")


def _begins_work_on_page_2(document: Document) -> bool:
    """Return whether the sheet for the cutting table keeps to its one page."""
    return 2 in (page_of(document, "layouts"), page_of(document, "steps"))


def _values(
    worksheet: Worksheet, pictures: Pictures, setting: Setting, paper: str, memory: dict[str, str]
) -> dict[str, Any]:
    """Return what the template is told; the pictures that it asks for are kept in ``memory``."""
    measures = setting.theme.measures
    text = _text_size(setting)
    margin = float(measures["page margin"].removesuffix("in"))
    width, height = PAPERS[paper]
    link = size_link(worksheet)
    image = sheet_image(memory, (width - 2 * margin, height - 2 * margin - 1.2 - text / 10), max(1.0, text / _LARGE))
    columns = max(3, int((width - 2 * margin) * 72 / (text * 6.5)))
    return {
        "setting": setting,
        "link": link,
        "web": web_place(link.page_of_project if setting.standing == "own" else link.page, setting),
        "paper": paper,
        "arrangement": arranged(worksheet, pictures),
        "image": image,
        "in_words": False,
        "words": partial(printed_words, site_address=setting.site_address),
        **sheet_words(worksheet, columns),
    }

"""What every handout must hold to, besides what holds for all sheets: an opened PDF comes in, its faults go out.

Both papers come from one setting, so white is measured on Letter alone, whose foot is that of the setting.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

import numpy
import pypdfium2
from sheet_reading import ReadSheet

ONCE = ("To buy", "Is this my size?", "Something went wrong?", "Have ready:")
"""What is told once in a handout, or not at all."""
# Dots in an inch are enough to see a line; where acts begin and end is in themes/plain/css/handout.css.
_DOTS, _TOP, _FOOT = 72, 8 / 25.4, 12 / 25.4
_WHITE, _INK = 10.0, 200


def is_handout(sheet: ReadSheet) -> bool:
    """A handout is known by its last line."""
    return any("Something went wrong?" in text for text in sheet.texts)


def even_pages(sheet: ReadSheet) -> Iterator[str]:
    """A handout is printed on both sides: it has an even number of pages, four at least."""
    number = len(sheet.pdf.pages)
    if is_handout(sheet) and (number % 2 or number < 4):
        yield f"a handout has {number} pages"


def told_once(sheet: ReadSheet) -> Iterator[str]:
    """What is told once is not told again."""
    if is_handout(sheet):
        told = " ".join(sheet.texts)
        yield from (f"'{words}' is told {told.count(words)} times" for words in ONCE if told.count(words) > 1)


def on_the_ruler(sheet: ReadSheet) -> Iterator[str]:
    """No length is finer than the finest mark of a ruler in inches, 1/16: common practice, no source."""
    if is_handout(sheet):
        finer = re.findall(r"\S*[/\N{FRACTION SLASH}](?:32|64)\b", " ".join(sheet.texts))
        yield from (f"{length} is finer than a ruler" for length in finer)


def little_white(sheet: ReadSheet) -> Iterator[str]:
    """At most 10 mm stay white at the foot of a page, of the last one too."""
    if not (is_handout(sheet) and sheet.path.stem.endswith("-letter")):
        return
    with pypdfium2.PdfDocument(sheet.path) as read:
        for number, page in enumerate(read, 1):
            grey = numpy.asarray(page.render(scale=_DOTS / 72, grayscale=True).to_numpy()).squeeze()
            body = grey[int(_TOP * _DOTS) : int(len(grey) - _FOOT * _DOTS)]
            inked = numpy.flatnonzero((body < _INK).any(axis=1))
            white = (len(body) - 1 - (int(inked[-1]) if inked.size else -1)) / _DOTS * 25.4
            if white > _WHITE:
                yield f"page {number} is white for {white:.0f} mm"


def pictures_in_their_acts(sheet: ReadSheet) -> Iterator[str]:
    """A picture stands on the page of its act, or on the next one where the act goes on there."""
    if not is_handout(sheet):
        return
    pages = {page.obj.objgen: number for number, page in enumerate(sheet.pdf.pages, 1)}
    begun = 0
    for tag in sheet.tags:
        page = pages.get(tag.element.Pg.objgen, 0) if "/Pg" in tag.element else 0
        if tag.kind == "/H2":
            begun = page
        elif tag.kind == "/Figure" and begun and page != begun:
            goes_on = page == begun + 1 and re.search(r"\b\d+ goes on\b", sheet.texts[page - 1])
            if not goes_on:
                yield f"a picture of an act of page {begun} stands on page {page}"


HANDOUT_CHECKS = (even_pages, told_once, on_the_ruler, little_white, pictures_in_their_acts)

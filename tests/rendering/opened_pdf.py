"""PDFs opened and read, for tests of sheets."""

from __future__ import annotations

import io
from collections.abc import Iterator
from functools import lru_cache
from typing import Any

import pdfplumber
import pikepdf
from pdfplumber.page import Page

INCH = 72


def opened(pdf: bytes) -> pikepdf.Pdf:
    return pikepdf.open(io.BytesIO(pdf))


def page_count(pdf: bytes) -> int:
    return len(opened(pdf).pages)


@lru_cache(maxsize=16)
def pages_of(pdf: bytes) -> tuple[Page, ...]:
    """The pages of a file; their letters are looked for once, however many things are asked of them."""
    return tuple(pdfplumber.open(io.BytesIO(pdf)).pages)


def texts(pdf: bytes) -> list[str]:
    """The text of each page in the order in which it was set: cell by cell and column by column."""
    return [" ".join(_running(page.chars).split()) for page in pages_of(pdf)]


def _running(letters: list[dict[str, Any]]) -> str:
    """Letters as one text, with a space wherever the next one does not follow on its line."""
    text = ""
    for before, letter in zip([letters[0], *letters], letters, strict=False):
        follows = abs(letter["bottom"] - before["bottom"]) < 1 and -1 < letter["x0"] - before["x1"] < 1.5
        text += ("" if follows or letter is before else " ") + str(letter["text"])
    return text


def whole_text(pdf: bytes) -> str:
    return " ".join(texts(pdf))


def letter_sizes(pdf: bytes) -> set[float]:
    """The sizes of all letters of a file [pt]."""
    return {round(float(letter["size"]), 2) for page in pages_of(pdf) for letter in page.chars}


def words_outside(pdf: bytes, margin: float = 0.43) -> list[str]:
    """Words that lie outside the margins of their page [in]; what stands in the margin boxes lies inside its sides."""
    outside = []
    for number, page in enumerate(pages_of(pdf), 1):
        for word in page.extract_words():
            sides = word["x0"] >= margin * INCH and word["x1"] <= float(page.width) - margin * INCH
            ends = word["top"] >= 0 and word["bottom"] <= float(page.height) - margin * INCH / 2
            if not (sides and ends):
                outside.append(f"page {number}: {word['text']}")
    return outside


def _elements(node: pikepdf.Object) -> Iterator[pikepdf.Dictionary]:
    """Every element of the tree of tags."""
    if isinstance(node, pikepdf.Array):
        for child in node:
            yield from _elements(child)
    elif isinstance(node, pikepdf.Dictionary):
        if "/S" in node:
            yield node
        if "/K" in node:
            yield from _elements(node.K)


def tags(pdf: bytes) -> set[str]:
    with opened(pdf) as read:
        return {str(element.S) for element in _elements(read.Root.StructTreeRoot.K)}


def told_figures(pdf: bytes) -> list[str]:
    """What is told in words of each figure."""
    with opened(pdf) as read:
        return [str(element.Alt) for element in _elements(read.Root.StructTreeRoot.K) if element.S == "/Figure"]


def fonts_inside(pdf: bytes) -> list[bool]:
    """For each font of a file whether it is inside it."""
    with opened(pdf) as read:
        found = [item for item in read.objects if isinstance(item, pikepdf.Dictionary)]
        described = [item for item in found if item.get("/Type") == "/FontDescriptor"]
        return ["/FontFile2" in font or "/FontFile3" in font for font in described]


def figures_and_headings(pdf: bytes) -> list[tuple[str, int, str]]:
    """Headings of the second rank and figures in the order of reading: which, on which page, what a figure tells."""
    found = []
    with opened(pdf) as read:
        pages = {page.obj.objgen: number for number, page in enumerate(read.pages, 1)}
        for element in _elements(read.Root.StructTreeRoot.K):
            if str(element.S) in ("/H2", "/Figure"):
                found.append((str(element.S)[1:], pages[element.Pg.objgen], str(element.get("/Alt", ""))))
    return found
